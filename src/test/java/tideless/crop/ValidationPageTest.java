package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.scenario.Crops;

class ValidationPageTest {
    @Test
    void the_page_in_the_docs_is_the_one_the_command_writes() throws IOException {
        assertEquals(
                Validation.page(Emergence.rows(), MeasuredTomato.daily()),
                Files.readString(Path.of("docs/validation.md")),
                "run mvn -q -B test-compile exec:java -P validation");
    }

    @Test
    void the_library_says_of_each_crop_what_the_page_says() throws IOException {
        assertEquals(
                JudgedCrops.csv(Emergence.rows()),
                Files.readString(Validation.JUDGED),
                "run mvn -q -B test-compile exec:java -P validation");
        assertEquals(3, Crops.judged("mint").trials());
        assertTrue(Crops.judged("lettuce").trials() >= 3);
    }

    @Test
    void each_crop_is_held_beside_three_trials() {
        for (String crop : CropFiles.names()) {
            assertTrue(
                    JudgedCrops.inAll(crop, Emergence.rows()) >= JudgedCrops.ENOUGH,
                    crop + ": " + JudgedCrops.inAll(crop, Emergence.rows()));
        }
    }

    // Mean uptake from 1 March to 15 May as worked out apart from this code: 3.40, 3.75, 4.19, 3.77
    // L/m2/d, to the printed digits; and the light's order: compartments with more lamp get more.
    @Test
    void the_measured_series_is_read_whole() {
        List<MeasuredTomato.Series> all = MeasuredTomato.daily();
        double[] means = {3.40, 3.75, 4.19, 3.77};
        for (int i = 0; i < means.length; i++) {
            assertEquals(76, all.get(i).dates().size());
            assertEquals(means[i], MeasuredTomato.mean(all.get(i).measured()), 0.005);
            assertTrue(all.get(i).r2() >= 0 && all.get(i).r2() <= 1);
        }
    }

    // Pinned so that somebody looks when it moves.
    @Test
    void the_bias_of_the_measured_tomato_is_pinned() {
        MeasuredTomato.Series all = MeasuredTomato.daily().get(4);
        assertEquals(0.060, all.bias(), 0.01);
    }
}
