package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import tideless.sim.Series;

class CurvesProperties {
    @Property
    void no_point_lies_further_from_the_thinned_line_than_the_tolerance(
            @ForAll @Size(min = 2, max = 60) double[] raw) {
        double[] values = new double[raw.length];
        for (int i = 0; i < raw.length; i++) {
            values[i] = Math.sin(raw[i]) + 0.02 * i;
        }
        Curves.Curve whole = Curves.Curve.hourly(Series.of(values), 1);
        Curves.Curve thin = whole.thinned(0.3);
        assertEquals(values[0], thin.value()[0]);
        assertEquals(values[values.length - 1], thin.value()[thin.value().length - 1]);
        int k = 0;
        for (int i = 0; i < values.length; i++) {
            while (k + 2 < thin.day().length && thin.day()[k + 1] < whole.day()[i]) {
                k++;
            }
            double share = (whole.day()[i] - thin.day()[k]) / (thin.day()[k + 1] - thin.day()[k]);
            double line = thin.value()[k] + share * (thin.value()[k + 1] - thin.value()[k]);
            assertThat(Math.abs(line - values[i])).isLessThanOrEqualTo(0.3 + 1e-9);
        }
    }
}
