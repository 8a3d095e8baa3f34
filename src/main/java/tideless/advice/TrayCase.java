package tideless.advice;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import tideless.crop.CropTraits;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.GrowthLost;
import tideless.sim.PlantingTrace;
import tideless.sim.Stress;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;

/**
 * One tray of a run, while one of its crops is planted in it, with what every judgement about it
 * asks for.
 */
final class TrayCase {
    /** From then on a plant spends most of its first day in the nursery, s. */
    private static final double NOON_S = 12 * Time.HOUR_S;

    /** A head that comes so much later has lost something, d; assumed. */
    private static final double LATE_DAYS = 1;

    /** Likewise as a share of its time: in a day it grows by about that much; assumed. */
    private static final double LATE_FRAC = 0.05;

    private static final Map<Event.Kind, Event.Kind> OVER_BY =
            Map.of(
                    Event.Kind.STRANDED, Event.Kind.REWETTED,
                    Event.Kind.WILTED, Event.Kind.RECOVERED,
                    Event.Kind.SALT_WILTED, Event.Kind.SALT_BORNE);

    final Trace trace;
    final PlantingTrace planting;
    final TrayTrace of;
    final Tray tray;
    final VesselId id;
    final VisitTimes rounds;
    final CropTraits traits; // null when the thirst was measured, or nothing is planted
    final int firstHour; // the sample of its first hour
    final int lastHour; // the sample at which the crop leaves the tray, or the last one

    /** What it is fed. */
    final Composition feed;

    /** EC of that, mS/cm at 25 degC. */
    final double feedMsPerCm;

    TrayCase(Trace trace, PlantingTrace planting, VisitTimes rounds) {
        this.trace = trace;
        this.planting = planting;
        this.rounds = rounds;
        of = planting.run();
        tray = planting.tray();
        id = tray.id();
        traits =
                tray.planting() instanceof Planting.OfCrop crop && drinks(crop)
                        ? crop.traits()
                        : null;
        firstHour = planting.firstHour();
        lastHour = planting.lastHour();
        feed = trace.scenario().feedOf(tray).composition();
        feedMsPerCm = ElectricalConductivity.at25MsPerCm(feed);
    }

    /** Whether there is anything whose water and feed matter: plants, or a thirst as measured. */
    static boolean drinks(Planting planting) {
        return !(planting instanceof Planting.OfCrop crop) || crop.plants() > 0;
    }

    /** Whether a grower's log tells that the crop has left its tray. */
    boolean isPast() {
        return (lastHour + 1) * Time.HOUR_S <= trace.scenario().log().lastS();
    }

    /** The first hour that a grower's log leaves open; of a run without one the first of all. */
    int firstOpenHour() {
        return Math.max(firstHour, (int) Math.ceil(trace.scenario().log().lastS() / Time.HOUR_S));
    }

    /** The day after whose visit the valve was set as it is in an hour. */
    LocalDate setOn(int hour) {
        return trace.clockAt(hour * Time.HOUR_S - trace.scenario().visits().timeOfDayS())
                .toLocalDate();
    }

    /** Whether it holds too little for its salts to mean more than want of water. */
    boolean isLow(int hour) {
        return of.volumeM3().at(hour) < FlushRule.LOW_FRAC * FlushRule.workingM3(tray, setOn(hour));
    }

    /** Whether the crop is cut so soon that it lives on what it has. */
    boolean isNearHarvest(int hour) {
        boolean ends = firstS(Event.Kind.HARVEST).isPresent();
        return ends && lastHour - hour < 24 * FlushRule.DAYS_BEFORE_HARVEST;
    }

    /** Least EC the crop wants at its stage, mS/cm. */
    double leanMsPerCm(int hour) {
        return FlushRule.leanMsPerCm(
                tray.limits().ecLowMsPerCm(), of.of(TraySeries.LEAF_AREA_INDEX).at(hour));
    }

    /** What the root zone took of this crop; empty where that was not followed. */
    Optional<GrowthLost> lost() {
        return planting.number() < of.lost().size() && traits != null
                ? Optional.of(of.lost().get(planting.number()))
                : Optional.empty();
    }

    /**
     * The same warning with the share of the crop that what it tells of takes, and the days by
     * which it is late for it where these are worth a word, where that is known.
     */
    Warning withLoss(Warning warning) {
        if (lost().isEmpty()) {
            return warning;
        }
        GrowthLost lost = lost().get();
        if (warning.kind() == Warning.Kind.SET_TOO_HOT) {
            return warning.with(Quantity.LOSS, lost.notSetFrac());
        }
        Optional<Stress> stress = stressOf(warning.kind());
        if (stress.isEmpty()) {
            return warning;
        }
        Warning told = warning.with(Quantity.LOSS, lost.frac(stress.get()));
        double late = lost.lateDays(stress.get());
        boolean isLate = late > Math.min(LATE_DAYS, LATE_FRAC * lost.readyDays());
        return isLate ? told.with(Quantity.LATE, late) : told;
    }

    private static Optional<Stress> stressOf(Warning.Kind kind) {
        return switch (kind) {
            case SALT_WILTED, TOO_SALTY -> Optional.of(Stress.SALT);
            case TOO_LEAN, SHORT_OF_ONE -> Optional.of(Stress.HUNGER);
            case SHORT_OF_AIR, DROWNED -> Optional.of(Stress.AIR);
            case WARM_SOLUTION -> Optional.of(Stress.WARMTH);
            default -> Optional.empty();
        };
    }

    /** The events of this tray from its planting to the next, in order of time. */
    List<Event> events() {
        return planting.events().stream().filter(event -> !isBeforeSetOut(event)).toList();
    }

    private boolean isSoonOver(Event event) {
        Event.Kind end = OVER_BY.get(event.kind());
        return planting.events().stream()
                .filter(e -> e.kind() == end && e.atS() >= event.atS())
                .anyMatch(e -> e.atS() - event.atS() <= Wilt.BORNE_H * Time.HOUR_S);
    }

    /**
     * Whether it tells of plants that the first visit of the run has yet to set out: until then
     * they stand in the nursery, where the run has them in the tray from midnight on. What goes on
     * beyond that day would harm them all the same.
     */
    private boolean isBeforeSetOut(Event event) {
        double setOutS = trace.scenario().visits().timeOfDayS();
        return planting.number() == 0
                && setOutS >= NOON_S
                && trace.scenario().log().isEmpty()
                && event.atS() < setOutS
                && OVER_BY.containsKey(event.kind())
                && isSoonOver(event);
    }

    /** Whether all solution was drained and fresh poured in its place. */
    static boolean isChange(Event event) {
        return switch (event.kind()) {
            case FLUSH, FRESH_SOLUTION -> true;
            case PLANTED -> event.drainedM3() > 0;
            default -> false;
        };
    }

    static List<Event> eventsOf(Trace trace, VesselId vessel) {
        return trace.events().stream().filter(e -> e.vessel().equals(vessel)).toList();
    }

    /** Seconds at which something first happened here. */
    OptionalDouble firstS(Event.Kind kind) {
        for (Event event : events()) {
            if (event.kind() == kind) {
                return OptionalDouble.of(event.atS());
            }
        }
        return OptionalDouble.empty();
    }

    /** First hour of a spell that lasts, while the crop lives, or -1. */
    int firstSpell(int patienceH, IntPredicate is) {
        return Spells.first(firstHour, lastHour, patienceH, is);
    }

    int firstSpell(IntPredicate is) {
        return firstSpell(Spells.PATIENCE_H, is);
    }

    /** Clock at the end of the last hour in which it holds, from a given hour on. */
    LocalDateTime lastOf(int from, IntPredicate is) {
        int last = from;
        for (int h = from; h <= lastHour; h++) {
            if (is.test(h)) {
                last = h;
            }
        }
        return trace.clockAtSample(last);
    }

    int hoursOf(IntPredicate is) {
        int hours = 0;
        for (int h = firstHour; h <= lastHour; h++) {
            hours += is.test(h) ? 1 : 0;
        }
        return hours;
    }

    /** Greatest value from an hour on, while the crop lives. */
    double greatest(int from, IntToDoubleFunction value) {
        double most = value.applyAsDouble(from);
        for (int h = from; h <= lastHour; h++) {
            double now = value.applyAsDouble(h);
            most = now > most ? now : most;
        }
        return most;
    }

    /** Least value from an hour on, while the crop lives. */
    double least(int from, IntToDoubleFunction value) {
        return -greatest(from, h -> -value.applyAsDouble(h));
    }
}
