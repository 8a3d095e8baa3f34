package tideless.sim;

import java.util.Arrays;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.HumidAir;
import tideless.physics.Light;
import tideless.physics.Sun;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.DailySpan;
import tideless.rig.HourlyWeather;
import tideless.rig.InsideAir;
import tideless.rig.Lamp;
import tideless.rig.Scenario;

/**
 * Air and sun at the middle of every step of a {@link Timeline}. Worked out once for a scenario.
 *
 * <p>Temperature, vapour pressure and wind are joined by straight lines between the hours; the sun
 * is held at the hour's mean, so that the day's light is exact. Measured inside air is held at the
 * hour's mean as a whole. In the open the leaves lose long waves to the sky; what shades them from
 * the sun hides the sky by the same share (assumed).
 */
final class AirSeries {
    /** Share of global radiation in 400-700 nm; 0.42-0.50 in the literature, from memory. */
    static final double PAR_PER_GLOBAL = Light.PAR_PER_GLOBAL_FRAC;

    /** Photons per joule of that light; Thimijan and Heins (1983), sun and sky. */
    static final double SUN_UMOL_PER_J = Light.Source.SUN_AND_SKY.umolPerJ();

    final double[] tempC;
    final double[] vapourPa;
    final double[] speedMPerS;
    final double[] sunParWPerM2;
    final double[] sunInfraredWPerM2;

    /** Lamps of the house, beside those over a tray, at the canopy, 400-700 nm, umol/m2/s. */
    final double[] lampPpfdUmolPerM2S;

    /** Photons per joule of their 400-700 nm light, umol/J. */
    private final double lampUmolPerJ;

    /** Near infrared per unit of their 400-700 nm power, W/W. */
    private final double lampNearInfraredPerPar;

    /** The solutions' temperature where it was measured, degC; else NaN. */
    final double[] solutionTempC;

    /** Net long-wave gain of leaves at air temperature, W/m2: below 0 under the sky, else 0. */
    final double[] longWaveWPerM2;

    /** Carbon dioxide of the air at the leaves, umol/mol. */
    final double[] co2Ppm;

    /** Whether all of the above is as it was in the step before. */
    final boolean[] sameAsBefore;

    /** Airs over water, told apart, that may be known one by one: a room's. */
    static final int KINDS_MOST = 4;

    static final int OF_NO_KIND = -1;

    /**
     * Which of a few airs stands over the solutions (temperature, vapour and speed), from 0; {@link
     * #OF_NO_KIND} throughout where they are more than {@link #KINDS_MOST}.
     */
    final int[] kind;

    /** Sun of every day over the leaves, mol/m2. */
    private double[] sunMolOfDay;

    /** Lamps of the house likewise. */
    private double[] lampMolOfDay;

    final Place place;
    final double pressurePa;

    /** Stated for all trays' solutions, ppm; 0 where the roots' own is worked out. */
    final double solutionCo2Ppm;

    /** Where the leaves are: it decides what air does to a reference stand. */
    enum Place {
        ROOM,
        HOUSE,
        OPEN
    }

    private AirSeries(int steps, Place place, double pressurePa, double solutionCo2Ppm) {
        this(steps, place, pressurePa, solutionCo2Ppm, Lamp.NONE.umolPerJ(), 0);
    }

    private AirSeries(
            int steps,
            Place place,
            double pressurePa,
            double solutionCo2Ppm,
            double lampUmolPerJ,
            double lampNearInfraredPerPar) {
        this.place = place;
        this.lampUmolPerJ = lampUmolPerJ;
        this.lampNearInfraredPerPar = lampNearInfraredPerPar;
        lampPpfdUmolPerM2S = new double[steps];
        solutionTempC = new double[steps];
        Arrays.fill(solutionTempC, Double.NaN);
        longWaveWPerM2 = new double[steps];
        co2Ppm = new double[steps];
        sameAsBefore = new boolean[steps];
        kind = new int[steps];
        tempC = new double[steps];
        vapourPa = new double[steps];
        speedMPerS = new double[steps];
        sunParWPerM2 = new double[steps];
        sunInfraredWPerM2 = new double[steps];
        this.pressurePa = pressurePa;
        this.solutionCo2Ppm = solutionCo2Ppm;
    }

    /** Of the sun, visible and near infrared, W/m2 of level ground. */
    double sunWPerM2(int step) {
        return sunParWPerM2[step] + sunInfraredWPerM2[step];
    }

    static AirSeries of(Scenario scenario, Timeline timeline) {
        double pressurePa = HumidAir.pressurePa(scenario.place().altitudeM());
        Climate climate = scenario.climate();
        AirSeries air;
        if (climate instanceof Climate.Room room) {
            air = ofRoom(room, timeline, pressurePa);
        } else if (climate instanceof Climate.Weather weather) {
            air = ofWeather(weather, scenario, timeline, pressurePa);
        } else if (climate instanceof Climate.Inside inside) {
            air = ofInside(inside, timeline, pressurePa);
        } else {
            throw new AssertionError("no air for " + climate);
        }
        air.sumDays(timeline);
        for (int i = 1; i < timeline.steps; i++) {
            air.sameAsBefore[i] = air.isSame(i - 1, i);
        }
        air.tellApart();
        return air;
    }

    private void sumDays(Timeline timeline) {
        int days = (int) (timeline.instantS[timeline.steps] / Time.DAY_S) + 1;
        sunMolOfDay = new double[days];
        lampMolOfDay = new double[days];
        for (int i = 0; i < timeline.steps; i++) {
            int day = (int) (timeline.instantS[i] / Time.DAY_S);
            double molPerUmolPerS = 1e-6 * (timeline.instantS[i + 1] - timeline.instantS[i]);
            sunMolOfDay[day] += sunParWPerM2[i] * SUN_UMOL_PER_J * molPerUmolPerS;
            lampMolOfDay[day] += lampPpfdUmolPerM2S[i] * molPerUmolPerS;
        }
    }

    /**
     * Share of a day's light that is sun, the rest the lamps of the house and one over the leaves,
     * 0-1.
     *
     * @param day counted from 0
     */
    double sunFrac(int day, Lamp lamp) {
        double sunMol = sunMolOfDay[day];
        if (!(sunMol > 0)) {
            return 0;
        }
        double overMol = lamp.molPerM2(day * Time.DAY_S, (day + 1) * Time.DAY_S);
        return sunMol / (sunMol + lampMolOfDay[day] + overMol);
    }

    private void tellApart() {
        int[] firstOf = new int[KINDS_MOST];
        int kinds = 0;
        for (int i = 0; i < kind.length; i++) {
            int k = 0;
            while (k < kinds && !isSameOverWater(firstOf[k], i)) {
                k++;
            }
            if (k == KINDS_MOST) {
                Arrays.fill(kind, OF_NO_KIND);
                return;
            }
            if (k == kinds) {
                firstOf[k] = i;
                kinds++;
            }
            kind[i] = k;
        }
    }

    private boolean isSameOverWater(int a, int b) {
        return tempC[a] == tempC[b] && vapourPa[a] == vapourPa[b] && speedMPerS[a] == speedMPerS[b];
    }

    private boolean isSame(int a, int b) {
        return tempC[a] == tempC[b]
                && vapourPa[a] == vapourPa[b]
                && speedMPerS[a] == speedMPerS[b]
                && sunParWPerM2[a] == sunParWPerM2[b]
                && sunInfraredWPerM2[a] == sunInfraredWPerM2[b]
                && lampPpfdUmolPerM2S[a] == lampPpfdUmolPerM2S[b]
                && longWaveWPerM2[a] == longWaveWPerM2[b]
                && co2Ppm[a] == co2Ppm[b];
    }

    /** Light of 400-700 nm from sun and house lamps in a step, W/m2. */
    double parWPerM2(int step) {
        return sunParWPerM2[step] + lampPpfdUmolPerM2S[step] / lampUmolPerJ;
    }

    /** Near infrared from sun and house lamps in a step, W/m2. */
    double infraredWPerM2(int step) {
        return sunInfraredWPerM2[step]
                + lampPpfdUmolPerM2S[step] / lampUmolPerJ * lampNearInfraredPerPar;
    }

    /** Photons of sun and house lamps in a step, umol/m2/s. */
    double ppfdUmolPerM2S(int step) {
        return sunParWPerM2[step] * SUN_UMOL_PER_J + lampPpfdUmolPerM2S[step];
    }

    private static AirSeries ofInside(
            Climate.Inside climate, Timeline timeline, double pressurePa) {
        InsideAir inside = climate.air();
        AirSeries air =
                new AirSeries(
                        timeline.steps,
                        inside.isSunlit() ? Place.HOUSE : Place.ROOM,
                        pressurePa,
                        climate.solutionCo2Ppm(),
                        inside.lampUmolPerJ(),
                        inside.lampNearInfraredPerPar());
        for (int i = 0; i < timeline.steps; i++) {
            int h = (int) (timeline.instantS[i] / Time.HOUR_S);
            air.tempC[i] = inside.at(InsideAir.Quantity.TEMP_C, h);
            air.vapourPa[i] = inside.at(InsideAir.Quantity.VAPOUR_PA, h);
            air.speedMPerS[i] = inside.at(InsideAir.Quantity.AIR_SPEED_M_PER_S, h);
            air.co2Ppm[i] = inside.at(InsideAir.Quantity.CO2_PPM, h);
            air.solutionTempC[i] = inside.at(InsideAir.Quantity.SOLUTION_TEMP_C, h);
            air.lampPpfdUmolPerM2S[i] = inside.at(InsideAir.Quantity.LAMP_PPFD_UMOL_PER_M2_S, h);
            double par = inside.at(InsideAir.Quantity.SUN_PAR_W_PER_M2, h);
            air.sunParWPerM2[i] = par;
            air.sunInfraredWPerM2[i] = par * (1 - PAR_PER_GLOBAL) / PAR_PER_GLOBAL;
        }
        return air;
    }

    private static AirSeries ofRoom(Climate.Room room, Timeline timeline, double pressurePa) {
        AirSeries air =
                new AirSeries(timeline.steps, Place.ROOM, pressurePa, room.solutionCo2Ppm());
        Arrays.fill(air.co2Ppm, room.co2Ppm());
        double dayPa = HumidAir.vapourPressurePa(room.dayTempC(), room.dayHumidityFrac());
        double nightPa = HumidAir.vapourPressurePa(room.nightTempC(), room.nightHumidityFrac());
        for (int i = 0; i < timeline.steps; i++) {
            boolean day = DailySpan.isOpen(timeline.instantS[i], room.dayBeginS(), room.dayEndS());
            double midS = 0.5 * (timeline.instantS[i] + timeline.instantS[i + 1]);
            air.tempC[i] = (day ? room.dayTempC() : room.nightTempC()) + swingC(room, midS);
            air.vapourPa[i] =
                    Math.min(day ? dayPa : nightPa, HumidAir.saturationPressurePa(air.tempC[i]));
            air.speedMPerS[i] = room.airSpeedMPerS();
            double fromS = timeline.instantS[i] % Time.DAY_S;
            double toS = fromS + timeline.instantS[i + 1] - timeline.instantS[i];
            Climate.Window window = room.window();
            double ppfd =
                    Light.halfSinePpfdUmolPerM2S(
                            window.molPerM2Day(), window.beginS(), window.endS(), fromS, toS);
            double par = ppfd / SUN_UMOL_PER_J;
            air.sunParWPerM2[i] = par;
            air.sunInfraredWPerM2[i] = par * (1 - PAR_PER_GLOBAL) / PAR_PER_GLOBAL;
        }
        return air;
    }

    /** A sine of the day, coldest at 03:00 and warmest at 15:00. */
    private static double swingC(Climate.Room room, double atS) {
        return room.swingK() == 0
                ? 0
                : 0.5
                        * room.swingK()
                        * FastMath.sin(2 * Math.PI * (atS - 9 * Time.HOUR_S) / Time.DAY_S);
    }

    private static AirSeries ofWeather(
            Climate.Weather climate, Scenario scenario, Timeline timeline, double pressurePa) {
        HourlyWeather weather = climate.weather();
        Cover cover = climate.cover();
        boolean closed = !climate.isOpen();
        AirSeries air =
                new AirSeries(
                        timeline.steps,
                        closed ? Place.HOUSE : Place.OPEN,
                        pressurePa,
                        climate.solutionCo2Ppm());
        Arrays.fill(air.co2Ppm, climate.co2Ppm());
        double[] clearness = closed ? null : clearness(climate, scenario);
        int hours = (int) Math.ceil(timeline.instantS[timeline.steps] / Time.HOUR_S) + 1;
        double[] tempC = new double[hours];
        double[] vapourPa = new double[hours];
        for (int h = 0; h < hours; h++) {
            double outsideC = weather.tempC(h);
            double outsidePa = HumidAir.vapourPressurePa(outsideC, weather.humidityFrac(h));
            if (closed) {
                double global = weather.globalWPerM2(h);
                tempC[h] = CoveredAir.tempC(outsideC, global, cover, pressurePa);
                vapourPa[h] = CoveredAir.vapourPa(tempC[h], outsideC, outsidePa, global, cover);
            } else {
                tempC[h] = outsideC;
                vapourPa[h] = outsidePa;
            }
        }
        for (int i = 0; i < timeline.steps; i++) {
            double hour = 0.5 * (timeline.instantS[i] + timeline.instantS[i + 1]) / Time.HOUR_S;
            int h = (int) hour;
            double share = hour - h;
            air.tempC[i] = between(tempC, h, share);
            air.vapourPa[i] =
                    Math.min(
                            between(vapourPa, h, share),
                            HumidAir.saturationPressurePa(air.tempC[i]));
            air.speedMPerS[i] =
                    closed
                            ? climate.airSpeedMPerS()
                            : (1 - share) * weather.windMPerS(h) + share * weather.windMPerS(h + 1);
            double inside = cover.transmissionFrac() * weather.globalWPerM2(h);
            air.sunParWPerM2[i] = PAR_PER_GLOBAL * inside;
            air.sunInfraredWPerM2[i] = (1 - PAR_PER_GLOBAL) * inside;
            if (clearness != null) {
                air.longWaveWPerM2[i] =
                        -cover.transmissionFrac()
                                * Sun.netLongWaveHourlyWPerM2(
                                        air.tempC[i],
                                        air.vapourPa[i],
                                        clearness[Math.min(h / 24, clearness.length - 1)]);
            }
        }
        return air;
    }

    /**
     * Global over clear-sky radiation of every day, 0.3 to 1, held for its 24 hours: FAO-56 (Allen
     * et al. 1998), eq. 39, takes the ratio of a day, and at night that of the last hours of sun,
     * which the day's own stands for. The bound of 0.3 is that of ASCE-EWRI (2005), from memory. A
     * day without sun counts as 0.6, between humid and dry places.
     */
    private static double[] clearness(Climate.Weather climate, Scenario scenario) {
        double latitude = FastMath.toRadians(scenario.place().latitudeDeg());
        double[] ratio = new double[scenario.days()];
        for (int day = 0; day < ratio.length; day++) {
            double global = 0;
            for (int h = 0; h < 24; h++) {
                global += climate.weather().globalWPerM2(day * 24 + h) / 24;
            }
            double clear =
                    Sun.clearSkyWPerM2(
                            Sun.extraterrestrialDailyWPerM2(
                                    latitude, scenario.start().plusDays(day).getDayOfYear()),
                            scenario.place().altitudeM());
            ratio[day] = clear > 1 ? Math.max(0.3, Math.min(1, global / clear)) : 0.6;
        }
        return ratio;
    }

    private static double between(double[] values, int h, double share) {
        return (1 - share) * values[h] + share * values[h + 1];
    }
}
