package tideless.words;

import static tideless.words.CauseWords.figure;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Unit;

/** Cures in a few words each, without a full stop. */
public final class CureWords {
    private CureWords() {}

    /** All of them, the first one first; empty for none. */
    public static String of(List<Cure> cures) {
        return String.join("; or ", cures.stream().map(CureWords::of).toList());
    }

    /** One. */
    public static String of(Cure cure) {
        Facts facts = cure.facts();
        return switch (cure.kind()) {
            case FILL_AT_THE_VISIT_BEFORE -> {
                boolean isRead = facts.has(Quantity.REFILL_BELOW); // as a mark in the reservoir
                yield "refill on "
                        + Dates.weekday(facts.on().toLocalDate())
                        + ", the visit before"
                        + (isRead ? ", though it is not low then" : "")
                        + " (reservoir."
                        + Names.clean(facts.of())
                        + ".refill = \"at every visit\""
                        + (isRead ? ", without refill_below)" : ")");
            }
            case START_FULL -> "start full";
            case LARGER_RESERVOIR ->
                    "a larger reservoir: at least "
                            + figure(facts, Quantity.ENOUGH)
                            + " above its outlet (it holds "
                            + figure(facts, Quantity.USABLE)
                            + ")";
            case VISIT_MORE_OFTEN ->
                    !facts.has(Quantity.EVERY)
                            ? "visit more often"
                            : facts.get(Quantity.EVERY) < 2
                                    ? "top it up every day"
                                    : "top it up at least every " + figure(facts, Quantity.EVERY);
            case PLAN_REFILLS -> "plan refills";
            case WAIT_IN_NURSERY -> "keep them in the nursery with their roots hanging";
            case HIGHER_LEVEL_AT_FIRST ->
                    facts.has(Quantity.SETTING)
                            ? "hold the valve at "
                                    + figure(facts, Quantity.LEVEL)
                                    + " until "
                                    + Dates.weekday(facts.on().toLocalDate())
                                    + ", when roots are down, then move it to "
                                    + figure(facts, Quantity.SETTING)
                                    + " (the valve's setting and moves)"
                                    + gain(facts)
                            : "hold the level at "
                                    + figure(facts, Quantity.LEVEL)
                                    + (facts.on() == null
                                            ? " at first"
                                            : " to about "
                                                    + Dates.weekday(facts.on().toLocalDate()));
            case WICK -> "hang a wick from each cup into the solution";
            case REFILL_IN_TIME -> "refill the reservoir before it is empty";
            case TOPPED_UP_MEANWHILE -> meanwhile(facts);
            case HOLD_MORE ->
                    facts.has(Quantity.CHANCE)
                            ? "a wider vessel with the same marks, as a larger bucket or a tub: "
                                    + figure(facts, Quantity.ENOUGH)
                                    + " to its mark (it holds "
                                    + figure(facts, Quantity.USABLE)
                                    + ")"
                                    + gain(facts)
                            : "a larger vessel, wider or deeper with its cups as much higher: at least "
                                    + figure(facts, Quantity.ENOUGH)
                                    + " last from visit to visit (it holds "
                                    + figure(facts, Quantity.USABLE)
                                    + ")";
            case FILL_HIGHER ->
                    facts.has(Quantity.LEVEL)
                            ? "fill higher at each top-up, to " + figure(facts, Quantity.LEVEL)
                            : "fill higher at each top-up";
            case HANG_CUP_LOWER -> "hang the cup lower";
            case HANG_CUP_HIGHER ->
                    "hang the cups higher, their underside at "
                            + figure(facts, Quantity.LEVEL)
                            + " (cup_bottom), so that the filling wets them by "
                            + figure(facts, Quantity.CUPS_WET_BY)
                            + gain(facts);
            case LEVEL_AT_CUPS -> levelAtCups(facts) + gain(facts);
            case DEEPER_VESSEL ->
                    "a wider tray, or a deeper one with its cups as much higher"
                            + oneFilling(facts);
            case WIDER_VESSEL -> "a wider vessel, as a larger bucket or a tub" + oneFilling(facts);
            case FEWER_PLANTS -> "fewer plants";
            case TOP_UP_LITTLE_AND_OFTEN ->
                    facts.on() == null
                            ? "top up a little and often: no more than "
                                    + figure(facts, Quantity.RISE)
                                    + " above the highest level of the last week"
                            : "on "
                                    + Dates.weekday(facts.on().toLocalDate())
                                    + " top up no higher than "
                                    + figure(facts, Quantity.LEVEL)
                                    + ", and go on "
                                    + figure(facts, Quantity.RISE)
                                    + " higher a week";
            case TOP_UP_BY_HAND ->
                    "top it up with feed at each visit, to " + figure(facts, Quantity.LEVEL);
            case RAISE_BY_STEPS ->
                    "raise the level by steps of no more than "
                            + figure(facts, Quantity.RISE)
                            + ", a week apart";
            case RAISE_LEVEL -> "set the valve to " + figure(facts, Quantity.LEVEL);
            case MEND_VALVE ->
                    "mend the valve that lets it run over: a larger reservoir would only spill"
                            + " more";
            case ISOLATING_TAP ->
                    "an isolating tap at the reservoir and a tray below the overflow; keep leads"
                            + " and lamps clear of the water";
            case FREE_VALVE -> "free the valve, and top up by hand until then";
            case CLEAN_SEAT -> "clean the seat, and strain what goes into the reservoir";
            case WIDER_FEED_LINE -> "a higher reservoir, a wider seat, or wider and shorter tubing";
            case KEEP_OTHERWISE -> kept(facts) + with(", and then ", cure.then()) + gain(facts);
            case TOP_UP_WITH_WATER ->
                    "pour "
                            + figure(facts, Quantity.WATER)
                            + " of plain water in place of feed over the top-ups from "
                            + from(facts)
                            + " on"
                            + downTo(facts)
                            + later(facts, "top-up");
            case WATER_IN_THE_NEXT_REFILL ->
                    figure(facts, Quantity.WATER)
                            + " of plain water in place of feed in the reservoir's refills from "
                            + from(facts)
                            + " on, half of each"
                            + downTo(facts)
                            + later(facts, "refill");
            case WATER_SHARE ->
                    "plain water for "
                            + figure(facts, Quantity.LATER_SHARE)
                            + " of each refill from "
                            + from(facts)
                            + " on (water_share)";
            case CHANGE_AT_LIMIT ->
                    "fresh solution whenever it reads more than "
                            + figure(facts, Quantity.EC_LIMIT)
                            + again(facts);
            case LEANER_FEED ->
                    facts.has(Quantity.FEED_EC)
                            ? "a leaner feed than "
                                    + figure(facts, Quantity.FEED_EC)
                                    + (facts.has(Quantity.WANTED_EC)
                                            ? ": about " + figure(facts, Quantity.WANTED_EC)
                                            : "")
                                    + (facts.has(Quantity.BAND_FROM)
                                            ? " (the crop's band begins at "
                                                    + figure(facts, Quantity.BAND_FROM)
                                                    + "; a reading below that is then no reason to"
                                                    + " pour it away)"
                                            : "")
                            : "a leaner feed";
            case STRONGER_FEED ->
                    facts.has(Quantity.FEED_EC)
                            ? "a stronger feed: "
                                    + (facts.has(Quantity.WANTED_EC)
                                            ? "about "
                                                    + figure(facts, Quantity.WANTED_EC)
                                                    + ", the middle of what growers feed it"
                                            : "at least " + figure(facts, Quantity.FEED_EC))
                            : "a stronger feed";
            case FEED_IN_PLACE_OF_WATER ->
                    "half feed, half plain water at each top-up (water_share)";
            case OWN_RESERVOIR -> "a reservoir of its own for this crop";
            case DO_NOT_SHARE_A_FEED ->
                    "these crops do not share a feed (" + facts.of() + "): a reservoir for each";
            case OWN_FEED ->
                    "these crops do not share a feed ("
                            + facts.of()
                            + "): a strength of its own for each reservoir (feed_ec)";
            case LID_ON_GAPS ->
                    "a lid on the gaps of the deck, through which "
                            + figure(facts, Quantity.EVAPORATED_SHARE)
                            + " of the water leaves";
            case RAIN_WATER ->
                    "rain or reverse-osmosis water in place of this water"
                            + (facts.has(Quantity.WATER_EC)
                                    ? ", which alone reads " + figure(facts, Quantity.WATER_EC)
                                    : "");
            case FRESH_SOLUTION_SOONER -> "fresh solution sooner" + again(facts);
            case MORE_SOLUTION_PER_PLANT -> "more solution per plant";
            case MORE_AMMONIUM -> "a little more ammonium in the feed";
            case LESS_AMMONIUM -> "a feed with less of its nitrogen as ammonium";
            case ACID_BY_METER ->
                    "acid by the meter at your visits, in drops (gloves, goggles, acid into water)";
            case BASE_BY_METER ->
                    "a little potassium bicarbonate by the meter at your visits (gloves, goggles)";
            case SOFTER_WATER -> "keep the pH in its band, with softer water";
            case FEED_WITH_MORE -> "a feed with more " + facts.of();
            case OTHER_RECIPE -> "a recipe with more of it at the same EC, such as " + facts.of();
            case FEED_WITHOUT -> "a feed without " + facts.of();
            case SHADE_THE_TRAY ->
                    "keep the sun off the vessel, not off the plants: foil or white paint on it, a pale deck";
            case LOWER_LEVEL ->
                    facts.on() != null
                            ? "lower the valve to "
                                    + figure(facts, Quantity.LEVEL)
                                    + ", step by step from "
                                    + Dates.weekday(facts.on().toLocalDate())
                                    + " on, as the tasks say (the valve's moves)"
                            : "level and cups lower from the next planting on, the level at "
                                    + figure(facts, Quantity.LEVEL)
                                    + ", so that less of the roots stands in water";
            case AIR_STONE ->
                    "an air stone in the warm weeks (aerated = true; its pump above the water, on a"
                            + " residual-current device)"
                            + with(", and with it ", cure.then())
                            + gain(facts);
            case WARMER_ROOM -> "a warmer place or season";
            case COOLER_ROOM ->
                    facts.has(Quantity.DAY_TEMP)
                            ? "a room of "
                                    + figure(facts, Quantity.DAY_TEMP)
                                    + " by day and "
                                    + figure(facts, Quantity.NIGHT_TEMP)
                                    + " by night (climate.day_temperature, night_temperature)"
                            : "shade, a wider open vent, a cooler place or season";
            case COOLER_PLACE ->
                    "a cooler place or season"
                            + (facts.of().isEmpty()
                                    ? ""
                                    : ": nothing that the file can say helped (tried: "
                                            + facts.of()
                                            + ")");
            case WIDER_VENTS ->
                    "vents that open from "
                            + figure(facts, Quantity.DAY_TEMP)
                            + " on and change the air "
                            + figure(facts, Quantity.AIR_CHANGES)
                            + " an hour (climate.vents_from, vents_open)";
            case SHADE_OVERHEAD ->
                    "shade overhead that lets "
                            + figure(facts, Quantity.LIGHT_SHARE)
                            + " of the sun through ("
                            + (facts.of().isEmpty()
                                    ? "climate.transmission)"
                                    : "climate.cover = \"shade\")");
            case CLOSED_DECK -> "a deck without gaps (the tray's gap = \"0 %\")";
            case DRIER_NIGHTS -> "drier air by night: a vent, a little heat, a fan";
            case MORE_WIND -> "a small fan over the leaves";
            case SHORTER_DAY -> "fewer hours of lamp";
            case OTHER_SEASON -> "another season";
            case MORE_LIGHT -> "a stronger or nearer lamp, or longer hours";
            case STRONGER_LAMP -> "a stronger or nearer lamp";
            case SUNNIER_PLACE -> "a sunnier place or season, or a lamp";
        };
    }

    /** As high as cups are wetted, and lower later. */
    private static String levelAtCups(Facts facts) {
        boolean byValve = facts.has(Quantity.SETTING);
        return (byValve
                        ? "set the valve to " + figure(facts, Quantity.SETTING)
                        : "fill no higher than " + figure(facts, Quantity.LEVEL))
                + ", which wets the cups by "
                + figure(facts, Quantity.CUPS_WET_BY)
                + (byValve
                        ? " (the valve's setting), and lower it once roots hang out of them"
                        : " (start_level and hand.to)");
    }

    /** By whom it is topped up in an absence; how often where a run has shown it. */
    private static String meanwhile(Facts facts) {
        LocalDate first = facts.on().toLocalDate();
        if (!facts.has(Quantity.LONGEST)) {
            return "have somebody top it up by " + Dates.weekday(first);
        }
        LocalDate last = first.plusDays((long) facts.get(Quantity.LONGEST));
        if (!facts.has(Quantity.EVERY)) {
            return "have somebody top it up on " + Dates.weekday(first) + " (left out of away)";
        }
        double every = facts.get(Quantity.EVERY);
        return "have somebody top it up "
                + (every < 1.5 ? "every day" : "every " + Numbers.of(every, Unit.DAYS))
                + ", "
                + Dates.shortSpan(first, last)
                + " (those days left out of away)";
    }

    /** What to write, with its key. */
    private static String kept(Facts facts) {
        if (facts.has(Quantity.WANTED_EC)) {
            return "a feed of "
                    + figure(facts, Quantity.WANTED_EC)
                    + " in place of "
                    + figure(facts, Quantity.FEED_EC)
                    + " (feed.ec, or the vessel's feed_ec"
                    + (facts.has(Quantity.BAND_FROM)
                            ? "; the crop's band begins at "
                                    + figure(facts, Quantity.BAND_FROM)
                                    + ": no trial stands behind less, only this model; a reading"
                                    + " below that is then no reason to pour it away)"
                            : facts.has(Quantity.BAND_TO)
                                    ? "; more than growers feed it, which is up to "
                                            + figure(facts, Quantity.BAND_TO)
                                            + ")"
                                    : ")");
        }
        if (facts.has(Quantity.LATER_SHARE) && facts.get(Quantity.LATER_SHARE) > 0) {
            return "plain water for "
                    + figure(facts, Quantity.LATER_SHARE)
                    + " of each top-up (hand.water_share, from = "
                    + facts.on().toLocalDate()
                    + ")";
        }
        if (facts.has(Quantity.LATER_SHARE)) {
            return "top-ups of feed in place of plain water (hand.with = \"solution\")";
        }
        if (facts.has(Quantity.EC_LIMIT)) {
            return "fresh solution whenever a nutrient is nearly gone "
                    + (facts.has(Quantity.BAND_FROM)
                            ? "or it reads less than " + figure(facts, Quantity.BAND_FROM) + " or "
                            : "(the tasks say when) or it reads ")
                    + "more than "
                    + figure(facts, Quantity.EC_LIMIT)
                    + " (visits.flush = \"at limit\")";
        }
        if (facts.has(Quantity.LEVEL)) {
            return "top-ups to " + figure(facts, Quantity.LEVEL) + " (hand.to)";
        }
        return facts.has(Quantity.START_LEVEL)
                ? "a first filling to "
                        + figure(facts, Quantity.START_LEVEL)
                        + " (the tray's start_level)"
                : visits(facts.of());
    }

    private static String visits(String days) {
        return days.split(", ").length == DayOfWeek.values().length
                ? "a visit every day (visits.days = \"daily\")"
                : "visits on " + days + " (visits.days)";
    }

    /** As ", and then top-ups to 230 mm (hand.to) and a visit every day"; mostly empty. */
    private static String with(String how, List<Cure> then) {
        return then.isEmpty()
                ? ""
                : how + String.join(" and ", then.stream().map(CureWords::of).toList());
    }

    /** In kilograms, where what stands beside it is. */
    private static String grams(Facts facts, Quantity what) {
        double most = facts.get(Quantity.GIVES_THEN);
        most = facts.has(Quantity.COULD_GIVE) ? facts.get(Quantity.COULD_GIVE) : most;
        return Numbers.gramsBeside(facts.get(what), most);
    }

    private static String gain(Facts facts) {
        if (facts.has(Quantity.CHANGES_THEN)) {
            return ": then its solution is changed "
                    + figure(facts, Quantity.CHANGES_THEN)
                    + " in place of "
                    + figure(facts, Quantity.CHANGES_NOW);
        }
        String surely =
                facts.has(Quantity.CHANCE)
                        ? figure(facts, Quantity.CHANCE)
                                + " of the rigs that yours might be come through"
                        : "";
        if (!facts.has(Quantity.GIVES_THEN)) {
            return surely.isEmpty() ? "" : ": then " + surely;
        }
        return ": "
                + grams(facts, Quantity.GIVES_THEN)
                + " a plant in place of "
                + grams(facts, Quantity.GIVES_NOW)
                + (facts.has(Quantity.COULD_GIVE)
                        ? ", of " + grams(facts, Quantity.COULD_GIVE) + " without harm at the roots"
                        : "")
                + (surely.isEmpty() ? "" : ", and " + surely);
    }

    /** As " (first on Mon 3 May, then about every 12 days)"; empty where no trial shows it. */
    private static String again(Facts facts) {
        return facts.on() == null
                ? ""
                : " (first on "
                        + Dates.weekday(facts.on().toLocalDate())
                        + (facts.has(Quantity.EVERY)
                                ? ", then about every " + figure(facts, Quantity.EVERY)
                                : "")
                        + ")";
    }

    private static String from(Facts facts) {
        return facts.on() == null ? "the next" : Dates.weekday(facts.on().toLocalDate());
    }

    /** What is poured after that, so that the reading stays. */
    private static String later(Facts facts, String time) {
        return facts.has(Quantity.LATER_SHARE)
                ? ", and then " + figure(facts, Quantity.LATER_SHARE) + " of each " + time
                : "";
    }

    private static String oneFilling(Facts facts) {
        return facts.has(Quantity.ENOUGH)
                ? ": one filling of at least "
                        + figure(facts, Quantity.ENOUGH)
                        + " lasts the whole crop (it is filled with "
                        + figure(facts, Quantity.USABLE)
                        + ")"
                : ": one filling has to last the whole crop";
    }

    private static String downTo(Facts facts) {
        return facts.has(Quantity.EC_AFTER)
                ? ", which brings it to "
                        + figure(facts, Quantity.EC_AFTER)
                        + ", give or take "
                        + figure(facts, Quantity.EC_AFTER_DOUBT)
                : "";
    }
}
