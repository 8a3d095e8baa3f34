package tideless.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tideless.solution.Mix;
import tideless.solution.MixCorrection;
import tideless.solution.MixingSheet;
import tideless.words.Numbers;

/** What a mixing sheet says, in the words that table and page share. */
final class MixWords {
    private MixWords() {}

    static String action(MixingSheet.Kind kind) {
        return switch (kind) {
            case TAKE_OUT -> "take out";
            case WATER -> "water";
            case PART_A -> "part A";
            case PART_B -> "part B";
            case TRACE -> "trace mix";
            case ACID -> "acid";
            case BASE -> "base";
        };
    }

    /** What is poured in a step, as "part A: calcium nitrate". */
    static String poured(MixingSheet.Step step) {
        String action = action(step.kind());
        boolean plain =
                step.kind() == MixingSheet.Kind.WATER
                        || step.what()
                                .toLowerCase(Locale.ROOT)
                                .startsWith(action.toLowerCase(Locale.ROOT));
        return plain ? step.what() : action + ": " + step.what();
    }

    /** Weighed and, where it is a liquid, measured: "81 g (74 mL)". */
    static String amount(MixingSheet.Step step) {
        boolean weighed = !Double.isNaN(step.grams());
        boolean measured = !Double.isNaN(step.millilitres());
        if (weighed && measured) {
            return grams(step.grams()) + " or " + millilitres(step.millilitres());
        }
        if (!weighed && !measured) {
            return "by its label";
        }
        return weighed ? grams(step.grams()) : millilitres(step.millilitres());
    }

    private static String grams(double grams) {
        return number(grams) + " g";
    }

    private static String millilitres(double millilitres) {
        return millilitres >= 1000
                ? number(millilitres / 1000) + " L"
                : number(millilitres) + " mL";
    }

    // As a kitchen scale or a syringe shows them.
    private static String number(double value) {
        return String.format(
                Locale.ROOT, value < 10 ? "%.2f" : value < 100 ? "%.1f" : "%.0f", value);
    }

    static String ec(double msPerCm) {
        return String.format(Locale.ROOT, "%.2f", msPerCm);
    }

    static String ph(double ph) {
        return Double.isNaN(ph) ? "-" : String.format(Locale.ROOT, "%.1f", ph);
    }

    static String title(Mix mix) {
        MixingSheet.Wish wish = mix.wish();
        String text =
                "%s L at %s mS/cm"
                        .formatted(Numbers.label(wish.volumeL()), ec(wish.targetMsPerCm()));
        if (wish.targetPh().isPresent()) {
            text += ", pH " + ph(wish.targetPh().getAsDouble());
        }
        String water = wish.water().title();
        return text + ", in " + water.substring(0, 1).toLowerCase(Locale.ROOT) + water.substring(1);
    }

    static String strength(Mix mix) {
        return String.format(
                Locale.ROOT,
                "%.0f %% of %s strength; it will read %s mS/cm and pH %s (pH %s once it has stood in"
                        + " air).",
                100 * mix.sheet().strength(),
                mix.wish().supply() instanceof MixingSheet.FromConcentrate
                        ? "the label's"
                        : "the recipe's",
                ec(mix.sheet().ecMsPerCm()),
                ph(mix.sheet().phClosed()),
                ph(mix.sheet().phInAir()));
    }

    static String reading(MixCorrection correction) {
        List<String> read = new ArrayList<>();
        correction.reading().ecMsPerCm().ifPresent(ec -> read.add(ec(ec) + " mS/cm"));
        correction.reading().ph().ifPresent(ph -> read.add("pH " + ph(ph)));
        return "It read "
                + String.join(" and ", read)
                + (correction.basis() == null ? "" : " (" + correction.basis().words() + ")");
    }

    static String after(MixCorrection correction) {
        return String.format(
                Locale.ROOT,
                "Afterwards %s L, %s mS/cm%s.",
                Numbers.label(correction.volumeL()),
                ec(correction.ecMsPerCm()),
                Double.isNaN(correction.ph())
                        ? ""
                        : ", pH "
                                + ph(correction.ph())
                                + " (pH "
                                + ph(correction.phInAir())
                                + " once it has stood in air)");
    }

    /** Remarks first, then what the sheet and its correction warn of, each sentence once. */
    static List<String> cautions(Mix mix) {
        List<String> all = new ArrayList<>(mix.remarks());
        mix.sheet().cautions().forEach(c -> addOnce(all, c));
        mix.correction().ifPresent(x -> x.cautions().forEach(c -> addOnce(all, c)));
        return all;
    }

    private static void addOnce(List<String> all, String sentence) {
        if (!sentence.isEmpty() && !all.contains(sentence)) {
            all.add(sentence);
        }
    }
}
