package tideless.study;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;

/**
 * Tries what a scenario can say against heat, each in a run of its own: vents that open sooner and
 * wider, shade overhead, a deck without gaps, a cooler room. Told is what at least halves the heat
 * and costs no harvest, else that nothing was found.
 */
final class HeatTrials {
    private static final Set<Warning.Kind> OF_HEAT =
            EnumSet.of(Warning.Kind.WARM_SOLUTION, Warning.Kind.TOO_HOT, Warning.Kind.SET_TOO_HOT);

    /** What is left of an excess over its days for a change to be worth telling; assumed. */
    private static final double HALF = 0.5;

    /** Vents are tried so many times as wide; assumed. */
    private static final double WIDER_TIMES = 2;

    /** And from so much inside warmth on, degC; growers' least for warm crops, no source. */
    private static final double SOONER_C = 18;

    /** Of the sun that comes through now shade leaves this share; a usual net, no source. */
    private static final double SHADED_FRAC = 0.6;

    /** A net over plants in the open; the file's own figure for shade. */
    private static final double NET_FRAC = 0.5;

    /** How much cooler a room is tried, K, the first that does; assumed. */
    private static final double[] COOLER_K = {2, 4, 6};

    /** Cures that are told at most beside a cooler place; nobody does more. */
    private static final int MOST_TOLD = 2;

    private HeatTrials() {}

    /**
     * A change to try.
     *
     * @param told as a cure
     * @param name in a word or two
     * @param tray that it serves; empty for all
     */
    record Trial(Cure told, String name, Optional<VesselId> tray, Scenario scenario) {
        boolean serves(VesselId vessel) {
            return tray.isEmpty() || tray.get().equals(vessel);
        }
    }

    /** What there is to try; nothing where nobody is warned of heat. */
    static List<Trial> of(Trace trace, Advice advice) {
        List<Trial> trials = new ArrayList<>();
        List<Warning> heat = advice.warnings().stream().filter(HeatTrials::isOfHeat).toList();
        if (heat.isEmpty()) {
            return trials;
        }
        Scenario scenario = trace.scenario();
        for (Tray tray : scenario.trays()) {
            boolean isWarm = heat.stream().anyMatch(w -> w.vessel().equals(tray.id()));
            if (isWarm && tray.openAreaM2() > 0) {
                trials.add(
                        new Trial(
                                Cure.of(Cure.Kind.CLOSED_DECK),
                                "a deck without gaps",
                                Optional.of(tray.id()),
                                scenario.withTray(tray.withOpenAreaM2(0))));
            }
        }
        if (scenario.climate() instanceof Climate.Weather weather) {
            addOfCover(scenario, weather, trials);
        } else if (scenario.climate() instanceof Climate.Room room) {
            for (double lessK : COOLER_K) {
                Climate cooler =
                        room.withDayTempC(room.dayTempC() - lessK)
                                .withNightTempC(room.nightTempC() - lessK);
                Facts facts =
                        Facts.of(Quantity.DAY_TEMP, room.dayTempC() - lessK)
                                .and(Quantity.NIGHT_TEMP, room.nightTempC() - lessK);
                trials.add(
                        new Trial(
                                new Cure(Cure.Kind.COOLER_ROOM, facts),
                                "a room up to 6 K cooler",
                                Optional.empty(),
                                scenario.withClimate(cooler)));
            }
        }
        return trials;
    }

    private static boolean isOfHeat(Warning warning) {
        return OF_HEAT.contains(warning.kind())
                || warning.kind() == Warning.Kind.DIED
                        && warning.cause().kind() == Cause.Kind.HEAT_KILLS;
    }

    private static void addOfCover(Scenario scenario, Climate.Weather weather, List<Trial> trials) {
        Cover is = weather.cover();
        if (!is.kind().isOpen()) {
            double fromC = Math.min(is.ventsFromC(), Math.max(SOONER_C, is.heatedToC() + 2));
            Cover wider =
                    is.withVentsOpenPerH(WIDER_TIMES * is.ventsOpenPerH()).withVentsFromC(fromC);
            Facts facts =
                    Facts.of(Quantity.AIR_CHANGES, wider.ventsOpenPerH())
                            .and(Quantity.DAY_TEMP, fromC);
            trials.add(
                    new Trial(
                            new Cure(Cure.Kind.WIDER_VENTS, facts),
                            "vents twice as wide, from " + FastMath.round(fromC) + " degC on",
                            Optional.empty(),
                            scenario.withClimate(weather.withCover(wider))));
        }
        boolean isBare = is.kind() == Cover.Kind.OPEN;
        double through = isBare ? NET_FRAC : SHADED_FRAC * is.transmissionFrac();
        Cover shaded =
                is.withKind(isBare ? Cover.Kind.SHADE : is.kind()).withTransmissionFrac(through);
        trials.add(
                new Trial(
                        new Cure(
                                Cure.Kind.SHADE_OVERHEAD,
                                Facts.of(Quantity.LIGHT_SHARE, through)
                                        .named(isBare ? "open" : "")),
                        "shade overhead",
                        Optional.empty(),
                        scenario.withClimate(weather.withCover(shaded))));
    }

    /** A run of one. */
    static Trace run(Trial trial) {
        return Simulation.run(trial.scenario());
    }

    /**
     * The advice with what has stood its trial in place of what no run has shown.
     *
     * @param first the run as the user wrote it, judged
     * @param runs one of each trial, in their order
     */
    static Advice judged(Trials.Tried first, List<Trial> trials, List<Trace> runs) {
        if (trials.isEmpty()) {
            return first.advice();
        }
        List<Trials.Tried> tried =
                runs.stream().map(run -> new Trials.Tried(run, Advisor.advise(run, run))).toList();
        return first.advice()
                .withEachWarning(
                        w -> isOfHeat(w) ? w.withCures(cures(first, trials, tried, w)) : w);
    }

    private record Helping(Cure cure, double leftFrac) {}

    private static List<Cure> cures(
            Trials.Tried first, List<Trial> trials, List<Trials.Tried> tried, Warning warning) {
        List<Helping> helping = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            if (trial.serves(warning.vessel())) {
                double left = leftFrac(first, tried.get(i), warning);
                boolean isTold =
                        helping.stream().anyMatch(h -> h.cure().kind() == trial.told().kind());
                if (left <= HALF && !isTold) {
                    helping.add(new Helping(trial.told(), left));
                }
                if (!names.contains(trial.name())) {
                    names.add(trial.name());
                }
            }
        }
        helping.sort(Comparator.comparing(Helping::leftFrac));
        List<Cure> cures = new ArrayList<>();
        helping.stream().limit(MOST_TOLD).forEach(h -> cures.add(h.cure()));
        if (cures.isEmpty()) {
            warning.cures().stream()
                    .filter(c -> c.kind() == Cure.Kind.SHADE_THE_TRAY)
                    .filter(c -> isWarmedByLight(first.trace(), warning.vessel()))
                    .forEach(cures::add); // light on its walls is in no run
            cures.add(new Cure(Cure.Kind.COOLER_PLACE, Facts.NONE.named(String.join(", ", names))));
        } else {
            cures.add(Cure.of(Cure.Kind.COOLER_PLACE));
        }
        return cures;
    }

    /** Whether its solution grows warmer than the air ever is: shade would take that away. */
    private static boolean isWarmedByLight(Trace trace, VesselId tray) {
        TrayTrace of = trace.tray(tray);
        double airC = of.of(TraySeries.AIR_TEMP).max(0, trace.hours());
        return of.solutionTempC().max(0, trace.hours()) > airC;
    }

    /** Share of the heat that is left, 0 for none; infinite where it costs or harms. */
    private static double leftFrac(Trials.Tried first, Trials.Tried tried, Warning warning) {
        boolean harms =
                Improvement.harms(first.advice().verdict(), tried.advice().verdict())
                        || tried.advice().warnings().stream()
                                .filter(w -> !isOfHeat(w))
                                .anyMatch(w -> Improvement.isNew(first.advice().warnings(), w));
        for (Tray tray : first.trace().scenario().trays()) {
            harms |=
                    Improvement.gainFrac(first.trace(), tried.trace(), tray.id())
                            < -Improvement.BORNE_LOSS_FRAC;
        }
        double is =
                Stream.concat(
                                tried.advice().warnings().stream(),
                                tried.advice().minor().stream()) // a note of it is no cure
                        .filter(w -> w.kind() == warning.kind())
                        .filter(w -> w.vessel().equals(warning.vessel()))
                        .filter(w -> w.crop().equals(warning.crop()))
                        .mapToDouble(HeatTrials::excess)
                        .reduce(0, Double::sum);
        return harms ? Double.POSITIVE_INFINITY : is / excess(warning);
    }

    /** How far past its limit and on how many days, K d; never 0. */
    private static double excess(Warning warning) {
        Facts facts = warning.cause().facts();
        double days =
                facts.has(Quantity.DAYS_BEYOND)
                        ? facts.get(Quantity.DAYS_BEYOND)
                        : 1 + Duration.between(warning.from(), warning.until()).toDays();
        double byK =
                Double.isNaN(warning.measure().value())
                        ? 1
                        : warning.measure().value() - warning.measure().limit();
        return days * Math.max(1e-3, byK);
    }
}
