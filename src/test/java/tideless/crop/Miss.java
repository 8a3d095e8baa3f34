package tideless.crop;

import java.util.Locale;

/**
 * Why a row of {@link Emergence} is missed. What runs show is run for the text, so that its figures
 * move with the model, and what the reason stands or falls by is held beside it.
 *
 * @param id of the row
 * @param why as it stands on the page
 * @param holds whether runs show what the text claims of them; true where it claims nothing of runs
 */
record Miss(String id, String why, boolean holds) {
    /** What rests on sources alone. */
    static Miss of(String id, String why, Object... values) {
        return new Miss(id, text(why, values), true);
    }

    static Miss shown(String id, boolean holds, String why, Object... values) {
        return new Miss(id, text(why, values), holds);
    }

    static Emergence.Row row(String id) {
        return Emergence.rows().stream()
                .filter(row -> row.id().equals(id))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("no row " + id));
    }

    static boolean within(Emergence.Row row, double value) {
        return row.low() <= value && value <= row.high();
    }

    /** How far outside its band, %, in words. */
    static String off(String id) {
        Emergence.Row row = row(id);
        return row.found() < row.low()
                ? text("%s short of the band", percent(1 - row.found() / row.low()))
                : text("%s beyond the band", percent(row.found() / row.high() - 1));
    }

    private static String percent(double frac) {
        return frac < 0.0095 ? text("%.1f %%", 100 * frac) : text("%.0f %%", 100 * frac);
    }

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
