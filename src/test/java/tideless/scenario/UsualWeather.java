package tideless.scenario;

import java.time.LocalDate;
import java.util.Map;
import tideless.rig.HourlyWeather;

/** A weather file read by the rules of a scenario that states none. */
final class UsualWeather {
    static final Gaps GAPS = new Gaps(Gaps.USUAL_MOST_H, false);

    private UsualWeather() {}

    static Read<HourlyWeather> read(
            NamedFiles.Named file,
            TomlFile source,
            boolean typical,
            double windHeightM,
            int rigOffsetS,
            LocalDate start,
            int days) {
        WeatherFile.Rules usual = new WeatherFile.Rules(Map.of(), GAPS, "open");
        return WeatherFile.read(file, source, typical, windHeightM, rigOffsetS, start, days, usual);
    }
}
