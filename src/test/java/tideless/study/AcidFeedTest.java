package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Measure;
import tideless.advice.Warning;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Series;
import tideless.sim.Trace;

/** A tray that stands a unit below its band for weeks is warned of, with its days and its cure. */
class AcidFeedTest {
    private static final Path RIG =
            Path.of("src/test/resources/tideless/study/rigs/feed-rich-in-ammonium.toml");

    private static List<Warning> acid(List<Warning> warnings) {
        return warnings.stream()
                .filter(w -> w.kind() == Warning.Kind.PH_OUT)
                .filter(w -> w.measure().side() == Measure.Side.AT_LEAST)
                .toList();
    }

    @Test
    void weeks_of_acid_that_every_run_shows_are_warned_of_by_the_days_of_the_run_as_written() {
        Reading.Good rig = (Reading.Good) ScenarioReader.read(RIG);
        Forecast forecast = Forecasts.of(rig.scenario(), 1);
        Trace trace = forecast.trace();
        Warning acid = acid(forecast.advice().warnings()).get(0);
        double low = acid.measure().limit();

        // By the run alone what all the nitrate taken leaves in doubt is more than what is left.
        Advice alone = Advisor.advise(trace, trace);
        assertEquals(0, acid(alone.warnings()).size());
        assertEquals(1, acid(alone.minor()).size());

        Series likely = trace.trays().get(0).ph();
        double last = likely.at(trace.hours() - 1);
        assertTrue(last < low, "back in its band at the end: " + last);
        LocalDate end = trace.scenario().start().plusDays(trace.hours() / 24 - 1);
        assertEquals(end, acid.until().toLocalDate());
        int from =
                (int) ChronoUnit.DAYS.between(trace.scenario().start(), acid.from().toLocalDate());
        assertTrue(likely.at(24 * from - 1) >= low && likely.at(24 * from + 23) < low, "" + from);
        assertEquals(
                List.of(Cure.Kind.BASE_BY_METER, Cure.Kind.LESS_AMMONIUM),
                acid.cures().stream().map(Cure::kind).toList());
        assertTrue(forecast.advice().verdict().first().isEmpty());
    }
}
