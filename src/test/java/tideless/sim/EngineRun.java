package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import tideless.solution.Component;

/** A random rig's water and tracer by the engine, without a climate around it. */
final class EngineRun {
    static final double TEMP_C = 20;

    private static final int TRACER = Component.TRACER.ordinal();

    final RandomRig rig;
    final List<TrayRun> trays = new ArrayList<>();
    final ReservoirRun reservoir;
    final GravityFeed feed;
    final EventLog log = new EventLog();
    final double[] inM3;
    final double[] evapotranspiredM3;

    EngineRun(RandomRig rig, double bendMost) {
        this(rig, bendMost, false);
    }

    EngineRun(RandomRig rig, double bendMost, boolean refillsWhenEmpty) {
        this(rig, bendMost, refillsWhenEmpty, false);
    }

    /** By the looser steps of ensembles. */
    static EngineRun loose(RandomRig rig) {
        return new EngineRun(rig, GravityFeed.BEND_MOST, false, true);
    }

    private EngineRun(RandomRig rig, double bendMost, boolean refillsWhenEmpty, boolean isLoose) {
        this.rig = rig;
        for (int i = 0; i < rig.trays.size(); i++) {
            trays.add(new TrayRun(rig.trays.get(i), i, TEMP_C, Rigs.air(TEMP_C), 0));
        }
        reservoir = new ReservoirRun(rig.reservoir, 0, rig.reservoir.usableM3(), Rigs.FEED, TEMP_C);
        feed = new GravityFeed(reservoir, trays, refillsWhenEmpty, Rigs.START, bendMost, isLoose);
        inM3 = new double[trays.size()];
        evapotranspiredM3 = new double[trays.size()];
    }

    double spiltTracerMol(int i) {
        return trays.get(i).salts.spiltMol[TRACER];
    }

    /** All spans. */
    void run(double stepS) {
        run(stepS, rig.durationS);
    }

    /** Up to a time. */
    void run(double stepS, double untilS) {
        for (int c = 0; c < rig.evapotranspirationM3PerS.length; c++) {
            double fromS = c * rig.changeS;
            double doneS = 0;
            double lastS = Math.min(rig.changeS, untilS - fromS);
            while (doneS < lastS - 1e-6) {
                double spanS = Math.min(stepS, lastS - doneS);
                step(rig.evapotranspirationM3PerS[c], fromS + doneS, spanS);
                doneS += spanS;
            }
        }
    }

    /** One step under stated losses, m3/s. */
    void step(double[] evapotranspirationM3PerS, double atS, double spanS) {
        for (int i = 0; i < trays.size(); i++) {
            TrayRun tray = trays.get(i);
            tray.evapotranspirationM3PerS = evapotranspirationM3PerS[i];
            tray.inflowM3 = 0;
            tray.evaporationM3 = 0;
            tray.transpirationM3 = 0;
        }
        reservoir.evaporationM3PerS = rig.evaporationM3PerS;
        feed.step(atS, spanS, (to, at) -> to.refill(Rigs.FEED, TEMP_C), log);
        for (int i = 0; i < trays.size(); i++) {
            TrayRun tray = trays.get(i);
            inM3[i] += tray.inflowM3;
            evapotranspiredM3[i] += tray.evaporationM3 + tray.transpirationM3;
            for (int k = 0; k < tray.salts.mol.length; k++) {
                tray.salts.mol[k] += tray.salts.stepInMol[k];
                tray.salts.stepInMol[k] = 0;
            }
        }
    }

    double tracerMol(int i) {
        return trays.get(i).salts.mol[TRACER];
    }

    double reservoirTracerMol() {
        return reservoir.mol[TRACER];
    }

    double spiltM3(int i) {
        return trays.get(i).spillM3;
    }
}
