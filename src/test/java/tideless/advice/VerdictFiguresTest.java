package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.words.VerdictWords;

/** Verdicts worked out by hand, each just before and just past its limit. */
class VerdictFiguresTest {
    private static final LocalDate START = Rigs.START;

    private static Verdict verdict(MadeTrace trace) {
        return trace.advice().verdict();
    }

    /** 336 h in all: a wilt that nobody ends is borne for six hours. */
    @ParameterizedTest
    @CsvSource({"330, true", "329.9, false"})
    void a_wilt_to_the_end_counts_to_the_end(double from, boolean survives) {
        assertEquals(
                survives,
                verdict(new MadeTrace(14).event(Event.Kind.WILTED, MadeTrace.TRAY, from))
                        .survives());
    }

    /** Two wilts of four hours are none of eight. */
    @Test
    void wilts_are_not_added_up() {
        MadeTrace twice =
                new MadeTrace(14)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                        .event(Event.Kind.RECOVERED, MadeTrace.TRAY, 104)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 120)
                        .event(Event.Kind.RECOVERED, MadeTrace.TRAY, 124);
        assertTrue(verdict(twice).survives());
    }

    @Test
    void the_first_harm_is_the_earliest_whatever_it_is() {
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.WILTED, MadeTrace.TRAY, 100)
                        .event(Event.Kind.RECOVERED, MadeTrace.TRAY, 110)
                        .with(TraySeries.LEVEL, h -> h >= 200 ? 0.001 : 0.05)
                        .event(Event.Kind.DIED, MadeTrace.TRAY, 300);
        Verdict.Harm first = verdict(trace).firstHarm().orElseThrow();
        assertEquals(Warning.Kind.WILTED, first.kind());
        assertEquals(START.atStartOfDay().plusHours(100), first.at());
        MadeTrace dead = new MadeTrace(14).event(Event.Kind.DIED, MadeTrace.TRAY, 300);
        Verdict.Harm lost = verdict(dead).firstHarm().orElseThrow();
        assertEquals(Warning.Kind.DIED, lost.kind());
        assertEquals(START.atStartOfDay().plusHours(300), lost.at());
        assertEquals(MadeTrace.TRAY, lost.vessel());
        MadeTrace dry = new MadeTrace(14).with(TraySeries.LEVEL, h -> h >= 200 ? 0.001 : 0.05);
        assertEquals(
                START.atStartOfDay().plusHours(201),
                verdict(dry).firstHarm().orElseThrow().at(),
                "the sample that closes hour 200");
    }

    @ParameterizedTest
    @CsvSource({"13, 20, 1", "14, 20, 0", "-9, -1, 0", "-9, 0, 1"})
    void only_absences_within_the_run_are_told(int from, int to, int told) {
        assertEquals(
                told,
                verdict(new MadeTrace(14).visited(MadeTrace.away(from, to))).absences().size());
    }

    /** Away on days 5 to 9, back at hour 248; lost at the very hours, and just before or after. */
    @ParameterizedTest
    @CsvSource({"119.9, true", "120, false", "248, false", "248.1, true"})
    void an_absence_ends_with_the_visit_after_it(double lostHour, boolean survives) {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .event(Event.Kind.DIED, MadeTrace.TRAY, lostHour);
        assertEquals(survives, verdict(trace).absences().get(0).survives());
    }

    /** The level of hour 247 is of the absence, that of hour 248 not any more. */
    @ParameterizedTest
    @CsvSource({"119, 50", "120, 30", "247, 30", "248, 50"})
    void the_lowest_level_is_that_between_the_visits(int hour, double mm) {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .with(TraySeries.LEVEL, h -> h == hour ? 0.03 : 0.05);
        assertEquals(mm, 1000 * verdict(trace).absences().get(0).lowestLevelM(), 1e-9);
    }

    @Test
    void a_sealed_tray_is_not_filled_up_nor_one_at_which_nobody_was_before() {
        MadeTrace sealed =
                new MadeTrace(14).visited(MadeTrace.away(5, 9)).filled(new Filling.Sealed());
        assertNull(verdict(sealed).absences().get(0).fillUpOn());
        assertEquals(MadeTrace.TRAY, verdict(sealed).absences().get(0).lowestIn());
        assertNull(
                verdict(new MadeTrace(14).visited(MadeTrace.away(0, 9)))
                        .absences()
                        .get(0)
                        .fillUpOn());
        MadeTrace drawn = new MadeTrace(14).visited(MadeTrace.away(1, 9)).drawing(h -> 4e-4);
        assertEquals(START, verdict(drawn.reservoirAt(0.5)).absences().get(0).fillUpOn());
    }

    /**
     * A tray that is topped up at the visit before is filled up for it; one that is not, is not.
     */
    @Test
    void a_tray_by_hand_is_filled_up_where_that_is_a_task() {
        MadeTrace by =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .filled(new Filling.ByHand(0.05, List.of(), Pouring.FEED));
        assertNull(verdict(by).absences().get(0).fillUpOn());
        by.event(Event.Kind.TOP_UP, MadeTrace.TRAY, 4 * 24 + 8);
        assertEquals(START.plusDays(4), verdict(by).absences().get(0).fillUpOn());
    }

    /** Cut at hour 110: nothing stands in the tray when they leave at hour 120. */
    @Test
    void a_crop_that_is_cut_before_is_nothing_of_an_absence() {
        MadeTrace trace =
                new MadeTrace(14)
                        .visited(MadeTrace.away(5, 9))
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 110);
        Verdict.Absence absence = verdict(trace).absences().get(0);
        assertNull(absence.lowestIn());
        assertNull(absence.fillUpOn());
        assertTrue(absence.survives());
    }

    /** 0.24 L a day; on day 6 2.4 L: 10 L are 100 hours then, and 50 where half is left. */
    @Test
    void the_tightest_hour_is_the_least_water_over_the_days_thirst() {
        MadeTrace trace =
                new MadeTrace(14)
                        .with(TraySeries.THIRST, h -> h / 24 == 6 ? 1e-4 : 1e-5)
                        .with(TraySeries.LEVEL, h -> h == 150 ? 0.025 : 0.05);
        Verdict.WaterLeft left = verdict(trace).tightest().orElseThrow();
        assertEquals(50, left.hours(), 1e-9);
        assertEquals(START.atStartOfDay().plusHours(151), left.at());
        assertEquals(MadeTrace.TRAY, left.tray());
    }

    /** The run's thirst is that of a good solution, and is told as it is whatever salt leaves. */
    @ParameterizedTest
    @CsvSource({"1", "6", "12"})
    void salt_that_cuts_what_is_drunk_does_not_raise_the_thirst(double msPerCm) {
        MadeTrace trace =
                new MadeTrace(14)
                        .with(TraySeries.EC, h -> msPerCm)
                        .with(TraySeries.THIRST, h -> 1e-5)
                        .with(TraySeries.LEVEL, h -> h == 150 ? 0.025 : 0.05);
        assertEquals(500, verdict(trace).tightest().orElseThrow().hours(), 1e-9);
    }

    /** Two crops of one tray: told is the one that came closer, be it the first or the second. */
    @ParameterizedTest
    @CsvSource({"100", "250"})
    void of_two_crops_of_a_tray_the_tighter_is_told(int hour) {
        MadeTrace trace =
                new MadeTrace(14)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 200)
                        .then(200, true)
                        .with(TraySeries.LEVEL, h -> h == hour ? 0.03 : 0.05);
        List<Verdict.WaterLeft> left = verdict(trace).waterLeft();
        assertEquals(1, left.size());
        assertEquals(START.atStartOfDay().plusHours(hour + 1L), left.get(0).at());
        assertEquals(24 * 6 / 0.24, left.get(0).hours(), 1e-9);
    }

    /** But for what no file can say, as shade: that waits for what can be written. */
    @Test
    void what_is_to_be_changed_first_is_the_gravest_then_the_earliest() {
        MadeTrace trace =
                new MadeTrace(14)
                        .with(TraySeries.LIGHT, h -> 0.1)
                        .with(TraySeries.SOLUTION_TEMP, h -> h > 200 ? 26.1 : 20);
        assertEquals(Warning.Kind.LOW_LIGHT, verdict(trace).first().orElseThrow().kind());
        assertEquals(
                Warning.Kind.WARM_SOLUTION,
                trace.advice().warnings().stream().min(Warning.GRAVEST_FIRST).orElseThrow().kind());
        assertFalse(verdict(new MadeTrace(14)).first().isPresent());
    }

    /** Six hours of it are borne, as of any wilting, and one more is not. */
    @ParameterizedTest
    @CsvSource({"106, true", "107, false"})
    void hours_wilted_by_salt_count_as_wilted(int until, boolean survives) {
        Verdict verdict =
                verdict(
                        new MadeTrace(14)
                                .event(Event.Kind.SALT_WILTED, MadeTrace.TRAY, 100)
                                .event(Event.Kind.SALT_BORNE, MadeTrace.TRAY, until));
        assertEquals(survives, verdict.survives());
        if (!survives) {
            assertEquals(Warning.Kind.SALT_WILTED, verdict.firstHarm().orElseThrow().kind());
            assertEquals(
                    "The crop does not come through: tray wilts from salt from Fri 11"
                            + " Sep 04:00.",
                    VerdictWords.lines(verdict).get(0));
        }
    }
}
