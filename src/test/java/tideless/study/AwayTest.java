package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Rigs;
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
        // A closed tray of 0.2 m2 and 5 cm drinks 20 mL a day; from twice a film's depth on the
        // thirst falls in proportion to what stands above the film, and a tenth of it counts as
        // dry: (h - 2 f) A / q + ln(10) f A / q. Counted from 08:00. Steps of 3 h are 0.03 %.
        Tray sealed = Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(0.02), 0);
        Scenario rig = Rigs.scenario(700, 3 * 3600, List.of(), List.of(sealed), Rigs.nobody());
        double filmM = Brine.FILM_M;
        double days = ((0.05 - 2 * filmM) + Math.log(10) * filmM) * 200 / 0.02;
        Away away = alone(rig, 0, 100);
        for (int i = 0; i < 5; i++) {
            double left = days - 100 * i - 8 / 24.0;
            assertThat(away.leaves().get(i).asItStands().days().middle())
                    .isCloseTo(left, within(1e-3 * days));
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
}
