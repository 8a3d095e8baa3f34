package tideless.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tideless.rig.Filling;
import tideless.rig.Liquid;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Meter;

/**
 * Enters a log into a run: does what it says was done, when it was done; notes what each reading
 * would have been; and sets a level that no valve holds to what was read, since whatever was drunk
 * or spilt in between nobody knows. What this adds or takes is accounted for. Scratch space of one
 * run.
 */
final class LoggedDays {
    private final Scenario scenario;
    private final List<LogEntry> entries;
    private final VisitRules rules;
    private final Meter[] trayMeters;
    private final double meterFrac;
    private final double co2Ppm;
    private final EventLog log;
    private final List<Double> read = new ArrayList<>();
    private int next;

    // By readings.
    double foundM3;
    double missedM3;
    final double[] foundMol = new double[Component.COUNT];
    final double[] missedMol = new double[Component.COUNT];

    /**
     * @param trayMeters one a tray
     * @param co2Ppm of the air reservoirs stand in
     */
    LoggedDays(
            Scenario scenario,
            VisitRules rules,
            Meter[] trayMeters,
            double meterFrac,
            double co2Ppm,
            EventLog log) {
        this.scenario = scenario;
        this.rules = rules;
        this.trayMeters = trayMeters;
        this.meterFrac = meterFrac;
        this.co2Ppm = co2Ppm;
        this.log = log;
        entries = scenario.log().entries();
    }

    /** By reading of the log; NaN for those the run did not come to. */
    List<Double> read() {
        List<Double> all = new ArrayList<>(read);
        while (all.size() < scenario.log().readings().size()) {
            all.add(Double.NaN);
        }
        return all;
    }

    /** Enters all that was written up to now. */
    void enter(double timeS, double airC, List<ReservoirRun> reservoirs, List<TrayRun> trays) {
        while (next < entries.size() && entries.get(next).atS() <= timeS) {
            LogEntry entry = entries.get(next++);
            if (entry instanceof LogEntry.Reading reading) {
                read(reading, reservoirs, trays);
            } else if (entry instanceof LogEntry.Deed deed) {
                if (deed.where().kind() == VesselId.Kind.RESERVOIR) {
                    todo(deed, reservoir(deed.where(), reservoirs), timeS);
                } else {
                    todo(deed, tray(deed.where(), trays), timeS, airC);
                }
            }
        }
    }

    private static ReservoirRun reservoir(VesselId where, List<ReservoirRun> reservoirs) {
        for (ReservoirRun run : reservoirs) {
            if (run.reservoir.id().equals(where)) {
                return run;
            }
        }
        throw new IllegalArgumentException("a log of another rig: " + where);
    }

    private static TrayRun tray(VesselId where, List<TrayRun> trays) {
        for (TrayRun run : trays) {
            if (run.tray.id().equals(where)) {
                return run;
            }
        }
        throw new IllegalArgumentException("a log of another rig: " + where);
    }

    private void read(
            LogEntry.Reading reading, List<ReservoirRun> reservoirs, List<TrayRun> trays) {
        boolean isLevel = reading.what() == LogEntry.Quantity.LEVEL;
        if (reading.where().kind() == VesselId.Kind.RESERVOIR) {
            ReservoirRun run = reservoir(reading.where(), reservoirs);
            read.add(expected(reading.what(), run));
            if (isLevel && reading.counts()) {
                double m3 = run.reservoir.shape().volumeM3(reading.value());
                run.drawnBeside(run.water.m3 - m3);
                count(set(run.water, run.mol, m3, scenario.feedOf(run.reservoir)));
                if (m3 > run.reservoir.deadM3()) {
                    run.water.cover();
                }
            }
        } else {
            TrayRun run = tray(reading.where(), trays);
            read.add(expected(reading.what(), run));
            if (isLevel && reading.counts() && !(run.tray.filling() instanceof Filling.ByValve)) {
                double m3 = run.tray.shape().volumeM3(reading.value());
                double[] added = set(run.water, run.salts.mol, m3, scenario.feedOf(run.tray));
                count(added);
                for (int i = 0; i < Component.COUNT; i++) {
                    run.salts.setByReadingMol[i] += added[i];
                }
                run.setByReadingM3 += added[Component.COUNT];
            }
        }
    }

    private double expected(LogEntry.Quantity what, ReservoirRun run) {
        return switch (what) {
            case LEVEL -> run.reservoir.shape().levelM(run.water.m3);
            case POURED -> run.missingM3();
            case TEMPERATURE -> run.tempC;
            case EC, PH -> {
                Meter meter = new Meter(co2Ppm);
                meter.dipInto(run.tempC, co2Ppm);
                yield metered(what, run.mol, run.water.m3, meter);
            }
            case FRESH_MASS, ROOT_LENGTH -> Double.NaN;
        };
    }

    private double expected(LogEntry.Quantity what, TrayRun run) {
        return switch (what) {
            case LEVEL -> run.levelM();
            case POURED ->
                    run.tray.filling() instanceof Filling.ByHand hand
                            ? run.missingM3(hand.toLevelM())
                            : Double.NaN;
            case TEMPERATURE -> run.tempC;
            case EC, PH -> {
                Meter meter = trayMeters[run.index];
                meter.dipInto(run.tempC, run.solutionCo2Ppm());
                yield metered(what, run.salts.mol, run.water.m3, meter);
            }
            case FRESH_MASS -> run.freshG();
            case ROOT_LENGTH -> run.rootLengthM();
        };
    }

    private double metered(LogEntry.Quantity what, double[] mol, double m3, Meter meter) {
        if (!(m3 > 0)) {
            return Double.NaN;
        }
        meter.read(Arrays.stream(mol).map(each -> each / m3).toArray());
        return what == LogEntry.Quantity.PH ? meter.ph() : meterFrac * meter.ecMsPerCm();
    }

    /** What stands there is as strong as before; a vessel that was dry holds feed. */
    private double[] set(VesselWater water, double[] mol, double toM3, Liquid fed) {
        double wasM3 = water.m3;
        double[] added = new double[mol.length + 1];
        Composition feed = fed.composition();
        for (int i = 0; i < mol.length; i++) {
            double now = wasM3 > 0 ? mol[i] * (toM3 / wasM3) : toM3 * feed.molPerM3(i);
            added[i] = now - mol[i];
            mol[i] = now;
        }
        added[mol.length] = toM3 - wasM3;
        water.put(toM3);
        return added;
    }

    private void count(double[] added) {
        for (int i = 0; i < foundMol.length; i++) {
            foundMol[i] += Math.max(0, added[i]);
            missedMol[i] += Math.max(0, -added[i]);
        }
        foundM3 += Math.max(0, added[foundMol.length]);
        missedM3 += Math.max(0, -added[foundMol.length]);
    }

    private void todo(LogEntry.Deed deed, ReservoirRun run, double timeS) {
        if (deed instanceof LogEntry.FilledUp) {
            rules.refill(run, timeS);
        } else if (deed instanceof LogEntry.Poured poured) {
            double roomM3 =
                    Math.max(
                            0,
                            run.reservoir.shape().volumeM3(run.reservoir.shape().depthM())
                                    - run.water.m3);
            double m3 = Math.min(roomM3, poured.m3());
            run.pour(m3, liquid(poured, scenario.feedOf(run.reservoir)), run.tempC);
            double water = poured.water() ? m3 : 0;
            log.addPoured(Event.Kind.REFILL, timeS, run.reservoir.id(), m3, water);
        }
    }

    private Composition liquid(LogEntry.Poured poured, Liquid feed) {
        return (poured.water() ? scenario.sourceWater() : feed).composition();
    }

    private void todo(LogEntry.Deed deed, TrayRun run, double timeS, double airC) {
        if (deed instanceof LogEntry.FilledUp) {
            if (run.tray.filling() instanceof Filling.ByHand hand) {
                rules.topUp(run, hand, timeS, airC);
            }
        } else if (deed instanceof LogEntry.Poured poured) {
            double m3 = run.pourIn(poured.m3(), liquid(poured, scenario.feedOf(run.tray)), airC);
            double water = poured.water() ? m3 : 0;
            log.addPoured(Event.Kind.TOP_UP, timeS, run.tray.id(), m3, water);
        } else if (deed instanceof LogEntry.Renewed renewed) {
            Event.Kind kind = renewed.flush() ? Event.Kind.FLUSH : Event.Kind.FRESH_SOLUTION;
            double ec = expected(LogEntry.Quantity.EC, run);
            rules.renew(run, kind, timeS, airC, Double.isNaN(ec) ? 0 : ec); // dry: no meter shows
            if (run.tray.filling() instanceof Filling.ByHand hand) {
                rules.topUp(run, hand, timeS, airC); // who fills it again fills it to its mark
            }
        } else if (deed instanceof LogEntry.ValveMoved moved) {
            rules.setValve(run, moved.settingM(), timeS);
        } else if (deed instanceof LogEntry.PlantsLost lost) {
            run.lose(lost.plants(), timeS, log);
        } else if (deed instanceof LogEntry.LeavesPicked picked) {
            run.take(picked.freshG(), timeS, log);
        } else if (deed instanceof LogEntry.Harvested) {
            run.harvestNow(timeS, log);
        }
        // A lamp that was changed burns so in the scenario itself: LogEntry.LampChanged.
    }
}
