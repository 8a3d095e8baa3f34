package tideless.rig;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

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
     */
    record ByValve(
            String reservoir,
            double settingM,
            double bandM,
            boolean snaps,
            double seatBoreM,
            double dischargeCoefficient,
            double seatAboveFloorM,
            Tube branch,
            ValveFaults faults)
            implements Filling {
        public ByValve {
            Objects.requireNonNull(reservoir, "reservoir");
            Objects.requireNonNull(branch, "branch");
            Objects.requireNonNull(faults, "faults");
            if (!(settingM > 0)) {
                throw new IllegalArgumentException("settingM must be above 0, was " + settingM);
            }
            if (!(bandM > 0 && bandM <= settingM)) {
                throw new IllegalArgumentException("bandM must lie in (0, setting], was " + bandM);
            }
            if (!(seatBoreM > 0)) {
                throw new IllegalArgumentException("seatBoreM must be above 0, was " + seatBoreM);
            }
        }

        /** The same valve set to another level, m. */
        public ByValve withSettingM(double other) {
            return new ByValve(
                    reservoir,
                    other,
                    bandM,
                    snaps,
                    seatBoreM,
                    dischargeCoefficient,
                    seatAboveFloorM,
                    branch,
                    faults);
        }
    }

    /**
     * Topped up by hand to a level, on stated days or, when none are stated, at every visit.
     *
     * @param toLevelM above the tray's floor, m
     * @param days the days, in order; empty for every visit
     * @param withWater topped up with source water instead of feed
     */
    record ByHand(double toLevelM, List<LocalDate> days, boolean withWater) implements Filling {
        public ByHand {
            days = List.copyOf(days); // nobody can change it behind our back
            if (!(toLevelM > 0)) {
                throw new IllegalArgumentException("toLevelM must be above 0, was " + toLevelM);
            }
        }
    }

    /** Filled once at the start and left to fall. */
    record Sealed() implements Filling {}
}
