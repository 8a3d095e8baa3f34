package tideless.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import tideless.study.threads.ThreadPool;

/**
 * Makes docs/validation-log.md: synthetic growers, and measured stands where their folders are
 * given. {@code main PAGE GROWERS [CUCUMBER-FOLDER TOMATO-FOLDER]}.
 */
final class ValidateLog {
    private ValidateLog() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        int growers = Integer.parseInt(args[1]);
        Workers workers = ThreadPool.ofAllCores();
        StringBuilder page = new StringBuilder(HEAD);
        dated(page, SyntheticGrowers.dated(growers, workers));
        leaks(page, SyntheticGrowers.leaking(growers, workers));
        limit(page, SyntheticGrowers.atLimit(workers));
        OtherGrowers.write(page, workers);
        if (args.length > 3) {
            FittedStands.write(page, Path.of(args[2]), Path.of(args[3]), workers);
        }
        Files.writeString(Path.of(args[0]), page);
    }

    private static final String HEAD =
            """
            # Validation: what a log teaches

            <!-- Made by tideless.study.ValidateLog. Do not edit; see DEVELOPERS.md. -->

            Synthetic growers: their rigs are drawn with every doubt of docs/decisions/0013-how-sure.md, single
            weeks and days of thirst and missed visits included, and a reservoir that holds 5 % more or less to a
            centimetre. Rig of `scenarios/logged-bench.toml`. Fourteen days of log: the level of the reservoir on
            three days of a week, the EC of three trays on one, litres poured. Noise: ruler 2 mm, EC 3 %, jug 5 %.
            Seeds, noise and rules were committed before the first run (`SyntheticGrowers`). The fit is not told
            what is hidden, nor how it was drawn beyond the priors it shares with the ensembles; that these are
            the ones it was drawn from favours it. All of this page is made in one run, of one state of the sources.

            """;

    private static final String BAND =
            """
            A refill falls on a visit, and the bench is visited every day: a band from one day to another holds
            both whole, and with them more of its own rigs than eight in ten. So the share of growers in it is to
            be held against that of its own rigs; by ranks, where a day that is cut counts in part, against 80 %.
            The interval of the median error is of a bootstrap of growers.

            """;

    /** Medians of samples drawn with replacement (bootstrap). */
    private static double[] medians(double[] values) {
        SplittableRandom random = new SplittableRandom(3);
        double[] medians = new double[2000];
        for (int n = 0; n < medians.length; n++) {
            medians[n] =
                    median(
                            random.ints(values.length, 0, values.length)
                                    .mapToDouble(i -> values[i])
                                    .toArray());
        }
        return medians;
    }

    static void dated(StringBuilder page, List<SyntheticGrowers.Outcome> all) {
        long hits = all.stream().filter(o -> o.isHitBy(o.fitted())).count();
        long statedHits = all.stream().filter(o -> o.isHitBy(o.stated())).count();
        long in = all.stream().filter(o -> o.isIn(o.fitted())).count();
        long statedIn = all.stream().filter(o -> o.isIn(o.stated())).count();
        page.append("## ").append(all.size()).append(" growers, the refill after their log\n\n");
        page.append("| | as stated | by the log | aim |\n| --- | ---: | ---: | --- |\n");
        page.append(
                text(
                        "| next refill within a day or 10 %% of the interval | %s | %s | 7 in 10 |\n",
                        share(statedHits, all.size()), share(hits, all.size())));
        page.append(
                text(
                        "| in the band of 8 in 10 | %s | %s | 80 %% |\n",
                        share(statedIn, all.size()), share(in, all.size())));
        page.append(
                text(
                        "| of that band's own rigs in it | | %.0f %% | |\n",
                        100
                                * all.stream()
                                        .mapToDouble(SyntheticGrowers.Outcome::ownFrac)
                                        .average()
                                        .orElseThrow()));
        page.append(
                text(
                        "| between the 10th and 90th of 100 of its rigs, by ranks | | %s | 80 %% |\n",
                        share(
                                Math.round(
                                        all.stream()
                                                .mapToDouble(SyntheticGrowers.Outcome::rankShare)
                                                .sum()),
                                all.size())));
        page.append(
                text(
                        "| median width of that band, days | %.1f | %.1f | |\n",
                        median(all.stream().mapToDouble(o -> width(o.stated())).toArray()),
                        median(all.stream().mapToDouble(o -> width(o.fitted())).toArray())));
        double[] fittedOff = all.stream().mapToDouble(o -> off(o.fittedL(), o)).toArray();
        double[] ofMedian = medians(fittedOff);
        page.append(
                text(
                        "| median error of the litres drunk in the season | %.1f %% | %.1f %% (%.1f to %.1f) | under 10 %% |\n",
                        100 * median(all.stream().mapToDouble(o -> off(o.statedL(), o)).toArray()),
                        100 * median(fittedOff),
                        100 * quantile(ofMedian, 0.025),
                        100 * quantile(ofMedian, 0.975)));
        page.append(
                text(
                        "| its 90th in 100 | %.0f %% | %.0f %% | |\n",
                        100 * ninth(all.stream().mapToDouble(o -> off(o.statedL(), o)).toArray()),
                        100 * ninth(fittedOff)));
        page.append(
                text(
                        "| the litres in their band of 8 in 10 | | %s | 80 %% |\n\n",
                        share(
                                all.stream().filter(SyntheticGrowers.Outcome::drinksIn).count(),
                                all.size())));
        page.append(BAND);
        long claims = all.stream().filter(o -> o.leak().isSaid()).count();
        page.append("None of them has a leak; said to have one: ")
                .append(share(claims, all.size()))
                .append(" (aim: under 1 in 20).\n\n");
    }

    static void leaks(StringBuilder page, List<SyntheticGrowers.Outcome> all) {
        page.append("## ").append(all.size()).append(" more, every other with a leak\n\n");
        page.append(
                "| leak, L/day | growers | found | not ruled out | middle of the estimates |\n");
        page.append("| ---: | ---: | ---: | ---: | ---: |\n");
        for (double leak : SyntheticGrowers.LEAKS_L_PER_DAY) {
            List<SyntheticGrowers.Outcome> some =
                    all.stream().filter(o -> o.leakL() == leak).toList();
            if (some.isEmpty()) {
                continue;
            }
            long found = some.stream().filter(o -> o.leak().isSaid()).count();
            long open = some.stream().filter(o -> o.leak().isOpen()).count();
            page.append(
                    text(
                            "| %.2f | %d | %s | %d | %.2f |\n",
                            leak,
                            some.size(),
                            share(found, some.size()),
                            open,
                            median(
                                    some.stream()
                                            .mapToDouble(o -> o.leak().litresPerDay())
                                            .toArray())));
        }
        page.append('\n');
    }

    static void limit(StringBuilder page, List<SyntheticGrowers.Outcome> all) {
        long found = all.stream().filter(o -> o.leak().isSaid()).count();
        double[] sizes = all.stream().mapToDouble(SyntheticGrowers.Outcome::leakL).toArray();
        page.append(
                text(
                        """
                        The size that a log's own error allows, which `fit` prints, is the detection limit of its
                        readings: 2.33 standard deviations beyond which a log without a leak comes once in a hundred
                        times, and 1.28 of a leak's own spread, 0.92, more for nine in ten; reckoned by fitting without a
                        leak what the log would have read with one (`LeakLimit`). %d growers more have a leak just as large
                        as their own log without one says it would show, middle %.2f, %.2f to %.2f L a day: found %s
                        (aim: 9 in 10).

                        """,
                        all.size(),
                        median(sizes),
                        quantile(sizes, 0.05),
                        quantile(sizes, 0.95),
                        share(found, all.size())));
    }

    private static double width(Band band) {
        return (band.high() - band.low()) / tideless.physics.Time.DAY_S;
    }

    private static double off(double litres, SyntheticGrowers.Outcome one) {
        return Math.abs(litres / one.trueL() - 1);
    }

    static double median(double[] values) {
        return quantile(values, 0.5);
    }

    static double ninth(double[] values) {
        return quantile(values, 0.9);
    }

    private static double quantile(double[] values, double share) {
        double[] rising = values.clone();
        java.util.Arrays.sort(rising);
        return Band.quantile(rising, share);
    }

    /** As "151 of 200, 76 % (69 to 81)": with the binomial interval of 95 in 100 (Wilson 1927). */
    static String share(long of, int all) {
        ConfidenceInterval interval = new WilsonScoreInterval().createInterval(all, (int) of, 0.95);
        return text(
                "%d of %d, %.0f %% (%.0f to %.0f)",
                of,
                all,
                100.0 * of / all,
                100 * interval.getLowerBound(),
                100 * interval.getUpperBound());
    }

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
