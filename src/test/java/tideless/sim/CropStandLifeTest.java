package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.crop.Canopy;
import tideless.crop.CarbonDioxide;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.crop.Transplant;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.VesselId;
import tideless.scenario.Crops;
import tideless.solution.Component;

/** Stages of a stand from transplanting to its harvest, day by day and without a rig. */
class CropStandLifeTest {
    private static final CropTraits LETTUCE = Crops.named("lettuce");
    private static final CropTraits TOMATO = Crops.named("dwarf-tomato");
    private static final int PLANTS = 4;
    private static final double GROUND_M2 = 0.2;
    private static final double DAY_S = 86400;

    private final EventLog log = new EventLog();
    private double transpiredM3 = 2e-4;
    private double co2Ppm = 400;

    /** How a stand is made. */
    private record Made(
            CropTraits traits, OptionalInt harvestDay, OptionalDouble harvestG, Tending tending) {
        static Made of(CropTraits traits, Tending.Act... acts) {
            return new Made(
                    traits,
                    OptionalInt.empty(),
                    OptionalDouble.empty(),
                    new Tending(List.of(acts), Optional.empty()));
        }

        Made cutOn(int day) {
            return new Made(traits, OptionalInt.of(day), harvestG, tending);
        }

        Made cutAt(double g) {
            return new Made(traits, harvestDay, OptionalDouble.of(g), tending);
        }

        CropStand stand() {
            return new CropStand(
                    new Planting.OfCrop(
                            traits,
                            PLANTS,
                            GROUND_M2,
                            14,
                            Transplant.AS_RAISED,
                            Planting.ThirstModel.CANOPY,
                            harvestDay,
                            harvestG,
                            tending),
                    VesselId.tray("t"));
        }
    }

    /** A day of 16 h light of 250 umol/m2/s at 22 degC in which all that is asked is taken up. */
    private void live(CropStand stand, int day) {
        double[] uptake = new double[Component.COUNT];
        for (int i = 0; i < uptake.length; i++) {
            uptake[i] = stand.nutrients.molPerS[i] * DAY_S;
        }
        stand.nutrients.meet(uptake);
        stand.transpired(transpiredM3);
        stand.day.add(250, 250e-6 * 57600, 250 / 4.57, 22, co2Ppm, 57600);
        stand.day.add(0, 0, 0, 22, co2Ppm, 28800);
        RootDay roots = new RootDay();
        roots.add(1.2, 1, 1, 1, 1, 22, 1e-4, 1e-4, DAY_S);
        double[] feed = new double[Component.COUNT];
        for (int i = 0; i < feed.length; i++) {
            feed[i] = Rigs.FEED.molPerM3(i);
        }
        stand.endDay(day * DAY_S, day, feed, roots, 0, 1, log);
        stand.tend(day * DAY_S, day, log);
    }

    private CropStand after(Made made, int days) {
        CropStand stand = made.stand();
        for (int day = 1; day <= days; day++) {
            live(stand, day);
        }
        return stand;
    }

    private static NextVisit in(int days) {
        return new NextVisit(days, false, false);
    }

    private List<Event.Kind> told() {
        return log.inOrder().stream().map(Event::kind).toList();
    }

    @Test
    void a_stand_starts_as_its_transplants_do() {
        CropStand stand = Made.of(LETTUCE).stand();
        Plant plant = stand.plant();
        double groundM2 = GROUND_M2 / PLANTS;
        assertEquals(PLANTS * Canopy.leafAreaM2(LETTUCE, plant), stand.leafM2(), 1e-15);
        assertEquals(PLANTS * plant.rootDryG(), stand.rootDryG(), 1e-15);
        assertEquals(Growing.freshG(LETTUCE, plant), stand.freshG());
        assertEquals(0, stand.fruitFreshG());
        assertEquals(Canopy.leafAreaIndex(LETTUCE, plant, groundM2), stand.leafAreaIndex());
        double covered = Canopy.coveredGroundM2(LETTUCE, plant, groundM2);
        assertEquals(covered / Canopy.boundGroundM2(LETTUCE, groundM2), stand.coverFrac(), 1e-15);
        double stopped =
                Canopy.interceptedFrac(
                        Canopy.extinction(LETTUCE, plant),
                        Canopy.leafAreaIndex(LETTUCE, plant, groundM2));
        assertTrue(stopped > 0.01 && covered * PLANTS / GROUND_M2 < 0.9);
        assertEquals(1 - stopped * covered * PLANTS / GROUND_M2, stand.lightPassedFrac(), 1e-15);
        assertTrue(stand.hasPlants());
        assertFalse(stand.isReady());
        assertEquals(LETTUCE, stand.traits());
    }

    @Test
    void a_tray_without_plants_has_none_and_lets_all_light_through() {
        CropStand none =
                new CropStand(
                        new Planting.OfCrop(
                                LETTUCE,
                                0,
                                GROUND_M2,
                                14,
                                Transplant.AS_RAISED,
                                Planting.ThirstModel.CANOPY,
                                OptionalInt.empty(),
                                OptionalDouble.empty(),
                                Tending.NONE),
                        VesselId.tray("t"));
        assertFalse(none.hasPlants());
        assertEquals(1, none.lightPassedFrac());
        assertEquals(0, none.leafM2());
    }

    @Test
    void richer_air_grows_more_by_its_own_factor() {
        CropStand air = after(Made.of(LETTUCE), 10);
        CropStand enriched = after(Made.of(LETTUCE), 10);
        double start = air.plant().dryG();
        live(air, 11);
        double usual = air.plant().dryG() - start;
        co2Ppm = 800;
        live(enriched, 11);
        double rich = enriched.plant().dryG() - start;
        double factor = CarbonDioxide.growthFrac(800) / CarbonDioxide.growthFrac(400);
        assertTrue(factor > 1.1, "" + factor);
        assertEquals(factor, rich / usual, 1e-12);
    }

    // 2e-4 m3 a day bring 0.5 x 4.5 mol/m3 x 2e-4 = 0.45 mmol of calcium for the first plants'
    // few milligrams: more than tissue may hold. None with no water, all that is needed.
    @Test
    void calcium_comes_with_the_water_of_its_own_day() {
        int ca = Component.CA.ordinal();
        CropStand wet = after(Made.of(LETTUCE), 3);
        double withWater = wet.nutrients.molPerS[ca];
        transpiredM3 = 0;
        live(wet, 4);
        double without = wet.nutrients.molPerS[ca];
        CropStand dry = after(Made.of(LETTUCE), 3);
        assertTrue(withWater > 1.15 * dry.nutrients.molPerS[ca]);
        live(dry, 4);
        assertEquals(dry.nutrients.molPerS[ca], without, 1e-9 * without);
    }

    @Test
    void a_leaf_crop_is_ready_on_the_midnight_its_weight_is_reached() {
        double at20 = after(Made.of(LETTUCE), 20).freshG();
        assertFalse(after(Made.of(LETTUCE).cutAt(at20), 19).isReady());
        CropStand cut = after(Made.of(LETTUCE).cutAt(at20), 20);
        assertTrue(cut.isReady());
        assertFalse(cut.isHarvested());
        assertFalse(told().contains(Event.Kind.FIRST_RIPE), "of fruit alone");
    }

    @Test
    void a_leaf_crop_that_stays_light_is_ready_before_it_bolts() {
        CropStand light = Made.of(LETTUCE).cutAt(1e4).stand();
        int day = 0;
        while (!light.isReady()) {
            live(light, ++day);
            assertEquals(
                    light.plant().thermalTimeCd() >= LETTUCE.harvest().latestCd(), light.isReady());
        }
        assertTrue(day > 30 && day < 80, "" + day);
    }

    /** The weight of day 30, what the day before brought, and a weight between or beyond. */
    private CropStand waitingFor(double daysOfGrowth) {
        double before = after(Made.of(LETTUCE), 29).freshG();
        double now = after(Made.of(LETTUCE), 30).freshG();
        return after(Made.of(LETTUCE).cutAt(now + daysOfGrowth * (now - before)), 30);
    }

    @Test
    void a_leaf_crop_is_nearly_ready_from_nine_tenths_of_its_weight_then() {
        double at = 30 * DAY_S;
        double before = after(Made.of(LETTUCE), 29).freshG();
        double now = after(Made.of(LETTUCE), 30).freshG();
        double gain = (now - before) / now;
        assertTrue(gain > 0.02 && gain < 0.1, "" + gain);
        // After so many days it would be ready, and weigh more than ten ninths of now from there.
        int days = (int) Math.floor(1 / 0.9 / gain - 1 / gain);
        assertTrue(days >= 1 && days < 7, "" + days);
        assertTrue(waitingFor(days - 0.5).isNearlyReady(at, in(days)));
        assertFalse(waitingFor(days - 0.5).isNearlyReady(at, in(days - 1)));
        assertFalse(waitingFor(days + 0.5).isNearlyReady(at, in(days)));
        assertFalse(waitingFor(days + 0.5).isNearlyReady(at, in(days + 1)));
    }

    @Test
    void a_leaf_crop_is_near_its_harvest_a_week_before_its_weight() {
        assertTrue(waitingFor(6.9).isNearHarvest(30 * DAY_S));
        assertFalse(waitingFor(7.1).isNearHarvest(30 * DAY_S));
    }

    @Test
    void a_stated_day_is_near_from_a_week_before_it() {
        CropStand stand = after(Made.of(LETTUCE).cutOn(40), 2);
        assertFalse(stand.isNearHarvest(33 * DAY_S));
        assertTrue(stand.isNearHarvest(33.01 * DAY_S));
    }

    @Test
    void a_fruit_crop_with_a_stated_day_goes_a_week_early_at_most() {
        CropStand stand = after(Made.of(TOMATO).cutOn(40), 2);
        assertFalse(stand.isNearlyReady(32.9 * DAY_S, in(20)));
        assertTrue(stand.isNearlyReady(33.1 * DAY_S, in(20)));
        assertFalse(stand.isNearlyReady(33.1 * DAY_S, in(6)));
        assertTrue(stand.isNearlyReady(38.1 * DAY_S, in(2)));
        assertFalse(stand.isNearlyReady(38.1 * DAY_S, in(1)));
    }

    @Test
    void a_fruit_crop_flowers_ripens_and_is_cleared_by_its_warmth() {
        CropStand stand = Made.of(TOMATO).stand();
        int flowering = 0;
        int ripe = 0;
        int day = 0;
        while (!stand.isReady()) {
            assertTrue(day < 150);
            boolean near = stand.isNearHarvest(day * DAY_S);
            double cd = stand.plant().thermalTimeCd();
            live(stand, ++day);
            double dayCd = stand.plant().thermalTimeCd() - cd;
            double leftCd = TOMATO.stages().lastHarvestCd() - cd;
            if (day > 2 && Math.abs(leftCd - 7 * dayCd) > 1e-6) {
                assertEquals(leftCd < 7 * dayCd, near, "day " + day);
            }
            flowering += told().contains(Event.Kind.FLOWERING) && flowering == 0 ? day : 0;
            ripe += told().contains(Event.Kind.FIRST_RIPE) && ripe == 0 ? day : 0;
            double nowCd = stand.plant().thermalTimeCd();
            assertEquals(nowCd >= TOMATO.stages().floweringCd(), flowering > 0);
            assertEquals(nowCd >= TOMATO.stages().firstHarvestCd(), ripe > 0);
            assertEquals(nowCd >= TOMATO.stages().lastHarvestCd(), stand.isReady());
        }
        assertEquals(List.of(Event.Kind.FLOWERING, Event.Kind.FIRST_RIPE), told());
        assertTrue(stand.fruitFreshG() > 10);
        assertEquals(Growing.fruitFreshG(TOMATO, stand.plant()), stand.fruitFreshG());
    }

    @Test
    void a_topped_plant_is_cleared_when_its_last_fruit_is_ripe() {
        CropStand stand = Made.of(TOMATO, new Tending.Topping(20)).stand();
        int day = 0;
        while (day < 20) {
            live(stand, ++day);
        }
        assertTrue(told().contains(Event.Kind.TOPPED));
        assertTrue(stand.plant().isTopped());
        double lastCd = Growing.lastRipeAfterToppingCd(TOMATO, stand.plant().thermalTimeCd());
        assertTrue(lastCd < TOMATO.stages().lastHarvestCd() - 50);
        while (!stand.isReady()) {
            live(stand, ++day);
            assertEquals(stand.plant().thermalTimeCd() >= lastCd, stand.isReady());
        }
    }

    @Test
    void leaves_picked_one_by_one_keep_a_crop_beyond_its_weight_until_it_bolts() {
        CropStand stand = Made.of(LETTUCE, new Tending.LeafPicking(25, 0.1)).cutAt(20).stand();
        int day = 0;
        while (!stand.isReady()) {
            live(stand, ++day);
            assertEquals(
                    stand.plant().thermalTimeCd() >= LETTUCE.harvest().pickedUntilCd(),
                    stand.isReady());
        }
        assertTrue(stand.freshG() > 40);
    }

    @Test
    void what_hands_do_waits_for_its_day_and_ends_with_the_harvest() {
        Made made = Made.of(LETTUCE, new Tending.Thinning(2, 3), new Tending.Thinning(5, 1));
        CropStand stand = after(made, 1);
        assertEquals(PLANTS, stand.plants());
        live(stand, 2);
        assertEquals(3, stand.plants());
        assertEquals(3 * Canopy.leafAreaM2(LETTUCE, stand.plant()), stand.leafM2(), 1e-15);
        live(stand, 3);
        assertEquals(3, stand.plants());
        stand.harvest(3 * DAY_S, "", log);
        live(stand, 5);
        assertEquals(3, stand.plants());
        assertEquals(List.of(Event.Kind.THINNED, Event.Kind.HARVEST), told());
        assertEquals(stand.freshG() > 0, log.inOrder().get(0).freshG() > 0);
    }

    @Test
    void two_acts_of_one_day_are_both_done_and_no_plant_comes_back() {
        CropStand stand =
                after(
                        Made.of(LETTUCE, new Tending.Thinning(1, 20), new Tending.Spacing(1, 0.32)),
                        1);
        assertEquals(PLANTS, stand.plants());
        assertEquals("4", log.inOrder().get(0).detail());
        assertEquals("12.5", log.inOrder().get(1).detail());
        assertEquals(0, log.inOrder().get(0).freshG());
    }

    @Test
    void thinned_plants_are_weighed_without_their_fruit() {
        CropStand stand = after(Made.of(TOMATO, new Tending.Thinning(60, 1)), 60);
        assertTrue(stand.fruitFreshG() > 1);
        Event out =
                log.inOrder().stream()
                        .filter(e -> e.kind() == Event.Kind.THINNED)
                        .findFirst()
                        .orElseThrow();
        assertEquals(3 * (stand.freshG() - stand.fruitFreshG()), out.freshG(), 1e-9);
    }

    @Test
    void a_day_without_living_plants_asks_for_nothing_and_is_forgotten() {
        CropStand stand = after(Made.of(LETTUCE), 2);
        stand.day.add(250, 10, 50, 30, 400, DAY_S);
        stand.endIdleDay();
        for (double asked : stand.nutrients.molPerS) {
            assertEquals(0, asked);
        }
        assertEquals(0, stand.day.molPerM2());
    }
}
