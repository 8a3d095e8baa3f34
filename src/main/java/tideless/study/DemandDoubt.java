package tideless.study;

import java.util.SplittableRandom;
import org.apache.commons.math3.special.Erf;
import org.apache.commons.math3.util.FastMath;

/**
 * How far a stand's water demand may lie from its forecast: lognormal, in standard deviations of
 * the logarithm.
 *
 * @param standSd of the stand's own factor, which holds through the whole run
 * @param weekSd of a week's factor
 * @param weekMemory correlation of a week's factor with that of the week before, 0 to below 1
 * @param daySd of a day's factor, independent from day to day
 */
record DemandDoubt(double standSd, double weekSd, double weekMemory, double daySd) {
    public DemandDoubt {
        if (!(standSd >= 0 && weekSd >= 0 && daySd >= 0)) {
            throw new IllegalArgumentException(
                    "deviations must be at least 0, were %s, %s, %s"
                            .formatted(standSd, weekSd, daySd));
        }
        if (!(weekMemory >= 0 && weekMemory < 1)) {
            throw new IllegalArgumentException("weekMemory must lie in [0, 1), was " + weekMemory);
        }
    }

    /**
     * Draws the factors of the days of one run.
     *
     * @param days of the run
     * @param standUnit quantile of the stand's own factor, in (0, 1): its median is 1
     * @param random of weeks and days, whose factors have a mean of 1
     * @return by day
     */
    public double[] factors(int days, double standUnit, SplittableRandom random) {
        double stand = FastMath.exp(standSd * deviate(standUnit));
        double[] factors = new double[days];
        double fresh = Math.sqrt(1 - weekMemory * weekMemory);
        double week = 0;
        for (int day = 0; day < days; day++) {
            if (day % 7 == 0) {
                double deviate = deviate(unit(random));
                week = day == 0 ? deviate : weekMemory * week + fresh * deviate;
            }
            double own = daySd * deviate(unit(random));
            factors[day] =
                    stand
                            * FastMath.exp(weekSd * (week - 0.5 * weekSd))
                            * FastMath.exp(own - 0.5 * daySd * daySd);
        }
        return factors;
    }

    /**
     * The same of a run whose weeks are known up to one, and what those after it remember of it
     * ({@link LoggedWeeks#factors}): from there on only what is new of each week is drawn.
     *
     * @param lastWeek from 0, the last that is known
     */
    public double[] factorsAfter(
            int days, double standUnit, SplittableRandom random, int lastWeek) {
        double[] factors = new double[days];
        double stand = FastMath.exp(standSd * deviate(standUnit));
        double fresh = 1 - weekMemory * weekMemory;
        double week = 0;
        double variance = 0;
        for (int day = 0; day < days; day++) {
            if (day % 7 == 0 && day / 7 > lastWeek) {
                week = weekMemory * week + Math.sqrt(fresh) * weekSd * deviate(unit(random));
                variance = weekMemory * weekMemory * variance + fresh * weekSd * weekSd;
            }
            double own = daySd * deviate(unit(random));
            factors[day] =
                    stand
                            * FastMath.exp(week - 0.5 * variance)
                            * FastMath.exp(own - 0.5 * daySd * daySd);
        }
        return factors;
    }

    /** Standard normal deviate of a quantile in (0, 1). */
    static double deviate(double unit) {
        return FastMath.sqrt(2) * Erf.erfInv(2 * unit - 1);
    }

    /** In (0, 1): {@code nextDouble} may be 0, which has no finite deviate. */
    static double unit(SplittableRandom random) {
        return random.nextDouble() * (1 - 0x1p-52) + 0x1p-53;
    }
}
