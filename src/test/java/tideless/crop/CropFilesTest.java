package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CropFilesTest {
    private static final Set<String> STANDINGS =
            Set.of("read", "from memory", "common practice", "derived", "assumed");

    static java.util.List<String> names() {
        return CropFiles.names();
    }

    @Test
    void the_index_names_eighteen_crops() {
        assertEquals(18, CropFiles.names().size());
    }

    @ParameterizedTest
    @MethodSource("names")
    void every_number_of_a_crop_names_its_source_and_standing(String name) {
        CropTraits traits = CropFiles.read(name);
        assertEquals(name, traits.name());
        assertFalse(traits.latinName().isBlank());
        assertTrue(traits.provenance().size() > 50, "numbers seen");
        for (CropTraits.Provenance number : traits.provenance()) {
            assertFalse(number.source().isBlank(), number.key());
            assertTrue(STANDINGS.contains(number.standing()), number.key());
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void every_number_has_a_spread_and_lies_within_it(String name) {
        for (CropTraits.Provenance number : CropFiles.read(name).provenance()) {
            assertFalse(number.low().isEmpty() || number.high().isEmpty(), number.key());
            double value = CropFiles.value(number.value());
            assertTrue(
                    CropFiles.value(number.low()) <= value
                            && value <= CropFiles.value(number.high()),
                    number.key());
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void the_stages_of_a_crop_follow_one_another(String name) {
        CropTraits traits = CropFiles.read(name);
        CropTraits.Stages stages = traits.stages();
        CropTraits.Growth growth = traits.growth();
        CropTraits.Coefficients kc = traits.coefficients();
        assertTrue(0 < stages.emergenceCd() && stages.emergenceCd() < stages.firstHarvestCd());
        assertTrue(stages.firstHarvestCd() <= stages.lastHarvestCd());
        if (stages.fruits()) {
            assertTrue(stages.emergenceCd() < stages.floweringCd());
            assertTrue(stages.floweringCd() < stages.fullLoadCd());
            assertTrue(stages.floweringCd() < stages.firstHarvestCd());
            assertTrue(stages.fruitShare() + stages.rootShare() < 1);
        }
        assertTrue(growth.baseC() < growth.optimumLowC());
        assertTrue(growth.optimumLowC() < growth.optimumHighC());
        assertTrue(growth.optimumHighC() < growth.ceilingC());
        assertTrue(0 <= kc.initialEndsFrac() && kc.initialEndsFrac() < kc.midBeginsFrac());
        assertTrue(kc.midBeginsFrac() < kc.midEndsFrac() && kc.midEndsFrac() <= 1);
    }
}
