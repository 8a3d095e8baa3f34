package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.words.CureWords;

/**
 * Cures of a solution are told where a run with them is better, and in words that can be written.
 */
class CureTrialsTest {
    @TempDir Path folder;

    private Scenario read(String text) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(file, text);
        Reading reading = ScenarioReader.read(file);
        assertThat(reading).isInstanceOf(Reading.Good.class);
        return ((Reading.Good) reading).scenario();
    }

    private static String chillies(String refill) {
        return """
            title = "Chillies below a drum"
            start = 2026-02-02
            length = "200 days"
            [climate]
            kind = "room"
            day_temperature = "25 degC"
            night_temperature = "19 degC"
            [lamp]
            ppfd = "400 umol/m2/s"
            on = "06:00"
            off = "22:00"
            [feed]
            recipe = "pepper-substrate"
            ec = "1.8 mS/cm"
            [reservoir.drum]
            volume = "60 L"
            depth = "50 cm"
            floor_above_bench = "50 cm"
            """
                + refill
                + """
            [tray.a]
            length = "80 cm"
            width = "40 cm"
            depth = "15 cm"
            cup_bottom = "9 cm"
            crop = "chilli"
            plants = 3
            ground = "0.9 m2"
            [tray.a.valve]
            setting = "9.5 cm"
            [visits]
            days = ["mon", "thu"]
            at = "18:00"
            """;
    }

    /** What a run is told once its cures are tried, and nothing else. */
    private static Advice advised(Scenario scenario) {
        Trace trace = Simulation.run(scenario);
        Advice advice = Advisor.advise(trace, trace);
        List<CureTrials.Trial> trials = CureTrials.of(trace, advice);
        return CureTrials.judged(
                new Trials.Tried(trace, advice),
                trials,
                trials.stream().map(CureTrials::run).toList());
    }

    private static Optional<Warning> salty(Advice advice) {
        return advice.warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.TOO_SALTY)
                .findFirst();
    }

    @Test
    void plain_water_is_told_as_a_share_that_a_file_can_say_and_puts_the_salt_right()
            throws IOException {
        Warning salty = salty(advised(read(chillies("")))).orElseThrow();
        Cure first = salty.cures().get(0);
        assertEquals(Cure.Kind.WATER_SHARE, first.kind());
        String from = first.facts().on().toLocalDate().toString();
        String percent = Math.round(100 * first.facts().get(Quantity.LATER_SHARE)) + " %";
        assertThat(CureWords.of(first))
                .startsWith("plain water for " + percent + " of each refill from ");
        String written = "water_share = [{ from = " + from + ", share = \"" + percent + "\" }]\n";
        Advice obeyed = advised(read(chillies(written)));
        assertEquals(Optional.empty(), salty(obeyed));
        assertTrue(
                obeyed.tasks().stream()
                        .filter(t -> t.kind() == Task.Kind.REFILL)
                        .anyMatch(t -> t.cause().facts().has(Quantity.WATER)));
    }

    @Test
    void a_leaner_feed_is_told_with_the_strength_that_did_it() throws IOException {
        Cure leaner =
                salty(advised(read(chillies("")))).orElseThrow().cures().stream()
                        .filter(c -> c.kind() == Cure.Kind.LEANER_FEED)
                        .findFirst()
                        .orElseThrow();
        double ec = leaner.facts().get(Quantity.WANTED_EC);
        Scenario lean =
                read(chillies("").replace("ec = \"1.8 mS/cm\"", "ec = \"" + ec + " mS/cm\""));
        double before = salty(advised(read(chillies("")))).orElseThrow().measure().value();
        double after = salty(advised(lean)).map(w -> w.measure().value()).orElse(0.0);
        assertThat(after).isLessThan(before - 1);
    }

    /** The salt comes of a feed of which the crop takes half, whatever its water. */
    @Test
    void what_makes_it_no_better_is_not_told() throws IOException {
        String text =
                """
                title = "Strawberries in a gutter"
                start = 2026-03-02
                length = "112 days"
                [climate]
                kind = "room"
                day_temperature = "20 degC"
                night_temperature = "13 degC"
                day_humidity = "45 %"
                [lamp]
                ppfd = "280 umol/m2/s"
                on = "06:00"
                off = "22:00"
                [water]
                source = "medium-tap"
                [feed]
                recipe = "strawberry-substrate"
                ec = "1.3 mS/cm"
                [reservoir.can]
                volume = "30 L"
                depth = "30 cm"
                floor_above_bench = "50 cm"
                [tray.gutter]
                length = "100 cm"
                width = "15 cm"
                depth = "10 cm"
                cup_bottom = "5 cm"
                crop = "strawberry"
                plants = 6
                ground = "0.6 m2"
                [tray.gutter.valve]
                setting = "5.5 cm"
                [visits]
                days = ["tue", "sat"]
                """;
        Advice forecast = advised(read(text));
        Warning salty = salty(forecast).orElseThrow();
        assertThat(salty.cures())
                .extracting(Cure::kind)
                .contains(Cure.Kind.LEANER_FEED)
                .doesNotContain(Cure.Kind.RAIN_WATER);
        double rain =
                salty(advised(read(text.replace("medium-tap", "rain"))))
                        .orElseThrow()
                        .measure()
                        .value();
        assertThat(rain).isGreaterThan(0.9 * salty.measure().value());
    }

    @Test
    void a_rig_whose_solution_is_well_has_nothing_to_try() {
        Scenario calm =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml")))
                        .scenario();
        Forecast forecast = Forecasts.of(calm, 1);
        assertEquals(List.of(), CureTrials.of(forecast.trace(), forecast.advice()));
    }
}
