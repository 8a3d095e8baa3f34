package tideless.scenario;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A CSV file with a row of names and a row of units, columns in any order; lines that begin with
 * {@code #} are passed over. Cells are parted by commas or, where the row of names has them, by
 * semicolons; then the decimal sign may be a comma.
 */
final class CsvColumns {
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(\\d{1,15}(\\.\\d{0,40})?|\\.\\d{1,40})([eE][+-]?\\d{1,2})?");
    private static final Pattern COMMA =
            Pattern.compile("[+-]?\\d{1,15},\\d{1,40}([eE][+-]?\\d{1,2})?");
    // A wrong unit makes every row of a year wrong in the same way.
    private static final int MOST_PROBLEMS = 20;
    private static final int MOST_OF_A_COLUMN = 3;

    /** What loggers write where they have read nothing. */
    private static final Pattern NO_READING =
            Pattern.compile(
                    "[-_.*#?]+|n[/.]?a\\.?|nan|null|none|missing|-?(99[.,]9{1,2}|9{3,6}([.,]9{1,2}|[.,]0{1,2})?)|-?3276[78]([.,]0)?",
                    Pattern.CASE_INSENSITIVE);

    private final String label;
    private final TomlFile source;
    private final char separator;
    private final List<CsvRecord> rows = new ArrayList<>();
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final Map<String, String> units = new LinkedHashMap<>();
    private int headRows = 2;
    private Timestamps timestamps;
    private boolean sound = true;
    private int problems;
    private final Map<String, Integer> badCells = new LinkedHashMap<>();

    private CsvColumns(String label, TomlFile source, char separator) {
        this.separator = separator;
        this.label = label;
        this.source = source;
    }

    /**
     * Which columns a reader looks for.
     *
     * @param needed must be there
     * @param optional may be there
     * @param named the file's own name, and unit, of some of them, as the user told it
     */
    record Wanted(List<String> needed, List<String> optional, Map<String, Named> named) {
        static Wanted just(String... needed) {
            return new Wanted(List.of(needed), List.of(), Map.of());
        }

        boolean knows(String column) {
            return needed.contains(column) || optional.contains(column);
        }
    }

    /**
     * A column as it is called in the file.
     *
     * @param column its name there
     * @param unit its unit; empty when the file states it
     */
    record Named(String column, String unit) {}

    /** Reads a text; faulty when it has no table in it, which has then been said. */
    static Read<CsvColumns> of(String label, String text, TomlFile source, String... needed) {
        return of(label, text, source, Wanted.just(needed));
    }

    static Read<CsvColumns> of(String label, String text, TomlFile source, Wanted wanted) {
        CsvColumns csv = new CsvColumns(label, source, separator(text));
        try {
            for (CsvRecord row : reader(text)) {
                csv.rows.add(row);
            }
        } catch (CsvParseException e) {
            csv.problem(csv.lastLine(), 0, "", "text that is no CSV", "a CSV file", "");
            return Read.faulty();
        }
        if (csv.rows.size() < 2) {
            csv.tooShort();
            return Read.faulty();
        }
        if (!csv.findColumns(wanted)) {
            return Read.faulty();
        }
        csv.headRows = csv.statesUnits() ? 2 : 1;
        if (csv.size() < 1) {
            csv.tooShort();
            return Read.faulty();
        }
        return csv.rowsFit() ? Read.of(csv) : Read.faulty();
    }

    static CsvReader<CsvRecord> reader(String text) {
        return CsvReader.builder()
                .fieldSeparator(separator(text))
                .commentStrategy(CommentStrategy.SKIP)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(text);
    }

    /** The names in the first row of a table, in lower case; empty when there is none. */
    static List<String> names(String text) {
        try {
            for (CsvRecord row : reader(text)) {
                return row.getFields().stream()
                        .map(name -> bare(name.strip()).toLowerCase(Locale.ROOT))
                        .toList();
            }
        } catch (CsvParseException e) {
            return List.of(); // of() says what is wrong with it
        }
        return List.of();
    }

    private void tooShort() {
        problem(
                0,
                0,
                "",
                rows.size() + " rows",
                "a row of names, a row of units and at least one row of values",
                "");
    }

    /** Whether the second row holds units: a time stands there where it holds values. */
    private boolean statesUnits() {
        Integer time = columns.get("time");
        String cell = time == null ? "" : cell(rows.get(1), "time");
        return cell.isEmpty() || !Timestamps.isOne(cell);
    }

    /** What parts the cells of the row of names. */
    static char separator(String text) {
        for (String line : text.split("\r\n|\r|\n")) {
            if (!line.isBlank() && !line.startsWith("#")) {
                if (line.indexOf(',') >= 0) {
                    return ',';
                }
                return line.indexOf(';') >= 0 ? ';' : line.indexOf('\t') >= 0 ? '\t' : ',';
            }
        }
        return ',';
    }

    /** Says of each row that holds more cells than there are names; empty ones do no harm. */
    private boolean rowsFit() {
        int names = rows.get(0).getFieldCount();
        int longer = 0;
        for (CsvRecord row : rows) {
            int cells = row.getFieldCount();
            while (cells > names && row.getField(cells - 1).isBlank()) {
                cells--;
            }
            if (cells > names && ++longer > MOST_OF_A_COLUMN) {
                return false; // a decimal comma makes every row of a year too long
            }
            if (cells > names) {
                problem(
                        line(row),
                        names + 1,
                        "",
                        cells + " cells",
                        "up to %s, one for each name in line %s"
                                .formatted(names, line(rows.get(0))),
                        "Maybe a decimal comma: write the decimal sign as a point, or part the"
                                + " cells of every row by semicolons.");
            }
        }
        return sound;
    }

    private int lastLine() {
        return rows.isEmpty() ? 1 : (int) rows.get(rows.size() - 1).getStartingLineNumber() + 1;
    }

    private boolean findColumns(Wanted wanted) {
        CsvRecord names = rows.get(0);
        Map<String, String> unused = new LinkedHashMap<>();
        for (int i = 0; i < names.getFieldCount(); i++) {
            String name = names.getField(i).strip();
            if (name.isEmpty()) {
                continue;
            }
            String ours = ours(name, wanted);
            if (ours.isEmpty()) {
                unused.put(name, name);
            } else if (columns.put(ours, i) != null) {
                problem(line(names), i + 1, ours, "a second column of this name", "one", "");
                return false;
            } else {
                units.put(ours, statedUnit(name, ours, wanted));
            }
        }
        boolean all = true;
        for (String name : wanted.needed()) {
            if (!columns.containsKey(name)) {
                String meant = ColumnGuess.of(name, unused.keySet());
                problem(
                        line(names),
                        1,
                        name,
                        "no column of this name",
                        "columns " + String.join(", ", wanted.needed()),
                        meant.isEmpty()
                                ? ""
                                : "Maybe rename the column "
                                        + Key.quoted(TomlFile.shown(meant))
                                        + ".");
                all = false;
            }
        }
        for (Map.Entry<String, Named> named : wanted.named().entrySet()) {
            if (!columns.containsKey(named.getKey())) {
                sayNoColumn(names, named.getKey(), named.getValue().column(), unused.keySet());
                all = false;
            }
        }
        if (all && !unused.isEmpty()) {
            source.note(
                    new Note(
                            label,
                            line(names),
                            "",
                            "columns that are not used: "
                                    + shown(unused.keySet())
                                    + ColumnGuess.hint(wanted, columns.keySet(), unused.keySet())));
        }
        return all;
    }

    /** Says that a column that the scenario names is not there, or is another's. */
    private void sayNoColumn(CsvRecord names, String ours, String column, Set<String> unused) {
        String quoted = Key.quoted(TomlFile.shown(column));
        for (int i = 0; i < names.getFieldCount(); i++) {
            if (names.getField(i).strip().equalsIgnoreCase(column)) {
                String already = "the column " + quoted + ", which another name has already";
                problem(line(names), i + 1, ours, already, "a column of its own", "");
                return;
            }
        }
        String meant = ColumnGuess.of(ours, unused);
        problem(
                line(names),
                1,
                ours,
                "no column " + quoted,
                unused.isEmpty()
                        ? "columns of the file"
                        : "one of the file's other columns: " + shown(unused),
                meant.isEmpty() ? "" : "Did you mean " + Key.quoted(TomlFile.shown(meant)) + "?");
    }

    private static String shown(Iterable<String> names) {
        List<String> shown = new ArrayList<>();
        names.forEach(name -> shown.add(TomlFile.shown(name)));
        return String.join(", ", shown);
    }

    /** Our name for a column of the file; empty when it is none of those wanted. */
    private static String ours(String name, Wanted wanted) {
        for (Map.Entry<String, Named> named : wanted.named().entrySet()) {
            if (named.getValue().column().equalsIgnoreCase(name)) {
                return named.getKey();
            }
        }
        String bare = bare(name).toLowerCase(Locale.ROOT);
        return wanted.knows(bare) && !wanted.named().containsKey(bare) ? bare : "";
    }

    private static String statedUnit(String name, String ours, Wanted wanted) {
        Named named = wanted.named().get(ours);
        if (named != null && !named.unit().isEmpty()) {
            return named.unit();
        }
        String bare = bare(name);
        return bare.length() == name.length()
                ? ""
                : name.substring(bare.length()).strip().replaceAll("^[\\[(]|[\\])]$", "").strip();
    }

    /** A name without the unit in brackets behind it. */
    static String bare(String name) {
        int open = Math.max(name.lastIndexOf('['), name.lastIndexOf('('));
        boolean behind = open > 0 && (name.endsWith("]") || name.endsWith(")"));
        return behind ? name.substring(0, open).strip() : name;
    }

    /** The line of the names. */
    int nameLine() {
        return line(rows.get(0));
    }

    /** Where a column stands, counted from 1. */
    int place(String column) {
        return columns.get(column) + 1;
    }

    /** Whether a column is there. */
    boolean has(String column) {
        return columns.containsKey(column);
    }

    /** How many rows of values. */
    int size() {
        return rows.size() - headRows;
    }

    int line(int row) {
        return line(rows.get(row + headRows));
    }

    private static int line(CsvRecord row) {
        return (int) row.getStartingLineNumber();
    }

    String label() {
        return label;
    }

    /** The unit the user told, else the one stated under a name, else the one behind it. */
    String unit(String column) {
        String told = units.getOrDefault(column, "");
        String under = headRows == 2 ? cell(rows.get(1), column) : "";
        return told.isEmpty() ? under : told;
    }

    int unitLine() {
        return line(rows.get(headRows - 1));
    }

    String cell(int row, String column) {
        return cell(rows.get(row + headRows), column);
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
        problemAt(row, column, allowed, "");
    }

    /** The same with advice. */
    void problemAt(int row, String column, String allowed, String hint) {
        problem(
                line(row),
                columns.get(column) + 1,
                column,
                Key.quoted(TomlFile.shown(cell(row, column))),
                allowed,
                hint);
    }

    /** Whether nothing has been found wrong so far. */
    boolean isSound() {
        return sound;
    }

    /** Whether the unit under a name is one of a table's; says so when it is not. */
    boolean knows(String column, List<UnitTable> tables, String... besides) {
        String unit = unit(column);
        List<String> shown = new ArrayList<>();
        for (UnitTable table : tables) {
            if (table.spellings().contains(unit)) {
                return true;
            }
            shown.addAll(table.shown());
        }
        if (List.of(besides).contains(unit)) {
            return true;
        }
        shown.addAll(List.of(besides));
        problem(
                unitLine(),
                columns.get(column) + 1,
                column,
                unit.isEmpty() ? "no unit" : "the unit " + Key.quoted(TomlFile.shown(unit)),
                String.join(", ", shown),
                headRows == 2
                        ? "The second row states units."
                        : "Maybe name it with its unit in [climate.columns], as "
                                + column
                                + " = "
                                + Key.quoted(
                                        TomlFile.shown(rows.get(0).getField(columns.get(column)))
                                                + " in "
                                                + shown.get(0))
                                + ".");
        return false;
    }

    /** A value in the records' unit; absent where the cell is empty. */
    Read<Double> value(int row, String column, UnitTable table, double low, double high) {
        String cell = cell(row, column);
        if (cell.isEmpty()) {
            return Read.absent();
        }
        boolean comma = COMMA.matcher(cell).matches();
        if (comma && separator != ',') {
            cell = cell.replace(',', '.');
        }
        if (NUMBER.matcher(cell).matches()) {
            OptionalDouble value = table.value(Double.parseDouble(cell), unit(column));
            if (value.isPresent() && value.getAsDouble() >= low && value.getAsDouble() <= high) {
                return Read.of(value.getAsDouble());
            }
        }
        sayCell(row, column, table, low, high);
        return Read.faulty();
    }

    /** Says what is wrong with a cell; of many in one column only the first. */
    private void sayCell(int row, String column, UnitTable table, double low, double high) {
        int count = badCells.merge(column, 1, Integer::sum);
        if (count > MOST_OF_A_COLUMN) {
            return;
        }
        String cell = cell(row, column);
        String unit = unit(column);
        String hint = "";
        if (COMMA.matcher(cell).matches() && separator == ',') {
            hint = "Write the decimal sign as a point, or part the cells by semicolons.";
        } else if (NO_READING.matcher(cell).matches()) {
            hint = "Maybe a logger's sign for no reading: leave such cells empty.";
        } else if (count == MOST_OF_A_COLUMN) {
            hint = meantUnit(cell, unit, table, low, high);
        }
        if (count == MOST_OF_A_COLUMN) {
            String more = "More may follow in this column: only the first 3 are shown.";
            hint = hint.isEmpty() ? more : more + "\n    " + hint;
        }
        problemAt(row, column, range(table, unit, low, high), hint);
    }

    private static String range(UnitTable table, String unit, double low, double high) {
        return table == UnitTable.FRACTION
                ? "from %s up to %s".formatted(Measure.plain(low), Measure.plain(high))
                : "from %s up to %s"
                        .formatted(
                                Measure.plain(low, table, unit), Measure.plain(high, table, unit));
    }

    /** Which unit would bring a number into its range, in a sentence; empty where none does. */
    private static String meantUnit(
            String cell, String unit, UnitTable table, double low, double high) {
        if (!NUMBER.matcher(cell).matches()) {
            return "";
        }
        UnitTable other = table == UnitTable.FRACTION ? UnitTable.SHARE : table;
        for (String one : other.shown()) {
            OptionalDouble value = other.value(Double.parseDouble(cell), one);
            if (!one.equals(unit)
                    && value.isPresent()
                    && value.getAsDouble() >= low
                    && value.getAsDouble() <= high) {
                return "Maybe the unit is meant to be " + one + ".";
            }
        }
        return "";
    }

    // Where no row tells day from month, all rows are faulty alike.
    private void sayTime(int row, String column) {
        int count = badCells.merge(column, 1, Integer::sum);
        if (count > MOST_OF_A_COLUMN) {
            sound = false;
            return;
        }
        boolean undecided = !timestamps.isTold() && Timestamps.isOne(cell(row, column));
        String hint =
                undecided
                        ? "Maybe write the year first: no row of this file tells day from month."
                        : "";
        String more = "More may follow in this column: only the first 3 are shown.";
        if (count == MOST_OF_A_COLUMN) {
            hint = hint.isEmpty() ? more : more + "\n    " + hint;
        }
        problemAt(row, column, timestamps.allowed(), hint);
    }

    /** A time. */
    Read<LocalDateTime> time(int row, String column) {
        if (timestamps == null) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < size(); i++) {
                cells.add(cell(i, column));
            }
            timestamps = Timestamps.of(cells);
        }
        Read<LocalDateTime> time = timestamps.read(cell(row, column));
        if (!time.isSound()) {
            sayTime(row, column);
        }
        return time;
    }
}
