package tideless.physics;

/**
 * Oxygen in a shallow, unstirred solution below a deck: what comes in through its surface against
 * what roots and microbes breathe.
 *
 * <p>Amounts are g and m3, so that a concentration of 1 g/m3 is the 1 mg/L of a meter.
 */
public final class StillWater {
    /**
     * Velocity at which oxygen passes a free still surface, m/s: 0.6 cm/h below a fixed deck. No
     * measurement under a deck was found; 0.75 +- 0.54 cm/h for a windless swamp (Happell et al.
     * 1995, Limnol. Oceanogr. 40:290), about 1 for lakes in light wind (Crusius and Wanninkhof
     * 2003, from memory). Recommended, no single source; plausible 0.2 to 1.5 cm/h.
     */
    public static final double FREE_M_PER_S = 0.6e-2 / Time.HOUR_S;

    /** Least plausible share of {@link #FREE_M_PER_S}: 0.2 cm/h. */
    public static final double FREE_LOW_FRAC = 1.0 / 3;

    /** Greatest plausible share of {@link #FREE_M_PER_S}: 1.5 cm/h. */
    public static final double FREE_HIGH_FRAC = 2.5;

    /**
     * The same where deck or float touches the solution, m/s: 0.1 cm/h for a tight panel. Fitted to
     * floating crops (0.1 to 0.6 cm/h over a whole pond's area); recommended, no single source.
     */
    public static final double TOUCHED_M_PER_S = 0.1e-2 / Time.HOUR_S;

    /** Air below the deck from which the surface counts as free, m; recommended, no source. */
    public static final double FREE_FROM_GAP_M = 0.01;

    private StillWater() {}

    /**
     * Velocity at which oxygen passes the surface below a deck.
     *
     * @param airGapM from the solution up to the deck, m; at most 0 where it touches
     * @return m/s: {@link #TOUCHED_M_PER_S} without a gap, {@link #FREE_M_PER_S} from 10 mm on,
     *     straight between
     */
    public static double transferMPerS(double airGapM) {
        double free = Math.max(0, Math.min(1, airGapM / FREE_FROM_GAP_M));
        return TOUCHED_M_PER_S + (FREE_M_PER_S - TOUCHED_M_PER_S) * free;
    }

    /**
     * Dissolved oxygen at which supply and demand are even: the positive root of k A (S - C) + F (I
     * - C) = D C / (C + K) + B.
     *
     * @param exchangeM3PerS k A, transfer velocity times surface, m3/s, above 0
     * @param saturationGPerM3 S, at rest with the air below the deck, g/m3
     * @param inflowM3PerS F, solution that comes in (and as much that is drunk), m3/s, at least 0
     * @param inflowGPerM3 I, its oxygen, g/m3
     * @param demandGPerS D, what the wet roots would draw from rich water, g/s, at least 0
     * @param halfGPerM3 K, oxygen at which they draw half of it, g/m3, above 0
     * @param microbesGPerS B, what microbes and slime draw, g/s, at least 0
     * @return g/m3, at least 0
     */
    public static double steadyGPerM3(
            double exchangeM3PerS,
            double saturationGPerM3,
            double inflowM3PerS,
            double inflowGPerM3,
            double demandGPerS,
            double halfGPerM3,
            double microbesGPerS) {
        double way = exchangeM3PerS + inflowM3PerS;
        double supply =
                exchangeM3PerS * saturationGPerM3 + inflowM3PerS * inflowGPerM3 - microbesGPerS;
        // way C^2 + (way K + D - supply) C - supply K = 0
        double p = way * halfGPerM3 + demandGPerS - supply;
        double root = Math.sqrt(p * p + 4 * way * Math.max(0, supply) * halfGPerM3);
        return p > 0
                ? 2 * Math.max(0, supply) * halfGPerM3 / (p + root)
                : Math.max(0, (root - p) / (2 * way));
    }

    /**
     * Dissolved oxygen after a span of constant rates: one implicit step of the balance, V dC/dt =
     * k A (S - C) + F (I - C) - D C / (C + K) - B. Never negative, tends to {@link #steadyGPerM3}
     * for any span; of first order in the span (an hour's step in a 50 mm tray is within 0.1 g/m3
     * of the exact course).
     *
     * @param startGPerM3 C at the start, g/m3, at least 0
     * @param volumeM3 V, m3, above 0
     * @param spanS s, above 0
     */
    public static double afterGPerM3(
            double startGPerM3,
            double volumeM3,
            double exchangeM3PerS,
            double saturationGPerM3,
            double inflowM3PerS,
            double inflowGPerM3,
            double demandGPerS,
            double halfGPerM3,
            double microbesGPerS,
            double spanS) {
        // What stands in the vessel counts as one more inflow, at its own strength.
        double kept = volumeM3 / spanS;
        double others = kept + inflowM3PerS;
        double mixed = (kept * startGPerM3 + inflowM3PerS * inflowGPerM3) / others;
        return steadyGPerM3(
                exchangeM3PerS,
                saturationGPerM3,
                others,
                mixed,
                demandGPerS,
                halfGPerM3,
                microbesGPerS);
    }
}
