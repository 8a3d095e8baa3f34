package tideless.words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tideless.advice.Measure;
import tideless.advice.Unit;

/** Figures as a grower reads them. Always with a point, whatever the machine's language. */
public final class Numbers {
    private Numbers() {}

    /**
     * Litres as a grower measures them: to 0.1 L, below that to a spoonful of 0.01 L, to whole
     * litres from 20 L; without the unit.
     */
    public static String litres(double litres) {
        if (Math.abs(litres) >= 0.005 && Math.abs(litres) < 0.095) {
            return two(litres);
        }
        return Math.abs(litres) >= 19.95 ? whole(litres) : one(litres);
    }

    /** As "2.5 days", without decimals from ten on. */
    public static String days(double days) {
        String number = days >= 9.95 ? whole(days) : one(days);
        number = number.endsWith(".0") ? number.substring(0, number.length() - 2) : number;
        return count(number, "day");
    }

    /** As "36 hours". */
    public static String hours(double hours) {
        return count(whole(hours), "hour");
    }

    /** As "3 times". */
    public static String times(double times) {
        return count(whole(times), "time");
    }

    private static String count(String number, String noun) {
        return number + " " + noun + (number.equals("1") ? "" : "s");
    }

    /** As "88 g", or as "12.5 kg" from ten kilograms. */
    public static String grams(double grams) {
        return grams < 10_000 ? whole(grams) + " g" : one(grams / 1000) + " kg";
    }

    /** The same in the unit of another that it stands beside, where it is not too little for it. */
    public static String gramsBeside(double grams, double other) {
        boolean inKg = Math.max(grams, other) >= 10_000 && grams >= 1_000;
        return inKg ? one(grams / 1000) + " kg" : grams(grams);
    }

    /** As "5 %". */
    public static String percent(double frac) {
        return whole(frac * 100) + " %";
    }

    /** A value in its unit, to the digits a grower's meter shows. */
    public static String of(double value, Unit unit) {
        return switch (unit) {
            case NONE -> one(value);
            case MILLIMETRES -> whole(value) + " mm";
            case SQUARE_CENTIMETRES -> whole(value) + " cm2";
            case LITRES -> litres(value) + " L";
            case MS_PER_CM -> two(value) + " mS/cm";
            case MMOL_PER_L -> (value < 1 ? two(value) : one(value)) + " mmol/L";
            case PH -> "pH " + one(value);
            case CELSIUS -> one(value) + " degC";
            case MG_PER_L -> one(value) + " mg/L";
            case HOURS -> hours(value);
            case DAYS -> days(value);
            case TIMES -> times(value);
            case GRAMS -> grams(value);
            case FRACTION -> percent(value);
            case M_PER_S -> two(value) + " m/s";
            case MOL_PER_M2_DAY -> one(value) + " mol/m2/day";
        };
    }

    /** What a value is held against, as "above 1.80 mS/cm" for one that is too high. */
    public static String limit(Measure measure) {
        return switch (measure.side()) {
            case AT_MOST -> "above " + of(measure.limit(), measure.unit());
            case AT_LEAST -> "below " + of(measure.limit(), measure.unit());
            case NONE -> "";
        };
    }

    /** At most two decimals, without trailing zeros: for a label. */
    public static String label(double value) {
        String text = two(value);
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
    }

    static String one(double value) {
        return rounded(value, 1);
    }

    static String two(double value) {
        return rounded(value, 2);
    }

    static String whole(double value) {
        return rounded(value, 0);
    }

    /** Halves away from zero, also in a browser, whose formats round them to even. */
    static String rounded(double value, int decimals) {
        return Double.isNaN(value) || Double.isInfinite(value)
                ? String.valueOf(value)
                : BigDecimal.valueOf(value)
                        .setScale(decimals, RoundingMode.HALF_UP)
                        .toPlainString();
    }
}
