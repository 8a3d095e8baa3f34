package tideless.scenario;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One key a user may write: the only place that says where it stands, what it may hold, what it
 * falls back on and what it means. Reading, suggestions, {@code show} and the reference page are
 * all made from it.
 */
final class Key {
    /** What a value is. */
    enum Kind {
        TEXT,
        CHOICE,
        QUANTITY,
        COUNT,
        FLAG,
        DATE,
        CLOCK,
        WEEKDAYS,
        DATES,
        SPANS,
        LEVELS,
        STRENGTHS,
        NAMES,
        FILE
    }

    /** Whether it must stand there, and what holds when it does not. */
    enum Need {
        /** A fault when absent. */
        REQUIRED,
        /** A stated text holds. */
        DEFAULT,
        /** Something worked out from other keys holds. */
        WORKED_OUT,
        /** Nothing holds. */
        OPTIONAL
    }

    private final String path;
    private final Kind kind;
    private Need need = Need.OPTIONAL;
    private List<UnitTable> tables = List.of();
    private boolean plainToo;
    private List<String> choices = List.of();
    private String low = "";
    private boolean lowIncluded;
    private String high = "";
    private String fallback = "";
    private String example = "";
    private String about = "";
    private String discriminator = "";
    private List<String> onlyWith = List.of();

    private Key(String path, Kind kind) {
        this.path = path;
        this.kind = kind;
    }

    static Key text(String path) {
        return new Key(path, Kind.TEXT);
    }

    static Key file(String path) {
        return new Key(path, Kind.FILE);
    }

    static Key flag(String path) {
        return new Key(path, Kind.FLAG);
    }

    static Key date(String path) {
        return new Key(path, Kind.DATE);
    }

    static Key clock(String path) {
        return new Key(path, Kind.CLOCK);
    }

    static Key of(String path, Kind kind) {
        return new Key(path, kind);
    }

    static Key choice(String path, List<String> choices) {
        Key key = new Key(path, Kind.CHOICE);
        key.choices = List.copyOf(choices);
        return key;
    }

    static Key choice(String path, String... choices) {
        return choice(path, Arrays.asList(choices));
    }

    static Key names(String path, List<String> choices) {
        Key key = new Key(path, Kind.NAMES);
        key.choices = List.copyOf(choices);
        return key;
    }

    static Key quantity(String path, UnitTable... tables) {
        Key key = new Key(path, Kind.QUANTITY);
        key.tables = List.of(tables);
        return key;
    }

    /** A number without unit; a share may also be written in %. */
    static Key number(String path) {
        Key key = new Key(path, Kind.QUANTITY);
        key.plainToo = true;
        return key;
    }

    /** A share: "50 %" or 0.5. */
    static Key share(String path) {
        Key key = quantity(path, UnitTable.SHARE);
        key.plainToo = true;
        return key;
    }

    static Key count(String path) {
        Key key = new Key(path, Kind.COUNT);
        key.plainToo = true;
        return key;
    }

    /** Bounds as written in the first table's units; the first excluded. */
    Key above(String low, String high) {
        this.low = low;
        this.high = high;
        check();
        return this;
    }

    /** Bounds as written in the first table's units; both included. */
    Key from(String low, String high) {
        this.lowIncluded = true;
        return above(low, high);
    }

    Key required(String example) {
        this.need = Need.REQUIRED;
        this.example = example;
        return this;
    }

    Key fallsTo(String fallback) {
        this.need = Need.DEFAULT;
        this.fallback = fallback;
        this.example = fallback;
        return this;
    }

    Key workedOut(String how, String example) {
        this.need = Need.WORKED_OUT;
        this.fallback = how;
        this.example = example;
        return this;
    }

    Key optional(String example) {
        this.need = Need.OPTIONAL;
        this.example = example;
        return this;
    }

    Key about(String about) {
        this.about = about;
        return this;
    }

    /** Makes sense only where a sibling key holds one of these. */
    Key onlyWith(String discriminator, String... values) {
        this.discriminator = discriminator;
        this.onlyWith = List.of(values);
        return this;
    }

    private void check() {
        if (!(lowValue() < highValue())) {
            throw new IllegalStateException("bounds of " + path + " do not rise");
        }
    }

    String path() {
        return path;
    }

    /** The last step of its path. */
    String name() {
        return path.substring(path.lastIndexOf('.') + 1);
    }

    Kind kind() {
        return kind;
    }

    Need need() {
        return need;
    }

    List<UnitTable> tables() {
        return tables;
    }

    boolean plainToo() {
        return plainToo;
    }

    List<String> choices() {
        return choices;
    }

    String fallback() {
        return fallback;
    }

    String example() {
        return example;
    }

    String about() {
        return about;
    }

    String discriminator() {
        return discriminator;
    }

    List<String> onlyWith() {
        return onlyWith;
    }

    double lowValue() {
        return low.isEmpty() ? Double.NEGATIVE_INFINITY : read(low).value();
    }

    double highValue() {
        return high.isEmpty() ? Double.POSITIVE_INFINITY : read(high).value();
    }

    Measure.Read read(String text) {
        return Measure.of(text, tables, plainToo);
    }

    /**
     * Whether a value lies in bounds. Bounds are stated in the first table's units; where several
     * tables are allowed the reader checks the others against the vessel itself.
     */
    boolean inBounds(Measure.Read read) {
        if (low.isEmpty()) {
            return true;
        }
        if (read.table() != null && tables.size() > 1 && read.table() != tables.get(0)) {
            return read.value() >= 0;
        }
        double value = read.value();
        return (lowIncluded ? value >= lowValue() : value > lowValue()) && value <= highValue();
    }

    /** The bounds in words, or an empty text. */
    String bounds() {
        if (low.isEmpty()) {
            return "";
        }
        return (lowIncluded ? "from " + low : "above " + low) + " up to " + high;
    }

    /** What may stand there, in one line for a message. */
    String allowed() {
        switch (kind) {
            case TEXT:
                return "a text, as " + quoted(example);
            case FILE:
                return "the name of a file, as " + quoted(example);
            case CHOICE:
                return String.join(", ", choices.stream().map(Key::quoted).toList());
            case FLAG:
                return "true or false";
            case DATE:
                return "a date from 1900-01-01 up to 2200-12-31, as 2026-03-02";
            case CLOCK:
                return "a time of day from \"00:00\" up to \"24:00\", as " + quoted(example);
            case WEEKDAYS:
                return "\"daily\" or a list of mon, tue, wed, thu, fri, sat, sun";
            case DATES:
                return "a list of dates, as [2026-03-02, 2026-03-09]";
            case SPANS:
                return "a list of spans, as [{ from = 2026-04-03, to = 2026-04-12 }]";
            case LEVELS:
                return "a list of times that rise, as [{ from = \"06:00\", share = \"50 %\" }]";
            case STRENGTHS:
                return "a list of dates that rise, as [{ from = 2026-03-20, share = \"80 %\" }]";
            case NAMES:
                return "a list of " + String.join(", ", choices.stream().map(Key::quoted).toList());
            case COUNT:
                return "a whole number " + bounds();
            case QUANTITY:
                return quantityAllowed();
        }
        throw new AssertionError("no words for " + kind);
    }

    private String quantityAllowed() {
        List<String> units = new ArrayList<>();
        for (UnitTable table : tables) {
            units.addAll(table.shown());
        }
        String what = bounds();
        if (units.isEmpty()) {
            return (what.isEmpty() ? "a number" : "a number " + what) + ", without unit";
        }
        String tail = (plainToo ? "with or without " : "in ") + String.join(", ", units);
        return what.isEmpty() ? "a number " + tail : what + ", " + tail;
    }

    static String quoted(String text) {
        return '"' + text + '"';
    }
}
