package tideless.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DenseTest {
    // By hand: 16909060 = 27 x 85^3 + 45 x 85^2 + 30 x 85 + 10: digits first, then A to Z, a to z.
    @Test
    void four_bytes_are_five_signs() {
        assertEquals("0RjUA", Dense.text(new byte[] {1, 2, 3, 4}));
        assertEquals(85, Dense.SIGNS.chars().distinct().count());
        assertTrue(Dense.SIGNS.chars().noneMatch(c -> "<>&\"'`\\".indexOf(c) >= 0));
    }

    @Test
    void what_was_written_is_read_whatever_its_length() {
        Random random = new Random(85);
        for (int length = 0; length < 200; length++) {
            byte[] bytes = new byte[length];
            random.nextBytes(bytes);
            assertArrayEquals(bytes, Dense.bytes(Dense.text(bytes)), "bytes: " + length);
        }
        byte[] most = {-1, -1, -1, -1, -1};
        assertArrayEquals(most, Dense.bytes(Dense.text(most)));
    }

    @Test
    void another_sign_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Dense.bytes("0000<"));
    }
}
