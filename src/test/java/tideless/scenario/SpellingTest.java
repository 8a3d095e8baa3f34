package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {
    private static final List<String> NAMES =
            List.of(
                    "leaves",
                    "leaf_area",
                    "leaf_dry_matter",
                    "plants_per_m2",
                    "harvest_weight",
                    "nursery_age",
                    "sweet-pepper",
                    "pak-choi",
                    "a",
                    "b",
                    "light_use",
                    "light_use_fall");

    @ParameterizedTest
    @CsvSource({
        "leafs, leaves",
        "Leaf, leaves",
        "leafarea, leaf_area",
        "leaf-area, leaf_area",
        "leaf_areas, leaf_area",
        "PakChoi, pak-choi",
        "weight, harvest_weight",
        "dry_matter, leaf_dry_matter",
        "pepper, sweet-pepper",
        "ligth_use, light_use",
        "plants_per_m, plants_per_m2",
        "tomato, ''",
        "per_m2, plants_per_m2",
        "use, light_use",
        "lefarea_x, ''",
        "hrvst_wght, harvest_weight",
        "B, b"
    })
    void what_was_meant(String written, String meant) {
        assertEquals(meant, Spelling.nearest(written, NAMES));
    }

    // Of two that end alike none is guessed.
    @ParameterizedTest
    @CsvSource({"age, nursery_age", "area, leaf_area"})
    void a_name_that_ends_one_other_is_that(String written, String meant) {
        assertEquals(meant, Spelling.nearest(written, NAMES));
        assertEquals(
                "", Spelling.nearest(written, List.of("one_thing_" + written, "other_" + written)));
    }
}
