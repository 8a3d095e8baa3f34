package tideless.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tideless.advice.Task;
import tideless.drawing.Alike;
import tideless.rig.Tray;
import tideless.sim.Series;
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
        List<OneCurve> all = new ArrayList<>();
        for (Alike group : Alike.of(forecast.trace())) {
            all.addAll(of(forecast, group.trays(), OneCurve::isSame));
        }
        return all;
    }

    /** The same of the solution alone: whatever their build, trays of one crop and one EC. */
    static List<OneCurve> ofSolution(Forecast forecast) {
        return of(forecast, trays(forecast), OneCurve::hasSameSolution);
    }

    /** The same of the thirst alone: whatever their build, trays of one crop that drink alike. */
    static List<OneCurve> ofThirst(Forecast forecast) {
        return of(forecast, trays(forecast), OneCurve::drinksTheSame);
    }

    private static List<Tray> trays(Forecast forecast) {
        return forecast.trace().trays().stream().map(TrayTrace::tray).toList();
    }

    private interface Sameness {
        boolean of(OneCurve one, Forecast forecast, TrayTrace other);
    }

    private static List<OneCurve> of(Forecast forecast, List<Tray> trays, Sameness same) {
        List<OneCurve> all = new ArrayList<>();
        for (Tray tray : trays) {
            TrayTrace run = forecast.trace().tray(tray.id());
            int at = 0;
            while (at < all.size() && !same.of(all.get(at), forecast, run)) {
                at++;
            }
            if (at == all.size()) {
                all.add(new OneCurve(run, List.of(tray)));
            } else {
                List<Tray> more = new ArrayList<>(all.get(at).trays());
                more.add(tray);
                all.set(at, new OneCurve(all.get(at).run(), more));
            }
        }
        return all;
    }

    private boolean isSame(Forecast forecast, TrayTrace other) {
        return near(run.levelM(), other.levelM(), LEVEL_M)
                && drinksTheSame(forecast, other)
                && hasSameSolution(forecast, other);
    }

    private boolean hasSameSolution(Forecast forecast, TrayTrace other) {
        return isDoneTheSame(forecast, other)
                && run.tray().limits().equals(other.tray().limits())
                && near(run.ecMsPerCm(), other.ecMsPerCm(), EC_MS_PER_CM);
    }

    private boolean drinksTheSame(Forecast forecast, TrayTrace other) {
        return isDoneTheSame(forecast, other)
                && near(run.transpirationM3(), other.transpirationM3(), HOURLY_M3);
    }

    private boolean isDoneTheSame(Forecast forecast, TrayTrace other) {
        return Names.crops(run.tray()).equals(Names.crops(other.tray()))
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

    /** As "left, right", or as "12 trays": what has room at the end of a line. */
    String brief() {
        return trays.size() > NAMED ? trays.size() + " trays" : label();
    }

    /** As "left, right, each", or as "12 trays, each". */
    String each() {
        return trays.size() == 1 ? label() : brief() + ", each";
    }

    /** As "Tray left (lettuce)", or "12 trays, one to twelve (basil)". */
    String title() {
        String crop = Names.crops(run.tray());
        String which =
                trays.size() == 1
                        ? Names.begun(Names.tray(trays.get(0).name()))
                        : (trays.size() > NAMED ? trays.size() + " trays, " : "Trays ") + label();
        return which + (crop.equals(label()) ? "" : " (" + crop + ")");
    }
}
