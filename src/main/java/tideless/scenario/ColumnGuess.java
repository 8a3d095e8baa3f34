package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Which of a file's own columns was most likely meant by one of ours. */
final class ColumnGuess {
    /** Parts of names that loggers and climate computers give such columns. */
    private static final Map<String, List<String>> PARTS =
            Map.ofEntries(
                    Map.entry("time", List.of("time", "date", "stamp")),
                    Map.entry("temperature", List.of("tair", "temp", "t_air", "tout")),
                    Map.entry("humidity", List.of("rh", "hum")),
                    Map.entry("deficit", List.of("vpd", "humdef", "deficit", "hd")),
                    Map.entry("vapour_pressure", List.of("vapour", "vapor")),
                    Map.entry("ppfd", List.of("ppfd", "quantum", "par")),
                    Map.entry("par", List.of("par")),
                    Map.entry("global", List.of("glob", "rad", "solar")),
                    Map.entry("lamp", List.of("lamp", "assim")),
                    Map.entry("co2", List.of("co2")),
                    Map.entry("air_speed", List.of("airspeed", "air speed", "wind", "speed")),
                    Map.entry("wind", List.of("wind")),
                    Map.entry("rain", List.of("rain", "precip")),
                    Map.entry("solution_temperature", List.of("solution", "water", "root")));

    private static final Map<String, String> EXAMPLES =
            Map.ofEntries(
                    Map.entry("time", "Date in local"),
                    Map.entry("temperature", "Tair in degC"),
                    Map.entry("humidity", "RH in %"),
                    Map.entry("deficit", "VPD in kPa"),
                    Map.entry("vapour_pressure", "ea in kPa"),
                    Map.entry("ppfd", "Quantum in umol/m2/s"),
                    Map.entry("par", "PAR in W/m2"),
                    Map.entry("global", "Solar in W/m2"),
                    Map.entry("lamp", "Lamp level in %"),
                    Map.entry("co2", "CO2 in ppm"),
                    Map.entry("air_speed", "Air in m/s"),
                    Map.entry("solution_temperature", "Tank in degC"),
                    Map.entry("wind", "Wind in m/s"),
                    Map.entry("rain", "Rain in mm"));

    private ColumnGuess() {}

    /** How a user might name one of our columns in a scenario. */
    static String example(String ours) {
        return EXAMPLES.get(ours);
    }

    /** One of some names, or empty. */
    static String of(String ours, Set<String> names) {
        String near = Spelling.nearest(ours, names);
        if (!near.isEmpty()) {
            return near;
        }
        for (String part : PARTS.getOrDefault(ours, List.of())) {
            for (String name : names) {
                if (name.toLowerCase(Locale.ROOT).contains(part)) {
                    return name;
                }
            }
        }
        return "";
    }

    /** How to use columns of a file for what is wanted and not found yet; empty when none fits. */
    static String hint(CsvColumns.Wanted wanted, Set<String> found, Set<String> unused) {
        List<String> lines = new ArrayList<>();
        for (String ours : wanted.optional()) {
            String meant = found.contains(ours) ? "" : of(ours, unused);
            if (!meant.isEmpty()) {
                lines.add(ours + " = " + Key.quoted(TomlFile.shown(meant)));
            }
        }
        return lines.isEmpty()
                ? ""
                : "; maybe name them in [climate.columns]: " + String.join(", ", lines);
    }
}
