package tideless.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
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
    private static final Set<String> FRUITING =
            Set.of(
                    "stages.full_load",
                    "stages.last_harvest",
                    "stages.fruit_share",
                    "growth.fruit_dry_matter");
    private static final Set<String> SET_IN_HEAT =
            Set.of("root_zone.set_whole", "root_zone.set_half", "root_zone.set_none");
    private static final List<String> PARTS = List.of("value", "low", "high", "source", "standing");

    /** How long past its first harvest a leaf crop may stand, as a share of it; assumed. */
    private static final double OVERDUE = 1.5;

    /**
     * Coefficient of a full stand in a house over that of the field: 1.3 over 1.05 for sweet pepper
     * (Orgaz et al. 2005 over FAO-56, from memory), 1.4 over 1.15 for tomato; assumed for others.
     */
    private static final double HOUSE_PER_FIELD = 1.24;

    /** Numbers that must not fall from the first to the second. */
    private static final String[][] RISING = {
        {"growth.base", "growth.optimum_low"},
        {"growth.optimum_low", "growth.optimum_high"},
        {"growth.optimum_high", "growth.ceiling"},
        {"stages.emergence", "stages.first_harvest"},
        {"stages.emergence", "stages.flowering"},
        {"stages.flowering", "stages.full_load"},
        {"stages.flowering", "stages.first_harvest"},
        {"stages.first_harvest", "stages.last_harvest"},
        {"stages.first_harvest", "harvest.latest"},
        {"harvest.latest", "harvest.picked_until"},
        {"coefficients.initial_ends", "coefficients.mid_begins"},
        {"coefficients.mid_begins", "coefficients.mid_ends"},
        {"needs.light_low", "needs.light_high"},
        {"root_zone.coldest", "root_zone.low"},
        {"root_zone.low", "root_zone.high"},
        {"root_zone.oxygen_enough", "root_zone.oxygen_enough_warm"},
        {"salinity.threshold", "root_zone.salt_stops"}
    };

    /** Ends of bands, which must not be equal either. */
    private static final String[][] BANDS = {
        {"needs.ec_low", "needs.ec_high"},
        {"needs.ph_low", "needs.ph_high"},
        {"root_zone.set_whole", "root_zone.set_half"},
        {"root_zone.set_half", "root_zone.set_none"}
    };

    private final CropLibrary library;

    CropReader(CropLibrary library) {
        this.library = library;
    }

    /**
     * A number with its greatest plausible value (itself where none is stated), its source, and the
     * table it stands in.
     */
    private record Entry(double value, double high, CropTraits.Provenance provenance, Table table) {
        /** Whether it is a tray's and not the crop file's. */
        boolean isOwn() {
            return table.isUnderOtherRules();
        }
    }

    /** What a file states, before it is known to be whole. */
    private static final class Stated {
        private String name;
        private String latinName;
        private String about;
        private String form;
        private final Map<String, Entry> entries = new LinkedHashMap<>();
    }

    private record Crop(String label, String text) {}

    private static Read<CropTraits> asItStands(TomlFile file, String text, MadeOnce once) {
        return once.read(new Crop(file.name(), text), file, () -> read(file, text));
    }

    /** The crop a tray names, with the tray's own numbers in it. */
    Read<CropTraits> ofTray(Table tray, Key<String> way, NamedFiles files) {
        Read<NamedFiles.Named> text =
                way == TrayKeys.CROP
                        ? tray.get(way).then(name -> ofLibrary(tray, name))
                        : files.open(tray, way, TextFile.MEBIBYTE, "a crop file");
        MadeOnce once = way == TrayKeys.CROP ? library.kept(files.once()) : files.once();
        Stated own = new Stated();
        Read<Table> override = tray.underOtherRules(OVERRIDE, CropKeys.TABLE);
        if (override.isSound()) {
            state(override.value(), own, true);
        }
        return text.then(
                crop -> {
                    TomlFile file = new TomlFile(crop.label());
                    Read<CropTraits> traits =
                            override.isAbsent()
                                    ? asItStands(file, crop.text(), once)
                                    : read(file, crop.text(), own, override);
                    file.problems().forEach(tray.file()::add);
                    return tray.file().isFaulty() ? Read.faulty() : traits;
                });
    }

    private Read<NamedFiles.Named> ofLibrary(Table tray, String name) {
        List<String> names = library.names();
        if (names.contains(name)) {
            return Read.of(new NamedFiles.Named(library.label(name), library.text(name)));
        }
        String meant = Crops.meant(name, names);
        tray.faultyValue(
                TrayKeys.CROP,
                names.isEmpty()
                        ? "a crop of the library, which is empty"
                        : String.join(", ", names.stream().map(Key::quoted).toList()),
                meant.isEmpty()
                        ? "A crop of your own goes into a file: crop_file = \"my.toml\"."
                        : meant);
        return Read.faulty();
    }

    /** A crop file by itself; when faulty, the file says why. */
    static Read<CropTraits> read(TomlFile file, String text) {
        return read(file, text, new Stated(), Read.absent());
    }

    private static Read<CropTraits> read(
            TomlFile file, String text, Stated own, Read<Table> override) {
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
        stated.entries.putAll(own.entries);
        if (own.form != null) {
            stated.form = own.form;
        }
        boolean sound = checkOrder(stated);
        if (override.isSound()) {
            checkOverride(override.value(), stated);
            sound &= !override.value().file().isFaulty();
        }
        return sound ? Read.of(traits(stated)) : Read.faulty();
    }

    // Reading what is stated.

    private static void state(Table root, Stated stated, boolean override) {
        if (!override) {
            stated.name = root.get(CropKeys.NAME).orElse("");
            stated.latinName = root.get(CropKeys.LATIN_NAME).orElse("");
            stated.about = root.get(CropKeys.ABOUT).orElse("");
        }
        Table stomata = root.child("stomata");
        if (stomata.has(CropKeys.FORM.name())) {
            stated.form = stomata.get(CropKeys.FORM).orElse(null);
        }
        for (Key<Double> key : CropKeys.NUMBERS) {
            Table table = tableOf(root, key);
            if (table.has(key)) {
                Read<Entry> entry = entry(table, key, override);
                if (entry.isSound()) {
                    stated.entries.put(key.path(), entry.value());
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

    private static Read<Entry> entry(Table table, Key<Double> key, boolean override) {
        Object raw = table.raw(key.name());
        if (!(raw instanceof TomlTable parts)) {
            Read<Double> value = value(table, key, raw, "");
            if (!value.isSound()) {
                return Read.faulty();
            }
            if (override) {
                return Read.of(
                        new Entry(
                                value.value(),
                                value.value(),
                                new CropTraits.Provenance(
                                        key.path(),
                                        table.words(key.name()),
                                        "",
                                        "",
                                        "the scenario",
                                        "assumed"),
                                table));
            }
            table.faultyValue(
                    key.name(),
                    "{ value = %s, source = \"...\", standing = \"...\" }"
                            .formatted(Key.quoted(table.words(key.name()))),
                    "Every number of a crop says where it comes from.");
            return Read.faulty();
        }
        for (String part : parts.keySet()) {
            if (!PARTS.contains(part)) {
                String meant = Spelling.nearest(part, PARTS);
                table.fault(
                        key.name(),
                        "an unknown part " + Key.quoted(TomlFile.shown(part)),
                        String.join(", ", PARTS),
                        meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
                return Read.faulty();
            }
        }
        Object written = parts.get(List.of("value"));
        if (written == null) {
            table.fault(key.name(), "no value", key.allowed(), "");
            return Read.faulty();
        }
        Read<Double> stated = value(table, key, written, "");
        Read<Double> low = bound(table, key, parts, "low");
        Read<Double> high = bound(table, key, parts, "high");
        if (stated.holds(value -> low.holds(least -> isAbove(least, value)))
                || stated.holds(value -> high.holds(most -> most < value))) {
            table.fault(
                    key.name(),
                    "value %s outside low %s and high %s"
                            .formatted(
                                    words(parts, "value"),
                                    words(parts, "low"),
                                    words(parts, "high")),
                    "low up to value up to high",
                    "");
            return Read.faulty();
        }
        Read<String> source = part(table, key, parts, "source", override ? "the scenario" : "");
        Read<String> standing = part(table, key, parts, "standing", override ? "assumed" : "");
        if (standing.holds(word -> !STANDINGS.contains(word))) {
            table.fault(
                    key.name(),
                    "standing " + Key.quoted(TomlFile.shown(standing.value())),
                    String.join(", ", STANDINGS.stream().map(Key::quoted).toList()),
                    "");
            return Read.faulty();
        }
        if (!Read.allSound(stated, source, standing)) {
            return Read.faulty();
        }
        return Read.of(
                new Entry(
                        stated.value(),
                        high.orElse(stated.value()),
                        new CropTraits.Provenance(
                                key.path(),
                                words(parts, "value"),
                                words(parts, "low"),
                                words(parts, "high"),
                                source.value(),
                                standing.value()),
                        table));
    }

    /** Above by more than rounding in the change of units. */
    private static boolean isAbove(double low, double value) {
        return low > value * (1 + 1e-12) + 1e-300 && low > value;
    }

    private static Read<Double> bound(Table table, Key<Double> key, TomlTable parts, String part) {
        Object raw = parts.get(List.of(part));
        return raw == null ? Read.absent() : value(table, key, raw, part + " = ");
    }

    private static Read<Double> value(Table table, Key<Double> key, Object raw, String prefix) {
        Read<Double> read = key.read(raw);
        if (read.isSound()) {
            return read;
        }
        String hint = read instanceof Read.Faulty<Double> fault ? fault.hint() : "";
        String words =
                raw instanceof String text
                        ? Key.quoted(TomlFile.shown(text))
                        : TomlFile.shown(String.valueOf(raw));
        table.fault(key.name(), prefix + words, key.allowed(), hint);
        return Read.faulty();
    }

    /** A word of a number; {@code otherwise} where it is left out, if that may be (not empty). */
    private static Read<String> part(
            Table table, Key<Double> key, TomlTable parts, String part, String otherwise) {
        Object raw = parts.get(List.of(part));
        if (raw instanceof String text && !text.isBlank()) {
            return Read.of(text);
        }
        if (raw == null && !otherwise.isEmpty()) {
            return Read.of(otherwise);
        }
        table.fault(
                key.name(),
                "no " + part,
                part + " = \"...\"",
                "Every number of a crop says where it comes from.");
        return Read.faulty();
    }

    private static String words(TomlTable parts, String part) {
        Object raw = parts.get(List.of(part));
        return raw == null ? "" : TomlFile.shown(String.valueOf(raw));
    }

    // Holding it together.

    private static void checkWhole(Table root, Stated stated) {
        for (Key<?> key : CropKeys.TABLE.keys().values()) {
            Table table = tableOf(root, key);
            if (isNeeded(key, stated) && !table.meant(key)) {
                table.missing(key);
            }
        }
    }

    /** Whether a crop of this kind, leaf or fruit, and with these stomata must have a number. */
    private static boolean isNeeded(Key<?> key, Stated stated) {
        if (key.path().indexOf('.') < 0) {
            return false;
        }
        boolean fruiting =
                key.path().startsWith("nutrition.fruit.") || FRUITING.contains(key.path());
        boolean heat =
                SET_IN_HEAT.contains(key.path())
                        && SET_IN_HEAT.stream().anyMatch(stated.entries::containsKey);
        boolean hyperbola = key.path().equals("stomata.a") || key.path().equals("stomata.b");
        return key.need() == Key.Need.REQUIRED
                || (fruiting && stated.entries.containsKey("stages.flowering"))
                || heat
                || (hyperbola && CropKeys.HYPERBOLA.equals(stated.form));
    }

    /** Says what a crop lacks because a tray makes another kind of crop of it. */
    private static void checkOverride(Table override, Stated stated) {
        List<String> lacking = new ArrayList<>();
        for (Key<Double> key : CropKeys.NUMBERS) {
            boolean isStated = // or was, at fault, which has been said
                    stated.entries.containsKey(key.path()) || tableOf(override, key).has(key);
            if (isNeeded(key, stated) && !isStated) {
                lacking.add(key.path());
            }
        }
        if (lacking.isEmpty()) {
            return;
        }
        boolean form = override.child("stomata").has(CropKeys.FORM);
        boolean heat = SET_IN_HEAT.containsAll(lacking);
        Table table = override.child(form ? "stomata" : heat ? "root_zone" : "stages");
        String key = form ? CropKeys.FORM.name() : heat ? statedOfHeat(override) : "flowering";
        table.faultyValue(
                key,
                "a crop that states %s too".formatted(String.join(", ", lacking)),
                "Maybe add them beside it, or leave it out.");
    }

    private static String statedOfHeat(Table override) {
        return CropKeys.NUMBERS.stream()
                .filter(key -> SET_IN_HEAT.contains(key.path()))
                .filter(key -> tableOf(override, key).has(key))
                .map(key -> last(key.path()))
                .findFirst()
                .orElse("set_whole");
    }

    /** Whether what must rise does; each pair that does not is told where its second stands. */
    private static boolean checkOrder(Stated stated) {
        boolean rise = true;
        for (String[] pair : RISING) {
            rise &= rises(stated, pair[0], pair[1], false);
        }
        for (String[] pair : BANDS) {
            rise &= rises(stated, pair[0], pair[1], true);
        }
        return rise;
    }

    private static boolean rises(Stated stated, String low, String high, boolean strictly) {
        Entry lower = stated.entries.get(low);
        Entry higher = stated.entries.get(high);
        if (lower == null
                || higher == null
                || (strictly ? lower.value < higher.value : lower.value <= higher.value)) {
            return true;
        }
        // A tray's own number is the one to mend: the crop's file was sound without it.
        boolean first = lower.table.file() != higher.table.file() && lower.isOwn();
        Entry faulty = first ? lower : higher;
        Entry other = first ? higher : lower;
        String bound = (first ? "at most " : "at least ") + (first ? high : low);
        faulty.table.fault(
                last(first ? low : high),
                Key.quoted(faulty.provenance.value()),
                (strictly ? (first ? "below " : "above ") + (first ? high : low) : bound)
                        + " (%s)".formatted(other.provenance.value()),
                "");
        return false;
    }

    private static String last(String path) {
        return path.substring(path.lastIndexOf('.') + 1);
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
                        of(e, "stages.stem_share"),
                        orElse(e, "stages.fruit_base", growth.baseC()),
                        orElse(
                                e,
                                "stages.fruit_sum",
                                firstHarvest - orElse(e, "stages.flowering", 0)));
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
                stated.about,
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
                        orElse(e, "nursery.root_length", 0),
                        orElse(e, "nursery.plug_water", 15e-6)),
                new CropTraits.Harvest(
                        optional(e, "harvest.weight"),
                        orElse(e, "harvest.latest", OVERDUE * firstHarvest),
                        orElse(
                                e,
                                "harvest.picked_until",
                                orElse(e, "harvest.latest", OVERDUE * firstHarvest)),
                        optional(e, "harvest.picked_every"),
                        optional(e, "harvest.picked_from"),
                        orElse(e, "harvest.picked_share", 0.33),
                        optional(e, "harvest.ground")),
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
                orElse(e, "root_zone.frost", Double.NEGATIVE_INFINITY),
                orElse(e, "root_zone.set_low", Double.NEGATIVE_INFINITY),
                orElse(e, "root_zone.set_high", Double.POSITIVE_INFINITY),
                setInHeat(e),
                orElse(e, "root_zone.longest_day", 24));
    }

    // All three or none: see isNeeded.
    private static CropTraits.SetInHeat setInHeat(Map<String, Entry> e) {
        return e.containsKey("root_zone.set_whole")
                ? new CropTraits.SetInHeat(
                        of(e, "root_zone.set_whole"),
                        of(e, "root_zone.set_half"),
                        of(e, "root_zone.set_none"))
                : CropTraits.SetInHeat.ALWAYS;
    }

    private static OptionalDouble optional(Map<String, Entry> entries, String name) {
        return entries.containsKey(name)
                ? OptionalDouble.of(of(entries, name))
                : OptionalDouble.empty();
    }

    private static CropTraits.Nutrition nutrition(Map<String, Entry> e, boolean fruits) {
        CropTraits.Contents leaf = contents(e, "leaf");
        return new CropTraits.Nutrition(
                leaf,
                fruits ? contents(e, "fruit") : leaf,
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
