package tideless.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.NewFile;
import tideless.scenario.Problem;
import tideless.scenario.Reading;
import tideless.scenario.Starter;
import tideless.scenario.StarterQuestion;

/** Asks a few questions and writes a first scenario. */
@Command(
        name = "new",
        mixinStandardHelpOptions = true,
        header = "Ask at most eight questions and write a first scenario.",
        description = {
            "",
            "Each question may be answered beforehand by its option; Enter takes what"
                    + " stands in brackets. What is not asked is put in as what usually grows,"
                    + " with a comment. Answers may also come from a pipe, one a line. A file that"
                    + " is there is never written over.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  tideless new my-bench.toml",
            "  tideless new my-bench.toml --crop basil --plants 8 --trays 2 --usual",
            "  tideless new bucket.toml --crop dwarf-tomato --plants 1 --size \"12 x 14 in\" \\",
            "      --filling hand --visits daily --usual"
        })
final class NewCommand implements Callable<Integer> {
    /** A person finds an answer in fewer; whatever else is at the other end is not listening. */
    private static final int MOST_TRIES = 20;

    @Parameters(paramLabel = "SCENARIO", description = "the .toml file to write")
    Path scenario;

    @Option(names = "--crop", paramLabel = "NAME", description = "as \"tideless crops\" lists them")
    String crop;

    @Option(names = "--plants", paramLabel = "N", description = "in a tray")
    String plants;

    @Option(names = "--trays", paramLabel = "N", description = "how many such trays")
    String trays;

    @Option(
            names = "--size",
            paramLabel = "SIZE",
            description = "inside of a tray, as \"60 x 35 x 8 cm\"; if round as \"12 x 14 in\"")
    String size;

    @Option(names = "--filling", paramLabel = "HOW", description = "valve, hand or once")
    String filling;

    @Option(names = "--reservoir", paramLabel = "VOLUME", description = "as \"40 L\" or \"10 gal\"")
    String reservoir;

    @Option(names = "--visits", paramLabel = "DAYS", description = "daily, or as \"mon wed fri\"")
    String visits;

    @Option(
            names = "--away",
            paramLabel = "DATES",
            description = "none, or as \"2026-03-21 to 2026-03-29\"")
    String away;

    @Option(
            names = "--start",
            paramLabel = "DATE",
            description = "the day the plants go into the tray (default: today)")
    String start;

    @Option(names = "--usual", description = "ask nothing: what is usual where no option says it")
    boolean usual;

    @Spec CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        if (NewFile.exists(scenario)) {
            return refused(err, scenario + ": is there already, and nothing is written over it");
        }
        LocalDate day =
                start == null
                        ? LocalDate.now(ZoneId.systemDefault())
                        : new Arguments(spec).date("--start", start);
        Map<StarterQuestion, String> answers = new EnumMap<>(StarterQuestion.class);
        BufferedReader in =
                new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (StarterQuestion question : StarterQuestion.values()) {
            if (question.isAsked(answers)) {
                Optional<String> answer = answer(question, in);
                if (answer.isEmpty()) {
                    return Exit.FAULT;
                }
                answers.put(question, answer.get());
            }
        }
        FirstRig rig = new FirstRig(scenario.toString(), day);
        FirstRig.Tried best = rig.tried(answers);
        if (!(best.reading() instanceof Reading.Good)) {
            return misfit(err, best.reading());
        }
        List<String> instead = best.isSound() ? List.of() : rig.instead(answers);
        Optional<String> why = NewFile.write(scenario, best.text());
        if (why.isPresent()) {
            err.println(why.get());
            err.flush();
            return Exit.FILE;
        }
        PrintWriter out = spec.commandLine().getOut();
        out.println(scenario + " written. Look at its lines with \"assumed\", then:");
        String file = scenario.toString();
        String asTyped = file.contains(" ") ? '"' + file + '"' : file;
        out.println(
                "  "
                        + System.getProperty("tideless.called", "tideless")
                        + " run "
                        + asTyped
                        + (Starter.isInInches(answers) ? " --units us" : ""));
        best.told().forEach(out::println);
        if (!instead.isEmpty()) {
            out.println("Tried in its place, one change each, and none of these warns:");
            instead.forEach(other -> out.println("  " + other));
        }
        out.flush();
        return Exit.DONE;
    }

    /** Answers that are each sound and do not go together, as an absence beyond the run. */
    private static int misfit(PrintWriter err, Reading reading) {
        if (reading instanceof Reading.Faulty faulty) {
            for (Problem problem : faulty.problems()) {
                err.println(problem);
            }
        }
        return refused(err, "these answers make no rig; nothing was written");
    }

    private static int refused(PrintWriter err, String why) {
        err.println(why);
        err.flush();
        return Exit.FAULT;
    }

    /** By option, or asked for until it is sound or there is nobody to ask. */
    private Optional<String> answer(StarterQuestion question, BufferedReader in)
            throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        List<String> faults = new ArrayList<>();
        String given = given(question);
        if (given != null || usual) {
            Optional<String> read = question.read(given == null ? question.usual() : given, faults);
            faults.forEach(f -> err.println(question.option() + ": " + f));
            err.flush();
            return read;
        }
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            err.print(question.words() + " [" + question.usual() + "] ");
            err.flush();
            String line = in.readLine();
            if (line == null) {
                err.println();
                err.println("the answers end here; --usual takes the rest as usual");
                err.flush();
                return Optional.empty();
            }
            faults.clear();
            Optional<String> read = question.read(line.isBlank() ? question.usual() : line, faults);
            if (read.isPresent()) {
                return read;
            }
            err.println("  " + faults.get(0));
        }
        err.println(
                "no answer in "
                        + MOST_TRIES
                        + " tries that serves; nothing was written, and --usual takes what is usual");
        err.flush();
        return Optional.empty();
    }

    private String given(StarterQuestion question) {
        return switch (question) {
            case CROP -> crop;
            case PLANTS -> plants;
            case TRAYS -> trays;
            case SIZE -> size;
            case FILLING -> filling;
            case RESERVOIR -> reservoir;
            case VISITS -> visits;
            case AWAY -> away;
        };
    }
}
