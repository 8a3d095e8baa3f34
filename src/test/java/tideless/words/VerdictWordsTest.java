package tideless.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.Outlook;

/** What is to be changed first, and what is not worth a line. */
class VerdictWordsTest {
    private static Forecast forecast(String scenario) {
        Path file = Path.of("scenarios", scenario + ".toml");
        return Forecasts.of(((Reading.Good) ScenarioReader.read(file)).scenario(), 1);
    }

    /** The first tray dries out 26 days after the start in the rest of the rigs. */
    private static List<String> lines(Forecast forecast, double chance) {
        Outlook.LikelyHarm harm =
                new Outlook.LikelyHarm(
                        Event.Kind.DRIED_OUT,
                        forecast.trace().trays().get(0).tray().id(),
                        1 - chance,
                        Band.of(new double[] {26 * 86_400.0}));
        Outlook outlook =
                new Outlook(
                        100,
                        chance,
                        List.of(harm),
                        List.of(),
                        List.of(),
                        List.of(),
                        Band.of(new double[] {50}));
        return VerdictWords.lines(forecast.withOutlook(Optional.of(outlook)));
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
        assertThat(last(lines(calm, 0.9))).startsWith("Tightest");
    }

    @Test
    void a_warning_of_water_is_kept_and_another_gives_way() {
        assertThat(last(lines(forecast("science-room-bench"), 0.5)))
                .startsWith("Change first (ran dry, reservoir shelf)");
        List<String> dim = lines(forecast("low-held-tomatoes"), 0.5);
        assertThat(dim).filteredOn(line -> line.startsWith("Change first")).hasSize(1);
        assertThat(last(dim)).startsWith("Change first (tray upper dries out in some)");
    }

    @Test
    void a_tray_that_ran_dry_is_not_told_to_hold_water_for_an_hour() {
        assertThat(VerdictWords.lines(forecast("sealed-lettuce-tank")))
                .noneMatch(line -> line.startsWith("Tightest"));
        assertThat(VerdictWords.lines(forecast("calm-bench")))
                .anyMatch(line -> line.startsWith("Tightest"));
    }
}
