package tideless.advice;

import java.util.function.IntPredicate;

/** Spells of hours in which something holds. */
public final class Spells {
    /** A band has to be left for this long before it is worth a word, h; assumed. */
    public static final int PATIENCE_H = 24;

    private Spells() {}

    /**
     * First hour of the first spell that lasts.
     *
     * @param firstHour first sample that counts
     * @param lastHour last sample that counts
     * @param patienceH how long it has to last, h
     * @param is what holds at a sample
     * @return -1 when there is none
     */
    public static int first(int firstHour, int lastHour, int patienceH, IntPredicate is) {
        int run = 0;
        for (int h = firstHour; h <= lastHour; h++) {
            run = is.test(h) ? run + 1 : 0;
            if (run >= patienceH) {
                return h - patienceH + 1;
            }
        }
        return -1;
    }
}
