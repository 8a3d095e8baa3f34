package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import tideless.advice.Cure;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.sim.HourlySeries;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.words.MachineWords;
import tideless.words.TaskWords;
import tideless.words.WarningWords;

/**
 * A run as comma-separated values: UTF-8, line feeds, a header with units, a point for decimals, an
 * empty cell where there is no number.
 */
final class CsvFiles {
    private CsvFiles() {}

    private record Column(String header, IntToDoubleFunction at) {}

    /** One tray, one row an hour; flows are totals over the hour that ends at the row's time. */
    static byte[] tray(Trace trace, TrayTrace tray) {
        List<Column> columns = new ArrayList<>();
        for (TraySeries of : TraySeries.values()) {
            columns.add(column(of, tray.of(of)));
        }
        addIons(columns, tray.componentMol(), tray.volumeM3());
        return hourly(trace, columns);
    }

    /** One reservoir, one row an hour. */
    static byte[] reservoir(Trace trace, ReservoirTrace reservoir) {
        List<Column> columns = new ArrayList<>();
        for (ReservoirSeries of : ReservoirSeries.values()) {
            columns.add(column(of, reservoir.of(of)));
        }
        addIons(columns, reservoir.componentMol(), reservoir.volumeM3());
        return hourly(trace, columns);
    }

    private static Column column(HourlySeries of, Series series) {
        double factor = of.column().factor();
        return new Column(of.column().header(), hour -> factor * series.at(hour));
    }

    private static void addIons(List<Column> columns, List<Series> mol, Series volumeM3) {
        for (int i = 0; i < Component.COUNT; i++) {
            Series of = mol.get(i);
            columns.add(
                    new Column(
                            Component.at(i).symbol() + " [mmol/L]",
                            hour -> {
                                double volume = volumeM3.at(hour);
                                return volume > 0 ? of.at(hour) / volume : Double.NaN;
                            }));
        }
    }

    private static byte[] hourly(Trace trace, List<Column> columns) {
        StringWriter text = new StringWriter(trace.hours() * columns.size() * 8);
        CsvWriter csv = writerOf(text);
        String[] row = new String[columns.size() + 1];
        row[0] = "time";
        for (int c = 0; c < columns.size(); c++) {
            row[c + 1] = columns.get(c).header();
        }
        csv.writeRecord(row);
        for (int hour = 0; hour < trace.hours(); hour++) {
            row[0] = trace.clockAtSample(hour).toString();
            for (int c = 0; c < columns.size(); c++) {
                row[c + 1] = Figures.sixDigits(columns.get(c).at().applyAsDouble(hour));
            }
            csv.writeRecord(row);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Every task, none left out. */
    static byte[] tasks(List<Task> tasks) {
        StringWriter text = new StringWriter();
        CsvWriter csv = writerOf(text);
        csv.writeRecord(
                "due",
                "task",
                "vessel_kind",
                "vessel",
                "pour [L]",
                "drain_first [L]",
                "done_in_run",
                "value",
                "limit",
                "unit",
                "cause",
                "cure",
                "text");
        for (Task task : tasks) {
            csv.writeRecord(
                    minute(task.due()),
                    MachineWords.of(task.kind()),
                    MachineWords.of(task.vessel().kind()),
                    task.vessel().name(),
                    Figures.sixDigits(task.litres()),
                    Figures.sixDigits(task.drainLitres()),
                    task.isDone() ? "yes" : "no",
                    Figures.sixDigits(task.measure().value()),
                    Figures.sixDigits(task.measure().limit()),
                    task.measure().unit().symbol(),
                    MachineWords.of(task.cause().kind()),
                    first(task.cures()),
                    TaskWords.text(task));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Every warning. */
    static byte[] warnings(List<Warning> warnings) {
        StringWriter text = new StringWriter();
        CsvWriter csv = writerOf(text);
        csv.writeRecord(
                "from",
                "until",
                "warning",
                "vessel_kind",
                "vessel",
                "value",
                "limit",
                "unit",
                "cause",
                "cure",
                "text");
        for (Warning warning : warnings) {
            csv.writeRecord(
                    minute(warning.from()),
                    minute(warning.until()),
                    MachineWords.of(warning.kind()),
                    MachineWords.of(warning.vessel().kind()),
                    warning.vessel().name(),
                    Figures.sixDigits(warning.measure().value()),
                    Figures.sixDigits(warning.measure().limit()),
                    warning.measure().unit().symbol(),
                    MachineWords.of(warning.cause().kind()),
                    first(warning.cures()),
                    WarningWords.text(warning));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String first(List<Cure> cures) {
        return cures.isEmpty() ? "" : MachineWords.of(cures.get(0).kind());
    }

    /** ISO local time to the minute. */
    static String minute(LocalDateTime time) {
        return time.truncatedTo(ChronoUnit.MINUTES).toString();
    }

    private static CsvWriter writerOf(StringWriter text) {
        return CsvWriter.builder().lineDelimiter(LineDelimiter.LF).bufferSize(0).build(text);
    }
}
