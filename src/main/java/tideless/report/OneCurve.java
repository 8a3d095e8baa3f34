package tideless.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tideless.advice.Task;
import tideless.drawing.Alike;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.words.Names;

/**
 * Trays of one build and crop whose curves lie on one another and to which the same is done: drawn
 * once.
 *
 * @param run the one that is drawn
 * @param trays all of them, in the scenario's order
 */
record OneCurve(TrayTrace run, List<Tray> trays) {
    // Less than the line is thick: of the level in m, of the EC in mS/cm, of an hour's thirst in
    // m3.
    private static final double LEVEL_M = 0.001;
    private static final double EC_MS_PER_CM = 0.03;
    private static final double HOURLY_M3 = 1e-6;

    /** More names than this are told by the first and the last. */
    private static final int NAMED = 3;

    OneCurve {
        trays = List.copyOf(trays);
    }

    /** All trays of a forecast, in the order of the first of each. */
    static List<OneCurve> of(Forecast forecast) {
        Trace trace = forecast.trace();
        List<OneCurve> all = new ArrayList<>();
        for (Alike group : Alike.of(trace)) {
            int first = all.size();
            for (Tray tray : group.trays()) {
                TrayTrace run = runOf(trace, tray.id());
                int same = first;
                while (same < all.size() && !all.get(same).isSame(forecast, run)) {
                    same++;
                }
                if (same == all.size()) {
                    all.add(new OneCurve(run, List.of(tray)));
                } else {
                    List<Tray> more = new ArrayList<>(all.get(same).trays());
                    more.add(tray);
                    all.set(same, new OneCurve(all.get(same).run(), more));
                }
            }
        }
        return all;
    }

    private static TrayTrace runOf(Trace trace, VesselId tray) {
        for (TrayTrace run : trace.trays()) {
            if (run.tray().id().equals(tray)) {
                return run;
            }
        }
        throw new IllegalArgumentException("no trace of " + tray);
    }

    private boolean isSame(Forecast forecast, TrayTrace other) {
        return near(run.levelM(), other.levelM(), LEVEL_M)
                && near(run.ecMsPerCm(), other.ecMsPerCm(), EC_MS_PER_CM)
                && near(run.transpirationM3(), other.transpirationM3(), HOURLY_M3)
                && done(forecast, run).equals(done(forecast, other));
    }

    private static boolean near(Series one, Series other, double most) {
        for (int hour = 0; hour < one.size(); hour++) {
            double apart = Math.abs(one.at(hour) - other.at(hour));
            if (apart > most || Double.isNaN(one.at(hour)) != Double.isNaN(other.at(hour))) {
                return false;
            }
        }
        return true;
    }

    private static List<String> done(Forecast forecast, TrayTrace run) {
        List<String> done = new ArrayList<>();
        for (Task task : forecast.advice().tasks()) {
            if (task.vessel().equals(run.tray().id())) {
                done.add(task.kind() + " " + task.due() + task.isDone());
            }
        }
        return done;
    }

    /** As "left, right", or as "one to twelve" where there are many. */
    String label() {
        return trays.size() > NAMED
                ? trays.get(0).name() + " to " + trays.get(trays.size() - 1).name()
                : trays.stream().map(Tray::name).collect(Collectors.joining(", "));
    }

    /** As "left, right, each", or as "12 trays, each". */
    String each() {
        if (trays.size() == 1) {
            return label();
        }
        return (trays.size() > NAMED ? trays.size() + " trays" : label()) + ", each";
    }

    /** As "Tray left (lettuce)", or "12 trays, one to twelve (basil)". */
    String title() {
        String crop = Names.crops(run.tray());
        String which =
                switch (trays.size()) {
                    case 1 -> "Tray ";
                    case 2, NAMED -> "Trays ";
                    default -> trays.size() + " trays, ";
                };
        return which + label() + (crop.equals(label()) ? "" : " (" + crop + ")");
    }
}
