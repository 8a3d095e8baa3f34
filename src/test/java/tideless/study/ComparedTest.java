package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Rigs;
import tideless.study.threads.ThreadPool;

class ComparedTest {
    private static final Axis AREA =
            new Axis(
                    "reservoir.area",
                    "dm2",
                    List.of("6", "10", "14", "18"),
                    List.of(6.0, 10.0, 14.0, 18.0),
                    List.of(10.0));

    /** 2 L a day out of a reservoir with 0.4 m above its outlet, filled up when empty. */
    private static Scenario rig(double areaM2) {
        return Rigs.scenario(
                60,
                3 * 3600,
                List.of(Rigs.reservoir(areaM2, 0.42, Reservoir.Refill.When.WHEN_EMPTY)),
                List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(2), 0)),
                Rigs.nobody());
    }

    private static IntFunction<Compared.Plan> plans() {
        return i -> new Compared.Plan(Optional.of(rig(AREA.numbers().get(i) / 100)), "");
    }

    private static Compared compare(IntFunction<Compared.Plan> plan, int members, Workers workers) {
        return Compared.of(List.of(AREA), List.of(rig(0.1)), true, plan, members, 7, workers);
    }

    @Test
    void the_first_refill_comes_later_by_the_litres_more_over_the_thirst() {
        Compared compared = compare(plans(), 1, new InTurn());
        for (int i = 1; i < AREA.size(); i++) {
            double laterS =
                    compared.at(i, 0).design().orElseThrow().firstRefillS().middle()
                            - compared.at(i - 1, 0).design().orElseThrow().firstRefillS().middle();
            // 4 dm2 more by 4 dm are 16 L, and 2 L go in a day. To a thousandth: what falls onto
            // and leaves the open water differs a little from day to day.
            assertThat(laterS / 86_400).isCloseTo(8, within(0.008));
        }
    }

    @Test
    void equal_designs_have_equal_bands_and_more_water_is_never_worse() {
        Compared same =
                compare(i -> new Compared.Plan(Optional.of(rig(0.1)), ""), 16, new ThreadPool(2));
        for (Compared.Cell cell : same.cells()) {
            assertThat(cell).isEqualTo(same.present().orElseThrow());
        }
        Compared compared = compare(plans(), 16, new InTurn());
        assertThat(compared.at(1, 0)).isEqualTo(compared.present().orElseThrow());
        assertThat(compared.at(2, 0)).isNotEqualTo(compared.at(1, 0));
    }

    @Test
    void threads_change_nothing() {
        assertThat(compare(plans(), 5, new ThreadPool(3)))
                .isEqualTo(compare(plans(), 5, new InTurn()));
    }

    @Test
    void what_was_done_before_an_interruption_is_kept() {
        Compared broken =
                compare(
                        plans(),
                        1,
                        new Workers() {
                            @Override
                            public <R> List<R> each(int jobs, IntFunction<R> job)
                                    throws InterruptedException {
                                R unusedFirst = job.apply(0);
                                R unusedThird = job.apply(2);
                                throw new InterruptedException();
                            }
                        });
        assertThat(broken.whole()).isFalse();
        assertThat(broken.cells().stream().map(c -> c.design().isPresent()))
                .containsExactly(true, false, true, false);
    }

    @Test
    void a_stretch_over_which_nothing_changes_is_found_and_not_one_step_more() {
        double[] areas = {0.06, 0.1, 0.1, 0.1};
        Compared compared =
                compare(i -> new Compared.Plan(Optional.of(rig(areas[i])), ""), 1, new InTurn());
        assertThat(compared.levels()).containsExactly(new Compared.Level(AREA, 1, 3));
        assertThat(compare(plans(), 1, new InTurn()).levels()).isEmpty();
    }
}
