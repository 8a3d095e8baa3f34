package tideless.scenario;

import java.time.LocalDate;
import java.time.Month;
import java.util.Locale;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Light;
import tideless.physics.Sun;
import tideless.physics.Time;

/**
 * Light and air of the days on which plants stand under the sky or at a window, where nobody told
 * them: the mean of these days, all of the same ones, in a mild place at 50 degrees north.
 *
 * @param molPerM2Day light of a mean day, mol/m2
 * @param dayC air by day, degC
 * @param nightFallC by so much the night is cooler, K
 * @param months of those days, as "March" or "March to May"; empty for a room under lamps
 */
record StarterSeason(double molPerM2Day, double dayC, double nightFallC, String months) {
    private static final double LATITUDE_DEG = 50;

    private static final LocalDate MIDSUMMER = LocalDate.of(2026, 6, 21);

    /**
     * Of the light above the air under a sky without sun, and with it besides: Penman (1948), Proc.
     * R. Soc. A 193:120, at 52 degrees north; from memory.
     */
    private static final double CLOUDED_FRAC = 0.18;

    private static final double SUN_ADDS_FRAC = 0.55;

    /**
     * Share of the day's length with sun: a fifth in midwinter, two fifths at midsummer; lowlands
     * at 50 degrees north, from memory.
     */
    private static final double SUNNY_FRAC = 0.32;

    private static final double SUNNY_SWING_FRAC = 0.11;

    private static final double SUNNIEST_DAY = 175;

    /** Mean air of the year and half its swing, degC and K; a mild coast, from memory. */
    private static final double MEAN_C = 10;

    private static final double SWING_K = 8;

    /** Warmest on 20 July, a month after the sun; from memory. */
    private static final double WARMEST_DAY = 201;

    /** By day and night the air is this far from its mean in summer, and half of it in the dark. */
    private static final double BY_DAY_K = 4;

    /** Light below this is told to the half, above to the whole mol/m2. */
    private static final double TO_THE_WHOLE_FROM_MOL = 5;

    /**
     * The mean of some days.
     *
     * @param first the first of them
     * @param days how many, at least 1
     */
    static StarterSeason of(StarterLight.Sky sky, LocalDate first, int days) {
        double mol = 0;
        double dayC = 0;
        double fallC = 0;
        for (int i = 0; i < days; i++) {
            LocalDate on = first.plusDays(i);
            mol += sky.shareFrac() * openMolPerM2(on) / days;
            dayC += dayC(sky, on) / days;
            fallC += nightFallC(sky, on) / days;
        }
        double step = mol < TO_THE_WHOLE_FROM_MOL ? 0.5 : 1;
        return new StarterSeason(
                step * FastMath.rint(mol / step),
                FastMath.rint(dayC),
                FastMath.rint(fallC),
                sky == StarterLight.Sky.NONE ? "" : months(first, first.plusDays(days - 1)));
    }

    /** Air by day, degC. */
    static double dayC(StarterLight.Sky sky, LocalDate on) {
        if (!sky.isOutside()) {
            return sky.dayC();
        }
        double meanC =
                MEAN_C + SWING_K * FastMath.cos(Sun.dayAngleRad(on.getDayOfYear() - WARMEST_DAY));
        double warmerC = sky.dayC() - StarterLight.Sky.OUTDOORS.dayC();
        return meanC + BY_DAY_K * swing(on) + warmerC * ofMidsummer(on);
    }

    /** By so much the night is cooler, K. */
    static double nightFallC(StarterLight.Sky sky, LocalDate on) {
        return sky.nightFallC() * (sky.isOutside() ? swing(on) : 1);
    }

    /** Light of a day of mean cloud under the open sky, mol/m2. */
    static double openMolPerM2(LocalDate on) {
        double sunny =
                SUNNY_FRAC
                        + SUNNY_SWING_FRAC
                                * FastMath.cos(Sun.dayAngleRad(on.getDayOfYear() - SUNNIEST_DAY));
        double wPerM2 = (CLOUDED_FRAC + SUN_ADDS_FRAC * sunny) * aboveTheAir(on);
        return Light.globalToPpfdUmolPerM2S(wPerM2) * Time.DAY_S * 1e-6;
    }

    private static double swing(LocalDate on) {
        return 0.5 + 0.5 * ofMidsummer(on);
    }

    private static double ofMidsummer(LocalDate on) {
        return aboveTheAir(on) / aboveTheAir(MIDSUMMER);
    }

    private static double aboveTheAir(LocalDate day) {
        return Sun.extraterrestrialDailyWPerM2(
                FastMath.toRadians(LATITUDE_DEG), day.getDayOfYear());
    }

    private static String months(LocalDate first, LocalDate last) {
        String from = named(first.getMonth());
        String to = named(last.getMonth());
        return from.equals(to) ? from : from + " to " + to;
    }

    private static String named(Month month) {
        return month.name().charAt(0) + month.name().substring(1).toLowerCase(Locale.ROOT);
    }

    /** Whose days they are, in words. */
    String words() {
        return "the mean days of "
                + months
                + " in a mild place at 50 degrees north (south of the equator the seasons are the"
                + " other way round)";
    }
}
