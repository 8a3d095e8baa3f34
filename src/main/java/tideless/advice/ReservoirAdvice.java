package tideless.advice;

import static java.time.temporal.ChronoUnit.DAYS;

import java.util.List;
import tideless.rig.Reservoir;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;

/** Refills of one reservoir, and what is wrong with it. */
final class ReservoirAdvice {
    private ReservoirAdvice() {}

    static void add(
            Trace trace,
            ReservoirTrace of,
            Sizing sizing,
            Rounds rounds,
            List<Task> tasks,
            List<Warning> warnings) {
        Reservoir reservoir = of.reservoir();
        String name = reservoir.name();
        SaltAdvice.addPrecipitates(trace, reservoir.id(), warnings);
        boolean never = reservoir.refill().when() == Reservoir.Refill.When.NEVER;
        int timesDry = 0;
        double firstDryS = 0;
        for (Event event : trace.events()) {
            if (!event.vessel().equals(reservoir.id())) {
                continue;
            }
            if (event.kind() == Event.Kind.REFILL) {
                tasks.add(refill(trace, reservoir, event));
            } else if (event.kind() == Event.Kind.OUTLET_UNCOVERED) {
                if (timesDry == 0) {
                    firstDryS = event.atS();
                }
                timesDry++;
            }
        }
        boolean pouredAtOnce = reservoir.refill().when() == Reservoir.Refill.When.WHEN_EMPTY;
        if (timesDry > 0 && !pouredAtOnce) {
            if (never) {
                tasks.add(
                        new Task(
                                Task.Kind.REFILL,
                                trace.clockAt(firstDryS),
                                name,
                                true,
                                reservoir.usableM3() * 1000,
                                0,
                                "0 L above the outlet",
                                "empty",
                                "the last usable litre is gone and no refill is planned",
                                "plan refills, or a larger reservoir"));
            }
            warnings.add(
                    new Warning(
                            Warning.Kind.RAN_DRY,
                            trace.clockAt(firstDryS),
                            name,
                            true,
                            timesDry + (timesDry == 1 ? " time" : " times"),
                            "never",
                            "the reservoir was empty down to its outlet before anybody came",
                            runsOverFromS(trace, name) < firstDryS
                                    ? "mend the valve that lets it run over (see overflow): a larger"
                                            + " reservoir would only spill more"
                                    : dryCure(trace, sizing, rounds.lastBefore(firstDryS / 3600))));
        }
        if (sizing.outgrownFrom() != null) {
            int day = (int) DAYS.between(trace.scenario().start(), sizing.outgrownFrom());
            // What runs over a rim is no thirst that a larger reservoir could meet.
            if (runsOverFromS(trace, name) > (day + 1) * 86400.0) {
                warnings.add(outgrown(sizing, day, reservoir));
            }
        }
    }

    private static Warning outgrown(Sizing sizing, int day, Reservoir reservoir) {
        return new Warning(
                Warning.Kind.OUTGROWN,
                sizing.outgrownFrom().atStartOfDay(),
                reservoir.name(),
                true,
                "a full reservoir lasts " + Figures.days(sizing.daysWhenFull().get(day)),
                "longest time between visits " + Figures.days(sizing.longestGapDays()),
                "from here on even a full reservoir does not reach the next visit",
                "visit more often, or hold at least "
                        + Figures.litres(sizing.enoughUsableLitres() / 1000)
                        + " above the outlet (it holds "
                        + Figures.litres(reservoir.usableM3())
                        + ")");
    }

    /** When a tray below a reservoir began to run over, s; infinite when none does. */
    private static double runsOverFromS(Trace trace, String reservoir) {
        return trace.events().stream()
                .filter(event -> event.kind() == Event.Kind.OVERFLOW_BEGAN)
                .filter(event -> isFedBy(reservoir, trace, event.vessel()))
                .mapToDouble(Event::atS)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static boolean isFedBy(String reservoir, Trace trace, VesselId vessel) {
        return trace.scenario().trays().stream()
                .anyMatch(tray -> tray.id().equals(vessel) && tray.isFedBy(reservoir));
    }

    /** A full reservoir may have lasted: then the cure is a refill in time, not a larger vessel. */
    private static String dryCure(Trace trace, Sizing sizing, double lastVisitHour) {
        boolean largeEnough = sizing.enoughUsableLitres() <= sizing.usableLitres();
        String before =
                lastVisitHour > 0
                        ? "refill on "
                                + Figures.date(trace.clockAt(lastVisitHour * 3600))
                                + ", the visit before, though it is not low then"
                        : "start full";
        return largeEnough
                ? before
                : before
                        + "; or hold at least "
                        + Figures.litres(sizing.enoughUsableLitres() / 1000)
                        + " above the outlet";
    }

    private static Task refill(Trace trace, Reservoir reservoir, Event event) {
        double leftM3 = Math.max(0, reservoir.usableM3() - event.volumeM3());
        Reservoir.Refill rule = reservoir.refill();
        String limit =
                switch (rule.when()) {
                    case LOW_AT_VISIT ->
                            "refill below "
                                    + Figures.litres(rule.belowFrac() * reservoir.usableM3());
                    case EVERY_VISIT -> "refill at every visit";
                    case WHEN_EMPTY -> "refill when empty";
                    case NEVER -> "no refill planned";
                };
        return new Task(
                Task.Kind.REFILL,
                trace.clockAt(event.atS()),
                reservoir.name(),
                true,
                event.volumeM3() * 1000,
                0,
                Figures.litres(leftM3) + " left above the outlet",
                limit,
                leftM3 <= 0
                        ? "it has run down to its outlet"
                        : "what is left would not be enough for long",
                "");
    }
}
