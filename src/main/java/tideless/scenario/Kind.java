package tideless.scenario;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Pouring;
import tideless.rig.Visits;

/**
 * What a value is: how it is read from what stands in a file, and what may stand there.
 *
 * @param <T> what it is read as
 */
interface Kind<T> {
    /** Reads what the TOML parser made of a value, or the text of a default. */
    Read<T> read(Key<T> key, Object value);

    /** Reads the text of a default. */
    default Read<T> readDefault(Key<T> key, String fallback) {
        return read(key, fallback);
    }

    /** What may stand there, in one line. */
    String allowed(Key<T> key);

    /** In what a number may be written; none for what is no number. */
    default Units units() {
        return Units.NONE;
    }

    /** Whether it is written in quotation marks. */
    default boolean isText() {
        return true;
    }

    private static String choices(Collection<String> spellings) {
        return String.join(", ", spellings.stream().map(Key::quoted).toList());
    }

    private static String didYouMean(String written, Collection<String> spellings) {
        if (spellings.contains("weather") && StarterLight.isOfSummer(written)) {
            return "Maybe \"weather\" with a file, or \"room\" with window_light and your own"
                    + " warmth.";
        }
        String meant = Spelling.nearest(written, spellings);
        return meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?";
    }

    private static <T> Read<T> bare(Object value) {
        return Read.faulty(value instanceof String ? "Write it without quotation marks." : "");
    }

    /** A text of one line. */
    final class Text implements Kind<String> {
        private static final int LONGEST = 500;

        @Override
        public Read<String> read(Key<String> key, Object value) {
            if (!(value instanceof String text) || text.isBlank() || text.length() > LONGEST) {
                return Read.faulty();
            }
            return TomlFile.hasUnseen(text)
                    ? Read.faulty(
                            "It holds a character that cannot be seen, as a tab, an escape or a"
                                    + " mark that turns the writing round.")
                    : Read.of(text.strip());
        }

        @Override
        public String allowed(Key<String> key) {
            return "a text of up to 500 characters that can be seen, as "
                    + Key.quoted(key.example());
        }
    }

    /** The name of a file. */
    final class FileName implements Kind<String> {
        private static final Text TEXT = new Text();

        @Override
        public Read<String> read(Key<String> key, Object value) {
            return TEXT.read(key, value);
        }

        @Override
        public String allowed(Key<String> key) {
            return "the name of a file, as " + Key.quoted(key.example());
        }
    }

    /** True or false. */
    final class Flag implements Kind<Boolean> {
        @Override
        public Read<Boolean> read(Key<Boolean> key, Object value) {
            if (value instanceof Boolean flag) {
                return Read.of(flag);
            }
            return Kind.bare(value);
        }

        @Override
        public Read<Boolean> readDefault(Key<Boolean> key, String fallback) {
            return Read.of(Boolean.valueOf(fallback));
        }

        @Override
        public String allowed(Key<Boolean> key) {
            return "true or false";
        }

        @Override
        public boolean isText() {
            return false;
        }
    }

    /** A day. */
    final class Date implements Kind<LocalDate> {
        private static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);
        private static final LocalDate LATEST = LocalDate.of(2200, 12, 31);

        @Override
        public Read<LocalDate> read(Key<LocalDate> key, Object value) {
            return of(value);
        }

        static Read<LocalDate> of(Object value) {
            LocalDate date = null;
            if (value instanceof LocalDate toml) {
                date = toml;
            } else if (value instanceof String text && text.length() == 10) {
                try {
                    date = LocalDate.parse(text);
                } catch (DateTimeException e) {
                    return Read.faulty();
                }
            }
            return date == null || date.isBefore(EARLIEST) || date.isAfter(LATEST)
                    ? Read.faulty()
                    : Read.of(date);
        }

        @Override
        public String allowed(Key<LocalDate> key) {
            return "a date from 1900-01-01 up to 2200-12-31, as 2026-03-02";
        }

        @Override
        public boolean isText() {
            return false;
        }
    }

    /** A time of day. */
    final class Clock implements Kind<Double> {
        private final boolean endOfDay;

        /**
         * @param endOfDay whether 24:00 may be written for the midnight that ends a day
         */
        Clock(boolean endOfDay) {
            this.endOfDay = endOfDay;
        }

        @Override
        public Read<Double> read(Key<Double> key, Object value) {
            if (!endOfDay && "24:00".equals(value)) {
                return Read.faulty(
                        "Maybe \"23:59\", or \"00:00\", with which the same day begins.");
            }
            return of(value);
        }

        static Read<Double> of(Object value) {
            if (value instanceof LocalTime time) {
                return Read.of((double) time.toSecondOfDay());
            }
            if (value instanceof String text && text.matches("([01]?\\d|2[0-3]):[0-5]\\d|24:00")) {
                int colon = text.indexOf(':');
                int minutes =
                        60 * Integer.parseInt(text.substring(0, colon))
                                + Integer.parseInt(text.substring(colon + 1));
                return Read.of((minutes * 60) % Time.DAY_S);
            }
            return Read.faulty();
        }

        @Override
        public String allowed(Key<Double> key) {
            return "a time of day from \"00:00\" up to \"%s\", as %s"
                    .formatted(endOfDay ? "24:00" : "23:59", Key.quoted(key.example()));
        }
    }

    /** Days of the week. */
    final class Weekdays implements Kind<Set<DayOfWeek>> {
        @Override
        public Read<Set<DayOfWeek>> read(Key<Set<DayOfWeek>> key, Object value) {
            if (value instanceof String text && text.equals("daily")) {
                return Read.of(EnumSet.allOf(DayOfWeek.class));
            }
            if (value instanceof String text) {
                return Read.faulty(
                        StarterVisits.of(text.strip().toLowerCase(Locale.ROOT))
                                .map(days -> "Maybe " + StarterVisits.written(days) + ".")
                                .orElse(""));
            }
            if (!(value instanceof TomlArray array) || array.isEmpty()) {
                return Read.faulty();
            }
            Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
            for (Object one : array.toList()) {
                DayOfWeek day = one instanceof String text ? weekday(text) : null;
                if (day == null) {
                    return new Read.Faulty<>(Words.shown(one), "", "");
                }
                days.add(day);
            }
            return Read.of(days);
        }

        private static DayOfWeek weekday(String text) {
            String lower = text.toLowerCase(Locale.ROOT);
            for (DayOfWeek day : DayOfWeek.values()) {
                String whole = day.name().toLowerCase(Locale.ROOT);
                if (lower.equals(whole) || lower.equals(whole.substring(0, 3))) {
                    return day;
                }
            }
            return null;
        }

        @Override
        public String allowed(Key<Set<DayOfWeek>> key) {
            return "\"daily\" or a list of mon, tue, wed, thu, fri, sat, sun";
        }
    }

    /** A list of days, each once and in rising order. */
    final class Dates implements Kind<List<LocalDate>> {
        @Override
        public Read<List<LocalDate>> read(Key<List<LocalDate>> key, Object value) {
            if (!(value instanceof TomlArray array)) {
                return Read.faulty();
            }
            List<LocalDate> dates = new ArrayList<>();
            for (Object one : array.toList()) {
                Read<LocalDate> date = Date.of(one);
                if (!date.isSound()) {
                    return new Read.Faulty<>(Words.shown(one), "", "");
                }
                dates.add(date.value());
            }
            return Read.of(dates.stream().distinct().sorted().toList());
        }

        @Override
        public String allowed(Key<List<LocalDate>> key) {
            return "a list of dates, as [2026-03-02, 2026-03-09]";
        }

        @Override
        public boolean isText() {
            return false;
        }
    }

    /**
     * A list of tables of two keys each.
     *
     * @param <T> what each is read as
     */
    abstract class Entries<T> implements Kind<List<T>> {
        /** Of a table of two keys; faulty where it is another. */
        abstract Read<T> entry(TomlTable table);

        /** Whether one may follow another; says in the fault's words when not. */
        abstract Read<T> after(Read<T> before, T next);

        @Override
        public Read<List<T>> read(Key<List<T>> key, Object value) {
            if (!(value instanceof TomlArray array)) {
                return Read.faulty();
            }
            List<T> entries = new ArrayList<>();
            Read<T> before = Read.absent();
            for (Object one : array.toList()) {
                Read<T> entry =
                        one instanceof TomlTable table && table.size() == 2
                                ? entry(table)
                                : Read.faulty();
                if (!entry.isSound()) {
                    return new Read.Faulty<>(words(one), "", "");
                }
                before = after(before, entry.value());
                if (before instanceof Read.Faulty<T> fault) {
                    return new Read.Faulty<>(fault.found(), fault.allowed(), "");
                }
                entries.add(entry.value());
            }
            return Read.of(entries);
        }

        /** An entry as it might stand in the file. */
        private static String words(Object entry) {
            if (!(entry instanceof TomlTable table)) {
                return Words.shown(entry);
            }
            List<String> parts = new ArrayList<>();
            table.toMap().forEach((key, value) -> parts.add(key + " = " + Words.shown(value)));
            return TomlFile.shown("{ " + String.join(", ", parts) + " }");
        }

        /** A following entry where its time is later than the last one's. */
        static <T> Read<T> rising(Read<T> before, T next, ToDoubleFunction<T> at) {
            boolean late = before.holds(last -> !(at.applyAsDouble(next) > at.applyAsDouble(last)));
            return late ? new Read.Faulty<>("", "entries that rise in time", "") : Read.of(next);
        }

        @Override
        public boolean isText() {
            return false;
        }
    }

    /** A list of spans of days. */
    final class Spans extends Entries<Visits.Absence> {
        private record Span(LocalDate from, LocalDate to) {}

        @Override
        Read<Visits.Absence> entry(TomlTable table) {
            return span(table).map(span -> new Visits.Absence(span.from, span.to));
        }

        private static Read<Span> span(TomlTable table) {
            return Read.both(
                    Date.of(table.get(List.of("from"))),
                    Date.of(table.get(List.of("to"))),
                    Span::new);
        }

        @Override
        Read<Visits.Absence> after(Read<Visits.Absence> before, Visits.Absence next) {
            return Read.of(next);
        }

        @Override
        public Read<List<Visits.Absence>> read(Key<List<Visits.Absence>> key, Object value) {
            if (value instanceof TomlArray array) {
                for (Object one : array.toList()) {
                    Read<Span> span =
                            one instanceof TomlTable table && table.size() == 2
                                    ? span(table)
                                    : Read.faulty();
                    if (span.holds(both -> both.to.isBefore(both.from))) {
                        return new Read.Faulty<>(
                                "a span from %s to %s"
                                        .formatted(span.value().from, span.value().to),
                                "an end on or after its begin",
                                "");
                    }
                }
            }
            return super.read(key, value);
        }

        @Override
        public String allowed(Key<List<Visits.Absence>> key) {
            return "a list of spans, as [{ from = 2026-04-03, to = 2026-04-12 }]";
        }
    }

    /** A share, as it stands in a list. */
    private static Read<Double> share(Object value) {
        Read<Double> read = SHARE.read(value);
        return read.holds(frac -> frac >= 0 && frac <= 1) ? read : Read.faulty();
    }

    /** What shares in lists may be. */
    String SHARES = ", with shares from 0 % up to 100 %";

    /** Reads shares in lists. */
    Key<Double> SHARE = Key.share("share").optional("50 %").about("a share");

    /** A list of shares by the time of day. */
    final class Levels extends Entries<Lamp.Level> {
        @Override
        Read<Lamp.Level> entry(TomlTable table) {
            return Read.both(
                    Clock.of(table.get(List.of("from"))),
                    Kind.share(table.get(List.of("share"))),
                    Lamp.Level::new);
        }

        @Override
        Read<Lamp.Level> after(Read<Lamp.Level> before, Lamp.Level next) {
            return rising(before, next, Lamp.Level::fromS);
        }

        @Override
        public String allowed(Key<List<Lamp.Level>> key) {
            return "a list of times that rise, as [{ from = \"06:00\", share = \"50 %\" }]"
                    + SHARES;
        }
    }

    /** A level, as it stands in a list. */
    Key<Double> LEVEL =
            Key.quantity("setting", UnitTable.LENGTH)
                    .above("0 cm", "60 cm")
                    .optional("4 cm")
                    .about("a level");

    /** A volume, as it stands in a list. */
    Key<Double> VOLUME =
            Key.quantity("volume", UnitTable.VOLUME)
                    .above("0 L", "10000 L")
                    .optional("5 L")
                    .about("a volume");

    /**
     * A list by date.
     *
     * @param <T> what each is read as
     */
    final class ByDate<T> extends Entries<T> {
        private final String dateKey;
        private final String valueKey;
        private final Function<Object, Read<Double>> reads;
        private final BiFunction<LocalDate, Double, T> made;
        private final Function<T, LocalDate> dateOf;
        private final String allowed;

        private ByDate(
                String dateKey,
                String valueKey,
                Function<Object, Read<Double>> reads,
                BiFunction<LocalDate, Double, T> made,
                Function<T, LocalDate> dateOf,
                String allowed) {
            this.dateKey = dateKey;
            this.valueKey = valueKey;
            this.reads = reads;
            this.made = made;
            this.dateOf = dateOf;
            this.allowed = allowed;
        }

        @Override
        Read<T> entry(TomlTable table) {
            return Read.both(
                    Date.of(table.get(List.of(dateKey))),
                    reads.apply(table.get(List.of(valueKey))),
                    made);
        }

        @Override
        Read<T> after(Read<T> before, T next) {
            return rising(before, next, entry -> dateOf.apply(entry).toEpochDay());
        }

        @Override
        public String allowed(Key<List<T>> key) {
            return "a list of dates that rise, as " + allowed;
        }
    }

    /** Shares by date. */
    static ByDate<DatedShare> strengths() {
        return new ByDate<>(
                "from",
                "share",
                Kind::share,
                DatedShare::new,
                DatedShare::from,
                "[{ from = 2026-03-20, share = \"80 %\" }]" + SHARES);
    }

    /** A valve's settings by date. */
    static ByDate<Filling.Move> moves() {
        return new ByDate<>(
                "on",
                "setting",
                LEVEL::read,
                Filling.Move::new,
                Filling.Move::on,
                "[{ on = 2026-03-20, setting = \"40 mm\" }], with settings above 0 cm up to 60 cm");
    }

    /** Volumes of water by date. */
    static ByDate<Pouring.Dose> doses() {
        return new ByDate<>(
                "from",
                "volume",
                VOLUME::read,
                Pouring.Dose::new,
                Pouring.Dose::from,
                "[{ from = 2026-04-01, volume = \"5 L\" }], with volumes above 0 L up to 10000 L");
    }

    /** Numbers above 0 by date, the number under a name of its own. */
    static ByDate<DatedNumber> numbers(String name, String example) {
        return new ByDate<>(
                "from",
                name,
                Kind::counted,
                DatedNumber::new,
                DatedNumber::from,
                example + ", with " + name + " above 0 up to 100000, without unit");
    }

    /** A bare number above 0. */
    private static Read<Double> counted(Object value) {
        return value instanceof Number number
                        && number.doubleValue() > 0
                        && number.doubleValue() <= 100_000
                ? Read.of(number.doubleValue())
                : Read.faulty();
    }

    /** One of some spellings. */
    final class Choice<T> implements Kind<T> {
        private final Map<String, T> meanings;

        Choice(Map<String, T> meanings) {
            this.meanings = new LinkedHashMap<>(meanings);
        }

        /** The words that may stand there. */
        Set<String> words() {
            return meanings.keySet();
        }

        @Override
        public Read<T> read(Key<T> key, Object value) {
            if (!(value instanceof String text)) {
                return Read.faulty();
            }
            return meanings.containsKey(text)
                    ? Read.of(meanings.get(text))
                    : Read.faulty(Kind.didYouMean(text, meanings.keySet()));
        }

        @Override
        public String allowed(Key<T> key) {
            return Kind.choices(meanings.keySet());
        }
    }

    /** A list of some spellings. */
    final class Names<T> implements Kind<List<T>> {
        private final Map<String, T> meanings;

        Names(Map<String, T> meanings) {
            this.meanings = new LinkedHashMap<>(meanings);
        }

        /** The words that may stand there. */
        Set<String> words() {
            return meanings.keySet();
        }

        @Override
        public Read<List<T>> read(Key<List<T>> key, Object value) {
            if (!(value instanceof TomlArray array)) {
                return Read.faulty();
            }
            List<T> found = new ArrayList<>();
            for (Object one : array.toList()) {
                if (!(one instanceof String text) || !meanings.containsKey(text)) {
                    String hint =
                            one instanceof String text
                                    ? Kind.didYouMean(text, meanings.keySet())
                                    : "";
                    return new Read.Faulty<>(Words.shown(one), "", hint);
                }
                found.add(meanings.get(text));
            }
            return Read.of(found);
        }

        @Override
        public String allowed(Key<List<T>> key) {
            return "a list of " + Kind.choices(meanings.keySet());
        }

        @Override
        public boolean isText() {
            return false;
        }
    }

    /** A number, with a unit or without, and which kind of unit it was. */
    final class AnyMeasure implements Kind<Measure> {
        private final Units units;

        AnyMeasure(Units units) {
            this.units = units;
        }

        @Override
        public Units units() {
            return units;
        }

        @Override
        public boolean isText() {
            return !units.tables().isEmpty();
        }

        @Override
        public Read<Measure> read(Key<Measure> key, Object value) {
            return measure(key, value);
        }

        static Read<Measure> measure(Key<?> key, Object value) {
            Units units = key.kind().units();
            Read<Measure> read = written(units, value);
            if (read.isSound()) {
                return key.inBounds(read.value()) ? read : Read.faulty();
            }
            boolean hinted = read instanceof Read.Faulty<Measure> fault && !fault.hint().isEmpty();
            if (!hinted && isBareNumber(value) && !units.tables().isEmpty()) {
                String unit = units.tables().get(0).shown().get(0);
                return Read.faulty("Maybe " + Key.quoted(Words.of(value) + " " + unit) + ".");
            }
            return read;
        }

        private static Read<Measure> written(Units units, Object value) {
            if (value instanceof String text) {
                return units.read(text);
            }
            if (value instanceof Long || value instanceof Double) {
                double number = ((Number) value).doubleValue();
                boolean fit = units.plainToo() && Math.abs(number) <= 1e30;
                return fit ? Read.of(new Measure(number, number, null)) : Read.faulty();
            }
            return Read.faulty();
        }

        private static boolean isBareNumber(Object value) {
            return value instanceof Long
                    || (value instanceof Double number && !number.isNaN() && !number.isInfinite())
                    || (value instanceof String text
                            && text.strip().matches("[+-]?\\d+(\\.\\d+)?"));
        }

        @Override
        public String allowed(Key<Measure> key) {
            return units.allowed(key.bounds());
        }
    }

    /** A number in the records' unit. */
    final class Quantity implements Kind<Double> {
        private final Units units;

        Quantity(Units units) {
            this.units = units;
        }

        @Override
        public Units units() {
            return units;
        }

        @Override
        public boolean isText() {
            return !units.tables().isEmpty();
        }

        @Override
        public Read<Double> read(Key<Double> key, Object value) {
            return AnyMeasure.measure(key, value).map(Measure::value);
        }

        @Override
        public String allowed(Key<Double> key) {
            return units.allowed(key.bounds());
        }
    }

    /** A whole number. */
    final class Count implements Kind<Integer> {
        private static final Units UNITS = new Units(List.of(), true);

        @Override
        public Units units() {
            return UNITS;
        }

        @Override
        public boolean isText() {
            return false;
        }

        @Override
        public Read<Integer> read(Key<Integer> key, Object value) {
            if (value instanceof Long number && key.inBounds(new Measure(number, number, null))) {
                return Read.of(number.intValue());
            }
            return Kind.bare(value);
        }

        @Override
        public String allowed(Key<Integer> key) {
            return "a whole number " + key.bounds();
        }
    }
}
