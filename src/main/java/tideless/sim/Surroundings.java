package tideless.sim;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.LogEntry;
import tideless.rig.Numerics;
import tideless.rig.Place;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;

/**
 * The clock and the air of a scenario, worked out once for all runs that share them. Immutable; any
 * number of threads may run from one.
 */
public final class Surroundings {
    final Timeline timeline;
    final AirSeries air;
    private final Given given;

    private Surroundings(Scenario scenario, Timeline timeline) {
        this.timeline = timeline;
        air = AirSeries.of(scenario, timeline);
        given = Given.of(scenario);
    }

    /** Works them out as a trace needs them: every hour is stepped to. */
    public static Surroundings of(Scenario scenario) {
        return new Surroundings(scenario, Timeline.of(scenario, true));
    }

    /**
     * Works them out for seasons alone: in a room, where the air holds for hours, no hour is
     * stepped to for its own sake, so that the scenario's step may be longer than one.
     */
    public static Surroundings forSeasons(Scenario scenario) {
        return new Surroundings(scenario, Timeline.of(scenario, false));
    }

    /**
     * Those of a scenario like that of these, in air of the same kind that is warmer, damper or
     * brighter; the clock is shared where it can be.
     */
    public Surroundings around(Scenario other) {
        if (suit(other)) {
            return this;
        }
        Given of = Given.of(other);
        return given.hasClockOf(of) ? new Surroundings(other, timeline) : forSeasons(other);
    }

    /**
     * Whether another scenario stands in the same air and steps to the same instants: days, place,
     * climate, step, visits, the hours of the lamps and those of the log must be equal. Rigs,
     * plants, solutions and the light of a lamp may differ.
     */
    public boolean suit(Scenario scenario) {
        return given.equals(Given.of(scenario));
    }

    /** All that {@link Timeline} and {@link AirSeries} read of a scenario. */
    private record Given(
            LocalDate start,
            int days,
            Place place,
            Climate climate,
            Numerics numerics,
            Visits visits,
            List<LampHours> lamps,
            List<LocalDate> handDays,
            List<Double> loggedS) {

        /** Whether a timeline of the one is that of the other. */
        boolean hasClockOf(Given other) {
            boolean sameDay =
                    climate instanceof Climate.Room a
                            && other.climate instanceof Climate.Room b
                            && a.dayBeginS() == b.dayBeginS()
                            && a.dayEndS() == b.dayEndS()
                            && a.isHourly() == b.isHourly();
            boolean hourly =
                    !(climate instanceof Climate.Room) && !(other.climate instanceof Climate.Room);
            return (sameDay || hourly)
                    && start.equals(other.start)
                    && days == other.days
                    && numerics.equals(other.numerics)
                    && visits.equals(other.visits)
                    && lamps.equals(other.lamps)
                    && handDays.equals(other.handDays)
                    && loggedS.equals(other.loggedS);
        }

        static Given of(Scenario scenario) {
            List<LampHours> lamps = new ArrayList<>();
            List<LocalDate> handDays = new ArrayList<>();
            for (Tray tray : scenario.trays()) {
                Lamp lamp = tray.lamp();
                lamps.add(
                        new LampHours(
                                lamp.ppfdUmolPerM2S() > 0,
                                lamp.onS(),
                                lamp.offS(),
                                lamp.levels().stream().map(Lamp.Level::fromS).toList()));
                if (tray.filling() instanceof Filling.ByHand hand) {
                    handDays.addAll(hand.days());
                }
            }
            return new Given(
                    scenario.start(),
                    scenario.days(),
                    scenario.place(),
                    scenario.climate(),
                    scenario.numerics(),
                    scenario.visits(),
                    lamps,
                    handDays,
                    scenario.log().entries().stream().map(LogEntry::atS).toList());
        }
    }

    private record LampHours(boolean lit, double onS, double offS, List<Double> dimmedS) {}
}
