package tideless.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.words.Names;

class SeasonStripTest {
    private static final RigPicture.Drawing BENCH =
            SeasonStrip.of(DrawRig.forecast("scenarios/science-room-bench.toml"));

    private static List<double[]> boxes(String kind) {
        List<double[]> boxes = new ArrayList<>();
        Matcher box =
                Pattern.compile(
                                "<rect x=\"([\\d.]+)\" y=\"[\\d.]+\" width=\"([\\d.]+)\""
                                        + " height=\"[\\d.]+\" class=\""
                                        + kind
                                        + "\"")
                        .matcher(BENCH.svg());
        while (box.find()) {
            boxes.add(
                    new double[] {
                        Double.parseDouble(box.group(1)), Double.parseDouble(box.group(2))
                    });
        }
        return boxes;
    }

    // 70 days on 344 units from 8 on; away from 3 to 12 Apr: days 32 to 42 after 2 Mar.
    @Test
    void the_absence_is_shaded_where_it_lies_on_every_strip() {
        List<double[]> away = boxes("away");
        assertThat(away).hasSize(4);
        for (double[] one : away) {
            assertThat(one[0]).isCloseTo(8 + 344 * 32 / 70.0, within(0.02));
            assertThat(one[1]).isCloseTo(344 * 10 / 70.0, within(0.02));
        }
    }

    // A bold letter of eleven units is some 6.2 wide on an average.
    @ParameterizedTest
    @ValueSource(
            strings = {
                "scenarios/two-crops.toml",
                "scenarios/logged-bench.toml",
                "scenarios/hand-topped-bucket.toml",
                "scenarios/glasshouse-tomato-trough.toml",
                "scenarios/low-held-tomatoes.toml"
            })
    void a_name_and_what_is_done_do_not_lie_over_each_other(String scenario) {
        String svg = SeasonStrip.of(DrawRig.forecast(scenario)).svg();
        Matcher text =
                Pattern.compile(
                                "<text x=\"[\\d.]+\" y=\"([\\d.]+)\" class=\"(name|small end)\">"
                                        + "([^<]*)<")
                        .matcher(svg);
        Map<String, Integer> letters = new HashMap<>();
        int found = 0;
        while (text.find()) {
            letters.merge(text.group(1), text.group(3).length(), Integer::sum);
            found++;
        }
        assertThat(found).isPositive();
        assertThat(letters.values()).allMatch(count -> count * 6.2 <= 344);
    }

    // Ten weekends on each of four strips, one of them in the absence and a day of another.
    @Test
    void weekends_are_shaded() {
        assertThat(boxes("rest")).hasSize(4 * 8);
    }

    @Test
    void every_refill_has_its_line_and_the_advised_one_is_dashed() {
        long done = BENCH.svg().lines().filter(l -> l.endsWith("class=\"task\"/>")).count();
        long advised = BENCH.svg().lines().filter(l -> l.endsWith("class=\"advised\"/>")).count();
        assertThat(done).isEqualTo(6 + 2); // six refills, two harvests
        assertThat(advised).isEqualTo(1);
        assertThat(BENCH.finding())
                .contains(
                        "Reservoir shelf, to 26 L: 6 x refill (and 1 advised); ran dry from 9 Apr")
                .contains("Tray basil, to 70 mm: harvest; no harm.");
    }

    // One task stands for all pickings of a crop that grows again.
    @Test
    void every_picking_has_its_line() throws IOException {
        String text =
                Files.readString(Path.of("scenarios/calm-bench.toml"))
                        .replace("\"lettuce\"", "\"mizuna\"")
                        .replace("\"42 days\"", "\"70 days\"");
        Scenario scenario =
                ((Reading.Good) ScenarioReader.read("a.toml", new FilesInMemory(text))).scenario();
        Forecast forecast = Forecasts.of(scenario, 1);
        VesselId left = scenario.trays().get(0).id();
        long picked =
                forecast.trace().events().stream()
                        .filter(event -> event.kind() == Event.Kind.LEAVES_PICKED)
                        .filter(event -> event.vessel().equals(left))
                        .count();
        assertThat(picked).isGreaterThan(1);
        RigPicture.Drawing strip = SeasonStrip.of(forecast);
        long lines = strip.svg().lines().filter(l -> l.endsWith("class=\"task\"/>")).count();
        assertThat(lines).isGreaterThanOrEqualTo(picked);
        assertThat(strip.finding()).contains(picked + " x pick leaves");
    }

    @Test
    void harm_is_shown_where_it_happens() {
        List<double[]> harm = boxes("harm");
        assertThat(harm).hasSize(1);
        // Thu 9 Apr 18:25 is day 38.77.
        assertThat(harm.get(0)[0]).isCloseTo(8 + 344 * 38.77 / 70, within(0.1));
    }

    // The terms of a harm are told one after another, each kind once, and broken into lines that
    // fit.
    @Test
    void every_harm_of_a_vessel_is_told_and_none_is_cut() {
        RigPicture.Drawing trough =
                SeasonStrip.of(DrawRig.forecast("scenarios/outgrown-trough.toml"));
        Matcher text =
                Pattern.compile("<text x=\"8\" y=\"[\\d.]+\" class=\"harm\">([^<]*)<")
                        .matcher(trough.svg());
        StringBuilder told = new StringBuilder();
        while (text.find()) {
            assertThat(text.group(1).length() * 6.2).isLessThanOrEqualTo(344);
            told.append(text.group(1)).append(' ');
        }
        for (Warning warning :
                DrawRig.forecast("scenarios/outgrown-trough.toml").advice().warnings()) {
            assertThat(told.toString()).contains(Names.of(warning.kind()) + " from ");
        }
        assertThat(told).isNotEmpty();
    }
}
