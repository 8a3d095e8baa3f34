package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Growers.Figure;
import tideless.study.Growers.Held;
import tideless.study.threads.ThreadPool;

/** A band of 10 to 90 % holds eight growers of ten; docs/validation-decisions.md has all 300. */
class CoverageTest {
    private static final Scenario CALM =
            ((Reading.Good) ScenarioReader.read(Path.of("scenarios", "calm-bench.toml")))
                    .scenario();

    private static Map<Figure, Held> held(int growers, double times) throws InterruptedException {
        return Growers.of(
                CALM, growers, new SplittableRandom(Growers.SEED), times, new ThreadPool(2));
    }

    @Test
    void eight_growers_of_ten_lie_in_the_band_they_are_shown() throws InterruptedException {
        Map<Figure, Held> held = held(150, 1);
        for (Figure figure : Figure.values()) {
            // 150 growers: 0.8 +- 1.96 sqrt(0.8 x 0.2 / 150); and the ends of a band of a hundred
            // evenly spread members are known to some 0.01.
            assertThat(held.get(figure).rankFrac()).as(figure.name()).isCloseTo(0.8, within(0.075));
        }
    }

    @Test
    void growers_twice_as_unlike_what_is_believed_do_not() throws InterruptedException {
        // A normal figure of twice the spread lies within 1.2816 / 2 deviations: 48 %.
        assertThat(held(100, 2).get(Figure.LITRES).rankFrac()).isCloseTo(0.48, within(0.11));
    }

    @Test
    void ties_share_their_ranks() {
        double[] members = {1, 2, 2, 2, 3, 4, 5, 6, 7};
        // Ten ranks of a tenth each: of a truth below all the first, outside; of a tie of three
        // members the four from a tenth to a half; of one above all the last.
        assertThat(Growers.rankShare(members, 0)).isZero();
        assertThat(Growers.rankShare(members, 2)).isCloseTo(1, within(1e-12));
        assertThat(Growers.rankShare(members, 1)).isCloseTo(0.5, within(1e-12));
        assertThat(Growers.rankShare(members, 7)).isCloseTo(0.5, within(1e-12));
        assertThat(Growers.rankShare(members, Double.POSITIVE_INFINITY)).isZero();
    }
}
