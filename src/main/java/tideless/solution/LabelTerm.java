package tideless.solution;

/** What a fertiliser label prints in per cent of mass, and the ion it means. */
public enum LabelTerm {
    NITRATE_N("N-NO3", Component.NO3, MolarMass.N),
    AMMONIUM_N("N-NH4", Component.NH4, MolarMass.N),
    P2O5("P2O5", Component.P, MolarMass.P2O5 / 2),
    P("P", Component.P, MolarMass.P),
    K2O("K2O", Component.K, MolarMass.K2O / 2),
    K("K", Component.K, MolarMass.K),
    CAO("CaO", Component.CA, MolarMass.CAO),
    CA("Ca", Component.CA, MolarMass.CA),
    MGO("MgO", Component.MG, MolarMass.MGO),
    MG("Mg", Component.MG, MolarMass.MG),
    SO3("SO3", Component.SO4, MolarMass.SO3),
    S("S", Component.SO4, MolarMass.S),
    NA("Na", Component.NA, MolarMass.NA),
    CL("Cl", Component.CL, MolarMass.CL);

    private final String printed;
    private final Component component;
    private final double gramsPerMol;

    LabelTerm(String printed, Component component, double gramsPerMol) {
        this.printed = printed;
        this.component = component;
        this.gramsPerMol = gramsPerMol;
    }

    /** As it stands on a label. */
    public String printed() {
        return printed;
    }

    /** The ion meant. */
    public Component component() {
        return component;
    }

    /** mol of the ion in a kg of product, from mass per cent. */
    public double molPerKg(double massPercent) {
        return massPercent * 10 / gramsPerMol;
    }
}
