package tideless.scenario;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A CSV file with a row of names and a row of units, columns in any order; lines that begin with
 * {@code #} are passed over.
 */
final class CsvColumns {
    private static final DateTimeFormatter WITH_T =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm[:ss]", Locale.ROOT);
    private static final DateTimeFormatter SPACED =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm[:ss]", Locale.ROOT);
    private static final DateTimeFormatter PACKED =
            DateTimeFormatter.ofPattern("uuuuMMdd:HHmm", Locale.ROOT);

    private static final Pattern NUMBER =
            Pattern.compile("[+-]?\\d{1,12}(\\.\\d{0,15})?([eE][+-]?\\d{1,2})?");
    // A wrong unit makes every row of a year wrong in the same way.
    private static final int MOST_PROBLEMS = 20;

    private final String label;
    private final Source source;
    private final List<CsvRecord> rows = new ArrayList<>();
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private boolean sound = true;
    private int problems;

    private CsvColumns(String label, Source source) {
        this.label = label;
        this.source = source;
    }

    /** Reads a text; null when it has no table in it, which has then been said. */
    static CsvColumns of(String label, String text, Source source, String... needed) {
        CsvColumns csv = new CsvColumns(label, source);
        try {
            for (CsvRecord row :
                    CsvReader.builder()
                            .commentStrategy(CommentStrategy.SKIP)
                            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                            .ofCsvRecord(text)) {
                csv.rows.add(row);
            }
        } catch (CsvParseException e) {
            csv.problem(csv.lastLine(), 0, "", "text that is no CSV", "a CSV file", "");
            return null;
        }
        if (csv.rows.size() < 3) {
            csv.problem(
                    0,
                    0,
                    "",
                    csv.rows.size() + " rows",
                    "a row of names, a row of units and at least one row of values",
                    "");
            return null;
        }
        return csv.findColumns(needed) ? csv : null;
    }

    private int lastLine() {
        return rows.isEmpty() ? 1 : (int) rows.get(rows.size() - 1).getStartingLineNumber() + 1;
    }

    private boolean findColumns(String... needed) {
        CsvRecord names = rows.get(0);
        List<String> unused = new ArrayList<>();
        for (int i = 0; i < names.getFieldCount(); i++) {
            String name = names.getField(i).strip().toLowerCase(Locale.ROOT);
            if (name.isEmpty()) {
                continue;
            }
            if (!List.of(needed).contains(name)) {
                unused.add(Source.shown(name));
            } else if (columns.put(name, i) != null) {
                problem(line(names), i + 1, name, "a second column of this name", "one", "");
                return false;
            }
        }
        boolean all = true;
        for (String name : needed) {
            if (!columns.containsKey(name)) {
                String meant = KeyTable.nearest(name, unused);
                problem(
                        line(names),
                        1,
                        name,
                        "no column of this name",
                        "columns " + String.join(", ", needed),
                        meant.isEmpty()
                                ? ""
                                : "Maybe rename the column " + Key.quoted(meant) + ".");
                all = false;
            }
        }
        if (all && !unused.isEmpty()) {
            source.note(
                    new Note(
                            label,
                            line(names),
                            "",
                            "columns that are not used: " + String.join(", ", unused)));
        }
        return all;
    }

    /** How many rows of values. */
    int size() {
        return rows.size() - 2;
    }

    int line(int row) {
        return line(rows.get(row + 2));
    }

    private static int line(CsvRecord row) {
        return (int) row.getStartingLineNumber();
    }

    String label() {
        return label;
    }

    /** The unit stated under a name. */
    String unit(String column) {
        return cell(rows.get(1), column);
    }

    int unitLine() {
        return line(rows.get(1));
    }

    String cell(int row, String column) {
        return cell(rows.get(row + 2), column);
    }

    private String cell(CsvRecord row, String column) {
        int at = columns.get(column);
        return at < row.getFieldCount() ? row.getField(at).strip() : "";
    }

    void problem(int line, int column, String key, String found, String allowed, String hint) {
        sound = false;
        problems++;
        if (problems < MOST_PROBLEMS) {
            source.add(new Problem(label, line, column, key, found, allowed, hint));
        } else if (problems == MOST_PROBLEMS) {
            String more = "More may follow: only the first " + MOST_PROBLEMS + " are shown.";
            source.add(new Problem(label, line, column, key, found, allowed, more));
        }
    }

    void problemAt(int row, String column, String allowed) {
        problem(
                line(row),
                columns.get(column) + 1,
                column,
                Key.quoted(Source.shown(cell(row, column))),
                allowed,
                "");
    }

    /** Whether nothing has been found wrong so far. */
    boolean isSound() {
        return sound;
    }

    /** Whether the unit under a name is one of a table's; says so when it is not. */
    boolean knows(String column, List<UnitTable> tables, String... besides) {
        String unit = unit(column);
        List<String> shown = new ArrayList<>(List.of(besides));
        for (UnitTable table : tables) {
            if (table.spellings().contains(unit)) {
                return true;
            }
            shown.addAll(table.shown());
        }
        if (List.of(besides).contains(unit)) {
            return true;
        }
        problem(
                unitLine(),
                columns.get(column) + 1,
                column,
                unit.isEmpty() ? "no unit" : "the unit " + Key.quoted(Source.shown(unit)),
                String.join(", ", shown),
                "The second row states units.");
        return false;
    }

    /** A value in the records' unit; NaN for an empty cell or a fault. */
    double value(int row, String column, UnitTable table, double low, double high) {
        String cell = cell(row, column);
        if (cell.isEmpty()) {
            return Double.NaN;
        }
        if (NUMBER.matcher(cell).matches()) {
            double number = Double.parseDouble(cell);
            double value = table.value(number, unit(column)).orElse(Double.NaN);
            if (value >= low && value <= high) {
                return value;
            }
        }
        String unit = table.shown().get(0);
        problemAt(
                row,
                column,
                "from %s up to %s"
                        .formatted(
                                Measure.plain(low, table, unit), Measure.plain(high, table, unit)));
        return Double.NaN;
    }

    /** A time, or null with a fault. */
    LocalDateTime time(int row, String column) {
        String cell = cell(row, column);
        try {
            if (cell.length() == 10) {
                return LocalDate.parse(cell).atStartOfDay();
            }
            // Chosen by a look, not by trying: a year has 8760 rows.
            boolean packed = cell.indexOf('-') < 0;
            boolean spaced = cell.indexOf(' ') > 0;
            return LocalDateTime.parse(cell, packed ? PACKED : spaced ? SPACED : WITH_T);
        } catch (DateTimeException e) {
            problemAt(row, column, "a date and time, as 2026-03-02T13:00 or 20260302:1300");
            return null;
        }
    }
}
