package tideless.study;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Measured stands, fitted every fortnight by their last days and held against the fortnight after:
 * one factor on thirst, found as {@link Fit} finds it, with weeks of their own. A part of {@link
 * ValidateLog}.
 */
final class FittedStands {
    private static final int DAYS = 14;

    /** Of a sunlit stand's thirst, of weeks and of days; {@link tideless.crop.ThirstDoubt}. */
    private static final double STAND_SD = 0.25;

    private static final double WEEK_SD = 0.13;
    private static final double DAY_SD = 0.20;

    /** Of the sum of a fortnight: two weeks with a correlation of a half, and its days. */
    private static final double AHEAD_SD =
            Math.sqrt(WEEK_SD * WEEK_SD * 0.75 + DAY_SD * DAY_SD / DAYS);

    private static final double AT_90 = 1.2816; // normal deviate

    /** Of a bootstrap. */
    private static final int DRAWS = 2000;

    private FittedStands() {}

    /**
     * A fortnight foretold.
     *
     * @param raw over measured: the forecast as it is
     * @param fitted the same with the factor of the days before
     * @param mean the mean of the days before carried on
     * @param isInside whether the measured lies in the band of eight tenths
     */
    private record Ahead(double raw, double fitted, double mean, boolean isInside) {}

    static void write(StringBuilder page, Path cucumber, Path tomato)
            throws IOException, InterruptedException {
        page.append(
                """
                ## Measured stands, fitted every fortnight

                The houses and compartments of docs/validation-stands.md, series not shipped: every fourteen days one
                factor on thirst is found from the days before, by the same posterior as `fit`, and the fourteen days
                after are foretold. Errors are of the sum of a fortnight. The stands' air was known as it came, which
                a forecast's is not; the forms were chosen on stands of which these are part.

                | stands | fortnights | | median error | 90th in 100 | worst | in the band of 8 in 10 |
                | --- | ---: | --- | ---: | ---: | ---: | ---: |
                """);
        // As on docs/validation-stands.md: figures before are one record copied, or missing.
        stands(
                page,
                "cucumber",
                MeasuredStands.houses(cucumber).stream()
                        .map(s -> s.from(LocalDate.of(2018, 8, 23), LocalDate.of(2018, 12, 7)))
                        .toList());
        stands(
                page,
                "tomato",
                MeasuredStands.compartments(tomato).stream()
                        .map(s -> s.from(LocalDate.of(2020, 1, 1), LocalDate.of(2020, 5, 16)))
                        .toList());
        page.append('\n');
    }

    private static void stands(StringBuilder page, String name, List<MeasuredStands.Stand> stands)
            throws InterruptedException {
        for (int back : new int[] {DAYS, 7}) {
            List<List<Ahead>> all = new ArrayList<>();
            for (MeasuredStands.Stand stand : stands) {
                all.add(ahead(stand, back));
            }
            List<Ahead> flat = all.stream().flatMap(List::stream).toList();
            String many = String.valueOf(flat.size());
            if (back == DAYS) {
                row(page, name, many, "as it is", flat, Ahead::raw, "");
                row(page, name, many, "mean of 14 days carried on", flat, Ahead::mean, "");
            }
            long inside = flat.stream().filter(Ahead::isInside).count();
            row(
                    page,
                    name,
                    many,
                    "fitted by " + back + " days",
                    flat,
                    Ahead::fitted,
                    ValidateLog.share(inside, flat.size()));
            if (back == DAYS) {
                page.append(better(name, all));
            }
        }
    }

    private static void row(
            StringBuilder page,
            String name,
            String many,
            String what,
            List<Ahead> all,
            ToDoubleFunction<Ahead> figure,
            String inside) {
        double[] off =
                all.stream().mapToDouble(a -> Math.abs(figure.applyAsDouble(a) - 1)).toArray();
        page.append(
                ValidateLog.text(
                        "| %s | %s | %s | %.0f %% | %.0f %% | %.0f %% | %s |\n",
                        name,
                        many,
                        what,
                        100 * ValidateLog.median(off),
                        100 * ValidateLog.ninth(off),
                        100 * Arrays.stream(off).max().orElse(Double.NaN),
                        inside));
    }

    /** By a bootstrap of whole stands and of the fortnights in them. */
    private static String better(String name, List<List<Ahead>> all) {
        SplittableRandom random = new SplittableRandom(1);
        double[] less = new double[DRAWS];
        for (int n = 0; n < DRAWS; n++) {
            double sum = 0;
            int count = 0;
            for (int s = 0; s < all.size(); s++) {
                List<Ahead> stand = all.get(random.nextInt(all.size()));
                for (int i = 0; i < stand.size(); i++) {
                    Ahead one = stand.get(random.nextInt(stand.size()));
                    sum += Math.abs(one.mean() - 1) - Math.abs(one.fitted() - 1);
                    count++;
                }
            }
            less[n] = sum / count;
        }
        Arrays.sort(less);
        return ValidateLog.text(
                "| %s | | mean error by which the fit betters the mean carried on | %.1f points (%.1f to %.1f) | | | |\n",
                name,
                100 * Band.quantile(less, 0.5),
                100 * Band.quantile(less, 0.025),
                100 * Band.quantile(less, 0.975));
    }

    private static List<Ahead> ahead(MeasuredStands.Stand stand, int back)
            throws InterruptedException {
        List<Ahead> all = new ArrayList<>();
        for (int at = DAYS; at + DAYS <= stand.dates().size(); at += DAYS) {
            all.add(ahead(stand, at - back, at));
        }
        return all;
    }

    private static Ahead ahead(MeasuredStands.Stand stand, int from, int at)
            throws InterruptedException {
        double[] measured = values(stand.measured().subList(from, at));
        double[] raw = values(stand.predicted().subList(from, at));
        int weeks = (at - from + 6) / 7;
        double[] deviation = Arrays.stream(raw).map(p -> Math.max(0.05, DAY_SD * p)).toArray();
        Posterior found =
                Posterior.of(
                        points ->
                                Arrays.stream(points)
                                        .map(p -> foretold(raw, p))
                                        .toArray(double[][]::new),
                        measured,
                        deviation,
                        Posterior.starts(1 + weeks, 1),
                        1e-4);
        double factor = Math.exp(STAND_SD * found.mode()[0]);
        double truth = sum(stand.measured().subList(at, at + DAYS));
        double ahead = sum(stand.predicted().subList(at, at + DAYS));
        double doubt = Math.hypot(STAND_SD * found.deviation(0), AHEAD_SD);
        double off = Math.abs(Math.log(factor * ahead / truth));
        double mean = Arrays.stream(measured).average().orElseThrow() * DAYS;
        return new Ahead(ahead / truth, factor * ahead / truth, mean / truth, off <= AT_90 * doubt);
    }

    private static double[] foretold(double[] raw, double[] point) {
        double[] foretold = new double[raw.length];
        for (int i = 0; i < raw.length; i++) {
            double week = point[1 + i / 7];
            foretold[i] = raw[i] * Math.exp(STAND_SD * point[0] + WEEK_SD * week);
        }
        return foretold;
    }

    private static double[] values(List<Double> some) {
        return some.stream().mapToDouble(v -> v).toArray();
    }

    private static double sum(List<Double> some) {
        return some.stream().mapToDouble(v -> v).sum();
    }
}
