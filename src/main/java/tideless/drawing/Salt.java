package tideless.drawing;

import java.util.Locale;
import tideless.rig.Limits;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** How salty a solution is against the band of the crop above it: what its water is shaded by. */
enum Salt {
    LEAN,
    LOW,
    WITHIN,
    HIGH,
    RICH;

    /** Below so much of the band's lower end it is lean; assumed, for the drawing alone. */
    private static final double LEAN_SHARE = 0.6;

    /** Above so many times its upper end it is rich; assumed, for the drawing alone. */
    private static final double RICH_TIMES = 1.3;

    /** Of an EC, mS/cm; within where there is nothing to read or no band. */
    static Salt of(double ecMsPerCm, Limits limits) {
        double low = limits.ecLowMsPerCm();
        double high = limits.ecHighMsPerCm();
        if (ecMsPerCm < low) {
            return ecMsPerCm < LEAN_SHARE * low ? LEAN : LOW;
        }
        if (ecMsPerCm > high) {
            return ecMsPerCm > RICH_TIMES * high ? RICH : HIGH;
        }
        return WITHIN;
    }

    /** The band of what grows in a tray at an hour, or grew there last. */
    static Limits limits(Trace trace, TrayTrace tray, int hour) {
        Limits limits = tray.tray().limits();
        for (PlantingTrace planting : trace.plantings(tray)) {
            if (planting.firstHour() <= hour) {
                limits = planting.tray().limits();
            }
        }
        return limits;
    }

    /** As the style of a drawing calls it. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
