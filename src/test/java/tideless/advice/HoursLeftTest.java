package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.words.WarningWords;

/**
 * How long a tray had held water when somebody last looked, for every way of filling. 1 L a day out
 * of 0.2 m2 less the film of 2 mm that feeds nobody: 5 mm are a day.
 */
class HoursLeftTest {
    @TempDir Path folder;

    private Warning warned(String tray, String visits, Warning.Kind kind) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(
                file,
                """
                title = "a rig"
                start = 2026-03-02
                length = "21 days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                night_temperature = "18 degC"
                [feed]
                recipe = "hoagland-2"
                [tray.t]
                length = "50 cm"
                width = "40 cm"
                depth = "10 cm"
                gap = "0 %%"
                thirst = "1 L/day"
                %s
                [visits]
                at = "08:00"
                flush = "never"
                days = %s
                """
                        .formatted(tray, visits));
        Trace trace =
                Simulation.run(
                        assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario());
        return Advisor.advise(trace, trace).warnings().stream()
                .filter(w -> w.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /** 10 L last nine and a half days; the last visit was on Monday the 9th. */
    @Test
    void a_sealed_tray_tells_the_hours_left_at_the_visit_before() throws IOException {
        Warning dry =
                warned(
                        "start_level = \"5 cm\"\nfilling = \"sealed\"",
                        "[\"mon\"]",
                        Warning.Kind.DRIED_OUT);
        Facts facts = dry.cause().facts();
        assertEquals(LocalDateTime.of(2026, 3, 9, 8, 0), facts.on());
        double hours = facts.get(Quantity.HELD_WATER);
        assertEquals(24 * 9.6 - 7 * 24 - 8, hours, 6);
        assertTrue(
                WarningWords.brief(dry)
                        .contains("hours left at the visit before (Mon 9 Mar 08:00)"),
                WarningWords.brief(dry));
    }

    @Test
    void a_tray_at_which_nobody_ever_looks_tells_the_hours_from_the_start() throws IOException {
        Warning dry =
                warned(
                        "start_level = \"3 cm\"\nfilling = \"sealed\"",
                        "[\"sun\"]",
                        Warning.Kind.DRIED_OUT);
        assertNull(dry.cause().facts().on());
        assertEquals(24 * 5.6, dry.cause().facts().get(Quantity.HELD_WATER), 6);
        assertTrue(WarningWords.text(dry).contains("hours left at the start"));
    }

    @Test
    void a_tray_topped_up_by_hand_tells_the_hours_since_it_was_filled() throws IOException {
        Warning dry =
                warned(
                        "start_level = \"3 cm\"\nhand = { to = \"3 cm\" }",
                        "[\"mon\"]",
                        Warning.Kind.DRIED_OUT);
        assertEquals(24 * 5.6, dry.cause().facts().get(Quantity.HELD_WATER), 6);
        assertEquals(LocalDateTime.of(2026, 3, 2, 8, 0), dry.cause().facts().on());
    }

    @Test
    void a_valve_tray_tells_it_of_its_reservoir_and_of_itself() throws IOException {
        String fed =
                """
                valve = { setting = "3 cm" }
                [reservoir.r]
                length = "30 cm"
                width = "20 cm"
                depth = "12 cm"
                full_level = "11 cm"
                floor_above_bench = "60 cm"
                refill = "never\"""";
        Warning ran = warned(fed, "[\"mon\"]", Warning.Kind.RAN_DRY);
        assertTrue(ran.cause().facts().get(Quantity.HELD_WATER) > 24);
        Warning dry = warned(fed, "[\"mon\"]", Warning.Kind.DRIED_OUT);
        assertTrue(dry.from().isAfter(ran.from()));
        assertTrue(WarningWords.text(ran).contains("hours left at the"), WarningWords.text(ran));
    }
}
