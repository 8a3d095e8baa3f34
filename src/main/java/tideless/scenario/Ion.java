package tideless.scenario;

import tideless.solution.Component;
import tideless.solution.MolarMass;

/** What a water analysis may state, and in which spellings. */
enum Ion {
    NITRATE(
            "nitrate",
            Component.NO3,
            UnitTable.ion(Component.NO3.gramsPerMol(), "NO3", MolarMass.N, "N")),
    AMMONIUM(
            "ammonium",
            Component.NH4,
            UnitTable.ion(Component.NH4.gramsPerMol(), "NH4", MolarMass.N, "N")),
    PHOSPHATE("phosphate", Component.P, UnitTable.ion(MolarMass.PO4, "PO4", MolarMass.P, "P")),
    POTASSIUM("potassium", Component.K),
    CALCIUM("calcium", Component.CA),
    MAGNESIUM("magnesium", Component.MG),
    SULFATE(
            "sulfate",
            Component.SO4,
            UnitTable.ion(Component.SO4.gramsPerMol(), "SO4", MolarMass.S, "S")),
    SODIUM("sodium", Component.NA),
    CHLORIDE("chloride", Component.CL),
    /** Taken as all the inorganic carbon; true within 5 % between pH 7.3 and 9. */
    BICARBONATE(
            "bicarbonate",
            Component.C,
            UnitTable.ion(MolarMass.HCO3, "HCO3", MolarMass.CACO3 / 2, "CaCO3"));

    private final String spelling;
    private final Component component;
    private final UnitTable table;

    Ion(String spelling, Component component) {
        this(spelling, component, UnitTable.ion(component.gramsPerMol()));
    }

    Ion(String spelling, Component component, UnitTable table) {
        this.spelling = spelling;
        this.component = component;
        this.table = table;
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
