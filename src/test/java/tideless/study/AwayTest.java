package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.solution.Brine;
import tideless.study.threads.ThreadPool;

class AwayTest {
    private static final Visits MONDAYS = Rigs.onWeekdays(DayOfWeek.MONDAY); // the first day is one

    private static Away alone(Scenario rig, int fromDay, int everyDays, Visits.Absence... absences)
            throws InterruptedException {
        return Away.of(
                rig,
                new Away.Question(rig.start().plusDays(fromDay), everyDays, List.of(absences)),
                1,
                1,
                new InTurn());
    }

    private static Scenario onReservoir(
            int days, double areaM2, double litresPerDay, Reservoir.Refill.When when) {
        return Rigs.scenario(
                days,
                3 * 3600,
                List.of(Rigs.reservoir(areaM2, 0.42, when)),
                List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(litresPerDay), 0)),
                MONDAYS);
    }

    @Test
    void days_are_litres_over_thirst() throws InterruptedException {
        // A closed tray of 0.2 m2 and 5 cm drinks 20 mL a day; at twice a film's depth the thirst
        // is not met any more and the tray counts as dry, as in a run: (h - 2 f) A / q. Counted
        // from 08:00.
        Tray sealed = Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(0.02), 0);
        Scenario rig = Rigs.scenario(700, 3 * 3600, List.of(), List.of(sealed), Rigs.nobody());
        double filmM = Brine.FILM_M;
        double days = (0.05 - 2 * filmM) * 200 / 0.02;
        Away away = alone(rig, 0, 100);
        for (int i = 0; i < 5; i++) {
            double left = days - 100 * i - 8 / 24.0;
            assertThat(away.leaves().get(i).asItStands().days().middle())
                    .isCloseTo(left, within(1e-4 * days)); // not midnight's
        }
        assertThat(away.canFillUp()).isFalse();
    }

    @Test
    void filling_up_buys_the_litres_that_are_missing() throws InterruptedException {
        // 1000 L of reservoir, never refilled, 2 L a day: what is missing after 98 days at a visit
        // is what filling up buys, 98 days.
        Scenario rig = onReservoir(1000, 2.5, 2, Reservoir.Refill.When.NEVER);
        Away.Leave leave = alone(rig, 99, 1000).leaves().get(0);
        assertThat(leave.filledOn()).contains(Rigs.START.plusDays(98));
        double plain = leave.asItStands().days().middle();
        double filled = leave.filledUp().days().middle();
        // Of the first litres some come out of the tray's own band above the valve's seat.
        assertThat(filled - plain).isCloseTo(98, within(0.5));
        assertThat(plain).isCloseTo(500 + 5 - 99, within(6.0));
        assertThat(leave.asItStands().harm().orElseThrow().kind()).isEqualTo(Event.Kind.DRIED_OUT);
    }

    @Test
    void whoever_leaves_is_not_foreseen_and_nobody_refills_a_reservoir_when_it_is_empty()
            throws InterruptedException {
        for (Reservoir.Refill.When when : Reservoir.Refill.When.values()) {
            Away.Leave leave = alone(onReservoir(120, 0.1, 2, when), 28, 120).leaves().get(0);
            // Never refilled it has been dry for days when nobody comes; else 40 L and the tray's
            // own at 2 L a day: full at the last visit or not, it ends.
            assertThat(leave.asItStands().days().middle()).as(when.name()).isLessThan(26);
            assertThat(leave.filledUp().days().middle())
                    .as(when.name())
                    .isGreaterThanOrEqualTo(leave.asItStands().days().middle());
        }
    }

    @Test
    void a_tray_that_stands_dry_already_leaves_no_days() throws InterruptedException {
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.NEVER);
        assertThat(alone(rig, 30, 120).leaves().get(0).asItStands().days().middle()).isZero();
    }

    @Test
    void hand_topped_trays_are_filled_up_too() throws InterruptedException {
        Filling hand =
                new Filling.ByHand(
                        0.05, List.of(Rigs.START.plusDays(2)), new Pouring(false, List.of()));
        Tray tray =
                TestTray.of(Rigs.tray("t", hand, Rigs.drinking(0.5), 0)).startLevelM(0.05).make();
        Scenario rig = Rigs.scenario(60, 3 * 3600, List.of(), List.of(tray), MONDAYS);
        Away.Leave leave = alone(rig, 8, 60).leaves().get(0);
        // Topped up on the third day by its own list, and on the second Monday only by filling up:
        // five days of half a litre.
        assertThat(leave.filledUp().days().middle() - leave.asItStands().days().middle())
                .isCloseTo(5, within(0.13));
    }

    @Test
    void an_absence_survives_as_long_as_the_litres_last() throws InterruptedException {
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.LOW_AT_VISIT);
        LocalDate tuesday = rig.start().plusDays(1);
        // 40 L and up to 10 L of the tray at 2 L a day.
        Away away =
                alone(
                        rig,
                        0,
                        366,
                        new Visits.Absence(tuesday, tuesday.plusDays(15)),
                        new Visits.Absence(tuesday, tuesday.plusDays(40)));
        assertThat(away.absences().get(0).chance()).isEqualTo(1);
        assertThat(away.absences().get(0).harm()).isEmpty();
        assertThat(away.absences().get(1).chance()).isEqualTo(0);
        assertThat(away.absences().get(1).harm()).isPresent();
    }

    @Test
    void threads_change_nothing() throws InterruptedException {
        Scenario rig = onReservoir(60, 0.1, 2, Reservoir.Refill.When.BEFORE_NEXT_VISIT);
        Away.Question question = new Away.Question(rig.start(), 9, List.of());
        String one = Away.of(rig, question, 9, 4, new InTurn()).toString();
        assertThat(Away.of(rig, question, 9, 4, new ThreadPool(3)).toString()).isEqualTo(one);
        assertThat(Away.of(rig, question, 9, 5, new InTurn()).toString()).isNotEqualTo(one);
    }

    @Test
    void no_day_is_tried_on_which_nothing_grows_any_more() throws InterruptedException {
        // Both trays of the calm bench are cut on 30 March; the run goes on to 12 April.
        Scenario calm =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml")))
                        .scenario();
        List<Away.Leave> leaves = alone(calm, 26, 1).leaves();
        assertThat(leaves.get(leaves.size() - 1).from()).isEqualTo(LocalDate.of(2026, 3, 30));
    }

    @Test
    void a_tray_that_was_dry_and_is_filled_again_has_its_days_ahead() throws InterruptedException {
        // Dry in an absence of six weeks, filled up on the Monday after it: 40 L at 2 L a day, and
        // what the tray has taken by then.
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.EVERY_VISIT);
        LocalDate tuesday = rig.start().plusDays(1);
        Scenario left =
                rig.withVisits(
                        MONDAYS.withAbsences(
                                List.of(new Visits.Absence(tuesday, tuesday.plusDays(41)))));
        Away.Lasting after = alone(left, 50, 120).leaves().get(0).asItStands();
        assertThat(after.days().middle()).isBetween(18.5, 26.0);
    }

    @Test
    void a_tray_that_was_cut_is_not_dry_any_more() {
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.NEVER);
        Season dry = Simulation.season(rig, Surroundings.forSeasons(rig));
        Fate.Harm harm = Fate.of(rig, dry).firstHarm().orElseThrow();
        assertThat(Away.isStill(harm, rig, dry, 40)).isTrue();
        List<Event> events = new ArrayList<>(dry.events());
        Event cut =
                new Event(
                        Event.Kind.HARVEST, 35 * 86400.0, harm.tray(), 0, 0, 0, Double.NaN, 1, "");
        events.add(cut);
        Season harvested =
                new Season(events, dry.water(), dry.components(), dry.trays(), dry.read());
        assertThat(Away.isStill(harm, rig, harvested, 40)).isFalse();
        assertThat(Away.isStill(harm, rig, harvested, 34)).isTrue();
    }

    @Test
    void an_absence_that_is_asked_for_is_not_foreseen_even_if_it_is_the_scenarios_own()
            throws InterruptedException {
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.BEFORE_NEXT_VISIT);
        LocalDate from = rig.start().plusDays(8); // 26 L are left on the Monday before
        Visits.Absence absence = new Visits.Absence(from, from.plusDays(40));
        Scenario own = rig.withVisits(MONDAYS.withAbsences(List.of(absence)));
        assertThat(alone(own, 0, 366, absence).absences())
                .isEqualTo(alone(rig, 0, 366, absence).absences());
    }

    @Test
    void an_absence_ends_with_the_next_visit_and_what_comes_later_is_none_of_its_harm()
            throws InterruptedException {
        // Some 24.9 days from the first Monday on. Away from Tuesday to the 22nd day, somebody
        // comes on the 28th; away for a week, somebody comes on the 14th.
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.NEVER);
        LocalDate tuesday = rig.start().plusDays(1);
        List<Away.Stated> stated =
                alone(
                                rig,
                                0,
                                366,
                                new Visits.Absence(tuesday, tuesday.plusDays(21)),
                                new Visits.Absence(tuesday, tuesday.plusDays(7)))
                        .absences();
        assertThat(stated.get(0).chance()).isEqualTo(0);
        assertThat(stated.get(1).chance()).isEqualTo(1);
    }

    @Test
    void all_is_filled_up_at_the_last_visit_before() throws InterruptedException {
        Scenario rig = onReservoir(120, 0.1, 2, Reservoir.Refill.When.LOW_AT_VISIT);
        // The 18th day is a Friday, the visit before it the Monday of the 14th.
        assertThat(alone(rig, 18, 366).leaves().get(0).filledOn())
                .contains(Rigs.START.plusDays(14));
        assertThat(alone(rig, 0, 366).leaves().get(0).filledOn()).isEmpty();
    }
}
