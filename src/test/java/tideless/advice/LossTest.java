package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Climate;
import tideless.rig.VesselId;
import tideless.sim.GrowthLost;
import tideless.sim.Rigs;
import tideless.sim.Stress;
import tideless.sim.TraySeries;
import tideless.words.CropWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/** What a root zone takes of a crop: in the verdict, and in the order of warnings. */
class LossTest {
    private static final VesselId GUTTER = VesselId.tray("gutter");
    private static final LocalDateTime AT = LocalDateTime.of(2026, 4, 3, 8, 0);

    private static Warning warning(Warning.Kind kind, double loss) {
        return new Warning(
                kind,
                GUTTER,
                AT,
                AT.plusDays(20),
                Measure.atMost(5, 4, Unit.MS_PER_CM),
                new Cause(Cause.Kind.SALTS_STAY_BEHIND, Facts.of(Quantity.LOSS, loss)),
                List.of());
    }

    /**
     * A head that is cut at its weight is only later, and yet somebody mixed it twice as strong.
     */
    @Test
    void a_feed_that_is_itself_too_strong_is_no_note_though_nothing_is_lost() {
        Warning stays = warning(Warning.Kind.TOO_SALTY, 0.01);
        assertTrue(stays.isMinor());
        assertFalse(
                stays.withCause(
                                new Cause(
                                        Cause.Kind.FEED_IS_STRONG,
                                        Facts.of(Quantity.LOSS, 0.01).and(Quantity.FEED_EC, 5)))
                        .isMinor());
    }

    /** Every sound rig in summer has afternoons of warm solution; from 35 degC on roots rot. */
    @ParameterizedTest
    @CsvSource({"34.9, 0.01, true", "35, 0.01, false", "34.9, 0.02, false"})
    void warm_solution_that_takes_next_to_nothing_is_a_note_where_no_root_rots(
            double degC, double loss, boolean minor) {
        Warning warm =
                warning(Warning.Kind.WARM_SOLUTION, loss)
                        .withMeasure(Measure.atMost(degC, 25, Unit.CELSIUS));
        assertEquals(minor, warm.isMinor());
    }

    private static Verdict losing(double frac) {
        return losing(frac, 200 * (1 - frac));
    }

    private static Verdict losing(double frac, double ownG) {
        return new Verdict(
                true,
                Optional.empty(),
                List.of(),
                List.of(new Verdict.WaterLeft(GUTTER, AT, 1000)),
                Optional.empty(),
                List.of(
                        new Verdict.Loss(
                                GUTTER,
                                "",
                                "strawberry",
                                Stress.SALT,
                                frac,
                                frac,
                                ownG,
                                200,
                                Map.of(Stress.SALT, frac),
                                Double.NaN,
                                Double.NaN)));
    }

    /** A quarter is a poor crop, less is none. */
    @ParameterizedTest
    @CsvSource({"0.25, true, 150", "0.249, false, 150"})
    void a_crop_that_lives_and_gives_little_is_not_called_one_that_survives(
            double frac, boolean poor, long grams) {
        String line = VerdictWords.lines(losing(frac)).get(0);
        assertEquals(
                poor
                        ? "The plants live, but give little: tray gutter (strawberry) loses 25 % of the"
                                + " harvest, most of it to salt."
                        : "The crop survives: nothing dies, wilts or dries out.",
                line);
        assertEquals(
                List.of(
                        "tray gutter gives "
                                + grams
                                + " g a plant, of 200 g that roots without harm would"
                                + " give in the same light and air: salt takes 25 %."),
                CropWords.beside(losing(frac)));
    }

    /** Want of air that may be none makes no crop a poor one, but is no share of what is left. */
    @Test
    void what_an_unsure_want_of_air_takes_is_in_the_figures_and_not_in_the_judgement() {
        assertEquals(
                "The plants live, but give little: tray gutter (strawberry) loses 60 % of the"
                        + " harvest, 28 % to salt alone.",
                VerdictWords.lines(losing(0.28, 80)).get(0));
        assertTrue(losing(0.24, 80).poor().isEmpty());
        assertEquals(0.6, losing(0.28, 80).losses().get(0).frac(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"TOO_SALTY, 0.019, true", "TOO_SALTY, 0.021, false", "TOO_STILL, 0.5, true"})
    void what_takes_next_to_nothing_is_a_note(Warning.Kind kind, double loss, boolean minor) {
        assertEquals(minor, warning(kind, loss).isMinor());
    }

    @Test
    void what_takes_more_is_told_first_and_what_kills_before_that() {
        Warning salt = warning(Warning.Kind.TOO_SALTY, 0.3);
        Warning hunger = warning(Warning.Kind.TOO_LEAN, 0.6);
        Warning dry = warning(Warning.Kind.RAN_DRY, 0);
        Warning little = warning(Warning.Kind.SHORT_OF_AIR, 0.1);
        Warning dead = warning(Warning.Kind.DIED, 0);
        List<Warning> sorted =
                List.of(little, dry, hunger, dead, salt).stream()
                        .sorted(Warning.GRAVEST_FIRST)
                        .toList();
        assertEquals(List.of(dead, hunger, salt, little, dry), sorted);
    }

    @Test
    void a_warning_tells_what_it_takes_and_notes_are_one_line() {
        assertTrue(
                WarningWords.brief(warning(Warning.Kind.TOO_SALTY, 0.41))
                        .endsWith("; takes 41 % of the harvest"));
        assertFalse(WarningWords.brief(warning(Warning.Kind.TOO_SALTY, 0.004)).contains("harvest"));
        assertEquals(
                Optional.of("Costs next to nothing: too salty, tray gutter (3 to 23 Apr)."),
                WarningWords.minor(List.of(warning(Warning.Kind.TOO_SALTY, 0.01))));
        assertEquals(Optional.empty(), WarningWords.minor(List.of()));
    }

    /** Exactly a fiftieth is a warning, exactly a quarter a poor crop. */
    @Test
    void limits_of_loss_belong_to_what_is_graver() {
        assertFalse(warning(Warning.Kind.TOO_SALTY, Warning.NOTED_FRAC).isMinor());
        Warning poor = warning(Warning.Kind.TOO_SALTY, Warning.POOR_FRAC);
        Warning dry = warning(Warning.Kind.RAN_DRY, 0);
        assertTrue(Warning.GRAVEST_FIRST.compare(poor, dry) < 0);
        assertTrue(
                Warning.GRAVEST_FIRST.compare(
                                warning(Warning.Kind.OUTGROWN, 0),
                                warning(Warning.Kind.TOO_SALTY, 0.2))
                        < 0);
    }

    /** What no file says is no first change, unless it kills or halves the crop. */
    @Test
    void what_is_done_at_the_rig_is_first_only_where_it_is_grave() {
        Cure stone = Cure.of(Cure.Kind.AIR_STONE);
        Cure feed = Cure.of(Cure.Kind.LEANER_FEED);
        Warning airless = warning(Warning.Kind.SHORT_OF_AIR, 0.1).withCures(List.of(stone, feed));
        Warning salty = warning(Warning.Kind.TOO_SALTY, 0.05).withCures(List.of(feed));
        Climate room = Rigs.room();
        assertEquals(Optional.of(salty), Warning.firstOf(List.of(airless, salty), room));
        assertEquals(Optional.empty(), Warning.firstOf(List.of(airless), room));
        Warning grave = warning(Warning.Kind.SHORT_OF_AIR, 0.3).withCures(List.of(stone));
        assertEquals(Optional.of(grave), Warning.firstOf(List.of(grave, salty), room));
        assertEquals(List.of(feed), airless.without(Cure.Kind.AIR_STONE).cures());
        assertEquals(List.of(stone), airless.without(Cure.Kind.LEANER_FEED).cures());
    }

    /** A fifth that may all be want of air is told, and makes no crop a poor one. */
    @ParameterizedTest
    @CsvSource({"79, 1", "81, 0"})
    void a_fifth_that_want_of_air_likely_takes_is_told_beside_the_harvest(double ownG, int told) {
        Verdict verdict =
                new MadeTrace(14)
                        .losing(new GrowthLost(ownG, 100, Map.of(Stress.AIR, 1.0)))
                        .advice()
                        .verdict();
        assertEquals(told, CropWords.beside(verdict).size());
        assertEquals(List.of(), verdict.poor());
    }

    /** Lettuce wants its roots at 25 degC at most, and 15 at least; its mean here is that told. */
    @ParameterizedTest
    @CsvSource({
        "14, 'a solution too cold for its roots (14.0 degC in the mean, where they want at least '",
        "27, 'a solution too warm for its roots (27.0 degC in the mean, where they want at most '",
        "20, a solution too warm or too cold takes 15 %"
    })
    void what_took_a_share_of_the_harvest_is_named(double solutionC, String told) {
        Map<Stress, Double> shares =
                Map.of(Stress.WARMTH, 0.75, Stress.AIR, 0.24, Stress.SALT, 0.01);
        List<String> lines =
                CropWords.beside(
                        new MadeTrace(14)
                                .losing(new GrowthLost(80, 100, shares))
                                .with(TraySeries.SOLUTION_TEMP, h -> solutionC)
                                .advice()
                                .verdict());
        assertEquals(1, lines.size());
        assertTrue(lines.get(0).contains(told), lines.get(0));
        assertTrue(
                lines.get(0)
                        .endsWith(
                                " 15 %, want of air at the roots (likely, as in much still"
                                        + " solution; more of the roots in air helps) 5 %."),
                lines.get(0));
    }
}
