package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Sizing;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** What is enough is one thing, whichever command is asked. */
class EnoughTest {
    private static final Size.Goal GOAL =
            new Size.Goal(OptionalInt.empty(), Outlook.SURE, Enough.MOST_MEMBERS, 1);

    private static Scenario rig(String name) {
        Path own = Path.of("src/test/resources/tideless/study/rigs", name + ".toml");
        Path shipped = Path.of("scenarios", name + ".toml");
        Reading read = ScenarioReader.read(own.toFile().exists() ? own : shipped);
        return ((Reading.Good) read).scenario();
    }

    private static Scenario wider(Scenario rig, double times) {
        return rig.withReservoirs(
                rig.reservoirs().stream()
                        .map(r -> r.equals(rig.reservoirs().get(0)) ? r.wider(times) : r)
                        .toList());
    }

    /**
     * By other members than those it was found with: 0.9 less two standard errors of 100 and of 40
     * of them, 0.06.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "outgrown-trough",
                "calm-bench",
                "science-room-bench",
                "low-held-trays",
                "six-pak-choi",
                "trough-on-a-tank",
                "bench-on-a-wide-shelf"
            })
    void what_is_found_and_written_into_the_file_is_enough(String name) throws Exception {
        Scenario given = rig(name);
        String reservoir = given.reservoirs().get(0).name();
        Size size = Size.leastReservoir(given, reservoir, GOAL, new InTurn());
        Scenario built = wider(given, size.found().orElseThrow() / size.given());
        assertThat(Size.leastReservoir(built, reservoir, GOAL, new InTurn()).isEnough(GOAL))
                .isTrue();
        Outlook other = Outlook.of(built, 100, 2, new InTurn()).orElseThrow();
        assertThat(other.chance()).isGreaterThan(0.9 - 2 * 0.06);
    }

    @Test
    void a_run_names_the_litres_that_size_finds_and_then_no_more() throws Exception {
        Scenario bottle = rig("six-pak-choi");
        Forecast forecast = Forecasts.of(bottle, 1, Enough.MOST_MEMBERS, new InTurn());
        double found =
                Size.leastReservoir(bottle, "bottle", GOAL, new InTurn()).found().orElseThrow();
        Sizing sizing = forecast.advice().sizings().get(0);
        assertThat(sizing.enoughUsableLitres()).isCloseTo(found, within(1e-9));
        assertThat(forecast.advice().warnings())
                .flatExtracting(w -> w.cures())
                .filteredOn(c -> c.kind() == Cure.Kind.LARGER_RESERVOIR)
                .isNotEmpty()
                .allSatisfy(
                        c ->
                                assertThat(c.facts().get(Quantity.ENOUGH))
                                        .isCloseTo(found, within(1e-9)));
        Scenario built = wider(bottle, found / sizing.usableLitres());
        Forecast then = Forecasts.of(built, 1, Enough.MOST_MEMBERS, new InTurn());
        assertThat(then.advice().sizings().get(0).isShort()).isFalse();
        assertThat(then.survives()).isTrue();
    }

    @Test
    void a_reservoir_that_lasts_the_run_as_stated_but_not_most_rigs_is_short() throws Exception {
        Scenario tank = rig("trough-on-a-tank");
        assertThat(Forecasts.of(tank, 1).advice().sizings().get(0).isShort()).isFalse();
        Forecast forecast = Forecasts.of(tank, 1, Enough.MOST_MEMBERS, new InTurn());
        assertThat(forecast.outlook().orElseThrow().survives()).isFalse();
        assertThat(forecast.advice().sizings().get(0).isShort()).isTrue();
    }
}
