package tideless.advice;

import static java.time.temporal.ChronoUnit.DAYS;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import tideless.rig.Reservoir;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Refills of one reservoir, and what is wrong with it. */
final class ReservoirAdvice {
    /** For so long before its refill a reservoir may be empty: its trays hold water; assumed. */
    private static final double DRY_BORNE_H = 6;

    /** What is poured in for the last weeks has so much to spare, as a share; assumed. */
    private static final double RESERVE_FRAC = 1.0 / 3;

    /** Where less than this share of a filling would do, its litres are told; assumed. */
    private static final double WORTH_LESS_FRAC = 0.8;

    /** What holds so many times what an absence takes is not filled up for it; assumed. */
    private static final double PLENTY_TIMES = 1.5;

    /** Rounding of a visit's hour, h. */
    private static final double SAME_VISIT_H = 1e-6;

    private final Trace trace;
    private final ReservoirTrace of;
    private final Reservoir reservoir;
    private final VesselId id;
    private final Sizing sizing;
    private final VisitTimes rounds;
    private final Findings out;

    ReservoirAdvice(
            Trace trace, ReservoirTrace of, Sizing sizing, VisitTimes rounds, Findings out) {
        this.trace = trace;
        this.of = of;
        this.sizing = sizing;
        this.rounds = rounds;
        this.out = out;
        reservoir = of.reservoir();
        id = reservoir.id();
    }

    void add() {
        SolutionAdvice.addPrecipitates(
                trace,
                TrayCase.eventsOf(trace, id),
                event -> feedsSomethingAt(event.atS() / 3600),
                out);
        int timesDry = 0;
        double firstDryS = 0;
        double lastDryS = 0;
        for (Event event : TrayCase.eventsOf(trace, id)) {
            if (event.kind() == Event.Kind.REFILL) {
                addRefill(event);
            } else if (event.kind() == Event.Kind.OUTLET_UNCOVERED
                    && feedsSomethingAt(event.atS() / 3600)
                    && refilledS(event.atS()) - event.atS() >= DRY_BORNE_H * 3600) {
                firstDryS = timesDry == 0 ? event.atS() : firstDryS;
                lastDryS = event.atS();
                timesDry++;
            }
        }
        addUnheededFills(); // after a refill of the same visit, which is done first
        if (timesDry > 0 && reservoir.refill().when() != Reservoir.Refill.When.WHEN_EMPTY) {
            addDry(timesDry, firstDryS, lastDryS);
        }
        addOutgrown();
    }

    /** When it is filled again after a moment, s; the end of the run where nobody does. */
    private double refilledS(double fromS) {
        return TrayCase.eventsOf(trace, id).stream()
                .filter(e -> e.kind() == Event.Kind.REFILL && e.atS() >= fromS)
                .mapToDouble(Event::atS)
                .findFirst()
                .orElse(trace.hours() * 3600.0);
    }

    /** Filling up before an absence, where the run did not. */
    private void addUnheededFills() {
        if (reservoir.refill().when() == Reservoir.Refill.When.WHEN_EMPTY) {
            return;
        }
        for (double[] away : rounds.away()) {
            double visit = rounds.lastBefore(away[0]);
            if (visit <= 0 || away[0] >= rounds.endHours() || !feedsSomethingAt(away[0])) {
                continue;
            }
            int after = Math.min(trace.hours() - 1, (int) visit);
            double missing = reservoir.fullM3() - of.volumeM3().at(after);
            double left = Math.max(0, feedingM3() - missing);
            int back = Math.min(trace.hours(), (int) Math.ceil(rounds.nextFrom(away[1])));
            boolean isPlenty = left > PLENTY_TIMES * drawnM3(after, back);
            if (!reservoir.isAsGoodAsFull(of.volumeM3().at(after)) && !isPlenty) {
                out.tasks.add(
                        new Task(
                                Task.Kind.REFILL,
                                id,
                                trace.clockAt(visit * 3600),
                                missing * 1000,
                                0,
                                Measure.of(left * 1000, Unit.LITRES),
                                new Cause(
                                        isRefilledAt(visit)
                                                ? Cause.Kind.TRAY_TOOK_IT
                                                : Cause.Kind.BEFORE_ABSENCE,
                                        Facts.NONE.on(returnFrom(away))),
                                List.of(),
                                List.of(),
                                false));
            }
        }
    }

    private boolean isRefilledAt(double visitHour) {
        return TrayCase.eventsOf(trace, id).stream()
                .filter(e -> e.kind() == Event.Kind.REFILL)
                .anyMatch(e -> Math.abs(e.atS() / 3600 - visitHour) < SAME_VISIT_H);
    }

    private boolean feedsSomethingAt(double hour) {
        return trace.trays().stream()
                .filter(t -> t.tray().isFedBy(reservoir.name()))
                .flatMap(t -> trace.plantings(t).stream())
                .anyMatch(p -> TrayCase.drinks(p.tray().planting()) && p.lastHour() > hour);
    }

    /** The absence a visit comes last before, in hours; or null. */
    private double[] absenceAfter(double visitHour) {
        for (double[] away : rounds.away()) {
            if (Math.abs(rounds.lastBefore(away[0]) - visitHour) < 1e-6 && away[0] > visitHour) {
                return away;
            }
        }
        return null;
    }

    /** The first visit after an absence, or the end of the run. */
    private LocalDateTime returnFrom(double[] away) {
        double next = rounds.nextFrom(away[1]);
        return trace.clockAt(3600 * (next > away[1] ? next : rounds.endHours()) - 60);
    }

    /** What a full one gives before a tray gets nothing more: usable litres count from there. */
    private double feedingM3() {
        return trace.scenario().feedingM3(reservoir);
    }

    /** The water poured in, and the litres that feed where a seat stands above the outlet. */
    private Facts countedFrom(Event event) {
        Facts water = Facts.waterIn(event);
        return feedingM3() < reservoir.usableM3()
                ? water.and(Quantity.USABLE, feedingM3() * 1000)
                : water;
    }

    private void addRefill(Event event) {
        double leftM3 = Math.max(0, feedingM3() - event.volumeM3());
        double lackM3 = lackM3(event, leftM3);
        Reservoir.Refill rule = reservoir.refill();
        double[] away = absenceAfter(event.atS() / 3600);
        boolean low = rule.when() == Reservoir.Refill.When.LOW_AT_VISIT;
        out.tasks.add(
                new Task(
                        Task.Kind.REFILL,
                        id,
                        trace.clockAt(event.atS()),
                        event.volumeM3() * 1000,
                        0,
                        low && away == null
                                ? Measure.atLeast(
                                        leftM3 * 1000,
                                        rule.belowFrac() * feedingM3() * 1000,
                                        Unit.LITRES)
                                : Measure.of(leftM3 * 1000, Unit.LITRES),
                        away != null
                                ? new Cause(
                                        Cause.Kind.BEFORE_ABSENCE,
                                        countedFrom(event).on(returnFrom(away)))
                                : new Cause(
                                        leftM3 <= 0
                                                ? Cause.Kind.RUN_DOWN_TO_OUTLET
                                                : Cause.Kind.RUNNING_LOW,
                                        lackM3 < WORTH_LESS_FRAC * event.volumeM3()
                                                ? countedFrom(event)
                                                        .and(
                                                                Quantity.ENOUGH,
                                                                Math.max(0, lackM3) * 1000)
                                                        .on(lastHarvest())
                                                : countedFrom(event)),
                        List.of(),
                        List.of(),
                        true));
    }

    /**
     * What has to be poured in, beside what is left, to reach the last harvest with a reserve, m3;
     * infinite where something is not cut by the end of the run.
     */
    private double lackM3(Event refill, double leftM3) {
        int end = lastHarvestHour();
        if (end < 0) {
            return Double.POSITIVE_INFINITY;
        }
        int from = Math.min((int) (refill.atS() / 3600), trace.hours());
        int to = Math.max(from, end);
        return (1 + RESERVE_FRAC) * drawnM3(from, to) - leftM3;
    }

    private double drawnM3(int fromHour, int toHour) {
        return of.outflowM3().sum(fromHour, toHour) + of.evaporationM3().sum(fromHour, toHour);
    }

    /** The hour of the last harvest of all it feeds; -1 where something stands to the end. */
    private int lastHarvestHour() {
        int last = -1;
        for (TrayTrace tray : trace.trays()) {
            if (tray.tray().isFedBy(reservoir.name())) {
                for (PlantingTrace planting : trace.plantings(tray)) {
                    boolean cut =
                            planting.events().stream()
                                    .anyMatch(e -> e.kind() == Event.Kind.HARVEST);
                    if (!cut && TrayCase.drinks(planting.tray().planting())) {
                        return -1;
                    }
                    last = cut ? Math.max(last, planting.lastHour() + 1) : last;
                }
            }
        }
        return last;
    }

    private LocalDateTime lastHarvest() {
        return trace.clockAt(lastHarvestHour() * 3600.0);
    }

    private void addDry(int times, double firstS, double lastS) {
        if (reservoir.refill().when() == Reservoir.Refill.When.NEVER) {
            double visit = rounds.lastBefore(firstS / 3600) * 3600;
            double fillS = visit > 0 ? visit : firstS;
            double missingM3 = reservoir.fullM3() - of.volumeM3().at(trace.sampleAt(fillS));
            double leftM3 = Math.max(0, feedingM3() - missingM3);
            out.tasks.add(
                    new Task(
                            Task.Kind.REFILL,
                            id,
                            trace.clockAt(fillS),
                            missingM3 * 1000,
                            0,
                            Measure.atLeast(leftM3 * 1000, 0, Unit.LITRES),
                            Cause.of(Cause.Kind.NO_REFILL_PLANNED),
                            List.of(Cure.of(Cure.Kind.PLAN_REFILLS)),
                            List.of(),
                            false));
        }
        out.warnings.add(
                new Warning(
                        Warning.Kind.RAN_DRY,
                        id,
                        trace.clockAt(firstS),
                        trace.clockAt(lastS),
                        Measure.atMost(times, 0, Unit.TIMES),
                        new Cause(
                                Cause.Kind.EMPTY_BEFORE_THE_VISIT,
                                rounds.leftBefore(firstS / 3600, trace)),
                        runsOverFromS() < firstS
                                ? List.of(Cure.of(Cure.Kind.MEND_VALVE))
                                : dryCures(rounds.lastBefore(firstS / 3600))));
    }

    /**
     * A full reservoir may have lasted: then the cure is a refill in time. What went dry though it
     * was left full is too small, or too seldom looked at.
     */
    private List<Cure> dryCures(double lastVisitHour) {
        List<Cure> cures = new ArrayList<>();
        boolean wasFull = isFullAfter(lastVisitHour);
        if (reservoir.refill().when() == Reservoir.Refill.When.NEVER) {
            cures.add(Cure.of(Cure.Kind.PLAN_REFILLS));
        } else if (wasFull) {
            cures.add(Cure.of(Cure.Kind.VISIT_MORE_OFTEN));
        } else if (lastVisitHour > 0) {
            Facts before =
                    Facts.NONE.named(reservoir.name()).on(trace.clockAt(lastVisitHour * 3600));
            cures.add(
                    new Cure(
                            Cure.Kind.FILL_AT_THE_VISIT_BEFORE,
                            reservoir.refill().when() == Reservoir.Refill.When.LOW_AT_VISIT
                                    ? before.and(
                                            Quantity.REFILL_BELOW, reservoir.refill().belowFrac())
                                    : before));
        } else {
            cures.add(Cure.of(Cure.Kind.START_FULL));
        }
        if (sizing.isShort()) {
            cures.add(wasFull ? 0 : cures.size(), larger());
        }
        return cures;
    }

    /** Whether it was left full at a visit, or at the start where there was none. */
    private boolean isFullAfter(double visitHour) {
        int after = Math.min(trace.hours() - 1, (int) visitHour);
        return reservoir.isAsGoodAsFull(
                visitHour > 0
                        ? of.volumeM3().at(after)
                        : reservoir.shape().volumeM3(reservoir.startLevelM()));
    }

    private Cure larger() {
        return new Cure(Cure.Kind.LARGER_RESERVOIR, sizing.larger());
    }

    private void addOutgrown() {
        if (sizing.outgrownFrom() == null) {
            return;
        }
        int day = (int) DAYS.between(trace.scenario().start(), sizing.outgrownFrom());
        out.warnings.add(
                new Warning(
                        Warning.Kind.OUTGROWN,
                        id,
                        sizing.outgrownFrom().atStartOfDay(),
                        trace.clockAt(trace.hours() * 3600.0),
                        Measure.atLeast(
                                sizing.daysWhenFull().get(day), sizing.longestGapDays(), Unit.DAYS),
                        Cause.of(Cause.Kind.DRAWN_FASTER_THAN_VISITS),
                        List.of(larger(), Cure.of(Cure.Kind.VISIT_MORE_OFTEN))));
    }

    /** When a tray below this reservoir began to run over, s; infinite when none does. */
    private double runsOverFromS() {
        return trace.trays().stream()
                .filter(t -> t.tray().isFedBy(reservoir.name()))
                .flatMap(t -> TrayCase.eventsOf(trace, t.tray().id()).stream())
                .filter(event -> event.kind() == Event.Kind.OVERFLOW_BEGAN)
                .mapToDouble(Event::atS)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
