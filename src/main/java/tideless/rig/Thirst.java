package tideless.rig;

import java.util.Arrays;

/**
 * A tray's own measured water use: either held from each of its points to the next, as a log is
 * kept, or joined between them by straight lines. Before the first point and after the last it is
 * held.
 */
public final class Thirst {
    private final double[] atS;
    private final double[] beginsM3PerS; // from a point on
    private final double[] endsM3PerS; // just before the next point

    private Thirst(double[] atS, double[] beginsM3PerS, double[] endsM3PerS) {
        this.atS = atS;
        this.beginsM3PerS = beginsM3PerS;
        this.endsM3PerS = endsM3PerS;
        if (atS.length == 0 || atS.length != beginsM3PerS.length) {
            throw new IllegalArgumentException("a thirst needs points, and a value for each");
        }
        for (int i = 0; i < atS.length; i++) {
            if (!(beginsM3PerS[i] >= 0) || (i > 0 && !(atS[i] > atS[i - 1]))) {
                throw new IllegalArgumentException(
                        "thirst points must rise in time and be at least 0, point " + i);
            }
        }
    }

    /**
     * Use that is held from each point to the next.
     *
     * @param atS seconds since the scenario's start, strictly rising
     * @param m3PerS water use of the whole tray, m3/s, at least 0
     */
    public static Thirst held(double[] atS, double[] m3PerS) {
        return new Thirst(atS.clone(), m3PerS.clone(), m3PerS.clone());
    }

    /** As {@link #held}, with the points joined by straight lines. */
    public static Thirst joined(double[] atS, double[] m3PerS) {
        double[] ends = m3PerS.clone();
        if (ends.length > 1) {
            System.arraycopy(m3PerS, 1, ends, 0, ends.length - 1);
        }
        return new Thirst(atS.clone(), m3PerS.clone(), ends);
    }

    /** The same use all the time. */
    public static Thirst constant(double m3PerS) {
        return held(new double[] {0}, new double[] {m3PerS});
    }

    /**
     * Mean use between two instants, m3/s, exact over every point between.
     *
     * @param fromS seconds since the scenario's start
     * @param toS later than that
     */
    public double meanM3PerS(double fromS, double toS) {
        int piece = pieceAt(fromS);
        if (piece == pieceAt(toS) || (piece + 1 < atS.length && toS <= endS(piece))) {
            return m3PerS(piece, 0.5 * (fromS + toS));
        }
        double m3 = 0;
        double beganS = fromS;
        while (beganS < toS) {
            double untilS = Math.min(toS, endS(piece));
            m3 += m3PerS(piece, 0.5 * (beganS + untilS)) * (untilS - beganS);
            beganS = untilS;
            piece++;
        }
        return m3 / (toS - fromS);
    }

    /** The point whose stretch holds an instant; -1 before the first. */
    private int pieceAt(double timeS) {
        int found = Arrays.binarySearch(atS, timeS);
        return found >= 0 ? found : -found - 2;
    }

    private double endS(int piece) {
        return piece + 1 < atS.length ? atS[piece + 1] : Double.POSITIVE_INFINITY;
    }

    private double m3PerS(int piece, double timeS) {
        if (piece < 0) {
            return beginsM3PerS[0];
        }
        double begins = beginsM3PerS[piece];
        double ends = endsM3PerS[piece];
        return begins == ends
                ? begins
                : begins + (ends - begins) * (timeS - atS[piece]) / (endS(piece) - atS[piece]);
    }
}
