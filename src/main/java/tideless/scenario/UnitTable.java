package tideless.scenario;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tideless.physics.Time;
import tideless.solution.ElectricalConductivity.PpmScale;
import tideless.solution.MolarMass;
import tideless.solution.WaterAnalysis;

/**
 * The closed table of spellings in which one kind of quantity may be written, and what each is
 * worth in the unit the records use.
 *
 * <p>An SI value is {@code offset + factor * number}. Factors come from NIST Special Publication
 * 811 (Thompson and Taylor, 2008), Appendix B; those marked exact there are exact here.
 */
final class UnitTable {
    /** The plain inverse map of one spelling. */
    private record Worth(double factor, double offset) {}

    private final String kind;
    private final Map<String, Worth> worths = new LinkedHashMap<>();
    private final List<String> shown = new ArrayList<>();

    private UnitTable(String kind) {
        this.kind = kind;
    }

    /** The first spelling is the one that messages show. */
    private UnitTable unit(double factor, String... spellings) {
        return shifted(factor, 0, spellings);
    }

    private UnitTable shifted(double factor, double offset, String... spellings) {
        shown.add(spellings[0]);
        for (String spelling : spellings) {
            if (worths.put(spelling, new Worth(factor, offset)) != null) {
                throw new IllegalStateException(spelling + " stands twice in " + kind);
            }
        }
        return this;
    }

    /** What it measures, as "length". */
    String kind() {
        return kind;
    }

    /** One spelling a unit, in the order of the table. */
    List<String> shown() {
        return Collections.unmodifiableList(shown);
    }

    /** Every spelling. */
    List<String> spellings() {
        return List.copyOf(worths.keySet());
    }

    /** Value in the records' unit, or empty when the spelling is not in the table. */
    OptionalDouble value(double number, String spelling) {
        Worth worth = worths.get(spelling);
        return worth == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(worth.offset + worth.factor * number);
    }

    /** The number that is written for a value in one of its spellings. */
    double number(double value, String spelling) {
        Worth worth = worths.get(spelling);
        return (value - worth.offset) / worth.factor;
    }

    static final double INCH_M = 0.0254; // exact
    static final double FOOT_M = 0.3048; // exact
    static final double US_GALLON_M3 = 3.785411784e-3; // exact: 231 cubic inches
    static final double IMPERIAL_GALLON_M3 = 4.54609e-3; // exact

    /** m. */
    static final UnitTable LENGTH =
            new UnitTable("length")
                    .unit(1e-2, "cm")
                    .unit(1e-3, "mm")
                    .unit(1, "m")
                    .unit(INCH_M, "in", "inch", "inches", "\"")
                    .unit(FOOT_M, "ft", "foot", "feet", "'");

    /** m2. */
    static final UnitTable AREA =
            new UnitTable("area")
                    .unit(1e-4, "cm2", "cm\u00b2", "cm^2")
                    .unit(1e-6, "mm2", "mm\u00b2", "mm^2")
                    .unit(1, "m2", "m\u00b2", "m^2")
                    .unit(INCH_M * INCH_M, "in2", "in\u00b2", "in^2", "sq in")
                    .unit(FOOT_M * FOOT_M, "ft2", "ft\u00b2", "ft^2", "sq ft");

    /** m3. */
    static final UnitTable VOLUME =
            new UnitTable("volume")
                    .unit(1e-3, "L", "l", "litre", "litres", "liter", "liters")
                    .unit(1e-6, "mL", "ml")
                    .unit(1, "m3", "m\u00b3", "m^3")
                    .unit(US_GALLON_M3, "gal", "US gal", "gallon", "gallons")
                    .unit(US_GALLON_M3 / 4, "qt", "quart", "quarts")
                    .unit(US_GALLON_M3 / 128, "fl oz")
                    .unit(FOOT_M * FOOT_M * FOOT_M, "ft3", "ft\u00b3", "ft^3", "cu ft")
                    .unit(IMPERIAL_GALLON_M3, "imp gal");

    /** degC. */
    static final UnitTable TEMPERATURE =
            new UnitTable("temperature")
                    .unit(1, "degC", "\u00b0C", "C")
                    .shifted(1 / 1.8, -32 / 1.8, "degF", "\u00b0F", "F")
                    .shifted(1, -273.15, "K");

    /** K, as a difference of two temperatures. */
    static final UnitTable TEMPERATURE_DIFFERENCE =
            new UnitTable("temperature difference")
                    .unit(1, "K", "degC", "\u00b0C")
                    .unit(1 / 1.8, "degF", "\u00b0F");

    /** 0-1. */
    static final UnitTable SHARE = new UnitTable("share").unit(1e-2, "%", "percent");

    /** 0-1, as written in a table of measured values. */
    static final UnitTable FRACTION = new UnitTable("share").unit(1, "fraction");

    /** s. */
    static final UnitTable DURATION =
            new UnitTable("time span")
                    .unit(1, "s", "sec", "second", "seconds")
                    .unit(60, "min", "minute", "minutes")
                    .unit(3600, "h", "hour", "hours")
                    .unit(Time.DAY_S, "days", "day", "d")
                    .unit(7 * Time.DAY_S, "weeks", "week");

    /** m3/s. */
    static final UnitTable FLOW =
            new UnitTable("flow")
                    .unit(1e-3 / Time.DAY_S, "L/day", "l/day", "L/d", "l/d")
                    .unit(1e-3 / 3600, "L/h", "l/h")
                    .unit(1e-6 / Time.DAY_S, "mL/day", "ml/day", "mL/d")
                    .unit(1e-6 / 3600, "mL/h", "ml/h")
                    .unit(1e-6 / 60, "mL/min", "ml/min")
                    .unit(US_GALLON_M3 / Time.DAY_S, "gal/day", "gal/d")
                    .unit(1, "m3/s");

    /** m/s. */
    static final UnitTable SPEED =
            new UnitTable("speed")
                    .unit(1, "m/s")
                    .unit(1e-2, "cm/s")
                    .unit(1 / 3.6, "km/h")
                    .unit(FOOT_M / 60, "ft/min")
                    .unit(5280 * FOOT_M / 3600, "mph")
                    .unit(1852.0 / 3600, "kn", "knots");

    /** mS/cm. */
    static final UnitTable CONDUCTIVITY =
            new UnitTable("conductivity at 25 degC")
                    .unit(1, "mS/cm")
                    .unit(1e-3, "uS/cm", "\u00b5S/cm")
                    .unit(1, "dS/m")
                    .unit(1e-2, "mS/m")
                    .unit(10, "S/m")
                    // What pens call ppm is this reading times a factor they do not agree on.
                    .unit(1 / PpmScale.PPM_500.ppm(1), "ppm-500", "ppm (500 scale)")
                    .unit(1 / PpmScale.PPM_700.ppm(1), "ppm-700", "ppm (700 scale)");

    /** umol/m2/s. */
    static final UnitTable PHOTON_FLUX =
            new UnitTable("photon flux density")
                    .unit(
                            1,
                            "umol/m2/s",
                            "\u00b5mol/m2/s",
                            "\u00b5mol/m\u00b2/s",
                            "umol/m\u00b2/s",
                            "umol/(m2 s)",
                            "\u00b5mol/(m2 s)",
                            "umol m-2 s-1",
                            "\u00b5mol m-2 s-1");

    /** lux. */
    static final UnitTable ILLUMINANCE =
            new UnitTable("illuminance")
                    .unit(1, "lux", "lx")
                    .unit(1000, "klux", "klx")
                    .unit(1 / (FOOT_M * FOOT_M), "fc", "foot-candles"); // lm/ft2

    /** W. */
    static final UnitTable POWER =
            new UnitTable("power").unit(1, "W", "watt", "watts").unit(1000, "kW");

    /** lm/W. */
    static final UnitTable LUMENS_PER_WATT =
            new UnitTable("luminous efficacy").unit(1, "lm/W", "lumen/W", "lumens/watt");

    /** umol/J. */
    static final UnitTable PHOTONS_PER_JOULE =
            new UnitTable("photon efficacy").unit(1, "umol/J", "\u00b5mol/J");

    /** umol/mol. */
    static final UnitTable MIXING_RATIO =
            new UnitTable("share of the air").unit(1, "ppm", "umol/mol", "\u00b5mol/mol");

    /** degrees, north or east positive. */
    static final UnitTable LATITUDE =
            new UnitTable("latitude")
                    .unit(1, "deg", "\u00b0")
                    .unit(1, "N", "deg N", "\u00b0N", "\u00b0 N")
                    .unit(-1, "S", "deg S", "\u00b0S", "\u00b0 S");

    /** degrees, east positive. */
    static final UnitTable LONGITUDE =
            new UnitTable("longitude")
                    .unit(1, "deg", "\u00b0")
                    .unit(1, "E", "deg E", "\u00b0E", "\u00b0 E")
                    .unit(-1, "W", "deg W", "\u00b0W", "\u00b0 W");

    /** W/m2/K. 1 Btu/(h ft2 degF) = 5.678263 W/m2/K, NIST SP 811. */
    static final UnitTable HEAT_LOSS =
            new UnitTable("heat loss")
                    .unit(1, "W/m2/K", "W/m\u00b2/K", "W/(m2 K)", "W/(m\u00b2 K)")
                    .unit(5.678263, "Btu/(h ft2 degF)");

    /** per hour. */
    static final UnitTable PER_HOUR =
            new UnitTable("air changes").unit(1, "/h", "per h", "per hour");

    /** W/m2. 1 J/cm2 in an hour is 1e4/3600 W/m2. */
    static final UnitTable IRRADIANCE =
            new UnitTable("irradiance")
                    .unit(1, "W/m2", "W/m\u00b2")
                    .unit(1e4 / 3600, "J/cm2/h", "J/cm\u00b2/h")
                    .unit(1e6 / 3600, "MJ/m2/h", "MJ/m\u00b2/h");

    /** Pa. */
    static final UnitTable PRESSURE =
            new UnitTable("pressure").unit(1, "Pa").unit(1000, "kPa").unit(100, "hPa", "mbar");

    /** kg/m3 of water vapour. */
    static final UnitTable VAPOUR_DENSITY =
            new UnitTable("vapour density").unit(1e-3, "g/m3", "g/m\u00b3", "g/m^3");

    /** mol/m3 of an ion whose molar mass is stated, g/mol; plain mass counts the ion itself. */
    static UnitTable ion(double gramsPerMol) {
        return molar("concentration")
                .unit(1 / gramsPerMol, "mg/L", "mg/l", "ppm")
                .unit(1000 / gramsPerMol, "g/L", "g/l");
    }

    /**
     * mol/m3 of an ion that laboratories state either as itself or as its element, so that plain
     * mg/L would be a guess.
     */
    static UnitTable ion(
            double gramsPerMol, String ion, double elementGramsPerMol, String element) {
        return molar("concentration of " + ion)
                .unit(1 / gramsPerMol, "mg/L " + ion, "mg/l " + ion, "ppm " + ion)
                .unit(
                        1 / elementGramsPerMol,
                        "mg/L " + element,
                        "mg/l " + element,
                        "ppm " + element);
    }

    private static UnitTable molar(String kind) {
        return new UnitTable(kind)
                .unit(1, "mmol/L", "mmol/l", "mM", "mol/m3")
                .unit(1e-3, "umol/L", "\u00b5mol/L", "umol/l");
    }

    /** mol/m3. */
    static final UnitTable CONCENTRATION = molar("concentration");

    /** Whether a spelling stands in it. */
    boolean knows(String spelling) {
        return value(1, spelling).isPresent();
    }

    /** mol/m3 of an ion stated by its charge. */
    static UnitTable equivalents(int charge) {
        return new UnitTable("concentration of charge")
                .unit(1.0 / charge, "meq/L", "meq/l", "mmol charge/L");
    }

    /** mol/m3 of calcium and magnesium together. A German degree is 10 mg/L of CaO. */
    static final UnitTable HARDNESS =
            new UnitTable("hardness")
                    .unit(WaterAnalysis.Hardness.DEGREES_DH.molPerM3(1), "dH", "\u00b0dH")
                    .unit(WaterAnalysis.Hardness.DEGREES_FH.molPerM3(1), "fH", "\u00b0fH")
                    .unit(1 / MolarMass.CACO3, "mg/L CaCO3", "ppm CaCO3")
                    .unit(1, "mmol/L")
                    .unit(0.5, "meq/L");

    /** mol charge/m3. A German degree of carbonate hardness is 10 mg/L of CaO. */
    static final UnitTable ALKALINITY =
            new UnitTable("alkalinity")
                    .unit(1, "meq/L", "mmol/L")
                    .unit(2 / MolarMass.CACO3, "mg/L CaCO3", "ppm CaCO3")
                    .unit(WaterAnalysis.Alkalinity.DEGREES_DH.eqPerM3(1), "dH", "\u00b0dH", "dKH")
                    .unit(WaterAnalysis.Alkalinity.DEGREES_FH.eqPerM3(1), "fH", "\u00b0fH")
                    .unit(1 / MolarMass.HCO3, "mg/L HCO3");

    /** kg/L. */
    static final UnitTable DENSITY =
            new UnitTable("density").unit(1, "kg/L", "g/mL", "g/cm3").unit(1e-3, "kg/m3", "g/L");

    // What crop files need besides.

    /** g per MJ of 400-700 nm. */
    static final UnitTable LIGHT_USE = new UnitTable("light use").unit(1, "g/MJ");

    /** share per umol/m2/s. */
    static final UnitTable PER_PHOTON_FLUX =
            new UnitTable("share per photon flux density")
                    .unit(1, "per umol/m2/s", "/(umol/m2/s)", "m2 s/umol")
                    .unit(1e-2, "% per umol/m2/s");

    /** g/m3, the mg/L of an oxygen meter. */
    static final UnitTable OXYGEN = new UnitTable("dissolved oxygen").unit(1, "mg/L", "g/m3");

    /** m2/kg. */
    static final UnitTable LEAF_AREA =
            new UnitTable("leaf area per dry mass")
                    .unit(1, "m2/kg")
                    .unit(0.1, "cm2/g")
                    .unit(1000, "m2/g");

    /** g. */
    static final UnitTable MASS =
            new UnitTable("mass").unit(1, "g").unit(1e-3, "mg").unit(1000, "kg");

    /** degC d. */
    static final UnitTable THERMAL_TIME =
            new UnitTable("thermal time").unit(1, "degC d", "\u00b0C d", "degC day", "K d");

    /** s/m. */
    static final UnitTable RESISTANCE = new UnitTable("resistance").unit(1, "s/m");

    /** m/d. */
    static final UnitTable ELONGATION =
            new UnitTable("growth in length")
                    .unit(1e-2, "cm/day", "cm/d")
                    .unit(1e-3, "mm/day", "mm/d")
                    .unit(1, "m/day", "m/d");

    /** share per mS/cm. */
    static final UnitTable PER_CONDUCTIVITY =
            new UnitTable("share per conductivity")
                    .unit(1, "per mS/cm", "/(mS/cm)", "per dS/m", "m/dS")
                    .unit(1e-2, "% per mS/cm", "%/(mS/cm)", "% per dS/m", "%/(dS/m)");

    /** g/kg. */
    static final UnitTable CONTENT =
            new UnitTable("content of dry mass")
                    .unit(1, "g/kg", "mg/g")
                    .unit(10, "%")
                    .unit(1e-3, "mg/kg");

    /** mol/m2/d. */
    static final UnitTable DAILY_LIGHT =
            new UnitTable("daily light integral")
                    .unit(1, "mol/m2/day", "mol/m2/d", "mol/m\u00b2/d", "mol/m\u00b2/day");

    /** h. */
    static final UnitTable HOURS =
            new UnitTable("time span")
                    .unit(1, "h", "hour", "hours")
                    .unit(1.0 / 60, "min", "minutes")
                    .unit(24, "days", "day", "d");

    /** d. */
    static final UnitTable DAYS =
            new UnitTable("time span")
                    .unit(1, "days", "day", "d")
                    .unit(7, "weeks", "week")
                    .unit(1.0 / 24, "h", "hour", "hours");
}
