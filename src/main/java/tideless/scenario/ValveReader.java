package tideless.scenario;

import java.time.LocalDate;
import java.util.Locale;
import tideless.physics.FloatLever;
import tideless.rig.ValveFaults;

/** Reads what ails a valve, and whether its float can shut it. */
final class ValveReader {
    /** Of the solution, kg/m3: water at 20 degC; Kell (1975). */
    private static final double WATER_KG_PER_M3 = 998.2;

    private final Table valve;
    private final LocalDate start;
    private final int days;

    /**
     * @param start first day of the run, or null when faulty
     */
    ValveReader(Table valve, LocalDate start, int days) {
        this.valve = valve;
        this.start = start;
        this.days = days;
    }

    /** Null when faulty. */
    ValveFaults faults() {
        String stuck = valve.choice("stuck");
        double seepM3PerS = valve.quantity("seep");
        double clogging = valve.quantity("clogging");
        LocalDate first = start == null ? ValveFaults.NO_DAY : start;
        LocalDate stuckFrom = day("stuck_from", first, "the start");
        LocalDate stuckTo = day("stuck_to", first.plusDays(Math.max(1, days)), "the end");
        LocalDate seepFrom = day("seep_from", first, "the start");
        LocalDate cloggingFrom = day("clogging_from", first, "the start");
        if (stuck == null
                || stuckFrom == null
                || stuckTo == null
                || seepFrom == null
                || cloggingFrom == null
                || Double.isNaN(seepM3PerS + clogging)) {
            return null;
        }
        boolean sticks = !stuck.equals("no");
        if (!begins("stuck_from", "stuck", sticks, stuckFrom)
                | !begins("stuck_to", "stuck", false, stuckTo)
                | !begins("seep_from", "seep", seepM3PerS > 0, seepFrom)
                | !begins("clogging_from", "clogging", clogging > 0, cloggingFrom)) {
            return null;
        }
        if (sticks && !stuckFrom.isBefore(stuckTo)) {
            valve.faultyValue(
                    valve.has("stuck_to") ? "stuck_to" : "stuck_from",
                    "stuck_from before stuck_to",
                    "");
            return null;
        }
        if (sticks && !first.isBefore(stuckTo)) {
            valve.faultyValue(
                    "stuck_to", "after the first day of the run (%s)".formatted(first), "");
            return null;
        }
        ValveFaults.Stuck where =
                switch (stuck) {
                    case "no" -> ValveFaults.Stuck.NOT;
                    case "open" -> ValveFaults.Stuck.OPEN;
                    case "shut" -> ValveFaults.Stuck.SHUT;
                    default -> throw new AssertionError("no fault for " + stuck);
                };
        return new ValveFaults(
                where, stuckFrom, stuckTo, seepM3PerS, seepFrom, clogging, cloggingFrom);
    }

    /** Whether a date has a fault it belongs to, and that fault begins within the run. */
    private boolean begins(String key, String of, boolean counts, LocalDate from) {
        if (valve.has(key) && !valve.has(of)) {
            valve.faultyValue(key, "only beside " + of, "");
            return false;
        }
        if (counts && valve.has(key) && start != null && days > 0) {
            LocalDate last = start.plusDays(days - 1L);
            if (from.isAfter(last)) {
                valve.faultyValue(key, "up to the last day of the run (%s)".formatted(last), "");
                return false;
            }
        }
        return true;
    }

    private LocalDate day(String key, LocalDate usual, String words) {
        if (valve.has(key)) {
            return valve.date(key);
        }
        valve.holds(key, words);
        return usual;
    }

    /**
     * Whether the float can shut the seat against the full reservoir; says so when not.
     *
     * @param headM from the full reservoir's surface to the seat, m; NaN when not known
     * @param seatM bore of the seat, m
     */
    boolean shuts(double headM, double seatM) {
        if (!valve.has("float_volume")) {
            for (String key : new String[] {"float_mass", "float_lever", "float_seal"}) {
                if (valve.has(key)) {
                    valve.faultyValue(key, "only beside float_volume", "");
                    return false;
                }
            }
            return true;
        }
        double volumeM3 = valve.quantity("float_volume");
        double massG = valve.quantity("float_mass");
        double lever = valve.quantity("float_lever");
        double seal = valve.quantity("float_seal");
        if (Double.isNaN(volumeM3 + massG + lever + seal)) {
            return false;
        }
        if (Double.isNaN(headM + seatM)) {
            return true; // that is faulty, which has been said
        }
        double mostM = greatestM(volumeM3, massG, lever, seal, seatM);
        double halfM = greatestM(0.5 * volumeM3, massG, lever, seal, seatM);
        if (headM > mostM) {
            valve.fault(
                    "float_volume",
                    "a float that shuts against %s of head, wholly under water"
                            .formatted(metres(mostM)),
                    "at least the %s from the full reservoir to the seat".formatted(metres(headM)),
                    "Maybe a larger float, a longer lever, a narrower seat, or a lower reservoir.");
            return false;
        }
        if (headM > halfM) {
            valve.note(
                    "float_volume",
                    ("half under water the float shuts against %s of head, wholly under water"
                                    + " against %s; the full reservoir stands %s above the seat")
                            .formatted(metres(halfM), metres(mostM), metres(headM)));
        }
        return true;
    }

    private static double greatestM(
            double volumeM3, double massG, double lever, double seal, double seatM) {
        return FloatLever.greatestHeadM(
                volumeM3, massG / 1000, lever, seatM, seal, WATER_KG_PER_M3);
    }

    private static String metres(double headM) {
        return String.format(Locale.ROOT, "%.2f m", headM);
    }
}
