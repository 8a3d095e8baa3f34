package tideless.scenario;

import static tideless.scenario.ClimateKeys.AIR_SPEED;
import static tideless.scenario.ClimateKeys.CLOCK;
import static tideless.scenario.ClimateKeys.CO2;
import static tideless.scenario.ClimateKeys.COVER;
import static tideless.scenario.ClimateKeys.DAY_FROM;
import static tideless.scenario.ClimateKeys.DAY_HUMIDITY;
import static tideless.scenario.ClimateKeys.DAY_TEMPERATURE;
import static tideless.scenario.ClimateKeys.DAY_TO;
import static tideless.scenario.ClimateKeys.FILE;
import static tideless.scenario.ClimateKeys.GAP_MOST;
import static tideless.scenario.ClimateKeys.HEATED_TO;
import static tideless.scenario.ClimateKeys.HEAT_LOSS;
import static tideless.scenario.ClimateKeys.INSIDE;
import static tideless.scenario.ClimateKeys.KIND;
import static tideless.scenario.ClimateKeys.LAMPS_FULL;
import static tideless.scenario.ClimateKeys.LAMPS_TYPE;
import static tideless.scenario.ClimateKeys.LIGHT_FROM;
import static tideless.scenario.ClimateKeys.LONGER_GAPS;
import static tideless.scenario.ClimateKeys.MEAN_HEIGHT;
import static tideless.scenario.ClimateKeys.NIGHT_HUMIDITY;
import static tideless.scenario.ClimateKeys.NIGHT_TEMPERATURE;
import static tideless.scenario.ClimateKeys.SOLUTION_CO2;
import static tideless.scenario.ClimateKeys.SWING;
import static tideless.scenario.ClimateKeys.TRANSMISSION;
import static tideless.scenario.ClimateKeys.VENTS_FROM;
import static tideless.scenario.ClimateKeys.VENTS_OPEN;
import static tideless.scenario.ClimateKeys.VENTS_SHUT;
import static tideless.scenario.ClimateKeys.WINDOW_FROM;
import static tideless.scenario.ClimateKeys.WINDOW_LIGHT;
import static tideless.scenario.ClimateKeys.WINDOW_TO;
import static tideless.scenario.ClimateKeys.WIND_HEIGHT;
import static tideless.scenario.Measure.plain;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.HourlyWeather;
import tideless.rig.Lamp;
import tideless.rig.Place;

/** Reads where the rig stands and the air around it. */
final class ClimateReader {
    private static final int LARGEST_WEATHER_BYTES = 32 * TextFile.MEBIBYTE;

    /** Keys of a cover, which inside air has none of. */
    private static final List<Key<?>> OF_A_COVER =
            List.of(
                    TRANSMISSION,
                    HEAT_LOSS,
                    VENTS_SHUT,
                    VENTS_OPEN,
                    MEAN_HEIGHT,
                    HEATED_TO,
                    VENTS_FROM,
                    WIND_HEIGHT);

    /** Keys of inside air, without sense elsewhere. */
    private static final List<Key<?>> OF_INSIDE_AIR = List.of(LIGHT_FROM, LAMPS_TYPE, LAMPS_FULL);

    private ClimateReader() {}

    static Read<Place> place(Table place, boolean needed) {
        boolean sound = place.isSound();
        Read<Double> latitude = coordinate(place, PlaceKeys.LATITUDE, needed);
        Read<Double> longitude = coordinate(place, PlaceKeys.LONGITUDE, needed);
        return sound && Read.allSound(latitude, longitude)
                ? Read.of(
                        new Place(
                                latitude.value(),
                                longitude.value(),
                                place.value(PlaceKeys.ALTITUDE)))
                : Read.faulty();
    }

    private static Read<Double> coordinate(Table place, Key<Double> key, boolean needed) {
        if (needed && place.get(key).isAbsent()) {
            return place.missing(key);
        }
        return place.getOr(key, Read.of(0.0), unused -> "0 deg, not used");
    }

    /** The rig's clock less UTC, s. */
    static Read<Integer> utcOffsetS(Table place, Read<Place> where) {
        Read<String> text = place.get(PlaceKeys.UTC_OFFSET);
        if (text.isAbsent()) {
            return where.map(
                    at -> {
                        int hours = (int) FastMath.round(at.longitudeDeg() / 15);
                        place.holds(
                                PlaceKeys.UTC_OFFSET,
                                String.format(Locale.ROOT, "%+03d:00, nearest", hours));
                        return (int) (hours * Time.HOUR_S);
                    });
        }
        Read<Integer> offset = text.then(WeatherFile::offset);
        if (text.isSound() && !offset.isSound()) {
            place.faultyValue(
                    PlaceKeys.UTC_OFFSET, "an offset from -14:00 to +14:00, as \"+01:00\"", "");
        }
        return offset;
    }

    /**
     * The air of the run.
     *
     * @param lamp the lamp for all trays, whose hours are a room's day; absent when there is none
     */
    static Read<Climate> climate(
            Table climate,
            Table place,
            Read<Place> where,
            Read<Lamp> lamp,
            NamedFiles files,
            Run run) {
        Read<String> kind = climate.get(KIND);
        if (!kind.isSound()) {
            climate.isSound();
            return Read.faulty();
        }
        if (kind.value().equals("room") && climate.has(FILE) && !climate.meant(DAY_TEMPERATURE)) {
            climate.faultyValue(KIND, "\"weather\" beside file", "Did you mean \"weather\"?");
            return Read.faulty();
        }
        climate.narrow(KIND, kind.value());
        boolean sound = climate.isSound();
        Read<Double> stated = climate.get(SOLUTION_CO2);
        Read<Double> solutionCo2 = stated.isSound() ? stated : Read.of(0.0);
        Table columns = climate.child("columns");
        if (kind.value().equals("room")) {
            if (columns.exists()) {
                climate.fault(
                        "columns",
                        "a table beside kind = \"room\"",
                        "only with kind = \"weather\"",
                        "");
            }
            return room(climate, lamp, sound, solutionCo2);
        }
        boolean isInside = isInside(climate);
        Read<Map<String, CsvColumns.Named>> named = named(columns, isInside);
        Read<NamedFiles.Named> file = Read.faulty();
        if (!climate.has(FILE)) {
            climate.missing(FILE);
        } else {
            String what = isInside ? "a CSV file" : "a CSV or EPW file";
            file = files.open(climate, FILE, LARGEST_WEATHER_BYTES, what);
        }
        if (!sound) {
            named = Read.faulty();
        }
        return isInside
                ? inside(climate, place, where, run, named, file, files, solutionCo2)
                : outside(climate, place, where, run, named, file, files, solutionCo2);
    }

    private static Read<Climate> outside(
            Table climate,
            Table place,
            Read<Place> where,
            Run run,
            Read<Map<String, CsvColumns.Named>> named,
            Read<NamedFiles.Named> file,
            NamedFiles files,
            Read<Double> solutionCo2) {
        refuse(climate, OF_INSIDE_AIR, "only with cover = \"inside\"", "");
        Read<Cover> cover = cover(climate);
        Read<Integer> offsetS = utcOffsetS(place, where);
        if (!Read.allSound(file, named, cover, offsetS, solutionCo2, run.start(), run.days())) {
            return Read.faulty();
        }
        Gaps gaps = gaps(climate);
        List<Object> madeFrom =
                List.of(
                        file.value(),
                        climate.value(CLOCK),
                        climate.value(WIND_HEIGHT),
                        offsetS.value(),
                        run.start().value(),
                        run.days().value(),
                        named.value(),
                        gaps.rule(),
                        climate.value(COVER));
        Read<HourlyWeather> read =
                files.once()
                        .read(
                                new Weather(madeFrom),
                                climate.file(),
                                () ->
                                        WeatherFile.read(
                                                file.value(),
                                                climate.file(),
                                                climate.value(CLOCK).equals("typical year"),
                                                climate.value(WIND_HEIGHT),
                                                offsetS.value(),
                                                run.start().value(),
                                                run.days().value(),
                                                new WeatherFile.Rules(
                                                        named.value(),
                                                        gaps,
                                                        climate.value(COVER))));
        if (Read.allSound(read, where)) {
            SunCheck.odd(read.value(), where.value(), run.start().value(), offsetS.value())
                    .forEach(odd -> climate.note(FILE, odd));
        }
        return read.map(
                weather ->
                        new Climate.Weather(
                                weather,
                                cover.value(),
                                climate.value(AIR_SPEED),
                                climate.value(CO2),
                                solutionCo2.value()));
    }

    /** Weather or inside air by all that it is read from. */
    private record Weather(List<Object> madeFrom) {}

    /** Whether the file holds air and light measured at the plants. */
    static boolean isInside(Table climate) {
        return "weather".equals(climate.raw(KIND.name()))
                && INSIDE.equals(climate.raw(COVER.name()));
    }

    private static Read<Climate> inside(
            Table climate,
            Table place,
            Read<Place> where,
            Run run,
            Read<Map<String, CsvColumns.Named>> named,
            Read<NamedFiles.Named> file,
            NamedFiles files,
            Read<Double> solutionCo2) {
        refuse(
                climate,
                OF_A_COVER,
                "nothing of the kind: inside air and light are taken as they were measured",
                "Maybe take it out, or cover = \"glass\" with a file of the outside weather.");
        if (climate.get(CLOCK).holds("typical year"::equals)) {
            climate.faultyValue(CLOCK, "\"dates\" beside cover = \"inside\"", "");
            return Read.faulty();
        }
        boolean toldClock = place.meant(PlaceKeys.UTC_OFFSET) || place.meant(PlaceKeys.LONGITUDE);
        Read<Integer> offsetS = utcOffsetS(place, where);
        if (!Read.allSound(file, named, offsetS, solutionCo2, run.start(), run.days())) {
            return Read.faulty();
        }
        InsideFile.Rules rules =
                new InsideFile.Rules(
                        named.value(),
                        gaps(climate),
                        toldClock ? offsetS : Read.absent(),
                        climate.value(LIGHT_FROM),
                        climate.value(LAMPS_TYPE),
                        climate.get(LAMPS_FULL),
                        climate.value(CO2),
                        climate.value(AIR_SPEED),
                        stated(climate));
        List<Object> madeFrom =
                List.of(
                        file.value(),
                        run.start().value(),
                        run.days().value(),
                        rules.named(),
                        rules.gaps().rule(),
                        rules.rigOffsetS(),
                        rules.lightFrom(),
                        rules.lamps(),
                        rules.lampsFullUmolPerM2S(),
                        rules.co2Ppm(),
                        rules.airSpeedMPerS(),
                        rules.stated());
        return files.once()
                .read(
                        new Weather(madeFrom),
                        climate.file(),
                        () ->
                                InsideFile.read(
                                        file.value(),
                                        climate.file(),
                                        run.start().value(),
                                        run.days().value(),
                                        rules))
                .map(air -> new Climate.Inside(air, solutionCo2.value()));
    }

    /** Keys that a file of inside air may leave without use, as far as the user wrote them. */
    private static Set<String> stated(Table climate) {
        Set<String> stated = new TreeSet<>();
        for (Key<?> key : List.of(CO2, AIR_SPEED, LIGHT_FROM, LAMPS_TYPE, LAMPS_FULL)) {
            if (climate.has(key)) {
                stated.add(key.name());
            }
        }
        return stated;
    }

    private static void refuse(Table climate, List<Key<?>> keys, String allowed, String hint) {
        for (Key<?> key : keys) {
            if (climate.has(key)) {
                String cover = climate.has(COVER) ? climate.words(COVER) : COVER.fallback();
                climate.fault(
                        key,
                        Key.quoted(climate.words(key)) + " beside cover = " + Key.quoted(cover),
                        allowed,
                        hint);
            }
        }
    }

    /** The file's own names of columns. */
    private static Read<Map<String, CsvColumns.Named>> named(Table columns, boolean inside) {
        Map<String, CsvColumns.Named> named = new LinkedHashMap<>();
        boolean good = true;
        for (String ours : InsideFile.columns()) {
            Read<String> text = columns.get(ColumnKeys.of(ours));
            boolean known = inside ? InsideFile.knows(ours) : WeatherFile.knows(ours);
            if (text.isAbsent()) {
                continue;
            }
            if (!known) {
                columns.fault(
                        ColumnKeys.of(ours),
                        "a column of " + (inside ? "outside weather" : "inside air"),
                        "columns that cover = "
                                + (inside ? "\"inside\"" : "\"open\", \"glass\" and the like")
                                + " has",
                        inside ? "" : "Maybe cover = \"inside\".");
            } else if (text.isSound()) {
                named.put(ours, column(text.value()));
            }
            good &= known && text.isSound();
        }
        return good ? Read.of(named) : Read.faulty();
    }

    /** A name, and the unit behind its last " in ". */
    private static CsvColumns.Named column(String text) {
        int at = text.lastIndexOf(" in ");
        return at <= 0
                ? new CsvColumns.Named(text, "")
                : new CsvColumns.Named(
                        text.substring(0, at).strip(), text.substring(at + 4).strip());
    }

    private static Gaps gaps(Table climate) {
        return new Gaps(
                (int) (climate.value(GAP_MOST) / Time.HOUR_S),
                climate.value(LONGER_GAPS).equals(Gaps.FROM_DAYS_BESIDE));
    }

    /** Less than this comes through a window, mol/m2/day; assumed. */
    private static final double OUTDOORS_MOL_PER_M2_DAY = 20;

    private static Read<Climate> room(
            Table climate, Read<Lamp> lamp, boolean sound, Read<Double> solutionCo2) {
        Read<Double> night =
                climate.getOr(
                        NIGHT_TEMPERATURE,
                        climate.get(DAY_TEMPERATURE),
                        day -> plain(day, UnitTable.TEMPERATURE, "degC") + ", as by day");
        Read<Double> nightHumidity =
                climate.getOr(
                        NIGHT_HUMIDITY,
                        climate.get(DAY_HUMIDITY),
                        day -> plain(day, UnitTable.SHARE, "%") + ", as by day");
        boolean lit = lamp.isSound();
        Read<Double> from =
                climate.getOr(
                        DAY_FROM,
                        Read.of(lit ? lamp.value().onS() : 6 * Time.HOUR_S),
                        at -> lit ? "when the lamp goes on" : "06:00");
        Read<Double> to =
                climate.getOr(
                        DAY_TO,
                        Read.of(lit ? lamp.value().offS() : 20 * Time.HOUR_S),
                        at -> lit ? "when the lamp goes off" : "20:00");
        Read<Climate.Window> window = window(climate);
        if (!sound || !Read.allSound(night, nightHumidity, from, to, solutionCo2, window)) {
            return Read.faulty();
        }
        if (window.value().molPerM2Day() >= OUTDOORS_MOL_PER_M2_DAY) {
            climate.note(
                    WINDOW_LIGHT,
                    "so much light is had outdoors or under glass, where a hot or windy week drinks"
                            + " far more than the mean day that this room repeats; a year of weather"
                            + " (kind = \"weather\") tells of those too");
        }
        return Read.of(
                new Climate.Room(
                        climate.value(DAY_TEMPERATURE),
                        night.value(),
                        climate.value(DAY_HUMIDITY),
                        nightHumidity.value(),
                        from.value(),
                        to.value(),
                        climate.value(SWING),
                        window.value(),
                        climate.value(AIR_SPEED),
                        climate.value(CO2),
                        solutionCo2.value()));
    }

    private static Read<Climate.Window> window(Table climate) {
        Read<Double> light = climate.get(WINDOW_LIGHT);
        Read<Double> from = climate.get(WINDOW_FROM);
        Read<Double> to = climate.get(WINDOW_TO);
        if (!Read.allSound(light, from, to)) {
            return Read.faulty();
        }
        if (from.value() >= to.value()) {
            climate.fault(
                    WINDOW_TO,
                    "daylight that ends before it begins",
                    "a time after window_from, on the same day",
                    "Maybe window_from = \"07:00\" and window_to = \"19:00\".");
            return Read.faulty();
        }
        return Read.of(new Climate.Window(light.value(), from.value(), to.value()));
    }

    private static Read<Cover> cover(Table climate) {
        Read<Cover.Kind> kind =
                climate.get(COVER).map(word -> Cover.Kind.valueOf(word.toUpperCase(Locale.ROOT)));
        Read<Double> transmission =
                climate.getOr(
                        TRANSMISSION,
                        kind.map(ClimateReader::transmission),
                        share ->
                                plain(share, UnitTable.SHARE, "%")
                                        + ", usual for "
                                        + kind.value().name().toLowerCase(Locale.ROOT));
        // Common practice, no source: single glass about 7, single film about 8 W/m2/K of floor.
        Read<Double> heatLoss =
                climate.getOr(
                        HEAT_LOSS,
                        Read.of(kind.holds(Cover.Kind.FILM::equals) ? 8.0 : 7.0),
                        loss -> plain(loss) + " W/m2/K");
        Read<Double> heatedTo =
                climate.getOr(HEATED_TO, Read.of(Double.NEGATIVE_INFINITY), never -> "not heated");
        Read<Double> ventsShut = climate.get(VENTS_SHUT);
        Read<Double> ventsOpen = climate.get(VENTS_OPEN);
        Read<Double> ventsFrom = climate.get(VENTS_FROM);
        Read<Double> height = climate.get(MEAN_HEIGHT);
        boolean good = true;
        if (ventsShut.holds(shut -> ventsOpen.holds(open -> open < shut))) {
            climate.faultyValue(
                    climate.has(VENTS_OPEN) ? VENTS_OPEN : VENTS_SHUT,
                    "vents_open of at least vents_shut",
                    "");
            good = false;
        }
        if (heatedTo.holds(heated -> ventsFrom.holds(from -> heated >= from))) {
            climate.faultyValue(
                    HEATED_TO, "below vents_from (" + plain(ventsFrom.value()) + " degC)", "");
            good = false;
        }
        if (!good
                || !Read.allSound(
                        kind,
                        transmission,
                        heatLoss,
                        heatedTo,
                        ventsShut,
                        ventsOpen,
                        ventsFrom,
                        height)) {
            return Read.faulty();
        }
        return Read.of(
                new Cover(
                        kind.value(),
                        transmission.value(),
                        heatLoss.value(),
                        ventsShut.value(),
                        ventsOpen.value(),
                        height.value(),
                        heatedTo.value(),
                        ventsFrom.value()));
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
