package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.solution.Component;
import tideless.solution.Composition;

/** What is told of a pH, and what against it. The band is 5.5 to 6.5, half a unit is borne. */
class AcidityAdviceTest {
    /** A strong base without its partner: beyond what is not known of the uptake. */
    private static final Composition BASIC = Rigs.FEED.with(Component.NA, 5.9);

    /** A little of it: within the band by itself. */
    private static final Composition NEUTRAL = Rigs.FEED.with(Component.NA, 0.7);

    private static MadeTrace reading(double ph) {
        return new MadeTrace(21).with(TraySeries.PH, h -> h / 24 < 2 ? 6 : ph);
    }

    private static List<Warning> of(List<Warning> warnings) {
        return warnings.stream().filter(w -> w.kind() == Warning.Kind.PH_OUT).toList();
    }

    /** As a warning or as a note. */
    private static Warning told(MadeTrace made) {
        Advice advice = made.advice();
        return of(Stream.concat(advice.warnings().stream(), advice.minor().stream()).toList())
                .get(0);
    }

    private static List<Cure.Kind> cures(MadeTrace made) {
        return told(made).cures().stream().map(Cure::kind).toList();
    }

    /** The feed as it stands holds too little base for a reading of 7.2 to be sure. */
    @Test
    void a_likely_ph_is_a_note_and_a_sure_one_a_warning_with_the_dates_of_the_likely_course() {
        LocalDateTime from = Rigs.START.plusDays(2).atTime(23, 0);
        Advice likely = reading(7.2).advice();
        assertEquals(List.of(), of(likely.warnings()));
        assertEquals(from, of(likely.minor()).get(0).from());
        assertEquals(Rigs.START.plusDays(20).atTime(23, 0), of(likely.minor()).get(0).until());
        Advice sure = reading(7.2).holding(BASIC).advice();
        assertEquals(List.of(), of(sure.minor()));
        assertEquals(from, of(sure.warnings()).get(0).from());
        assertEquals(Measure.atMost(7.2, 6.5, Unit.PH), of(sure.warnings()).get(0).measure());
        Advice acid = reading(4.7).holding(NEUTRAL).advice();
        assertEquals(Measure.atLeast(4.7, 5.5, Unit.PH), of(acid.minor()).get(0).measure());
        assertEquals(from, of(acid.minor()).get(0).from());
    }

    /** A meter and drops of acid are at hand; nobody changes a rig for it first. */
    @Test
    void no_drift_of_ph_is_to_be_changed_first() {
        Advice sure = reading(7.2).holding(BASIC).advice();
        assertEquals(List.of(Cure.of(Cure.Kind.ACID_BY_METER)), of(sure.warnings()).get(0).cures());
        assertTrue(
                Warning.firstOf(of(sure.warnings()), reading(6).trace().scenario().climate())
                        .isEmpty(),
                () -> "" + sure.warnings());
    }

    /** Only of salts that one weighs is one changed, and only hard water for a softer one. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lettuce-water-culture, EC 1.6 mS/cm, pH 6.0 | 0.9 | ACID_BY_METER, MORE_AMMONIUM",
                "two bottles, EC 1.6 mS/cm, pH 6.0 | 0.9 | ACID_BY_METER",
                "bought, taken as lettuce-water-culture, EC 1.6 mS/cm, pH 6.0 | 0.9 | ACID_BY_METER",
                "feed by analysis | 1.1 | ACID_BY_METER, RAIN_WATER"
            })
    void acid_comes_first_then_another_water_then_ammonium(
            String feed, double waterMeqPerL, String told) {
        MadeTrace made =
                reading(7.2)
                        .feedNamed(feed)
                        .from(Composition.WATER.with(Component.NA, waterMeqPerL));
        assertEquals("[" + told + "]", cures(made).toString());
    }

    /** 0.06 of the nitrogen leaves lettuce's pH as it is: Dickson and Fisher (2018). */
    @ParameterizedTest
    @CsvSource({"0.07, '[BASE_BY_METER, LESS_AMMONIUM]'", "0.05, '[BASE_BY_METER]'"})
    void less_ammonium_is_told_of_a_feed_that_holds_enough_of_it(double frac, String told) {
        Composition feed =
                Rigs.FEED.with(Component.NH4, 10 * frac).with(Component.NO3, 10 * (1 - frac));
        assertEquals(told, cures(reading(4.7).fed(feed)).toString());
    }

    /** A feed that is itself above the band: by its water's lime, or by its salts. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.9 | SALTS_ARE_ALKALINE | ACID_BY_METER",
                "1.1 | FEED_IS_ALKALINE | RAIN_WATER, ACID_BY_METER"
            })
    void an_alkaline_feed_is_laid_to_its_water_only_where_that_is_hard(
            double waterMeqPerL, Cause.Kind cause, String told) {
        MadeTrace made =
                reading(7.2).fed(BASIC).from(Composition.WATER.with(Component.NA, waterMeqPerL));
        assertEquals(cause, told(made).cause().kind());
        assertEquals("[" + told + "]", cures(made).toString());
    }

    /** Iron runs out by weeks: what begins five days before the harvest is not told. */
    @Test
    void what_begins_just_before_the_harvest_is_not_told() {
        MadeTrace late =
                new MadeTrace(21)
                        .with(TraySeries.PH, h -> h / 24 < 10 ? 6 : 7.2)
                        .event(Event.Kind.HARVEST, MadeTrace.TRAY, 17 * 24);
        assertEquals(List.of(), of(late.advice().minor()));
    }

    // ---- by runs at both ends of the contents --------------------------------------------------

    private static Advice judged(MadeTrace made, double lowest, double highest) {
        Trace trace = made.trace();
        return Advisor.withAcidity(
                Advisor.advise(trace, trace),
                trace,
                List.of(steady(trace, lowest)),
                List.of(steady(trace, highest)));
    }

    private static Series steady(Trace trace, double ph) {
        double[] hours = new double[trace.hours()];
        Arrays.fill(hours, ph);
        return Series.of(hours);
    }

    @ParameterizedTest
    @CsvSource({"7.2, 7.01, 7.3, true", "7.2, 6.99, 7.3, false"})
    void a_rise_that_all_runs_show_is_a_warning(
            double likely, double lowest, double highest, boolean isWarned) {
        for (Composition held : List.of(Rigs.FEED, BASIC)) {
            Advice told = judged(reading(likely).holding(held), lowest, highest);
            assertEquals(isWarned ? 1 : 0, of(told.warnings()).size());
            assertEquals(isWarned ? 0 : 1, of(told.minor()).size());
        }
    }

    @ParameterizedTest
    @CsvSource({"4.7, 4.5, 4.99, true", "4.7, 4.5, 5.01, false"})
    void so_is_a_fall(double likely, double lowest, double highest, boolean isWarned) {
        Advice told = judged(reading(likely), lowest, highest);
        assertEquals(isWarned ? 1 : 0, of(told.warnings()).size());
        assertEquals(isWarned ? 0 : 1, of(told.minor()).size());
    }

    @Test
    void other_warnings_and_a_little_acid_stay_as_they_are() {
        MadeTrace made = reading(5.2).with(TraySeries.EC, h -> 5);
        Advice once = made.advice();
        assertEquals(1, of(once.minor()).size());
        Advice judged = judged(made, 4, 4.1);
        assertEquals(once.warnings(), judged.warnings());
        assertEquals(once.minor(), judged.minor());
    }
}
