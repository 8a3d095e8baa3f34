package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Stress;
import tideless.sim.Surroundings;
import tideless.sim.TraySeason;
import tideless.words.AwayWords;

/**
 * Tomatoes on a feed of nearly twice its strength that nobody flushes come through and give little:
 * whoever asks what is enough, how long nobody need come or which design does no harm is told so.
 */
class LossIsHarmTest {
    private static final Scenario CALM = bench("1.2 mS/cm");
    private static final Scenario SALTY = bench("2.2 mS/cm");
    private static final Size.Goal GOAL = new Size.Goal(OptionalInt.empty(), 0.9, 1, 1);

    private static Scenario bench(String ec) {
        return ((Reading.Good)
                        ChangedScenario.read(
                                Path.of("scenarios/low-held-tomatoes.toml"),
                                List.of(
                                        new ChangedScenario.Change("feed.ec", ec),
                                        new ChangedScenario.Change("visits.flush", "never"))))
                .scenario();
    }

    private static Fate fate(Scenario scenario) {
        Scenario coarse = Ensemble.atEnsembleStep(scenario);
        return Fate.of(coarse, Simulation.season(coarse, Surroundings.forSeasons(coarse)));
    }

    @Test
    void it_survives_and_is_harmed_all_the_same() {
        Fate salty = fate(SALTY);
        assertThat(salty.survives()).isTrue();
        assertThat(salty.isUnharmed()).isFalse();
        Outlook.Taken taken = salty.losses().get(0).taken().orElseThrow();
        assertThat(taken.by()).isEqualTo(Stress.SALT);
        assertThat(taken.frac()).isGreaterThan(Outlook.LOSS_BORNE_FRAC);
        assertThat(fate(CALM).isUnharmed()).isTrue();
    }

    @Test
    void what_still_water_and_a_place_cost_is_no_harm() {
        Season season = Simulation.season(CALM, Surroundings.forSeasons(CALM));
        assertThat(losses(season, Stress.AIR)).isEmpty();
        assertThat(losses(season, Stress.WARMTH)).isEmpty();
        assertThat(losses(season, Stress.HUNGER)).hasSize(2);
    }

    /** The same season, half of whose harvest was lost to one stress. */
    private static List<Fate.Harm> losses(Season season, Stress to) {
        List<TraySeason> trays = new ArrayList<>();
        for (TraySeason tray : season.trays()) {
            trays.add(
                    new TraySeason(
                            tray.yields().stream()
                                    .map(
                                            y ->
                                                    new TraySeason.Yield(
                                                            y.freshG(),
                                                            y.fruitFreshG(),
                                                            y.pickedG(),
                                                            Optional.of(
                                                                    new GrowthLost(
                                                                            50,
                                                                            100,
                                                                            Map.of(to, 1.0)))))
                                    .toList(),
                            tray.drunkM3(),
                            tray.dryH(),
                            tray.strandedH(),
                            tray.wiltedH(),
                            tray.drownedH(),
                            tray.shortOfAirH(),
                            tray.lowestOfDayM(),
                            tray.drunkOfDayM3(),
                            tray.filmFromS(),
                            tray.leftOfDay()));
        }
        return Fate.of(
                        CALM,
                        new Season(
                                season.events(),
                                season.water(),
                                season.components(),
                                trays,
                                season.read()))
                .losses();
    }

    @Test
    void no_reservoir_cures_it() throws Exception {
        Size size = Size.leastReservoir(SALTY, "top", GOAL, new InTurn());
        assertThat(size.chanceGiven()).isZero();
        assertThat(size.found()).isEmpty();
        assertThat(AwayWords.harm(size.why().orElseThrow()))
                .matches("salt takes [3-9] tenths of the harvest of tray (upper|lower)");
        assertThat(Size.leastReservoir(CALM, "top", GOAL, new InTurn()).found()).isPresent();
    }

    @Test
    void a_design_of_it_is_not_without_harm() {
        Design salty = design(SALTY);
        assertThat(salty.survives()).isTrue();
        assertThat(salty.isHarmless()).isFalse();
        assertThat(salty.firstHarm().orElseThrow().taken().orElseThrow().by())
                .isEqualTo(Stress.SALT);
        assertThat(design(CALM).isHarmless()).isTrue();
    }

    private static Design design(Scenario scenario) {
        return Compared.of(
                        List.of(new Axis("", "", List.of("one"), List.of(), List.of())),
                        List.of(scenario),
                        false,
                        i -> new Compared.Plan(Optional.of(scenario), ""),
                        1,
                        1,
                        new InTurn())
                .at(0, 0)
                .design()
                .orElseThrow();
    }

    @Test
    void whoever_asks_what_moves_the_verdict_is_told_of_it() {
        Sensitivity salty = Sensitivity.of(SALTY, SALTY.start(), 2, 1, new InTurn());
        assertThat(salty.of(Sensitivity.Asked.COMES_THROUGH).orElseThrow().mean()).isLessThan(0.7);
        Sensitivity calm = Sensitivity.of(CALM, CALM.start(), 2, 1, new InTurn());
        assertThat(calm.of(Sensitivity.Asked.COMES_THROUGH).orElseThrow().mean())
                .isGreaterThan(0.9);
    }

    @Test
    void days_away_end_where_salt_leaves_less_than_half_of_a_days_growth() {
        // As it is looked after, salt halves growth from the 88th day on; with nobody there the
        // solution grows stronger sooner.
        Scenario coarse = Ensemble.atEnsembleStep(SALTY);
        Season season = Simulation.season(coarse, Surroundings.forSeasons(coarse));
        int first = season.trays().stream().mapToInt(LossIsHarmTest::first).min().orElseThrow();
        int leave = first - 10;
        Away.Lasting lasting =
                Away.of(
                                SALTY,
                                new Away.Question(SALTY.start().plusDays(leave), 100, List.of()),
                                1,
                                1,
                                new InTurn())
                        .leaves()
                        .get(0)
                        .asItStands();
        Outlook.LikelyHarm harm = lasting.harm().orElseThrow();
        assertThat(harm.taken().orElseThrow().of()).isEqualTo(Outlook.Taken.Of.GROWTH);
        assertThat(AwayWords.harm(harm)).startsWith("salt stunts tray ");
        assertThat(lasting.days().middle()).isBetween(1.0, 10.0);
        assertThat(days(SALTY, first + 1)).isZero();
    }

    private static int first(TraySeason tray) {
        int day = 0;
        while (tray.leftOfDay().get(day).saltFrac() >= 0.5) {
            day++;
        }
        return day;
    }

    private static double days(Scenario scenario, int fromDay) {
        return Away.of(
                        scenario,
                        new Away.Question(scenario.start().plusDays(fromDay), 100, List.of()),
                        1,
                        1,
                        new InTurn())
                .leaves()
                .get(0)
                .asItStands()
                .days()
                .middle();
    }

    @Test
    void a_run_says_in_how_many_members_a_good_harvest_is_lost() {
        Outlook salty = Outlook.of(SALTY, 4, 1, new InTurn()).orElseThrow();
        assertThat(salty.yields())
                .allSatisfy(y -> assertThat(y.poorShare()).isGreaterThanOrEqualTo(0.5));
        assertThat(salty.harms())
                .extracting(Outlook.LikelyHarm::kind)
                .doesNotContain(Event.Kind.HARVEST);
        Outlook calm = Outlook.of(CALM, 4, 1, new InTurn()).orElseThrow();
        assertThat(calm.yields())
                .allSatisfy(
                        y -> {
                            assertThat(y.poorShare()).isZero();
                            assertThat(y.lostFrac().orElseThrow().middle()).isLessThan(0.2);
                        });
    }
}
