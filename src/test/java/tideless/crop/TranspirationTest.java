package tideless.crop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.HumidAir;

class TranspirationTest {
    private static final CropTraits LETTUCE = CropFiles.read("lettuce");
    private static final CropTraits TOMATO = CropFiles.read("tomato");

    /**
     * The big leaf of Graamans et al. (2017), Agric. Syst. 153, second hand, with its own
     * constants: reflection 0.05, cover, leaf area index on both fluxes, slope 0.04145 exp(0.06088
     * T) kPa/K, psychrometric constant 66.5 Pa/K, heat capacity 1206 J/m3/K, Tetens pressure.
     */
    private static double graamansWPerM2(
            double ppfd, double tempC, double humidityFrac, double lai, double cover, double ra) {
        double net = 0.95 * 0.20 * ppfd * cover;
        double deficitPa = HumidAir.saturationPressurePa(tempC) * (1 - humidityFrac);
        double stomata = Transpiration.lightHyperbolaSPerM(60, 1500, 200, ppfd);
        return Transpiration.penmanMonteithWPerM2(
                net,
                deficitPa,
                41.45 * Math.exp(0.06088 * tempC),
                66.5,
                1206,
                ra / lai,
                (stomata + ra) / lai);
    }

    // Recomputed independently from the form of Graamans et al. (2017) as public codes give it:
    // this
    // checks coding, not physics. 1 %, since net radiation is printed to three digits.
    @ParameterizedTest(name = "{7} W/m2 at {0} umol, {1} degC, {2}")
    @CsvSource({
        "0, 20, 0.75, 3, 0.9, 100, 450.0, 41.8, 61.4",
        "0, 24, 0.70, 3, 0.9, 100, 450.0, 59.5, 87.4",
        "140, 21, 0.73, 3, 0.9, 100, 289.4, 68.3, 100.4",
        "200, 24, 0.70, 3, 0.9, 100, 255.0, 92.8, 136.4",
        "200, 24, 0.70, 1, 0.537, 100, 255.0, 34.8, 51.2",
        "250, 24, 0.70, 3, 0.9, 100, 233.3, 100.0, 146.9",
        "250, 24, 0.70, 3, 0.9, 200, 233.3, 73.8, 108.5",
        "600, 21, 0.73, 3, 0.9, 100, 157.5, 123.6, 181.6"
    })
    void the_big_leaf_of_graamans_gives_its_table(
            double ppfd,
            double tempC,
            double humidity,
            double lai,
            double cover,
            double ra,
            double stomata,
            double wPerM2,
            double gPerM2H) {
        assertEquals(
                stomata, Transpiration.lightHyperbolaSPerM(60, 1500, 200, ppfd), 0.05, "stomata");
        double found = graamansWPerM2(ppfd, tempC, humidity, lai, cover, ra);
        assertEquals(wPerM2, found, 0.01 * wPerM2);
        assertEquals(gPerM2H, found * 3600 / 2450, 0.01 * gPerM2H); // 2.45 MJ/kg
    }

    // Stanghellini (1987) as coded by Koerner and Holst (2013), recomputed independently; the four
    // factors 1.183, 1.141, 1.024, 2.775 are given to a tenth of a per cent, the result to 1 s/m.
    @Test
    void stanghellinis_tomato_leaf_has_its_published_resistance() {
        assertEquals(315, ClosedForms.stanghelliniSPerM(82, 20, 22, 400, 800), 1);
    }

    // From memory of the same thesis: 1 in humid air, 4 in very dry air.
    @Test
    void the_humidity_factor_runs_from_one_to_four() {
        double light = (1e9 + 4.30) / (1e9 + 0.54);
        assertEquals(82 * light, ClosedForms.stanghelliniSPerM(82, 1e9, 24.5, 200, 0), 0.2);
        assertEquals(4 * 82 * light, ClosedForms.stanghelliniSPerM(82, 1e9, 24.5, 200, 5000), 0.2);
    }

    private static double day(CropTraits traits, double lai, double ppfd) {
        return ClosedForms.canopyKgPerM2S(
                traits.stomata(),
                traits.growth().extinction(),
                lai,
                ppfd / 4.7,
                ppfd,
                0.1 * ppfd / 4.7,
                0,
                24,
                0.7 * HumidAir.saturationPressurePa(24),
                101_325,
                0.15);
    }

    @Test
    void every_form_of_stomata_is_in_the_library_and_drinks() {
        Set<Class<?>> forms = new HashSet<>();
        for (String name : CropFiles.names()) {
            CropTraits traits = CropFiles.read(name);
            forms.add(traits.stomata().getClass());
            assertTrue(day(traits, 3, 200) > day(traits, 3, 0), name);
        }
        assertEquals(Set.of(CropTraits.Stomata.class.getPermittedSubclasses()), forms);
    }

    @Test
    void dusk_brings_no_jump() {
        for (CropTraits traits : new CropTraits[] {LETTUCE, TOMATO}) {
            double night = day(traits, 3, 0);
            assertTrue(night > 0);
            assertEquals(night, day(traits, 3, 1e-6), 1e-6 * night, traits.name());
        }
    }

    // Dark resistance of 1000 s/m and a layer of 129 x 0.91 s/m in closed form.
    @Test
    void at_night_every_leaf_is_alike() {
        double one = day(LETTUCE, 1, 0);
        assertEquals(3 * one, day(LETTUCE, 3, 0), 1e-12);
        double deficitPa = 0.3 * HumidAir.saturationPressurePa(24);
        double slope = HumidAir.saturationSlopePaPerK(24);
        double gamma = HumidAir.psychrometricPaPerK(101_325, 24);
        double isothermal = 1 / (129 * 0.911 + 1000); // 151 sqrt(0.11 / 0.15), as in the title
        double molar = deficitPa / (461.52 * 297.15);
        // Cooling of the leaf makes it a little less than the isothermal flux.
        assertTrue(one < isothermal * molar && one > 0.6 * isothermal * molar, "" + one);
        assertTrue(slope / gamma > 2.5);
    }

    // Five points against Simpson's rule refined to 1e-9 on the same leaf: numbers from a
    // general-purpose integrator. 0.2 % is far below any model's accuracy.
    @ParameterizedTest
    @CsvSource({"0.5, 100", "3, 200", "4.5, 600", "6, 1500"})
    void five_depths_are_enough(double lai, double ppfd) {
        double whole = day(LETTUCE, lai, ppfd);
        double step = 1e-3;
        double fine =
                new SimpsonIntegrator(1e-9, 1e-15, 4, 40)
                        .integrate(
                                100_000,
                                depth -> {
                                    double k = LETTUCE.growth().extinction();
                                    double share = Math.exp(-k * depth);
                                    double nir = Math.exp(-0.5 * k * depth);
                                    // A leaf so thin that its own shade is nothing.
                                    return ClosedForms.canopyKgPerM2S(
                                                    LETTUCE.stomata(),
                                                    k,
                                                    step,
                                                    ppfd / 4.7 * share,
                                                    ppfd * share,
                                                    0.1 * ppfd / 4.7 * nir,
                                                    0,
                                                    24,
                                                    0.7 * HumidAir.saturationPressurePa(24),
                                                    101_325,
                                                    0.15)
                                            / step;
                                },
                                0,
                                lai);
        assertEquals(fine, whole, 0.002 * fine);
    }

    @Test
    void humid_air_over_a_cold_sky_gives_no_dew_and_no_negative_thirst() {
        assertEquals(
                0,
                ClosedForms.canopyKgPerM2S(
                        LETTUCE.stomata(),
                        0.9,
                        3,
                        0,
                        0,
                        0,
                        -80,
                        10,
                        HumidAir.saturationPressurePa(10),
                        101_325,
                        0.5));
    }

    // FAO-56 (Allen et al. 1998), Tables 11 and 12: lettuce 0.7, 1.00, 0.95 with 25/35/30/10 days.
    @ParameterizedTest
    @CsvSource({"10, 0.7", "25, 0.7", "42.5, 0.85", "60, 1", "80, 1", "95, 0.975", "100, 0.95"})
    void the_crop_coefficient_follows_the_stages_of_FAO_56(double day, double expected) {
        CropTraits.Stages stages = LETTUCE.stages();
        double thermal =
                stages.emergenceCd() + day / 100 * (stages.lastHarvestCd() - stages.emergenceCd());
        Plant plant = new Plant(thermal, 1e-4, 0, 0, 0, 0);
        assertEquals(expected, Transpiration.cropCoefficient(LETTUCE, plant), 1e-9);
    }

    // FAO-56, ch. 6: mid season begins at effective full cover, whatever the calendar says.
    @Test
    void a_closed_canopy_has_the_coefficient_of_mid_season() {
        Plant plant = new Plant(LETTUCE.stages().emergenceCd() + 1, 3, 0.3, 0, 0.2, 0.1);
        assertEquals(1.0, Transpiration.cropCoefficient(LETTUCE, plant), 1e-9);
        assertEquals(0, Transpiration.cropCoefficient(LETTUCE, Growing.sown(LETTUCE)));
    }

    // Lettuce drinks 4 % less for each mS/cm above 2.0 (from memory), and nothing at 22 and more,
    // where a root's pressure is no longer above the solution's; its yield falls by 11 %.
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 1", "4, 0.92", "6, 0.84", "30, 0"})
    void salt_takes_its_published_share(double ec, double left) {
        assertEquals(left, Transpiration.saltFrac(LETTUCE, ec), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"2, 1", "4, 0.78", "6, 0.56"})
    void growth_falls_faster_by_salt_than_thirst(double ec, double left) {
        assertEquals(left, LETTUCE.salinity().growthFrac(ec), 1e-9);
    }
}
