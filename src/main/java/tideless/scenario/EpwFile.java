package tideless.scenario;

import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Pattern;
import tideless.physics.Time;

/**
 * EPW weather files, brought into the table that {@link WeatherFile} reads, line for line and
 * column for column, so that faults name the place in the user's own file.
 *
 * <p>Layout: Crawley, Hand and Lawrie (1999), Improving the weather information available to
 * simulation programs, Building Simulation '99 (from memory): eight head lines, the first with the
 * zone of the clock; then year, month, day, hour 1 to 24 (the one that ends there), minute, flags,
 * dry bulb (degC, 99.9 missing), dew point, relative humidity (%, 999), pressure (Pa), ..., global
 * radiation on the flat (Wh/m2 in the hour, 9999), ..., wind (m/s, 999). Radiation is of the hour
 * that ends, the rest holds at its end.
 */
final class EpwFile {
    private static final int HEAD_LINES = 8;
    private static final int HOUR = 3;
    private static final int TEMPERATURE = 6;
    private static final int HUMIDITY = 8;
    private static final int GLOBAL = 13;
    private static final int WIND = 21;
    private static final Pattern WHOLE = Pattern.compile("\\d{1,4}(\\.0*)?");
    private static final int MOST_PROBLEMS = 20;

    private final String label;
    private final TomlFile source;
    private int problems;

    private EpwFile(String label, TomlFile source) {
        this.label = label;
        this.source = source;
    }

    /** Whether a file is one by its name. */
    static boolean isNamed(String name) {
        return name.toLowerCase(Locale.ROOT).endsWith(".epw");
    }

    /** The table as text; null when faulty, and the source says why. */
    static String asCsv(NamedFiles.Named file, TomlFile source) {
        return new EpwFile(file.label(), source).read(file.text().split("\r\n|\r|\n"));
    }

    private String read(String[] lines) {
        String[] location = lines[0].split(",", -1);
        if (!location[0].strip().equalsIgnoreCase("LOCATION") || location.length < 10) {
            fault(1, 1, "time", "no line LOCATION", "LOCATION and nine more values");
            return null;
        }
        String zone = zone(location[8].strip());
        if (zone == null) {
            fault(1, 9, "time", shown(location[8]), "hours from UTC, -12 up to 14");
            return null;
        }
        if (lines.length <= HEAD_LINES) {
            fault(
                    lines.length,
                    1,
                    "time",
                    lines.length + " lines",
                    "8 head lines and a row an hour");
            return null;
        }
        String[] periods = lines[HEAD_LINES - 1].split(",", -1);
        if (!periods[0].strip().equalsIgnoreCase("DATA PERIODS")
                || periods.length < 3
                || !periods[2].strip().equals("1")) {
            fault(HEAD_LINES, 3, "time", shown(lines[HEAD_LINES - 1]), "DATA PERIODS, 1, 1, ...");
            return null;
        }
        StringBuilder csv = new StringBuilder();
        for (int i = 0; i < HEAD_LINES - 2; i++) {
            csv.append("#\n");
        }
        csv.append(row("time", "temperature", "humidity", "global", "wind"));
        csv.append(row(zone, "degC", "%", "W/m2", "m/s"));
        for (int i = HEAD_LINES; i < lines.length; i++) {
            if (!lines[i].isBlank()) {
                csv.append(hour(i + 1, lines[i].split(",", -1)));
            } else {
                csv.append("#\n");
            }
        }
        return problems > 0 ? null : csv.toString();
    }

    /** A row with the values in the columns where an EPW file has them. */
    private static String row(
            String time, String temperature, String humidity, String global, String wind) {
        String[] cells = new String[WIND + 1];
        Arrays.fill(cells, "");
        cells[0] = time;
        cells[TEMPERATURE] = temperature;
        cells[HUMIDITY] = humidity;
        cells[GLOBAL] = global;
        cells[WIND] = wind;
        return String.join(",", cells) + "\n";
    }

    private String hour(int line, String[] cells) {
        if (cells.length <= WIND) {
            fault(line, 1, "time", cells.length + " columns", "at least 22 columns");
            return "#\n";
        }
        int[] date = new int[4];
        for (int i = 0; i < date.length; i++) {
            String cell = cells[i].strip();
            if (!WHOLE.matcher(cell).matches()) {
                fault(line, i + 1, "time", shown(cell), "whole numbers: year, month, day, hour");
                return "#\n";
            }
            date[i] = (int) Double.parseDouble(cell);
        }
        if (date[HOUR] < 1 || date[HOUR] > 24) {
            fault(line, HOUR + 1, "time", shown(cells[HOUR]), "an hour from 1 up to 24");
            return "#\n";
        }
        return row(
                String.format(Locale.ROOT, "%04d-%02d-%02d ", date[0], date[1], date[2])
                        + Time.clock((date[HOUR] - 1) * Time.HOUR_S),
                value(cells[TEMPERATURE], 99.9),
                value(cells[HUMIDITY], 999),
                value(cells[GLOBAL], 9999),
                value(cells[WIND], 999));
    }

    /** The text of a value; empty when it is the code for a missing one. */
    private static String value(String cell, double missing) {
        String text = cell.strip().replace('"', '?');
        try {
            return Double.parseDouble(text) == missing ? "" : text;
        } catch (NumberFormatException e) {
            return text; // WeatherFile says what is wrong with it
        }
    }

    private static String zone(String hours) {
        double zone;
        try {
            zone = Double.parseDouble(hours);
        } catch (NumberFormatException e) {
            return null;
        }
        if (!(zone >= -12 && zone <= 14)) {
            return null;
        }
        return (zone < 0 ? "UTC-" : "UTC+") + Time.clock(Math.abs(zone) * Time.HOUR_S);
    }

    private static String shown(String text) {
        return Key.quoted(TomlFile.shown(text.strip()));
    }

    private void fault(int line, int column, String key, String found, String allowed) {
        problems++;
        if (problems <= MOST_PROBLEMS) {
            source.add(
                    new Problem(
                            label,
                            line,
                            column,
                            key,
                            found,
                            allowed,
                            problems == MOST_PROBLEMS
                                    ? "More may follow: only the first "
                                            + MOST_PROBLEMS
                                            + " are shown."
                                    : ""));
        }
    }
}
