package tideless.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A library whose every crop is the one invented for these tests. */
record TestCrops(List<String> names) implements CropLibrary {
    static final TestCrops LIBRARY =
            new TestCrops(List.of("lettuce", "basil", "pak-choi", "dwarf-tomato", "tomato"));

    @Override
    public String text(String name) {
        return crop();
    }

    static String crop() {
        try (InputStream in =
                TestCrops.class.getResourceAsStream("/tideless/scenario/test-crop.toml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
