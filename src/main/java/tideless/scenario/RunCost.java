package tideless.scenario;

import java.util.Locale;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;

/**
 * Refuses a run that would keep a grower waiting or fill the memory: what it costs is told before
 * it begins.
 */
final class RunCost {
    /**
     * Steps of a run: each is kept as an instant. 1.2 million of the shipped wall bench never held
     * more than 415 MB after a young collection and 218 after a full one, on 26 November 2026: up
     * to 350 bytes each, 0.7 GB at this bound.
     */
    static final double MOST_STEPS = 2e6;

    /** Steps of all vessels together: about a minute and a half on one core; measured. */
    static final double MOST_VESSEL_STEPS = 4e7;

    /**
     * Steps of one vessel that one core does in a second, the twin's run included; measured on 26
     * November 2026: the shipped wall bench (three trays and a reservoir over 70 days) took 6.1,
     * 9.8 and 15.8 s of processor time at steps of 60, 20 and 5 s, warming up included, on a
     * virtual machine with Java 17 that was busy with other work. So 4.5e5 from the first to the
     * last and 6.1e5 from the second; good within a factor of two.
     */
    private static final double PER_SECOND = 5e5;

    /** Lengths of a step that a grower would write, s. */
    private static final double[] TIDY_S = {
        1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 10800, 21600
    };

    private final Table root;
    private final int days;
    private final int vessels;

    RunCost(Table root, int days, int vessels) {
        this.root = root;
        this.days = days;
        this.vessels = vessels;
    }

    /** Says so where a step makes the run too long. */
    void check(double stepS) {
        if (fits(stepS)) {
            return;
        }
        double steps = steps(stepS);
        String hint = "Maybe a shorter run, or fewer trays.";
        for (double tidy : TIDY_S) {
            if (fits(tidy)) {
                hint = "Maybe step = \"%s\".".formatted(words(tidy));
                break;
            }
        }
        Table run = root.child("run");
        run.fault(
                RunKeys.STEP,
                "%s over %s days and %s vessels: %s million steps, about %s min of work"
                        .formatted(
                                run.has(RunKeys.STEP)
                                        ? Key.quoted(run.words(RunKeys.STEP))
                                        : RunKeys.STEP.fallback() + ", the default,",
                                days,
                                vessels,
                                millions(steps * vessels),
                                Math.max(1, FastMath.round(steps * vessels / PER_SECOND / 60))),
                "up to %s million steps in time, and %s million for all vessels together"
                        .formatted(millions(MOST_STEPS), millions(MOST_VESSEL_STEPS)),
                hint);
    }

    private boolean fits(double stepS) {
        return steps(stepS) <= MOST_STEPS && steps(stepS) * vessels <= MOST_VESSEL_STEPS;
    }

    private double steps(double stepS) {
        return days * Time.DAY_S / stepS;
    }

    private static String millions(double steps) {
        return String.format(Locale.ROOT, "%.0f", steps / 1e6);
    }

    private static String words(double stepS) {
        if (stepS < 60) {
            return Measure.plain(stepS) + " s";
        }
        return stepS < Time.HOUR_S
                ? Measure.plain(stepS / 60) + " min"
                : Measure.plain(stepS / Time.HOUR_S) + " h";
    }
}
