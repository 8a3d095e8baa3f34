package tideless.sim;

import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;

/**
 * How one run of an ensemble departs from its scenario in what no scenario states: the thirst of
 * each day, what the meter shows, and visits that do not take place. The rules of the visits know
 * nothing of it: whoever refills for the days to the next visit does not foresee that it is missed.
 */
public final class Departures {
    /** A run as it is written. */
    public static final Departures NONE =
            new Departures(new double[0], new double[0][], new boolean[0], 1);

    private final double[] standDeviate;
    private final double[][] thirstFrac;
    private final boolean[] missed;
    private final double meterFrac;
    private final Set<Integer> filledUpOn; // days

    /**
     * @param standDeviate by crop in the scenario's order, those of one tray one after the other:
     *     how far the thirst of its stand lies from the model's, in standard deviations of the
     *     logarithm ({@link tideless.crop.ThirstDoubt#besideLeaf}), which is more on days of little
     *     sun; crops beyond are as the model has them
     * @param thirstFrac likewise by crop, then by day of the run: besides, thirst over the model's,
     *     above 0; crops and days beyond are as the model has them
     * @param missed by day: nobody comes though somebody would; days beyond are not missed
     * @param meterFrac EC the meter shows over the true one, above 0
     * @throws IllegalArgumentException for a share that is not above 0
     */
    public Departures(
            double[] standDeviate, double[][] thirstFrac, boolean[] missed, double meterFrac) {
        this.standDeviate = standDeviate.clone();
        this.thirstFrac = new double[thirstFrac.length][];
        for (int i = 0; i < thirstFrac.length; i++) {
            this.thirstFrac[i] = thirstFrac[i].clone();
            for (double frac : thirstFrac[i]) {
                requirePositive(frac);
            }
        }
        this.missed = missed.clone();
        this.meterFrac = requirePositive(meterFrac);
        filledUpOn = Set.of();
    }

    private Departures(Departures other, boolean[] missed, Set<Integer> filledUpOn) {
        standDeviate = other.standDeviate;
        thirstFrac = other.thirstFrac;
        this.missed = missed;
        meterFrac = other.meterFrac;
        this.filledUpOn = filledUpOn;
    }

    /**
     * The same with nobody coming for some days.
     *
     * @param from first day on which nobody comes
     * @param to the day on which somebody comes again, and does
     */
    public Departures away(int from, int to) {
        boolean[] also = Arrays.copyOf(missed, Math.max(missed.length, to));
        Arrays.fill(also, from, to, true);
        if (to < missed.length) {
            also[to] = false;
        }
        return new Departures(this, also, filledUpOn);
    }

    /**
     * The same with the visit of a day taking place, and every reservoir and every tray topped up
     * by hand filled up at it, whether it is due or not, beside those of days named before.
     */
    public Departures filledUp(int day) {
        boolean[] also = missed.clone();
        if (day < also.length) {
            also[day] = false;
        }
        Set<Integer> days = new TreeSet<>(filledUpOn);
        days.add(day);
        return new Departures(this, also, days);
    }

    /** The same with the thirst of each crop and day times that of others. */
    public Departures times(Departures other) {
        double[][] both = new double[Math.max(thirstFrac.length, other.thirstFrac.length)][];
        for (int crop = 0; crop < both.length; crop++) {
            int own = crop < thirstFrac.length ? thirstFrac[crop].length : 0;
            int more = crop < other.thirstFrac.length ? other.thirstFrac[crop].length : 0;
            both[crop] = new double[Math.max(own, more)];
            for (int day = 0; day < both[crop].length; day++) {
                both[crop][day] = thirstFrac(crop, day) * other.thirstFrac(crop, day);
            }
        }
        return new Departures(standDeviate, both, missed, meterFrac);
    }

    private static double requirePositive(double frac) {
        if (!(frac > 0 && frac < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a share must be above 0, was " + frac);
        }
        return frac;
    }

    /** How far a stand's thirst lies from the model's, in standard deviations of the logarithm. */
    double standDeviate(int crop) {
        return crop < standDeviate.length ? standDeviate[crop] : 0;
    }

    /** Thirst over the model's on a day, but for what holds through the run. */
    double thirstFrac(int crop, int day) {
        return crop < thirstFrac.length && day < thirstFrac[crop].length
                ? thirstFrac[crop][day]
                : 1;
    }

    /** Whether nobody comes on a day though somebody would. */
    public boolean isMissed(int day) {
        return day < missed.length && missed[day];
    }

    boolean isFilledUp(int day) {
        return filledUpOn.contains(day);
    }

    double meterFrac() {
        return meterFrac;
    }

    @Override
    public String toString() {
        return "stands %s, thirst x %s, meter x %s, missed %s, filled up on %s"
                .formatted(
                        Arrays.toString(standDeviate),
                        Arrays.deepToString(thirstFrac),
                        meterFrac,
                        Arrays.toString(missed),
                        filledUpOn);
    }
}
