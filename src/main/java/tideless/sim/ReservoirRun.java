package tideless.sim;

import tideless.physics.Elementary;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.solution.Component;
import tideless.solution.Composition;

/** One reservoir while a run goes on; scratch space of one run. */
final class ReservoirRun {
    /**
     * A reservoir is refilled that holds less than this times what would be drawn until the next
     * visit at the last days' pace; assumed: a young crop's thirst doubles in some ten days.
     */
    private static final double DRAW_MARGIN = 1.5;

    /** Share of what it gives when full that drives next to nothing; assumed. */
    private static final double SPENT_FRAC = 0.02;

    /** Less than this tells no seat from an outlet: a millilitre. */
    private static final double NOTHING_M3 = 1e-6;

    final Reservoir reservoir;
    final int index;
    private final double deadM3;
    private final double fullM3;
    private final double feedingM3;

    final VesselWater water;
    final double[] mol = new double[Component.COUNT];
    final double[] letOutMol = new double[Component.COUNT];
    final Precipitate precipitate = new Precipitate();
    double tempC;
    double leakM3PerS; // of solution, where nothing drinks it

    // Rates and totals of this step.
    double evaporationM3PerS;
    private final Surface surface;
    private double gainW;
    private double conductanceWPerK;
    double outflowM3;
    double evaporatedM3;
    double refillM3;

    // What somebody who looks can know.
    private double lookedAtS;
    private double drawnSinceLookM3;
    private double drawnPerDayM3;

    // Ledgers.
    double refilledTotalM3;
    double evaporatedTotalM3;
    double leakedTotalM3;
    final double[] refilledMol = new double[Component.COUNT];
    final double[] leakedMol = new double[Component.COUNT];

    /**
     * Filled as it is at the start.
     *
     * @param feedingM3 what it gives when full before one of its trays gets nothing more: see
     *     {@link tideless.rig.Scenario#feedingM3}
     */
    ReservoirRun(
            Reservoir reservoir, int index, double feedingM3, Composition feed, double startTempC) {
        this.reservoir = reservoir;
        this.index = index;
        this.feedingM3 = feedingM3;
        deadM3 = reservoir.deadM3();
        fullM3 = reservoir.fullM3();
        water = new VesselWater(reservoir.shape().volumeM3(reservoir.startLevelM()));
        for (int i = 0; i < mol.length; i++) {
            mol[i] = water.m3 * feed.molPerM3(i);
        }
        tempC = startTempC;
        water.uncovered = water.m3 <= deadM3;
        surface = new Surface(reservoir.openAreaM2(), reservoir.shape());
    }

    double usableM3() {
        return Math.max(0, water.m3 - deadM3);
    }

    /** What it still gives before one of its trays gets nothing more, m3. */
    double leftToFeedM3() {
        return Math.max(0, water.m3 - (fullM3 - feedingM3));
    }

    /**
     * Whether it is as good as empty: the outlet has come out, or, where a seat stands above the
     * outlet, next to nothing stands above that seat. The last of it would run for weeks, ever
     * slower.
     */
    boolean isSpent() {
        boolean endsAtSeat = feedingM3 < fullM3 - deadM3 - NOTHING_M3;
        return water.uncovered || (endsAtSeat && feedingM3 > 0 && feedingFrac() < SPENT_FRAC);
    }

    /** The same as a share of what it gives when full; none where it feeds not even then. */
    double feedingFrac() {
        return feedingM3 > 0 ? leftToFeedM3() / feedingM3 : 0;
    }

    /** Height of the surface above the bench when full, m. */
    double surfaceWhenFullM() {
        return reservoir.floorAboveBenchM() + reservoir.fullLevelM();
    }

    /** Before the visits of a step: what it brings is counted from here. */
    void openAccounts() {
        outflowM3 = 0;
        evaporatedM3 = 0;
        refillM3 = 0;
    }

    void begin(int step, double spanS, AirSeries air) {
        leak(spanS);
        Shape shape = reservoir.shape();
        gainW = VesselHeat.gainW(shape, reservoir.openAreaM2(), air.sunWPerM2(step));
        conductanceWPerK = VesselHeat.conductanceWPerK(shape, shape.levelM(water.m3));
        surface.begin(
                tempC,
                gainW,
                conductanceWPerK,
                VesselHeat.capacityJPerK(water.m3, tempC),
                spanS,
                air,
                step);
        evaporationM3PerS = surface.m3PerS;
    }

    // From a wall or a tube, at an even pace, at the start of the step.
    private void leak(double spanS) {
        if (!(leakM3PerS > 0) || !(water.m3 > 0)) {
            return;
        }
        double out = Math.min(water.m3, leakM3PerS * spanS);
        double share = out / water.m3;
        for (int i = 0; i < mol.length; i++) {
            double gone = share * mol[i];
            mol[i] -= gone;
            leakedMol[i] += gone;
        }
        water.put(water.m3 - out);
        leakedTotalM3 += out;
        drawnBeside(out);
    }

    /** Left without being let out to the trays, or was found to have, m3; below 0 for found. */
    void drawnBeside(double m3) {
        drawnSinceLookM3 += m3;
    }

    /**
     * Lets solution out to the trays and water out to the air: d ln M/dt = -out/V = d ln V/dt +
     * e/V, so that what stays of M is what stays of V and what the evaporation has thickened it by.
     * What the solution carried is in {@link #letOutMol}.
     *
     * @param beforeM3 what it held before, m3
     * @param thinningSPerM3 integral of time over the volume, s/m3; unused without evaporation
     */
    void lose(double beforeM3, double outM3, double evaporatedNowM3, double thinningSPerM3) {
        double after = water.m3;
        double share = 0;
        if (outM3 > 0) {
            share =
                    evaporatedNowM3 > 0 && after > 0
                            ? -Elementary.expm1(
                                    Elementary.log(after / beforeM3)
                                            + evaporationM3PerS * thinningSPerM3)
                            : outM3 / beforeM3;
            share = Math.max(0, Math.min(1, share));
        }
        for (int i = 0; i < mol.length; i++) {
            letOutMol[i] = share * mol[i];
            mol[i] -= letOutMol[i];
        }
        drawnSinceLookM3 += outM3 + evaporatedNowM3;
        outflowM3 += outM3;
        evaporatedM3 += evaporatedNowM3;
        evaporatedTotalM3 += evaporatedNowM3;
    }

    /** What a refill would pour, m3. */
    double missingM3() {
        return Math.max(0, fullM3 - water.m3);
    }

    /** Pours in, m3. */
    void pour(double poured, Composition feed, double feedC) {
        if (!(poured > 0)) {
            return;
        }
        tempC += (feedC - tempC) * poured / (water.m3 + poured);
        for (int i = 0; i < mol.length; i++) {
            double added = poured * feed.molPerM3(i);
            mol[i] += added;
            refilledMol[i] += added;
        }
        water.put(water.m3 + poured);
        refillM3 += poured;
        refilledTotalM3 += poured;
        if (water.m3 > deadM3) {
            water.cover();
        }
    }

    /** Fills to full; returns what was poured, m3. */
    double refill(Composition feed, double feedC) {
        double poured = missingM3();
        pour(poured, feed, feedC);
        return poured;
    }

    /** Somebody looks: what left since the last look is all that is known of the thirst to come. */
    void lookedAt(double timeS) {
        double days = (timeS - lookedAtS) / Time.DAY_S;
        if (days > 0) {
            drawnPerDayM3 = drawnSinceLookM3 / days;
            lookedAtS = timeS;
            drawnSinceLookM3 = 0;
        }
    }

    /**
     * Whether what is left would last for so long: by the draw since the last look, or the one
     * before it where that was more, with a margin for a crop that grows and air that dries.
     */
    boolean wouldLast(double timeS, double days) {
        double sinceDays = (timeS - lookedAtS) / Time.DAY_S;
        double now = sinceDays > 0 ? drawnSinceLookM3 / sinceDays : 0;
        return leftToFeedM3() >= DRAW_MARGIN * Math.max(now, drawnPerDayM3) * days;
    }

    void end(int step, double spanS, AirSeries air) {
        if (water.m3 > 0) {
            tempC =
                    VesselHeat.after(
                            tempC,
                            air.tempC[step],
                            gainW,
                            conductanceWPerK,
                            surface,
                            VesselHeat.capacityJPerK(water.m3, tempC),
                            spanS);
        } else {
            tempC = air.tempC[step];
        }
    }
}
