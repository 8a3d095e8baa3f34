package tideless.scenario;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What has to be known of a rig before a first scenario can be written: eight questions. */
public enum StarterQuestion {
    CROP("Which crop (\"tideless crops\" lists them)?", "lettuce"),
    PLANTS("How many plants in a tray?", "6"),
    TRAYS("How many such trays?", "1"),
    SIZE(
            "Inside of a tray: length x width x depth, or, if round, width x depth?",
            "60 x 35 x 8 cm"),
    FILLING("How does it get its solution: valve, hand, or once (filled and left)?", "valve"),
    RESERVOIR("How much does the reservoir hold?", "40 L"),
    VISITS("On which days does somebody look: daily, or as mon wed fri?", "mon wed fri"),
    AWAY("When is nobody there: none, or as 2026-03-21 to 2026-03-29?", "none");

    /** Trays of one scenario; more than a household has. */
    private static final int MOST_TRAYS = 24;

    private static final int MOST_PLANTS = 500;
    private static final List<String> FILLINGS = List.of("valve", "hand", "once");
    private static final List<String> DAYS =
            List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

    private static final Pattern SIDES =
            Pattern.compile(
                    "(\\d+(?:\\.\\d+)?)\\s*x\\s*(\\d+(?:\\.\\d+)?)(?:\\s*x\\s*(\\d+(?:\\.\\d+)?))?"
                            + "\\s*(cm|mm|m|in|ft)");

    /** Exact, by the definition of the inch. */
    private static final Map<String, Double> CENTIMETRES =
            Map.of("cm", 1.0, "mm", 0.1, "m", 100.0, "in", 2.54, "ft", 30.48);

    private final String words;
    private final String usual;

    StarterQuestion(String words, String usual) {
        this.words = words;
        this.usual = usual;
    }

    /** The question. */
    public String words() {
        return words;
    }

    /** What holds for somebody who only presses Enter. */
    public String usual() {
        return usual;
    }

    /** Whether it needs to be asked after what was answered before. */
    public boolean isAsked(Map<StarterQuestion, String> answers) {
        return this != RESERVOIR || "valve".equals(answers.get(FILLING));
    }

    /**
     * An answer as it is kept.
     *
     * @param faults gets one sentence where it cannot be used
     * @return empty where it cannot
     */
    public Optional<String> read(String answer, List<String> faults) {
        String text = answer.strip().toLowerCase(Locale.ROOT);
        return switch (this) {
            case CROP -> choice(text.replaceAll("\\s+", "-"), Crops.names(), faults);
            case PLANTS -> whole(text, MOST_PLANTS, faults);
            case TRAYS -> whole(text, MOST_TRAYS, faults);
            case SIZE -> size(text, faults);
            case FILLING -> choice(text, FILLINGS, faults);
            case RESERVOIR -> volume(answer.strip(), faults);
            case VISITS -> visits(text, faults);
            case AWAY -> away(text, faults);
        };
    }

    private static Optional<String> fault(List<String> faults, String text, String allowed) {
        faults.add("found " + Key.quoted(text) + ", allowed: " + allowed);
        return Optional.empty();
    }

    private static Optional<String> choice(String text, List<String> allowed, List<String> faults) {
        if (allowed.contains(text)) {
            return Optional.of(text);
        }
        String meant = Spelling.nearest(text, allowed);
        return fault(
                faults,
                text,
                String.join(", ", allowed)
                        + (meant.isEmpty() ? "" : "; did you mean " + Key.quoted(meant) + "?"));
    }

    private static Optional<String> whole(String text, int most, List<String> faults) {
        boolean sound = text.matches("\\d{1,4}");
        int number = sound ? Integer.parseInt(text) : 0;
        return number >= 1 && number <= most
                ? Optional.of(Integer.toString(number))
                : fault(faults, text, "a whole number from 1 to " + most);
    }

    private static Optional<String> size(String text, List<String> faults) {
        double[] cm = sidesCm(text);
        return cm.length > 0 && cm[cm.length - 1] >= 3 && cm[cm.length - 1] <= 60
                ? Optional.of(text)
                : fault(
                        faults,
                        text,
                        "as 60 x 35 x 8 cm, or 30 x 32 cm for a round one, in cm, mm, m, in, ft; from"
                                + " 3 to 60 cm deep");
    }

    /** As "12 x 14 in" for "12\" by 14 inches" and the like. */
    private static String plainSize(String text) {
        String plain =
                text.replaceAll("\\s*(inches|inch|\"|\u2033)", " in")
                        .replaceAll("\\s*(feet|foot)", " ft")
                        .replaceAll("\\s*(centimetres|centimeters)", " cm")
                        .replaceAll("\\s*(by|\\*|\u00d7)\\s*", " x ");
        // A unit behind each side, where all are the same.
        return plain.replaceAll("\\s*(cm|mm|m|in|ft)(?=\\s*x.*\\1\\s*$)", "");
    }

    /** Whether a size was given in inches or feet. */
    static boolean isInInches(String size) {
        return plainSize(size).matches(".*(in|ft)");
    }

    /** Length, width and depth, or diameter and depth, cm; none where it is no size. */
    static double[] sidesCm(String text) {
        Matcher sides = SIDES.matcher(plainSize(text));
        if (!sides.matches()) {
            return new double[0];
        }
        double unit = CENTIMETRES.get(sides.group(4));
        int count = sides.group(3) == null ? 2 : 3;
        double[] cm = new double[count];
        for (int i = 0; i < count; i++) {
            cm[i] = Double.parseDouble(sides.group(i + 1)) * unit;
        }
        return cm[0] >= 5 && cm[0] <= 1000 && cm[1] >= 3 && cm[1] <= 1000 ? cm : new double[0];
    }

    private static Optional<String> volume(String text, List<String> faults) {
        OptionReader read = new OptionReader("");
        OptionalDouble litres = read.litres("", text);
        return litres.isPresent() && litres.getAsDouble() >= 3 && litres.getAsDouble() <= 2000
                ? Optional.of(text)
                : fault(faults, text, "from 3 L to 2000 L, as 40 L or 10 gal");
    }

    private static Optional<String> visits(String text, List<String> faults) {
        if (text.equals("daily")) {
            return Optional.of(text);
        }
        List<String> days = new ArrayList<>();
        String named =
                text.replace("weekdays", "mon tue wed thu fri").replace("weekends", "sat sun");
        for (String word : named.split("[ ,]+")) {
            String day = word.length() > 3 ? word.substring(0, 3) : word;
            if (!DAYS.contains(day)) {
                return fault(
                        faults,
                        text,
                        "daily, weekdays, weekends, or some of " + String.join(" ", DAYS));
            }
            if (!days.contains(day)) {
                days.add(day);
            }
        }
        return Optional.of(String.join(" ", days));
    }

    private static Optional<String> away(String text, List<String> faults) {
        if (text.equals("none")) {
            return Optional.of(text);
        }
        String[] days = text.split("\\s+to\\s+");
        try {
            LocalDate from = LocalDate.parse(days[0]);
            LocalDate to = LocalDate.parse(days[days.length - 1]);
            if (days.length == 2 && !to.isBefore(from)) {
                return Optional.of(from + " to " + to);
            }
        } catch (DateTimeParseException e) {
            return fault(faults, text, AWAY_ALLOWED);
        }
        return fault(faults, text, AWAY_ALLOWED);
    }

    private static final String AWAY_ALLOWED =
            "none, or two dates in order, as 2026-03-21 to 2026-03-29";
}
