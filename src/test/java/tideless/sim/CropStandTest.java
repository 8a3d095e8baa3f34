package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.crop.CropTraits;
import tideless.crop.Hunger;
import tideless.crop.Transplant;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.VesselId;
import tideless.scenario.Crops;
import tideless.solution.Component;

/** A stand of plants by itself: fed with days, not with a rig. */
class CropStandTest {
    private static final CropTraits LETTUCE = Crops.named("lettuce");
    private static final double TRANSPIRED_M3 = 2e-4;

    private final EventLog log = new EventLog();

    private static CropStand stand(OptionalInt harvestAfterDays) {
        return new CropStand(
                new Planting.OfCrop(
                        LETTUCE,
                        2,
                        0.1,
                        14,
                        Transplant.AS_RAISED,
                        Planting.ThirstModel.CANOPY,
                        harvestAfterDays,
                        OptionalDouble.empty(),
                        Tending.NONE),
                VesselId.tray("t"));
    }

    private static double[] steady() {
        double[] molPerM3 = new double[Component.COUNT];
        for (int i = 0; i < molPerM3.length; i++) {
            molPerM3[i] = Rigs.FEED.molPerM3(i);
        }
        return molPerM3;
    }

    /** A day of a sound root zone; a part of it without any supply. */
    private static RootDay roots(double salt, double air, double airRoots, double dryS) {
        RootDay day = new RootDay();
        double wetM3 = 1e-9 * (86400 - dryS);
        day.add(1.2, salt, salt, air, airRoots, 22, wetM3, wetM3, 86400 - dryS);
        day.add(1.2, salt, salt, air, airRoots, 22, 1e-9 * dryS, 0, dryS);
        return day;
    }

    private void live(CropStand stand, int day, double dryS, double drownedS, boolean fed) {
        live(stand, day, roots(1, 1, 1, dryS), drownedS, 1, fed);
    }

    /** A day of 16 h light of 250 umol/m2/s at 22 degC in which all that is asked is taken up. */
    private void live(
            CropStand stand,
            int day,
            RootDay roots,
            double drownedS,
            double recovery,
            boolean fed) {
        double[] uptake = new double[Component.COUNT];
        for (int i = 0; i < uptake.length; i++) {
            uptake[i] = fed ? stand.nutrients.molPerS[i] * 86400 : 0;
        }
        stand.nutrients.meet(uptake);
        stand.transpired(TRANSPIRED_M3);
        stand.day.add(250, 250e-6 * 57600, 250 / 4.57, 22, 400, 57600);
        stand.day.add(0, 0, 0, 22, 400, 28800);
        stand.endDay(day * 86400.0, day, steady(), roots, drownedS, recovery, log);
        stand.tend(day * 86400.0, day, log);
    }

    private double growthG(double dryS, double drownedS) {
        return growthG(roots(1, 1, 1, dryS), drownedS, 1);
    }

    private double growthG(RootDay roots, double drownedS, double recovery) {
        CropStand stand = stand(OptionalInt.empty());
        double before = stand.plant().dryG();
        live(stand, 1, roots, drownedS, recovery, true);
        return stand.plant().dryG() - before;
    }

    @Test
    void a_day_without_water_grows_by_the_share_of_thirst_that_was_met() {
        double whole = growthG(0, 0);
        assertTrue(whole > 0);
        assertEquals(0.75 * whole, growthG(21600, 0), 1e-12);
        assertEquals(0, growthG(86400, 0), 1e-12);
    }

    @Test
    void a_day_with_drowned_air_roots_grows_by_half() {
        double whole = growthG(0, 0);
        assertEquals(0.5 * whole, growthG(0, 86400), 1e-12);
        assertEquals(0.875 * whole, growthG(0, 21600), 1e-12);
    }

    @Test
    void salt_air_and_wilting_gone_by_each_take_their_share_of_growth() {
        double whole = growthG(0, 0);
        assertEquals(0.8 * whole, growthG(roots(0.8, 1, 1, 0), 0, 1), 1e-12);
        assertEquals(0.7 * whole, growthG(roots(1, 0.7, 1, 0), 0, 1), 1e-12);
        assertEquals(0.83 * whole, growthG(roots(1, 1, 0.83, 0), 0, 1), 1e-12);
        assertEquals(0.6 * whole, growthG(roots(1, 1, 1, 0), 0, 0.6), 1e-12);
        // Drowned roots are short of air: the worse of the two counts, not both.
        assertEquals(0.5 * whole, growthG(roots(1, 0.7, 1, 0), 86400, 1), 1e-12);
    }

    // Lettuce's root zone at 30.5 degC leaves 1 - 0.55 x 4.5/9 of growth.
    @Test
    void a_warm_root_zone_costs_growth_beside_the_air() {
        RootDay warm = new RootDay();
        warm.add(1.2, 1, 1, 1, 1, 30.5, 1e-4, 1e-4, 86400);
        assertEquals(0.725 * growthG(0, 0), growthG(warm, 0, 1), 1e-12);
    }

    @Test
    void roots_leave_their_plug_over_four_days_and_grow_only_while_there_is_water() {
        CropStand stand = stand(OptionalInt.empty());
        double dayM = LETTUCE.roots().elongationMPerDay();
        double[] daysOfGrowth = {0.125, 0.5, 1.125, 2}; // 1/8, 3/8, 5/8, 7/8 of a day's each
        for (int day = 1; day <= 4; day++) {
            live(stand, day, 0, 0, true);
            assertEquals(daysOfGrowth[day - 1] * dayM, stand.plant().rootLengthM(), 1e-12);
        }
        live(stand, 5, 0, 0, true);
        assertEquals(3 * dayM, stand.plant().rootLengthM(), 1e-12);
        live(stand, 6, 43200, 0, true);
        assertEquals(3.5 * dayM, stand.plant().rootLengthM(), 1e-12);
        live(stand, 7, 86400, 0, true);
        assertEquals(3.5 * dayM, stand.plant().rootLengthM(), 1e-12);
    }

    @Test
    void
            a_plant_is_not_held_back_until_a_fifth_of_its_content_is_missing_and_stops_at_two_fifths() {
        CropStand stand = stand(OptionalInt.empty());
        double[] held = new double[Component.COUNT];
        double fruitG = stand.plant().fruitDryG();
        Hunger.demandMol(LETTUCE, stand.plant().dryG() - fruitG, fruitG, held);
        int k = Component.K.ordinal();
        double[] uptake = new double[Component.COUNT];
        uptake[k] = -0.1999 * 2 * held[k];
        stand.nutrients.meet(uptake);
        assertEquals(1, stand.nutrients.growthFrac());
        uptake[k] = -0.2001 * 2 * held[k]; // 0.4 in all: half way from 0.8 to 0.4 of its content
        stand.nutrients.meet(uptake);
        assertEquals(0.5, stand.nutrients.growthFrac(), 1e-12);
        uptake[k] = -0.2001 * 2 * held[k];
        stand.nutrients.meet(uptake);
        assertEquals(0, stand.nutrients.growthFrac());
    }

    @Test
    void plants_that_take_up_nothing_starve() {
        CropStand fed = stand(OptionalInt.empty());
        CropStand starved = stand(OptionalInt.empty());
        for (int day = 1; day <= 10; day++) {
            live(fed, day, 0, 0, true);
            live(starved, day, 0, 0, false);
        }
        assertTrue(starved.nutrients.growthFrac() < 0.5);
        assertTrue(starved.plant().dryG() < fed.plant().dryG());
    }

    @Test
    void a_stand_is_ready_on_its_stated_day_and_asks_for_food_until_it_is_cut() {
        CropStand stand = stand(OptionalInt.of(3));
        live(stand, 1, 0, 0, true);
        live(stand, 2, 0, 0, true);
        assertFalse(stand.isReady());
        live(stand, 3, 0, 0, true);
        assertTrue(stand.isReady());
        assertFalse(stand.isHarvested());
        assertTrue(stand.nutrients.molPerS[Component.NO3.ordinal()] > 0);
        stand.harvest(3.5 * 86400, "", log);
        assertTrue(stand.isHarvested());
        assertEquals(0, stand.nutrients.molPerS[Component.NO3.ordinal()]);
        assertEquals(List.of(Event.Kind.HARVEST), log.inOrder().stream().map(Event::kind).toList());
    }

    private static CropStand tended(int plants, Tending.Act... acts) {
        return new CropStand(
                new Planting.OfCrop(
                        LETTUCE,
                        plants,
                        0.1,
                        14,
                        Transplant.AS_RAISED,
                        Planting.ThirstModel.CANOPY,
                        OptionalInt.empty(),
                        OptionalDouble.empty(),
                        new Tending(List.of(acts), Optional.empty())),
                VesselId.tray("t"));
    }

    /** What a stand asks for in the ten days from a day on, of potassium, mol. */
    private double askedMol(CropStand stand, int days) {
        double sum = 0;
        for (int day = 1; day <= days; day++) {
            live(stand, day, 0, 0, true);
            sum += stand.nutrients.molPerS[Component.K.ordinal()] * 86400;
        }
        return sum;
    }

    @Test
    void thinned_plants_have_the_ground_of_all_and_ask_for_their_own_share() {
        CropStand whole = tended(8);
        CropStand thinned = tended(8, new Tending.Thinning(12, 4));
        CropStand four = tended(4);
        askedMol(whole, 12);
        askedMol(thinned, 12);
        askedMol(four, 12);
        int k = Component.K.ordinal();
        assertEquals(0.5 * whole.nutrients.molPerS[k], thinned.nutrients.molPerS[k], 1e-15);
        assertEquals(0.5 * whole.leafM2(), thinned.leafM2(), 1e-12);
        assertEquals(4, thinned.plants());
        assertEquals(whole.plant(), thinned.plant());
        assertEquals(four.coverFrac() < whole.coverFrac(), thinned.coverFrac() < whole.coverFrac());
        live(whole, 13, 0, 0, true);
        live(thinned, 13, 0, 0, true);
        assertTrue(thinned.plant().dryG() > 1.02 * whole.plant().dryG());
        Event event = log.inOrder().stream().filter(e -> e.freshG() > 0).findFirst().orElseThrow();
        assertEquals(Event.Kind.THINNED, event.kind());
        assertEquals("4", event.detail());
    }

    @Test
    void a_picked_leaf_takes_what_it_holds_and_lacks_with_it() {
        CropStand hungry = tended(2);
        CropStand picked = tended(2, new Tending.LeafPicking(10, 0.4));
        for (int day = 1; day <= 10; day++) {
            live(hungry, day, 0, 0, day < 5);
            live(picked, day, 0, 0, day < 5);
        }
        double before = hungry.nutrients.growthFrac();
        assertTrue(before < 1, "" + before);
        assertEquals(before, picked.nutrients.growthFrac(), 1e-12);
        double shoot = hungry.plant().leafDryG() + hungry.plant().stemDryG();
        double kept = 1 - 0.4 * shoot / hungry.plant().dryG();
        int n = Component.NO3.ordinal();
        assertEquals(kept * hungry.nutrients.molPerS[n], picked.nutrients.molPerS[n], 1e-15);
        Event event = log.inOrder().get(log.inOrder().size() - 1);
        assertEquals(Event.Kind.LEAVES_PICKED, event.kind());
        assertEquals(2 * 0.4 * hungry.freshG(), event.freshG(), 1e-9);
    }

    @Test
    void plants_moved_apart_have_more_ground_from_that_day_on() {
        CropStand still = tended(8);
        CropStand apart = tended(8, new Tending.Spacing(12, 0.4));
        askedMol(still, 12);
        askedMol(apart, 12);
        assertTrue(apart.leafAreaIndex() < still.leafAreaIndex());
        assertEquals(still.plant(), apart.plant());
        live(still, 13, 0, 0, true);
        live(apart, 13, 0, 0, true);
        assertTrue(apart.plant().dryG() > 1.02 * still.plant().dryG());
        assertEquals("20", log.inOrder().get(0).detail());
    }
}
