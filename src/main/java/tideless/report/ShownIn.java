package tideless.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.solution.ElectricalConductivity.PpmScale;

/**
 * The units in which results are shown: as they are worked out, or in those of the United States,
 * and EC as it is or as a pen's ppm. Grams, millilitres, watts and light stay, for scales, syringes
 * and lamps show them everywhere; so do the files for machines.
 *
 * <p>What is told is turned as a sentence: a number, or two with "to" or the like between them, and
 * the unit behind it. A number is as sharp afterwards as it was before.
 *
 * @param us whether gallons, inches and degrees Fahrenheit
 * @param scale of a pen that shows ppm; null for mS/cm
 */
public record ShownIn(boolean us, PpmScale scale) implements Telling {
    /** As everything is worked out and told. */
    public static final ShownIn METRIC = new ShownIn(false, null);

    private static final double L_PER_M3 = 1000;
    private static final double MM_PER_M = 1000;

    /** Exact: the US gallon is 231 cubic inches, the inch 25.4 mm. */
    private static final double L_PER_GAL = 3.785411784;

    private static final double MM_PER_IN = 25.4;
    private static final double SMALL_MM = 5;
    private static final double CM2_PER_IN2 = 2.54 * 2.54;
    private static final double FT2_PER_M2 = 1 / (0.3048 * 0.3048);
    private static final double FL_OZ_PER_GAL = 128;
    private static final double IN_PER_FT = 12;
    private static final double LB_PER_KG = 1 / 0.45359237;

    private static final Pattern QUANTITY =
            Pattern.compile(
                    "(?<![\\d.,:/\\w-])(?:(\\d+(?:\\.\\d+)?)( to | of |-|\\.\\.))?(\\d+(?:\\.\\d+)?) "
                            + "(mS/cm|L/day|L|mm|cm2|cm|m2|m|degC|\u00b0C|K|kg)(?![\\w/2])");
    private static final Pattern MARKUP = Pattern.compile("(?s)<style.*?</style>|<[^>]*>|[^<]+");
    private static final Pattern ALT = Pattern.compile("alt=\"[^\"]*\"");

    /** Whether nothing changes. */
    public boolean isMetric() {
        return !us && scale == null;
    }

    /** The unit in which a value in one of a scenario's units is shown. */
    String unitOf(String unit) {
        return switch (unit) {
            case "mS/cm" -> ecUnit();
            case "L" -> volumeUnit();
            case "L/day" -> us ? "gal/day" : unit;
            case "mm", "cm" -> us ? "in" : unit;
            case "m" -> us ? "ft" : unit;
            case "kg" -> us ? "lb" : unit;
            case "degC", "K" -> us ? "degF" : unit;
            default -> unit;
        };
    }

    /** A value in one of a scenario's units, in the unit that is shown for it. */
    double valueOf(double value, String unit) {
        if (unit.equals("mS/cm")) {
            return value * perMsPerCm();
        }
        if (!us) {
            return value;
        }
        return switch (unit) {
            case "L", "L/day" -> value / L_PER_GAL;
            case "mm" -> value / MM_PER_IN;
            case "cm" -> 10 * value / MM_PER_IN;
            case "m" -> MM_PER_M * value / MM_PER_IN / IN_PER_FT;
            case "kg" -> value * LB_PER_KG;
            case "degC" -> value * 9 / 5 + 32;
            case "K" -> value * 9 / 5;
            default -> value;
        };
    }

    /** Volumes of a picture for one cubic metre. */
    double perM3() {
        return us ? L_PER_M3 / L_PER_GAL : L_PER_M3;
    }

    String volumeUnit() {
        return us ? "gal" : "L";
    }

    /** Lengths of a picture for one metre. */
    double perM() {
        return us ? MM_PER_M / MM_PER_IN : MM_PER_M;
    }

    /** A bar for the scale of a drawing: 10 cm, or 4 in. */
    double barM() {
        return us ? 4 * MM_PER_IN / MM_PER_M : 0.1;
    }

    String lengthUnit() {
        return us ? "in" : "mm";
    }

    /** EC of a picture for 1 mS/cm. */
    double perMsPerCm() {
        return scale == null ? 1 : scale.ppm(1);
    }

    String ecUnit() {
        return scale == null ? "mS/cm" : scale == PpmScale.PPM_500 ? "ppm-500" : "ppm-700";
    }

    /** An EC as a meter shows it, without its unit. */
    String ec(double msPerCm) {
        return scale == null ? MixWords.ec(msPerCm) : rounded(scale.ppm(msPerCm), 0);
    }

    /** Of the upright axis of an EC. */
    String ecLabel() {
        return (us ? "EC at 77 \u00b0F (" : "EC at 25 \u00b0C (") + ecUnit() + ")";
    }

    @Override
    public String litres(String litres) {
        if (!us || !litres.matches("[\\d.-]+")) {
            return litres;
        }
        String[] numbers = litres.split("-");
        double most = Double.parseDouble(numbers[numbers.length - 1]);
        int decimals = isLittle(most) ? 2 : decimals(most); // one column, one unit
        return Stream.of(numbers)
                .map(one -> rounded(Double.parseDouble(one) / L_PER_GAL, decimals))
                .collect(Collectors.joining("-"));
    }

    private static boolean isLittle(double litres) {
        return litres < L_PER_GAL / 4 && litres > 0;
    }

    /** A ruler shows no hundredths; of a few millimetres a tenth of an inch leaves nothing. */
    private static int inches(double mm) {
        return mm < SMALL_MM && mm > 0 ? 2 : 1;
    }

    private static int decimals(double litres) {
        return litres < 20 * L_PER_GAL ? 1 : 0;
    }

    @Override
    public String litresHead() {
        return us ? "GALLONS" : "LITRES";
    }

    @Override
    public String told(String text) {
        if (isMetric()) {
            return text;
        }
        Matcher quantity = QUANTITY.matcher(text);
        StringBuilder told = new StringBuilder();
        while (quantity.find()) {
            quantity.appendReplacement(told, Matcher.quoteReplacement(turned(quantity)));
        }
        return quantity.appendTail(told).toString();
    }

    private String turned(Matcher quantity) {
        double number = Double.parseDouble(quantity.group(3));
        return switch (quantity.group(4)) {
            case "mS/cm" ->
                    scale == null
                            ? quantity.group()
                            : with(quantity, v -> scale.ppm(v), 0, ecUnit());
            case "L", "L/day" -> {
                String per = quantity.group(4).substring(1);
                yield isLittle(number)
                        ? with(quantity, v -> v / L_PER_GAL * FL_OZ_PER_GAL, 0, "fl oz" + per)
                        : with(quantity, v -> v / L_PER_GAL, decimals(number), "gal" + per);
            }
            case "mm" -> with(quantity, v -> v / MM_PER_IN, inches(number), "in");
            case "cm2" -> with(quantity, v -> v / CM2_PER_IN2, 0, "in2");
            case "m2" -> with(quantity, v -> v * FT2_PER_M2, 1, "ft2");
            case "cm" -> with(quantity, v -> 10 * v / MM_PER_IN, 1, "in");
            case "m" -> with(quantity, v -> MM_PER_M * v / MM_PER_IN / IN_PER_FT, 1, "ft");
            case "kg" -> with(quantity, v -> v * LB_PER_KG, 1, "lb");
            case "K" -> with(quantity, v -> v * 9 / 5, 1, "degF");
            default -> with(quantity, v -> v * 9 / 5 + 32, 0, "degF");
        };
    }

    private String with(Matcher quantity, DoubleUnaryOperator turn, int decimals, String unit) {
        boolean isEc = quantity.group(4).equals("mS/cm");
        if (!us && !isEc) {
            return quantity.group();
        }
        String first =
                quantity.group(1) == null
                        ? ""
                        : rounded(
                                        turn.applyAsDouble(Double.parseDouble(quantity.group(1))),
                                        decimals)
                                + quantity.group(2);
        return first
                + rounded(turn.applyAsDouble(Double.parseDouble(quantity.group(3))), decimals)
                + " "
                + unit;
    }

    private static String rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    /** A page or a drawing: what stands between its marks, and what its pictures say. */
    String page(String page) {
        if (isMetric()) {
            return page;
        }
        return MARKUP.matcher(page)
                .replaceAll(part -> Matcher.quoteReplacement(ofPage(part.group())));
    }

    private String ofPage(String part) {
        if (part.startsWith("<img")) {
            return ALT.matcher(part).replaceAll(alt -> Matcher.quoteReplacement(told(alt.group())));
        }
        return part.startsWith("<") ? part : told(part);
    }
}
