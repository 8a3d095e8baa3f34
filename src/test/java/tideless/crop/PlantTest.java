package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.solution.Component;

class PlantTest {
    private static final CropTraits LETTUCE = CropFiles.read("lettuce");
    private static final CropTraits DWARF = CropFiles.read("dwarf-tomato");

    // Contents x dry mass per litre / molar mass, recomputed independently (columns: g dry per
    // litre
    // drunk; mmol per litre), printed to three digits.
    @ParameterizedTest
    @CsvSource({
        "lettuce, 2, 7.14, 0.517, 3.84, 1.15, 0.370",
        "lettuce, 4, 14.3, 1.03, 7.67, 2.30, 0.741",
        "basil, 3, 11.1, 0.872, 3.45, 1.87, 0.987",
        "pak-choi, 3, 11.8, 0.605, 4.99, 1.65, 0.555",
        "spinach, 3, 10.7, 0.533, 5.37, 0.823, 1.11"
    })
    void hunger_is_growth_times_content(
            String crop, double dryG, double n, double p, double k, double ca, double mg) {
        double[] mol = new double[Component.COUNT];
        Hunger.demandMol(CropFiles.read(crop), dryG, 0, mol);
        assertEquals(n, 1000 * mol[Component.NO3.ordinal()], 0.005 * n);
        assertEquals(p, 1000 * mol[Component.P.ordinal()], 0.005 * p);
        assertEquals(k, 1000 * mol[Component.K.ordinal()], 0.005 * k);
        assertEquals(ca, 1000 * mol[Component.CA.ordinal()], 0.005 * ca);
        assertEquals(mg, 1000 * mol[Component.MG.ordinal()], 0.005 * mg);
        assertEquals(0, mol[Component.NA.ordinal()]);
        assertEquals(0, mol[Component.CL.ordinal()]);
        assertEquals(0, mol[Component.NH4.ordinal()]);
    }

    // As above: tomato of 60 % fruit and 40 % leaf and stem at 3 g per litre; fruit and leaf
    // differ.
    // The cherry tomato file holds the same contents.
    @Test
    void hunger_of_a_bearing_tomato_joins_fruit_and_leaf() {
        double[] mol = new double[Component.COUNT];
        Hunger.demandMol(DWARF, 1.2, 1.8, mol);
        assertEquals(8.139, 1000 * mol[Component.NO3.ordinal()], 0.02);
        assertEquals(3.836, 1000 * mol[Component.K.ordinal()], 0.02);
        assertEquals(1.430, 1000 * mol[Component.CA.ordinal()], 0.004);
    }

    @Test
    void what_a_plant_does_not_take_by_hunger_never_half_saturates() {
        for (int i = 0; i < Component.COUNT; i++) {
            double half = Hunger.halfSaturationMolPerM3(LETTUCE, i);
            boolean taken = i <= Component.SO4.ordinal();
            assertEquals(taken, half < 1, Component.at(i).title());
            assertEquals(!taken, Double.isInfinite(half), Component.at(i).title());
        }
    }

    // 1 - exp(-0.7 x 3): Monsi and Saeki (1953); 1 - exp(-2.1) = 0.8775, recomputed independently.
    @Test
    void a_canopy_stops_light_by_its_leaf_area() {
        assertEquals(0.8775, Canopy.interceptedFrac(0.7, 3), 1e-4);
        assertEquals(0, Canopy.interceptedFrac(0.7, 0));
    }

    @Test
    void a_seed_has_nothing_and_a_seedling_rises_at_its_thermal_time() {
        Plant plant = Growing.sown(LETTUCE);
        assertEquals(0, plant.dryG());
        for (int day = 1; day <= 3; day++) {
            plant = Growing.dayLater(LETTUCE, plant, 0.04, 10, 200, 4.7, 20, 1);
            assertEquals(0, plant.dryG(), "day " + day);
        }
        // 64 degC d above 4 degC are four days at 20 degC.
        plant = Growing.dayLater(LETTUCE, plant, 0.04, 10, 200, 4.7, 20, 1);
        assertEquals(LETTUCE.growth().seedlingDryG(), plant.dryG(), 1e-12);
        assertTrue(Canopy.leafAreaM2(LETTUCE, plant) > 0);
    }

    // Monteith (1977) in the closed canopy, by hand: 3.6 g/MJ x 11.52 / 4.7 MJ x 0.04 m2 x
    // (1 - exp(-0.9 x 4.5)) = 0.3468 g of shoot.
    @Test
    void a_closed_canopy_gains_its_light_use_times_the_light() {
        Plant before = new Plant(400, 4, 0.4, 0, 0.3, 0.2);
        Plant after = Growing.dayLater(LETTUCE, before, 0.04, 11.52, 200, 4.7, 22, 1);
        double shootG = after.leafDryG() + after.stemDryG() - before.leafDryG() - before.stemDryG();
        assertEquals(0.3468, shootG, 0.0002);
        assertEquals(0.07, (after.rootDryG() - 0.3) / (after.dryG() - before.dryG()), 1e-9);
        assertEquals(418, after.thermalTimeCd(), 1e-9);
        assertEquals(0.22, after.rootLengthM(), 1e-9);
    }

    @Test
    void a_plant_at_its_base_or_ceiling_stands_still() {
        Plant before = new Plant(400, 4, 0.4, 0, 0.3, 0.2);
        for (double tempC : new double[] {4, 35, 40}) {
            Plant after = Growing.dayLater(LETTUCE, before, 0.04, 11.52, 200, 4.7, tempC, 1);
            assertEquals(before.dryG(), after.dryG(), 1e-12);
            assertEquals(before.rootLengthM(), after.rootLengthM(), 1e-12);
        }
    }

    @Test
    void fruit_comes_after_flowering_and_takes_its_full_share_at_full_load() {
        Plant before = new Plant(390, 5, 1.5, 0, 1, 0.3);
        Plant flowering = Growing.dayLater(DWARF, before, 0.09, 15, 250, 4.7, 22, 1);
        assertFalse(Growing.isFlowering(DWARF, before));
        assertTrue(Growing.isFlowering(DWARF, flowering));
        Plant loaded = new Plant(1000, 9, 4, 6, 1.5, 0.4);
        Plant later = Growing.dayLater(DWARF, loaded, 0.09, 15, 250, 4.7, 22, 1);
        assertEquals(
                0.6,
                (later.fruitDryG() - loaded.fruitDryG()) / (later.dryG() - loaded.dryG()),
                1e-9);
        assertFalse(Growing.isFlowering(LETTUCE, new Plant(5000, 5, 1, 0, 1, 0.3)));
    }

    @Test
    void a_nursery_hands_over_a_seedling_without_hanging_root() {
        Plant plant = Growing.raisedInNursery(LETTUCE, 14);
        assertEquals(0, plant.rootLengthM());
        assertEquals(14 * (22 - 4), plant.thermalTimeCd(), 1e-9);
        assertEquals(Growing.sown(LETTUCE), Growing.raisedInNursery(LETTUCE, 0));
    }

    // Growth curves of lettuce gain 0.20 to 0.35 a day while young (from memory, rounded to 0.05).
    @Test
    void young_lettuce_gains_a_quarter_of_its_mass_a_day() {
        double young = Growing.raisedInNursery(LETTUCE, 10).dryG();
        double older = Growing.raisedInNursery(LETTUCE, 14).dryG();
        double perDay = Math.log(older / young) / 4;
        assertTrue(0.20 <= perDay && perDay <= 0.375, "per day " + perDay);
    }

    @Test
    void roots_are_wet_by_the_share_of_their_span_under_the_level() {
        double tipM = RootZone.tipM(0.10, 0.06);
        assertEquals(0.04, tipM, 1e-12);
        assertEquals(0, RootZone.wetFrac(0.10, tipM, 0.04));
        assertEquals(1.0 / 3, RootZone.wetFrac(0.10, tipM, 0.06), 1e-12);
        assertEquals(1, RootZone.wetFrac(0.10, tipM, 0.10));
        assertEquals(1, RootZone.wetFrac(0.10, 0.10, 0.10));
        assertEquals(0, RootZone.wetFrac(0.10, 0.10, 0.09));
        assertEquals(0, RootZone.tipM(0.10, 0.30));
    }

    // Kratky (2004), Acta Hort. 648:83-89, abstract: a rise of more than 2 cm may injure.
    @Test
    void roots_bear_the_published_rise() {
        double borneM = RootZone.highestBorneM(LETTUCE, 0.03);
        assertTrue(0.03 + 0.010 <= borneM && 0.03 + 0.020 <= borneM + 1e-12);
        assertTrue(0.03 + 0.040 > borneM);
    }

    @Test
    void a_dry_plant_lasts_shorter_the_thirstier_it_is() {
        double mmPerDay = 1.0 / 86400;
        assertEquals(2.5 * 3600, RootZone.dryReserveS(LETTUCE, mmPerDay), 1e-6);
        assertEquals(5 * 3600, RootZone.dryReserveS(LETTUCE, 0.5 * mmPerDay), 1e-6);
        assertEquals(25 * 3600, RootZone.dryReserveS(LETTUCE, 0), 1e-6);
    }

    @Test
    void a_tenth_of_wet_root_meets_the_whole_thirst() {
        assertEquals(0, RootZone.supplyFrac(0));
        assertEquals(0.5, RootZone.supplyFrac(0.05), 1e-12);
        assertEquals(1, RootZone.supplyFrac(0.1), 1e-12);
        assertEquals(1, RootZone.supplyFrac(1));
    }

    // Tomato in Dutch houses (Heuvelink 1999, from memory): 266 + 88 cm2/g in January under some 3
    // mol/m2/d, 266 - 88 in July under some 25; over many species leaf mass per area rises
    // threefold
    // from 1 to 50 mol/m2/d (Poorter et al. 2009, from memory). A tenth: what the two differ by.
    // 24 herbs had 0.11 to 0.36 a day in growth rooms of 20 degC (Poorter and Remkes 1990, from
    // memory); 1.6 times as fast for each 10 K (Van Henten 1994).
    @ParameterizedTest(name = "{0} at {1} degC")
    @CsvSource({"rocket, 20, 0.36", "rocket, 24, 0.4345", "lettuce, 20, 0.36"})
    void no_light_makes_a_seedling_grow_faster_than_it_can_build(
            String name, double tempC, double perDay) {
        CropTraits crop = CropFiles.read(name);
        double cd = crop.stages().emergenceCd() + 20;
        Plant seedling = new Plant(cd, 0.002, 0, 0, 0.0002, 0);
        Plant bright = Growing.dayLater(crop, seedling, 0.01, 60, 1000, 4.57, tempC, 1);
        assertEquals(perDay, Math.log(bright.dryG() / seedling.dryG()), 1e-4);
        Plant usual = Growing.dayLater(crop, seedling, 0.01, 6, 100, 4.57, tempC, 1);
        double slow = Math.log(usual.dryG() / seedling.dryG());
        assertTrue(0.11 < slow && slow < 0.36, "a day " + slow);
    }

    @Test
    void leaves_are_thinner_in_dull_light_as_two_sources_say() {
        assertEquals(1, Canopy.leafSpreadFrac(16 * 3600 * 200e-6), 1e-12);
        assertEquals(
                354.0 / 178, Canopy.leafSpreadFrac(3) / Canopy.leafSpreadFrac(25), 0.1 * 354 / 178);
        assertEquals(
                Math.pow(3, Math.log(25) / Math.log(50)),
                Canopy.leafSpreadFrac(2) / Canopy.leafSpreadFrac(50),
                0.1 * 2.5);
        assertEquals(Canopy.leafSpreadFrac(2), Canopy.leafSpreadFrac(0));
        assertEquals(Canopy.leafSpreadFrac(50), Canopy.leafSpreadFrac(80));
    }

    @Test
    void what_stands_keeps_its_thickness_and_what_comes_has_that_of_the_day() {
        Plant young = Growing.raisedInNursery(LETTUCE, 14);
        assertEquals(1, young.leafSpreadFrac(), 1e-9);
        Plant later = Growing.dayLater(LETTUCE, young, 0.04, 5, 90, 4.7, 22, 1);
        double before = Canopy.leafAreaM2(LETTUCE, young);
        double plain =
                Canopy.leafAreaM2(
                        LETTUCE, new Plant(later.thermalTimeCd(), later.leafDryG(), 0, 0, 0, 0));
        assertEquals(
                before + Canopy.leafSpreadFrac(5) * (plain - before),
                Canopy.leafAreaM2(LETTUCE, later),
                1e-12);
        Plant dark = Growing.dayLater(LETTUCE, later, 0.04, 0, 0, 4.7, 22, 1);
        assertEquals(later.leafSpreadFrac(), dark.leafSpreadFrac());
        Plant picked = later.picked(0.5, 0.5);
        assertEquals(
                0.5, Canopy.leafAreaM2(LETTUCE, picked) / Canopy.leafAreaM2(LETTUCE, later), 1e-9);
    }
}
