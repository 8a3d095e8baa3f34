package tideless.scenario;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Sun;
import tideless.physics.Time;
import tideless.rig.HourlyWeather;
import tideless.rig.Place;

/**
 * Holds the light of a weather file against the sun of its place: a slip of sign, clock or unit.
 */
final class SunCheck {
    /** The sun so far below the horizon gives no light that a sensor sees: civil twilight, deg. */
    private static final double NIGHT_DEG = -6;

    /** More than this share of the light by night is no noise of a sensor; assumed. */
    private static final double MOST_BY_NIGHT_FRAC = 0.02;

    /** Of the radiation above the air at most some 0.8 comes down in a day; FAO-56 eq. 37: 0.75. */
    private static final double MOST_OF_ABOVE_FRAC = 0.9;

    /** Days that are brighter count where the sun stands high enough for a day's sum, W/m2. */
    private static final double LOW_SUN_W_PER_M2 = 50;

    /** So many too bright days are none of odd sensors or snow; assumed. */
    private static final double TOO_BRIGHT_FRAC = 0.05;

    private static final int DAY_H = 24;

    private SunCheck() {}

    /**
     * What is odd, in sentences; empty for a file that fits its place.
     *
     * @param offsetS the rig's clock less UTC, s
     */
    static List<String> odd(HourlyWeather weather, Place place, LocalDate start, int offsetS) {
        List<String> said = new ArrayList<>();
        int days = weather.hours() / DAY_H;
        double all = 0;
        double byNight = 0;
        int tooBright = 0;
        for (int day = 0; day < days; day++) {
            double dayOfYear = start.plusDays(day).getDayOfYear();
            double sum = 0;
            for (int h = 0; h < DAY_H; h++) {
                double light = weather.globalWPerM2(day * DAY_H + h);
                sum += light;
                byNight += isNight(place, dayOfYear, h + 0.5 - offsetS / Time.HOUR_S) ? light : 0;
            }
            all += sum;
            double above =
                    Sun.extraterrestrialDailyWPerM2(
                            FastMath.toRadians(place.latitudeDeg()), dayOfYear);
            boolean isBright = sum / DAY_H > MOST_OF_ABOVE_FRAC * above;
            tooBright += above > LOW_SUN_W_PER_M2 && isBright ? 1 : 0;
        }
        if (byNight > MOST_BY_NIGHT_FRAC * all) {
            said.add(
                    "%s %% of the light of this file falls while the sun is down at this place; are longitude, place.utc_offset and the unit of the column time as meant?"
                            .formatted(Measure.plain(FastMath.rint(100 * byNight / all))));
        } else if (tooBright > 1 && tooBright > TOO_BRIGHT_FRAC * days) {
            said.add(
                    "on %d of %d days this file has more light than any clear sky gives at this place and season; are latitude (N or S), clock and the unit of global as meant?"
                            .formatted(tooBright, days));
        }
        return said;
    }

    /** By the hour of UTC; the equation of time, a quarter of an hour at most, left out. */
    private static boolean isNight(Place place, double dayOfYear, double utcHour) {
        double hourAngle = FastMath.toRadians(15 * (utcHour - 12) + place.longitudeDeg());
        double latitude = FastMath.toRadians(place.latitudeDeg());
        double declination = Sun.declinationRad(dayOfYear);
        double sine =
                FastMath.sin(latitude) * FastMath.sin(declination)
                        + FastMath.cos(latitude)
                                * FastMath.cos(declination)
                                * FastMath.cos(hourAngle);
        return sine < FastMath.sin(FastMath.toRadians(NIGHT_DEG));
    }
}
