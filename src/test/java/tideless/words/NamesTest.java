package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NamesTest {
    @ParameterizedTest
    @CsvSource({
        "basil, tray basil",
        "bucket, bucket",
        "Bucket-2, Bucket-2",
        "tub_b, tub_b",
        "trough 3, trough 3",
        "tankard, tray tankard",
        "bathroom, tray bathroom",
        "1, tray 1"
    })
    void a_vessel_that_is_named_by_what_it_is_needs_no_other_word(String name, String told) {
        assertEquals(told, Names.tray(name));
    }

    @Test
    void several_are_told_by_one_word_or_by_their_own() {
        assertEquals("trays left and right", Names.trays(List.of("left", "right")));
        assertEquals("bucket-1 and bucket-2", Names.trays(List.of("bucket-1", "bucket-2")));
        assertEquals("trays bucket and left", Names.trays(List.of("bucket", "left")));
    }
}
