package tideless.report;

import java.math.BigDecimal;
import java.math.MathContext;
import org.apache.commons.math3.util.FastMath;

/** Numbers as text by their significant digits, the same in every locale. */
final class SignificantDigits {
    private static final double[] POWERS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13
    };
    private static final MathContext SIX = new MathContext(6);
    private static final MathContext TEN = new MathContext(10);

    private SignificantDigits() {}

    /**
     * Six significant digits without trailing zeros, for a file of numbers.
     *
     * @return empty when the value is not a finite number; with an exponent below 1e-7 and from
     *     1e15
     */
    static String six(double value) {
        if (!Double.isFinite(value)) {
            return "";
        }
        if (value == 0) {
            return "0";
        }
        double size = Math.abs(value);
        int exponent = (int) Math.floor(Math.log10(size));
        if (exponent < -7 || exponent > 14) {
            return new BigDecimal(value).round(SIX).stripTrailingZeros().toString();
        }
        // A hundred thousand of these are written in a run: BigDecimal would be the slowest part.
        long digits = scaled(size, exponent);
        if (digits >= 1_000_000) {
            digits = scaled(size, ++exponent);
        }
        StringBuilder text = new StringBuilder(16);
        if (value < 0) {
            text.append('-');
        }
        String all = Long.toString(digits);
        if (exponent >= 5) {
            return text.append(all).append("0".repeat(exponent - 5)).toString();
        }
        int end = all.length();
        while (end > 1 && all.charAt(end - 1) == '0') {
            end--;
        }
        if (exponent < 0) {
            return text.append("0.")
                    .append("0".repeat(-exponent - 1))
                    .append(all, 0, end)
                    .toString();
        }
        int whole = exponent + 1;
        text.append(all, 0, whole);
        if (end > whole) {
            text.append('.').append(all, whole, end);
        }
        return text.toString();
    }

    private static long scaled(double size, int exponent) {
        int shift = 5 - exponent;
        return FastMath.round(shift >= 0 ? size * POWERS[shift] : size / POWERS[-shift]);
    }

    /** Ten significant digits for JSON, the same on every Java; null when not finite. */
    static BigDecimal ten(double value) {
        if (!Double.isFinite(value)) {
            return null;
        }
        if (value == 0) {
            return BigDecimal.ZERO;
        }
        BigDecimal rounded = new BigDecimal(value).round(TEN).stripTrailingZeros();
        // 1000, not 1E+3: whole numbers of a household's size are read by people too.
        return rounded.scale() < 0 && rounded.scale() > -10 ? rounded.setScale(0) : rounded;
    }
}
