package tideless.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import tideless.scenario.Beside;

/** Options of commands that run what was logged and corrected. */
final class Logged {
    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "a log of what was read and done, in place of the scenario's own")
    Path log;

    @Option(
            names = "--corrected",
            paramLabel = "FILE",
            description = "corrections that fit has written for this scenario")
    Path corrected;

    Beside beside() {
        return Beside.files(log, corrected);
    }
}
