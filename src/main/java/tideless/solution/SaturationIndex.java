package tideless.solution;

import org.apache.commons.math3.util.FastMath;

/**
 * log10 of ion activity product over solubility product: above 0 the solid may fall out.
 *
 * <p>Negative infinity where an ion is absent.
 */
final class SaturationIndex {
    private SaturationIndex() {}

    /** Gypsum, CaSO4.2H2O; log K -4.58 at 25 degC, temperature followed; water's activity is 1. */
    public static double gypsum(Speciation s) {
        return FastMath.log10(s.activity(Species.CA) * s.activity(Species.SO4)) - s.logKspGypsum();
    }

    /** Brushite, CaHPO4.2H2O; log K -6.59 (25 degC value used throughout, from memory). */
    public static double brushite(Speciation s) {
        return FastMath.log10(s.activity(Species.CA) * s.activity(Species.HPO4))
                - s.logKspBrushite();
    }
}
