package tideless.scenario;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The page that explains every key of a scenario and a crop file, made from the same tables. */
public final class ScenarioReference {
    private ScenarioReference() {}

    /** The page in Markdown, with a line feed at the end of each line. */
    public static String markdown() {
        StringBuilder page = new StringBuilder();
        page.append("# Scenario reference\n\n")
                .append("<!-- Made by ScenarioReference from the tables the reader uses. Do not")
                .append(" edit. -->\n\n")
                .append("A scenario is a TOML file of up to 1 MB. Quantities are texts with a")
                .append(" unit, as `\"8 cm\"`; dates stand bare, as `2026-03-02`; the decimal")
                .append(" sign is a point. Names of files count from the folder of the scenario.")
                .append(" `NAME` stands for a name of your own: letters, digits, - and _.\n")
                .append("A lamp under a tray takes the place of the lamp for all as a whole.\n")
                .append(
                        "A tray may have several tables `[[tray.NAME.next]]`: the crops that follow")
                .append(" the first, in their order; messages and comparisons know them by their")
                .append(" number, as `tray.NAME.next.1.plants`.\n");
        section(page, ScenarioKeys.TABLE, "");
        page.append("\n## [tray.NAME.crop_override]\n\n")
                .append("Any number of the crop file below, for this tray alone, as")
                .append(" `growth.light_use = \"2.6 g/MJ\"`.\n");
        page.append("\n# Crop file\n\n")
                .append("Every number is an inline table: `light_use = { value = \"3.0 g/MJ\", low")
                .append(" = \"2.5 g/MJ\", high = \"3.5 g/MJ\", source = \"author, year, table\",")
                .append(" standing = \"read\" }`; low and high may be left out; standing is one")
                .append(" of ")
                .append(String.join(", ", CropReader.STANDINGS))
                .append(".\n");
        section(page, CropKeys.TABLE, "");
        weather(page);
        log(page);
        spellings(page);
        return page.toString();
    }

    private static void section(StringBuilder page, KeyTable keys, String table) {
        List<Key<?>> here = keys.keysOf(table);
        if (!here.isEmpty()) {
            page.append("\n## ")
                    .append(table.isEmpty() ? "At the top" : heading(keys, table))
                    .append("\n\n| key | what | holds when left out | allowed | example |\n")
                    .append("| --- | --- | --- | --- | --- |\n");
            here.forEach(key -> row(page, key));
        }
        for (String child : keys.children(table)) {
            String path = KeyTable.join(table, child);
            if (keys.isTable(path)) {
                section(page, keys, path);
            }
        }
    }

    /** As it is written in a file; of tables known by their number, the number is left out. */
    private static String heading(KeyTable keys, String table) {
        String path = "";
        String shown = "";
        boolean several = false;
        for (String name : table.split("\\.", -1)) {
            several = keys.isList(path);
            path = KeyTable.join(path, name);
            shown = several ? shown : KeyTable.join(shown, name.equals("*") ? "NAME" : name);
        }
        return several ? "[[" + shown + "]]" : "[" + shown + "]";
    }

    private static void row(StringBuilder page, Key<?> key) {
        String about = key.about();
        if (!key.onlyWith().isEmpty()) {
            about +=
                    "; only with "
                            + key.discriminator()
                            + " "
                            + String.join(" or ", key.onlyWith());
        }
        page.append("| `")
                .append(key.name())
                .append("` | ")
                .append(cell(about))
                .append(" | ")
                .append(cell(otherwise(key)))
                .append(" | ")
                .append(cell(key.allowed()))
                .append(" | ")
                .append(key.example().isEmpty() ? "" : "`" + key.written() + "`")
                .append(" |\n");
    }

    private static String otherwise(Key<?> key) {
        return switch (key.need()) {
            case REQUIRED -> "**needed**";
            case DEFAULT -> key.fallback() + " (" + key.basis() + ")";
            case WORKED_OUT -> key.fallback();
            case OPTIONAL -> "";
        };
    }

    private static void log(StringBuilder page) {
        page.append("\n# Log\n\n")
                .append("CSV in UTF-8 of up to 1 MB, a line for each thing that was read or done:")
                .append(" columns `date`, `time`, `where`, `what`, `value`, and if wanted `unit`,")
                .append(" `remark`, `use`. Parted by commas, or by semicolons or tabs, where the")
                .append(
                        " decimal sign may be a comma. A date may stand without its year: 4.3., 4 Mar.")
                .append(" `where` is a tray or a reservoir; `no` under `use`")
                .append(" keeps an entry out. A table with a column a quantity is read as well:")
                .append(
                        " `level (cm)` beside a column `where`, or `shelf level (cm)`, `shelf (cm)`. Up to the")
                .append(" last entry a run does what the log says and follows no rule of visits; a")
                .append(" level read in a reservoir, or in a tray without a valve, is the level")
                .append(" from then on.\n\n")
                .append("| what | value |\n| --- | --- |\n");
        for (LogWhat what : LogWhat.values()) {
            List<String> units = new ArrayList<>();
            what.tables().forEach(table -> units.addAll(table.shown()));
            String value =
                    !what.mayHaveValue()
                            ? "none"
                            : units.isEmpty() ? "a number" : "`" + String.join("`, `", units) + "`";
            page.append("| `")
                    .append(what.word())
                    .append("` | ")
                    .append(value)
                    .append(what.mayHaveValue() && !what.needsValue() ? ", or none" : "")
                    .append(" |\n");
        }
    }

    private static void weather(StringBuilder page) {
        page.append("\n# Weather file\n\n")
                .append("CSV in UTF-8: a row of names, a row of units, then one row an hour; lines")
                .append(" that begin with # are passed over; columns in any order, others are not")
                .append(
                        " used and said. A file without a row of units states them behind its names")
                .append(" (temperature [degC]) or has them told in the scenario:")
                .append(" columns.temperature = \"Tair in degC\".\n\n")
                .append("| column | units |\n| --- | --- |\n")
                .append("| `time` | `UTC`, `UTC+01:00` or `local` (the rig's own clock); written")
                .append(" 2026-03-02T13:00, 2026-03-02 13:00:00, 20260302:1300, 02.03.2026 13:00,")
                .append(" 2/3/2026 1:00 PM (day and month told apart by the whole column) |\n");
        units(page, "temperature", UnitTable.TEMPERATURE, "");
        units(page, "humidity", UnitTable.SHARE, ", `fraction`");
        units(page, "global", UnitTable.IRRADIANCE, " (mean of the hour that begins)");
        units(page, "wind", UnitTable.SPEED, "");
        units(
                page,
                "rain",
                UnitTable.LENGTH,
                " (may be left out; of the hour that begins; said," + " not added to vessels)");
        page.append("\nUp to 3 hours in a row (`gap_most`) may be missing; they are filled by a")
                .append(" straight line and said so. Longer ones are refused, or filled from the")
                .append(" same hours of the days beside (`longer_gaps`). A typical year is met by")
                .append(" month and hour; 29 February repeats 28 February.\n\n")
                .append("A name that ends in .epw is read as an EPW file: dry bulb, relative")
                .append(" humidity, global radiation on the flat and wind of each hour, the zone")
                .append(" from its line LOCATION, missing-value codes (99.9, 999, 9999) as gaps.")
                .append(" Its months often come from different years: clock = \"typical year\".\n");
        inside(page);
    }

    private static void inside(StringBuilder page) {
        page.append("\n# File of inside air\n\n")
                .append("With `cover = \"inside\"` the file holds what was measured at the plants,")
                .append(" and it is taken as it is. Rows may be closer than an hour: an hour holds")
                .append(" the mean of the rows that begin in it. Names, units, times and gaps as")
                .append(" above.\n\n")
                .append("| column | units |\n| --- | --- |\n")
                .append("| `time` | as above |\n");
        units(page, "temperature", UnitTable.TEMPERATURE, "");
        page.append("| one of `humidity` | `%`, `fraction` |\n");
        String pressure = String.join("`, `", UnitTable.PRESSURE.shown()) + "`, `g/m3";
        page.append("| `deficit` | `" + pressure + "` |\n");
        page.append("| `vapour_pressure` | `" + pressure + "` |\n");
        units(page, "ppfd", UnitTable.PHOTON_FLUX, " (one of ppfd, par, global; or no light)");
        units(page, "par", UnitTable.IRRADIANCE, " (400-700 nm)");
        units(page, "global", UnitTable.IRRADIANCE, " (all of the sun's spectrum, inside)");
        page.append("| `lamp` | `%`, `fraction` of `lamps_full`; `min`, `s` or `h` on within the")
                .append(" row; or `umol/m2/s` |\n");
        units(page, "co2", UnitTable.MIXING_RATIO, " (may be left out)");
        units(page, "air_speed", UnitTable.SPEED, " (may be left out)");
        units(page, "solution_temperature", UnitTable.TEMPERATURE, " (may be left out)");
        page.append("\nThe light column is the sun's unless `light_from` says otherwise; lamps of")
                .append(" the file light every tray, and a lamp over a tray beside them is a")
                .append(" fault.\n");
    }

    private static void units(StringBuilder page, String column, UnitTable table, String more) {
        page.append("| `")
                .append(column)
                .append("` | `")
                .append(String.join("`, `", table.shown()))
                .append('`')
                .append(more)
                .append(" |\n");
    }

    private static void spellings(StringBuilder page) {
        Set<UnitTable> tables = new LinkedHashSet<>();
        ScenarioKeys.TABLE.keys().values().forEach(key -> tables.addAll(key.tables()));
        CropKeys.TABLE.keys().values().forEach(key -> tables.addAll(key.tables()));
        Set<String> rows = new LinkedHashSet<>();
        for (UnitTable table : tables) {
            rows.add(
                    "| "
                            + table.kind()
                            + " | `"
                            + String.join("`, `", table.spellings())
                            + "` |\n");
        }
        page.append("\n# Spellings of units\n\n")
                .append("Nothing else is read. gal is the US gallon.\n\n")
                .append("| quantity | spellings |\n| --- | --- |\n");
        rows.forEach(page::append);
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }
}
