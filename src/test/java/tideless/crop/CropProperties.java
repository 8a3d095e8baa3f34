package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import tideless.physics.HumidAir;

/** Laws of any crop. Each law is a plain method on plain values. */
class CropProperties {
    private static final Map<String, CropTraits> CROPS =
            CropFiles.names().stream()
                    .collect(Collectors.toMap(Function.identity(), CropFiles::read));

    /** A canopy's thirst, kg/m2/s, as a function of nothing but numbers. */
    interface Thirst {
        double of(double lai, double ppfd, double tempC, double humidityFrac);
    }

    private static Thirst thirst(CropTraits traits, double nirPerPar, double airSpeed) {
        return (lai, ppfd, tempC, humidityFrac) ->
                ClosedForms.canopyKgPerM2S(
                        traits.stomata(),
                        traits.growth().extinction(),
                        lai,
                        ppfd / 4.57,
                        ppfd,
                        nirPerPar * ppfd / 4.57,
                        0,
                        tempC,
                        humidityFrac * HumidAir.saturationPressurePa(tempC),
                        101_325,
                        airSpeed);
    }

    @Provide
    Arbitrary<String> crops() {
        return Arbitraries.of(CropFiles.names());
    }

    /** Crops of the light form, for which the laws hold without an exception. */
    @Provide
    Arbitrary<String> leafCrops() {
        return Arbitraries.of("lettuce", "basil", "pak-choi", "spinach");
    }

    static void never_falls(double less, double more, String what) {
        // Rounding only: a millionth.
        assertTrue(more >= less * (1 - 1e-6), what + ": " + less + " then " + more);
    }

    @Property
    void thirst_is_never_negative(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0, max = 8) double lai,
            @ForAll @DoubleRange(min = 0, max = 2000) double ppfd,
            @ForAll @DoubleRange(min = 0, max = 45) double tempC,
            @ForAll @DoubleRange(min = 0, max = 1) double humidityFrac,
            @ForAll @DoubleRange(min = 0, max = 3) double airSpeed) {
        CropTraits crop = CROPS.get(name);
        double found = thirst(crop, 1, airSpeed).of(lai, ppfd, tempC, humidityFrac);
        assertTrue(found >= 0 && found < 0.01, "kg/m2/s " + found);
    }

    @Property
    void thirst_of_leaf_crops_never_falls_as_air_dries(
            @ForAll("leafCrops") String name,
            @ForAll @DoubleRange(min = 0.1, max = 8) double lai,
            @ForAll @DoubleRange(min = 0, max = 2000) double ppfd,
            @ForAll @DoubleRange(min = 5, max = 40) double tempC,
            @ForAll @DoubleRange(min = 0.1, max = 1) double humidityFrac,
            @ForAll @DoubleRange(min = 0, max = 1) double drier) {
        CropTraits crop = CROPS.get(name);
        Thirst thirst = thirst(crop, 1, 0.2);
        never_falls(
                thirst.of(lai, ppfd, tempC, humidityFrac),
                thirst.of(lai, ppfd, tempC, humidityFrac * drier),
                "drier");
    }

    /** Up to 400 umol/m2/s of lamp light the published closing never wins. */
    @Property
    void thirst_of_fruit_crops_under_lamps_never_falls_as_air_dries(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0.3, max = 5) double lai,
            @ForAll @DoubleRange(min = 0, max = 400) double ppfd,
            @ForAll @DoubleRange(min = 5, max = 40) double tempC,
            @ForAll @DoubleRange(min = 0.1, max = 1) double humidityFrac,
            @ForAll @DoubleRange(min = 0, max = 1) double drier) {
        CropTraits crop = CROPS.get(name);
        Thirst thirst = thirst(crop, 0.1, 0.2);
        double after = humidityFrac * drier;
        never_falls(
                thirst.of(lai, ppfd, tempC, humidityFrac),
                thirst.of(lai, ppfd, tempC, after),
                "drier");
    }

    @Property
    void thirst_never_falls_as_light_grows(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0.1, max = 8) double lai,
            @ForAll @DoubleRange(min = 0, max = 2000) double ppfd,
            @ForAll @DoubleRange(min = 0, max = 500) double brighter,
            @ForAll @DoubleRange(min = 5, max = 40) double tempC,
            @ForAll @DoubleRange(min = 0, max = 1) double humidityFrac) {
        CropTraits crop = CROPS.get(name);
        Thirst thirst = thirst(crop, 1, 0.2);
        never_falls(
                thirst.of(lai, ppfd, tempC, humidityFrac),
                thirst.of(lai, ppfd + brighter, tempC, humidityFrac),
                "brighter");
    }

    @Property
    void thirst_never_falls_as_leaf_grows(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0.1, max = 6) double lai,
            @ForAll @DoubleRange(min = 0.05, max = 2) double more,
            @ForAll @DoubleRange(min = 0, max = 2000) double ppfd,
            @ForAll @DoubleRange(min = 5, max = 40) double tempC,
            @ForAll @DoubleRange(min = 0, max = 0.98) double humidityFrac) {
        CropTraits crop = CROPS.get(name);
        Thirst thirst = thirst(crop, 1, 0.2);
        // The five depths leave an error of up to 0.2 % (TranspirationTest).
        double before = thirst.of(lai, ppfd, tempC, humidityFrac);
        double after = thirst.of(lai + more, ppfd, tempC, humidityFrac);
        assertTrue(after >= before * 0.998, before + " then " + after);
    }

    @Property
    void a_plants_thirst_never_falls_as_it_gains_leaf(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0.01, max = 30) double leafG,
            @ForAll @DoubleRange(min = 0.01, max = 5) double moreG,
            @ForAll @DoubleRange(min = 0.01, max = 0.6) double groundM2,
            @ForAll @DoubleRange(min = 0, max = 1000) double ppfd) {
        CropTraits crop = CROPS.get(name);
        Thirst thirst = thirst(crop, 1, 0.2);
        Plant small = new Plant(300, leafG, 0, 0, 0, 0);
        Plant large = new Plant(300, leafG + moreG, 0, 0, 0, 0);
        double before =
                Canopy.coveredGroundM2(crop, small, groundM2)
                        * thirst.of(Canopy.leafAreaIndex(crop, small, groundM2), ppfd, 22, 0.6);
        double after =
                Canopy.coveredGroundM2(crop, large, groundM2)
                        * thirst.of(Canopy.leafAreaIndex(crop, large, groundM2), ppfd, 22, 0.6);
        assertTrue(after >= before * 0.998, before + " then " + after);
    }

    @Property
    void a_canopy_covers_no_more_than_its_ground_and_stops_no_more_than_all(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0, max = 200) double leafG,
            @ForAll @DoubleRange(min = 0.01, max = 1) double groundM2) {
        CropTraits crop = CROPS.get(name);
        Plant plant = new Plant(300, leafG, 0, 0, 0, 0);
        double covered = Canopy.coveredGroundM2(crop, plant, groundM2);
        double lai = Canopy.leafAreaIndex(crop, plant, groundM2);
        double stopped = Canopy.interceptedFrac(crop.growth().extinction(), lai);
        assertTrue(covered >= 0 && covered <= groundM2);
        assertTrue(covered <= crop.growth().spreadM2());
        assertTrue(lai >= 0 && lai <= crop.growth().leafAreaIndexMax());
        assertTrue(stopped >= 0 && stopped <= 1);
        assertTrue(
                lai * covered <= Canopy.leafAreaM2(crop, plant) * (1 + 1e-12),
                "leaf over ground is not more than there is");
    }

    @Property
    void growth_never_falls_as_light_grows(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0, max = 2000) double ppfd,
            @ForAll @DoubleRange(min = 0, max = 500) double brighter,
            @ForAll @DoubleRange(min = 8, max = 24) double litH) {
        CropTraits crop = CROPS.get(name);
        Plant plant = new Plant(300, 2, 0.3, 0, 0.2, 0.1);
        Plant dim = Growing.dayLater(crop, plant, 0.05, ppfd * litH * 0.0036, ppfd, 4.7, 20, 1);
        Plant bright =
                Growing.dayLater(
                        crop,
                        plant,
                        0.05,
                        (ppfd + brighter) * litH * 0.0036,
                        ppfd + brighter,
                        4.7,
                        20,
                        1);
        never_falls(dim.dryG(), bright.dryG(), "brighter");
    }

    @Property
    void a_day_never_takes_dry_mass_root_or_age(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0, max = 3000) double thermalTimeCd,
            @ForAll @DoubleRange(min = 0.01, max = 50) double leafG,
            @ForAll @DoubleRange(min = 0, max = 60) double mol,
            @ForAll @DoubleRange(min = -10, max = 55) double tempC,
            @ForAll @DoubleRange(min = 0, max = 1) double stress) {
        CropTraits crop = CROPS.get(name);
        Plant before = new Plant(thermalTimeCd, leafG, leafG / 5, leafG / 3, leafG / 9, 0.1);
        Plant after = Growing.dayLater(crop, before, 0.05, mol, mol / 0.0576, 4.7, tempC, stress);
        assertTrue(after.leafDryG() >= before.leafDryG());
        assertTrue(after.stemDryG() >= before.stemDryG());
        assertTrue(after.fruitDryG() >= before.fruitDryG());
        assertTrue(after.rootDryG() >= before.rootDryG());
        assertTrue(after.rootLengthM() >= before.rootLengthM());
        assertTrue(after.thermalTimeCd() >= before.thermalTimeCd());
        assertTrue(after.rootLengthM() <= crop.roots().longestM());
    }

    @Property
    void more_salt_never_makes_more_growth_or_thirst(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0, max = 20) double ec,
            @ForAll @DoubleRange(min = 0, max = 20) double more) {
        CropTraits crop = CROPS.get(name);
        double before = Transpiration.saltFrac(crop, ec);
        double after = Transpiration.saltFrac(crop, ec + more);
        assertTrue(0 <= after && after <= before && before <= 1);
        Plant plant = new Plant(300, 2, 0.3, 0, 0.2, 0.1);
        never_falls(
                Growing.dayLater(crop, plant, 0.05, 12, 200, 4.7, 20, after).dryG(),
                Growing.dayLater(crop, plant, 0.05, 12, 200, 4.7, 20, before).dryG(),
                "fresher");
    }

    /**
     * With no light to warm the leaf, moving air only helps vapour away; under light it also cools
     * the leaf, and no sign is fixed.
     */
    @Property
    void thirst_in_the_dark_never_falls_as_the_air_moves_faster(
            @ForAll("crops") String name,
            @ForAll @DoubleRange(min = 0.1, max = 6) double lai,
            @ForAll @DoubleRange(min = 5, max = 40) double tempC,
            @ForAll @DoubleRange(min = 0, max = 1) double humidityFrac,
            @ForAll @DoubleRange(min = 0, max = 2) double airSpeed,
            @ForAll @DoubleRange(min = 0, max = 2) double faster) {
        CropTraits crop = CROPS.get(name);
        never_falls(
                thirst(crop, 1, airSpeed).of(lai, 0, tempC, humidityFrac),
                thirst(crop, 1, airSpeed + faster).of(lai, 0, tempC, humidityFrac),
                "faster");
    }

    @Property
    void more_root_in_the_water_never_supplies_less(
            @ForAll @DoubleRange(min = 0, max = 0.2) double tipM,
            @ForAll @DoubleRange(min = 0.01, max = 0.3) double spanM,
            @ForAll @DoubleRange(min = 0, max = 0.6) double levelM,
            @ForAll @DoubleRange(min = 0, max = 0.1) double riseM) {
        double low = RootZone.supplyFrac(RootZone.wetFrac(tipM + spanM, tipM, levelM));
        double high = RootZone.supplyFrac(RootZone.wetFrac(tipM + spanM, tipM, levelM + riseM));
        assertTrue(0 <= low && low <= 1 && high >= low, low + " then " + high);
    }

    /**
     * The exception that the Javadoc of the canopy names, held with its numbers: full sun on a thin
     * tomato canopy in heat. Stanghellini's leaf closes faster than the air pulls. The sizes were
     * found by trial: they pin it, so that a change is noticed.
     */
    @Example
    void in_full_sun_and_heat_a_thin_tomato_canopy_drinks_less_in_drier_air() {
        double thin = worstFall(0.3, 2000, 35, 1);
        assertTrue(0.2 < thin && thin < 0.3, "thin canopy falls by " + thin);
        double closed = worstFall(3, 2000, 25, 0.2);
        assertTrue(closed == 0, "closed canopy falls by " + closed);
    }

    private static double worstFall(double lai, double ppfd, double tempC, double airSpeed) {
        Thirst thirst = thirst(CROPS.get("tomato"), 1, airSpeed);
        double most = 0;
        double worst = 0;
        for (int percent = 100; percent >= 10; percent--) {
            double now = thirst.of(lai, ppfd, tempC, percent / 100.0);
            most = Math.max(most, now);
            worst = Math.max(worst, 1 - now / most);
        }
        return worst;
    }
}
