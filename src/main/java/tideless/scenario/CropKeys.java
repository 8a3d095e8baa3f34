package tideless.scenario;

import static tideless.scenario.UnitTable.CONDUCTIVITY;
import static tideless.scenario.UnitTable.CONTENT;
import static tideless.scenario.UnitTable.HOURS;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.RESISTANCE;
import static tideless.scenario.UnitTable.TEMPERATURE;
import static tideless.scenario.UnitTable.THERMAL_TIME;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Every key of a crop file. Bounds are wide: they catch slips of unit, not odd crops. */
final class CropKeys {
    private CropKeys() {}

    static final String HYPERBOLA = "light hyperbola";
    static final String LIGHT_TEMPERATURE_HUMIDITY = "light temperature humidity";

    private static final String LIBRARY = "the middle of the library, assumed";

    private static final String[] ELEMENTS = {
        "nitrogen", "phosphorus", "potassium", "calcium", "magnesium", "sulfur"
    };
    private static final String[] HALVES = {
        "nitrate", "ammonium", "phosphate", "potassium", "calcium", "magnesium", "sulfate"
    };

    static final Key<String> NAME = Key.text("name").required("basil").about("name of the crop");
    static final Key<String> LATIN_NAME =
            Key.text("latin_name").fallsTo("not stated", Key.LEFT_OUT).about("botanical name");
    static final Key<String> ABOUT =
            Key.text("about")
                    .fallsTo("nothing", Key.LEFT_OUT)
                    .about("what plant it is, in a few words");
    static final Key<String> FORM =
            Key.choice("stomata.form", HYPERBOLA, LIGHT_TEMPERATURE_HUMIDITY)
                    .required(HYPERBOLA)
                    .about("which published form");

    /** Every key that holds a number with its source. */
    static final List<Key<Double>> NUMBERS = numbers();

    // After what it is made of.
    static final KeyTable TABLE = new KeyTable().at("", all());

    private static KeyGroup all() {
        KeyGroup keys = new KeyGroup();
        keys.add(NAME);
        keys.add(LATIN_NAME);
        keys.add(ABOUT);
        NUMBERS.forEach(keys::add);
        keys.add(FORM);
        return keys;
    }

    private static List<Key<Double>> numbers() {
        List<Key<Double>> keys = new ArrayList<>();
        growth(keys);
        stages(keys);
        stomata(keys);
        rest(keys);
        nutrition(keys);
        needs(keys);
        response(keys);
        thirst(keys);
        nursery(keys);
        harvest(keys);
        return Collections.unmodifiableList(keys);
    }

    private static void growth(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("growth.light_use", UnitTable.LIGHT_USE)
                        .above("0 g/MJ", "10 g/MJ")
                        .required("3.0 g/MJ")
                        .about("dry mass made per intercepted light of 400-700 nm"));
        keys.add(
                Key.quantity("growth.light_use_falls_from", UnitTable.PHOTON_FLUX)
                        .from("0 umol/m2/s", "3000 umol/m2/s")
                        .required("300 umol/m2/s")
                        .about("above this light is used less well"));
        keys.add(
                Key.quantity("growth.light_use_fall", UnitTable.PER_PHOTON_FLUX)
                        .from("0 per umol/m2/s", "0.02 per umol/m2/s")
                        .required("0.0005 per umol/m2/s")
                        .about("share of the light use lost above it"));
        keys.add(
                Key.number("growth.extinction")
                        .above("0", "1.5")
                        .required("0.7")
                        .about("extinction coefficient of the canopy"));
        keys.add(
                Key.quantity("growth.leaf_area", UnitTable.LEAF_AREA)
                        .above("0 m2/kg", "200 m2/kg")
                        .required("40 m2/kg")
                        .about("leaf area per leaf dry mass"));
        keys.add(
                Key.number("growth.leaf_area_index_max")
                        .above("0", "20")
                        .required("5")
                        .about("ceiling of the leaf area index"));
        keys.add(
                Key.quantity("growth.spread", UnitTable.AREA)
                        .above("0 cm2", "10 m2")
                        .required("600 cm2")
                        .about("ground one unhindered full-grown plant covers"));
        keys.add(
                Key.quantity("growth.height", LENGTH)
                        .above("0 cm", "5 m")
                        .required("40 cm")
                        .about("height of the full-grown plant"));
        keys.add(
                Key.quantity("growth.seedling_dry", UnitTable.MASS)
                        .above("0 g", "1 kg")
                        .required("2 mg")
                        .about("dry mass at emergence"));
        keys.add(temperature("growth.base", "8 degC", "no growth at or below"));
        keys.add(temperature("growth.optimum_low", "20 degC", "full growth from here"));
        keys.add(temperature("growth.optimum_high", "28 degC", "full growth to here"));
        keys.add(temperature("growth.ceiling", "40 degC", "no growth at or above"));
        keys.add(share("growth.leaf_dry_matter", "7 %", "dry share of the fresh shoot, grown"));
        keys.add(
                Key.share("growth.young_dry_matter")
                        .above("0 %", "100 %")
                        .workedOut("the grown shoot's", "8 %")
                        .about("dry share of a fresh seedling's shoot"));
        keys.add(
                Key.share("growth.fruit_dry_matter")
                        .from("0 %", "100 %")
                        .workedOut("the leaf's, for a leaf crop", "6 %")
                        .about("dry share of fresh fruit"));
    }

    private static Key<Double> temperature(String path, String example, String about) {
        return Key.quantity(path, TEMPERATURE)
                .from("-10 degC", "60 degC")
                .required(example)
                .about(about);
    }

    private static Key<Double> share(String path, String example, String about) {
        return Key.share(path).from("0 %", "100 %").required(example).about(about);
    }

    private static Key.Draft<Double> thermal(String path) {
        return Key.quantity(path, THERMAL_TIME).above("0 degC d", "20000 degC d");
    }

    private static void stages(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("stages.emergence", THERMAL_TIME)
                        .from("0 degC d", "1000 degC d")
                        .required("60 degC d")
                        .about("seedlings are up"));
        keys.add(
                thermal("stages.flowering")
                        .workedOut("never, for a leaf crop", "700 degC d")
                        .about("fruit begins to be filled"));
        keys.add(
                thermal("stages.full_load")
                        .workedOut("never, for a leaf crop", "1100 degC d")
                        .about("the fruit share has reached its full value"));
        keys.add(
                thermal("stages.first_harvest")
                        .required("600 degC d")
                        .about("a leaf crop is ready, or the first fruit is ripe"));
        keys.add(
                thermal("stages.last_harvest")
                        .workedOut("first_harvest, for a leaf crop", "1900 degC d")
                        .about("a fruit crop is finished"));
        keys.add(
                Key.share("stages.fruit_share")
                        .from("0 %", "100 %")
                        .workedOut("0, for a leaf crop", "0.6")
                        .about("share of new dry mass that goes to fruit at full load"));
        keys.add(share("stages.root_share", "0.15", "share that goes to roots before flowering"));
        keys.add(share("stages.stem_share", "0.3", "share of the rest that goes to stem"));
        keys.add(
                Key.quantity("stages.fruit_base", UnitTable.TEMPERATURE)
                        .from("-10 degC", "40 degC")
                        .workedOut("growth.base", "1 degC")
                        .about("fruit does not ripen below"));
        keys.add(
                thermal("stages.fruit_sum")
                        .workedOut("from flowering to first_harvest", "1000 degC d")
                        .about("warmth above fruit_base from a flower to its ripe fruit"));
    }

    private static void stomata(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("stomata.least", RESISTANCE)
                        .above("0 s/m", "2000 s/m")
                        .required("60 s/m")
                        .about("least resistance"));
        for (String letter : new String[] {"a", "b"}) {
            keys.add(
                    Key.quantity("stomata." + letter, UnitTable.PHOTON_FLUX)
                            .from("0 umol/m2/s", "10000 umol/m2/s")
                            .workedOut("needed for \"" + HYPERBOLA + "\"", "200 umol/m2/s")
                            .about(letter + " of the hyperbola"));
        }
        keys.add(
                Key.quantity("stomata.dark", RESISTANCE)
                        .above("0 s/m", "20000 s/m")
                        .required("900 s/m")
                        .about("resistance in the dark"));
        keys.add(
                Key.quantity("stomata.leaf_size", LENGTH)
                        .above("0 cm", "1 m")
                        .required("5 cm")
                        .about("leaf size along the air's path"));
    }

    private static void rest(List<Key<Double>> keys) {
        for (String stage : new String[] {"initial", "mid", "end"}) {
            keys.add(
                    Key.number("coefficients." + stage)
                            .above("0", "2")
                            .required("0.9")
                            .about("FAO-56 crop coefficient, " + stage));
        }
        keys.add(share("coefficients.initial_ends", "0.2", "of the thermal time"));
        keys.add(share("coefficients.mid_begins", "0.5", "of the thermal time"));
        keys.add(share("coefficients.mid_ends", "0.9", "of the thermal time"));
        keys.add(
                Key.quantity("roots.elongation", UnitTable.ELONGATION)
                        .above("0 cm/day", "50 cm/day")
                        .required("1.5 cm/day")
                        .about("growth of the leading roots"));
        keys.add(
                Key.quantity("roots.longest", LENGTH)
                        .above("0 cm", "5 m")
                        .required("40 cm")
                        .about("greatest length"));
        keys.add(
                Key.quantity("roots.dry_reserve", HOURS)
                        .above("0 h", "1000 h")
                        .required("12 h")
                        .about("hours a plant lives with every root dry, at 1 mm a day"));
        keys.add(
                Key.quantity("roots.wilt_to_death", HOURS)
                        .above("0 h", "2000 h")
                        .required("24 h")
                        .about("from wilting to death"));
        keys.add(
                Key.quantity("roots.rise_borne", LENGTH)
                        .from("0 cm", "1 m")
                        .required("2 cm")
                        .about("rise of the level that used roots bear"));
        keys.add(
                Key.quantity("roots.drowned_death", UnitTable.DAYS)
                        .above("0 days", "365 days")
                        .required("7 days")
                        .about("days of drowned roots after which a plant is lost"));
        keys.add(
                Key.quantity("salinity.threshold", CONDUCTIVITY)
                        .from("0 mS/cm", "20 mS/cm")
                        .required("1.3 mS/cm")
                        .about("EC of the solution above which growth falls"));
        keys.add(
                Key.quantity("salinity.fall", UnitTable.PER_CONDUCTIVITY)
                        .from("0 per mS/cm", "1 per mS/cm")
                        .required("13 % per mS/cm")
                        .about("share of growth lost above it"));
    }

    private static void nutrition(List<Key<Double>> keys) {
        for (String part : new String[] {"leaf", "fruit"}) {
            for (String element : ELEMENTS) {
                Key.Draft<Double> key =
                        Key.quantity("nutrition." + part + "." + element, CONTENT)
                                .from("0 g/kg", "200 g/kg");
                keys.add(
                        (part.equals("leaf")
                                        ? key.required("45 g/kg")
                                        : key.workedOut("the leaf's, for a leaf crop", "25 g/kg"))
                                .about(element + " of " + part + " dry mass"));
            }
        }
        for (String ion : HALVES) {
            keys.add(
                    Key.quantity("nutrition.half_" + ion, UnitTable.CONCENTRATION)
                            .above("0 mmol/L", "50 mmol/L")
                            .required("0.05 mmol/L")
                            .about("Michaelis constant for " + ion));
        }
        keys.add(share("nutrition.sodium_pass", "0.1", "sodium taken per litre drunk"));
        keys.add(share("nutrition.chloride_pass", "0.2", "chloride taken per litre drunk"));
    }

    private static void thirst(List<Key<Double>> keys) {
        keys.add(
                Key.number("thirst.full_cover")
                        .above("0", "3")
                        .workedOut("1.24 times coefficients.mid", "1.3")
                        .about("coefficient of a full stand in a house"));
        keys.add(
                Key.share("thirst.co2_conductance")
                        .above("0 %", "100 %")
                        .fallsTo("70 %", Key.ASSUMED)
                        .about("stomatal conductance at 1000 ppm over that at 400 ppm"));
        keys.add(
                Key.number("thirst.doubt")
                        .from("0", "2")
                        .fallsTo("0.4", Key.ASSUMED)
                        .about("spread between stands, standard deviation of the logarithm"));
    }

    private static void harvest(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("harvest.weight", UnitTable.MASS)
                        .above("0 g", "20 kg")
                        .workedOut("none: stages.first_harvest decides", "150 g")
                        .about("fresh weight of one plant that growers wait for"));
        keys.add(
                thermal("harvest.latest")
                        .workedOut("one and a half times stages.first_harvest", "1200 degC d")
                        .about("a leaf crop bolts or grows tough past this"));
        keys.add(
                thermal("harvest.picked_until")
                        .workedOut("harvest.latest", "2000 degC d")
                        .about("the same of a crop picked leaf by leaf, which bolts later"));
        keys.add(
                Key.quantity("harvest.picked_every", UnitTable.DAYS)
                        .from("1 day", "365 days")
                        .workedOut("none: it is cut once", "7 days")
                        .about("days between two pickings of a leaf crop picked as it grows"));
        keys.add(
                Key.quantity("harvest.picked_from", UnitTable.MASS)
                        .above("0 g", "20 kg")
                        .workedOut("harvest.weight", "80 g")
                        .about("fresh weight of one plant at its first picking"));
        keys.add(
                Key.share("harvest.picked_share")
                        .above("0 %", "95 %")
                        .fallsTo("33 %", Key.COMMON_PRACTICE)
                        .about("share of the standing leaf that a picking takes"));
        keys.add(
                Key.quantity("harvest.ground", UnitTable.AREA)
                        .above("0 cm2", "10 m2")
                        .workedOut("none: no stand is called crowded", "450 cm2")
                        .about("ground that growers give one plant"));
    }

    private static void nursery(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("nursery.area", UnitTable.AREA)
                        .above("0 cm2", "1 m2")
                        .fallsTo("25 cm2", Key.ASSUMED)
                        .about("ground each seedling has in its cell or pot, spacing included"));
        keys.add(
                Key.quantity("nursery.ppfd", UnitTable.PHOTON_FLUX)
                        .above("0 umol/m2/s", "2000 umol/m2/s")
                        .fallsTo("200 umol/m2/s", Key.ASSUMED)
                        .about("light in the nursery"));
        keys.add(
                Key.quantity("nursery.lit", HOURS)
                        .above("0 h", "24 h")
                        .fallsTo("16 h", Key.ASSUMED)
                        .about("hours of it a day"));
        keys.add(
                Key.quantity("nursery.temperature", TEMPERATURE)
                        .from("0 degC", "45 degC")
                        .workedOut("20 degC, or growth.optimum_low where that is warmer", "22 degC")
                        .about("mean temperature of the nursery"));
        keys.add(
                Key.quantity("nursery.days", UnitTable.DAYS)
                        .from("0 days", "365 days")
                        .fallsTo("14 days", Key.ASSUMED)
                        .about("usual age at transplanting, from sowing"));
        keys.add(
                Key.number("nursery.leaves")
                        .above("0", "200")
                        .fallsTo("4", Key.ASSUMED)
                        .about("true leaves at that age"));
        keys.add(
                Key.quantity("nursery.height", LENGTH)
                        .above("0 cm", "2 m")
                        .fallsTo("6 cm", Key.ASSUMED)
                        .about("height at that age"));
        keys.add(
                Key.quantity("nursery.root_length", LENGTH)
                        .from("0 cm", "2 m")
                        .fallsTo("0 cm", Key.ASSUMED)
                        .about("roots that hang out below the plug at transplanting"));
        keys.add(
                Key.quantity("nursery.plug_water", UnitTable.VOLUME)
                        .from("0 mL", "1 L")
                        .fallsTo("15 mL", Key.ASSUMED)
                        .about("water its plug or pot can give a plant before it wilts"));
    }

    private static void needs(List<Key<Double>> keys) {
        keys.add(
                Key.quantity("needs.ec_low", CONDUCTIVITY)
                        .from("0 mS/cm", "10 mS/cm")
                        .required("1.0 mS/cm")
                        .about("least EC"));
        keys.add(
                Key.quantity("needs.ec_high", CONDUCTIVITY)
                        .above("0 mS/cm", "20 mS/cm")
                        .required("2.4 mS/cm")
                        .about("greatest EC"));
        keys.add(Key.number("needs.ph_low").from("3", "9").required("5.5").about("least pH"));
        keys.add(Key.number("needs.ph_high").from("3", "10").required("6.5").about("greatest pH"));
        keys.add(
                Key.quantity("needs.sodium_high", UnitTable.CONCENTRATION)
                        .above("0 mmol/L", "200 mmol/L")
                        .required("4 mmol/L")
                        .about("most sodium"));
        keys.add(
                Key.quantity("needs.chloride_high", UnitTable.CONCENTRATION)
                        .above("0 mmol/L", "200 mmol/L")
                        .required("4 mmol/L")
                        .about("most chloride"));
        keys.add(
                Key.quantity("needs.light_low", UnitTable.DAILY_LIGHT)
                        .from("0 mol/m2/day", "80 mol/m2/day")
                        .required("12 mol/m2/day")
                        .about("least daily light"));
        keys.add(
                Key.quantity("needs.light_high", UnitTable.DAILY_LIGHT)
                        .above("0 mol/m2/day", "80 mol/m2/day")
                        .required("20 mol/m2/day")
                        .about("most daily light of use"));
        keys.add(
                Key.quantity("needs.solution_warm", TEMPERATURE)
                        .from("0 degC", "50 degC")
                        .required("26 degC")
                        .about("solution above which roots suffer"));
    }

    private static void response(List<Key<Double>> keys) {
        keys.add(
                oxygen("oxygen_enough", "2 mg/L", "dissolved oxygen of full growth up to 25 degC"));
        keys.add(
                oxygen(
                        "oxygen_enough_warm",
                        "2 mg/L",
                        "dissolved oxygen of full growth at 33 degC"));
        keys.add(
                Key.share("root_zone.growth_without_oxygen")
                        .from("0 %", "100 %")
                        .fallsTo("70 %", LIBRARY)
                        .about("growth left in water without oxygen while roots hang in air"));
        keys.add(
                oxygen(
                        "oxygen_enough_for_water",
                        "2 mg/L",
                        "dissolved oxygen of full water uptake"));
        keys.add(
                Key.share("root_zone.water_without_oxygen")
                        .from("0 %", "100 %")
                        .fallsTo("70 %", LIBRARY)
                        .about("water uptake left without oxygen"));
        keys.add(rootTemperature("coldest", "10 degC", "root temperature of half growth"));
        keys.add(rootTemperature("low", "18 degC", "full growth from this root temperature"));
        keys.add(rootTemperature("high", "28 degC", "full growth to this root temperature"));
        keys.add(
                Key.share("root_zone.growth_at_35")
                        .from("0 %", "100 %")
                        .fallsTo("60 %", LIBRARY)
                        .about("growth left at a root temperature of 35 degC"));
        keys.add(
                Key.quantity("root_zone.salt_stops", CONDUCTIVITY)
                        .above("0 mS/cm", "60 mS/cm")
                        .fallsTo("12 mS/cm", LIBRARY)
                        .about("EC at which growth ends"));
        keys.add(
                Key.quantity("root_zone.salt_thirst_fall", UnitTable.PER_CONDUCTIVITY)
                        .from("0 per mS/cm", "1 per mS/cm")
                        .fallsTo("4 % per mS/cm", LIBRARY)
                        .about("share of the thirst lost per EC above salinity.threshold"));
        keys.add(
                Key.quantity("root_zone.chill", TEMPERATURE)
                        .from("-20 degC", "30 degC")
                        .workedOut("none known", "12 degC")
                        .about("air below which leaves are injured"));
        keys.add(
                Key.quantity("root_zone.frost", TEMPERATURE)
                        .from("-40 degC", "10 degC")
                        .workedOut("none known", "-1 degC")
                        .about("air that kills the plant within the hour"));
        keys.add(
                Key.quantity("root_zone.set_low", TEMPERATURE)
                        .from("-10 degC", "60 degC")
                        .workedOut("no limit", "14 degC")
                        .about("day's mean air below which fruit sets badly"));
        keys.add(
                Key.quantity("root_zone.set_high", TEMPERATURE)
                        .from("-10 degC", "60 degC")
                        .workedOut("no limit", "32 degC")
                        .about("air of the lit hours above which fruit sets badly"));
        keys.add(
                Key.quantity("root_zone.set_whole", TEMPERATURE)
                        .from("-10 degC", "60 degC")
                        .workedOut("no limit", "28 degC")
                        .about(
                                "air of the lit hours up to which heat keeps no flower from"
                                        + " setting"));
        keys.add(
                Key.quantity("root_zone.set_half", TEMPERATURE)
                        .from("-10 degC", "60 degC")
                        .workedOut("no limit", "35 degC")
                        .about("air of the lit hours in which half of them set"));
        keys.add(
                Key.quantity("root_zone.set_none", TEMPERATURE)
                        .from("-10 degC", "60 degC")
                        .workedOut("no limit", "40 degC")
                        .about("air of the lit hours in which none sets"));
        keys.add(
                Key.quantity("root_zone.longest_day", HOURS)
                        .above("0 h", "24 h")
                        .fallsTo("24 h", LIBRARY)
                        .about("hours of light a day the crop bears"));
    }

    private static Key<Double> oxygen(String name, String otherwise, String about) {
        return Key.quantity("root_zone." + name, UnitTable.OXYGEN)
                .above("0 mg/L", "20 mg/L")
                .fallsTo(otherwise, LIBRARY)
                .about(about);
    }

    private static Key<Double> rootTemperature(String name, String otherwise, String about) {
        return Key.quantity("root_zone." + name, TEMPERATURE)
                .from("-10 degC", "41 degC")
                .fallsTo(otherwise, LIBRARY)
                .about(about);
    }
}
