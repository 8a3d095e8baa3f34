package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
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
import tideless.report.FitFiles;
import tideless.report.FitTable;
import tideless.report.Progress;
import tideless.report.WriteResult;
import tideless.rig.Scenario;
import tideless.scenario.Beside;
import tideless.scenario.Reading;
import tideless.study.Fit;
import tideless.study.threads.ThreadPool;

/** Learns from a log. */
@Command(
        name = "fit",
        header = "Learn from your log what your plants and rig do otherwise, and date anew.",
        description = {
            "",
            "Finds what is most likely: thirst, growth and uptake of each crop, gaps, feed, meter,"
                    + " valves, litres to a centimetre, a leak. Says what was learned, what the log"
                    + " cannot tell apart, what no noise explains, which reading to take next, and"
                    + " the new dates with their bands.",
            "Writes with -o: corrected.toml, which run, away, size, compare, calendar and others take"
                    + " as --corrected, or the scenario names as [log] corrected = \"corrected.toml\";"
                    + " fit.csv with each reading beside its forecasts; pictures.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless fit scenarios/logged-bench.toml",
            "  tideless fit scenarios/logged-bench.toml -o learned",
            "  tideless run scenarios/logged-bench.toml --corrected learned/corrected.toml",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in scenario or log,"
                    + " or no reading to learn from."
        })
final class FitCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "the log, in place of the scenario's own")
    Path log;

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "128",
            showDefaultValue = Visibility.ALWAYS,
            description = "how many rigs that yours might be make each band; 1 for none")
    int members;

    @Mixin Seed seed;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for corrected.toml, fit.csv and pictures")
    Path folder;

    @Mixin Threads threads;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireMembers(members);
        arguments.requireFolder(folder);
        PrintWriter err = spec.commandLine().getErr();
        Scenarios read = Scenarios.read(scenario, Beside.asStated(log), spec);
        if (read.good().isEmpty()) {
            return read.exit();
        }
        Reading.Good good = read.good().get();
        if (log == null && LogCommand.namesNone(good)) {
            return LogCommand.refuseNone(scenario, err);
        }
        try (Brake brake = new Brake()) {
            return learn(good, brake);
        } catch (InterruptedException e) {
            return Brake.sayNothingKept(spec);
        }
    }

    private int learn(Reading.Good good, Brake brake) throws InterruptedException {
        PrintWriter err = spec.commandLine().getErr();
        Scenario rig = good.scenario();
        ThreadPool pool = threads.pool();
        Optional<Fit> fit;
        WriteResult written = new WriteResult(List.of(), "", false);
        try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
            fit = Fit.of(rig, members, seed.value, new Watched(pool, progress, "running"));
            brake.release();
            if (fit.isPresent() && folder != null) {
                progress.show("writing", 0, 0);
                written =
                        FitFiles.write(
                                fit.get(),
                                fit.get().runs(pool),
                                Tideless.shown(spec),
                                folder,
                                Scenarios.inputs(good));
            }
        }
        if (fit.isEmpty()) {
            err.println(
                    scenario
                            + ": log: found no reading to learn from, allowed: levels, EC, litres of"
                            + " a refill, fresh weights\n    Most is learned from the level of the"
                            + " reservoir, three times a week. Litres poured in tell nothing by"
                            + " themselves: where they filled it to the mark, write refill.");
            err.flush();
            return Exit.FAULT;
        }
        PrintWriter out = spec.commandLine().getOut();
        return Written.told(
                spec,
                written,
                folder,
                () -> FitTable.print(out, fit.get(), Terminal.width(), Tideless.shown(spec)));
    }
}
