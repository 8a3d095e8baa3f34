package tideless.solution;

/** What a fertiliser label prints in per cent of mass, and the ion it means. */
public enum LabelTerm {
    NITRATE_N("N-NO3", Component.NO3, 14.007),
    AMMONIUM_N("N-NH4", Component.NH4, 14.007),
    P2O5("P2O5", Component.P, 141.943 / 2),
    P("P", Component.P, 30.973762),
    K2O("K2O", Component.K, 94.196 / 2),
    K("K", Component.K, 39.0983),
    CAO("CaO", Component.CA, 56.077),
    CA("Ca", Component.CA, 40.078),
    MGO("MgO", Component.MG, 40.304),
    MG("Mg", Component.MG, 24.305),
    SO3("SO3", Component.SO4, 80.057),
    S("S", Component.SO4, 32.06),
    NA("Na", Component.NA, 22.98977),
    CL("Cl", Component.CL, 35.453);

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

    /** Mass of the term for one mole of the ion, g/mol; standard atomic weights. */
    public double gramsPerMol() {
        return gramsPerMol;
    }

    /** mol of the ion in a kg of product, from mass per cent. */
    public double molPerKg(double massPercent) {
        return massPercent * 10 / gramsPerMol;
    }

    /** Mass per cent from mol of the ion in a kg of product. */
    public double massPercent(double molPerKg) {
        return molPerKg * gramsPerMol / 10;
    }
}
