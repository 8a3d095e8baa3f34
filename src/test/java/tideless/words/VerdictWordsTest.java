package tideless.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Warning;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.MadeUpOutlook;
import tideless.study.Outlook;

/** What is to be changed first, and what is not worth a line. */
class VerdictWordsTest {
    @TempDir static Path folder;

    private static Forecast forecast(String scenario) {
        Path file = Path.of("scenarios", scenario + ".toml");
        return Forecasts.of(((Reading.Good) ScenarioReader.read(file)).scenario(), 1);
    }

    /** The calm bench, with something in its text put otherwise. */
    private static List<String> changed(String... fromTo) throws IOException {
        return VerdictWords.lines(forecastOf(fromTo));
    }

    private static Forecast forecastOf(String... fromTo) throws IOException {
        String text = Files.readString(Path.of("scenarios", "calm-bench.toml"));
        for (int i = 0; i < fromTo.length; i += 2) {
            assertThat(text).contains(fromTo[i]);
            text = text.replace(fromTo[i], fromTo[i + 1]);
        }
        Path file = Files.writeString(folder.resolve("bench.toml"), text);
        return Forecasts.of(((Reading.Good) ScenarioReader.read(file)).scenario(), 1);
    }

    /** The first tray dries out 26 days after the start in the rest of the rigs. */
    private static List<String> lines(Forecast forecast, double chance) {
        return lines(forecast, chance, Event.Kind.DRIED_OUT);
    }

    private static List<String> lines(Forecast forecast, double chance, Event.Kind kind) {
        Outlook.LikelyHarm harm =
                new Outlook.LikelyHarm(
                        kind,
                        forecast.trace().trays().get(0).tray().id(),
                        1 - chance,
                        Band.of(new double[] {26 * 86_400.0}));
        return VerdictWords.lines(
                forecast.withOutlook(Optional.of(MadeUpOutlook.of(chance, harm))));
    }

    private static String last(List<String> lines) {
        return lines.get(lines.size() - 1);
    }

    /**
     * The calm bench is away from 21 to 29 March, days 19 to 27: somebody is to come on the 27th.
     */
    @Test
    void where_rigs_like_yours_may_run_dry_water_is_changed_first() {
        Forecast calm = forecast("calm-bench");
        assertThat(last(lines(calm, 0.89)))
                .isEqualTo(
                        "Change first (tray left dries out in some): have somebody top it up by Fri"
                                + " 27 Mar.");
        assertThat(last(lines(calm, 0.9))).startsWith("Away 21 to 29 Mar");
    }

    @Test
    void a_warning_of_water_is_kept_and_another_gives_way() {
        assertThat(last(lines(forecast("science-room-bench"), 0.5)))
                .startsWith("Change first (ran dry, reservoir shelf)");
        Forecast held = forecast("low-held-tomatoes");
        Cure daily =
                new Cure(
                        Cure.Kind.KEEP_OTHERWISE,
                        Facts.NONE.named("mon, wed, fri").and(Quantity.CHANCE, 0.9));
        List<String> dim = lines(held.withSurer(Optional.of(daily)), 0.5);
        assertThat(dim).filteredOn(line -> line.startsWith("Change first")).hasSize(1);
        assertThat(last(dim)).startsWith("Change first (tray upper dries out in some)");
        assertThat(lines(held, 0.5))
                .as("more visits that were not tried are not told")
                .noneMatch(line -> line.contains("in some)"));
    }

    /** Water in time is no answer to salt. */
    @Test
    void where_salt_harms_most_of_the_others_water_gives_way_to_what_was_tried_against_it() {
        Forecast bench =
                forecast("science-room-bench")
                        .withSurer(
                                Optional.of(
                                        new Cure(
                                                Cure.Kind.KEEP_OTHERWISE,
                                                Facts.NONE
                                                        .named("mon, wed, fri")
                                                        .and(Quantity.CHANCE, 0.94))));
        assertThat(last(lines(bench, 0.5, Event.Kind.SALT_WILTED)))
                .endsWith(
                        "in some): visits on mon, wed, fri (visits.days): then 94 % of the rigs that"
                                + " yours might be come through.");
        assertThat(last(lines(forecast("science-room-bench"), 0.5, Event.Kind.SALT_WILTED)))
                .startsWith("Change first (ran dry, reservoir shelf)");
    }

    /** Beside refills in time only what serves clearly more rigs than these is found. */
    @Test
    void what_outdoes_refills_in_runs_is_changed_before_them() {
        Cure oftener =
                new Cure(
                        Cure.Kind.KEEP_OTHERWISE,
                        Facts.NONE.named("mon, wed, fri").and(Quantity.CHANCE, 0.94));
        Forecast bench = forecast("science-room-bench").withSurer(Optional.of(oftener));
        assertThat(last(lines(bench, 0.5)))
                .startsWith("Change first (tray basil dries out in some): visits on mon, wed, fri");
    }

    /** "Fill higher", and nobody knows how high, gives way to what was tried. */
    @Test
    void a_cure_without_a_figure_gives_way_to_one_that_was_tried() {
        Forecast bench = forecast("science-room-bench");
        Warning ranDry = bench.advice().verdict().first().orElseThrow();
        Cure tried =
                new Cure(
                        Cure.Kind.KEEP_OTHERWISE,
                        Facts.of(Quantity.LEVEL, 230).and(Quantity.CHANCE, 0.92));
        for (Cure.Kind kind : List.of(Cure.Kind.FILL_HIGHER, Cure.Kind.VISIT_MORE_OFTEN)) {
            Warning vague = ranDry.withCures(List.of(Cure.of(kind)));
            Advice advice =
                    bench.advice()
                            .withVerdict(bench.advice().verdict().withFirst(Optional.of(vague)));
            Forecast told = bench.withAdvice(advice).withSurer(Optional.of(tried));
            assertThat(last(lines(told, 0.5))).contains("in some): top-ups to 230 mm (hand.to)");
        }
    }

    /** Tomatoes under glass in July, over a trough in the sun; lettuce in a room of 21 degC. */
    @Test
    void a_crop_whose_roots_would_rot_is_not_told_to_survive_and_no_more() {
        assertThat(VerdictWords.lines(forecast("glasshouse-tomato-trough")).get(0))
                .contains("Yet roots rot within days in a solution so warm, which is not counted");
        assertThat(VerdictWords.lines(forecast("calm-bench")).get(0)).doesNotContain("rot");
    }

    /** What a crop gets over is told of it all the same. */
    @ParameterizedTest
    @CsvSource({"WILTED, wilts for 4 hours", "SALT_WILTED, wilts from salt for 4 hours"})
    void a_crop_that_survives_a_wilt_is_not_told_that_nothing_wilts(
            Warning.Kind kind, String told) {
        Forecast calm = forecast("calm-bench");
        LocalDateTime from = LocalDateTime.of(2026, 3, 5, 22, 30);
        Warning wilt =
                new Warning(
                        kind,
                        VesselId.tray("left"),
                        from,
                        from.plusHours(4),
                        Measure.none(),
                        Cause.of(Cause.Kind.RESERVE_USED_UP),
                        List.of());
        Forecast wilted = calm.withAdvice(calm.advice().withWarnings(List.of(wilt)));
        String but = "The crop survives, but tray left %s from Thu 5 Mar 22:30.".formatted(told);
        assertThat(VerdictWords.lines(wilted).get(0)).isEqualTo(but);
        assertThat(lines(wilted, 0.9).get(0)).startsWith(but);
    }

    /** Half of the rigs, and a hundredth less. */
    @Test
    void a_crop_that_most_rigs_lose_is_not_told_to_survive() {
        Forecast calm = forecast("calm-bench");
        assertThat(lines(calm, 0.5).get(0))
                .startsWith(
                        "The crop survives: nothing dies, wilts or dries out. Not surely, though:");
        assertThat(lines(calm, 0.49).get(0))
                .isEqualTo(
                        "Count on losing the crop: it lives by the likeliest figures alone. Only 49 of"
                                + " 100 rigs that yours might be come through; in 51 of them tray left"
                                + " dries out about 28 Mar.");
    }

    /** Air roots are drowned by too much water, which is no answer to too little. */
    @Test
    void a_warning_of_too_much_water_gives_way_to_what_may_run_dry() {
        Forecast calm = forecast("calm-bench");
        Warning tooHigh =
                new Warning(
                        Warning.Kind.DROWNED,
                        VesselId.tray("left"),
                        LocalDateTime.of(2026, 3, 18, 8, 0),
                        LocalDateTime.of(2026, 3, 25, 8, 0),
                        Measure.atMost(69, 55, Unit.MILLIMETRES),
                        Cause.of(Cause.Kind.ROSE_ABOVE_AIR_ROOTS),
                        List.of(new Cure(Cure.Kind.LOWER_LEVEL, Facts.of(Quantity.LEVEL, 55))));
        Advice advice = calm.advice().withWarnings(List.of(tooHigh));
        Forecast drowned =
                calm.withAdvice(
                        advice.withVerdict(advice.verdict().withFirst(Optional.of(tooHigh))));
        assertThat(last(lines(drowned, 0.9))).startsWith("Change first (air roots drowned");
        assertThat(last(lines(drowned, 0.5)))
                .startsWith("Change first (tray left dries out in some)");
    }

    /** Of warnings that no file cures: five flushes are often, four are not. */
    @ParameterizedTest
    @CsvSource({
        "4, No other change was tried that helps",
        "5, It is flushed often (tray left 5 times)"
    })
    void who_flushes_often_is_told_where_a_better_feed_is_found(int flushes, String told) {
        Forecast calm = forecast("calm-bench");
        Task flush =
                new Task(
                        Task.Kind.FLUSH,
                        VesselId.tray("left"),
                        LocalDateTime.of(2026, 3, 9, 8, 0),
                        9,
                        9,
                        Measure.atMost(3, 2, Unit.MS_PER_CM),
                        Cause.of(Cause.Kind.SALTS_STAY_BEHIND),
                        List.of(),
                        List.of(),
                        true);
        Warning warm =
                new Warning(
                        Warning.Kind.WARM_SOLUTION,
                        VesselId.tray("left"),
                        LocalDateTime.of(2026, 3, 9, 8, 0),
                        LocalDateTime.of(2026, 3, 19, 8, 0),
                        Measure.atMost(30, 25, Unit.CELSIUS),
                        Cause.of(Cause.Kind.WARM_HOLDS_LITTLE_OXYGEN),
                        List.of());
        Forecast often =
                calm.withAdvice(
                        calm.advice()
                                .withTasks(Collections.nCopies(flushes, flush))
                                .withWarnings(List.of(warm)));
        assertThat(last(VerdictWords.lines(often))).startsWith(told);
    }

    @Test
    void a_tray_that_ran_dry_is_not_told_to_hold_water_for_an_hour() {
        assertThat(VerdictWords.lines(forecast("outgrown-trough")))
                .noneMatch(line -> line.startsWith("Tightest"));
        assertThat(VerdictWords.lines(forecast("low-held-trays")))
                .anyMatch(line -> line.startsWith("Tightest"));
    }

    /** On the last evening of its absence, of which the lowest level is told. */
    @Test
    void what_is_tightest_in_an_absence_is_told_of_the_absence() {
        Forecast calm = forecast("calm-bench");
        assertThat(calm.advice().verdict().tightest().orElseThrow().hours()).isLessThan(240);
        assertThat(VerdictWords.lines(calm)).noneMatch(line -> line.startsWith("Tightest"));
    }

    /** Lettuce grows above 4 degC. */
    @Test
    void a_crop_that_survives_and_never_gets_ready_is_told_at_once() throws IOException {
        List<String> cold =
                changed(
                        "day_temperature = \"22 degC\"", "day_temperature = \"4 degC\"",
                        "night_temperature = \"18 degC\"", "night_temperature = \"2 degC\"");
        assertThat(cold.get(0))
                .contains("Yet in such air it never gets ready: tray left, tray right");
        assertThat(VerdictWords.lines(forecast("calm-bench")).get(0)).doesNotContain("ready");
    }

    @Test
    void nobody_is_said_to_survive_an_absence_whose_plants_are_cut_or_dead() throws IOException {
        assertThat(
                        changed(
                                "from = 2026-03-21, to = 2026-03-29",
                                "from = 2026-04-03, to = 2026-04-08"))
                .anyMatch(line -> line.equals("Away 3 to 8 Apr: nothing grows then in this run."));
        List<String> dead =
                changed(
                        "setting = \"4.5 cm\"", "setting = \"1 cm\"",
                        "gap = \"0.5 %\"", "gap = \"0.5 %\"\ncup_water = \"0 mL\"");
        assertThat(dead)
                .anyMatch(line -> line.equals("Away 21 to 29 Mar: no plant is left by then."));
        // Seedlings above the level are lost for another reason than too little water.
        assertThat(dead).noneMatch(line -> line.startsWith("Tightest"));
    }
}
