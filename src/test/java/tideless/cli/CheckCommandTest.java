package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What `check` prints of a rig worked out by hand; the figures themselves are RigCheckTest's. */
class CheckCommandTest {
    /**
     * 40 x 40 x 37.5 cm full, outlet at 5 cm: 60 L, 8 L of them dead. The seat of 2 mm alone limits
     * (no tubes): 0.475 m above it full, 0.15 m at the outlet.
     */
    private static final String RIG =
            """
            title = "Rig worked out by hand"
            start = 2026-03-02
            length = "2 days"
            feed.recipe = "steiner"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [reservoir.wall]
            length = "40 cm"
            width = "40 cm"
            depth = "37.5 cm"
            outlet_height = "5 cm"
            floor_above_bench = "20 cm"
            tubing.length = "0 m"
            tubing.loss = 0
            [tray.a]
            length = "50 cm"
            width = "40 cm"
            depth = "10 cm"
            thirst = "3 L/day"
            [tray.a.valve]
            setting = "5 cm"
            seat = "2 mm"
            tubing.length = "0 m"
            tubing.loss = 0
            """;

    @TempDir Path folder;

    private String check(int exit, String text) throws IOException {
        Path file = Files.writeString(folder.resolve("rig.toml"), text);
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code =
                Tideless.execute(
                        new PrintWriter(out), new PrintWriter(err), "check", file.toString());
        assertEquals(exit, code, err.toString());
        return out.toString() + err;
    }

    private static void says(String said, String words) {
        assertTrue(said.contains(words), words + " is not in:\n" + said);
    }

    @Test
    void every_figure_stands_in_the_users_units() throws IOException {
        String said = check(0, RIG);
        says(said, "52.0 L usable, 8.0 L below the outlet; full it weighs 60 kg (587 N)");
        // atan(0.2 / (0.2 + 0.1875)) = 27.3 degrees; 59.892 kg x 9.80665 x 0.2 / 0.575 m = 204.3 N.
        says(said, "it tips at 27.2 degrees, or by a push of 204 N at the full level");
        // 0.61 x pi mm2 x sqrt(2 g h): 351 mL/min under 0.475 m, 197 under 0.15 m; / 2.0833.
        says(said, "351 mL/min with the reservoir full, 197 at the outlet");
        says(said, "peak thirst 2.1 mL/min, margin ample");
        // 9 L at some 345 mL/min and a throttled millimetre after: 28 to 32 min.
        says(said, "tray a: fills in ");
        String minutes = said.replaceAll("(?s).*fills in (\\d+) min.*", "$1");
        double wide = 0.009 / (345e-6 / 60) / 60;
        double throttled = 0.2 * 0.005 / (340e-6 / 60) * Math.log(5) / 60;
        assertEquals(wide + throttled, Double.parseDouble(minutes), 1.6);
    }

    // Centre 0.6 + 0.14 m up; half the narrower side over it: atan(0.075 / 0.74) = 5.787 degrees,
    // 33.54 kg x 9.80665 x 0.075 / 0.88 m = 28.03 N; 60 x 20 cm 7.696, 40 x 30 cm 11.459 degrees;
    // of a round floor the square within: 30 cm across, atan(0.10607 / 0.74) = 8.156 degrees.
    // Cut, not rounded: a figure of safety errs to the safe side.
    @ParameterizedTest(name = "{0}: {1} degrees, {2} N")
    @CsvSource({
        "length = '80 cm'; width = '15 cm', 5.7, 28",
        "length = '20 cm'; width = '60 cm', 7.6, 37",
        "length = '40 cm'; width = '30 cm', 11.4, 56",
        "diameter = '30 cm', 8.1, 23"
    })
    void a_narrow_reservoir_tips_over_its_longer_side(String sides, String degrees, String push)
            throws IOException {
        String said =
                check(
                        0,
                        RIG.replace(
                                        "length = \"40 cm\"\nwidth = \"40 cm\"\ndepth = \"37.5 cm\"",
                                        sides.replace("; ", "\n") + "\ndepth = \"28 cm\"")
                                .replace(
                                        "floor_above_bench = \"20 cm\"",
                                        "floor_above_bench = \"60 cm\""));
        says(said, "it tips at " + degrees + " degrees, or by a push of " + push + " N");
        assertFalse(said.contains("taken as square"), said);
    }

    @Test
    void a_reservoir_without_sides_is_said_to_be_taken_as_square() throws IOException {
        String said =
                check(0, RIG.replace("length = \"40 cm\"\nwidth = \"40 cm\"", "volume = \"60 L\""));
        says(
                said,
                "(no sides stated, taken as square: a narrower one tips sooner) it tips at 27.2");
    }

    @Test
    void too_little_at_the_lowest_level_is_called_so() throws IOException {
        // 300 L a day are 208.3 mL/min, of which 197.4 come.
        String said = check(0, RIG.replace("3 L/day", "300 L/day"));
        says(said, "margin 0.9-fold: TOO LITTLE at the lowest level");
    }

    @Test
    void trays_that_are_alike_are_told_once_and_the_caution_once_for_all() throws IOException {
        String second = RIG.substring(RIG.indexOf("[tray.a]")).replace("tray.a", "tray.b");
        String said = check(0, RIG + second);
        says(said, "  trays a and b, each: fills in ");
        assertEquals(1, said.lines().filter(l -> l.contains("peak thirst 2.1")).count(), said);
        assertEquals(1, said.lines().filter(l -> l.startsWith("Caution")).count(), said);
    }

    @Test
    void no_fault_is_said_where_nothing_is_to_be_looked_at_alone() throws IOException {
        says(
                check(0, RIG),
                "rig.toml: no fault in the file (whether the crop comes through, run tells): ");
        String strong =
                RIG.replace(
                                "feed.recipe = \"steiner\"",
                                "feed = { recipe = \"steiner\", ec = \"3.5 mS/cm\" }")
                        .replace(
                                "thirst = \"3 L/day\"",
                                "crop = \"lettuce\"\nplants = 4\ncup_bottom = \"4 cm\"");
        String said = check(0, strong);
        says(said, "rig.toml: can be run, with ");
        says(said, "tray a: its feed of 3.50 mS/cm is stronger than lettuce bears (2.50 mS/cm)");
    }

    @Test
    void a_tray_larger_than_its_reservoir_is_said_not_to_fill() throws IOException {
        String said = check(0, RIG.replace("length = \"50 cm\"", "length = \"5 m\""));
        says(
                said,
                "tray a: a full reservoir does not fill its trays from dry, which take 100.0 L of its 52.0");
        assertFalse(said.contains("no time"), said);
    }

    @Test
    void a_valve_above_the_outlet_loses_the_last_of_it_and_a_note_says_so() throws IOException {
        // Seat at 10 + 20 = 30 cm, outlet at 25 cm, full at 57.5 cm.
        String raised =
                RIG.replace(
                        "depth = \"10 cm\"", "depth = \"10 cm\"\nfloor_above_bench = \"20 cm\"");
        String said = check(0, raised);
        says(said, "0 at the outlet");
        says(said, "margin 0.0-fold: TOO LITTLE at the lowest level");
        says(said, "the seat lies 5 cm above the outlet of reservoir \"wall\": the last of it");
    }

    @Test
    void a_valve_above_the_full_reservoir_is_refused() throws IOException {
        // Setting at 25 cm, just at the outlet; the feed enters at 60 cm, the full line is 57.5 cm.
        String raised =
                RIG.replace(
                        "depth = \"10 cm\"", "depth = \"40 cm\"\nfloor_above_bench = \"20 cm\"");
        String said = check(2, raised);
        says(said, "found a feed that enters 60 cm above the bench, allowed: below the full line");
        says(said, "57.5 cm above the bench");
        says(said, "Nothing flows uphill");
        assertEquals(1, said.lines().filter(line -> line.contains("found ")).count(), said);
    }
}
