package tideless.rig;

import java.util.Objects;

/**
 * One line of a grower's log: something read, something done, or a look at which there was nothing
 * to say.
 */
public sealed interface LogEntry {
    /** Seconds since the scenario's start. */
    double atS();

    /**
     * A reading.
     *
     * @param where the vessel it was taken in or over
     * @param what was read
     * @param value in the unit of {@code what}
     * @param counts whether it is believed; one kept out stands in the log and does nothing
     * @param line of the file it stands in, counted from 1
     */
    record Reading(
            double atS, VesselId where, Quantity what, double value, boolean counts, int line)
            implements LogEntry {
        public Reading {
            Objects.requireNonNull(where, "where");
            Objects.requireNonNull(what, "what");
            if (Double.isNaN(value) || Double.isInfinite(value)) {
                throw new IllegalArgumentException("a reading must be a number, was " + value);
            }
        }
    }

    /** What is read, with its unit. */
    enum Quantity {
        /** Level above the vessel's floor, m. */
        LEVEL,
        /** What a refill up to the mark took, m3. */
        POURED,
        /** What the EC meter shows at 25 degC, mS/cm. */
        EC,
        /** What the pH meter shows. */
        PH,
        /** Of the solution, degC. */
        TEMPERATURE,
        /** Fresh mass of one plant with its fruit, without its roots, g. */
        FRESH_MASS,
        /** Of the longest roots below the cups, m. */
        ROOT_LENGTH;

        /** Whether anything is learned from it. */
        public boolean teaches() {
            return this == LEVEL || this == POURED || this == EC || this == FRESH_MASS;
        }
    }

    /** Something that was done. */
    sealed interface Deed extends LogEntry {
        /** The vessel it was done to. */
        VesselId where();
    }

    /** A reservoir was filled to its mark, or a tray topped up by hand to its level. */
    record FilledUp(double atS, VesselId where) implements Deed {}

    /**
     * So much was poured in, as far as it went in.
     *
     * @param m3 how much, m3
     * @param water whether it was source water and not feed
     */
    record Poured(double atS, VesselId where, double m3, boolean water) implements Deed {}

    /**
     * A tray was emptied and filled again with feed.
     *
     * @param flush whether it was done against salt
     */
    record Renewed(double atS, VesselId where, boolean flush) implements Deed {}

    /**
     * A float valve was set to another level.
     *
     * @param settingM level above the tray's floor at which it shuts from then on, m
     */
    record ValveMoved(double atS, VesselId where, double settingM) implements Deed {}

    /**
     * A lamp burns stronger or weaker from the midnight before on.
     *
     * @param ppfdUmolPerM2S photon flux density at the canopy from then on, umol/m2/s
     */
    record LampChanged(double atS, VesselId where, double ppfdUmolPerM2S) implements Deed {}

    /**
     * Plants died or were taken out.
     *
     * @param plants how many
     */
    record PlantsLost(double atS, VesselId where, int plants) implements Deed {}

    /**
     * Leaves were picked and the plants stand on.
     *
     * @param freshG from all plants together, g
     */
    record LeavesPicked(double atS, VesselId where, double freshG) implements Deed {}

    /** The whole crop was taken out of its tray. */
    record Harvested(double atS, VesselId where) implements Deed {}

    /** Somebody looked and there was nothing to say. */
    record Looked(double atS) implements LogEntry {}
}
