package tideless.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tideless.scenario.ChangedScenario;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;

class RigPictureTest {
    private static final Forecast CALM = DrawRig.forecast("scenarios/calm-bench.toml");
    private static final Forecast BENCH = DrawRig.forecast("scenarios/science-room-bench.toml");

    static Stream<String> names() {
        return RigPicture.scenes(BENCH, 0.1).stream().map(RigPicture.Drawing::name);
    }

    private static Document xml(String svg) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        } catch (Exception e) {
            throw new AssertionError(e + "\n" + svg, e);
        }
    }

    private static Element drawn(Forecast forecast, String name) {
        return RigPicture.scenes(forecast, 0.1).stream()
                .filter(d -> d.name().equals(name))
                .map(d -> xml(d.svg()).getDocumentElement())
                .findFirst()
                .orElseThrow();
    }

    private static List<Element> of(Element picture, String kind) {
        NodeList all = picture.getElementsByTagName("*");
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            Element one = (Element) all.item(i);
            if (one.getAttribute("class").equals(kind)) {
                found.add(one);
            }
        }
        return found;
    }

    private static double[] ys(Element element) {
        String[] points = element.getAttribute("points").split("[ ,]");
        double[] ys = new double[points.length / 2];
        Arrays.setAll(ys, i -> Double.parseDouble(points[2 * i + 1]));
        return ys;
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    @Test
    void how_many_trays_are_alike_stands_clear_of_the_names_below() {
        Element picture = drawn(CALM, "rig-day-one");
        double count = number(labelled(picture, "small", "2 x"), "y");
        double name = number(labelled(picture, "text", "shelf:"), "y");
        assertThat(name - count).isGreaterThanOrEqualTo(12);
    }

    private static Element labelled(Element picture, String kind, String begins) {
        return of(picture, kind).stream()
                .filter(label -> label.getTextContent().startsWith(begins))
                .findFirst()
                .orElseThrow();
    }

    /** The first tray's section: its box, and heights over its floor as shares of its depth. */
    private static double share(Element tray, double y) {
        double[] wall = ys(of(tray, "wall").get(0));
        return (wall[1] - y) / (wall[1] - wall[0]);
    }

    // Calm bench: depth 80 mm, level and setting 45 mm, cups 40 mm; drawn to 0.01 unit in 92.
    @Test
    void heights_of_a_tray_are_to_scale() {
        Element picture = drawn(CALM, "rig-day-one");
        Element tray = of(picture, "tray").get(0);
        assertThat(share(tray, number(of(tray, "surface").get(0), "y1")))
                .isCloseTo(45.0 / 80, within(3e-4));
        double[] cup = ys(of(tray, "cup").get(0));
        assertThat(share(tray, cup[1])).isCloseTo(40.0 / 80, within(3e-4));
        assertThat(share(tray, number(of(picture, "setting").get(0), "y1")))
                .isCloseTo(45.0 / 80, within(3e-4));
        double[] wall = ys(of(tray, "wall").get(0));
        Element overflow = of(tray, "wall").get(1);
        assertThat(share(tray, number(overflow, "y2"))).isCloseTo(70.0 / 80, within(3e-4));
        // The bar is as long as it says: 50 mm of a depth of 80 mm.
        String[] bar = of(picture, "measure").get(1).getAttribute("points").split("[ ,]");
        double length = Double.parseDouble(bar[4]) - Double.parseDouble(bar[0]);
        assertThat(length / (wall[1] - wall[0])).isCloseTo(50.0 / 80, within(3e-4));
    }

    // Reservoir 27 cm full in 30 cm, outlet 2 cm, floor 60 cm above the bench.
    @Test
    void the_reservoir_stands_at_its_height_with_its_dead_part() {
        Element picture = drawn(CALM, "rig-day-one");
        double[] wall = ys(of(picture, "wall").get(0));
        double unitsPerM = (wall[1] - wall[0]) / 0.30;
        double bench = number(of(picture, "bench").get(0), "y1");
        assertThat((bench - wall[1]) / unitsPerM).isCloseTo(0.60, within(1e-3));
        double[] water = ys(of(picture, "water").get(0));
        assertThat((water[0] - water[2]) / unitsPerM).isCloseTo(0.27, within(2e-3));
        double[] dead = ys(of(picture, "dead").get(0));
        assertThat((dead[0] - dead[2]) / unitsPerM).isCloseTo(0.02, within(1e-3));
    }

    @Test
    void equal_trays_are_drawn_once_and_unlike_ones_each() {
        assertThat(of(drawn(CALM, "rig-day-one"), "tray")).hasSize(1);
        assertThat(of(drawn(BENCH, "rig-day-one"), "tray")).hasSize(3);
    }

    // Pak choi is harvested on 1 Apr, the worst hour is on 13 Apr.
    @Test
    void a_harvested_tray_fades_and_has_no_plants() {
        Element picture = drawn(BENCH, "rig-worst");
        List<Element> faded = of(picture, "tray faded");
        assertThat(faded).hasSize(1);
        assertThat(of(picture, "strong").stream().map(Element::getTextContent))
                .anyMatch(head -> head.endsWith(": empty"));
        assertThat(of(faded.get(0), "leaf")).isEmpty();
        assertThat(of(faded.get(0), "wet-root")).isEmpty();
        assertThat(of(of(picture, "tray").get(0), "leaf")).isNotEmpty();
    }

    // The basil stands at 28 mm below cups at 40 mm: roots in air down to it, in water below it.
    @Test
    void roots_change_their_line_at_the_surface() {
        Element tray = of(drawn(BENCH, "rig-worst"), "tray").get(0);
        double surface = number(of(tray, "surface").get(0), "y1");
        assertThat(number(of(tray, "air-root").get(0), "y2")).isCloseTo(surface, within(0.02));
        assertThat(number(of(tray, "wet-root").get(0), "y1")).isCloseTo(surface, within(0.02));
    }

    @Test
    void a_cup_that_hangs_too_high_is_seen_and_told() {
        Reading.Good wrong =
                (Reading.Good)
                        ChangedScenario.read(
                                Path.of("scenarios/calm-bench.toml"),
                                List.of(new ChangedScenario.Change("tray.*.cup_bottom", "6.5 cm")));
        RigPicture.Drawing first = RigPicture.scenes(Forecasts.of(wrong.scenario(), 1), 0.1).get(0);
        assertThat(first.finding()).contains("20 mm below the underside of the cups");
        Element tray = of(xml(first.svg()).getDocumentElement(), "tray").get(0);
        assertThat(ys(of(tray, "cup").get(0))[1])
                .isLessThan(number(of(tray, "surface").get(0), "y1") - 15);
    }

    private static Element at(RigPicture picture, int tray, int hour) {
        return xml(picture.at(tray, hour).svg()).getDocumentElement();
    }

    // Trays of the bench: basil, pak choi, tomato.
    @Test
    void at_any_hour_the_whole_rig_and_one_tray_are_drawn_as_in_a_scene() {
        RigPicture bench = RigPicture.of(BENCH.trace());
        Element first = at(bench, 2, 0);
        assertThat(of(first, "tray")).hasSize(1);
        assertThat(of(first, "lamp")).hasSize(3);
        assertThat(first.getElementsByTagName("desc").item(0).getTextContent())
                .contains("Reservoir shelf: ", "Tray tomato (dwarf-tomato): ")
                .doesNotContain("basil");
        Element scene = drawn(BENCH, "rig-day-one");
        assertThat(share(of(first, "tray").get(0), number(of(first, "surface").get(0), "y1")))
                .isCloseTo(
                        share(of(scene, "tray").get(2), number(of(scene, "surface").get(2), "y1")),
                        within(3e-4));
        assertThat(first.getElementsByTagName("style").getLength()).isZero();
        assertThat(scene.getElementsByTagName("style").getLength()).isEqualTo(1);
        for (int hour = 1; hour < BENCH.trace().hours(); hour += 97) {
            assertThat(at(bench, 2, hour).getAttribute("viewBox"))
                    .isEqualTo(first.getAttribute("viewBox"));
        }
    }

    // The basil's feed of 1.6 mS/cm piles up to more than it bears (4.3) on the evening before 13
    // Apr.
    @Test
    void what_is_saltier_than_the_crop_bears_is_shaded_so() {
        RigPicture bench = RigPicture.of(BENCH.trace());
        Element first = of(at(bench, 0, 0), "tray").get(0);
        assertThat(salt(of(first, "water").get(0))).isEqualTo("within");
        Element evening = at(bench, 0, 24 * 42 - 4);
        assertThat(BENCH.trace().trays().get(0).ecMsPerCm().at(24 * 42 - 4)).isBetween(4.3, 5.6);
        assertThat(salt(of(of(evening, "tray").get(0), "water").get(0))).isEqualTo("high");
    }

    private static String salt(Element water) {
        return water.getAttribute("data-ec");
    }

    @ParameterizedTest
    @MethodSource("names")
    void a_picture_says_what_it_is_and_finds(String name) {
        Element picture = drawn(BENCH, name);
        assertThat(picture.getAttribute("role")).isEqualTo("img");
        for (String id : picture.getAttribute("aria-labelledby").split(" ")) {
            assertThat(count(picture.getElementsByTagName("*"), id)).isEqualTo(1);
        }
        assertThat(picture.getElementsByTagName("desc").item(0).getTextContent())
                .contains("Reservoir shelf: ", "Tray basil: ", "Tray tomato (dwarf-tomato): ");
        assertThat(picture.getAttribute("viewBox"))
                .isEqualTo(drawn(BENCH, "rig-day-one").getAttribute("viewBox"));
    }

    private static long count(NodeList all, String id) {
        long found = 0;
        for (int i = 0; i < all.getLength(); i++) {
            found += ((Element) all.item(i)).getAttribute("id").equals(id) ? 1 : 0;
        }
        return found;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "hand-topped-bucket",
                "sealed-lettuce-tank",
                "outgrown-trough",
                "low-held-trays"
            })
    void every_kind_of_rig_stays_within_its_picture(String scenario) {
        for (RigPicture.Drawing drawing :
                RigPicture.scenes(DrawRig.forecast("scenarios/" + scenario + ".toml"), 0.1)) {
            Element picture = xml(drawing.svg()).getDocumentElement();
            double height = Double.parseDouble(picture.getAttribute("viewBox").split(" ")[3]);
            for (String kind : List.of("wall", "water", "cup", "leaf", "deck")) {
                for (Element one : of(picture, kind)) {
                    if (!one.getAttribute("points").isEmpty()) {
                        assertThat(Arrays.stream(ys(one))).allMatch(y -> y >= 0 && y <= height);
                    }
                }
            }
        }
    }

    @Test
    void names_cannot_break_out_of_the_text() {
        Svg svg = new Svg();
        svg.words("text", "<script>&\"\u0007\uD800", "class", "\"><b>");
        assertThat(svg.toString())
                .isEqualTo(
                        "<text class=\"&quot;&gt;&lt;b&gt;\">&lt;script&gt;&amp;&quot;"
                                + "\uFFFD\uFFFD</text>\n");
    }

    // Twelve unlike trays under three reservoirs of one height: heights do not lie over each
    // other, and nothing stands beyond the picture's 340 units.
    @Test
    void a_large_rig_stays_within_the_picture() {
        StringBuilder rig =
                new StringBuilder(
                        "title = \"Many\"\nstart = 2026-03-02\nlength = \"7 days\"\n"
                                + "[climate]\nkind = \"room\"\nday_temperature = \"22 degC\"\n"
                                + "[lamp]\nppfd = \"200 umol/m2/s\"\n"
                                + "[feed]\nrecipe = \"hoagland-2\"\nec = \"1.6 mS/cm\"\n");
        for (String tank : List.of("a", "b", "c")) {
            rig.append("[reservoir." + tank + "]\nvolume = \"40 L\"\ndepth = \"30 cm\"\n");
            rig.append("floor_above_bench = \"60 cm\"\n");
            for (int i = 1; i <= 4; i++) {
                rig.append("[tray." + tank + i + "]\nlength = \"60 cm\"\nwidth = \"35 cm\"\n");
                rig.append("depth = \"8 cm\"\ncup_bottom = \"4 cm\"\ncrop = \"lettuce\"\n");
                rig.append("plants = " + (3 + rig.length() % 97) + "\n");
                rig.append("[tray." + tank + i + ".valve]\nfrom = \"" + tank + "\"\n");
                rig.append("setting = \"4.5 cm\"\n");
            }
        }
        Reading.Good read =
                (Reading.Good) ScenarioReader.read("many.toml", new FilesInMemory(rig.toString()));
        String svg = RigPicture.scenes(Forecasts.of(read.scenario(), 1), 0.1).get(0).svg();
        Matcher height = Pattern.compile("<text x=\"([\\d.]+)\"[^>]*>600 mm<").matcher(svg);
        double before = Double.NEGATIVE_INFINITY;
        while (height.find()) {
            double at = Double.parseDouble(height.group(1));
            assertThat(at - before).isGreaterThan(6 * 5.6); // six letters
            before = at;
        }
        assertThat(before).isPositive();
        Matcher box =
                Pattern.compile("<rect x=\"([\\d.]+)\" y=\"[\\d.]+\" width=\"([\\d.]+)\"")
                        .matcher(svg);
        int lamps = 0;
        while (box.find()) {
            assertThat(Double.parseDouble(box.group(1)) + Double.parseDouble(box.group(2)))
                    .isLessThanOrEqualTo(340);
            lamps++;
        }
        assertThat(lamps).isGreaterThan(10);
    }

    // A bold letter of twelve units is some seven wide on an average; 340 wide, 10 from the edges.
    @Test
    void the_names_of_many_trays_alike_are_broken_into_lines() throws IOException {
        String text = Files.readString(Path.of("scenarios/lessons/lean-feed.toml"));
        int tray = text.indexOf("[tray.");
        int visits = text.indexOf("[visits]");
        String one = text.substring(tray, visits);
        StringBuilder rig = new StringBuilder(text.substring(0, tray) + text.substring(visits));
        rig.append('\n');
        for (int i = 1; i <= 12; i++) {
            rig.append(one.replace("tray.lettuce", "tray.a-long-name-" + i)).append('\n');
        }
        Reading.Good read =
                (Reading.Good) ScenarioReader.read("many.toml", new FilesInMemory(rig.toString()));
        for (RigPicture.Drawing drawing :
                RigPicture.scenes(Forecasts.of(read.scenario(), 1), 0.1)) {
            Matcher name = Pattern.compile("class=\"strong\">([^<]*)<").matcher(drawing.svg());
            StringBuilder told = new StringBuilder();
            while (name.find()) {
                assertThat(name.group(1).length() * 7).isLessThanOrEqualTo(340 - 2 * 10 + 7);
                told.append(name.group(1)).append(' ');
            }
            assertThat(told).contains("a-long-name-1, a-long-name-2", "(lettuce)");
        }
    }

    // 10 cm, or 4 in (101.6 mm), and half of it for a shallow tray.
    @Test
    void the_bar_of_the_scale_is_round_in_inches_too() {
        String inches = RigPicture.scenes(CALM, 0.1016).get(0).svg();
        assertThat(inches).containsPattern(">(102|51) mm<").doesNotContainPattern(">(100|50) mm<");
        assertThat(RigPicture.scenes(CALM, 0.1).get(0).svg()).containsPattern(">(100|50) mm<");
    }
}
