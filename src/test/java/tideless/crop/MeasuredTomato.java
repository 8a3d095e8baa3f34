package tideless.crop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.physics.HumidAir;

/**
 * The forecast for a grown tomato stand driven by the light of four measured compartments of cherry
 * tomato, 1 March to 15 May 2020 (files and source under resources, {@code validation/agc2019-*}).
 *
 * <p>Known: outside light by the hour, lamp energy by day, uptake by day. The publisher's own
 * factor brings outside light inside (0.5, screens left out). Assumed, and the same as for the
 * glasshouse rows of {@link Emergence}, before the data were looked at: 24 degC and 70 % where
 * there is light, 18 degC and 85 % else, 0.2 m/s, leaf area index at the crop's ceiling (a crop
 * held by picking leaves), covered ground 1, no salt stress. Nothing is fitted.
 */
final class MeasuredTomato {
    /** Inside over outside light; the publisher's factor. */
    static final double INSIDE_PER_OUTSIDE = 0.5;

    /**
     * Photons at the crop per energy of the lamps, umol/J: the publisher's installed lamps of 81
     * W/m2 for 100 and 61.5 W/m2 for 97 umol/m2/s burning together; 1.23 or 1.58 for one kind
     * alone.
     */
    static final double LAMP_UMOL_PER_J = (100 + 97) / (81 + 61.5);

    /** Photons per joule of 400-700 nm and near infrared per it: sodium and diodes, half each. */
    private static final double LAMP_UMOL_PER_PAR_J = 5.0;

    private static final double LAMP_NEAR_INFRARED = 0.3;
    private static final double SUN_UMOL_PER_J = 4.57;
    private static final double SUN_NEAR_INFRARED = 0.55 / 0.45;

    /** Below this it counts as night, umol/m2/s; assumed. */
    private static final double DARK = 10;

    /**
     * One compartment.
     *
     * @param name A to D
     * @param dates of the days kept (flagged ones left out)
     * @param measured L/m2/d
     * @param predicted L/m2/d
     * @param lightMol mean inside light, mol/m2/d
     */
    record Series(
            String name,
            List<String> dates,
            List<Double> measured,
            List<Double> predicted,
            double lightMol) {
        /** Means of seven kept days after another; the last may be fewer, but at least four. */
        Series weekly() {
            List<Double> m = new ArrayList<>();
            List<Double> p = new ArrayList<>();
            List<String> d = new ArrayList<>();
            for (int i = 0; i < dates.size(); i += 7) {
                int to = Math.min(dates.size(), i + 7);
                if (to - i >= 4) {
                    m.add(mean(measured.subList(i, to)));
                    p.add(mean(predicted.subList(i, to)));
                    d.add(dates.get(i));
                }
            }
            return new Series(name, d, m, p, lightMol);
        }

        /** Mean of the predicted over mean of the measured, less 1. */
        double bias() {
            return mean(predicted) / mean(measured) - 1;
        }

        /** Square of the correlation. */
        double r2() {
            double c = covariance(measured, predicted);
            return c * c / (covariance(measured, measured) * covariance(predicted, predicted));
        }

        /** Of the straight line of least squares, measured against predicted. */
        double slope() {
            return covariance(measured, predicted) / covariance(predicted, predicted);
        }
    }

    private MeasuredTomato() {}

    static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElseThrow();
    }

    private static double covariance(List<Double> a, List<Double> b) {
        double sum = 0;
        for (int i = 0; i < a.size(); i++) {
            sum += (a.get(i) - mean(a)) * (b.get(i) - mean(b));
        }
        return sum / a.size();
    }

    /** All compartments, then all of them together. */
    static List<Series> daily() {
        Map<String, double[]> outside = new LinkedHashMap<>();
        for (String[] row : rows("agc2019-outside-hourly.csv")) {
            if (row.length < 3) {
                continue; // the hour that the clock skips in March, at night
            }
            double[] day = outside.computeIfAbsent(row[0].substring(0, 10), k -> new double[24]);
            day[Integer.parseInt(row[0].substring(11, 13))] = Double.parseDouble(row[2]);
        }
        CropTraits tomato = CropFiles.read("tomato");
        List<Series> series = new ArrayList<>();
        for (String name : List.of("A", "B", "C", "D")) {
            Series one =
                    new Series(name, new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), 0);
            double light = 0;
            int days = 0;
            for (String[] row : rows("agc2019-daily.csv")) {
                double[] par = outside.get(row[0]);
                if (!row[1].equals(name) || par == null || row.length > 5) {
                    continue;
                }
                double[] lamp = lamp(Double.parseDouble(row[3]), Double.parseDouble(row[4]));
                one.dates().add(row[0]);
                one.measured().add(Double.parseDouble(row[2]));
                one.predicted().add(day(tomato, par, lamp));
                for (int h = 0; h < 24; h++) {
                    light += (INSIDE_PER_OUTSIDE * par[h] + lamp[h]) * 0.0036;
                }
                days++;
            }
            series.add(
                    new Series(name, one.dates(), one.measured(), one.predicted(), light / days));
        }
        Series all = new Series("all", new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), 0);
        for (Series one : series) {
            all.dates().addAll(one.dates());
            all.measured().addAll(one.measured());
            all.predicted().addAll(one.predicted());
        }
        double light = series.stream().mapToDouble(Series::lightMol).average().orElseThrow();
        series.add(new Series("all", all.dates(), all.measured(), all.predicted(), light));
        return series;
    }

    /** Lamp PPFD by the hour from its energy 7-23 h and the rest, spread evenly. */
    private static double[] lamp(double highKwhPerM2, double lowKwhPerM2) {
        double[] ppfd = new double[24];
        for (int h = 0; h < 24; h++) {
            double watts = h >= 7 && h < 23 ? highKwhPerM2 * 1000 / 16 : lowKwhPerM2 * 1000 / 8;
            ppfd[h] = watts * LAMP_UMOL_PER_J;
        }
        return ppfd;
    }

    private static double day(CropTraits tomato, double[] parOut, double[] lamp) {
        double sunMol = 0;
        double lampMol = 0;
        for (int h = 0; h < 24; h++) {
            sunMol += INSIDE_PER_OUTSIDE * parOut[h];
            lampMol += lamp[h];
        }
        // As a run does: sunlit from half of the day's light on.
        double stand = Math.min(1, 2 * sunMol / (sunMol + lampMol));
        double lai = tomato.growth().leafAreaIndexMax();
        double kg = 0;
        for (int h = 0; h < 24; h++) {
            double sun = INSIDE_PER_OUTSIDE * parOut[h];
            double ppfd = sun + lamp[h];
            boolean lit = ppfd > DARK;
            double tempC = lit ? 24 : 18;
            double vapourPa = (lit ? 0.70 : 0.85) * HumidAir.saturationPressurePa(tempC);
            double par = sun / SUN_UMOL_PER_J + lamp[h] / LAMP_UMOL_PER_PAR_J;
            double infrared =
                    SUN_NEAR_INFRARED * sun / SUN_UMOL_PER_J
                            + LAMP_NEAR_INFRARED * lamp[h] / LAMP_UMOL_PER_PAR_J;
            double house =
                    0.5
                            * (StandTranspiration.penmanMonteithKgPerM2S(
                                            tomato.thirst().fullCover(),
                                            lai,
                                            par + infrared,
                                            tempC,
                                            vapourPa,
                                            RoomSeason.AIR_PRESSURE_PA,
                                            1)
                                    + StandTranspiration.radiationKgPerM2S(lai, par + infrared));
            double canopy =
                    ClosedForms.canopyKgPerM2S(
                            tomato.stomata(),
                            tomato.growth().extinction(),
                            lai,
                            par,
                            ppfd,
                            infrared,
                            0,
                            tempC,
                            vapourPa,
                            RoomSeason.AIR_PRESSURE_PA,
                            0.2);
            kg += 3600 * (stand * house + (1 - stand) * canopy);
        }
        return kg;
    }

    private static List<String[]> rows(String file) {
        try (InputStream in =
                MeasuredTomato.class.getResourceAsStream("/tideless/validation/" + file)) {
            List<String[]> rows = new ArrayList<>();
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (Character.isDigit(line.charAt(0))) {
                    rows.add(line.strip().split(","));
                }
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
