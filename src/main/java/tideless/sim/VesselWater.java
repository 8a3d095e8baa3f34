package tideless.sim;

/**
 * The water of one vessel: the one place in which a run keeps it. {@link FeedWater} moves it within
 * a step; whoever pours or drains between steps does so by {@link #put}, so that the stepper works
 * its rates out anew. Scratch space of one run.
 */
final class VesselWater {
    /** What the vessel holds, m3. */
    double m3;

    /** Whether the snapping valve of a tray stands open. */
    boolean snapOpen;

    /** Whether the outlet of a reservoir has come out of the solution. */
    boolean uncovered;

    private boolean disturbed = true;

    VesselWater(double m3) {
        this.m3 = m3;
    }

    /** It now holds that much, by another hand than the stepper's, m3. */
    void put(double nowM3) {
        disturbed |= nowM3 != m3;
        m3 = nowM3;
    }

    /** The outlet of a reservoir is covered again. */
    void cover() {
        disturbed |= uncovered;
        uncovered = false;
    }

    /** Whether {@link #put} or {@link #cover} have changed anything since this was last asked. */
    boolean wasDisturbed() {
        boolean was = disturbed;
        disturbed = false;
        return was;
    }
}
