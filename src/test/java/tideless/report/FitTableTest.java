package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.ElectricalConductivity.PpmScale;
import tideless.study.Fit;
import tideless.study.threads.ThreadPool;

/** What is printed of a fit, in the units of whoever reads it. */
class FitTableTest {
    private static List<String> printed(Telling shown) throws InterruptedException {
        Reading reading = ScenarioReader.read(Path.of("scenarios/logged-bench.toml"));
        Fit fit =
                Fit.of(((Reading.Good) reading).scenario(), 4, 1, new ThreadPool(2)).orElseThrow();
        StringWriter text = new StringWriter();
        FitTable.print(new PrintWriter(text), fit, 100, shown);
        return shown.told(text.toString()).lines().toList();
    }

    @Test
    void gallons_and_inches_stand_everywhere_and_columns_stay_columns()
            throws InterruptedException {
        List<String> lines = printed(new ShownIn(true, PpmScale.PPM_500));
        assertThat(lines).noneMatch(line -> line.matches(".*\\d (L|cm|mm|mS/cm)\\b.*"));
        String head = lines.stream().filter(l -> l.startsWith("  NEXT")).findFirst().orElseThrow();
        String drunk =
                lines.stream().filter(l -> l.startsWith("  drunk")).findFirst().orElseThrow();
        assertThat(drunk.substring(head.indexOf("AS STATED")))
                .matches("[\\d.]+ gal \\([\\d.]+ to [\\d.]+ gal\\) +[\\d.]+ gal \\(.* gal\\)");
        assertThat(drunk.substring(head.indexOf("BY THE LOG") - 1)).matches(" \\d.* gal\\)");
        assertThat(lines).anyMatch(line -> line.contains(" ppm-500"));
    }

    @Test
    void a_log_is_dated_by_its_first_line() throws InterruptedException {
        assertThat(printed(Telling.METRIC).get(1)).startsWith("Log of 4 Mar to 26 Apr 2026");
    }
}
