package tideless.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class AcidityTest {
    private static final Contact AIR = Contact.OUTDOOR_AIR;

    // Recomputed independently with the same constants; 0.005 for the digits printed.
    @ParameterizedTest
    @CsvSource({
        "25, 400, 5.609",
        "25, 420, 5.598",
        "25, 1000, 5.410",
        "10, 420, 5.555",
        "15, 420, 5.568",
        "20, 420, 5.583",
        "30, 420, 5.614"
    })
    void pure_water_in_air(double tempC, double co2Ppm, double ph) {
        assertThat(Acidity.phInAir(Composition.WATER, tempC, co2Ppm)).isCloseTo(ph, within(0.002));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 25, 420, 8.174",
        "1, 20, 420, 8.144",
        "1, 15, 420, 8.116",
        "1, 10, 420, 8.090",
        "1, 30, 420, 8.205",
        "1, 25, 1000, 7.801",
        "2, 25, 420, 8.462",
        "5, 25, 420, 8.828"
    })
    void sodium_bicarbonate_in_air(double molPerM3, double tempC, double co2Ppm, double ph) {
        assertThat(Acidity.phInAir(Salts.of("NaHCO3", molPerM3), tempC, co2Ppm))
                .isCloseTo(ph, within(0.005));
    }

    // pKa1 6.35, pKH 1.47, no activities: a hand table. Activities pull ours down by up to 0.06.
    @ParameterizedTest
    @CsvSource({"0.1, 7.197", "0.25, 7.595", "0.5, 7.896", "1, 8.197", "2, 8.498", "4, 8.799"})
    void bicarbonate_water_in_air_by_the_ideal_formula(double alkalinity, double ph) {
        assertThat(Acidity.phInAir(Salts.of("NaHCO3", alkalinity), 25, 420))
                .isBetween(ph - 0.07, ph);
    }

    @Test
    void sodium_bicarbonate_closed() {
        assertThat(Acidity.phClosed(Salts.of("NaHCO3", 1), 25)).isCloseTo(8.27, within(0.01));
    }

    // NIST (from memory) 6.865 and, NBS (1961) "A standard for the measurement of the pH of
    // blood", 7.414. 0.02: Davies against the certified activity convention.
    @ParameterizedTest
    @CsvSource({"25, 25, 6.865", "8.695, 30.43, 7.414"})
    void phosphate_buffers(double kh2po4, double na2hpo4, double ph) {
        double water = Equilibria.densityKgPerL(25);
        Composition buffer =
                Composition.of(
                        Map.of(
                                Component.K,
                                kh2po4 * water,
                                Component.NA,
                                2 * na2hpo4 * water,
                                Component.P,
                                (kh2po4 + na2hpo4) * water));
        assertThat(Acidity.phClosed(buffer, 25)).isCloseTo(ph, within(0.02));
    }

    // NIST, from memory; first three also read in a buffer table (6.98, 6.95, 6.92). 0.03.
    @ParameterizedTest
    @CsvSource({
        "0, 6.984",
        "5, 6.951",
        "10, 6.923",
        "15, 6.900",
        "20, 6.881",
        "25, 6.865",
        "30, 6.853",
        "35, 6.844"
    })
    void the_equimolal_phosphate_buffer_follows_temperature(double tempC, double ph) {
        Composition buffer =
                Composition.of(Map.of(Component.K, 25.0, Component.NA, 50.0, Component.P, 50.0));
        assertThat(Acidity.phClosed(buffer, tempC)).isCloseTo(ph, within(0.03));
    }

    // NBS (1969): NaHCO3 and Na2CO3, 0.025 mol/kg each, 10.012 at 25 degC. 0.03 as above.
    @Test
    void the_carbonate_buffer() {
        Composition buffer = Composition.of(Map.of(Component.NA, 75.0, Component.C, 50.0));
        assertThat(Acidity.phClosed(buffer, 25)).isCloseTo(10.012, within(0.03));
    }

    // Share of bicarbonate turned to CO2 = 1/(1 + 10^(pH - pK1)/g1), pK1 6.352 (Plummer and
    // Busenberg 1982); closed forms at I = 0 and about 0.01. "80 % at 5.8" is the ideal value.
    @ParameterizedTest
    @CsvSource({
        "0, 4.5, 0.986", "0, 5.5, 0.877", "0, 5.8, 0.781", "0, 6.0, 0.692", "0, 6.2, 0.587",
        "0, 6.5, 0.416", "0, 7.0, 0.184", "10, 4.5, 0.985", "10, 5.5, 0.865", "10, 5.8, 0.763",
        "10, 6.0, 0.670", "10, 6.2, 0.561", "10, 6.5, 0.391", "10, 7.0, 0.169"
    })
    void share_of_bicarbonate_neutralised(double nacl, double ph, double share) {
        Composition water = Salts.of("NaCl", nacl).plus(Composition.WATER.with(Component.C, 0.001));
        Speciation s = Speciation.atPh(water, 25, ph);
        assertThat(s.molPerM3(Species.CO2) / s.carbonMolPerM3()).isCloseTo(share, within(0.002));
    }

    // Closed forms with pK2 7.200 at I = 0; pairs left out at I = 0.025 (sodium pair: 0.001).
    @ParameterizedTest
    @CsvSource({
        "0, 5.0, 0.994",
        "0, 5.8, 0.962",
        "0, 6.2, 0.909",
        "25, 5.5, 0.970",
        "25, 5.8, 0.941",
        "25, 6.0, 0.910",
        "25, 6.5, 0.761"
    })
    void share_of_phosphate_as_dihydrogen(double nacl, double ph, double share) {
        Composition water = Salts.of("NaCl", nacl).plus(Composition.WATER.with(Component.P, 0.001));
        Speciation s = Speciation.atPh(water, 25, ph);
        double h2 = s.molPerM3(Species.H2PO4);
        assertThat(h2 / (h2 + s.molPerM3(Species.HPO4))).isCloseTo(share, within(0.003));
    }

    @ParameterizedTest(name = "alkalinity {0} to pH {1}")
    @CsvFileSource(resources = "/tideless/solution/acid-dose.csv", numLinesToSkip = 2)
    void acid_doses_open_and_closed_and_the_drift_after(
            double alkalinity,
            double targetPh,
            double open,
            double closedFromAir,
            double closedFrom75,
            double driftPh) {
        Composition water = Composition.WATER.with(Component.NA, alkalinity);
        Composition inAir = Acidity.inAir(water, 25, 420);
        Composition tap =
                water.with(Component.C, Acidity.carbonForPh(water, 25, 7.5).orElseThrow());
        double fromTap =
                Acidity.strongAcidMolPerM3(tap, 25, targetPh, Contact.CLOSED).orElseThrow();
        assertThat(Acidity.strongAcidMolPerM3(inAir, 25, targetPh, AIR).orElseThrow())
                .isCloseTo(open, within(0.002));
        assertThat(Acidity.strongAcidMolPerM3(inAir, 25, targetPh, Contact.CLOSED).orElseThrow())
                .isCloseTo(closedFromAir, withinPercentage(1));
        assertThat(fromTap).isCloseTo(closedFrom75, withinPercentage(1));
        Composition dosed = tap.with(Component.NO3, fromTap);
        assertThat(Acidity.phClosed(dosed, 25)).isCloseTo(targetPh, within(1e-6));
        assertThat(Acidity.phInAir(dosed, 25, 420)).isCloseTo(driftPh, within(0.02));
    }

    // Alkalinity 4, pH 7.8, I 0.01: hand value 3.02, 2.19, 3.45 mmol/L to 5.8, 6.2, 5.5; 0.08.
    @ParameterizedTest
    @CsvSource({"5.8, 3.02", "6.2, 2.19", "5.5, 3.45"})
    void acid_for_an_alkaline_water_by_hand(double targetPh, double acid) {
        Composition water = Salts.of("NaCl", 6).plus(Composition.WATER.with(Component.NA, 4));
        Composition tap =
                water.with(Component.C, Acidity.carbonForPh(water, 25, 7.8).orElseThrow());
        assertThat(Acidity.strongAcidMolPerM3(tap, 25, targetPh, Contact.CLOSED).orElseThrow())
                .isCloseTo(acid, within(0.08));
    }

    // Nutrient solution with 0.617 mmol/L of inorganic carbon at pH 6.9: recomputed independently.
    // 4 %: other pair constants for CaSO4, and pairs of K and Na with HPO4 there left out.
    @ParameterizedTest
    @CsvSource({"6.6, 0.251", "6.4, 0.422", "6.2, 0.580", "6.0, 0.717", "5.8, 0.826", "5.5, 0.941"})
    void acid_for_a_nutrient_solution(double targetPh, double acid) {
        Composition bare = Composition.of(12, 0.5, 1, 6, 4, 1.5, 2, 0, 0, 0.617, 0);
        double base = ClosedForms.strongBaseMolPerM3(bare, 25, 6.9, Contact.CLOSED).orElseThrow();
        Composition at69 = bare.with(Component.NA, base);
        assertThat(Acidity.strongAcidMolPerM3(at69, 25, targetPh, Contact.CLOSED).orElseThrow())
                .isCloseTo(acid, withinPercentage(4));
    }

    // 1 mmol/L phosphate, I 0.027, no CO2, from pH 5.8: +0.1 meq/L base gives 6.28, 0.05 acid 5.18
    // by
    // hand without the sodium pair, which holds a little more HPO4-2 here: 0.05.
    @Test
    void phosphate_alone_buffers_little() {
        Composition bare = Salts.of("NaCl", 26).plus(Composition.WATER.with(Component.P, 1));
        double base = ClosedForms.strongBaseMolPerM3(bare, 25, 5.8, Contact.CLOSED).orElseThrow();
        Composition start = bare.with(Component.K, base);
        assertThat(Acidity.phClosed(start.with(Component.K, base + 0.1), 25))
                .isCloseTo(6.28, within(0.02));
        assertThat(Acidity.phClosed(start.with(Component.NO3, 0.05), 25))
                .isCloseTo(5.18, within(0.05));
    }

    // Densities and per cent to mol/L: recomputed independently.
    @ParameterizedTest
    @CsvSource({
        "nitric-38, 7.4478",
        "nitric-53, 11.187",
        "nitric-60, 13.017",
        "phosphoric-59, 8.5495",
        "phosphoric-75, 12.085",
        "phosphoric-85, 14.616",
        "citric-50, 3.2271",
        "potassium-hydroxide-50, 13.457",
        "potassium-carbonate-50, 5.5715"
    })
    void strengths_of_named_reagents(String id, double molPerL) {
        assertThat(Reagent.named(id).orElseThrow().molPerL())
                .isCloseTo(molPerL, withinPercentage(0.01));
    }

    // Protons a molecule: citric 2.11887 at 5.8, I = 0; phosphoric 1.01 to 1.24 at I = 0.025.
    @Test
    void protons_given_at_the_target() {
        assertThat(Reagent.named("citric-50").orElseThrow().protonsGiven(5.8, 0))
                .isCloseTo(2.11887, within(1e-4));
        assertThat(Reagent.nitric().protonsGiven(5.8, 0.02)).isEqualTo(1);
        assertThat(Reagent.named("sulfuric-37").orElseThrow().protonsGiven(5.8, 0)).isEqualTo(2);
        double[][] expected = {{5, 1.01}, {5.5, 1.03}, {5.8, 1.06}, {6, 1.09}, {6.2, 1.14}};
        for (double[] row : expected) {
            assertThat(Reagent.named("phosphoric-85").orElseThrow().protonsGiven(row[0], 0.025))
                    .isCloseTo(row[1], within(0.006));
        }
    }

    // The dose in moles times protons given equals the dose of strong acid; 2 %, for phosphate
    // pairs with calcium. Citric acid, which holds calcium, has a test of its own (MixingTest).
    @Test
    void named_acids_pay_the_same_protons() {
        Composition tap = SourceWater.named("hard-tap").orElseThrow().composition();
        double strong = Acidity.strongAcidMolPerM3(tap, 25, 5.8, Contact.CLOSED).orElseThrow();
        for (String id : List.of("phosphoric-85", "sulfuric-37", "nitric-60")) {
            Reagent acid = Reagent.named(id).orElseThrow();
            double dose = Acidity.doseMolPerM3(tap, 25, 5.8, acid, Contact.CLOSED).orElseThrow();
            assertThat(dose * acid.protonsGiven(5.8, 0.012))
                    .as(id)
                    .isCloseTo(strong, withinPercentage(3));
        }
    }

    @Test
    void no_acid_is_named_for_a_solution_below_the_target() {
        assertThat(Acidity.strongAcidMolPerM3(Salts.of("HNO3", 1), 25, 6, AIR)).isEmpty();
        assertThat(ClosedForms.strongBaseMolPerM3(Salts.of("NaHCO3", 1), 25, 6, AIR)).isEmpty();
    }

    // A made-up liquid of 0.5 mol/L, tried on 1 L of soft tap water, is found again.
    @Test
    void own_ph_minus_is_calibrated_by_one_titration() {
        Composition tap = SourceWater.named("soft-tap").orElseThrow().composition();
        double millilitres = 0.5;
        Composition dosed =
                tap.with(
                        Component.NO3,
                        tap.molPerM3(Component.NO3) + 0.5 * millilitres); // mmol in 1 L
        double after = Acidity.phClosed(dosed, 25);
        Reagent found = Acidity.calibrated(tap, 25, 1, millilitres, 7.5, after).orElseThrow();
        assertThat(found.molPerL()).isCloseTo(0.5, withinPercentage(0.001));
    }
}
