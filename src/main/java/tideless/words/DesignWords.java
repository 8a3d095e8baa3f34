package tideless.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import tideless.study.Axis;
import tideless.study.Compared;
import tideless.study.Design;

/** What a comparison of designs says, in sentences. */
public final class DesignWords {
    /** Nearer than this two yields are the same to anybody; assumed. */
    private static final double TELLING_FRAC = 0.005;

    private DesignWords() {}

    /** As "hours dry", for a heading of a picture. */
    public static String of(Design.Figure figure) {
        return switch (figure) {
            case DRY -> "hours dry";
            case STRANDED -> "hours with roots stranded";
            case WILTED -> "hours wilted";
            case DROWNED -> "hours with air roots drowned";
            case SHORT_OF_AIR -> "hours short of air";
            case REFILLS -> "refills and top-ups";
            case LITRES -> "litres poured";
            case FLUSHES -> "flushes";
            case YIELD -> "yield";
        };
    }

    /** As "drowned", for a narrow column. */
    public static String brief(Design.Figure figure) {
        return switch (figure) {
            case SHORT_OF_AIR -> "short of air";
            case LITRES -> "litres";
            default -> figure.name().toLowerCase(Locale.ROOT);
        };
    }

    /** Name of an axis, as "tray.basil.depth". */
    public static String name(Axis axis) {
        return axis.key().isEmpty() ? "scenario" : Names.clean(axis.key());
    }

    /** A value of an axis, as "6 cm". */
    public static String value(Axis axis, int place) {
        if (axis.numbers().isEmpty()) {
            return Names.clean(axis.labels().get(place));
        }
        return inUnit(axis, axis.numbers().get(place));
    }

    private static String inUnit(Axis axis, double number) {
        return number(number) + (axis.unit().isEmpty() ? "" : " " + axis.unit());
    }

    /** A number as it would be written in a scenario. */
    public static String number(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** Everything worth saying, one sentence each. */
    public static List<String> sentences(Compared compared) {
        List<String> said = new ArrayList<>();
        best(compared, said);
        for (Compared.Level level : compared.levels()) {
            said.add(level(level));
        }
        List<String> unbuildable = compared.unbuildable();
        if (!unbuildable.isEmpty()) {
            LinkedHashSet<String> reasons = new LinkedHashSet<>(unbuildable);
            int more = reasons.size() - 1;
            said.add(
                    "Not buildable: "
                            + unbuildable.size()
                            + " of "
                            + compared.cells().size()
                            + ". The first: "
                            + reasons.iterator().next()
                            + (more > 0 ? " (and " + more + " like it)" : "")
                            + ".");
        }
        if (!compared.whole()) {
            long done = compared.cells().stream().filter(c -> c.design().isPresent()).count();
            if (compared.cells().stream().noneMatch(Compared.Cell::isReached)) {
                return List.of(BrokenWords.nothingSaid());
            }
            said.add(
                    "Broken off: what is shown is the "
                            + done
                            + " of "
                            + compared.cells().size()
                            + " designs that were done.");
        }
        return said;
    }

    private static void best(Compared compared, List<String> said) {
        long harmless =
                compared.cells().stream()
                        .flatMap(c -> c.design().stream())
                        .filter(Design::isHarmless)
                        .count();
        long run = compared.cells().stream().filter(c -> c.design().isPresent()).count();
        if (run == 0) {
            return;
        }
        if (harmless == 0) {
            said.add("None of the " + run + " designs is without harm.");
            return;
        }
        said.add(
                (harmless == run
                                ? run == 1
                                        ? "The one design is without harm"
                                        : "All " + run + " designs are without harm"
                                : harmless + " of " + run + " designs are without harm")
                        + most(compared)
                        + ".");
    }

    private static String most(Compared compared) {
        if (compared.best().isEmpty()) {
            return "";
        }
        int best = compared.best().get();
        double grams = grams(compared.cells().get(best).design().orElseThrow());
        List<Design> harmless =
                compared.cells().stream()
                        .flatMap(c -> c.design().stream())
                        .filter(Design::isHarmless)
                        .toList();
        long alike = harmless.stream().filter(d -> grams(d) > (1 - TELLING_FRAC) * grams).count();
        return harmless.size() > 1 && alike == harmless.size()
                ? "; they yield the same, " + Numbers.grams(grams)
                : "; of these "
                        + place(compared, best)
                        + " yields most, "
                        + Numbers.grams(grams)
                        + (alike == 1 ? "" : ", and " + (alike - 1) + " more as much");
    }

    private static double grams(Design design) {
        return design.of(Design.Figure.YIELD);
    }

    /** As "tray.basil.depth 8 cm, tray.basil.valve.setting 4 cm". */
    public static String place(Compared compared, int cell) {
        Axis first = compared.axes().get(0);
        String x =
                (first.key().isEmpty() ? "" : name(first) + " ")
                        + value(first, cell % first.size());
        if (compared.axes().size() < 2) {
            return x;
        }
        Axis second = compared.axes().get(1);
        return x + ", " + name(second) + " " + value(second, cell / first.size());
    }

    private static String level(Compared.Level level) {
        Axis axis = level.axis();
        boolean isOfTray = axis.key().startsWith("tray.");
        boolean isAboveWater = axis.key().endsWith(".depth") || axis.key().endsWith(".overflow");
        return name(axis)
                + " changes nothing between "
                + number(axis.numbers().get(level.from()))
                + " and "
                + value(axis, level.to())
                + (isOfTray && isAboveWater
                        ? ": the solution stands where valve or hand holds it, below either."
                        : ".");
    }
}
