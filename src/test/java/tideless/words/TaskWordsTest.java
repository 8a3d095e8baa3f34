package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.rig.VesselId;

/** What stands behind a task, in words. */
class TaskWordsTest {
    /** Several trays that take as much stand together before the rest. */
    @Test
    void what_goes_into_several_vessels_is_told_whole() {
        Map<VesselId, Double> into = new LinkedHashMap<>();
        for (String tub : List.of("parsley", "coriander", "mint")) {
            into.put(VesselId.tray(tub), 6.2);
        }
        Task mix =
                new Task(
                        Task.Kind.MIX,
                        VesselId.tray("parsley"),
                        LocalDateTime.of(2026, 4, 3, 8, 0),
                        18.6,
                        0,
                        Measure.none(),
                        new Cause(Cause.Kind.FIRST_FILLING, Facts.NONE.into(into)),
                        List.of(),
                        List.of(),
                        true);
        assertEquals("feed: 6.2 L into each of parsley, coriander and mint", TaskWords.brief(mix));
    }

    /** More than two buckets are mixed in parts. */
    @ParameterizedTest
    @CsvSource({"20, false", "20.1, true"})
    void more_than_a_can_holds_is_mixed_in_parts(double litres, boolean inParts) {
        Task mix =
                new Task(
                        Task.Kind.MIX,
                        VesselId.tray("tub"),
                        LocalDateTime.of(2026, 4, 3, 8, 0),
                        litres,
                        0,
                        Measure.none(),
                        new Cause(
                                Cause.Kind.FIRST_FILLING,
                                Facts.NONE.into(Map.of(VesselId.tray("tub"), litres))),
                        List.of(),
                        List.of(),
                        true);
        assertEquals(
                inParts,
                TaskWords.why(mix)
                        .endsWith("; in parts, as your can holds, each of the same strength"));
    }

    private static Task flush(boolean isDone, Cure.Kind first) {
        return new Task(
                Task.Kind.FLUSH,
                VesselId.tray("left"),
                LocalDateTime.of(2026, 6, 29, 19, 0),
                8,
                8,
                Measure.atMost(4.21, 4, Unit.MS_PER_CM),
                new Cause(
                        Cause.Kind.SALTS_STAY_BEHIND,
                        Facts.of(Quantity.LITRES_DOUBT, 0.3).and(Quantity.METER_DOUBT, 0.21)),
                List.of(new Cure(first, Facts.of(Quantity.WATER, 4.5))),
                List.of(),
                isDone);
    }

    @Test
    void a_flush_tells_how_well_its_litres_and_its_reading_are_known() {
        assertEquals(
                "4.21 mS/cm (above 4.00 mS/cm); drain 8.0 L first; give or take 0.3 L, a pen 0.21"
                        + " mS/cm",
                TaskWords.why(flush(true, Cure.Kind.TOP_UP_WITH_WATER)));
    }

    @Test
    void a_flush_that_waits_comes_after_the_plain_water_that_may_make_it_needless() {
        for (Cure.Kind first :
                List.of(Cure.Kind.TOP_UP_WITH_WATER, Cure.Kind.WATER_IN_THE_NEXT_REFILL)) {
            String next = first == Cure.Kind.TOP_UP_WITH_WATER ? "top-ups" : "refills";
            String water = "; before that try 4.5 L of plain water in the next " + next;
            assertEquals(
                    "4.21 mS/cm (above 4.00 mS/cm)"
                            + water
                            + "; drain 8.0 L first; give or take 0.3 L, a pen 0.21 mS/cm; advised,"
                            + " not done",
                    TaskWords.why(flush(false, first)));
        }
        assertEquals(
                "4.21 mS/cm (above 4.00 mS/cm); drain 8.0 L first; give or take 0.3 L, a pen 0.21"
                        + " mS/cm; advised, not done",
                TaskWords.why(flush(false, Cure.Kind.LEANER_FEED)));
    }
}
