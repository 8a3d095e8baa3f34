package tideless.scenario;

import java.time.DateTimeException;
import java.time.LocalDate;
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
    VISITS("On which days does somebody look: daily, mon-fri, or as mon wed fri?", "mon wed fri"),
    AWAY("When is nobody there: none, or as 21 Mar 2026 to 29 Mar 2026?", "none");

    /** Trays of one scenario; more than a household has. */
    private static final int MOST_TRAYS = 24;

    private static final int MOST_PLANTS = 500;

    /** As deep as a scenario's trays may be, cm. */
    private static final double DEEPEST_CM = 60;

    /** More than a household's reservoir holds, L. */
    private static final double MOST_LITRES = 2000;

    private static final List<String> FILLINGS = List.of("valve", "hand", "once");
    private static final Map<String, String> FILLING_WORDS =
            Map.of(
                    "valve", "valve",
                    "float", "valve",
                    "reservoir", "valve",
                    "hand", "hand",
                    "topped up", "hand",
                    "once", "once",
                    "sealed", "once");

    private static final List<String> DAYS =
            List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

    private static final List<String> MONTHS =
            List.of(
                    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov",
                    "dec");

    /** A length, with its unit or without one where a later side has it. */
    private static final Pattern SIDE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(cm|mm|m|in|ft|)");

    private static final Pattern DAYS_ON_END =
            Pattern.compile("([a-z]+)(?:\\s*-\\s*|\\s+to\\s+)([a-z]+)");

    private static final Pattern DATE =
            Pattern.compile(
                    "(\\d{4})-(\\d{1,2})-(\\d{1,2})"
                            + "|(\\d{1,2})\\.\\s*(\\d{1,2})\\.\\s*(\\d{4})"
                            + "|(\\d{1,2})\\.?\\s+([a-z]{3})[a-z]*,?\\s+(\\d{4})"
                            + "|([a-z]{3})[a-z]*\\s+(\\d{1,2}),?\\s+(\\d{4})");

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

    /** The option that answers it beforehand. */
    public String option() {
        return "--" + name().toLowerCase(Locale.ROOT);
    }

    /** Whether the trays are filled once and left. */
    public static boolean isFilledOnce(Map<StarterQuestion, String> answers) {
        return "once".equals(answers.get(FILLING));
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
            case CROP -> crop(text.replaceAll("\\s+", "-"), faults);
            case PLANTS -> whole(text, MOST_PLANTS, faults);
            case TRAYS -> whole(text, MOST_TRAYS, faults);
            case SIZE -> size(text, faults);
            case FILLING -> choice(filling(text), FILLINGS, faults);
            case RESERVOIR -> volume(answer.strip(), faults);
            case VISITS -> visits(text, faults);
            case AWAY -> away(text, faults);
        };
    }

    private static Optional<String> fault(List<String> faults, String text, String allowed) {
        faults.add("found " + Key.quoted(text) + ", allowed: " + allowed);
        return Optional.empty();
    }

    private static Optional<String> crop(String text, List<String> faults) {
        String known = Crops.alsoCalled(text);
        return choice(
                known.isEmpty() ? text : known,
                Crops.names(),
                Crops.meant(text, Crops.names()),
                faults);
    }

    /** As "valve" for "float valve" and the like; what none of them is stays as it is. */
    private static String filling(String text) {
        String meant = "";
        for (Map.Entry<String, String> word : FILLING_WORDS.entrySet()) {
            if (text.matches(".*\\b" + word.getKey() + "\\b.*")) {
                if (!meant.isEmpty() && !meant.equals(word.getValue())) {
                    return text;
                }
                meant = word.getValue();
            }
        }
        return meant.isEmpty() ? text : meant;
    }

    private static Optional<String> choice(String text, List<String> allowed, List<String> faults) {
        String near = Spelling.nearest(text, allowed);
        return choice(
                text,
                allowed,
                near.isEmpty() ? "" : "Did you mean " + Key.quoted(near) + "?",
                faults);
    }

    private static Optional<String> choice(
            String text, List<String> allowed, String meant, List<String> faults) {
        return allowed.contains(text)
                ? Optional.of(text)
                : fault(
                        faults,
                        text,
                        String.join(", ", allowed)
                                + (meant.isEmpty() ? "" : "; d" + meant.substring(1)));
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
        if (cm.length > 0 && cm[cm.length - 1] >= 3 && cm[cm.length - 1] <= DEEPEST_CM) {
            return Optional.of(text);
        }
        boolean bare = cm.length == 0 && sidesCm(text + " cm").length > 0;
        return fault(
                faults,
                text,
                (bare ? "with its unit, " : "")
                        + "as 60 x 35 x 8 cm, or 30 x 32 cm for a round one, in cm, mm, m, in, ft; from"
                        + " 3 to 60 cm deep");
    }

    /** As "12 x 14 in" for "12\" by 14 inches" and the like. */
    private static String plainSize(String text) {
        return text.replaceAll("\\s*(inches|inch|\"|\u2033)", " in")
                .replaceAll("\\s*(feet|foot)", " ft")
                .replaceAll("\\s*(centimetres|centimeters)", " cm")
                .replaceAll("\\s*(metres|meters|metre|meter)", " m")
                .replaceAll("(?<=[\\d\\s])(by|\\*|\u00d7)(?=[\\d\\s])", "x")
                .replaceAll("(?<=\\d),(?=\\d)", ".");
    }

    /** Whether a size was given in inches or feet. */
    static boolean isInInches(String size) {
        return plainSize(size).matches(".*(in|ft)\\s*");
    }

    /**
     * The same tray so many times as deep, to the whole centimetre or half inch above, as it would
     * be answered; empty where none is that deep.
     */
    public static Optional<String> deeper(String size, double times) {
        double[] cm = sidesCm(size);
        boolean inInches = isInInches(size);
        double unitCm = inInches ? CENTIMETRES.get("in") : 1;
        double step = inInches ? 0.5 : 1;
        int last = cm.length - 1;
        double deep = Math.ceil(cm[last] * times / unitCm / step - 1e-9) * step;
        if (deep * unitCm > DEEPEST_CM) {
            return Optional.empty();
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < last; i++) {
            text.append(Measure.plain(cm[i] / unitCm)).append(" x ");
        }
        return Optional.of(text + Measure.plain(deep) + (inInches ? " in" : " cm"));
    }

    /** A reservoir so many times as large, to the whole litre above; empty where none is. */
    public static Optional<String> larger(String volume, double times) {
        double litres = new OptionReader("").litres("", volume).orElseThrow();
        double more = Math.ceil(litres * times - 1e-9);
        return more > MOST_LITRES ? Optional.empty() : Optional.of(Measure.plain(more) + " L");
    }

    /** Length, width and depth, or diameter and depth, cm; none where it is no size. */
    static double[] sidesCm(String text) {
        String[] sides = plainSize(text).split("x");
        if (sides.length < 2 || sides.length > 3) {
            return new double[0];
        }
        double[] cm = new double[sides.length];
        String unit = "";
        for (int i = sides.length - 1; i >= 0; i--) {
            Matcher side = SIDE.matcher(sides[i].strip());
            if (!side.matches()) {
                return new double[0];
            }
            unit = side.group(2).isEmpty() ? unit : side.group(2); // that of the side behind it
            if (unit.isEmpty()) {
                return new double[0];
            }
            cm[i] = Double.parseDouble(side.group(1)) * CENTIMETRES.get(unit);
        }
        return cm[0] >= 5 && cm[0] <= 1000 && cm[1] >= 3 && cm[1] <= 1000 ? cm : new double[0];
    }

    private static Optional<String> volume(String text, List<String> faults) {
        OptionReader read = new OptionReader("");
        OptionalDouble litres = read.litres("", text);
        return litres.isPresent()
                        && litres.getAsDouble() >= 3
                        && litres.getAsDouble() <= MOST_LITRES
                ? Optional.of(text)
                : fault(faults, text, "from 3 L to 2000 L, as 40 L or 10 gal");
    }

    private static Optional<String> visits(String text, List<String> faults) {
        if (text.equals("daily") || text.equals("every day")) {
            return Optional.of("daily");
        }
        String named =
                spelledOut(text)
                        .replaceAll("\\band\\b", " ")
                        .replaceAll("weekdays|school days", "mon tue wed thu fri")
                        .replace("weekends", "sat sun");
        List<String> days = new ArrayList<>();
        for (String word : named.strip().split("[ ,]+")) {
            if (dayOfWeek(word) < 0) {
                return fault(
                        faults,
                        text,
                        "daily, weekdays, weekends, mon-fri, or some of " + String.join(" ", DAYS));
            }
            String day = DAYS.get(dayOfWeek(word));
            if (!days.contains(day)) {
                days.add(day);
            }
        }
        return Optional.of(String.join(" ", days));
    }

    /** As "sat sun mon" for "sat-mon" within a text. */
    private static String spelledOut(String text) {
        Matcher span = DAYS_ON_END.matcher(text);
        StringBuilder spelled = new StringBuilder();
        while (span.find()) {
            int day = dayOfWeek(span.group(1));
            int last = dayOfWeek(span.group(2));
            if (day < 0 || last < 0) {
                continue;
            }
            StringBuilder days = new StringBuilder(DAYS.get(day));
            while (day != last) {
                day = (day + 1) % DAYS.size();
                days.append(' ').append(DAYS.get(day));
            }
            span.appendReplacement(spelled, days.toString());
        }
        return span.appendTail(spelled).toString();
    }

    /** Of "monday", "mondays", "Mon": 0; of no day: -1. */
    private static int dayOfWeek(String word) {
        return word.length() > 3
                        && !word.matches(
                                "(mon|tues|wednes|thurs|fri|satur|sun)days?|tues|thur|thurs")
                ? -1
                : DAYS.indexOf(word.length() > 3 ? word.substring(0, 3) : word);
    }

    private static Optional<String> away(String text, List<String> faults) {
        if (NEVER.contains(text)) {
            return Optional.of("none");
        }
        String[] days = text.split("\\s+(to|until|till|-|\u2013)\\s+");
        if (days.length == 2) {
            Optional<LocalDate> from = date(days[0].strip());
            Optional<LocalDate> to = date(days[1].strip());
            if (from.isPresent() && to.isPresent() && !to.get().isBefore(from.get())) {
                return Optional.of(from.get() + " to " + to.get());
            }
        }
        return fault(
                faults,
                text,
                "none, or two dates in order, as 2026-03-21 to 2026-03-29 or 21 mar 2026 to 29 mar 2026");
    }

    private static final List<String> NEVER = List.of("none", "no", "never", "nobody", "-");

    /**
     * As 2026-03-21, 21 Mar 2026, Mar 21 2026 or 21.3.2026; not by strokes: those mean two days.
     */
    private static Optional<LocalDate> date(String text) {
        Matcher date = DATE.matcher(text);
        if (!date.matches()) {
            return Optional.empty();
        }
        int month;
        String day;
        String year;
        if (date.group(1) != null) {
            year = date.group(1);
            month = Integer.parseInt(date.group(2));
            day = date.group(3);
        } else if (date.group(4) != null) {
            day = date.group(4);
            month = Integer.parseInt(date.group(5));
            year = date.group(6);
        } else if (date.group(7) != null) {
            day = date.group(7);
            month = MONTHS.indexOf(date.group(8)) + 1;
            year = date.group(9);
        } else {
            month = MONTHS.indexOf(date.group(10)) + 1;
            day = date.group(11);
            year = date.group(12);
        }
        try {
            return Optional.of(LocalDate.of(Integer.parseInt(year), month, Integer.parseInt(day)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
