package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.util.FastMath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.solution.ElectricalConductivity.PpmScale;
import tideless.words.Numbers;

class ShownInTest {
    private static final ShownIn US = new ShownIn(true, PpmScale.PPM_500);

    // Worked by hand: 1 gal = 3.785 L, 1 in = 25.4 mm, F = 1.8 C + 32, 1 kg = 2.205 lb.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    21 L left; before you leave             | 5.5 gal left; before you leave
                    full: 38 L usable                       | full: 10.0 gal usable
                    shelf: 21 of 38 L usable, 3.0 L dead    | shelf: 5.5 of 10.0 gal usable, 0.8 gal dead
                    drain 0.5 L first                       | drain 17 fl oz first
                    level over the season 32 to 47 mm       | level over the season 1.3 to 1.9 in
                    lowest then 27 mm (tray basil)          | lowest then 1.1 in (tray basil)
                    from 28.2 degC, at 22 \u00b0C           | from 83 degF, at 72 degF
                    on average 1.1 K above               | on average 2.0 degF above
                    Feed: 1.70 mS/cm; pH 6.0                | Feed: 850 ppm-500; pH 6.0
                    from 1.26 to 1.56 mS/cm                 | from 630 to 780 ppm-500
                    its seat is 2 mm wide                   | its seat is 0.08 in wide
                    bears up to 4.00 mS/cm                  | bears up to 2000 ppm-500
                    4 plants on 670 cm2 have 167 each       | 4 plants on 104 in2 have 167 each
                    thirst 1.8 L/day                        | thirst 0.5 gal/day
                    12.5 kg in all                          | 27.6 lb in all
                    2 Mar to 12 Apr, 42 days                | 2 Mar to 12 Apr, 42 days
                    222 g a plant; 240 umol/m2/s; 0.20 m/s  | 222 g a plant; 240 umol/m2/s; 0.20 m/s
                    5 mL/min, 1.2 mmol/L, 8 mol/m2/day      | 5 mL/min, 1.2 mmol/L, 8 mol/m2/day
                    over 0.3 m2 of it                       | over 3.2 ft2 of it
                    """)
    void a_sentence_is_turned(String metric, String us) {
        assertEquals(us, US.told(metric.replace("\\u00b0", "\u00b0")));
    }

    @Test
    void each_of_both_can_be_asked_for_alone() {
        assertEquals("10.0 gal, 1.70 mS/cm", new ShownIn(true, null).told("38 L, 1.70 mS/cm"));
        assertEquals(
                "38 L, 1190 ppm-700",
                new ShownIn(false, PpmScale.PPM_700).told("38 L, 1.70 mS/cm"));
        assertEquals("38 L, 1.70 mS/cm", ShownIn.METRIC.told("38 L, 1.70 mS/cm"));
    }

    @Test
    void a_number_without_its_unit_is_that_of_a_column() {
        assertEquals("15.6", US.litres("59"));
        assertEquals("4.3", US.litres("16.4"));
        assertEquals("4.2-6.9", US.litres("16-26"));
        // Under a head of gallons nothing stands in ounces: half a litre is no 17 of them.
        assertEquals("0.13", US.litres("0.5"));
        assertEquals("0.3", US.litres("0.95"));
        assertEquals("0.1-0.6", US.litres("0.4-2.2"));
        assertEquals("0.05-0.21", US.litres("0.2-0.8"));
        assertEquals("", US.litres(""));
        assertEquals("59", ShownIn.METRIC.litres("59"));
    }

    /** What a picture's axis shows is what a sentence says of the same value. */
    @ParameterizedTest
    @CsvSource({
        "20, cm, 7.9, in",
        "45, mm, 1.8, in",
        "38, L, 10.0, gal",
        "1.8, L/day, 0.5, gal/day",
        "2.5, m, 8.2, ft",
        "10, kg, 22.0, lb",
        "28, degC, 82, degF",
        "1.6, mS/cm, 800, ppm-500",
        "240, umol/m2/s, 240, umol/m2/s"
    })
    void an_axis_is_turned_as_a_sentence_is(double value, String unit, String turned, String in) {
        String told = US.told(Numbers.label(value) + " " + unit);
        assertEquals(turned + " " + in, told);
        assertEquals(in, US.unitOf(unit));
        int decimals = turned.contains(".") ? turned.length() - turned.indexOf('.') - 1 : 0;
        assertThat(US.valueOf(value, unit))
                .isCloseTo(
                        Double.parseDouble(turned), within(0.5001 * FastMath.pow(10, -decimals)));
        assertEquals(value, ShownIn.METRIC.valueOf(value, unit));
        assertEquals(unit, ShownIn.METRIC.unitOf(unit));
    }

    @Test
    void of_a_page_only_what_is_read_is_turned() {
        String page =
                "<style>p{margin:2 mm}</style><p title=\"4 L\">4.0 L of it</p>"
                        + "<img src=\"data:;base64,4 L\" alt=\"holds 4.0 L\">";
        assertThat(US.page(page))
                .isEqualTo(
                        "<style>p{margin:2 mm}</style><p title=\"4 L\">1.1 gal of it</p>"
                                + "<img src=\"data:;base64,4 L\" alt=\"holds 1.1 gal\">");
    }
}
