package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.ValveFaults;

/** What ails a valve, from which day, and whether its float can shut it. */
class ValveReaderTest {
    @TempDir Path folder;

    /** The bench of the other tests: seventy days from 2026-03-02, to 2026-05-10. */
    private Reading read(String valveLines, String floorAboveBench) throws IOException {
        String text =
                ScenarioReaderTest.GOOD
                        .replace("setting = \"4.5 cm\"\n", "setting = \"4.5 cm\"\n" + valveLines)
                        .replace("\"60 cm\"\n[tray", "\"" + floorAboveBench + "\"\n[tray");
        return ScenarioReader.read(
                Files.writeString(folder.resolve("bench.toml"), text), TestCrops.LIBRARY);
    }

    private Problem only(String valveLines) throws IOException {
        return only(read(valveLines, "60 cm"));
    }

    private static Problem only(Reading reading) {
        List<Problem> problems = assertInstanceOf(Reading.Faulty.class, reading).problems();
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    private ValveFaults faults(String valveLines) throws IOException {
        Reading reading = read(valveLines, "60 cm");
        Scenario good = assertInstanceOf(Reading.Good.class, reading).scenario();
        return ((Filling.ByValve) good.trays().get(0).filling()).faults();
    }

    @Test
    void every_fault_arrives_with_its_days_and_in_SI_units() throws IOException {
        ValveFaults faults =
                faults(
                        """
                        stuck = "open"
                        stuck_from = 2026-03-10
                        stuck_to = 2026-03-12
                        seep = "0.864 L/day"
                        seep_from = 2026-04-01
                        clogging = "5 %"
                        clogging_from = 2026-05-10
                        """);
        assertEquals(ValveFaults.Stuck.OPEN, faults.stuck());
        assertEquals(LocalDate.of(2026, 3, 10), faults.stuckFrom());
        assertEquals(LocalDate.of(2026, 3, 12), faults.stuckTo());
        assertEquals(1e-8, faults.seepM3PerS(), 1e-20);
        assertEquals(LocalDate.of(2026, 4, 1), faults.seepFrom());
        assertEquals(0.05, faults.cloggingFracPerDay(), 1e-15);
        assertEquals(LocalDate.of(2026, 5, 10), faults.cloggingFrom());
    }

    @Test
    void a_fault_without_days_holds_for_the_whole_run() throws IOException {
        ValveFaults faults = faults("stuck = \"shut\"\nseep = \"1 L/day\"\nclogging = \"1 %\"\n");
        assertEquals(LocalDate.of(2026, 3, 2), faults.stuckFrom());
        assertEquals(LocalDate.of(2026, 5, 11), faults.stuckTo()); // the first day after the run
        assertEquals(LocalDate.of(2026, 3, 2), faults.seepFrom());
        assertEquals(LocalDate.of(2026, 3, 2), faults.cloggingFrom());
    }

    /** It may have begun before the run: silting goes on, a valve hangs already. */
    @Test
    void a_fault_may_have_begun_before_the_run_and_end_after_it() throws IOException {
        ValveFaults faults =
                faults(
                        """
                        stuck = "shut"
                        stuck_from = 2026-01-01
                        stuck_to = 2026-12-31
                        clogging = "1 %"
                        clogging_from = 2026-02-01
                        """);
        assertEquals(LocalDate.of(2026, 1, 1), faults.stuckFrom());
        assertEquals(LocalDate.of(2026, 12, 31), faults.stuckTo());
        assertEquals(LocalDate.of(2026, 2, 1), faults.cloggingFrom());
    }

    @ParameterizedTest(name = "{0} {1} to {2}: {3}")
    @CsvSource({
        "open, 2026-03-12, 2026-03-10, stuck_to, 2026-03-10, stuck_from before stuck_to",
        "shut, 2026-03-12, 2026-03-12, stuck_to, 2026-03-12, stuck_from before stuck_to",
        "open, 2026-05-11, 2026-05-20, stuck_from, 2026-05-11,"
                + " up to the last day of the run (2026-05-10)",
        "shut, 2026-02-01, 2026-03-02, stuck_to, 2026-03-02,"
                + " after the first day of the run (2026-03-02)",
    })
    void days_that_cannot_be_are_one_fault(
            String stuck, String from, String to, String key, String found, String allowed)
            throws IOException {
        Problem problem =
                only("stuck = \"%s\"\nstuck_from = %s\nstuck_to = %s\n".formatted(stuck, from, to));
        assertEquals("tray.basil.valve." + key, problem.key());
        assertEquals(found, problem.found());
        assertEquals(allowed, problem.allowed());
        assertTrue(problem.line() > 0);
    }

    @Test
    void sticking_from_after_the_run_is_told_by_the_run_and_not_by_a_date_nobody_wrote()
            throws IOException {
        Problem problem = only("stuck = \"open\"\nstuck_from = 2027-01-01\n");
        assertEquals("tray.basil.valve.stuck_from", problem.key());
        assertEquals("up to the last day of the run (2026-05-10)", problem.allowed());
    }

    @ParameterizedTest
    @ValueSource(strings = {"seep = \"1 L/day\"\nseep_from", "clogging = \"1 %\"\nclogging_from"})
    void a_seep_or_silt_that_begins_after_the_run_is_one_fault(String lines) throws IOException {
        Problem problem = only(lines + " = 2026-05-11\n");
        assertEquals("2026-05-11", problem.found());
        assertEquals("up to the last day of the run (2026-05-10)", problem.allowed());
    }

    @ParameterizedTest
    @CsvSource({
        "stuck_from, stuck",
        "stuck_to, stuck",
        "seep_from, seep",
        "clogging_from, clogging"
    })
    void a_day_without_its_fault_is_one_fault(String key, String of) throws IOException {
        Problem problem = only(key + " = 2026-03-10\n");
        assertEquals("tray.basil.valve." + key, problem.key());
        assertEquals("only beside " + of, problem.allowed());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "stuck = \"ajar\"",
                "seep = \"-1 L/day\"",
                "clogging = \"100 %\"",
                "stuck = \"open\"\nstuck_from = \"soon\"",
                "float_mass = \"8 g\"",
                "float_lever = 5",
                "float_seal = 1",
            })
    void nonsense_is_one_fault(String lines) throws IOException {
        only(lines + "\n");
    }

    // The float. The seat lies at the rim, 8 cm, and the full line 28 cm above the reservoir's
    // floor: its head is that floor's height and 20 cm.

    private static String floating(
            double floatCm3, double floatG, double lever, double seatMm, double seal) {
        return String.format(
                Locale.ROOT,
                "float_volume = \"%s mL\"\nfloat_mass = \"%s g\"\nfloat_lever = %s\n"
                        + "seat = \"%s mm\"\nfloat_seal = %s\n",
                floatCm3,
                floatG,
                lever,
                seatMm,
                seal);
    }

    private Reading withHead(String floating, double headM) throws IOException {
        return read(floating, String.format(Locale.ROOT, "%.12f m", headM - 0.20));
    }

    /**
     * Greatest heads recomputed independently (moment balance); half under water by hand from (V/2
     * - m/rho) r/(a S). 5e-5 to either side: the heads are printed to five digits.
     */
    @ParameterizedTest(name = "{0} cm3, {1} g, {2}:1, seat {3} mm, S {4}: {5} m")
    @CsvSource({
        "30, 0, 5, 5, 1, 7.6394, 7.64 m, 3.82 m",
        "30, 8, 5, 5, 1, 5.5986, 5.60 m, 1.78 m",
        "30, 8, 5, 5, 2, 2.7993, 2.80 m, 0.89 m",
        "30, 8, 5, 4, 2, 4.3739, 4.37 m, 1.39 m",
        "15, 5, 3, 4, 2, 1.1926, 1.19 m, 0.30 m",
        "15, 5, 3, 5, 2, 0.76326, 0.76 m, 0.19 m",
    })
    void a_float_shuts_up_to_its_greatest_head_and_not_beyond(
            double floatCm3,
            double floatG,
            double lever,
            double seatMm,
            double seal,
            double greatestM,
            String most,
            String half)
            throws IOException {
        String floating = floating(floatCm3, floatG, lever, seatMm, seal);
        Reading below = withHead(floating, greatestM * (1 - 5e-5));
        List<Note> notes = assertInstanceOf(Reading.Good.class, below).notes();
        List<Note> told =
                notes.stream().filter(note -> note.key().endsWith("float_volume")).toList();
        assertEquals(1, told.size(), notes.toString());
        assertEquals(
                "half under water the float shuts against %s of head, wholly under water against %s; the full reservoir stands %s above the seat"
                        .formatted(half, most, most),
                told.get(0).text());
        Problem problem = only(withHead(floating, greatestM * (1 + 5e-5)));
        assertEquals("tray.basil.valve.float_volume", problem.key());
        assertEquals(
                "a float that shuts against %s of head, wholly under water".formatted(most),
                problem.found());
        assertEquals(
                "at least the %s from the full reservoir to the seat".formatted(most),
                problem.allowed());
    }

    /** 47.746 and 34.991 m: more than a reservoir can stand above a bench; 10.2 m are borne. */
    @ParameterizedTest
    @CsvSource({"30, 0", "30, 8"})
    void a_thin_seat_shuts_against_all_a_bench_can_have(double floatCm3, double floatG)
            throws IOException {
        Reading reading = withHead(floating(floatCm3, floatG, 5, 2, 1), 10.2);
        List<Note> notes = assertInstanceOf(Reading.Good.class, reading).notes();
        assertTrue(
                notes.stream().noneMatch(note -> note.key().endsWith("float_volume")),
                notes.toString());
    }

    /** 30 cm3 at 5:1 on a seat of 5 mm: 24 / pi m. A part in 1e11 to either side. */
    @Test
    void at_the_limit_itself_the_float_still_shuts() throws IOException {
        String floating = floating(30, 0, 5, 5, 1);
        double limitM = 24 / Math.PI;
        assertInstanceOf(Reading.Good.class, withHead(floating, limitM * (1 - 1e-11)));
        only(withHead(floating, limitM * (1 + 1e-11)));
        // Half under water just holds the head: no word of it.
        Reading half = withHead(floating, 0.5 * limitM * (1 - 1e-11));
        assertTrue(
                assertInstanceOf(Reading.Good.class, half).notes().stream()
                        .noneMatch(note -> note.key().endsWith("float_volume")));
    }

    @Test
    void a_float_that_sinks_is_a_fault_at_any_head() throws IOException {
        Problem problem = only(floating(5, 8, 5, 2, 1));
        assertEquals(
                "a float that shuts against 0.00 m of head, wholly under water", problem.found());
        assertEquals("at least the 0.80 m from the full reservoir to the seat", problem.allowed());
    }

    // Moves: 2026-03-20 is a Friday, and somebody looks on Mondays, Wednesdays and Fridays.

    private Reading.Good moved(String moves) throws IOException {
        return assertInstanceOf(Reading.Good.class, read("moves = [" + moves + "]\n", "60 cm"));
    }

    private static Filling.ByValve valve(Reading.Good good) {
        return (Filling.ByValve) good.scenario().trays().get(0).filling();
    }

    @Test
    void moves_arrive_in_SI_units() throws IOException {
        Reading.Good good =
                moved(
                        "{ on = 2026-03-20, setting = \"40 mm\" },"
                                + " { on = 2026-04-01, setting = \"3 cm\" }");
        assertEquals(
                List.of(
                        new Filling.Move(LocalDate.of(2026, 3, 20), 0.04),
                        new Filling.Move(LocalDate.of(2026, 4, 1), 0.03)),
                valve(good).moves());
        assertTrue(good.notes().stream().noneMatch(note -> note.key().endsWith("moves")));
    }

    @Test
    void a_move_on_a_day_without_a_visit_is_done_at_the_next_one_and_said() throws IOException {
        Reading.Good good = moved("{ on = 2026-03-21, setting = \"40 mm\" }");
        assertEquals(LocalDate.of(2026, 3, 23), valve(good).moves().get(0).on());
        assertTrue(
                good.notes().stream()
                        .anyMatch(
                                note ->
                                        note.text()
                                                .equals(
                                                        "nobody looks on 2026-03-21: the valve is"
                                                                + " moved at the next visit, on"
                                                                + " 2026-03-23")));
    }

    /** Rim 8 cm, overflow 7 cm, band 5 mm; the run ends on Sunday 2026-05-10. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2026-03-20 | 9 cm | below the deck (8 cm, line 23)",
                "2026-03-20 | 7 cm | below the overflow (7 cm, line 24)",
                "2026-03-20 | 4 mm | at least the band (0.5 cm, the default): below the floor a"
                        + " valve cannot open",
                "2026-03-01 | 4 cm | a day of the run (2026-03-02 to 2026-05-10)",
                "2026-05-11 | 4 cm | a day of the run (2026-03-02 to 2026-05-10)",
                "2026-05-09 | 4 cm | a day up to the last visit of the run",
                "2026-03-20 | 0 cm | a list of dates that rise, as [{ on = 2026-03-20, setting ="
                        + " \"40 mm\" }], with settings above 0 cm up to 60 cm",
            })
    void a_move_that_cannot_be_is_one_fault(String on, String setting, String allowed)
            throws IOException {
        Problem fault = only("moves = [{ on = %s, setting = \"%s\" }]%n".formatted(on, setting));
        assertEquals("tray.basil.valve.moves", fault.key());
        assertEquals(allowed, fault.allowed());
    }

    @Test
    void moves_rise_in_time_and_fall_on_a_visit_each() throws IOException {
        String later = "{ on = 2026-03-21, setting = \"40 mm\" }, ";
        assertEquals(
                "entries that rise in time",
                only("moves = [" + later + "{ on = 2026-03-20, setting = \"3 cm\" }]\n").allowed());
        assertEquals(
                "one move a visit",
                only("moves = [" + later + "{ on = 2026-03-22, setting = \"3 cm\" }]\n").allowed());
    }

    @Test
    void a_valve_is_not_moved_above_the_outlet_of_its_reservoir() throws IOException {
        Problem fault = only(read("moves = [{ on = 2026-03-20, setting = \"6 cm\" }]\n", "3 cm"));
        assertEquals(
                "below the outlet of reservoir \"shelf\" (5 cm above the bench)", fault.allowed());
    }
}
