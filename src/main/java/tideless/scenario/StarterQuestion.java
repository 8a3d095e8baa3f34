package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What has to be known of a rig before a first scenario can be written. At most eight are asked:
 * the number of plants is told with the crop and that of trays with their size.
 */
public enum StarterQuestion {
    CROP(
            "Which crop, and how many plants of it in a tray, as 6 lettuce? (\"tideless crops\""
                    + " lists the crops)",
            "6 lettuce",
            "6 lettuce",
            "A number, then the plant: 12 basil, or 1 dwarf-tomato. Without a number, as many as"
                    + " have room."),
    PLANTS("How many plants in a tray?", "", "", "A number: 6."),
    SIZE(
            "Inside of a tray: length x width x depth, if round width x depth, or as %s bucket; of"
                    + " several say 2 of %s?",
            "60 x 35 x 8 cm",
            "24 x 14 x 3 in",
            "Hold a ruler into one tray: how long, how wide, how deep from floor to rim, as %2$s;"
                    + " if round how wide and how deep, as %3$s; if two are alike, 2 of %2$s."),
    TRAYS("How many such trays?", "", "", "A number: 1."),
    FILLING(
            "How does it get its solution: valve, hand, or once (filled and left)?",
            "valve",
            "valve",
            "Who refills a tray? A float valve under a reservoir: valve. You, with a can: hand."
                    + " Nobody until the harvest: once."),
    RESERVOIR(
            "How much does the reservoir hold?",
            "40 L",
            "10 gal",
            "How much water is in the full reservoir above the trays? Count the buckets that fill"
                    + " it: %4$s."),
    LIGHT(
            "What lights them: a lamp's watts over one tray and its hours, as 24 W 14 h; window;"
                    + " outdoors; both; or unknown?",
            "unknown",
            "unknown",
            "Read the lamp's box and the timer: 24 W 14 h. No lamp: window, or outdoors. Not known"
                    + " yet: unknown."),
    START(
            "When do the plants go in: a date, as 1 May 2027?",
            "today",
            "today",
            "The day on which the young plants move into the tray: today, or 1 May 2027."),
    VISITS(
            "On which days does somebody look: daily, mon-fri, or as mon wed fri?",
            "mon wed fri",
            "mon wed fri",
            "The days of the week on which somebody is there: daily, weekends, or tue fri."),
    AWAY(
            "When is nobody there: none, or as 3 July to 12 July, or 10 days from 3 July?",
            "none",
            "none",
            "A holiday while these plants grow: its first and last day, as 3 July to 12 July; with"
                    + " none of it: none.");

    /** Trays of one scenario; more than a household has. */
    private static final int MOST_TRAYS = 24;

    private static final int MOST_PLANTS = 500;

    /** More than a household's reservoir holds, L. */
    private static final double MOST_LITRES = 2000;

    /** Nobody leaves plants for longer; assumed. */
    private static final int LONGEST_ABSENCE_DAYS = 60;

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

    private static final List<String> NUMBERS =
            List.of(
                    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
                    "ten", "eleven", "twelve");

    private static final String NUMBER = "(\\d{1,4}|" + String.join("|", NUMBERS) + "|an?)";

    private static final Pattern WHOLE =
            Pattern.compile(NUMBER + "(?: (?:plants?|heads?|trays?|buckets?|tubs?|of them))*");

    private static final Pattern CROWD =
            Pattern.compile(
                    NUMBER
                            + "(?: x)? (?:plants? of |heads? of )?(.+?)(?: plants?)?(?: (?:in|per|a|each) .*)?");

    private static final Pattern CROP_FIRST =
            Pattern.compile("(.+?),? (?:x ?)?(\\d{1,4})(?: plants?)?");

    private static final Pattern SEVERAL =
            Pattern.compile(
                    NUMBER
                            + "(?:\\s*(?:x|,|:|\\bof|\\btrays?|\\btubs?|(\\bbuckets?|\\bpails?)))*[\\s,:]+(.*)");

    private static final Pattern DAYS_ON_END =
            Pattern.compile("([a-z]+)(?:\\s*-\\s*|\\s+to\\s+)([a-z]+)");

    private static final List<String> NEVER = List.of("none", "no", "never", "nobody", "-");

    private final String words;
    private final String usual;
    private final String usualUs;
    private final String otherwise;

    StarterQuestion(String words, String usual, String usualUs, String otherwise) {
        this.words = words;
        this.usual = usual;
        this.usualUs = usualUs;
        this.otherwise = otherwise;
    }

    /**
     * The question.
     *
     * @param us whether its examples are in gallons and inches
     */
    public String words(boolean us) {
        return withExamples(words, us);
    }

    /** The same for somebody whose answers did not serve. */
    public String otherwise(boolean us) {
        return withExamples(otherwise, us);
    }

    private static String withExamples(String text, boolean us) {
        return String.format(
                text,
                us ? "5 gallon" : "10 L",
                us ? SIZE.usualUs : SIZE.usual,
                us ? "12 x 14 in" : "30 x 32 cm",
                us ? RESERVOIR.usualUs : RESERVOIR.usual);
    }

    /** What holds for somebody who only presses Enter. */
    public String usual(boolean us) {
        return us ? usualUs : usual;
    }

    /** The option that answers it. */
    public String option() {
        return "--" + name().toLowerCase(Locale.ROOT);
    }

    /** Whether the trays are filled once and left. */
    public static boolean isFilledOnce(Map<StarterQuestion, String> answers) {
        return "once".equals(answers.get(FILLING));
    }

    /**
     * The same tray so many times as deep, to the whole centimetre or half inch above, as it would
     * be answered, or a bucket that holds as much more; empty where none is that deep.
     */
    public static Optional<String> deeper(String size, double times) {
        return StarterVessel.deeper(size, times);
    }

    /**
     * A reservoir so many times as large, to the whole litre or gallon above; empty where none is.
     */
    public static Optional<String> larger(String volume, double times) {
        String unit = StarterVessel.isInGallons(volume) ? "gal" : "L";
        double m3 = UnitTable.VOLUME.value(1, unit).orElseThrow();
        double now = new OptionReader("").litres("", volume).orElseThrow() / 1000;
        double more = Math.ceil(now * times / m3 - 1e-9);
        return more * m3 * 1000 > MOST_LITRES
                ? Optional.empty()
                : Optional.of(Measure.plain(more) + " " + unit);
    }

    /** Whether it needs to be asked after what was answered before. */
    public boolean isAsked(Map<StarterQuestion, String> answers) {
        return !usual.isEmpty() && (this != RESERVOIR || "valve".equals(answers.get(FILLING)));
    }

    /**
     * An answer as it is kept, with what else it tells: a crop may come with the number of plants,
     * a size with that of trays.
     *
     * @param before what was answered to the questions before
     * @param today which day it is
     * @param faults gets one sentence where it cannot be used
     * @return empty where it cannot
     */
    public Map<StarterQuestion, String> read(
            String answer,
            Map<StarterQuestion, String> before,
            LocalDate today,
            List<String> faults) {
        String text = answer.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        return switch (this) {
            case CROP -> planted(text, faults);
            case PLANTS -> only(whole(text, MOST_PLANTS, faults));
            case TRAYS -> only(whole(text, MOST_TRAYS, faults));
            case SIZE -> vessels(text, faults);
            case FILLING -> only(choice(filling(text), FILLINGS, faults));
            case RESERVOIR -> only(volume(answer.strip(), faults));
            case LIGHT -> only(light(text, faults));
            case START -> only(start(text, today, faults));
            case VISITS -> only(visits(text, faults));
            case AWAY -> only(away(text, before, today, faults));
        };
    }

    /** The question that a text serves as an answer to, where it does not serve for this one. */
    public Optional<StarterQuestion> meant(
            String answer, Map<StarterQuestion, String> before, LocalDate today) {
        for (StarterQuestion other : values()) {
            boolean asked = other != this && other.isAsked(before);
            if (asked && !other.read(answer, before, today, new ArrayList<>()).isEmpty()) {
                return Optional.of(other);
            }
        }
        return Optional.empty();
    }

    private Map<StarterQuestion, String> only(Optional<String> answer) {
        return answer.map(text -> Map.of(this, text)).orElse(Map.of());
    }

    private static Optional<String> fault(List<String> faults, String text, String allowed) {
        faults.add("found " + Key.quoted(text) + ", allowed: " + allowed);
        return Optional.empty();
    }

    /** As "6 lettuce", "lettuce, 6" or "lettuce". */
    private static Map<StarterQuestion, String> planted(String text, List<String> faults) {
        if (text.matches(".*[a-z].*( and | & |[+/]).*[a-z].*")) {
            fault(
                    faults,
                    text,
                    "one crop for all trays to begin with, as 6 lettuce; the file will have a part for"
                            + " each tray, where a second crop goes in");
            return Map.of();
        }
        Matcher first = CROWD.matcher(text);
        Matcher last = CROP_FIRST.matcher(text);
        boolean counted = first.matches() || last.matches();
        String name = first.matches() ? first.group(2) : last.matches() ? last.group(1) : text;
        Map<StarterQuestion, String> read = new EnumMap<>(StarterQuestion.class);
        crop(name.strip().replace(' ', '-'), faults).ifPresent(crop -> read.put(CROP, crop));
        if (counted && !read.isEmpty()) {
            String number = first.matches() ? first.group(1) : last.group(2);
            Optional<String> plants = whole(number, MOST_PLANTS, faults);
            if (plants.isEmpty()) {
                return Map.of();
            }
            read.put(PLANTS, plants.get());
        }
        return read;
    }

    private static Optional<String> crop(String text, List<String> faults) {
        String known = Crops.alsoCalled(text);
        String name = known.isEmpty() ? text : known;
        if (Crops.names().contains(name)) {
            return Optional.of(name);
        }
        String meant = Spelling.nearest(name, Crops.names());
        if (!meant.isEmpty() && Spelling.isSameWord(name, meant)) {
            return Optional.of(meant);
        }
        return choice(name, Crops.names(), Crops.meant(text, Crops.names()), faults);
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

    /** As "6", "six" or "6 plants". */
    private static Optional<String> whole(String text, int most, List<String> faults) {
        Matcher whole = WHOLE.matcher(text);
        int number = whole.matches() ? number(whole.group(1)) : 0;
        return number >= 1 && number <= most
                ? Optional.of(Integer.toString(number))
                : fault(faults, text, "a whole number from 1 to " + most);
    }

    private static int number(String word) {
        if (word.startsWith("a")) {
            return 1;
        }
        return NUMBERS.contains(word) ? NUMBERS.indexOf(word) : Integer.parseInt(word);
    }

    /** As "60 x 35 x 8 cm", "2 of 12 x 14 in" or "two 5 gallon buckets". */
    private static Map<StarterQuestion, String> vessels(String text, List<String> faults) {
        if (StarterVessel.of(text) != null) {
            return Map.of(SIZE, StarterVessel.plain(text));
        }
        Matcher several = SEVERAL.matcher(text);
        if (several.matches()) {
            String each = several.group(3);
            String size = several.group(2) == null || each.contains("x") ? each : each + " bucket";
            if (StarterVessel.of(size) != null) {
                return whole(several.group(1), MOST_TRAYS, faults)
                        .map(n -> Map.of(SIZE, StarterVessel.plain(size), TRAYS, n))
                        .orElse(Map.of());
            }
        }
        boolean bare = StarterVessel.of(text + " cm") != null;
        boolean heldOnly =
                !new OptionReader("").litres("", text.replaceAll(" [a-z]+$", "")).isEmpty();
        fault(
                faults,
                text,
                (bare
                                ? "with its unit, "
                                : heldOnly ? "with its depth, which a volume does not tell, " : "")
                        + "as 60 x 35 x 8 cm, or 30 x 32 cm for a round one, in cm, mm, m, in, ft; from"
                        + " 3 to 60 cm deep; or as 10 L bucket, 5 gallon bucket");
        return Map.of();
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

    private static Optional<String> light(String text, List<String> faults) {
        StarterLight light = StarterLight.of(text);
        return light != null
                ? Optional.of(light.spelt())
                : fault(
                        faults,
                        text,
                        "a lamp's watts over one tray and its hours (1 to 22), as 24 W 14 h; window;"
                                + " outdoors; 24 W 14 h and window; unknown; or measured, as 200 umol 14 h"
                                + " or 12 klux 14 h");
    }

    private static Optional<String> start(String text, LocalDate today, List<String> faults) {
        Optional<LocalDate> day = StarterDates.day(text, today);
        return day.isPresent()
                ? day.map(LocalDate::toString)
                : fault(
                        faults,
                        text,
                        "a date that exists, the month by its name, as 1 May 2027, or 2027-05-01; or"
                                + " today");
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

    /** Spans while the plants stand, in order, as "2027-07-03 to 2027-07-12; ...". */
    private static Optional<String> away(
            String text,
            Map<StarterQuestion, String> before,
            LocalDate today,
            List<String> faults) {
        if (NEVER.contains(text)) {
            return Optional.of("none");
        }
        boolean stand = before.containsKey(CROP) && before.containsKey(START);
        LocalDate start = stand ? LocalDate.parse(before.get(START)) : today;
        List<List<LocalDate>> spans = new ArrayList<>();
        for (String one : text.split(" ?; ?| and ")) {
            List<LocalDate> span = StarterDates.span(one.strip(), start);
            if (span.isEmpty()
                    || ChronoUnit.DAYS.between(span.get(0), span.get(1)) >= LONGEST_ABSENCE_DAYS) {
                return fault(
                        faults,
                        text,
                        "none, or two dates in order, as 2026-03-21 to 2026-03-29, July 3 to July"
                                + " 12, 2027, or 10 days from 3 July; at most "
                                + LONGEST_ABSENCE_DAYS
                                + " days");
            }
            spans.add(span);
        }
        spans.sort(Comparator.comparing(span -> span.get(0)));
        LocalDate last = stand ? Starter.lastUsualDay(before) : LocalDate.MAX;
        LocalDate free = start;
        for (List<LocalDate> span : spans) {
            if (span.get(0).isBefore(free) || span.get(0).isAfter(last)) {
                return fault(
                        faults,
                        text,
                        "days on which these plants stand, "
                                + free
                                + " to "
                                + last
                                + "; none, if nobody is away then");
            }
            free = span.get(1).plusDays(1);
            LocalDate back = Starter.lastDayPast(span.get(1));
            last = back.isAfter(last) ? back : last;
        }
        return Optional.of(
                spans.stream()
                        .map(span -> span.get(0) + " to " + span.get(1))
                        .collect(Collectors.joining("; ")));
    }
}
