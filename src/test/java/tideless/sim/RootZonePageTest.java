package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class RootZonePageTest {
    @Test
    void the_page_is_what_the_model_says() throws IOException {
        assertEquals(RootZonePage.text(RootZonePage.rows()), Files.readString(RootZonePage.PAGE));
    }
}
