package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Does a seedling's root reach the solution on the day it is hung into the tray? */
class CupNoteTest {
    @TempDir Path folder;

    private List<String> notes(String startLevel) throws IOException {
        return notes(startLevel, "");
    }

    private List<String> notes(String startLevel, String more) throws IOException {
        Path file = folder.resolve("bench.toml");
        Files.writeString(
                file,
                """
                title = "t"
                start = 2026-03-02
                length = "10 days"
                climate.kind = "room"
                climate.day_temperature = "22 degC"
                lamp.ppfd = "200 umol/m2/s"
                feed.recipe = "steiner"
                [tray.bench]
                length = "60 cm"
                width = "35 cm"
                depth = "10 cm"
                crop = "lettuce"
                plants = 8
                filling = "sealed"
                cup_bottom = "5 cm"
                start_level = "%s"
                %s
                """
                        .formatted(startLevel, more));
        return assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).notes().stream()
                .map(Note::toString)
                .toList();
    }

    @Test
    void cups_above_the_solution_are_said_with_their_line() throws IOException {
        assertThat(notes("4 cm"))
                .singleElement()
                .asString()
                .contains(":16: tray.bench.start_level: the cups hang 1 cm above the solution")
                .contains("do not reach it yet");
    }

    @Test
    void cups_that_barely_dip_are_said() throws IOException {
        assertThat(notes("5 cm")).singleElement().asString().contains("least fall leaves them dry");
    }

    /**
     * Afloat, the deck lies on the solution and its cups hang 5 cm into it; aground at 9.5 cm not.
     */
    @Test
    void cups_of_a_raft_hang_where_it_floats() throws IOException {
        assertEquals(List.of(), notes("4 cm", "deck_floats_down_to = \"2 cm\""));
        assertThat(notes("4 cm", "deck_floats_down_to = \"9.5 cm\""))
                .singleElement()
                .asString()
                .contains("the cups hang 0.5 cm above the solution");
    }

    // Kratky (2010), CTAHR VC-1: about 1.3 cm of the pot in the solution.
    @Test
    void cups_wet_as_published_are_not_worth_a_word() throws IOException {
        assertEquals(List.of(), notes("6.3 cm"));
    }

    // Lettuce's leading roots grow 2 cm a day, and leave a plug at 1/8, 3/8, 5/8 and 7/8 of that: 1
    // and 3 cm to the solution, and 3 mm into it.
    @Test
    void the_days_until_roots_reach_the_level_are_told() throws IOException {
        assertThat(notes("4 cm"))
                .singleElement()
                .asString()
                .contains("after 3 more days in the nursery")
                .contains("transplant.root_length");
        assertThat(notes("2 cm")).singleElement().asString().contains("after 4 more days");
    }

    @Test
    void roots_that_hang_into_a_low_level_are_not_worth_a_word() throws IOException {
        assertEquals(List.of(), notes("2 cm", "transplant.root_length = \"5 cm\""));
        assertThat(notes("2 cm", "transplant.root_length = \"3.1 cm\""))
                .singleElement()
                .asString()
                .contains("roots of 3.1 cm dip 0.1 cm");
        assertThat(notes("2 cm", "transplant.root_length = \"2 cm\""))
                .singleElement()
                .asString()
                .contains("roots of 2 cm do not reach it yet");
    }
}
