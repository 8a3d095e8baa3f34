package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * What stands between the outside weather and the plants.
 *
 * <p>Under {@link Kind#GLASS} and {@link Kind#FILM} the inside air is worked out from a steady heat
 * and vapour balance per floor area (see docs/model.md, "Air under a cover"); in the {@link
 * Kind#OPEN} and under {@link Kind#SHADE} the inside air is the outside air.
 *
 * @param kind what it is
 * @param transmissionFrac share of the outside global radiation that reaches the plants, 0-1
 * @param heatLossWPerM2K heat lost through the cover per floor area, W/m2/K
 * @param ventsShutPerH air changes per hour with the vents shut
 * @param ventsOpenPerH air changes per hour with the vents wide open
 * @param meanHeightM mean height of the house, m
 * @param heatedToC the air is never let below this, degC; negative infinity when unheated
 * @param ventsFromC the vents begin to open at this inside temperature, degC, and are wide open 4 K
 *     above it
 */
@RecordBuilder
public record Cover(
        Kind kind,
        double transmissionFrac,
        double heatLossWPerM2K,
        double ventsShutPerH,
        double ventsOpenPerH,
        double meanHeightM,
        double heatedToC,
        double ventsFromC)
        implements CoverBuilder.With {

    /** Kinds of cover. */
    public enum Kind {
        OPEN,
        SHADE,
        GLASS,
        FILM;

        /** Whether wind and rain go through. */
        public boolean isOpen() {
            return this == OPEN || this == SHADE;
        }
    }

    public Cover {
        if (!(transmissionFrac >= 0 && transmissionFrac <= 1)) {
            throw new IllegalArgumentException(
                    "transmissionFrac must lie in 0 to 1, was " + transmissionFrac);
        }
    }
}
