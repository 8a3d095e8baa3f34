package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import tideless.advice.Spells;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.sim.FlushRule;
import tideless.sim.PlantingTrace;
import tideless.sim.Shortage;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Contact;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Feed;
import tideless.solution.Reagent;

/**
 * The feed that keeps every tray in its band to harvest without a flush, found by running the
 * scenario with the feed made leaner and richer.
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
 * @param why what stands in the way of a richer and of a leaner feed, or why there is none
 */
public record LeanFeed(
        double given,
        Optional<Double> leanest,
        Optional<Double> richest,
        List<Trial> trials,
        List<String> why) {

    /** EC to which the ends are found, mS/cm: two digits of a meter. */
    private static final double FOUND_TO_MS_PER_CM = 0.02;

    /** Richest feed looked for, times the given one. */
    private static final double RICHEST = 2;

    /**
     * One run.
     *
     * @param ecMsPerCm of the feed
     * @param tooSalty first tray too salty, too rich in sodium or chloride, in words; empty for
     *     none
     * @param tooLean first tray too lean or short of a nutrient, in words; empty for none
     */
    public record Trial(double ecMsPerCm, String tooSalty, String tooLean) {}

    public LeanFeed {
        Objects.requireNonNull(leanest, "leanest");
        Objects.requireNonNull(richest, "richest");
        trials = List.copyOf(trials);
        why = List.copyOf(why);
    }

    /** Whether some feed keeps every tray in band. */
    public boolean exists() {
        return leanest.isPresent() && richest.isPresent() && leanest.get() <= richest.get();
    }

    /** The feed to make, mS/cm: the leanest that does, a little above its end; NaN for none. */
    public double recommendedMsPerCm() {
        return exists() ? Math.min(richest.get(), leanest.get() + FOUND_TO_MS_PER_CM) : Double.NaN;
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
        return new LeanFeed(
                search.givenMsPerCm, leanest, richest, search.trials, search.why(leanest, richest));
    }

    private interface Good {
        boolean is(Trial trial);
    }

    private static final class Search {
        private final Scenario scenario;
        private final Composition water;
        private final Composition salts;
        private final double ph;
        private final double givenMsPerCm;
        private final double waterMsPerCm;
        private final List<Trial> trials = new ArrayList<>();

        Search(Scenario scenario) {
            this.scenario = scenario;
            water = scenario.sourceWater().composition();
            Composition feed = scenario.feed().composition();
            double[] beyond = feed.toArray();
            for (int i = 0; i < beyond.length; i++) {
                beyond[i] = Math.max(0, beyond[i] - water.molPerM3(i));
            }
            salts = Composition.of(beyond).with(Component.C, 0);
            ph = Acidity.phInAir(feed, 25, ElectricalConductivity.AIR_CO2_PPM);
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
            Composition feed = feed(ecMsPerCm);
            if (feed == null) {
                return null;
            }
            Trace trace = Simulation.run(with(feed));
            String salty = "";
            String lean = "";
            for (TrayTrace tray : trace.trays()) {
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

        private Composition feed(double ecMsPerCm) {
            for (Reagent reagent :
                    new Reagent[] {
                        Reagent.named("phosphoric-30").orElseThrow(),
                        Reagent.named("potassium-bicarbonate-10").orElseThrow()
                    }) {
                Optional<Feed.Made> made =
                        Feed.madeWithinCap(
                                        salts, water, ecMsPerCm, ph, reagent, Contact.OUTDOOR_AIR)
                                .made();
                boolean stopped = made.isPresent() && made.get().reagentMolPerM3() > 0;
                if (stopped || made.isPresent() && made.get().phReached()) {
                    return made.get().composition();
                }
            }
            return null;
        }

        private Scenario with(Composition feed) {
            return scenario.withFeed(new Liquid(scenario.feed().name(), feed))
                    .withVisits(scenario.visits().withFlush(Visits.Flush.NEVER));
        }

        List<String> why(Optional<Double> leanest, Optional<Double> richest) {
            List<String> why = new ArrayList<>();
            for (int i = trials.size() - 1; i >= 0; i--) {
                if (!trials.get(i).tooLean().isEmpty()) {
                    why.add(said(trials.get(i).ecMsPerCm(), trials.get(i).tooLean()));
                    break;
                }
            }
            for (Trial trial : trials) {
                if (!trial.tooSalty().isEmpty()) {
                    why.add(said(trial.ecMsPerCm(), trial.tooSalty()));
                    break;
                }
            }
            if (richest.isEmpty()) {
                why.add(
                        String.format(
                                Locale.ROOT,
                                "Not even the leanest feed of this water (which alone reads %.2f"
                                        + " mS/cm) stays in band.",
                                waterMsPerCm));
            }
            if (leanest.isEmpty()) {
                why.add("Twice the given strength still leaves a tray too lean.");
            }
            return why;
        }

        private static String said(double ec, String what) {
            return String.format(Locale.ROOT, "At %.2f mS/cm %s.", ec, what);
        }

        private static String salty(Trace trace, PlantingTrace crop) {
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
                return words(trace, of, at, "too salty", of.ecMsPerCm().max(at, last + 1), "mS/cm");
            }
            Component[] ions = {Component.NA, Component.CL};
            double[] most = {limits.sodiumHighMolPerM3(), limits.chlorideHighMolPerM3()};
            for (int k = 0; k < ions.length; k++) {
                int i = ions[k].ordinal();
                double high = most[k];
                int from =
                        Spells.first(first, last, Spells.PATIENCE_H, h -> of.molPerM3(i, h) > high);
                if (from >= 0) {
                    return words(
                            trace,
                            of,
                            from,
                            "too rich in " + ions[k].title(),
                            of.molPerM3(i, last),
                            "mmol/L at the end");
                }
            }
            return "";
        }

        private static String lean(Trace trace, PlantingTrace crop) {
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
                return words(trace, of, at, "too lean", of.ecMsPerCm().min(at, last + 1), "mS/cm");
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
                    return words(
                            trace,
                            of,
                            from,
                            "short of " + ion.title(),
                            of.molPerM3(ion.ordinal(), from),
                            "mmol/L");
                }
            }
            return "";
        }

        private static String words(
                Trace trace, TrayTrace of, int hour, String what, double figure, String unit) {
            return String.format(
                    Locale.ROOT,
                    "tray %s is %s from %s (%.2f %s)",
                    of.tray().name(),
                    what,
                    trace.clockAtSample(hour).toLocalDate(),
                    figure,
                    unit);
        }
    }
}
