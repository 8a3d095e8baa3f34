package tideless.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.rig.Filling;
import tideless.rig.Tray;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.words.Names;

/**
 * Trays of one build and one crop, which are drawn once.
 *
 * @param trays all of them, in the scenario's order
 * @param drawn the one whose level falls lowest
 * @param lowestM its lowest level while its plants live, m
 * @param highestM its highest, m
 */
public record Alike(List<Tray> trays, TrayTrace drawn, double lowestM, double highestM) {
    public Alike {
        trays = List.copyOf(trays);
    }

    /** In the order of the first of each. */
    public static List<Alike> of(Trace trace) {
        Map<String, List<TrayTrace>> groups = new LinkedHashMap<>();
        for (TrayTrace tray : trace.trays()) {
            groups.computeIfAbsent(build(trace, tray), key -> new ArrayList<>()).add(tray);
        }
        return groups.values().stream().map(group -> of(trace, group)).toList();
    }

    /** One tray for itself. */
    static Alike only(Trace trace, TrayTrace run) {
        return of(trace, List.of(run));
    }

    private static String build(Trace trace, TrayTrace run) {
        Tray tray = run.tray();
        return String.join(
                "\n",
                Names.crops(tray),
                Integer.toString(tray.planting().plants()),
                tray.shape().toString(),
                tray.deck().toString(),
                Double.toString(tray.overflowM()),
                Double.toString(tray.cupBottomM()),
                Double.toString(tray.floorAboveBenchM()),
                filling(tray.filling()),
                Integer.toString(trace.lastLivingHour(run)));
    }

    private static String filling(Filling filling) {
        if (filling instanceof Filling.ByValve valve) {
            return "valve " + valve.settingM() + valve.moves() + valve.seatAboveFloorM();
        }
        return filling.toString();
    }

    private static Alike of(Trace trace, List<TrayTrace> group) {
        Alike lowest = null;
        List<Tray> trays = group.stream().map(TrayTrace::tray).toList();
        for (TrayTrace run : group) {
            double low = Double.POSITIVE_INFINITY;
            double high = 0;
            for (int hour = 0; hour <= trace.lastLivingHour(run); hour++) {
                double levelM = run.levelM().at(hour);
                low = Math.min(low, levelM);
                high = Math.max(high, levelM);
            }
            if (lowest == null || low < lowest.lowestM) {
                lowest = new Alike(trays, run, low, high);
            }
        }
        return lowest;
    }

    /** The one that is drawn. */
    public Tray tray() {
        return drawn.tray();
    }

    /** Most plants across the narrower way, at equal distances; at least 1. */
    int plantsAcross() {
        Tray tray = tray();
        int plants = Math.max(1, tray.planting().plants());
        double spacingM = Math.sqrt(tray.shape().rimAreaM2() / plants);
        double acrossM = tray.shape().acrossM(tray.shape().depthM());
        return Math.max(1, Math.min(plants, (int) Math.floor(acrossM / spacingM + 0.5)));
    }
}
