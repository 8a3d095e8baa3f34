package tideless.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class ElectricalConductivityTest {
    private static final String HERE = "/tideless/solution/";

    /** EC with neither acid nor CO2, as standards are given (water subtracted). */
    private static double neutral(Composition composition, double tempC) {
        return ClosedForms.msPerCm(composition, tempC, 7);
    }

    // 1.5 % at 25 degC: the method's own bias for KCl is +0.7 to +1.1 %; 2 % elsewhere.
    @ParameterizedTest(name = "{1} mol/kg at {0} degC: {2} uS/cm")
    @CsvFileSource(resources = HERE + "kcl-molal.csv", numLinesToSkip = 2)
    void potassium_chloride_standards_by_mass(double tempC, double molPerKg, double uSPerCm) {
        // mol/kg to mol/m3 by the density of water; the salt itself changes it by 0.1 % and less.
        double molPerM3 = molPerKg * 1000 * Equilibria.densityKgPerL(tempC);
        assertThat(neutral(Salts.of("KCl", molPerM3), tempC) * 1000)
                .isCloseTo(uSPerCm, withinPercentage(tempC == 25 ? 1.5 : 2));
    }

    @ParameterizedTest(name = "{0} mol/L: {1} uS/cm")
    @CsvFileSource(resources = HERE + "kcl-molar.csv", numLinesToSkip = 2)
    void potassium_chloride_standards_by_volume(double molPerL, double uSPerCm) {
        assertThat(neutral(Salts.of("KCl", molPerL * 1000), 25) * 1000)
                .isCloseTo(uSPerCm, withinPercentage(1.5));
    }

    @ParameterizedTest(name = "{0} {1} mmol/L at {2} degC: {3} mS/cm")
    @CsvFileSource(resources = HERE + "single-salts.csv", numLinesToSkip = 2)
    void single_salts(
            String salt, double molPerM3, double tempC, double mSPerCm, double tolerancePercent) {
        Composition composition = Salts.of(salt, molPerM3);
        double found =
                salt.equals("HNO3")
                        ? Speciation.closed(composition, tempC).ecMsPerCm()
                        : neutral(composition, tempC);
        assertThat(found).isCloseTo(mSPerCm, withinPercentage(tolerancePercent));
    }

    // CRC Handbook, conductivity by mass per cent, 20 degC, two digits. Misses of strong single
    // salts, shown and kept: far stronger in each ion than any feed. NH4+ has a flat row in the
    // set;
    // magnesium sulfate comes out low (without pairs it would be +48 %); the pair NH4SO4- is an
    // estimate of ours.
    @ParameterizedTest(name = "{0} {1} mmol/L: {2} mS/cm, off by {3} %")
    @CsvSource({
        "NH4Cl, 93.6, 10.5, 6.4",
        "CaCl2, 45.2, 8.1, 5.5",
        "MgSO4, 41.7, 4.1, -5.3",
        "MgSO4, 83.8, 7.6, -16.1",
        "(NH4)2SO4, 37.9, 7.4, -8.3"
    })
    void strong_single_salts_that_miss(
            String salt, double molPerM3, double mSPerCm, double missPercent) {
        double found = neutral(Salts.of(salt, molPerM3), 20);
        assertThat(100 * (found / mSPerCm - 1)).isCloseTo(missPercent, within(0.5));
    }

    // ZnSO4, nearly the same limiting conductivity, gives 0.849 and 1.485 (from memory). 6 %.
    @ParameterizedTest
    @CsvSource({"5, 0.849", "10, 1.485"})
    void ion_pairs_hold_magnesium_sulfate_down(double molPerM3, double zincSulfate) {
        assertThat(neutral(Salts.of("MgSO4", molPerM3), 25))
                .isCloseTo(zincSulfate, withinPercentage(6));
    }

    // Standard Methods 2510, worked example (from memory): Ca 55, Mg 12, Na 28, K 3.2, HCO3 170,
    // SO4 77, Cl 20 mg/L; measured 492 uS/cm. 5 % as the reference asks.
    @Test
    void the_natural_water_of_standard_methods() {
        Composition water =
                Composition.of(
                        Map.of(
                                Component.CA,
                                55 / 40.078,
                                Component.MG,
                                12 / 24.305,
                                Component.NA,
                                28 / 22.99,
                                Component.K,
                                3.2 / 39.098,
                                Component.C,
                                170 / 61.017,
                                Component.SO4,
                                77 / 96.063,
                                Component.CL,
                                20 / 35.453));
        assertThat(ClosedForms.msPerCm(water, 25, 8) * 1000).isCloseTo(492, withinPercentage(5));
    }

    // Published figures are rounded targets, so 8 %. Compositions from memory but for the first
    // two. Strawberry, the least certain row, misses by 11 % and stands apart below.
    @ParameterizedTest(name = "{0}: {1} mS/cm")
    @CsvSource({
        "hoagland-1, 2.1",
        "hoagland-2, 2.0",
        "steiner, 2.0",
        "lettuce-water-culture, 2.6",
        "tomato-substrate, 2.6",
        "cucumber-substrate, 2.2",
        "pepper-substrate, 2.2",
        "cucumber-closed, 1.7",
        "pepper-closed, 1.7"
    })
    void recipes_read_near_their_published_figure(String id, double published) {
        Recipe recipe = Recipe.named(id).orElseThrow();
        assertThat(recipe.publishedEcMsPerCm()).isEqualTo(published);
        assertThat(ElectricalConductivity.at25MsPerCm(recipe.composition()))
                .isCloseTo(published, withinPercentage(8));
    }

    // Misses, shown and not tuned away: the published figures come from the linear rule
    // 0.095 C+ + 0.19 (1.66 and 1.62), which lies 7 to 8 % under conductivities for weak feeds.
    @ParameterizedTest(name = "{0}: {1} mS/cm")
    @CsvSource({"strawberry-substrate, 1.6, 11.4", "tomato-closed, 1.6, 9.5"})
    void two_recipes_read_higher_than_published(String id, double published, double missPercent) {
        double found =
                ElectricalConductivity.at25MsPerCm(Recipe.named(id).orElseThrow().composition());
        assertThat(100 * (found / published - 1)).isCloseTo(missPercent, within(0.5));
    }

    // Recomputed independently at pH 5.8 with the KSO4- row and log K CaSO4 2.30: checks coding.
    // 1 % for the pair constant 2.25 taken here.
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({"steiner, 2.121", "tomato-substrate, 2.774", "hoagland-1, 2.183"})
    void recipes_agree_with_an_independent_sum(String id, double mSPerCm) {
        Composition recipe = Recipe.named(id).orElseThrow().composition();
        assertThat(ClosedForms.msPerCm(recipe, 25, 5.8)).isCloseTo(mSPerCm, withinPercentage(1));
    }

    // Recomputed independently with stand-ins of another choice; 2 %.
    @ParameterizedTest(name = "{0}: {1} / {2} / {3}")
    @CsvSource({
        "hoagland-1, 2.18, 1.148, 0.598",
        "hoagland-2, 2.11, 1.107, 0.576",
        "steiner, 2.12, 1.125, 0.592",
        "tomato-substrate, 2.77, 1.471, 0.774",
        "cucumber-substrate, 2.31, 1.202, 0.621",
        "lettuce-water-culture, 2.71, 1.408, 0.726"
    })
    void half_and_quarter_strength_read_more_than_half_and_quarter(
            String id, double whole, double half, double quarter) {
        Composition recipe = Recipe.named(id).orElseThrow().composition();
        assertThat(ElectricalConductivity.at25MsPerCm(recipe))
                .isCloseTo(whole, withinPercentage(2));
        assertThat(ElectricalConductivity.at25MsPerCm(recipe.times(0.5)))
                .isCloseTo(half, withinPercentage(2));
        assertThat(ElectricalConductivity.at25MsPerCm(recipe.times(0.25)))
                .isCloseTo(quarter, withinPercentage(2));
    }

    // Recomputed independently: Steiner at 5 to 35 degC, read back with alpha 1.9 %/K. 1.5 %.
    @ParameterizedTest
    @CsvSource({
        "5, 1.336, 2.155",
        "10, 1.525, 2.133",
        "15, 1.717, 2.120",
        "20, 1.912, 2.113",
        "25, 2.110, 2.110",
        "30, 2.312, 2.111",
        "35, 2.516, 2.114"
    })
    void steiner_at_other_temperatures_and_through_a_meter(
            double tempC, double mSPerCm, double shown) {
        Composition steiner = Recipe.named("steiner").orElseThrow().composition();
        assertThat(ClosedForms.msPerCm(steiner, tempC, 5.8))
                .isCloseTo(mSPerCm, withinPercentage(1.5));
        assertThat(ClosedForms.meterMsPerCm(mSPerCm, tempC, 0.019))
                .isCloseTo(shown, within(0.0016)); // half a digit in both figures
    }

    // CRC Handbook KCl 0.01 mol/kg: 1273.03 at 20 degC is 1408.23 at 25; with 1.92 %/K the meter
    // agrees to 0.1 %, with 2 %/K it reads 0.45 % high.
    @Test
    void a_meter_refers_potassium_chloride_to_25_degrees() {
        assertThat(ClosedForms.meterMsPerCm(1.27303, 20, 0.0192))
                .isCloseTo(1.40823, withinPercentage(0.1));
        assertThat(ClosedForms.meterMsPerCm(1.27303, 20, 0.02)).isCloseTo(1.4145, within(0.0001));
    }

    @Test
    void ppm_scales_are_labels() {
        assertThat(ElectricalConductivity.PpmScale.PPM_500.ppm(2.11)).isCloseTo(1055, within(1e-9));
        assertThat(ElectricalConductivity.PpmScale.PPM_640.ppm(2.11))
                .isCloseTo(1350.4, within(1e-9));
        assertThat(ElectricalConductivity.PpmScale.PPM_700.ppm(2.11)).isCloseTo(1477, within(1e-9));
    }

    // CO2-saturated water, CRC Handbook KCl table: 1.10 uS/cm at 25 degC (air of its day, about
    // 350 ppm, and impurities); pure water in 420 ppm air 0.99 by independent sum. 10 %.
    @Test
    void water_in_air_conducts_a_microsiemens() {
        assertThat(ElectricalConductivity.at25MsPerCm(Composition.WATER) * 1000)
                .isCloseTo(0.99, withinPercentage(2))
                .isCloseTo(1.10, withinPercentage(11));
    }

    // Limiting conductivities at 25 degC, S cm2/mol: CRC Handbook (read). 1 % as tables differ.
    @ParameterizedTest
    @CsvSource({
        "H, 349.65",
        "OH, 198.0",
        "NA, 50.08",
        "K, 73.48",
        "NH4, 73.5",
        "CA, 118.94",
        "MG, 106.0",
        "CL, 76.31",
        "NO3, 71.42",
        "SO4, 160.0",
        "HCO3, 44.5",
        "CO3, 138.6",
        "H2PO4, 36",
        "HPO4, 114"
    })
    void limiting_conductivities_agree_with_the_handbook(Species species, double handbook) {
        assertThat(Equilibria.AT_25.lambda0[species.ordinal()])
                .isCloseTo(handbook, withinPercentage(1));
    }

    // Density of water, kg/L: handbook values (from memory), half the last digit.
    @ParameterizedTest
    @CsvSource({
        "0, 0.99984",
        "4, 0.99997",
        "10, 0.99970",
        "20, 0.99821",
        "25, 0.99705",
        "30, 0.99565",
        "40, 0.99222",
        "50, 0.98804"
    })
    void density_of_water(double tempC, double kgPerL) {
        assertThat(Equilibria.densityKgPerL(tempC)).isCloseTo(kgPerL, within(1e-5));
    }

    // Carmassi et al. (2007), Agric. Water Manage. 88, 73: 10 mmol/L more NaCl raised the EC of a
    // tomato solution from 3.0 to 3.9 mS/cm. A miss, kept: ours rises by 1.07.
    @Test
    void ten_millimoles_of_sodium_chloride_raise_the_tomato_solution_more_than_was_measured() {
        Composition tomato =
                Recipe.named("tomato-substrate")
                        .orElseThrow()
                        .composition()
                        .times(0.66)
                        .plus(Salts.of("NaCl", 10));
        double before = ElectricalConductivity.at25MsPerCm(tomato);
        double after = ElectricalConductivity.at25MsPerCm(tomato.plus(Salts.of("NaCl", 10)));
        assertThat(before).isCloseTo(3.0, within(0.1));
        assertThat(after - before).isCloseTo(1.07, within(0.02)).isGreaterThan(0.9);
    }

    // EC of 1 g/L of a fertiliser salt, mS/cm: ranges as growers' tables print them (from memory);
    // 4 % outside the range allowed, as for single salts.
    @ParameterizedTest(name = "{0}: {1} to {2}")
    @CsvSource({
        "CALCIUM_NITRATE, 0.95, 1.0",
        "CALCIUM_AMMONIUM_NITRATE, 1.15, 1.25",
        "POTASSIUM_NITRATE, 1.3, 1.35",
        "MONOPOTASSIUM_PHOSPHATE, 0.70, 0.75",
        "MONOAMMONIUM_PHOSPHATE, 0.85, 0.95",
        "MAGNESIUM_SULFATE, 0.70, 0.80",
        "POTASSIUM_SULFATE, 1.5, 1.55",
        "AMMONIUM_NITRATE, 1.6, 1.7",
        "MAGNESIUM_NITRATE, 0.85, 0.9",
        "CALCIUM_CHLORIDE, 1.55, 1.65"
    })
    void one_gram_a_litre_of_a_fertiliser_salt(Salt salt, double least, double most) {
        assertThat(
                        ElectricalConductivity.at25MsPerCm(
                                salt.perMol().times(1000 / salt.gramsPerMol())))
                .isBetween(0.96 * least, 1.04 * most);
    }
}
