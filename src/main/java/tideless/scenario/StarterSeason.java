package tideless.scenario;

import java.time.LocalDate;
import java.util.Locale;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Sun;

/**
 * Light and air of the weeks in which plants stand under the sky, where nobody told them: those of
 * a mild place at 50 degrees north.
 *
 * @param molPerM2Day light of a mean day, mol/m2
 * @param dayC air by day, degC
 * @param nightFallC by so much the night is cooler, K
 * @param month whose mean days they are like; empty for a summer's or for a room's
 */
record StarterSeason(double molPerM2Day, double dayC, double nightFallC, String month) {
    private static final double LATITUDE_DEG = 50;

    /** Midsummer, whose light a sky's figures are. */
    private static final LocalDate MIDSUMMER = LocalDate.of(2026, 6, 21);

    /** From so much of midsummer's light above the air on it counts as summer; assumed. */
    private static final double SUMMER_FRAC = 0.85;

    /** Mean air of the year and half its swing, degC and K; a mild coast, from memory. */
    private static final double MEAN_C = 10;

    private static final double SWING_K = 8;

    /** Warmest on 20 July, a month after the sun; from memory. */
    private static final double WARMEST_DAY = 201;

    /** By day and night the air is this far from its mean in summer, and half of it in the dark. */
    private static final double BY_DAY_K = 4;

    /** Leaf crops are judged by their third week, fruit by the second month that they stand. */
    private static final int LEAF_DAYS = 21;

    private static final int FRUIT_DAYS = 60;

    /** For plants that are set out on a day. */
    static StarterSeason of(StarterLight.Sky sky, LocalDate start, boolean fruits) {
        LocalDate middle = start.plusDays(fruits ? FRUIT_DAYS : LEAF_DAYS);
        double frac = aboveTheAir(middle) / aboveTheAir(MIDSUMMER);
        if (!sky.isSummer() || frac >= SUMMER_FRAC) {
            return new StarterSeason(sky.molPerM2Day(), sky.dayC(), sky.nightFallC(), "");
        }
        double meanC =
                MEAN_C
                        + SWING_K
                                * FastMath.cos(
                                        Sun.dayAngleRad(middle.getDayOfYear() - WARMEST_DAY));
        double open = StarterLight.Sky.OUTDOORS.dayC();
        double swing = 0.5 + 0.5 * frac;
        double dayC = meanC + BY_DAY_K * swing + (sky.dayC() - open) * frac;
        double fall = sky.nightFallC() * swing;
        return new StarterSeason(
                Math.max(1, FastMath.rint(sky.molPerM2Day() * frac)),
                FastMath.rint(dayC),
                FastMath.rint(fall),
                named(middle.getMonth().name()));
    }

    private static String named(String month) {
        return month.charAt(0) + month.substring(1).toLowerCase(Locale.ROOT);
    }

    private static double aboveTheAir(LocalDate day) {
        return Sun.extraterrestrialDailyWPerM2(
                FastMath.toRadians(LATITUDE_DEG), day.getDayOfYear());
    }

    /** Whose days they are, in words. */
    String words() {
        return month.isEmpty()
                ? "a mild summer"
                : "the mean days of "
                        + month
                        + " in a mild place at 50 degrees north (south of the equator the seasons"
                        + " are the other way round)";
    }
}
