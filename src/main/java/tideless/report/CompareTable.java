package tideless.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tideless.study.Axis;
import tideless.study.Band;
import tideless.study.Compared;
import tideless.study.Design;
import tideless.study.Outlook;
import tideless.words.Dates;
import tideless.words.DesignWords;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.Wrap;

/** Designs side by side, for a terminal. Signs, not colours, tell them apart. */
public final class CompareTable {
    /** Columns of a grid that have room for a figure each. */
    private static final int FIGURE_COLUMNS = 11;

    /** Lines of a table that anybody reads; the rest stands in the file. */
    private static final int MOST_LINES = 60;

    private static final String HARMLESS = "+";
    private static final String HARM = "-";
    private static final String UNBUILDABLE = "#";
    private static final String NOT_REACHED = "?";

    private final PrintWriter out;
    private final Compared compared;
    private final int width;
    private final ShownIn shownIn;
    private final List<Design.Figure> figures;

    private CompareTable(PrintWriter out, Compared compared, int width, ShownIn shownIn) {
        this.shownIn = shownIn;
        this.width = width;
        this.out = out;
        this.compared = compared;
        figures = Stream.of(Design.Figure.values()).filter(this::isWorthAColumn).toList();
    }

    /** What is nought for every design is told in a line. */
    private boolean isWorthAColumn(Design.Figure figure) {
        return Stream.concat(compared.present().stream(), compared.cells().stream())
                .flatMap(cell -> cell.design().stream())
                .map(design -> design.figures().get(figure))
                .anyMatch(band -> band != null && band.high() > 0);
    }

    private void printNoughts() {
        List<String> noughts =
                Stream.of(Design.Figure.values())
                        .filter(f -> !figures.contains(f) && f != Design.Figure.YIELD)
                        .map(DesignWords::of)
                        .toList();
        if (!noughts.isEmpty() && compared.cells().stream().anyMatch(c -> c.design().isPresent())) {
            String told = "none in any design: " + String.join(", ", noughts);
            Wrap.lines(told, width - 2).forEach(line -> out.println("  " + line));
        }
    }

    /**
     * Prints them.
     *
     * @param title what is compared
     * @param width columns of the terminal
     * @param shownIn units
     */
    public static void print(
            PrintWriter out, String title, Compared compared, int width, ShownIn shownIn) {
        CompareTable table = new CompareTable(out, compared, width, shownIn);
        out.println(title);
        out.println();
        if (compared.cells().stream().anyMatch(Compared.Cell::isReached)) {
            table.printDesigns();
        }
        for (String sentence : DesignWords.sentences(compared)) {
            Wrap.lines(sentence, width).forEach(out::println);
        }
        out.flush();
    }

    private void printDesigns() {
        if (compared.axes().size() < 2) {
            printList();
        } else {
            printGrid();
        }
        out.println();
        Wrap.lines(key(), width).forEach(out::println);
        out.println();
    }

    private String key() {
        boolean many =
                compared.cells().stream()
                        .flatMap(c -> c.design().stream())
                        .anyMatch(d -> d.members() > 1);
        return "+ without harm"
                + (many ? " in nine of ten rigs" : "")
                + (figures.contains(Design.Figure.SHORT_OF_AIR)
                        ? " (hours short of air slow growth, which the yield shows)"
                        : "")
                + (hasCupsUnder()
                        ? " (cups under water for good are harm: plugs and stems rot)"
                        : "")
                + ", - with harm, # not buildable"
                + (compared.whole() ? "" : ", ? not reached")
                + (compared.axes().get(0).numbers().isEmpty()
                        ? ""
                        : ", <now> the design as it stands");
    }

    private boolean hasCupsUnder() {
        return compared.cells().stream()
                .flatMap(c -> c.design().stream())
                .anyMatch(Design::cupsUnder);
    }

    private void printList() {
        Axis axis = compared.axes().get(0);
        List<String[]> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(DesignWords.name(axis), "", "survives"));
        for (Design.Figure figure : figures) {
            head.add(
                    (figure == Design.Figure.LITRES && shownIn.us()
                                    ? "gallons"
                                    : DesignWords.brief(figure))
                            + (figure.compareTo(Design.Figure.SHORT_OF_AIR) <= 0
                                    ? " h"
                                    : figure == Design.Figure.YIELD ? " g" : ""));
        }
        head.add("first refill");
        head.add("last cut");
        head.add("first harm");
        rows.add(head.toArray(new String[0]));
        int shown = Math.min(MOST_LINES, axis.size());
        if (IntStream.range(0, shown).noneMatch(axis::isPresent)) {
            compared.present().ifPresent(cell -> rows.add(row("as it stands", cell, false)));
        }
        for (int i = 0; i < shown; i++) {
            rows.add(row(value(axis, i), compared.at(i, 0), compared.isPresent(i, 0)));
        }
        printAligned(rows, 2);
        if (shown < axis.size()) {
            out.println("  and " + (axis.size() - shown) + " more; -o writes them all");
        }
        printNoughts();
        printYields(axis, shown);
    }

    private String[] row(String name, Compared.Cell cell, boolean present) {
        List<String> row = new ArrayList<>();
        row.add(name + (present ? " <now>" : ""));
        row.add(sign(cell));
        Optional<Design> design = cell.design();
        if (design.isEmpty()) {
            row.add(cell.isUnbuildable() ? "not buildable" : "not reached");
            return row.toArray(new String[0]);
        }
        Design of = design.get();
        row.add(of.members() == 1 ? of.survives() ? "yes" : "no" : Numbers.percent(of.chance()));
        for (Design.Figure figure : figures) {
            row.add(figure(of, figure));
        }
        row.add(day(of, of.firstRefillS().middle()));
        row.add(day(of, of.lastHarvestS().middle()));
        row.add(of.firstHarm().map(harm -> harm(of, harm)).orElse(""));
        return row.toArray(new String[0]);
    }

    private String figure(Design of, Design.Figure figure) {
        Band band = of.figures().get(figure);
        if (band == null) {
            return "";
        }
        String middle = whole(band.middle(), figure);
        String low = whole(band.low(), figure);
        String high = whole(band.high(), figure);
        return low.equals(high) ? middle : middle + " (" + low + "-" + high + ")";
    }

    private String whole(double value, Design.Figure figure) {
        return whole(figure == Design.Figure.LITRES ? shownIn.valueOf(value, "L") : value);
    }

    /** A value of an axis, as "6 cm", or in the units asked for. */
    private String value(Axis axis, int place) {
        return shownIn.told(DesignWords.value(axis, place));
    }

    private static String whole(double value) {
        return String.format(Locale.ROOT, "%d", (long) Math.floor(value + 0.5));
    }

    private static String harm(Design design, Outlook.LikelyHarm harm) {
        String what =
                switch (harm.kind()) {
                    case DIED -> " lost ";
                    case WILTED, SALT_WILTED -> " wilts ";
                    default -> " dry ";
                };
        return Names.clean(harm.tray().name())
                + harm.taken()
                        .map(
                                taken ->
                                        " loses "
                                                + Numbers.percent(taken.frac())
                                                + " to "
                                                + Names.of(taken.by())
                                                + " by ")
                        .orElse(what)
                + day(design, harm.atS().middle());
    }

    private static String day(Design design, double atS) {
        return Double.isInfinite(atS)
                ? "never"
                : Dates.dayMonth(
                        design.start().atStartOfDay().plusSeconds((long) atS).toLocalDate());
    }

    private void printYields(Axis axis, int shown) {
        Optional<Design> any =
                compared.cells().stream().flatMap(c -> c.design().stream()).findFirst();
        if (any.isEmpty() || any.get().yields().stream().noneMatch(y -> y.freshG().isPresent())) {
            return;
        }
        out.println();
        out.println("Fresh mass of one plant, g; of a fruit crop its fruit");
        List<String[]> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(DesignWords.name(axis), ""));
        any.get().yields().forEach(y -> head.add(Names.clean(y.name())));
        boolean sameTrays =
                compared.cells().stream()
                        .flatMap(c -> c.design().stream())
                        .allMatch(d -> trays(d).equals(trays(any.get())));
        if (!sameTrays) {
            head.subList(2, head.size()).clear();
        }
        rows.add(head.toArray(new String[0]));
        for (int i = 0; i < shown; i++) {
            Compared.Cell cell = compared.at(i, 0);
            if (cell.design().isEmpty()) {
                continue;
            }
            List<String> row = new ArrayList<>();
            row.add(value(axis, i) + (compared.isPresent(i, 0) ? " <now>" : ""));
            row.add(sign(cell));
            for (Outlook.Yield tray : cell.design().get().yields()) {
                String grams = tray.harvestedG().map(band -> whole(band.middle())).orElse("");
                row.add(sameTrays ? grams : Names.clean(tray.name()) + " " + grams);
            }
            rows.add(row.toArray(new String[0]));
        }
        printAligned(rows, 2);
    }

    private static List<String> trays(Design design) {
        return design.yields().stream().map(Outlook.Yield::name).toList();
    }

    /**
     * The first column to the left, the others to the right, the last free. What is wider than the
     * terminal goes on below, under the same names.
     *
     * @param names how many columns say which line it is
     */
    private void printAligned(List<String[]> rows, int names) {
        int columns = rows.stream().mapToInt(r -> r.length).max().orElse(0);
        int[] widths = new int[columns];
        for (String[] row : rows) {
            for (int c = 0; c < row.length; c++) {
                if (row.length == columns || c < names) {
                    widths[c] = Math.max(widths[c], row[c].length());
                }
            }
        }
        int from = names;
        while (from < columns || from == names) {
            int to = Math.min(columns, from + 1);
            int wide = IntStream.range(0, names).map(c -> widths[c] + 2).sum();
            wide += from < columns ? widths[from] + 2 : 0;
            while (to < columns && wide + widths[to] + 2 <= width) {
                wide += widths[to++] + 2;
            }
            if (from > names) {
                out.println();
            }
            for (String[] row : rows) {
                printPart(row, widths, names, from, to);
            }
            from = Math.max(to, names + 1);
        }
    }

    private void printPart(String[] row, int[] widths, int names, int from, int to) {
        StringBuilder line = new StringBuilder("  ");
        boolean isShort = row.length < widths.length;
        if (isShort && from > names) {
            return; // told whole above
        }
        int end = isShort ? row.length : to;
        for (int c = 0; c < end; c = c + 1 == names ? from : c + 1) {
            String gap = " ".repeat(Math.max(0, widths[c] - row[c].length()));
            boolean toTheLeft = c == 0 || isShort || c == widths.length - 1;
            line.append(c == 0 ? "" : "  ").append(toTheLeft ? row[c] + gap : gap + row[c]);
        }
        out.println(line.toString().stripTrailing());
    }

    private void printGrid() {
        Axis across = compared.axes().get(0);
        Axis down = compared.axes().get(1);
        boolean roomy = across.size() <= FIGURE_COLUMNS && down.size() <= MOST_LINES;
        if (across.size() > MOST_LINES || down.size() > MOST_LINES) {
            out.println("  The grid is wider than a page; -o writes it.");
            return;
        }
        boolean yields =
                compared.cells().stream()
                        .flatMap(c -> c.design().stream())
                        .anyMatch(d -> !Double.isNaN(d.of(Design.Figure.YIELD)));
        out.println(
                "  across: "
                        + DesignWords.name(across)
                        + (roomy
                                ? ""
                                : ", "
                                        + value(across, 0)
                                        + " to "
                                        + value(across, across.size() - 1)));
        out.println("  down:   " + DesignWords.name(down));
        if (!roomy) {
            out.println();
            printMap(Optional.empty());
            return;
        }
        out.println(
                "  "
                        + (yields
                                ? "yield of all plants, g"
                                : shownIn.us() ? "gallons poured" : "litres poured"));
        out.println();
        printMap(Optional.of(yields ? Design.Figure.YIELD : Design.Figure.LITRES));
        for (Design.Figure figure : figures) {
            if (figure.compareTo(Design.Figure.SHORT_OF_AIR) <= 0) {
                out.println();
                out.println("  " + DesignWords.of(figure));
                out.println();
                printMap(Optional.of(figure));
            }
        }
    }

    /**
     * The grid with a figure in each cell.
     *
     * @param shown that figure; empty for signs alone
     */
    private void printMap(Optional<Design.Figure> shown) {
        Axis across = compared.axes().get(0);
        Axis down = compared.axes().get(1);
        List<String[]> rows = new ArrayList<>();
        if (shown.isPresent()) {
            String[] head = new String[across.size() + 1];
            head[0] = "";
            for (int x = 0; x < across.size(); x++) {
                head[x + 1] = value(across, x) + " ";
            }
            rows.add(head);
        }
        for (int y = down.size() - 1; y >= 0; y--) { // the way a map has it
            String[] row = new String[across.size() + 1];
            row[0] = value(down, y);
            for (int x = 0; x < across.size(); x++) {
                Compared.Cell cell = compared.at(x, y);
                String said = sign(cell);
                if (shown.isPresent() && cell.design().isPresent()) {
                    Design.Figure figure = shown.get();
                    said = whole(cell.design().get().of(figure), figure) + said;
                }
                row[x + 1] = compared.isPresent(x, y) ? "<" + said + ">" : " " + said + " ";
            }
            rows.add(row);
        }
        printAligned(rows, 1);
    }

    private static String sign(Compared.Cell cell) {
        if (cell.isUnbuildable()) {
            return UNBUILDABLE;
        }
        return cell.design()
                .map(design -> design.isHarmless() ? HARMLESS : HARM)
                .orElse(NOT_REACHED);
    }
}
