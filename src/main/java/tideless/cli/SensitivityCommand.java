package tideless.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.Progress;
import tideless.report.SensitivityFiles;
import tideless.report.SensitivityTable;
import tideless.report.WriteResult;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.study.Sensitivity;
import tideless.study.threads.ThreadPool;

/** What to measure first. */
@Command(
        name = "sensitivity",
        header = "Say which unknown moves the next refill, the verdict, harvest and litres most.",
        description = {
            "",
            "Tries many rigs that yours might be, and says how much of the spread of each answer"
                    + " comes of what nobody knows beforehand: a stand's own thirst, the weather of"
                    + " its weeks, growth, air, light, mixing, valves, gaps, visits. So one knows"
                    + " what to measure with a ruler first.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless sensitivity scenarios/calm-bench.toml",
            "  tideless sensitivity scenarios/science-room-bench.toml --from 2026-04-01",
            "  tideless sensitivity scenarios/outgrown-trough.toml --points 512 -o moves",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the scenario"
                    + " or in what is asked."
        })
final class SensitivityCommand implements Callable<Integer> {
    private static final int LEAST_POINTS = 16;
    private static final int MOST_POINTS = 8192;

    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = "--from",
            paramLabel = "DATE",
            description = "the next refill is the first on this day or later (default: the first)")
    String from;

    @Option(
            names = "--points",
            paramLabel = "N",
            defaultValue = "128",
            showDefaultValue = Visibility.ALWAYS,
            description = {
                "of each sample, best a power of two: each is run once for every unknown and twice",
                "more; four times as many halve the error"
            })
    int points;

    @Mixin Seed seed;

    @Mixin Logged logged;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for the table as CSV (default: none is written)")
    Path folder;

    @Mixin Threads threads;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireWithin("--points", points, LEAST_POINTS, MOST_POINTS);
        arguments.requireFolder(folder);
        LocalDate asked = from == null ? null : arguments.date("--from", from);
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        Scenario rig = good.get().scenario();
        LocalDate first = asked == null ? rig.firstOpenDay() : asked;
        arguments.requireInRun("--from", first, rig);
        ThreadPool pool = threads.pool();
        try (Brake brake = new Brake()) {
            Sensitivity found;
            try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
                found =
                        Sensitivity.of(
                                rig,
                                first,
                                points,
                                seed.value,
                                new Watched(pool, progress, "running"));
            }
            brake.release();
            WriteResult written = new WriteResult(List.of(), "", false);
            if (folder != null) {
                written = SensitivityFiles.write(found, folder, Scenarios.inputs(good.get()));
            }
            return Written.told(
                    spec,
                    written,
                    folder,
                    () ->
                            SensitivityTable.print(
                                    spec.commandLine().getOut(), found, Terminal.width()));
        }
    }
}
