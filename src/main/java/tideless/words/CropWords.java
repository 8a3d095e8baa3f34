package tideless.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.advice.Crowding;
import tideless.advice.RoomFindings;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.Planting;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Stress;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;

/** What becomes of a crop, where no task or warning says it. */
public final class CropWords {
    /** Longer than this is not worth waiting for, d; assumed. */
    private static final double HOPELESS_DAYS = 365;

    /**
     * Three trials picked 2.7, 3.1 and 5.1 kg of it a plant where the same seasons are reckoned as
     * 5.3, 4.8 and 6.7: the rows of tomatoes in docs/validation.md.
     */
    private static final String TOMATO = "tomato";

    private CropWords() {}

    /** Crops of all trays that are not ready at the end, and those whose turn does not come. */
    public static List<String> unripe(Trace trace) {
        return trace.trays().stream().flatMap(tray -> unripe(trace, tray).stream()).toList();
    }

    /** The same of one tray. */
    public static List<String> unripe(Trace trace, TrayTrace tray) {
        List<String> lines = new ArrayList<>();
        VesselId id = tray.tray().id();
        List<PlantingTrace> plantings = trace.plantings(tray);
        if (tray.tray().planting().plants() == 0
                && tray.tray().planting() instanceof Planting.OfCrop) {
            lines.add(Names.of(id) + ": nothing is planted in it; left dry it needs no feed.");
        }
        for (PlantingTrace planting : plantings) {
            double days = RoomFindings.daysShort(trace, planting);
            if (days > 0 && Crowding.leastCm2(trace, planting).isPresent()) {
                lines.add(
                        Names.of(id, planting.crop())
                                + " is not ready by the end of the run, and never will be, so"
                                + " crowded.");
            } else if (RoomFindings.standsStill(trace, planting)) {
                lines.add(
                        Names.of(id, planting.crop())
                                + " is not ready by the end of the run and stands still at "
                                + Numbers.grams(planting.run().freshG().at(trace.hours() - 1))
                                + " a plant: no days more of such air help; cut it as it is, or"
                                + " wait for warmth and light.");
            } else if (days > 0) {
                lines.add(
                        planting.tray().planting().fruits()
                                ? notRipe(id, planting.crop(), days)
                                : notReady(id, planting.crop(), days));
            } else {
                atEnd(planting).ifPresent(lines::add);
            }
        }
        for (int i = plantings.size(); i < tray.tray().plantings(); i++) {
            lines.add(notPlanted(id, tray.tray().cropOf(i)));
        }
        return lines;
    }

    /** Of each crop of which the root zone took a good deal, what it might have given, and why. */
    public static List<String> beside(Verdict verdict) {
        return verdict.losses().stream()
                .map(
                        loss ->
                                Names.of(loss.tray(), loss.crop())
                                        + " gives "
                                        + Numbers.gramsBeside(loss.ownG(), loss.unharmedG())
                                        + " a plant, of "
                                        + Numbers.gramsBeside(loss.unharmedG(), loss.ownG())
                                        + " that roots without harm would give in the same light"
                                        + " and air"
                                        + taken(loss)
                                        + ".")
                .toList();
    }

    /**
     * Whether crops below a reservoir lose so much that sound ones would drink a good deal more.
     */
    public static boolean isForPoor(Forecast forecast, String reservoir) {
        return forecast.advice().verdict().losses().stream()
                .filter(loss -> loss.frac() >= Warning.POOR_FRAC)
                .flatMap(loss -> forecast.trace().scenario().tray(loss.tray()).stream())
                .anyMatch(tray -> tray.isFedBy(reservoir));
    }

    /** As ": salt takes 10 %, a solution too cold for its roots ... 9 %"; what takes most first. */
    private static String taken(Verdict.Loss loss) {
        List<Stress> most =
                loss.fracs().entrySet().stream()
                        .filter(e -> e.getValue() >= Warning.NOTED_FRAC)
                        .sorted(
                                Map.Entry.<Stress, Double>comparingByValue()
                                        .reversed()
                                        .thenComparing(Map.Entry.comparingByKey()))
                        .map(Map.Entry::getKey)
                        .toList();
        List<String> parts = new ArrayList<>();
        for (Stress stress : most) {
            parts.add(
                    why(loss, stress)
                            + (parts.isEmpty() ? " takes " : " ")
                            + Numbers.percent(loss.fracs().get(stress)));
        }
        return parts.isEmpty() ? "" : ": " + String.join(", ", parts);
    }

    private static String why(Verdict.Loss loss, Stress stress) {
        if (stress == Stress.AIR) {
            return "want of air at the roots (likely, as in much still solution; more of the roots"
                    + " in air helps)";
        }
        if (stress == Stress.WARMTH && !Double.isNaN(loss.missedC())) {
            return "a solution too "
                    + (loss.meanC() < loss.missedC() ? "cold" : "warm")
                    + " for its roots ("
                    + celsius(loss.meanC())
                    + " in the mean, where they want "
                    + (loss.meanC() < loss.missedC() ? "at least " : "at most ")
                    + celsius(loss.missedC())
                    + ")";
        }
        return Names.of(stress);
    }

    private static String celsius(double degrees) {
        return Numbers.of(degrees, Unit.CELSIUS);
    }

    /**
     * How far fruit that is promised by weight lies from what was picked in published trials over
     * still or held solution; empty where none of their crops bears.
     */
    public static Optional<String> fruitOfTrials(Trace trace) {
        boolean isOfTrials =
                trace.trays().stream()
                        .flatMap(tray -> trace.plantings(tray).stream())
                        .anyMatch(
                                p ->
                                        p.tray().planting().cropName().equals(TOMATO)
                                                && p.run().fruitFreshG().at(p.lastHour()) > 0);
        return isOfTrials
                ? Optional.of(
                        "Of tomatoes over still solution published trials picked half to three"
                                + " quarters of what is reckoned here: count on the less.")
                : Optional.empty();
    }

    /**
     * What leaf crops have given that still stand when the run ends; of fruit its picking tells.
     */
    private static Optional<String> atEnd(PlantingTrace planting) {
        int plants = planting.tray().planting().plants();
        if (!(planting.tray().planting() instanceof Planting.OfCrop)
                || planting.tray().planting().fruits()
                || plants == 0
                || planting.events().stream()
                        .anyMatch(
                                event ->
                                        event.kind() == Event.Kind.HARVEST
                                                || event.kind() == Event.Kind.DIED)) {
            return Optional.empty();
        }
        double standsG = planting.run().freshG().at(planting.lastHour());
        double pickedG = 0;
        for (Event event : planting.events()) {
            pickedG += event.kind() == Event.Kind.LEAVES_PICKED ? event.freshG() : 0;
        }
        String what =
                Numbers.grams(standsG)
                        + " a plant"
                        + (pickedG > 0
                                ? ", and "
                                        + Numbers.grams(pickedG)
                                        + " of leaf picked of all by then"
                                : "");
        return Optional.of(
                Names.of(planting.tray().id(), planting.crop())
                        + " at the end of the run: "
                        + what
                        + ".");
    }

    /** Of a crop whose turn has not come when the run ends. */
    public static String notPlanted(VesselId tray, String crop) {
        return Names.of(tray)
                + ": the "
                + Names.clean(crop)
                + " is never set out, as the crop before is not cut by the end of the run.";
    }

    /** Of a fruit crop none of which is ripe when its run ends. */
    public static String notRipe(VesselId tray, String crop, double daysShort) {
        return Names.of(tray, crop)
                + " bears no ripe fruit by the end of the run: "
                + still(daysShort);
    }

    /**
     * Of a crop that is not ready when its run ends.
     *
     * @param crop its name where several follow one another in the tray, else empty
     */
    public static String notReady(VesselId tray, String crop, double daysShort) {
        return Names.of(tray, crop) + " is not ready by the end of the run: " + still(daysShort);
    }

    /** Whether a crop so far from being ready would never be. */
    static boolean isHopeless(double daysShort) {
        return daysShort >= HOPELESS_DAYS;
    }

    private static String still(double daysShort) {
        return !isHopeless(daysShort)
                ? "about " + Numbers.days(Math.ceil(daysShort)) + " more in such air."
                : "it would never be, in such air.";
    }
}
