package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import tideless.rig.Scenario;
import tideless.scenario.Beside;
import tideless.words.LogWords;

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

    /** A scenario whose rig is to be another: its log is not lived again, and that is said. */
    static Scenario anew(Scenario scenario, PrintWriter err) {
        if (!scenario.log().isEmpty()) {
            err.println(LogWords.setAside(scenario));
            err.flush();
        }
        return scenario.anew();
    }

    Beside beside() {
        return Beside.files(log, corrected);
    }
}
