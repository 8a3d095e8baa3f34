package tideless.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
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
import tideless.report.AwayFiles;
import tideless.report.AwayTable;
import tideless.report.Progress;
import tideless.report.WriteResult;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.scenario.Reading;
import tideless.study.Away;
import tideless.study.Workers;

/** How long nobody need come. */
@Command(
        name = "away",
        header = "Say for each day how long nobody need come, and what filling up buys.",
        description = {
            "",
            "Tries many rigs that yours might be: from each day on nobody comes, and the days"
                    + " until the first harm are counted, as things stand and with reservoirs and"
                    + " hand-topped trays filled up at the visit before.",
            "The scenario's own absences are judged too, or those you state.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless away scenarios/science-room-bench.toml",
            "  tideless away scenarios/calm-bench.toml --from 2026-03-20 --every 1 -o away",
            "  tideless away scenarios/science-room-bench.toml \\",
            "      --absence 2026-04-03..2026-04-12",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the scenario"
                    + " or in a date."
        })
final class AwayCommand implements Callable<Integer> {
    private static final int MOST_EVERY = 366;

    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = "--from",
            paramLabel = "DATE",
            description = "first day to be tried (default: the run's first)")
    String from;

    @Option(
            names = "--every",
            paramLabel = "DAYS",
            defaultValue = "7",
            showDefaultValue = Visibility.ALWAYS,
            description = "days from one day tried to the next")
    int every;

    @Option(
            names = "--absence",
            paramLabel = "FROM..TO",
            description =
                    "an absence to judge, first and last day away; may be given several times")
    List<String> absences = new ArrayList<>();

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "40",
            showDefaultValue = Visibility.ALWAYS,
            description = "how many rigs that yours might be are tried; 1 for yours as stated")
    int members;

    @Mixin Seed seed;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for the table as CSV and the curve as PNG and SVG")
    Path folder;

    @Mixin Threads threads;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireMembers(members);
        arguments.requireWithin("--every", every, 1, MOST_EVERY);
        arguments.requireFolder(folder);
        LocalDate asked = from == null ? null : arguments.date("--from", from);
        List<Visits.Absence> stated = new ArrayList<>();
        for (String absence : absences) {
            stated.add(absence(arguments, absence));
        }
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        Scenario rig = good.get().scenario();
        LocalDate first = asked == null ? rig.firstOpenDay() : asked;
        arguments.requireInRun("--from", first, rig);
        for (Visits.Absence absence : stated) {
            arguments.requireInRun("--absence", absence.from(), rig);
        }
        Away.Question question =
                new Away.Question(first, every, stated.isEmpty() ? begunInRun(rig) : stated);
        try (Brake brake = new Brake()) {
            Away away;
            try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
                Workers workers = new Watched(threads.pool(), progress, "running");
                away = Away.of(rig, question, members, seed.value, workers);
            }
            brake.release();
            if (away.members() == 0) {
                print(away);
                return Exit.DONE;
            }
            WriteResult written =
                    folder == null
                            ? new WriteResult(List.of(), "", false)
                            : AwayFiles.write(away, folder, Scenarios.inputs(good.get()));
            return Written.told(spec, written, folder, () -> print(away));
        }
    }

    private void print(Away away) {
        AwayTable.print(spec.commandLine().getOut(), away, Terminal.width());
    }

    private static List<Visits.Absence> begunInRun(Scenario rig) {
        LocalDate last = rig.lastDay();
        return rig.visits().absences().stream()
                .filter(a -> !a.from().isBefore(rig.firstOpenDay()) && !a.from().isAfter(last))
                .toList();
    }

    private static Visits.Absence absence(Arguments arguments, String text) {
        int dots = text.indexOf("..");
        if (dots < 0) {
            throw arguments.refused(
                    "--absence", "\"" + text + "\"", "two days, as 2026-04-03..2026-04-12");
        }
        LocalDate first = arguments.date("--absence", text.substring(0, dots));
        LocalDate last = arguments.date("--absence", text.substring(dots + 2));
        if (last.isBefore(first)) {
            throw arguments.refused(
                    "--absence", "\"" + text + "\"", "a first day that is not after the last");
        }
        return new Visits.Absence(first, last);
    }
}
