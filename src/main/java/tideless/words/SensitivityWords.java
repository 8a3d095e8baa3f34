package tideless.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tideless.physics.Time;
import tideless.study.Band;
import tideless.study.Sensitivity;

/** What moves an answer, in words a person uses. */
public final class SensitivityWords {
    private SensitivityWords() {}

    /** As "thirst of basil". */
    public static String name(Sensitivity.Group group) {
        return switch (group.kind()) {
            case THIRST -> "thirst of " + Names.clean(group.of());
            case DAYS -> "thirsty and easy weeks";
            case GROWTH -> "pace of growth";
            case CONTENTS -> "what the crops eat";
            case ROOTS -> "pace of roots";
            case AIR -> "warmth, damp of the air";
            case LIGHT -> "light";
            case FEED -> "strength of the feed";
            case METER -> "error of the meter";
            case VALVE -> "level of the valves";
            case GAPS -> "gaps around cups";
            case YEAR -> "the year's weather";
            case VISITS -> "visits that fall out";
        };
    }

    /** What it is found out with, as "ruler"; empty where nobody can. */
    public static String tool(Sensitivity.Kind kind) {
        return switch (kind) {
            case THIRST, ROOTS, VALVE, GAPS -> "ruler";
            case GROWTH -> "scales";
            case CONTENTS -> "EC meter";
            case AIR -> "thermometer, hygrometer";
            case LIGHT -> "light meter";
            case FEED -> "scales, EC meter";
            case METER -> "calibration solution";
            case DAYS, YEAR, VISITS -> "";
        };
    }

    /** How it is found out; common practice, no source. */
    public static String how(Sensitivity.Kind kind) {
        return switch (kind) {
            case THIRST ->
                    "with a ruler: the fall of the level between two looks some days apart with"
                            + " nothing flowing in; inside length x width x fall are the litres";
            case ROOTS ->
                    "with a ruler: from the bottom of a cup to the lowest root tip, once a week";
            case VALVE -> "with a ruler: the level at the wall when the valve has just shut";
            case GAPS -> "with a ruler: the open ring around some cups, in mm";
            case GROWTH -> "with kitchen scales: what a plant of a known age weighs";
            case CONTENTS -> "with the EC meter: the EC of the tray week by week";
            case AIR ->
                    "with a thermometer and a hygrometer in the shade among the leaves, by day and"
                            + " by night, for a week";
            case LIGHT ->
                    "with a light meter at leaf height, lamps on, at several places of the tray";
            case FEED ->
                    "with scales for the salts, a checked jug, and a calibrated meter in the fresh"
                            + " feed";
            case METER -> "with a calibration solution";
            case DAYS, YEAR, VISITS -> "by nobody beforehand";
        };
    }

    /** As "next refill". */
    public static String of(Sensitivity.Asked asked) {
        return switch (asked) {
            case NEXT_REFILL -> "next refill";
            case COMES_THROUGH -> "verdict";
            case FIRST_HARVEST -> "first harvest";
            case LITRES -> "litres";
        };
    }

    /** What is said of every answer, one sentence or two each, then what need not be measured. */
    public static List<String> sentences(Sensitivity of) {
        List<String> sentences = new ArrayList<>();
        Set<Sensitivity.Kind> told = EnumSet.noneOf(Sensitivity.Kind.class);
        for (Sensitivity.Answer answer : of.answers()) {
            sentences.add(spread(of, answer) + first(answer, told));
        }
        List<String> idle =
                of.groups().stream()
                        .filter(g -> g.kind().isMeasurable())
                        .filter(
                                g ->
                                        of.answers().stream()
                                                .flatMap(a -> a.of(g).stream())
                                                .noneMatch(s -> s.matters() || s.tellsAlone()))
                        .map(SensitivityWords::name)
                        .toList();
        boolean moved = of.answers().stream().anyMatch(a -> !a.shares().isEmpty());
        if (moved && !idle.isEmpty()) {
            sentences.add("Not worth measuring for any of these: " + and(idle) + ".");
        }
        return sentences;
    }

    private static String and(List<String> names) {
        int last = names.size() - 1;
        return last == 0
                ? names.get(0)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    private static String spread(Sensitivity of, Sensitivity.Answer answer) {
        Band band = answer.band();
        String rigs = Integer.toString(band.members());
        return switch (answer.asked()) {
            case COMES_THROUGH -> {
                int through = (int) Math.floor(answer.mean() * band.members() + 0.5);
                yield answer.shares().isEmpty()
                        ? through == 0
                                ? "Verdict: none of " + rigs + " rigs comes through."
                                : "Verdict: all of " + rigs + " rigs come through."
                        : "Verdict: " + through + " of " + rigs + " rigs come through.";
            }
            case LITRES ->
                    answer.shares().isEmpty()
                            ? "Litres: "
                                    + Numbers.litres(band.middle())
                                    + " L in every rig, whatever is unknown."
                            : (of.scenario().log().isEmpty()
                                            ? "Litres poured to the end: "
                                            : "Litres poured in the whole run: ")
                                    + Numbers.litres(band.low())
                                    + " to "
                                    + Numbers.litres(band.high())
                                    + " L.";
            case NEXT_REFILL -> date(of, answer, "Next refill", "is needed");
            case FIRST_HARVEST -> date(of, answer, "First harvest", "comes");
        };
    }

    private static String date(
            Sensitivity of, Sensitivity.Answer answer, String what, String comes) {
        Band band = answer.band();
        if (band.neverFrac() == 1) {
            return what
                    + ": none "
                    + comes
                    + " in any of "
                    + band.members()
                    + " rigs before the run ends on "
                    + Dates.dayMonth(of.scenario().lastDay())
                    + ", so nothing moves it.";
        }
        if (answer.shares().isEmpty()) {
            return what
                    + ": "
                    + day(of, band.middle())
                    + " in every rig; nothing that is unknown moves it.";
        }
        String never =
                band.neverFrac() > 0
                        ? " In "
                                + Numbers.percent(band.neverFrac())
                                + " none "
                                + comes
                                + " before the run ends, which counts as its last day."
                        : "";
        String low = day(of, band.low());
        String high = day(of, band.high());
        return what
                + ": "
                + (low.equals(high) ? low : low + " to " + high)
                + " in 8 of 10 rigs."
                + never;
    }

    private static String day(Sensitivity of, double atS) {
        if (atS == Double.POSITIVE_INFINITY) {
            return "never";
        }
        LocalDate day = of.scenario().start().plusDays((long) Math.floor(atS / Time.DAY_S));
        return Dates.dayMonth(day);
    }

    /** How it is found out is told once. */
    private static String first(Sensitivity.Answer answer, Set<Sensitivity.Kind> told) {
        if (answer.shares().isEmpty()) {
            return "";
        }
        Optional<Sensitivity.Share> first = answer.measureFirst();
        if (first.isEmpty()) {
            String most =
                    answer.shares().stream()
                            .filter(Sensitivity.Share::matters)
                            .limit(3)
                            .map(s -> name(s.group()) + " (" + percent(s.total()) + " %)")
                            .collect(Collectors.joining(", "));
            return " Nothing that you could measure makes this surer by itself"
                    + (most.isEmpty() ? "." : "; most comes of " + most + ".");
        }
        Sensitivity.Share share = first.get();
        return " Measure first: "
                + name(share.group())
                + (told.add(share.group().kind()) ? ", " + how(share.group().kind()) : ", likewise")
                + ". "
                + gain(answer, share);
    }

    /** What is left of the band if the unknown is known: the square root of what is left of it. */
    private static String gain(Sensitivity.Answer answer, Sensitivity.Share share) {
        double left = Math.sqrt(Math.max(0, 1 - share.alone()));
        double width = answer.band().high() - answer.band().low();
        String goes =
                "Known exactly, it takes away "
                        + Numbers.percent(Math.min(1, share.alone()))
                        + " of the variance (+-"
                        + Numbers.percent(share.aloneError())
                        + ")";
        if (answer.asked() == Sensitivity.Asked.COMES_THROUGH
                || !(width > 0 && width < Double.POSITIVE_INFINITY)) { // never at both ends is none
            return goes + ".";
        }
        return goes
                + ": "
                + (answer.asked().isTime()
                        ? Numbers.days(width * left / Time.DAY_S)
                                + " between early and late instead of "
                                + Numbers.days(width / Time.DAY_S)
                        : Numbers.litres(width * left)
                                + " L between little and much instead of "
                                + Numbers.litres(width)
                                + " L")
                + ".";
    }

    /** As "52 +-4 (40)": total, its error, alone, in per cent; "-" for next to nothing. */
    public static String cell(Sensitivity.Share share) {
        return share.matters()
                ? percent(share.total())
                        + " +-"
                        + percent(share.totalError())
                        + " ("
                        + percent(share.alone())
                        + ")"
                : "-";
    }

    /** An estimate may fall outside what a share can be. */
    private static String percent(double frac) {
        return Numbers.whole(100 * Math.max(0, Math.min(1, frac)));
    }
}
