package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Planting;
import tideless.rig.Scenario;

/** The scenario that docs/questions.md shows to somebody who has measured can be run. */
class MeasuredStandPageTest {
    @TempDir Path folder;

    @Test
    void the_scenario_shown_to_somebody_who_has_measured_is_sound_and_nothing_in_it_is_idle()
            throws IOException {
        String page = Files.readString(Path.of("docs", "questions.md"));
        String section = page.substring(page.indexOf("## Somebody who has measured"));
        int from = section.indexOf("```toml") + "```toml".length();
        String toml = section.substring(from, section.indexOf("```", from));
        StringBuilder csv = new StringBuilder("Date,Tair,RH,Sun inside,Lamps,CO2\n");
        for (int h = 0; h < 60 * 24; h++) {
            csv.append(LocalDate.of(2026, 8, 14).atStartOfDay().plusHours(h));
            csv.append(h % 24 < 12 ? ",18,80,0," : ",23,70,120,");
            csv.append(h % 24 < 4 ? "100,700\n" : "0,700\n");
        }
        Files.writeString(folder.resolve("house.csv"), csv);
        Files.writeString(folder.resolve("stand.toml"), toml);
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class, ScenarioReader.read(folder.resolve("stand.toml")));
        assertThat(good.notes()).isEmpty();
        Scenario scenario = good.scenario();
        Planting.OfCrop stand = (Planting.OfCrop) scenario.trays().get(0).planting();
        assertEquals(2, stand.groundM2(), 1e-12); // 5 plants of 2.5 a m2, as the page says
    }
}
