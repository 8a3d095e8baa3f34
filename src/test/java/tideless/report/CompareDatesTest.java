package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.study.Axis;
import tideless.study.Compared;
import tideless.study.Forecasts;
import tideless.study.Workers;
import tideless.words.Dates;

/** Scenarios that begin on different days, side by side. */
class CompareDatesTest {
    private static final Scenario TROUGH = read("outgrown-trough");
    private static final Scenario CALM = read("calm-bench");

    private static Scenario read(String name) {
        return ((Reading.Good) ScenarioReader.read(Path.of("scenarios", name + ".toml")))
                .scenario();
    }

    private static Compared compared(List<Scenario> scenarios) throws InterruptedException {
        List<String> names = scenarios.stream().map(Scenario::title).toList();
        return Compared.of(
                List.of(new Axis("", "", names, List.of(), List.of())),
                scenarios,
                false,
                i -> new Compared.Plan(Optional.of(scenarios.get(i)), ""),
                1,
                1,
                new OneAfterTheOther());
    }

    private static final class OneAfterTheOther implements Workers {
        @Override
        public <R> List<R> each(int jobs, IntFunction<R> job) {
            return IntStream.range(0, jobs).mapToObj(job).toList();
        }
    }

    private static LocalDate first(Scenario scenario, Event.Kind kind) {
        return Forecasts.of(scenario, 1).trace().events().stream()
                .filter(e -> e.kind() == kind)
                .findFirst()
                .map(e -> scenario.start().atStartOfDay().plusSeconds((long) e.atS()).toLocalDate())
                .orElseThrow();
    }

    @Test
    void each_is_dated_from_its_own_start() throws InterruptedException {
        assertThat(TROUGH.start()).isNotEqualTo(CALM.start());
        for (List<Scenario> order : List.of(List.of(TROUGH, CALM), List.of(CALM, TROUGH))) {
            Compared compared = compared(order);
            StringWriter text = new StringWriter();
            CompareTable.print(new PrintWriter(text), "two", compared, 200, ShownIn.METRIC);
            for (Scenario scenario : order) {
                String row =
                        text.toString()
                                .lines()
                                .filter(l -> l.strip().startsWith(scenario.title()))
                                .findFirst()
                                .orElseThrow();
                assertThat(row).contains(Dates.dayMonth(first(scenario, Event.Kind.REFILL)));
            }
            LocalDate harm =
                    Forecasts.of(TROUGH, 1)
                            .advice()
                            .verdict()
                            .firstHarm()
                            .orElseThrow()
                            .at()
                            .toLocalDate();
            assertThat(new String(CompareFiles.csv(compared), StandardCharsets.UTF_8))
                    .contains(",trough," + harm + ",");
        }
    }
}
