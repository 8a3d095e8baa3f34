package tideless.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SplittableRandom;
import java.util.StringJoiner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.teavm.classlib.java.util.TSplittableRandom;
import org.teavm.classlib.java.util.TStringJoiner;

/** The stand-ins for what a browser's library lacks give what the platform's own give. */
class EmulationTest {
    @ParameterizedTest
    @ValueSource(longs = {0, 1, -1, 20261126, Long.MIN_VALUE, Long.MAX_VALUE})
    void the_same_numbers_are_drawn(long seed) {
        assertArrayEquals(
                new SplittableRandom(seed).longs(100).toArray(),
                new TSplittableRandom(seed).longs(100).toArray());
        assertArrayEquals(
                new SplittableRandom(seed).doubles(100).toArray(),
                new TSplittableRandom(seed).doubles(100).toArray());
        SplittableRandom platform = new SplittableRandom(seed);
        TSplittableRandom own = new TSplittableRandom(seed);
        assertEquals(platform.nextDouble(), own.nextDouble());
        assertEquals(platform.nextLong(), own.nextLong());
    }

    @Test
    void the_same_texts_are_joined() {
        for (List<String> parts : List.of(List.<String>of(), List.of(""), List.of("a", "", "b"))) {
            StringJoiner platform = new StringJoiner(", ", "[", "]");
            TStringJoiner own = new TStringJoiner(", ", "[", "]");
            parts.forEach(platform::add);
            parts.forEach(own::add);
            assertEquals(platform.toString(), own.toString());
        }
        assertEquals("", new TStringJoiner("-").toString());
        assertEquals("a-b", new TStringJoiner("-").add("a").add("b").toString());
    }
}
