package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Advice;
import tideless.advice.Task;
import tideless.study.Forecast;

class ForecastTableTest {
    private static String print(Forecast forecast, boolean colour, int width) {
        StringWriter text = new StringWriter();
        ForecastTable.print(new PrintWriter(text), forecast, colour, width);
        return text.toString();
    }

    private static Forecast with(List<Task> tasks) {
        Forecast whole = MadeUpForecast.threeTrays();
        return new Forecast(
                whole.trace(), whole.unlimited(), new Advice(tasks, List.of(), List.of()), 1);
    }

    private static Task refill(int dayOfMonth, double litres) {
        return new Task(
                Task.Kind.REFILL,
                LocalDateTime.of(2026, 9, dayOfMonth, 8, 0),
                "Wall tub",
                true,
                litres,
                0,
                "12 % left",
                "below 40 %",
                "low",
                "");
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
                .contains("  refill  Mon 14 Sep 08:00       38  12 % left (below 40 %)\n")
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
    void warnings_carry_figure_limit_and_cure() {
        assertThat(print(MadeUpForecast.threeTrays(), false, 120))
                .contains(
                        "! outgrown, reservoir Wall tub, from Sun 18 Oct 00:00\n"
                                + "    A full reservoir no longer lasts to the next visit: 2.9 days;"
                                + " limit: 3 days between visits\n"
                                + "    cure: A reservoir of 61 L usable, or a visit every other day.\n");
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
        assertThat(print(plain, false, 80).chars()).allMatch(c -> c == '\n' || c >= 32 && c < 127);
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
