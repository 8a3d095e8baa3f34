package tideless.study;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import tideless.advice.Seedlings;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * The setting of a valve with which a third of the hanging roots is wet and two thirds are in air,
 * as a mean over the hours in which roots hang out of the cup. Where that leaves them dry at first,
 * the valve begins higher and is moved once the roots reach; the mean is then over the hours from
 * the day on which plants have drunk the tray down to it. What is found is a setting that a run
 * bears without harm.
 *
 * @param tray its name
 * @param givenMm setting as it stands, mm
 * @param givenWetFrac share wet as it stands, 0-1; NaN where no root leaves the cup
 * @param foundMm the setting, mm; empty where none between the bounds does
 * @param lowestMm lowest setting tried, one throttling band, mm
 * @param highestMm highest tried, the cup's underside or the overflow, mm
 * @param wetFracAtLowest share wet there, 0-1
 * @param lastWetFrac at the found setting on the last day, 0-1; NaN where none was found
 * @param atFirst where to begin and until when; empty where the found setting does from the first
 *     day on
 * @param harms whether one that keeps a third wet was found, but leaves roots dry whenever it is
 *     set
 */
public record ValveHeight(
        String tray,
        double givenMm,
        double givenWetFrac,
        Optional<Double> foundMm,
        double lowestMm,
        double highestMm,
        double wetFracAtLowest,
        double lastWetFrac,
        Optional<AtFirst> atFirst,
        boolean harms) {
    /**
     * A setting to begin with.
     *
     * @param mm setting, mm
     * @param until day of the visit at which the valve is moved to the one that was found
     */
    public record AtFirst(double mm, LocalDate until) {}

    /** Share of hanging roots to be wet; a rule of thumb of suspended cups, common practice. */
    public static final double WET_FRAC = 1.0 / 3;

    /** What a ruler shows, m. */
    private static final double CLOSE_M = 2e-5;

    /** So far below a level root tips are before it is lowered to it, m; assumed. */
    private static final double REACH_M = 0.01;

    /** So near above its setting a tray stands at it, m; assumed. */
    private static final double THERE_M = 0.002;

    private static final Set<Event.Kind> HARMS =
            EnumSet.of(
                    Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.DRIED_OUT, Event.Kind.DIED);

    private static final double MM_PER_M = 1000;

    /**
     * Finds it.
     *
     * @throws IllegalArgumentException where no valve fills the tray
     */
    public static ValveHeight of(Scenario scenario, String name) {
        Tray tray =
                scenario.trays().stream()
                        .filter(t -> t.name().equals(name))
                        .findFirst()
                        .orElseThrow();
        if (!(tray.filling() instanceof Filling.ByValve valve)) {
            throw new IllegalArgumentException("no valve fills tray " + name);
        }
        double low = valve.bandM();
        double high = Math.min(tray.overflowM(), tray.cupBottomM());
        Wet given = wet(scenario, tray, valve);
        Wet atLow = wet(scenario, tray, held(valve, low));
        Optional<Wet> found = search(low, high, m -> wet(scenario, tray, held(valve, m)));
        Optional<AtFirst> atFirst = Optional.empty();
        boolean harms = false;
        if (found.isEmpty() ? atLow.isHarmed : found.get().isHarmed) {
            double firstM = given.isHarmed ? Seedlings.firstLevelM(tray) : valve.settingM();
            Reach reach = new Reach(scenario, tray, held(valve, firstM));
            Optional<Wet> moved = search(low, high, m -> reach.wet(m).orElse(Wet.NONE));
            harms = moved.filter(w -> w.isHarmed).isPresent();
            found = moved.filter(w -> !w.isHarmed);
            atFirst =
                    found.map(
                            w ->
                                    new AtFirst(
                                            MM_PER_M * firstM,
                                            reach.dayOf(w.settingM).orElseThrow()));
        }
        return new ValveHeight(
                name,
                MM_PER_M * valve.settingM(),
                given.meanFrac,
                found.map(w -> MM_PER_M * w.settingM),
                MM_PER_M * low,
                MM_PER_M * high,
                atLow.meanFrac,
                found.map(w -> w.lastFrac).orElse(Double.NaN),
                atFirst,
                harms);
    }

    /** The lowest setting with a third wet; empty where none between the bounds has it. */
    private static Optional<Wet> search(double low, double high, DoubleFunction<Wet> wet) {
        Wet atHigh = wet.apply(high);
        if (!(wet.apply(low).meanFrac <= WET_FRAC && atHigh.meanFrac >= WET_FRAC)) {
            return Optional.empty();
        }
        double from = low;
        double to = high;
        Wet found = atHigh;
        while (to - from > CLOSE_M) {
            double mid = 0.5 * (from + to);
            Wet at = wet.apply(mid);
            if (at.meanFrac < WET_FRAC) {
                from = mid;
            } else {
                to = mid;
                found = at;
            }
        }
        return Optional.of(found);
    }

    private static Filling.ByValve held(Filling.ByValve valve, double settingM) {
        return valve.withSettings(m -> settingM);
    }

    /** From which visit on the roots of a run that begins high reach down to a level. */
    private static final class Reach {
        private final Scenario scenario;
        private final Tray tray;
        private final Filling.ByValve first;
        private final Trace trace;

        Reach(Scenario scenario, Tray tray, Filling.ByValve first) {
            this.scenario = scenario;
            this.tray = tray;
            this.first = first;
            trace = Simulation.runUnread(with(scenario, tray, first));
        }

        /** Empty where they never do. */
        Optional<LocalDate> dayOf(double levelM) {
            TrayTrace run = trace.tray(tray.id());
            for (int day = 1; day < scenario.days(); day++) {
                LocalDate date = scenario.start().plusDays(day);
                if (scenario.visits().on(date) && run.rootTipM().at(24 * day) < levelM - REACH_M) {
                    return Optional.of(date);
                }
            }
            return Optional.empty();
        }

        /** Of the run that is moved to a setting then; empty where it never is. */
        Optional<Wet> wet(double settingM) {
            return dayOf(settingM)
                    .map(
                            on ->
                                    ValveHeight.wet(
                                            scenario,
                                            tray,
                                            first.withMoves(
                                                    List.of(new Filling.Move(on, settingM))),
                                            24
                                                    * (int)
                                                            (on.toEpochDay()
                                                                    - scenario.start()
                                                                            .toEpochDay()),
                                            settingM));
        }
    }

    private record Wet(double settingM, double meanFrac, double lastFrac, boolean isHarmed) {
        static final Wet NONE = new Wet(Double.NaN, 0, Double.NaN, true);
    }

    private static Wet wet(Scenario scenario, Tray tray, Filling.ByValve valve) {
        return wet(scenario, tray, valve, 0, valve.settingM());
    }

    private static Scenario with(Scenario scenario, Tray tray, Filling.ByValve valve) {
        return scenario.withTray(with(tray, valve));
    }

    /** A tray that begins at its valve's level does so at any other. */
    private static Tray with(Tray tray, Filling.ByValve valve) {
        boolean atValve =
                tray.filling() instanceof Filling.ByValve given
                        && tray.startLevelM() == given.settingM();
        return tray.withFilling(valve)
                .withStartLevelM(atValve ? valve.settingM() : tray.startLevelM());
    }

    /** Over all crops of the tray, from an hour on. */
    private static Wet wet(
            Scenario scenario, Tray tray, Filling.ByValve valve, int fromHour, double settingM) {
        Trace trace = Simulation.runUnread(with(scenario, tray, valve));
        TrayTrace run = trace.tray(tray.id());
        double sum = 0;
        int hours = 0;
        double last = Double.NaN;
        boolean isHarmed = false;
        for (PlantingTrace planting : trace.plantings(run)) {
            int from = Math.max(fromHour, planting.firstHour());
            for (int h = from; h < endHour(trace, planting); h++) {
                boolean isThere = fromHour == 0 || run.levelM().at(h) < settingM + THERE_M;
                if (isThere && run.rootTipM().at(h) < run.tray().cupBottomM()) {
                    last = run.wetRootFrac().at(h);
                    sum += last;
                    hours++;
                }
            }
            isHarmed |= planting.events().stream().anyMatch(e -> HARMS.contains(e.kind()));
        }
        double noHours = fromHour == 0 ? Double.NaN : 0; // of a level that is never come down to
        return new Wet(settingM, hours == 0 ? noHours : sum / hours, last, isHarmed);
    }

    /** The hour in which it is cut or lost does not count. */
    private static int endHour(Trace trace, PlantingTrace planting) {
        return planting.events().stream()
                .filter(e -> e.kind() == Event.Kind.HARVEST || e.kind() == Event.Kind.DIED)
                .mapToInt(e -> (int) (e.atS() / Time.HOUR_S))
                .min()
                .orElse(trace.hours());
    }
}
