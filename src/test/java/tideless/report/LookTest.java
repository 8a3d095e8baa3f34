package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Lines and shades can be told apart in grey and with any colour vision. */
class LookTest {
    // Machado, Oliveira and Fernandes (2009), severity 1.0; in linear light; from memory. Grey: the
    // luminance of sRGB (IEC 61966-2-1).
    private static final Map<String, double[][]> VISIONS = new LinkedHashMap<>();

    static {
        VISIONS.put("all", new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}});
        VISIONS.put(
                "no red",
                new double[][] {
                    {0.152286, 1.052583, -0.204868},
                    {0.114503, 0.786281, 0.099216},
                    {-0.003882, -0.048116, 1.051998}
                });
        VISIONS.put(
                "no green",
                new double[][] {
                    {0.367322, 0.860646, -0.227968},
                    {0.280085, 0.672501, 0.047413},
                    {-0.011820, 0.042940, 0.968881}
                });
        VISIONS.put(
                "no blue",
                new double[][] {
                    {1.255528, -0.076749, -0.178779},
                    {-0.078411, 0.930809, 0.147602},
                    {0.004733, 0.691367, 0.303900}
                });
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    /** Luminance of a colour over a ground, 0-1, as somebody of that vision sees it. */
    private static double luminance(Color colour, Color ground, double[][] vision) {
        double[] seen = new double[3];
        double[] rgb = {
            linear(over(colour.getRed(), ground.getRed(), colour.getAlpha())),
            linear(over(colour.getGreen(), ground.getGreen(), colour.getAlpha())),
            linear(over(colour.getBlue(), ground.getBlue(), colour.getAlpha()))
        };
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                seen[i] += vision[i][j] * rgb[j];
            }
            seen[i] = Math.max(0, Math.min(1, seen[i]));
        }
        return 0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2];
    }

    private static int over(int colour, int ground, int alpha) {
        return (colour * alpha + ground * (255 - alpha)) / 255;
    }

    private static double contrast(double one, double other) {
        return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    }

    // WCAG 2.2, 1.4.11: 3 to 1 for what is needed to understand a picture.
    @Test
    void every_line_stands_out_from_the_ground_with_any_vision() {
        List<Look.Line> lines =
                new java.util.ArrayList<>(
                        List.of(
                                Look.LEVEL,
                                Look.READ,
                                Look.ROOT_TIP,
                                Look.BORNE,
                                Look.CUP,
                                Look.VALVE,
                                Look.FULL,
                                Look.DEAD_VOLUME));
        lines.addAll(Look.TRAYS);
        VISIONS.forEach(
                (name, vision) -> {
                    double ground = luminance(Look.GROUND, Look.GROUND, vision);
                    for (Look.Line line : lines) {
                        double own = luminance(line.colour(), Look.GROUND, vision);
                        assertThat(contrast(own, ground))
                                .as(name + " " + line.colour())
                                .isGreaterThanOrEqualTo(3);
                    }
                });
    }

    @Test
    void no_two_trays_share_a_dash_or_a_marker() {
        Set<String> dashes = new HashSet<>();
        Set<Object> markers = new HashSet<>();
        for (int i = 0; i < Look.TRAYS.size(); i++) {
            dashes.add(
                    Arrays.toString(Look.TRAYS.get(i).stroke().getDashArray())
                            + Look.TRAYS.get(i).stroke().getLineWidth());
            markers.add(Panel.marker(i).getBounds2D() + " " + Panel.marker(i).getClass() + i);
        }
        assertThat(dashes).hasSameSizeAs(Look.TRAYS);
        assertThat(markers).hasSameSizeAs(Look.TRAYS);
    }

    // A step of a tenth is seen where two fields meet; found by looking.
    @Test
    void weekend_absence_and_harm_are_steps_of_grey() {
        VISIONS.forEach(
                (name, vision) -> {
                    double ground = luminance(Look.GROUND, Look.GROUND, vision);
                    double rest = luminance(Look.REST, Look.GROUND, vision);
                    double away = luminance(Look.AWAY, Look.GROUND, vision);
                    Color under = new Color((int) (255 - 0.3 * 145), 216, 208);
                    double harm = luminance(Look.HARM, under, vision);
                    assertThat(contrast(ground, rest)).as(name).isGreaterThan(1.08);
                    assertThat(contrast(rest, away)).as(name).isGreaterThan(1.15);
                    assertThat(contrast(away, harm)).as(name).isGreaterThan(1.15);
                });
    }
}
