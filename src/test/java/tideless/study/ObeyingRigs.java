package tideless.study;

import java.nio.file.Path;

/** Where the rigs lie whose advice is obeyed. */
public final class ObeyingRigs {
    static final Path FOLDER = Path.of("src", "test", "resources", "tideless", "study", "obeying");

    /** Those of still solution. */
    static final Path STILL = FOLDER.resolve("still");

    private ObeyingRigs() {}

    /** One of them, as "18-chilli-weekends". */
    public static Path named(String name) {
        return FOLDER.resolve(name + ".toml");
    }

    /** One of those of still solution, as "tomato-bucket". */
    static Path still(String name) {
        return STILL.resolve(name + ".toml");
    }
}
