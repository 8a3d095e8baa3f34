package tideless.sim;

import java.time.LocalDate;
import java.util.List;
import tideless.physics.Elementary;
import tideless.physics.LiquidWater;
import tideless.rig.Filling;
import tideless.rig.Tray;

/**
 * One reservoir and the valve trays below it, over one step: hands the water to {@link FeedWater}
 * and what is dissolved in it from vessel to vessel.
 */
final class GravityFeed {
    /** Bend of the rates the closed form may put in; see docs/decisions/0005-water-engine.md. */
    static final double BEND_MOST = 2e-8;

    /**
     * The viscosity is renewed when the solution has moved by this much, K: 0.03 % of it, and of
     * the time a tray takes to fill.
     */
    private static final double TEMP_MOVED_K = 0.01;

    /** Rests of a step below this are rounding, s. */
    private static final double NO_TIME_S = 1e-9;

    /** Pieces of a step beyond which something turns in a circle. */
    private static final int PIECES_MOST = 200_000;

    /**
     * In a long step the water may be off by so many times more than in one of ten minutes; by
     * trial, no figure of a season then moves by 1e-5 of itself.
     */
    private static final double LOOSE_MOST = 1000;

    /** Pieces of a step after which the rest of it is gone through exactly: it may circle. */
    private static final int LOOSE_PIECES_MOST = 100;

    final ReservoirRun reservoir;
    private final TrayRun[] trays;
    final FeedWater water;
    private final boolean refillsWhenEmpty;
    private final boolean isLoose;
    private final ValveFault[] faults;
    private final double[] settingM; // what {@link #water} holds
    private double viscosityAtC = Double.NaN;

    /**
     * @param bendMost see {@link ExponentialPiece}
     * @param isLoose whether long steps may be {@link #looseFactor} less exact
     */
    GravityFeed(
            ReservoirRun reservoir,
            List<TrayRun> trays,
            boolean refillsWhenEmpty,
            LocalDate start,
            double bendMost,
            boolean isLoose) {
        this.isLoose = isLoose;
        this.reservoir = reservoir;
        this.trays = trays.toArray(TrayRun[]::new);
        this.refillsWhenEmpty = refillsWhenEmpty;
        water =
                new FeedWater(
                        reservoir.reservoir,
                        trays.stream().map(run -> run.tray).toList(),
                        reservoir.water,
                        trays.stream().map(run -> run.water).toList(),
                        bendMost);
        settingM = trays.stream().mapToDouble(run -> run.settingM).toArray();
        faults = new ValveFault[trays.size()];
        for (int i = 0; i < faults.length; i++) {
            Tray tray = trays.get(i).tray;
            Filling.ByValve valve = (Filling.ByValve) tray.filling();
            double headM =
                    reservoir.surfaceWhenFullM()
                            - tray.floorAboveBenchM()
                            - valve.seatAboveFloorM();
            double leak =
                    valve.faults().seepM3PerS() > 0
                            ? water.lines.openingOfLeak(
                                    i, valve.faults().seepM3PerS(), headM, reservoir.tempC)
                            : 0;
            faults[i] = new ValveFault(valve.faults(), start, Math.min(1, leak));
        }
    }

    /**
     * Whether nothing is about to change course within a span: every tray is quiet, its valve
     * sound, and the reservoir feeds them all through it.
     */
    boolean isQuiet(double timeS, double spanS) {
        double mostM3 = reservoir.evaporationM3PerS * spanS;
        for (int i = 0; i < trays.length; i++) {
            if (!faults[i].isSound() || !trays[i].isQuiet(timeS)) {
                return false;
            }
            mostM3 += trays[i].mostLossM3(spanS);
        }
        return mostM3 < reservoir.leftToFeedM3();
    }

    /** Pours a refill at the stated moment. */
    interface Refiller {
        void refill(ReservoirRun reservoir, double atS);
    }

    void step(double timeS, double spanS, Refiller refiller, EventLog log) {
        water.looseFactor = isLoose ? looseFactor(spanS) : 1;
        begin(timeS + 0.5 * spanS);
        double doneS = 0;
        for (int pieces = 0; spanS - doneS > NO_TIME_S; pieces++) {
            if (refillsWhenEmpty && reservoir.isSpent()) {
                refiller.refill(reservoir, timeS + doneS);
                if (reservoir.water.wasDisturbed()) {
                    water.changed();
                }
            }
            boolean wasCovered = !reservoir.water.uncovered;
            double beforeM3 = reservoir.water.m3;
            double tookS = water.advance(spanS - doneS);
            doneS += tookS;
            reservoir.lose(beforeM3, water.outM3, water.evaporatedM3, water.thinningSPerM3);
            double rise =
                    water.thinningSPerM3 > 0
                            ? Elementary.expm1(water.evaporationM3PerS * water.thinningSPerM3)
                            : 0;
            for (int i = 0; i < trays.length; i++) {
                TrayRun tray = trays[i];
                double share = water.outM3 > 0 ? water.inM3[i] / water.outM3 : 0;
                tray.took(
                        water.inM3[i],
                        water.evapotranspiredM3[i],
                        water.spiltM3[i],
                        reservoir.letOutMol,
                        share,
                        rise + water.spillRiseFrac[i]);
                if (water.spiltM3[i] > 0 && !tray.spills) {
                    tray.spills = true;
                    log.add(Event.Kind.OVERFLOW_BEGAN, timeS + doneS - tookS, tray.tray.id());
                }
            }
            if (wasCovered && reservoir.water.uncovered) {
                log.add(Event.Kind.OUTLET_UNCOVERED, timeS + doneS, reservoir.reservoir.id());
            }
            if (pieces == LOOSE_PIECES_MOST) {
                water.looseFactor = 1;
            }
            if (pieces > PIECES_MOST) {
                throw new IllegalStateException(
                        "a step of %s s at %s s does not end".formatted(spanS, timeS));
            }
        }
        for (int i = 0; i < trays.length; i++) {
            trays[i].spills &= water.regime.water[i] == FeedRegime.Water.BRIM;
        }
    }

    /** What a piece of a step may be off by over one of ten minutes: by the cube of its length. */
    static double looseFactor(double spanS) {
        double over = spanS / Simulation.EXACT_UP_TO_S;
        return over > 1 ? Math.min(LOOSE_MOST, over * over * over) : 1;
    }

    private void begin(double middleS) {
        water.evaporationM3PerS = reservoir.evaporationM3PerS;
        boolean same = !reservoir.water.wasDisturbed();
        for (int i = 0; i < trays.length; i++) {
            TrayRun tray = trays[i];
            same &= !tray.water.wasDisturbed();
            water.evapotranspirationM3PerS[i] = tray.evapotranspirationM3PerS;
            if (tray.settingM != settingM[i]) {
                settingM[i] = tray.settingM;
                water.set(i, settingM[i]);
            }
            if (faults[i].isSound()) {
                continue;
            }
            double clear = faults[i].clearFrac(middleS);
            double leak = faults[i].leakFrac(middleS);
            double stuck = faults[i].stuckFrac(middleS);
            same &= water.clearFrac[i] == clear && water.leakFrac[i] == leak;
            same &= Double.compare(water.stuckFrac[i], stuck) == 0; // also where both are none
            water.clearFrac[i] = clear;
            water.leakFrac[i] = leak;
            water.stuckFrac[i] = stuck;
        }
        if (!(Math.abs(reservoir.tempC - viscosityAtC) <= TEMP_MOVED_K)) {
            viscosityAtC = reservoir.tempC;
            water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(viscosityAtC);
            // A long step starts with the flows its forerunner ended with: so the warmth of the
            // solution changes along the step and not at its start.
            same &= water.looseFactor > 1;
        }
        if (!same) {
            water.changed();
        }
    }
}
