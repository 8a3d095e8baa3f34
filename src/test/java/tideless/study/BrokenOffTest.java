package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tideless.report.AwayTable;
import tideless.report.CalendarTable;
import tideless.report.FitTable;
import tideless.report.ForecastTable;
import tideless.report.SizeTable;
import tideless.report.Telling;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.words.OutlookWords;

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
        table.printChanges(found, goal, CALM, Optional.empty());
        assertThat(text.toString())
                .contains("Broken off: 1 of 3 changes were looked at, the others are left out.");
        table.print(Size.changes(CALM, goal, brokenOffAfter(0)), goal, CALM);
        assertThat(text.toString()).contains("Broken off before anything could be said.");
    }

    /** Does short work to its end, and is interrupted after so many jobs of more than ten. */
    private static Workers brokenOffInMembers(int done) {
        return new Workers() {
            @Override
            public <R> List<R> each(int jobs, IntFunction<R> job) throws InterruptedException {
                return (jobs > 10 ? brokenOffAfter(done) : new InTurn()).each(jobs, job);
            }
        };
    }

    private static String told(Forecast forecast) {
        StringWriter text = new StringWriter();
        ForecastTable.print(
                new PrintWriter(text),
                forecast,
                false,
                200,
                ForecastTable.Depth.BRIEF,
                Telling.METRIC);
        CalendarTable.print(new PrintWriter(text), forecast, 200);
        return text.toString();
    }

    @Test
    void a_run_is_told_with_the_first_rigs_as_if_no_more_had_been_asked_for()
            throws InterruptedException {
        Forecast broken = Forecasts.of(CALM, 1, 50, brokenOffInMembers(4));
        Forecast four = Forecasts.of(CALM, 1, 4, new InTurn());
        assertThat(broken.outlook()).isEqualTo(four.outlook());
        assertThat(broken.stepError()).isEqualTo(four.stepError());
        assertThat(broken.isBrokenOff()).isTrue();
        assertThat(four.isBrokenOff()).isFalse();
        String said = "Broken off: these are the first 4 of 50 rigs, as --members 4 tells them.";
        assertThat(told(broken).split(Pattern.quote(said), -1)).hasSize(3);
        assertThat(told(four)).doesNotContain("Broken off");
        assertThat(OutlookWords.sureness(broken)).contains(said);
        assertThat(OutlookWords.sureness(four)).doesNotContain(said);
    }

    @Test
    void a_run_without_a_single_rig_is_told_all_the_same() throws InterruptedException {
        Forecast broken = Forecasts.of(CALM, 1, 50, brokenOffInMembers(0));
        assertThat(broken.outlook()).isEmpty();
        assertThat(told(broken)).contains("Broken off before any rig that yours might be was run");
        assertThat(OutlookWords.sureness(broken)).hasSize(1);
        assertThatThrownBy(() -> Forecasts.of(CALM, 1, 50, brokenOffAfter(0)))
                .isInstanceOf(InterruptedException.class);
    }

    @Test
    void what_was_learned_is_kept_with_bands_of_the_first_rigs() throws InterruptedException {
        Scenario logged =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/logged-bench.toml")))
                        .scenario();
        int many = 1000;
        Workers members =
                new Workers() {
                    @Override
                    public <R> List<R> each(int jobs, IntFunction<R> job)
                            throws InterruptedException {
                        return (jobs == many ? brokenOffAfter(4) : new InTurn()).each(jobs, job);
                    }
                };
        Fit broken = Fit.of(logged, many, 1, members).orElseThrow();
        Fit four = Fit.of(logged, 4, 1, new InTurn()).orElseThrow();
        assertThat(broken.learned()).isEqualTo(four.learned());
        assertThat(broken.dates()).isEqualTo(four.dates());
        assertThat(broken.drunkL()).isEqualTo(four.drunkL());
        StringWriter text = new StringWriter();
        FitTable.print(new PrintWriter(text), broken, 200, Telling.METRIC);
        assertThat(text.toString()).contains("Broken off: these are the first 4 of 1000 rigs");
        text.getBuffer().setLength(0);
        FitTable.print(new PrintWriter(text), four, 200, Telling.METRIC);
        assertThat(text.toString()).doesNotContain("Broken off");
    }
}
