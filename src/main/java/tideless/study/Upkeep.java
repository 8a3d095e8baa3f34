package tideless.study;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.FlushRule;
import tideless.solution.ElectricalConductivity;

/**
 * Another way to keep one tray, each part of which is a value of its scenario file.
 *
 * @param tray which
 * @param feedMsPerCm EC of its feed; empty for the feed as it is
 * @param changesAtLimit whether visits drain and fill anew what is out of its band, where they do
 *     not yet
 * @param poursFeed whether it is topped up with feed alone in place of water or a part of it
 * @param waterFrac share of plain water in each top-up from the start on, 0-1; empty as it is
 * @param weekdays of the visits; empty for those that there are
 * @param toM level it is topped up to, m; empty as it is
 * @param startM level it is filled to first, m; empty as it is
 */
record Upkeep(
        VesselId tray,
        OptionalDouble feedMsPerCm,
        boolean changesAtLimit,
        boolean poursFeed,
        OptionalDouble waterFrac,
        Optional<Set<DayOfWeek>> weekdays,
        OptionalDouble toM,
        OptionalDouble startM) {
    /** What another strength of the feed costs whoever keeps it; all efforts are assumed. */
    private static final double OTHER_FEED_EFFORT = 0.5;

    /** Of draining and mixing anew, again and again. */
    private static final double CHANGE_EFFORT = 1.5;

    /** Of another mark in the tray. */
    private static final double MARK_EFFORT = 0.5;

    /** Of each visit more in a week. */
    private static final double VISIT_EFFORT = 0.6;

    /** What of it differs from the tray as it is. */
    enum Part {
        FEED,
        POURED,
        WATER,
        MARK,
        START,
        CHANGES,
        VISITS
    }

    Upkeep {
        Objects.requireNonNull(tray, "tray");
        weekdays = weekdays.map(Set::copyOf);
    }

    Upkeep fedAt(double msPerCm) {
        return new Upkeep(
                tray,
                OptionalDouble.of(msPerCm),
                changesAtLimit,
                poursFeed,
                waterFrac,
                weekdays,
                toM,
                startM);
    }

    /** What of it differs, in the order of the efforts. */
    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        for (Part part : Part.values()) {
            boolean isIn =
                    switch (part) {
                        case FEED -> feedMsPerCm.isPresent();
                        case POURED -> poursFeed;
                        case WATER -> waterFrac.isPresent();
                        case MARK -> toM.isPresent();
                        case START -> startM.isPresent();
                        case CHANGES -> changesAtLimit;
                        case VISITS -> weekdays.isPresent();
                    };
            if (isIn) {
                parts.add(part);
            }
        }
        return parts;
    }

    /** With some of its parts, and the others as they are. */
    Upkeep only(Collection<Part> some) {
        return new Upkeep(
                tray,
                some.contains(Part.FEED) ? feedMsPerCm : OptionalDouble.empty(),
                changesAtLimit && some.contains(Part.CHANGES),
                poursFeed && some.contains(Part.POURED),
                some.contains(Part.WATER) ? waterFrac : OptionalDouble.empty(),
                weekdays.filter(days -> some.contains(Part.VISITS)),
                some.contains(Part.MARK) ? toM : OptionalDouble.empty(),
                some.contains(Part.START) ? startM : OptionalDouble.empty());
    }

    /** How much more work it is than as it is. */
    double effort(Scenario as) {
        boolean isOtherFeed = feedMsPerCm.isPresent() || poursFeed || waterFrac.isPresent();
        double more = isOtherFeed ? OTHER_FEED_EFFORT : 0;
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
        so = so.withTray(kept(now, as.start()));
        if (feedMsPerCm.isEmpty()) {
            return Optional.of(so);
        }
        return CureTrials.fed(so, feedMsPerCm.getAsDouble(), so.feedOf(now));
    }

    private Tray kept(Tray now, LocalDate from) {
        Tray kept = startM.isPresent() ? now.withStartLevelM(startM.getAsDouble()) : now;
        return kept.filling() instanceof Filling.ByHand hand
                ? kept.withFilling(
                        new Filling.ByHand(
                                toM.orElse(hand.toLevelM()),
                                hand.days(),
                                poured(hand, from),
                                hand.inSteps()))
                : kept;
    }

    private Pouring poured(Filling.ByHand hand, LocalDate from) {
        if (waterFrac.isPresent()) {
            return new Pouring(
                    false, List.of(), List.of(new Pouring.Share(from, waterFrac.getAsDouble())));
        }
        return poursFeed ? Pouring.FEED : hand.with();
    }

    /** What a file has to say for one of its parts. */
    Facts facts(Scenario as, Part part) {
        Tray now = as.tray(tray).orElseThrow();
        return switch (part) {
            case FEED -> feed(as, now);
            case POURED -> Facts.of(Quantity.LATER_SHARE, 0);
            case WATER ->
                    Facts.of(Quantity.LATER_SHARE, waterFrac.orElseThrow())
                            .on(as.start().atStartOfDay());
            case MARK -> Facts.of(Quantity.LEVEL, 1000 * toM.orElseThrow());
            case START -> Facts.of(Quantity.START_LEVEL, 1000 * startM.orElseThrow());
            case CHANGES -> changes(as, now);
            case VISITS -> Facts.NONE.named(written(weekdays.orElseThrow()));
        };
    }

    /** When it is changed: of a feed below the band a lean reading is no reason. */
    private Facts changes(Scenario as, Tray now) {
        double is = ElectricalConductivity.at25MsPerCm(as.feedOf(now).composition());
        double low = now.limits().ecLowMsPerCm();
        Facts facts = Facts.of(Quantity.EC_LIMIT, now.limits().ecHighMsPerCm());
        return FlushRule.mendsLean(feedMsPerCm.orElse(is), low)
                ? facts.and(Quantity.BAND_FROM, low)
                : facts;
    }

    private Facts feed(Scenario as, Tray now) {
        double wanted = feedMsPerCm.orElseThrow();
        double is = ElectricalConductivity.at25MsPerCm(as.feedOf(now).composition());
        Facts facts = Facts.of(Quantity.FEED_EC, is).and(Quantity.WANTED_EC, wanted);
        if (isBelowBand(as)) {
            return facts.and(Quantity.BAND_FROM, now.limits().ecLowMsPerCm());
        }
        double high = usualMostMsPerCm(now);
        return wanted > Math.max(is, high) ? facts.and(Quantity.BAND_TO, high) : facts;
    }

    /** What its first crop is fed at most by growers; of no crop whatever its limits bear. */
    private static double usualMostMsPerCm(Tray tray) {
        return tray.planting() instanceof Planting.OfCrop crop
                ? crop.traits().needs().ecHighMsPerCm()
                : tray.limits().ecHighMsPerCm();
    }

    /** Whether its feed is leaner than the tray's band and than it is. */
    boolean isBelowBand(Scenario as) {
        Tray now = as.tray(tray).orElseThrow();
        double is = ElectricalConductivity.at25MsPerCm(as.feedOf(now).composition());
        double from = Math.min(is, now.limits().ecLowMsPerCm());
        return feedMsPerCm.isPresent() && feedMsPerCm.getAsDouble() < from;
    }

    /** As "mon, wed, fri". */
    static String written(Set<DayOfWeek> days) {
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

    /** Level that wets the cups of a tray at first, to the millimetre that a file tells, m. */
    static double wetCupM(Tray tray) {
        return FastMath.rint(tray.wetCupM() * 1e3) / 1e3;
    }
}
