package tideless.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/** What is to be read next, and the figure the next dates hang on. */
final class NextReadings {
    private static final double MOST_DAYS = 7;
    private static final double SOON_DAYS = 3;

    /** Half step of a slope, in standard deviations of the prior. */
    private static final double STEP = 0.05;

    private final LoggedReadings readings;
    private final Scenario scenario;
    private final Posterior posterior;
    private final List<LogEntry.Reading> virtual = new ArrayList<>();
    private final List<Double> inDays = new ArrayList<>();
    private final double[][] slope; // by virtual reading and unknown, in its own unit
    private final double[] expected;
    private final double[] figure;

    /**
     * Looks for them.
     *
     * @param rigs what comes next in rigs that yours might be
     */
    NextReadings(LoggedReadings readings, Found found, ComingDates rigs)
            throws InterruptedException {
        this.readings = readings;
        scenario = readings.scenario();
        FitSpace space = found.space();
        posterior = found.posterior();
        double lastS = scenario.log().lastS();
        double leftDays = scenario.days() - 1e-6 - lastS / Time.DAY_S;
        double soonDays = Math.min(SOON_DAYS, 0.5 * leftDays);
        Map<VesselId, Double> fullM = fullM();
        Map<VesselId, Double> mostDays = new HashMap<>();
        for (VesselId where : fullM.keySet()) {
            double toFill = Math.floor((rigs.filledS(where) - lastS) / Time.DAY_S);
            double most = Math.min(Math.min(MOST_DAYS, Math.max(1, toFill)), 0.5 * leftDays);
            mostDays.put(where, most);
            add(where, LogEntry.Quantity.LEVEL, most);
        }
        for (Reservoir reservoir : scenario.reservoirs()) {
            VesselId where = reservoir.id();
            add(where, LogEntry.Quantity.LEVEL, Math.min(soonDays, mostDays.get(where)));
        }
        for (Tray tray : scenario.trays()) {
            if (isTaken(tray.id())) {
                continue;
            }
            add(tray.id(), LogEntry.Quantity.LEVEL, soonDays);
            add(tray.id(), LogEntry.Quantity.EC, soonDays);
            if (tray.planting() instanceof Planting.OfCrop) {
                add(tray.id(), LogEntry.Quantity.FRESH_MASS, soonDays);
            }
        }
        double[][] points = new double[2 * space.size() + 1][];
        for (int k = 0; k < space.size(); k++) {
            points[2 * k] = posterior.mode().clone();
            points[2 * k + 1] = posterior.mode().clone();
            points[2 * k][k] += STEP;
            points[2 * k + 1][k] -= STEP;
        }
        points[2 * space.size()] = posterior.mode();
        double[][] read = read(space, points);
        expected = read[2 * space.size()];
        slope = new double[virtual.size()][space.size()];
        for (int v = 0; v < slope.length; v++) {
            for (int k = 0; k < space.size(); k++) {
                double rise = (read[2 * k][v] - read[2 * k + 1][v]) / (2 * STEP);
                slope[v][k] = Double.isNaN(rise) ? 0 : rise;
            }
        }
        figure = mostDoubtful(List.copyOf(fullM.values()));
    }

    /** Vessels whose level falls as plants drink, and how full they may be. */
    private Map<VesselId, Double> fullM() {
        Map<VesselId, Double> fullM = new LinkedHashMap<>();
        scenario.reservoirs().forEach(r -> fullM.put(r.id(), r.fullLevelM()));
        for (Tray tray : scenario.trays()) {
            if (!(tray.filling() instanceof Filling.ByValve)) {
                fullM.put(tray.id(), tray.overflowM());
            }
        }
        return fullM;
    }

    /**
     * The dates hang on the level that is known least, as a share of what its vessel holds, just
     * before it is filled again.
     */
    private double[] mostDoubtful(List<Double> fullM) {
        int most = 0;
        for (int v = 1; v < fullM.size(); v++) {
            if (doubt(v, fullM.get(v)) > doubt(most, fullM.get(most))) {
                most = v;
            }
        }
        return slope[most];
    }

    private double doubt(int v, double fullM) {
        return posterior.deviationOf(slope[v]) / fullM;
    }

    private boolean isTaken(VesselId where) {
        return scenario.log().entries().stream()
                .anyMatch(
                        e -> e instanceof LogEntry.Harvested taken && taken.where().equals(where));
    }

    private void add(VesselId where, LogEntry.Quantity what, double days) {
        virtual.add(
                new LogEntry.Reading(
                        scenario.log().lastS() + days * Time.DAY_S,
                        where,
                        what,
                        0,
                        false,
                        virtual.size())); // told apart by their line
        inDays.add(days);
    }

    private double[][] read(FitSpace space, double[][] points) throws InterruptedException {
        List<LogEntry> entries = new ArrayList<>(scenario.log().entries());
        List<LogEntry.Reading> rising = new ArrayList<>(virtual);
        rising.sort(Comparator.comparingDouble(LogEntry.Reading::atS));
        entries.addAll(rising);
        double lastS = rising.get(rising.size() - 1).atS();
        Scenario longer =
                readings.coarse()
                        .withDays((int) (lastS / Time.DAY_S) + 1)
                        .withLog(new Log(entries));
        Surroundings around = Surroundings.forSeasons(longer);
        int before = scenario.log().readings().size();
        int[] at = virtual.stream().mapToInt(v -> before + rising.indexOf(v)).toArray();
        return readings.workers()
                .each(
                        points.length,
                        p -> {
                            List<Double> all =
                                    Simulation.season(
                                                    space.at(points[p]).applied(longer),
                                                    around,
                                                    space.departures(points[p]))
                                            .read();
                            return Arrays.stream(at).mapToDouble(all::get).toArray();
                        })
                .toArray(double[][]::new);
    }

    /** How the figure that the next dates hang on moves with the unknowns. */
    double[] figure() {
        return figure;
    }

    /** Those not taken yet, the best first. */
    List<Fit.Next> next() {
        Map<String, Fit.Next> best = new HashMap<>();
        List<Fit.Next> all = new ArrayList<>();
        for (int v = 0; v < virtual.size(); v++) {
            LogEntry.Reading one = virtual.get(v);
            double value = expected[v];
            double off = deviationOf(one, value);
            if (!(off > 0) || Double.isNaN(value)) {
                continue;
            }
            double[] own = Arrays.stream(slope[v]).map(s -> s / off).toArray();
            Fit.Next next =
                    new Fit.Next(
                            one.what(),
                            one.where(),
                            inDays.get(v),
                            posterior.shareLeftAfter(figure, own));
            if (best.putIfAbsent(one.what() + " " + one.where() + inDays.get(v), next) == null) {
                all.add(next);
            }
        }
        all.sort(Comparator.comparingDouble(Fit.Next::shareLeft));
        return all;
    }

    private double deviationOf(LogEntry.Reading one, double value) {
        LogEntry.Reading read =
                new LogEntry.Reading(
                        one.atS(),
                        one.where(),
                        one.what(),
                        Double.isNaN(value) ? 0 : value,
                        true,
                        0);
        return Believed.deviation(scenario, read, read.value(), 1).orElse(0.0);
    }
}
