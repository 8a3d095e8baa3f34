package tideless.scenario;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Words that labels print in place of a formula, as "Soluble Potash (K2O) 5 %". */
final class LabelWords {
    /** From the words of labels to the terms; the longer before the shorter. */
    private static final Map<String, String> TERMS = terms();

    /** Trace elements, which stand on labels and in no feed here. */
    private static final String TRACES =
            "(?:(?:chelated|soluble|water soluble|total) )*"
                    + "(?:iron|manganese|zinc|copper|boron|molybdenum|cobalt|nickel|silicon|fe|mn|zn|cu|b|mo)";

    /** Spoons of kitchens, mL: 1/768 and 1/256 of a US gallon, as 5 and 15 mL near enough. */
    private static final double TEASPOON_ML = 4.92892;

    private static final double TABLESPOON_ML = 14.78676;

    private LabelWords() {}

    /** A dose in millilitres where it is told in spoons, as "2 tsp"; else as it is. */
    static String spoons(String dose) {
        String number = dose.replaceFirst(" ?[A-Za-z]+$", "");
        String unit = dose.substring(number.length()).strip().toLowerCase(Locale.ROOT);
        return switch (unit) {
            case "tsp", "teaspoon", "teaspoons" -> Double.parseDouble(number) * TEASPOON_ML + " mL";
            case "tbsp", "tablespoon", "tablespoons" ->
                    Double.parseDouble(number) * TABLESPOON_ML + " mL";
            default -> dose;
        };
    }

    private static Map<String, String> terms() {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("ammoniacal nitrogen", "N-NH4");
        words.put("ammonium nitrogen", "N-NH4");
        words.put("nitrate nitrogen", "N-NO3");
        words.put("total nitrogen", "N");
        words.put("nitrogen", "N");
        words.put("available phosphoric acid", "P2O5");
        words.put("available phosphate", "P2O5");
        words.put("phosphate", "P2O5");
        words.put("phosphorus pentoxide", "P2O5");
        words.put("phosphorus", "P");
        words.put("soluble potash", "K2O");
        words.put("potash", "K2O");
        words.put("potassium oxide", "K2O");
        words.put("potassium", "K");
        words.put("calcium oxide", "CaO");
        words.put("calcium", "Ca");
        words.put("magnesium oxide", "MgO");
        words.put("magnesium", "Mg");
        words.put("sulfur trioxide", "SO3");
        words.put("sulphur trioxide", "SO3");
        words.put("sulfur", "S");
        words.put("sulphur", "S");
        words.put("sodium", "Na");
        words.put("chloride", "Cl");
        words.put("chlorine", "Cl");
        return words;
    }

    /** The items of a label, each with the term for its words; as it was where none is known. */
    static List<String> inTerms(String label) {
        return Arrays.stream(label.split(",", -1))
                .map(String::strip)
                .map(LabelWords::inTerm)
                .toList();
    }

    private static String inTerm(String item) {
        String plain = item.replaceFirst("\\s*\\([A-Za-z0-9-]+\\)", "");
        String lower = plain.toLowerCase(Locale.ROOT).replaceFirst("^water[ -]soluble ", "");
        for (Map.Entry<String, String> each : TERMS.entrySet()) {
            String left =
                    lower.startsWith(each.getKey()) ? lower.substring(each.getKey().length()) : "";
            if (left.matches("[ :].*")) {
                return each.getValue() + " " + left.substring(1).strip();
            }
        }
        return item;
    }

    /** Whether it tells of a trace element. */
    static boolean isTrace(String item) {
        return item.toLowerCase(Locale.ROOT)
                .replaceFirst("\\s*\\([a-z]+\\)", "")
                .matches(TRACES + "[ :].*");
    }
}
