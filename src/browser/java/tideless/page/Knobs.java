package tideless.page;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.solution.ElectricalConductivity;
import tideless.solution.SourceWater;
import tideless.words.Names;
import tideless.words.Numbers;

/**
 * What can be moved in a scenario, whether its key stands there or holds by default: a move writes
 * it. Where two keys belong together (the depth and the overflow below the rim, a lamp's hours and
 * when it goes off) it moves both. What is told in another way has no knob: a shape by its volume,
 * a valve that is moved by date, air from a file, an analysed water.
 */
final class Knobs {
    private static final String WITHIN = "tray";

    /** Holds where neither a source nor an analysis is stated. */
    private static final String LEFT_OUT_WATER = "soft-tap";

    private static final List<String> INSTEAD_OF_PPFD =
            List.of("lux", "watts", "efficacy", "area", "on_target");

    /** One of them tells how strong a lamp is. */
    private static final List<String> BY_WHICH_LIGHT = List.of("ppfd", "lux", "watts");

    private final ScenarioText text;
    private final Scenario scenario;
    private final List<Knob> knobs = new ArrayList<>();

    private Knobs(ScenarioText text, Scenario scenario) {
        this.text = text;
        this.scenario = scenario;
    }

    /** Those of a scenario, in the order in which a page shows them. */
    static List<Knob> of(ScenarioText text, Scenario scenario) {
        Knobs all = new Knobs(text, scenario);
        scenario.trays().forEach(all::ofTray);
        scenario.reservoirs().forEach(all::ofReservoir);
        all.ofSolution();
        all.ofLamp(List.of("lamp"), "lamp", scenario.trays().get(0).lamp());
        all.ofRoom();
        all.ofVisits();
        return all.knobs;
    }

    private void ofTray(Tray tray) {
        List<String> at = List.of(WITHIN, tray.name());
        String group = Names.of(tray.id());
        int from = knobs.size();
        if (!text.has(join(at, "volume"))) {
            double depthCm = 100 * tray.shape().depthM();
            double belowRimCm = depthCm - 100 * tray.overflowM();
            slider(
                    join(at, "depth"),
                    "tray depth",
                    "cm",
                    range(1, Math.max(20, 2 * depthCm), 0.1),
                    depthCm,
                    cm ->
                            text.has(join(at, "overflow"))
                                    ? Map.of(
                                            join(at, "depth"),
                                            quantity(cm, "cm"),
                                            join(at, "overflow"),
                                            quantity(Math.max(0.1, cm - belowRimCm), "cm"))
                                    : one(join(at, "depth"), quantity(cm, "cm")));
        }
        double rimCm = 100 * tray.shape().depthM();
        byDefault(
                join(at, "cup_bottom"),
                "cups, underside above the floor",
                "cm",
                range(0, rimCm, 0.1),
                100 * tray.cupBottomM());
        if (tray.filling() instanceof Filling.ByValve valve && valve.moves().isEmpty()) {
            slider(
                    join(at, "valve", "setting"),
                    "valve shuts at",
                    "cm",
                    range(0.6, 100 * tray.overflowM(), 0.1),
                    100 * valve.settingM());
        }
        if (tray.filling() instanceof Filling.ByHand hand) {
            slider(
                    join(at, "hand", "to"),
                    "topped up to",
                    "cm",
                    range(0.5, 100 * tray.overflowM(), 0.1),
                    100 * hand.toLevelM());
        }
        if (tray.planting() instanceof Planting.OfCrop crop) {
            slider(
                    join(at, "plants"),
                    "plants",
                    "",
                    range(1, Math.max(12, 3 * crop.plants()), 1),
                    crop.plants());
        }
        ofLamp(join(at, "lamp"), group, tray.lamp());
        group(from, group);
    }

    private void ofReservoir(Reservoir reservoir) {
        List<String> at = List.of("reservoir", reservoir.name());
        int from = knobs.size();
        double litres = 1000 * reservoir.fullM3();
        List<String> sides = List.of("length", "width", "diameter", "floor_length", "floor_width");
        List<String> own = new ArrayList<>();
        for (String side : sides) {
            if (text.has(join(at, side))) {
                own.add(side);
            }
        }
        if (text.has(join(at, "volume"))) {
            slider(
                    join(at, "volume"),
                    "litres when full, at the same height",
                    "L",
                    range(1, Math.max(100, 3 * litres), 0.5),
                    litres,
                    to ->
                            one(
                                    join(at, "volume"),
                                    quantity(1000 * rimM3(reservoir) * to / litres, "L")));
        } else if (!own.isEmpty()) {
            slider(
                    join(at, own.get(0)),
                    "litres when full, at the same height",
                    "L",
                    range(1, Math.max(100, 3 * litres), 0.5),
                    litres,
                    to -> wider(at, own, Math.sqrt(to / litres)));
        }
        slider(
                join(at, "floor_above_bench"),
                "floor above the bench",
                "cm",
                range(0, 200, 1),
                100 * reservoir.floorAboveBenchM());
        group(from, Names.of(reservoir.id()));
    }

    private static double rimM3(Reservoir reservoir) {
        return reservoir.shape().volumeM3(reservoir.shape().depthM());
    }

    /** The sides are in the text as they are in the shape; their ratio is all that is needed. */
    private Map<List<String>, String> wider(List<String> at, List<String> sides, double times) {
        Map<List<String>, String> changes = new LinkedHashMap<>();
        for (String side : sides) {
            String stated = text.value(join(at, side)).orElse("");
            String[] parts = stated.strip().split("\\s+");
            double size = Double.parseDouble(parts[0]);
            changes.put(join(at, side), quoted(precise(size * times) + " " + parts[1]));
        }
        return changes;
    }

    private void ofSolution() {
        int from = knobs.size();
        List<String> ec = List.of("feed", "ec");
        if (text.has(ec) || text.has(List.of("feed", "recipe"))) {
            byDefault(
                    ec,
                    "EC of the feed",
                    "mS/cm",
                    range(0.3, 4, 0.01),
                    ElectricalConductivity.at25MsPerCm(scenario.feed().composition()));
        }
        if (!text.has(List.of("water", "analysis"))) {
            ofWater();
        }
        group(from, "solution");
    }

    private void ofWater() {
        List<String> source = List.of("water", "source");
        Map<String, String> waters = new LinkedHashMap<>();
        for (String name : SourceWater.names()) {
            waters.put(name, SourceWater.named(name).orElseThrow().title());
        }
        knobs.add(
                Knob.choice(
                        id(source),
                        "water",
                        waters,
                        text.value(source).orElse(LEFT_OUT_WATER),
                        to -> one(source, quoted(to))));
    }

    private void ofLamp(List<String> at, String group, Lamp lamp) {
        if (BY_WHICH_LIGHT.stream().noneMatch(key -> text.has(join(at, key)))) {
            return;
        }
        int from = knobs.size();
        knobs.add(
                Knob.slider(
                        id(join(at, "ppfd")),
                        "light of the lamp at the leaves",
                        "umol/m2/s",
                        range(0, 1000, 5),
                        lamp.ppfdUmolPerM2S(),
                        to -> lightOf(at, to)));
        knobs.add(
                Knob.slider(
                        id(join(at, "off")),
                        "hours of lamp a day",
                        "h",
                        range(1, 23, 0.5),
                        lamp.litS() / Time.HOUR_S,
                        hours -> lit(at, lamp.onS(), hours)));
        group(from, group);
    }

    /** Light at the leaves in place of lux or watts, where these stand. */
    private Map<List<String>, String> lightOf(List<String> at, double ppfd) {
        Map<List<String>, String> changes = new LinkedHashMap<>();
        changes.put(join(at, "ppfd"), quantity(ppfd, "umol/m2/s"));
        for (String key : INSTEAD_OF_PPFD) {
            if (text.has(join(at, key))) {
                changes.put(join(at, key), "");
            }
        }
        return changes;
    }

    private Map<List<String>, String> lit(List<String> at, double onS, double hours) {
        long offMinute = (long) (onS / 60 + 60 * hours + 0.5) % 1440;
        Map<List<String>, String> changes = new LinkedHashMap<>();
        changes.put(join(at, "off"), quoted(two(offMinute / 60) + ":" + two(offMinute % 60)));
        if (text.has(join(at, "hours"))) {
            changes.put(join(at, "hours"), quantity(hours, "h"));
        }
        return changes;
    }

    private void ofRoom() {
        if (!(scenario.climate() instanceof Climate.Room room)) {
            return;
        }
        int from = knobs.size();
        double[] degC = range(5, 40, 0.5);
        double[] percent = range(10, 95, 1);
        byDefault(
                List.of("climate", "day_temperature"),
                "temperature by day",
                "degC",
                degC,
                room.dayTempC());
        byDefault(
                List.of("climate", "night_temperature"),
                "temperature by night",
                "degC",
                degC,
                room.nightTempC());
        byDefault(
                List.of("climate", "day_humidity"),
                "humidity by day",
                "%",
                percent,
                100 * room.dayHumidityFrac());
        byDefault(
                List.of("climate", "night_humidity"),
                "humidity by night",
                "%",
                percent,
                100 * room.nightHumidityFrac());
        group(from, "air of the room");
    }

    private void ofVisits() {
        int from = knobs.size();
        List<String> days = List.of("visits", "days");
        Map<String, String> rounds = new LinkedHashMap<>();
        rounds.put("\"daily\"", "every day");
        rounds.put("[\"mon\", \"tue\", \"wed\", \"thu\", \"fri\"]", "Monday to Friday");
        rounds.put("[\"mon\", \"wed\", \"fri\"]", "Monday, Wednesday, Friday");
        rounds.put("[\"tue\", \"fri\"]", "Tuesday and Friday");
        rounds.put("[\"sat\", \"sun\"]", "at the weekend");
        rounds.put("[\"mon\"]", "on Mondays");
        String chosen = round(scenario.visits().weekdays());
        rounds.putIfAbsent(chosen, "as written");
        knobs.add(Knob.choice(id(days), "somebody looks", rounds, chosen, to -> one(days, to)));
        List<Visits.Absence> absences = scenario.visits().absences();
        if (absences.size() <= 1 && scenario.days() > 2) {
            ofAbsence(absences.isEmpty() ? null : absences.get(0));
        }
        group(from, "visits");
    }

    private static String round(Set<DayOfWeek> weekdays) {
        if (weekdays.size() == DayOfWeek.values().length) {
            return quoted("daily");
        }
        List<String> names = new ArrayList<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            if (weekdays.contains(day)) {
                names.add(quoted(day.name().substring(0, 3).toLowerCase(Locale.ROOT)));
            }
        }
        return "[" + String.join(", ", names) + "]";
    }

    private void ofAbsence(Visits.Absence now) {
        List<String> away = List.of("visits", "away");
        LocalDate start = scenario.start();
        int last = scenario.days();
        double day =
                now == null
                        ? Math.max(1, last / 2)
                        : 1 + ChronoUnit.DAYS.between(start, now.from());
        double length = now == null ? 0 : 1 + ChronoUnit.DAYS.between(now.from(), now.to());
        knobs.add(
                Knob.slider(
                        id(away) + ".length",
                        "days away",
                        "days",
                        range(0, 28, 1),
                        length,
                        days -> one(away, absence(day, days))));
        if (now != null) {
            knobs.add(
                    Knob.slider(
                            id(away) + ".from",
                            "away from day",
                            "",
                            range(1, last, 1),
                            day,
                            from -> one(away, absence(from, length))));
        }
    }

    private String absence(double fromDay, double days) {
        LocalDate from = scenario.start().plusDays((long) fromDay - 1);
        return days < 1
                ? "[]"
                : "[{ from = " + from + ", to = " + from.plusDays((long) days - 1) + " }]";
    }

    private void group(int from, String group) {
        for (int i = from; i < knobs.size(); i++) {
            knobs.set(i, knobs.get(i).in(group));
        }
    }

    private void slider(List<String> key, String label, String unit, double[] range, double value) {
        slider(key, label, unit, range, value, to -> one(key, quantity(to, unit)));
    }

    /** A slider of a key that holds by default where it is left out. */
    private void byDefault(
            List<String> key, String label, String unit, double[] range, double value) {
        knobs.add(
                Knob.slider(
                        id(key), label, unit, range, value, to -> one(key, quantity(to, unit))));
    }

    private void slider(
            List<String> key,
            String label,
            String unit,
            double[] range,
            double value,
            DoubleFunction<Map<List<String>, String>> change) {
        if (text.has(key)) {
            knobs.add(Knob.slider(id(key), label, unit, range, value, change));
        }
    }

    private static double[] range(double low, double high, double step) {
        return new double[] {low, high, step};
    }

    private static Map<List<String>, String> one(List<String> key, String literal) {
        return Map.of(key, literal);
    }

    private static String quantity(double value, String unit) {
        String number = Numbers.label(value);
        return unit.isEmpty() ? number : quoted(number + " " + unit);
    }

    /** To a ten-thousandth: a side made of litres must give these litres again. */
    private static String precise(double value) {
        return String.valueOf((long) (value * 10_000 + 0.5) / 10_000.0);
    }

    private static String quoted(String words) {
        return '"' + words + '"';
    }

    private static String two(long number) {
        return number < 10 ? "0" + number : Long.toString(number);
    }

    private static String id(List<String> key) {
        return String.join(".", key);
    }

    private static List<String> join(List<String> table, String... names) {
        List<String> key = new ArrayList<>(table);
        key.addAll(List.of(names));
        return List.copyOf(key);
    }
}
