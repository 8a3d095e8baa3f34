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
import java.util.stream.Stream;

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
            "How much does the reservoir hold, and of which water: soft tap, hard tap (the kettle"
                    + " furs), rain, or what your pen reads in it?",
            "40 L soft tap",
            "10 gal soft tap",
            "How much water is in the full reservoir above the trays? Count the buckets that fill"
                    + " it: %4$s."),
    WATER(
            "Which water: soft tap, hard tap (the kettle furs), rain, or what your pen reads in"
                    + " it?",
            "soft tap",
            "soft tap",
            "Does your kettle fur? Then hard tap. Not at all? Then soft tap. From the roof: rain."),
    FEED("What are they fed?", "", "", "A recipe, as hoagland-2, or bought."),
    LIGHT(
            "What lights them: a lamp's watts%5$s and hours, as 24 W 14 h%6$s; window;"
                    + " outdoors; both; or unknown?",
            "unknown",
            "unknown",
            "Read the lamp's box and the timer: 24 W 14 h%6$s. No lamp: window, or outdoors. Not"
                    + " known yet: unknown."),
    START(
            "When do the plants go in, and out where a term or a season ends: as 1 May 2027, or 1"
                    + " May to 30 Sep 2027?",
            "today",
            "today",
            "The day on which the young plants move into the tray: today, or 1 May 2027."),
    END("When does the season end?", "", "", "A date, as 30 Sep 2027, or 10 weeks."),
    VISITS(
            "On which days does somebody look: daily, mon-fri, twice a week, or as mon wed fri?",
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

    private static final int SHORTEST_SEASON_DAYS = 6;

    private static final int LONGEST_SEASON_DAYS = 366;

    private static final String SEASON = "a season lasts a week to a year";

    private static final Pattern HELD =
            Pattern.compile("(\\d+(?:[.,]\\d+)?[ -]*[a-z]+)(?: ?, ?| of | with | |$)(.*)");

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
     * @param before what was answered to the questions before
     */
    public String words(boolean us, Map<StarterQuestion, String> before) {
        return withExamples(words, us, before);
    }

    /** The same for somebody whose answers did not serve. */
    public String otherwise(boolean us, Map<StarterQuestion, String> before) {
        return withExamples(otherwise, us, before);
    }

    private static String withExamples(
            String text, boolean us, Map<StarterQuestion, String> before) {
        boolean several = Starter.trays(before) > 1;
        return String.format(
                text,
                us ? "5 gallon" : "10 L",
                us ? SIZE.usualUs : SIZE.usual,
                us ? "12 x 14 in" : "30 x 32 cm",
                us ? RESERVOIR.usualUs : RESERVOIR.usual,
                several ? "" : " over the tray",
                several ? " each, or 60 W 14 h over all" : "");
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

    /** Waters that are softer than one that was answered, the nearest that serves a feed first. */
    public static List<String> softer(String water, Starter.Feed feed) {
        return StarterWater.softer(water, feed);
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
        boolean byValve = "valve".equals(answers.get(FILLING));
        return !usual.isEmpty() && (this != RESERVOIR || byValve) && (this != WATER || !byValve);
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
            case PLANTS -> only(wholes(text, before, faults));
            case TRAYS -> only(whole(text, MOST_TRAYS, faults));
            case SIZE -> vessels(text, faults);
            case FILLING -> only(choice(filling(text), FILLINGS, faults));
            case RESERVOIR -> store(text, faults);
            case WATER -> only(water(text, faults));
            case FEED -> only(feed(text, faults));
            case LIGHT -> only(light(text, Starter.trays(before), faults));
            case START -> season(text, today, faults);
            case END -> only(end(text, before, today, faults));
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

    /** As "6 lettuce", "lettuce, 6", "lettuce", or "6 lettuce, 6 basil" for a tray of each. */
    private static Map<StarterQuestion, String> planted(String text, List<String> faults) {
        List<Map<StarterQuestion, String>> each = new ArrayList<>();
        for (String one : crops(text)) {
            Map<StarterQuestion, String> read = plantedAlone(one, faults);
            if (read.isEmpty()) {
                return Map.of();
            }
            each.add(read);
        }
        long counted = each.stream().filter(read -> read.containsKey(PLANTS)).count();
        if (each.size() > MOST_TRAYS || counted > 0 && counted < each.size()) {
            fault(faults, text, "a number of plants for each tray, as 6 lettuce, 6 basil");
            return Map.of();
        }
        Map<StarterQuestion, String> read = new EnumMap<>(StarterQuestion.class);
        for (StarterQuestion part : counted > 0 ? List.of(CROP, PLANTS) : List.of(CROP)) {
            read.put(
                    part,
                    each.stream().map(one -> one.get(part)).collect(Collectors.joining(", ")));
        }
        return read;
    }

    /** The parts of a text that tells several crops, or the whole. */
    private static List<String> crops(String text) {
        List<String> parts = List.of(text.split("\\s*(?:,|;|\\+|/|&|\\band\\b)\\s*"));
        boolean several =
                parts.size() > 1
                        && parts.stream()
                                .allMatch(
                                        part ->
                                                part.matches(".*[a-z]{3}.*")
                                                        && !WHOLE.matcher(part).matches());
        return several ? parts : List.of(text);
    }

    private static Map<StarterQuestion, String> plantedAlone(String text, List<String> faults) {
        Matcher first = CROWD.matcher(text);
        Matcher last = CROP_FIRST.matcher(text);
        boolean counted = first.matches() || last.matches();
        String name = first.matches() ? first.group(2) : last.matches() ? last.group(1) : text;
        Map<StarterQuestion, String> read = new EnumMap<>(StarterQuestion.class);
        if (text.matches("[-+]\\s*\\d.*")) {
            fault(faults, text, "a number of plants from 1 to " + MOST_PLANTS + ", as 6 lettuce");
            return read;
        }
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

    /** Numbers of plants: one for all trays, or one for each crop. */
    private static Optional<String> wholes(
            String text, Map<StarterQuestion, String> before, List<String> faults) {
        String[] each = text.split(" ?, ?");
        int crops = Starter.crops(before).size();
        if (each.length > 1 && each.length != crops) {
            return fault(
                    faults,
                    text,
                    "one number, or one for each of the crops, of which there are " + crops);
        }
        List<String> numbers = new ArrayList<>();
        for (String one : each) {
            whole(one, MOST_PLANTS, faults).ifPresent(numbers::add);
        }
        return numbers.size() == each.length
                ? Optional.of(String.join(", ", numbers))
                : Optional.empty();
    }

    /** Of a figure or a word as "six" or "a". */
    static int number(String word) {
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
            Optional<String> counted = whole(several.group(1), MOST_TRAYS, new ArrayList<>());
            boolean isLength = counted.isEmpty() && each.contains("x");
            if (StarterVessel.of(size) != null && !isLength) {
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

    /** As "40 L", or "40 L hard tap" with the water. */
    private static Map<StarterQuestion, String> store(String text, List<String> faults) {
        Matcher held = HELD.matcher(text);
        String told = held.matches() ? held.group(1).strip() : text;
        String volume = told.replaceFirst("^(\\d+),(\\d{1,2}\\b)", "$1.$2");
        OptionalDouble litres = new OptionReader("").litres("", volume);
        if (litres.isEmpty() || litres.getAsDouble() < 3 || litres.getAsDouble() > MOST_LITRES) {
            fault(
                    faults,
                    text,
                    "from 3 L to 2000 L, as 40 L or 10 gal, with the water or without, as 40 L hard");
            return Map.of();
        }
        Map<StarterQuestion, String> read = new EnumMap<>(StarterQuestion.class);
        read.put(RESERVOIR, volume.replaceAll("\\bl$", "L"));
        String of = held.matches() ? held.group(2).strip() : "";
        if (!of.isEmpty()) {
            Optional<String> water = water(of, faults);
            if (water.isEmpty()) {
                return Map.of();
            }
            read.put(WATER, water.get());
        }
        return read;
    }

    private static Optional<String> water(String text, List<String> faults) {
        Optional<String> water = StarterWater.of(text);
        return water.isPresent() ? water : fault(faults, text, StarterWater.ALLOWED);
    }

    private static Optional<String> feed(String text, List<String> faults) {
        StarterFeed feed = StarterFeed.of(text);
        return feed != null ? Optional.of(feed.spelt()) : fault(faults, text, StarterFeed.ALLOWED);
    }

    private static Optional<String> light(String text, int trays, List<String> faults) {
        StarterLight light = StarterLight.of(text);
        if (light == null) {
            return fault(
                    faults,
                    text,
                    "a lamp's watts and its hours (1 to 22), as 24 W 14 h; window;"
                            + " outdoors; 24 W 14 h and window; unknown; or measured, as 200 umol 14 h"
                            + " or 12 klux 14 h");
        }
        if (light.leavesOpen(trays)) {
            return fault(
                    faults,
                    text,
                    "over how many of the %d trays one such lamp stands: %s each, or %2$s over all"
                            .formatted(trays, light.spelt()));
        }
        return Optional.of(light.spelt());
    }

    /** The day on which the plants go in, and with "to" or "for" the last one. */
    private static Map<StarterQuestion, String> season(
            String text, LocalDate today, List<String> faults) {
        Optional<LocalDate> day = StarterDates.day(text, today);
        if (day.isPresent()) {
            return Map.of(START, day.get().toString());
        }
        List<LocalDate> span = StarterDates.span(text, today);
        if (!span.isEmpty() && isSeason(span.get(0), span.get(1))) {
            return Map.of(START, span.get(0).toString(), END, span.get(1).toString());
        }
        fault(
                faults,
                text,
                span.isEmpty()
                        ? "a date that exists, the month by its name, as 1 May 2027, or 2027-05-01; or"
                                + " today; or two, as 1 May to 30 Sep 2027"
                        : SEASON);
        return Map.of();
    }

    private static boolean isSeason(LocalDate first, LocalDate last) {
        long days = ChronoUnit.DAYS.between(first, last);
        return days >= SHORTEST_SEASON_DAYS && days < LONGEST_SEASON_DAYS;
    }

    private static Optional<String> end(
            String text,
            Map<StarterQuestion, String> before,
            LocalDate today,
            List<String> faults) {
        LocalDate start = before.containsKey(START) ? LocalDate.parse(before.get(START)) : today;
        List<LocalDate> lasting = StarterDates.span("today for " + text, start);
        Optional<LocalDate> end =
                lasting.isEmpty() ? StarterDates.day(text, start) : Optional.of(lasting.get(1));
        return end.filter(day -> isSeason(start, day)).isPresent()
                ? end.map(LocalDate::toString)
                : fault(
                        faults,
                        text,
                        "a date after " + start + ", as 30 Sep 2027, or 10 weeks; " + SEASON);
    }

    /** What an answer was taken for that leaves the day, or the days, to be chosen. */
    public Optional<String> taken(String answer, String kept) {
        String text = answer.strip().toLowerCase(Locale.ROOT);
        boolean vague =
                switch (this) {
                    case START, END, AWAY -> StarterDates.isVague(text);
                    case VISITS -> StarterVisits.isVague(text);
                    default -> false;
                };
        return vague ? Optional.of(kept) : Optional.empty();
    }

    private static Optional<String> visits(String text, List<String> faults) {
        Optional<String> days = StarterVisits.of(text);
        return days.isPresent() ? days : fault(faults, text, StarterVisits.ALLOWED);
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
        if (text.matches("(every |at |on )?weekends?")) {
            return weekends(text, before, faults);
        }
        for (String one : spans(text)) {
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
        LocalDate last = stand ? Starter.lastDay(before) : LocalDate.MAX;
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
                                + "; none, if nobody is away then"
                                + (before.containsKey(END)
                                        ? ""
                                        : "; or a later end of the season: --end"));
            }
            free = span.get(1).plusDays(1);
            LocalDate back = before.containsKey(END) ? last : Starter.lastDayPast(span.get(1));
            last = back.isAfter(last) ? back : last;
        }
        return Optional.of(
                spans.stream()
                        .map(span -> span.get(0) + " to " + span.get(1))
                        .collect(Collectors.joining("; ")));
    }

    /** Absences one by one; what comes before the first, as "half-term:", is none. */
    private static List<String> spans(String text) {
        List<String> spans =
                Stream.of(
                                text.split(
                                        " ?; ?| and |,(?! ?\\d{4}\\b)(?=[^,]*\\d[^,]*( to |-|until|\u2013))"))
                        .map(String::strip)
                        .toList();
        List<String> dated =
                spans.stream().filter(one -> one.matches(".*\\d.*|.*(end|mid).*")).toList();
        return dated.isEmpty() ? spans : dated;
    }

    /** Nobody is there on days on which nobody looks. */
    private static Optional<String> weekends(
            String text, Map<StarterQuestion, String> before, List<String> faults) {
        String visits = before.getOrDefault(VISITS, "daily");
        return visits.matches("daily|.*(sat|sun).*")
                ? fault(
                        faults,
                        text,
                        "holidays by their dates; that nobody looks at weekends is told by the days of"
                                + " the week: --visits mon-fri")
                : Optional.of("none");
    }
}
