package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Events;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.words.TaskWords;
import tideless.words.WarningWords;

/** Seedlings whose roots end above the level, at it and below it; and their first day dry. */
class SeedlingsTest {
    private static final String BARE = "cup_water = \"0 mL\"";

    @TempDir Path folder;

    private Trace run(int days, String startLevel, String roots, String hand) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(
                file,
                """
                title = "a bench"
                start = 2026-09-07
                length = "%d days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                night_temperature = "18 degC"
                [lamp]
                type = "white-led"
                ppfd = "220 umol/m2/s"
                [feed]
                recipe = "lettuce-water-culture"
                ec = "1.2 mS/cm"
                [tray.bench]
                length = "60 cm"
                width = "40 cm"
                depth = "12 cm"
                cup_bottom = "7 cm"
                start_level = "%s"
                crop = "lettuce"
                plants = 4
                ground = "0.3 m2"
                %s
                %s
                [visits]
                days = "daily"
                at = "18:00"
                flush = "never"
                """
                        .formatted(
                                days,
                                startLevel,
                                roots,
                                hand.isEmpty()
                                        ? "filling = \"sealed\""
                                        : "hand = { to = \"8.3 cm\", days = [" + hand + "] }"));
        return Simulation.run(
                assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario());
    }

    private static List<Task> transplants(Advice advice) {
        return advice.tasks().stream().filter(t -> t.kind() == Task.Kind.TRANSPLANT).toList();
    }

    private static List<Event.Kind> fates(Trace trace) {
        return trace.events().stream()
                .map(Event::kind)
                .filter(
                        k ->
                                k == Event.Kind.STRANDED
                                        || k == Event.Kind.WILTED
                                        || k == Event.Kind.RECOVERED
                                        || k == Event.Kind.DIED)
                .toList();
    }

    private static Warning warning(Advice advice, Warning.Kind kind) {
        return advice.warnings().stream().filter(w -> w.kind() == kind).findFirst().orElseThrow();
    }

    /** 2 cm of root a day, from 20 mm: 53 mm are wanted, 60 are there after two days. */
    @Test
    void roots_above_the_level_are_told_from_which_day_they_reach_it_and_what_helps_till_then()
            throws IOException {
        Trace trace =
                run(20, "2 cm", "transplant.root_length = \"2 cm\"\ncup_water = \"0 mL\"", "");
        Task task = transplants(Advisor.advise(trace, trace)).get(0);
        assertEquals(LocalDate.of(2026, 9, 9), task.due().toLocalDate());
        assertEquals(60, task.measure().value(), 1e-9);
        assertEquals(50, task.cause().facts().get(Quantity.LEVEL_BELOW_CUPS), 1e-9);
        assertEquals(
                List.of(Cure.Kind.HIGHER_LEVEL_AT_FIRST, Cure.Kind.WAIT_IN_NURSERY, Cure.Kind.WICK),
                task.cures().stream().map(Cure::kind).toList());
        assertEquals(
                "roots 60 mm, the level is 50 mm below the cups; until then hold the level at 83 mm"
                        + " to about Wed 9 Sep; or keep them in the nursery with their roots hanging;"
                        + " or hang a wick from each cup into the solution; advised, not done",
                TaskWords.why(task));
    }

    @Test
    void roots_that_reach_the_level_are_told_nothing_and_live() throws IOException {
        Trace trace = run(20, "2 cm", "transplant.root_length = \"5.3 cm\"", "");
        assertEquals(List.of(), transplants(Advisor.advise(trace, trace)));
        assertEquals(List.of(), fates(trace));
    }

    @Test
    void a_seedling_dry_from_its_first_day_on_is_a_lost_plant_and_told_what_helps()
            throws IOException {
        Trace trace = run(20, "2 cm", BARE, "");
        assertEquals(
                List.of(Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.DIED), fates(trace));
        assertEquals(leaves(trace, 1), leaves(trace, 20), 1e-9);
        Warning lost = warning(Advisor.advise(trace, trace), Warning.Kind.DIED);
        assertEquals(Cure.Kind.HIGHER_LEVEL_AT_FIRST, lost.cures().get(0).kind());
    }

    /** Roots of 4 cm below cups that hang 5 cm above the level: two plugs, one of them large. */
    @Test
    void seedlings_whose_plug_lasts_until_their_roots_are_down_are_told_nothing()
            throws IOException {
        for (int ml : new int[] {2, 60}) {
            Trace trace =
                    run(
                            20,
                            "2 cm",
                            "transplant.root_length = \"4 cm\"\ncup_water = \"" + ml + " mL\"",
                            "");
            assertEquals(ml < 60 ? 1 : 0, transplants(Advisor.advise(trace, trace)).size());
        }
    }

    /** Wilted in the morning, wetted at six in the evening. */
    @Test
    void a_seedling_dry_on_its_first_day_only_has_lost_a_week_in_growth_too() throws IOException {
        Trace dry = run(30, "2 cm", BARE, "2026-09-07");
        assertEquals(
                List.of(Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.RECOVERED), fates(dry));
        Trace wet = run(30, "8.3 cm", "", "");
        assertEquals(leaves(dry, 1), leaves(dry, 8), 1e-9);
        // A week to the day: it stands on each day where the other stood seven days before.
        for (int day = 2; day <= 20; day++) {
            assertEquals(leaves(wet, day), leaves(dry, day + 7), 1e-3);
        }
        assertTrue(grams(dry, 25) < 0.6 * grams(wet, 25));
        assertTrue(
                WarningWords.text(warning(Advisor.advise(dry, dry), Warning.Kind.WILTED))
                        .contains("a week lost to new roots"));
    }

    /** Two centimetres of root a day, a day's rate lost in the plug: there on the third day. */
    @Test
    void a_plug_carries_a_seedling_over_a_centimetre_of_air() throws IOException {
        Trace trace = run(30, "6 cm", "", "");
        assertEquals(List.of(), fates(trace));
        Trace wet = run(30, "8.3 cm", "", "");
        assertEquals(1, grams(trace, 25) / grams(wet, 25), 0.1);
        assertEquals(Set.of(), kinds(Advisor.advise(trace, trace)));
    }

    @Test
    void a_plug_used_up_before_the_roots_are_down_asks_for_days_in_the_nursery()
            throws IOException {
        Trace trace = run(20, "2 cm", "cup_water = \"6 mL\"", "");
        Warning lost = warning(Advisor.advise(trace, trace), Warning.Kind.DIED);
        double strandedS = Events.firstS(trace, Event.Kind.STRANDED);
        assertTrue(strandedS > 86400 && strandedS < 5 * 86400, () -> "after " + strandedS);
        assertEquals(
                List.of(Cure.Kind.HIGHER_LEVEL_AT_FIRST, Cure.Kind.WAIT_IN_NURSERY, Cure.Kind.WICK),
                lost.cures().stream().map(Cure::kind).toList());
        // From the last of the plug to the last of the plants, and not the days on the plug.
        double diedS = Events.firstS(trace, Event.Kind.DIED);
        assertEquals(
                (diedS - strandedS) / 3600,
                warning(Advisor.advise(trace, trace), Warning.Kind.STRANDED).measure().value(),
                2); // an hour begun at either end
    }

    /** What may wilt some before their roots are down is no matter of visits; later it is. */
    @Test
    void rigs_that_may_wilt_before_the_roots_are_down_are_told_to_wait() throws IOException {
        Trace trace = run(20, "2 cm", "", "2026-09-07, 2026-09-20");
        VesselId bench = trace.scenario().trays().get(0).id();
        LocalDateTime start = trace.scenario().start().atStartOfDay();
        assertEquals(
                Cure.Kind.WAIT_IN_NURSERY,
                Shortfall.cureOf(trace.scenario(), bench, start.plusDays(2)).kind());
        assertEquals(
                Cure.Kind.VISIT_MORE_OFTEN,
                Shortfall.cureOf(trace.scenario(), bench, start.plusDays(12)).kind());
    }

    private static Set<Warning.Kind> kinds(Advice advice) {
        Set<Warning.Kind> kinds = EnumSet.noneOf(Warning.Kind.class);
        advice.warnings().forEach(w -> kinds.add(w.kind()));
        kinds.retainAll(EnumSet.of(Warning.Kind.STRANDED, Warning.Kind.WILTED, Warning.Kind.DIED));
        return kinds;
    }

    /** At the end of a day, before that midnight's growth. */
    private static double leaves(Trace trace, int day) {
        return trace.trays().get(0).of(TraySeries.LEAF_AREA_INDEX).at(24 * day - 1);
    }

    private static double grams(Trace trace, int day) {
        return trace.trays().get(0).freshG().at(24 * day - 1);
    }
}
