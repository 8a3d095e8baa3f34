package tideless.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;

/** What is said of a run with a grower's log is said of what lies ahead of the log's end. */
class LoggedAdviceTest {
    private static final LocalDateTime START = Rigs.START.atStartOfDay();

    /** Salty from hour 100 to 200, above the limit of 3 mS/cm. */
    private static MadeTrace salty() {
        return new MadeTrace(21).with(TraySeries.EC, h -> h >= 100 && h < 200 ? 5 : 2);
    }

    @Test
    void a_spell_that_is_over_by_the_logs_end_is_past_and_one_that_goes_on_is_not() {
        assertThat(salty().warned()).contains(Warning.Kind.TOO_SALTY);
        assertThat(salty().advice().past()).isEmpty();
        Advice during = salty().logged(180).advice();
        assertThat(during.warnings()).extracting(Warning::kind).contains(Warning.Kind.TOO_SALTY);
        assertThat(during.past()).isEmpty();
        Advice after = salty().logged(200).advice();
        assertThat(after.warnings())
                .extracting(Warning::kind)
                .doesNotContain(Warning.Kind.TOO_SALTY);
        assertThat(after.past()).extracting(Warning::kind).contains(Warning.Kind.TOO_SALTY);
        assertFalse(after.verdict().first().isPresent(), "what is past is not to be changed first");
    }

    @Test
    void a_death_is_never_past() {
        Advice dead =
                new MadeTrace(21).event(Event.Kind.DIED, MadeTrace.TRAY, 100).logged(300).advice();
        assertThat(dead.past()).isEmpty();
        assertThat(dead.warnings()).extracting(Warning::kind).contains(Warning.Kind.DIED);
    }

    /** 10 L in the tray; 0.1 L an hour from hour 100 on, 0.05 L before and from 300 on. */
    @Test
    void the_tightest_day_is_one_that_is_to_come() {
        MadeTrace made =
                new MadeTrace(21).with(TraySeries.THIRST, h -> h >= 96 && h < 288 ? 1e-4 : 5e-5);
        assertEquals(START.plusHours(97), tightest(made));
        assertEquals(START.plusHours(201), tightest(made.logged(200)));
        assertEquals(START.plusHours(301), tightest(made.logged(300)));
    }

    private static LocalDateTime tightest(MadeTrace made) {
        return made.advice().verdict().tightest().orElseThrow().at();
    }

    @Test
    void what_comes_again_and_again_comes_next_at_the_first_visit_after_the_log() {
        MadeTrace tomato =
                new MadeTrace(21)
                        .of("dwarf-tomato")
                        .event(Event.Kind.FLOWERING, MadeTrace.TRAY, 48)
                        .event(Event.Kind.FIRST_RIPE, MadeTrace.TRAY, 240);
        assertEquals(START.plusHours(48 + 8), due(tomato, Task.Kind.POLLINATE));
        assertEquals(START.plusDays(7).plusHours(8), due(tomato, Task.Kind.READ_METERS));
        // Looked at eight on the twelfth day: that visit is told.
        MadeTrace logged = tomato.logged(12 * 24 + 8);
        assertEquals(START.plusDays(13).plusHours(8), due(logged, Task.Kind.POLLINATE));
        assertEquals(START.plusDays(13).plusHours(8), due(logged, Task.Kind.PICK));
        assertEquals(START.plusDays(13).plusHours(8), due(logged, Task.Kind.READ_METERS));
        MadeTrace early = tomato.logged(60);
        assertEquals(START.plusHours(240 + 8), due(early, Task.Kind.PICK));
        assertEquals(START.plusDays(7).plusHours(8), due(early, Task.Kind.READ_METERS));
    }

    private static LocalDateTime due(MadeTrace made, Task.Kind kind) {
        return made.advice().tasks().stream()
                .filter(task -> task.kind() == kind)
                .findFirst()
                .orElseThrow()
                .due();
    }

    @Test
    void an_absence_that_is_over_is_not_judged_any_more() {
        MadeTrace made = new MadeTrace(21).visited(MadeTrace.away(5, 8));
        assertEquals(1, made.advice().verdict().absences().size());
        assertEquals(1, made.logged(8 * 24 + 8).advice().verdict().absences().size());
        assertTrue(made.logged(9 * 24).advice().verdict().absences().isEmpty());
    }

    /** 30 L, 0.1 L an hour drawn and 0.05 L lost: 200 h. */
    @Test
    void a_full_reservoir_lasts_less_by_what_it_leaks() {
        MadeTrace made = new MadeTrace(21).drawing(h -> 1e-4);
        assertEquals(300, 24 * lasts(made), 1e-6);
        assertEquals(200, 24 * lasts(made.leaking(0.05)), 1e-6);
    }

    private static double lasts(MadeTrace made) {
        return made.advice().sizings().get(0).daysWhenFull().get(0);
    }

    /** 1 L an hour to hour 96, 0.1 L after; visits every day. */
    @Test
    void enough_is_what_the_longest_gap_to_come_draws() {
        MadeTrace made = new MadeTrace(21).drawing(h -> h < 96 ? 1e-3 : 1e-4);
        assertEquals(24, made.advice().sizings().get(0).enoughUsableLitres(), 1e-9);
        Sizing later = made.logged(104).advice().sizings().get(0);
        assertEquals(2.4, later.enoughUsableLitres(), 1e-9);
    }
}
