package tideless.study;

import java.util.List;
import tideless.advice.Advice;
import tideless.advice.Cure;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestShape;
import tideless.rig.Visits;

/** A scenario changed by what its first run advised, as far as a scenario can say it. */
public final class Obeyed {
    /** A vessel is bought a little larger than asked for. */
    private static final double LARGER = 1.15;

    private Obeyed() {}

    /** Refills in time, a reservoir large enough, flushes where they were told. */
    public static Scenario of(Scenario scenario, Advice advice) {
        Scenario obeyed = scenario;
        if (asks(advice, Cure.Kind.FILL_AT_THE_VISIT_BEFORE) || undone(advice, Task.Kind.REFILL)) {
            Reservoir.Refill inTime =
                    new Reservoir.Refill(
                            Reservoir.Refill.When.BEFORE_NEXT_VISIT, 0.5, Pouring.FEED);
            obeyed =
                    obeyed.withReservoirs(
                            obeyed.reservoirs().stream().map(r -> r.withRefill(inTime)).toList());
        }
        if (asks(advice, Cure.Kind.LARGER_RESERVOIR)) {
            obeyed =
                    obeyed.withReservoirs(
                            obeyed.reservoirs().stream().map(r -> larger(r, advice)).toList());
        }
        if (undone(advice, Task.Kind.FLUSH) || undone(advice, Task.Kind.FRESH_SOLUTION)) {
            obeyed = obeyed.withVisits(obeyed.visits().withFlush(Visits.Flush.AT_LIMIT));
        }
        return obeyed;
    }

    private static Reservoir larger(Reservoir r, Advice advice) {
        for (Sizing sizing : advice.sizings()) {
            if (sizing.reservoir().equals(r.name())
                    && sizing.enoughUsableLitres() > sizing.usableLitres()) {
                double areaM2 =
                        LARGER
                                * sizing.enoughUsableLitres()
                                / 1000
                                / (r.fullLevelM() - r.outletLevelM());
                double side = Math.sqrt(areaM2);
                return new Reservoir(
                        r.name(),
                        TestShape.box(side, side, r.shape().depthM()),
                        r.fullLevelM(),
                        r.outletLevelM(),
                        r.floorAboveBenchM(),
                        r.openAreaM2(),
                        r.startLevelM(),
                        r.refill(),
                        r.trunk());
            }
        }
        return r;
    }

    private static boolean undone(Advice advice, Task.Kind kind) {
        return advice.tasks().stream().anyMatch(t -> t.kind() == kind && !t.isDone());
    }

    private static boolean asks(Advice advice, Cure.Kind kind) {
        return advice.warnings().stream()
                .map(Warning::cures)
                .flatMap(List::stream)
                .anyMatch(c -> c.kind() == kind);
    }

    /** Whether it still asks for another rig, another refill or another flush. */
    public static boolean asksMore(Advice advice) {
        return asks(advice, Cure.Kind.LARGER_RESERVOIR)
                || asks(advice, Cure.Kind.FILL_AT_THE_VISIT_BEFORE)
                || advice.tasks().stream().anyMatch(t -> !t.isDone());
    }
}
