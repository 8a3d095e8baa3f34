package tideless.study;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;

/**
 * Measured stands, their days written down as a grower's log and fitted every fortnight by the
 * whole {@link Fit}, and what their rigs drink in the fortnight after held against what was
 * measured. A part of {@link ValidateLog}.
 *
 * <p>What was drunk on a day stands in the log as the litres of a top-up at the midnight that ends
 * it. The solution is made anew every week, since the stands drained theirs.
 */
final class FittedStands {
    private static final int DAYS = 14;
    private static final int ALL = 0;

    /** Of a bootstrap. */
    private static final int DRAWS = 2000;

    private static final int MEMBERS = 128;
    private static final double L_PER_M3 = 1000;

    private FittedStands() {}

    /**
     * A fortnight foretold.
     *
     * @param raw over measured: the forecast as it is
     * @param fitted the same by the log
     * @param mean the mean of the days before carried on
     * @param from the stand and its first day
     * @param before measured over the forecast as it is, in the days before
     * @param isInside whether the measured lies in the band of eight tenths
     * @param halfFrac half of that band, over its middle
     */
    private record Ahead(
            double raw,
            double fitted,
            double mean,
            String from,
            double before,
            boolean isInside,
            double halfFrac) {
        double off() {
            return Math.abs(fitted - 1);
        }
    }

    static void write(StringBuilder page, Path cucumber, Path tomato, Workers workers)
            throws IOException, InterruptedException {
        page.append(
                """
                ## Measured stands, fitted every fortnight

                The houses and compartments of docs/validation-stands.md, series not shipped. Every fourteen days the
                days before are written into a log as the litres of a daily top-up (a vessel of 0.3 m2 for ten plants, new
                solution every week), `fit` runs whole, and the fourteen days after are foretold by its rigs: thirst,
                growth, size at the start, and the weeks' own thirst with its memory, all by the priors of `fit`. Errors
                are of the sum of a fortnight. The stands' air was known as it came, which a forecast's is not; the forms
                were chosen on stands of which these are part.

                | stands | fortnights | | median error | 90th in 100 | worst | in the band of 8 in 10 |
                | --- | ---: | --- | ---: | ---: | ---: | ---: |
                """);
        StringBuilder worst = new StringBuilder();
        // As on docs/validation-stands.md: figures before are one record copied, or missing.
        stands(
                page,
                "cucumber",
                MeasuredStands.houses(cucumber).stream()
                        .map(s -> s.from(LocalDate.of(2018, 8, 23), LocalDate.of(2018, 12, 7)))
                        .toList(),
                worst,
                workers);
        stands(
                page,
                "tomato",
                MeasuredStands.compartments(tomato).stream()
                        .map(s -> s.from(LocalDate.of(2020, 1, 1), LocalDate.of(2020, 5, 16)))
                        .toList(),
                worst,
                workers);
        page.append('\n');
        page.append(worst);
    }

    /** What the figure of the worst tenth is worth, and whose it is. */
    private static String worst(String name, List<List<Ahead>> stands) {
        double[] ninth = new double[DRAWS];
        SplittableRandom random = new SplittableRandom(2);
        for (int n = 0; n < DRAWS; n++) {
            ninth[n] =
                    ValidateLog.ninth(
                            drawn(stands, random).stream().mapToDouble(Ahead::off).toArray());
        }
        Arrays.sort(ninth);
        List<Ahead> worst = new ArrayList<>(stands.stream().flatMap(List::stream).toList());
        worst.sort(Comparator.comparingDouble(one -> -one.off()));
        StringBuilder text = new StringBuilder();
        text.append(
                ValidateLog.text(
                        "The 90th of %s by 14 days lies at %.0f to %.0f %% by a bootstrap of stands and"
                                + " fortnights; by the fit's own bands, which say what cannot be known,"
                                + " it would lie at %.0f %%. The worst three:\n",
                        name,
                        100 * Band.quantile(ninth, 0.025),
                        100 * Band.quantile(ninth, 0.975),
                        100 * ownNinth(worst)));
        for (Ahead one : worst.subList(0, WORST)) {
            text.append(
                    ValidateLog.text(
                            "%s was foretold to drink %.2f of what it drank: the form as it is was out by"
                                    + " %.2f in the fortnight before and by %.2f in it.\n",
                            one.from(), one.fitted(), one.before(), 1 / one.raw()));
        }
        return text.append('\n').toString();
    }

    /** What nine in ten errors would lie within were they as large as the bands say: normal. */
    private static double ownNinth(List<Ahead> all) {
        return NINTH_OF_BOTH
                / TENTH_OF_ONE
                * ValidateLog.median(all.stream().mapToDouble(Ahead::halfFrac).toArray());
    }

    /** Normal deviates beyond which a tenth lies, on both sides and on one. */
    private static final double NINTH_OF_BOTH = 1.6449;

    private static final double TENTH_OF_ONE = 1.2816;

    private static List<Ahead> drawn(List<List<Ahead>> stands, SplittableRandom random) {
        List<Ahead> drawn = new ArrayList<>();
        for (int s = 0; s < stands.size(); s++) {
            List<Ahead> stand = stands.get(random.nextInt(stands.size()));
            for (int i = 0; i < stand.size(); i++) {
                drawn.add(stand.get(random.nextInt(stand.size())));
            }
        }
        return drawn;
    }

    private static final int WORST = 3;

    private static void stands(
            StringBuilder page,
            String name,
            List<MeasuredStands.Stand> stands,
            StringBuilder worst,
            Workers workers)
            throws InterruptedException {
        for (int back : new int[] {DAYS, 7, ALL}) {
            List<List<Ahead>> all = new ArrayList<>();
            for (int s = 0; s < stands.size(); s++) {
                all.add(ahead(name + " " + (s + 1), stands.get(s), back, workers));
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
                    back == ALL ? "fitted by all days so far" : "fitted by " + back + " days",
                    flat,
                    Ahead::fitted,
                    ValidateLog.share(inside, flat.size()));
            if (back == DAYS) {
                page.append(better(name, all));
                worst.append(worst(name, all));
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
            less[n] =
                    drawn(all, random).stream()
                            .mapToDouble(one -> Math.abs(one.mean() - 1) - one.off())
                            .average()
                            .orElseThrow();
        }
        Arrays.sort(less);
        return ValidateLog.text(
                "| %s | | mean error by which the fit betters the mean carried on | %.1f points (%.1f to %.1f) | | | |\n",
                name,
                100 * Band.quantile(less, 0.5),
                100 * Band.quantile(less, 0.025),
                100 * Band.quantile(less, 0.975));
    }

    private static List<Ahead> ahead(
            String name, MeasuredStands.Stand stand, int back, Workers workers)
            throws InterruptedException {
        List<Ahead> all = new ArrayList<>();
        for (int at = DAYS; at + DAYS <= stand.dates().size(); at += DAYS) {
            all.add(ahead(name, stand, back == ALL ? 0 : at - back, at, workers));
        }
        return all;
    }

    private static Ahead ahead(
            String name, MeasuredStands.Stand stand, int from, int at, Workers workers)
            throws InterruptedException {
        Scenario rig = narrow(stand.scenario());
        double groundM2 = ((Planting.OfCrop) rig.trays().get(0).planting()).groundM2();
        int first = day(stand, at - 1) + 1;
        int last = day(stand, at + DAYS - 1);
        Map<Integer, Double> litres = new HashMap<>();
        for (int i = from; i < at; i++) {
            litres.put(day(stand, i), groundM2 * stand.measured().get(i));
        }
        Scenario logged = rig.withDays(last + 1).withLog(log(rig.trays().get(0), litres, first));
        Band foretold = Fit.of(logged, MEMBERS, 1, workers).orElseThrow().toDrinkL().corrected();
        double measured = sum(stand.measured().subList(at, at + DAYS));
        // Days that were not measured are foretold along.
        double truth = groundM2 * measured * (last + 1 - first) / DAYS;
        double mean = sum(stand.measured().subList(at - DAYS, at));
        return new Ahead(
                sum(stand.predicted().subList(at, at + DAYS)) / measured,
                foretold.middle() / truth,
                mean / measured,
                name + " from " + stand.dates().get(at),
                mean / sum(stand.predicted().subList(at - DAYS, at)),
                foretold.low() <= truth && truth <= foretold.high(),
                0.5 * (foretold.high() - foretold.low()) / foretold.middle());
    }

    /** The same in a vessel in which a mark is worth fewer litres. */
    private static Scenario narrow(Scenario scenario) {
        Tray tray = scenario.trays().get(0);
        double depthM = tray.shape().depthM();
        Shape shape = Shape.boxOf(0.3 * depthM, depthM);
        return scenario.withTrays(List.of(tray.withShape(shape)));
    }

    private static Log log(Tray tray, Map<Integer, Double> litres, int days) {
        List<LogEntry> entries = new ArrayList<>();
        for (int day = 1; day <= days; day++) {
            double atS = day * Time.DAY_S;
            Double poured = litres.get(day - 1);
            if (poured != null) {
                entries.add(
                        new LogEntry.Reading(
                                atS,
                                tray.id(),
                                LogEntry.Quantity.POURED,
                                poured / L_PER_M3,
                                true,
                                day));
            }
            entries.add(
                    day % 7 == 0
                            ? new LogEntry.Renewed(atS, tray.id(), false)
                            : new LogEntry.FilledUp(atS, tray.id()));
        }
        return new Log(entries);
    }

    private static int day(MeasuredStands.Stand stand, int i) {
        return (int) (stand.dates().get(i).toEpochDay() - stand.scenario().start().toEpochDay());
    }

    private static double sum(List<Double> some) {
        return some.stream().mapToDouble(v -> v).sum();
    }
}
