package tideless.rig;

/**
 * A lamp over a tray, on the same hours every day.
 *
 * @param ppfdUmolPerM2S photon flux density at the canopy, 400-700 nm, umol/m2/s
 * @param umolPerJ photons per joule of 400-700 nm light, umol/J
 * @param nearInfraredPerPar near infrared at the canopy per unit of 400-700 nm power, W/W
 * @param onS switched on, seconds after midnight
 * @param offS switched off, seconds after midnight; less than {@code onS} when it burns past
 *     midnight; equal means always on
 */
public record Lamp(
        double ppfdUmolPerM2S,
        double umolPerJ,
        double nearInfraredPerPar,
        double onS,
        double offS) {
    /** Half as much again as full sun, umol/m2/s: no lamp over a plant is brighter; assumed. */
    public static final double MOST_UMOL_PER_M2_S = 3000;

    public Lamp {
        if (!(ppfdUmolPerM2S >= 0 && ppfdUmolPerM2S <= MOST_UMOL_PER_M2_S)) {
            throw new IllegalArgumentException(
                    "ppfdUmolPerM2S must lie in 0 to 3000, was " + ppfdUmolPerM2S);
        }
        if (!(umolPerJ > 0)) {
            throw new IllegalArgumentException("umolPerJ must be above 0, was " + umolPerJ);
        }
    }

    /** No lamp at all. */
    public static final Lamp NONE = new Lamp(0, 4.57, 0, 0, 0);

    /** The same lamp so many times as bright, up to the brightest there is. */
    public Lamp times(double factor) {
        double bright = Math.min(MOST_UMOL_PER_M2_S, factor * ppfdUmolPerM2S);
        return new Lamp(bright, umolPerJ, nearInfraredPerPar, onS, offS);
    }

    /** Seconds of light a day. */
    public double litS() {
        if (ppfdUmolPerM2S == 0) {
            return 0;
        }
        return offS > onS ? offS - onS : offS - onS + 86400;
    }
}
