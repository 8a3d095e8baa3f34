package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.HourlyWeather;
import tideless.rig.InsideAir;
import tideless.rig.Lamp;
import tideless.rig.Place;

/** Reads where the rig stands and the air around it. */
final class ClimateReader {
    private static final int LARGEST_WEATHER_BYTES = 32 * TextFile.MEBIBYTE;

    private ClimateReader() {}

    /** Null when faulty. */
    static Place place(Table place, boolean needed) {
        double latitude = place.quantityOr("latitude", needed ? Double.NaN : 0, "0 deg, not used");
        double longitude =
                place.quantityOr("longitude", needed ? Double.NaN : 0, "0 deg, not used");
        double altitude = place.quantity("altitude");
        if (needed) {
            for (String key : new String[] {"latitude", "longitude"}) {
                if (!place.meant(key)) {
                    place.missing(key);
                }
            }
        }
        return Double.isNaN(latitude + longitude + altitude)
                ? null
                : new Place(latitude, longitude, altitude);
    }

    /** The rig's clock less UTC, s; null when faulty or not known. */
    static Integer utcOffsetS(Table place, Place read) {
        if (place.meant("utc_offset")) {
            String text = place.has("utc_offset") ? place.text("utc_offset") : null;
            Integer offset = text == null ? null : WeatherFile.offset(text);
            if (text != null && offset == null) {
                place.faultyValue(
                        "utc_offset", "an offset from -14:00 to +14:00, as \"+01:00\"", "");
            }
            return offset;
        }
        if (read == null) {
            return null;
        }
        int hours = (int) FastMath.round(read.longitudeDeg() / 15);
        place.holds("utc_offset", String.format(java.util.Locale.ROOT, "%+03d:00, nearest", hours));
        return hours * 3600;
    }

    /**
     * The air of the run; null when faulty.
     *
     * @param lamp the lamp for all trays, whose hours are a room's day; null when there is none
     */
    static Climate climate(
            Table climate,
            Table place,
            Place where,
            Lamp lamp,
            NamedFiles files,
            LocalDate start,
            int days) {
        String kind = climate.choice("kind");
        double airSpeed = climate.quantity("air_speed");
        double co2 = climate.quantity("co2");
        double solutionCo2 =
                climate.quantityOr("solution_co2", co2, plain(co2) + " ppm, as in the air");
        if (kind == null) {
            return null;
        }
        climate.refuseWhatDoesNotGoWith("kind", kind);
        Table columns = climate.child("columns");
        if (kind.equals("room")) {
            if (columns.exists()) {
                climate.fault(
                        "columns",
                        "a table beside kind = \"room\"",
                        "only with kind = \"weather\"",
                        "");
            }
            return room(climate, lamp, airSpeed, co2, solutionCo2);
        }
        boolean isInside = isInside(climate);
        Map<String, CsvColumns.Named> named = named(columns, isInside);
        Gaps gaps = gaps(climate);
        if (isInside) {
            return inside(
                    climate,
                    place,
                    where,
                    files,
                    start,
                    days,
                    named,
                    gaps,
                    airSpeed,
                    co2,
                    solutionCo2);
        }
        refuse(climate, ScenarioKeys.OF_INSIDE_AIR, "only with cover = \"inside\"", "");
        Cover cover = cover(climate);
        String clock = climate.choice("clock");
        double windHeightM = climate.quantity("wind_height");
        Integer offsetS = utcOffsetS(place, where);
        NamedFiles.Named file = null;
        if (climate.has("file")) {
            file = files.open(climate, "file", LARGEST_WEATHER_BYTES, "a CSV or EPW file");
        } else {
            climate.missing("file");
        }
        if (file == null
                || cover == null
                || named == null
                || gaps == null
                || clock == null
                || offsetS == null
                || start == null
                || days < 1
                || Double.isNaN(windHeightM + airSpeed + co2 + solutionCo2)) {
            return null;
        }
        HourlyWeather weather =
                WeatherFile.read(
                        file,
                        climate.source(),
                        clock.equals("typical year"),
                        windHeightM,
                        offsetS,
                        start,
                        days,
                        new WeatherFile.Rules(
                                named,
                                gaps,
                                climate.has("cover") ? climate.words("cover") : "open"));
        return weather == null
                ? null
                : new Climate.Weather(weather, cover, airSpeed, co2, solutionCo2);
    }

    /** Whether the file holds air and light measured at the plants. */
    static boolean isInside(Table climate) {
        return "weather".equals(climate.raw("kind"))
                && ScenarioKeys.INSIDE.equals(climate.raw("cover"));
    }

    private static Climate inside(
            Table climate,
            Table place,
            Place where,
            NamedFiles files,
            LocalDate start,
            int days,
            Map<String, CsvColumns.Named> named,
            Gaps gaps,
            double airSpeed,
            double co2,
            double solutionCo2) {
        climate.choice("cover");
        refuse(
                climate,
                ScenarioKeys.OF_A_COVER,
                "nothing of the kind: inside air and light are taken as they were measured",
                "Maybe take it out, or cover = \"glass\" with a file of the outside weather.");
        String clock = climate.choice("clock");
        if ("typical year".equals(clock)) {
            climate.faultyValue("clock", "\"dates\" beside cover = \"inside\"", "");
            return null;
        }
        boolean toldClock = place.meant("utc_offset") || place.meant("longitude");
        Integer offsetS = utcOffsetS(place, where);
        String lightFrom = climate.choice("light_from");
        String lampsType = climate.choice("lamps_type");
        double lampsFull = climate.quantityOr("lamps_full", Double.NaN, "");
        NamedFiles.Named file = null;
        if (climate.has("file")) {
            file = files.open(climate, "file", LARGEST_WEATHER_BYTES, "a CSV file");
        } else {
            climate.missing("file");
        }
        if (file == null
                || named == null
                || gaps == null
                || clock == null
                || offsetS == null
                || lightFrom == null
                || lampsType == null
                || start == null
                || days < 1
                || Double.isNaN(airSpeed + co2 + solutionCo2)) {
            return null;
        }
        InsideFile.Rules rules =
                new InsideFile.Rules(
                        named,
                        gaps,
                        toldClock ? offsetS : null,
                        InsideFile.LightFrom.of(lightFrom),
                        LampType.of(lampsType),
                        lampsFull,
                        co2,
                        airSpeed);
        InsideAir air = InsideFile.read(file, climate.source(), start, days, rules);
        return air == null ? null : new Climate.Inside(air, solutionCo2);
    }

    private static void refuse(Table climate, List<String> keys, String allowed, String hint) {
        for (String key : keys) {
            if (climate.has(key)) {
                climate.fault(
                        key,
                        Key.quoted(climate.words(key))
                                + " beside cover = "
                                + (climate.has("cover")
                                        ? Key.quoted(climate.words("cover"))
                                        : "\"open\""),
                        allowed,
                        hint);
            }
        }
    }

    /** The file's own names of columns; null when faulty. */
    private static Map<String, CsvColumns.Named> named(Table columns, boolean inside) {
        Map<String, CsvColumns.Named> named = new LinkedHashMap<>();
        boolean good = true;
        for (String ours : InsideFile.columns()) {
            if (!columns.has(ours)) {
                continue;
            }
            String text = columns.text(ours);
            boolean known = inside ? InsideFile.knows(ours) : WeatherFile.knows(ours);
            if (!known) {
                columns.fault(
                        ours,
                        "a column of " + (inside ? "outside weather" : "inside air"),
                        "columns that cover = "
                                + (inside ? "\"inside\"" : "\"open\", \"glass\" and the like")
                                + " has",
                        inside ? "" : "Maybe cover = \"inside\".");
                good = false;
            } else if (text == null) {
                good = false;
            } else {
                named.put(ours, column(text));
            }
        }
        return good ? named : null;
    }

    /** A name, and the unit behind its last " in ". */
    private static CsvColumns.Named column(String text) {
        int at = text.lastIndexOf(" in ");
        return at <= 0
                ? new CsvColumns.Named(text, "")
                : new CsvColumns.Named(
                        text.substring(0, at).strip(), text.substring(at + 4).strip());
    }

    /** Null when faulty. */
    private static Gaps gaps(Table climate) {
        double mostS = climate.quantity("gap_most");
        String longer = climate.choice("longer_gaps");
        return longer == null || Double.isNaN(mostS)
                ? null
                : new Gaps((int) (mostS / 3600), longer.equals(Gaps.FROM_DAYS_BESIDE));
    }

    private static Climate room(
            Table climate, Lamp lamp, double airSpeed, double co2, double solutionCo2) {
        double day = climate.quantity("day_temperature");
        double night =
                climate.quantityOr(
                        "night_temperature",
                        day,
                        plain(day, UnitTable.TEMPERATURE, "degC") + ", as by day");
        double dayHumidity = climate.quantity("day_humidity");
        double nightHumidity =
                climate.quantityOr(
                        "night_humidity",
                        dayHumidity,
                        plain(dayHumidity, UnitTable.SHARE, "%") + ", as by day");
        boolean lit = lamp != null;
        double from =
                climate.clockOr(
                        "day_from",
                        lit ? lamp.onS() : 6 * 3600,
                        lit ? "when the lamp goes on" : "06:00");
        double to =
                climate.clockOr(
                        "day_to",
                        lit ? lamp.offS() : 20 * 3600,
                        lit ? "when the lamp goes off" : "20:00");
        double swing = climate.quantity("swing");
        double air = swing + airSpeed + co2 + solutionCo2;
        if (Double.isNaN(day + night + dayHumidity + nightHumidity + from + to + air)) {
            return null;
        }
        return new Climate.Room(
                day,
                night,
                dayHumidity,
                nightHumidity,
                from,
                to,
                swing,
                airSpeed,
                co2,
                solutionCo2);
    }

    private static Cover cover(Table climate) {
        String words = climate.choice("cover");
        double ventsShut = climate.quantity("vents_shut");
        double ventsOpen = climate.quantity("vents_open");
        double height = climate.quantity("mean_height");
        double ventsFrom = climate.quantity("vents_from");
        Cover.Kind kind =
                words == null ? null : Cover.Kind.valueOf(words.toUpperCase(java.util.Locale.ROOT));
        double transmission =
                climate.quantityOr(
                        "transmission",
                        kind == null ? Double.NaN : transmission(kind),
                        kind == null
                                ? ""
                                : plain(transmission(kind), UnitTable.SHARE, "%")
                                        + ", usual for "
                                        + words);
        // Common practice, no source: single glass about 7, single film about 8 W/m2/K of floor.
        double usualLoss = kind == Cover.Kind.FILM ? 8 : 7;
        double heatLoss = climate.quantityOr("heat_loss", usualLoss, plain(usualLoss) + " W/m2/K");
        double heatedTo = Double.NEGATIVE_INFINITY;
        if (climate.meant("heated_to")) {
            heatedTo = climate.quantityOr("heated_to", Double.NaN, "");
        } else {
            climate.holds("heated_to", "not heated");
        }
        boolean good = !Double.isNaN(ventsShut + ventsOpen);
        if (ventsOpen < ventsShut) {
            climate.faultyValue(
                    climate.has("vents_open") ? "vents_open" : "vents_shut",
                    "vents_open of at least vents_shut",
                    "");
            good = false;
        }
        if (heatedTo >= ventsFrom) {
            climate.faultyValue(
                    "heated_to", "below vents_from (" + plain(ventsFrom) + " degC)", "");
            good = false;
        }
        if (kind == null
                || !good
                || Double.isNaN(transmission + heatLoss + height + ventsFrom)
                || Double.isNaN(heatedTo)) {
            return null;
        }
        return new Cover(
                kind, transmission, heatLoss, ventsShut, ventsOpen, height, heatedTo, ventsFrom);
    }

    /** Common practice, no source. */
    private static double transmission(Cover.Kind kind) {
        return switch (kind) {
            case OPEN -> 1;
            case SHADE -> 0.5;
            case GLASS -> 0.7;
            case FILM -> 0.65;
        };
    }
}
