package tideless.report;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.study.Forecast;
import tideless.words.MachineWords;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.OutlookWords;
import tideless.words.TaskWords;

/**
 * What a forecast puts into a diary, in order of time: sowing and setting out, the rounds, days on
 * which nobody comes, and every task with its band.
 *
 * @param entries in order of time
 */
record Diary(List<Entry> entries) {
    /** Longest part of a name in an identifier. */
    private static final int LONGEST = 40;

    Diary {
        entries = List.copyOf(entries);
    }

    /**
     * One entry.
     *
     * @param id the same for what is the same in another run of the scenario
     * @param what a few words
     * @param text all there is to say
     * @param from when it begins; at midnight where it takes the whole day
     * @param lastDay last day of it, for what takes whole days; empty for what is done at an hour
     * @param remindHours how long before one is reminded, h; 0 for never
     * @param again how it comes again; empty for what comes once
     */
    record Entry(
            String id,
            String what,
            String text,
            LocalDateTime from,
            Optional<LocalDate> lastDay,
            int remindHours,
            Optional<Again> again) {}

    /**
     * What comes again and again, on days of visits.
     *
     * @param everyDays no sooner than after so many days; 0 for each visit
     * @param lastDay after which it comes no more
     */
    record Again(int everyDays, LocalDate lastDay) {}

    static Diary of(Forecast forecast) {
        Scenario scenario = forecast.trace().scenario();
        List<Entry> entries = new ArrayList<>();
        String run = scenario.start() + "-" + plain(scenario.title());
        if (scenario.log().isEmpty()) {
            Map<Object, List<Tray>> alike = new LinkedHashMap<>();
            for (Tray tray : scenario.trays()) {
                alike.computeIfAbsent(tray.planting(), k -> new ArrayList<>()).add(tray);
            }
            alike.values().forEach(trays -> addPlanting(entries, scenario, trays, run));
        }
        firstVisit(scenario)
                .ifPresent(
                        day ->
                                entries.add(
                                        new Entry(
                                                id(run, "look-in", null, 1),
                                                "Look in: levels, leaves, valves",
                                                "The round of " + scenario.title() + ".",
                                                at(scenario, day),
                                                Optional.empty(),
                                                0,
                                                Optional.of(new Again(0, scenario.lastDay())))));
        int away = 0;
        LocalDate told = scenario.start().plusDays(scenario.log().lastDay());
        for (Visits.Absence absence : scenario.visits().absences()) {
            away++;
            if (!scenario.log().isEmpty() && absence.to().isBefore(told)) {
                continue;
            }
            entries.add(
                    new Entry(
                            id(run, "away", null, away),
                            "Nobody looks in",
                            "An absence of " + scenario.title() + ".",
                            absence.from().atStartOfDay(),
                            Optional.of(absence.to()),
                            0,
                            Optional.empty()));
        }
        addTasks(entries, forecast, run);
        entries.sort(Comparator.comparing(Entry::from)); // of one hour as they were added
        return new Diary(entries);
    }

    // Trays that are planted alike.
    private static void addPlanting(
            List<Entry> entries, Scenario scenario, List<Tray> trays, String run) {
        Tray tray = trays.get(0);
        if (!(tray.planting() instanceof Planting.OfCrop crop) || crop.plants() == 0) {
            return;
        }
        String name = Names.clean(crop.cropName());
        String where = Names.trays(trays.stream().map(Tray::name).map(Names::clean).toList());
        int nursery = (int) Math.floor(crop.ageAtStartDays() + 0.5);
        String plants = crop.plants() + " plants" + (trays.size() > 1 ? " each" : "");
        LocalDate sown = scenario.start().minusDays(nursery);
        entries.add(
                new Entry(
                        id(run, "sow", tray.id(), 1),
                        "Sow " + name + " for " + where,
                        plants
                                + ", some more to choose from"
                                + (nursery > 0
                                        ? "; " + Numbers.days(nursery) + " in the nursery."
                                        : "."),
                        sown.atStartOfDay(),
                        Optional.of(sown),
                        0,
                        Optional.empty()));
        if (nursery > 0) {
            entries.add(
                    new Entry(
                            id(run, "set-out", tray.id(), 1),
                            "Set out " + name + " in " + where,
                            plants + ", " + Numbers.days(nursery) + " in the nursery.",
                            scenario.start().atStartOfDay(),
                            Optional.of(scenario.start()),
                            0,
                            Optional.empty()));
        }
    }

    // What is done to trays of one design alike, at one hour, is one entry.
    private static void addTasks(List<Entry> entries, Forecast forecast, String run) {
        Map<String, Integer> seen = new HashMap<>();
        Map<String, String> idOfFirst = new HashMap<>();
        Map<String, List<Task>> alike = new LinkedHashMap<>();
        for (Task task : forecast.advice().tasks()) {
            String kind = MachineWords.of(task.kind());
            int ordinal = seen.merge(kind + task.vessel(), 1, Integer::sum);
            if (forecast.isPast(task)
                    || task.kind() == Task.Kind.SET_OUT
                    || task.kind() == Task.Kind.SOW) {
                continue; // what is set out on day one has its own entry, as has its sowing
            }
            String key =
                    kind
                            + task.crop()
                            + task.due()
                            + Numbers.litres(task.litres())
                            + TaskWords.why(task)
                            + OutlookWords.likely(forecast, task)
                            + again(task, forecast)
                            + design(forecast.trace().scenario(), task.vessel());
            idOfFirst.putIfAbsent(key, id(run, kind, task.vessel(), ordinal));
            alike.computeIfAbsent(key, k -> new ArrayList<>()).add(task);
        }
        alike.forEach((key, tasks) -> entries.add(entry(idOfFirst.get(key), tasks, forecast)));
    }

    /** What has to be equal for trays to be told together; a reservoir is told by itself. */
    private static String design(Scenario scenario, VesselId vessel) {
        return scenario.trays().stream()
                .filter(tray -> tray.id().equals(vessel))
                .map(tray -> tray.shape() + " " + tray.planting())
                .findFirst()
                .orElse(vessel.toString());
    }

    private static Entry entry(String id, List<Task> alike, Forecast forecast) {
        Task task = alike.get(0);
        String likely = OutlookWords.likely(forecast, task);
        return new Entry(
                id,
                what(alike) + (likely.isEmpty() ? "" : " (" + likely + ")") + advised(task),
                alike.stream().map(TaskWords::text).collect(Collectors.joining("\n")),
                task.due(),
                Optional.empty(),
                remindHours(task.kind()),
                again(task, forecast));
    }

    /**
     * Litres and dates that follow are those of the run, which does not fill up before it leaves.
     */
    private static String advised(Task task) {
        boolean pours = task.kind() == Task.Kind.REFILL || task.kind() == Task.Kind.TOP_UP;
        return pours && !task.isDone()
                ? " (advised before you leave; the next is told as without it, and takes less)"
                : "";
    }

    private static Optional<Again> again(Task task, Forecast forecast) {
        Facts facts = task.cause().facts();
        return switch (task.kind()) {
            case READ_METERS, POLLINATE -> {
                double every = task.measure().value(); // none where each visit is one
                yield Optional.of(
                        new Again(Double.isNaN(every) ? 0 : (int) every, facts.on().toLocalDate()));
            }
            case PICK -> {
                double every = facts.has(Quantity.EVERY) ? facts.get(Quantity.EVERY) : 0;
                yield Optional.of(new Again((int) every, harvest(task, forecast)));
            }
            case PICK_LEAVES ->
                    facts.has(Quantity.EVERY)
                            ? Optional.of(
                                    new Again(
                                            (int) facts.get(Quantity.EVERY),
                                            facts.on().toLocalDate()))
                            : Optional.empty();
            default -> Optional.empty();
        };
    }

    /** Day on which the crop of a task is taken out, or the run's last. */
    private static LocalDate harvest(Task picking, Forecast forecast) {
        return forecast.advice().tasks().stream()
                .filter(t -> t.kind() == Task.Kind.HARVEST)
                .filter(t -> t.vessel().equals(picking.vessel()))
                .filter(t -> !t.due().isBefore(picking.due()))
                .findFirst()
                .map(t -> t.due().toLocalDate())
                .orElse(forecast.trace().scenario().lastDay());
    }

    private static String what(List<Task> alike) {
        Task task = alike.get(0);
        if (task.kind() == Task.Kind.MIX) {
            return "Mix " + Numbers.litres(task.litres()) + " L of " + TaskWords.brief(task);
        }
        return Names.begun(Names.of(task.kind()))
                + ", "
                + Checklist.where(alike)
                + (task.litres() > 0 ? ", " + Numbers.litres(task.litres()) + " L" : "");
    }

    /** A day ahead of what wants preparing, an hour ahead of the rest; assumed. */
    private static int remindHours(Task.Kind kind) {
        return switch (kind) {
            case SOW, MIX, HARVEST, SOW_NEXT, CLEAN, SET_OUT, PLANT, FLUSH, FRESH_SOLUTION -> 24;
            default -> 1;
        };
    }

    private static LocalDateTime at(Scenario scenario, LocalDate day) {
        return day.atStartOfDay().plusSeconds((long) scenario.visits().timeOfDayS());
    }

    private static Optional<LocalDate> firstVisit(Scenario scenario) {
        for (int day = scenario.log().lastDay() + 1; day < scenario.days(); day++) {
            LocalDate date = scenario.start().plusDays(day);
            if (scenario.visits().on(date)) {
                return Optional.of(date);
            }
        }
        return Optional.empty();
    }

    static String id(String run, String kind, VesselId vessel, int ordinal) {
        String of =
                vessel == null
                        ? ""
                        : "-" + MachineWords.of(vessel.kind()) + "-" + plain(vessel.name());
        return run + "-" + kind + of + "-" + ordinal + "@tideless";
    }

    /** Letters and digits of ASCII as they are, all else as its number, so that none are alike. */
    private static String plain(String name) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            boolean kept = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9';
            plain.append(kept ? String.valueOf(c) : c == ' ' ? "_" : "." + Integer.toHexString(c));
        }
        return plain.length() <= LONGEST
                ? plain.toString()
                : plain.substring(0, LONGEST) + "." + Integer.toHexString(name.hashCode());
    }
}
