package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.words.LogWords;

/** Levels that no plants explain are told; those of a sound log are not. */
class FarLevelsTest {
    private static final VesselId SHELF = VesselId.reservoir("shelf");

    private static LogEntry level(double day, double metres, boolean counts) {
        return new LogEntry.Reading(
                day * Time.DAY_S, SHELF, LogEntry.Quantity.LEVEL, metres, counts, (int) day);
    }

    private static List<FarLevels.Far> far(LogEntry... entries) {
        return FarLevels.of(LoggedBench.stated().withLog(new Log(List.of(entries))));
    }

    @Test
    void a_level_read_ten_centimetres_too_low_is_told_and_the_next_is_foretold_from_it() {
        assertThat(far(level(3, 0.24, true), level(5, 0.14, true), level(6, 0.135, true)))
                .singleElement()
                .satisfies(one -> assertThat(one.reading().line()).isEqualTo(5))
                .satisfies(one -> assertThat(one.foretoldM()).isBetween(0.22, 0.24))
                .satisfies(one -> assertThat(one.lowM()).isLessThan(one.highM()));
        assertThat(far(level(3, 0.24, true), level(5, 0.14, false))).isEmpty();
        Scenario scenario = LoggedBench.stated().withLog(new Log(List.of(level(5, 0.14, true))));
        assertThat(LogWords.far(scenario))
                .singleElement()
                .asString()
                .startsWith(
                        "Odd, line 5: level of reservoir shelf on Sat 7 Mar 00:00, 14.0 cm, where ");
    }

    @Test
    void the_shipped_log_and_one_that_begins_after_refills_are_sound() {
        Scenario scenario = ((Reading.Good) ScenarioReader.read(LoggedBench.SCENARIO)).scenario();
        assertThat(FarLevels.of(scenario)).isEmpty();
        List<LogEntry> late =
                new ArrayList<>(
                        scenario.log().entries().stream()
                                .filter(e -> e.atS() > 30 * Time.DAY_S)
                                .toList());
        assertThat(FarLevels.of(scenario.withLog(new Log(late)))).isEmpty();
    }

    /** Where no thirst makes a difference, and where only a leak goes below. */
    @Test
    void a_level_below_its_outlet_is_told_as_a_leaks() {
        Scenario stated = LoggedBench.stated();
        double outletM = stated.reservoirs().get(0).outletLevelM();
        LogEntry empty =
                new LogEntry.Reading(
                        40 * Time.DAY_S, SHELF, LogEntry.Quantity.LEVEL, outletM, true, 3);
        LogEntry below =
                new LogEntry.Reading(
                        43 * Time.DAY_S, SHELF, LogEntry.Quantity.LEVEL, outletM - 0.018, true, 4);
        assertThat(LogWords.far(stated.withLog(new Log(List.of(empty, below)))))
                .singleElement()
                .asString()
                .contains("is foretold from what stands before it, however much plants drink.")
                .endsWith(": a leak does.");
        assertThat(LogWords.far(stated.withLog(new Log(List.of(level(5, 0.14, true))))).get(0))
                .contains(" for plants that drink twice or half as much.")
                .doesNotContain("a leak does");
    }
}
