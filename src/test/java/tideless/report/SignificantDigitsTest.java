package tideless.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SignificantDigitsTest {
    // Rounded by hand.
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0.0, 0",
        "1, 1",
        "-1.5, -1.5",
        "1234567, 1234570",
        "999999.7, 1000000",
        "0.000123456789, 0.000123457",
        "0.00099999999, 0.001",
        "21.3, 21.3",
        "100, 100",
        "99.99996, 100",
        "1e-12, 1E-12",
        "NaN, ''",
        "Infinity, ''"
    })
    void six_digits_read_like_a_number(double value, String expected) {
        assertEquals(expected, SignificantDigits.six(value));
    }

    @Test
    void ten_digits_have_no_number_for_not_a_number() {
        assertNull(SignificantDigits.ten(Double.NaN));
        assertEquals("1000", SignificantDigits.ten(1000).toString());
        assertEquals("0.3333333333", SignificantDigits.ten(1 / 3.0).toString());
    }

    @Test
    void six_digits_agree_with_decimal_arithmetic() {
        double value = 3.7e-7;
        for (int i = 0; i < 4000; i++) {
            value *= 1.0113;
            BigDecimal exact = new BigDecimal(value).round(new MathContext(6));
            BigDecimal ours = new BigDecimal(SignificantDigits.six(value));
            // Half-way cases may fall to either side: the scaling rounds once in binary.
            assertEquals(exact.doubleValue(), ours.doubleValue(), 1.0000001e-5 * value * 0.1);
        }
    }
}
