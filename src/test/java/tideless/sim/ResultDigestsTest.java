package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the shipped scenarios give, to the last bit. */
class ResultDigestsTest {

    /** Pinned: a change that was meant is renewed and listed in docs/CHANGELOG.md with its size. */
    @Test
    void every_shipped_scenario_gives_the_bits_it_gave() throws IOException {
        List<String> kept = new ArrayList<>(Files.readAllLines(ResultDigests.KEPT));
        kept.removeIf(line -> line.startsWith("#") || line.startsWith("scenario,"));
        List<String> got = ResultDigests.all();
        List<String> moved = new ArrayList<>(got);
        moved.removeAll(kept);
        assertEquals(List.of(), moved, "moved or new; renewed by ResultDigests.main");
        assertEquals(kept, got);
    }
}
