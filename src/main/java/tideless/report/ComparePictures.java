package tideless.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import tideless.physics.Time;
import tideless.study.Axis;
import tideless.study.Compared;
import tideless.study.Design;
import tideless.study.Outlook;
import tideless.words.DesignWords;
import tideless.words.Names;

/** The pictures of a comparison: lines over one key, a map over two; one idea each. */
final class ComparePictures {
    private ComparePictures() {}

    /**
     * All of them by file name without its ending. What is the same for every design is not drawn.
     *
     * @param title what is compared
     * @param shown units of the axes
     */
    static Map<String, Page> of(Compared compared, String title, ShownIn shown) {
        return compared.axes().size() < 2
                ? lines(compared, title, shown)
                : maps(compared, title, shown);
    }

    private static Map<String, Page> maps(Compared compared, String title, ShownIn shown) {
        Map<String, Page> pages = new LinkedHashMap<>();
        for (Design.Figure figure : Design.Figure.values()) {
            double[] values =
                    compared.cells().stream()
                            .mapToDouble(c -> c.design().map(d -> d.of(figure)).orElse(Double.NaN))
                            .map(value -> shown.valueOf(value, unit(figure)))
                            .toArray();
            if (differ(values)) {
                pages.put(
                        "map-" + DesignWords.brief(figure).replace(' ', '-'),
                        new HeatPage(
                                heading(named(figure, shown)),
                                title,
                                figure == Design.Figure.YIELD
                                        ? "yield of all plants (g)"
                                        : named(figure, shown),
                                compared,
                                values,
                                shown));
            }
        }
        return pages;
    }

    private static String unit(Design.Figure figure) {
        return figure == Design.Figure.LITRES ? "L" : "";
    }

    private static String named(Design.Figure figure, ShownIn shown) {
        return figure == Design.Figure.LITRES && shown.us()
                ? "gallons poured"
                : DesignWords.of(figure);
    }

    private static String heading(String figure) {
        return Names.begun(figure) + " by design";
    }

    private static boolean differ(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            if (Double.isFinite(value)) {
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
        }
        return most > least;
    }

    private static Map<String, Page> lines(Compared compared, String title, ShownIn shown) {
        Map<String, Page> pages = new LinkedHashMap<>();
        add(
                pages,
                "lines-yield",
                new LinePage(
                        "Yield by design",
                        title,
                        yieldLabel(compared),
                        compared,
                        yields(compared),
                        shown));
        List<LinePage.Curve> harms = new ArrayList<>();
        for (Design.Figure figure : Design.Figure.values()) {
            if (figure.compareTo(Design.Figure.SHORT_OF_AIR) <= 0) {
                double[] values = figure(compared, d -> d.of(figure));
                if (differ(values)) {
                    harms.add(new LinePage.Curve(DesignWords.brief(figure), values));
                }
            }
        }
        add(
                pages,
                "lines-harm",
                new LinePage("Hours of harm by design", title, "hours", compared, harms, shown));
        double[] first = figure(compared, d -> d.firstRefillS().middle() / Time.DAY_S);
        if (differ(first)) {
            pages.put(
                    "lines-first-refill",
                    new LinePage(
                            "How long the first filling lasts",
                            title,
                            "first refill or top-up (days after the start)",
                            compared,
                            List.of(new LinePage.Curve("first refill", first)),
                            shown));
        }
        return pages;
    }

    private static void add(Map<String, Page> pages, String name, LinePage page) {
        if (page.curves().stream().anyMatch(c -> differ(c.values()))) {
            pages.put(name, page);
        }
    }

    private static double[] figure(Compared compared, ToDoubleFunction<Design> figure) {
        return compared.cells().stream()
                .mapToDouble(
                        cell -> {
                            Optional<Design> design = cell.design();
                            double value =
                                    design.isPresent()
                                            ? figure.applyAsDouble(design.get())
                                            : Double.NaN;
                            return Double.isFinite(value) ? value : Double.NaN;
                        })
                .toArray();
    }

    private static List<String> trays(Compared compared) {
        return compared.cells().stream()
                .flatMap(c -> c.design().stream())
                .flatMap(d -> d.yields().stream())
                .filter(y -> y.freshG().isPresent())
                .map(Outlook.Yield::name)
                .distinct()
                .limit(Look.TRAYS.size())
                .toList();
    }

    private static String yieldLabel(Compared compared) {
        return trays(compared).size() == 1
                ? "yield of a plant (g)"
                : "yield of a plant (% of the best of its tray)";
    }

    private static List<LinePage.Curve> yields(Compared compared) {
        List<LinePage.Curve> curves = new ArrayList<>();
        List<String> trays = trays(compared);
        for (String tray : trays) {
            double[] grams = figure(compared, d -> grams(d, tray));
            double best = 0;
            for (double value : grams) {
                best = value > best ? value : best;
            }
            if (trays.size() > 1) {
                for (int i = 0; i < grams.length; i++) {
                    grams[i] *= 100 / best;
                }
            }
            curves.add(new LinePage.Curve(Names.clean(tray), grams));
        }
        return curves;
    }

    private static double grams(Design design, String tray) {
        return design.yields().stream()
                .filter(y -> y.name().equals(tray))
                .map(Outlook.Yield::harvestedG)
                .flatMap(Optional::stream)
                .mapToDouble(band -> band.middle())
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Names of an axis's values, thinned so that they have room. */
    static String[] labels(Axis axis, int most, ShownIn shown) {
        String[] labels = new String[axis.size()];
        int step = Math.max(1, (axis.size() + most - 1) / most);
        for (int i = 0; i < labels.length; i++) {
            labels[i] =
                    i % step != 0
                            ? ""
                            : axis.numbers().isEmpty()
                                    ? Names.clean(axis.labels().get(i))
                                    : number(axis.numbers().get(i), axis.unit(), shown);
        }
        return labels;
    }

    /** As it was written, or where it is turned into another unit, to a tenth. */
    private static String number(double value, String unit, ShownIn shown) {
        double turned = shown.valueOf(value, unit);
        return DesignWords.number(
                shown.unitOf(unit).equals(unit) ? value : Math.floor(10 * turned + 0.5) / 10);
    }

    /** An axis's name with its unit. */
    static String label(Axis axis, ShownIn shown) {
        return DesignWords.name(axis)
                + (axis.unit().isEmpty() ? "" : " (" + shown.unitOf(axis.unit()) + ")");
    }
}
