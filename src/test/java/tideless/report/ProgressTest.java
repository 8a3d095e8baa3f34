package tideless.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ProgressTest {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);

    @Test
    void nothing_is_written_into_a_pipe() {
        try (Progress progress = new Progress(out, false)) {
            progress.show("running", 1, 2);
        }
        assertEquals("", bytes.toString(StandardCharsets.UTF_8));
    }

    @Test
    void the_line_wipes_itself_away() {
        try (Progress progress = new Progress(out, true)) {
            progress.show("running", 1, 2);
            progress.show("running", 1, 2);
            progress.show("run", 1, 1);
        }
        assertEquals(
                "\rrunning 50 %\rrun 100 %   \r         \r",
                bytes.toString(StandardCharsets.UTF_8));
    }
}
