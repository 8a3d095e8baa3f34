package tideless.solution;

import java.util.Arrays;
import tideless.physics.Elementary;

/**
 * Equilibrium constants and ionic conductivities at one temperature. Immutable.
 *
 * <p>Constants are for activities on the molal scale. Sources stand beside each line. Where two
 * respectable tables differ, the one used and its rival are both named.
 */
final class Equilibria {
    // Stands before AT_25, whose construction uses it.
    static final double LN10 = Elementary.log(10);

    /** 25 degC. */
    static final Equilibria AT_25 = new Equilibria(25);

    /**
     * Gas constant, kcal/mol/K, for van 't Hoff's equation; exact CODATA value over 4184 J/kcal.
     */
    private static final double R_KCAL = 8.31446261815324 / 4184;

    /** Celsius to kelvin; exact by definition. */
    static final double ZERO_C_K = 273.15;

    final double tempC;

    /** Davies A, kg^0.5/mol^0.5, base 10. */
    final double debyeHuckelA;

    /** Henry's constant of CO2, mol/kg/atm. */
    final double henryCo2;

    /** First dissociation constant of carbonic acid (CO2 with its hydrate). */
    final double carbonic1;

    /** Formation constant of each species from its cation, its ligand and protons. */
    final double[] formation = new double[Species.COUNT];

    /** Molar conductivity at infinite dilution, S cm2/mol, by species; 0 for neutral ones. */
    final double[] lambda0 = new double[Species.COUNT];

    /** Slope A(t) of McCleskey et al. (2012), by species. */
    final double[] lambdaA = new double[Species.COUNT];

    /** Coefficient B of McCleskey et al. (2012), by species. */
    final double[] lambdaB = new double[Species.COUNT];

    final double logKspGypsum;
    final double logKspBrushite;
    final double logKspCalcite;

    private Equilibria(double tempC) {
        this.tempC = tempC;
        double t = tempC + ZERO_C_K;
        double lg = Elementary.log(t) / LN10;
        // Permittivity: Malmberg and Maryott (1956), from memory.
        double eps = 87.740 + tempC * (-0.40008 + tempC * (9.398e-4 - 1.410e-6 * tempC));
        double epsT = eps * t;
        debyeHuckelA = 1.82483e6 * Math.sqrt(densityKgPerL(tempC)) / (epsT * Math.sqrt(epsT));

        // Plummer and Busenberg (1982), read as the U.S. Geological Survey's page lists them.
        double logK1 = logCarbonic1(t);
        double logK2 =
                -107.8871 - 0.03252849 * t + 5151.79 / t + 38.92561 * lg - 563713.9 / (t * t);
        double logCaHco3 = 1209.120 + 0.31294 * t - 34765.05 / t - 478.782 * lg;
        double logCaCo3 = -1228.732 - 0.299444 * t + 35512.75 / t + 485.818 * lg;
        logKspCalcite = -171.9065 - 0.077993 * t + 2839.319 / t + 71.595 * lg;
        henryCo2 = henryCo2MolPerKgAtm(tempC);
        carbonic1 = power10(logK1);

        // Water: the U.S. Geological Survey's general data base of aqueous equilibria (read).
        double logKw =
                -283.9710 - 0.05069842 * t + 13323.00 / t + 102.24447 * lg - 1119669.0 / (t * t);
        // Phosphoric acid: Bates (1951), Bates and Acree (1943); from memory.
        double pKp1 = 799.31 / t - 4.5535 + 0.013486 * t;
        double pKp2 = 1979.5 / t - 5.3541 + 0.01984 * t;
        double logKp3 = -vanTHoff(12.346, -3.530, t);
        // Ammonium: Emerson et al. (1975); equation read, attribution from memory.
        double pKNh4 = 0.09018 + 2729.92 / t;

        Arrays.fill(formation, 1);
        set(Species.OH, logKw);
        set(Species.NH3, -pKNh4);
        // Pairs: the same data base (log K read; enthalpies in kcal/mol from memory where marked
        // m). CaSO4 stands at 2.30 in older tables: 2.25 puts gypsum nearer to its measured
        // solubility.
        set(Species.HSO4, vanTHoff(1.988, 3.85, t)); // m
        set(Species.CASO4, vanTHoff(2.25, 1.325, t));
        set(Species.MGSO4, vanTHoff(2.37, 4.55, t));
        set(Species.KSO4, vanTHoff(0.85, 2.25, t));
        set(Species.NASO4, vanTHoff(0.70, 1.12, t)); // m
        set(Species.NH4SO4, 1.11);
        set(Species.H3PO4, pKp1 + pKp2);
        set(Species.H2PO4, pKp2);
        set(Species.PO4, logKp3);
        set(Species.CAHPO4, vanTHoff(2.739, 3.3, t)); // m
        set(Species.CAH2PO4, vanTHoff(1.408, 3.4, t) + pKp2); // m
        set(Species.MGHPO4, vanTHoff(2.87, 3.3, t)); // m
        set(Species.MGH2PO4, vanTHoff(1.513, 3.4, t) + pKp2); // m
        set(Species.CAPO4, vanTHoff(6.459, 3.10, t) + logKp3); // m
        set(Species.MGPO4, vanTHoff(6.589, 3.10, t) + logKp3); // m
        set(Species.KHPO4, 0.29); // m
        set(Species.NAHPO4, 0.29); // m
        set(Species.CO2, -logK1);
        set(Species.CO3, logK2);
        set(Species.CAHCO3, logCaHco3);
        set(Species.CACO3, logCaCo3 + logK2);
        set(Species.MGHCO3, vanTHoff(1.07, 0.79, t)); // m
        set(Species.MGCO3, vanTHoff(2.98, 2.713, t) + logK2); // m

        // Gypsum: the same data base (read); 25 degC: -4.581. Bennett and Adams (1972): -4.588.
        logKspGypsum = 68.2401 - 3221.51 / t - 25.0627 * lg;
        // Brushite at 25 degC, to Ca+2 and HPO4-2: Gregory, Moreno and Brown (1970), from memory;
        // its slight fall with warming is left out.
        logKspBrushite = -6.59;

        setConductivities(tempC);
    }

    /**
     * Constants at a temperature; one object for 25 degC.
     *
     * @param tempC degC, 0 to 50
     */
    static Equilibria at(double tempC) {
        if (tempC == 25) {
            return AT_25;
        }
        if (!(tempC >= 0 && tempC <= 50)) {
            throw new IllegalArgumentException("tempC must lie in 0 to 50, was " + tempC);
        }
        return new Equilibria(tempC);
    }

    /** -log10 of the activity coefficient of a single charge, by Davies' equation. */
    double minusLogGamma(double ionicStrengthMolPerKg) {
        double root = Math.sqrt(ionicStrengthMolPerKg);
        return debyeHuckelA * (root / (1 + root) - 0.3 * ionicStrengthMolPerKg);
    }

    /** Density of air-free water at one atmosphere, kg/L; Kell (1975), from memory. */
    static double densityKgPerL(double tempC) {
        double numerator =
                999.83952
                        + tempC
                                * (16.945176
                                        + tempC
                                                * (-7.9870401e-3
                                                        + tempC
                                                                * (-46.170461e-6
                                                                        + tempC
                                                                                * (105.56302e-9
                                                                                        - 280.54253e-12
                                                                                                * tempC))));
        return numerator / (1 + 16.879850e-3 * tempC) / 1000;
    }

    /**
     * Henry's constant of CO2 alone, mol/kg/atm; Plummer and Busenberg (1982), read as the U.S.
     * Geological Survey's page lists it.
     */
    static double henryCo2MolPerKgAtm(double tempC) {
        double t = tempC + ZERO_C_K;
        return power10(
                108.3865
                        + 0.01985076 * t
                        - 6919.53 / t
                        - 40.45154 * Elementary.log(t) / LN10
                        + 669365.0 / (t * t));
    }

    /**
     * First dissociation constant of carbonic acid times Henry's constant, mol2/kg2/atm: what, with
     * the carbon dioxide above a solution and its bicarbonate, makes its acid.
     */
    static double carbonicInAir(double tempC) {
        return power10(logCarbonic1(tempC + ZERO_C_K)) * henryCo2MolPerKgAtm(tempC);
    }

    private static double logCarbonic1(double tempK) {
        return -356.3094
                - 0.06091964 * tempK
                + 21834.37 / tempK
                + 126.8339 * (Elementary.log(tempK) / LN10)
                - 1684915.0 / (tempK * tempK);
    }

    private static double power10(double log10) {
        return Elementary.exp(log10 * LN10);
    }

    private void set(Species species, double log10) {
        formation[species.ordinal()] = power10(log10);
    }

    /** log10 K at a temperature from its value at 25 degC and its enthalpy, kcal/mol. */
    private static double vanTHoff(double log10At25, double kcalPerMol, double tempK) {
        return log10At25 - kcalPerMol / (R_KCAL * LN10) * (1 / tempK - 1 / 298.15);
    }

    /**
     * McCleskey, Nordstrom, Ryan and Ball (2012), Geochim. Cosmochim. Acta 77, 369: lambda0 = a t^2
     * + b t + c, A = d t^2 + e t + f. The copy read prints no minus signs; those of H+, HCO3- and
     * CO3-2 are from memory and are held by the limiting conductivities at 25 degC.
     */
    private void setConductivities(double t) {
        row(Species.K, t, 0.003046, 1.261, 40.70, 0.00535, 0.9316, 22.59, 1.5);
        row(Species.NA, t, 0.003763, 0.8770, 26.23, 0.00027, 1.141, 32.07, 1.7);
        row(Species.H, t, -0.01414, 5.355, 224.2, -0.00918, 1.842, 39.23, 0.3);
        row(Species.NH4, t, 0.003341, 1.285, 39.04, 0.00132, 0.6070, 11.19, 0.3);
        row(Species.CA, t, 0.009645, 1.984, 62.28, 0.03174, 2.334, 132.3, 2.8);
        row(Species.MG, t, 0.01068, 1.695, 57.16, 0.02453, 1.915, 80.50, 2.1);
        row(Species.CL, t, 0.003817, 1.337, 40.99, 0.00613, 0.9469, 22.01, 1.5);
        row(Species.NO3, t, 0.001925, 1.214, 39.90, 0.00118, 0.5045, 23.31, 0.1);
        row(Species.SO4, t, 0.01037, 2.838, 82.37, 0.03324, 5.889, 193.5, 2.6);
        row(Species.HCO3, t, 0.000614, 0.9048, 21.14, -0.00503, 0.8957, 10.97, 0.1);
        row(Species.CO3, t, -0.000326, 2.998, 64.03, -0.00181, 5.542, 120.2, 2.3);
        row(Species.OH, t, 0.003396, 2.925, 121.3, 0.00933, 0.1086, 35.90, 0.01);
        // Fitted together with these pairing constants, not conductivities of a real ion: they
        // hand back what the pairing took away.
        row(Species.KSO4, t, 0.002439, 4.253, 129.7, 0.01576, 6.21, 146.8, 1.3);
        row(Species.NASO4, t, 0.002309, 5.459, 219.2, 0.01454, 5.193, 253.6, 0.5);
        // The set has no phosphates and no other charged pairs. Stand-ins: the curve of HCO3- (or
        // of SO4-2 for many-charged ones) scaled to the ion's own limiting conductivity at 25 degC.
        // H2PO4- 36 and HPO4-2 114: handbook table of limiting ionic conductivities (read); PO4-3
        // 278 and HSO4- 52 the same table, from memory; the pairs are estimates.
        likeBicarbonate(Species.H2PO4, 36);
        likeBicarbonate(Species.HSO4, 52);
        likeBicarbonate(Species.NH4SO4, 51);
        likeBicarbonate(Species.CAH2PO4, 30);
        likeBicarbonate(Species.MGH2PO4, 30);
        likeBicarbonate(Species.CAPO4, 30);
        likeBicarbonate(Species.MGPO4, 30);
        likeBicarbonate(Species.KHPO4, 36);
        likeBicarbonate(Species.NAHPO4, 36);
        likeBicarbonate(Species.CAHCO3, 38);
        likeBicarbonate(Species.MGHCO3, 38);
        likeSulfate(Species.HPO4, 114);
        likeSulfate(Species.PO4, 278);
    }

    private void row(
            Species species,
            double t,
            double a,
            double b,
            double c,
            double d,
            double e,
            double f,
            double bigB) {
        int i = species.ordinal();
        lambda0[i] = (a * t + b) * t + c;
        lambdaA[i] = (d * t + e) * t + f;
        lambdaB[i] = bigB;
    }

    // Limiting conductivities of HCO3- and SO4-2 at 25 degC by the rows above.
    private static final double HCO3_AT_25 = (0.000614 * 25 + 0.9048) * 25 + 21.14;
    private static final double SO4_AT_25 = (0.01037 * 25 + 2.838) * 25 + 82.37;

    private void likeBicarbonate(Species species, double lambda0At25) {
        scaled(species, Species.HCO3, lambda0At25 / HCO3_AT_25);
    }

    private void likeSulfate(Species species, double lambda0At25) {
        scaled(species, Species.SO4, lambda0At25 / SO4_AT_25);
    }

    private void scaled(Species species, Species like, double factor) {
        int i = species.ordinal();
        int from = like.ordinal();
        lambda0[i] = lambda0[from] * factor;
        lambdaA[i] = lambdaA[from] * factor;
        lambdaB[i] = lambdaB[from];
    }
}
