package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.crop.CropTraits;
import tideless.crop.Hunger;
import tideless.crop.Transplant;
import tideless.rig.Planting;
import tideless.rig.VesselId;
import tideless.scenario.Crops;
import tideless.solution.Component;

/** A stand of plants by itself: fed with days, not with a rig. */
class CropStandTest {
    private static final CropTraits LETTUCE = Crops.named("lettuce");
    private static final double GOOD_EC = 1.2;
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
                        harvestAfterDays),
                VesselId.tray("t"));
    }

    private static double[] steady() {
        double[] molPerM3 = new double[Component.COUNT];
        for (int i = 0; i < molPerM3.length; i++) {
            molPerM3[i] = Rigs.FEED.molPerM3(i);
        }
        return molPerM3;
    }

    /** A day of 16 h light of 250 umol/m2/s at 22 degC in which all that is asked is taken up. */
    private void live(
            CropStand stand, int day, double ec, double strandedS, double drownedS, boolean fed) {
        double[] uptake = new double[Component.COUNT];
        for (int i = 0; i < uptake.length; i++) {
            uptake[i] = fed ? stand.nutrients.molPerS[i] * 86400 : 0;
        }
        stand.nutrients.meet(uptake);
        stand.transpired(TRANSPIRED_M3);
        stand.day.add(250, 250e-6 * 57600, 250 / 4.57, 22, 400, 57600);
        stand.day.add(0, 0, 0, 22, 400, 28800);
        stand.endDay(day * 86400.0, day, ec, steady(), strandedS, drownedS, log);
    }

    private double growthG(double ec, double strandedS, double drownedS) {
        CropStand stand = stand(OptionalInt.empty());
        double before = stand.plant().dryG();
        live(stand, 1, ec, strandedS, drownedS, true);
        return stand.plant().dryG() - before;
    }

    @Test
    void a_day_on_the_reserve_grows_by_the_share_it_was_wet() {
        double whole = growthG(GOOD_EC, 0, 0);
        assertTrue(whole > 0);
        assertEquals(0.75 * whole, growthG(GOOD_EC, 21600, 0), 1e-12);
        assertEquals(0, growthG(GOOD_EC, 86400, 0), 1e-12);
    }

    @Test
    void a_day_with_drowned_air_roots_grows_by_half() {
        double whole = growthG(GOOD_EC, 0, 0);
        assertEquals(0.5 * whole, growthG(GOOD_EC, 0, 86400), 1e-12);
        assertEquals(0.875 * whole, growthG(GOOD_EC, 0, 21600), 1e-12);
    }

    @Test
    void salt_slows_growth_and_transpiration_by_the_crops_own_slope() {
        double salty = growthG(8, 0, 0) / growthG(GOOD_EC, 0, 0); // far above lettuce's threshold
        assertTrue(salty > 0 && salty < 1, "" + salty);
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
            live(fed, day, GOOD_EC, 0, 0, true);
            live(starved, day, GOOD_EC, 0, 0, false);
        }
        assertTrue(starved.nutrients.growthFrac() < 0.5);
        assertTrue(starved.plant().dryG() < fed.plant().dryG());
    }

    @Test
    void a_stated_harvest_comes_on_its_day_and_ends_the_demand() {
        CropStand stand = stand(OptionalInt.of(3));
        live(stand, 1, GOOD_EC, 0, 0, true);
        live(stand, 2, GOOD_EC, 0, 0, true);
        assertFalse(stand.isHarvested());
        assertTrue(stand.nutrients.molPerS[Component.NO3.ordinal()] > 0);
        live(stand, 3, GOOD_EC, 0, 0, true);
        assertTrue(stand.isHarvested());
        assertEquals(0, stand.nutrients.molPerS[Component.NO3.ordinal()]);
        assertEquals(List.of(Event.Kind.HARVEST), log.inOrder().stream().map(Event::kind).toList());
    }
}
