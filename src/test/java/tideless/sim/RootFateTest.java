package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.crop.CropTraits;
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

    private final EventLog log = new EventLog();
    private RootFate roots = standing(WET_M);
    private double atS;

    private static RootFate standing(double levelM) {
        return new RootFate(TOMATO, CUP_M, DEPTH_M, levelM, ROOT_M, VesselId.tray("t"));
    }

    private void stand(double levelM, double spanS) {
        double endS = atS + spanS;
        while (atS < endS - 1e-6) {
            double stepS = Math.min(MINUTE_S, endS - atS);
            atS += stepS;
            roots.step(levelM, DEMAND_KG_PER_S, LEAF_M2, atS, stepS, log);
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
        assertEquals(reserveS() - MINUTE_S, roots.dayStrandedS(), 1e-6);
        stand(0, 2 * MINUTE_S);
        assertTrue(roots.isWilted());
        assertEquals(List.of(Event.Kind.STRANDED, Event.Kind.WILTED), told());
    }

    @Test
    void twice_the_demand_halves_the_reserve() {
        double halfS = 0.5 * reserveS();
        roots.step(0, 2 * DEMAND_KG_PER_S, LEAF_M2, halfS - MINUTE_S, halfS - MINUTE_S, log);
        assertFalse(roots.isWilted());
        roots.step(0, 2 * DEMAND_KG_PER_S, LEAF_M2, halfS + MINUTE_S, 2 * MINUTE_S, log);
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
}
