package tideless.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.BenchPage;
import tideless.report.WriteResult;
import tideless.scenario.Beside;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;

/** A scenario as a page to play with. */
@Command(
        name = "page",
        header = "Make a page for a browser in which the rig can be moved and the season played.",
        description = {
            "",
            "Writes one file that holds the engine, the scenario and the weather and crop files it"
                    + " names. It opens from the disk in any browser of 2024 or later, needs no"
                    + " network, and sends nothing anywhere: sliders for the rig, curves, tasks and"
                    + " warnings as run prints them, lessons for a class. A log and corrections that"
                    + " the scenario names under [log] go along.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless page scenarios/science-room-bench.toml -o bench.html",
            "  tideless page my-bench.toml --corrected learned/corrected.toml -o bench.html",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the scenario."
        })
final class PageCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true,
            description = "the page to write, ending in .html")
    Path file;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".html")) {
            Arguments arguments = new Arguments(spec);
            throw arguments.refused("-o", "\"" + file + "\"", "a file ending in .html");
        }
        Beside beside = logged.beside();
        Scenarios read = Scenarios.read(scenario, beside, spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        List<Path> inputs = Scenarios.inputs(good.get());
        String name = String.valueOf(scenario.getFileName());
        Map<String, BenchPage.Laid> laid = new TreeMap<>();
        beside.texts()
                .forEach(one -> laid.put(one.kind(), new BenchPage.Laid(one.name(), one.text())));
        WriteResult written =
                BenchPage.write(file, name, FilesInMemory.of(scenario).texts(), laid, inputs);
        return Written.told(spec, written, file, () -> {});
    }
}
