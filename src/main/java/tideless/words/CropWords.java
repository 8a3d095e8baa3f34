package tideless.words;

import tideless.rig.VesselId;

/** What becomes of a crop, where no task or warning says it. */
public final class CropWords {
    /** Longer than this is not worth waiting for, d; assumed. */
    private static final double HOPELESS_DAYS = 365;

    private CropWords() {}

    /** Of a crop that is not ready when its run ends. */
    public static String notReady(VesselId tray, double daysShort) {
        return Names.of(tray)
                + " is not ready by the end of the run: "
                + (daysShort < HOPELESS_DAYS
                        ? "about " + Numbers.days(Math.ceil(daysShort)) + " more in such air."
                        : "it would never be, in such air.");
    }
}
