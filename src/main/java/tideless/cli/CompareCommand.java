package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.CompareFiles;
import tideless.report.CompareTable;
import tideless.report.Progress;
import tideless.report.WriteResult;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Problem;
import tideless.scenario.Reading;
import tideless.scenario.VariedKey;
import tideless.study.Axis;
import tideless.study.Compared;
import tideless.study.threads.ThreadPool;

/** Compares designs. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        header = "Compare designs: one scenario with some of its numbers changed, or several.",
        description = {
            "",
            "Runs the scenario with every value of one numeric key, or of two together, and says"
                    + " which designs do no harm and which of those yields most. A star stands for"
                    + " every tray. Values are a list, or a range with how many values it has. A"
                    + " tray made shallower than its overflow stands runs over at its rim.",
            "What is written: compare.csv, and lines (one key) or maps (two) as PNG and SVG.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless compare scenarios/science-room-bench.toml \\",
            "      --vary \"tray.basil.plants=4..10\"",
            "  tideless compare scenarios/science-room-bench.toml \\",
            "      --vary \"reservoir.shelf.length=20 cm, 40 cm, 60 cm\" --members 50",
            "  tideless compare scenarios/depth-and-valve.toml -o map \\",
            "      --vary \"tray.basil.depth=5.5 cm..15 cm/20\" \\",
            "      --vary \"tray.basil.valve.setting=1 cm..10.5 cm/20\"",
            "  tideless compare scenarios/lessons/lean-feed.toml \\",
            "      scenarios/lessons/rich-feed.toml",
            "",
            "Exit codes: 0 done, 1 a file could not be read or written, 2 a fault in the command"
                    + " line or a scenario."
        })
final class CompareCommand implements Callable<Integer> {
    /** Some hours of the bench on two cores. */
    private static final long MOST_SEASONS = 1_000_000;

    @Parameters(paramLabel = "SCENARIO", arity = "1..*", description = ".toml scenario files")
    List<Path> scenarios;

    @Option(
            names = "--vary",
            paramLabel = "KEY=VALUES",
            description = "a numeric key and its values, once or twice")
    List<String> vary = List.of();

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "1",
            showDefaultValue = Visibility.ALWAYS,
            description = {
                "how many rigs that yours might be each design is run as, the same for all;",
                "1 for the design as stated"
            })
    int members;

    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = Seed.Typed.class,
            defaultValue = "1",
            showDefaultValue = Visibility.ALWAYS,
            description = "seed of the members")
    long seed;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for the files (default: none are written)")
    Path folder;

    @Mixin Threads threads;

    @Mixin Logged logged;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireFolder(folder);
        arguments.requireMembers(members);
        List<VariedKey> keys = keys();
        PrintWriter err = spec.commandLine().getErr();
        List<Reading.Good> read = new ArrayList<>();
        for (Path scenario : scenarios) {
            Scenarios one = Scenarios.read(scenario, logged.beside(), spec);
            if (one.good().isEmpty()) {
                return one.exit();
            }
            read.add(one.good().get());
        }
        ChangedScenario changed = null;
        if (!keys.isEmpty()) {
            changed = ChangedScenario.of(scenarios.get(0), logged.beside());
            Reading first = read(changed, keys, 0);
            for (VariedKey key : keys) {
                Optional<Problem> misfit = misfit(first, key);
                if (misfit.isPresent()) {
                    err.println(misfit.get());
                    err.flush();
                    return Exit.FAULT;
                }
            }
        }
        return compare(keys, read, changed);
    }

    private List<VariedKey> keys() {
        if (vary.size() > 2) {
            throw refused("--vary: found " + vary.size() + " of them, allowed: one or two");
        }
        if (vary.isEmpty() == (scenarios.size() == 1)) {
            throw refused(
                    vary.isEmpty()
                            ? "found one scenario and no --vary, allowed: one scenario with --vary"
                                    + " \"KEY=VALUES\", or several scenarios"
                            : "found --vary with several scenarios, allowed: one scenario with"
                                    + " --vary");
        }
        List<VariedKey> keys = new ArrayList<>();
        long cells = 1;
        for (String text : vary) {
            try {
                keys.add(VariedKey.of(text));
            } catch (VariedKey.Refused e) {
                throw refused("--vary " + e.getMessage());
            }
            cells *= keys.get(keys.size() - 1).values().size();
        }
        if (keys.size() == 2 && keys.get(0).key().equals(keys.get(1).key())) {
            throw refused("--vary: found " + keys.get(0).key() + " twice, allowed: two keys");
        }
        if (cells > VariedKey.MOST_VALUES) {
            throw refused(
                    "--vary: found a grid of "
                            + cells
                            + " designs, allowed: at most "
                            + VariedKey.MOST_VALUES);
        }
        if (cells * members > MOST_SEASONS) {
            throw refused(
                    "--members: found "
                            + members
                            + " for each of "
                            + cells
                            + " designs, allowed: at most "
                            + MOST_SEASONS
                            + " seasons in all");
        }
        return keys;
    }

    private ParameterException refused(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    private static Reading read(ChangedScenario scenario, List<VariedKey> keys, int cell) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        int rest = cell;
        for (VariedKey key : keys) {
            int size = key.values().size();
            changes.add(
                    new ChangedScenario.Change(key.key(), key.values().get(rest % size).text()));
            rest /= size;
        }
        return scenario.read(changes);
    }

    /** Whether a key has no place in the scenario, whatever its value. */
    private static Optional<Problem> misfit(Reading first, VariedKey key) {
        return first instanceof Reading.Faulty faulty
                ? faulty.problems().stream()
                        .filter(p -> p.key().equals(key.key()))
                        .filter(ChangedScenario::isMisfit)
                        .findFirst()
                : Optional.empty();
    }

    /**
     * @param changed the scenario whose keys are varied; null where several stand side by side
     */
    private int compare(List<VariedKey> keys, List<Reading.Good> read, ChangedScenario changed) {
        List<Axis> axes = keys.isEmpty() ? List.of(files()) : axes(keys, read.get(0));
        List<Scenario> bases = new ArrayList<>();
        for (Reading.Good good : read) {
            bases.add(Logged.anew(good.scenario(), spec.commandLine().getErr()));
        }
        ThreadPool pool = threads.pool();
        PrintWriter err = spec.commandLine().getErr();
        try (Brake brake = new Brake()) {
            Compared compared;
            try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
                compared =
                        Compared.of(
                                axes,
                                bases,
                                !keys.isEmpty(),
                                i ->
                                        keys.isEmpty()
                                                ? new Compared.Plan(Optional.of(bases.get(i)), "")
                                                : plan(read(changed, keys, i), keys),
                                members,
                                seed,
                                new Watched(pool, progress, "running"));
            }
            brake.release();
            if (compared.whole()
                    && compared.cells().stream().allMatch(Compared.Cell::isUnbuildable)) {
                err.println(
                        "--vary: none of these designs can be built; the first: "
                                + compared.cells().get(0).why());
                err.flush();
                return Exit.FAULT;
            }
            return tell(compared, bases.get(0), read);
        }
    }

    private int tell(Compared compared, Scenario base, List<Reading.Good> read) {
        String title =
                scenarios.size() > 1
                        ? scenarios.size() + " scenarios"
                        : base.title()
                                + ", "
                                + base.days()
                                + " days"
                                + (members > 1
                                        ? "; each as " + members + " rigs, seed " + seed
                                        : "");
        WriteResult written = new WriteResult(List.of(), "", false);
        if (folder != null) {
            Set<Path> inputs = new LinkedHashSet<>();
            read.forEach(good -> good.files().forEach(file -> inputs.add(Path.of(file))));
            written = CompareFiles.write(compared, title, Tideless.shown(spec), folder, inputs);
        }
        PrintWriter out = spec.commandLine().getOut();
        return Written.told(
                spec,
                written,
                folder,
                () ->
                        CompareTable.print(
                                out, title, compared, Terminal.width(), Tideless.shown(spec)));
    }

    private static Compared.Plan plan(Reading reading, List<VariedKey> keys) {
        if (reading instanceof Reading.Good good) {
            return new Compared.Plan(Optional.of(good.scenario().anew()), "");
        }
        return new Compared.Plan(
                Optional.empty(),
                reading instanceof Reading.Faulty faulty
                        ? reason(faulty.problems().get(0), keys)
                        : reading.toString());
    }

    private static String reason(Problem problem, List<VariedKey> keys) {
        boolean varied = keys.stream().anyMatch(key -> key.fits(problem.key()));
        return problem.key()
                + ": found "
                + problem.found()
                + (problem.allowed().isEmpty() ? "" : ", allowed: " + problem.allowed())
                + (varied || problem.key().isEmpty()
                        ? ""
                        : "; it stays as the file has it, so vary it too, or strike it where it"
                                + " would follow by itself");
    }

    private Axis files() {
        return new Axis(
                "", "", scenarios.stream().map(Path::toString).toList(), List.of(), List.of());
    }

    private static List<Axis> axes(List<VariedKey> keys, Reading.Good good) {
        return keys.stream()
                .map(
                        key ->
                                new Axis(
                                        key.key(),
                                        key.unit(),
                                        key.values().stream().map(VariedKey.Value::text).toList(),
                                        key.values().stream().map(VariedKey.Value::number).toList(),
                                        key.present(good)))
                .toList();
    }
}
