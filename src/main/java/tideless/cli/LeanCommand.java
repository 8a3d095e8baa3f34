package tideless.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.LeanTable;
import tideless.report.Progress;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.study.LeanFeed;

/** Looks for the feed that needs no flush. */
@Command(
        name = "lean",
        header = "Find the feed that keeps every tray in band to harvest without a flush.",
        description = {
            "",
            "Runs the scenario some twenty times with the feed made leaner and richer, and says"
                    + " which EC does it, or that none does and why.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless lean scenarios/science-room-bench.toml",
            "",
            "Exit codes: 0 done, 1 a file could not be read, 2 a fault in the scenario."
        })
final class LeanCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        read.good().ifPresent(this::look);
        return read.exit();
    }

    private void look(Reading.Good good) {
        Scenario rig = Logged.anew(good.scenario(), spec.commandLine().getErr());
        LeanFeed found;
        try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
            progress.show("running", 0, 0);
            found = LeanFeed.of(rig);
        }
        LeanTable.print(spec.commandLine().getOut(), found, Tideless.shown(spec));
    }
}
