package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import tideless.rig.Scenario;
import tideless.study.Away;
import tideless.study.Band;
import tideless.study.Outlook;
import tideless.words.Dates;
import tideless.words.MachineWords;

/** How long nobody need come, as a table and a picture. */
public final class AwayFiles {
    /** How far above the bands the end of the run is still drawn. */
    private static final double SPARE = 1.25;

    private AwayFiles() {}

    /**
     * Writes {@code away.csv}, {@code absences.csv} where any was asked for, and {@code away.png}
     * and {@code .svg}, all of them or none.
     *
     * @param folder where to; made when it is not there
     * @param inputs files that were read for it, which none may take the place of
     */
    public static WriteResult write(Away away, Path folder, Collection<Path> inputs) {
        return ResultFiles.put(folder, () -> files(away), inputs);
    }

    static Map<String, byte[]> files(Away away) throws ResultFiles.NotDrawn {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("away.csv", leaves(away.leaves()));
        if (!away.absences().isEmpty()) {
            files.put("absences.csv", absences(away.absences()));
        }
        if (away.leaves().size() > 1) {
            files.putAll(ResultFiles.drawn("away", picture(away)));
        }
        return files;
    }

    private static byte[] leaves(List<Away.Leave> leaves) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvFiles.writerOf(text);
        csv.writeRecord(
                "nobody_from",
                "days_low",
                "days_middle",
                "days_high",
                "never_share",
                "first_harm",
                "tray",
                "filled_up_on",
                "filled_days_low",
                "filled_days_middle",
                "filled_days_high",
                "filled_never_share");
        for (Away.Leave leave : leaves) {
            Band days = leave.asItStands().days();
            Band filled = leave.filledUp().days();
            csv.writeRecord(
                    leave.from().toString(),
                    figure(days.low()),
                    figure(days.middle()),
                    figure(days.high()),
                    figure(days.neverFrac()),
                    leave.asItStands().harm().map(MachineWords::of).orElse(""),
                    leave.asItStands().harm().map(h -> h.tray().name()).orElse(""),
                    leave.filledOn().map(LocalDate::toString).orElse(""),
                    figure(filled.low()),
                    figure(filled.middle()),
                    figure(filled.high()),
                    figure(filled.neverFrac()));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] absences(List<Away.Stated> absences) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvFiles.writerOf(text);
        csv.writeRecord(
                "from", "to", "chance", "filled_up_on", "filled_chance", "first_harm", "tray");
        for (Away.Stated stated : absences) {
            csv.writeRecord(
                    stated.absence().from().toString(),
                    stated.absence().to().toString(),
                    figure(stated.chance()),
                    stated.filledOn().map(LocalDate::toString).orElse(""),
                    figure(stated.chanceFilledUp()),
                    stated.harm().map(MachineWords::of).orElse(""),
                    stated.harm().map(Outlook.LikelyHarm::tray).map(v -> v.name()).orElse(""));
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Empty for what never comes. */
    private static String figure(double value) {
        return Double.isInfinite(value) ? "" : SignificantDigits.six(value);
    }

    private static Picture picture(Away away) {
        Scenario scenario = away.scenario();
        Panel panel = new Panel(scenario.start(), scenario.days()).reach(0);
        panel.area(
                curve(away, Away.Leave::asItStands, Band::low),
                curve(away, Away.Leave::asItStands, Band::high),
                Look.LIKELY);
        if (away.canFillUp()) {
            panel.area(
                    curve(away, Away.Leave::filledUp, Band::low),
                    curve(away, Away.Leave::filledUp, Band::high),
                    Look.LIKELY_TOO);
            panel.curve(
                    "filled up before",
                    curve(away, Away.Leave::filledUp, Band::middle),
                    Look.TRAYS.get(1),
                    null);
        }
        panel.curve(
                "as it stands",
                curve(away, Away.Leave::asItStands, Band::middle),
                Look.TRAYS.get(0),
                null);
        double[] day = days(away);
        double[] left = new double[day.length];
        double highest = 0;
        for (int i = 0; i < left.length; i++) {
            left[i] = scenario.days() - day[i];
            Band days = away.leaves().get(i).filledUp().days();
            highest = Math.max(highest, Math.min(left[i], days.high()));
        }
        for (int i = 0; i < left.length; i++) {
            left[i] = left[i] > SPARE * highest ? Double.NaN : left[i];
        }
        panel.curve("the run ends", new Curves.Curve(day, left), Look.CUP, null);
        LocalDate last = scenario.lastDay();
        return new Picture(
                "How long nobody need come",
                scenario.title()
                        + ", "
                        + (away.members() == 1
                                ? "as stated"
                                : "the middle of "
                                        + away.members()
                                        + " rigs that yours might be; shaded: 8 in 10 of them"),
                "days until the first harm",
                "nobody comes from this day on, " + Dates.span(scenario.start(), last),
                List.of(panel),
                "");
    }

    private static double[] days(Away away) {
        return away.leaves().stream()
                .mapToDouble(l -> ChronoUnit.DAYS.between(away.scenario().start(), l.from()))
                .toArray();
    }

    /** What lasts longer than the run lasts as long as it. */
    private static Curves.Curve curve(
            Away away, Function<Away.Leave, Away.Lasting> which, ToDoubleFunction<Band> part) {
        double[] day = days(away);
        double[] value = new double[day.length];
        for (int i = 0; i < value.length; i++) {
            double left = away.scenario().days() - day[i];
            value[i] = Math.min(left, part.applyAsDouble(which.apply(away.leaves().get(i)).days()));
        }
        return new Curves.Curve(day, value);
    }
}
