package tideless.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.CalendarFile;
import tideless.report.CalendarTable;
import tideless.report.Progress;
import tideless.report.WriteResult;
import tideless.scenario.Reading;
import tideless.study.Forecast;
import tideless.study.Forecasts;

/** The tasks of a run as a calendar. */
@Command(
        name = "calendar",
        header = "Put sowing, rounds, refills, flushes, picking and harvest into a calendar.",
        description = {
            "",
            "Prints the run as a diary and, with -o, writes it as an iCalendar file that phones and"
                    + " desk calendars import, with reminders. Importing a later run of the same"
                    + " scenario moves the entries.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless calendar scenarios/science-room-bench.toml",
            "  tideless calendar scenarios/science-room-bench.toml -o bench.ics",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the scenario."
        })
final class CalendarCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "the calendar to write, ending in .ics")
    Path file;

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "100",
            showDefaultValue = Visibility.ALWAYS,
            description = "how many rigs that yours might be say how sure each date is; 1 for none")
    int members;

    @Mixin Seed seed;

    @Mixin Threads threads;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireMembers(members);
        if (file != null && !file.toString().toLowerCase(Locale.ROOT).endsWith(".ics")) {
            throw arguments.refused("-o", "\"" + file + "\"", "a file ending in .ics");
        }
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        try (Brake brake = new Brake()) {
            return tell(good.get(), brake);
        } catch (InterruptedException e) {
            return Brake.sayNothingKept(spec);
        }
    }

    private int tell(Reading.Good good, Brake brake) throws InterruptedException {
        Forecast forecast;
        WriteResult written = new WriteResult(List.of(), "", false);
        try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
            forecast =
                    Forecasts.of(
                            good.scenario(),
                            seed.value,
                            members,
                            new Watched(threads.pool(), progress, "running"));
            brake.release();
            if (file != null) {
                List<Path> inputs = Scenarios.inputs(good);
                written = CalendarFile.write(forecast, file, inputs);
            }
        }
        return Written.told(spec, written, file, () -> print(forecast));
    }

    private void print(Forecast forecast) {
        CalendarTable.print(spec.commandLine().getOut(), forecast, Terminal.width());
    }
}
