package tideless.crop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlTable;

/**
 * The crop files as traits, for the tests of this room only. The program reads them through {@code
 * scenario}, with checks and error messages; this room may not know that one. A file that lacks a
 * key or has an unknown unit fails here too.
 */
final class CropFiles {
    private static final Map<String, Double> SI =
            Map.ofEntries(
                    Map.entry("", 1.0),
                    Map.entry("%", 0.01),
                    Map.entry("g/MJ", 1.0),
                    Map.entry("umol/m2/s", 1.0),
                    Map.entry("/(umol/m2/s)", 1.0),
                    Map.entry("m2/kg", 1.0),
                    Map.entry("m2", 1.0),
                    Map.entry("cm", 0.01),
                    Map.entry("m", 1.0),
                    Map.entry("g", 1.0),
                    Map.entry("mg", 0.001),
                    Map.entry("degC", 1.0),
                    Map.entry("degC d", 1.0),
                    Map.entry("s/m", 1.0),
                    Map.entry("cm/day", 0.01),
                    Map.entry("h", 1.0),
                    Map.entry("days", 1.0),
                    Map.entry("mS/cm", 1.0),
                    Map.entry("%/(mS/cm)", 0.01),
                    Map.entry("g/kg", 1.0),
                    Map.entry("mmol/L", 1.0),
                    Map.entry("umol/L", 0.001),
                    Map.entry("mol/m2/day", 1.0));

    private CropFiles() {}

    static List<String> names() {
        return text("index.txt").lines().toList();
    }

    static String text(String file) {
        try (InputStream in = CropTraits.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalArgumentException("no crop file " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static double value(String written) {
        int blank = written.indexOf(' ');
        String number = blank < 0 ? written : written.substring(0, blank);
        String unit = blank < 0 ? "" : written.substring(blank + 1);
        Double factor = SI.get(unit);
        if (factor == null) {
            throw new IllegalArgumentException("no unit \"" + unit + "\"");
        }
        return factor * Double.parseDouble(number);
    }

    static CropTraits read(String name) {
        TomlParseResult toml = Toml.parse(text(name + ".toml"));
        if (toml.hasErrors()) {
            throw new IllegalArgumentException(name + ": " + toml.errors());
        }
        List<CropTraits.Provenance> provenance = new ArrayList<>();
        collect(toml, "", provenance);
        boolean fruits = toml.contains("stages.flowering");
        CropTraits.Contents leaf = contents(toml, "nutrition.leaf.");
        return new CropTraits(
                toml.getString("name"),
                toml.getString("latin_name"),
                new CropTraits.Growth(
                        at(toml, "growth.light_use"),
                        at(toml, "growth.light_use_falls_from"),
                        at(toml, "growth.light_use_fall"),
                        at(toml, "growth.extinction"),
                        at(toml, "growth.leaf_area"),
                        at(toml, "growth.leaf_area_index_max"),
                        at(toml, "growth.spread"),
                        at(toml, "growth.height"),
                        at(toml, "growth.seedling_dry"),
                        at(toml, "growth.base"),
                        at(toml, "growth.optimum_low"),
                        at(toml, "growth.optimum_high"),
                        at(toml, "growth.ceiling"),
                        at(toml, "growth.leaf_dry_matter"),
                        at(toml, "growth.fruit_dry_matter")),
                new CropTraits.Stages(
                        at(toml, "stages.emergence"),
                        fruits ? at(toml, "stages.flowering") : Double.POSITIVE_INFINITY,
                        fruits ? at(toml, "stages.full_load") : Double.POSITIVE_INFINITY,
                        at(toml, "stages.first_harvest"),
                        at(toml, "stages.last_harvest"),
                        fruits ? at(toml, "stages.fruit_share") : 0,
                        at(toml, "stages.root_share"),
                        at(toml, "stages.stem_share")),
                stomata(toml),
                new CropTraits.Coefficients(
                        at(toml, "coefficients.initial"),
                        at(toml, "coefficients.mid"),
                        at(toml, "coefficients.end"),
                        at(toml, "coefficients.initial_ends"),
                        at(toml, "coefficients.mid_begins"),
                        at(toml, "coefficients.mid_ends")),
                new CropTraits.Roots(
                        at(toml, "roots.elongation"),
                        at(toml, "roots.longest"),
                        at(toml, "roots.dry_reserve"),
                        at(toml, "roots.wilt_to_death"),
                        at(toml, "roots.rise_borne"),
                        at(toml, "roots.drowned_death")),
                new CropTraits.Salinity(at(toml, "salinity.threshold"), at(toml, "salinity.fall")),
                new CropTraits.Nutrition(
                        leaf,
                        fruits ? contents(toml, "nutrition.fruit.") : leaf,
                        at(toml, "nutrition.ammonium_share"),
                        at(toml, "nutrition.half_nitrate"),
                        at(toml, "nutrition.half_ammonium"),
                        at(toml, "nutrition.half_phosphate"),
                        at(toml, "nutrition.half_potassium"),
                        at(toml, "nutrition.half_calcium"),
                        at(toml, "nutrition.half_magnesium"),
                        at(toml, "nutrition.half_sulfate"),
                        at(toml, "nutrition.sodium_pass"),
                        at(toml, "nutrition.chloride_pass")),
                new CropTraits.Needs(
                        at(toml, "needs.ec_low"),
                        at(toml, "needs.ec_high"),
                        at(toml, "needs.ph_low"),
                        at(toml, "needs.ph_high"),
                        at(toml, "needs.sodium_high"),
                        at(toml, "needs.chloride_high"),
                        at(toml, "needs.light_low"),
                        at(toml, "needs.light_high"),
                        at(toml, "needs.solution_warm")),
                provenance);
    }

    private static CropTraits.Stomata stomata(TomlTable toml) {
        String form = toml.getString("stomata.form");
        if ("light hyperbola".equals(form)) {
            return new CropTraits.Stomata.LightHyperbola(
                    at(toml, "stomata.least"),
                    at(toml, "stomata.a"),
                    at(toml, "stomata.b"),
                    at(toml, "stomata.dark"),
                    at(toml, "stomata.leaf_size"));
        }
        if ("light temperature humidity".equals(form)) {
            return new CropTraits.Stomata.LightTemperatureHumidity(
                    at(toml, "stomata.least"),
                    at(toml, "stomata.dark"),
                    at(toml, "stomata.leaf_size"));
        }
        throw new IllegalArgumentException("no form " + form);
    }

    private static CropTraits.Contents contents(TomlTable toml, String at) {
        return new CropTraits.Contents(
                at(toml, at + "nitrogen"),
                at(toml, at + "phosphorus"),
                at(toml, at + "potassium"),
                at(toml, at + "calcium"),
                at(toml, at + "magnesium"),
                at(toml, at + "sulfur"));
    }

    private static double at(TomlTable toml, String key) {
        String written = toml.getString(key + ".value");
        if (written == null) {
            throw new IllegalArgumentException("no key " + key);
        }
        return value(written);
    }

    private static void collect(TomlTable table, String prefix, List<CropTraits.Provenance> into) {
        for (String key : table.keySet()) {
            if (!(table.get(List.of(key)) instanceof TomlTable inner)) {
                continue;
            }
            String path = prefix + key;
            if (inner.contains("value")) {
                into.add(
                        new CropTraits.Provenance(
                                path,
                                inner.getString("value"),
                                inner.getString("low", () -> ""),
                                inner.getString("high", () -> ""),
                                inner.getString("source", () -> ""),
                                inner.getString("standing", () -> "")));
            } else {
                collect(inner, path + ".", into);
            }
        }
    }
}
