package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/** How a tray gets its solution. */
public sealed interface Filling {

    /**
     * A float valve fed by a reservoir. It is shut at and above the setting; below it, it opens
     * evenly until it is wide open one band lower. With {@code snaps} it has two states instead: it
     * opens when the level falls one band below the setting and shuts when it reaches it.
     *
     * @param reservoir name of the reservoir
     * @param settingM level above the tray's floor at which it shuts, m
     * @param bandM depth of the throttling band, or the hysteresis when it snaps, m
     * @param snaps two states instead of throttling
     * @param seatBoreM bore of the seat, m
     * @param dischargeCoefficient of the seat, dimensionless
     * @param seatAboveFloorM height at which the feed enters the tray, m above its floor
     * @param branch tube from the tee to the valve
     * @param faults what goes wrong with it
     * @param moves settings it is moved to later, in rising order of their days
     */
    @RecordBuilder
    record ByValve(
            String reservoir,
            double settingM,
            double bandM,
            boolean snaps,
            double seatBoreM,
            double dischargeCoefficient,
            double seatAboveFloorM,
            Tube branch,
            ValveFaults faults,
            List<Move> moves)
            implements Filling, FillingByValveBuilder.With {
        public ByValve {
            Objects.requireNonNull(reservoir, "reservoir");
            Objects.requireNonNull(branch, "branch");
            Objects.requireNonNull(faults, "faults");
            moves = List.copyOf(moves);
            if (!(settingM > 0)) {
                throw new IllegalArgumentException("settingM must be above 0, was " + settingM);
            }
            if (!(bandM > 0 && bandM <= settingM)) {
                throw new IllegalArgumentException("bandM must lie in (0, setting], was " + bandM);
            }
            if (!(seatBoreM > 0)) {
                throw new IllegalArgumentException("seatBoreM must be above 0, was " + seatBoreM);
            }
            LocalDate before = null;
            for (Move move : moves) {
                if (!(move.settingM() >= bandM)) {
                    throw new IllegalArgumentException(
                            "a move must be to a band or more, was to " + move.settingM());
                }
                if (before != null && !move.on().isAfter(before)) {
                    throw new IllegalArgumentException("moves must rise in time: " + move.on());
                }
                before = move.on();
            }
        }

        /** Level at which it shuts after the visit of a day, m above the tray's floor. */
        public double settingM(LocalDate day) {
            double now = settingM;
            for (Move move : moves) {
                if (!move.on().isAfter(day)) {
                    now = move.settingM();
                }
            }
            return now;
        }

        /** The same valve with each of its settings changed, m. */
        public ByValve withSettings(DoubleUnaryOperator change) {
            return withSettingM(change.applyAsDouble(settingM))
                    .withMoves(
                            moves.stream()
                                    .map(m -> new Move(m.on(), change.applyAsDouble(m.settingM())))
                                    .toList());
        }

        /**
         * The same valve shutting higher, as far as its float and the tray let it.
         *
         * @param higherM m; below 0 for lower
         * @param mostM level no float can hold above, m
         */
        public ByValve shifted(double higherM, double mostM) {
            return withSettings(statedM -> Math.max(bandM, Math.min(mostM, statedM + higherM)));
        }
    }

    /**
     * A valve set to another level.
     *
     * @param on the day, at the hour of its visit
     * @param settingM level above the tray's floor at which it shuts from then on, m
     */
    record Move(LocalDate on, double settingM) {
        public Move {
            Objects.requireNonNull(on, "on");
        }
    }

    /**
     * Topped up by hand to a level, on stated days or, when none are stated, at every visit.
     *
     * @param toLevelM above the tray's floor, m
     * @param days the days, in order; empty for every visit
     * @param with what it is topped up with
     * @param inSteps no higher at once than air roots bear, in place of to its level
     */
    record ByHand(double toLevelM, List<LocalDate> days, Pouring with, boolean inSteps)
            implements Filling {
        /** To its level at once. */
        public ByHand(double toLevelM, List<LocalDate> days, Pouring with) {
            this(toLevelM, days, with, false);
        }

        public ByHand {
            days = List.copyOf(days); // nobody can change it behind our back
            Objects.requireNonNull(with, "with");
            if (!(toLevelM > 0)) {
                throw new IllegalArgumentException("toLevelM must be above 0, was " + toLevelM);
            }
        }
    }

    /** Filled once at the start and left to fall. */
    record Sealed() implements Filling {}
}
