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
enum Salt {
    CALCIUM_NITRATE(
            "calcium nitrate tetrahydrate", // Ca(NO3)2.4H2O
            236.146,
            Tank.A,
            Map.of(Component.CA, 1.0, Component.NO3, 2.0)),
    CALCIUM_AMMONIUM_NITRATE(
            "calcium ammonium nitrate, double salt", // 5Ca(NO3)2.NH4NO3.10H2O
            1080.623,
            Tank.A,
            Map.of(Component.CA, 5.0, Component.NO3, 11.0, Component.NH4, 1.0)),
    POTASSIUM_NITRATE(
            "potassium nitrate", // KNO3
            101.102,
            Tank.EITHER,
            Map.of(Component.K, 1.0, Component.NO3, 1.0)),
    AMMONIUM_NITRATE(
            "ammonium nitrate", // NH4NO3
            80.043,
            Tank.EITHER,
            Map.of(Component.NH4, 1.0, Component.NO3, 1.0)),
    MAGNESIUM_NITRATE(
            "magnesium nitrate hexahydrate", // Mg(NO3)2.6H2O
            256.403,
            Tank.EITHER,
            Map.of(Component.MG, 1.0, Component.NO3, 2.0)),
    CALCIUM_CHLORIDE(
            "calcium chloride dihydrate", // CaCl2.2H2O
            147.008,
            Tank.A,
            Map.of(Component.CA, 1.0, Component.CL, 2.0)),
    POTASSIUM_CHLORIDE(
            "potassium chloride", // KCl
            74.551,
            Tank.EITHER,
            Map.of(Component.K, 1.0, Component.CL, 1.0)),
    MONOPOTASSIUM_PHOSPHATE(
            "monopotassium phosphate", // KH2PO4
            136.084,
            Tank.B,
            Map.of(Component.K, 1.0, Component.P, 1.0)),
    MONOAMMONIUM_PHOSPHATE(
            "monoammonium phosphate", // NH4H2PO4
            115.025,
            Tank.B,
            Map.of(Component.NH4, 1.0, Component.P, 1.0)),
    MAGNESIUM_SULFATE(
            "magnesium sulfate heptahydrate", // MgSO4.7H2O
            246.466,
            Tank.B,
            Map.of(Component.MG, 1.0, Component.SO4, 1.0)),
    POTASSIUM_SULFATE(
            "potassium sulfate", // K2SO4
            174.252,
            Tank.B,
            Map.of(Component.K, 2.0, Component.SO4, 1.0)),
    SODIUM_CHLORIDE(
            "sodium chloride", // NaCl
            58.443,
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
    private final double gramsPerMol;
    private final Tank tank;
    private final Composition perMol;

    Salt(String title, double gramsPerMol, Tank tank, Map<Component, Double> perMol) {
        this.title = title;
        this.gramsPerMol = gramsPerMol;
        this.tank = tank;
        this.perMol = Composition.of(perMol);
    }

    /** English name. */
    public String title() {
        return title;
    }

    /** g/mol, water of crystals counted. */
    public double gramsPerMol() {
        return gramsPerMol;
    }

    /** Where it may stand. */
    public Tank tank() {
        return tank;
    }

    /** What one mole gives. */
    public Composition perMol() {
        return perMol;
    }
}
