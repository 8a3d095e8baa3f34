package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Caution;
import tideless.advice.Cure;
import tideless.advice.Measure;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Trace;
import tideless.study.Forecast;

class ForecastTableTest {
    private static String print(Forecast forecast, boolean colour, int width) {
        return print(forecast, colour, width, ForecastTable.Depth.ALL);
    }

    private static String print(
            Forecast forecast, boolean colour, int width, ForecastTable.Depth depth) {
        StringWriter text = new StringWriter();
        ForecastTable.print(new PrintWriter(text), forecast, colour, width, depth, Telling.METRIC);
        return text.toString();
    }

    private static final Verdict CALM =
            new Verdict(true, Optional.empty(), List.of(), List.of(), Optional.empty());

    private static Forecast with(List<Task> tasks) {
        Forecast whole = MadeUpForecast.threeTrays();
        return whole.withAdvice(new Advice(CALM, tasks, List.of(), List.of()));
    }

    private static Task refill(int dayOfMonth, double litres) {
        return new Task(
                Task.Kind.REFILL,
                VesselId.reservoir("Wall tub"),
                LocalDateTime.of(2026, 9, dayOfMonth, 8, 0),
                litres,
                0,
                Measure.atLeast(5.2, 17.3, Unit.LITRES),
                Cause.of(Cause.Kind.RUNNING_LOW),
                List.of(),
                List.of(),
                true);
    }

    @ParameterizedTest
    @ValueSource(ints = {56, 64, 80, 100, 140})
    void no_line_is_wider_than_the_terminal(int width) {
        assertThat(print(MadeUpForecast.threeTrays(), false, width).lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(width));
    }

    @Test
    void the_head_tells_what_when_and_the_seed() {
        assertThat(print(MadeUpForecast.threeTrays(), false, 100))
                .startsWith(
                        "Bench along the wall of an invented science room\n"
                                + "7 Sep to 15 Nov 2026, 70 days, seed 7\n");
    }

    @Test
    void reservoirs_come_before_trays_and_trays_before_warnings() {
        assertThat(print(MadeUpForecast.threeTrays(), false, 100))
                .containsSubsequence(
                        "\nReservoir Wall tub\n",
                        "\nTray Lettuce\n",
                        "\nTray Tomato\n",
                        "WARNINGS");
    }

    @Test
    void few_tasks_are_listed_whole_with_weekday_litres_and_reason() {
        assertThat(print(with(List.of(refill(14, 38.4), refill(18, 7.24))), false, 100))
                .contains(
                        "  refill  Mon 14 Sep 08:00       38  5.2 L left above the outlet (refill below 17.3 L)\n")
                .contains("  refill  Fri 18 Sep 08:00      7.2  as above\n");
    }

    @Test
    void many_refills_are_summed_up_with_their_shrinking_intervals() {
        List<Task> tasks =
                List.of(
                        refill(7, 30),
                        refill(14, 31),
                        refill(20, 32),
                        refill(22, 33),
                        refill(23, 34),
                        refill(24, 35));
        assertThat(print(with(tasks), false, 120))
                .contains("refill, 6 times")
                .contains("from Mon 7 Sep")
                .contains("30-35")
                .contains("5 days apart at first, shortening to 1.3 days")
                .contains("  last           Thu 24 Sep 08:00");
    }

    @Test
    void the_largest_of_many_is_told_with_its_day_unless_it_is_listed_anyway() {
        List<Task> tasks = new ArrayList<>();
        for (int day = 7; day < 15; day++) {
            tasks.add(refill(day, day == 12 ? 39 : 30));
        }
        assertThat(print(with(tasks), false, 120))
                .containsPattern("  most +Sat 12 Sep 08:00 +39  ")
                .containsPattern("  last +Mon 14 Sep 08:00 +30  ");
        tasks.set(1, refill(8, 41));
        assertThat(print(with(tasks), false, 120)).doesNotContain("  most ");
    }

    @Test
    void warnings_carry_figure_limit_and_cure() {
        assertThat(print(MadeUpForecast.threeTrays(), false, 200))
                .contains(
                        "! outgrown, reservoir Wall tub, from Sun 18 Oct 00:00: a full one lasts 2.9"
                                + " days, the longest time between visits is 3 days; cure: a larger"
                                + " reservoir: at least 61 L above its outlet (it holds 43 L)\n");
    }

    /** Three with one cure: it is told once, and again after another. */
    @Test
    void a_cure_that_is_that_of_the_warning_before_is_told_once() {
        Warning salty = salty("a", 2.2, 2);
        Warning lean = salty.withKind(Warning.Kind.TOO_LEAN);
        Warning sodium =
                salty.withKind(Warning.Kind.TOO_MUCH_SODIUM)
                        .withCures(List.of(Cure.of(Cure.Kind.FEWER_PLANTS)));
        Warning chloride = salty.withKind(Warning.Kind.TOO_MUCH_CHLORIDE);
        Warning none = salty.withKind(Warning.Kind.PRECIPITATE).withCures(List.of());
        String text = print(warned(List.of(salty, lean, sodium, chloride, none)), false, 300);
        assertThat(text.lines().filter(l -> l.startsWith("! ")).map(l -> l.split("; cure: ")))
                .extracting(l -> l.length > 1 ? l[1].split(" ")[0] : "")
                .containsExactly("rain", "as", "fewer", "rain", "");
    }

    private static Warning salty(String tray, double ec, double limit) {
        return new Warning(
                Warning.Kind.TOO_SALTY,
                VesselId.tray(tray),
                LocalDateTime.of(2026, 9, 20, 8, 0),
                LocalDateTime.of(2026, 9, 30, 8, 0),
                Measure.atMost(ec, limit, Unit.MS_PER_CM),
                Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                List.of(Cure.of(Cure.Kind.RAIN_WATER)));
    }

    private static Forecast warned(List<Warning> warnings) {
        Forecast whole = MadeUpForecast.threeTrays();
        return whole.withAdvice(new Advice(CALM, List.of(), warnings, List.of()));
    }

    @Test
    void equal_warnings_are_one_line_and_others_are_not() {
        String text =
                print(
                        warned(List.of(salty("a", 2.2, 2), salty("b", 2.3, 2), salty("c", 2.3, 1))),
                        false,
                        140);
        assertThat(text).contains("! too salty, trays a and b, from Sun 20 Sep 08:00: up to 2.20");
        assertThat(text).contains("! too salty, tray c, from Sun 20 Sep 08:00: up to 2.30");
    }

    @Test
    void more_than_ten_lines_of_warnings_are_left_to_the_file() {
        List<Warning> many = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            many.add(salty("tray" + i, 9, 1 + i));
        }
        List<String> all = print(warned(many), false, 160).lines().toList();
        assertThat(all.subList(all.indexOf("WARNINGS"), all.size())).hasSize(1 + 14);
        List<String> lines =
                print(warned(many), false, 160, ForecastTable.Depth.BRIEF).lines().toList();
        int end = lines.indexOf("WARNINGS") + 1 + 10 + 1;
        lines = lines.subList(0, end);
        assertThat(lines.get(lines.size() - 1)).contains("4 lesser warnings more in warnings.csv");
    }

    private static Task harvest(String tray) {
        return new Task(
                Task.Kind.HARVEST,
                VesselId.tray(tray),
                LocalDateTime.of(2026, 9, 20, 8, 0),
                0,
                0,
                Measure.of(100, Unit.GRAMS),
                Cause.of(Cause.Kind.READY),
                List.of(),
                List.of(Caution.ROOF_RAIN),
                true);
    }

    /** The calm bench has two trays of lettuce, left and right. */
    private static String onTheCalmBench(List<Task> tasks) {
        Forecast whole = MadeUpForecast.threeTrays();
        Trace was = whole.trace();
        var read = (Reading.Good) ScenarioReader.read(Path.of("scenarios", "calm-bench.toml"));
        Trace trace =
                new Trace(
                        read.scenario(),
                        was.hours(),
                        was.trays(),
                        was.reservoirs(),
                        was.events(),
                        was.water(),
                        was.components());
        Advice advice = new Advice(CALM, tasks, List.of(), List.of());
        return print(whole.withTrace(trace).withAdvice(advice), false, 100);
    }

    @Test
    void trays_of_which_the_same_is_said_are_told_together() {
        Task left = harvest("left");
        assertThat(onTheCalmBench(List.of(left, harvest("right"))))
                .containsOnlyOnce("Trays left and right (lettuce), each:")
                .containsOnlyOnce("  harvest");
    }

    @Test
    void trays_whose_tasks_differ_are_told_apart() {
        Task heavier =
                new Task(
                        Task.Kind.HARVEST,
                        VesselId.tray("right"),
                        LocalDateTime.of(2026, 9, 20, 8, 0),
                        0,
                        0,
                        Measure.of(102, Unit.GRAMS),
                        Cause.of(Cause.Kind.READY),
                        List.of(),
                        List.of(),
                        true);
        assertThat(onTheCalmBench(List.of(harvest("left"), heavier)))
                .containsSubsequence(
                        "Tray left (lettuce)\n", "100 g", "Tray right (lettuce)\n", "102 g");
    }

    @Test
    void the_feeds_readings_stand_at_the_head() {
        assertThat(onTheCalmBench(List.of()))
                .contains("\nFeed: 1.70 mS/cm; pH 6.0 once it has stood in air, 5.7 just mixed\n");
    }

    @Test
    void a_caution_stands_under_its_task() {
        assertThat(print(with(List.of(harvest("Lettuce"))), false, 100))
                .containsSubsequence(
                        "  harvest",
                        "100 g a plant (ready)\n",
                        "care: rain off a roof must not touch leaves that are eaten raw\n");
    }

    @Test
    void what_a_run_did_not_do_says_so() {
        Task done = refill(14, 30);
        Task advised = advised(done);
        assertThat(print(with(List.of(done)), false, 140)).doesNotContain("advised");
        assertThat(print(with(List.of(advised)), false, 140)).contains("; advised, not done\n");
    }

    @Test
    void what_is_advised_stands_among_the_done_by_its_date_as_long_as_each_is_listed() {
        List<Task> four =
                List.of(refill(5, 30), refill(9, 31), advised(refill(12, 32)), refill(16, 33));
        assertThat(print(with(four), false, 140))
                .containsSubsequence(" 30 ", " 31 ", " 32 ", "advised, not done", " 33 ");
        List<Task> five = new ArrayList<>(four);
        five.add(refill(20, 34));
        five.add(refill(24, 35));
        assertThat(print(with(five), false, 140))
                .containsSubsequence("refill, 5 times", "  last", " 32 ", "advised, not done");
    }

    private static Task advised(Task done) {
        return new Task(
                done.kind(),
                done.vessel(),
                done.due(),
                done.litres(),
                0,
                done.measure(),
                done.cause(),
                List.of(),
                List.of(),
                false);
    }

    @Test
    void a_verdict_of_few_lines_stands_above_the_table() {
        assertThat(print(MadeUpForecast.threeTrays(), false, 120))
                .containsSubsequence(
                        "The crop does not come through: tray Lettuce wilts for hours from Fri 30 Oct"
                                + " 05:00.\n",
                        "Away 3 to 12 Oct: survives; fill up on Fri 2 Oct; lowest then 41 mm (tray"
                                + " Lettuce), 52 mm if you do.\n",
                        "Tightest on Fri 30 Oct 05:00: tray Lettuce holds water for 5 hours.\n",
                        "Change first (roots stranded, tray Lettuce): refill the reservoir before it"
                                + " is empty.\n",
                        "WHAT");
    }

    @Test
    void colour_adds_nothing_but_colour() {
        String plain = print(MadeUpForecast.threeTrays(), false, 80);
        String coloured = print(MadeUpForecast.threeTrays(), true, 80);
        assertThat(plain).doesNotContain("\u001b");
        assertThat(coloured).contains("\u001b[");
        assertThat(coloured.replaceAll("\u001b\\[[0-9]+m", "")).isEqualTo(plain);
    }

    @Test
    void its_own_words_are_ascii() {
        Forecast plain = MadeUpForecast.of(70, "Lettuce", "Basil", "Tomato");
        assertThat(print(plain, false, 80).chars())
                .allMatch(c -> c == '\n' || (c >= 32 && c < 127));
    }

    @Test
    void a_name_cannot_command_the_terminal() {
        Forecast sly = MadeUpForecast.of(70, "Let\u001b[2Jtuce", "Basil", "Tomato");
        assertThat(print(sly, false, 80)).doesNotContain("\u001b");
    }

    @Test
    void an_empty_advice_says_so() {
        assertThat(print(with(List.of()), false, 80))
                .contains("Nothing to do before the end of the run.")
                .contains("No warnings.");
    }
}
