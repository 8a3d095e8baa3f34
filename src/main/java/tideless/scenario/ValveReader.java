package tideless.scenario;

import static tideless.scenario.ValveKeys.CLOGGING;
import static tideless.scenario.ValveKeys.CLOGGING_FROM;
import static tideless.scenario.ValveKeys.FLOAT_LEVER;
import static tideless.scenario.ValveKeys.FLOAT_MASS;
import static tideless.scenario.ValveKeys.FLOAT_SEAL;
import static tideless.scenario.ValveKeys.FLOAT_VOLUME;
import static tideless.scenario.ValveKeys.SEAT;
import static tideless.scenario.ValveKeys.SEEP;
import static tideless.scenario.ValveKeys.SEEP_FROM;
import static tideless.scenario.ValveKeys.STUCK;
import static tideless.scenario.ValveKeys.STUCK_FROM;
import static tideless.scenario.ValveKeys.STUCK_TO;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import tideless.physics.FloatLever;
import tideless.physics.LiquidWater;
import tideless.rig.ValveFaults;

/** Reads what ails a valve, and whether its float can shut it. */
final class ValveReader {
    private final Table valve;
    private final Run run;

    ValveReader(Table valve, Run run) {
        this.valve = valve;
        this.run = run;
    }

    Read<ValveFaults> faults() {
        LocalDate first = run.start().orElse(ValveFaults.NO_DAY);
        LocalDate end = run.end().orElse(first.plusDays(1));
        Read<ValveFaults.Stuck> stuck = valve.get(STUCK);
        Read<Double> seep = valve.get(SEEP);
        Read<Double> clogging = valve.get(CLOGGING);
        Read<LocalDate> stuckFrom = valve.getOr(STUCK_FROM, Read.of(first), d -> "the start");
        Read<LocalDate> stuckTo = valve.getOr(STUCK_TO, Read.of(end), d -> "the end");
        Read<LocalDate> seepFrom = valve.getOr(SEEP_FROM, Read.of(first), d -> "the start");
        Read<LocalDate> cloggingFrom = valve.getOr(CLOGGING_FROM, Read.of(first), d -> "the start");
        if (!Read.allSound(stuck, seep, clogging, stuckFrom, stuckTo, seepFrom, cloggingFrom)) {
            return Read.faulty();
        }
        boolean sticks = stuck.value() != ValveFaults.Stuck.NOT;
        if (!begins(STUCK_FROM, STUCK, sticks)
                | !begins(STUCK_TO, STUCK, false)
                | !begins(SEEP_FROM, SEEP, seep.value() > 0)
                | !begins(CLOGGING_FROM, CLOGGING, clogging.value() > 0)) {
            return Read.faulty();
        }
        if (sticks && !stuckFrom.value().isBefore(stuckTo.value())) {
            valve.faultyValue(
                    valve.has(STUCK_TO) ? STUCK_TO : STUCK_FROM, "stuck_from before stuck_to", "");
            return Read.faulty();
        }
        if (sticks && !first.isBefore(stuckTo.value())) {
            valve.faultyValue(STUCK_TO, "after the first day of the run (%s)".formatted(first), "");
            return Read.faulty();
        }
        return Read.of(
                new ValveFaults(
                        stuck.value(),
                        stuckFrom.value(),
                        stuckTo.value(),
                        seep.value(),
                        seepFrom.value(),
                        clogging.value(),
                        cloggingFrom.value()));
    }

    /** Whether a date has a fault it belongs to, and that fault begins within the run. */
    private boolean begins(Key<LocalDate> key, Key<?> of, boolean counts) {
        if (valve.has(key) && !valve.has(of)) {
            valve.faultyValue(key, "only beside " + of.name(), "");
            return false;
        }
        Read<LocalDate> last = run.last();
        if (counts && valve.has(key) && last.holds(day -> valve.value(key).isAfter(day))) {
            valve.faultyValue(
                    key, "up to the last day of the run (%s)".formatted(last.value()), "");
            return false;
        }
        return true;
    }

    /**
     * Whether the float can shut the seat against the full reservoir; says so when not.
     *
     * @param head from the full reservoir's surface to the seat, m
     */
    boolean shuts(Read<Double> head) {
        if (!valve.has(FLOAT_VOLUME)) {
            for (Key<?> key : List.of(FLOAT_MASS, FLOAT_LEVER, FLOAT_SEAL)) {
                if (valve.has(key)) {
                    valve.faultyValue(key, "only beside float_volume", "");
                    return false;
                }
            }
            return true;
        }
        if (!Read.allSound(
                valve.get(FLOAT_VOLUME),
                valve.get(FLOAT_MASS),
                valve.get(FLOAT_LEVER),
                valve.get(FLOAT_SEAL))) {
            return false;
        }
        if (!Read.allSound(head, valve.get(SEAT))) {
            return true; // that is faulty, which has been said
        }
        return shuts(head.value());
    }

    private boolean shuts(double headM) {
        double mostM = greatestHeadM(1);
        double halfM = greatestHeadM(0.5);
        if (headM > mostM) {
            valve.fault(
                    FLOAT_VOLUME,
                    "a float that shuts against %s of head, wholly under water"
                            .formatted(metres(mostM)),
                    "at least the %s from the full reservoir to the seat".formatted(metres(headM)),
                    "Maybe a larger float, a longer lever, a narrower seat, or a lower reservoir.");
            return false;
        }
        if (headM > halfM) {
            valve.note(
                    FLOAT_VOLUME,
                    ("half under water the float shuts against %s of head, wholly under water"
                                    + " against %s; the full reservoir stands %s above the seat")
                            .formatted(metres(halfM), metres(mostM), metres(headM)));
        }
        return true;
    }

    private double greatestHeadM(double shareUnderWater) {
        return FloatLever.greatestHeadM(
                shareUnderWater * valve.value(FLOAT_VOLUME),
                valve.value(FLOAT_MASS) / 1000,
                valve.value(FLOAT_LEVER),
                valve.value(SEAT),
                valve.value(FLOAT_SEAL),
                LiquidWater.KG_PER_M3);
    }

    private static String metres(double headM) {
        return String.format(Locale.ROOT, "%.2f m", headM);
    }
}
