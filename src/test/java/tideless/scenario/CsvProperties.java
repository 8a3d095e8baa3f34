package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tideless.rig.HourlyWeather;

class CsvProperties {
    @Provide
    Arbitrary<String> cells() {
        return Arbitraries.oneOf(
                Arbitraries.of(
                        "",
                        "0",
                        "1",
                        "20",
                        "nan",
                        "1e99",
                        "-5",
                        "\"",
                        "#",
                        "x",
                        "2026-03-02",
                        "2026-03-02T01:00",
                        "2000-02-30 00:00",
                        "20260302:0500",
                        "99999999:0000",
                        "2026-03-02T01:30",
                        "02.03.2026 01:00",
                        "3/2/2026 1:00 AM",
                        "+999999999-01-01"),
                Arbitraries.strings().ofMaxLength(5));
    }

    @Provide
    Arbitrary<List<List<String>>> rows() {
        return cells().list().ofMinSize(0).ofMaxSize(6).list().ofMaxSize(12);
    }

    @Property(tries = 500)
    void no_weather_or_thirst_file_makes_an_exception_escape(
            @ForAll("rows") List<List<String>> rows) {
        StringBuilder body = new StringBuilder();
        rows.forEach(row -> body.append(String.join(",", row)).append('\n'));
        reads("time,temperature,humidity,global,wind\nUTC,degC,%,W/m2,m/s\n" + body);
        reads("time,thirst\nlocal,L/day\n" + body);
        reads("time,thirst\ndays,L/day\n" + body);
        reads(body.toString());
        reads("time,temperature,humidity,ppfd,lamp,co2\nlocal,degC,%,umol/m2/s,min,ppm\n" + body);
        reads("time [local],temperature [degC],deficit [g/m3]\n" + body);
    }

    /** Either it reads or it says why. */
    static void reads(String text) {
        NamedFiles.Named file = new NamedFiles.Named("a.csv", text);
        LocalDate start = LocalDate.of(2026, 3, 2);
        for (boolean typical : new boolean[] {true, false}) {
            TomlFile source = new TomlFile("a.toml");
            HourlyWeather weather =
                    UsualWeather.read(file, source, typical, 10, 3600, start, 1).orElse(null);
            assertTrue(weather != null ^ source.isFaulty());
        }
        for (boolean longer : new boolean[] {true, false}) {
            TomlFile source = new TomlFile("a.toml");
            InsideFile.Rules rules =
                    new InsideFile.Rules(
                            java.util.Map.of(),
                            new Gaps(3, longer),
                            Read.of(3600),
                            InsideFile.LightFrom.SUN,
                            LampType.WHITE_LED,
                            Read.of(200.0),
                            420,
                            0.2,
                            java.util.Set.of());
            var inside = InsideFile.read(file, source, start, 1, rules).orElse(null);
            assertTrue(inside != null ^ source.isFaulty());
        }
        TomlFile source = new TomlFile("a.toml");
        assertTrue(
                ThirstFile.read(file, source, start, 3).orElse(null) != null ^ source.isFaulty());
    }
}
