package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.solution.Component;
import tideless.study.LeanFeed;
import tideless.study.LeanFeed.Fault;
import tideless.study.LeanFeed.Flushed;
import tideless.study.LeanFeed.Leaving;
import tideless.study.LeanFeed.Trial;

/** What is told of a feed that needs no flush. */
class LeanWordsTest {
    private static final LocalDate SUNDAY = LocalDate.of(2026, 3, 29);

    private static Optional<Leaving> leaving(Fault fault, Component ion, double figure) {
        return Optional.of(new Leaving("left", fault, Optional.ofNullable(ion), SUNDAY, figure));
    }

    private static Trial lean(double ec) {
        return new Trial(ec, Optional.empty(), leaving(Fault.TOO_LEAN, null, 0.77));
    }

    private static Trial salty(double ec) {
        return new Trial(ec, leaving(Fault.TOO_SALTY, null, 2.56), Optional.empty());
    }

    @Test
    void a_tray_leaves_its_band_on_a_day_as_people_say_it() {
        assertEquals(
                "tray left is too lean from Sun 29 Mar (0.77 mS/cm)", LeanWords.trial(lean(1)));
        Trial ions =
                new Trial(
                        1.4,
                        leaving(Fault.TOO_RICH, Component.NA, 6),
                        leaving(Fault.SHORT, Component.K, 0.1));
        assertEquals(
                "tray left is too rich in sodium from Sun 29 Mar (6.00 mmol/L at the end);"
                        + " tray left is short of potassium from Sun 29 Mar (0.10 mmol/L)",
                LeanWords.trial(ions));
        assertEquals(
                "all in band", LeanWords.trial(new Trial(1.5, Optional.empty(), Optional.empty())));
    }

    @Test
    void the_nearest_feeds_that_do_not_do_say_why() {
        Trial good = new Trial(1.5, Optional.empty(), Optional.empty());
        List<Trial> trials = List.of(lean(0.9), lean(1.36), good, salty(2.03), salty(3));
        LeanFeed found =
                new LeanFeed(1.7, Optional.of(1.37), Optional.of(2.02), trials, 0.2, List.of());
        assertEquals(
                List.of(
                        "The feed as it stands: 1.70 mS/cm.",
                        "From 1.37 to 2.02 mS/cm every tray stays in its band to harvest without a"
                                + " flush; make 1.48 mS/cm, clear of the edge by what mixing and"
                                + " meter may be off.",
                        "  At 1.36 mS/cm tray left is too lean from Sun 29 Mar (0.77 mS/cm).",
                        "  At 2.03 mS/cm tray left is too salty from Sun 29 Mar (2.56 mS/cm)."),
                LeanWords.found(found));
    }

    @Test
    void where_none_does_it_is_said_of_the_water_and_of_the_strength() {
        LeanFeed none =
                new LeanFeed(1.7, Optional.empty(), Optional.empty(), List.of(), 1.25, List.of());
        String told = String.join(" ", LeanWords.found(none));
        assertTrue(told.contains("No feed keeps every tray in its band"), told);
        assertTrue(told.contains("which alone reads 1.25 mS/cm"), told);
        assertTrue(told.contains("Twice the given strength still leaves a tray too lean."), told);
    }

    @Test
    void where_none_does_it_is_said_how_often_to_flush() {
        LeanFeed none =
                new LeanFeed(
                        1.7,
                        Optional.of(1.8),
                        Optional.of(1.6),
                        List.of(),
                        0.2,
                        List.of(
                                new Flushed("left", 1.94, 3, SUNDAY, 20.4, 2.56),
                                new Flushed("right", 1.94, 1, SUNDAY, Double.NaN, 2.7)));
        List<String> told = LeanWords.found(none);
        assertEquals(
                List.of(
                        "So flush: make 1.94 mS/cm, and",
                        "  flush tray left every 20 days or so (3 times), first on Sun 29 Mar at"
                                + " 2.56 mS/cm",
                        "  flush tray right once, on Sun 29 Mar at 2.70 mS/cm"),
                told.subList(told.size() - 3, told.size()));
    }
}
