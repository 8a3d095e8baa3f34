package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whoever does what the first run advised is no worse off for it, and is left in peace. */
public class ObeyingTest {
    /** Yield that may be lost, share: what a flush of good feed or a fuller tray may cost. */
    private static final double LOSS = 0.01;

    /**
     * What is lost beyond that, a miss of the advice: the stronger feed that pak choi asks for
     * leaves salt to the basil beside it, which is picked for three weeks more.
     */
    private static final Map<String, Double> LOST = Map.of("04-narrow-reservoir.toml", 0.011);

    private static final Path RIGS = ObeyingRigs.FOLDER;

    /** Wishes that are left after two rounds of obeying, each a miss of the advice. */
    private static final Map<String, List<String>> LEFT =
            Map.of(
                    // Ammonium and acid are told, and not poured in this test.
                    "16-strawberry-small.toml", List.of("PRECIPITATE gutter"),
                    // A hard tap: acid by the meter is told, and not poured in this test.
                    "hard-tap.toml", List.of("PH_OUT lettuce"),
                    // Likewise: rocket that is picked as it grows leaves alkali behind for three
                    // weeks after the day on which it was cut.
                    "17-strong-feed.toml", List.of("PH_OUT b", "PRECIPITATE b"));

    /** The shipped scenarios, and ten rigs that were stated before one of them was run. */
    public static List<Path> rigs() throws IOException {
        List<Path> all = new ArrayList<>(ShippedScenariosTest.scenarios());
        all.addAll(statedRigs());
        return all;
    }

    /** The ten. */
    public static List<Path> statedRigs() throws IOException {
        try (Stream<Path> files = Files.list(RIGS)) {
            return files.filter(p -> p.toString().endsWith(".toml")).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("rigs")
    void a_second_run_that_obeys_is_no_worse_and_a_third_asks_no_more(Path path) {
        Obeyed obeyed = Obeyed.of(path);
        double most = LOST.getOrDefault(path.getFileName().toString(), LOSS);
        assertTrue(obeyed.worstLoss() <= most, "lost " + obeyed.worstLoss());
        assertTrue(Obeyed.dryHours(obeyed.second()) <= Obeyed.dryHours(obeyed.first()));
        assertTrue(
                obeyed.second().advice().verdict().survives()
                        || !obeyed.first().advice().verdict().survives());
        assertEquals(
                LEFT.getOrDefault(path.getFileName().toString(), List.of()),
                Obeyed.wishes(obeyed.third()));
    }
}
