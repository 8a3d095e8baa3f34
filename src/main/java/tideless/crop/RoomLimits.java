package tideless.crop;

import java.util.EnumMap;
import java.util.Map;

/** Which of a day's air and light a crop does not bear, against published limits. */
public final class RoomLimits {
    /** What is out of range. */
    public enum Kind {
        /** Hardly any growth for cold, or leaves injured; degC. */
        TOO_COLD,
        /** Growth much below full for heat; degC. */
        TOO_HOT,
        /** A leaf crop in hours hotter than it grows at all, in a day that is not too hot; degC. */
        HOT_HOURS,
        /** Leaves hardly transpire, tips of young leaves go short of calcium; share of 1. */
        TOO_HUMID,
        /** Under strong light, air too still for the young leaves of a head; m/s. */
        TOO_STILL,
        /** More hours of light than the crop bears; h. */
        DAY_TOO_LONG,
        /** In flower, too cold to set fruit; degC. */
        SET_TOO_COLD,
        /** In flower, too hot to set fruit; degC. */
        SET_TOO_HOT
    }

    /**
     * One value beyond its limit, in the unit of its kind.
     *
     * @param value the day's
     * @param limit the crop's
     */
    public record Beyond(double value, double limit) {}

    /**
     * One day at the leaves.
     *
     * @param meanC mean of 24 h, degC
     * @param lowestC lowest hour, degC
     * @param highestC highest hour, degC
     * @param litMeanC mean of the hours with light, degC; NaN without any
     * @param darkHumidityFrac mean relative humidity of the dark hours (of all where none is), 0-1
     * @param litH hours of light
     * @param lightMolPerM2 light, mol/m2
     * @param airSpeedMPerS at the leaves, m/s
     * @param flowering whether fruit is setting
     */
    public record Day(
            double meanC,
            double lowestC,
            double highestC,
            double litMeanC,
            double darkHumidityFrac,
            double litH,
            double lightMolPerM2,
            double airSpeedMPerS,
            boolean flowering) {}

    /** Growth left by the air's temperature below which cold or heat is worth a word; assumed. */
    static final double HARDLY_FRAC = 0.25;

    /** See {@link #HARDLY_FRAC}; heat tells sooner, for it also harms the leaf. Assumed. */
    static final double MUCH_BELOW_FRAC = 0.75;

    /** Relative humidity by night above which tip burn threatens; from memory. */
    static final double HUMID_FRAC = 0.90;

    /** Air at the young leaf below which tip burn threatens, 0.3 to 0.5 m/s; from memory. */
    static final double STILL_M_PER_S = 0.3;

    /** Daily light above which still air matters to heads of lettuce, mol/m2; from memory. */
    static final double STILL_FROM_MOL_PER_M2 = 17;

    private RoomLimits() {}

    /** What of a day the crop does not bear; empty for none. */
    public static Map<Kind, Beyond> beyond(CropTraits traits, Day day) {
        Map<Kind, Beyond> found = new EnumMap<>(Kind.class);
        CropTraits.Growth growth = traits.growth();
        CropTraits.RootResponse bears = traits.response();
        double air = Growing.temperatureFrac(growth, day.meanC());
        if (day.lowestC() < bears.chillC()) {
            found.put(Kind.TOO_COLD, new Beyond(day.lowestC(), bears.chillC()));
        } else if (day.meanC() < growth.optimumLowC() && air < HARDLY_FRAC) {
            double limit = growth.baseC() + HARDLY_FRAC * (growth.optimumLowC() - growth.baseC());
            found.put(Kind.TOO_COLD, new Beyond(day.meanC(), limit));
        }
        if (day.meanC() > growth.optimumHighC() && air < MUCH_BELOW_FRAC) {
            double limit =
                    growth.ceilingC()
                            - MUCH_BELOW_FRAC * (growth.ceilingC() - growth.optimumHighC());
            found.put(Kind.TOO_HOT, new Beyond(day.meanC(), limit));
        } else if (!traits.stages().fruits() && day.highestC() > growth.ceilingC()) {
            found.put(Kind.HOT_HOURS, new Beyond(day.highestC(), growth.ceilingC()));
        }
        if (day.darkHumidityFrac() > HUMID_FRAC) {
            found.put(Kind.TOO_HUMID, new Beyond(day.darkHumidityFrac(), HUMID_FRAC));
        }
        if (!traits.stages().fruits()
                && day.lightMolPerM2() > STILL_FROM_MOL_PER_M2
                && day.airSpeedMPerS() < STILL_M_PER_S) {
            found.put(Kind.TOO_STILL, new Beyond(day.airSpeedMPerS(), STILL_M_PER_S));
        }
        if (day.litH() > bears.longestDayH() + 1e-9) {
            found.put(Kind.DAY_TOO_LONG, new Beyond(day.litH(), bears.longestDayH()));
        }
        if (day.flowering() && day.meanC() < bears.setLowC()) {
            found.put(Kind.SET_TOO_COLD, new Beyond(day.meanC(), bears.setLowC()));
        }
        if (day.flowering() && day.litMeanC() > bears.setHighC()) {
            found.put(Kind.SET_TOO_HOT, new Beyond(day.litMeanC(), bears.setHighC()));
        }
        return found;
    }

    /**
     * Days a crop still needs to a stage, at a mean temperature; 0 when it is there, infinite when
     * it does not develop.
     *
     * @param thermalTimeCd it stands at, degC d since sowing
     * @param stageCd of the stage, degC d since sowing
     * @param meanC mean air of the days to come, degC
     */
    public static double daysTo(
            CropTraits traits, double thermalTimeCd, double stageCd, double meanC) {
        double flowerCd = traits.stages().floweringCd();
        return at(traits, thermalTimeCd, Math.min(stageCd, flowerCd), meanC)
                + at(traits, Math.max(thermalTimeCd, flowerCd), stageCd, meanC);
    }

    // Days from one to another by the pace of the first.
    private static double at(CropTraits traits, double fromCd, double toCd, double meanC) {
        if (!(toCd > fromCd)) {
            return 0;
        }
        double perDay = Growing.warmthCd(traits, fromCd, meanC);
        return perDay > 0 ? (toCd - fromCd) / perDay : Double.POSITIVE_INFINITY;
    }
}
