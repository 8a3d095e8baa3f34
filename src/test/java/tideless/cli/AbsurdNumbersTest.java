package tideless.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers that nobody means: every command says so in one sentence, before it does anything. */
class AbsurdNumbersTest {
    private static final String CALM = "scenarios/calm-bench.toml";

    @TempDir Path folder;

    /** Refused at once: code 2, one complaint and where help is, nothing printed or written. */
    private String refused(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exit = Tideless.execute(new PrintWriter(out), new PrintWriter(err), args);
        assertThat(exit).as(err.toString()).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        List<String> lines = err.toString().lines().toList();
        assertThat(lines.stream().filter(l -> !l.startsWith(" ") && !l.startsWith("Possible")))
                .as(err.toString())
                .hasSize(2);
        assertThat(lines.get(lines.size() - 1)).startsWith("Try \"tideless ");
        return lines.get(0);
    }

    private String[] command(String name, String... more) {
        List<String> args =
                switch (name) {
                    case "compare" -> List.of(name, CALM, "--vary", "tray.left.plants=4..5");
                    case "fit" -> List.of(name, "scenarios/logged-bench.toml");
                    default -> List.of(name, CALM);
                };
        String to = folder.resolve(name.equals("calendar") ? "a.ics" : "a").toString();
        List<String> where = name.equals("size") ? List.of() : List.of("-o", to);
        return Stream.of(args, where, List.of(more)).flatMap(List::stream).toArray(String[]::new);
    }

    @ParameterizedTest
    @ValueSource(strings = {"run", "away", "size", "calendar", "compare", "fit"})
    void no_members_and_a_million_and_less_than_none(String name) {
        for (String members : List.of("0", "1000000", "-1")) {
            assertThat(refused(command(name, "--members", members)))
                    .isEqualTo("--members: found " + members + ", allowed: 1 to 10000");
        }
        for (String members : List.of("ten", "1e9", "2.5", "")) {
            assertThat(refused(command(name, "--members", members)))
                    .contains("\"" + members + "\", allowed: a whole number, as 40");
        }
        assertThat(refused(command(name, "--members", "99999999999"))).contains("not as large");
        assertThat(Files.exists(folder.resolve("a"))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"run", "away", "size", "calendar", "compare", "fit", "sensitivity"})
    void a_seed_below_nothing(String name) {
        assertThat(refused(command(name, "--seed", "-7")))
                .contains("--seed")
                .contains("found \"-7\", allowed: a whole number from 0 up, as 1");
        assertThat(refused(command(name, "--sed", "7"))).contains("--sed");
        assertThat(Files.exists(folder.resolve("a"))).isFalse();
    }

    @Test
    void a_grid_of_a_billion() {
        String plants = "tray.left.plants=1..1000000000";
        assertThat(refused("compare", CALM, "--vary", plants))
                .endsWith("found \"1..1000000000\", allowed: 2 to 10000 values");
        assertThat(
                        refused(
                                "compare",
                                CALM,
                                "--vary",
                                "tray.left.depth=5 cm..9 cm/9999",
                                "--vary",
                                "tray.right.depth=5 cm..9 cm/9999"))
                .endsWith("found a grid of 99980001 designs, allowed: at most 10000");
        assertThat(
                        refused(
                                "compare",
                                CALM,
                                "--members",
                                "10000",
                                "--vary",
                                "tray.left.depth=5 cm..9 cm/5000"))
                .endsWith("allowed: at most 1000000 seasons in all");
    }

    @ParameterizedTest
    @CsvSource({
        "happiness, ''",
        "lamp_hours, lamp-hours",
        "reservoirs, reservoir",
        "RESERVOIR, reservoir",
        "'', ''"
    })
    void a_size_of_what_there_is_none_of(String what, String meant) {
        assertThat(refused(command("size", "--what", what)))
                .contains("found \"" + what + "\", allowed: ")
                .contains("reservoir, plants, visits, valve, lamp-hours, feed")
                .doesNotContain("[")
                .endsWith(meant.isEmpty() ? "feed" : "; did you mean \"" + meant + "\"?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"often", "90%", "0,9", ""})
    void a_chance_that_is_no_number(String chance) {
        assertThat(refused(command("size", "--chance", chance)))
                .contains("found \"" + chance + "\", allowed: a number, as 0.9")
                .doesNotContain("double");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1", "90", "NaN", "Infinity"})
    void a_chance_that_is_none(String chance) {
        assertThat(refused(command("size", "--chance", chance)))
                .endsWith("allowed: above 0, at most 1, as 0.9");
    }
}
