package tideless.scenario;

import tideless.solution.Component;

/** What a water analysis may state, and in which spellings. */
enum Ion {
    NITRATE("nitrate", Component.NO3, nitrogen(62.0049, "NO3")),
    AMMONIUM("ammonium", Component.NH4, nitrogen(18.0385, "NH4")),
    PHOSPHATE("phosphate", Component.P, UnitTable.ion(94.9714, "PO4", 30.973762, "P")),
    POTASSIUM("potassium", Component.K, UnitTable.ion(39.0983)),
    CALCIUM("calcium", Component.CA, UnitTable.ion(40.078)),
    MAGNESIUM("magnesium", Component.MG, UnitTable.ion(24.305)),
    SULFATE("sulfate", Component.SO4, UnitTable.ion(96.0626, "SO4", 32.065, "S")),
    SODIUM("sodium", Component.NA, UnitTable.ion(22.98977)),
    CHLORIDE("chloride", Component.CL, UnitTable.ion(35.453)),
    /** Taken as all the inorganic carbon; true within 5 % between pH 7.3 and 9. */
    BICARBONATE("bicarbonate", Component.C, UnitTable.ion(61.0168, "HCO3", 50.0432, "CaCO3"));

    private final String spelling;
    private final Component component;
    private final UnitTable table;

    Ion(String spelling, Component component, UnitTable table) {
        this.spelling = spelling;
        this.component = component;
        this.table = table;
    }

    private static UnitTable nitrogen(double gramsPerMol, String ion) {
        return UnitTable.ion(gramsPerMol, ion, 14.0067, "N");
    }

    String spelling() {
        return spelling;
    }

    Component component() {
        return component;
    }

    UnitTable table() {
        return table;
    }

    /** For those who count by charge; phosphate and bicarbonate with one. */
    UnitTable equivalents() {
        return UnitTable.equivalents(Math.max(1, Math.abs(component.fixedCharge())));
    }
}
