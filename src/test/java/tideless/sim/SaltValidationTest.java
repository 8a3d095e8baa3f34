package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Keeps the page of predicted beside published the one that the program makes. */
class SaltValidationTest {
    @Test
    void the_page_in_the_docs_is_the_one_that_runs_make() throws IOException {
        String made = SaltValidation.page();
        Path fresh = Path.of("target/validation-salts.md");
        Files.createDirectories(fresh.getParent());
        Files.writeString(fresh, made);
        Path kept = Path.of("docs/validation-salts.md");
        assertEquals(
                made,
                Files.exists(kept) ? Files.readString(kept) : "",
                "copy " + fresh + " to " + kept);
    }
}
