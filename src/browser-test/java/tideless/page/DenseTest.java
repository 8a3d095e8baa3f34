package tideless.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DenseTest {
    // By hand, the first byte lowest: 1, 2, 3, 4 are 67305985. Its lowest 13 bits are 513 = 5 x 91
    // +
    // 58; of what is left, 8216 = 90 x 91 + 26, the lowest 13 bits are 24, so that 14 are taken,
    // and 0
    // stays. 16 and 0 are 16 and a 0. Digits first, then A to Z, a to z.
    @Test
    void thirteen_bits_are_two_signs_and_fourteen_where_they_are_few() {
        assertEquals("w5Q>0", Dense.text(new byte[] {1, 2, 3, 4}));
        assertEquals("G00", Dense.text(new byte[] {16, 0}));
        assertEquals(91, Dense.SIGNS.chars().distinct().count());
        assertTrue(Dense.SIGNS.chars().noneMatch(c -> "< \"\\".indexOf(c) >= 0));
    }

    @Test
    void what_was_written_is_read_whatever_its_length() {
        Random random = new Random(91);
        for (int length = 0; length < 200; length++) {
            byte[] bytes = new byte[length];
            random.nextBytes(bytes);
            assertArrayEquals(bytes, Dense.bytes(Dense.text(bytes)), "bytes: " + length);
        }
        for (int one = 0; one < 256; one++) {
            byte[] alike = new byte[13];
            Arrays.fill(alike, (byte) one);
            assertArrayEquals(alike, Dense.bytes(Dense.text(alike)), "bytes of " + one);
        }
    }

    @Test
    void another_sign_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Dense.bytes("0000<"));
    }
}
