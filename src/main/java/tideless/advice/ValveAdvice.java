package tideless.advice;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.sim.Event;

/** The float valve of one tray: starved, or running over. */
final class ValveAdvice {
    /** A valve tray this far below its band is starved, m; assumed. */
    private static final double STARVED_M = 0.003;

    /** A reservoir with more than this above its outlet is not empty, m3: a millilitre. */
    private static final double USABLE_M3 = 1e-6;

    private final TrayCase tray;
    private final Findings out;

    ValveAdvice(TrayCase tray, Findings out) {
        this.tray = tray;
        this.out = out;
    }

    void add() {
        addOverflow();
        addStarved();
        addMoves();
    }

    /** The moves that the scenario states. */
    private void addMoves() {
        if (!(tray.tray.filling() instanceof Filling.ByValve valve)) {
            return;
        }
        for (Event event : tray.events()) {
            if (event.kind() == Event.Kind.VALVE_MOVED) {
                LocalDate day = tray.trace.clockAt(event.atS()).toLocalDate();
                double beforeM = valve.settingM(day.minusDays(1));
                out.tasks.add(
                        new Task(
                                Task.Kind.MOVE_VALVE,
                                tray.id,
                                tray.trace.clockAt(event.atS()),
                                0,
                                0,
                                Measure.of(valve.settingM(day) * 1000, Unit.MILLIMETRES),
                                new Cause(
                                        Cause.Kind.AS_PLANNED,
                                        Facts.of(Quantity.SETTING, beforeM * 1000)),
                                List.of(),
                                List.of(),
                                true));
            }
        }
    }

    private void addOverflow() {
        OptionalDouble began = tray.firstS(Event.Kind.OVERFLOW_BEGAN);
        if (began.isEmpty()) {
            return;
        }
        double first = began.getAsDouble();
        double litres = 1000 * tray.of.spillM3().sum(tray.firstHour, tray.planting.endHour());
        out.warnings.add(
                new Warning(
                        Warning.Kind.OVERFLOW,
                        tray.id,
                        tray.trace.clockAt(first),
                        tray.trace.clockAt(first),
                        Measure.atMost(litres, 0, Unit.LITRES),
                        new Cause(
                                Cause.Kind.VALVE_LETS_IN_TOO_MUCH,
                                Facts.of(Quantity.LEVEL, tray.tray.overflowM() * 1000)),
                        List.of(Cure.of(Cure.Kind.MEND_VALVE), Cure.of(Cure.Kind.ISOLATING_TAP))));
    }

    private void addStarved() {
        if (!(tray.tray.filling() instanceof Filling.ByValve valve)) {
            return;
        }
        var level = tray.of.levelM();
        IntToDoubleFunction wideM = h -> valve.settingM(tray.setOn(h)) - valve.bandM();
        IntPredicate isBelow = isBelow(tray, valve);
        int filledBy = tray.firstHour; // a tray that starts low is filling, not starved
        while (filledBy <= tray.lastHour && isBelow.test(filledBy)) {
            filledBy++;
        }
        int from = filledBy;
        int starved = tray.firstSpell(h -> h > from && isStarved(tray, valve).test(h));
        if (starved < 0) {
            return;
        }
        Fault fault = Fault.of(tray, valve, starved);
        out.warnings.add(
                new Warning(
                        Warning.Kind.STARVED_VALVE,
                        tray.id,
                        tray.trace.clockAtSample(starved),
                        tray.lastOf(starved, isBelow),
                        Measure.atLeast(
                                tray.least(starved, level::at) * 1000,
                                wideM.applyAsDouble(starved) * 1000,
                                Unit.MILLIMETRES),
                        Cause.of(fault.cause),
                        List.of(Cure.of(fault.cure))));
    }

    /** Why a valve lets in too little, and what helps. */
    private enum Fault {
        HANGS_SHUT(Cause.Kind.VALVE_HANGS_SHUT, Cure.Kind.FREE_VALVE),
        SILTS_UP(Cause.Kind.VALVE_SILTS_UP, Cure.Kind.CLEAN_SEAT),
        TOO_SLOW(Cause.Kind.VALVE_TOO_SLOW, Cure.Kind.WIDER_FEED_LINE);

        private final Cause.Kind cause;
        private final Cure.Kind cure;

        Fault(Cause.Kind cause, Cure.Kind cure) {
            this.cause = cause;
            this.cure = cure;
        }

        static Fault of(TrayCase tray, Filling.ByValve valve, int hour) {
            LocalDate day = tray.trace.clockAt(hour * Time.HOUR_S).toLocalDate();
            if (valve.faults().isStuckShutOn(day)) {
                return HANGS_SHUT;
            }
            return valve.faults().isCloggedOn(day) ? SILTS_UP : TOO_SLOW;
        }
    }

    private static IntPredicate isBelow(TrayCase tray, Filling.ByValve valve) {
        return h ->
                tray.of.levelM().at(h) < valve.settingM(tray.setOn(h)) - valve.bandM() - STARVED_M;
    }

    private static IntPredicate isStarved(TrayCase tray, Filling.ByValve valve) {
        var usable =
                tray.trace.reservoirs().get(tray.trace.scenario().reservoirOf(valve)).usableM3();
        return h -> isBelow(tray, valve).test(h) && usable.at(h) > USABLE_M3;
    }

    /** What helps a tray that is low though there is water above its valve; empty where none is. */
    static Optional<Cure> cureAt(TrayCase tray, Filling.ByValve valve, int hour) {
        return isStarved(tray, valve).test(hour)
                ? Optional.of(Cure.of(Fault.of(tray, valve, hour).cure))
                : Optional.empty();
    }
}
