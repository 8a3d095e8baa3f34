package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tideless.advice.Caution;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.drawing.RigPicture;
import tideless.physics.Time;
import tideless.rig.Lamp;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.DayOneMix;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.solution.ElectricalConductivity.PpmScale;
import tideless.study.Band;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.MadeUpOutlook;
import tideless.study.Outlook;
import tideless.words.CautionWords;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.VerdictWords;

class ReportPageTest {
    private static final Reading.Good READ =
            (Reading.Good) ScenarioReader.read(Path.of("scenarios/science-room-bench.toml"));
    private static final Forecast BENCH = Forecasts.of(READ.scenario(), 1);
    private static final String PAGE = page(BENCH, origins());

    private static Origins origins() {
        return new Origins(
                List.of(Map.entry("feed.acid", "phosphoric")),
                List.of("a note"),
                DayOneMix.of(READ, BENCH.litresOnDayOne()),
                List.of());
    }

    private static String page(Forecast forecast, Origins origins) {
        Map<String, byte[]> plots = new LinkedHashMap<>();
        plots.put("A finding & more.", "<svg/>".getBytes(StandardCharsets.UTF_8));
        return ReportPage.of(
                forecast, origins, RigPicture.scenes(forecast, 0.1), plots, ShownIn.METRIC);
    }

    private static Element xml(String page) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)))
                    .getDocumentElement();
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    private static List<Element> all(Element under, String tag) {
        NodeList found = under.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static String words(Element element) {
        return element.getTextContent().replaceAll("\\s+", " ").strip();
    }

    @Test
    void the_verdict_stands_first_and_whole() {
        String words = words(all(xml(PAGE), "section").get(0));
        assertThat(words).startsWith("Verdict The crop survives");
        assertThat(VerdictWords.lines(BENCH)).allMatch(words::contains);
    }

    /** What the terminal says of a crop that is cut off by the end of the run, it says too. */
    @Test
    void a_crop_that_is_not_ready_at_the_end_is_told_in_the_verdict() {
        Reading.Good cut =
                (Reading.Good)
                        ChangedScenario.read(
                                Path.of("scenarios/two-bottles.toml"),
                                List.of(new ChangedScenario.Change("length", "20 days")));
        Element verdict =
                all(xml(page(Forecasts.of(cut.scenario(), 1), origins())), "section").get(0);
        assertThat(words(verdict))
                .contains("tray one is not ready by the end of the run: about", "more in such air");
        assertThat(verdict.getAttribute("class")).isEqualTo("verdict");
    }

    /** What a log tells of is done: its last entry is of 26 April, and the weeks begin after it. */
    @Test
    void the_weeks_of_a_rig_with_a_log_begin_after_it() {
        Reading.Good logged =
                (Reading.Good)
                        ChangedScenario.read(Path.of("scenarios/logged-bench.toml"), List.of());
        String page = words(xml(page(Forecasts.of(logged.scenario(), 1), origins())));
        assertThat(page)
                .contains("What to do in the next four weeks", "Week 1, 27 Apr to 3 May")
                .contains("What was mixed on day one")
                .doesNotContain("2 to 8 Mar");
        assertThat(words(xml(PAGE)))
                .contains("in the first four weeks", "Week 1, 2 to 8 Mar", "Mix on day one");
    }

    // Lettuce of 14 days is sown on 16 February for 2 March.
    @Test
    void what_is_due_before_the_run_stands_before_its_first_week() {
        Reading.Good calm =
                (Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml"));
        String page = words(xml(page(Forecasts.of(calm.scenario(), 1), origins())));
        assertThat(page)
                .containsPattern(
                        "Before 2 Mar Mon 16 Feb 08:00 sow, .* Week 1, 2 to 8 Mar Mon 2 Mar");
        assertThat(words(xml(PAGE))).containsPattern("Before 2 Mar .* Week 1, 2 to 8 Mar");
    }

    /** Green is for a rig that warns of nothing. */
    @Test
    void the_verdict_of_a_rig_that_survives_and_warns_is_marked() {
        assertThat(BENCH.survives()).isTrue();
        assertThat(BENCH.advice().warnings()).isNotEmpty();
        assertThat(all(xml(PAGE), "section").get(0).getAttribute("class"))
                .isEqualTo("verdict care");
    }

    /**
     * A crop that half of the rigs bring through has an amber edge, one that fewer do a red one.
     */
    @Test
    void the_verdict_of_a_crop_that_most_rigs_lose_is_red() {
        assertThat(edge(0.5)).isEqualTo("verdict care");
        assertThat(edge(0.49)).isEqualTo("verdict bad");
    }

    private static String edge(double chance) {
        Forecast calm =
                Forecasts.of(
                        ((Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml")))
                                .scenario(),
                        1);
        Outlook.LikelyHarm dry =
                new Outlook.LikelyHarm(
                        Event.Kind.DRIED_OUT,
                        calm.trace().trays().get(0).tray().id(),
                        1 - chance,
                        Band.of(new double[] {26 * Time.DAY_S}));
        Forecast sure = calm.withOutlook(Optional.of(MadeUpOutlook.of(chance, dry)));
        Element page = xml(page(sure, origins()));
        return all(page, "section").get(0).getAttribute("class");
    }

    @Test
    void every_task_has_a_box_with_its_own_label_and_its_litres() {
        Element page = xml(PAGE);
        Map<String, String> labels = new LinkedHashMap<>();
        all(page, "label").forEach(label -> labels.put(label.getAttribute("for"), words(label)));
        List<Element> boxes = all(page, "input");
        assertThat(boxes).hasSize(labels.size());
        assertThat(boxes).allMatch(box -> labels.containsKey(box.getAttribute("id")));
        List<Task> tasks = BENCH.advice().tasks();
        assertThat(tasks).hasSizeGreaterThan(15);
        for (Task task : tasks) {
            // Mixing and reading are of several vessels, and no other is named before them.
            boolean ofAll = task.kind() == Task.Kind.MIX || task.kind() == Task.Kind.READ_METERS;
            String what =
                    " " + Names.of(task.kind()) + (ofAll ? "" : ", " + Names.of(task.vessel()));
            String litres = task.litres() > 0 ? ", " + Numbers.litres(task.litres()) + " L" : "";
            assertThat(labels.values()).anyMatch(label -> label.contains(what + litres));
            if (ofAll) {
                assertThat(labels.values())
                        .noneMatch(label -> label.contains(what + ", reservoir"));
            }
        }
    }

    /** Sixty boxes of one kind are read by nobody: from the fifth week on they are one line. */
    @Test
    void what_is_done_daily_is_one_line_after_the_first_weeks() {
        Reading.Good bucket =
                (Reading.Good) ScenarioReader.read(Path.of("scenarios/hand-topped-bucket.toml"));
        Forecast forecast = Forecasts.of(bucket.scenario(), 1);
        List<Task> topUps =
                forecast.toDo().stream().filter(task -> task.kind() == Task.Kind.TOP_UP).toList();
        LocalDate fifthWeek = bucket.scenario().start().plusDays(28);
        long later =
                topUps.stream().filter(t -> !t.due().toLocalDate().isBefore(fifthWeek)).count();
        assertThat(later).isGreaterThan(40);
        List<Element> labels = all(xml(page(forecast, origins())), "label");
        List<String> told =
                labels.stream()
                        .map(ReportPageTest::words)
                        .filter(w -> w.contains("top up"))
                        .toList();
        assertThat(told).hasSize((int) (topUps.size() - later) + 1);
        assertThat(told.get(told.size() - 1))
                .contains(later + " times", "L each time, about each day, to ");
    }

    @Test
    void four_weeks_stand_open_and_the_rest_waits_behind_a_fold() {
        Element page = xml(PAGE);
        assertThat(all(page, "h3")).hasSize(1 + 4); // what is sown before them has its own
        assertThat(words(all(page, "h3").get(4))).isEqualTo("Week 4, 23 to 29 Mar");
        Element fold = all(page, "details").get(0);
        assertThat(words(fold)).contains("Mon 30 Mar 08:00 refill").doesNotContain("2 Mar 08:00");
    }

    @Test
    void every_warning_and_caution_is_told() {
        String words = words(xml(PAGE));
        for (Warning warning : BENCH.advice().warnings()) {
            assertThat(words.toLowerCase(Locale.ROOT))
                    .contains(Names.of(warning.kind()) + ", " + Names.of(warning.vessel()));
        }
        assertThat(BENCH.advice().warnings()).isNotEmpty();
        for (Task task : BENCH.advice().tasks()) {
            for (Caution caution : task.cautions()) {
                assertThat(words).containsIgnoringCase(CautionWords.of(caution));
            }
        }
        assertThat(CautionWords.ALWAYS).allMatch(words::contains);
    }

    // The sheet is worked out of salts as sold, the scenario's feed out of ions: they must agree.
    @Test
    void the_mixing_sheet_makes_the_feed_of_the_scenario() {
        var mix = DayOneMix.of(READ, BENCH.litresOnDayOne()).orElseThrow();
        assertThat(mix.sheet().ecMsPerCm()).isCloseTo(1.6, within(0.01));
        assertThat(mix.sheet().volumeL()).isCloseTo(55.3, within(0.05));
        // Nitrate within 5 %: calcium nitrate as sold brings some ammonium the recipe has not.
        double no3 = READ.scenario().feed().composition().molPerM3(0);
        assertThat(mix.sheet().composition().molPerM3(0)).isCloseTo(no3, within(0.05 * no3));
        String words = words(xml(PAGE));
        mix.sheet().steps().forEach(step -> assertThat(words).contains(MixWords.amount(step)));
        assertThat(words)
                .contains(
                        "EC (mS/cm: how much salt is dissolved) and pH as the meters should read");
        ShownIn pen = new ShownIn(false, PpmScale.PPM_700);
        String page =
                pen.page(
                        ReportPage.of(
                                BENCH,
                                origins(),
                                RigPicture.scenes(BENCH, 0.1),
                                new LinkedHashMap<>(),
                                pen));
        assertThat(page).doesNotContain("mS/cm");
        double last = mix.sheet().steps().get(mix.sheet().steps().size() - 1).ecMsPerCm();
        assertThat(words(xml(page)))
                .contains(
                        "EC (ppm-700: how much salt is dissolved) and pH as",
                        " " + Math.round(700 * last) + " ");
    }

    @Test
    void nothing_is_said_of_lamps_and_high_reservoirs_that_are_not_there() {
        Scenario lit = BENCH.trace().scenario();
        Scenario dark =
                lit.withTrays(lit.trays().stream().map(t -> t.withLamp(Lamp.NONE)).toList());
        assertThat(CautionWords.always(lit)).isEqualTo(CautionWords.ALWAYS);
        assertThat(String.join(" ", CautionWords.always(dark)))
                .contains("Clean hands", "high reservoir")
                .doesNotContain("bright lamps");
        assertThat(String.join(" ", CautionWords.always(dark.withReservoirs(List.of()))))
                .doesNotContain("high reservoir");
    }

    @Test
    void a_feed_without_recipe_or_labels_has_no_sheet_and_is_mixed_by_the_meter() {
        String page = page(BENCH, Origins.UNKNOWN);
        assertThat(page)
                .contains("by the label of what you bought", "[feed.part_a]")
                .doesNotContain("Mixing sheet");
    }

    @Test
    void nothing_is_fetched_and_every_picture_says_what_it_finds() {
        Element page = xml(PAGE);
        assertThat(PAGE.replace("xmlns=\"http://www.w3.org/2000/svg\"", ""))
                .doesNotContain("http")
                .doesNotContain("<script")
                .doesNotContain("@import")
                .doesNotContain("url(");
        for (Element image : all(page, "img")) {
            assertThat(image.getAttribute("src")).startsWith("data:image/svg+xml;base64,");
            assertThat(image.getAttribute("alt")).isEqualTo("A finding & more.");
        }
        assertThat(all(page, "img")).hasSize(1);
        assertThat(all(page, "svg")).hasSize(4);
        assertThat(all(page, "svg"))
                .allMatch(
                        svg ->
                                !words((Element) svg.getElementsByTagName("desc").item(0))
                                        .isEmpty());
    }

    @Test
    void no_id_comes_twice() {
        Set<String> seen = new HashSet<>();
        for (Element element : all(xml(PAGE), "*")) {
            String id = element.getAttribute("id");
            assertThat(id.isEmpty() || seen.add(id)).as(id).isTrue();
        }
        assertThat(seen).hasSizeGreaterThan(20);
    }

    @Test
    void the_same_forecast_gives_the_same_bytes_and_names_itself() {
        assertThat(page(BENCH, origins())).isEqualTo(PAGE);
        assertThat(PAGE).contains(READ.scenario().digest(), ResultJson.version(), "seed 1");
        assertThat(words(xml(PAGE))).contains("feed.acid", "a note");
        // A narrow screen breaks a key after a point.
        assertThat(PAGE).contains("feed.<wbr />acid");
    }

    @Test
    void a_cure_is_told_once_where_several_warnings_have_it() {
        Reading.Good dry =
                (Reading.Good) ScenarioReader.read(Path.of("scenarios/outgrown-trough.toml"));
        Element harm = all(xml(page(Forecasts.of(dry.scenario(), 1), origins())), "section").get(2);
        List<String> told = all(harm, "li").stream().map(ReportPageTest::words).toList();
        assertThat(told).hasSizeGreaterThan(3);
        assertThat(told.get(0)).contains("cure: a larger reservoir");
        assertThat(told.get(1)).endsWith("cure: as above.");
        assertThat(told).filteredOn(one -> one.contains("a larger reservoir")).hasSize(1);
    }

    /** The page of a scenario, with what is mixed for its first day. */
    private static Element mixed(String scenario) {
        Reading.Good good = (Reading.Good) ScenarioReader.read(Path.of(scenario));
        Forecast forecast = Forecasts.of(good.scenario(), 1);
        return xml(
                page(
                        forecast,
                        new Origins(
                                List.of(),
                                List.of(),
                                DayOneMix.of(good, forecast.litresOnDayOne()),
                                List.of())));
    }

    @Test
    void little_of_a_salt_is_not_told_as_none() {
        assertThat(words(mixed("scenarios/lessons/hard-tap.toml")))
                .containsPattern("potassium sulfate 0\\.[1-9] g, nitric acid 38 % \\d\\d mL");
    }

    @Test
    void a_season_of_bottles_takes_acid_too() {
        assertThat(words(mixed("scenarios/two-bottles.toml")))
                .containsPattern(
                        "Into it goes: part A \\d+ mL, part B \\d+ mL, phosphoric acid 30 %"
                                + " [\\d.]+ mL\\.");
    }

    @Test
    void a_volume_stays_on_a_line_with_its_unit() {
        assertThat(ReportPage.unbroken("<strong>mix, 55 L</strong> <strong>1.2 fl oz</strong> 3 L"))
                .isEqualTo("<strong>mix, 55&#160;L</strong> <strong>1.2&#160;fl oz</strong> 3 L");
    }

    @Test
    void names_cannot_become_markup() {
        Forecast hostile = MadeUpForecast.of(28, "<script>alert(1)</script>", "\"><img src=x>");
        String page = page(hostile, Origins.UNKNOWN);
        assertThat(page).doesNotContain("<script").doesNotContain("<img src=x");
        assertThat(words(xml(page))).contains("<script>alert(1)</script>");
    }

    @Test
    void without_members_the_page_says_that_nothing_is_known_of_how_sure_it_is() {
        assertThat(BENCH.outlook()).isEqualTo(Optional.empty());
        assertThat(words(xml(PAGE))).contains("Run as stated alone (--members 1)");
    }
}
