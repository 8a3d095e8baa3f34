package tideless.scenario;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tideless.solution.Composition;

/** The source water of a first scenario, as people tell it. */
final class StarterWater {
    /** What stands for tap water of which nothing is known. */
    static final String USUAL = "soft-tap";

    static final String ALLOWED =
            "soft tap, hard tap (the kettle furs), medium tap, rain, reverse osmosis, or what a pen"
                    + " reads in it, as 0.4 mS/cm or 200 ppm-500";

    private static final Map<String, String> NAMES =
            Map.of(
                    "soft", USUAL,
                    "hard", "hard-tap",
                    "medium", "medium-tap",
                    "rain\\w*", "rain",
                    "(?:reverse[ -])?osmosis|ro", "reverse-osmosis",
                    "distilled|pure|deioni[sz]ed", "pure",
                    "unknown|usual|don'?t know|not known", USUAL);

    private static final Pattern READING =
            Pattern.compile(
                    "\\b(\\d+(?:\\.\\d+)?)\\s*(ms/cm|us/cm|\u00b5s/cm|ds/m|ppm-500|ppm-700)(?![\\w/])");

    private static final String HALF = "50";
    private static final String WITH = " with ";
    private static final String RAIN = " % rain";

    private static final Pattern MIXED =
            Pattern.compile(
                    "\\b(?:(?:and |with |plus )?(?:(\\d{1,2}) ?%|half)(?: of)?(?: it)? rain(?:[ -]?water)?|mixed with rain)\\b");

    private StarterWater() {}

    /** As it is kept: a name of the scenario's, or a reading; empty where it says neither. */
    static Optional<String> of(String told) {
        Matcher mixed = MIXED.matcher(told.toLowerCase(Locale.ROOT));
        if (!mixed.find()) {
            return alone(told);
        }
        String share = mixed.group(1) == null ? HALF : mixed.group(1);
        String rest = told.substring(0, mixed.start()) + told.substring(mixed.end());
        return LiquidKeys.RAIN_SHARE.read(share + " %").isSound()
                ? alone(rest).map(tap -> tap + WITH + share + RAIN)
                : Optional.empty();
    }

    /**
     * What softens it: the same with as much rain as a feed takes to come to its pH, half of it
     * where that is not known; and rain alone.
     */
    static List<String> softer(String kept, Starter.Feed feed) {
        String tap = kept.contains(WITH) ? kept.substring(0, kept.indexOf(WITH)) : kept;
        if (tap.equals(USUAL) || tap.equals("rain")) {
            return List.of();
        }
        OptionalInt needed = needed(tap, feed);
        String share = needed.isPresent() ? Integer.toString(needed.getAsInt()) : HALF;
        return List.of(tap + WITH + share + RAIN, "rain");
    }

    /**
     * Share of rain with which a feed comes to its pH by an acid that anybody may own, per cent.
     */
    private static OptionalInt needed(String tap, Starter.Feed feed) {
        Composition water =
                Character.isDigit(tap.charAt(0))
                        ? Solutions.CURRENT.waterReading(LiquidKeys.WATER_EC.read(tap).value())
                        : Solutions.CURRENT.water(tap);
        return Solutions.CURRENT.feed(
                                feed.recipe(),
                                water,
                                feed.msPerCm(),
                                Starter.PH,
                                Solutions.ACIDS.get(0))
                        instanceof Solutions.Made made
                ? made.rainShareFrac().stream()
                        .mapToInt(frac -> (int) Math.floor(100 * frac + 0.5))
                        .findFirst()
                : OptionalInt.empty();
    }

    private static Optional<String> alone(String told) {
        Matcher reading = READING.matcher(told.toLowerCase(Locale.ROOT));
        if (reading.find()) {
            String ec = reading.group(1) + " " + unit(reading.group(2));
            return LiquidKeys.WATER_EC.read(ec).isSound() ? Optional.of(ec) : Optional.empty();
        }
        List<String> named =
                NAMES.entrySet().stream()
                        .filter(
                                name ->
                                        told.toLowerCase(Locale.ROOT)
                                                .matches(".*\\b(" + name.getKey() + ")\\b.*"))
                        .map(Map.Entry::getValue)
                        .distinct()
                        .toList();
        return named.size() == 1 ? Optional.of(named.get(0)) : Optional.empty();
    }

    /** A unit as a scenario spells it, of one in small letters. */
    static String unit(String small) {
        return small.startsWith("ppm") ? small : small.replace("s/", "S/");
    }

    /** The lines of a scenario, the first without its comment. */
    static List<String> lines(String kept) {
        int with = kept.indexOf(WITH);
        String tap = with < 0 ? kept : kept.substring(0, with);
        String line = (Character.isDigit(tap.charAt(0)) ? "ec" : "source") + " = \"" + tap + '"';
        return with < 0
                ? List.of(line)
                : List.of(
                        line,
                        "rain_share = \""
                                + kept.substring(
                                        with + WITH.length(), kept.length() - RAIN.length())
                                + " %\"");
    }
}
