package tideless.report;

import java.awt.Shape;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tideless.drawing.DaysOff;
import tideless.physics.Time;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.words.Dates;

/** Draws the picture of each lesson, in the hand of a run's own plots: run this class's main. */
final class DrawLessons {
    private static final double L_PER_M3 = 1000;
    private static final double MM_PER_M = 1000;
    private static final int WIDE = 1100;

    private DrawLessons() {}

    /** What each picture is drawn of, in the order of the lessons. */
    static List<Picture> pictures() throws IOException {
        return List.of(salts(), valve(), tomatoes(), waters(), away(), measured());
    }

    public static void main(String[] args) throws IOException {
        System.setProperty("java.awt.headless", "true");
        List<Picture> pictures = pictures();
        for (int i = 0; i < pictures.size(); i++) {
            Path file = Path.of("docs/pictures/lesson-" + (i + 1) + ".png");
            Files.write(file, Images.png(pictures.get(i), WIDE));
        }
    }

    private static Scenario scenario(String name) {
        Path file = Path.of("scenarios", name + ".toml");
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Trace run(String name) {
        return Simulation.run(scenario(name));
    }

    private static TrayTrace tray(Trace trace) {
        return trace.trays().get(0);
    }

    private static int livingDays(Trace trace) {
        return (trace.lastLivingHour(tray(trace)) + 1) / 24;
    }

    private static Panel panel(Scenario of, int days) {
        return new Panel(of.start(), days).shade(DaysOff.of(of.withDays(days)));
    }

    private static Picture picture(String title, Scenario of, int days, String value, Panel panel) {
        return new Picture(
                title,
                Dates.span(of.start(), of.start().plusDays(days - 1)),
                value,
                "day and month, " + of.start().getYear(),
                List.of(panel),
                title);
    }

    private static void twin(Panel panel, int number, String name, Curves.Curve curve) {
        Shape marker = Panel.marker(number);
        panel.curve(name, curve, Look.TRAYS.get(number), marker);
    }

    /** Daily values, so that markers stand as far apart as in a run's plot of thirst. */
    private static Curves.Curve daily(Curves.Curve hourly, int days) {
        double[] day = new double[days];
        double[] value = new double[days];
        for (int i = 0; i < days; i++) {
            int hour = Math.min(hourly.day().length - 1, 24 * i + 23);
            day[i] = hourly.day()[hour];
            value[i] = hourly.value()[hour];
        }
        return new Curves.Curve(day, value);
    }

    private static Picture strengths(String title, List<String> twins, List<String> names) {
        Scenario first = scenario("lessons/" + twins.get(0));
        int days = livingDays(run("lessons/" + twins.get(0)));
        Panel panel = panel(first, days).reach(0);
        var limits = first.trays().get(0).limits();
        panel.reach(2.2); // of all lessons on salts
        panel.band("lettuce's band", limits.ecLowMsPerCm(), limits.ecHighMsPerCm(), Look.BAND);
        for (int i = 0; i < twins.size(); i++) {
            Trace trace = run("lessons/" + twins.get(i));
            twin(
                    panel,
                    i,
                    names.get(i),
                    daily(Curves.Curve.hourly(tray(trace).ecMsPerCm(), 1), days));
        }
        return picture(title, first, days, "EC of the tray (mS/cm)", panel);
    }

    private static Picture salts() {
        return strengths(
                "Where the salts go",
                List.of("rich-feed", "lean-feed"),
                List.of("feed of 1.6", "feed of 1.3"));
    }

    private static Picture waters() {
        return strengths(
                "Rain or tap: the meter reads alike",
                List.of("rain", "hard-tap"),
                List.of(
                        "on rain, " + grams(run("lessons/rain")) + " g",
                        "on hard tap, " + grams(run("lessons/hard-tap")) + " g"));
    }

    /** Of a plant when it is cut, as the run tells it. */
    static long grams(Trace trace) {
        int last = trace.plantings(tray(trace)).get(0).lastHour();
        return Math.round(tray(trace).of(TraySeries.FRESH_MASS).at(last));
    }

    private static Picture valve() {
        int days = 12;
        Trace high = run("lessons/lean-feed");
        Scenario of = high.scenario();
        Panel panel = panel(of, days).reach(0);
        double cupMm = MM_PER_M * of.trays().get(0).cupBottomM();
        panel.level("cups at 35 mm", cupMm, Look.CUP);
        panel.level("valve at 40 mm", 40, Look.VALVE);
        panel.level("valve at 20 mm", 20, Look.VALVE);
        panel.curve(
                "root tips",
                Curves.Curve.hourly(tray(high).rootTipM(), MM_PER_M).until(days),
                Look.ROOT_TIP,
                null);
        panel.spans("too short", List.of(dryDays(high)), Look.HARM);
        return picture(
                "Why valve height matters: the roots of seedlings",
                of,
                days,
                "height above the tray floor (mm)",
                panel);
    }

    /** Days on which no root would reach a level of 20 mm. */
    static double[] dryDays(Trace trace) {
        int hour = 0;
        while (tray(trace).rootTipM().at(hour) > 0.02) {
            hour++;
        }
        return new double[] {0, hour / 24.0};
    }

    private static Picture tomatoes() throws IOException {
        String text = Files.readString(Path.of("scenarios/outgrown-trough.toml"));
        Trace four = run("outgrown-trough");
        Trace one = changed("outgrown-trough", text.replace("plants = 4", "plants = 1"));
        int days = 42;
        Panel panel = panel(four.scenario(), days).reach(0);
        panel.level(
                "full, 26 L", L_PER_M3 * four.scenario().reservoirs().get(0).fullM3(), Look.FULL);
        panel.spans("four are dry", dryTray(four, days), Look.HARM);
        panel.curve("one tomato", litres(one, days), Look.TRAYS.get(1), null);
        panel.curve("four tomatoes", litres(four, days), Look.LEVEL, null);
        return picture(
                "Why tomatoes outgrow: filled up each Monday",
                four.scenario(),
                days,
                "solution in the reservoir (L)",
                panel);
    }

    /** Days on which a tray has run dry with its crop alive, and from the death on. */
    private static List<double[]> dryTray(Trace trace, int days) {
        List<double[]> dry = new ArrayList<>();
        for (int hour = 0; hour < 24 * days; hour++) {
            boolean isDry = !(tray(trace).levelM().at(hour) > 0.002);
            double[] last = dry.isEmpty() ? null : dry.get(dry.size() - 1);
            if (isDry && last != null && last[1] == hour / 24.0) {
                last[1] = (hour + 1) / 24.0;
            } else if (isDry) {
                dry.add(new double[] {hour / 24.0, (hour + 1) / 24.0});
            }
        }
        return dry;
    }

    private static Curves.Curve litres(Trace trace, int days) {
        return Curves.Curve.hourly(trace.reservoirs().get(0).volumeM3(), L_PER_M3).until(days);
    }

    private static Trace changed(String name, String text) throws IOException {
        Path folder = Files.createTempDirectory("lesson");
        Path file = folder.resolve(name + ".toml");
        Files.writeString(file, text);
        try {
            return Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
        } finally {
            Files.delete(file);
            Files.delete(folder);
        }
    }

    private static Picture away() throws IOException {
        String text = Files.readString(Path.of("scenarios/science-room-bench.toml"));
        Trace asRuled = run("science-room-bench");
        Trace filled = changed("science-room-bench", text.replaceAll("(?m)^refill.*\n", ""));
        Scenario of = asRuled.scenario();
        int days = 44;
        Panel panel = panel(of, days).reach(0);
        panel.level("cups at 40 mm", MM_PER_M * of.trays().get(0).cupBottomM(), Look.CUP);
        panel.curve(
                "filled up before",
                Curves.Curve.hourly(tray(filled).levelM(), MM_PER_M).until(days),
                Look.TRAYS.get(1),
                null);
        panel.curve(
                "not filled up",
                Curves.Curve.hourly(tray(asRuled).levelM(), MM_PER_M).until(days),
                Look.LEVEL,
                null);
        return picture(
                "Away for a week: the level of the basil's tray",
                of,
                days,
                "height above the tray floor (mm)",
                panel);
    }

    /** Foretold without the log, and what was read. */
    private static Picture measured() throws IOException {
        String text = Files.readString(Path.of("scenarios/logged-bench.toml"));
        Trace foretold = changed("logged-bench", text.replaceAll("(?s)\\[log].*", ""));
        Scenario of = scenario("logged-bench");
        int days = 17;
        Panel panel = panel(of, days).reach(0);
        List<Double> day = new ArrayList<>();
        List<Double> litres = new ArrayList<>();
        var shelf = of.reservoirs().get(0);
        for (LogEntry entry : of.log().entries()) {
            if (entry instanceof LogEntry.Reading read
                    && read.what() == LogEntry.Quantity.LEVEL
                    && read.where().equals(shelf.id())) {
                day.add(read.atS() / Time.DAY_S);
                litres.add(L_PER_M3 * shelf.shape().volumeM3(read.value()));
            }
        }
        panel.points("read with a ruler", new Curves.Curve(array(day), array(litres)).until(days));
        panel.curve("foretold", litres(foretold, days), Look.LEVEL, null);
        return picture(
                "Build, predict, measure: an invented log",
                of,
                days,
                "solution in the reservoir (L)",
                panel);
    }

    private static double[] array(List<Double> values) {
        return values.stream().mapToDouble(v -> v).toArray();
    }
}
