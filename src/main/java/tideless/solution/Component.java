package tideless.solution;

/**
 * What a solution is carried as: total amounts, whatever form they take.
 *
 * <p>{@link #C} is inorganic carbon in all its forms; the charge it carries, like that of {@link
 * #P}, follows from pH and so is not stated here. {@link #TRACER} stands for the micronutrients: it
 * moves with the water and no plant takes it.
 */
public enum Component {
    NO3("nitrate", "NO3", MolarMass.NO3, -1),
    NH4("ammonium", "NH4", MolarMass.NH4, 1),
    P("phosphate", "P", MolarMass.P, 0),
    K("potassium", "K", MolarMass.K, 1),
    CA("calcium", "Ca", MolarMass.CA, 2),
    MG("magnesium", "Mg", MolarMass.MG, 2),
    SO4("sulfate", "SO4", MolarMass.SO4, -2),
    NA("sodium", "Na", MolarMass.NA, 1),
    CL("chloride", "Cl", MolarMass.CL, -1),
    C("inorganic carbon", "C", MolarMass.C, 0),
    TRACER("tracer", "tracer", 1, 0);

    private static final Component[] ALL = values();

    /** How many components there are. */
    public static final int COUNT = ALL.length;

    private final String title;
    private final String symbol;
    private final double gramsPerMol;
    private final int fixedCharge;

    Component(String title, String symbol, double gramsPerMol, int fixedCharge) {
        this.title = title;
        this.symbol = symbol;
        this.gramsPerMol = gramsPerMol;
        this.fixedCharge = fixedCharge;
    }

    /** English name. */
    public String title() {
        return title;
    }

    /** Chemical symbol, ASCII, as it stands in headers and files. */
    public String symbol() {
        return symbol;
    }

    /**
     * Molar mass, g/mol: of the ion, of the element for {@link #P} and {@link #C}; see {@link
     * MolarMass}.
     */
    public double gramsPerMol() {
        return gramsPerMol;
    }

    /** Charge of the ion; 0 where it depends on pH or there is none. */
    public int fixedCharge() {
        return fixedCharge;
    }

    /** All of them, in order, without a new array's cost in a loop. */
    public static Component at(int index) {
        return ALL[index];
    }
}
