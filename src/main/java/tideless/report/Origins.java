package tideless.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import tideless.solution.Mix;

/**
 * What a forecast was made from, beyond the scenario itself.
 *
 * @param assumed keys that were left out, and what stands for them, in words
 * @param notes what the reader had to say
 * @param mix what to weigh and pour on day one; empty where it cannot be told
 * @param files that were read, which no result may take the place of
 */
public record Origins(
        List<Map.Entry<String, String>> assumed,
        List<String> notes,
        Optional<Mix> mix,
        List<Path> files) {
    /** Nothing is known of them. */
    public static final Origins UNKNOWN =
            new Origins(List.of(), List.of(), Optional.empty(), List.of());

    public Origins {
        assumed = List.copyOf(assumed);
        notes = List.copyOf(notes);
        Objects.requireNonNull(mix, "mix");
        files = List.copyOf(files);
    }
}
