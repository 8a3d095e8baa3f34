package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Unit;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.MadeUpOutlook;
import tideless.study.Outlook;

class WarningWordsTest {
    private static Warning warning(Measure measure, String crop) {
        LocalDateTime at = LocalDateTime.of(2026, 3, 3, 0, 0);
        return new Warning(
                Warning.Kind.PH_OUT,
                VesselId.tray("left"),
                at,
                at,
                measure,
                Cause.of(Cause.Kind.ANIONS_TAKEN),
                List.of(),
                crop);
    }

    @Test
    void a_figure_stands_beside_its_limit() {
        assertEquals(
                "likely up to pH 8.1; limit: pH 6.2; until Tue 3 Mar; leaves go pale for want of iron, which no weight here"
                        + " counts (lettuce at pH 7.0 weighed 26 % less than at 5.8: Anderson et al."
                        + " 2017)",
                WarningWords.brief(warning(Measure.atMost(8.1, 6.2, Unit.PH), "")));
        assertEquals(
                "likely down to pH 4.1; limit: pH 5.5; until Tue 3 Mar; roots take less potassium,"
                        + " calcium and magnesium of acid: what that costs is in the weights here",
                WarningWords.brief(warning(Measure.atLeast(4.1, 5.5, Unit.PH), "")));
    }

    /** Six days of three weeks, or six that follow one another. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"21 | on 6 days, the last Mon 23 Mar", "6 | until Sun 8 Mar"})
    void days_that_lie_apart_are_counted_and_the_last_is_told(int span, String told) {
        LocalDateTime from = LocalDateTime.of(2026, 3, 3, 0, 0);
        Warning cold =
                new Warning(
                        Warning.Kind.TOO_COLD,
                        VesselId.tray("left"),
                        from,
                        from.plusDays(span).minusHours(1),
                        Measure.atLeast(9, 12, Unit.CELSIUS),
                        new Cause(Cause.Kind.AIR_OF_THE_ROOM, Facts.of(Quantity.DAYS_BEYOND, 6)),
                        List.of());
        assertEquals("down to 9.0 degC; limit: 12.0 degC; " + told, WarningWords.brief(cold));
    }

    /** Nine in ten come through, and one less. */
    @ParameterizedTest
    @CsvSource({"0.9, No warnings.", "0.89, No warnings of the rig as stated;"})
    void where_many_rigs_fail_it_is_not_said_that_nothing_is_warned_of(double chance, String told) {
        Outlook.LikelyHarm harm =
                new Outlook.LikelyHarm(
                        Event.Kind.WILTED,
                        VesselId.tray("left"),
                        1 - chance,
                        Band.of(new double[] {86_400}));
        assertTrue(WarningWords.none(Optional.of(MadeUpOutlook.of(chance, harm))).startsWith(told));
        assertEquals("No warnings.", WarningWords.none(Optional.empty()));
    }

    @Test
    void one_crop_among_several_is_named() {
        Measure measure = Measure.atMost(8.1, 6.2, Unit.PH);
        assertEquals(
                "pH out, tray left, from Tue 3 Mar 00:00",
                WarningWords.head(warning(measure, ""), false));
        assertEquals(
                "pH out, tray left (basil), from Tue 3 Mar 00:00",
                WarningWords.head(warning(measure, "basil"), false));
    }

    /** Alike in kind and days, told once; of more than four the first three by name. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | tray bed-1",
                "2 | trays bed-1 and bed-2",
                "4 | trays bed-1, bed-2, bed-3 and bed-4",
                "5 | trays bed-1, bed-2, bed-3 and 2 more"
            })
    void what_costs_nothing_in_many_trays_is_told_once(int trays, String told) {
        List<Warning> all =
                IntStream.rangeClosed(1, trays)
                        .mapToObj(
                                i ->
                                        warning(Measure.atLeast(5.2, 5.5, Unit.PH), "")
                                                .withVessel(VesselId.tray("bed-" + i)))
                        .toList();
        assertEquals(
                Optional.of("Costs next to nothing: pH out, " + told + " (3 Mar)."),
                WarningWords.minor(all));
    }

    /** What may as well lie within the band is told as likely, with what to do at the visits. */
    @Test
    void a_likely_ph_is_told_with_its_days_and_what_a_grower_does() {
        LocalDateTime from = LocalDateTime.of(2026, 3, 3, 23, 0);
        Warning high =
                warning(Measure.atMost(7.44, 6.5, Unit.PH), "")
                        .withUntil(from.plusDays(30))
                        .withFrom(from)
                        .withCause(new Cause(Cause.Kind.ANIONS_TAKEN, Facts.of(Quantity.SURE, 0)));
        Warning low =
                high.withMeasure(Measure.atLeast(4.6, 5.5, Unit.PH))
                        .withCause(
                                new Cause(
                                        Cause.Kind.CATIONS_TAKEN,
                                        Facts.of(Quantity.SURE, 0).and(Quantity.DAYS_BEYOND, 20)));
        String above =
                "Likely pH above its band: trays left and right, about 3 Mar to 2 Apr, up to pH 7.4"
                        + " (limit: pH 6.5): acid by the meter, in drops.";
        assertEquals(
                Optional.of(above),
                WarningWords.minor(List.of(high, high.withVessel(VesselId.tray("right")))));
        assertEquals(
                Optional.of(
                        "Likely pH below its band: tray left, about 3 Mar to 2 Apr (on 20 days), down to pH 4.6"
                                + " (limit: pH 5.5): potassium bicarbonate by the meter, a little at a time."
                                + " Costs next to nothing: pH out, tray left (3 Mar)."),
                WarningWords.minor(List.of(warning(Measure.atLeast(5.2, 5.5, Unit.PH), ""), low)));
    }

    @ParameterizedTest
    @CsvSource({"34.9, false", "35, true"})
    void solution_in_which_roots_rot_is_told_so(double degC, boolean rots) {
        Warning warm =
                warning(Measure.atMost(degC, 25, Unit.CELSIUS), "")
                        .withKind(Warning.Kind.WARM_SOLUTION);
        assertEquals(rots, WarningWords.brief(warm).contains("roots rot within days so warm"));
    }

    @Test
    void what_began_before_a_logs_end_and_goes_on_is_there_since() {
        Path path = Path.of("scenarios/science-room-bench.toml"); // from 2 March on
        Scenario bench = ((Reading.Good) ScenarioReader.read(path)).scenario();
        Warning warning = warning(Measure.atMost(8.1, 6.2, Unit.PH), "");
        assertEquals(
                "pH out, tray left, from Tue 3 Mar 00:00",
                WarningWords.head(List.of(warning), bench, false));
        Log before = new Log(List.of(new LogEntry.Looked(20 * Time.HOUR_S)));
        assertEquals(
                "pH out, tray left, from Tue 3 Mar 00:00",
                WarningWords.head(List.of(warning), bench.withLog(before), false));
        Log during = new Log(List.of(new LogEntry.Looked(30 * Time.HOUR_S)));
        assertEquals(
                "pH out, tray left, since Tue 3 Mar 00:00",
                WarningWords.head(List.of(warning), bench.withLog(during), false));
    }

    @Test
    void what_is_past_of_one_day_bears_one_date() {
        assertEquals(
                "Past, as this run has it: pH out, tray left (3 Mar).",
                WarningWords.past(List.of(warning(Measure.atMost(8.1, 6.2, Unit.PH), "")))
                        .orElseThrow());
    }

    private static Warning ofAir(Warning.Kind kind, Cause cause, Measure measure) {
        LocalDateTime at = LocalDateTime.of(2026, 7, 1, 0, 0);
        return new Warning(
                kind, VesselId.tray("box"), at, at.plusDays(20), measure, cause, List.of());
    }

    @Test
    void long_days_and_heat_say_what_they_do_to_leaf() {
        assertEquals(
                "up to 28.0 degC in the mean of a day; limit: 24.3 degC; leaf of cool seasons bolts"
                        + " or turns bitter in weeks so hot",
                WarningWords.brief(
                        ofAir(
                                Warning.Kind.TOO_HOT,
                                Cause.of(Cause.Kind.BOLTS_IN_HEAT),
                                Measure.atMost(28, 24.3, Unit.CELSIUS))));
        assertEquals(
                "up to 15 hours; limit: 14 hours; it bolts in days so long",
                WarningWords.brief(
                        ofAir(
                                Warning.Kind.DAY_TOO_LONG,
                                Cause.of(Cause.Kind.BOLTS_IN_LONG_DAYS),
                                Measure.atMost(15, 14, Unit.HOURS))));
    }

    @Test
    void light_a_little_short_is_a_note_with_its_figures() {
        assertEquals(
                Optional.of(
                        "A little dim, and so much slower: tray box (11.1 mol/m2/day, where 12.0"
                                + " mol/m2/day are asked for): a stronger or nearer lamp."),
                WarningWords.minor(
                        List.of(
                                ofAir(
                                                Warning.Kind.LOW_LIGHT,
                                                Cause.of(Cause.Kind.TOO_LITTLE_LIGHT),
                                                Measure.atLeast(11.1, 12, Unit.MOL_PER_M2_DAY))
                                        .withCures(List.of(Cure.of(Cure.Kind.STRONGER_LAMP))))));
    }
}
