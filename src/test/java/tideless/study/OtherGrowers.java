package tideless.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/**
 * Growers who do not exist, of other rigs or with longer logs than the {@link SyntheticGrowers},
 * whose noise they share: how often a sound rig is said to leak or something in its log to be odd,
 * and whether a leak that begins within a log is found. A part of {@link ValidateLog}.
 */
final class OtherGrowers {
    private static final long SEED = 161_803;
    private static final int LONG = 24;
    private static final int LONG_DAYS = 56;
    private static final int SHORT = 40;

    /** Who has a leak that begins, when, and of how much. */
    private static final int BEGIN = 12;

    private static final double BEGINS_DAY = 20;
    private static final double BEGINS_L_PER_DAY = 0.8;

    /**
     * A beginning is hit within the days told and so many more; levels are read every two or three.
     */
    private static final double DAYS_BESIDE = 2;

    private OtherGrowers() {}

    static void write(StringBuilder page, Workers workers) throws InterruptedException {
        page.append(
                """
                ## Other rigs and longer logs

                Without a leak and with the same noise: levels of what no valve holds on three days of a week, EC of all
                trays on one. Of a vessel that is filled by hand no leak is asked, only whether a level fell by more than is drunk.

                | log | growers | said to leak | anything named odd |
                | --- | ---: | ---: | ---: |
                """);
        row(
                page,
                "eight weeks of the logged bench",
                LoggedBench.stated(),
                LONG,
                LONG_DAYS,
                workers);
        row(page, "two weeks of the calm bench", read("calm-bench"), SHORT, 14, workers);
        row(
                page,
                "two weeks of the hand-topped bucket",
                read("hand-topped-bucket"),
                SHORT,
                14,
                workers);
        List<Fit> begun = fits(LoggedBench.stated(), BEGIN, LONG_DAYS, BEGINS_L_PER_DAY, workers);
        List<Fit.Leak> leaks = begun.stream().map(fit -> fit.leaks().get(0)).toList();
        page.append(
                ValidateLog.text(
                        """

                        %d more lose %.1f L a day from day %.0f of their eight weeks on: found %s, told to have begun within the log
                        %s, of these %d with day %.0f in the span of days that is told, or within %.0f days of it.

                        """,
                        BEGIN,
                        BEGINS_L_PER_DAY,
                        BEGINS_DAY,
                        ValidateLog.share(leaks.stream().filter(Fit.Leak::isSaid).count(), BEGIN),
                        ValidateLog.share(leaks.stream().filter(Fit.Leak::hasBegun).count(), BEGIN),
                        leaks.stream()
                                .filter(Fit.Leak::hasBegun)
                                .filter(OtherGrowers::isHit)
                                .count(),
                        BEGINS_DAY,
                        DAYS_BESIDE));
    }

    private static boolean isHit(Fit.Leak leak) {
        return leak.beganS() / Time.DAY_S <= BEGINS_DAY + DAYS_BESIDE
                && leak.beganByS() / Time.DAY_S >= BEGINS_DAY - DAYS_BESIDE;
    }

    private static Scenario read(String name) {
        return ((Reading.Good) ScenarioReader.read(Path.of("scenarios", name + ".toml")))
                .scenario();
    }

    private static void row(
            StringBuilder page,
            String name,
            Scenario stated,
            int growers,
            int days,
            Workers workers)
            throws InterruptedException {
        List<Fit> fits = fits(stated, growers, days, 0, workers);
        long said =
                fits.stream()
                        .filter(fit -> fit.leaks().stream().anyMatch(Fit.Leak::isSaid))
                        .count();
        long odd = fits.stream().filter(fit -> !fit.oddities().isEmpty()).count();
        page.append(
                ValidateLog.text(
                        "| %s | %d | %s | %s |\n",
                        name,
                        growers,
                        stated.reservoirs().isEmpty() ? "" : ValidateLog.share(said, growers),
                        ValidateLog.share(odd, growers)));
    }

    /** What is fitted to their logs. */
    static List<Fit> fits(
            Scenario stated, int growers, int days, double litresPerDay, Workers workers)
            throws InterruptedException {
        Scenario coarse = Ensemble.atEnsembleStep(stated);
        double[][] hidden = Unknowns.of(coarse).quantiles(growers, SEED);
        return workers.each(
                growers,
                i -> {
                    try {
                        Log log = log(coarse, hidden[i], days, litresPerDay, SEED + i);
                        return Fit.of(stated.withLog(log), 1, 1, new InTurn()).orElseThrow();
                    } catch (InterruptedException e) {
                        throw new IllegalStateException(e);
                    }
                });
    }

    private static Log log(
            Scenario coarse, double[] quantile, int days, double litresPerDay, long noise) {
        SplittableRandom random = new SplittableRandom(noise);
        Member member = Unknowns.of(coarse).member(quantile);
        double litres =
                Math.exp(FitSpace.LITRES_SD * DemandDoubt.deviate(DemandDoubt.unit(random)));
        Scenario hidden = member.scenario();
        if (!hidden.reservoirs().isEmpty()) {
            String name = hidden.reservoirs().get(0).name();
            hidden =
                    new Correction(
                                    Map.of(),
                                    1,
                                    1,
                                    1,
                                    Map.of(),
                                    Map.of(name, litres),
                                    Map.of(),
                                    Map.of())
                            .applied(hidden);
        }
        Log tight = new InventedLog(hidden, member.departures(), days, random).log(plan(hidden));
        return litresPerDay > 0 ? leaking(tight, hidden, BEGINS_DAY, litresPerDay) : tight;
    }

    /** Levels of what no valve holds on three days of a week, EC of the trays on one. */
    private static InventedLog.Plan plan(Scenario rig) {
        InventedLog.Plan usual = InventedLog.usual(rig);
        return new InventedLog.Plan() {
            @Override
            public List<LogEntry.Reading> readings(int day, double atS) {
                List<LogEntry.Reading> all = new ArrayList<>(usual.readings(day, atS));
                for (Tray tray : rig.trays()) {
                    if (day % 7 % 2 == 0
                            && day % 7 > 0
                            && !(tray.filling() instanceof Filling.ByValve)) {
                        all.add(0, InventedLog.wanted(atS, tray.id(), LogEntry.Quantity.LEVEL));
                    }
                }
                return all;
            }

            @Override
            public int late(int refill) {
                return 0;
            }
        };
    }

    /** What would have been read and poured had the first reservoir lost so much from a day on. */
    static Log leaking(Log tight, Scenario rig, double fromDay, double litresPerDay) {
        VesselId where = rig.reservoirs().get(0).id();
        double areaM2 = rig.reservoirs().get(0).shape().areaM2(0.2);
        List<LogEntry> entries = new ArrayList<>();
        double sinceS = fromDay * Time.DAY_S;
        for (LogEntry entry : tight.entries()) {
            double lostM3 = Math.max(0, entry.atS() - sinceS) / Time.DAY_S * litresPerDay / 1000;
            if (entry instanceof LogEntry.Reading r && r.where().equals(where)) {
                double value =
                        r.what() == LogEntry.Quantity.LEVEL
                                ? Math.max(0, r.value() - lostM3 / areaM2)
                                : r.value() + lostM3;
                entries.add(
                        new LogEntry.Reading(r.atS(), r.where(), r.what(), value, true, r.line()));
                continue;
            }
            if (entry instanceof LogEntry.FilledUp) {
                sinceS = Math.max(sinceS, entry.atS());
            }
            entries.add(entry);
        }
        return new Log(entries);
    }
}
