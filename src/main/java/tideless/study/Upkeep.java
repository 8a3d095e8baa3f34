package tideless.study;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.rig.Filling;
import tideless.rig.Liquid;
import tideless.rig.Pouring;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.solution.ElectricalConductivity;

/**
 * Another way to keep one tray, each part of which is a value of its scenario file.
 *
 * @param tray which
 * @param feedMsPerCm EC of its feed; empty for the feed as it is
 * @param changesAtLimit whether visits drain and fill anew what is out of its band, where they do
 *     not yet
 * @param poursFeed whether it is topped up with feed alone in place of water or a part of it
 * @param weekdays of the visits; empty for those that there are
 * @param toM level it is topped up to, m; empty as it is
 * @param startM level it is filled to first, m; empty as it is
 */
record Upkeep(
        VesselId tray,
        OptionalDouble feedMsPerCm,
        boolean changesAtLimit,
        boolean poursFeed,
        Optional<Set<DayOfWeek>> weekdays,
        OptionalDouble toM,
        OptionalDouble startM) {
    /** What another strength of the feed costs whoever keeps it; all efforts are assumed. */
    private static final double OTHER_FEED_EFFORT = 1;

    /** Of draining and mixing anew, again and again. */
    private static final double CHANGE_EFFORT = 1.5;

    /** Of another mark in the tray. */
    private static final double MARK_EFFORT = 0.5;

    /** Of each visit more in a week. */
    private static final double VISIT_EFFORT = 0.6;

    Upkeep {
        Objects.requireNonNull(tray, "tray");
        weekdays = weekdays.map(Set::copyOf);
    }

    Upkeep fedAt(double msPerCm) {
        return new Upkeep(
                tray, OptionalDouble.of(msPerCm), changesAtLimit, poursFeed, weekdays, toM, startM);
    }

    /** How much more work it is than as it is. */
    double effort(Scenario as) {
        double more = feedMsPerCm.isPresent() || poursFeed ? OTHER_FEED_EFFORT : 0;
        more += changesAtLimit ? CHANGE_EFFORT : 0;
        more += toM.isPresent() ? MARK_EFFORT : 0;
        more += startM.isPresent() ? MARK_EFFORT : 0;
        return more
                + VISIT_EFFORT
                        * weekdays.map(d -> d.size() - as.visits().weekdays().size()).orElse(0);
    }

    /** The scenario kept so; empty where its feed cannot be made. */
    Optional<Scenario> of(Scenario as) {
        Scenario so = as;
        if (changesAtLimit) {
            so = so.withVisits(so.visits().withFlush(Visits.Flush.AT_LIMIT));
        }
        if (weekdays.isPresent()) {
            so = so.withVisits(so.visits().withWeekdays(weekdays.get()));
        }
        Tray now = so.tray(tray).orElseThrow();
        so = so.withTray(kept(now));
        if (feedMsPerCm.isEmpty()) {
            return Optional.of(so);
        }
        return CureTrials.fed(so, feedMsPerCm.getAsDouble(), so.feedOf(now));
    }

    private Tray kept(Tray now) {
        Tray kept = startM.isPresent() ? now.withStartLevelM(startM.getAsDouble()) : now;
        return kept.filling() instanceof Filling.ByHand hand
                ? kept.withFilling(
                        new Filling.ByHand(
                                toM.orElse(hand.toLevelM()),
                                hand.days(),
                                poursFeed ? Pouring.FEED : hand.with(),
                                hand.inSteps()))
                : kept;
    }

    /** What a file has to say for it. */
    Facts facts(Scenario as) {
        Tray now = as.tray(tray).orElseThrow();
        Liquid feed = as.feedOf(now);
        Facts facts = Facts.NONE;
        if (feedMsPerCm.isPresent()) {
            facts =
                    facts.and(
                                    Quantity.FEED_EC,
                                    ElectricalConductivity.at25MsPerCm(feed.composition()))
                            .and(Quantity.WANTED_EC, feedMsPerCm.getAsDouble());
        }
        if (changesAtLimit) {
            facts = facts.and(Quantity.EC_LIMIT, now.limits().ecHighMsPerCm());
        }
        if (poursFeed) {
            facts = facts.and(Quantity.LATER_SHARE, 0);
        }
        if (weekdays.isPresent()) {
            facts = facts.named(written(weekdays.get()));
        }
        if (toM.isPresent()) {
            facts = facts.and(Quantity.LEVEL, 1000 * toM.getAsDouble());
        }
        if (startM.isPresent()) {
            facts = facts.and(Quantity.START_LEVEL, 1000 * startM.getAsDouble());
        }
        return facts;
    }

    /** As "mon, wed, fri". */
    private static String written(Set<DayOfWeek> days) {
        return String.join(
                ", ",
                days.stream()
                        .sorted(Comparator.naturalOrder())
                        .map(d -> d.name().substring(0, 3).toLowerCase(Locale.ROOT))
                        .toList());
    }

    /** Weekdays on which somebody might come more often than now, the fewest first. */
    static List<Set<DayOfWeek>> moreVisits(Visits now) {
        List<Set<DayOfWeek>> more = new ArrayList<>();
        for (Set<DayOfWeek> days :
                List.of(
                        EnumSet.of(DayOfWeek.WEDNESDAY, DayOfWeek.SATURDAY),
                        EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY),
                        EnumSet.of(
                                DayOfWeek.MONDAY,
                                DayOfWeek.WEDNESDAY,
                                DayOfWeek.FRIDAY,
                                DayOfWeek.SUNDAY),
                        EnumSet.allOf(DayOfWeek.class))) {
            if (days.size() > now.weekdays().size()) {
                more.add(days);
            }
        }
        return more;
    }
}
