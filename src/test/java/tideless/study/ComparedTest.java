package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
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

    private static Scenario withSecondTray(Filling filling) {
        return Rigs.scenario(
                200,
                3 * 3600,
                List.of(Rigs.reservoir(1, 0.42, Reservoir.Refill.When.EVERY_VISIT)),
                List.of(
                        Rigs.tray("t", Rigs.valve(), Rigs.drinking(1), 0),
                        Rigs.tray("u", filling, Rigs.drinking(0), 0)),
                Rigs.onWeekdays(DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SUNDAY));
    }

    @Test
    void one_unknown_is_one_point_whatever_else_a_design_does_not_know() {
        // The second design does not know one valve more, which stands before gaps and visits: its
        // visitors miss the same days all the same.
        List<Scenario> both =
                List.of(withSecondTray(new Filling.Sealed()), withSecondTray(Rigs.valve()));
        Axis files = new Axis("", "", List.of("a", "b"), List.of(), List.of());
        Compared compared =
                Compared.of(
                        List.of(files),
                        both,
                        false,
                        i -> new Compared.Plan(Optional.of(both.get(i)), ""),
                        9,
                        7,
                        new InTurn());
        Band one = compared.at(0, 0).design().orElseThrow().figures().get(Design.Figure.REFILLS);
        Band two = compared.at(1, 0).design().orElseThrow().figures().get(Design.Figure.REFILLS);
        assertThat(one.low()).isLessThan(one.high());
        assertThat(two).isEqualTo(one);
    }

    private static Design design(double chance, Design.Figure figure, double hours, double grams) {
        Map<Design.Figure, Band> figures = new EnumMap<>(Design.Figure.class);
        for (Design.Figure of : Design.Figure.values()) {
            double value = of == figure ? hours : of == Design.Figure.YIELD ? grams : 0;
            figures.put(of, new Band(value, value, value, 0, 1));
        }
        return new Design(
                1,
                chance,
                chance,
                figures,
                List.of(),
                new Band(1, 1, 1, 0, 1),
                new Band(1, 1, 1, 0, 1),
                Optional.empty(),
                Rigs.START,
                false);
    }

    /** A valve near the rim of a deep tray: what rots there no season shows. */
    @Test
    void cups_under_water_for_good_are_harm() {
        Design sound = design(1, Design.Figure.SHORT_OF_AIR, 0, 1);
        assertThat(sound.isHarmless()).isTrue();
        Design deep =
                new Design(
                        sound.members(),
                        sound.chance(),
                        sound.chanceUnharmed(),
                        sound.figures(),
                        sound.yields(),
                        sound.firstRefillS(),
                        sound.lastHarvestS(),
                        sound.firstHarm(),
                        sound.start(),
                        true);
        assertThat(deep.isHarmless()).isFalse();
    }

    @Test
    void harmless_is_what_survives_without_an_hour_of_harm_but_for_six_of_wilting() {
        assertThat(design(1, Design.Figure.SHORT_OF_AIR, 99, 1).isHarmless()).isTrue();
        assertThat(design(1, Design.Figure.WILTED, 6, 1).isHarmless()).isTrue();
        assertThat(design(1, Design.Figure.WILTED, 6.1, 1).isHarmless()).isFalse();
        assertThat(design(1, Design.Figure.DRY, 0.1, 1).isHarmless()).isFalse();
        assertThat(design(1, Design.Figure.STRANDED, 0.1, 1).isHarmless()).isFalse();
        assertThat(design(1, Design.Figure.DROWNED, 0.1, 1).isHarmless()).isFalse();
        assertThat(design(0.89, Design.Figure.DRY, 0, 1).isHarmless()).isFalse();
    }

    private static Compared.Cell cell(Design design) {
        return new Compared.Cell(Optional.of(design), "");
    }

    @Test
    void the_best_is_the_heaviest_without_harm_and_two_alike_are_no_level() {
        Design light = design(1, Design.Figure.DRY, 0, 100);
        Design heavy = design(1, Design.Figure.DRY, 0, 200);
        Design harmed = design(1, Design.Figure.DRY, 9, 300);
        Compared compared =
                new Compared(
                        List.of(AREA),
                        Optional.empty(),
                        List.of(cell(light), cell(heavy), cell(heavy), cell(harmed)),
                        true);
        assertThat(compared.best()).contains(1);
        assertThat(compared.levels()).isEmpty();
        // Three alike are one, but only if they are so for every value of the other axis.
        Axis other = new Axis("key", "", List.of("1", "2"), List.of(1.0, 2.0), List.of());
        List<Compared.Cell> row = List.of(cell(light), cell(light), cell(light), cell(harmed));
        assertThat(new Compared(List.of(AREA), Optional.empty(), row, true).levels())
                .containsExactly(new Compared.Level(AREA, 0, 2));
        List<Compared.Cell> grid = new ArrayList<>(row);
        grid.addAll(List.of(cell(light), cell(heavy), cell(light), cell(harmed)));
        assertThat(new Compared(List.of(AREA, other), Optional.empty(), grid, true).levels())
                .isEmpty();
    }
}
