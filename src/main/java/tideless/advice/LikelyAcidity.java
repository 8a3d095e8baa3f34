package tideless.advice;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import tideless.physics.Time;

/**
 * A pH that stands above its band for weeks by the likely figures, though what is not known of the
 * uptake may bring it back: a note to read the meter by, where {@link AcidityDoubt} warns of
 * nothing.
 */
final class LikelyAcidity {
    /** So far above the band is worth reading a meter for; assumed. */
    private static final double ABOVE = 0.3;

    /** And for so long together, d: leaves go pale by weeks; assumed. */
    private static final int DAYS = 14;

    private static final int DAY_H = (int) (Time.DAY_S / Time.HOUR_S);

    private LikelyAcidity() {}

    /**
     * @param warned what is warned of the same tray's pH; a note is of what comes weeks before it
     */
    static void add(TrayCase tray, Optional<Warning> warned, Findings out) {
        double high = tray.tray.limits().phHigh();
        IntPredicate isAbove = h -> !tray.isLow(h) && tray.of.ph().at(h) > high + ABOVE;
        int from = tray.firstSpell(DAYS * DAY_H, isAbove);
        if (from < 0) {
            return;
        }
        LocalDateTime begins = tray.trace.clockAtSample(from);
        if (warned.isPresent() && warned.get().from().isBefore(begins.plusDays(DAYS))) {
            return;
        }
        double most = tray.greatest(from, h -> isAbove.test(h) ? tray.of.ph().at(h) : high);
        out.warnings.add(
                new Warning(
                        Warning.Kind.PH_OUT,
                        tray.id,
                        begins,
                        tray.lastOf(from, isAbove),
                        Measure.atMost(most, high, Unit.PH),
                        new Cause(Cause.Kind.ANIONS_TAKEN, Facts.of(Quantity.LOSS, 0)),
                        List.of(Cure.of(Cure.Kind.ACID_BY_METER))));
    }
}
