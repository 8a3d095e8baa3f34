package tideless.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/** Levels of a log that hardly any plants explain, before anything is learned from it. */
public final class FarLevels {
    /** Plants that drink so many times as much or as little are asked as well; assumed. */
    private static final double TIMES = 2;

    /** A level lies so much beyond theirs before anybody is asked, m; assumed. */
    private static final double BEYOND_M = 0.015;

    private FarLevels() {}

    /**
     * One of them.
     *
     * @param foretoldM from the level or filling before it, m
     * @param lowM if plants drink twice as much
     * @param highM if they drink half as much
     */
    public record Far(LogEntry.Reading reading, double foretoldM, double lowM, double highM) {}

    /** Finds them. */
    public static List<Far> of(Scenario scenario) {
        if (scenario.log().readings().isEmpty()) {
            return List.of();
        }
        Scenario logged =
                Ensemble.atEnsembleStep(scenario)
                        .withDays((int) (scenario.log().lastS() / Time.DAY_S) + 1);
        Season stated = season(logged, 1);
        List<Double> more = season(logged, TIMES).read();
        List<Double> less = season(logged, 1 / TIMES).read();
        List<Far> far = new ArrayList<>();
        List<LogEntry.Reading> all = scenario.log().readings();
        for (int i = 0; i < all.size(); i++) {
            LogEntry.Reading one = all.get(i);
            if (!isJudged(scenario, one) || Untold.isBefore(scenario, stated.events(), one)) {
                continue;
            }
            double[] three = {stated.read().get(i), more.get(i), less.get(i)};
            double low = DoubleStream.of(three).min().orElseThrow();
            double high = DoubleStream.of(three).max().orElseThrow();
            if (one.value() < low - BEYOND_M || one.value() > high + BEYOND_M) {
                far.add(new Far(one, three[0], low, high));
            }
        }
        return far;
    }

    private static boolean isJudged(Scenario scenario, LogEntry.Reading one) {
        return one.counts()
                && one.what() == LogEntry.Quantity.LEVEL
                && scenario.tray(one.where())
                        .map(Tray::filling)
                        .filter(filling -> filling instanceof Filling.ByValve)
                        .isEmpty();
    }

    private static Season season(Scenario logged, double times) {
        Map<String, Correction.OfCrop> crops = new HashMap<>();
        for (Planting planting : logged.plantings()) {
            crops.put(planting.cropName(), new Correction.OfCrop(times, 1, 1, 1));
        }
        Scenario rig =
                new Correction(crops, 1, 1, 1, Map.of(), Map.of(), Map.of(), Map.of())
                        .applied(logged);
        return Simulation.season(rig, Surroundings.forSeasons(rig));
    }
}
