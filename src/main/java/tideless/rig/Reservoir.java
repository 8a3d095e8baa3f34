package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Objects;

/**
 * A reservoir that feeds valve trays by gravity.
 *
 * @param name the user's name for it
 * @param shape its inside
 * @param fullLevelM level above its floor when full, m
 * @param outletLevelM height of the outlet above its floor, m; what lies below never leaves
 * @param floorAboveBenchM height of its floor above the bench the trays stand on, m
 * @param openAreaM2 water surface open to the air, m2; 0 under a lid
 * @param startLevelM level above its floor when the run starts, m
 * @param refill when it is refilled
 * @param trunk tube from the outlet to the first tee
 */
@RecordBuilder
public record Reservoir(
        String name,
        Shape shape,
        double fullLevelM,
        double outletLevelM,
        double floorAboveBenchM,
        double openAreaM2,
        double startLevelM,
        Refill refill,
        Tube trunk)
        implements ReservoirBuilder.With {
    /** A reservoir that lacks less than this share of its usable volume is full; assumed. */
    private static final double FULL_ENOUGH_FRAC = 0.05;

    public Reservoir {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(refill, "refill");
        Objects.requireNonNull(trunk, "trunk");
        if (!(fullLevelM > 0 && fullLevelM <= shape.depthM())) {
            throw new IllegalArgumentException(
                    "fullLevelM must lie in (0, depth], was " + fullLevelM);
        }
        if (!(outletLevelM >= 0 && outletLevelM < fullLevelM)) {
            throw new IllegalArgumentException(
                    "outletLevelM must lie in [0, fullLevelM), was " + outletLevelM);
        }
        if (!(startLevelM >= 0 && startLevelM <= fullLevelM)) {
            throw new IllegalArgumentException(
                    "startLevelM must lie in [0, fullLevelM], was " + startLevelM);
        }
    }

    /** Which vessel of the rig it is. */
    public VesselId id() {
        return VesselId.reservoir(name);
    }

    /** One so many times as wide in area at the same heights, with nothing standing in it. */
    public Reservoir wider(double times) {
        return withShape(shape.wider(times)).withOpenAreaM2(times * openAreaM2);
    }

    /** The same holding so many times the litres a centimetre, beside what stands in it. */
    public Reservoir holding(double times) {
        return withShape(shape.wider(times).with(shape.displacement()))
                .withOpenAreaM2(times * openAreaM2);
    }

    /** Volume when full, m3. */
    public double fullM3() {
        return shape.volumeM3(fullLevelM);
    }

    /** Volume below the outlet, which never leaves, m3. */
    public double deadM3() {
        return shape.volumeM3(outletLevelM);
    }

    /** Volume that can leave when full, m3. */
    public double usableM3() {
        return fullM3() - deadM3();
    }

    /** Whether it lacks so little that nobody would carry a jug to it. */
    public boolean isAsGoodAsFull(double m3) {
        return fullM3() - m3 <= FULL_ENOUGH_FRAC * usableM3();
    }

    /**
     * When a reservoir is refilled, always to full, and with what.
     *
     * @param when on what occasion
     * @param belowFrac refilled at a visit when the usable volume has fallen below this share of
     *     the usable volume when full, 0-1; used by {@link When#LOW_AT_VISIT}
     * @param with what is poured in
     */
    public record Refill(When when, double belowFrac, Pouring with) {
        /** Occasions. */
        public enum When {
            /**
             * At a visit that finds less than would last to the next one, by the draw of the last
             * days with a margin; and at the last visit before an absence.
             */
            BEFORE_NEXT_VISIT,
            /** At a visit that finds it below the stated share. */
            LOW_AT_VISIT,
            /** At every visit. */
            EVERY_VISIT,
            /** The moment the last usable litre is gone, whoever is there. */
            WHEN_EMPTY,
            /** Never: what is in it at the start is all there is. */
            NEVER
        }

        public Refill {
            Objects.requireNonNull(when, "when");
            Objects.requireNonNull(with, "with");
            if (!(belowFrac >= 0 && belowFrac <= 1)) {
                throw new IllegalArgumentException(
                        "belowFrac must lie in 0 to 1, was " + belowFrac);
            }
        }

        /** Whether whoever looks in fills it up. */
        public boolean isAtVisits() {
            return when != When.WHEN_EMPTY && when != When.NEVER;
        }

        /** The same on other occasions. */
        public Refill on(When other) {
            return new Refill(other, belowFrac, with);
        }
    }
}
