package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.HourlyWeather;

class EpwFileTest {
    private static final LocalDate START = LocalDate.of(2026, 3, 2);
    private static final String TINY = tiny();

    private final TomlFile source = new TomlFile("bench.toml");

    /** Two invented days; its own comment line says so. */
    private static String tiny() {
        try (var in = EpwFileTest.class.getResourceAsStream("/tideless/scenario/invented.epw")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private HourlyWeather read(String text, int days) {
        return UsualWeather.read(
                        new NamedFiles.Named("w.EPW", text), source, true, 10, 3600, START, days)
                .orElse(null);
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    // Temperature of the row of hour H (column 7) holds at H; radiation (column 14) is of the hour
    // from H - 1 to H; both read off the file by eye. Hour 1 of 2 March: 4.1 degC at 01:00.
    @Test
    void state_holds_at_the_end_of_its_hour_and_radiation_from_its_begin() {
        HourlyWeather weather = read(TINY, 2);
        assertEquals(List.of(), faults());
        assertNotNull(weather);
        assertEquals(4.1, weather.tempC(1), 1e-12);
        assertEquals(0.81, weather.humidityFrac(1), 1e-12);
        assertEquals(3 * WeatherFile.windFactor(10), weather.windMPerS(1), 1e-12);
        // Hour 12 of the file: 11:00 to 12:00, 480 Wh/m2; 9.2 degC at 12:00.
        assertEquals(480, weather.globalWPerM2(11), 1e-12);
        assertEquals(9.2, weather.tempC(12), 1e-12);
        // 24 hours later the second day, one degree warmer.
        assertEquals(10.2, weather.tempC(36), 1e-12);
    }

    @Test
    void codes_for_missing_values_are_gaps_that_are_filled_and_said() {
        HourlyWeather weather = read(TINY.replace(",9.2,", ",99.9,"), 2);
        assertEquals(List.of(), faults());
        assertEquals(0.5 * (9.0 + 9.4), weather.tempC(12), 1e-9);
        assertThat(source.notes())
                .singleElement()
                .asString()
                .startsWith("w.EPW:20: temperature: 1 h missing from 03-02T12:00");
    }

    @Test
    void an_absurd_value_is_a_fault_at_its_own_line_and_column() {
        assertNull(read(TINY.replace(",9.2,", ",92,"), 2));
        assertThat(faults())
                .containsExactly(
                        "w.EPW:20:7: temperature: found \"92\", allowed: from -70 degC up to 60 degC");
    }

    @Test
    void text_where_a_number_should_be_and_short_rows_are_faults() {
        assertNull(read(TINY.replace(",480,", ",bright,").replace("2026,3,3,7,", "2026,3,3,,"), 2));
        assertThat(faults())
                .containsExactly(
                        "w.EPW:39:4: time: found \"\", allowed: whole numbers: year, month, day, hour");
        TomlFile second = new TomlFile("bench.toml");
        assertNull(
                UsualWeather.read(
                                new NamedFiles.Named("w.epw", TINY.replace(",480,", ",bright,")),
                                second,
                                true,
                                10,
                                3600,
                                START,
                                2)
                        .orElse(null));
        assertThat(second.problems())
                .singleElement()
                .asString()
                .startsWith("w.epw:20:14: global: found \"bright\"");
    }

    @Test
    void a_csv_under_the_name_of_an_epw_is_refused() {
        assertNull(read("time,temperature\nUTC,degC\n2026-03-02,4\n", 1));
        assertThat(faults())
                .containsExactly(
                        "w.EPW:1:1: time: found no line LOCATION, allowed: LOCATION and nine more"
                                + " values");
    }
}
