package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import tideless.report.AwayTable;
import tideless.report.SizeTable;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** Long work that is broken off: what is done is kept, and said to be a part. */
class BrokenOffTest {
    private static final Scenario CALM =
            ((Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml"))).scenario();

    /** Somebody who is interrupted after so many jobs, and has begun with the second. */
    private static Workers brokenOffAfter(int done) {
        return new Workers() {
            @Override
            public <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException {
                for (int i = 0; i < Math.min(done, jobs); i++) {
                    R unused = job.apply(i ^ 1);
                }
                throw new InterruptedException();
            }
        };
    }

    private static Away away(int members, Workers workers) {
        Away.Question question =
                new Away.Question(CALM.start().plusDays(14), 20, CALM.visits().absences());
        return Away.of(CALM, question, members, 1, workers);
    }

    private static String told(Away away) {
        StringWriter text = new StringWriter();
        AwayTable.print(new PrintWriter(text), away, 100);
        return text.toString();
    }

    @Test
    void an_absence_is_judged_by_the_first_rigs_as_if_no_more_had_been_asked_for() {
        Away broken = away(6, brokenOffAfter(2));
        Away two = away(2, new InTurn());
        assertThat(broken.members()).isEqualTo(2);
        assertThat(broken.whole()).isFalse();
        assertThat(broken.leaves()).isEqualTo(two.leaves());
        assertThat(broken.absences()).isEqualTo(two.absences());
        assertThat(told(broken)).contains("Broken off: these are the first 2 of 6 rigs");
        assertThat(told(two)).doesNotContain("Broken off");
    }

    @Test
    void a_rig_that_is_missing_ends_what_is_kept() {
        // The second was done and the first was not.
        Away broken = away(6, brokenOffAfter(1));
        assertThat(broken.members()).isZero();
        assertThat(told(broken)).contains("Broken off before anything could be said.");
    }

    @Test
    void sizes_found_before_are_told_and_how_many_are_missing() throws InterruptedException {
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 1, 1, 1);
        Size first = Size.ofVisits(CALM, goal, new InTurn());
        Size.Found found =
                Size.each(
                        List.of(
                                () -> first,
                                () -> Size.ofReservoir(CALM, "shelf", goal, brokenOffAfter(0)),
                                () -> first));
        assertThat(found).isEqualTo(new Size.Found(List.of(first), 3));
        StringWriter text = new StringWriter();
        SizeTable table = new SizeTable(new PrintWriter(text), 100);
        table.printChanges(found, goal, CALM);
        assertThat(text.toString())
                .contains("Broken off: 1 of 3 changes were looked at, the others are left out.");
        table.print(Size.changes(CALM, goal, brokenOffAfter(0)), goal, CALM);
        assertThat(text.toString()).contains("Broken off before anything could be said.");
    }
}
