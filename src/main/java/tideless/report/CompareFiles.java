package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tideless.physics.Time;
import tideless.study.Axis;
import tideless.study.Band;
import tideless.study.Compared;
import tideless.study.Design;
import tideless.study.Outlook;
import tideless.words.DesignWords;
import tideless.words.MachineWords;

/** The files of a comparison of designs. */
public final class CompareFiles {
    private CompareFiles() {}

    /**
     * Writes {@code compare.csv} and, of whole work, the pictures, all of them or none.
     *
     * @param title what is compared
     * @param shown units of the pictures; the table keeps its own
     * @param inputs files that were read for it
     * @return the files, or why there are none
     */
    public static WriteResult write(
            Compared compared, String title, ShownIn shown, Path folder, Collection<Path> inputs) {
        return ResultFiles.put(folder, () -> files(compared, title, shown), inputs);
    }

    private static Map<String, byte[]> files(Compared compared, String title, ShownIn shown)
            throws ResultFiles.NotDrawn {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("compare.csv", csv(compared));
        if (compared.whole()) {
            for (Map.Entry<String, Page> page :
                    ComparePictures.of(compared, title, shown).entrySet()) {
                files.putAll(ResultFiles.drawn(page.getKey(), page.getValue()));
            }
        }
        return files;
    }

    /** One row a design. */
    static byte[] csv(Compared compared) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvFiles.writerOf(text);
        List<String> trays = trays(compared);
        List<String> head = new ArrayList<>();
        for (Axis axis : compared.axes()) {
            head.add(
                    axis.key().isEmpty()
                            ? "scenario"
                            : axis.key() + (axis.unit().isEmpty() ? "" : " [" + axis.unit() + "]"));
        }
        head.addAll(List.of("state", "as_it_stands", "survives", "chance", "harmless"));
        for (Design.Figure figure : Design.Figure.values()) {
            addBand(head, header(figure), unit(figure));
        }
        addBand(head, "first_refill", "d");
        addBand(head, "last_cut", "d");
        head.addAll(List.of("first_harm", "first_harm_of", "first_harm_on", "first_harm_share"));
        for (String tray : trays) {
            addBand(head, "fresh_" + tray, "g/plant");
            addBand(head, "fruit_" + tray, "g/plant");
        }
        head.add("why_not_buildable");
        csv.writeRecord(head);
        compared.present()
                .ifPresent(
                        cell -> {
                            List<String> row = new ArrayList<>();
                            for (Axis axis : compared.axes()) {
                                row.add(
                                        axis.present().size() == 1
                                                ? DesignWords.number(axis.present().get(0))
                                                : "");
                            }
                            write(csv, row, cell, true, trays);
                        });
        Axis first = compared.axes().get(0);
        for (int i = 0; i < compared.cells().size(); i++) {
            int x = i % first.size();
            int y = i / first.size();
            List<String> row = new ArrayList<>();
            row.add(plain(first, x));
            if (compared.axes().size() > 1) {
                row.add(plain(compared.axes().get(1), y));
            }
            write(csv, row, compared.cells().get(i), compared.isPresent(x, y), trays);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String plain(Axis axis, int place) {
        return axis.numbers().isEmpty()
                ? axis.labels().get(place)
                : DesignWords.number(axis.numbers().get(place));
    }

    private static List<String> trays(Compared compared) {
        return compared.cells().stream()
                .flatMap(c -> c.design().stream())
                .flatMap(d -> d.yields().stream())
                .map(Outlook.Yield::name)
                .distinct()
                .toList();
    }

    private static void write(
            CsvWriter csv,
            List<String> row,
            Compared.Cell cell,
            boolean present,
            List<String> trays) {
        row.add(
                cell.isUnbuildable()
                        ? "not buildable"
                        : cell.design().isPresent() ? "run" : "not reached");
        row.add(present ? "yes" : "no");
        if (cell.design().isPresent()) {
            add(row, cell.design().get(), trays);
            row.add("");
        } else {
            int blanks = 3 + 3 * (Design.Figure.values().length + 1) + 4 + 6 * trays.size();
            for (int i = 0; i < blanks; i++) {
                row.add("");
            }
            row.add(cell.why());
        }
        csv.writeRecord(row);
    }

    private static void add(List<String> row, Design design, List<String> trays) {
        row.add(design.survives() ? "yes" : "no");
        row.add(SignificantDigits.six(design.chance()));
        row.add(design.isHarmless() ? "yes" : "no");
        for (Design.Figure figure : Design.Figure.values()) {
            addBand(row, design.figures().get(figure), 1);
        }
        addBand(row, design.firstRefillS(), 1 / Time.DAY_S);
        addBand(row, design.lastHarvestS(), 1 / Time.DAY_S);
        if (design.firstHarm().isPresent()) {
            Outlook.LikelyHarm harm = design.firstHarm().get();
            row.add(MachineWords.of(harm));
            row.add(harm.tray().name());
            row.add(
                    design.start()
                            .atStartOfDay()
                            .plusSeconds((long) harm.atS().middle())
                            .toLocalDate()
                            .toString());
            row.add(SignificantDigits.six(harm.share()));
        } else {
            row.addAll(List.of("", "", "", ""));
        }
        for (String tray : trays) {
            Outlook.Yield yield =
                    design.yields().stream()
                            .filter(y -> y.name().equals(tray))
                            .findFirst()
                            .orElse(null);
            addBand(row, yield == null ? null : yield.freshG().orElse(null), 1);
            addBand(row, yield == null ? null : yield.fruitG().orElse(null), 1);
        }
    }

    private static void addBand(List<String> head, String name, String unit) {
        String behind = unit.isEmpty() ? "" : " [" + unit + "]";
        head.add(name + behind);
        head.add(name + "_low" + behind);
        head.add(name + "_high" + behind);
    }

    private static void addBand(List<String> row, Band band, double factor) {
        if (band == null) {
            row.addAll(List.of("", "", ""));
            return;
        }
        row.add(SignificantDigits.six(factor * band.middle()));
        row.add(SignificantDigits.six(factor * band.low()));
        row.add(SignificantDigits.six(factor * band.high()));
    }

    private static String header(Design.Figure figure) {
        return figure == Design.Figure.LITRES ? "poured" : figure.name().toLowerCase(Locale.ROOT);
    }

    private static String unit(Design.Figure figure) {
        return switch (figure) {
            case REFILLS, FLUSHES -> "";
            case LITRES -> "L";
            case YIELD -> "g";
            default -> "h";
        };
    }
}
