package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.crop.CropTraits;
import tideless.rig.Deck;
import tideless.rig.TestDeck;
import tideless.rig.VesselId;
import tideless.scenario.Crops;

/**
 * Every turn in the life of hanging roots, a minute before and a minute past its limit. The limits
 * are the crop file's own; that they are these and no others is what is shown.
 */
class RootFateTest {
    private static final CropTraits TOMATO = Crops.named("tomato");
    private static final double CUP_M = 0.060;
    private static final double DEPTH_M = 0.100;
    private static final double ROOT_M = 0.040;
    private static final double TIP_M = CUP_M - ROOT_M;
    private static final double LEAF_M2 = 2;

    /**
     * 1 mm a day from the leaves: at that demand the reserve of the crop file holds as it stands.
     */
    private static final double DEMAND_KG_PER_S = LEAF_M2 / 86400;

    private static final double WET_M = 0.030;
    private static final double MINUTE_S = 60;

    /** Dry mass of roots that give up a litre: 0.4 mL for each fresh gram, 6 % of it dry. */
    private static final double ROOT_G_OF_A_LITRE = 1000 / 0.4 * 0.06;

    private final EventLog log = new EventLog();
    private RootFate roots = standing(WET_M);
    private double atS;
    private boolean supplied = true;
    private boolean seedlings;

    private static RootFate standing(double levelM) {
        return standing(levelM, TestDeck.drowning());
    }

    private static RootFate standing(double levelM, Deck deck) {
        return new RootFate(TOMATO, CUP_M, DEPTH_M, levelM, ROOT_M, deck, VesselId.tray("t"));
    }

    /** A cup that is to be wet by 1 cm for each day ahead, by 2 cm at most. */
    @ParameterizedTest
    @CsvSource({
        // begun, level, days ahead, filled to: all m above the cup's bottom but the days
        "0.010,  0.012, 1, mark", // wet for a day
        "0.010,  0.008, 1, 0.010", // not quite
        "0.010,  0.010, 2, 0.010", // wet for one day of two
        "0.030,  0.021, 7, mark", // more than 2 cm is enough for any absence
        "0.030,  0.019, 7, 0.020", // and nobody wets a cup by more
        "-0.080, 0.000, 1, mark" // nobody drowns what began below the mark
    })
    void cups_of_young_plants_are_wetted_to_where_they_began(
            double begunM, double levelM, int daysAhead, String filledM) {
        double markM = CUP_M - 0.05;
        RootFate young =
                new RootFate(
                        TOMATO,
                        CUP_M,
                        DEPTH_M,
                        CUP_M + begunM,
                        0,
                        TestDeck.drowning(),
                        VesselId.tray("t"));
        double to = filledM.equals("mark") ? markM : CUP_M + Double.parseDouble(filledM);
        assertEquals(to, young.youngMarkM(markM, CUP_M + levelM, daysAhead), 1e-12);
    }

    private void stand(double levelM, double spanS) {
        double endS = atS + spanS;
        while (atS < endS - 1e-6) {
            double stepS = Math.min(MINUTE_S, endS - atS);
            atS += stepS;
            roots.step(
                    levelM, supplied, DEMAND_KG_PER_S, LEAF_M2, 1, 0, seedlings, atS, stepS, log);
            roots.meet(levelM);
        }
    }

    /** Days at a level, each closed at midnight. */
    private void live(double levelM, int days) {
        for (int day = 0; day < days; day++) {
            stand(levelM, 86400);
            roots.endDay(levelM);
        }
    }

    private List<Event.Kind> told() {
        return log.inOrder().stream().map(Event::kind).toList();
    }

    private double reserveS() {
        return TOMATO.roots().dryReserveH() * 3600;
    }

    private double wiltToDeathS() {
        return TOMATO.roots().wiltToDeathH() * 3600;
    }

    @Test
    void roots_are_stranded_when_the_level_stands_at_their_tips_and_not_a_micrometre_above() {
        stand(TIP_M + 1e-6, MINUTE_S);
        assertFalse(roots.isStranded());
        stand(TIP_M, MINUTE_S);
        assertTrue(roots.isStranded());
        assertEquals(List.of(Event.Kind.STRANDED), told());
        assertEquals(2 * MINUTE_S, log.inOrder().get(0).atS());
    }

    @Test
    void longer_roots_reach_a_level_that_stranded_them() {
        stand(TIP_M - 0.005, MINUTE_S);
        assertTrue(roots.isStranded());
        roots.reach(ROOT_M + 0.006);
        stand(TIP_M - 0.005, MINUTE_S);
        assertFalse(roots.isStranded());
        assertEquals(List.of(Event.Kind.STRANDED, Event.Kind.REWETTED), told());
    }

    @Test
    void stranded_plants_wilt_when_their_reserve_is_spent_and_not_before() {
        stand(0, reserveS() - MINUTE_S);
        assertFalse(roots.isWilted());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isWilted());
        assertEquals(List.of(Event.Kind.STRANDED, Event.Kind.WILTED), told());
    }

    @Test
    void twice_the_demand_halves_the_reserve() {
        double halfS = 0.5 * reserveS();
        roots.step(0, true, 2 * DEMAND_KG_PER_S, LEAF_M2, 1, 0, false, halfS - 60, halfS - 60, log);
        assertFalse(roots.isWilted());
        roots.step(0, true, 2 * DEMAND_KG_PER_S, LEAF_M2, 1, 0, false, halfS + 60, 120, log);
        assertTrue(roots.isWilted());
    }

    @Test
    void water_in_time_restores_the_whole_reserve() {
        stand(0, reserveS() - MINUTE_S);
        stand(WET_M, MINUTE_S);
        stand(0, reserveS() - MINUTE_S);
        assertFalse(roots.isWilted());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isWilted());
    }

    // 2 L a day from one cup of a litre: half a day.
    @Test
    void a_plant_drinks_what_its_cup_holds_before_it_is_stranded() {
        roots = standing(WET_M, TestDeck.cupWaterM3(1e-3));
        stand(0, 0.5 * 86400 * 0.9982 - MINUTE_S);
        assertTrue(roots.drinksCupWater());
        assertFalse(roots.isStranded());
        stand(0, 2 * MINUTE_S);
        assertFalse(roots.drinksCupWater());
        assertTrue(roots.isStranded());
        stand(0, reserveS() - 3 * MINUTE_S);
        assertFalse(roots.isWilted());
        stand(0, 4 * MINUTE_S);
        assertTrue(roots.isWilted());
    }

    @Test
    void a_cup_is_filled_again_when_the_roots_are_wetted() {
        roots = standing(WET_M, TestDeck.cupWaterM3(1e-3));
        stand(0, 40000);
        stand(WET_M, MINUTE_S);
        stand(0, 0.5 * 86400 * 0.9982 - MINUTE_S);
        assertFalse(roots.isStranded());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isStranded());
    }

    // 150 mL in the library's pot, 2 L a day: 1.8 hours.
    @Test
    void a_plug_holds_water_in_the_days_after_planting_and_later_no_more() {
        roots = standing(WET_M, Deck.PLAIN);
        stand(0, MINUTE_S);
        assertTrue(roots.isStranded());
        roots = standing(WET_M, Deck.PLAIN);
        seedlings = true;
        double heldS = TOMATO.nursery().plugWaterM3() / 2e-3 * 86400;
        stand(0, heldS - MINUTE_S);
        assertFalse(roots.isStranded());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isStranded());
    }

    @Test
    void wilted_plants_take_up_nothing_until_they_are_wetted() {
        assertEquals(1, roots.supplyFrac(WET_M));
        stand(0, reserveS() + MINUTE_S);
        assertEquals(0, roots.supplyFrac(WET_M));
        stand(WET_M, MINUTE_S);
        assertEquals(1, roots.supplyFrac(WET_M));
        assertEquals(
                List.of(
                        Event.Kind.STRANDED,
                        Event.Kind.WILTED,
                        Event.Kind.REWETTED,
                        Event.Kind.RECOVERED),
                told());
    }

    @Test
    void a_tenth_of_the_span_supplies_the_whole_demand_and_half_of_that_half() {
        // As RootZone says, and assumed there.
        assertEquals(1, roots.supplyFrac(TIP_M + 0.1 * ROOT_M), 1e-12);
        assertEquals(0.5, roots.supplyFrac(TIP_M + 0.05 * ROOT_M), 1e-12);
        assertEquals(0, roots.supplyFrac(TIP_M));
    }

    @Test
    void wilted_plants_die_after_the_time_of_the_crop_and_not_before() {
        stand(0, reserveS());
        assertTrue(roots.isWilted());
        stand(0, wiltToDeathS() - 2 * MINUTE_S);
        assertFalse(roots.isDead());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isDead());
        assertEquals(List.of(Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.DIED), told());
    }

    @Test
    void a_plant_that_recovered_has_the_whole_time_to_death_again() {
        stand(0, reserveS() + wiltToDeathS() - 2 * MINUTE_S);
        stand(WET_M, MINUTE_S);
        stand(0, reserveS() + wiltToDeathS() - 2 * MINUTE_S);
        assertFalse(roots.isDead());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isDead());
    }

    @Test
    void on_the_first_day_roots_bear_any_level() {
        assertEquals(DEPTH_M, roots.highestBorneM());
        stand(DEPTH_M, MINUTE_S);
        assertFalse(roots.isDrowned());
    }

    @Test
    void air_roots_drown_above_the_rise_the_crop_bears_and_not_at_it() {
        live(WET_M, 1);
        double borneM = WET_M + TOMATO.roots().riseBorneM();
        assertEquals(borneM, roots.highestBorneM(), 1e-12);
        stand(borneM - 1e-9, MINUTE_S);
        assertFalse(roots.isDrowned());
        roots = standing(WET_M);
        live(WET_M, 1);
        stand(borneM + 1e-9, MINUTE_S);
        assertTrue(roots.isDrowned());
        assertEquals(MINUTE_S, roots.dayDrownedS());
        assertEquals(Event.Kind.DROWNED, told().get(told().size() - 1));
    }

    /** A valve fills in hours what a jug fills at once; over days they get used to it. */
    @Test
    void a_rise_within_the_day_drowns_them_however_slowly_it_comes() {
        live(WET_M, 8);
        double borneM = TOMATO.roots().riseBorneM();
        for (int tenth = 1; tenth <= 10; tenth++) {
            stand(WET_M + borneM * tenth / 10, 7200);
        }
        assertFalse(roots.isDrowned());
        stand(WET_M + borneM + 1e-6, MINUTE_S);
        assertTrue(roots.isDrowned());
    }

    @Test
    void a_rise_from_day_to_day_is_one_they_get_used_to() {
        live(WET_M, 8);
        live(WET_M + 0.015, 1);
        live(WET_M + 0.030, 1);
        assertFalse(roots.isDrowned());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-6})
    void drowned_to_the_cup_they_die_after_the_days_of_the_crop_and_not_before(double above) {
        live(WET_M, 1);
        double deathS = TOMATO.roots().drownedDeathDays() * 86400;
        assertTrue(deathS <= RootFate.MEMORY_DAYS * 86400.0);
        stand(CUP_M + above, deathS - MINUTE_S);
        assertTrue(roots.isDrowned());
        assertFalse(roots.isDead());
        stand(CUP_M + above, MINUTE_S);
        assertTrue(roots.isDead());
    }

    @Test
    void with_roots_left_in_air_they_live_and_after_seven_days_they_are_used_to_it() {
        live(WET_M, 1);
        double levelM = CUP_M - 1e-6;
        assertTrue(levelM > roots.highestBorneM());
        stand(levelM, RootFate.MEMORY_DAYS * 86400.0 - MINUTE_S);
        assertTrue(roots.isDrowned());
        assertFalse(roots.isDead());
        stand(levelM, MINUTE_S);
        assertFalse(roots.isDrowned());
        assertEquals(levelM + TOMATO.roots().riseBorneM(), roots.highestBorneM(), 1e-12);
    }

    @Test
    void a_minute_back_in_air_starts_the_days_of_drowning_anew() {
        live(WET_M, 1);
        double deathS = TOMATO.roots().drownedDeathDays() * 86400;
        stand(CUP_M, deathS - MINUTE_S);
        stand(WET_M, MINUTE_S);
        stand(CUP_M, deathS - MINUTE_S);
        assertFalse(roots.isDead());
        stand(CUP_M, MINUTE_S);
        assertTrue(roots.isDead());
    }

    @Test
    void a_high_level_is_remembered_for_seven_days_and_forgotten_on_the_eighth() {
        stand(0.050, MINUTE_S);
        stand(WET_M, 86400 - MINUTE_S);
        roots.endDay(WET_M);
        live(WET_M, RootFate.MEMORY_DAYS - 1);
        assertEquals(0.050 + TOMATO.roots().riseBorneM(), roots.highestBorneM(), 1e-12);
        live(WET_M, 1);
        assertEquals(WET_M + TOMATO.roots().riseBorneM(), roots.highestBorneM(), 1e-12);
    }

    @Test
    void a_level_that_drowned_them_is_not_one_they_are_used_to() {
        live(WET_M, 1);
        double borneM = roots.highestBorneM();
        live(CUP_M - 1e-6, 2);
        assertTrue(roots.isDrowned());
        assertEquals(borneM, roots.highestBorneM(), 1e-12);
    }

    @Test
    void nobody_drowns_to_death_unless_the_tray_says_so() {
        roots = standing(WET_M, Deck.PLAIN);
        live(WET_M, 1);
        stand(CUP_M, RootFate.MEMORY_DAYS * 86400.0 - MINUTE_S);
        assertTrue(roots.isDrowned());
        stand(CUP_M, 2 * MINUTE_S);
        assertFalse(roots.isDead());
        assertFalse(roots.isDrowned());
    }

    @Test
    void wet_roots_without_a_supply_are_stranded_all_the_same() {
        supplied = false;
        stand(WET_M, MINUTE_S);
        assertTrue(roots.isStranded());
        supplied = true;
        stand(WET_M, MINUTE_S);
        assertFalse(roots.isStranded());
        assertEquals(List.of(Event.Kind.STRANDED, Event.Kind.REWETTED), told());
    }

    @Test
    void wilting_of_less_than_six_hours_leaves_nothing_behind() {
        stand(0, reserveS() + 6 * 3600 - 2 * MINUTE_S);
        stand(WET_M, MINUTE_S);
        assertEquals("", log.inOrder().get(3).detail());
        assertEquals(1, roots.recoveryGrowthFrac(atS));
    }

    @Test
    void wilting_of_six_hours_checks_growth_for_three_days() {
        stand(0, reserveS() + 6 * 3600 + MINUTE_S);
        stand(WET_M, MINUTE_S);
        assertEquals("growth held back for three days", log.inOrder().get(3).detail());
        assertEquals(0.7, roots.recoveryGrowthFrac(atS + 3 * 86400 - 1), 1e-12);
        assertEquals(1, roots.recoveryGrowthFrac(atS + 3 * 86400));
    }

    @Test
    void wilting_of_a_day_costs_a_week_and_a_short_one_in_it_gives_nothing_back() {
        stand(0, reserveS() + 24 * 3600 + MINUTE_S);
        stand(WET_M, MINUTE_S);
        assertEquals("a week lost to new roots", log.inOrder().get(3).detail());
        assertEquals(0, roots.recoveryGrowthFrac(atS + 7 * 86400 - 1));
        assertEquals(1, roots.recoveryGrowthFrac(atS + 7 * 86400));
        stand(0, reserveS() + 3600);
        stand(WET_M, MINUTE_S);
        assertEquals(0, roots.recoveryGrowthFrac(atS));
    }

    @Test
    void a_wilted_seedling_is_lost_after_a_day_and_not_before() {
        seedlings = true;
        stand(0, reserveS() + 24 * 3600 - 2 * MINUTE_S);
        assertTrue(roots.isWilted());
        assertFalse(roots.isDead());
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isDead());
    }

    // 2 m2 at 1 mm a day drink 2 L a day; a litre in the cups is half a day more.
    @Test
    void water_in_the_cups_and_roots_stands_by_beside_the_leaves() {
        double more = 0.5 * 86400 * 998.2 / 1000;
        double stands = reserveS() + more;
        roots.step(
                0,
                true,
                DEMAND_KG_PER_S,
                LEAF_M2,
                1,
                ROOT_G_OF_A_LITRE,
                false,
                stands - 60,
                stands - 60,
                log);
        assertFalse(roots.isWilted());
        roots.step(
                0,
                true,
                DEMAND_KG_PER_S,
                LEAF_M2,
                1,
                ROOT_G_OF_A_LITRE,
                false,
                stands + 60,
                120,
                log);
        assertTrue(roots.isWilted());
    }

    // In the dark the leaves lose a tenth of a millimetre a day all the same: ten times the
    // reserve.
    @Test
    void without_light_the_reserve_lasts_ten_times_as_long_and_no_longer() {
        double stands = 10 * reserveS();
        roots.step(0, true, 0, LEAF_M2, 1, 0, false, stands - 60, stands - 60, log);
        assertFalse(roots.isWilted());
        roots.step(0, true, 0, LEAF_M2, 1, 0, false, stands + 60, 120, log);
        assertTrue(roots.isWilted());
    }

    // Cups 40 mm below a deck at 100 mm, roots 40 mm: the roots span 80 mm from the deck.
    @Test
    void roots_stand_in_the_solution_by_their_share_below_the_level() {
        assertEquals(0.125, roots.soakedFrac(0.030), 1e-12);
        assertEquals(1, roots.soakedFrac(0.100), 1e-12);
        assertEquals(0, roots.soakedFrac(0.010), 1e-12);
        assertEquals(0.070, roots.airGapM(0.030), 1e-12);
    }

    @Test
    void below_a_floating_deck_cups_and_tips_follow_the_level_down_to_its_support() {
        roots = standing(0.09, TestDeck.floatingDownToM(0.050));
        assertEquals(0, roots.airGapM(0.090), 1e-12);
        assertEquals(0.010, roots.tipM(0.090), 1e-12);
        assertEquals(1, roots.wetFrac(0.090), 1e-12);
        assertEquals(0.020, roots.airGapM(0.030), 1e-12);
        assertEquals(0, roots.tipM(0.030), 1e-12); // cups at 10 mm, roots longer than that
    }
}
