package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Tray;

/** Crops that follow one another on a tray, as a file states them. */
class NextReaderTest {
    private static final String HEAD =
            """
            title = "t"
            start = 2026-03-02
            length = "60 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [lamp]
            ppfd = "200 umol/m2/s"
            [feed]
            recipe = "steiner"
            [visits]
            away = [{ from = 2026-04-11, to = 2026-04-19 }]
            [tray.a]
            length = "60 cm"
            width = "35 cm"
            depth = "8 cm"
            overflow = "7 cm"
            """; // 17 lines

    private static final String LETTUCE = "crop = \"lettuce\"\nplants = 6\n";

    private static Reading read(String rest) {
        return ScenarioReader.read("a.toml", new FilesInMemory(HEAD + rest));
    }

    private static Tray tray(String rest) {
        return ((Reading.Good) read(rest)).scenario().trays().get(0);
    }

    private static Problem problem(String rest) {
        List<Problem> problems = ((Reading.Faulty) read(rest)).problems();
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    private static void refused(String rest, int line, String key, String found, String allowed) {
        Problem problem = problem(rest);
        assertEquals(line, problem.line(), problem.toString());
        assertEquals(key, problem.key());
        assertThat(problem.found()).contains(found);
        assertThat(problem.allowed()).contains(allowed);
    }

    @Test
    void each_table_is_a_crop_in_the_order_of_the_file() {
        Tray tray =
                tray(
                        LETTUCE
                                + "start_level = \"5 cm\"\n"
                                + """
                                [[tray.a.next]]
                                crop = "basil"
                                plants = 8
                                nursery_age = "20 days"
                                [tray.a.next.limits]
                                ec_high = "3 mS/cm"
                                [[tray.a.next]]
                                crop = "rocket"
                                plants = 10
                                planted = 2026-04-20
                                sown = 2026-04-06
                                fresh = false
                                start_level = "6 cm"
                                harvest_after = "9 days"
                                leaf_picking = { from = 2026-04-25 }
                                """);
        assertEquals(3, tray.plantings());
        NextPlanting basil = tray.next().get(0);
        assertEquals("basil", basil.crop().cropName());
        assertEquals(20, basil.crop().ageAtStartDays(), 0);
        assertEquals(Optional.empty(), basil.on());
        assertTrue(basil.fresh());
        assertEquals(0.05, basil.startLevelM(), 1e-12);
        assertEquals(3, basil.limits().ecHighMsPerCm(), 0);
        NextPlanting rocket = tray.next().get(1);
        assertEquals(Optional.of(LocalDate.of(2026, 4, 20)), rocket.on());
        assertFalse(rocket.fresh());
        assertEquals(0.06, rocket.startLevelM(), 1e-12);
        // Days count from its own planting.
        assertEquals(14, rocket.crop().ageAtStartDays(), 0);
        assertEquals(9, rocket.crop().harvestAfterDays().getAsInt());
        assertEquals(5, rocket.crop().tending().acts().get(0).day());
        // As it is planted for the third time.
        Tray third = tray.planted(2);
        assertEquals("rocket", third.planting().cropName());
        assertEquals(0.06, third.startLevelM(), 1e-12);
        assertEquals(rocket.limits(), third.limits());
        assertEquals("lettuce", tray.planted(0).planting().cropName());
    }

    /** Cups take room in the tray whichever crop hangs in them: those of the fullest planting. */
    @Test
    void as_many_cups_hang_as_the_fullest_planting_needs() {
        String cups = "cup_solid = \"12 cm2\"\n";
        String next = "[[tray.a.next]]\ncrop = \"basil\"\nplants = 9\n";
        assertEquals(
                tray(cups + "crop = \"lettuce\"\nplants = 9\n").shape(),
                tray(cups + LETTUCE + next).shape());
    }

    @Test
    void an_unknown_crop_is_refused_with_a_suggestion() {
        String next = LETTUCE + "[[tray.a.next]]\ncrop = \"basill\"\nplants = 8\n";
        refused(next, 21, "tray.a.next.1.crop", "\"basill\"", "\"basil\"");
        assertEquals("Did you mean \"basil\"?", problem(next).hint());
        String key = LETTUCE + "[[tray.a.next]]\ncrop = \"basil\"\nplant = 8\n";
        refused(
                key,
                22,
                "tray.a.next.1.plant",
                "an unknown key (did you mean \"plants\"?)",
                "plants");
        refused(
                LETTUCE + "[[tray.a.next]]\nplants = 8\n",
                20,
                "tray.a.next.1.crop",
                "nothing",
                "one of crop and crop_file");
    }

    private static String planted(String... days) {
        StringBuilder text = new StringBuilder(LETTUCE);
        for (String day : days) {
            text.append("[[tray.a.next]]\ncrop = \"basil\"\nplants = 8\n");
            text.append("planted = ").append(day).append('\n');
        }
        return text.toString();
    }

    @Test
    void days_must_rise_within_the_run() {
        assertEquals(2, tray(planted("2026-03-03", "2026-04-30")).next().size());
        refused(
                planted("2026-03-02"),
                23,
                "tray.a.next.1.planted",
                "2026-03-02",
                "a day after 2026-03-02");
        refused(planted("2026-05-01"), 23, "tray.a.next.1.planted", "2026-05-01", "2026-04-30");
        refused(
                planted("2026-04-01", "2026-04-01"),
                27,
                "tray.a.next.2.planted",
                "2026-04-01",
                "a day after 2026-04-01");
    }

    @Test
    void a_crop_cannot_be_set_out_before_the_one_before_it_is_cut() {
        String cut = "harvest_after = \"30 days\"\n";
        assertEquals(1, tray(cut + planted("2026-04-01")).next().size());
        refused(
                cut + planted("2026-03-31"),
                24,
                "tray.a.next.1.planted",
                "2026-03-31",
                "from 2026-04-01 on, the day from which the lettuce before it is cut");
    }

    @Test
    void crops_follow_a_crop_alone() {
        refused(
                "thirst = \"1 L/day\"\n[[tray.a.next]]\ncrop = \"basil\"\nplants = 8\n",
                19,
                "tray.a.next",
                "a crop after a measured thirst",
                "crops after a crop");
        refused(LETTUCE + "next = 3\n", 20, "tray.a.next", "3", "tables [[tray.a.next]]");
        refused(LETTUCE + "next = [1]\n", 20, "tray.a.next", "[", "tables [[tray.a.next]]");
    }

    @Test
    void one_bracket_in_place_of_two_is_told_as_such() {
        String one =
                LETTUCE
                        + "[tray.a.next]\ncrop = \"basil\"\nplants = 8\n"
                        + "[tray.a.next.transplant]\nleaves = 4\n";
        refused(one, 20, "tray.a.next", "one table [tray.a.next]", "tables [[tray.a.next]]");
        assertThat(problem(one).hint()).contains("two brackets");
    }

    @Test
    void more_crops_than_any_plan_has_are_refused() {
        String next = "[[tray.a.next]]\ncrop = \"basil\"\nplants = 8\n";
        assertEquals(100, tray(LETTUCE + next.repeat(100)).next().size());
        refused(
                LETTUCE + next.repeat(101),
                20,
                "tray.a.next",
                "101 crops one after the other",
                "up to 100");
    }

    @Test
    void what_is_dated_of_a_crop_needs_its_own_day() {
        refused(
                LETTUCE + "[[tray.a.next]]\ncrop = \"basil\"\nplants = 8\nsown = 2026-03-20\n",
                23,
                "tray.a.next.1.sown",
                "a date of a crop without one",
                "only with planted");
    }

    @Test
    void its_level_stays_below_the_overflow_of_the_tray() {
        refused(
                LETTUCE
                        + "[[tray.a.next]]\ncrop = \"basil\"\nplants = 8\nstart_level = \"7.5 cm\"\n",
                23,
                "tray.a.next.1.start_level",
                "7.5 cm",
                "up to the overflow (7 cm, line 17)");
    }

    @Test
    void a_day_on_which_nobody_comes_is_noted() {
        Reading.Good good = (Reading.Good) read(planted("2026-04-15"));
        assertThat(good.notes())
                .anySatisfy(
                        note -> {
                            assertEquals("tray.a.next.1.planted", note.key());
                            assertThat(note.text()).contains("nobody comes on 2026-04-15");
                        });
    }

    /** A comparison knows each by its number. */
    @Test
    void a_comparison_varies_a_crop_that_follows(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("a.toml");
        Files.writeString(file, HEAD + planted("2026-04-01", "2026-04-20"));
        Reading changed =
                ChangedScenario.read(
                        file, List.of(new ChangedScenario.Change("tray.a.next.2.plants", "5")));
        List<NextPlanting> next = ((Reading.Good) changed).scenario().trays().get(0).next();
        assertEquals(List.of(8, 5), next.stream().map(n -> n.crop().plants()).toList());
        assertEquals(
                List.of(3.0, 4.0),
                VariedKey.of("tray.a.next.*.plants=4,3").values().stream()
                        .map(VariedKey.Value::number)
                        .toList());
        assertTrue(((Planting) next.get(0).crop()).plants() > 0);
    }
}
