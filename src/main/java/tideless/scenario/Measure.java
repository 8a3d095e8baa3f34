package tideless.scenario;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.util.FastMath;

/**
 * A number with its unit, as "1.2 mS/cm", read by closed tables of spellings.
 *
 * <p>Written small on purpose: general unit parsers read "1e-3 mol" as 1 mol or "a/b/c" as a*c/b
 * and say nothing; here what is not in the table is a fault.
 *
 * @param value in the records' unit
 * @param number as written, without its unit
 * @param table the table its unit stands in; null for a plain number
 */
record Measure(double value, double number, UnitTable table) {
    private static final Pattern SHAPE =
            Pattern.compile(
                    "([+-]?(?:\\d{1,15}(?:\\.\\d{0,40})?|\\.\\d{1,40})(?:[eE][+-]?\\d{1,2})?)(.*)");
    private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d+.*");
    private static final Pattern ODD =
            Pattern.compile("[+-]?(?:nan|inf|infinity).*", Pattern.CASE_INSENSITIVE);
    private static final Pattern SPACES = Pattern.compile("[\\s\\u00a0]+");
    private static final int LONGEST = 90;

    /**
     * Reads a text by the first of the tables that knows its unit; with no table, or for {@code
     * plainToo}, a number without a unit.
     */
    static Read<Measure> of(String text, List<UnitTable> tables, boolean plainToo) {
        String tidy = SPACES.matcher(text.replace('\u03bc', '\u00b5')).replaceAll(" ").strip();
        if (tidy.length() > LONGEST) {
            return Read.faulty();
        }
        if (COMMA.matcher(tidy).matches()) {
            return Read.faulty(
                    "Write the decimal sign as a point and leave out group signs, as in \"1.5\".");
        }
        if (ODD.matcher(tidy).matches()) {
            return Read.faulty("Write an ordinary number.");
        }
        Matcher shape = SHAPE.matcher(tidy);
        if (!shape.matches()) {
            return Read.faulty();
        }
        double number = Double.parseDouble(shape.group(1));
        if (!(Math.abs(number) <= 1e30) || (number != 0 && Math.abs(number) < 1e-30)) {
            return Read.faulty();
        }
        String unit = shape.group(2).strip();
        if (unit.isEmpty()) {
            return plainToo ? Read.of(new Measure(number, number, null)) : Read.faulty();
        }
        for (UnitTable table : tables) {
            OptionalDouble value = table.value(number, unit);
            if (value.isPresent()) {
                return Read.of(new Measure(value.getAsDouble(), number, table));
            }
        }
        if (unit.equalsIgnoreCase("ppm") && tables.contains(UnitTable.CONDUCTIVITY)) {
            return Read.faulty(
                    "EC pens turn EC into ppm by 500 or by 700: write \"%1$s ppm-500\" or \"%1$s ppm-700\", as"
                                    .formatted(plain(number))
                            + " the pen's leaflet says, or better its mS/cm.");
        }
        for (UnitTable table : tables) {
            for (String spelling : table.spellings()) {
                if (spelling.equalsIgnoreCase(unit)) {
                    return Read.faulty("Did you mean \"" + spelling + "\"?");
                }
            }
        }
        return Read.faulty();
    }

    /** A number for people: up to four significant digits, no exponent, no trailing zeros. */
    static String plain(double number) {
        if (number == 0) {
            return "0";
        }
        int digits = (int) Math.max(0, 4 - Math.ceil(FastMath.log10(Math.abs(number))));
        String text = String.format(Locale.ROOT, "%." + Math.min(digits, 12) + "f", number);
        return text.indexOf('.') < 0 ? text : text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    /** A value in one of a table's units, as "8 cm". */
    static String plain(double value, UnitTable table, String spelling) {
        return plain(table.number(value, spelling)) + " " + spelling;
    }
}
