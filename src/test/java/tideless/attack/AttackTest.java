package tideless.attack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Three hundred broken files and command lines on every build, always the same, so that a change is
 * judged by itself; in the profile "nightly" as many as {@code tideless.attacks} says, a hundred
 * thousand, and fresh ones unless {@code tideless.seed} is set. The seed is told with what was
 * found.
 */
class AttackTest {
    private static final int ON_EVERY_BUILD = 300;
    private static final long SEED_OF_EVERY_BUILD = 20261126;

    @Test
    void broken_files_and_calls_end_in_plain_words_and_touch_nothing() throws IOException {
        Integer nightly = Integer.getInteger("tideless.attacks");
        int count = nightly == null ? ON_EVERY_BUILD : nightly;
        long seed =
                Long.getLong(
                        "tideless.seed", nightly == null ? SEED_OF_EVERY_BUILD : System.nanoTime());
        Attack.Report report = Attack.run(seed, 0, count);
        assertEquals(List.of(), report.findings(), "seed " + seed);
        // Most of them must be broken, and some of them sound, or nothing is tried.
        assertTrue(report.exits()[0] > count / 50, report.toString());
        assertTrue(report.exits()[2] > count / 5, report.toString());
        assertTrue(report.ran() > 0, report.toString());
        assertTrue(report.opened() > 0, report.toString());
    }
}
