package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.util.List;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.sim.Rigs;
import tideless.study.Sensitivity.Asked;
import tideless.study.Sensitivity.Group;
import tideless.study.Sensitivity.Kind;
import tideless.study.Sensitivity.Share;
import tideless.study.threads.ThreadPool;
import tideless.words.SensitivityWords;

class SensitivityTest {
    private static final int POINTS = 64;

    private static Scenario rig(int days, double areaM2, Reservoir.Refill.When when) {
        return Rigs.scenario(
                days,
                3 * 3600,
                List.of(Rigs.reservoir(areaM2, 0.42, when)),
                List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(2), 0)),
                Rigs.onWeekdays(DayOfWeek.MONDAY));
    }

    private static Sensitivity of(Scenario rig, int fromDay) {
        return Sensitivity.of(rig, rig.start().plusDays(fromDay), POINTS, 1, new InTurn());
    }

    private static Share share(Sensitivity of, Asked asked, Kind kind) {
        return of.of(asked).orElseThrow().shares().stream()
                .filter(s -> s.group().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_covered_tray_on_a_reservoir_filled_when_empty_knows_its_own_thirst_and_weeks_alone() {
        // 100 L at 2 L a day: t = V / (q f w), f lognormal with 0.12; w, the mean over some seven
        // weeks of 0.13 with a memory of a half, and fifty days of 0.20:
        // var w = 0.13^2 / 7 (1 + 2 sum_k (1 - k/7) / 2^k) + 0.20^2 / 50 = 0.0062 + 0.0008.
        // So the stand has 0.0144 of 0.0214, 67 %. Gaps of nothing, a meter nobody goes by, light
        // that nothing uses, mixing and visits nobody waits for: nothing; the air over a closed
        // deck
        // next to nothing, by the warmth of the water in the tube.
        Sensitivity found = of(rig(120, 0.25, Reservoir.Refill.When.WHEN_EMPTY), 0);
        Share thirst = share(found, Asked.NEXT_REFILL, Kind.THIRST);
        Share days = share(found, Asked.NEXT_REFILL, Kind.DAYS);
        assertThat(thirst.total()).isCloseTo(0.67, within(3 * thirst.totalError()));
        assertThat(thirst.alone()).isCloseTo(0.67, within(3 * thirst.aloneError()));
        assertThat(days.total()).isCloseTo(0.33, within(3 * days.totalError()));
        for (Kind kind : List.of(Kind.LIGHT, Kind.METER, Kind.GAPS, Kind.VISITS)) {
            assertThat(share(found, Asked.NEXT_REFILL, kind).total()).as(kind.name()).isZero();
        }
        assertThat(share(found, Asked.NEXT_REFILL, Kind.AIR).total()).isLessThan(1e-6);
        // Two millimetres of 0.2 m2 are 0.4 L of 100.
        assertThat(share(found, Asked.NEXT_REFILL, Kind.VALVE).total()).isLessThan(0.01);
        assertThat(found.of(Asked.NEXT_REFILL).orElseThrow().measureFirst().orElseThrow().group())
                .isEqualTo(new Group(Kind.THIRST, "measured"));
        assertThat(SensitivityWords.sentences(found).get(0))
                .contains("Measure first: thirst of measured, with a ruler: ");
    }

    @Test
    void what_never_comes_or_never_differs_is_moved_by_nothing_and_said_so() {
        Sensitivity never = of(rig(20, 0.25, Reservoir.Refill.When.NEVER), 0);
        assertThat(never.of(Asked.NEXT_REFILL).orElseThrow().shares()).isEmpty();
        List<String> said = SensitivityWords.sentences(never);
        assertThat(said.get(0))
                .isEqualTo(
                        "Next refill: none is needed in any of 128 rigs before the run ends on 26"
                                + " Sep, so nothing moves it.");
        assertThat(said.get(1)).isEqualTo("Verdict: all of 128 rigs come through.");
        assertThat(said.get(3)).isEqualTo("Litres: 0.0 L in every rig, whatever is unknown.");
        assertThat(said).hasSize(4);
        Sensitivity dry = of(rig(60, 0.02, Reservoir.Refill.When.NEVER), 0);
        assertThat(SensitivityWords.sentences(dry).get(1))
                .isEqualTo("Verdict: none of 128 rigs comes through.");
    }

    @Test
    void the_next_refill_is_the_first_from_the_day_that_is_asked_for() {
        Scenario rig = rig(60, 0.1, Reservoir.Refill.When.WHEN_EMPTY);
        double firstS = of(rig, 0).of(Asked.NEXT_REFILL).orElseThrow().band().middle();
        Sensitivity later = of(rig, 31);
        assertThat(firstS).isBetween(18 * 86400.0, 25 * 86400.0);
        assertThat(later.of(Asked.NEXT_REFILL).orElseThrow().band().low())
                .isGreaterThanOrEqualTo(31 * 86400.0);
    }

    @Test
    void threads_change_nothing_and_a_seed_does() {
        Scenario rig = rig(60, 0.1, Reservoir.Refill.When.BEFORE_NEXT_VISIT);
        String one = of(rig, 0).toString();
        assertThat(Sensitivity.of(rig, rig.start(), POINTS, 1, new ThreadPool(3)).toString())
                .isEqualTo(one);
        assertThat(Sensitivity.of(rig, rig.start(), POINTS, 2, new InTurn()).toString())
                .isNotEqualTo(one);
    }

    /** Somebody who is interrupted after some jobs. */
    private record Interrupted(int after) implements Workers {
        @Override
        public <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException {
            for (int i = 0; i < after; i++) {
                assertThat(job.apply(i)).isNotNull();
            }
            throw new InterruptedException("asked to end");
        }
    }

    @Test
    void work_that_is_broken_off_keeps_its_whole_points() {
        Scenario rig = rig(60, 0.1, Reservoir.Refill.When.WHEN_EMPTY);
        int each = Sensitivity.of(rig, rig.start(), 2, 1, new InTurn()).groups().size() + 2;
        Sensitivity half =
                Sensitivity.of(rig, rig.start(), POINTS, 1, new Interrupted(40 * each + 3));
        assertThat(half.whole()).isFalse();
        assertThat(half.points()).isEqualTo(40);
        // A sample begins with the smaller one, so these are the answers of forty points.
        assertThat(half.answers())
                .isEqualTo(Sensitivity.of(rig, rig.start(), 40, 1, new InTurn()).answers());
        Sensitivity none = Sensitivity.of(rig, rig.start(), POINTS, 1, new Interrupted(each));
        assertThat(none.answers()).isEmpty();
    }

    @Test
    void a_share_matters_from_a_twentieth_and_two_standard_errors_on() {
        Group gaps = new Group(Kind.GAPS, "");
        assertThat(new Share(gaps, 0, 0, 0.05, 0.024).matters()).isTrue();
        assertThat(new Share(gaps, 0, 0, 0.049, 0.01).matters()).isFalse();
        assertThat(new Share(gaps, 0, 0, 0.30, 0.16).matters()).isFalse();
        assertThat(new Share(gaps, 0.06, 0.02, 0, 0).tellsAlone()).isTrue();
        assertThat(new Share(gaps, 0.06, 0.04, 0, 0).tellsAlone()).isFalse();
    }

    @Test
    void nobody_is_sent_to_measure_what_cannot_be_measured() {
        Share days = new Share(new Group(Kind.DAYS, ""), 0.6, 0.1, 0.7, 0.1);
        Share gaps = new Share(new Group(Kind.GAPS, ""), 0.1, 0.02, 0.1, 0.02);
        Share roots = new Share(new Group(Kind.ROOTS, ""), 0.2, 0.02, 0.3, 0.02);
        Band band = new Band(1, 2, 3, 0, 8);
        assertThat(
                        new Sensitivity.Answer(
                                        Asked.NEXT_REFILL, band, 2, List.of(days, gaps, roots))
                                .measureFirst())
                .contains(roots);
        assertThat(new Sensitivity.Answer(Asked.NEXT_REFILL, band, 2, List.of(days)).measureFirst())
                .isEmpty();
    }

    // Never in the tenth and in the ninetieth of a hundred: no width to become narrower.
    @Test
    void what_never_comes_at_both_ends_of_the_band_has_no_width() {
        double never = Double.POSITIVE_INFINITY;
        Group roots = new Group(Kind.ROOTS, "");
        Sensitivity of = of(rig(20, 0.25, Reservoir.Refill.When.NEVER), 0);
        for (double low : new double[] {86_400, never}) {
            Sensitivity.Answer answer =
                    new Sensitivity.Answer(
                            Asked.NEXT_REFILL,
                            new Band(low, never, never, 0.5, 8),
                            2,
                            List.of(new Share(roots, 0.5, 0.1, 0.6, 0.1)));
            Sensitivity told =
                    new Sensitivity(
                            of.scenario(),
                            of.from(),
                            of.points(),
                            of.whole(),
                            List.of(roots),
                            List.of(answer));
            assertThat(SensitivityWords.sentences(told).toString())
                    .contains("takes away 50 % of the variance (+-10 %).")
                    .doesNotContain("NaN")
                    .doesNotContain("between early and late");
        }
    }
}
