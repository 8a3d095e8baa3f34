package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.rig.Correction;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/**
 * What a grower's log says of their own rig and plants, and what it makes of the dates.
 *
 * @param scenario as stated, with its log
 * @param correction what it is corrected by
 * @param learned of each thing that was doubted, in a fixed order
 * @param leaks of each reservoir whose levels were read
 * @param readings those that something is learned from, in order of time
 * @param idle those that nothing is learned from, with what was foretold of them
 * @param tied pairs of things the log does not tell apart
 * @param next readings that would narrow the next dates most, the best first
 * @param dates the next of each kind after the log's end
 * @param drunkL litres drunk in the whole run, as stated and as corrected
 * @param toDrinkL of those, litres drunk from the day of the log's last entry on
 * @param oddities what is no noise
 * @param members rigs of which each band of dates and litres is
 * @param asked how many were asked for: more where the work was broken off
 */
public record Fit(
        Scenario scenario,
        Correction correction,
        List<Learned> learned,
        List<Leak> leaks,
        List<Judged> readings,
        List<Judged> idle,
        List<Tied> tied,
        List<Next> next,
        List<Dated> dates,
        Change drunkL,
        Change toDrinkL,
        List<Oddity> oddities,
        int members,
        int asked) {

    /**
     * A leak is said to be there where the readings fit so much better with it, in standard
     * deviations of a normal deviate, as they do without one once in a hundred logs: the signed
     * root of the likelihood ratio, one side (Chernoff 1954, from memory).
     */
    static final double LEAK_SAID = 2.3263;

    /** Where they do once in ten it is not ruled out. */
    static final double LEAK_OPEN = 1.2816;

    /** Normal deviate beyond which a tenth lies. */
    static final double AT_90 = 1.2816;

    public Fit {
        learned = List.copyOf(learned);
        leaks = List.copyOf(leaks);
        readings = List.copyOf(readings);
        idle = List.copyOf(idle);
        tied = List.copyOf(tied);
        next = List.copyOf(next);
        dates = List.copyOf(dates);
        oddities = List.copyOf(oddities);
    }

    /**
     * What was learned of one thing.
     *
     * @param what in the words of {@link Correction}
     * @param of the crop, tray or reservoir; empty where it is the whole rig
     * @param value most likely: a factor, or m for a valve, or m3/s for a leak
     * @param low a tenth of the chance lies below it
     * @param high a tenth of the chance lies above it
     * @param left share of the doubt before that is left, 0-1
     * @param deviate how far it lies from what was stated, in standard deviations of the doubt
     *     before
     */
    public record Learned(
            String what,
            String of,
            double value,
            double low,
            double high,
            double left,
            double deviate) {
        /** Whether the log says that it is otherwise than stated: nine tenths lie to one side. */
        public boolean isOff() {
            return Math.abs(deviate) > AT_90 * left && left < 0.95;
        }
    }

    /**
     * Whether a reservoir loses what nothing drinks.
     *
     * @param evidence by how much better the readings fit with a leak, in standard deviations of a
     *     normal deviate, at least 0
     * @param litresPerDay most likely if it does, L/day
     * @param mostLitresPerDay a tenth of the chance lies above it if it does, L/day
     * @param shownFromL leaks from this size on are said in nine of ten logs like this one, L/day:
     *     the detection limit of what the readings' own errors leave (Currie 1968, from memory)
     * @param beganS when it began at the earliest, s since the start; 0 where it is as old as the
     *     log for all that is known
     * @param beganByS when at the latest
     * @param drawnL what the trays below drew from it on an average day of the log, L
     * @param jugTimes what litres of its refills were written down as over what they were, where
     *     that explains the log as well as a leak that is said or open; else 1
     * @param instead thirst and growth that are otherwise than stated without a leak, and with one,
     *     which the readings fit as well, are not
     */
    public record Leak(
            String reservoir,
            double evidence,
            double litresPerDay,
            double mostLitresPerDay,
            double shownFromL,
            double beganS,
            double beganByS,
            double drawnL,
            double jugTimes,
            List<Learned> instead) {
        public Leak {
            instead = List.copyOf(instead);
        }

        /** Whether it began within the log. */
        public boolean hasBegun() {
            return beganByS > 0;
        }

        public boolean isSaid() {
            return evidence > LEAK_SAID;
        }

        Leak withJug(double times) {
            return new Leak(
                    reservoir,
                    evidence,
                    litresPerDay,
                    mostLitresPerDay,
                    shownFromL,
                    beganS,
                    beganByS,
                    drawnL,
                    times,
                    instead);
        }

        /** Whether a jug that holds less than it is taken for explains the log as well. */
        public boolean mayBeTheJug() {
            return jugTimes > 1;
        }

        /** Whether it is neither said nor unlikely. */
        public boolean isOpen() {
            return !isSaid() && (evidence > LEAK_OPEN || !instead.isEmpty());
        }
    }

    /**
     * A reading beside its forecasts.
     *
     * @param before as stated, in the reading's unit; NaN where nothing was foretold
     * @param after as corrected
     * @param deviation of the reading about its forecast
     * @param weight 1.25 for one that fits, near 0 for a wild one
     * @param worth share of the doubt of the next dates that it took away, 0-1
     */
    public record Judged(
            LogEntry.Reading reading,
            double before,
            double after,
            double deviation,
            double weight,
            double worth) {
        /** Reading less forecast, in standard deviations. */
        public double residual() {
            return (reading.value() - after) / deviation;
        }
    }

    /** Two things the log does not tell apart, by what and of what. */
    public record Tied(Learned one, Learned other) {}

    /**
     * A reading not taken yet.
     *
     * @param inDays from the log's last entry on
     * @param shareLeft share of the doubt of the next dates that would be left, 0-1
     */
    public record Next(LogEntry.Quantity what, VesselId where, double inDays, double shareLeft) {}

    /**
     * A date to come.
     *
     * @param statedS when it would have been as stated, s since the start
     * @param rigsS when each of the corrected rigs sees it; infinite for never
     */
    public record Dated(Event.Kind kind, VesselId where, Band statedS, List<Double> rigsS) {
        public Dated {
            rigsS = List.copyOf(rigsS);
        }

        /** When as corrected, s since the start. */
        public Band correctedS() {
            return Band.of(rigsS.stream().mapToDouble(Double::doubleValue).toArray());
        }
    }

    /** A figure as stated and as corrected. */
    public record Change(Band stated, Band corrected) {}

    /**
     * Something in the log that no noise explains.
     *
     * @param reading at which it shows
     * @param sinceS since when, s since the start
     * @param amount how much: litres, or mS/cm, or m for a level that a valve holds; above 0
     */
    public record Oddity(Kind kind, LogEntry.Reading reading, double sinceS, double amount) {
        /** Kinds of oddity. */
        public enum Kind {
            /** A vessel would have run dry, and the log holds no refill of it since. */
            NO_REFILL,
            /** The level stands higher than it can without a refill that is not in the log. */
            LEVEL_ROSE,
            /** The level fell by more than plants drink. */
            LEVEL_FELL,
            /**
             * The first level of a vessel is lower than its start and what plants drink make it.
             */
            BELOW_START,
            /** It fell in a night by more than plants drink then. */
            NIGHT_LOSS,
            /** A tray stands above what its valve is set to, again and again. */
            VALVE_HIGH,
            /** Below it. */
            VALVE_LOW,
            /** EC is lower than it can be without water that is not in the log. */
            THINNED,
            /** EC is higher than anything that is known makes it. */
            THICKENED,
            /** One reading lies far off all others: a slip. */
            SLIP
        }
    }

    /**
     * Learns from a log. Once something is learned, an interruption keeps it, with bands of the
     * rigs that were run.
     *
     * @param scenario with its log
     * @param members rigs that yours might be, for each of the bands, at least 1
     * @param seed of all that is drawn
     * @return empty where the log holds nothing to learn from
     * @throws InterruptedException when the workers are interrupted before that
     */
    public static Optional<Fit> of(Scenario scenario, int members, long seed, Workers workers)
            throws InterruptedException {
        List<LogEntry.Reading> believed = Believed.of(scenario);
        if (believed.isEmpty()) {
            return Optional.empty();
        }
        LoggedReadings readings = new LoggedReadings(scenario, believed, workers);
        return Optional.of(new Learning(readings, seed).fit(members));
    }

    /**
     * Runs that do what the log says was done and believe no level that was read, so that what was
     * read can be held against them.
     *
     * @param stated the scenario as stated
     * @param corrected as corrected
     */
    public record Runs(Trace stated, Trace corrected) {}

    /**
     * Makes them.
     *
     * @throws InterruptedException when the workers are interrupted
     */
    public Runs runs(Workers workers) throws InterruptedException {
        List<LogEntry> entries = new ArrayList<>();
        for (LogEntry entry : scenario.log().entries()) {
            entries.add(
                    entry instanceof LogEntry.Reading r
                            ? new LogEntry.Reading(
                                    r.atS(), r.where(), r.what(), r.value(), false, r.line())
                            : entry);
        }
        Scenario blind = scenario.withLog(new Log(entries));
        List<Scenario> both = List.of(blind, correction.applied(blind));
        List<Trace> traces = workers.each(2, i -> Simulation.run(both.get(i)));
        return new Runs(traces.get(0), traces.get(1));
    }
}
