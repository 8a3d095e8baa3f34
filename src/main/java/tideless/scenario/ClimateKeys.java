package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.Key.LEFT_OUT;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.TEMPERATURE;

/** The air around the plants. */
final class ClimateKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<String> KIND =
            KEYS.add(
                    Key.choice("kind", "room", "weather")
                            .required("room")
                            .about(
                                    "a room that holds one state by day and one by night, or weather"));
    static final Key<Double> DAY_TEMPERATURE =
            KEYS.add(
                    Key.quantity("day_temperature", TEMPERATURE)
                            .from("-5 degC", "50 degC")
                            .required("22 degC")
                            .onlyWith(KIND, "room")
                            .about("air by day"));
    static final Key<Double> NIGHT_TEMPERATURE =
            KEYS.add(
                    Key.quantity("night_temperature", TEMPERATURE)
                            .from("-5 degC", "50 degC")
                            .workedOut("as by day", "18 degC")
                            .onlyWith(KIND, "room")
                            .about("air at night"));
    static final Key<Double> DAY_HUMIDITY =
            KEYS.add(
                    Key.share("day_humidity")
                            .from("1 %", "100 %")
                            .fallsTo("60 %", COMMON_PRACTICE)
                            .onlyWith(KIND, "room")
                            .about("relative humidity by day"));
    static final Key<Double> NIGHT_HUMIDITY =
            KEYS.add(
                    Key.share("night_humidity")
                            .from("1 %", "100 %")
                            .workedOut("as by day", "70 %")
                            .onlyWith(KIND, "room")
                            .about("relative humidity at night"));
    static final Key<Double> DAY_FROM =
            KEYS.add(
                    Key.clock("day_from")
                            .workedOut("when the lamp goes on, else 06:00", "06:00")
                            .onlyWith(KIND, "room")
                            .about("day begins"));
    static final Key<Double> DAY_TO =
            KEYS.add(
                    Key.clock("day_to")
                            .workedOut("when the lamp goes off, else 20:00", "20:00")
                            .onlyWith(KIND, "room")
                            .about("day ends"));
    static final Key<Double> SWING =
            KEYS.add(
                    Key.quantity("swing", UnitTable.TEMPERATURE_DIFFERENCE)
                            .from("0 K", "30 K")
                            .fallsTo("0 K", LEFT_OUT)
                            .onlyWith(KIND, "room")
                            .about(
                                    "rise and fall of the temperature on top of day and night: coldest at 03:00, warmest at 15:00"));
    static final Key<Double> WINDOW_LIGHT =
            KEYS.add(
                    Key.quantity("window_light", UnitTable.DAILY_LIGHT)
                            .from("0 mol/m2/day", "60 mol/m2/day")
                            .fallsTo("0 mol/m2/day", LEFT_OUT)
                            .onlyWith(KIND, "room")
                            .about(
                                    "daylight that reaches the plants through a window in a mean day of the season, on top of the lamps: half a sine every day"));
    static final Key<Double> WINDOW_FROM =
            KEYS.add(
                    Key.clock("window_from")
                            .fallsTo("07:00", ASSUMED)
                            .onlyWith(KIND, "room")
                            .about("daylight begins; used with window_light"));
    static final Key<Double> WINDOW_TO =
            KEYS.add(
                    Key.clock("window_to")
                            .fallsTo("19:00", ASSUMED)
                            .onlyWith(KIND, "room")
                            .about("daylight ends, later on the same day; used with window_light"));
    static final Key<String> FILE =
            KEYS.add(
                    Key.file("file")
                            .required("weather/site.csv")
                            .onlyWith(KIND, "weather")
                            .about(
                                    "an EPW file (name.epw), or hourly CSV: a row of names (time, temperature, humidity, global, wind) and a row of units; under time, UTC, UTC+01:00 or local"));
    static final Key<String> CLOCK =
            KEYS.add(
                    Key.choice("clock", "typical year", "dates")
                            .fallsTo("dates", ASSUMED)
                            .onlyWith(KIND, "weather")
                            .about(
                                    "whether the series is met by month and hour whatever the year, or by date"));
    static final Key<Double> WIND_HEIGHT =
            KEYS.add(
                    Key.quantity("wind_height", LENGTH)
                            .from("0.5 m", "100 m")
                            .fallsTo("10 m", "the usual height of a weather station, from memory")
                            .onlyWith(KIND, "weather")
                            .about(
                                    "height of the wind column above the ground; brought to 2 m by FAO-56 eq. 47"));

    /** Air and light measured at the plants. */
    static final String INSIDE = "inside";

    static final Key<String> COVER =
            KEYS.add(
                    Key.choice("cover", "open", "shade", "glass", "film", INSIDE)
                            .fallsTo("open", LEFT_OUT)
                            .onlyWith(KIND, "weather")
                            .about(
                                    "what stands between the weather and the plants; inside:"
                                            + " the file holds air and light measured at the"
                                            + " plants, taken as they are; a crop there on drained"
                                            + " slabs or with an air stone needs `aerated` of its"
                                            + " tray"));
    static final Key<Double> GAP_MOST =
            KEYS.add(
                    Key.quantity("gap_most", UnitTable.DURATION)
                            .from("0 h", "48 h")
                            .fallsTo("3 h", ASSUMED)
                            .onlyWith(KIND, "weather")
                            .about("longest gap of the file that straight lines bridge"));
    static final Key<String> LONGER_GAPS =
            KEYS.add(
                    Key.choice("longer_gaps", "refuse", Gaps.FROM_DAYS_BESIDE)
                            .fallsTo("refuse", ASSUMED)
                            .onlyWith(KIND, "weather")
                            .about(
                                    "what becomes of longer ones: filled from the same hours"
                                            + " of the days before and after, or refused"));
    static final Key<InsideFile.LightFrom> LIGHT_FROM =
            KEYS.add(
                    Key.choice(
                                    "light_from",
                                    Spellings.of(
                                            InsideFile.LightFrom.values(), from -> from.spelling))
                            .fallsTo("sun", ASSUMED)
                            .onlyWith(KIND, "weather")
                            .about(
                                    "what the light column of inside air saw: a sensor under"
                                            + " burning lamps sees both"));
    static final Key<LampType> LAMPS_TYPE =
            KEYS.add(
                    Key.choice("lamps_type", Spellings.of(LampType.values(), LampType::spelling))
                            .fallsTo("white-led", COMMON_PRACTICE)
                            .onlyWith(KIND, "weather")
                            .about("kind of the lamps that inside air records"));
    static final Key<Double> LAMPS_FULL =
            KEYS.add(
                    Key.quantity("lamps_full", UnitTable.PHOTON_FLUX)
                            .from("0 umol/m2/s", "3000 umol/m2/s")
                            .optional("187 umol/m2/s")
                            .onlyWith(KIND, "weather")
                            .about(
                                    "light of those lamps at the canopy at full level; needed"
                                            + " where the column lamp holds levels or time"
                                            + " on"));
    static final Key<Double> TRANSMISSION =
            KEYS.add(
                    Key.share("transmission")
                            .from("0 %", "100 %")
                            .workedOut("open 100 %, shade 50 %, glass 70 %, film 65 %", "70 %")
                            .onlyWith(KIND, "weather")
                            .about("share of the global radiation that reaches the plants"));
    static final Key<Double> HEAT_LOSS =
            KEYS.add(
                    Key.quantity("heat_loss", UnitTable.HEAT_LOSS)
                            .from("0.5 W/m2/K", "30 W/m2/K")
                            .workedOut("glass 7, film 8 W/m2/K; without use elsewhere", "7 W/m2/K")
                            .onlyWith(KIND, "weather")
                            .about("heat lost through the cover per floor area"));
    static final Key<Double> VENTS_SHUT =
            KEYS.add(
                    Key.quantity("vents_shut", UnitTable.PER_HOUR)
                            .from("0 /h", "100 /h")
                            .fallsTo("1 /h", COMMON_PRACTICE)
                            .onlyWith(KIND, "weather")
                            .about("air changes with the vents shut"));
    static final Key<Double> VENTS_OPEN =
            KEYS.add(
                    Key.quantity("vents_open", UnitTable.PER_HOUR)
                            .from("0 /h", "300 /h")
                            .fallsTo("30 /h", COMMON_PRACTICE)
                            .onlyWith(KIND, "weather")
                            .about("air changes with the vents wide open"));
    static final Key<Double> MEAN_HEIGHT =
            KEYS.add(
                    Key.quantity("mean_height", LENGTH)
                            .from("0.5 m", "20 m")
                            .fallsTo("3 m", COMMON_PRACTICE)
                            .onlyWith(KIND, "weather")
                            .about("mean height of the house"));
    static final Key<Double> HEATED_TO =
            KEYS.add(
                    Key.quantity("heated_to", TEMPERATURE)
                            .from("-20 degC", "40 degC")
                            .workedOut("not heated", "16 degC")
                            .onlyWith(KIND, "weather")
                            .about("the air is never let below this"));
    static final Key<Double> VENTS_FROM =
            KEYS.add(
                    Key.quantity("vents_from", TEMPERATURE)
                            .from("0 degC", "45 degC")
                            .fallsTo("24 degC", COMMON_PRACTICE)
                            .onlyWith(KIND, "weather")
                            .about("the vents begin to open here, wide open 4 K above"));
    static final Key<Double> AIR_SPEED =
            KEYS.add(
                    Key.quantity("air_speed", UnitTable.SPEED)
                            .above("0 m/s", "10 m/s")
                            .fallsTo("0.2 m/s", ASSUMED)
                            .about("air speed at the leaves, in a room or under glass or film"));
    static final Key<Double> CO2 =
            KEYS.add(
                    Key.quantity("co2", UnitTable.MIXING_RATIO)
                            .from("150 ppm", "3000 ppm")
                            .fallsTo("420 ppm", "outdoor air of the 2020s, from memory")
                            .about("carbon dioxide of the air"));
    static final Key<Double> SOLUTION_CO2 =
            KEYS.add(
                    Key.quantity("solution_co2", UnitTable.MIXING_RATIO)
                            .from("150 ppm", "100000 ppm")
                            .optional("2000 ppm")
                            .about(
                                    "carbon dioxide all trays' solutions stand with, where it was measured; left out, worked out for each from the oxygen its roots take"));

    private ClimateKeys() {}
}
