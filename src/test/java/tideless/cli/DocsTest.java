package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every command that README and docs give can be run as it stands, and every link leads somewhere.
 */
class DocsTest {
    private static final Pattern COMMAND =
            Pattern.compile("(?:java -jar target/tideless\\.jar|\\btideless)((?: [^\\s`|]+)+)");
    private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
    private static final Pattern HEADING = Pattern.compile("^#+ (.*)$", Pattern.MULTILINE);

    /** Commands with a placeholder in capitals, or dots, are for the reader to fill in. */
    private static final Pattern PLACEHOLDER = Pattern.compile(".*(\\b[A-Z]{4,}\\b|\\.\\.\\.).*");

    /** A command that needs a file, named in a sentence without one. */
    private static final Pattern MENTION = Pattern.compile("(?!crops|mix|generate)[^.]*");

    private static final Set<String> NAMES =
            Set.of(
                    "run",
                    "check",
                    "show",
                    "light",
                    "lean",
                    "away",
                    "size",
                    "calendar",
                    "log",
                    "fit",
                    "compare",
                    "sensitivity",
                    "mix",
                    "crops",
                    "new",
                    "page",
                    "generate-completion");

    /** Stands in the docs for the reader's own scenario: here for one that "new" has written. */
    private static final String YOURS = "YOURS.toml";

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TempDir Path folder;

    private static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        for (String root : List.of("docs", "scenarios", "plots")) {
            try (Stream<Path> files = Files.walk(Path.of(root))) {
                files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(pages::add);
            }
        }
        return pages;
    }

    @Test
    void every_command_can_be_run() throws IOException {
        Set<String> commands = new LinkedHashSet<>();
        for (Path page : pages()) {
            Matcher command = COMMAND.matcher(Files.readString(page));
            while (command.find()) {
                String words = command.group(1).strip();
                String named = words.replaceAll("\\b" + YOURS, "");
                if (NAMES.contains(words.split(" ")[0])
                        && !MENTION.matcher(words).matches()
                        && !PLACEHOLDER.matcher(named).matches()) {
                    commands.add(words);
                }
            }
        }
        assertTrue(commands.size() >= 30, "commands seen: " + commands);
        assertTrue(commands.contains("run " + YOURS), "commands seen: " + commands);
        Path yours = folder.resolve(YOURS);
        run(List.of("new", yours.toString(), "--start", "2026-03-02", "--usual"));
        for (String command : commands) {
            run(runnable(command, yours, Files.createTempDirectory(folder, "command")));
        }
    }

    /** What it writes goes into a folder of its own, and what it would ask is taken as usual. */
    private static List<String> runnable(String command, Path yours, Path folder) {
        List<String> args = new ArrayList<>();
        Matcher word = WORD.matcher(command);
        while (word.find()) {
            args.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        boolean isNew = args.get(0).equals("new");
        args.replaceAll(
                arg ->
                        arg.equals(YOURS) || isNew && arg.endsWith(".toml")
                                ? (isNew ? folder.resolve(arg) : yours).toString()
                                : arg);
        int to = args.indexOf("-o");
        if (to >= 0) {
            args.set(to + 1, folder.resolve(args.get(to + 1)).toString());
        } else if (args.get(0).equals("run")) {
            args.addAll(List.of("-o", folder.toString()));
        }
        if (isNew && !args.contains("--usual")) {
            args.add("--usual");
        }
        if (args.get(0).equals("sensitivity") && !args.contains("--points")) {
            args.addAll(List.of("--points", "16")); // the words hold; 128 take a minute
        }
        return args;
    }

    private static void run(List<String> args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit =
                Tideless.execute(
                        new PrintWriter(out), new PrintWriter(err), args.toArray(String[]::new));
        assertEquals(0, exit, args + "\n" + err);
        assertTrue(out.toString().length() > 20, args + " prints nothing");
    }

    @Test
    void every_link_leads_to_a_file_and_a_heading_that_are_there() throws IOException {
        int seen = 0;
        List<String> dead = new ArrayList<>();
        for (Path page : pages()) {
            Matcher link = LINK.matcher(Files.readString(page));
            while (link.find()) {
                String to = link.group(1);
                if (!to.startsWith("http")) {
                    seen++;
                    if (!leads(page, to)) {
                        dead.add(page + ": " + to);
                    }
                }
            }
        }
        assertEquals(List.of(), dead);
        assertTrue(seen >= 30, "links seen: " + seen);
    }

    @Test
    void a_dead_link_is_seen() throws IOException {
        Path readme = Path.of("README.md");
        assertTrue(leads(readme, "docs/model.md#1-time"));
        assertTrue(!leads(readme, "docs/model.md#of-the-moon"));
        assertTrue(!leads(readme, "docs/of-the-moon.md"));
    }

    private static boolean leads(Path page, String to) throws IOException {
        int mark = to.indexOf('#');
        String file = mark < 0 ? to : to.substring(0, mark);
        Path target = file.isEmpty() ? page : page.resolveSibling(file).normalize();
        if (!Files.exists(target)) {
            return false;
        }
        return mark < 0 || anchors(target).contains(to.substring(mark + 1));
    }

    /**
     * As the pages are shown: lower case, spaces to hyphens, all but letters and digits dropped.
     */
    private static Set<String> anchors(Path page) throws IOException {
        Set<String> anchors = new LinkedHashSet<>();
        Matcher heading = HEADING.matcher(Files.readString(page));
        while (heading.find()) {
            anchors.add(
                    heading.group(1)
                            .toLowerCase(Locale.ROOT)
                            .replaceAll("[^a-z0-9 -]", "")
                            .replace(' ', '-'));
        }
        return anchors;
    }

    @Test
    void all_pictures_of_the_docs_lie_in_one_folder_and_each_is_shown() throws IOException {
        StringBuilder pages = new StringBuilder();
        for (Path page : pages()) {
            pages.append(Files.readString(page));
        }
        try (Stream<Path> files = Files.walk(Path.of("docs"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = file.getFileName().toString();
                if (!name.endsWith(".md") && !file.equals(Path.of("docs", "bench.html"))) {
                    assertEquals(Path.of("docs", "pictures"), file.getParent(), "" + file);
                    String stem = name.substring(0, name.lastIndexOf('.'));
                    assertTrue(
                            pages.indexOf("pictures/" + stem + ".") >= 0, file + " is not shown");
                }
            }
        }
    }

    @Test
    void decisions_are_numbered_without_a_gap_or_a_double() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("docs/decisions"))) {
            List<String> numbers =
                    files.map(file -> file.getFileName().toString().substring(0, 4))
                            .sorted()
                            .toList();
            List<String> counted = new ArrayList<>();
            for (int i = 1; i <= numbers.size(); i++) {
                counted.add(String.format(Locale.ROOT, "%04d", i));
            }
            assertEquals(counted, numbers);
        }
    }
}
