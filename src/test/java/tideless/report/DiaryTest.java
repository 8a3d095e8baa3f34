package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.advice.Cause;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.ObeyingTest;
import tideless.study.threads.ThreadPool;

class DiaryTest {
    private static Forecast forecast(ChangedScenario.Change... changes) {
        return forecast("science-room-bench", changes);
    }

    private static Forecast forecast(String name, ChangedScenario.Change... changes) {
        Reading reading =
                ChangedScenario.read(Path.of("scenarios", name + ".toml"), List.of(changes));
        try {
            return Forecasts.of(((Reading.Good) reading).scenario(), 1, 8, new ThreadPool(2));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static final Forecast BENCH = forecast();

    private static Diary.Entry entry(Forecast forecast, String what) {
        return Diary.of(forecast).entries().stream()
                .filter(e -> e.what().startsWith(what))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing like " + what));
    }

    @Test
    void a_refill_that_the_run_does_not_do_says_that_the_next_is_told_without_it() {
        List<String> refills =
                Diary.of(BENCH).entries().stream()
                        .map(Diary.Entry::what)
                        .filter(what -> what.startsWith("Refill"))
                        .toList();
        assertThat(refills)
                .filteredOn(what -> what.contains("the next is told as without it"))
                .hasSize(1)
                .hasSizeLessThan(refills.size());
    }

    @Test
    void seed_is_sown_so_many_days_before_the_young_plant_is_set_out() {
        // Basil of the bench comes out of the nursery 21 days old on 2 March.
        Diary.Entry sown = entry(BENCH, "Sow basil");
        Diary.Entry setOut = entry(BENCH, "Set out basil");
        assertThat(Diary.of(BENCH).entries())
                .filteredOn(e -> e.what().startsWith("Set out") && e.what().contains("basil"))
                .hasSize(1);
        assertThat(setOut.lastDay()).contains(LocalDate.of(2026, 3, 2));
        assertThat(sown.lastDay()).contains(LocalDate.of(2026, 3, 2).minusDays(21));
        assertThat(setOut.text()).contains("21 days in the nursery");
    }

    @Test
    void nobody_sows_for_a_tray_without_plants() {
        Forecast empty = forecast(new ChangedScenario.Change("tray.basil.plants", "0"));
        assertThat(Diary.of(empty).entries())
                .extracting(Diary.Entry::what)
                .noneMatch(what -> what.startsWith("Sow basil") || what.contains("Set out basil"))
                .anyMatch(what -> what.startsWith("Sow pak-choi"));
    }

    @Test
    void an_absence_takes_all_of_its_days() {
        Visits.Absence away = BENCH.trace().scenario().visits().absences().get(0);
        Diary.Entry entry = entry(BENCH, "Nobody looks in");
        assertThat(entry.from()).isEqualTo(away.from().atStartOfDay());
        assertThat(entry.lastDay()).contains(away.to()).isNotEqualTo(away.from());
    }

    @Test
    void what_wants_preparing_is_reminded_of_a_day_before_and_the_rest_an_hour() {
        assertThat(entry(BENCH, "Mix").remindHours()).isEqualTo(24);
        assertThat(entry(BENCH, "Harvest").remindHours()).isEqualTo(24);
        assertThat(entry(BENCH, "Refill").remindHours()).isEqualTo(1);
        assertThat(entry(BENCH, "Look in").remindHours()).isZero();
    }

    @Test
    void the_band_of_a_date_stands_beside_it() {
        Task refill =
                BENCH.advice().tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.REFILL)
                        .findFirst()
                        .orElseThrow();
        assertThat(BENCH.expected(refill)).isPresent();
        assertThat(entry(BENCH, "Refill").what()).containsPattern("L \\((likely|from) .*\\)$");
    }

    @Test
    void unlike_names_have_unlike_identifiers() {
        List<String> names = List.of("\u00e4", "\u00f6", "a b", "a_b", "a-b", "a.b", "ab");
        assertThat(names.stream().map(n -> Diary.id("run", "refill", VesselId.tray(n), 1)))
                .doesNotHaveDuplicates()
                .allMatch(id -> id.matches("[\\x21-\\x7e]+@tideless"));
        assertThat(Diary.id("run", "refill", VesselId.tray("a"), 1))
                .isNotEqualTo(Diary.id("run", "refill", VesselId.reservoir("a"), 1));
    }

    // Two trays of lettuce turned into kale, picked by thirds a week from the third week on.
    @Test
    void leaves_that_are_picked_every_week_come_again_until_the_last_picking() {
        Forecast kale =
                forecast(
                        "calm-bench",
                        new ChangedScenario.Change("tray.left.crop", "kale"),
                        new ChangedScenario.Change("length", "70 days"));
        Diary.Again again = entry(kale, "Pick leaves, tray left").again().orElseThrow();
        assertThat(again.everyDays()).isEqualTo(7);
        assertThat(again.lastDay())
                .isAfter(LocalDate.of(2026, 4, 26))
                .isBefore(LocalDate.of(2026, 5, 11));
    }

    // Somebody comes on Tuesdays and Saturdays: fruit is picked and flowers are shaken then, be it
    // seldomer than they would be in a house with a gardener.
    @Test
    void fruit_that_is_picked_at_every_visit_comes_again_at_every_visit() {
        Forecast forecast =
                Forecasts.of(
                        ((Reading.Good)
                                        ScenarioReader.read(
                                                Path.of(
                                                        "scenarios",
                                                        "glasshouse-tomato-trough.toml")))
                                .scenario(),
                        1);
        Task pick =
                forecast.advice().tasks().stream()
                        .filter(task -> task.kind() == Task.Kind.PICK)
                        .findFirst()
                        .orElseThrow();
        assertThat(pick.cause().facts().has(Quantity.EVERY)).isFalse();
        for (String what : new String[] {"Pick", "Pollinate"}) {
            assertThat(entry(forecast, what).again().orElseThrow().everyDays()).isZero();
        }
    }

    /** All that ships, and the rigs on which advice is obeyed. */
    static List<Path> rigs() throws IOException {
        return ObeyingTest.rigs();
    }

    @ParameterizedTest
    @MethodSource("rigs")
    void every_rig_has_a_calendar_that_ends_within_its_run(Path path) {
        Scenario scenario = ((Reading.Good) ScenarioReader.read(path)).scenario();
        Diary diary = Diary.of(Forecasts.of(scenario, 1));
        assertThat(diary.entries()).isNotEmpty();
        for (Diary.Entry entry : diary.entries()) {
            entry.again()
                    .ifPresent(
                            again ->
                                    assertThat(again.lastDay())
                                            .isBetween(scenario.start(), scenario.lastDay()));
        }
    }

    // Whoever leaves on a day fills up before it, whatever other rigs do: no band anywhere.
    @Test
    void what_is_filled_up_before_an_absence_has_no_doubt_in_its_day() {
        Forecast calm = forecast("calm-bench");
        Task fill =
                calm.advice().tasks().stream()
                        .filter(task -> task.cause().kind() == Cause.Kind.BEFORE_ABSENCE)
                        .findFirst()
                        .orElseThrow();
        assertThat(calm.expected(fill)).isEmpty();
        assertThat(entry(calm, "Refill").what()).endsWith(" L");
        assertThat(entry(calm, "Harvest").what()).contains("likely");
    }
}
