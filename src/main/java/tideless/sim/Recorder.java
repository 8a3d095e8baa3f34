package tideless.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.solution.Component;
import tideless.solution.Meter;

/** Keeps the hourly samples of one run. */
final class Recorder {
    private final int hours;
    private final TrayColumns[] trays;
    private final ReservoirColumns[] reservoirs;
    private int hour;

    /**
     * @param hours samples; 0 to keep nothing
     */
    Recorder(int hours, int trays, int reservoirs) {
        this.hours = hours;
        this.trays = new TrayColumns[trays];
        this.reservoirs = new ReservoirColumns[reservoirs];
        Arrays.setAll(this.trays, i -> new TrayColumns(hours));
        Arrays.setAll(this.reservoirs, i -> new ReservoirColumns(hours));
    }

    void addStep(int step, List<TrayRun> trayRuns, List<ReservoirRun> reservoirRuns) {
        if (hours == 0) {
            return;
        }
        for (TrayRun run : trayRuns) {
            TrayColumns to = trays[run.index];
            to.thirst[hour] += run.thirstM3;
            to.drunk[hour] += run.drunkM3;
            to.evaporated[hour] += run.evaporatedM3;
            to.inflow[hour] += run.inflowM3;
            to.spill[hour] += run.spillM3;
            to.light[hour] += run.lightMolPerM2;
        }
        for (ReservoirRun run : reservoirRuns) {
            ReservoirColumns to = reservoirs[run.index];
            to.outflow[hour] += run.outflowM3;
            to.evaporated[hour] += run.evaporatedM3;
        }
    }

    /** A refill is poured between steps; it belongs to the hour that is open. */
    void addRefill(int reservoir, double pouredM3) {
        if (hours > 0) {
            reservoirs[reservoir].refill[Math.min(hour, hours - 1)] += pouredM3;
        }
    }

    void closeHour(
            int step, AirSeries air, List<TrayRun> trayRuns, List<ReservoirRun> reservoirRuns) {
        if (hours == 0) {
            return;
        }
        for (TrayRun run : trayRuns) {
            TrayColumns to = trays[run.index];
            to.level[hour] = run.levelM();
            to.volume[hour] = run.volumeM3;
            to.temp[hour] = run.tempC;
            to.airTemp[hour] = air.tempC[step];
            to.deficit[hour] =
                    tideless.physics.HumidAir.saturationPressurePa(air.tempC[step])
                            - air.vapourPa[step];
            to.ppfd[hour] = run.ppfdUmolPerM2S;
            to.leafArea[hour] = run.leafAreaIndex();
            to.fresh[hour] = run.freshG();
            to.fruit[hour] = run.fruitFreshG();
            to.rootTip[hour] = run.rootTipM();
            to.wetRoot[hour] = run.wetRootFrac();
            to.usedTo[hour] = run.usedToM();
            for (int i = 0; i < to.mol.length; i++) {
                to.mol[i][hour] = run.mol[i];
            }
        }
        for (ReservoirRun run : reservoirRuns) {
            ReservoirColumns to = reservoirs[run.index];
            to.volume[hour] = run.volumeM3;
            to.usable[hour] = run.usableM3();
            to.temp[hour] = run.tempC;
            for (int i = 0; i < to.mol.length; i++) {
                to.mol[i][hour] = run.mol[i];
            }
        }
        hour++;
    }

    /** The co2 of the air the meters read in, ppm; NaN for no readings at all. */
    TrayTrace trayTrace(int index, Tray tray, double co2Ppm) {
        TrayColumns from = trays[index];
        double[] ec = new double[hours];
        double[] ph = new double[hours];
        readMeter(from.mol, from.volume, co2Ppm, ec, ph);
        return new TrayTrace(
                tray,
                new Series(from.level),
                new Series(from.volume),
                new Series(from.temp),
                new Series(from.thirst),
                new Series(from.drunk),
                new Series(from.evaporated),
                new Series(from.inflow),
                new Series(from.spill),
                new Series(from.airTemp),
                new Series(from.deficit),
                new Series(from.ppfd),
                new Series(from.light),
                new Series(from.leafArea),
                new Series(from.fresh),
                new Series(from.fruit),
                new Series(from.rootTip),
                new Series(from.wetRoot),
                new Series(from.usedTo),
                new Series(ec),
                new Series(ph),
                seriesOf(from.mol));
    }

    ReservoirTrace reservoirTrace(int index, Reservoir reservoir, double co2Ppm) {
        ReservoirColumns from = reservoirs[index];
        double[] ec = new double[hours];
        double[] ph = new double[hours];
        readMeter(from.mol, from.volume, co2Ppm, ec, ph);
        return new ReservoirTrace(
                reservoir,
                new Series(from.volume),
                new Series(from.usable),
                new Series(from.temp),
                new Series(from.outflow),
                new Series(from.evaporated),
                new Series(from.refill),
                new Series(ec),
                new Series(ph),
                seriesOf(from.mol));
    }

    private static List<Series> seriesOf(double[][] mol) {
        List<Series> series = new ArrayList<>();
        for (double[] values : mol) {
            series.add(new Series(values));
        }
        return series;
    }

    // A vessel that nothing entered or left reads as it did an hour ago.
    private static void readMeter(
            double[][] mol, double[] volume, double co2Ppm, double[] ec, double[] ph) {
        if (Double.isNaN(co2Ppm)) {
            Arrays.fill(ec, Double.NaN);
            Arrays.fill(ph, Double.NaN);
            return;
        }
        Meter meter = new Meter(co2Ppm);
        double[] molPerM3 = new double[mol.length];
        for (int h = 0; h < volume.length; h++) {
            if (!(volume[h] > 0)) {
                ec[h] = Double.NaN;
                ph[h] = Double.NaN;
                continue;
            }
            boolean same = h > 0 && ec[h - 1] > 0;
            for (int i = 0; i < mol.length; i++) {
                double value = mol[i][h] / volume[h];
                same = same && Math.abs(value - molPerM3[i]) <= SAME_FRAC * value;
                if (!same) {
                    break;
                }
            }
            if (same) {
                ec[h] = ec[h - 1];
                ph[h] = ph[h - 1];
                continue;
            }
            for (int i = 0; i < mol.length; i++) {
                molPerM3[i] = mol[i][h] / volume[h];
            }
            meter.read(molPerM3);
            ec[h] = meter.ecMsPerCm();
            ph[h] = meter.ph();
        }
    }

    /** Concentrations that differ by less read the same on any meter; far below its last digit. */
    private static final double SAME_FRAC = 1e-9;

    private static final class TrayColumns {
        final double[] level;
        final double[] volume;
        final double[] temp;
        final double[] thirst;
        final double[] drunk;
        final double[] evaporated;
        final double[] inflow;
        final double[] spill;
        final double[] airTemp;
        final double[] deficit;
        final double[] ppfd;
        final double[] light;
        final double[] leafArea;
        final double[] fresh;
        final double[] fruit;
        final double[] rootTip;
        final double[] wetRoot;
        final double[] usedTo;
        final double[][] mol;

        TrayColumns(int hours) {
            level = new double[hours];
            volume = new double[hours];
            temp = new double[hours];
            thirst = new double[hours];
            drunk = new double[hours];
            evaporated = new double[hours];
            inflow = new double[hours];
            spill = new double[hours];
            airTemp = new double[hours];
            deficit = new double[hours];
            ppfd = new double[hours];
            light = new double[hours];
            leafArea = new double[hours];
            fresh = new double[hours];
            fruit = new double[hours];
            rootTip = new double[hours];
            wetRoot = new double[hours];
            usedTo = new double[hours];
            mol = new double[Component.COUNT][hours];
        }
    }

    private static final class ReservoirColumns {
        final double[] volume;
        final double[] usable;
        final double[] temp;
        final double[] outflow;
        final double[] evaporated;
        final double[] refill;
        final double[][] mol;

        ReservoirColumns(int hours) {
            volume = new double[hours];
            usable = new double[hours];
            temp = new double[hours];
            outflow = new double[hours];
            evaporated = new double[hours];
            refill = new double[hours];
            mol = new double[Component.COUNT][hours];
        }
    }
}
