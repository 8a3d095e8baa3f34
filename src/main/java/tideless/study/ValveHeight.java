package tideless.study;

import java.util.List;
import java.util.Optional;
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
 * as a mean over the hours in which roots hang out of the cup.
 *
 * @param tray its name
 * @param givenMm setting as it stands, mm
 * @param givenWetFrac share wet as it stands, 0-1; NaN where no root leaves the cup
 * @param foundMm the setting, mm; empty where none between the bounds does
 * @param lowestMm lowest setting tried, one throttling band, mm
 * @param highestMm highest tried, the cup's underside or the overflow, mm
 * @param wetFracAtLowest share wet there, 0-1
 * @param lastWetFrac at the found setting on the last day, 0-1; NaN where none was found
 * @param strands whether roots are left dry for a while at the found setting
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
        boolean strands) {
    /** Share of hanging roots to be wet; a rule of thumb of suspended cups, common practice. */
    public static final double WET_FRAC = 1.0 / 3;

    /** What a ruler shows, m. */
    private static final double CLOSE_M = 2e-5;

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
        Wet given = wet(scenario, name, valve.settingM());
        Wet atLow = wet(scenario, name, low);
        Wet atHigh = wet(scenario, name, high);
        Optional<Double> found = Optional.empty();
        Wet at = null;
        if (atLow.meanFrac <= WET_FRAC && atHigh.meanFrac >= WET_FRAC) {
            double from = low;
            double to = high;
            while (to - from > CLOSE_M) {
                double mid = 0.5 * (from + to);
                if (wet(scenario, name, mid).meanFrac < WET_FRAC) {
                    from = mid;
                } else {
                    to = mid;
                }
            }
            found = Optional.of(MM_PER_M * to);
            at = wet(scenario, name, to);
        }
        return new ValveHeight(
                name,
                MM_PER_M * valve.settingM(),
                given.meanFrac,
                found,
                MM_PER_M * low,
                MM_PER_M * high,
                atLow.meanFrac,
                at == null ? Double.NaN : at.lastFrac,
                at != null && at.strands);
    }

    private record Wet(double meanFrac, double lastFrac, boolean strands) {}

    private static Wet wet(Scenario scenario, String name, double settingM) {
        List<Tray> trays =
                scenario.trays().stream()
                        .map(
                                t ->
                                        t.name().equals(name)
                                                ? t.withFilling(
                                                        ((Filling.ByValve) t.filling())
                                                                .withSettings(m -> settingM))
                                                : t)
                        .toList();
        Trace trace = Simulation.runUnread(scenario.withTrays(trays));
        for (TrayTrace run : trace.trays()) {
            if (run.tray().name().equals(name)) {
                return of(trace, run);
            }
        }
        throw new IllegalStateException("no tray " + name);
    }

    /** Over all crops of the tray. */
    private static Wet of(Trace trace, TrayTrace run) {
        double sum = 0;
        int hours = 0;
        double last = Double.NaN;
        boolean strands = false;
        for (PlantingTrace planting : trace.plantings(run)) {
            for (int h = planting.firstHour(); h < endHour(trace, planting); h++) {
                if (run.rootTipM().at(h) < run.tray().cupBottomM()) {
                    last = run.wetRootFrac().at(h);
                    sum += last;
                    hours++;
                }
            }
            strands |= planting.events().stream().anyMatch(e -> e.kind() == Event.Kind.STRANDED);
        }
        return new Wet(hours == 0 ? Double.NaN : sum / hours, last, strands);
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
