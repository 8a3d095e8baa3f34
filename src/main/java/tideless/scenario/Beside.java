package tideless.scenario;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Files a scenario is read with that it does not name itself.
 *
 * @param log a log in place of the one it names, if any
 * @param corrected corrections that {@code fit} made for it, if any
 */
public record Beside(Optional<ScenarioFiles> log, Optional<ScenarioFiles> corrected) {
    /** None. */
    public static final Beside NOTHING = new Beside(Optional.empty(), Optional.empty());

    /**
     * Files on a disk.
     *
     * @param log null for none
     * @param corrected null for none
     */
    public static Beside files(Path log, Path corrected) {
        return new Beside(on(log), on(corrected));
    }

    private static Optional<ScenarioFiles> on(Path path) {
        return Optional.ofNullable(path).map(FilesOnDisk::new);
    }
}
