package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tideless.advice.Cure;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.sim.HourlySeries;
import tideless.sim.PlantingTrace;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.study.PhCourse;
import tideless.words.MachineWords;
import tideless.words.TaskWords;
import tideless.words.WarningWords;

/**
 * A run as comma-separated values: UTF-8, line feeds, a header with units, a point for decimals, an
 * empty cell where there is no number.
 */
public final class CsvFiles {
    private CsvFiles() {}

    private record Column(String header, IntToDoubleFunction at) {}

    /** One tray, one row an hour; flows are totals over the hour that ends at the row's time. */
    public static byte[] tray(Trace trace, TrayTrace tray, PhCourse ph) {
        List<Column> columns = new ArrayList<>();
        for (TraySeries of : TraySeries.values()) {
            columns.add(column(of, tray.of(of)));
        }
        columns.add(new Column("ph_lowest [pH]", ph.lowest()::at));
        columns.add(new Column("ph_highest [pH]", ph.highest()::at));
        addIons(columns, tray.componentMol(), tray.volumeM3());
        return hourly(trace, columns);
    }

    /** One reservoir, one row an hour. */
    public static byte[] reservoir(Trace trace, ReservoirTrace reservoir) {
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
        return table("time", hour -> trace.clockAtSample(hour).toString(), trace.hours(), columns);
    }

    /**
     * One tray, one row a day: totals of the day, least and greatest of its 24 hours, and states at
     * its 24:00, before that midnight's growth; growth itself is that of the midnight at its 00:00,
     * which the light of the day before brought.
     */
    public static byte[] day(Trace trace, TrayTrace tray) {
        List<PlantingTrace> plantings = trace.plantings(tray);
        List<Column> columns = new ArrayList<>();
        columns.add(sum("drunk [L/d]", tray.transpirationM3(), 1000));
        columns.add(sum("thirst [L/d]", tray.thirstM3(), 1000));
        columns.add(sum("evaporation [L/d]", tray.evaporationM3(), 1000));
        columns.add(sum("inflow [L/d]", tray.inflowM3(), 1000));
        columns.add(sum("spill [L/d]", tray.spillM3(), 1000));
        columns.add(sum("poured [L/d]", tray.of(TraySeries.POURED), 1000));
        columns.add(sum("drained [L/d]", tray.of(TraySeries.DRAINED), 1000));
        columns.add(sum("set_by_reading [L/d]", tray.of(TraySeries.SET_BY_READING), 1000));
        columns.add(atMidnight("solution_at_24h [L]", tray.volumeM3(), 1000));
        addRange(columns, "level", "mm", tray.levelM(), 1000);
        addRange(columns, "ec_25C", "mS/cm", tray.ecMsPerCm(), 1);
        addRange(columns, "ph", "pH", tray.ph(), 1);
        columns.add(sum("light [mol/m2/d]", tray.lightMolPerM2(), 1));
        columns.add(mean("air_temperature_mean [degC]", tray.of(TraySeries.AIR_TEMP)));
        columns.add(mean("air_vapour_deficit_mean [Pa]", tray.of(TraySeries.AIR_DEFICIT)));
        columns.add(mean("solution_temperature_mean [degC]", tray.solutionTempC()));
        columns.add(atMidnight("leaf_area_index [m2/m2]", tray.leafAreaIndex(), 1));
        columns.add(atMidnight("fresh_mass_before_growth_at_24h [g/plant]", tray.freshG(), 1));
        columns.add(
                atMidnight(
                        "fruit_fresh_mass_before_growth_at_24h [g/plant]", tray.fruitFreshG(), 1));
        columns.add(
                new Column(
                        "growth_at_0h [g/plant]",
                        day ->
                                day == 0
                                        ? 0
                                        : tray.freshG().at(lastBeforeNext(plantings, 24 * day))
                                                - tray.freshG().at(24 * day - 1)));
        for (int i = 0; i < Component.COUNT; i++) {
            int component = i;
            String symbol = Component.at(i).symbol();
            IntToDoubleFunction mmol =
                    day -> 1000 * tray.uptakeMol(component, 24 * day, 24 * day + 24);
            columns.add(new Column(symbol + "_uptake [mmol/d]", mmol));
            columns.add(
                    new Column(
                            symbol + "_uptake_per_litre [mmol/L]",
                            day -> {
                                double m3 = tray.transpirationM3().sum(24 * day, 24 * day + 24);
                                return m3 > 0 ? mmol.applyAsDouble(day) / (1000 * m3) : Double.NaN;
                            }));
            columns.add(
                    new Column(
                            symbol + "_brought [mmol/d]",
                            day -> 1000 * tray.broughtMol(component, 24 * day, 24 * day + 24)));
            columns.add(
                    new Column(
                            symbol + "_lost [mmol/d]",
                            day -> 1000 * tray.lostMol(component, 24 * day, 24 * day + 24)));
            columns.add(
                    atMidnight(
                            symbol + "_at_24h [mmol]", tray.componentMol().get(component), 1000));
        }
        return table(
                "date",
                day -> trace.scenario().start().plusDays(day).toString(),
                trace.hours() / 24,
                columns);
    }

    /** The last hour of a day in which what stood in the tray at its 00:00 still counts. */
    private static int lastBeforeNext(List<PlantingTrace> plantings, int midnight) {
        int last = midnight + 23;
        for (PlantingTrace planting : plantings) {
            if (planting.number() > 0 && planting.firstHour() > midnight) {
                last = Math.min(last, Math.max(midnight, planting.firstHour() - 1));
            }
        }
        return last;
    }

    private static Column sum(String header, Series series, double factor) {
        return new Column(header, day -> factor * series.sum(24 * day, 24 * day + 24));
    }

    private static Column mean(String header, Series series) {
        return new Column(header, day -> series.sum(24 * day, 24 * day + 24) / 24);
    }

    private static Column atMidnight(String header, Series series, double factor) {
        return new Column(header, day -> factor * series.at(24 * day + 23));
    }

    /** At midnight, least and greatest; what cannot be read does not count. */
    private static void addRange(
            List<Column> columns, String name, String unit, Series series, double factor) {
        String behind = " [" + unit + "]";
        columns.add(atMidnight(name + "_at_24h" + behind, series, factor));
        columns.add(
                new Column(
                        name + "_least" + behind,
                        day ->
                                factor
                                        * readable(series, 24 * day, 24 * day + 24)
                                                .min()
                                                .orElse(Double.NaN)));
        columns.add(
                new Column(
                        name + "_greatest" + behind,
                        day ->
                                factor
                                        * readable(series, 24 * day, 24 * day + 24)
                                                .max()
                                                .orElse(Double.NaN)));
    }

    /** What a series holds from one hour to another, not included, where there is a reading. */
    static DoubleStream readable(Series series, int fromHour, int toHour) {
        return IntStream.range(fromHour, toHour)
                .mapToDouble(series::at)
                .filter(value -> !Double.isNaN(value));
    }

    private static byte[] table(
            String key, IntFunction<String> keyAt, int rows, List<Column> columns) {
        StringWriter text = new StringWriter(rows * columns.size() * 8);
        CsvWriter csv = writerOf(text);
        String[] row = new String[columns.size() + 1];
        row[0] = key;
        for (int c = 0; c < columns.size(); c++) {
            row[c + 1] = columns.get(c).header();
        }
        csv.writeRecord(row);
        for (int r = 0; r < rows; r++) {
            row[0] = keyAt.apply(r);
            for (int c = 0; c < columns.size(); c++) {
                row[c + 1] = SignificantDigits.six(columns.get(c).at().applyAsDouble(r));
            }
            csv.writeRecord(row);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Every task, none left out. */
    public static byte[] tasks(List<Task> tasks) {
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
                    SignificantDigits.six(task.litres()),
                    SignificantDigits.six(task.drainLitres()),
                    task.isDone() ? "yes" : "no",
                    SignificantDigits.six(task.measure().value()),
                    SignificantDigits.six(task.measure().limit()),
                    task.measure().unit().symbol(),
                    MachineWords.of(task.cause().kind()),
                    first(task.cures()),
                    TaskWords.text(task));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Every warning. */
    public static byte[] warnings(List<Warning> warnings) {
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
                    SignificantDigits.six(warning.measure().value()),
                    SignificantDigits.six(warning.measure().limit()),
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

    static CsvWriter writerOf(StringWriter text) {
        return CsvWriter.builder().lineDelimiter(LineDelimiter.LF).bufferSize(0).build(text);
    }
}
