package tideless.solution;

import java.util.Map;

/**
 * Fertiliser salts, pure.
 *
 * <p>Molar masses from the standard atomic weights. Solubility in water at 20 degC, g/L: tables of
 * the Western Australian agriculture department and of an extension service (read), the chelates
 * and hydrates from memory. One printed table gives KNO3 209 g/L at 20 degC; handbooks give that at
 * 10 and 316 at 20, which is taken.
 */
public enum Salt {
    CALCIUM_NITRATE(
            "calcium nitrate tetrahydrate",
            "Ca(NO3)2.4H2O",
            236.146,
            1290,
            Tank.A,
            Map.of(Component.CA, 1.0, Component.NO3, 2.0)),
    CALCIUM_AMMONIUM_NITRATE(
            "calcium ammonium nitrate, double salt",
            "5Ca(NO3)2.NH4NO3.10H2O",
            1080.623,
            1200,
            Tank.A,
            Map.of(Component.CA, 5.0, Component.NO3, 11.0, Component.NH4, 1.0)),
    POTASSIUM_NITRATE(
            "potassium nitrate",
            "KNO3",
            101.102,
            316,
            Tank.EITHER,
            Map.of(Component.K, 1.0, Component.NO3, 1.0)),
    AMMONIUM_NITRATE(
            "ammonium nitrate",
            "NH4NO3",
            80.043,
            1900,
            Tank.EITHER,
            Map.of(Component.NH4, 1.0, Component.NO3, 1.0)),
    MAGNESIUM_NITRATE(
            "magnesium nitrate hexahydrate",
            "Mg(NO3)2.6H2O",
            256.403,
            700,
            Tank.EITHER,
            Map.of(Component.MG, 1.0, Component.NO3, 2.0)),
    CALCIUM_CHLORIDE(
            "calcium chloride dihydrate",
            "CaCl2.2H2O",
            147.008,
            980,
            Tank.A,
            Map.of(Component.CA, 1.0, Component.CL, 2.0)),
    POTASSIUM_CHLORIDE(
            "potassium chloride",
            "KCl",
            74.551,
            340,
            Tank.EITHER,
            Map.of(Component.K, 1.0, Component.CL, 1.0)),
    MONOPOTASSIUM_PHOSPHATE(
            "monopotassium phosphate",
            "KH2PO4",
            136.084,
            226,
            Tank.B,
            Map.of(Component.K, 1.0, Component.P, 1.0)),
    MONOAMMONIUM_PHOSPHATE(
            "monoammonium phosphate",
            "NH4H2PO4",
            115.025,
            374,
            Tank.B,
            Map.of(Component.NH4, 1.0, Component.P, 1.0)),
    MAGNESIUM_SULFATE(
            "magnesium sulfate heptahydrate",
            "MgSO4.7H2O",
            246.466,
            710,
            Tank.B,
            Map.of(Component.MG, 1.0, Component.SO4, 1.0)),
    POTASSIUM_SULFATE(
            "potassium sulfate",
            "K2SO4",
            174.252,
            111,
            Tank.B,
            Map.of(Component.K, 2.0, Component.SO4, 1.0)),
    SODIUM_CHLORIDE(
            "sodium chloride",
            "NaCl",
            58.443,
            359,
            Tank.EITHER,
            Map.of(Component.NA, 1.0, Component.CL, 1.0));

    /** Which concentrate a salt may stand in. */
    public enum Tank {
        /** Calcium and nitrates. */
        A,
        /** Sulfates and phosphates. */
        B,
        /** Harmless in both. */
        EITHER
    }

    private final String title;
    private final String formula;
    private final double gramsPerMol;
    private final double solubilityGPerL;
    private final Tank tank;
    private final Composition perMol;

    Salt(
            String title,
            String formula,
            double gramsPerMol,
            double solubilityGPerL,
            Tank tank,
            Map<Component, Double> perMol) {
        this.title = title;
        this.formula = formula;
        this.gramsPerMol = gramsPerMol;
        this.solubilityGPerL = solubilityGPerL;
        this.tank = tank;
        this.perMol = Composition.of(perMol);
    }

    /** English name. */
    public String title() {
        return title;
    }

    /** Formula with its water. */
    public String formula() {
        return formula;
    }

    /** g/mol, water of crystals counted. */
    public double gramsPerMol() {
        return gramsPerMol;
    }

    /** g of the salt as sold a litre of water at 20 degC, alone in it. */
    public double solubilityGPerL() {
        return solubilityGPerL;
    }

    /** Where it may stand. */
    public Tank tank() {
        return tank;
    }

    /** What one mole gives. */
    public Composition perMol() {
        return perMol;
    }

    /** What so many grams in a litre give, mol/m3. */
    public Composition dissolved(double gramsPerL) {
        return perMol.times(gramsPerL * 1000 / gramsPerMol);
    }
}
