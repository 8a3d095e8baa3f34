package tideless.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.teavm.extension.spi.resources.DefaultResourcesPolicy;

/**
 * Tells the compiler for the browser which resources to pack: the crop files, and the direction
 * numbers of the sequence that draws the rigs a grower's might be.
 */
public final class CropResources extends DefaultResourcesPolicy {
    private static final String FOLDER = "tideless/crop/";
    private static final String DIRECTION_NUMBERS =
            "assets/org/apache/commons/math3/random/new-joe-kuo-6.1000";

    @Override
    public String[] supplyResources(Collection<? extends String> asked) {
        List<String> names = new ArrayList<>(List.of(FOLDER + "index.txt", DIRECTION_NUMBERS));
        for (String line : text(FOLDER + "index.txt").split("\n", -1)) {
            String name = line.strip();
            if (!name.isEmpty() && !name.startsWith("#")) {
                names.add(FOLDER + (name.endsWith(".toml") ? name : name + ".toml"));
            }
        }
        return names.toArray(String[]::new);
    }

    private String text(String resource) {
        try (InputStream in = environment().classLoader().getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("no resource " + resource);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
