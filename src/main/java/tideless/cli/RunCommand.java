package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.ForecastTable;
import tideless.report.Origins;
import tideless.report.Progress;
import tideless.report.ResultFiles;
import tideless.report.ShownIn;
import tideless.report.WriteResult;
import tideless.scenario.DayOneMix;
import tideless.scenario.EffectiveValue;
import tideless.scenario.Note;
import tideless.scenario.Reading;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.Workers;

/** Runs one scenario. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        header = "Run a scenario: print what to do when, and write files and plots.",
        description = {
            "",
            "Prints a short table (reservoirs first, then trays) and writes into a folder:",
            "report.html (a page to read and print), hourly CSV for each tray and reservoir,",
            "tasks.csv, warnings.csv, result.json, plots as PNG and SVG, and the rig drawn to",
            "scale on three days.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless run scenarios/science-room-bench.toml",
            "  tideless run my-bench.toml -o forecast",
            "  tideless run my-bench.toml --no-plots | less",
            "  tideless run my-bucket.toml --units us --ec-scale ppm500",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the scenario."
        })
final class RunCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for the files (default: out/ and the scenario's name)")
    Path folder;

    @ArgGroup Plots plots;

    /** At most one of the two. */
    static final class Plots {
        @Option(names = "--no-plots", description = "write no plots")
        boolean none;

        @Option(names = "--only-plots", description = "write the plots and nothing else")
        boolean only;
    }

    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = Seed.Typed.class,
            defaultValue = "1",
            showDefaultValue = Visibility.ALWAYS,
            description = "seed, printed with the result")
    long seed;

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "100",
            showDefaultValue = Visibility.ALWAYS,
            description =
                    "how many rigs that yours might be are run to say how sure each date is, 1 to"
                            + " 10000; 1 for none")
    int members;

    @Option(names = "--all", description = "print all reasons, cautions and dates")
    boolean all;

    @Option(names = "--timings", description = "say how long each part took, on standard error")
    boolean timings;

    @Mixin Threads threads;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireFolder(folder);
        arguments.requireMembers(members);
        PrintWriter err = spec.commandLine().getErr();
        Stopwatch watch = new Stopwatch();
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        watch.lap("read");
        Path to = folder != null ? folder : Path.of("out", baseName(scenario));
        try (Brake brake = new Brake()) {
            int exit = run(good.get(), to, brake, watch);
            if (timings && exit == Exit.DONE) {
                err.println(watch);
                err.flush();
            }
            return exit;
        } catch (InterruptedException e) {
            return Brake.sayNothingKept(spec);
        }
    }

    private int run(Reading.Good good, Path to, Brake brake, Stopwatch watch)
            throws InterruptedException {
        ShownIn shown = Tideless.shown(spec);
        Forecast forecast;
        WriteResult written;
        try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
            Workers workers = new Watched(threads.pool(), progress, "running");
            forecast = Forecasts.of(good.scenario(), seed, members, workers);
            brake.release();
            watch.lap("simulate and advise");
            progress.show("writing", 0, 0);
            written = ResultFiles.write(forecast, to, wanted(), origins(good, forecast), shown);
            watch.lap("draw and write");
        }
        return Written.told(
                spec,
                written,
                to,
                () ->
                        ForecastTable.print(
                                spec.commandLine().getOut(),
                                forecast,
                                Terminal.colour(),
                                Terminal.width(),
                                all ? ForecastTable.Depth.ALL : ForecastTable.Depth.BRIEF,
                                shown));
    }

    private static Origins origins(Reading.Good good, Forecast forecast) {
        List<Map.Entry<String, String>> assumed = new ArrayList<>();
        for (EffectiveValue value : good.values()) {
            if (value.isDefault()) {
                assumed.add(Map.entry(value.key(), value.value()));
            }
        }
        return new Origins(
                assumed,
                good.notes().stream().map(RunCommand::withoutPath).toList(),
                DayOneMix.of(good, forecast.litresOnDayOne()),
                Scenarios.inputs(good));
    }

    private static String withoutPath(Note note) {
        return note.key().isEmpty() ? note.text() : note.key() + ": " + note.text();
    }

    private ResultFiles.Wanted wanted() {
        if (plots == null) {
            return ResultFiles.Wanted.ALL;
        }
        return plots.only ? ResultFiles.Wanted.PICTURES : ResultFiles.Wanted.TEXTS;
    }

    /** A file's name without its ending. */
    static String baseName(Path scenario) {
        Path name = scenario.getFileName();
        String text = name == null ? "scenario" : name.toString();
        return text.endsWith(".toml") ? text.substring(0, text.length() - 5) : text;
    }
}
