package tideless.study;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestShape;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.sim.TrayTrace;

/**
 * A rig run as it stands, then as its grower would run it who does every task and the first cure of
 * every warning, then so once more.
 *
 * @param first as it stands
 * @param second after the first advice
 * @param third after the second
 */
public record Obeyed(Forecast first, Forecast second, Forecast third) {
    /** A vessel is bought a little larger than asked for, and a feed thinned by as much. */
    private static final double LARGER = 1.15;

    private static final Cure.Kind FILL_BEFORE = Cure.Kind.FILL_AT_THE_VISIT_BEFORE;

    /** Cures that change the rig, the feed or a valve; the others change air, light or visits. */
    private static final Set<Cure.Kind> OF_THE_RIG =
            EnumSet.complementOf(
                    EnumSet.of(
                            Cure.Kind.SHADE_THE_TRAY,
                            Cure.Kind.MORE_LIGHT,
                            Cure.Kind.STRONGER_LAMP,
                            Cure.Kind.SUNNIER_PLACE,
                            Cure.Kind.OTHER_SEASON,
                            Cure.Kind.TOPPED_UP_MEANWHILE,
                            Cure.Kind.WARMER_ROOM,
                            Cure.Kind.COOLER_ROOM,
                            Cure.Kind.COOLER_PLACE,
                            Cure.Kind.WIDER_VENTS,
                            Cure.Kind.SHADE_OVERHEAD,
                            Cure.Kind.DRIER_NIGHTS,
                            Cure.Kind.MORE_WIND,
                            Cure.Kind.SHORTER_DAY,
                            Cure.Kind.VISIT_MORE_OFTEN));

    /** Three runs of a scenario that is sound. */
    public static Obeyed of(Path path) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        Scenario scenario = read(path, changes);
        Forecast first = Forecasts.of(scenario, 1);
        Rig rig = new Rig(new ArrayList<>());
        Forecast second = next(path, changes, rig, first);
        return new Obeyed(first, second, next(path, changes, rig, second));
    }

    /** What has been done to the rig so far: advice of each run in turn. */
    private record Rig(List<Advice> obeyed) {}

    private static Forecast next(
            Path path, List<ChangedScenario.Change> changes, Rig rig, Forecast before) {
        int known = changes.size();
        changes.addAll(inTheFile(before.trace().scenario(), before.advice()));
        rig.obeyed().add(before.advice());
        Scenario scenario = read(path, changes);
        for (Advice advice : rig.obeyed()) {
            scenario = atTheRig(scenario, advice);
        }
        boolean same = changes.size() == known && scenario.equals(before.trace().scenario());
        return same ? before : Forecasts.of(scenario, 1);
    }

    private static Scenario read(Path path, List<ChangedScenario.Change> changes) {
        Reading reading = ChangedScenario.read(path, changes);
        if (reading instanceof Reading.Good good) {
            return good.scenario();
        }
        throw new IllegalStateException(path + " with " + changes + ": " + reading);
    }

    private static List<Cure> firstCures(Advice advice) {
        return advice.warnings().stream()
                .filter(w -> !w.cures().isEmpty())
                .map(w -> w.cures().get(0))
                .toList();
    }

    // ---- what a file says ----------------------------------------------------------------------

    private static List<ChangedScenario.Change> inTheFile(Scenario scenario, Advice advice) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        for (Cure cure : firstCures(advice)) {
            switch (cure.kind()) {
                case RAIN_WATER, SOFTER_WATER ->
                        changes.add(new ChangedScenario.Change("water.rain_share", "100 %"));
                case STRONGER_FEED, LEANER_FEED -> {
                    if (cure.facts().has(Quantity.FEED_EC)) {
                        double told = cure.facts().get(Quantity.FEED_EC);
                        boolean stronger = cure.kind() == Cure.Kind.STRONGER_FEED;
                        changes.add(
                                ec(
                                        cure.facts().has(Quantity.WANTED_EC)
                                                ? cure.facts().get(Quantity.WANTED_EC)
                                                : stronger ? told : told / LARGER));
                    }
                }
                case WIDER_VENTS, SHADE_OVERHEAD, COOLER_ROOM ->
                        changes.addAll(against(cure.facts()));
                case OTHER_RECIPE ->
                        changes.add(new ChangedScenario.Change("feed.recipe", cure.facts().of()));
                default -> {}
            }
        }
        for (Warning warning : advice.warnings()) {
            if (!warning.cures().isEmpty()
                    && warning.cures().get(0).kind() == Cure.Kind.KEEP_OTHERWISE) {
                Cure cure = warning.cures().get(0);
                changes.addAll(kept(scenario, warning, cure.facts()));
                for (Cure then : cure.then()) {
                    changes.addAll(kept(scenario, warning, then.facts()));
                }
            }
            if (!warning.cures().isEmpty()) {
                changes.addAll(forRoots(scenario, warning, warning.cures().get(0)));
            }
            if (warning.kind() == Warning.Kind.TOO_STILL) {
                changes.add(
                        new ChangedScenario.Change(
                                "climate.air_speed", LARGER * warning.measure().limit() + " m/s"));
            }
        }
        return changes;
    }

    /** Of plain water in each top-up, as a file has it. */
    static String shares(Facts facts) {
        return String.format(
                Locale.ROOT,
                "[{ from = %s, share = \"%.0f %%\" }]",
                facts.on().toLocalDate(),
                100 * facts.get(Quantity.LATER_SHARE));
    }

    /** What is said of the climate against heat. */
    static List<ChangedScenario.Change> against(Facts facts) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        if (facts.has(Quantity.AIR_CHANGES)) {
            changes.add(change("climate.vents_open", facts, Quantity.AIR_CHANGES, "/h"));
            changes.add(change("climate.vents_from", facts, Quantity.DAY_TEMP, "degC"));
        } else if (facts.has(Quantity.DAY_TEMP)) {
            changes.add(change("climate.day_temperature", facts, Quantity.DAY_TEMP, "degC"));
            changes.add(change("climate.night_temperature", facts, Quantity.NIGHT_TEMP, "degC"));
        } else if (facts.has(Quantity.LIGHT_SHARE)) {
            changes.add(
                    facts.of().isEmpty()
                            ? change("climate.transmission", facts, Quantity.LIGHT_SHARE, "")
                            : new ChangedScenario.Change("climate.cover", "shade"));
        }
        return changes;
    }

    private static ChangedScenario.Change change(
            String key, Facts facts, Quantity quantity, String unit) {
        return new ChangedScenario.Change(
                key, String.format(Locale.ROOT, "%.3f %s", facts.get(quantity), unit).strip());
    }

    private static List<ChangedScenario.Change> kept(
            Scenario scenario, Warning warning, Facts facts) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        String of = "tray." + warning.vessel().name() + ".";
        if (facts.has(Quantity.WANTED_EC)) {
            Tray tray = named(scenario, warning);
            boolean isOwn = !scenario.feedOf(tray).equals(scenario.feed());
            boolean byValve = tray.filling() instanceof Filling.ByValve;
            String own =
                    byValve
                            ? "reservoir."
                                    + ((Filling.ByValve) tray.filling()).reservoir()
                                    + ".feed_ec"
                            : of + "feed_ec";
            String ec = String.format(Locale.ROOT, "%.2f mS/cm", facts.get(Quantity.WANTED_EC));
            changes.add(new ChangedScenario.Change(isOwn ? own : "feed.ec", ec));
        }
        if (facts.has(Quantity.EC_LIMIT)) {
            changes.add(new ChangedScenario.Change("visits.flush", "at limit"));
        }
        if (facts.has(Quantity.LATER_SHARE)) {
            changes.add(
                    facts.get(Quantity.LATER_SHARE) > 0
                            ? new ChangedScenario.Change(of + "hand.water_share", shares(facts))
                            : new ChangedScenario.Change(of + "hand.with", "solution"));
        }
        if (facts.has(Quantity.LEVEL)) {
            changes.add(
                    new ChangedScenario.Change(
                            of + "hand.to", mm(facts.get(Quantity.LEVEL) / 1000)));
        }
        if (facts.has(Quantity.START_LEVEL)) {
            changes.add(
                    new ChangedScenario.Change(
                            of + "start_level", mm(facts.get(Quantity.START_LEVEL) / 1000)));
        }
        if (!facts.of().isEmpty()) {
            changes.add(
                    new ChangedScenario.Change(
                            "visits.days", "[\"" + facts.of().replace(", ", "\", \"") + "\"]"));
        }
        return changes;
    }

    private static List<ChangedScenario.Change> forRoots(
            Scenario scenario, Warning warning, Cure cure) {
        String of = "tray." + warning.vessel().name() + ".";
        if (cure.kind() == Cure.Kind.CLOSED_DECK) {
            return List.of(new ChangedScenario.Change(of + "gap", "0 %"));
        }
        if (cure.kind() == Cure.Kind.AIR_STONE) {
            return List.of(new ChangedScenario.Change(of + "aerated", "true"));
        }
        if (cure.kind() == Cure.Kind.FILL_HIGHER && cure.facts().has(Quantity.LEVEL)) {
            return List.of(
                    new ChangedScenario.Change(
                            of + "hand.to", mm(cure.facts().get(Quantity.LEVEL) / 1000)));
        }
        if (cure.kind() == Cure.Kind.TOP_UP_LITTLE_AND_OFTEN) {
            return List.of(new ChangedScenario.Change(of + "hand.in_steps", "true"));
        }
        if (cure.kind() != Cure.Kind.LOWER_LEVEL || cure.facts().on() != null) {
            return List.of();
        }
        Tray tray = named(scenario, warning);
        double levelM = cure.facts().get(Quantity.LEVEL) / 1000;
        double cupM = tray.cupBottomM() - (tray.startLevelM() - levelM);
        return List.of(
                new ChangedScenario.Change(of + "valve.setting", mm(levelM)),
                new ChangedScenario.Change(of + "cup_bottom", mm(cupM)));
    }

    private static String mm(double metres) {
        return String.format(Locale.ROOT, "%.1f mm", metres * 1000);
    }

    private static Tray named(Scenario scenario, Warning warning) {
        return scenario.trays().stream()
                .filter(t -> t.id().equals(warning.vessel()))
                .findFirst()
                .orElseThrow();
    }

    private static ChangedScenario.Change ec(double msPerCm) {
        return new ChangedScenario.Change(
                "feed.ec", String.format(Locale.ROOT, "%.2f mS/cm", msPerCm));
    }

    // ---- what is done at the rig ---------------------------------------------------------------

    private static Scenario atTheRig(Scenario scenario, Advice advice) {
        Scenario obeyed = scenario;
        if (asks(advice, FILL_BEFORE) || undone(advice, Task.Kind.REFILL)) {
            obeyed =
                    obeyed.withReservoirs(
                            obeyed.reservoirs().stream()
                                    .map(r -> inTime(r, asks(advice, FILL_BEFORE)))
                                    .toList());
        }
        if (asks(advice, Cure.Kind.LARGER_RESERVOIR)) {
            obeyed =
                    obeyed.withReservoirs(
                            obeyed.reservoirs().stream().map(r -> larger(r, advice)).toList());
        }
        if (undone(advice, Task.Kind.MOVE_VALVE)) {
            obeyed = obeyed.withTrays(obeyed.trays().stream().map(t -> moved(t, advice)).toList());
        }
        if (undone(advice, Task.Kind.FLUSH)
                || undone(advice, Task.Kind.FRESH_SOLUTION)
                || firstCures(advice).contains(Cure.of(Cure.Kind.FRESH_SOLUTION_SOONER))
                || firstCures(advice).stream()
                        .anyMatch(c -> c.kind() == Cure.Kind.CHANGE_AT_LIMIT)) {
            obeyed = obeyed.withVisits(obeyed.visits().withFlush(Visits.Flush.AT_LIMIT));
        }
        Set<VesselId> deeper = new HashSet<>();
        for (Warning warning : advice.warnings()) {
            if (!warning.cures().isEmpty()) {
                Cure cure = warning.cures().get(0);
                obeyed = thinned(obeyed, warning, cure, advice);
                obeyed = fedByHalf(obeyed, warning, cure);
                obeyed = shared(obeyed, warning, cure);
                obeyed = toppedUpMeanwhile(obeyed, warning, cure);
                obeyed = toppedUpAtVisits(obeyed, warning, cure);
                boolean isDeeper = cure.isLargerVessel() || cure.kind() == Cure.Kind.HOLD_MORE;
                if (isDeeper && deeper.add(warning.vessel())) {
                    obeyed = deepened(obeyed, warning, cure.facts());
                }
            }
        }
        return obeyed;
    }

    /** Half feed and half plain water. */
    private static Scenario fedByHalf(Scenario scenario, Warning warning, Cure cure) {
        if (cure.kind() != Cure.Kind.FEED_IN_PLACE_OF_WATER) {
            return scenario;
        }
        Tray lean = named(scenario, warning);
        if (!(lean.filling() instanceof Filling.ByHand hand)) {
            return scenario;
        }
        Pouring half =
                new Pouring(false, List.of(), List.of(new Pouring.Share(scenario.start(), 0.5)));
        return with(
                scenario,
                lean.withFilling(
                        new Filling.ByHand(hand.toLevelM(), hand.days(), half, hand.inSteps())));
    }

    /** At every visit as before, and on the day on which somebody else comes. */
    private static Scenario toppedUpMeanwhile(Scenario scenario, Warning warning, Cure cure) {
        if (cure.kind() != Cure.Kind.TOPPED_UP_MEANWHILE) {
            return scenario;
        }
        Tray dry = named(scenario, warning);
        Filling.ByHand hand = (Filling.ByHand) dry.filling();
        List<LocalDate> days = new ArrayList<>();
        for (int day = 0; day < scenario.days(); day++) {
            LocalDate date = scenario.start().plusDays(day);
            if (hand.days().contains(date)
                    || hand.days().isEmpty() && scenario.visits().on(date)
                    || isCalledFor(cure.facts(), date)) {
                days.add(date);
            }
        }
        return with(
                scenario,
                dry.withFilling(
                        new Filling.ByHand(hand.toLevelM(), days, hand.with(), hand.inSteps())));
    }

    /** The day that is told, and every so many days after it to the last. */
    private static boolean isCalledFor(Facts facts, LocalDate date) {
        long since = date.toEpochDay() - facts.on().toLocalDate().toEpochDay();
        long every = facts.has(Quantity.EVERY) ? (long) facts.get(Quantity.EVERY) : 1;
        double last = facts.has(Quantity.LONGEST) ? facts.get(Quantity.LONGEST) : 0;
        return since >= 0 && since <= last && since % every == 0;
    }

    /** Topped up with feed at every visit in place of one filling. */
    private static Scenario toppedUpAtVisits(Scenario scenario, Warning warning, Cure cure) {
        if (cure.kind() != Cure.Kind.TOP_UP_BY_HAND) {
            return scenario;
        }
        double toM = cure.facts().get(Quantity.LEVEL) / 1000;
        Filling byHand = new Filling.ByHand(toM, List.of(), new Pouring(false, List.of()));
        return with(scenario, named(scenario, warning).withFilling(byHand));
    }

    private static Scenario with(Scenario scenario, Tray other) {
        return scenario.withTrays(
                scenario.trays().stream().map(t -> t.id().equals(other.id()) ? other : t).toList());
    }

    /** Bought a little deeper than asked for, its cups as much higher as its level. */
    private static Scenario deepened(Scenario scenario, Warning warning, Facts facts) {
        Tray small = named(scenario, warning);
        double more = LARGER * facts.get(Quantity.ENOUGH) / facts.get(Quantity.USABLE);
        double byM = (more - 1) * small.startLevelM();
        double side = Math.sqrt(small.shape().areaM2(small.startLevelM()));
        Tray deep =
                TestTray.of(small)
                        .shape(TestShape.box(side, side, small.shape().depthM() + byM))
                        .overflowM(small.overflowM() + byM)
                        .cupBottomM(small.cupBottomM() + byM)
                        .startLevelM(small.startLevelM() + byM)
                        .make();
        return with(scenario, deep);
    }

    private static Scenario thinned(Scenario scenario, Warning warning, Cure cure, Advice advice) {
        boolean byHand = cure.kind() == Cure.Kind.TOP_UP_WITH_WATER;
        if (!byHand && cure.kind() != Cure.Kind.WATER_IN_THE_NEXT_REFILL) {
            return scenario;
        }
        double m3 = cure.facts().get(Quantity.WATER) / 1000;
        double later =
                cure.facts().has(Quantity.LATER_SHARE) ? cure.facts().get(Quantity.LATER_SHARE) : 0;
        Tray salty = named(scenario, warning);
        if (byHand) {
            Filling.ByHand hand = (Filling.ByHand) salty.filling();
            List<Task> poured = poured(advice, Task.Kind.TOP_UP, salty.id(), warning);
            Pouring with = thinned(hand.with(), poured, m3, 1, later);
            Filling other = new Filling.ByHand(hand.toLevelM(), hand.days(), with, hand.inSteps());
            return with(scenario, salty.withFilling(other));
        }
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(
                                r ->
                                        salty.isFedBy(r.name())
                                                ? thinned(r, warning, m3, later, advice)
                                                : r)
                        .toList());
    }

    /** A share of plain water in each refill from a day on. */
    private static Scenario shared(Scenario scenario, Warning warning, Cure cure) {
        if (cure.kind() != Cure.Kind.WATER_SHARE) {
            return scenario;
        }
        Tray salty = named(scenario, warning);
        Pouring.Share share =
                new Pouring.Share(
                        cure.facts().on().toLocalDate(), cure.facts().get(Quantity.LATER_SHARE));
        return scenario.withReservoirs(
                scenario.reservoirs().stream()
                        .map(r -> salty.isFedBy(r.name()) ? sharing(r, share) : r)
                        .toList());
    }

    private static Reservoir sharing(Reservoir reservoir, Pouring.Share share) {
        Reservoir.Refill refill = reservoir.refill();
        return reservoir.withRefill(
                new Reservoir.Refill(
                        refill.when(),
                        refill.belowFrac(),
                        new Pouring(false, refill.with().water(), List.of(share))));
    }

    private static List<Task> poured(
            Advice advice, Task.Kind kind, VesselId into, Warning warning) {
        LocalDateTime on = warning.cures().get(0).facts().on();
        LocalDateTime from = on == null ? warning.from() : on;
        return advice.tasks().stream()
                .filter(task -> task.kind() == kind && task.vessel().equals(into))
                .filter(task -> !task.due().isBefore(from))
                .toList();
    }

    /** Half of each refill from the warning on, until all the water is poured. */
    private static Reservoir thinned(
            Reservoir reservoir, Warning warning, double m3, double later, Advice advice) {
        List<Task> poured = poured(advice, Task.Kind.REFILL, reservoir.id(), warning);
        return reservoir.withRefill(
                new Reservoir.Refill(
                        reservoir.refill().when(),
                        reservoir.refill().belowFrac(),
                        thinned(reservoir.refill().with(), poured, m3, 0.5, later)));
    }

    /** So much of each filling until all the water is poured, and a share of each later one. */
    private static Pouring thinned(
            Pouring before, List<Task> fillings, double m3, double mostFrac, double laterFrac) {
        Pouring pouring = before;
        double left = m3;
        for (Task task : fillings) {
            Facts facts = task.cause().facts();
            double already = facts.has(Quantity.WATER) ? facts.get(Quantity.WATER) : 0;
            double frac = left > 0 ? mostFrac : laterFrac;
            double water = (frac * task.litres() - already) / 1000;
            water = left > 0 ? Math.min(left, water) : water;
            if (water > 0) {
                pouring = with(pouring, new Pouring.Dose(task.due().toLocalDate(), water));
            }
            left -= Math.max(0, water);
        }
        return pouring;
    }

    private static Pouring with(Pouring before, Pouring.Dose dose) {
        List<Pouring.Dose> doses = new ArrayList<>(before.water());
        doses.add(dose);
        doses.sort(java.util.Comparator.comparing(Pouring.Dose::from));
        return new Pouring(before.withWater(), doses);
    }

    /** Told of a reservoir that is not low then: at every visit, as the cure says. */
    private static Reservoir inTime(Reservoir r, boolean always) {
        return r.withRefill(
                r.refill()
                        .on(
                                always
                                        ? Reservoir.Refill.When.EVERY_VISIT
                                        : Reservoir.Refill.When.BEFORE_NEXT_VISIT));
    }

    private static Tray moved(Tray tray, Advice advice) {
        List<Filling.Move> moves =
                advice.tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.MOVE_VALVE && !t.isDone())
                        .filter(t -> t.vessel().equals(tray.id()))
                        .map(
                                t ->
                                        new Filling.Move(
                                                t.due().toLocalDate(), t.measure().value() / 1000))
                        .toList();
        return moves.isEmpty()
                ? tray
                : tray.withFilling(((Filling.ByValve) tray.filling()).withMoves(moves));
    }

    private static Reservoir larger(Reservoir r, Advice advice) {
        for (Sizing sizing : advice.sizings()) {
            if (sizing.reservoir().equals(r.name())
                    && sizing.enoughUsableLitres() > sizing.usableLitres()) {
                double areaM2 =
                        LARGER
                                * sizing.enoughUsableLitres()
                                / 1000
                                / (r.fullLevelM() - r.outletLevelM());
                double side = Math.sqrt(areaM2);
                return new Reservoir(
                        r.name(),
                        TestShape.box(side, side, r.shape().depthM()),
                        r.fullLevelM(),
                        r.outletLevelM(),
                        r.floorAboveBenchM(),
                        r.openAreaM2(),
                        r.startLevelM(),
                        r.refill(),
                        r.trunk());
            }
        }
        return r;
    }

    private static boolean undone(Advice advice, Task.Kind kind) {
        return advice.tasks().stream().anyMatch(t -> t.kind() == kind && !t.isDone());
    }

    private static boolean asks(Advice advice, Cure.Kind kind) {
        return advice.warnings().stream()
                .map(Warning::cures)
                .flatMap(List::stream)
                .anyMatch(c -> c.kind() == kind);
    }

    // ---- what came of it -----------------------------------------------------------------------

    /** Tasks not done, and warnings whose first cure changes the rig, the feed or a valve. */
    public static List<String> wishes(Forecast forecast) {
        List<String> wishes = new ArrayList<>();
        for (Task task : forecast.advice().tasks()) {
            if (!task.isDone()) {
                wishes.add(task.kind() + " " + task.vessel().name());
            }
        }
        for (Warning warning : forecast.advice().warnings()) {
            if (!warning.cures().isEmpty() && OF_THE_RIG.contains(warning.cures().get(0).kind())) {
                wishes.add(warning.kind() + " " + warning.vessel().name());
            }
        }
        return wishes;
    }

    /** Hours in which a tray stood dry while its crop lived. */
    public static double dryHours(Forecast forecast) {
        return forecast.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.DRIED_OUT)
                .mapToDouble(w -> w.measure().value())
                .sum();
    }

    /**
     * Greatest loss of any tray from the first to the second run, share; negative for a gain. Crops
     * are weighed at one age: what is ready sooner is cut sooner, and no heavier.
     */
    public double worstLoss() {
        double worst = Double.NEGATIVE_INFINITY;
        for (TrayTrace of : first.trace().trays()) {
            double gain = Improvement.gainFrac(first.trace(), second.trace(), of.tray().id());
            worst = Math.max(worst, -gain);
        }
        return worst;
    }
}
