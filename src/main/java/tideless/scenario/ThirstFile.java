package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Thirst;

/**
 * A tray's measured use from a CSV file: columns time and thirst, under time {@code local} for
 * dates and times of the rig's clock or {@code days} for days since the start.
 *
 * <p>Rows a day or less apart are a log: each is drunk as it stands until the next, the last for as
 * long as the one before it; where days are missing from a log, the mean of the rows beside is
 * drunk. Rows that are all further apart are points of a course and are joined by straight lines.
 * What is drunk beyond the ends, and how rows were joined, is said.
 */
final class ThirstFile {
    /** A day that is put forward or back with the season's clock has up to 25 h. */
    private static final double LONGEST_DAY_S = 25 * Time.HOUR_S;

    private final CsvColumns csv;
    private final TomlFile source;
    private final double[] atS;
    private final double[] m3PerS;

    private ThirstFile(CsvColumns csv, TomlFile source) {
        this.csv = csv;
        this.source = source;
        atS = new double[csv.size()];
        m3PerS = new double[csv.size()];
    }

    /**
     * What was measured.
     *
     * @param start the run's first day
     * @param days the run's length; 0 when it is not known
     */
    static Read<Thirst> read(NamedFiles.Named file, TomlFile source, LocalDate start, int days) {
        Read<CsvColumns> table = CsvColumns.of(file.label(), file.text(), source, "time", "thirst");
        if (!table.isSound()) {
            return Read.faulty();
        }
        CsvColumns csv = table.value();
        if (!(csv.knows("time", List.of(), "local", "days")
                & csv.knows("thirst", List.of(UnitTable.FLOW)))) {
            return Read.faulty();
        }
        ThirstFile log = new ThirstFile(csv, source);
        log.load(start);
        return csv.isSound() ? Read.of(log.thirst(days)) : Read.faulty();
    }

    private void load(LocalDate start) {
        boolean days = csv.unit("time").equals("days");
        for (int row = 0; row < atS.length; row++) {
            Read<Double> at = days ? days(csv, row) : seconds(csv, row, start);
            Read<Double> use = csv.value(row, "thirst", UnitTable.FLOW, 0, 1e-3 / 86.4);
            if (use.isAbsent()) {
                csv.problemAt(row, "thirst", "a value in every row");
            }
            double beforeS = row > 0 ? atS[row - 1] : Double.NEGATIVE_INFINITY;
            if (at.holds(time -> time <= beforeS)) {
                csv.problemAt(row, "time", "times that rise");
            }
            // A time at fault, which has been told, comes before every other.
            atS[row] = at.orElse(Double.NEGATIVE_INFINITY);
            m3PerS[row] = use.orElse(0.0);
        }
    }

    private Thirst thirst(int days) {
        int last = atS.length - 1;
        double endS = atS[last];
        Thirst thirst;
        if (isLog()) {
            double lastHeldS =
                    last == 0 ? Time.DAY_S : Math.min(Time.DAY_S, atS[last] - atS[last - 1]);
            endS += lastHeldS;
            thirst = log();
        } else {
            thirst = Thirst.joined(atS, m3PerS);
            if (last > 0) {
                note(0, "rows more than a day apart: joined by straight lines");
            }
        }
        if (atS[0] > 0) {
            note(
                    0,
                    "the run begins %s before the first row, whose use is taken"
                            .formatted(span(atS[0])));
        }
        if (days * Time.DAY_S > endS) {
            note(
                    last,
                    "the run goes on for %s after the last row, whose use is taken"
                            .formatted(span(days * Time.DAY_S - endS)));
        }
        return thirst;
    }

    private boolean isLog() {
        for (int row = 1; row < atS.length; row++) {
            if (atS[row] - atS[row - 1] <= LONGEST_DAY_S) {
                return true;
            }
        }
        return false;
    }

    /** Each row for its own time; the mean of its neighbours where rows are missing. */
    private Thirst log() {
        double[] points = new double[2 * atS.length];
        double[] held = new double[2 * atS.length];
        int n = 0;
        double usualS = usualS();
        for (int row = 0; row < atS.length; row++) {
            points[n] = atS[row];
            held[n++] = m3PerS[row];
            boolean isMissing = row + 1 < atS.length && atS[row + 1] - atS[row] > LONGEST_DAY_S;
            if (isMissing) {
                double fromS = atS[row] + usualS;
                points[n] = fromS;
                held[n++] = 0.5 * (m3PerS[row] + m3PerS[row + 1]);
                note(
                        row,
                        "%s missing after this row: the mean of the rows beside is taken"
                                .formatted(span(atS[row + 1] - fromS)));
            }
        }
        return Thirst.held(Arrays.copyOf(points, n), Arrays.copyOf(held, n));
    }

    /** The most common distance of rows, the shortest of several, s. */
    private double usualS() {
        double[] apart = new double[atS.length - 1];
        for (int row = 1; row < atS.length; row++) {
            apart[row - 1] = atS[row] - atS[row - 1];
        }
        Arrays.sort(apart);
        return Math.min(Time.DAY_S, apart[(apart.length - 1) / 2]);
    }

    private void note(int row, String text) {
        source.note(new Note(csv.label(), csv.line(row), "thirst", text));
    }

    private static String span(double seconds) {
        return seconds >= 2 * Time.DAY_S
                ? Measure.plain(seconds / Time.DAY_S) + " days"
                : Measure.plain(seconds / Time.HOUR_S) + " h";
    }

    private static Read<Double> days(CsvColumns csv, int row) {
        Read<Measure> read = Measure.of(csv.cell(row, "time"), List.of(), true);
        if (read.holds(days -> Math.abs(days.number()) <= 2000)) {
            return Read.of(read.value().number() * Time.DAY_S);
        }
        csv.problemAt(row, "time", "a number of days since the start");
        return Read.faulty();
    }

    private static Read<Double> seconds(CsvColumns csv, int row, LocalDate start) {
        return csv.time(row, "time")
                .map(time -> (double) ChronoUnit.SECONDS.between(start.atStartOfDay(), time));
    }
}
