package tideless.sim;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.ValveFaults;

/** What ails a valve at an instant of a run. Immutable. */
final class ValveFault {
    private final ValveFaults faults;
    private final double leakFrac;
    private final double stuckFromS;
    private final double stuckToS;
    private final double seepFromS;
    private final double cloggingFromS;

    /**
     * @param leakFrac opening through which the stated seep passes
     */
    ValveFault(ValveFaults faults, LocalDate start, double leakFrac) {
        this.faults = faults;
        this.leakFrac = leakFrac;
        stuckFromS = seconds(start, faults.stuckFrom());
        stuckToS = seconds(start, faults.stuckTo());
        seepFromS = seconds(start, faults.seepFrom());
        cloggingFromS = seconds(start, faults.cloggingFrom());
    }

    private static double seconds(LocalDate start, LocalDate day) {
        return ChronoUnit.DAYS.between(start, day) * Time.DAY_S;
    }

    boolean isSound() {
        return faults.isNone();
    }

    double stuckFrac(double atS) {
        if (atS < stuckFromS || atS >= stuckToS) {
            return Double.NaN;
        }
        return switch (faults.stuck()) {
            case NOT -> Double.NaN;
            case OPEN -> 1;
            case SHUT -> 0;
        };
    }

    double leakFrac(double atS) {
        return atS < seepFromS ? 0 : leakFrac;
    }

    double clearFrac(double atS) {
        return atS < cloggingFromS
                ? 1
                : FastMath.pow(1 - faults.cloggingFracPerDay(), (atS - cloggingFromS) / Time.DAY_S);
    }
}
