package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.rig.HourlyWeather;

class WeatherFileTest {
    private static final String HEAD =
            "time,temperature,humidity,global,wind\nUTC,degC,%,W/m2,m/s\n";
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    private final TomlFile source = new TomlFile("bench.toml");

    private HourlyWeather read(String text, boolean typical, int rigOffsetS, int days) {
        return UsualWeather.read(
                        new NamedFiles.Named("w.csv", text),
                        source,
                        typical,
                        2,
                        rigOffsetS,
                        START,
                        days)
                .orElse(null);
    }

    /** Rows whose temperature counts the hours. */
    private static StringBuilder rows(LocalDateTime from, int hours) {
        StringBuilder text = new StringBuilder(HEAD);
        for (int h = 0; h < hours; h++) {
            text.append(from.plusHours(h)).append(',').append(h / 10.0).append(",50,100,1\n");
        }
        return text;
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    @Test
    void the_same_days_of_every_other_whole_year_of_a_file_are_kept() {
        // From 4 March 2024 to 5 March 2027: a run of 2 to 6 March has its days in 2025 and 2026.
        LocalDateTime from = LocalDateTime.of(2024, 3, 4, 0, 0);
        StringBuilder text = new StringBuilder(HEAD);
        for (int h = 0; h < (3 * 365 + 1) * 24; h++) {
            LocalDateTime time = from.plusHours(h);
            double tempC = 10 * (time.getYear() - 2024) + 0.1 * time.getDayOfMonth();
            text.append(time).append(',').append(tempC).append(",50,100,1\n");
        }
        HourlyWeather own = read(text.toString(), false, 0, 4);
        assertThat(own.otherYears()).hasSize(1);
        HourlyWeather before = own.otherYears().get(0);
        assertThat(own.tempC(5)).isCloseTo(20.2, within(1e-9));
        assertThat(before.tempC(5)).isCloseTo(10.2, within(1e-9));
        assertThat(before.tempC(95)).isCloseTo(10.5, within(1e-9));
        assertThat(before.hours()).isEqualTo(own.hours());
        assertThat(read(rows(START.atStartOfDay(), 24 * 10).toString(), false, 0, 4).otherYears())
                .isEmpty();
        assertThat(faults()).isEmpty();
    }

    // Allen et al. (1998), FAO 56, Example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m (factor 0.75);
    // printed to 0.1 m/s and 0.01.
    @Test
    void wind_at_ten_metres_agrees_with_the_worked_example_of_FAO_56() {
        assertEquals(0.75, WeatherFile.windFactor(10), 0.005);
        assertEquals(2.4, 3.2 * WeatherFile.windFactor(10), 0.05);
        assertEquals(1, WeatherFile.windFactor(2), 0.0005); // FAO 56, Annex 2, Table 2.9: 1.000
    }

    @Test
    void a_series_by_date_begins_at_the_start() {
        HourlyWeather weather =
                read(rows(START.minusDays(1).atStartOfDay(), 96).toString(), false, 0, 2);
        assertEquals(List.of(), faults());
        assertEquals(49, weather.hours()); // with the instant that ends the run
        assertEquals(2.4, weather.tempC(0), 1e-12);
        assertEquals(0.5, weather.humidityFrac(0), 1e-12);
        assertEquals(7.1, weather.tempC(47), 1e-12);
        assertEquals(7.2, weather.tempC(48), 1e-12);
    }

    @Test
    void a_file_that_ends_with_the_run_holds_its_last_hour_and_does_not_go_back_to_its_first() {
        HourlyWeather weather = read(rows(START.atStartOfDay(), 24).toString(), false, 0, 1);
        assertEquals(24, weather.hours());
        assertEquals(2.3, weather.tempC(24), 1e-12);
        assertEquals(2.3, weather.tempC(30), 1e-12);
    }

    // Ten days of light, the fourth and fifth of them without any.
    @Test
    void days_without_light_between_bright_ones_are_told_and_a_polar_dusk_is_not() {
        assertThat(darkNotes(new double[] {90, 90, 90, 0, 0, 90, 90, 90, 90, 90}))
                .singleElement()
                .asString()
                .contains("no light at all on 2 of the run's days (the first " + START.plusDays(3));
        assertThat(darkNotes(new double[] {90, 90, 90, 1, 0, 90, 90, 90, 90, 90}))
                .singleElement()
                .asString()
                .contains("the run's " + START.plusDays(4));
        assertThat(darkNotes(new double[] {40, 30, 20, 10, 5, 0, 0, 0, 0, 0})).isEmpty();
        assertThat(darkNotes(new double[] {90, 90, 90, 1, 1, 90, 90, 90, 90, 90})).isEmpty();
    }

    private List<Note> darkNotes(double[] wattsPerM2OfDay) {
        StringBuilder text = new StringBuilder(HEAD);
        for (int h = 0; h <= 24 * wattsPerM2OfDay.length; h++) {
            double global = h % 24 < 12 ? wattsPerM2OfDay[Math.min(9, h / 24)] : 0;
            text.append(START.atStartOfDay().plusHours(h)).append(",20,50,").append(global);
            text.append(",1\n");
        }
        int before = source.notes().size();
        read(text.toString(), false, 0, wattsPerM2OfDay.length);
        assertThat(faults()).isEmpty();
        return source.notes().subList(before, source.notes().size());
    }

    @Test
    void a_rig_ahead_of_the_file_reads_earlier_rows() {
        String text = rows(START.minusDays(1).atStartOfDay(), 96).toString();
        assertEquals(2.3, read(text, false, 3600, 2).tempC(0), 1e-12);
        // Half an hour between two rows is their mean.
        assertEquals(2.35, read(text, false, 1800, 2).tempC(0), 1e-12);
        String local = text.replace("UTC,degC", "local,degC");
        assertEquals(2.4, read(local, false, 3600, 2).tempC(0), 1e-12);
        String east = text.replace("UTC,degC", "UTC+01:00,degC");
        assertEquals(2.4, read(east, false, 3600, 2).tempC(0), 1e-12);
    }

    @Test
    void columns_come_in_any_order_and_unit() {
        HourlyWeather weather =
                read(
                        "wind,global,pressure,humidity,temperature,time\nkm/h,J/cm2/h,Pa,fraction,degF,local\n"
                                + "3.6,36,1,0.5,50,2026-03-02 00:00\n"
                                + day("3.6,36,1,0.5,50,2026-03-02 %02d:00\n", 1),
                        false,
                        0,
                        1);
        assertEquals(List.of(), faults());
        assertEquals(10, weather.tempC(0), 1e-9);
        assertEquals(0.5, weather.humidityFrac(0), 1e-12);
        assertEquals(100, weather.globalWPerM2(0), 1e-9); // 36 J/cm2 = 360 kJ/m2 in 3600 s
        assertEquals(1, weather.windMPerS(0), 0.001); // at 2 m already, factor 1.000
        assertThat(source.notes()).singleElement().asString().contains("pressure");
    }

    private static String day(String row, int from) {
        StringBuilder text = new StringBuilder();
        for (int h = from; h < 24; h++) {
            text.append(row.formatted(h));
        }
        return text.toString();
    }

    @Test
    void three_missing_hours_are_filled_by_a_straight_line_and_said() {
        String text = rows(START.atStartOfDay(), 24).toString();
        for (int h = 5; h < 8; h++) {
            text = text.replaceFirst("2026-03-02T0" + h + ".*\n", "");
        }
        HourlyWeather weather = read(text, false, 0, 1);
        assertEquals(List.of(), faults());
        assertEquals(0.6, weather.tempC(6), 1e-12);
        assertThat(source.notes()).hasSize(4);
        assertEquals(
                "w.csv:7: temperature: 3 h missing from 2026-03-02T05:00, filled by a straight line",
                source.notes().get(0).toString());
    }

    @Test
    void four_missing_hours_are_a_fault_with_its_line() {
        String text = rows(START.atStartOfDay(), 24).toString();
        for (int h = 4; h < 8; h++) {
            text = text.replaceFirst("2026-03-02T0" + h + ".*\n", "");
        }
        assertNull(read(text, false, 0, 1));
        assertThat(faults())
                .containsExactly(
                        "w.csv:7:1: temperature: found a gap of 4 h from 2026-03-02T04:00 to"
                                + " 2026-03-02T08:00, allowed: gaps of up to 3 h\n    "
                                + new Gaps(3, false).hint());
    }

    @Test
    void four_missing_hours_are_filled_from_the_days_beside_where_that_is_allowed() {
        String text = rows(START.atStartOfDay(), 72).toString();
        for (int h = 4; h < 8; h++) {
            text = text.replaceFirst("2026-03-03T0" + h + ".*\n", "");
        }
        HourlyWeather weather =
                WeatherFile.read(
                                new NamedFiles.Named("w.csv", text),
                                source,
                                false,
                                2,
                                0,
                                START,
                                3,
                                new WeatherFile.Rules(Map.of(), new Gaps(3, true), "open"))
                        .orElse(null);
        assertEquals(List.of(), faults());
        // Rows count tenths of a degree: 05:00 of the days beside holds 0.5 and 5.3 degC.
        assertEquals(2.9, weather.tempC(29), 1e-12);
        assertEquals(
                "w.csv:30: temperature: 4 h missing from 2026-03-03T04:00, filled from the same"
                        + " hours of the days beside",
                source.notes().get(0).toString());
    }

    @Test
    void the_files_own_names_and_units_may_be_told() {
        String text =
                rows(START.atStartOfDay(), 24)
                        .toString()
                        .replace("time,temperature", "Stamp,Temp [degC]")
                        .replace("UTC,degC,", ",,");
        HourlyWeather weather =
                WeatherFile.read(
                                new NamedFiles.Named("w.csv", text),
                                source,
                                false,
                                2,
                                0,
                                START,
                                1,
                                new WeatherFile.Rules(
                                        Map.of(
                                                "time",
                                                new CsvColumns.Named("stamp", "UTC"),
                                                "temperature",
                                                new CsvColumns.Named("Temp [degC]", "")),
                                        UsualWeather.GAPS,
                                        "open"))
                        .orElse(null);
        assertEquals(List.of(), faults());
        assertEquals(2.3, weather.tempC(23), 1e-12);
    }

    @Test
    void light_measured_at_the_plants_is_not_put_under_glass() {
        String text = rows(START.atStartOfDay(), 24).toString().replace("wind", "ppfd");
        assertNull(
                WeatherFile.read(
                                new NamedFiles.Named("w.csv", text),
                                source,
                                false,
                                2,
                                0,
                                START,
                                1,
                                new WeatherFile.Rules(Map.of(), UsualWeather.GAPS, "glass"))
                        .orElse(null));
        assertThat(faults())
                .singleElement()
                .asString()
                .contains("ppfd: found a column that is measured at the plants")
                .contains("beside cover = \"glass\"")
                .contains("Maybe cover = \"inside\"");
    }

    @Test
    void a_row_twice_or_out_of_order_is_a_fault_with_its_line() {
        String text = rows(START.atStartOfDay(), 24).toString();
        assertNull(read(text.replace("T05:00", "T04:00"), false, 0, 1));
        assertThat(faults())
                .containsExactly(
                        "w.csv:8:1: time: found \"2026-03-02T04:00\", allowed: each hour once; it"
                                + " stands in line 7");
    }

    /** Clocks went back on Sunday 25 Oct 2026 at 03:00; on the Monday nobody's did. */
    @ParameterizedTest
    @ValueSource(ints = {25, 26})
    void an_hour_twice_in_the_night_of_winter_time_is_told_what_it_may_be(int day) {
        String text = rows(LocalDate.of(2026, 10, day).atStartOfDay(), 24).toString();
        assertNull(read(text.replace("T03:00", "T02:00"), false, 0, 1));
        assertThat(faults())
                .singleElement()
                .asString()
                .matches(
                        day == 25
                                ? "(?s).*each hour once.*put back to winter time that night.*"
                                : "(?s).*stands in line \\d+");
    }

    @Test
    void times_must_rise() {
        String text = rows(START.atStartOfDay(), 24).toString();
        assertNull(read(text.replace("T05:00", "T02:00"), false, 0, 1));
        assertThat(faults())
                .containsExactly(
                        "w.csv:8:1: time: found \"2026-03-02T02:00\", allowed: times that rise; line 7"
                                + " is later");
    }

    @Test
    void absurd_values_units_and_columns_are_faults_with_their_place() {
        String text = rows(START.atStartOfDay(), 24).toString();
        assertNull(read(text.replace(",0.3,50,", ",99,500,"), false, 0, 1));
        assertThat(faults())
                .containsExactly(
                        "w.csv:6:2: temperature: found \"99\", allowed: from -70 degC up to 60 degC",
                        "w.csv:6:3: humidity: found \"500\", allowed: from 0 % up to 105 %");
    }

    @Test
    void a_missing_unit_or_column_is_a_fault() {
        assertNull(
                read(rows(START.atStartOfDay(), 24).toString().replace("degC", ""), false, 0, 1));
        assertThat(faults())
                .containsExactly(
                        "w.csv:2:2: temperature: found no unit, allowed: degC, degF, K\n"
                                + "    The second row states units.");
    }

    @Test
    void weather_that_ends_too_soon_is_a_fault() {
        assertNull(read(rows(START.atStartOfDay(), 24).toString(), false, 0, 2));
        assertThat(faults())
                .singleElement()
                .asString()
                .startsWith("w.csv:26:1: time: found weather from");
    }

    @Test
    void a_typical_year_is_met_by_month_and_hour_and_29_February_repeats_28() throws IOException {
        String text = Files.readString(Path.of("scenarios/weather/typical-year-45n-8e.csv"));
        HourlyWeather leap =
                UsualWeather.read(
                                new NamedFiles.Named("w.csv", text),
                                source,
                                true,
                                10,
                                0,
                                LocalDate.of(2028, 2, 28),
                                3)
                        .orElse(null);
        assertEquals(List.of(), faults());
        assertNotNull(leap);
        // Read off the file itself with grep: rows ....0228:0000 and ....0301:0000.
        assertEquals(FEB28, leap.tempC(0), 1e-12);
        assertEquals(FEB28, leap.tempC(24), 1e-12);
        assertEquals(MAR01, leap.tempC(48), 1e-12);
    }

    private static final double FEB28 = 6.1;
    private static final double MAR01 = 8.38;

    @Test
    void a_typical_year_turns_over_at_new_year() throws IOException {
        String text = Files.readString(Path.of("scenarios/weather/typical-year-45n-8e.csv"));
        HourlyWeather turn =
                UsualWeather.read(
                                new NamedFiles.Named("w.csv", text),
                                source,
                                true,
                                10,
                                3600,
                                LocalDate.of(2026, 12, 31),
                                2)
                        .orElse(null);
        assertEquals(List.of(), faults());
        assertEquals(49, turn.hours());
        assertEquals("w.csv: PVGIS (c) European Union. See SOURCE.md.", turn.source());
        // 1 January 01:00 on the rig's clock is 1 January 00:00 UTC: first row of the file, 2.04
        // degC.
        assertEquals(2.04, turn.tempC(25), 1e-12);
    }

    @Test
    void only_a_typical_year_is_met_again_and_that_is_said() throws IOException {
        String text = Files.readString(Path.of("scenarios/weather/typical-year-45n-8e.csv"));
        HourlyWeather two = read(text, true, 0, 731);
        assertEquals(List.of(), faults());
        assertEquals(two.tempC(10), two.tempC(365 * 24 + 10), 1e-12); // 2 March of the year after
        assertThat(source.notes()).anyMatch(n -> n.text().contains("meets the typical year again"));
    }

    // 24 h of 0.5 mm are 12 mm.
    @Test
    void a_column_of_rain_is_read_in_its_unit() {
        String text =
                rows(START.atStartOfDay(), 24)
                        .toString()
                        .replace("wind\n", "wind,rain\n")
                        .replace("m/s\n", "m/s,mm\n")
                        .replace(",100,1\n", ",100,1,0.5\n");
        HourlyWeather weather = read(text, false, 0, 1);
        assertEquals(List.of(), faults());
        assertEquals(List.of(), source.notes());
        assertEquals(0.0005, weather.rainMPerH(3), 1e-15);
        assertEquals(0.012, weather.rainM(24), 1e-12);
    }

    @Test
    void rain_on_a_rig_in_the_open_is_said(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("w.csv"),
                rows(START.atStartOfDay(), 24)
                        .toString()
                        .replace("wind\n", "wind,rain\n")
                        .replace("m/s\n", "m/s,mm\n")
                        .replace(",100,1\n", ",100,1,0.5\n"));
        String rig =
                """
                title = "t"
                start = 2026-03-02
                length = "1 day"
                place = { latitude = "45 N", longitude = "0 E" }
                [climate]
                kind = "weather"
                file = "w.csv"
                [feed]
                recipe = "steiner"
                [tray.a]
                length = "60 cm"
                width = "35 cm"
                depth = "8 cm"
                gap = "50 %"
                crop = "basil"
                plants = 8
                hand = { to = "5 cm" }
                """;
        Files.writeString(folder.resolve("a.toml"), rig);
        // 12 mm on half of 60 x 35 cm: 12e-3 x 0.105 m3 = 1.26 L.
        assertThat(notesOf(folder))
                .anyMatch(n -> n.contains("12 mm of rain") && n.contains("1.3 L"));
        Files.writeString(
                folder.resolve("a.toml"), rig.replace("[feed]", "cover = \"glass\"\n[feed]"));
        assertThat(notesOf(folder)).noneMatch(n -> n.contains("rain"));
    }

    private static List<String> notesOf(Path folder) {
        Reading reading = ScenarioReader.read(folder.resolve("a.toml"), TestCrops.LIBRARY);
        return ((Reading.Good) reading).notes().stream().map(Note::toString).toList();
    }
}
