package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.LightTable;
import tideless.study.Lightings;

/** Shows the light of every tray against what its crop needs. */
@Command(
        name = "light",
        header = "Show the light of every tray against what its crop needs.",
        description = {
            "",
            "PPFD and hours of the lamp, daily light from lamp and sun by stage, the warmth that"
                    + " comes with it. A reading that the lamp cannot give, or hours that its clock"
                    + " does not keep, are faults of the scenario.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless light scenarios/science-room-bench.toml",
            "",
            "Exit codes: 0 done, 1 a file could not be read, 2 a fault in the scenario."
        })
final class LightCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        return Scenarios.with(
                scenario, spec, good -> LightTable.print(out, Lightings.of(good.scenario())));
    }
}
