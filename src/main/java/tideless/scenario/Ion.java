package tideless.scenario;

import tideless.solution.Component;
import tideless.solution.MolarMass;

/** What a water analysis may state, and in which spellings. */
enum Ion {
    NITRATE("nitrate", Component.NO3, Component.NO3.gramsPerMol(), "NO3", MolarMass.N, "N"),
    AMMONIUM("ammonium", Component.NH4, Component.NH4.gramsPerMol(), "NH4", MolarMass.N, "N"),
    PHOSPHATE("phosphate", Component.P, MolarMass.PO4, "PO4", MolarMass.P, "P"),
    POTASSIUM("potassium", Component.K, "K"),
    CALCIUM("calcium", Component.CA, "Ca"),
    MAGNESIUM("magnesium", Component.MG, "Mg"),
    SULFATE("sulfate", Component.SO4, Component.SO4.gramsPerMol(), "SO4", MolarMass.S, "S"),
    SODIUM("sodium", Component.NA, "Na"),
    CHLORIDE("chloride", Component.CL, "Cl"),
    /** Taken as all the inorganic carbon; true within 5 % between pH 7.3 and 9. */
    BICARBONATE("bicarbonate", Component.C, MolarMass.HCO3, "HCO3", MolarMass.CACO3 / 2, "CaCO3");

    private final String spelling;
    private final Component component;
    private final UnitTable table;
    private final String itself;
    private final String otherwise;

    Ion(String spelling, Component component, String itself) {
        this.spelling = spelling;
        this.component = component;
        this.table = UnitTable.ion(component.gramsPerMol());
        this.itself = itself;
        this.otherwise = "";
    }

    Ion(
            String spelling,
            Component component,
            double gramsPerMol,
            String itself,
            double otherGramsPerMol,
            String otherwise) {
        this.spelling = spelling;
        this.component = component;
        this.table = UnitTable.ion(gramsPerMol, itself, otherGramsPerMol, otherwise);
        this.itself = itself;
        this.otherwise = otherwise;
    }

    /** Its formula without a charge, as it stands on a laboratory's sheet. */
    String itself() {
        return itself;
    }

    /** What laboratories also count it as; empty for most. */
    String otherwise() {
        return otherwise;
    }

    /** By its word in either spelling of English, or its formula. */
    boolean isSpelt(String text) {
        return text.equalsIgnoreCase(spelling)
                || text.equalsIgnoreCase(spelling.replace("sulf", "sulph"))
                || text.equals(itself);
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
