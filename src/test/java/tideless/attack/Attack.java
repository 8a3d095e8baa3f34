package tideless.attack;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.tomlj.Toml;
import tideless.cli.Tideless;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/**
 * Throws broken files and command lines at the program, in this process, many a second: whatever it
 * is given it ends soon, with 0, 1 or 2 and in plain words, touches no file it was given and leaves
 * no results half written. A case is known by a seed and its number alone.
 *
 * <p>{@code main SEED COUNT [FIRST]} tries and tells; {@code AttackTest} tries some on every build.
 */
public final class Attack {
    /**
     * A case takes milliseconds of a processor's time, and hangs where it takes this much; on the
     * clock it may take longer, for the machine may be busy with other work.
     */
    private static final long MOST_CPU_NS = 30_000_000_000L;

    private static final int MOST_MINUTES = 30;

    /** Steps of a run, over all its vessels, that are still worth the time here. */
    private static final double MOST_STEPS = 40_000;

    private static final Pattern ASKS = Pattern.compile("--help|--version|-[hV].*");
    private static final Pattern TRACE =
            Pattern.compile("Exception|Error\\b|\\tat |tideless\\.\\w+\\.");
    private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity|null)\\b");
    private static final Pattern GIVEN_NONE =
            Pattern.compile("NaN|nan|[Ii]nf|null|9{300}|[eE]\\+?\\d{3}");
    private static final Pattern UNSEEN =
            Pattern.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]");
    private static final int MOST_LETTERS = 100_000;

    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(VersionFlag.V202012)
                    .getSchema(Path.of("scenarios/scenario.schema.json").toUri());

    private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();
    private static final String OUT = "out";
    private static final String OLD = "tasks.csv";

    private final long seed;
    private final Corpus corpus;
    private final Path folder;
    private final int[] exits = new int[3];
    private int ran;
    private int opened;

    private Attack(long seed, Corpus corpus, Path folder) {
        this.seed = seed;
        this.corpus = corpus;
        this.folder = folder;
    }

    /**
     * What was tried and found.
     *
     * @param exits how often the program ended with 0, 1 and 2
     * @param ran scenarios run to their end
     * @param opened other commands given a sound scenario
     * @param findings what must not be
     */
    record Report(int[] exits, int ran, int opened, List<String> findings) {
        @Override
        public String toString() {
            return "%d sound, %d unreadable, %d faulty; %d run to the end, %d by other doors; %d findings"
                    .formatted(exits[0], exits[1], exits[2], ran, opened, findings.size());
        }
    }

    public static void main(String[] args) throws IOException {
        long seed = Long.parseLong(args[0]);
        int count = Integer.parseInt(args[1]);
        int first = args.length > 2 ? Integer.parseInt(args[2]) : 0;
        long began = System.nanoTime();
        Report report = run(seed, first, count);
        report.findings().forEach(System.out::println);
        double seconds = (System.nanoTime() - began) / 1e9;
        System.out.printf(
                Locale.ROOT,
                "seed %d, cases %d to %d: %s; %.0f s, %.0f a second%n",
                seed,
                first,
                first + count - 1,
                report,
                seconds,
                count / seconds);
        System.exit(report.findings().isEmpty() ? 0 : 1);
    }

    /** Tries cases of a seed, those of numbers from {@code first} on. */
    static Report run(long seed, int first, int count) throws IOException {
        Path folder = Files.createTempDirectory("attack");
        try {
            Attack attack = new Attack(seed, Corpus.gather(), folder);
            List<String> findings = new ArrayList<>();
            for (int i = first; i < first + count && findings.size() < 100; i++) {
                attack.within(i, findings);
            }
            return new Report(attack.exits, attack.ran, attack.opened, findings);
        } finally {
            empty(folder);
            Files.delete(folder);
        }
    }

    /** Tries one case on a thread of its own, which is left behind where it hangs. */
    private void within(int number, List<String> findings) {
        List<String> found = new ArrayList<>();
        Thread thread =
                new Thread(
                        () -> {
                            try {
                                attempt(number, found);
                            } catch (Throwable e) { // an OutOfMemoryError is a finding too
                                StringWriter trace = new StringWriter();
                                e.printStackTrace(new PrintWriter(trace));
                                found.add(trace.toString());
                            }
                        });
        thread.setDaemon(true);
        thread.start();
        if (!ends(thread)) {
            StringBuilder where = new StringBuilder("no end:");
            for (StackTraceElement frame : thread.getStackTrace()) {
                where.append("\n    ").append(frame);
            }
            findings.add("case " + number + ": " + where);
            return;
        }
        for (String one : found) {
            findings.add("case " + number + ": " + one);
        }
    }

    private static boolean ends(Thread thread) {
        try {
            for (int minute = 0; minute < MOST_MINUTES && thread.isAlive(); minute++) {
                thread.join(60_000);
                if (thread.isAlive() && CPU.getThreadCpuTime(thread.getId()) > MOST_CPU_NS) {
                    return false;
                }
            }
            return !thread.isAlive();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private void attempt(int number, List<String> found) throws IOException {
        Mutations mutations =
                new Mutations(new SplittableRandom(seed * 1_000_003L + number), corpus);
        empty(folder);
        int kind = mutations.below(40);
        if (kind == 0) {
            begin(mutations, found);
            return;
        }
        if (kind < 12) {
            Map<String, String> none = new LinkedHashMap<>();
            List<String> call =
                    new ArrayList<>(mutations.brokenCall(mutations.one(corpus.calls())));
            call.replaceAll(word -> word.startsWith("-o") ? "--ph" : word); // writes nowhere else
            if (mutations.below(8) == 0) {
                call.add("--output=" + folder.resolve(OUT));
            }
            say(call, none, found);
            return;
        }
        Map<String, String> files = new LinkedHashMap<>(mutations.one(corpus.benches()));
        List<String> names = files.keySet().stream().sorted().toList();
        String victim = mutations.one(names);
        files.put(victim, mutations.broken(files.get(victim), !victim.endsWith(".toml")));
        if (mutations.below(8) == 0) {
            files.put(Corpus.BENCH, mutations.markedUp(files.get(Corpus.BENCH)));
        }
        for (Map.Entry<String, String> file : files.entrySet()) {
            Files.write(folder.resolve(file.getKey()), bytes(file.getValue()));
        }
        String bench = folder.resolve(Corpus.BENCH).toString();
        String command = mutations.below(5) == 0 ? "show" : "check";
        int told = say(List.of(command, bench), files, found);
        if (told == 0) {
            heldBySchema(files.get(Corpus.BENCH), found);
        }
        if (told == 0 && isShort(Path.of(bench))) {
            boolean isLogged = files.keySet().stream().anyMatch(name -> name.endsWith("log.csv"));
            if (isLogged) {
                say(List.of("log", "check", bench), files, found);
                say(List.of("fit", bench, "--members", "1"), files, found);
            }
            int which = mutations.below(50);
            if (which >= 40) {
                open(mutations, bench, files, found);
            } else if (which == 0) {
                say(List.of("lean", bench), files, found);
            } else if (which < 3) {
                say(List.of("light", bench), files, found);
            } else if (which < 15) {
                // Into the folder of the inputs now and then: they must not be overwritten.
                Path to = which < 6 ? folder : folder.resolve(OUT);
                String plots = which < 14 ? "--no-plots" : "--only-plots";
                say(List.of("run", bench, plots, "-o", to.toString()), files, found);
                ran++;
            }
        }
    }

    /** A first scenario by a broken call, or asked for with broken answers from a pipe. */
    private void begin(Mutations mutations, List<String> found) throws IOException {
        List<String> call = new ArrayList<>(mutations.one(corpus.beginnings()));
        boolean asked = mutations.below(3) == 0;
        String answers = "\n".repeat(8);
        if (asked) {
            answers =
                    mutations.broken(
                            mutations.one(
                                    List.of(
                                            "6 lettuce\n2 of 60 x 35 x 8 cm\nvalve\n60 L hard tap\n24 W 14 h each\n"
                                                    + "2 March 2026\nmon wed fri\nnone\n",
                                            "Bok Choy\n1.2 m x 60 cm x 20 cm\nfloat valve\n"
                                                    + "20 gal\nwindow\nMar 2, 2026\n"
                                                    + "monday to friday\n"
                                                    + "10 days from Mar 21, 2026\n",
                                            "1 cherry tomato\n1 dwarf tomato\n5 gallon bucket\n"
                                                    + "hand\nsoft tap\noutdoors\n2026-03-02\nweekends\n"
                                                    + "21 Mar to 29 Mar and 3-5 April\n")),
                            false);
            call = new ArrayList<>(List.of("new"));
        } else {
            call = new ArrayList<>(mutations.brokenCall(call));
        }
        Path file = folder.resolve("new.toml");
        call.add(1, file.toString());
        Map<String, String> files = new LinkedHashMap<>();
        if (mutations.below(8) == 0) {
            files.put("new.toml", "# mine");
            Files.writeString(file, "# mine");
        }
        InputStream before = System.in;
        int exit;
        try {
            System.setIn(new ByteArrayInputStream(answers.getBytes(StandardCharsets.UTF_8)));
            exit = say(call, files, answers, found);
        } finally {
            System.setIn(before);
        }
        boolean help = call.stream().anyMatch(word -> ASKS.matcher(word).matches());
        if (!files.isEmpty() || help) {
            return;
        }
        if (Files.exists(file) != (exit == 0)) {
            found.add("exit " + exit + " and " + (exit == 0 ? "no " : "a ") + "file of " + call);
        } else if (exit == 0) {
            say(List.of("check", file.toString()), files, found);
            if (!(ScenarioReader.read(file) instanceof Reading.Good)) {
                found.add("no scenario of " + call + "\n" + answers);
            }
            heldBySchema(Files.readString(file), found);
        }
    }

    /** Another command on a sound scenario, half of the time with broken options. */
    private void open(
            Mutations mutations, String bench, Map<String, String> files, List<String> found)
            throws IOException {
        Corpus.Door door = mutations.one(corpus.doors());
        List<String> options = new ArrayList<>(door.options());
        options.add(0, ""); // a broken call keeps its first word
        if (mutations.below(2) == 0) {
            options = new ArrayList<>(mutations.brokenCall(options));
        }
        options.remove(0);
        options.removeIf(word -> word.startsWith("-o") || word.startsWith("--output"));
        List<String> call = new ArrayList<>(door.words());
        call.add(bench);
        call.addAll(options);
        Path to = folder.resolve(OUT);
        if (door.file() != null) {
            call.add(Math.max(1, call.indexOf(bench)), "-o=" + to.resolve(door.file()));
        }
        opened++;
        say(call, files, found);
    }

    /** An editor that goes by the schema underlines nothing that the program takes. */
    private static void heldBySchema(String typed, List<String> found) {
        // As it stands in its file: half a character of two is a question mark there.
        String scenario =
                new String(typed.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
        if (scenario.chars().anyMatch(c -> c > 127 && Character.isSpaceChar(c))) {
            return; // a blank to this program and to editors, and none to the validator
        }
        Set<ValidationMessage> faults =
                SCHEMA.validate(Toml.parse(scenario).toJson(), InputFormat.JSON);
        if (!faults.isEmpty()) {
            found.add("the schema refuses what is sound: " + faults + "\n" + scenario);
        }
    }

    /** Letters as UTF-8, but those of a byte alone now and then as that byte, which is no UTF-8. */
    private static byte[] bytes(String text) {
        return text.getBytes(
                text.length() % 97 == 0 ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    }

    private static boolean isShort(Path bench) {
        if (!(ScenarioReader.read(bench) instanceof Reading.Good good)) {
            return false;
        }
        Scenario scenario = good.scenario();
        double vessels = scenario.trays().size() + scenario.reservoirs().size();
        return scenario.days() * 86_400 / scenario.numerics().stepS() * vessels < MOST_STEPS;
    }

    private int say(List<String> args, Map<String, String> files, List<String> found)
            throws IOException {
        return say(args, files, "", found);
    }

    private int say(
            List<String> args, Map<String, String> files, String answers, List<String> found)
            throws IOException {
        Path out = folder.resolve(OUT);
        if (args.get(0).equals("run") || args.get(0).equals("mix")) {
            Files.createDirectories(out);
            Files.writeString(out.resolve(OLD), OLD);
        }
        StringWriter told = new StringWriter();
        StringWriter err = new StringWriter();
        int exit =
                Tideless.execute(
                        new PrintWriter(told), new PrintWriter(err), args.toArray(String[]::new));
        String what = judged(args, files, answers, exit, told.toString(), err.toString());
        if (!what.isEmpty()) {
            found.add(what + " of " + args + "\n" + cut(err.toString()) + files.get(Corpus.BENCH));
        }
        if (exit >= 0 && exit < exits.length) {
            exits[exit]++;
        }
        return exit;
    }

    /** What must not be, or "". */
    private String judged(
            List<String> args,
            Map<String, String> files,
            String answers,
            int exit,
            String out,
            String err)
            throws IOException {
        String given = args + " " + answers + String.join(" ", files.values());
        if (exit < 0 || exit > 2) {
            return "exit " + exit;
        }
        if (TRACE.matcher(err).find() && !TRACE.matcher(given).find()) {
            return "a trace";
        }
        if (exit != 0 && err.isBlank()) {
            return "no word about exit " + exit;
        }
        if (NO_NUMBER.matcher(out + err).find() && !GIVEN_NONE.matcher(given).find()) {
            return "no number";
        }
        if (UNSEEN.matcher((out + err).replace("\r\n", "\n")).find()) { // an end of a line
            return "a character that is not seen";
        }
        if (err.length() > MOST_LETTERS) {
            return "too many words: " + err.length();
        }
        for (Map.Entry<String, String> file : files.entrySet()) {
            byte[] now = Files.readAllBytes(folder.resolve(file.getKey()));
            if (!java.util.Arrays.equals(now, bytes(file.getValue()))) {
                return file.getKey() + " touched";
            }
        }
        return halfWritten(args, exit, out, !GIVEN_NONE.matcher(given).find());
    }

    private String halfWritten(List<String> args, int exit, String out, boolean numbers)
            throws IOException {
        Path to = folder.resolve(OUT);
        boolean writes = args.contains(to.toString()) || args.contains("--output=" + to);
        if (!Files.exists(to)) {
            return "";
        }
        List<String> there;
        try (Stream<Path> all = Files.list(to)) {
            there = all.map(path -> path.getFileName().toString()).toList();
        }
        boolean old = there.contains(OLD) && Files.readString(to.resolve(OLD)).equals(OLD);
        if (!args.get(0).equals("run")
                && !args.get(0).equals("mix")) { // a command that began with no folder
            return exit != 0 && !there.isEmpty()
                    ? "half written: " + there
                    : WrittenFiles.fault(to, numbers);
        }
        if (exit != 0 || !writes) {
            return there.size() == 1 && old ? "" : "half written: " + there;
        }
        if (args.get(0).equals("mix")) {
            // Help and version write nothing; "-hPa" is a help too, by its first letter.
            boolean help = args.stream().anyMatch(arg -> ASKS.matcher(arg).matches());
            return help || (there.size() == 3 && old) ? "" : "half written: " + there;
        }
        int kept = args.contains("--only-plots") ? 1 : 0;
        boolean whole =
                out.contains(there.size() - kept + " files in ")
                        && old == args.contains("--only-plots");
        return whole ? WrittenFiles.fault(to, numbers) : "half written: " + there;
    }

    private static String cut(String text) {
        return text.length() < 4000 ? text : text.substring(0, 4000) + "...\n";
    }

    private static void empty(Path folder) {
        try (Stream<Path> all = Files.list(folder)) {
            for (Path path : all.toList()) {
                if (Files.isDirectory(path)) {
                    empty(path);
                }
                Files.delete(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
