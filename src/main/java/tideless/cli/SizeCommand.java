package tideless.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import tideless.advice.Cure;
import tideless.report.LeanTable;
import tideless.report.Progress;
import tideless.report.SizeTable;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.scenario.Spelling;
import tideless.study.Forecasts;
import tideless.study.LeanFeed;
import tideless.study.Lightings;
import tideless.study.Size;
import tideless.study.ValveHeight;
import tideless.study.Workers;

/** How much of one thing is enough. */
@Command(
        name = "size",
        header =
                "Find the smallest reservoir, most plants, rarest visits, valve height, lamp hours.",
        description = {
            "",
            "Tries one thing larger and smaller on many rigs that yours might be, until nothing is"
                    + " harmed to the end of the run in as many of them as you ask for. Without"
                    + " --what: every change that would be enough, the smallest first.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless size scenarios/science-room-bench.toml",
            "  tideless size scenarios/calm-bench.toml --what reservoir --visits-every 7",
            "  tideless size scenarios/science-room-bench.toml --what plants --of basil",
            "  tideless size scenarios/low-held-trays.toml --what valve",
            "  tideless size my-bench.toml --corrected learned/corrected.toml",
            "",
            "Exit codes: 0 done, 1 a file could not be read, 2 a fault in the scenario or in what"
                    + " is asked."
        })
final class SizeCommand implements Callable<Integer> {
    private static final int MOST_DAYS = 60;

    /** What can be looked for. */
    enum What {
        RESERVOIR,
        PLANTS,
        VISITS,
        VALVE,
        LAMP_HOURS,
        FEED;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        static List<String> names() {
            return Arrays.stream(values()).map(What::toString).toList();
        }
    }

    /** By the one name each has. */
    static final class WhatName implements ITypeConverter<What> {
        @Override
        public What convert(String text) {
            for (What what : What.values()) {
                if (what.toString().equals(text)) {
                    return what;
                }
            }
            String meant = Spelling.nearest(text, What.names());
            throw new TypeConversionException(
                    "found \""
                            + text
                            + "\", allowed: "
                            + String.join(", ", What.names())
                            + (meant.isEmpty() ? "" : "; did you mean \"" + meant + "\"?"));
        }
    }

    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Option(
            names = "--what",
            paramLabel = "WHAT",
            converter = WhatName.class,
            description = "${COMPLETION-CANDIDATES} (default: each that can be changed)")
    What what;

    @Option(
            names = "--of",
            paramLabel = "NAME",
            description = "the reservoir or tray meant (default: each in turn)")
    String of;

    @Option(
            names = "--visits-every",
            paramLabel = "DAYS",
            description =
                    "somebody comes every so many days and fills up (default: the scenario's visits)")
    Integer visitsEvery;

    @Option(
            names = "--chance",
            paramLabel = "P",
            defaultValue = "0.9",
            showDefaultValue = Visibility.ALWAYS,
            description = "share of the rigs to be unharmed, above 0 and at most 1")
    double chance;

    @Option(
            names = "--members",
            paramLabel = "N",
            defaultValue = "40",
            showDefaultValue = Visibility.ALWAYS,
            description = "how many rigs that yours might be are tried; 1 for yours as stated")
    int members;

    @Mixin Seed seed;

    @Mixin Logged logged;

    @Mixin Threads threads;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        Arguments arguments = new Arguments(spec);
        arguments.requireMembers(members);
        if (!(chance > 0 && chance <= 1)) {
            throw arguments.refused(
                    "--chance", Double.toString(chance), "above 0, at most 1, as 0.9");
        }
        if (visitsEvery != null) {
            arguments.requireWithin("--visits-every", visitsEvery, 1, MOST_DAYS);
        }
        Scenarios read = Scenarios.read(scenario, logged.beside(), spec);
        Optional<Reading.Good> good = read.good();
        if (good.isEmpty()) {
            return read.exit();
        }
        look(Logged.anew(good.get().scenario(), spec.commandLine().getErr()), arguments);
        return Exit.DONE;
    }

    private void look(Scenario rig, Arguments arguments) {
        OptionalInt every = visitsEvery == null ? OptionalInt.empty() : OptionalInt.of(visitsEvery);
        Size.Goal goal = new Size.Goal(every, chance, members, seed.value);
        List<String> meant = meant(rig, arguments);
        try (Brake brake = new Brake()) {
            Runnable print;
            try (Progress progress = new Progress(System.err, Progress.atTerminal())) {
                Workers workers = new Watched(threads.pool(), progress, "trying");
                print = found(rig, goal, meant, workers);
            }
            brake.release();
            print.run();
        }
    }

    /** Does the work; what it returns prints the answer. */
    private Runnable found(Scenario rig, Size.Goal goal, List<String> meant, Workers workers) {
        SizeTable table = new SizeTable(spec.commandLine().getOut(), Terminal.width());
        if (what == null) {
            Size.Found changes = Size.changes(rig, goal, workers);
            Optional<Cure> first = first(rig, workers);
            return () -> table.printChanges(changes, goal, rig, first);
        }
        switch (what) {
            case FEED -> {
                LeanFeed lean = LeanFeed.of(rig);
                return () ->
                        LeanTable.print(spec.commandLine().getOut(), lean, Tideless.shown(spec));
            }
            case LAMP_HOURS -> {
                var lighting = Lightings.of(rig);
                return () -> table.printLamps(lighting);
            }
            case VALVE -> {
                return valves(rig, meant, workers, table);
            }
            default -> {
                List<Size.Search> searches = new ArrayList<>();
                for (String name : meant) {
                    searches.add(() -> size(rig, name, goal, workers));
                }
                Size.Found sizes = Size.each(searches);
                return () -> table.print(sizes, goal, rig);
            }
        }
    }

    /** What a run of the rig as stated tells to change first; it may cost nothing. */
    private Optional<Cure> first(Scenario rig, Workers workers) {
        try {
            return Forecasts.of(rig, seed.value, workers).advice().verdict().first().stream()
                    .flatMap(warning -> warning.cures().stream())
                    .findFirst();
        } catch (InterruptedException e) {
            return Optional.empty(); // what was found before stands by itself
        }
    }

    private static Runnable valves(
            Scenario rig, List<String> meant, Workers workers, SizeTable table) {
        try {
            List<ValveHeight> valves =
                    workers.each(meant.size(), i -> ValveHeight.of(rig, meant.get(i)));
            return () -> table.printValves(valves, rig);
        } catch (InterruptedException e) {
            return table::sayBrokenOff; // a run or two each: there is nothing to keep
        }
    }

    private Size size(Scenario rig, String name, Size.Goal goal, Workers workers)
            throws InterruptedException {
        return switch (what) {
            case RESERVOIR -> Size.ofReservoir(rig, name, goal, workers);
            case PLANTS -> Size.ofPlants(rig, name, goal, workers);
            default -> Size.ofVisits(rig, goal, workers);
        };
    }

    /** Names of what is meant; one empty name for what has none. */
    private List<String> meant(Scenario rig, Arguments arguments) {
        if (what == What.RESERVOIR) {
            return chosen(
                    rig.reservoirs().stream().map(Reservoir::name).toList(),
                    "a reservoir",
                    arguments);
        }
        if (what == What.PLANTS) {
            return chosen(
                    trays(rig, t -> t.planting() instanceof Planting.OfCrop c && c.plants() > 0),
                    "a tray with a crop of a known kind",
                    arguments);
        }
        if (what == What.VALVE) {
            return chosen(
                    trays(rig, t -> t.filling() instanceof Filling.ByValve),
                    "a tray with a float valve",
                    arguments);
        }
        if (of != null) {
            throw arguments.refused(
                    "--of", "\"" + of + "\"", "only with --what reservoir, plants or valve");
        }
        return List.of("");
    }

    private static List<String> trays(Scenario rig, Predicate<Tray> fits) {
        return rig.trays().stream().filter(fits).map(Tray::name).toList();
    }

    private List<String> chosen(List<String> names, String kind, Arguments arguments) {
        if (names.isEmpty()) {
            throw arguments.refused("--what", what.toString(), kind + " in the scenario: none");
        }
        if (of == null) {
            return names;
        }
        if (!names.contains(of)) {
            throw arguments.refused("--of", "\"" + of + "\"", String.join(", ", names));
        }
        return List.of(of);
    }
}
