package tideless.solution;

import static tideless.solution.Species.Cation.CALCIUM;
import static tideless.solution.Species.Cation.MAGNESIUM;
import static tideless.solution.Species.Ligand.CARBONATE;
import static tideless.solution.Species.Ligand.NONE;
import static tideless.solution.Species.Ligand.PHOSPHATE;
import static tideless.solution.Species.Ligand.SULFATE;

/**
 * The forms in which the components swim: free ions, protonated forms and ion pairs.
 *
 * <p>Every form holds at most one cation and at most one of the three pairing anions, plus protons;
 * that is the whole structure {@link SpeciationSolver} rests on. Left out on purpose: the pair of
 * calcium with nitrate (log K 0.5 would lower a recipe's EC by 0.5 %, calcium nitrate alone at 10
 * mmol/L by 1.6 %; recomputed independently), pairs of chloride, of carbonate with sodium, and
 * metal hydroxides, which matter above pH 10.
 */
enum Species {
    H(1, Cation.NONE, NONE, 1),
    OH(-1, Cation.NONE, NONE, -1),
    NO3(-1, Cation.NONE, NONE, 0),
    CL(-1, Cation.NONE, NONE, 0),
    CA(2, CALCIUM, NONE, 0),
    MG(2, MAGNESIUM, NONE, 0),
    K(1, Cation.POTASSIUM, NONE, 0),
    NA(1, Cation.SODIUM, NONE, 0),
    NH4(1, Cation.AMMONIUM, NONE, 0),
    NH3(0, Cation.AMMONIUM, NONE, -1),
    SO4(-2, Cation.NONE, SULFATE, 0),
    HSO4(-1, Cation.NONE, SULFATE, 1),
    CASO4(0, CALCIUM, SULFATE, 0),
    MGSO4(0, MAGNESIUM, SULFATE, 0),
    KSO4(-1, Cation.POTASSIUM, SULFATE, 0),
    NASO4(-1, Cation.SODIUM, SULFATE, 0),
    NH4SO4(-1, Cation.AMMONIUM, SULFATE, 0),
    H3PO4(0, Cation.NONE, PHOSPHATE, 2),
    H2PO4(-1, Cation.NONE, PHOSPHATE, 1),
    HPO4(-2, Cation.NONE, PHOSPHATE, 0),
    PO4(-3, Cation.NONE, PHOSPHATE, -1),
    CAHPO4(0, CALCIUM, PHOSPHATE, 0),
    CAH2PO4(1, CALCIUM, PHOSPHATE, 1),
    MGHPO4(0, MAGNESIUM, PHOSPHATE, 0),
    MGH2PO4(1, MAGNESIUM, PHOSPHATE, 1),
    CAPO4(-1, CALCIUM, PHOSPHATE, -1),
    MGPO4(-1, MAGNESIUM, PHOSPHATE, -1),
    KHPO4(-1, Cation.POTASSIUM, PHOSPHATE, 0),
    NAHPO4(-1, Cation.SODIUM, PHOSPHATE, 0),
    CO2(0, Cation.NONE, CARBONATE, 1),
    HCO3(-1, Cation.NONE, CARBONATE, 0),
    CO3(-2, Cation.NONE, CARBONATE, -1),
    CAHCO3(1, CALCIUM, CARBONATE, 0),
    CACO3(0, CALCIUM, CARBONATE, -1),
    MGHCO3(1, MAGNESIUM, CARBONATE, 0),
    MGCO3(0, MAGNESIUM, CARBONATE, -1);

    /** The cation a form holds. */
    enum Cation {
        NONE(null),
        CALCIUM(Component.CA),
        MAGNESIUM(Component.MG),
        POTASSIUM(Component.K),
        SODIUM(Component.NA),
        AMMONIUM(Component.NH4);

        static final int COUNT = values().length;

        final Component component;

        Cation(Component component) {
            this.component = component;
        }
    }

    /** The pairing anion a form holds, as SO4-2, HPO4-2 or HCO3-. */
    enum Ligand {
        NONE,
        SULFATE,
        PHOSPHATE,
        CARBONATE
    }

    private static final Species[] ALL = values();

    /** How many there are. */
    public static final int COUNT = ALL.length;

    private final int charge;
    private final Cation cation;
    private final Ligand ligand;
    private final int protons;

    Species(int charge, Cation cation, Ligand ligand, int protons) {
        this.charge = charge;
        this.cation = cation;
        this.ligand = ligand;
        this.protons = protons;
    }

    /** Charge number. */
    public int charge() {
        return charge;
    }

    Cation cation() {
        return cation;
    }

    Ligand ligand() {
        return ligand;
    }

    /** Protons more than the bare cation with SO4-2, HPO4-2 or HCO3-. */
    int protons() {
        return protons;
    }

    static Species at(int index) {
        return ALL[index];
    }
}
