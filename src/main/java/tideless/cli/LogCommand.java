package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.LogFiles;
import tideless.report.WriteResult;
import tideless.scenario.Beside;
import tideless.scenario.LogTerms;
import tideless.scenario.Reading;
import tideless.words.LogWords;

/** Logs of what a grower read and did. */
@Command(
        name = "log",
        header = "Make an empty log of what you read and do, or check one you kept.",
        description = {
            "",
            "A log is a table with a line for each thing you read (a level, an EC, a weight) or did"
                    + " (a refill, a flush, a valve moved). Named in the scenario under [log], or"
                    + " with --log, what was done enters the run as it was done; fit learns from what"
                    + " was read.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless log new scenarios/calm-bench.toml -o bench-log.csv",
            "  tideless log check scenarios/calm-bench.toml --log bench-log.csv"
        },
        subcommands = {LogCommand.New.class, LogCommand.Check.class})
final class LogCommand implements Runnable {
    @Spec CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "no word of what to do with a log; there are new and check");
    }

    /** Whether a scenario names no log. */
    static boolean namesNone(Reading.Good good) {
        return good.values().stream().noneMatch(value -> value.key().equals("log.file"));
    }

    /** Says that there is no log; the exit code. */
    static int refuseNone(Path scenario, PrintWriter err) {
        err.println(
                scenario
                        + ": log: found nothing, allowed: [log] file = \"bench-log.csv\", or --log"
                        + " FILE\n    log new makes one.");
        err.flush();
        return Exit.FAULT;
    }

    /** Makes an empty one. */
    @Command(
            name = "new",
            header = "Write an empty log with the rig's names, and a sheet to print.",
            description = {
                "",
                "The log names every vessel of the scenario and each kind of line; the sheet is to be"
                        + " filled in by hand beside the rig.",
                ""
            },
            footer = {
                "",
                "Example:",
                "  tideless log new scenarios/calm-bench.toml -o bench-log.csv",
                "",
                "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the"
                        + " scenario, or a file that is there already."
            })
    static final class New implements Callable<Integer> {
        @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
        Path scenario;

        @Option(
                names = {"-o", "--output"},
                paramLabel = "FILE",
                description =
                        "the log to write, ending in .csv; the sheet stands beside it as .html"
                                + " (default: the scenario's name and -log.csv)")
        Path file;

        @Spec CommandSpec spec;

        @Override
        public Integer call() {
            if (file != null && !file.toString().toLowerCase(Locale.ROOT).endsWith(".csv")) {
                throw new Arguments(spec)
                        .refused("-o", "\"" + file + "\"", "a file ending in .csv");
            }
            Scenarios read = Scenarios.read(scenario, spec);
            if (read.good().isEmpty()) {
                return read.exit();
            }
            Path to = file != null ? file : Path.of(RunCommand.baseName(scenario) + "-log.csv");
            List<Path> inputs = Scenarios.inputs(read.good().get());
            WriteResult written =
                    LogFiles.write(
                            read.good().get().scenario(),
                            LogTerms.all(),
                            Tideless.shown(spec),
                            to,
                            inputs);
            PrintWriter out = spec.commandLine().getOut();
            return Written.told(
                    spec,
                    written,
                    null,
                    () -> {
                        written.files().forEach(out::println);
                        out.flush();
                    });
        }
    }

    /** Checks one. */
    @Command(
            name = "check",
            header = "Say whether a log reads, what is odd in it, and what it holds.",
            description = {
                "",
                "A fault is told with its line. What is odd, as a level that no plants explain, is"
                        + " told and read all the same.",
                ""
            },
            footer = {
                "",
                "Examples:",
                "  tideless log check scenarios/logged-bench.toml",
                "  tideless log check scenarios/calm-bench.toml --log bench-log.csv",
                "",
                "Exit codes: 0 it reads, 1 a file could not be read, 2 a fault in scenario or log."
            })
    static final class Check implements Callable<Integer> {
        @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
        Path scenario;

        @Option(
                names = "--log",
                paramLabel = "FILE",
                description = "the log, in place of the scenario's own")
        Path log;

        @Spec CommandSpec spec;

        @Override
        public Integer call() {
            PrintWriter err = spec.commandLine().getErr();
            Scenarios read = Scenarios.read(scenario, Beside.asStated(log), spec);
            if (log == null && read.good().filter(LogCommand::namesNone).isPresent()) {
                return refuseNone(scenario, err);
            }
            read.good()
                    .ifPresent(
                            good -> {
                                PrintWriter out = spec.commandLine().getOut();
                                LogWords.held(good.scenario()).forEach(out::println);
                                LogWords.far(good.scenario()).forEach(out::println);
                                out.flush();
                            });
            return read.exit();
        }
    }
}
