package tideless.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Departures;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * The log of a grower who does not exist: the rig they have is run, what they do at its visits
 * enters as done, and what they read is what it holds with the noise of their ruler, meter and jug.
 *
 * @param rig as it really is
 * @param departures of its days from what any scenario states
 * @param days of log
 * @param random of the noise
 */
record InventedLog(Scenario rig, Departures departures, int days, SplittableRandom random) {
    private static final double VISIT_S = 8 * Time.HOUR_S;

    /** A plan of when what is read, and which refill comes late. */
    interface Plan {
        /** What is read at the visit of a day, before anything is done. */
        List<LogEntry.Reading> readings(int day, double atS);

        /** By how many days the so-manieth refill, from 1 on, comes late. */
        int late(int refill);
    }

    /** A reading to be taken. */
    static LogEntry.Reading wanted(double atS, VesselId where, LogEntry.Quantity what) {
        return new LogEntry.Reading(atS, where, what, 0, false, 0);
    }

    /** Levels of the reservoirs on three days of a week, EC of the trays on one. */
    static Plan usual(Scenario rig) {
        return new Plan() {
            @Override
            public List<LogEntry.Reading> readings(int day, double atS) {
                List<LogEntry.Reading> all = new ArrayList<>();
                if (day % 7 == 2 || day % 7 == 4 || day % 7 == 6) {
                    for (Reservoir reservoir : rig.reservoirs()) {
                        all.add(wanted(atS, reservoir.id(), LogEntry.Quantity.LEVEL));
                    }
                }
                if (day % 7 == 6) {
                    for (Tray tray : rig.trays()) {
                        all.add(wanted(atS, tray.id(), LogEntry.Quantity.EC));
                    }
                }
                return all;
            }

            @Override
            public int late(int refill) {
                return 0;
            }
        };
    }

    private Season season(List<LogEntry> entries) {
        Scenario logged = rig.withLog(new Log(entries));
        return Simulation.season(logged, Surroundings.forSeasons(logged), departures);
    }

    /** The log, with a look on its last day where nothing else stands there. */
    Log log(Plan plan) {
        List<LogEntry> entries = new ArrayList<>();
        for (int day = 1; day < days; day++) {
            entries.addAll(plan.readings(day, day * Time.DAY_S + VISIT_S));
        }
        List<LogEntry> deeds = deeds(plan);
        entries.addAll(deeds);
        entries.sort(Comparator.comparingDouble(LogEntry::atS)); // stable: read, then done
        double lastS = (days - 1) * Time.DAY_S + VISIT_S;
        if (entries.isEmpty() || entries.get(entries.size() - 1).atS() < lastS) {
            entries.add(new LogEntry.Looked(lastS));
        }
        List<Double> read = season(entries).read();
        List<LogEntry> written = new ArrayList<>();
        int i = 0;
        for (LogEntry entry : entries) {
            if (entry instanceof LogEntry.Reading wanted) {
                written.add(read(wanted, read.get(i++)));
            } else {
                written.add(entry);
            }
        }
        return new Log(written);
    }

    /** Refills as the rule has them, some later; each with the litres it took. */
    private List<LogEntry> deeds(Plan plan) {
        List<LogEntry> deeds = new ArrayList<>();
        double endS = days * Time.DAY_S;
        for (int refill = 1; ; refill++) {
            Optional<Event> next = nextDeed(season(deeds), deeds);
            if (next.isEmpty()) {
                return deeds;
            }
            double atS = next.get().atS() + plan.late(refill) * Time.DAY_S;
            if (atS >= endS) {
                return deeds;
            }
            VesselId where = next.get().vessel();
            if (next.get().kind() == Event.Kind.HARVEST) {
                deeds.add(new LogEntry.Harvested(atS, where));
            } else {
                deeds.add(wanted(atS, where, LogEntry.Quantity.POURED));
                deeds.add(new LogEntry.FilledUp(atS, where));
            }
        }
    }

    private static Optional<Event> nextDeed(Season season, List<LogEntry> deeds) {
        double lastS =
                deeds.isEmpty() ? Double.NEGATIVE_INFINITY : deeds.get(deeds.size() - 1).atS();
        return season.events().stream()
                .filter(e -> e.atS() > lastS)
                .filter(
                        e ->
                                e.kind() == Event.Kind.REFILL
                                        || e.kind() == Event.Kind.TOP_UP
                                        || e.kind() == Event.Kind.HARVEST)
                .findFirst();
    }

    private LogEntry.Reading read(LogEntry.Reading wanted, double truth) {
        double noise = DemandDoubt.deviate(DemandDoubt.unit(random));
        double value =
                switch (wanted.what()) {
                    // A ruler has lines every millimetre.
                    case LEVEL ->
                            Math.max(
                                    0,
                                    Math.rint(1000 * (truth + SyntheticGrowers.RULER_M * noise))
                                            / 1000);
                    case EC ->
                            Math.rint(100 * truth * (1 + SyntheticGrowers.EC_FRAC * noise)) / 100;
                    case POURED ->
                            Math.rint(1e4 * truth * (1 + SyntheticGrowers.JUG_FRAC * noise)) / 1e4;
                    case FRESH_MASS -> Math.rint(truth * (1 + 0.1 * noise));
                    case PH -> Math.rint(10 * (truth + 0.1 * noise)) / 10;
                    case TEMPERATURE -> Math.rint(2 * (truth + 0.5 * noise)) / 2;
                    case ROOT_LENGTH -> Math.rint(1000 * truth * (1 + 0.1 * noise)) / 1000;
                };
        return new LogEntry.Reading(wanted.atS(), wanted.where(), wanted.what(), value, true, 0);
    }
}
