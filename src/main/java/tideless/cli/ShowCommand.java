package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.scenario.EffectiveValue;

/** Shows one scenario with every default filled in. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        header = "Show a scenario with every default filled in.",
        description = {"", "Values you left out are marked (default).", ""},
        footer = {"", "Example:", "  tideless show my-bench.toml | grep default"})
final class ShowCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        return Scenarios.with(scenario, spec, good -> print(good.values(), out));
    }

    private static void print(List<EffectiveValue> values, PrintWriter out) {
        int width = 0;
        for (EffectiveValue value : values) {
            width = Math.max(width, value.key().length());
        }
        for (EffectiveValue value : values) {
            out.println(
                    value.key()
                            + " ".repeat(width - value.key().length())
                            + "  "
                            + value.value()
                            + (value.isDefault() ? "  (default)" : ""));
        }
        out.flush();
    }
}
