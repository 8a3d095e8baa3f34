package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class PicturesTest {
    private static Map<String, byte[]> files;

    @BeforeAll
    static void draw() throws Exception {
        files =
                ResultFiles.render(
                        MadeUpForecast.threeTrays(), ResultFiles.Wanted.ALL, Origins.UNKNOWN);
    }

    private static List<String> words(String svg) throws Exception {
        Element root =
                DocumentBuilderFactory.newDefaultInstance()
                        .newDocumentBuilder()
                        .parse(new ByteArrayInputStream(files.get(svg)))
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
                        "roots bear up to",
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
    void the_thirst_names_every_tray_at_its_line() throws Exception {
        assertThat(words("thirst.svg"))
                .contains("drunk by the plants (L a day)", "Lettuce", "Tomato", "fresh solution");
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
                        MadeUpForecast.threeTrays(), ResultFiles.Wanted.ALL, Origins.UNKNOWN);
        assertThat(again.keySet()).containsExactlyElementsOf(files.keySet());
        files.forEach((name, bytes) -> assertThat(again.get(name)).as(name).isEqualTo(bytes));
    }

    @Test
    void many_trays_go_on_more_than_one_page() throws Exception {
        assertThat(
                        Pictures.of(
                                        MadeUpForecast.of(20, "a", "b", "c", "d", "e", "f", "g"),
                                        List.of("a", "b", "c", "d", "e", "f", "g"),
                                        List.of("tub"))
                                .keySet())
                .contains("ec", "ec-2", "thirst", "thirst-2");
    }

    @Test
    void a_run_of_one_day_can_be_drawn() throws Exception {
        assertThat(
                        ResultFiles.render(
                                MadeUpForecast.of(1, "a"), ResultFiles.Wanted.ALL, Origins.UNKNOWN))
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
