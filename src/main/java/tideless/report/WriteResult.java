package tideless.report;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/**
 * What came of writing a set of files.
 *
 * @param files what was written, in order; empty when it failed
 * @param problem why nothing was written, in plain words with the path; empty when all went well
 * @param refused whether the caller asked for what would do harm, rather than the disk failed
 */
public record WriteResult(List<Path> files, String problem, boolean refused) {
    public WriteResult {
        files = List.copyOf(files);
        Objects.requireNonNull(problem, "problem");
    }

    /** Whether the whole set is in place. */
    public boolean written() {
        return problem.isEmpty();
    }
}
