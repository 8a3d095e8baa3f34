package tideless.rig;

import java.util.Arrays;
import java.util.List;

/**
 * An hourly weather series, without gaps. Value {@code h} holds at the instant {@code h} hours
 * after the scenario's start; global radiation is the mean over the hour that begins there. After
 * the last instant its air is held.
 */
public final class HourlyWeather {
    private final String source;
    private final double[] tempC;
    private final double[] humidityFrac;
    private final double[] globalWPerM2;
    private final double[] windMPerS;
    private final double[] rainMPerH;
    private final List<HourlyWeather> otherYears;

    /**
     * @param source file name and licence line, for the report
     * @param tempC air temperature, degC
     * @param humidityFrac relative humidity, 0-1
     * @param globalWPerM2 global radiation on the flat, W/m2
     * @param windMPerS wind at 2 m, m/s
     * @param rainMPerH rain of the hour that begins there, m
     */
    public HourlyWeather(
            String source,
            double[] tempC,
            double[] humidityFrac,
            double[] globalWPerM2,
            double[] windMPerS,
            double[] rainMPerH) {
        this.source = source;
        this.tempC = tempC.clone();
        this.humidityFrac = humidityFrac.clone();
        this.globalWPerM2 = globalWPerM2.clone();
        this.windMPerS = windMPerS.clone();
        this.rainMPerH = rainMPerH.clone();
        otherYears = List.of();
        if (tempC.length == 0
                || humidityFrac.length != tempC.length
                || globalWPerM2.length != tempC.length
                || windMPerS.length != tempC.length
                || rainMPerH.length != tempC.length) {
            throw new IllegalArgumentException("weather columns must be of one length above 0");
        }
    }

    private HourlyWeather(HourlyWeather own, List<HourlyWeather> otherYears) {
        source = own.source;
        tempC = own.tempC;
        humidityFrac = own.humidityFrac;
        globalWPerM2 = own.globalWPerM2;
        windMPerS = own.windMPerS;
        rainMPerH = own.rainMPerH;
        this.otherYears = List.copyOf(otherYears);
    }

    /** The same, beside the same days of other years. */
    public HourlyWeather withOtherYears(List<HourlyWeather> years) {
        return new HourlyWeather(this, years);
    }

    /** The same days as other years had them; none where none are known. */
    public List<HourlyWeather> otherYears() {
        return otherYears;
    }

    /** A series without rain, or of which none is known. */
    public HourlyWeather(
            String source,
            double[] tempC,
            double[] humidityFrac,
            double[] globalWPerM2,
            double[] windMPerS) {
        this(source, tempC, humidityFrac, globalWPerM2, windMPerS, new double[windMPerS.length]);
    }

    /**
     * The first hours of a season that is warmer and sunnier throughout.
     *
     * @param warmerK added to every temperature, K; relative humidity stays
     * @param sunFrac factor on every global radiation
     * @param most hours to keep, at least 1
     */
    public HourlyWeather shifted(double warmerK, double sunFrac, int most) {
        int n = Math.min(most, tempC.length);
        double[] warm = Arrays.copyOf(tempC, n);
        double[] sun = Arrays.copyOf(globalWPerM2, n);
        for (int h = 0; h < n; h++) {
            warm[h] += warmerK;
            sun[h] *= sunFrac;
        }
        return new HourlyWeather(
                source,
                warm,
                Arrays.copyOf(humidityFrac, n),
                sun,
                Arrays.copyOf(windMPerS, n),
                Arrays.copyOf(rainMPerH, n));
    }

    public String source() {
        return source;
    }

    /** How many instants there are. */
    public int hours() {
        return tempC.length;
    }

    public double tempC(int hour) {
        return tempC[Math.min(hour, tempC.length - 1)];
    }

    public double humidityFrac(int hour) {
        return humidityFrac[Math.min(hour, tempC.length - 1)];
    }

    public double globalWPerM2(int hour) {
        return globalWPerM2[Math.min(hour, tempC.length - 1)];
    }

    public double windMPerS(int hour) {
        return windMPerS[Math.min(hour, tempC.length - 1)];
    }

    /** Rain of an hour, m. */
    public double rainMPerH(int hour) {
        return rainMPerH[Math.min(hour, tempC.length - 1)];
    }

    /** Rain over the first hours of the series, m. */
    public double rainM(int hours) {
        double sum = 0;
        for (int h = 0; h < Math.min(hours, tempC.length); h++) {
            sum += rainMPerH[h];
        }
        return sum;
    }
}
