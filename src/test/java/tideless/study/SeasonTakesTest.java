package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;

class SeasonTakesTest {
    private static SeasonTakes of(String scenario) {
        Reading.Good good = (Reading.Good) ScenarioReader.read(Path.of("scenarios", scenario));
        Trace trace = Simulation.run(good.scenario());
        return SeasonTakes.of(trace);
    }

    // By hand: two trays of 0.3 m2 under 240 umol/m2/s for 16 h a day, from 2 Mar to the harvest
    // at 08:00 on 30 Mar: 28 days and two hours of light. 0.6 * 240e-6 * (28 * 16 + 2) * 3600 =
    // 233.3 mol; of which a fifth more misses: 291.6 mol. At 2.8 umol/J 28.9 kWh, at 1.8 45.0.
    @Test
    void lamps_take_what_is_worked_out_by_hand() {
        SeasonTakes takes = of("calm-bench.toml");
        assertThat(takes.lampKwhLow()).isCloseTo(28.9, within(0.05));
        assertThat(takes.lampKwhHigh()).isCloseTo(45.0, within(0.05));
    }

    // One panel of 100 W over both trays (2 x 0.21 m2) burns 16 h a day from 2 Mar to 30 Mar 08:00:
    // 450 h, 45 kWh; told of each tray by a lamp of its own, twice that. Daylight takes none.
    @Test
    void watts_that_are_told_are_counted_once_a_lamp_and_daylight_takes_none() throws IOException {
        assertThat(lit(watts("0.42 m2", "70 lm/W")).lampKwhHigh()).isCloseTo(45, within(0.01));
        assertThat(lit(watts("0.21 m2", "35 lm/W")).lampKwhLow()).isCloseTo(90, within(0.01));
        assertThat(lit("type = \"sun\"\nppfd = \"240 umol/m2/s\"").lampKwhHigh()).isZero();
    }

    private static String watts(String area, String efficacy) {
        return "watts = \"100 W\"\narea = \"" + area + "\"\nefficacy = \"" + efficacy + "\"";
    }

    private static SeasonTakes lit(String lamp) throws IOException {
        String calm = Files.readString(Path.of("scenarios", "calm-bench.toml"));
        String changed =
                calm.replace("type = \"white-led\"\n", "")
                        .replace("ppfd = \"240 umol/m2/s\"", lamp);
        Reading.Good good =
                (Reading.Good) ScenarioReader.read("calm.toml", new FilesInMemory(changed));
        return SeasonTakes.of(Simulation.run(good.scenario()));
    }

    // 59.4 L mixed on day one and one refill of 14.2 L; the plants drink less than was made.
    @Test
    void feed_is_what_was_mixed_and_refilled() {
        SeasonTakes takes = of("calm-bench.toml");
        assertThat(takes.feedLitres()).isCloseTo(59.4 + 14.2, within(0.1));
        assertThat(takes.waterLitres()).isZero();
        assertThat(takes.drunkLitres()).isBetween(20.0, takes.feedLitres());
    }

    @Test
    void the_sun_takes_no_power() {
        assertThat(of("glasshouse-tomato-trough.toml").lampKwhHigh()).isZero();
    }
}
