package tideless.attack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Some hundred broken files and command lines on every build, a hundred thousand in the profile
 * "nightly" (system property {@code tideless.attacks}); fresh ones each time unless {@code
 * tideless.seed} is set, and the seed is told with what was found.
 */
class AttackTest {
    private static final int ON_EVERY_BUILD = 300;

    @Test
    void broken_files_and_calls_end_in_plain_words_and_touch_nothing() throws IOException {
        int count = Integer.getInteger("tideless.attacks", ON_EVERY_BUILD);
        long seed = Long.getLong("tideless.seed", System.nanoTime());
        Attack.Report report = Attack.run(seed, 0, count);
        assertEquals(List.of(), report.findings(), "seed " + seed);
        // Most of them must be broken, and some of them sound, or nothing is tried.
        assertTrue(report.exits()[0] > count / 50, report.toString());
        assertTrue(report.exits()[2] > count / 5, report.toString());
        assertTrue(report.ran() > 0, report.toString());
    }
}
