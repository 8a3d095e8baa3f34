package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

class ScenarioReaderProperties {
    private static final List<String> SEEDS =
            List.of("science-room-bench", "sealed-lettuce-tank", "hand-topped-bucket");
    private static Path folder;

    @BeforeContainer
    static void makeFolder() throws IOException {
        folder = Files.createTempDirectory("tideless");
    }

    @AfterContainer
    static void removeFolder() throws IOException {
        Files.deleteIfExists(folder.resolve("a.toml"));
        Files.deleteIfExists(folder);
    }

    /** One change: what, where (0-1) and with which text. */
    record Change(int what, double where, String text) {}

    @Provide
    Arbitrary<List<Change>> changes() {
        Arbitrary<String> values =
                Arbitraries.of(
                        "nan",
                        "inf",
                        "-1",
                        "0",
                        "1e400",
                        "99999999999999999999",
                        "\"\"",
                        "\"-1 cm\"",
                        "\"0 cm\"",
                        "\"1e30 m\"",
                        "[]",
                        "[[1]]",
                        "{}",
                        "{ a = 1 }",
                        "[{}]",
                        "true",
                        "2026-02-30",
                        "2026-01-01",
                        "0001-01-01",
                        "9999-12-31",
                        "25:00:00",
                        "\"24:00\"",
                        "\"\\u0000\"",
                        "\"100 %\"",
                        "\"5 gal\"",
                        "\"3 \u03bcS/cm\"",
                        "'''x'''",
                        "\"../..\"",
                        "\"shelf\"",
                        "\"sealed\"",
                        "\"never\"",
                        "\"weather\"",
                        "\"cylinder\"",
                        "\"daily\"");
        Arbitrary<String> pieces =
                Arbitraries.oneOf(
                        Arbitraries.of(
                                "\"", "'", "[", "]", "{", "}", "=", ".", "#", "\n", ",", "\\",
                                "\u0000"),
                        Arbitraries.of(
                                "[tray]", "[[tray]]", "[a.b]", "tray.x.y = 1", "[reservoir.\"\"]"),
                        Arbitraries.strings().ofMaxLength(4));
        return Combinators.combine(
                        Arbitraries.integers().between(0, 5),
                        Arbitraries.doubles().between(0, 1),
                        Arbitraries.oneOf(values, pieces))
                .as(Change::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(4);
    }

    @Property(tries = 1500)
    void no_change_to_a_good_scenario_makes_an_exception_escape(
            @ForAll("changes") List<Change> all, @ForAll @IntRange(min = 0, max = 2) int seed)
            throws IOException {
        String text = Files.readString(Path.of("scenarios", SEEDS.get(seed) + ".toml"));
        for (Change change : all) {
            text = changed(text, change);
        }
        neverThrows(text.getBytes(StandardCharsets.UTF_8));
    }

    @Property(tries = 300)
    void no_bytes_make_an_exception_escape(@ForAll byte[] bytes) throws IOException {
        neverThrows(bytes);
    }

    static void neverThrows(byte[] bytes) throws IOException {
        Path file = folder.resolve("a.toml");
        Files.write(file, bytes);
        Reading reading = ScenarioReader.read(file, TestCrops.LIBRARY);
        assertNotNull(reading);
        if (reading instanceof Reading.Faulty faulty) {
            for (Problem problem : faulty.problems()) {
                assertFalse(problem.toString().chars().anyMatch(c -> c != '\n' && c < ' '));
            }
        }
    }

    private static String changed(String text, Change change) {
        int at = (int) (change.where() * (text.length() - 1));
        List<String> lines = text.lines().toList();
        int line = (int) (change.where() * (lines.size() - 1));
        if (text.isEmpty()) {
            return change.text();
        }
        return switch (change.what()) {
            case 0 -> text.substring(0, at) + change.text() + text.substring(at);
            case 1 -> text.substring(0, at) + text.substring(Math.min(text.length(), at + 5));
            case 2 -> replaced(lines, line, "");
            case 3 -> replaced(lines, line, lines.get(line) + "\n" + lines.get(line));
            default ->
                    // The likeliest to get past the grammar: another value for a key.
                    replaced(
                            lines,
                            line,
                            lines.get(line)
                                    .replaceFirst(
                                            "=.*",
                                            java.util.regex.Matcher.quoteReplacement(
                                                    "= " + change.text())));
        };
    }

    private static String replaced(List<String> lines, int at, String by) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            text.append(i == at ? by : lines.get(i)).append('\n');
        }
        return text.toString();
    }
}
