package tideless.words;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.study.Away;
import tideless.study.Band;
import tideless.study.Outlook;

/** How long nobody need come, in words a person uses. */
public final class AwayWords {
    /** What is said of a time that lasts longer than the run. */
    private static final String END = "to the end";

    /** Harvests that are told one by one. */
    private static final int MOST_HARVESTS = 4;

    private AwayWords() {}

    /**
     * Whole days with their band.
     *
     * @return as "9 (8 to 12)", "9 (8 to the end)" or "to the end (8 at least)"
     */
    public static String days(Band days) {
        String middle = whole(days.middle());
        if (days.middle() == Double.POSITIVE_INFINITY) {
            return days.low() == Double.POSITIVE_INFINITY
                    ? END
                    : END + " (" + whole(days.low()) + " at least)";
        }
        String low = whole(days.low());
        String high = days.high() == Double.POSITIVE_INFINITY ? "the end" : whole(days.high());
        return low.equals(high) ? middle : middle + " (" + low + " to " + high + ")";
    }

    /** Days that are over before the harm begins. */
    private static String whole(double days) {
        return days == Double.POSITIVE_INFINITY ? END : Long.toString((long) Math.floor(days));
    }

    /**
     * As "from Fri 3 Apr on you may be away 8 days (half of the rigs bear 9); with all filled up on
     * Thu 2 Apr, 12 days.".
     */
    public static String leave(Away.Leave leave) {
        return "from "
                + Dates.weekday(leave.from())
                + " on you may be away "
                + told(leave.asItStands().days())
                + leave.filledOn()
                        .filter(on -> !leave.filledUp().days().equals(leave.asItStands().days()))
                        .map(
                                on ->
                                        "; with all filled up on "
                                                + Dates.weekday(on)
                                                + ", "
                                                + told(leave.filledUp().days()))
                        .orElse("")
                + ".";
    }

    /** What is to be counted on first: the lower end. */
    private static String told(Band band) {
        if (band.low() == Double.POSITIVE_INFINITY) {
            return "to the end of the run";
        }
        String low = whole(band.low());
        String least = low + (low.equals("1") ? " day" : " days");
        return whole(band.middle()).equals(low)
                ? least
                : least
                        + " (half of the rigs "
                        + (band.middle() == Double.POSITIVE_INFINITY
                                ? "to the end of the run)"
                                : "bear " + whole(band.middle()) + ")");
    }

    /** As "tray basil dries out" or "salt takes 6 tenths of the harvest of tray basil". */
    public static String harm(Outlook.LikelyHarm harm) {
        if (harm.taken().isPresent()) {
            return taken(harm.taken().get()) + Names.of(harm.tray());
        }
        return Names.of(harm.tray())
                + switch (harm.kind()) {
                    case DIED -> " is lost" + death(harm.by());
                    case HARVEST -> " does not come to its weight";
                    case WILTED -> " wilts for hours";
                    case SALT_WILTED -> " wilts from salt";
                    case OUTLET_UNCOVERED -> " runs empty";
                    default -> " dries out";
                };
    }

    private static String death(String by) {
        return switch (by) {
            case Event.FROST -> " to frost";
            case Event.CHILL -> " to cold";
            case Event.HEAT -> " to heat";
            case Event.DARK -> " for want of light";
            case Event.SALT -> " to salt";
            default -> "";
        };
    }

    private static String taken(Outlook.Taken taken) {
        int tenths = (int) Math.floor(10 * taken.frac() + 0.5);
        String by = Names.of(taken.by());
        return switch (taken.of()) {
            case HARVEST ->
                    by
                            + " takes "
                            + (tenths > 9 ? "nearly all" : tenths + " tenths of")
                            + " the harvest of ";
            case GROWTH -> by + " stunts ";
        };
    }

    /** Harvests that nobody is there for, as "tray left on 12 Apr"; empty for none. */
    public static String missed(List<Away.Harvest> harvests) {
        List<String> told =
                harvests.stream()
                        .limit(MOST_HARVESTS)
                        .map(h -> Names.of(h.tray()) + " on " + Dates.dayMonth(h.on()))
                        .toList();
        int more = harvests.size() - told.size();
        return told.isEmpty()
                ? ""
                : String.join(", ", told) + (more > 0 ? " and " + more + " more" : "");
    }

    /** What comes of an absence, in four sentences at most. */
    public static String absence(Away away, Away.Stated stated) {
        Visits.Absence span = stated.absence();
        StringBuilder text =
                new StringBuilder("Away ")
                        .append(Dates.shortSpan(span.from(), span.to()))
                        .append(": ")
                        .append(
                                through(
                                        away,
                                        stated.chance(),
                                        stated.harm(),
                                        away.scenario().start()))
                        .append('.');
        stated.filledOn()
                .ifPresent(
                        on ->
                                text.append(" Filled up on ")
                                        .append(Dates.weekday(on))
                                        .append(": ")
                                        .append(
                                                through(
                                                        away,
                                                        stated.chanceFilledUp(),
                                                        stated.harmFilledUp(),
                                                        away.scenario().start()))
                                        .append('.'));
        String missed = missed(away.harvests(span.from(), span.to()));
        if (!missed.isEmpty()) {
            text.append(" Nobody is there for what is ready meanwhile: ")
                    .append(missed)
                    .append('.');
        }
        long beyond = span.to().toEpochDay() - away.scenario().lastDay().toEpochDay();
        if (beyond > 0) {
            text.append(" The run ends on ")
                    .append(Dates.dayMonth(away.scenario().lastDay()))
                    .append(": of the ")
                    .append(beyond == 1 ? "day" : beyond + " days")
                    .append(" after it nothing is known.");
        }
        return text.toString();
    }

    private static String through(
            Away away, double chance, Optional<Outlook.LikelyHarm> harm, LocalDate start) {
        long through = (long) Math.floor(chance * away.members() + 0.5);
        String said =
                away.members() == 1
                        ? through == 1 ? "nothing is harmed" : "not without harm"
                        : through == away.members()
                                ? "nothing is harmed in any of " + away.members() + " rigs"
                                : through == 0
                                        ? "something is harmed in all of "
                                                + away.members()
                                                + " rigs"
                                        : "nothing is harmed in "
                                                + through
                                                + " of "
                                                + away.members()
                                                + " rigs";
        return said
                + harm.map(
                                h ->
                                        "; first "
                                                + harm(h)
                                                + " about "
                                                + Dates.dayMonth(
                                                        start.plusDays(
                                                                (long)
                                                                        (h.atS().middle()
                                                                                / Time.DAY_S))))
                        .orElse("");
    }
}
