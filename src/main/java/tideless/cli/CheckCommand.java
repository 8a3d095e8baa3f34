package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.scenario.Reading;
import tideless.scenario.Scenario;

/** Checks one scenario without running it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        header = "Check a scenario without running it.",
        description = {
            "",
            "Every fault is told with its line, what was found and what is allowed.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless check my-bench.toml",
            "",
            "Exit codes: 0 sound, 1 the file could not be read, 2 a fault in it."
        })
final class CheckCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Scenarios read = Scenarios.read(scenario, spec.commandLine().getErr());
        Optional<Reading.Good> good = read.good();
        if (good.isPresent()) {
            Scenario sound = good.get().scenario();
            out.println(
                    scenario
                            + ": sound: "
                            + sound.title()
                            + ", "
                            + counted(sound.reservoirs().size(), "reservoir")
                            + ", "
                            + counted(sound.trays().size(), "tray")
                            + ", "
                            + counted(sound.days(), "day"));
            out.flush();
        }
        return read.exit();
    }

    private static String counted(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
