package tideless.sim;

import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import tideless.scenario.Filling;

/**
 * One reservoir and the valve trays below it, over one step.
 *
 * <p>The flow of each valve wide open is worked out for the middle of the span and then held;
 * within the span each tray has its closed form ({@link LevelStep}). The instant at which the
 * outlet comes out of the solution is found and stepped to.
 */
final class GravityFeed {
    /** Usable volume that counts as none, m3: a millionth of a drop. */
    private static final double NOTHING_M3 = 1e-13;

    final ReservoirRun reservoir;
    final List<TrayRun> trays;
    private final boolean refillsWhenEmpty;
    private final FeedLines lines;
    private final LevelStep water = new LevelStep();
    private final double[] openM3PerS;
    private double lastOutflowM3PerS;

    GravityFeed(ReservoirRun reservoir, List<TrayRun> trays, boolean refillsWhenEmpty) {
        this.reservoir = reservoir;
        this.trays = List.copyOf(trays);
        this.refillsWhenEmpty = refillsWhenEmpty;
        lines = new FeedLines(reservoir.reservoir, this.trays);
        openM3PerS = new double[trays.size()];
    }

    /** Pours a refill at the stated moment. */
    interface Refiller {
        void refill(ReservoirRun reservoir, double atS);
    }

    void step(double timeS, double spanS, Refiller refiller, Happenings log) {
        double doneS = 0;
        while (doneS < spanS) {
            double leftS = spanS - doneS;
            if (reservoir.uncovered && refillsWhenEmpty) {
                refiller.refill(reservoir, timeS + doneS);
            }
            findOpenFlows(leftS);
            double takeS = leftS;
            boolean empties = false;
            if (!reservoir.uncovered && reservoir.usableM3() - leavingM3(leftS) < NOTHING_M3) {
                takeS = emptyAfterS(leftS);
                empties = true;
            }
            double out = 0;
            for (int i = 0; i < trays.size(); i++) {
                TrayRun tray = trays.get(i);
                stepTray(tray, openM3PerS[i], takeS);
                tray.snapOpen = water.snapOpen;
                tray.took(water, reservoir.molPerM3);
                out += water.inflowM3;
            }
            reservoir.lose(out, takeS);
            lastOutflowM3PerS = takeS > 0 ? out / takeS : 0;
            doneS = empties ? doneS + takeS : spanS;
            if (empties) {
                reservoir.uncovered = true;
                lastOutflowM3PerS = 0;
                log.add(Event.Kind.OUTLET_UNCOVERED, timeS + doneS, reservoir.reservoir.name());
            }
        }
    }

    private void findOpenFlows(double spanS) {
        if (reservoir.uncovered) {
            java.util.Arrays.fill(openM3PerS, 0);
            return;
        }
        double surfaceM =
                reservoir.surfaceAboveBenchM(
                        Math.min(reservoir.usableM3(), 0.5 * spanS * lastOutflowM3PerS));
        lines.openFlows(surfaceM, reservoir.tempC, openM3PerS);
    }

    private void stepTray(TrayRun tray, double openFlow, double spanS) {
        Filling.ByValve valve = (Filling.ByValve) tray.tray.filling();
        if (valve.snaps()) {
            water.snapping(
                    tray.volumeM3,
                    tray.lossM3PerS,
                    openFlow,
                    tray.shutM3,
                    tray.wideM3,
                    tray.snapOpen,
                    spanS);
        } else {
            water.throttling(
                    tray.volumeM3, tray.lossM3PerS, openFlow, tray.shutM3, tray.wideM3, spanS);
        }
    }

    private double leavingM3(double spanS) {
        double sum = reservoir.evaporationM3PerS * spanS;
        for (int i = 0; i < trays.size(); i++) {
            stepTray(trays.get(i), openM3PerS[i], spanS);
            sum += water.inflowM3;
        }
        return sum;
    }

    private double emptyAfterS(double spanS) {
        double usable = reservoir.usableM3();
        if (usable < NOTHING_M3) {
            return 0;
        }
        // What leaves only grows with the span, so the bracket always holds one root.
        return new BrentSolver(1e-14, 1e-9).solve(200, span -> usable - leavingM3(span), 0, spanS);
    }
}
