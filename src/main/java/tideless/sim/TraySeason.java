package tideless.sim;

import java.util.List;
import java.util.Optional;
import tideless.physics.Time;
import tideless.solution.Brine;

/**
 * What a run of an ensemble leaves behind of one tray.
 *
 * @param yields of each crop that was set out in it, in their order
 * @param drunkM3 what all its plants transpired, m3
 * @param dryH hours with less than a film that feeds anybody, h; steps count as they end
 * @param strandedH hours with every root of living plants out of the water, h
 * @param wiltedH hours in which they were wilted, h
 * @param drownedH hours with air roots drowned, h
 * @param shortOfAirH whole days on which want of oxygen cost growth, h
 * @param lowestOfDayM lowest level of each day at the end of a step, m
 * @param drunkOfDayM3 what all its plants transpired on each day, m3
 * @param filmFromS from when on, each time, no more than {@link #FILM_M} stood in it for {@link
 *     #FILM_PATIENCE_S} together, s since the start
 * @param leftOfDay what its root zone left of the growth of each day
 */
public record TraySeason(
        List<Yield> yields,
        double drunkM3,
        double dryH,
        double strandedH,
        double wiltedH,
        double drownedH,
        double shortOfAirH,
        List<Double> lowestOfDayM,
        List<Double> drunkOfDayM3,
        List<Double> filmFromS,
        List<Left> leftOfDay) {
    /** Below this the thirst of a stand is not met any more, m: twice a film that feeds nobody. */
    public static final double FILM_M = 2 * Brine.FILM_M;

    /** So long it is no matter of a step, s; a run's dried-out trays are told by it too. */
    static final double FILM_PATIENCE_S = 3 * Time.HOUR_S;

    public TraySeason {
        yields = List.copyOf(yields);
        lowestOfDayM = List.copyOf(lowestOfDayM);
        drunkOfDayM3 = List.copyOf(drunkOfDayM3);
        filmFromS = List.copyOf(filmFromS);
        leftOfDay = List.copyOf(leftOfDay);
    }

    /**
     * What is left of one day's growth.
     *
     * @param saltFrac by salt, 0-1
     * @param hungerFrac by want of a nutrient, 0-1
     * @param airFrac by want of oxygen, 0-1
     */
    public record Left(double saltFrac, double hungerFrac, double airFrac) {
        /** Where nothing lives that could be harmed. */
        static final Left ALL = new Left(1, 1, 1);
    }

    /**
     * What one crop gave.
     *
     * @param freshG fresh mass of shoot and fruit of one plant when it left the tray, or at the end
     *     with the last day's growth, g; NaN where a thirst was measured
     * @param fruitFreshG of which fruit, g; NaN as above
     * @param pickedG leaves that were picked from it before, g
     * @param lost what its root zone took; empty where a thirst was measured
     */
    public record Yield(
            double freshG, double fruitFreshG, double pickedG, Optional<GrowthLost> lost) {
        /** All that one plant gave, with the leaves picked from it, g; NaN as above. */
        public double allG() {
            return freshG + pickedG;
        }
    }
}
