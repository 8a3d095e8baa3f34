package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Unit;
import tideless.advice.Warning;

/** Rounded by hand. */
class NumbersTest {
    @ParameterizedTest
    @CsvSource({
        "0.0, 0.0",
        "0.004, 0.0",
        "0.04, 0.04",
        "0.094, 0.09",
        "0.096, 0.1",
        "7.25, 7.3",
        "19.94, 19.9",
        "19.96, 20",
        "38.4, 38"
    })
    void litres_are_rounded_as_a_can_is_read(double litres, String expected) {
        assertEquals(expected, Numbers.litres(litres));
    }

    @ParameterizedTest
    @CsvSource({
        "DAYS, 1.04, 1 day",
        "DAYS, 2.5, 2.5 days",
        "DAYS, 9.96, 10 days",
        "HOURS, 1.2, 1 hour",
        "HOURS, 36.4, 36 hours",
        "TIMES, 1, 1 time",
        "MS_PER_CM, 1.805, 1.81 mS/cm",
        "MMOL_PER_L, 0.054, 0.05 mmol/L",
        "MMOL_PER_L, 1.26, 1.3 mmol/L",
        "GRAMS, 9999, 9999 g",
        "GRAMS, 12345, 12.3 kg",
        "FRACTION, 0.051, 5 %",
        "PH, 6.04, pH 6.0",
        "MILLIMETRES, 40.6, 41 mm"
    })
    void a_figure_carries_its_unit(Unit unit, double value, String expected) {
        assertEquals(expected, Numbers.of(value, unit));
    }

    @Test
    void a_limit_says_on_which_side_it_is_left() {
        assertEquals("above 1.80 mS/cm", Numbers.limit(Measure.atMost(2, 1.8, Unit.MS_PER_CM)));
        assertEquals(
                "below 10 L",
                Numbers.limit(Measure.atLeast(2, 9.99, Unit.LITRES)).replace(".0", ""));
        assertEquals("", Numbers.limit(Measure.of(2, Unit.LITRES)));
    }

    @Test
    void machine_words_are_lower_case_with_hyphens_and_quantities_carry_units() {
        assertEquals("dried-out", MachineWords.of(Warning.Kind.DRIED_OUT));
        assertEquals("feed_ec_ms_per_cm", MachineWords.of(Quantity.FEED_EC));
        assertEquals("evaporated_share", MachineWords.of(Quantity.EVAPORATED_SHARE));
    }

    @Test
    void halves_are_rounded_away_from_zero() {
        assertEquals("77 L", Numbers.of(76.5, Unit.LITRES));
        assertEquals("78 L", Numbers.of(77.5, Unit.LITRES));
        assertEquals("0.13 mS/cm", Numbers.of(0.125, Unit.MS_PER_CM));
        assertEquals("1.2 L", Numbers.of(1.15, Unit.LITRES)); // of the digits, not of the bits
    }

    @Test
    void weights_beside_each_other_have_one_unit() {
        assertEquals("7.8 kg", Numbers.gramsBeside(7758, 10_356));
        assertEquals("10.4 kg", Numbers.gramsBeside(10_356, 7758));
        assertEquals("7758 g", Numbers.gramsBeside(7758, 9000));
        assertEquals("80 g", Numbers.gramsBeside(80, 10_356));
    }
}
