package tideless.rig;

/**
 * A tray's own measured water use, joined by straight lines between its points and held level
 * before the first and after the last.
 */
public final class Thirst {
    private final double[] atS;
    private final double[] m3PerS;

    /**
     * @param atS seconds since the scenario's start, strictly rising
     * @param m3PerS water use of the whole tray, m3/s, at least 0
     */
    public Thirst(double[] atS, double[] m3PerS) {
        if (atS.length == 0 || atS.length != m3PerS.length) {
            throw new IllegalArgumentException("a thirst needs points, and a value for each");
        }
        for (int i = 0; i < atS.length; i++) {
            if (!(m3PerS[i] >= 0) || (i > 0 && !(atS[i] > atS[i - 1]))) {
                throw new IllegalArgumentException(
                        "thirst points must rise in time and be at least 0, point " + i);
            }
        }
        this.atS = atS.clone();
        this.m3PerS = m3PerS.clone();
    }

    /** The same use all the time. */
    public static Thirst constant(double m3PerS) {
        return new Thirst(new double[] {0}, new double[] {m3PerS});
    }

    /** Use at an instant, m3/s. */
    public double m3PerS(double timeS) {
        int last = atS.length - 1;
        if (timeS <= atS[0]) {
            return m3PerS[0];
        }
        if (timeS >= atS[last]) {
            return m3PerS[last];
        }
        int high = 1;
        while (atS[high] < timeS) {
            high++;
        }
        double share = (timeS - atS[high - 1]) / (atS[high] - atS[high - 1]);
        return m3PerS[high - 1] + share * (m3PerS[high] - m3PerS[high - 1]);
    }
}
