package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.time.LocalDate;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.HourlyWeather;
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
        if (kind.equals("room")) {
            return room(climate, lamp, airSpeed, co2, solutionCo2);
        }
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
                        days);
        return weather == null
                ? null
                : new Climate.Weather(weather, cover, airSpeed, co2, solutionCo2);
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
