package tideless.scenario;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import tideless.rig.Thirst;

/**
 * A tray's measured use from a CSV file: columns time and thirst, under time {@code local} for
 * dates and times of the rig's clock or {@code days} for days since the start.
 */
final class ThirstFile {
    private ThirstFile() {}

    /** Null when faulty. */
    static Thirst read(NamedFiles.Named file, Source source, LocalDate start) {
        CsvColumns csv = CsvColumns.of(file.label(), file.text(), source, "time", "thirst");
        if (csv == null
                || !(csv.knows("time", List.of(), "local", "days")
                        & csv.knows("thirst", List.of(UnitTable.FLOW)))) {
            return null;
        }
        boolean days = csv.unit("time").equals("days");
        double[] atS = new double[csv.size()];
        double[] m3PerS = new double[csv.size()];
        for (int row = 0; row < atS.length; row++) {
            atS[row] = days ? days(csv, row) : seconds(csv, row, start);
            m3PerS[row] = csv.value(row, "thirst", UnitTable.FLOW, 0, 1e-3 / 86.4);
            if (csv.cell(row, "thirst").isEmpty()) {
                csv.problemAt(row, "thirst", "a value in every row");
            }
            if (row > 0 && atS[row] <= atS[row - 1]) {
                csv.problemAt(row, "time", "times that rise");
            }
        }
        return csv.isSound() ? new Thirst(atS, m3PerS) : null;
    }

    private static double days(CsvColumns csv, int row) {
        Measure.Read read = Measure.of(csv.cell(row, "time"), List.of(), true);
        if (read.good() && Math.abs(read.number()) <= 2000) {
            return read.number() * 86400;
        }
        csv.problemAt(row, "time", "a number of days since the start");
        return Double.NaN;
    }

    private static double seconds(CsvColumns csv, int row, LocalDate start) {
        LocalDateTime time = csv.time(row, "time");
        return time == null ? Double.NaN : ChronoUnit.SECONDS.between(start.atStartOfDay(), time);
    }
}
