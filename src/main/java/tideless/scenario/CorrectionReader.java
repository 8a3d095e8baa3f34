package tideless.scenario;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/** Reads a file of corrections, as {@code fit} writes it, for one scenario. */
final class CorrectionReader {
    private final Scenario scenario;
    private final Map<String, Double> left = new HashMap<>();

    private CorrectionReader(Scenario scenario) {
        this.scenario = scenario;
    }

    /** Reads it; when it is faulty, the file says why. */
    static Read<Correction> read(TomlFile file, String text, Scenario scenario) {
        if (!file.parse(text)) {
            return Read.faulty();
        }
        Table root = Table.root(file, CorrectionKeys.TABLE);
        Correction correction = new CorrectionReader(scenario).correction(root);
        return file.isFaulty() ? Read.faulty() : Read.of(correction);
    }

    private Correction correction(Table root) {
        List<String> crops = scenario.plantings().stream().map(p -> p.cropName()).toList();
        Map<String, Correction.OfCrop> ofCrops = new HashMap<>();
        for (Table crop : known(root.child("crop"), crops)) {
            ofCrops.put(
                    crop.name(),
                    new Correction.OfCrop(
                            times(crop, Correction.THIRST, crop.name()),
                            times(crop, Correction.GROWTH, crop.name()),
                            times(crop, Correction.UPTAKE, crop.name()),
                            times(crop, Correction.SIZE, crop.name())));
        }
        Map<String, Double> valves = new HashMap<>();
        for (Table tray : known(root.child("tray"), trays(t -> isByValve(t)))) {
            Table valve = tray.child(Correction.VALVE);
            valves.put(tray.name(), valve.get(CorrectionKeys.HIGHER).orElse(0.0));
            remember(Correction.VALVE, tray.name(), valve.get(CorrectionKeys.VALVE_LEFT));
        }
        List<String> named = scenario.reservoirs().stream().map(Reservoir::name).toList();
        Map<String, Double> litres = new HashMap<>();
        Map<String, Double> leaks = new HashMap<>();
        for (Table reservoir : known(root.child("reservoir"), named)) {
            litres.put(reservoir.name(), times(reservoir, Correction.LITRES, reservoir.name()));
            Table leak = reservoir.child(Correction.LEAK);
            leaks.put(reservoir.name(), leak.get(CorrectionKeys.LOSES).orElse(0.0));
            remember(Correction.LEAK, reservoir.name(), leak.get(CorrectionKeys.LEAK_LEFT));
        }
        return new Correction(
                ofCrops,
                times(root, Correction.FEED, ""),
                times(root, Correction.GAPS, ""),
                times(root, Correction.METER, ""),
                valves,
                litres,
                leaks,
                left);
    }

    private double times(Table in, String what, String of) {
        Table table = in.child(what);
        remember(what, of, table.get(CorrectionKeys.LEFT));
        return table.get(CorrectionKeys.TIMES).orElse(1.0);
    }

    private void remember(String what, String of, Read<Double> share) {
        left.put(Correction.name(what, of), share.orElse(1.0));
    }

    private static boolean isByValve(Tray tray) {
        return tray.filling() instanceof Filling.ByValve;
    }

    private List<String> trays(Predicate<Tray> which) {
        return scenario.trays().stream().filter(which).map(Tray::name).toList();
    }

    private static List<Table> known(Table tables, List<String> names) {
        List<Table> known = new ArrayList<>();
        for (Table table : tables.named()) {
            if (names.contains(table.name())) {
                known.add(table);
                continue;
            }
            String meant = Spelling.nearest(table.name(), names);
            tables.faultyName(
                    table.name(),
                    "a name the scenario does not have",
                    names.isEmpty()
                            ? "none"
                            : String.join(", ", names.stream().distinct().toList()),
                    meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
        }
        return known;
    }
}
