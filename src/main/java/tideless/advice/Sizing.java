package tideless.advice;

import java.time.LocalDate;
import java.util.List;

/**
 * How long one reservoir lasts, and what would be enough.
 *
 * @param reservoir its name
 * @param daysWhenFull for each day of the run, how many days a full reservoir lasts from that
 *     morning at the thirst of a crop that never lacks water, d; capped at the days left in the run
 * @param longestGapDays longest time between two visits, d
 * @param outgrownFrom first day a full reservoir no longer lasts to the next visit, or null
 * @param enoughUsableLitres usable volume that would last every gap between visits, L: as stated,
 *     or where members of an ensemble say that what there is does not do, in nine of ten of them
 * @param usableLitres usable volume it has, L
 */
public record Sizing(
        String reservoir,
        List<Double> daysWhenFull,
        double longestGapDays,
        LocalDate outgrownFrom,
        double enoughUsableLitres,
        double usableLitres) {
    public Sizing {
        daysWhenFull = List.copyOf(daysWhenFull);
    }

    /** Whether it has less than would be enough. */
    public boolean isShort() {
        return enoughUsableLitres > usableLitres;
    }

    /** What a larger reservoir is told by. */
    public Facts larger() {
        return Facts.of(Quantity.ENOUGH, enoughUsableLitres).and(Quantity.USABLE, usableLitres);
    }

    /** The same where so much would be enough. */
    public Sizing enough(double usable) {
        return new Sizing(
                reservoir, daysWhenFull, longestGapDays, outgrownFrom, usable, usableLitres);
    }
}
