package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Days of the week on which somebody looks, as people tell them. */
final class StarterVisits {
    private static final List<String> DAYS =
            List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

    static final String ALLOWED =
            "daily, weekdays, weekends, mon-fri, twice a week, or some of "
                    + String.join(" ", DAYS);

    private static final Pattern DAYS_ON_END =
            Pattern.compile("([a-z]+)(?:\\s*-\\s*|\\s+to\\s+)([a-z]+)");

    /** Where only a number of days a week is told: as even as a week allows, from Monday on. */
    private static final Map<String, String> TIMES =
            Map.of(
                    "once|one time|1 time|1x", "mon",
                    "twice|two times|2 times|2x", "mon thu",
                    "three times|3 times|3x|thrice|a few times|few times", "mon wed fri",
                    "four times|4 times|4x", "mon wed fri sun",
                    "five times|5 times|5x", "mon tue wed thu fri",
                    "six times|6 times|6x", "mon tue wed thu fri sat");

    private static final Pattern A_WEEK =
            Pattern.compile("(?:about |some )?(.+?)(?: (?:a|per|each|every) week|/week| weekly)");

    private StarterVisits() {}

    /** As it is kept: daily, or as "mon thu"; empty where it says no days. */
    static Optional<String> of(String text) {
        if (text.matches("(?:daily|every ?day|each day|(?:7|seven) (?:days|times) a week)")) {
            return Optional.of("daily");
        }
        String times = times(text);
        if (!times.isEmpty()) {
            return Optional.of(times);
        }
        String named =
                spelledOut(text.replaceAll("\\b(?:every|each|on|the)\\b", " "))
                        .replaceAll("\\band\\b|[&+/]", " ")
                        .replaceAll(
                                "weekdays?|school days?|work(?:ing)? ?days?", "mon tue wed thu fri")
                        .replaceAll("weekends?", "sat sun");
        List<String> days = new ArrayList<>();
        for (String word : named.strip().split("[ ,]+")) {
            if (dayOfWeek(word) < 0) {
                return Optional.empty();
            }
            String day = DAYS.get(dayOfWeek(word));
            if (!days.contains(day)) {
                days.add(day);
            }
        }
        return Optional.of(String.join(" ", days));
    }

    /** Days as a scenario has them, in quotation marks. */
    static String written(String kept) {
        return kept.equals("daily")
                ? "\"daily\""
                : Stream.of(kept.split(" "))
                        .map(day -> '"' + day + '"')
                        .collect(Collectors.joining(", ", "[", "]"));
    }

    /** Whether only the number of days was told, so that the days were chosen. */
    static boolean isVague(String text) {
        return !times(text).isEmpty();
    }

    private static String times(String text) {
        if (text.equals("weekly") || text.equals("every week")) {
            return DAYS.get(0);
        }
        if (text.matches("every (?:other|second|2nd) day|every (?:2|two) days")) {
            return "mon wed fri";
        }
        Matcher week = A_WEEK.matcher(text);
        if (week.matches()) {
            for (Map.Entry<String, String> times : TIMES.entrySet()) {
                if (week.group(1).matches(times.getKey())) {
                    return times.getValue();
                }
            }
        }
        return "";
    }

    /** As "sat sun mon" for "sat-mon" within a text. */
    private static String spelledOut(String text) {
        Matcher span = DAYS_ON_END.matcher(text);
        StringBuilder spelled = new StringBuilder();
        int copied = 0;
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
            spelled.append(text, copied, span.start()).append(days);
            copied = span.end();
        }
        return spelled.append(text.substring(copied)).toString();
    }

    /** Of "monday", "mondays", "Mon": 0; of no day: -1. */
    private static int dayOfWeek(String word) {
        return word.length() > 3
                        && !word.matches(
                                "(mon|tues|wednes|thurs|fri|satur|sun)days?|tues|thur|thurs")
                ? -1
                : DAYS.indexOf(word.length() > 3 ? word.substring(0, 3) : word);
    }
}
