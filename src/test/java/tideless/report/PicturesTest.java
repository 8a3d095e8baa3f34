package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import tideless.drawing.DaysOff;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.ElectricalConductivity.PpmScale;
import tideless.study.Forecast;
import tideless.study.Forecasts;

class PicturesTest {
    private static Map<String, byte[]> files;

    @BeforeAll
    static void draw() throws Exception {
        files =
                ResultFiles.render(
                        MadeUpForecast.threeTrays(),
                        ResultFiles.Wanted.ALL,
                        Origins.UNKNOWN,
                        ShownIn.METRIC);
    }

    private static List<String> words(String svg) throws Exception {
        return words(files.get(svg));
    }

    private static List<String> words(byte[] svg) throws Exception {
        Element root =
                DocumentBuilderFactory.newDefaultInstance()
                        .newDocumentBuilder()
                        .parse(new ByteArrayInputStream(svg))
                        .getDocumentElement();
        assertEquals("svg", root.getTagName());
        List<String> words = new ArrayList<>();
        NodeList texts = root.getElementsByTagName("text");
        for (int i = 0; i < texts.getLength(); i++) {
            words.add(texts.item(i).getTextContent().strip());
        }
        return words;
    }

    @Test
    void each_picture_comes_as_png_and_as_svg_and_the_rig_as_svg_alone() {
        assertThat(files.keySet().stream().filter(n -> n.endsWith("g")))
                .containsExactly(
                        "rig-day-one.svg",
                        "rig-worst.svg",
                        "rig-end.svg",
                        "reservoir-wall-tub.png",
                        "reservoir-wall-tub.svg",
                        "level-lettuce.png",
                        "level-lettuce.svg",
                        "level-basilikum-gross.png",
                        "level-basilikum-gross.svg",
                        "level-tomato.png",
                        "level-tomato.svg",
                        "ec.png",
                        "ec.svg",
                        "ph.png",
                        "ph.svg",
                        "thirst.png",
                        "thirst.svg");
    }

    @Test
    void a_png_has_the_pixels_of_an_a5_page_and_is_not_blank() throws Exception {
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            if (file.getKey().endsWith(".png")) {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(file.getValue()));
                assertEquals(1654, image.getWidth());
                assertEquals(1165, image.getHeight());
                long inked = 0;
                for (int y = 0; y < 1165; y++) {
                    for (int x = 0; x < 1654; x++) {
                        inked += (image.getRGB(x, y) & 0xffffff) == 0xffffff ? 0 : 1;
                    }
                }
                // Text, axes and curves of a line picture; a share found by looking at them.
                assertThat(inked).as(file.getKey()).isGreaterThan(1654 * 1165 / 100);
            }
        }
    }

    @Test
    void nothing_touches_the_edge_of_the_page() throws Exception {
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            if (file.getKey().endsWith(".png")) {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(file.getValue()));
                for (int y = 0; y < 1165; y++) {
                    assertEquals(0xffffff, image.getRGB(0, y) & 0xffffff, file.getKey());
                    assertEquals(0xffffff, image.getRGB(1653, y) & 0xffffff, file.getKey());
                }
            }
        }
    }

    @Test
    void the_level_names_its_axes_lines_due_dates_and_bad_stretches() throws Exception {
        assertThat(words("level-lettuce.svg"))
                .contains(
                        "Tray Lettuce: level and roots",
                        "height above the tray floor (mm)",
                        "day and month, 2026",
                        "14 Sep",
                        "cup at 45 mm",
                        "valve at 30 mm",
                        "root tips",
                        "roots drown above",
                        "level",
                        "refill",
                        "flush",
                        "harvest",
                        "stranded",
                        "drowned");
    }

    @Test
    void the_reservoir_names_its_full_and_its_dead_volume() throws Exception {
        assertThat(words("reservoir-wall-tub.svg"))
                .contains("solution in the reservoir (L)", "full, 47 L", "dead, 3.6 L", "refill");
    }

    @Test
    void the_strength_has_a_named_band_for_each_tray() throws Exception {
        assertThat(words("ec.svg"))
                .contains(
                        "EC at 25 \u00b0C (mS/cm)",
                        "Lettuce",
                        "band 1 to 1.8",
                        "Basilikum gro\u00df",
                        "band 1.2 to 2.2",
                        "Tomato",
                        "band 1.4 to 2.6");
    }

    @Test
    void the_ph_has_its_band_and_how_high_and_low_it_may_be() throws Exception {
        assertThat(words("ph.svg"))
                .contains("Lettuce", "band 5.5 to 6.5", "may be as high", "may be as low");
        Picture calm = pictures(shipped("calm-bench")).get("ph");
        assertThat(calm.finding())
                .matches(
                        "pH while plants live: left, right \\d\\.\\d to \\d\\.\\d \\(band 5\\.6 to"
                                + " 6\\.2\\)\\. Dotted: .*");
    }

    @Test
    void the_thirst_names_every_tray_at_its_line() throws Exception {
        assertThat(words("thirst.svg"))
                .contains(
                        "drunk by the plants of a tray (L a day)", "Lettuce", "Tomato", "harvest");
    }

    private static Forecast shipped(String name) {
        return Forecasts.of(
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios", name + ".toml")))
                        .scenario(),
                1);
    }

    private static Map<String, Picture> pictures(Forecast forecast) {
        List<String> trays =
                forecast.trace().trays().stream().map(run -> run.tray().name()).toList();
        List<String> reservoirs =
                forecast.trace().reservoirs().stream().map(r -> r.reservoir().name()).toList();
        return Pictures.of(forecast, trays, reservoirs, ShownIn.METRIC);
    }

    private static List<String> wordsOf(Picture picture) throws Exception {
        return words(Images.svg(picture));
    }

    private static Row row(Picture picture, String name) {
        return picture.panels().get(0).rows().stream()
                .filter(row -> row.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void trays_whose_curves_lie_on_one_another_are_drawn_once() throws Exception {
        Map<String, Picture> calm = pictures(shipped("calm-bench"));
        assertThat(calm.keySet())
                .containsExactly("reservoir-shelf", "level-left", "ec", "ph", "thirst");
        assertThat(calm.get("level-left").title())
                .isEqualTo("Trays left, right (lettuce): level and roots");
        assertThat(calm.get("ec").panels()).hasSize(1);
        assertThat(wordsOf(calm.get("thirst"))).contains("left, right, each");
    }

    // Two trays hung at two heights over one solution: the rig is another, strength and thirst are
    // not.
    @Test
    void equal_strength_and_thirst_of_unlike_trays_are_drawn_once_and_harm_of_all_in_one_bar()
            throws Exception {
        Map<String, Picture> held = pictures(shipped("low-held-tomatoes"));
        assertThat(held.keySet())
                .containsExactly(
                        "reservoir-top", "level-upper", "level-lower", "ec", "ph", "thirst");
        assertThat(held.get("ec").panels()).hasSize(1);
        assertThat(wordsOf(held.get("ec"))).contains("upper, lower");
        assertThat(held.get("ec").finding())
                .startsWith("EC while plants live: upper, lower 1.03 to");
        assertThat(wordsOf(held.get("thirst"))).contains("upper, lower, each");
        assertThat(row(held.get("thirst"), "low light").spans()).hasSize(1);
    }

    @Test
    void trays_share_one_scale_and_what_is_done_keeps_its_date() throws Exception {
        Map<String, Picture> bench = pictures(shipped("science-room-bench"));
        List<String> levels = List.of("level-basil", "level-pak-choi", "level-tomato");
        assertThat(levels)
                .extracting(name -> bench.get(name).panels().get(0).reaches())
                .containsOnly(bench.get("level-basil").panels().get(0).reaches());
        assertThat(bench.get("ec").panels())
                .hasSize(3)
                .extracting(Panel::reaches)
                .containsOnly(bench.get("ec").panels().get(0).reaches());
        // Seven, one of them between two others too near for a date beside it; one is advised.
        assertThat(wordsOf(bench.get("reservoir-shelf")))
                .contains("17 Mar", "24 Mar", "30 Mar", "2 Apr", "13 Apr", "21 Apr", "7 May");
        assertThat(row(bench.get("reservoir-shelf"), "refill").marks())
                .filteredOn(mark -> !mark.done())
                .hasSize(1);
        assertThat(wordsOf(bench.get("ec"))).contains("harvest, clean", "empty");
        assertThat(wordsOf(bench.get("thirst"))).doesNotContain("refill", "sow next");
    }

    @Test
    void harm_is_shown_where_it_happens_and_days_off_are_shaded() throws Exception {
        Picture shelf = pictures(shipped("science-room-bench")).get("reservoir-shelf");
        double[] dry = row(shelf, "ran dry").spans().get(0);
        assertThat(dry[0]).isBetween(38.5, 39.0); // 9 April, afternoon
        assertThat(dry[1]).isBetween(42.2, 42.6); // filled on 13 April at eight
        DaysOff off = shelf.panels().get(0).off();
        assertThat(off.absences()).containsExactly(new double[] {32, 42});
        assertThat(off.weekends()).hasSize(8).contains(new double[] {5, 7});
        assertThat(wordsOf(shelf)).contains("nobody comes", "weekend", "ran dry", "9 Apr");
    }

    // Of a film no root drinks, though it lies in it.
    @Test
    void roots_that_a_film_does_not_feed_are_shown_as_stranded() throws Exception {
        Picture trough = pictures(shipped("outgrown-trough")).get("level-trough");
        List<double[]> spans = row(trough, "stranded").spans();
        assertThat(spans.get(0)[0]).isBetween(27.6, 27.8); // 22 March, 17:20
    }

    @Test
    void axes_and_names_follow_the_units_that_were_asked_for() throws Exception {
        ShownIn us = new ShownIn(true, PpmScale.PPM_500);
        Forecast bench = shipped("calm-bench");
        Map<String, Picture> pictures =
                Pictures.of(bench, List.of("left", "right"), List.of("shelf"), us);
        assertThat(wordsOf(pictures.get("reservoir-shelf")))
                .contains("solution in the reservoir (gal)", "full, 10.8 gal", "dead, 0.8 gal");
        assertThat(wordsOf(pictures.get("level-left")))
                .contains("height above the tray floor (in)", "cup at 1.6 in", "valve at 1.8 in");
        assertThat(wordsOf(pictures.get("ec")))
                .contains("EC at 77 \u00b0F (ppm-500)", "band 400 to 1250");
        assertThat(wordsOf(pictures.get("thirst")))
                .contains("drunk by the plants of a tray (gal a day)");
    }

    @Test
    void dates_that_do_not_fit_are_counted() throws Exception {
        Map<String, Picture> trough = pictures(shipped("hand-topped-bucket"));
        assertThat(wordsOf(trough.get("level-bucket"))).contains("59 times, 1 Jun to 2 Aug");
    }

    @Test
    void a_dry_tray_does_not_squash_the_band() throws Exception {
        Map<String, Picture> trough = pictures(shipped("outgrown-trough"));
        assertThat(wordsOf(trough.get("ec"))).contains("trough, up to 20");
    }

    @Test
    void an_svg_ends_its_lines_with_line_feeds_and_says_its_size() {
        String svg = new String(files.get("ec.svg"), StandardCharsets.UTF_8);
        assertThat(svg).doesNotContain("\r").contains("width=\"210mm\"").contains("viewBox=\"0 0 ");
    }

    @Test
    void the_same_forecast_gives_the_same_pictures() throws Exception {
        Map<String, byte[]> again =
                ResultFiles.render(
                        MadeUpForecast.threeTrays(),
                        ResultFiles.Wanted.ALL,
                        Origins.UNKNOWN,
                        ShownIn.METRIC);
        assertThat(again.keySet()).containsExactlyElementsOf(files.keySet());
        files.forEach((name, bytes) -> assertThat(again.get(name)).as(name).isEqualTo(bytes));
    }

    @Test
    void many_trays_alike_are_counted_where_their_names_have_no_room() throws Exception {
        String text = Files.readString(Path.of("scenarios/lessons/lean-feed.toml"));
        int tray = text.indexOf("[tray.");
        int visits = text.indexOf("[visits]");
        StringBuilder rig =
                new StringBuilder(text.substring(0, tray) + text.substring(visits)).append('\n');
        for (int i = 1; i <= 5; i++) {
            String one = text.substring(tray, visits);
            rig.append(one.replace("tray.lettuce", "tray.bench-by-the-window-" + i));
        }
        Reading.Good read =
                (Reading.Good) ScenarioReader.read("five.toml", new FilesInMemory(rig.toString()));
        Map<String, Picture> five = pictures(Forecasts.of(read.scenario(), 1));
        assertThat(wordsOf(five.get("ec"))).contains("5 trays");
        assertThat(wordsOf(five.get("ph"))).contains("5 trays");
        assertThat(wordsOf(five.get("thirst"))).contains("5 trays, each");
    }

    @Test
    void many_trays_go_on_more_than_one_page() throws Exception {
        assertThat(
                        Pictures.of(
                                        MadeUpForecast.of(20, "a", "b", "c", "d", "e", "f", "g"),
                                        List.of("a", "b", "c", "d", "e", "f", "g"),
                                        List.of("tub"),
                                        ShownIn.METRIC)
                                .keySet())
                .contains("ec", "ec-2", "ph", "ph-2", "thirst", "thirst-2");
    }

    @Test
    void a_run_of_one_day_can_be_drawn() throws Exception {
        assertThat(
                        ResultFiles.render(
                                MadeUpForecast.of(1, "a"),
                                ResultFiles.Wanted.ALL,
                                Origins.UNKNOWN,
                                ShownIn.METRIC))
                .containsKey("ec.svg");
    }

    @Test
    void names_at_line_ends_are_spread_within_the_panel() {
        assertArrayEquals(
                new double[] {10, 20, 30},
                Picture.apart(new double[] {1, 2, 30}, 10, 10, 100),
                1e-12);
        assertArrayEquals(
                new double[] {80, 90, 100},
                Picture.apart(new double[] {95, 96, 130}, 10, 10, 100),
                1e-12);
    }
}
