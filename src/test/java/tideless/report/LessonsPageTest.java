package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.LogEntry;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Events;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.study.Forecasts;
import tideless.study.LeanFeed;
import tideless.words.Dates;

/** What docs/lessons.md says, part by part and figure by figure. */
class LessonsPageTest {
    private static final Path PAGE = Path.of("docs/lessons.md");
    private static final List<String> LESSONS =
            List.of(
                    "Where the salts go",
                    "Why valve height matters",
                    "Why tomatoes outgrow",
                    "Rain or tap",
                    "Away for a week",
                    "Build, predict, measure");

    private static String page() throws IOException {
        return Files.readString(PAGE).replaceAll("\\s+", " ");
    }

    private static Trace run(String text) {
        return Simulation.run(
                ((Reading.Good) ScenarioReader.read("a.toml", new FilesInMemory(text))).scenario());
    }

    private static String text(String scenario) throws IOException {
        return Files.readString(Path.of("scenarios", scenario + ".toml"));
    }

    private static Trace shipped(String scenario) throws IOException {
        return run(text(scenario));
    }

    private static TrayTrace tray(Trace trace) {
        return trace.trays().get(0);
    }

    private static String ecAtEnd(Trace trace, String format) {
        double ec = tray(trace).ecMsPerCm().at(trace.lastLivingHour(tray(trace)));
        return String.format(Locale.ROOT, format, ec);
    }

    /** Of one plant, at its last living hour. */
    private static String day(Trace trace, Event.Kind kind) {
        Event first =
                trace.events().stream().filter(e -> e.kind() == kind).findFirst().orElseThrow();
        return Dates.dayMonth(
                trace.scenario().start().plusDays((long) Math.floor(first.atS() / 86_400)));
    }

    /** At eight in the morning, which is the eighth hour's end. */
    private static double ecAt(Trace trace, int day) {
        return tray(trace).ecMsPerCm().at(24 * day + 7);
    }

    private static double levelMm(Trace trace, int day) {
        return 1000 * tray(trace).levelM().at(24 * day + 7);
    }

    private static double litresLeft(Trace trace, int day) {
        return 1000 * trace.reservoirs().get(0).volumeM3().at(24 * day + 7);
    }

    private static double fruitKg(Trace trace) {
        return tray(trace)
                        .of(TraySeries.FRUIT_FRESH_MASS)
                        .at(trace.plantings(tray(trace)).get(0).lastHour())
                / 1000;
    }

    @Test
    void there_are_six_in_this_order() throws IOException {
        List<String> heads = new ArrayList<>();
        Matcher head = Pattern.compile("(?m)^## \\d\\. (.*)$").matcher(Files.readString(PAGE));
        while (head.find()) {
            heads.add(head.group(1));
        }
        assertEquals(LESSONS, heads);
    }

    @Test
    void the_page_for_browsers_asks_the_same_six() throws IOException {
        List<String> heads = new ArrayList<>();
        Path script = Path.of("src/browser/resources/tideless/page/bench/lessons.js");
        Matcher head = Pattern.compile("head: \"([^\"]*)\"").matcher(Files.readString(script));
        while (head.find()) {
            heads.add(head.group(1));
        }
        assertEquals(LESSONS, heads);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void each_has_all_its_parts(int number) throws IOException {
        String lesson = Files.readString(PAGE).split("(?m)^## ")[number];
        assertThat(lesson)
                .startsWith(number + ". " + LESSONS.get(number - 1))
                .contains("**Question.**", "**Physics.**", "**For the teacher.**", "**Safety.**")
                .contains("*Ask:*", "| --- |", "    tideless ")
                .contains("](pictures/lesson-" + number + ".png)");
        assertThat(Path.of("docs/pictures/lesson-" + number + ".png")).exists();
    }

    @Test
    void each_picture_can_be_drawn() throws IOException {
        assertThat(DrawLessons.pictures())
                .extracting(Picture::title)
                .zipSatisfy(LESSONS, (title, name) -> assertThat(title).startsWith(name));
    }

    @Test
    void the_figures_of_the_salts_are_the_engines() throws IOException {
        Trace rich = shipped("lessons/rich-feed");
        Trace lean = shipped("lessons/lean-feed");
        assertThat(page())
                .contains("the tray ends at " + ecAtEnd(rich, "%.2f") + " mS/cm, above its band")
                .contains("at 1.3 it ends at " + ecAtEnd(lean, "%.2f") + ", and the lettuces")
                .contains("weigh the same, " + DrawLessons.grams(rich) + " g");
        assertEquals(DrawLessons.grams(rich), DrawLessons.grams(lean));
        assertThat(page())
                .contains("at the end, at " + ecAtEnd(rich, "%.2f") + "; on 1.3 it falls to ")
                .contains("1.3 it falls to " + ecAtEnd(lean, "%.2f") + " and stays inside");
        LeanFeed without = LeanFeed.of(rich.scenario());
        assertThat(page())
                .contains(
                        String.format(
                                Locale.ROOT,
                                "never need a flush: %.2f to %.2f.",
                                without.leanest().orElseThrow(),
                                without.richest().orElseThrow()));
        assertThat(page()).contains("the run warns of nothing");
        assertThat(Forecasts.of(rich.scenario(), 1).advice().warnings()).isEmpty();
        Trace gap = shipped("lessons/open-gap");
        double lost = 1000 * tray(gap).evaporationM3().sum(0, gap.lastLivingHour(tray(gap)));
        double drunk = 1000 * tray(gap).transpirationM3().sum(0, gap.lastLivingHour(tray(gap)));
        assertEquals(6, lost, 0.5);
        assertEquals(24.2, drunk, 0.3);
        for (String feed : List.of("rich-feed", "lean-feed")) {
            Trace of = shipped("lessons/" + feed);
            assertThat(page())
                    .contains(
                            String.format(
                                    Locale.ROOT,
                                    "%.2f, %.2f and %.2f on the %s",
                                    ecAt(of, 10),
                                    ecAt(of, 20),
                                    ecAt(of, 30),
                                    feed.equals("rich-feed") ? "one" : "other"));
        }
        assertThat(page()).contains("where 6 L evaporate beside the 24.2 L that are drunk");
        assertThat(page()).contains("the tray ends at " + ecAtEnd(gap, "%.1f") + ", against less");
        Trace lid = shipped("lessons/lid");
        assertThat(1000 * tray(lid).evaporationM3().sum(0, lid.lastLivingHour(tray(lid))))
                .isLessThan(0.5);
        assertThat(page()).contains("half a litre and " + ecAtEnd(lid, "%.2f") + " under a lid");
        assertThat(page())
                .contains("the same tray reaches " + ecAtEnd(shipped("lessons/no-flush"), "%.1f"));
    }

    @Test
    void the_figures_of_the_valve_are_the_engines() throws IOException {
        String twin = text("lessons/lean-feed");
        Trace low = run(twin.replace("setting = \"4 cm\"", "setting = \"2 cm\""));
        assertEquals("5 Mar", day(low, Event.Kind.DIED));
        assertEquals("4 Mar", day(low, Event.Kind.WILTED));
        Trace lower = run(twin.replace("setting = \"4 cm\"", "setting = \"2.5 cm\""));
        assertEquals(13.2, hours(lower, Event.Kind.WILTED, Event.Kind.RECOVERED), 0.6);
        assertThat(page())
                .contains("the seedlings wilt on the third morning and are lost on 5 March")
                .contains(
                        "at 25 mm they wilt for some 13 hours and weigh "
                                + DrawLessons.grams(
                                        run(
                                                twin.replace(
                                                        "setting = \"4 cm\"",
                                                        "setting = \"2.5 cm\"")))
                                + " g, from 35 mm on "
                                + DrawLessons.grams(
                                        run(
                                                twin.replace(
                                                        "setting = \"4 cm\"",
                                                        "setting = \"3.5 cm\"")))
                                + " g");
        double reached = DrawLessons.dryDays(run(twin))[1];
        assertThat(reached).isBetween(3.0, 4.0); // of the fourth day
    }

    private static double hours(Trace trace, Event.Kind from, Event.Kind to) {
        return (Events.firstS(trace, to) - Events.firstS(trace, from)) / 3600;
    }

    @Test
    void the_figures_of_the_tomatoes_are_the_engines() throws IOException {
        Trace four = shipped("outgrown-trough");
        assertEquals("14 Mar", day(four, Event.Kind.OUTLET_UNCOVERED));
        assertEquals("28 Mar", day(four, Event.Kind.DIED));
        double full = litresLeft(four, 0);
        assertEquals(7, full - litresLeft(four, 7), 0.5);
        assertEquals(18, full - litresLeft(four, 14), 0.6);
        Trace two = run(text("outgrown-trough").replace("plants = 4", "plants = 2"));
        assertEquals(17, litresLeft(four, 7) - 1.8, 0.5);
        assertEquals(6, litresLeft(four, 14) - 1.8, 0.6);
        Trace longer =
                run(text("outgrown-trough").replace("length = \"30 cm\"", "length = \"60 cm\""));
        assertThat(longer.events()).noneMatch(e -> e.kind() == Event.Kind.DRIED_OUT);
        assertEquals(49, 1000 * longer.scenario().reservoirs().get(0).usableM3(), 0.5);
        assertThat(page())
                .contains("a box twice as long (49 usable litres) brings them through")
                .contains("on 28 March the crop is lost")
                .contains("seven litres drunk in the first week, eighteen in the second")
                .contains("dry on Saturday 14 March, the tray eight days later")
                .contains(
                        String.format(
                                Locale.ROOT,
                                "two plants, which bear %.0f kg of fruit; four bear %.2f",
                                2 * fruitKg(two),
                                4 * fruitKg(four)));
    }

    @Test
    void the_figures_of_the_waters_are_the_engines() throws IOException {
        Trace rain = shipped("lessons/rain");
        Trace hard = shipped("lessons/hard-tap");
        for (int hour = 0; hour < 12 * 24; hour++) {
            // A pen tells a twentieth.
            double apart =
                    Math.abs(tray(rain).ecMsPerCm().at(hour) - tray(hard).ecMsPerCm().at(hour));
            assertThat(apart).isLessThan(0.05);
        }
        int evening = 12 * 24 + 20; // of 14 March
        assertThat(tray(hard).compositionAt(evening).molPerM3(Component.K)).isLessThan(0.15);
        assertThat(page()).contains("from 14 March on the tray on hard tap runs out of potassium");
        assertThat(page())
                .contains(
                        String.format(
                                Locale.ROOT,
                                "a pen reads %.2f, %.2f and %.2f on rain, %.2f, %.2f and %.2f on",
                                ecAt(rain, 10),
                                ecAt(rain, 20),
                                ecAt(rain, 30),
                                ecAt(hard, 10),
                                ecAt(hard, 20),
                                ecAt(hard, 30)));
        assertThat(page())
                .contains(
                        "lettuces weigh "
                                + DrawLessons.grams(hard)
                                + " g against "
                                + DrawLessons.grams(rain)
                                + " g");
    }

    @Test
    void the_figures_of_the_absence_are_the_engines() throws IOException {
        String bench = text("science-room-bench");
        Trace ruled = run(bench);
        assertEquals("9 Apr", day(ruled, Event.Kind.OUTLET_UNCOVERED));
        int from = 32 * 24;
        assertEquals(27, 1000 * tray(ruled).levelM().min(from, 42 * 24 + 8), 0.5);
        Trace filled = run(bench.replaceAll("(?m)^refill.*\n", ""));
        assertEquals(45, 1000 * tray(filled).levelM().min(from, 42 * 24 + 8), 0.5);
        assertThat(page())
                .contains("The reservoir is dry on 9 April; the tray falls from 45 to 27 mm")
                .contains(
                        String.format(
                                Locale.ROOT,
                                "at %.0f mm on 9 April, %.0f, %.0f and %.0f on the three days after"
                                        + " it, and %.0f on the 13th",
                                levelMm(ruled, 38),
                                levelMm(ruled, 39),
                                levelMm(ruled, 40),
                                levelMm(ruled, 41),
                                levelMm(ruled, 42)))
                .contains("in 15 of 20 rigs");
    }

    @Test
    void the_figures_of_the_log_are_its_own() throws IOException {
        Trace foretold = run(text("logged-bench").replaceAll("(?s)\\[log].*", ""));
        assertEquals(26, litresLeft(foretold, 16), 0.5);
        var logged =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/logged-bench.toml")))
                        .scenario();
        var shelf = logged.reservoirs().get(0);
        double read =
                logged.log().readings().stream()
                        .filter(r -> r.what() == LogEntry.Quantity.LEVEL)
                        .filter(r -> r.where().equals(shelf.id()))
                        .filter(r -> Math.floor(r.atS() / 86_400) == 16)
                        .mapToDouble(r -> 1000 * shelf.shape().volumeM3(r.value()))
                        .findFirst()
                        .orElseThrow();
        assertEquals(14.5, read, 0.1);
        assertThat(page()).contains("On 18 March 26 L were foretold and 14.5 L were read");
        // docs/log.md holds what fit prints.
        String readme = Files.readString(Path.of("docs", "log.md")).replaceAll("\\s+", " ");
        String leak = first(readme, "loses about ([\\d.]+) L a day");
        String valve = first(readme, "shuts ([\\d.]+) mm higher");
        String thirst = first(readme, "drinks ([\\d.]+) times");
        String band = first(readme, "drinks [^(]*\\(([\\d.]+ to [\\d.]+)\\)");
        assertThat(page())
                .contains("the leak (" + leak + " L a day), the valve (" + valve + " mm) and")
                .contains(thirst + " for the tomato, between " + band.replace(" to ", " and "));
    }

    private static String first(String text, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        assertThat(found.find()).as(pattern).isTrue();
        return found.group(1);
    }
}
