package tideless.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tideless.advice.Cause;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.study.Outlook;

/** Warnings in words. */
public final class WarningWords {
    /** A loss that would be told as nothing. */
    private static final double TOLD_LOSS_FRAC = 0.005;

    /** Vessels told by name where many are alike. */
    private static final int TOLD_VESSELS = 3;

    private WarningWords() {}

    /** As "too salty, tray basil, from Sat 28 Mar 10:00". */
    public static String head(Warning warning, boolean year) {
        return about(warning) + ", from " + Dates.visit(warning.from(), year);
    }

    private static String about(Warning warning) {
        return Names.of(warning.kind()) + ", " + Names.of(warning.vessel(), warning.crop());
    }

    /** As ", from ", or ", since " of what began before the end of a grower's log. */
    private static String begins(Warning warning, Scenario scenario) {
        boolean isOn =
                !scenario.log().isEmpty()
                        && !warning.from()
                                .isAfter(LogWords.clock(scenario, scenario.log().lastS()));
        return isOn ? ", since " : ", from ";
    }

    /** Where nothing is warned of; many rigs that come to harm are not passed over in silence. */
    public static String none(Optional<Outlook> outlook) {
        return outlook.filter(o -> !o.survives()).isPresent()
                ? "No warnings of the rig as stated; what harms others like it stands above."
                : "No warnings.";
    }

    /** What was, up to the end of a grower's log, in a sentence; empty where nothing was. */
    public static Optional<String> past(List<Warning> past) {
        return told(past).map(what -> "Past, as this run has it: " + what + ".");
    }

    /** As "too salty, tray basil (28 Mar to 3 Apr); ..."; empty for none. */
    private static Optional<String> told(List<Warning> warnings) {
        Map<String, List<Warning>> alike = new LinkedHashMap<>();
        for (Warning warning : warnings) {
            String key = warning.kind() + " " + warning.vessel().kind() + " " + when(warning);
            alike.computeIfAbsent(key, k -> new ArrayList<>()).add(warning);
        }
        List<String> parts = new ArrayList<>();
        for (List<Warning> of : alike.values()) {
            parts.add(about(of) + " (" + when(of.get(0)) + ")");
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", parts));
    }

    private static String when(Warning warning) {
        return Dates.shortSpan(warning.from().toLocalDate(), warning.until().toLocalDate());
    }

    /** The figure, or the cause where no figure says it or where both are needed. */
    public static String brief(Warning warning) {
        String figure = figure(warning);
        return switch (warning.kind()) {
            case STARVED_VALVE, SHORT_OF_ONE, PRECIPITATE, CUPS_UNDER -> why(warning);
            default ->
                    (figure.isEmpty() ? CauseWords.of(warning.cause()) : figure)
                            + (bolts(warning) ? "; " + CauseWords.of(warning.cause()) : "")
                            + cost(warning);
        };
    }

    /** Whether what the air does to it is more than that it does not bear it. */
    private static boolean bolts(Warning warning) {
        return warning.cause().kind() == Cause.Kind.BOLTS_IN_HEAT
                || warning.cause().kind() == Cause.Kind.BOLTS_IN_LONG_DAYS
                || warning.cause().kind() == Cause.Kind.BURNS_IN_HOT_HOURS;
    }

    /** The cause with its figure and limit. */
    public static String why(Warning warning) {
        String figure = figure(warning);
        return CauseWords.of(warning.cause())
                + (figure.isEmpty() ? "" : ": " + figure)
                + cost(warning);
    }

    /** What it takes of the crop; of a pH, which no run counts, what a trial lost. */
    private static String cost(Warning warning) {
        if (warning.kind() == Warning.Kind.PH_OUT
                && warning.measure().side() == Measure.Side.AT_MOST) {
            return "; leaves go pale for want of iron, which no weight here counts (lettuce at pH 7.0"
                    + " weighed 26 % less than at 5.8: Anderson et al. 2017)";
        }
        if (warning.kind() == Warning.Kind.PH_OUT) {
            return "; roots take less potassium, calcium and magnesium of acid: what that costs is in"
                    + " the weights here";
        }
        if (warning.kind() == Warning.Kind.WARM_SOLUTION
                && warning.measure().value() >= Warning.ROTS_C) {
            return "; roots rot within days so warm, which no weight here counts";
        }
        if (warning.cause().facts().has(Quantity.LATE)) {
            return "; the crop is ready about "
                    + CauseWords.figure(warning.cause().facts(), Quantity.LATE)
                    + " later for it";
        }
        return warning.lossFrac() >= TOLD_LOSS_FRAC
                ? "; takes " + Numbers.percent(warning.lossFrac()) + " of the harvest"
                : "";
    }

    /** What is no more than a note, in sentences: a likely pH, then what costs next to nothing. */
    public static Optional<String> minor(List<Warning> minor) {
        List<String> sentences = new ArrayList<>();
        likely(minor, Measure.Side.AT_MOST)
                .ifPresent(
                        where ->
                                sentences.add(
                                        "Likely pH above its band: "
                                                + where
                                                + ": acid by the meter, in drops."));
        likely(minor, Measure.Side.AT_LEAST)
                .ifPresent(
                        where ->
                                sentences.add(
                                        "Likely pH below its band: "
                                                + where
                                                + ": potassium bicarbonate by the meter, a little"
                                                + " at a time."));
        aLittleDim(minor).ifPresent(sentences::add);
        told(minor.stream().filter(w -> !isLikely(w) && !isDim(w)).toList())
                .ifPresent(what -> sentences.add("Costs next to nothing: " + what + "."));
        return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
    }

    private static boolean isDim(Warning warning) {
        return warning.kind() == Warning.Kind.LOW_LIGHT;
    }

    /** Light that is a little short; empty where none is. */
    private static Optional<String> aLittleDim(List<Warning> minor) {
        List<String> parts = new ArrayList<>();
        for (Warning warning : minor) {
            if (isDim(warning)) {
                parts.add(
                        Names.of(warning.vessel(), warning.crop())
                                + " ("
                                + Numbers.of(warning.measure().value(), warning.measure().unit())
                                + ", where "
                                + limit(warning.measure())
                                + " are asked for)");
            }
        }
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        Set<String> cures = new LinkedHashSet<>();
        minor.stream()
                .filter(WarningWords::isDim)
                .flatMap(w -> w.cures().stream())
                .forEach(cure -> cures.add(CureWords.of(cure)));
        return Optional.of(
                "A little dim, and so much slower: "
                        + String.join("; ", parts)
                        + (cures.isEmpty() ? "" : ": " + String.join("; or ", cures))
                        + ".");
    }

    /** Whether it is a pH that is likely, but not surely, far out of its band. */
    private static boolean isLikely(Warning warning) {
        Facts facts = warning.cause().facts();
        return facts.has(Quantity.SURE) && facts.get(Quantity.SURE) == 0;
    }

    /** As "tray herbs, about 18 Sep to 30 Nov, up to pH 7.4 (limit: pH 6.5)"; empty for none. */
    private static Optional<String> likely(List<Warning> minor, Measure.Side side) {
        Map<String, List<Warning>> alike = new LinkedHashMap<>();
        for (Warning warning : minor) {
            if (isLikely(warning) && warning.measure().side() == side) {
                alike.computeIfAbsent(course(warning), k -> new ArrayList<>()).add(warning);
            }
        }
        List<String> parts = new ArrayList<>();
        alike.forEach((course, of) -> parts.add(where(of) + ", " + course));
        return parts.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", parts));
    }

    private static String course(Warning warning) {
        Measure measure = warning.measure();
        Facts facts = warning.cause().facts();
        boolean isApart =
                facts.has(Quantity.DAYS_BEYOND) && facts.get(Quantity.DAYS_BEYOND) < span(warning);
        return "about "
                + when(warning)
                + (isApart ? " (on " + CauseWords.figure(facts, Quantity.DAYS_BEYOND) + ")" : "")
                + (measure.side() == Measure.Side.AT_MOST ? ", up to " : ", down to ")
                + Numbers.of(measure.value(), measure.unit())
                + " (limit: "
                + limit(measure)
                + ")";
    }

    private static String figure(Warning warning) {
        Measure measure = warning.measure();
        if (Double.isNaN(measure.value())) {
            return "";
        }
        String value = Numbers.of(measure.value(), measure.unit());
        return switch (warning.kind()) {
            case DRIED_OUT -> value + " in all; " + left(warning.cause().facts());
            case STRANDED, DROWNED -> value + " in all";
            case RAN_DRY -> value + "; " + left(warning.cause().facts());
            case OVERFLOW -> value + " on the floor";
            case TOO_HOT ->
                    "up to "
                            + value
                            + (warning.cause().kind() == Cause.Kind.BURNS_IN_HOT_HOURS
                                    ? " in the hottest hour"
                                    : " in the mean of a day")
                            + "; limit: "
                            + limit(measure)
                            + days(warning);
            case CUPS_UNDER -> ""; // its cause says how deep
            case PH_OUT ->
                    (measure.side() == Measure.Side.AT_MOST ? "likely up to " : "likely down to ")
                            + value
                            + "; limit: "
                            + limit(measure)
                            + days(warning);
            case OUTGROWN ->
                    "a full one lasts "
                            + value
                            + ", the longest time between visits is "
                            + Numbers.of(measure.limit(), measure.unit());
            default ->
                    switch (measure.side()) {
                        case AT_MOST ->
                                "up to " + value + "; limit: " + limit(measure) + days(warning);
                        case AT_LEAST ->
                                "down to " + value + "; limit: " + limit(measure) + days(warning);
                        case NONE -> value;
                    };
        };
    }

    /** Until when, or on how many days and until when where these lie apart; empty for neither. */
    private static String days(Warning warning) {
        Facts facts = warning.cause().facts();
        boolean isCounted = facts.has(Quantity.DAYS_BEYOND);
        if (!isCounted && warning.kind() != Warning.Kind.PH_OUT) {
            return "";
        }
        LocalDate last = warning.until().toLocalDate();
        return !isCounted || facts.get(Quantity.DAYS_BEYOND) > span(warning)
                ? "; until " + Dates.weekday(last)
                : "; on "
                        + CauseWords.figure(facts, Quantity.DAYS_BEYOND)
                        + ", the last "
                        + Dates.weekday(last);
    }

    /** Days from the first to the last of it, d. */
    private static long span(Warning warning) {
        return warning.until().toLocalDate().toEpochDay()
                - warning.from().toLocalDate().toEpochDay();
    }

    private static String limit(Measure measure) {
        return Numbers.of(measure.limit(), measure.unit());
    }

    /** As "31 hours left at the visit before (Mon 2 Mar 08:00)". */
    private static String left(Facts facts) {
        String hours = CauseWords.figure(facts, Quantity.HELD_WATER) + " left at the ";
        return hours
                + (facts.on() == null
                        ? "start"
                        : "visit before (" + Dates.visit(facts.on(), false) + ")");
    }

    /** Those that differ but in where, when and how much beside each other, in their order. */
    public static List<List<Warning>> alike(List<Warning> warnings) {
        Map<String, List<Warning>> alike = new LinkedHashMap<>();
        for (Warning warning : warnings) {
            alike.computeIfAbsent(likeness(warning), k -> new ArrayList<>()).add(warning);
        }
        return List.copyOf(alike.values());
    }

    private static String likeness(Warning warning) {
        StringBuilder key = new StringBuilder();
        key.append(warning.kind()).append(warning.vessel().kind()).append(warning.cause().kind());
        key.append(warning.cause().facts().of()).append(warning.measure().limit());
        warning.cures().forEach(cure -> key.append(cure.kind()));
        return key.toString();
    }

    /** Of several that are alike, as "too salty, trays left and right, from Sat 28 Mar 10:00". */
    public static String head(List<Warning> alike, boolean year) {
        return about(alike) + ", from " + Dates.visit(alike.get(0).from(), year);
    }

    /** The same of a run: "since" of what began before the end of its log and goes on. */
    public static String head(List<Warning> alike, Scenario scenario, boolean year) {
        Warning first = alike.get(0);
        return about(alike) + begins(first, scenario) + Dates.visit(first.from(), year);
    }

    private static String about(List<Warning> alike) {
        return Names.of(alike.get(0).kind()) + ", " + where(alike);
    }

    private static String where(List<Warning> alike) {
        Warning first = alike.get(0);
        List<String> names = alike.stream().map(w -> Names.clean(w.vessel().name())).toList();
        Set<String> where = new LinkedHashSet<>();
        alike.forEach(w -> where.add(Names.clean(w.vessel().name()) + Names.ofCrop(w.crop())));
        List<String> shown = new ArrayList<>(where);
        if (shown.size() > TOLD_VESSELS + 1) {
            int more = shown.size() - TOLD_VESSELS;
            shown = new ArrayList<>(shown.subList(0, TOLD_VESSELS));
            shown.add(more + " more");
        }
        return Names.vessels(first.vessel().kind(), names, shown);
    }

    /** One as a sentence. */
    public static String text(Warning warning) {
        return text(List.of(warning));
    }

    /** Several that are alike as one sentence, with the figures of the first. */
    public static String text(List<Warning> alike) {
        Warning warning = alike.get(0);
        String cure = CureWords.of(warning.cures());
        return head(alike, true)
                + ": "
                + why(warning)
                + (cure.isEmpty() ? "" : "; cure: " + cure)
                + ".";
    }
}
