package tideless.crop;

import java.util.List;
import java.util.Map;
import tideless.scenario.Crops;

/** The crop library, and the quantities in it as numbers, for the tests of this room. */
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
                    Map.entry("cm2", 1e-4),
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
                    Map.entry("mg/L", 1.0),
                    Map.entry("umol/L", 0.001),
                    Map.entry("mol/m2/day", 1.0),
                    Map.entry("mL", 1e-6));

    private CropFiles() {}

    static List<String> names() {
        return Crops.names();
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

    /** A crop as the program reads it. */
    static CropTraits read(String name) {
        return Crops.named(name);
    }
}
