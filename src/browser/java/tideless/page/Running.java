package tideless.page;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;

/**
 * A browser that runs with a profile of its own, which goes with it.
 *
 * @param profile its folder
 * @param process the browser
 */
record Running(Path profile, Process process) {
    /** Begins one; what it prints is kept in {@link #said()}. */
    static Running begin(Path profile, List<String> command) throws IOException {
        Process process =
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(said(profile).toFile())
                        .start();
        return new Running(profile, process);
    }

    /** A folder for the profile of one that is to begin. */
    static Path newProfile() throws IOException {
        return Files.createTempDirectory("tideless-browser");
    }

    /** Where what its pages save comes to lie. */
    Path saved() {
        return profile.resolve("saved");
    }

    /** What all its processes have used of the machine so far, ms. */
    double cpuMs() {
        return Stream.concat(Stream.of(process.toHandle()), process.descendants())
                .map(one -> one.info().totalCpuDuration().orElse(Duration.ZERO))
                .mapToDouble(Duration::toMillis)
                .sum();
    }

    /** The file of what it printed. */
    Path said() {
        return said(profile);
    }

    private static Path said(Path profile) {
        return profile.resolve("said.txt");
    }

    void end() throws IOException {
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
        process.onExit().join();
        try (Stream<Path> files = Files.walk(profile)) {
            files.sorted((a, b) -> b.compareTo(a)).map(Path::toFile).forEach(File::delete);
        }
    }
}
