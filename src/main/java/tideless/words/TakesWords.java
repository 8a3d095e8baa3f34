package tideless.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tideless.rig.Liquid;
import tideless.sim.Trace;
import tideless.solution.Mix;
import tideless.solution.MixingSheet;
import tideless.study.SeasonTakes;

/** What a season takes, in words. */
public final class TakesWords {
    /** Less than this has room for a tenth, g or mL. */
    private static final double FEW = 9.95;

    private TakesWords() {}

    /**
     * Water, salts or bottles, power.
     *
     * @param mix of the feed; empty where it is not known
     */
    public static List<String> of(SeasonTakes takes, Trace trace, Optional<Mix> mix) {
        List<String> lines = new ArrayList<>();
        lines.add(
                "Feed: "
                        + litres(takes.feedLitres())
                        + (takes.waterLitres() > 0.05
                                ? ", and plain water: " + litres(takes.waterLitres())
                                : "")
                        + ". The plants drink "
                        + litres(takes.drunkLitres())
                        + ".");
        List<String> parts = new ArrayList<>();
        for (Liquid.Bottle bottle : trace.scenario().feed().bottles()) {
            parts.add(FeedWords.poured(bottle, takes.feedLitres()));
        }
        boolean bottled = !parts.isEmpty();
        mix.ifPresent(of -> addPoured(parts, of, takes.feedLitres(), bottled));
        if (!parts.isEmpty()) {
            lines.add("Into it goes: " + String.join(", ", parts) + ".");
        }
        if (takes.lampKwhHigh() > 0 && takes.lampKwhHigh() == takes.lampKwhLow()) {
            lines.add(
                    "Lamps: "
                            + Numbers.whole(takes.lampKwhLow())
                            + " kWh, by their watts and hours.");
        } else if (takes.lampKwhHigh() > 0) {
            lines.add(
                    "Lamps: "
                            + Numbers.whole(takes.lampKwhLow())
                            + " to "
                            + Numbers.whole(takes.lampKwhHigh())
                            + " kWh, from good LED lamps to poor ones (assumed: a fifth of the"
                            + " light misses the plants; what your meter says is the truth).");
        }
        return lines;
    }

    /** Salts, unless bottles stand for them, and what brings it to its pH. */
    private static void addPoured(List<String> parts, Mix mix, double litres, boolean bottled) {
        double times = litres / mix.sheet().volumeL();
        for (MixingSheet.Step step : mix.sheet().steps()) {
            boolean salt =
                    step.kind() == MixingSheet.Kind.PART_A
                            || step.kind() == MixingSheet.Kind.PART_B;
            if (salt && bottled) {
                continue;
            }
            if (salt && !Double.isNaN(step.grams())) {
                parts.add(step.what().toLowerCase(Locale.ROOT) + " " + grams(times * step.grams()));
            } else if (!Double.isNaN(step.millilitres()) && step.kind() != MixingSheet.Kind.WATER) {
                parts.add(
                        step.what().toLowerCase(Locale.ROOT)
                                + " "
                                + few(times * step.millilitres())
                                + " mL");
            }
        }
    }

    private static String grams(double grams) {
        return grams < FEW ? few(grams) + " g" : Numbers.grams(grams);
    }

    /** A tenth is told of what is little: whole, it would be none. */
    private static String few(double amount) {
        return amount < FEW ? Numbers.one(amount) : Numbers.whole(amount);
    }

    private static String litres(double litres) {
        return Numbers.litres(litres) + " L";
    }
}
