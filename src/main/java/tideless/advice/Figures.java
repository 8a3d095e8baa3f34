package tideless.advice;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Figures as a grower reads them. Always with a point, whatever the machine's language. */
final class Figures {
    private static final DateTimeFormatter DATE =
            DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private Figures() {}

    static String date(LocalDateTime at) {
        return DATE.format(at);
    }

    static String litres(double m3) {
        double litres = m3 * 1000;
        return (litres < 20 ? one(litres) : whole(litres)) + " L";
    }

    static String days(double days) {
        return (days < 10 ? one(days) : whole(days)) + (one(days).equals("1.0") ? " day" : " days");
    }

    static String hours(double hours) {
        return whole(hours) + (whole(hours).equals("1") ? " hour" : " hours");
    }

    static String millimetres(double metres) {
        return whole(metres * 1000) + " mm";
    }

    static String ec(double msPerCm) {
        return two(msPerCm) + " mS/cm";
    }

    static String celsius(double degC) {
        return one(degC) + " degC";
    }

    static String grams(double grams) {
        return grams < 10_000 ? whole(grams) + " g" : one(grams / 1000) + " kg";
    }

    static String percent(double frac) {
        return whole(frac * 100) + " %";
    }

    static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    static String whole(double value) {
        return String.format(Locale.ROOT, "%.0f", value);
    }
}
