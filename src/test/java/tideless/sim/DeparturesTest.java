package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Scenario;

class DeparturesTest {
    private static final Scenario SEALED =
            Rigs.scenario(
                    10,
                    3600,
                    List.of(),
                    List.of(Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(0.5), 0)),
                    Rigs.nobody());

    private static Season with(Departures departures) {
        return Simulation.season(SEALED, Surroundings.forSeasons(SEALED), departures);
    }

    @Test
    void a_days_factor_is_a_factor_on_what_is_drunk_that_day() {
        double[] thirst = new double[10];
        Arrays.fill(thirst, 1);
        thirst[3] = 2;
        thirst[7] = 0.5;
        Season season =
                with(new Departures(new double[0], new double[][] {thirst}, new boolean[0], 1));
        // 0.5 L a day: 8 days at 1, one at 2, one at a half.
        assertThat(season.trays().get(0).drunkM3()).isCloseTo(10.5 * 0.5e-3, within(1e-12));
        assertThat(season.water().relativeResidual()).isLessThan(1e-12);
        List<Double> lowest = season.trays().get(0).lowestOfDayM();
        // Floor 0.2 m2: 2.5 mm a day.
        assertThat(lowest.get(2) - lowest.get(3)).isCloseTo(0.005, within(1e-9));
        assertThat(lowest.get(6) - lowest.get(7)).isCloseTo(0.00125, within(1e-9));
    }

    @Test
    void the_thirst_of_two_departures_multiplies_and_days_beyond_either_stay() {
        Departures longer =
                new Departures(new double[0], new double[][] {{2, 2, 3}}, new boolean[0], 1);
        Departures shorter =
                new Departures(new double[0], new double[][] {{1, 0.5}}, new boolean[0], 1.1);
        Departures both = shorter.times(longer);
        assertThat(List.of(both.thirstFrac(0, 0), both.thirstFrac(0, 1), both.thirstFrac(0, 2)))
                .containsExactly(2.0, 1.0, 3.0);
        assertThat(both.thirstFrac(0, 3)).isEqualTo(1);
        assertThat(both.meterFrac()).isEqualTo(1.1);
    }

    @Test
    void none_is_the_run_as_it_is_written() {
        assertThat(with(Departures.NONE))
                .isEqualTo(Simulation.season(SEALED, Surroundings.forSeasons(SEALED)));
    }

    @Test
    void no_share_is_zero_or_endless() {
        assertThatThrownBy(() -> new Departures(new double[0], new double[0][], new boolean[0], 0))
                .hasMessageContaining("above 0");
        assertThatThrownBy(
                        () ->
                                new Departures(
                                        new double[0],
                                        new double[][] {{Double.NaN}},
                                        new boolean[0],
                                        1))
                .hasMessageContaining("above 0");
    }

    @Test
    void nobody_comes_while_away_but_on_the_day_of_the_return_and_when_all_is_filled_up() {
        boolean[] missed = new boolean[10];
        missed[2] = true;
        missed[7] = true;
        missed[8] = true;
        Departures away =
                new Departures(new double[0], new double[0][], missed, 1).filledUp(2).away(4, 7);
        for (int day = 0; day < 12; day++) {
            assertThat(away.isMissed(day))
                    .as("day " + day)
                    .isEqualTo((day >= 4 && day < 7) || day == 8);
            assertThat(away.isFilledUp(day)).as("day " + day).isEqualTo(day == 2);
        }
    }
}
