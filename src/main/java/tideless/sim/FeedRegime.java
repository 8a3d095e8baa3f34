package tideless.sim;

import java.util.Arrays;
import java.util.List;
import tideless.rig.Filling;
import tideless.rig.Shape;
import tideless.rig.Tray;

/**
 * In which regime each valve tray of a reservoir stands: what its valve does and what bounds its
 * water, and between which volumes that holds. Scratch space of one run.
 */
final class FeedRegime {
    /** Where a tray's valve stands. */
    enum Valve {
        SHUT,
        THROTTLING,
        WIDE,
        STUCK
    }

    /** What a tray's water is bounded by. */
    enum Water {
        FREE,
        DRY,
        BRIM
    }

    private final VesselWater[] trays;
    private final boolean[] snaps;
    private final Shape[] shape;
    private final double[] bandM;

    /** Volume at which a valve is shut, m3. */
    final double[] shutM3;

    /** Volume at which it is wide open, m3. */
    final double[] wideM3;

    /** Volume at the overflow, m3. */
    final double[] brimM3;

    final Valve[] valve;
    final Water[] water;

    FeedRegime(List<Tray> of, VesselWater[] trays) {
        this.trays = trays;
        int size = trays.length;
        snaps = new boolean[size];
        shape = new Shape[size];
        bandM = new double[size];
        shutM3 = new double[size];
        wideM3 = new double[size];
        brimM3 = new double[size];
        for (int i = 0; i < size; i++) {
            Tray tray = of.get(i);
            Filling.ByValve byValve = (Filling.ByValve) tray.filling();
            shape[i] = tray.shape();
            snaps[i] = byValve.snaps();
            bandM[i] = byValve.bandM();
            set(i, byValve.settingM());
            brimM3[i] = shape[i].volumeM3(tray.overflowM());
        }
        valve = new Valve[size];
        Arrays.fill(valve, Valve.SHUT);
        water = new Water[size];
        Arrays.fill(water, Water.FREE);
    }

    /** Sets a valve to a level above its tray's floor, m. */
    void set(int i, double settingM) {
        shutM3[i] = shape[i].volumeM3(settingM);
        wideM3[i] = shape[i].volumeM3(settingM - bandM[i]);
    }

    /** Least volume of the regime, m3. */
    double lowM3(int i) {
        return switch (valve[i]) {
            case SHUT -> snaps[i] ? wideM3[i] : shutM3[i];
            case THROTTLING -> wideM3[i];
            case WIDE, STUCK -> 0;
        };
    }

    /** Greatest volume of the regime, m3. */
    double highM3(int i) {
        return switch (valve[i]) {
            case SHUT, STUCK -> brimM3[i];
            case THROTTLING -> shutM3[i];
            case WIDE -> snaps[i] ? shutM3[i] : wideM3[i];
        };
    }

    /**
     * Puts a tray into the regime it is about to move in.
     *
     * @param stuckFrac opening at which the valve is stuck, or NaN
     * @return whether that is another
     */
    boolean settle(int i, double flowM3PerS, double evapotranspirationM3PerS, double stuckFrac) {
        double net = flowM3PerS - evapotranspirationM3PerS;
        boolean moved = settleValve(i, net, stuckFrac);
        moved |= settleWater(i, flowM3PerS, net);
        return moved;
    }

    private boolean settleValve(int i, double net, double stuckFrac) {
        Valve before = valve[i];
        double v = trays[i].m3;
        if (!Double.isNaN(stuckFrac)) {
            valve[i] = Valve.STUCK;
        } else if (snaps[i]) {
            boolean open = v <= wideM3[i] || (trays[i].snapOpen && v < shutM3[i]);
            trays[i].snapOpen = open;
            valve[i] = open ? Valve.WIDE : Valve.SHUT;
        } else if (v > shutM3[i]) {
            valve[i] = Valve.SHUT;
        } else if (v < wideM3[i]) {
            valve[i] = Valve.WIDE;
        } else if (v == shutM3[i] || v == wideM3[i]) {
            if (v == shutM3[i]) {
                valve[i] = net >= 0 ? Valve.SHUT : Valve.THROTTLING;
            } else {
                valve[i] = net < 0 ? Valve.WIDE : Valve.THROTTLING;
            }
        } else {
            valve[i] = Valve.THROTTLING;
        }
        return valve[i] != before;
    }

    private boolean settleWater(int i, double flowM3PerS, double net) {
        Water before = water[i];
        if (trays[i].m3 <= 0 && net <= 0) {
            water[i] = Water.DRY;
        } else if (trays[i].m3 >= brimM3[i] && net >= 0 && flowM3PerS > 0) {
            water[i] = Water.BRIM;
        } else {
            water[i] = Water.FREE;
        }
        return water[i] != before;
    }
}
