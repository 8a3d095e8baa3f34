package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.scenario.EffectiveValue;
import tideless.scenario.Reading;
import tideless.words.DoubtWords;
import tideless.words.Names;

/** Shows one scenario with every default filled in. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        header = "Show a scenario with every default filled in.",
        description = {
            "",
            "Values you left out are marked (default). Below them stands how far the",
            "forecast of each crop's thirst may lie off.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless show my-bench.toml | grep default",
            "",
            "Exit codes: 0 done, 1 a file could not be read, 2 a fault in the scenario."
        })
final class ShowCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        return Scenarios.with(scenario, spec, good -> print(good, out));
    }

    private static void print(Reading.Good good, PrintWriter out) {
        List<EffectiveValue> values = good.values();
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
        good.scenario().trays().forEach(tray -> printDoubt(good.scenario(), tray, out));
        out.flush();
    }

    private static void printDoubt(Scenario scenario, Tray tray, PrintWriter out) {
        Set<String> told = new HashSet<>();
        for (int i = 0; i < tray.plantings(); i++) {
            Planting planting = tray.planted(i).planting();
            if (told.add(planting.cropName())) {
                printDoubt(scenario, tray, planting, out);
            }
        }
    }

    private static void printDoubt(
            Scenario scenario, Tray tray, Planting planting, PrintWriter out) {
        if (planting instanceof Planting.OfCrop crop) {
            boolean isLittleKnown = scenario.climate().isDark() || scenario.climate().isOpen();
            out.println();
            out.println(
                    "doubt of the thirst of tray %s (%s), standard deviation of the logarithm:"
                            .formatted(Names.clean(tray.name()), Names.clean(crop.cropName())));
            DoubtWords.of(crop.traits(), isLittleKnown).forEach(line -> out.println("  " + line));
        }
    }
}
