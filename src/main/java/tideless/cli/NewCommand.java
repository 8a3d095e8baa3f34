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
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.report.NewFile;
import tideless.report.ShownIn;
import tideless.scenario.Crops;
import tideless.scenario.Problem;
import tideless.scenario.Reading;
import tideless.scenario.Starter;
import tideless.scenario.StarterQuestion;
import tideless.solution.ElectricalConductivity.PpmScale;

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
            "  tideless new bucket.toml --crop \"1 dwarf-tomato\" --size \"5 gallon bucket\" \\",
            "      --filling hand --light outdoors --start \"May 1, 2027\" \\",
            "      --visits daily --usual",
            "",
            "Exit codes: 0 done, 1 the file could not be written, 2 an answer that does not do."
        })
final class NewCommand implements Callable<Integer> {
    /** A person finds an answer in fewer; whatever else is at the other end is not listening. */
    private static final int MOST_TRIES = 20;

    /** After so many the question is asked in other words. */
    private static final int PLAIN_TRIES = 2;

    @Parameters(paramLabel = "SCENARIO", description = "the .toml file to write")
    Path scenario;

    @Option(
            names = "--crop",
            paramLabel = "NAME",
            description =
                    "as \"tideless crops\" lists them, or with plants: \"6 lettuce\"; a tray of each:"
                            + " \"6 lettuce, 6 basil\"")
    String crop;

    @Option(
            names = "--plants",
            paramLabel = "N",
            description = "in a tray (default: as many as have room)")
    String plants;

    @Option(names = "--trays", paramLabel = "N", description = "how many such trays")
    String trays;

    @Option(
            names = "--size",
            paramLabel = "SIZE",
            description =
                    "inside of a tray, as \"60 x 35 x 8 cm\"; if round as \"12 x 14 in\" or"
                            + " \"5 gallon bucket\"")
    String size;

    @Option(names = "--filling", paramLabel = "HOW", description = "valve, hand or once")
    String filling;

    @Option(names = "--reservoir", paramLabel = "VOLUME", description = "as \"40 L\" or \"10 gal\"")
    String reservoir;

    @Option(
            names = "--water",
            paramLabel = "WATER",
            description =
                    "soft tap, hard tap, rain, or what a pen reads in it, as \"0.4 mS/cm\" (default:"
                            + " soft tap)")
    String water;

    @Option(
            names = "--feed",
            paramLabel = "FEED",
            description =
                    "a recipe, or bought (bottles, a powder), with its strength or without, as"
                            + " \"bought 1.6 mS/cm\" (default: tried, what suits)")
    String feed;

    @Option(
            names = "--light",
            paramLabel = "LIGHT",
            description =
                    "a lamp, as \"24 W 14 h\", of several trays \"24 W 14 h each\" or \"60 W 14 h over"
                            + " all\"; window; outdoors; unknown (default: as the crop needs)")
    String light;

    @Option(names = "--visits", paramLabel = "DAYS", description = "daily, or as \"mon wed fri\"")
    String visits;

    @Option(
            names = "--away",
            paramLabel = "DATES",
            description = "none, or as \"2026-03-21 to 2026-03-29\" or \"10 days from July 3\"")
    String away;

    @Option(
            names = "--start",
            paramLabel = "DATE",
            description = "the day the plants go into the tray, as \"1 May 2027\" (default: today)")
    String start;

    @Option(
            names = "--end",
            paramLabel = "DATE",
            description =
                    "the last day, as \"30 Sep 2027\" or \"10 weeks\" (default: until they are cut,"
                            + " or are picked for a while)")
    String end;

    @Option(names = "--usual", description = "ask nothing: what is usual where no option says it")
    boolean usual;

    @Spec CommandSpec spec;

    private final Map<StarterQuestion, String> answers = new EnumMap<>(StarterQuestion.class);
    private final LocalDate today = LocalDate.now(ZoneId.systemDefault());
    private ShownIn asked = ShownIn.METRIC;
    private boolean wasAsked;

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        if (!scenario.toString().toLowerCase(Locale.ROOT).endsWith(".toml")) {
            return refused(
                    err, scenario + ": is no name of a scenario, allowed: a file ending in .toml");
        }
        if (NewFile.exists(scenario)) {
            return refused(err, scenario + ": is there already, and nothing is written over it");
        }
        asked = Tideless.shown(spec);
        BufferedReader in =
                new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (StarterQuestion question : StarterQuestion.values()) {
            if (given(question) != null || question.isAsked(answers)) {
                Map<StarterQuestion, String> read = answer(question, in);
                if (read.isEmpty()) {
                    return Exit.FAULT;
                }
                answers.putAll(read);
            }
            if (question == StarterQuestion.TRAYS) {
                Starter.crowd(answers)
                        .ifPresent(crowd -> err.println("note: " + asked.told(crowd)));
                err.flush();
            }
        }
        sayLeftOver(in);
        Starter.Written written =
                new Starter.Written(asked.us() || Starter.isUs(answers), asked.scale());
        FirstRig rig = new FirstRig(scenario.toString(), written);
        FirstRig.Tried best = rig.tried(answers);
        if (!(best.reading() instanceof Reading.Good)) {
            return misfit(err, best.reading());
        }
        List<String> instead =
                best.isSound() ? List.of() : rig.instead(answers, best.care().feed());
        Optional<String> why = NewFile.write(scenario, best.text());
        if (why.isPresent()) {
            err.println(why.get());
            err.flush();
            return Exit.FILE;
        }
        PrintWriter out = spec.commandLine().getOut();
        Starter.remarks(answers, written).forEach(out::println);
        out.println(scenario + " written. Look at its lines with \"assumed\", then:");
        out.println("  " + called() + " run " + asTyped(scenario.toString()) + units());
        best.told().forEach(out::println);
        if (!instead.isEmpty()) {
            out.println("Tried in its place, one change each, and none of these warns:");
            instead.forEach(other -> out.println("  " + other));
        }
        out.flush();
        return Exit.DONE;
    }

    private static String called() {
        return System.getProperty("tideless.called", "tideless");
    }

    private static String asTyped(String word) {
        return word.matches("[\\w./:\\\\-]+") ? word : '"' + word + '"';
    }

    /** The options by which the same units are shown again. */
    private String units() {
        return (asked.us() || Starter.isUs(answers) ? " --units us" : "")
                + (asked.scale() == null
                        ? ""
                        : asked.scale() == PpmScale.PPM_500
                                ? " --ec-scale ppm500"
                                : " --ec-scale ppm700");
    }

    /** Answers that are each sound and do not go together. */
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
    private Map<StarterQuestion, String> answer(StarterQuestion question, BufferedReader in)
            throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        List<String> faults = new ArrayList<>();
        String given = given(question);
        if (given != null || usual) {
            Map<StarterQuestion, String> read =
                    read(question, given == null ? question.usual(asked.us()) : given, faults);
            faults.forEach(f -> err.println(question.option() + ": " + f));
            err.flush();
            return read;
        }
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            boolean anew = tries >= PLAIN_TRIES;
            err.print(
                    (anew
                                    ? question.otherwise(asked.us(), answers)
                                    : question.words(asked.us(), answers))
                            + " ["
                            + question.usual(asked.us())
                            + "] ");
            err.flush();
            wasAsked = true;
            String line = in.readLine();
            if (line == null) {
                err.println();
                err.println("the answers end here; --usual takes the rest as usual");
                sayUnderstood(err);
                return Map.of();
            }
            faults.clear();
            Map<StarterQuestion, String> read =
                    read(question, line.isBlank() ? question.usual(asked.us()) : line, faults);
            if (!read.isEmpty()) {
                return read;
            }
            err.println("  " + faults.get(0));
            question.meant(line, answers, today)
                    .ifPresent(
                            other ->
                                    err.println(
                                            "  That answers another question: \""
                                                    + other.words(asked.us(), answers)
                                                    + '"'));
        }
        err.println(
                "no answer in "
                        + MOST_TRIES
                        + " tries that serves; nothing was written, and --usual takes what is usual");
        sayUnderstood(err);
        return Map.of();
    }

    private Map<StarterQuestion, String> read(
            StarterQuestion question, String told, List<String> faults) {
        String answer = onScale(told);
        Map<StarterQuestion, String> read = question.read(answer, answers, today, faults);
        sayTaken(question, answer, read);
        String crops = read.getOrDefault(StarterQuestion.CROP, "");
        if (!crops.isEmpty()
                && !Stream.of(crops.split(", ")).allMatch(crop -> Crops.isNamedIn(answer, crop))) {
            PrintWriter err = spec.commandLine().getErr();
            err.println("  \"" + answer.strip() + "\" is called " + crops + " here");
            err.flush();
        }
        return read;
    }

    /** Bare ppm are of the scale that was told. */
    private String onScale(String told) {
        return asked.scale() == null
                ? told
                : told.replaceAll(
                        "(?i)(\\d\\s*)ppm\\b(?!\\s*-?\\s*[57]00)",
                        asked.scale() == PpmScale.PPM_500 ? "$1ppm-500" : "$1ppm-700");
    }

    /** Which days were chosen where an answer left them open. */
    private void sayTaken(
            StarterQuestion question, String answer, Map<StarterQuestion, String> read) {
        if (!read.isEmpty()) {
            PrintWriter err = spec.commandLine().getErr();
            question.taken(answer, String.join(" to ", new EnumMap<>(read).values()))
                    .ifPresent(taken -> err.println("  taken for " + taken));
            err.flush();
        }
    }

    /** An answer too many, as of a pipe whose answers are out of step with the questions. */
    private void sayLeftOver(BufferedReader in) throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        while (wasAsked && in.ready()) {
            String line = in.readLine();
            if (line != null && !line.isBlank()) {
                err.println(
                        "not used, for no question was left: \""
                                + line.strip()
                                + "\"; look whether each answer before it stands where it was meant");
            }
        }
        err.flush();
    }

    /** What was answered is not lost: it stands in a command that goes on from here. */
    private void sayUnderstood(PrintWriter err) {
        if (!answers.isEmpty()) {
            err.println("What was understood so far; this goes on from here:");
            StringBuilder command = new StringBuilder("  " + called() + " new ");
            command.append(asTyped(scenario.toString()));
            answers.forEach(
                    (question, answer) ->
                            command.append(' ')
                                    .append(question.option())
                                    .append(' ')
                                    .append(asTyped(answer)));
            err.println(command + units());
        }
        err.flush();
    }

    private String given(StarterQuestion question) {
        return switch (question) {
            case CROP -> crop;
            case PLANTS -> plants;
            case TRAYS -> trays;
            case SIZE -> size;
            case FILLING -> filling;
            case RESERVOIR -> reservoir;
            case WATER -> water;
            case FEED -> feed;
            case LIGHT -> light;
            case START -> start;
            case END -> end;
            case VISITS -> visits;
            case AWAY -> away;
        };
    }
}
