package tideless.advice;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import tideless.rig.VesselId;
import tideless.sim.Stress;

/**
 * Whether the crop survives, before all detail.
 *
 * @param survives no plant dead, none wilted for longer than {@link Wilt#BORNE_H}, no tray dried
 *     out
 * @param firstHarm the first of these, or empty
 * @param absences what becomes of each absence, in the scenario's order
 * @param waterLeft for each planted tray, when it lived closest to dryness
 * @param first the gravest warning, whose first cure is what to change first; empty for none
 * @param losses of each crop of which the root zone took a good deal
 */
public record Verdict(
        boolean survives,
        Optional<Harm> firstHarm,
        List<Absence> absences,
        List<WaterLeft> waterLeft,
        Optional<Warning> first,
        List<Loss> losses) {

    public Verdict {
        losses = List.copyOf(losses);
        Objects.requireNonNull(firstHarm, "firstHarm");
        Objects.requireNonNull(first, "first");
        absences = List.copyOf(absences);
        waterLeft = List.copyOf(waterLeft);
        if (survives != firstHarm.isEmpty()) {
            throw new IllegalArgumentException("survives " + survives + ", yet " + firstHarm);
        }
    }

    /** Of crops that lose nothing worth telling. */
    public Verdict(
            boolean survives,
            Optional<Harm> firstHarm,
            List<Absence> absences,
            List<WaterLeft> waterLeft,
            Optional<Warning> first) {
        this(survives, firstHarm, absences, waterLeft, first, List.of());
    }

    /** The crops that live and yet are poor, the poorest first. */
    public List<Loss> poor() {
        return losses.stream()
                .filter(loss -> loss.surelyFrac() >= Warning.POOR_FRAC)
                .sorted(Comparator.comparing(Loss::surelyFrac).reversed())
                .toList();
    }

    /**
     * What the root zone took of a crop.
     *
     * @param crop its name where several follow one another in the tray, else empty
     * @param cropName its name
     * @param most what surely took most
     * @param mostFrac share that took of what a sound root zone would have given, 0-1
     * @param surelyFrac share that all took, but for a want of air that may be none, 0-1
     * @param ownG what a plant gives, g
     * @param unharmedG what a plant would have given in a root zone that takes nothing, g
     * @param fracs what each took, want of air by its likely figures, 0-1
     * @param missedC warmth that the roots want where their solution missed it in the mean, degC;
     *     NaN where it did not
     * @param meanC mean warmth of the solution, degC
     */
    public record Loss(
            VesselId tray,
            String crop,
            String cropName,
            Stress most,
            double mostFrac,
            double surelyFrac,
            double ownG,
            double unharmedG,
            Map<Stress, Double> fracs,
            double meanC,
            double missedC) {
        /** Less is not told; assumed. */
        static final double TOLD_FRAC = 0.1;

        /** So much is told though it may all be a want of air that is none; assumed. */
        static final double TOLD_WITH_AIR_FRAC = 0.2;

        public Loss {
            fracs = Map.copyOf(fracs);
        }

        /** Share that all took, want of air by its likely figures among it, 0-1. */
        public double frac() {
            return Math.max(surelyFrac, 1 - ownG / unharmedG);
        }
    }

    /** The same with another warning before all. */
    public Verdict withFirst(Optional<Warning> other) {
        return new Verdict(survives, firstHarm, absences, waterLeft, other, losses);
    }

    /** Something no crop gets over. */
    public record Harm(Warning.Kind kind, VesselId vessel, LocalDateTime at) {}

    /**
     * One absence.
     *
     * @param from first day away
     * @param to last day away
     * @param survives nothing is harmed before somebody comes again
     * @param fillUpOn day of the last visit before it, when there is something to fill; null for
     *     none
     * @param lowestLevelM lowest level of a living tray until somebody comes again, m; NaN when
     *     nothing lives then
     * @param lowestIn the tray in which it stands so low; null when nothing lives then
     * @param filledUp what filling up at the visit before makes of it, where it is advised and the
     *     run does not do it
     */
    public record Absence(
            LocalDate from,
            LocalDate to,
            boolean survives,
            LocalDate fillUpOn,
            double lowestLevelM,
            VesselId lowestIn,
            Optional<FilledUp> filledUp) {

        /** The same with what filling up buys. */
        Absence filledUp(FilledUp other) {
            return new Absence(
                    from, to, survives, fillUpOn, lowestLevelM, lowestIn, Optional.of(other));
        }
    }

    /**
     * What becomes of an absence with everything filled up at the visit before.
     *
     * @param survives nothing is harmed before somebody comes again
     * @param lowestLevelM lowest level of a living tray until then, m
     */
    public record FilledUp(boolean survives, double lowestLevelM) {}

    /**
     * The same, told what a run in which everything is filled up before absences makes of those at
     * which the rules of refilling do not do it.
     *
     * @param filled of that run
     * @param on days on which it fills up and this one does not
     */
    public Verdict filledUp(Verdict filled, Set<LocalDate> on) {
        List<Absence> told = new ArrayList<>();
        for (int i = 0; i < absences.size(); i++) {
            Absence absence = absences.get(i);
            Absence with = filled.absences.get(i);
            told.add(
                    absence.fillUpOn() != null && on.contains(absence.fillUpOn())
                            ? absence.filledUp(new FilledUp(with.survives(), with.lowestLevelM()))
                            : absence);
        }
        return new Verdict(survives, firstHarm, told, waterLeft, first, losses);
    }

    /**
     * How long a tray would live on what it holds, when that is least.
     *
     * @param tray which
     * @param at when
     * @param hours what it holds over its thirst before salt cuts it, h
     */
    public record WaterLeft(VesselId tray, LocalDateTime at, double hours) {}

    /** The tray that came closest to dryness. */
    public Optional<WaterLeft> tightest() {
        WaterLeft least = null;
        for (WaterLeft one : waterLeft) {
            if (least == null || one.hours() < least.hours()) {
                least = one;
            }
        }
        return Optional.ofNullable(least);
    }
}
