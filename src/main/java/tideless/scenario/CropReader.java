package tideless.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tomlj.TomlTable;
import tideless.crop.CropTraits;
import tideless.crop.ThirstDoubt;

/**
 * Reads a crop file. Every number in it is an inline table of value, low, high, source and
 * standing; a scenario may put others in their place under {@code crop_override}.
 */
final class CropReader {
    static final String OVERRIDE = "crop_override";

    static final List<String> STANDINGS =
            List.of("read", "from memory", "common practice", "derived", "assumed");
    private static final List<String> PARTS = List.of("value", "low", "high", "source", "standing");

    /**
     * Coefficient of a full stand in a house over that of the field: 1.3 over 1.05 for sweet pepper
     * (Orgaz et al. 2005 over FAO-56, from memory), 1.4 over 1.15 for tomato; assumed for others.
     */
    private static final double HOUSE_PER_FIELD = 1.24;

    private final CropLibrary library;

    CropReader(CropLibrary library) {
        this.library = library;
    }

    /** A number with its greatest plausible value (itself where none is stated) and its source. */
    private record Entry(double value, double high, CropTraits.Provenance provenance) {}

    /** What a file states, before it is known to be whole. */
    private static final class Stated {
        private String name;
        private String latinName;
        private String form;
        private final Map<String, Entry> entries = new LinkedHashMap<>();
    }

    /** The crop a tray names, with the tray's own numbers in it. */
    Read<CropTraits> ofTray(Table tray, Key<String> way, NamedFiles files) {
        Read<NamedFiles.Named> text =
                way == TrayKeys.CROP
                        ? tray.get(way).then(name -> ofLibrary(tray, name))
                        : files.open(tray, way, TextFile.MEBIBYTE, "a crop file");
        Stated own = new Stated();
        Read<Table> override = tray.underOtherRules(OVERRIDE, CropKeys.TABLE);
        if (override.isSound()) {
            state(override.value(), own, true);
        }
        return text.then(
                crop -> {
                    TomlFile file = new TomlFile(crop.label());
                    Read<CropTraits> traits = read(file, crop.text(), own);
                    file.problems().forEach(tray.file()::add);
                    return traits;
                });
    }

    private Read<NamedFiles.Named> ofLibrary(Table tray, String name) {
        List<String> names = library.names();
        if (names.contains(name)) {
            return Read.of(new NamedFiles.Named(library.label(name), library.text(name)));
        }
        String meant = KeyTable.nearest(name, names);
        tray.faultyValue(
                TrayKeys.CROP,
                names.isEmpty()
                        ? "a crop of the library, which is empty"
                        : String.join(", ", names.stream().map(Key::quoted).toList()),
                meant.isEmpty()
                        ? "A crop of your own goes into a file: crop_file = \"my.toml\"."
                        : "Did you mean " + Key.quoted(meant) + "?");
        return Read.faulty();
    }

    /** A crop file by itself; when faulty, the file says why. */
    static Read<CropTraits> read(TomlFile file, String text) {
        return read(file, text, new Stated());
    }

    private static Read<CropTraits> read(TomlFile file, String text, Stated override) {
        if (!file.parse(text)) {
            return Read.faulty();
        }
        Table root = Table.root(file, CropKeys.TABLE);
        Stated stated = new Stated();
        state(root, stated, false);
        checkWhole(root, stated);
        if (file.isFaulty()) {
            return Read.faulty();
        }
        stated.entries.putAll(override.entries);
        if (override.form != null) {
            stated.form = override.form;
        }
        checkOrder(file, stated);
        return file.isFaulty() ? Read.faulty() : Read.of(traits(stated));
    }

    // Reading what is stated.

    private static void state(Table root, Stated stated, boolean override) {
        if (!override) {
            stated.name = root.get(CropKeys.NAME).orElse("");
            stated.latinName = root.get(CropKeys.LATIN_NAME).orElse("");
        }
        Table stomata = root.child("stomata");
        if (stomata.has(CropKeys.FORM.name())) {
            stated.form = stomata.get(CropKeys.FORM).orElse(null);
        }
        for (Key<Double> key : CropKeys.NUMBERS) {
            Table table = tableOf(root, key);
            if (table.has(key)) {
                Entry entry = entry(table, key, override);
                if (entry != null) {
                    stated.entries.put(key.path(), entry);
                }
            }
        }
    }

    /** The table a key of a crop file stands in. */
    private static Table tableOf(Table root, Key<?> key) {
        Table table = root;
        String[] steps = key.path().split("\\.");
        for (int i = 0; i < steps.length - 1; i++) {
            table = table.child(steps[i]);
        }
        return table;
    }

    private static Entry entry(Table table, Key<Double> key, boolean override) {
        Object raw = table.raw(key.name());
        if (!(raw instanceof TomlTable parts)) {
            double value = value(table, key, raw, "");
            if (override || Double.isNaN(value)) {
                return new Entry(
                        value,
                        value,
                        new CropTraits.Provenance(
                                key.path(),
                                table.words(key.name()),
                                "",
                                "",
                                "the scenario",
                                "assumed"));
            }
            table.faultyValue(
                    key.name(),
                    "{ value = %s, source = \"...\", standing = \"...\" }"
                            .formatted(Key.quoted(table.words(key.name()))),
                    "Every number of a crop says where it comes from.");
            return null;
        }
        for (String part : parts.keySet()) {
            if (!PARTS.contains(part)) {
                String meant = KeyTable.nearest(part, PARTS);
                table.fault(
                        key.name(),
                        "an unknown part " + Key.quoted(TomlFile.shown(part)),
                        String.join(", ", PARTS),
                        meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
                return null;
            }
        }
        Object written = parts.get(List.of("value"));
        if (written == null) {
            table.fault(key.name(), "no value", key.allowed(), "");
            return null;
        }
        double value = value(table, key, written, "");
        double low = bound(table, key, parts, "low");
        double high = bound(table, key, parts, "high");
        if (low > value * (1 + 1e-12) + 1e-300 && low > value || high < value) {
            table.fault(
                    key.name(),
                    "value %s outside low %s and high %s"
                            .formatted(
                                    words(parts, "value"),
                                    words(parts, "low"),
                                    words(parts, "high")),
                    "low up to value up to high",
                    "");
            return null;
        }
        String source = part(table, key, parts, "source", override ? "the scenario" : null);
        String standing = part(table, key, parts, "standing", override ? "assumed" : null);
        if (standing != null && !STANDINGS.contains(standing)) {
            table.fault(
                    key.name(),
                    "standing " + Key.quoted(TomlFile.shown(standing)),
                    String.join(", ", STANDINGS.stream().map(Key::quoted).toList()),
                    "");
            return null;
        }
        if (Double.isNaN(value) || source == null || standing == null) {
            return null;
        }
        return new Entry(
                value,
                Double.isNaN(high) ? value : high,
                new CropTraits.Provenance(
                        key.path(),
                        words(parts, "value"),
                        words(parts, "low"),
                        words(parts, "high"),
                        source,
                        standing));
    }

    private static double bound(Table table, Key<Double> key, TomlTable parts, String part) {
        Object raw = parts.get(List.of(part));
        return raw == null ? Double.NaN : value(table, key, raw, part + " = ");
    }

    private static double value(Table table, Key<Double> key, Object raw, String prefix) {
        Read<Double> read = key.read(raw);
        if (read instanceof Read.Sound<Double> sound) {
            return sound.value();
        }
        String hint = read instanceof Read.Faulty<Double> fault ? fault.hint() : "";
        String words =
                raw instanceof String text
                        ? Key.quoted(TomlFile.shown(text))
                        : TomlFile.shown(String.valueOf(raw));
        table.fault(key.name(), prefix + words, key.allowed(), hint);
        return Double.NaN;
    }

    private static String part(
            Table table, Key<Double> key, TomlTable parts, String part, String otherwise) {
        Object raw = parts.get(List.of(part));
        if (raw instanceof String text && !text.isBlank()) {
            return text;
        }
        if (raw == null && otherwise != null) {
            return otherwise;
        }
        table.fault(
                key.name(),
                "no " + part,
                part + " = \"...\"",
                "Every number of a crop says where it comes from.");
        return null;
    }

    private static String words(TomlTable parts, String part) {
        Object raw = parts.get(List.of(part));
        return raw == null ? "" : TomlFile.shown(String.valueOf(raw));
    }

    // Holding it together.

    private static void checkWhole(Table root, Stated stated) {
        boolean fruits = stated.entries.containsKey("stages.flowering");
        for (Key<?> key : CropKeys.TABLE.keys().values()) {
            boolean fruiting =
                    key.path().startsWith("nutrition.fruit.")
                            || key.path().equals("stages.full_load")
                            || key.path().equals("stages.last_harvest")
                            || key.path().equals("stages.fruit_share")
                            || key.path().equals("growth.fruit_dry_matter");
            boolean hyperbola = key.path().equals("stomata.a") || key.path().equals("stomata.b");
            boolean needed =
                    key.need() == Key.Need.REQUIRED
                            || (fruiting && fruits)
                            || (hyperbola && CropKeys.HYPERBOLA.equals(stated.form));
            int dot = key.path().lastIndexOf('.');
            if (!needed || dot < 0) {
                continue;
            }
            Table table = tableOf(root, key);
            if (!table.meant(key)) {
                table.missing(key);
            }
        }
    }

    private static void checkOrder(TomlFile file, Stated stated) {
        rises(file, stated, "growth.base", "growth.optimum_low");
        rises(file, stated, "growth.optimum_low", "growth.optimum_high");
        rises(file, stated, "growth.optimum_high", "growth.ceiling");
        rises(file, stated, "stages.emergence", "stages.first_harvest");
        rises(file, stated, "stages.emergence", "stages.flowering");
        rises(file, stated, "stages.flowering", "stages.full_load");
        rises(file, stated, "stages.flowering", "stages.first_harvest");
        rises(file, stated, "stages.first_harvest", "stages.last_harvest");
        rises(file, stated, "coefficients.initial_ends", "coefficients.mid_begins");
        rises(file, stated, "coefficients.mid_begins", "coefficients.mid_ends");
        rises(file, stated, "needs.ec_low", "needs.ec_high");
        rises(file, stated, "needs.ph_low", "needs.ph_high");
        rises(file, stated, "needs.light_low", "needs.light_high");
        rises(file, stated, "root_zone.coldest", "root_zone.low");
        rises(file, stated, "root_zone.low", "root_zone.high");
        rises(file, stated, "root_zone.oxygen_enough", "root_zone.oxygen_enough_warm");
        rises(file, stated, "salinity.threshold", "root_zone.salt_stops");
    }

    private static void rises(TomlFile file, Stated stated, String low, String high) {
        Entry lower = stated.entries.get(low);
        Entry higher = stated.entries.get(high);
        if (lower != null && higher != null && !(lower.value <= higher.value)) {
            int line = file.line(List.of(high.split("\\.")));
            file.problem(
                    line,
                    line == 0 ? 0 : 1,
                    high,
                    Key.quoted(higher.provenance.value()),
                    "at least %s (%s)".formatted(low, lower.provenance.value()),
                    "");
        }
    }

    // Handing it over.

    private static CropTraits traits(Stated stated) {
        Map<String, Entry> e = stated.entries;
        boolean fruits = e.containsKey("stages.flowering");
        double firstHarvest = of(e, "stages.first_harvest");
        double leafDryMatter = of(e, "growth.leaf_dry_matter");
        CropTraits.Growth growth =
                new CropTraits.Growth(
                        of(e, "growth.light_use"),
                        of(e, "growth.light_use_falls_from"),
                        of(e, "growth.light_use_fall"),
                        of(e, "growth.extinction"),
                        of(e, "growth.leaf_area"),
                        of(e, "growth.leaf_area_index_max"),
                        of(e, "growth.spread"),
                        of(e, "growth.height"),
                        of(e, "growth.seedling_dry"),
                        of(e, "growth.base"),
                        of(e, "growth.optimum_low"),
                        of(e, "growth.optimum_high"),
                        of(e, "growth.ceiling"),
                        orElse(e, "growth.young_dry_matter", leafDryMatter),
                        leafDryMatter,
                        orElse(e, "growth.fruit_dry_matter", leafDryMatter));
        CropTraits.Stages stages =
                new CropTraits.Stages(
                        of(e, "stages.emergence"),
                        orElse(e, "stages.flowering", Double.POSITIVE_INFINITY),
                        orElse(e, "stages.full_load", Double.POSITIVE_INFINITY),
                        firstHarvest,
                        orElse(e, "stages.last_harvest", firstHarvest),
                        fruits ? of(e, "stages.fruit_share") : 0,
                        of(e, "stages.root_share"),
                        of(e, "stages.stem_share"));
        CropTraits.Stomata stomata =
                stated.form.equals(CropKeys.HYPERBOLA)
                        ? new CropTraits.Stomata.LightHyperbola(
                                of(e, "stomata.least"),
                                of(e, "stomata.a"),
                                of(e, "stomata.b"),
                                of(e, "stomata.dark"),
                                of(e, "stomata.leaf_size"))
                        : new CropTraits.Stomata.LightTemperatureHumidity(
                                of(e, "stomata.least"),
                                of(e, "stomata.dark"),
                                of(e, "stomata.leaf_size"));
        List<CropTraits.Provenance> provenance = new ArrayList<>();
        e.values().forEach(entry -> provenance.add(entry.provenance));
        return new CropTraits(
                stated.name,
                stated.latinName,
                growth,
                stages,
                stomata,
                new CropTraits.Coefficients(
                        of(e, "coefficients.initial"),
                        of(e, "coefficients.mid"),
                        of(e, "coefficients.end"),
                        of(e, "coefficients.initial_ends"),
                        of(e, "coefficients.mid_begins"),
                        of(e, "coefficients.mid_ends")),
                new CropTraits.Roots(
                        of(e, "roots.elongation"),
                        of(e, "roots.longest"),
                        of(e, "roots.dry_reserve"),
                        of(e, "roots.wilt_to_death"),
                        of(e, "roots.rise_borne"),
                        of(e, "roots.drowned_death")),
                new CropTraits.Salinity(of(e, "salinity.threshold"), of(e, "salinity.fall")),
                nutrition(e, fruits),
                new CropTraits.Needs(
                        of(e, "needs.ec_low"),
                        of(e, "needs.ec_high"),
                        of(e, "needs.ph_low"),
                        of(e, "needs.ph_high"),
                        of(e, "needs.sodium_high"),
                        of(e, "needs.chloride_high"),
                        of(e, "needs.light_low"),
                        of(e, "needs.light_high"),
                        of(e, "needs.solution_warm")),
                response(e),
                new CropTraits.Thirst(
                        orElse(e, "thirst.full_cover", HOUSE_PER_FIELD * of(e, "coefficients.mid")),
                        orElse(e, "thirst.co2_conductance", 0.7),
                        orElse(e, "thirst.doubt", ThirstDoubt.LITTLE_KNOWN)),
                new CropTraits.Nursery(
                        orElse(e, "nursery.area", 0.0025),
                        orElse(e, "nursery.ppfd", 200),
                        orElse(e, "nursery.lit", 16),
                        orElse(e, "nursery.temperature", Math.max(20, growth.optimumLowC())),
                        orElse(e, "nursery.days", 14),
                        orElse(e, "nursery.leaves", 4),
                        orElse(e, "nursery.height", 0.06),
                        orElse(e, "nursery.root_length", 0)),
                provenance);
    }

    // What a file of the user's own leaves out stands as CropKeys says: the middle of the library.
    private static CropTraits.RootResponse response(Map<String, Entry> e) {
        double oxygen = orElse(e, "root_zone.oxygen_enough", 2);
        double growth = orElse(e, "root_zone.growth_without_oxygen", 0.7);
        return new CropTraits.RootResponse(
                oxygen,
                orElse(e, "root_zone.oxygen_enough_warm", oxygen),
                growth,
                orElse(e, "root_zone.oxygen_enough_for_water", oxygen),
                orElse(e, "root_zone.water_without_oxygen", growth),
                orElse(e, "root_zone.coldest", 10),
                orElse(e, "root_zone.low", 18),
                orElse(e, "root_zone.high", 28),
                orElse(e, "root_zone.growth_at_35", 0.6),
                orElse(e, "root_zone.salt_stops", 12),
                orElse(e, "root_zone.salt_thirst_fall", 0.04),
                orElse(e, "root_zone.chill", Double.NEGATIVE_INFINITY),
                orElse(e, "root_zone.set_low", Double.NEGATIVE_INFINITY),
                orElse(e, "root_zone.set_high", Double.POSITIVE_INFINITY),
                orElse(e, "root_zone.longest_day", 24));
    }

    private static CropTraits.Nutrition nutrition(Map<String, Entry> e, boolean fruits) {
        CropTraits.Contents leaf = contents(e, "leaf");
        return new CropTraits.Nutrition(
                leaf,
                fruits ? contents(e, "fruit") : leaf,
                of(e, "nutrition.ammonium_share"),
                of(e, "nutrition.half_nitrate"),
                of(e, "nutrition.half_ammonium"),
                of(e, "nutrition.half_phosphate"),
                of(e, "nutrition.half_potassium"),
                of(e, "nutrition.half_calcium"),
                of(e, "nutrition.half_magnesium"),
                of(e, "nutrition.half_sulfate"),
                of(e, "nutrition.sodium_pass"),
                of(e, "nutrition.chloride_pass"),
                contentsMost(e, "leaf"),
                contentsMost(e, fruits ? "fruit" : "leaf"));
    }

    private static CropTraits.Contents contentsMost(Map<String, Entry> e, String part) {
        String at = "nutrition." + part + ".";
        return new CropTraits.Contents(
                e.get(at + "nitrogen").high,
                e.get(at + "phosphorus").high,
                e.get(at + "potassium").high,
                e.get(at + "calcium").high,
                e.get(at + "magnesium").high,
                e.get(at + "sulfur").high);
    }

    private static CropTraits.Contents contents(Map<String, Entry> e, String part) {
        String at = "nutrition." + part + ".";
        return new CropTraits.Contents(
                of(e, at + "nitrogen"),
                of(e, at + "phosphorus"),
                of(e, at + "potassium"),
                of(e, at + "calcium"),
                of(e, at + "magnesium"),
                of(e, at + "sulfur"));
    }

    private static double of(Map<String, Entry> entries, String key) {
        Entry entry = entries.get(key);
        if (entry == null) {
            throw new IllegalStateException("checkWhole let a crop pass without " + key);
        }
        return entry.value;
    }

    private static double orElse(Map<String, Entry> entries, String key, double otherwise) {
        Entry entry = entries.get(key);
        return entry == null ? otherwise : entry.value;
    }
}
