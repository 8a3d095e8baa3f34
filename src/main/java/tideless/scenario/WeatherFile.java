package tideless.scenario;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.HourlyWeather;

/**
 * Hourly weather from a CSV file, cut to a run.
 *
 * <p>Columns time, temperature, humidity, global, wind. Under time stands {@code UTC}, {@code
 * UTC+01:00} or {@code local}, the rig's own clock. Global radiation is the mean over the hour that
 * begins at the row's time. What is missing is filled as {@link Gaps} says. An EPW file is brought
 * into the same table by {@link EpwFile}.
 */
final class WeatherFile {
    static final String[] COLUMNS = {"time", "temperature", "humidity", "global", "wind"};

    /** A column that a file may have besides. */
    static final String RAIN = "rain";

    /** Most rain of an hour, m: above the world's record of about 0.3 m (from memory). */
    private static final double MOST_RAIN_M = 0.4;

    /** A day of at least so much light is no polar night, Wh/m2; assumed. */
    private static final double BRIGHT_WH_PER_M2 = 1000;

    /** A bright day is looked for so many days before and after a dark one; assumed. */
    private static final int DARK_FOR_D = 7;

    private static final Pattern OFFSET = Pattern.compile("UTC(?:([+-])(\\d{1,2}):?([0-5]\\d)?)?");
    // A leap year, so that a typical year has a place for 29 February.
    private static final LocalDateTime TYPICAL_BEGIN = LocalDateTime.of(2000, 1, 1, 0, 0);
    private static final int TYPICAL_HOURS = 366 * 24;
    private static final int LONGEST_YEAR_D = 366;
    private static final int FEBRUARY_29 = 59 * 24;

    private final CsvColumns csv;
    private final TomlFile source;
    private final Gaps gaps;
    private final boolean typical;
    private final String named;
    private final int stateLateH;
    private LocalDateTime begin;
    private final HourlyColumn[] values = new HourlyColumn[5];
    private int[] lineOfHour;

    /**
     * @param stateLateH hours by which temperature, humidity and wind come after the begin of the
     *     row's hour: 0, or 1 for a file that gives them for its end
     */
    private WeatherFile(
            CsvColumns csv,
            TomlFile source,
            boolean typical,
            Gaps gaps,
            String named,
            int stateLateH) {
        this.gaps = gaps;
        this.named = named;
        this.stateLateH = stateLateH;
        this.csv = csv;
        this.source = source;
        this.typical = typical;
    }

    /**
     * How a file is read.
     *
     * @param named the file's own names of some columns
     * @param gaps which gaps are filled
     * @param cover what the scenario says stands between weather and plants, its word
     */
    record Rules(Map<String, CsvColumns.Named> named, Gaps gaps, String cover) {}

    static Read<HourlyWeather> read(
            NamedFiles.Named file,
            TomlFile source,
            boolean typical,
            double windHeightM,
            int rigOffsetS,
            LocalDate start,
            int days,
            Rules rules) {
        boolean epw = EpwFile.isNamed(file.label());
        String text = epw ? EpwFile.asCsv(file, source) : file.text();
        if (text == null || refusesInsideAir(file.label(), text, source, rules.cover())) {
            return Read.faulty();
        }
        CsvColumns.Wanted wanted =
                new CsvColumns.Wanted(
                        List.of(COLUMNS), List.of(RAIN), epw ? Map.of() : rules.named());
        Read<CsvColumns> table = CsvColumns.of(file.label(), text, source, wanted);
        if (!table.isSound()) {
            return Read.faulty();
        }
        CsvColumns csv = table.value();
        WeatherFile weather =
                new WeatherFile(csv, source, typical, rules.gaps(), named(file), epw ? 1 : 0);
        Read<Integer> fileOffsetS = offsetS(csv, Read.of(rigOffsetS));
        boolean units =
                csv.knows("temperature", List.of(UnitTable.TEMPERATURE))
                        & csv.knows("humidity", List.of(UnitTable.SHARE), "fraction")
                        & csv.knows("global", List.of(UnitTable.IRRADIANCE))
                        & csv.knows("wind", List.of(UnitTable.SPEED))
                        & (!csv.has(RAIN) || csv.knows(RAIN, List.of(UnitTable.LENGTH)));
        if (!fileOffsetS.isSound() || !units || !weather.load(windHeightM) || !csv.isSound()) {
            return Read.faulty();
        }
        return weather.cut(start, days, (rigOffsetS - fileOffsetS.value()) / Time.HOUR_S);
    }

    static boolean knows(String column) {
        return column.equals(RAIN) || List.of(COLUMNS).contains(column);
    }

    /** Says that a file of inside air must not be put under a cover once more. */
    private static boolean refusesInsideAir(
            String label, String text, TomlFile source, String cover) {
        List<String> names = CsvColumns.names(text);
        String tells = names.contains("ppfd") ? "ppfd" : names.contains("lamp") ? "lamp" : "";
        if (tells.isEmpty() && names.contains("par") && !names.contains("global")) {
            tells = "par";
        }
        if (tells.isEmpty()) {
            return false;
        }
        source.add(
                new Problem(
                        label,
                        1,
                        0,
                        tells,
                        "a column that is measured at the plants, beside cover = "
                                + Key.quoted(cover),
                        "the outside weather: columns " + String.join(", ", COLUMNS),
                        "Maybe cover = \"inside\", which takes air and light as they were"
                                + " measured."));
        return true;
    }

    /** The file's name and, where its first line is a comment, that line: whose data it is. */
    static String named(NamedFiles.Named file) {
        String first = file.text().split("[\r\n]", 2)[0];
        return first.startsWith("#")
                ? file.label() + ": " + TomlFile.shown(first.substring(1).strip())
                : file.label();
    }

    /** The clock of a file's times less UTC, s. */
    static Read<Integer> offsetS(CsvColumns csv, Read<Integer> rigOffsetS) {
        String unit = csv.unit("time");
        if (unit.equals("local")) {
            return rigOffsetS;
        }
        Matcher offset = OFFSET.matcher(unit);
        if (offset.matches()) {
            if (offset.group(1) == null) {
                return Read.of(0);
            }
            int hours = Integer.parseInt(offset.group(2));
            int minutes = offset.group(3) == null ? 0 : Integer.parseInt(offset.group(3));
            if (hours <= 14) {
                int seconds = hours * 3600 + minutes * 60;
                return Read.of(offset.group(1).equals("-") ? -seconds : seconds);
            }
        }
        csv.knows("time", List.of(), "UTC", "UTC+01:00", "local");
        return Read.faulty();
    }

    /** Puts every row in its hour and fills short gaps; false when that cannot be done. */
    private boolean load(double windHeightM) {
        LocalDateTime[] times = new LocalDateTime[csv.size()];
        int previous = -1;
        for (int row = 0; row < times.length; row++) {
            Read<LocalDateTime> read = csv.time(row, "time");
            if (!read.isSound()) {
                continue;
            }
            LocalDateTime time = read.value();
            if (time.getMinute() != 0 || time.getSecond() != 0) {
                csv.problemAt(row, "time", "whole hours");
                continue;
            }
            times[row] = typical ? time.withYear(2000) : time;
            if (previous >= 0) {
                if (times[row].equals(times[previous])) {
                    csv.problemAt(
                            row,
                            "time",
                            "each hour once; it stands in line " + csv.line(previous),
                            clockHint(times[row], times[previous]));
                } else if (times[row].isBefore(times[previous])) {
                    csv.problemAt(
                            row,
                            "time",
                            "times that rise; line %s is later".formatted(csv.line(previous)));
                }
            }
            previous = row;
        }
        if (!csv.isSound()) {
            return false;
        }
        begin = typical ? TYPICAL_BEGIN : times[0];
        long hours =
                typical
                        ? TYPICAL_HOURS
                        : ChronoUnit.HOURS.between(begin, times[times.length - 1]) + 1;
        if (hours > 400_000) { // 45 years
            csv.problemAt(times.length - 1, "time", "at most 45 years after the first row");
            return false;
        }
        for (int i = 0; i < values.length; i++) {
            values[i] = new HourlyColumn((int) hours);
            if (name(i).equals(RAIN) && !csv.has(RAIN)) {
                values[i].fill(0);
            }
        }
        lineOfHour = new int[(int) hours];
        UnitTable share =
                csv.unit("humidity").equals("fraction") ? UnitTable.FRACTION : UnitTable.SHARE;
        double toTwoMetres = windFactor(windHeightM);
        for (int row = 0; row < times.length; row++) {
            int hour = (int) ChronoUnit.HOURS.between(begin, times[row]);
            lineOfHour[hour] = csv.line(row);
            Read<Double> tempC = csv.value(row, "temperature", UnitTable.TEMPERATURE, -70, 60);
            // Sensors read a little above saturation and a little below darkness.
            Read<Double> humidity =
                    InsideFile.atMostOne(csv.value(row, "humidity", share, 0, 1.05));
            values[2].put(
                    hour,
                    InsideFile.atLeastNone(
                            csv.value(row, "global", UnitTable.IRRADIANCE, -20, 1800)));
            if (csv.has(RAIN)) {
                values[4].put(hour, csv.value(row, RAIN, UnitTable.LENGTH, 0, MOST_RAIN_M));
            }
            Read<Double> wind =
                    csv.value(row, "wind", UnitTable.SPEED, 0, 90).map(v -> toTwoMetres * v);
            OptionalInt after = afterwards(hour);
            if (after.isPresent()) {
                setState(after.getAsInt(), tempC, humidity, wind);
            }
            if (row == 0 && stateLateH > 0) {
                setState(hour, tempC, humidity, wind); // nothing is known before the first row
            }
        }
        if (!csv.isSound()) {
            return false;
        }
        if (typical) {
            repeatFebruary28();
        }
        for (int i = 0; i < values.length; i++) {
            fillGaps(values[i], name(i));
        }
        return true;
    }

    /** Last hour of the night in which clocks are put back somewhere. */
    private static final int PUT_BACK_BY_H = 3;

    /**
     * What helps where a logger kept the clock on the wall; empty for times that it has not made.
     */
    static String clockHint(LocalDateTime time, LocalDateTime before) {
        boolean isHourAgain =
                ChronoUnit.HOURS.between(time, before) <= 1 && time.getHour() <= PUT_BACK_BY_H;
        boolean isSeason = time.getMonthValue() >= 9 || time.getMonthValue() <= 5;
        return isHourAgain && isSeason && time.getDayOfWeek() == DayOfWeek.SUNDAY
                ? "Maybe the logger was put back to winter time that night: take one of the two"
                        + " hours out, or log in winter time the year round, as time in UTC+01:00."
                : "";
    }

    /** The hour at whose begin a row's temperature holds; empty when past the last. */
    private OptionalInt afterwards(int hour) {
        int late = hour + stateLateH;
        if (late < values[0].hours()) {
            return OptionalInt.of(late);
        }
        return typical ? OptionalInt.of(late - values[0].hours()) : OptionalInt.empty();
    }

    private void setState(int hour, Read<Double> tempC, Read<Double> humidity, Read<Double> wind) {
        values[0].put(hour, tempC);
        values[1].put(hour, humidity);
        values[3].put(hour, wind);
    }

    /**
     * Wind at 2 m per wind at another height over short grass.
     *
     * <p>Allen et al. (1998), FAO Irrigation and Drainage Paper 56, eq. 47.
     */
    static double windFactor(double heightM) {
        return 4.87 / FastMath.log(67.8 * heightM - 5.42);
    }

    private void repeatFebruary28() {
        if (stateLateH > 0 && lineOfHour[FEBRUARY_29] == 0) {
            // The end of 28 February is the begin of 1 March where there is no day between.
            int march = FEBRUARY_29 + 24;
            for (int state : new int[] {0, 1, 3}) {
                values[state].repeat(FEBRUARY_29, march);
            }
        }
        for (int hour = FEBRUARY_29; hour < FEBRUARY_29 + 24; hour++) {
            if (lineOfHour[hour] == 0) {
                lineOfHour[hour] = lineOfHour[hour - 24];
                for (HourlyColumn column : values) {
                    column.repeat(hour - 24, hour);
                }
            }
        }
    }

    private static String name(int column) {
        return column + 1 < COLUMNS.length ? COLUMNS[column + 1] : RAIN;
    }

    private void fillGaps(HourlyColumn column, String name) {
        for (Gaps.Filled filled : gaps.fill(column, name, 0, column.hours(), this::named)) {
            int hour = filled.firstHour();
            int line = lineOf(name, hour);
            source.note(
                    new Note(
                            csv.label(),
                            line > 0 || hour == 0 ? line : lineOf(name, hour - 1),
                            name,
                            filled.words()));
        }
    }

    private int lineOf(String column, int hour) {
        boolean ofTheHour = column.equals("global") || column.equals(RAIN);
        return lineOfHour[ofTheHour ? hour : Math.max(0, hour - stateLateH)];
    }

    private String named(int hour) {
        String text = begin.plusHours(hour).toString();
        return typical ? text.substring(5) : text;
    }

    /**
     * Cuts the run out of the series, with the instant at its end where the file knows it; a value
     * between two whole hours is joined from both.
     */
    private Read<HourlyWeather> cut(LocalDate start, int days, double rigAheadH) {
        if (typical && days > LONGEST_YEAR_D) {
            source.note(
                    new Note(
                            csv.label(),
                            0,
                            "time",
                            "the run is longer than a year, and meets the typical year again"));
        }
        int hours = days * 24;
        double[][] run = new double[5][hours + 1];
        int filled = fill(run, start, rigAheadH);
        if (filled < hours) {
            sayMissing(start.atStartOfDay().plusHours(filled), start, days, rigAheadH);
            return Read.faulty();
        }
        sayDark(run[2], start, days);
        return Read.of(weather(run, filled).withOtherYears(otherYears(start, hours, rigAheadH)));
    }

    /**
     * Says of days without any light between days of full light: no cloud does that. Near the poles
     * dark days come by and by.
     */
    private void sayDark(double[] globalWPerM2, LocalDate start, int days) {
        double[] dayWh = new double[days];
        for (int h = 0; h < 24 * days; h++) {
            dayWh[h / 24] += globalWPerM2[h];
        }
        List<LocalDate> dark = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            if (dayWh[day] == 0 && isBright(dayWh, day, -1) && isBright(dayWh, day, 1)) {
                dark.add(start.plusDays(day));
            }
        }
        if (!dark.isEmpty()) {
            source.note(
                    new Note(
                            csv.label(),
                            0,
                            "global",
                            "no light at all on %s between bright days, as a gap in a record looks: the plants take it for night"
                                    .formatted(
                                            dark.size() == 1
                                                    ? "the run's " + dark.get(0)
                                                    : "%d of the run's days (the first %s)"
                                                            .formatted(dark.size(), dark.get(0)))));
        }
    }

    /** Whether it is bright within a few days before or after a day. */
    private static boolean isBright(double[] dayWh, int day, int way) {
        for (int i = 1; i <= DARK_FOR_D; i++) {
            int beside = day + way * i;
            if (beside >= 0 && beside < dayWh.length && dayWh[beside] > BRIGHT_WH_PER_M2) {
                return true;
            }
        }
        return false;
    }

    /** The same days in every other year that the file has whole. */
    private List<HourlyWeather> otherYears(LocalDate start, int hours, double rigAheadH) {
        List<HourlyWeather> years = new ArrayList<>();
        int last = begin.plusHours(values[0].hours()).getYear();
        for (int year = begin.getYear() - 1; !typical && year <= last; year++) {
            double[][] run = new double[5][hours + 1];
            LocalDate then = start.plusYears((long) year - start.getYear());
            int filled = year == start.getYear() ? 0 : fill(run, then, rigAheadH);
            if (filled >= hours) {
                years.add(weather(run, filled));
            }
        }
        return years;
    }

    /**
     * Takes a run's hours out of the file.
     *
     * @param run {@code [column][hour]} to be filled
     * @return how many instants there are before the first that is not known
     */
    private int fill(double[][] run, LocalDate start, double rigAheadH) {
        int whole = (int) Math.floor(-rigAheadH);
        double share = -rigAheadH - whole;
        for (int h = 0; h < run[0].length; h++) {
            LocalDateTime rig = start.atStartOfDay().plusHours(h);
            int first = index(rig.plusHours(whole));
            int second = share == 0 ? first : index(rig.plusHours(whole + 1L));
            if (!isInFile(first) || !isInFile(second)) {
                return h;
            }
            for (int i = 0; i < run.length; i++) {
                if (!values[i].isKnown(first) || !values[i].isKnown(second)) {
                    return h;
                }
                run[i][h] = (1 - share) * values[i].at(first) + share * values[i].at(second);
            }
        }
        return run[0].length;
    }

    /** Says why an instant of the run is not known. */
    private void sayMissing(LocalDateTime rig, LocalDate start, int days, double rigAheadH) {
        int whole = (int) Math.floor(-rigAheadH);
        int first = index(rig.plusHours(whole));
        int second = -rigAheadH == whole ? first : index(rig.plusHours(whole + 1L));
        if (!isInFile(first) || !isInFile(second)) {
            csv.problem(
                    csv.line(first < 0 || second < 0 ? 0 : csv.size() - 1),
                    1,
                    "time",
                    "weather from %s to %s"
                            .formatted(begin, begin.plusHours(values[0].hours() - 1L)),
                    "weather of every hour of the run, %s to %s"
                            .formatted(start, start.plusDays(days)),
                    "Maybe shorten the run, or clock = \"typical year\".");
            return;
        }
        for (int i = 0; i < values.length; i++) {
            if (!values[i].isKnown(first) || !values[i].isKnown(second)) {
                sayGap(i, values[i].isKnown(first) ? second : first);
                return;
            }
        }
    }

    private boolean isInFile(int hour) {
        return hour >= 0 && hour < values[0].hours();
    }

    private HourlyWeather weather(double[][] run, int instants) {
        return new HourlyWeather(
                named,
                Arrays.copyOf(run[0], instants),
                Arrays.copyOf(run[1], instants),
                Arrays.copyOf(run[2], instants),
                Arrays.copyOf(run[3], instants),
                Arrays.copyOf(run[4], instants));
    }

    private int index(LocalDateTime time) {
        if (typical) {
            LocalDateTime same =
                    LocalDateTime.of(
                            2000, time.getMonthValue(), time.getDayOfMonth(), time.getHour(), 0);
            return (int) ChronoUnit.HOURS.between(begin, same);
        }
        return (int) ChronoUnit.HOURS.between(begin, time);
    }

    private void sayGap(int column, int hour) {
        int from = hour;
        while (from > 0 && !values[column].isKnown(from - 1)) {
            from--;
        }
        int to = hour;
        while (to < values[column].hours() && !values[column].isKnown(to)) {
            to++;
        }
        int line = 0;
        for (int i = to; line == 0 && i < lineOfHour.length; i++) {
            line = lineOfHour[i];
        }
        csv.problem(
                line,
                1,
                name(column),
                "a gap of %s h from %s to %s".formatted(to - from, named(from), named(to)),
                "gaps of up to " + gaps.mostH() + " h",
                gaps.hint());
    }

    /** Seconds of an offset such as "+01:00". */
    static Read<Integer> offset(String text) {
        try {
            return Read.of(ZoneOffset.of(text).getTotalSeconds());
        } catch (DateTimeException e) {
            return Read.faulty();
        }
    }
}
