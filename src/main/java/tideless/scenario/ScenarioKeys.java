package tideless.scenario;

import static tideless.scenario.UnitTable.AREA;
import static tideless.scenario.UnitTable.CONDUCTIVITY;
import static tideless.scenario.UnitTable.DURATION;
import static tideless.scenario.UnitTable.FLOW;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.SHARE;
import static tideless.scenario.UnitTable.TEMPERATURE;
import static tideless.scenario.UnitTable.VOLUME;

import java.util.ArrayList;
import java.util.List;

/** Every key of a scenario file. A {@code *} stands for a name the user chooses. */
final class ScenarioKeys {
    private ScenarioKeys() {}

    static final KeyTable TABLE = new KeyTable(all());

    private static List<Key> all() {
        List<Key> keys = new ArrayList<>();
        top(keys);
        climate(keys);
        lamp(keys, "lamp");
        liquids(keys);
        reservoir(keys);
        tray(keys);
        plan(keys);
        return keys;
    }

    private static void top(List<Key> keys) {
        keys.add(Key.text("title").required("Wall bench").about("what you call it"));
        keys.add(
                Key.date("start")
                        .required("2026-03-02")
                        .about("the day the run begins, at 00:00 of the rig's own clock"));
        keys.add(
                Key.quantity("length", DURATION)
                        .from("1 day", "1100 days")
                        .required("70 days")
                        .about("how long the run lasts, whole days"));
        keys.add(
                Key.quantity("place.latitude", UnitTable.LATITUDE)
                        .from("-90 deg", "90 deg")
                        .optional("45.0 N")
                        .about("where the rig stands; needed with weather"));
        keys.add(
                Key.quantity("place.longitude", UnitTable.LONGITUDE)
                        .from("-180 deg", "180 deg")
                        .optional("8.0 E")
                        .about("where the rig stands; needed with weather"));
        keys.add(
                Key.quantity("place.altitude", LENGTH)
                        .from("-450 m", "6000 m")
                        .fallsTo("0 m")
                        .about("above sea level; sets the air pressure"));
        keys.add(
                Key.text("place.utc_offset")
                        .workedOut("the whole hour nearest to the longitude", "+01:00")
                        .about("the rig's own clock against UTC, the same all the year"));
    }

    /** Air and light measured at the plants. */
    static final String INSIDE = "inside";

    /** Keys of a cover, which inside air has none of. */
    static final List<String> OF_A_COVER =
            List.of(
                    "transmission",
                    "heat_loss",
                    "vents_shut",
                    "vents_open",
                    "mean_height",
                    "heated_to",
                    "vents_from",
                    "wind_height");

    /** Keys of inside air, without sense elsewhere. */
    static final List<String> OF_INSIDE_AIR = List.of("light_from", "lamps_type", "lamps_full");

    private static void climate(List<Key> keys) {
        String[] room = {"kind", "room"};
        String[] weather = {"kind", "weather"};
        keys.add(
                Key.choice("climate.kind", "room", "weather")
                        .required("room")
                        .about("a room that holds one state by day and one by night, or weather"));
        keys.add(
                with(
                        room,
                        Key.quantity("climate.day_temperature", TEMPERATURE)
                                .from("-5 degC", "50 degC")
                                .required("22 degC")
                                .about("air by day")));
        keys.add(
                with(
                        room,
                        Key.quantity("climate.night_temperature", TEMPERATURE)
                                .from("-5 degC", "50 degC")
                                .workedOut("as by day", "18 degC")
                                .about("air at night")));
        keys.add(
                with(
                        room,
                        Key.share("climate.day_humidity")
                                .from("1 %", "100 %")
                                .fallsTo("60 %")
                                .about("relative humidity by day")));
        keys.add(
                with(
                        room,
                        Key.share("climate.night_humidity")
                                .from("1 %", "100 %")
                                .workedOut("as by day", "70 %")
                                .about("relative humidity at night")));
        keys.add(
                with(
                        room,
                        Key.clock("climate.day_from")
                                .workedOut("when the lamp goes on, else 06:00", "06:00")
                                .about("day begins")));
        keys.add(
                with(
                        room,
                        Key.clock("climate.day_to")
                                .workedOut("when the lamp goes off, else 20:00", "20:00")
                                .about("day ends")));
        keys.add(
                with(
                        room,
                        Key.quantity("climate.swing", UnitTable.TEMPERATURE_DIFFERENCE)
                                .from("0 K", "30 K")
                                .fallsTo("0 K")
                                .about(
                                        "rise and fall of the temperature on top of day and night:"
                                                + " coldest at 03:00, warmest at 15:00")));
        keys.add(
                with(
                        weather,
                        Key.file("climate.file")
                                .required("weather/site.csv")
                                .about(
                                        "an EPW file (name.epw), or hourly CSV: a row of names (time, temperature, humidity,"
                                                + " global, wind) and a row of units; under time,"
                                                + " UTC, UTC+01:00 or local")));
        keys.add(
                with(
                        weather,
                        Key.choice("climate.clock", "typical year", "dates")
                                .fallsTo("dates")
                                .about(
                                        "whether the series is met by month and hour whatever the"
                                                + " year, or by date")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.wind_height", LENGTH)
                                .from("0.5 m", "100 m")
                                .fallsTo("10 m")
                                .about(
                                        "height of the wind column above the ground; brought to 2 m"
                                                + " by FAO-56 eq. 47")));
        keys.add(
                with(
                        weather,
                        Key.choice("climate.cover", "open", "shade", "glass", "film", INSIDE)
                                .fallsTo("open")
                                .about(
                                        "what stands between the weather and the plants; inside:"
                                                + " the file holds air and light measured at the"
                                                + " plants, taken as they are")));
        for (String column : InsideFile.columns()) {
            keys.add(
                    with(
                            weather,
                            Key.text("climate.columns." + column)
                                    .optional(ColumnGuess.example(column))
                                    .about(
                                            "the file's own name for the column "
                                                    + column
                                                    + ", and its unit unless the file states"
                                                    + " it")));
        }
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.gap_most", DURATION)
                                .from("0 h", "48 h")
                                .fallsTo("3 h")
                                .about("longest gap of the file that straight lines bridge")));
        keys.add(
                with(
                        weather,
                        Key.choice("climate.longer_gaps", "refuse", Gaps.FROM_DAYS_BESIDE)
                                .fallsTo("refuse")
                                .about(
                                        "what becomes of longer ones: filled from the same hours"
                                                + " of the days before and after, or refused")));
        keys.add(
                with(
                        weather,
                        Key.choice("climate.light_from", InsideFile.LightFrom.spellings())
                                .fallsTo("sun")
                                .about(
                                        "what the light column of inside air saw: a sensor under"
                                                + " burning lamps sees both")));
        keys.add(
                with(
                        weather,
                        Key.choice("climate.lamps_type", LampType.spellings())
                                .fallsTo("white-led")
                                .about("kind of the lamps that inside air records")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.lamps_full", UnitTable.PHOTON_FLUX)
                                .from("0 umol/m2/s", "3000 umol/m2/s")
                                .optional("187 umol/m2/s")
                                .about(
                                        "light of those lamps at the canopy at full level; needed"
                                                + " where the column lamp holds levels or time"
                                                + " on")));
        keys.add(
                with(
                        weather,
                        Key.share("climate.transmission")
                                .from("0 %", "100 %")
                                .workedOut("open 100 %, shade 50 %, glass 70 %, film 65 %", "70 %")
                                .about("share of the global radiation that reaches the plants")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.heat_loss", UnitTable.HEAT_LOSS)
                                .from("0.5 W/m2/K", "30 W/m2/K")
                                .workedOut(
                                        "glass 7, film 8 W/m2/K; without use elsewhere", "7 W/m2/K")
                                .about("heat lost through the cover per floor area")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.vents_shut", UnitTable.PER_HOUR)
                                .from("0 /h", "100 /h")
                                .fallsTo("1 /h")
                                .about("air changes with the vents shut")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.vents_open", UnitTable.PER_HOUR)
                                .from("0 /h", "300 /h")
                                .fallsTo("30 /h")
                                .about("air changes with the vents wide open")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.mean_height", LENGTH)
                                .from("0.5 m", "20 m")
                                .fallsTo("3 m")
                                .about("mean height of the house")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.heated_to", TEMPERATURE)
                                .from("-20 degC", "40 degC")
                                .workedOut("not heated", "16 degC")
                                .about("the air is never let below this")));
        keys.add(
                with(
                        weather,
                        Key.quantity("climate.vents_from", TEMPERATURE)
                                .from("0 degC", "45 degC")
                                .fallsTo("24 degC")
                                .about("the vents begin to open here, wide open 4 K above")));
        keys.add(
                Key.quantity("climate.air_speed", UnitTable.SPEED)
                        .above("0 m/s", "10 m/s")
                        .fallsTo("0.2 m/s")
                        .about("air speed at the leaves, in a room or under glass or film"));
        keys.add(
                Key.quantity("climate.co2", UnitTable.MIXING_RATIO)
                        .from("150 ppm", "3000 ppm")
                        .fallsTo("420 ppm")
                        .about("carbon dioxide of the air"));
        keys.add(
                Key.quantity("climate.solution_co2", UnitTable.MIXING_RATIO)
                        .from("150 ppm", "100000 ppm")
                        .workedOut("as in the air", "2000 ppm")
                        .about(
                                "carbon dioxide the solutions stand in contact with; more than the"
                                        + " air's below a close deck, where roots and microbes"
                                        + " breathe; lowers pH"));
    }

    private static Key with(String[] discriminatorAndValue, Key key) {
        return key.onlyWith(discriminatorAndValue[0], discriminatorAndValue[1]);
    }

    private static void lamp(List<Key> keys, String at) {
        keys.add(
                Key.choice(at + ".type", LampType.spellings())
                        .fallsTo("white-led")
                        .about("kind of light"));
        keys.add(
                Key.quantity(at + ".ppfd", UnitTable.PHOTON_FLUX)
                        .from("0 umol/m2/s", "3000 umol/m2/s")
                        .optional("220 umol/m2/s")
                        .about(
                                "photon flux density at the canopy; or state lux, or watts and area"));
        keys.add(
                Key.quantity(at + ".lux", UnitTable.ILLUMINANCE)
                        .from("0 lux", "200000 lux")
                        .optional("12 klux")
                        .about("mean illuminance over the tray"));
        keys.add(
                Key.quantity(at + ".watts", UnitTable.POWER)
                        .above("0 W", "20000 W")
                        .optional("24 W")
                        .about("electrical power over the lit area"));
        keys.add(
                Key.quantity(
                                at + ".efficacy",
                                UnitTable.LUMENS_PER_WATT,
                                UnitTable.PHOTONS_PER_JOULE)
                        .above("0 lm/W", "370 lm/W")
                        .fallsTo("100 lm/W")
                        .about("light per electrical watt; used with watts"));
        keys.add(
                Key.quantity(at + ".area", AREA)
                        .above("0 cm2", "1000 m2")
                        .optional("0.25 m2")
                        .about("area the lamp lights; needed with watts"));
        keys.add(
                Key.share(at + ".on_target")
                        .above("0 %", "100 %")
                        .fallsTo("100 %")
                        .about("share of the light that lands on that area"));
        keys.add(Key.clock(at + ".on").fallsTo("06:00").about("switched on"));
        keys.add(Key.clock(at + ".off").fallsTo("20:00").about("switched off"));
        keys.add(
                Key.quantity(at + ".hours", DURATION)
                        .from("0 h", "24 h")
                        .optional("14 h")
                        .about("hours of light you count on; held against on and off"));
        keys.add(
                Key.of(at + ".levels", Key.Kind.LEVELS)
                        .optional(
                                "[{ from = \"06:00\", share = \"50 %\" },"
                                        + " { from = \"09:00\", share = \"100 %\" }]")
                        .about(
                                "dimming by the hour, while it is on: each share holds from its"
                                        + " time to the next one's, round the clock; full strength"
                                        + " when left out"));
        keys.add(
                Key.of(at + ".strengths", Key.Kind.STRENGTHS)
                        .optional("[{ from = 2026-03-20, share = \"80 %\" }]")
                        .about(
                                "strength by date: each share holds from its date on, on top of"
                                        + " levels; full strength before the first"));
    }

    private static void liquids(List<Key> keys) {
        keys.add(
                Key.choice("water.source", Solutions.CURRENT.waters())
                        .workedOut("soft-tap, unless an analysis is stated", "soft-tap")
                        .about("source water by name; or state [water.analysis]"));
        ions(keys, "water.analysis", "of the source water; 0 when not stated");
        keys.add(
                Key.choice("feed.recipe", Solutions.CURRENT.recipes())
                        .optional("hoagland-1")
                        .about("published recipe; or state [feed.analysis]"));
        keys.add(
                Key.quantity("feed.ec", CONDUCTIVITY)
                        .above("0 mS/cm", "6 mS/cm")
                        .workedOut("the recipe's published EC", "1.6 mS/cm")
                        .about("EC at 25 degC the feed is made up to"));
        keys.add(Key.number("feed.ph").from("4", "8").fallsTo("5.8").about("pH it is brought to"));
        keys.add(
                Key.choice("feed.acid", Solutions.ACIDS)
                        .fallsTo("nitric")
                        .about("acid that brings the pH down; acid into water, gloves, goggles"));
        ions(keys, "feed.analysis", "of the finished feed; 0 when not stated");
    }

    private static void ions(List<Key> keys, String at, String about) {
        for (Ion ion : Ion.values()) {
            keys.add(
                    Key.quantity(at + "." + ion.spelling(), ion.table(), ion.equivalents())
                            .from("0 mmol/L", "100 mmol/L")
                            .optional("0.5 mmol/L")
                            .about(ion.spelling() + " " + about));
        }
    }

    private static void vessel(List<Key> keys, String at, String deepest) {
        keys.add(
                Key.choice(at + ".shape", "box", "cylinder", "tub", "bucket")
                        .workedOut("cylinder where a diameter is stated, else box", "box")
                        .about("tub: a box, bucket: a cylinder, each narrower at the floor"));
        keys.add(
                Key.quantity(at + ".length", LENGTH)
                        .from("1 cm", "100 m")
                        .optional("60 cm")
                        .about("inside length at the rim")
                        .onlyWith("shape", "box", "tub"));
        keys.add(
                Key.quantity(at + ".width", LENGTH)
                        .from("1 cm", "10 m")
                        .optional("35 cm")
                        .about("inside width at the rim")
                        .onlyWith("shape", "box", "tub"));
        keys.add(
                Key.quantity(at + ".diameter", LENGTH)
                        .from("1 cm", "10 m")
                        .optional("28 cm")
                        .about("inside diameter at the rim")
                        .onlyWith("shape", "cylinder", "bucket"));
        keys.add(
                Key.quantity(at + ".floor_length", LENGTH)
                        .from("1 cm", "100 m")
                        .optional("55 cm")
                        .about("inside length at the floor")
                        .onlyWith("shape", "tub"));
        keys.add(
                Key.quantity(at + ".floor_width", LENGTH)
                        .from("1 cm", "10 m")
                        .optional("30 cm")
                        .about("inside width at the floor")
                        .onlyWith("shape", "tub"));
        keys.add(
                Key.quantity(at + ".floor_diameter", LENGTH)
                        .from("1 cm", "10 m")
                        .optional("25 cm")
                        .about("inside diameter at the floor")
                        .onlyWith("shape", "bucket"));
        keys.add(
                Key.quantity(at + ".volume", VOLUME)
                        .from("50 mL", "100000 L")
                        .optional("30 L")
                        .about("inside volume to the rim, with depth instead of the sides")
                        .onlyWith("shape", "box", "cylinder"));
        keys.add(
                Key.quantity(at + ".depth", LENGTH)
                        .from("5 mm", deepest)
                        .required("8 cm")
                        .about("inside depth from the floor to the rim"));
    }

    private static void valveFaults(List<Key> keys, String at) {
        String start = "the start";
        keys.add(
                Key.choice(at + "stuck", "no", "open", "shut")
                        .fallsTo("no")
                        .about("where the valve hangs, whatever the level"));
        keys.add(
                Key.date(at + "stuck_from")
                        .workedOut(start, "2026-04-01")
                        .about("first day it hangs, from 00:00"));
        keys.add(
                Key.date(at + "stuck_to")
                        .workedOut("the end", "2026-04-03")
                        .about("first day it no longer hangs"));
        keys.add(
                Key.quantity(at + "seep", FLOW)
                        .from("0 L/day", "1000 L/day")
                        .fallsTo("0 L/day")
                        .about("what leaks past the seat with the reservoir full"));
        keys.add(
                Key.date(at + "seep_from")
                        .workedOut(start, "2026-04-01")
                        .about("first day it seeps"));
        keys.add(
                Key.share(at + "clogging")
                        .from("0 %", "90 %")
                        .fallsTo("0 %")
                        .about("share of the seat's free area that silts up each day"));
        keys.add(
                Key.date(at + "clogging_from")
                        .workedOut(start, "2026-04-01")
                        .about("first day of clogging"));
    }

    private static void valveFloat(List<Key> keys, String at) {
        keys.add(
                Key.quantity(at + "float_volume", VOLUME)
                        .above("0 L", "5 L")
                        .optional("30 mL")
                        .about(
                                "the whole float; with it the reader checks that the valve can shut"
                                        + " against the full reservoir"));
        keys.add(
                Key.quantity(at + "float_mass", UnitTable.MASS)
                        .from("0 g", "5 kg")
                        .fallsTo("0 g")
                        .about("float, and the lever at its own arm"));
        keys.add(
                Key.number(at + "float_lever")
                        .above("0", "100")
                        .fallsTo("1")
                        .about("arm of the float over arm of the plug"));
        keys.add(
                Key.number(at + "float_seal")
                        .from("1", "10")
                        .fallsTo("2")
                        .about("force the seal wants over that of the water: 1 ideal, 2 cautious"));
    }

    private static void tubing(List<Key> keys, String at, String fitting) {
        keys.add(
                Key.quantity(at + ".bore", LENGTH)
                        .from("0.5 mm", "100 mm")
                        .fallsTo("8 mm")
                        .about("inside diameter"));
        keys.add(
                Key.quantity(at + ".length", LENGTH)
                        .from("0 m", "500 m")
                        .fallsTo("1 m")
                        .about("length; 0 m for no tube"));
        keys.add(
                Key.names(at + ".fittings", Fitting.spellings())
                        .workedOut("one " + fitting, "[\"" + fitting + "\", \"elbow\"]")
                        .about("what the flow passes, each as often as it is there"));
        keys.add(
                Key.number(at + ".loss")
                        .from("0", "1000")
                        .workedOut("the sum over the fittings", "2.5")
                        .about("sum of loss coefficients on the tube's velocity, instead"));
    }

    private static void reservoir(List<Key> keys) {
        String at = "reservoir.*";
        vessel(keys, at, "5 m");
        keys.add(
                Key.quantity(at + ".full_level", LENGTH)
                        .above("0 cm", "5 m")
                        .workedOut("the rim", "30 cm")
                        .about("level above its floor when full"));
        keys.add(
                Key.quantity(at + ".outlet_height", LENGTH)
                        .from("0 cm", "5 m")
                        .fallsTo("1 cm")
                        .about("outlet above its floor; what lies below never leaves"));
        keys.add(
                Key.quantity(at + ".floor_above_bench", LENGTH)
                        .from("-1 m", "10 m")
                        .required("40 cm")
                        .about("its floor above the bench the trays stand on"));
        keys.add(Key.flag(at + ".lid").fallsTo("true").about("whether it is covered"));
        keys.add(
                Key.quantity(at + ".start", LENGTH, SHARE, VOLUME)
                        .from("0 cm", "5 m")
                        .workedOut("full", "80 %")
                        .about("what is in it at the start: a level, a share of full or a volume"));
        keys.add(
                Key.choice(
                                at + ".refill",
                                "when it would not last",
                                "when low at a visit",
                                "at every visit",
                                "when empty",
                                "never")
                        .fallsTo("when it would not last")
                        .about(
                                "at which visits it is refilled, always to full; left out: when it"
                                        + " would not last to the next visit, and before an"
                                        + " absence"));
        keys.add(
                Key.share(at + ".refill_below")
                        .above("0 %", "100 %")
                        .fallsTo("50 %")
                        .about("low means less than this share of the usable volume")
                        .onlyWith("refill", "when low at a visit"));
        tubing(keys, at + ".tubing", "entrance");
    }

    private static void tray(List<Key> keys) {
        String at = "tray.*";
        vessel(keys, at, "60 cm");
        keys.add(
                Key.quantity(at + ".overflow", LENGTH)
                        .above("0 cm", "60 cm")
                        .workedOut("the rim", "7 cm")
                        .about("level at which solution runs out"));
        keys.add(
                Key.quantity(at + ".overflow_bore", LENGTH)
                        .from("2 mm", "20 cm")
                        .optional("16 mm")
                        .about(
                                "bore of the hole whose lower edge, or of the standpipe whose mouth, is"
                                        + " the overflow; with it check tells whether it carries a"
                                        + " stuck valve"));
        keys.add(
                Key.quantity(at + ".cup_bottom", LENGTH)
                        .from("0 cm", "60 cm")
                        .workedOut("5 cm below the rim", "3 cm")
                        .about("underside of the net cups above the floor"));
        keys.add(
                Key.quantity(at + ".cup_solid", AREA)
                        .above("0 cm2", "1 m2")
                        .optional("12 cm2")
                        .about(
                                "level section of one cup that keeps solution out, from cup_bottom to"
                                        + " the deck: plastic and medium without the pores that"
                                        + " fill; left out, cups take no room"));
        keys.add(
                Key.count(at + ".cups")
                        .from("0", "100000")
                        .workedOut("as many as plants", "8")
                        .about("how many such cups hang in it, planted or not"));
        keys.add(
                Key.quantity(at + ".floor_above_bench", LENGTH)
                        .from("-1 m", "10 m")
                        .fallsTo("0 cm")
                        .about("its floor above the bench"));
        keys.add(
                Key.quantity(at + ".gap", SHARE, AREA)
                        .from("0 %", "100 %")
                        .fallsTo("2 %")
                        .about("water surface open to the air: a share of the deck, or an area"));
        keys.add(
                Key.quantity(at + ".start_level", LENGTH)
                        .from("0 cm", "60 cm")
                        .workedOut(
                                "the valve's setting, the level topped up to, else 1.3 cm above the"
                                        + " cups' underside",
                                "6 cm")
                        .about("level when the run starts, of fresh feed"));
        keys.add(
                Key.text(at + ".crop")
                        .optional("basil")
                        .about("a crop of the library; or crop_file, thirst or thirst_file"));
        keys.add(
                Key.file(at + ".crop_file")
                        .optional("my-basil.toml")
                        .about("a crop file of your own"));
        keys.add(
                Key.quantity(at + ".thirst", FLOW)
                        .from("0 L/day", "1000 L/day")
                        .optional("1.8 L/day")
                        .about("measured use of the whole tray"));
        keys.add(
                Key.file(at + ".thirst_file")
                        .optional("thirst.csv")
                        .about(
                                "measured use: a row of names (time, thirst) and a row of units"
                                        + " (local or days, L/day); rows a day or less apart are"
                                        + " each drunk until the next, others joined by straight"
                                        + " lines"));
        keys.add(
                Key.count(at + ".plants")
                        .from("0", "100000")
                        .workedOut("needed with a crop, else 0", "6")
                        .about("how many plants hang in it"));
        keys.add(Key.date(at + ".sown").optional("2026-02-16").about("the day they were sown"));
        keys.add(
                Key.quantity(at + ".nursery_age", DURATION)
                        .from("0 days", "365 days")
                        .workedOut("the crop's usual, unless sown is stated", "14 days")
                        .about("days since sowing when the run starts"));
        keys.add(
                Key.number(at + ".transplant.leaves")
                        .above("0", "200")
                        .optional("4")
                        .about("true leaves of a plant when the run starts"));
        keys.add(
                Key.quantity(at + ".transplant.leaf_area", AREA)
                        .above("0 cm2", "10 m2")
                        .optional("600 cm2")
                        .about("its leaf area, one side"));
        keys.add(
                Key.quantity(at + ".transplant.fresh", UnitTable.MASS)
                        .above("0 g", "10 kg")
                        .optional("30 g")
                        .about("its fresh weight without root and plug"));
        keys.add(
                Key.quantity(at + ".transplant.height", LENGTH)
                        .above("0 cm", "5 m")
                        .optional("20 cm")
                        .about("its height"));
        keys.add(
                Key.quantity(at + ".transplant.root_length", LENGTH)
                        .from("0 cm", "5 m")
                        .optional("3 cm")
                        .about("its roots below the cup's underside"));
        keys.add(
                Key.quantity(at + ".ground", AREA)
                        .above("0 cm2", "1000 m2")
                        .workedOut("the deck", "0.4 m2")
                        .about("floor the canopy may spread over; at least the deck"));
        keys.add(
                Key.choice(at + ".thirst_model", ThirstModels.NAMES)
                        .fallsTo("combined")
                        .about("which transpiration model drives its thirst"));
        keys.add(
                Key.quantity(at + ".harvest_after", DURATION)
                        .from("0 days", "1100 days")
                        .workedOut("when the crop is ripe", "42 days")
                        .about("days after the start at which it is cut"));
        keys.add(
                Key.choice(at + ".filling", "valve", "hand", "sealed")
                        .workedOut(
                                "what [tray.NAME.valve] or [tray.NAME.hand] says, else sealed",
                                "valve")
                        .about("how it gets its solution"));
        keys.add(
                Key.text(at + ".valve.from")
                        .workedOut("the only reservoir", "shelf")
                        .about("name of the reservoir that feeds it"));
        keys.add(
                Key.quantity(at + ".valve.setting", LENGTH)
                        .above("0 cm", "60 cm")
                        .required("5 cm")
                        .about("level above the tray's floor at which it shuts"));
        keys.add(
                Key.quantity(at + ".valve.band", LENGTH)
                        .above("0 mm", "60 cm")
                        .fallsTo("5 mm")
                        .about("it is wide open this far below the setting"));
        keys.add(
                Key.flag(at + ".valve.snap")
                        .fallsTo("false")
                        .about("two states with the band as hysteresis, instead of throttling"));
        keys.add(
                Key.quantity(at + ".valve.seat", LENGTH)
                        .from("0.2 mm", "50 mm")
                        .fallsTo("2 mm")
                        .about("bore of the seat"));
        keys.add(
                Key.number(at + ".valve.discharge_coefficient")
                        .from("0.1", "1")
                        .fallsTo("0.61")
                        .about("of the seat"));
        keys.add(
                Key.quantity(at + ".valve.seat_height", LENGTH)
                        .from("0 cm", "1 m")
                        .workedOut("the rim", "7 cm")
                        .about("height at which the feed enters, above the tray's floor"));
        keys.add(
                Key.quantity(at + ".valve.body", AREA)
                        .above("0 cm2", "1 m2")
                        .optional("30 cm2")
                        .about(
                                "level section of the valve with its float, which keeps solution out;"
                                        + " left out, it takes no room"));
        keys.add(
                Key.quantity(at + ".valve.body_from", LENGTH)
                        .from("0 cm", "60 cm")
                        .workedOut("the floor, where body is stated", "2 cm")
                        .about("underside of the valve body above the tray's floor"));
        keys.add(
                Key.quantity(at + ".valve.body_to", LENGTH)
                        .above("0 cm", "60 cm")
                        .workedOut("the rim, where body is stated", "7 cm")
                        .about("top of the valve body above the tray's floor"));
        tubing(keys, at + ".valve.tubing", "tee-branch");
        valveFaults(keys, at + ".valve.");
        valveFloat(keys, at + ".valve.");
        keys.add(
                Key.quantity(at + ".hand.to", LENGTH)
                        .above("0 cm", "60 cm")
                        .required("5 cm")
                        .about("level it is topped up to"));
        keys.add(
                Key.of(at + ".hand.days", Key.Kind.DATES)
                        .workedOut("every visit", "[2026-03-09, 2026-03-16]")
                        .about("days it is topped up"));
        keys.add(
                Key.choice(at + ".hand.with", "solution", "water")
                        .fallsTo("solution")
                        .about("topped up with feed or with source water"));
        lamp(keys, at + ".lamp");
        limits(keys, at + ".limits");
    }

    private static void limits(List<Key> keys, String at) {
        String crops = "the crop's own, else ";
        keys.add(
                Key.quantity(at + ".ec_low", CONDUCTIVITY)
                        .from("0 mS/cm", "10 mS/cm")
                        .workedOut(crops + "0 mS/cm", "0.8 mS/cm")
                        .about("least EC at 25 degC"));
        keys.add(
                Key.quantity(at + ".ec_high", CONDUCTIVITY)
                        .above("0 mS/cm", "20 mS/cm")
                        .workedOut(crops + "4 mS/cm", "2.5 mS/cm")
                        .about("greatest EC at 25 degC"));
        keys.add(
                Key.number(at + ".ph_low")
                        .from("3", "9")
                        .workedOut(crops + "5", "5.5")
                        .about("least pH"));
        keys.add(
                Key.number(at + ".ph_high")
                        .from("3", "10")
                        .workedOut(crops + "7", "6.5")
                        .about("greatest pH"));
        keys.add(
                Key.quantity(at + ".sodium_high", Ion.SODIUM.table())
                        .above("0 mmol/L", "200 mmol/L")
                        .workedOut(crops + "10 mmol/L", "5 mmol/L")
                        .about("most sodium"));
        keys.add(
                Key.quantity(at + ".chloride_high", Ion.CHLORIDE.table())
                        .above("0 mmol/L", "200 mmol/L")
                        .workedOut(crops + "10 mmol/L", "5 mmol/L")
                        .about("most chloride"));
    }

    private static void plan(List<Key> keys) {
        keys.add(
                Key.of("visits.days", Key.Kind.WEEKDAYS)
                        .fallsTo("daily")
                        .about("weekdays on which somebody looks"));
        keys.add(Key.clock("visits.at").fallsTo("08:00").about("at what time"));
        keys.add(
                Key.of("visits.away", Key.Kind.SPANS)
                        .workedOut("none", "[{ from = 2026-04-03, to = 2026-04-12 }]")
                        .about("spans in which nobody comes, both ends included"));
        keys.add(
                Key.choice("visits.flush", "at limit", "never")
                        .fallsTo("never")
                        .about("whether a tray out of its EC band is drained and filled anew"));
        keys.add(
                Key.quantity("run.step", DURATION)
                        .from("1 s", "6 h")
                        .fallsTo("10 min")
                        .about("longest step of the run"));
    }
}
