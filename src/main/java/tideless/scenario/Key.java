package tideless.scenario;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Pouring;
import tideless.rig.Visits;

/**
 * One key a user may write: the only place that says what it may hold, what it falls back on and
 * why, and what it means. Reading, suggestions, {@code show} and the reference page are all made
 * from it. Where it stands is said by the {@link KeyTable} its {@link KeyGroup} is put into.
 *
 * @param <T> what it is read as; a quantity as a number in the records' unit
 */
final class Key<T> {
    /** A default that many growers and books use, none of which we can name. */
    static final String COMMON_PRACTICE = "common practice, no source";

    /** A default that we took because one is needed. */
    static final String ASSUMED = "assumed";

    /** A default that leaves something out of the run until it is asked for. */
    static final String LEFT_OUT = "left out until stated";

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
    private final Kind<T> kind;
    private final Need need;
    private final Bounds bounds;
    private final String fallback;
    private final String basis;
    private final String example;
    private final String about;
    private final String discriminator;
    private final List<String> onlyWith;
    private final String beside;

    private Key(Draft<T> draft, String about) {
        path = draft.path;
        kind = draft.kind;
        need = Objects.requireNonNull(draft.need, path);
        bounds = draft.bounds;
        fallback = draft.fallback;
        basis = draft.basis;
        example = draft.example;
        discriminator = draft.discriminator;
        onlyWith = draft.onlyWith;
        beside = draft.beside;
        this.about = about;
        if (bounds != null && !(bounds.low().value() < bounds.high().value())) {
            throw new IllegalStateException("bounds of " + path + " do not rise");
        }
    }

    // One way to begin a kind of key; Draft.about ends it.

    static Draft<String> text(String path) {
        return new Draft<>(path, new Kind.Text());
    }

    /** The name of a file, counted from the scenario's folder. */
    static Draft<String> file(String path) {
        return new Draft<>(path, new Kind.FileName());
    }

    static Draft<Boolean> flag(String path) {
        return new Draft<>(path, new Kind.Flag());
    }

    static Draft<LocalDate> date(String path) {
        return new Draft<>(path, new Kind.Date());
    }

    /** Seconds after midnight, 24:00 as 0. */
    static Draft<Double> clock(String path) {
        return new Draft<>(path, new Kind.Clock(true));
    }

    /** An instant of a day, seconds after midnight: 24:00 would be another day's. */
    static Draft<Double> timeOfDay(String path) {
        return new Draft<>(path, new Kind.Clock(false));
    }

    static Draft<Set<DayOfWeek>> weekdays(String path) {
        return new Draft<>(path, new Kind.Weekdays());
    }

    /** Dates in rising order. */
    static Draft<List<LocalDate>> dates(String path) {
        return new Draft<>(path, new Kind.Dates());
    }

    static Draft<List<Visits.Absence>> spans(String path) {
        return new Draft<>(path, new Kind.Spans());
    }

    /** Settings of a valve by date. */
    static Draft<List<Filling.Move>> moves(String path) {
        return new Draft<>(path, Kind.moves());
    }

    /** Volumes of water by date. */
    static Draft<List<Pouring.Dose>> doses(String path) {
        return new Draft<>(path, Kind.doses());
    }

    /** Shares by the time of day. */
    static Draft<List<Lamp.Level>> levels(String path) {
        return new Draft<>(path, new Kind.Levels());
    }

    /** Shares by date. */
    static Draft<List<DatedShare>> strengths(String path) {
        return new Draft<>(path, Kind.strengths());
    }

    /** Numbers by date. */
    static Draft<List<DatedNumber>> datedNumbers(String path, String name, String example) {
        Draft<List<DatedNumber>> draft = new Draft<>(path, Kind.numbers(name, example));
        return draft.optional(example);
    }

    static Draft<String> choice(String path, List<String> choices) {
        Map<String, String> same = new LinkedHashMap<>();
        choices.forEach(choice -> same.put(choice, choice));
        return choice(path, same);
    }

    static Draft<String> choice(String path, String... choices) {
        return choice(path, List.of(choices));
    }

    /** One of some spellings, read as what each stands for. */
    static <T> Draft<T> choice(String path, Map<String, T> meanings) {
        return new Draft<>(path, new Kind.Choice<>(meanings));
    }

    /** A list of such spellings, each as often as it is meant. */
    static <T> Draft<List<T>> names(String path, Map<String, T> meanings) {
        return new Draft<>(path, new Kind.Names<>(meanings));
    }

    /** A number with a unit of one of some tables, all of which give the same records' unit. */
    static Draft<Double> quantity(String path, UnitTable... tables) {
        return new Draft<>(path, new Kind.Quantity(new Units(List.of(tables), false)));
    }

    /** A number without unit. */
    static Draft<Double> number(String path) {
        return new Draft<>(path, new Kind.Quantity(new Units(List.of(), true)));
    }

    /** A share: "50 %" or 0.5. */
    static Draft<Double> share(String path) {
        return new Draft<>(path, new Kind.Quantity(new Units(List.of(UnitTable.SHARE), true)));
    }

    /** As {@link #quantity} where the tables differ in what they measure. */
    static Draft<Measure> measure(String path, UnitTable... tables) {
        return new Draft<>(path, new Kind.AnyMeasure(new Units(List.of(tables), false)));
    }

    static Draft<Integer> count(String path) {
        return new Draft<>(path, new Kind.Count());
    }

    /** A key that is being declared. */
    static final class Draft<T> {
        private final String path;
        private final Kind<T> kind;
        private Need need;
        private Bounds bounds;
        private String fallback = "";
        private String basis = "";
        private String example = "";
        private String discriminator = "";
        private List<String> onlyWith = List.of();
        private String beside = "";

        private Draft(String path, Kind<T> kind) {
            this.path = path;
            this.kind = kind;
        }

        /** Bounds as written in the first table's units; the first excluded. */
        Draft<T> above(String low, String high) {
            bounds = new Bounds(kind.units(), low, false, high);
            return this;
        }

        /** Bounds as written in the first table's units; both included. */
        Draft<T> from(String low, String high) {
            bounds = new Bounds(kind.units(), low, true, high);
            return this;
        }

        Draft<T> required(String example) {
            need = Need.REQUIRED;
            this.example = example;
            return this;
        }

        /**
         * A text that is read when the user says nothing.
         *
         * @param basis where it comes from: author and year, or {@link #COMMON_PRACTICE}, {@link
         *     #ASSUMED} or {@link #LEFT_OUT}
         */
        Draft<T> fallsTo(String fallback, String basis) {
            need = Need.DEFAULT;
            this.fallback = fallback;
            this.basis = basis;
            this.example = fallback;
            return this;
        }

        /** Words for what the reader works out from other keys. */
        Draft<T> workedOut(String how, String example) {
            need = Need.WORKED_OUT;
            this.fallback = how;
            this.example = example;
            return this;
        }

        Draft<T> optional(String example) {
            need = Need.OPTIONAL;
            this.example = example;
            return this;
        }

        /** Makes sense only where a sibling key holds one of these. */
        Draft<T> onlyWith(Key<?> discriminator, String... values) {
            this.discriminator = discriminator.name();
            this.onlyWith = List.of(values);
            return this;
        }

        /** Counts only where a sibling key is stated. */
        Draft<T> beside(Key<?> other) {
            this.beside = other.name();
            return this;
        }

        /** Ends the declaration with one line for a reader who knows the rig but not this key. */
        Key<T> about(String about) {
            return new Key<>(this, about);
        }
    }

    String path() {
        return path;
    }

    /** The last step of its path. */
    String name() {
        return path.substring(path.lastIndexOf('.') + 1);
    }

    Kind<T> kind() {
        return kind;
    }

    Need need() {
        return need;
    }

    List<UnitTable> tables() {
        return kind.units().tables();
    }

    String fallback() {
        return fallback;
    }

    /** Where the default comes from; empty when there is none. */
    String basis() {
        return basis;
    }

    String example() {
        return example;
    }

    /** The example as it is written in TOML. */
    String written() {
        return kind.isText() ? quoted(example) : example;
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

    /** The sibling key that must be stated for this one to count; empty for none. */
    String beside() {
        return beside;
    }

    /** A value as it came out of a file, or of a text for one. */
    Read<T> read(Object value) {
        return kind.read(this, value);
    }

    boolean inBounds(Measure measure) {
        return bounds == null || bounds.contain(measure);
    }

    Optional<Bounds> range() {
        return Optional.ofNullable(bounds);
    }

    /** The bounds in words, or an empty text. */
    String bounds() {
        return bounds == null ? "" : bounds.toString();
    }

    /** What may stand there, in one line for a message. */
    String allowed() {
        return kind.allowed(this);
    }

    static String quoted(String text) {
        return '"' + text + '"';
    }
}
