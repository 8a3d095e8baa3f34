package tideless.scenario;

import java.util.List;

/** Months as people write them: whole, or cut short after three letters or more. */
final class MonthNames {
    private static final List<String> NAMES =
            List.of(
                    "january",
                    "february",
                    "march",
                    "april",
                    "may",
                    "june",
                    "july",
                    "august",
                    "september",
                    "october",
                    "november",
                    "december");

    private MonthNames() {}

    /**
     * From 1; 0 for none.
     *
     * @param word in small letters, with or without a full stop
     */
    static int number(String word) {
        String bare = word.endsWith(".") ? word.substring(0, word.length() - 1) : word;
        for (int i = 0; i < NAMES.size() && bare.length() > 2; i++) {
            if (NAMES.get(i).startsWith(bare)) {
                return i + 1;
            }
        }
        return 0;
    }
}
