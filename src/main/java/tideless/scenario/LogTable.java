package tideless.scenario;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The cells of a log, one line for each thing that was read or done, whether the file has a column
 * {@code what} or one column for each quantity.
 */
final class LogTable {
    /** A file with more is no grower's; each is stepped to in a run. */
    private static final int MOST_LINES = 5000;

    static final String DATE = "date";
    static final String TIME = "time";
    static final String WHERE = "where";
    static final String WHAT = "what";
    static final String VALUE = "value";
    static final String UNIT = "unit";
    static final String REMARK = "remark";
    static final String USE = "use";

    private static final List<String> OURS =
            List.of(DATE, TIME, WHERE, WHAT, VALUE, UNIT, REMARK, USE);

    /** What people call them too. */
    private static final Map<String, String> ALIASES =
            Map.of(
                    "day", DATE,
                    "note", REMARK,
                    "notes", REMARK,
                    "remarks", REMARK,
                    "comment", REMARK,
                    "comments", REMARK);

    /**
     * What stands in one cell.
     *
     * @param column counted from 1
     */
    record Cell(String text, int column) {
        boolean isEmpty() {
            return text.isEmpty();
        }
    }

    /**
     * One thing that was read or done, in the words of the file.
     *
     * @param value with its unit
     */
    record Line(
            int line,
            Cell date,
            Cell time,
            Cell where,
            Cell what,
            Cell value,
            Cell remark,
            Cell use) {}

    /** A column of a quantity, with the words it is called by. */
    private record Quantity(int at, String where, LogWhat what, String word, String unit) {}

    private final String label;
    private final TomlFile source;
    private final boolean commas;
    private final List<String> vessels;
    private final String ppm; // what the scenario calls its pen's, if any
    private final List<CsvRecord> rows = new ArrayList<>();
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final List<Quantity> quantities = new ArrayList<>();

    private LogTable(
            String label, TomlFile source, boolean commas, List<String> vessels, String ppm) {
        this.vessels = vessels;
        this.ppm = ppm;
        this.label = label;
        this.source = source;
        this.commas = commas;
    }

    /**
     * Reads a text; faulty where it is no table of a log, which has then been said.
     *
     * @param vessels names of the rig's trays and reservoirs
     * @param ppm the unit that a pen's ppm is; empty where that is not known
     */
    static Read<List<Line>> read(
            String label, String text, TomlFile source, List<String> vessels, String ppm) {
        LogTable table =
                new LogTable(label, source, CsvColumns.separator(text) != ',', vessels, ppm);
        try {
            for (CsvRecord row : CsvColumns.reader(text)) {
                if (!table.rows.isEmpty() || !tellsSeparator(row)) {
                    table.rows.add(row);
                }
            }
        } catch (CsvParseException e) {
            table.problem(table.rows.size() + 1, 1, "", "text that is no CSV", "a CSV file", "");
            return Read.faulty();
        }
        if (table.rows.isEmpty() || !table.findColumns()) {
            if (table.rows.isEmpty()) {
                table.problem(
                        1, 1, "", "no row of names", String.join(", ", OURS), "log new makes one.");
            }
            return Read.faulty();
        }
        if (table.rows.size() > MOST_LINES) {
            table.problem(
                    line(table.rows.get(MOST_LINES)),
                    1,
                    "",
                    "more than " + MOST_LINES + " lines",
                    "up to " + MOST_LINES,
                    "A logger's file belongs under [climate] or thirst_file.");
            return Read.faulty();
        }
        List<Line> lines = new ArrayList<>();
        boolean fit = true;
        for (CsvRecord row : table.rows.subList(1, table.rows.size())) {
            if (row.getFields().stream().allMatch(String::isBlank)) {
                continue;
            }
            fit &= table.fits(row);
            table.add(row, lines);
        }
        return fit ? Read.of(lines) : Read.faulty();
    }

    /** A line "sep=;" that spreadsheets put above a table. */
    private static boolean tellsSeparator(CsvRecord row) {
        return row.getField(0).strip().toLowerCase(Locale.ROOT).startsWith("sep=");
    }

    private static int line(CsvRecord row) {
        return (int) row.getStartingLineNumber();
    }

    private void problem(
            int line, int column, String key, String found, String allowed, String hint) {
        source.add(new Problem(label, line, column, key, found, allowed, hint));
    }

    private boolean findColumns() {
        CsvRecord names = rows.get(0);
        boolean sound = true;
        boolean isLong =
                names.getFields().stream().anyMatch(name -> name.strip().equalsIgnoreCase(WHAT));
        for (int i = 0; i < names.getFieldCount(); i++) {
            String name = names.getField(i).strip();
            String ours = name.toLowerCase(Locale.ROOT);
            ours = ALIASES.getOrDefault(ours, ours);
            if (name.isEmpty()) {
                sound &= holdsNothing(i);
                continue;
            }
            if (OURS.contains(ours)) {
                if (columns.putIfAbsent(ours, i) != null) {
                    problem(line(names), i + 1, ours, "a second column of this name", "one", "");
                    sound = false;
                }
            } else if (isLong || !quantity(name, i)) {
                sound &= unknown(names, name, i, isLong);
            } else {
                sound &= hasUnit(names, name, quantities.get(quantities.size() - 1));
            }
        }
        if (!sound) {
            return false;
        }
        if (!columns.containsKey(DATE) && columns.containsKey(TIME)) {
            columns.put(DATE, columns.remove(TIME)); // both in one column
        }
        sound = need(names, DATE, true);
        if (isLong) {
            sound &= need(names, VALUE, true);
        } else if (quantities.isEmpty()) {
            sound = need(names, WHAT, false);
        }
        return sound;
    }

    /** Whether nothing stands below a column without a name, as below a trailing comma. */
    private boolean holdsNothing(int at) {
        for (CsvRecord row : rows.subList(1, rows.size())) {
            if (at < row.getFieldCount() && !row.getField(at).isBlank()) {
                problem(
                        line(row),
                        at + 1,
                        "",
                        Key.quoted(TomlFile.shown(row.getField(at).strip()))
                                + " in a column without a name",
                        "a name above each column",
                        "");
                return false;
            }
        }
        return true;
    }

    private boolean need(CsvRecord names, String column, boolean alone) {
        if (columns.containsKey(column)) {
            return true;
        }
        problem(
                line(names),
                1,
                column,
                "no column of this name",
                alone
                        ? String.join(", ", OURS)
                        : String.join(", ", OURS) + "; or a column a quantity, as \"level (cm)\"",
                "The first row says "
                        + Key.quoted(TomlFile.shown(String.join(", ", names.getFields())))
                        + "; log new makes a log with all of them.");
        return false;
    }

    /**
     * A column of a quantity: "level (cm)" beside a column where, or "shelf level (cm)", "level of
     * shelf, cm".
     */
    private boolean quantity(String name, int at) {
        String bare = CsvColumns.bare(name);
        String unit =
                bare.length() == name.length()
                        ? ""
                        : name.substring(bare.length()).strip().replaceAll("^[\\[(]|[\\])]$", "");
        if (quantity(bare, unit.strip(), at)) {
            return true;
        }
        String plain = name.replaceAll("[,()\\[\\]]", " ").replaceAll("(?i)\\bof\\b", " ").strip();
        int last = plain.lastIndexOf(' ');
        String end = plain.substring(last + 1);
        return last > 0 && isUnit(end)
                ? quantity(plain.substring(0, last).strip().replaceAll("(?i) in$", ""), end, at)
                : quantity(plain, "", at);
    }

    private static boolean isUnit(String word) {
        return Arrays.stream(LogWhat.values())
                .flatMap(what -> what.tables().stream())
                .anyMatch(table -> table.spellings().contains(word));
    }

    private boolean quantity(String bare, String unit, int at) {
        String where = "";
        LogWhat what = LogWhat.of(bare);
        String[] words = bare.split("[ _]+");
        for (int i = 1; what == null && i < words.length; i++) {
            where = String.join(" ", List.of(words).subList(0, i));
            what = LogWhat.of(String.join(" ", List.of(words).subList(i, words.length)));
        }
        for (int i = words.length - 1; what == null && i > 0; i--) { // as "EC basil"
            where = String.join(" ", List.of(words).subList(i, words.length));
            what =
                    isVessel(where)
                            ? LogWhat.of(String.join(" ", List.of(words).subList(0, i)))
                            : null;
        }
        if (what == null && isVessel(bare)) { // as "shelf (cm)"
            where = bare;
            what = LogWhat.ofUnit(unit);
        }
        if (what == null || isHeight(bare)) {
            return false;
        }
        quantities.add(new Quantity(at, where, what, bare, unit));
        return true;
    }

    /** Says so once of a column, not of each of its cells, where no unit is stated. */
    private boolean hasUnit(CsvRecord names, String name, Quantity quantity) {
        if (quantity.what().tables().isEmpty()
                || !quantity.unit().isEmpty()
                || !said(quantity.word()).isEmpty()) {
            return true;
        }
        long bare =
                rows.subList(1, rows.size()).stream()
                        .filter(row -> quantity.at() < row.getFieldCount())
                        .filter(row -> row.getField(quantity.at()).strip().matches("[\\d.,]*\\d"))
                        .count();
        if (bare < 2) {
            return true; // which the cell itself says
        }
        List<String> units = new ArrayList<>();
        quantity.what().tables().forEach(table -> units.addAll(table.shown()));
        problem(
                line(names),
                quantity.at() + 1,
                "",
                Key.quoted(TomlFile.shown(name)) + ", and numbers without a unit below it",
                "the unit behind the name: " + String.join(", ", units),
                "As " + Key.quoted(TomlFile.shown(name) + " (" + units.get(0) + ")") + ".");
        return false;
    }

    /** What many note of their plants; no level. */
    private static final Pattern PLANT_HEIGHT =
            Pattern.compile(
                    "(?:.* )?(?:plants?|stems?|shoots?)[ _]height", Pattern.CASE_INSENSITIVE);

    private static boolean isHeight(String bare) {
        return PLANT_HEIGHT.matcher(bare).matches();
    }

    private boolean isVessel(String text) {
        return vessels.stream().anyMatch(name -> name.equalsIgnoreCase(text));
    }

    /** Whether a name has both a vessel and something that is read of one in it. */
    private boolean tellsOfAVessel(String name) {
        List<String> words = List.of(name.split("[^\\p{L}\\p{N}-]+"));
        return words.stream().anyMatch(this::isVessel)
                && words.stream().anyMatch(word -> LogWhat.of(word) != null)
                && !isHeight(CsvColumns.bare(name));
    }

    private boolean unknown(CsvRecord names, String name, int at, boolean isLong) {
        String meant = Spelling.nearest(name.toLowerCase(Locale.ROOT), OURS);
        if (meant.isEmpty() && !isLong && !isHeight(CsvColumns.bare(name))) {
            meant = LogWhat.nearest(CsvColumns.bare(name));
        }
        if (!isLong && meant.isEmpty() && tellsOfAVessel(name)) {
            problem(
                    line(names),
                    at + 1,
                    "",
                    "a column " + Key.quoted(TomlFile.shown(name)),
                    "a vessel, what was read of it and its unit, as \"shelf level (cm)\"",
                    "The vessels here are " + String.join(", ", vessels) + ".");
            return false;
        }
        if (meant.isEmpty()) {
            source.note(
                    new Note(
                            label,
                            line(names),
                            "",
                            "a column that is not used: " + TomlFile.shown(name)));
            return true;
        }
        problem(
                line(names),
                at + 1,
                "",
                "a column " + Key.quoted(TomlFile.shown(name)),
                String.join(", ", OURS),
                "Did you mean " + Key.quoted(meant) + "?");
        return false;
    }

    /** Says so where a row holds more cells than there are names; empty ones do no harm. */
    private boolean fits(CsvRecord row) {
        int names = rows.get(0).getFieldCount();
        int cells = row.getFieldCount();
        while (cells > names && row.getField(cells - 1).isBlank()) {
            cells--;
        }
        if (cells <= names || isRemarkCut(row)) {
            return !isCutByComma(row);
        }
        problem(
                line(row),
                names + 1,
                "",
                cells + " cells",
                "up to " + names + ", one for each name",
                DECIMAL_COMMA + "; a remark with a comma in it goes in quotation marks.");
        return false;
    }

    /** Whether what is too much can only be of a remark with a comma in it, the last column. */
    private boolean isRemarkCut(CsvRecord row) {
        int last = rows.get(0).getFieldCount() - 1;
        return columns.containsKey(WHAT)
                && columns.getOrDefault(REMARK, -1) == last
                && row.getField(last).matches(".*[A-Za-z]{3}.*");
    }

    private static final String DECIMAL_COMMA =
            "Maybe a decimal comma: write the decimal sign as a point, or part all cells by"
                    + " semicolons";

    /** As 24,5 cm, of which 24 would stand for the value and 5 cm for the remark; says so. */
    private boolean isCutByComma(CsvRecord row) {
        Integer at = columns.get(VALUE);
        if (at == null || at + 1 >= row.getFieldCount()) {
            return false;
        }
        String value = row.getField(at).strip();
        String next = row.getField(at + 1).strip();
        if (!value.matches("[+-]?[0-9]+") || !next.matches("[0-9]+ *[A-Za-z/%-]*")) {
            return false;
        }
        problem(
                line(row),
                at + 1,
                VALUE,
                Key.quoted(TomlFile.shown(value + "," + next)),
                "a point for the decimal sign",
                DECIMAL_COMMA + ".");
        return true;
    }

    private void add(CsvRecord row, List<Line> lines) {
        if (columns.containsKey(WHAT)) {
            Cell value = cell(row, VALUE);
            Cell unit = cell(row, UNIT);
            lines.add(
                    line(
                            row,
                            cell(row, WHERE),
                            cell(row, WHAT),
                            value(
                                    cell(row, WHAT).text(),
                                    value.text(),
                                    unit.text(),
                                    value.column())));
            return;
        }
        int before = lines.size();
        for (Quantity quantity : quantities) {
            String text =
                    quantity.at() < row.getFieldCount() ? row.getField(quantity.at()).strip() : "";
            if (text.isEmpty()) {
                continue;
            }
            boolean marked = !quantity.what().mayHaveValue();
            Cell value =
                    value(quantity.word(), marked ? "" : text, quantity.unit(), quantity.at() + 1);
            lines.add(
                    line(
                            row,
                            quantity.where().isEmpty()
                                    ? cell(row, WHERE)
                                    : new Cell(quantity.where(), quantity.at() + 1),
                            new Cell(quantity.what().word(), quantity.at() + 1),
                            value));
        }
        if (lines.size() == before) {
            lines.add(
                    line(
                            row,
                            cell(row, WHERE),
                            new Cell(LogWhat.NOTHING.word(), 0),
                            new Cell("", 0)));
        }
    }

    private Line line(CsvRecord row, Cell where, Cell what, Cell value) {
        return new Line(
                line(row),
                cell(row, DATE),
                cell(row, TIME),
                where,
                what,
                value,
                cell(row, REMARK),
                cell(row, USE));
    }

    /**
     * A value with the unit of its column behind it, a point for the decimal sign, and what a ruler
     * in inches or the display of a pen leave to their readers.
     *
     * @param word what it is of
     */
    private Cell value(String word, String text, String unit, int column) {
        String number = text;
        if (commas && number.matches("[+-]?\\d+,\\d+(\\D.*)?")) {
            number = number.replaceFirst(",", ".");
        }
        Matcher broken = BROKEN.matcher(number);
        if (broken.matches() && Integer.parseInt(broken.group(3)) > 0) {
            double whole = broken.group(1) == null ? 0 : Integer.parseInt(broken.group(1).strip());
            double part =
                    Integer.parseInt(broken.group(2)) / (double) Integer.parseInt(broken.group(3));
            String of = broken.group(4) == null ? "" : broken.group(4);
            number = (Measure.plain(whole + part) + " " + of).strip();
        }
        boolean isBare = number.matches("[+-]?[\\d.,eE+-]+ ?");
        String whole =
                (isBare ? number + " " + (unit.isEmpty() ? said(word) : unit) : number).strip();
        if (!ppm.isEmpty() && whole.toLowerCase(Locale.ROOT).endsWith("ppm")) {
            whole = whole.substring(0, whole.length() - 3) + ppm;
        }
        return new Cell(PEN.matcher(whole).replaceFirst("$1S/cm"), column);
    }

    /** The unit that a word says by itself; empty for none. */
    private static String said(String word) {
        Matcher unit = SAYS_UNIT.matcher(word);
        if (!unit.find()) {
            return "";
        }
        return unit.group().equalsIgnoreCase("gallons")
                ? "gal"
                : unit.group().equalsIgnoreCase("ppm") ? "ppm" : "L";
    }

    /** As 9 1/8 in. */
    private static final Pattern BROKEN =
            Pattern.compile("(\\d{1,3}\\s+)?(\\d{1,2})/(\\d{1,2})\\s*([^\\d/].*)?");

    private static final Pattern SAYS_UNIT =
            Pattern.compile("\\b(litres|liters|gallons|ppm)\\b", Pattern.CASE_INSENSITIVE);

    /** What pens show for mS/cm and uS/cm. */
    private static final Pattern PEN = Pattern.compile("([mu\u00b5\u03bc])S$");

    private Cell cell(CsvRecord row, String name) {
        Integer at = columns.get(name);
        return at == null || at >= row.getFieldCount()
                ? new Cell("", at == null ? 1 : at + 1)
                : new Cell(row.getField(at).strip(), at + 1);
    }
}
