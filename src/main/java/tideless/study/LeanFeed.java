package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Spells;
import tideless.physics.Time;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.PlantingTrace;
import tideless.sim.Shortage;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;

/**
 * The feed that keeps every tray in its band to harvest without a flush, found by running the
 * scenario with the feed made leaner and richer.
 *
 * <p>Only the trays that get the scenario's own feed are judged, not those with one of their own.
 *
 * <p>The feed's salts (what it holds beyond its water) are scaled and brought back to its pH in
 * air. A tray's greatest EC rises with the feed's and so does its least, so the feeds that never
 * grow too salty end at one EC and those that never grow too lean begin at another; each is found
 * by halving. A band counts as left when it is left for 24 hours together.
 *
 * @param given the feed of the scenario, mS/cm at 25 degC
 * @param leanest leanest feed with no tray too lean or short of a nutrient; empty where even the
 *     richest tried (or the saltiest that is borne) leaves one so
 * @param richest richest feed with no tray too salty; empty where even the leanest makes one so
 * @param trials every feed tried, in order of its EC
 * @param waterMsPerCm what the water alone reads, mS/cm at 25 degC
 * @param flushed where no feed does: what flushing at the limit comes to, by tray; else empty
 */
public record LeanFeed(
        double given,
        Optional<Double> leanest,
        Optional<Double> richest,
        List<Trial> trials,
        double waterMsPerCm,
        List<Flushed> flushed) {

    /** EC to which the ends are found, mS/cm: two digits of a meter. */
    private static final double FOUND_TO_MS_PER_CM = 0.02;

    /**
     * Kept clear of the leanest feed that does, in logarithms: what a mixture and a meter may be
     * off by together ({@link Unknowns}), nine times in ten (1.28 standard deviations).
     */
    private static final double RESERVE =
            1.28
                    * Math.sqrt(
                            Unknowns.FEED_SD * Unknowns.FEED_SD
                                    + Unknowns.METER_SD * Unknowns.METER_SD);

    /** Richest feed looked for, times the given one. */
    private static final double RICHEST = 2;

    /** How a tray leaves its band. */
    public enum Fault {
        /** EC above the band; the figure is the highest of it, mS/cm. */
        TOO_SALTY,
        /** Too much of one ion; the figure is that at the crop's end, mmol/L. */
        TOO_RICH,
        /** EC below the band; the figure is the lowest of it, mS/cm. */
        TOO_LEAN,
        /** Hardly anything of one ion; the figure is that of the first hour, mmol/L. */
        SHORT
    }

    /**
     * A tray that leaves its band.
     *
     * @param tray its name
     * @param fault how
     * @param ion which ion is too much or lacking; empty of EC
     * @param since first day of it
     * @param figure see {@link Fault}
     */
    public record Leaving(
            String tray, Fault fault, Optional<Component> ion, LocalDate since, double figure) {}

    /**
     * One run.
     *
     * @param ecMsPerCm of the feed
     * @param tooSalty first tray too salty, too rich in sodium or chloride
     * @param tooLean first tray too lean or short of a nutrient
     */
    public record Trial(double ecMsPerCm, Optional<Leaving> tooSalty, Optional<Leaving> tooLean) {}

    /**
     * A tray that is flushed at visits when it is above its limit, with a feed that never leaves
     * one too lean (the given one, where none does).
     *
     * @param tray its name
     * @param feedMsPerCm that feed
     * @param times how often it is flushed
     * @param first day of the first flush
     * @param everyDays between two flushes in the mean; NaN of one alone
     * @param ecMsPerCm EC at the first
     */
    public record Flushed(
            String tray,
            double feedMsPerCm,
            int times,
            LocalDate first,
            double everyDays,
            double ecMsPerCm) {}

    public LeanFeed {
        Objects.requireNonNull(leanest, "leanest");
        Objects.requireNonNull(richest, "richest");
        trials = List.copyOf(trials);
        flushed = List.copyOf(flushed);
    }

    /** The richest feed tried that leaves a tray too lean: what stands in the way of a leaner. */
    public Optional<Trial> richestTooLean() {
        return trials.stream().filter(t -> t.tooLean().isPresent()).reduce((a, b) -> b);
    }

    /** The leanest feed tried that leaves a tray too salty: what stands in the way of a richer. */
    public Optional<Trial> leanestTooSalty() {
        return trials.stream().filter(t -> t.tooSalty().isPresent()).findFirst();
    }

    /** Whether some feed keeps every tray in band. */
    public boolean exists() {
        return leanest.isPresent() && richest.isPresent() && leanest.get() <= richest.get();
    }

    /**
     * The feed to make, mS/cm: the leanest that does with a reserve for mixture and meter, or the
     * middle of a room too narrow for that; NaN for none.
     */
    public double recommendedMsPerCm() {
        return exists()
                ? Math.min(withReserve(leanest.get()), FastMath.sqrt(leanest.get() * richest.get()))
                : Double.NaN;
    }

    private static double withReserve(double leanestMsPerCm) {
        return leanestMsPerCm * FastMath.exp(RESERVE);
    }

    /** Looks for it. */
    public static LeanFeed of(Scenario scenario) {
        Search search = new Search(scenario);
        double least = search.waterMsPerCm + 0.05;
        double most = RICHEST * search.givenMsPerCm;
        Trial low = search.trial(least);
        Trial high = search.trial(most);
        Optional<Double> richest =
                low == null || !low.tooSalty().isEmpty()
                        ? Optional.empty()
                        : high != null && high.tooSalty().isEmpty()
                                ? Optional.of(most)
                                : Optional.of(search.end(least, most, t -> t.tooSalty().isEmpty()));
        Optional<Double> leanest =
                high != null && !high.tooLean().isEmpty()
                        ? Optional.empty()
                        : low != null && low.tooLean().isEmpty()
                                ? Optional.of(least)
                                : Optional.of(search.end(most, least, t -> t.tooLean().isEmpty()));
        search.trials.sort((a, b) -> Double.compare(a.ecMsPerCm(), b.ecMsPerCm()));
        boolean exists =
                leanest.isPresent() && richest.isPresent() && leanest.get() <= richest.get();
        double flushedWith = leanest.map(LeanFeed::withReserve).orElse(search.givenMsPerCm);
        return new LeanFeed(
                search.givenMsPerCm,
                leanest,
                richest,
                search.trials,
                search.waterMsPerCm,
                exists ? List.of() : search.flushed(flushedWith));
    }

    private interface Good {
        boolean is(Trial trial);
    }

    private static final class Search {
        private final Scenario scenario;
        private final Composition water;
        private final FeedMaker maker;
        private final double givenMsPerCm;
        private final double waterMsPerCm;
        private final List<Trial> trials = new ArrayList<>();

        Search(Scenario scenario) {
            this.scenario = scenario;
            water = scenario.sourceWater().composition();
            Composition feed = scenario.feed().composition();
            maker = new FeedMaker(feed, water);
            givenMsPerCm = ElectricalConductivity.at25MsPerCm(feed);
            waterMsPerCm = ElectricalConductivity.at25MsPerCm(water);
        }

        /** From a good end towards a bad one; the last good EC. */
        double end(double good, double bad, Good rule) {
            double from = good;
            double to = bad;
            while (Math.abs(to - from) > FOUND_TO_MS_PER_CM) {
                double mid = 0.5 * (from + to);
                Trial trial = trial(mid);
                if (trial != null && rule.is(trial)) {
                    from = mid;
                } else {
                    to = mid;
                }
            }
            return from;
        }

        /** Null where such a feed cannot be made. */
        Trial trial(double ecMsPerCm) {
            Composition feed = maker.made(ecMsPerCm, water).orElse(null);
            if (feed == null) {
                return null;
            }
            Trace trace = Simulation.run(with(feed, Visits.Flush.NEVER));
            Optional<Leaving> salty = Optional.empty();
            Optional<Leaving> lean = Optional.empty();
            for (TrayTrace tray : trace.trays()) {
                if (!isTried(tray.tray())) {
                    continue;
                }
                for (PlantingTrace crop : trace.plantings(tray)) {
                    if (crop.tray().planting() instanceof Planting.OfCrop) {
                        salty = salty.isEmpty() ? salty(trace, crop) : salty;
                        lean = lean.isEmpty() ? lean(trace, crop) : lean;
                    }
                }
            }
            Trial trial = new Trial(ecMsPerCm, salty, lean);
            trials.add(trial);
            return trial;
        }

        private Scenario with(Composition feed, Visits.Flush flush) {
            return scenario.withFeed(new Liquid(scenario.feed().name(), feed))
                    .withVisits(scenario.visits().withFlush(flush));
        }

        // Not those with a feed of their own.
        private boolean isTried(Tray tray) {
            return scenario.feedOf(tray).equals(scenario.feed());
        }

        List<Flushed> flushed(double ecMsPerCm) {
            Composition feed = maker.made(ecMsPerCm, water).orElse(null);
            if (feed == null) {
                return List.of();
            }
            Trace trace = Simulation.run(with(feed, Visits.Flush.AT_LIMIT));
            List<Flushed> all = new ArrayList<>();
            for (TrayTrace tray : trace.trays()) {
                List<Event> flushes =
                        trace.events().stream()
                                .filter(e -> e.kind() == Event.Kind.FLUSH)
                                .filter(e -> e.vessel().equals(tray.tray().id()))
                                .toList();
                if (!flushes.isEmpty() && isTried(tray.tray())) {
                    Event first = flushes.get(0);
                    Event last = flushes.get(flushes.size() - 1);
                    double spanDays = (last.atS() - first.atS()) / Time.DAY_S;
                    all.add(
                            new Flushed(
                                    tray.tray().name(),
                                    ecMsPerCm,
                                    flushes.size(),
                                    trace.clockAt(first.atS()).toLocalDate(),
                                    flushes.size() > 1
                                            ? spanDays / (flushes.size() - 1)
                                            : Double.NaN,
                                    first.ecMsPerCm()));
                }
            }
            return all;
        }

        private static Optional<Leaving> salty(Trace trace, PlantingTrace crop) {
            TrayTrace of = crop.run();
            Limits limits = crop.tray().limits();
            int first = crop.firstHour();
            int last = crop.lastHour();
            int at =
                    Spells.first(
                            first,
                            last,
                            Spells.PATIENCE_H,
                            h -> of.ecMsPerCm().at(h) > limits.ecHighMsPerCm());
            if (at >= 0) {
                double most = of.ecMsPerCm().max(at, last + 1);
                return leaving(trace, of, at, Fault.TOO_SALTY, null, most);
            }
            Component[] ions = {Component.NA, Component.CL};
            double[] highs = {limits.sodiumHighMolPerM3(), limits.chlorideHighMolPerM3()};
            for (int k = 0; k < ions.length; k++) {
                int i = ions[k].ordinal();
                double high = highs[k];
                int from =
                        Spells.first(first, last, Spells.PATIENCE_H, h -> of.molPerM3(i, h) > high);
                if (from >= 0) {
                    double inTheEnd = of.molPerM3(i, last);
                    return leaving(trace, of, from, Fault.TOO_RICH, ions[k], inTheEnd);
                }
            }
            return Optional.empty();
        }

        private static Optional<Leaving> lean(Trace trace, PlantingTrace crop) {
            TrayTrace of = crop.run();
            int first = crop.firstHour();
            int last = crop.lastHour();
            double low = crop.tray().limits().ecLowMsPerCm();
            int at =
                    Spells.first(
                            first,
                            last,
                            Spells.PATIENCE_H,
                            h ->
                                    of.ecMsPerCm().at(h)
                                            < FlushRule.leanMsPerCm(
                                                    low, of.of(TraySeries.LEAF_AREA_INDEX).at(h)));
            if (at >= 0) {
                double lowest = of.ecMsPerCm().min(at, last + 1);
                return leaving(trace, of, at, Fault.TOO_LEAN, null, lowest);
            }
            for (Component ion : Shortage.WATCHED) {
                double least = Shortage.leastMolPerM3(ion);
                int from =
                        Spells.first(
                                first,
                                last,
                                Spells.PATIENCE_H,
                                h -> of.molPerM3(ion.ordinal(), h) < least);
                if (from >= 0) {
                    double left = of.molPerM3(ion.ordinal(), from);
                    return leaving(trace, of, from, Fault.SHORT, ion, left);
                }
            }
            return Optional.empty();
        }

        private static Optional<Leaving> leaving(
                Trace trace, TrayTrace of, int hour, Fault fault, Component ion, double figure) {
            LocalDate since = trace.clockAtSample(hour).toLocalDate();
            Optional<Component> which = Optional.ofNullable(ion);
            return Optional.of(new Leaving(of.tray().name(), fault, which, since, figure));
        }
    }
}
