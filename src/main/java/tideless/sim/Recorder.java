package tideless.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.solution.Brine;
import tideless.solution.Component;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Meter;

/** Keeps the hourly samples of one run. */
final class Recorder {
    private static final TraySeries[] OF_TRAY = TraySeries.values();
    private static final ReservoirSeries[] OF_RESERVOIR = ReservoirSeries.values();

    private final int hours;
    private final Samples[] trays;
    private final Samples[] reservoirs;
    // Of a tray, of a component, at the end of an hour.
    private final double[][][] uptakeMol;
    private final double[][][] broughtMol;
    private final double[][][] lostMol;
    private final double[][] accounts; // of a tray, at the end of the last hour
    private int hour;

    /**
     * @param hours samples; 0 to keep nothing
     */
    Recorder(int hours, int trays, int reservoirs) {
        this.hours = hours;
        this.trays = new Samples[trays];
        this.reservoirs = new Samples[reservoirs];
        uptakeMol = new double[trays][Component.COUNT][hours];
        broughtMol = new double[trays][Component.COUNT][hours];
        lostMol = new double[trays][Component.COUNT][hours];
        accounts = new double[trays][OF_TRAY.length];
        Arrays.setAll(this.trays, i -> new Samples(OF_TRAY.length, hours));
        Arrays.setAll(this.reservoirs, i -> new Samples(OF_RESERVOIR.length, hours));
    }

    /** Adds what a step has brought. */
    void addStep(
            int step, AirSeries air, List<TrayRun> trayRuns, List<ReservoirRun> reservoirRuns) {
        if (hours == 0) {
            return;
        }
        for (TrayRun run : trayRuns) {
            for (TraySeries of : OF_TRAY) {
                if (of.kind() == HourlySeries.Kind.FLOW) {
                    trays[run.index].of[of.ordinal()][hour] += of.reader.read(run, air, step);
                }
            }
        }
        for (ReservoirRun run : reservoirRuns) {
            for (ReservoirSeries of : OF_RESERVOIR) {
                if (of.kind() == HourlySeries.Kind.FLOW) {
                    reservoirs[run.index].of[of.ordinal()][hour] += of.reader.applyAsDouble(run);
                }
            }
        }
    }

    /** Takes the states at the end of an hour. */
    void closeHour(
            int step, AirSeries air, List<TrayRun> trayRuns, List<ReservoirRun> reservoirRuns) {
        if (hours == 0) {
            return;
        }
        for (TrayRun run : trayRuns) {
            Samples to = trays[run.index];
            for (TraySeries of : OF_TRAY) {
                if (of.kind() == HourlySeries.Kind.STATE) {
                    to.of[of.ordinal()][hour] = of.reader.read(run, air, step);
                } else if (of.kind() == HourlySeries.Kind.ACCOUNT) {
                    double account = of.reader.read(run, air, step);
                    to.of[of.ordinal()][hour] = account - accounts[run.index][of.ordinal()];
                    accounts[run.index][of.ordinal()] = account;
                }
            }
            to.keep(hour, run.salts.mol);
            for (int i = 0; i < Component.COUNT; i++) {
                uptakeMol[run.index][i][hour] = run.salts.uptakeMol[i];
                broughtMol[run.index][i][hour] = run.salts.broughtMol(i);
                lostMol[run.index][i][hour] = run.salts.lostMol(i) + fallenMol(run, i);
            }
        }
        for (ReservoirRun run : reservoirRuns) {
            Samples to = reservoirs[run.index];
            for (ReservoirSeries of : OF_RESERVOIR) {
                if (of.kind() == HourlySeries.Kind.STATE) {
                    to.of[of.ordinal()][hour] = of.reader.applyAsDouble(run);
                }
            }
            to.keep(hour, run.mol);
        }
        hour++;
    }

    /** What was recorded of a tray; its meter readings are NaN unless {@code read}. */
    TrayTrace trayTrace(TrayRun run, Tray tray, boolean read) {
        int index = run.index;
        Samples from = trays[index];
        double[] co2Ppm = from.of[TraySeries.SOLUTION_CO2.ordinal()];
        double[] levelM = from.of[TraySeries.LEVEL.ordinal()];
        readMeter(
                from.mol,
                from.of[TraySeries.VOLUME.ordinal()],
                h -> levelM[h] >= Brine.NO_PH_BELOW_M,
                from.of[TraySeries.SOLUTION_TEMP.ordinal()],
                read ? h -> co2Ppm[h] : null,
                from.of[TraySeries.EC.ordinal()],
                from.of[TraySeries.PH.ordinal()]);
        Map<TraySeries, Series> series = new EnumMap<>(TraySeries.class);
        for (TraySeries of : OF_TRAY) {
            series.put(of, new Series(from.of[of.ordinal()]));
        }
        return new TrayTrace(
                tray,
                series,
                seriesOf(from.mol),
                seriesOf(uptakeMol[index]),
                seriesOf(broughtMol[index]),
                seriesOf(lostMol[index]),
                run.season().yields().stream().flatMap(y -> y.lost().stream()).toList());
    }

    /** The co2 of the air its meter reads in, ppm; NaN for no readings at all. */
    ReservoirTrace reservoirTrace(int index, Reservoir reservoir, double co2Ppm) {
        Samples from = reservoirs[index];
        readMeter(
                from.mol,
                from.of[ReservoirSeries.VOLUME.ordinal()],
                h -> true, // no roots stand in it
                from.of[ReservoirSeries.SOLUTION_TEMP.ordinal()],
                Double.isNaN(co2Ppm) ? null : h -> co2Ppm,
                from.of[ReservoirSeries.EC.ordinal()],
                from.of[ReservoirSeries.PH.ordinal()]);
        Map<ReservoirSeries, Series> series = new EnumMap<>(ReservoirSeries.class);
        for (ReservoirSeries of : OF_RESERVOIR) {
            series.put(of, new Series(from.of[of.ordinal()]));
        }
        return new ReservoirTrace(reservoir, series, seriesOf(from.mol));
    }

    /** The carbon of lime scale is the air's own. */
    private static double fallenMol(TrayRun run, int component) {
        Component of = Component.at(component);
        return of == Component.C ? 0 : run.precipitate.mol(of);
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
            double[][] mol,
            double[] volume,
            IntPredicate deep,
            double[] tempC,
            IntToDoubleFunction co2Ppm,
            double[] ec,
            double[] ph) {
        if (co2Ppm == null) {
            Arrays.fill(ec, Double.NaN);
            Arrays.fill(ph, Double.NaN);
            return;
        }
        Meter meter = new Meter(ElectricalConductivity.AIR_CO2_PPM);
        double[] molPerM3 = new double[mol.length];
        for (int h = 0; h < volume.length; h++) {
            if (!(volume[h] > 0)) {
                ec[h] = Double.NaN;
                ph[h] = Double.NaN;
                continue;
            }
            boolean same =
                    h > 0
                            && ec[h - 1] > 0
                            && Math.abs(tempC[h] - tempC[h - 1]) <= SAME_K
                            && Math.abs(co2Ppm.applyAsDouble(h) - co2Ppm.applyAsDouble(h - 1))
                                    <= SAME_CO2_FRAC * co2Ppm.applyAsDouble(h);
            for (int i = 0; i < mol.length; i++) {
                double value = mol[i][h] / volume[h];
                same = same && Math.abs(value - molPerM3[i]) <= SAME_FRAC * value;
                if (!same) {
                    break;
                }
            }
            if (same && deep.test(h) == deep.test(h - 1)) {
                ec[h] = ec[h - 1];
                ph[h] = ph[h - 1];
                continue;
            }
            for (int i = 0; i < mol.length; i++) {
                molPerM3[i] = mol[i][h] / volume[h];
            }
            meter.dipInto(tempC[h], co2Ppm.applyAsDouble(h));
            meter.read(molPerM3);
            boolean known = meter.ionicStrengthMolPerKg() <= Brine.BEYOND_IONIC_STRENGTH;
            ec[h] = Math.min(Brine.BEYOND_MS_PER_CM, meter.ecMsPerCm());
            ph[h] = known && deep.test(h) ? meter.ph() : Double.NaN;
        }
    }

    /** Warmth, K, that differs by less moves a pH by less than 0.0001. */
    private static final double SAME_K = 0.01;

    /** Carbon dioxide that differs by less moves a pH by less than 0.00005. */
    private static final double SAME_CO2_FRAC = 1e-4;

    /** Concentrations that differ by less read the same on any meter; far below its last digit. */
    private static final double SAME_FRAC = 1e-9;

    /** Of one vessel: an array for each series, one for each component. */
    private static final class Samples {
        final double[][] of;
        final double[][] mol;

        Samples(int series, int hours) {
            of = new double[series][hours];
            mol = new double[Component.COUNT][hours];
        }

        void keep(int hour, double[] molNow) {
            for (int i = 0; i < mol.length; i++) {
                mol[i][hour] = molNow[i];
            }
        }
    }
}
