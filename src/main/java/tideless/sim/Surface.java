package tideless.sim;

import tideless.physics.HumidAir;
import tideless.physics.LiquidWater;
import tideless.physics.OpenWater;
import tideless.rig.Shape;

/**
 * Evaporation of one vessel's open surface in a step; scratch space of one run.
 *
 * <p>It is taken at the temperature the solution has in the mean of the step, which it itself helps
 * to set ({@link VesselHeat#meanC}): so the hour after air has switched loses the same, whether it
 * is gone through in one step or in sixty (docs/model.md states the error).
 */
final class Surface {
    /**
     * The transfer coefficient is worked out anew when the solution has moved by this much, K: a
     * quarter of a percent of it at most, where free convection drives it over a kelvin or more.
     * The step's mean temperature is found to as much.
     */
    private static final double TEMP_MOVED_K = 0.01;

    /**
     * In a longer step by so much more as the root of its length, s: within it the solution moves
     * by kelvins, and its mean stands for all of it.
     */
    private static final double EXACT_UP_TO_S = Simulation.EXACT_UP_TO_S;

    /** Rounds in which the mean temperature of a step is found; one or two do. */
    private static final int MOST_ROUNDS = 5;

    /** Width of a hole in the deck, m: a net cup's hole; assumed. */
    private static final double HOLE_M = 0.05;

    private final double areaM2;
    private final double lengthM;
    private double knownAtC = Double.NaN;
    private double transferMPerS;
    private double saturatedPa; // at atC
    private final LossTable[] tables = new LossTable[AirSeries.KINDS_MOST];
    private boolean isOfTable; // what it loses, in the air of the step before

    /** Water lost, m3/s; dew is not collected. */
    double m3PerS;

    /** Its rise with the solution's temperature, m3/s/K. */
    double slopeM3PerSK;

    /** Temperature of the solution at which both hold, degC. */
    double atC;

    /**
     * @param areaM2 open to the air, m2; 0 for none
     * @param shape the vessel's inside
     */
    Surface(double areaM2, Shape shape) {
        this.areaM2 = areaM2;
        lengthM = lengthM(areaM2, shape);
    }

    /**
     * Area over perimeter of what is open, m. Where most is covered, that of round holes of {@link
     * #HOLE_M}; where all is open, that of the rim; between them in proportion to the share that is
     * open (assumed; of one slot across a tray it is about right).
     */
    static double lengthM(double areaM2, Shape shape) {
        double openFrac = areaM2 / shape.rimAreaM2();
        double holeM = Math.min(HOLE_M, Math.sqrt(4 * areaM2 / Math.PI));
        double wholeM = shape.rimAreaM2() / shape.rimPerimeterM();
        return (1 - openFrac) * holeM / 4 + openFrac * wholeM;
    }

    /**
     * Works out {@link #m3PerS} and {@link #slopeM3PerSK} for a step.
     *
     * @param startC solution at its start, degC
     * @param gainW absorbed light, W
     * @param conductanceWPerK through walls and deck, W/K
     * @param heatCapacityJPerK of the solution, J/K; 0 when there is none
     */
    void begin(
            double startC,
            double gainW,
            double conductanceWPerK,
            double heatCapacityJPerK,
            double spanS,
            AirSeries air,
            int step) {
        if (!(areaM2 > 0) || !(heatCapacityJPerK > 0)) {
            m3PerS = 0;
            slopeM3PerSK = 0;
            atC = startC;
            renew();
            return;
        }
        double movedK = TEMP_MOVED_K * Math.sqrt(Math.max(1, spanS / EXACT_UP_TO_S));
        double airC = air.tempC[step];
        boolean byTable = spanS > EXACT_UP_TO_S && air.kind[step] != AirSeries.OF_NO_KIND;
        boolean goesOn = byTable && isOfTable && air.sameAsBefore[step];
        isOfTable = byTable;
        if (byTable) {
            knownAtC = Double.NaN;
            if (!goesOn) {
                loseByTable(startC, air, step);
            }
            for (int round = 0; round < MOST_ROUNDS; round++) {
                double towardsC =
                        VesselHeat.meanC(
                                startC,
                                airC,
                                gainW,
                                conductanceWPerK,
                                this,
                                heatCapacityJPerK,
                                spanS);
                if (Math.abs(towardsC - atC) <= movedK && (round > 0 || !goesOn)) {
                    moveTo(towardsC);
                    return;
                }
                loseByTable(towardsC, air, step);
            }
            return;
        }
        double meanC = startC;
        if (!Double.isNaN(knownAtC)) {
            // Where the coefficient as it was would lead: near enough, mostly, for one round.
            if (!air.sameAsBefore[step]) {
                knownAtC = Double.NaN;
                lose(air, step);
            }
            meanC =
                    VesselHeat.meanC(
                            startC, airC, gainW, conductanceWPerK, this, heatCapacityJPerK, spanS);
        }
        for (int round = 0; round < MOST_ROUNDS; round++) {
            atC = meanC;
            saturatedPa = HumidAir.saturationPressurePa(atC);
            findTransfer(air, step, movedK);
            lose(air, step);
            meanC =
                    VesselHeat.meanC(
                            startC, airC, gainW, conductanceWPerK, this, heatCapacityJPerK, spanS);
            if (Math.abs(meanC - atC) <= movedK) {
                break;
            }
        }
        moveTo(meanC);
    }

    /** The rest of the way, by the slope. */
    private void moveTo(double tempC) {
        double by = tempC - atC;
        m3PerS = Math.max(0, m3PerS + slopeM3PerSK * by);
        saturatedPa += HumidAir.saturationSlopePaPerK(atC, saturatedPa) * by;
        atC = tempC;
    }

    /** Other water stands there now: what was known of its surface tells nothing. */
    void renew() {
        knownAtC = Double.NaN;
        isOfTable = false;
    }

    private void loseByTable(double tempC, AirSeries air, int step) {
        int kind = air.kind[step];
        LossTable table = tables[kind];
        if (table == null) {
            table = new LossTable();
            tables[kind] = table;
        }
        int knot = LossTable.knotBelow(tempC);
        if (table.isUnknown(knot)) {
            for (int k = knot; k <= knot + 1; k++) {
                if (table.lacks(k)) {
                    loseInFull(LossTable.atC(k), air, step);
                    table.put(k, m3PerS, slopeM3PerSK);
                }
            }
            loseInFull(LossTable.atC(knot) + 0.5 * LossTable.APART_K, air, step);
            table.judge(knot, m3PerS);
        }
        if (!table.isStraight(knot)) {
            loseInFull(tempC, air, step);
            return;
        }
        double on = tempC / LossTable.APART_K - knot;
        m3PerS = table.m3PerS(knot, on);
        slopeM3PerSK = table.slopeM3PerSK(knot, on);
        atC = tempC;
    }

    private void loseInFull(double tempC, AirSeries air, int step) {
        atC = tempC;
        saturatedPa = HumidAir.saturationPressurePa(atC);
        knownAtC = Double.NaN;
        findTransfer(air, step, 0);
        lose(air, step);
        knownAtC = Double.NaN;
    }

    private void findTransfer(AirSeries air, int step, double movedK) {
        if (!(Math.abs(atC - knownAtC) <= movedK)) {
            transferMPerS =
                    OpenWater.massTransferMPerS(
                            atC,
                            saturatedPa,
                            air.tempC[step],
                            air.vapourPa[step],
                            air.speedMPerS[step],
                            lengthM,
                            4 * lengthM,
                            air.pressurePa);
            knownAtC = atC;
        }
    }

    /** At {@link #atC}, by the coefficient as it is known. */
    private void lose(AirSeries air, int step) {
        double airC = air.tempC[step];
        double vapourPa = air.vapourPa[step];
        double kgPerM2S =
                transferMPerS
                        * OpenWater.vapourDensityDifferenceKgPerM3(
                                atC, saturatedPa, airC, vapourPa);
        double deficitPa = saturatedPa - vapourPa;
        m3PerS = 0;
        slopeM3PerSK = 0;
        if (kgPerM2S > 0) {
            m3PerS = kgPerM2S * areaM2 / LiquidWater.KG_PER_M3;
            if (deficitPa > 1) {
                slopeM3PerSK =
                        m3PerS * HumidAir.saturationSlopePaPerK(atC, saturatedPa) / deficitPa;
            }
        }
    }
}
