package tideless.words;

import tideless.advice.Cause;
import tideless.advice.Facts;
import tideless.advice.Quantity;

/** Causes in one short sentence each, without a full stop. */
final class CauseWords {
    private CauseWords() {}

    /** The sentence, with the figures that belong to it. */
    public static String of(Cause cause) {
        Facts facts = cause.facts();
        return switch (cause.kind()) {
            case RUN_DOWN_TO_OUTLET -> "it has run down to its outlet";
            case RUNNING_LOW -> "what is left would not be enough for long";
            case NO_REFILL_PLANNED -> "the last usable litre is gone and no refill is planned";
            case EMPTY_BEFORE_THE_VISIT ->
                    "the reservoir was empty down to its outlet before anybody came";
            case DRAWN_FASTER_THAN_VISITS ->
                    "from here on even a full reservoir does not reach the next visit";
            case BEFORE_ABSENCE ->
                    "before you leave, to last until " + Dates.weekday(facts.on().toLocalDate());
            case TRAY_TOOK_IT ->
                    "again, once the trays have filled from it, before you leave, to last until "
                            + Dates.weekday(facts.on().toLocalDate());
            case FLOWERS_OPEN -> "no insect and little wind reaches the flowers";
            case GROWS_TALL -> "stems bear fruit soon";
            case CROP_LEAVES_THE_TRAY -> "nothing of this crop stays for the next";
            case CROP_IS_LOST -> "dead roots rot and breed what kills the next crop";
            case FIRST_FILLING -> "all vessels to their first level";
            case FORECAST_IS_NO_READING -> "a forecast is no reading";
            case KEPT_BY_HAND -> "brings the level back to where it is kept by hand";
            case DRUNK_UP ->
                    "the plants drank faster than water came: the tray stood dry while they lived";
            case ROOTS_END_ABOVE_LEVEL ->
                    "the level is " + figure(facts, Quantity.LEVEL_BELOW_CUPS) + " below the cups";
            case LEVEL_BELOW_ROOT_TIPS -> "the level fell below the root tips";
            case FILM_FEEDS_NO_ROOT -> "only a film of solution was left, which feeds no root";
            case TOO_STRONG_TO_DRINK -> "what was left is too strong for roots to drink";
            case RESERVE_USED_UP ->
                    "the plants had used up what they hold"
                            + (facts.of().isEmpty() ? "" : "; " + facts.of());
            case DRUNK_DOWN ->
                    "drunk down to "
                            + figure(facts, Quantity.LEVEL)
                            + " before anybody came, and the little that is left is too strong to"
                            + " drink";
            case ROSE_ABOVE_AIR_ROOTS -> "the level rose above what the air roots were used to";
            case CUPS_STAY_UNDER ->
                    "the solution stands up to "
                            + figure(facts, Quantity.LEVEL)
                            + " above the underside of the cups, for "
                            + figure(facts, Quantity.LONGEST)
                            + " (usual is "
                            + figure(facts, Quantity.CUPS_WET_BY)
                            + ", and less as roots grow down): no root below the cup hangs in air,"
                            + " and plugs and stems that stay so wet rot, which no weight here"
                            + " counts";
            case WITHOUT_WATER -> "the plants were without water for too long";
            case WITHOUT_AIR -> "the roots were without air for too long";
            case SALT_KILLS -> "in so strong a solution nothing has grown for too long";
            case FROST_KILLS -> "frost kills it";
            case CHILL_KILLS ->
                    "cold without frost kills it: this crop is injured below "
                            + figure(facts, Quantity.BORNE_FROM)
                            + ", and days on end are not borne (how many is common practice, no"
                            + " trial)";
            case HEAT_KILLS -> "heat kills it";
            case DARK_KILLS -> "without light it has lived on its stores for too long";
            case SALT_KILLS_SEEDLINGS -> "the solution is too strong for seedlings";
            case VALVE_LETS_IN_TOO_MUCH ->
                    "more comes in than the valve should let in, over the overflow at "
                            + figure(facts, Quantity.LEVEL);
            case VALVE_HANGS_SHUT -> "the valve hangs shut";
            case VALVE_SILTS_UP -> "the valve silts up and cannot keep up";
            case VALVE_TOO_SLOW -> "the valve stands wide open and cannot keep up";
            case GROWS_MORE_IN_A_TRIAL ->
                    "from "
                            + figure(facts, Quantity.SETTING)
                            + "; with it a run grows "
                            + figure(facts, Quantity.GAIN)
                            + " more and stands dry no longer";
            case AS_PLANNED -> "as planned, from " + figure(facts, Quantity.SETTING);
            case SALTS_STAY_BEHIND -> "salts stay behind as water leaves" + after(facts);
            case FEED_IS_LEAN ->
                    "the feed itself ("
                            + figure(facts, Quantity.FEED_EC)
                            + ") is leaner than this crop wants";
            case FEED_IS_STRONG ->
                    "the feed itself ("
                            + figure(facts, Quantity.FEED_EC)
                            + ") is stronger than this crop bears";
            case CROP_TAKES_IT_UP ->
                    "the crop takes nutrients faster than they come" + after(facts);
            case FEED_IS_ALKALINE ->
                    "the feed itself stands at "
                            + figure(facts, Quantity.FEED_PH)
                            + " in air: its water holds more lime than its acid takes";
            case SALTS_ARE_ALKALINE ->
                    "the feed itself stands at "
                            + figure(facts, Quantity.FEED_PH)
                            + " in air: its salts hold more base than acid";
            case ANIONS_TAKEN ->
                    "the roots take more nitrate than cations, and leave alkali behind";
            case CATIONS_TAKEN -> "the roots take more cations than nitrate, and leave acid behind";
            case ONE_RUNS_OUT ->
                    (facts.of().isEmpty() ? "one nutrient" : facts.of())
                            + " runs out before the rest"
                            + after(facts);
            case CROP_LEAVES_IT ->
                    "the crop leaves most of the "
                            + facts.of()
                            + " behind; the feed brings "
                            + figure(facts, Quantity.FEED_CONTENT)
                            + ", "
                            + figure(facts, Quantity.WATER_CONTENT)
                            + " of it from the water";
            case SUPERSATURATED ->
                    facts.of()
                            + ": the solution stands far above what it can hold, so calcium and its"
                            + " partner drop out of the crop's reach and onto valve and roots";
            case WARM_HOLDS_LITTLE_OXYGEN ->
                    "warm solution holds little oxygen ("
                            + figure(facts, Quantity.OXYGEN)
                            + " at most) and suits root rot";
            case AIR_OF_THE_ROOM -> "the crop does not bear it";
            case BOLTS_IN_LONG_DAYS -> "it bolts in days so long";
            case BURNS_IN_HOT_HOURS ->
                    "nothing grows at such hours, leaf burns at its edges and bolts sooner";
            case BOLTS_IN_HEAT -> "leaf of cool seasons bolts or turns bitter in weeks so hot";
            case ROOTS_BREATHE_MORE_THAN_COMES ->
                    "the wet roots breathe more than comes through the still surface: growth loses a"
                            + " tenth or more, by the likely figures";
            case SALTIER_THAN_ROOTS_ARE_USED_TO ->
                    "the solution grew saltier at once than the roots were used to: they wilt by"
                            + " day";
            case TOO_LITTLE_LIGHT -> "the crop will be slow and thin";
            case READY -> "the crop is ready";
            case WINDOW_ENDS -> "it is light, but bolts or grows tough if it stands longer";
            case LAST_VISIT -> "nearly ready, and nobody comes again in this run";
            case PICKED_OUT -> "picked plants bolt or grow tough from here on";
            case LEAVES_GROW_AGAIN -> "the plants stand on and grow again";
            case OLD_LEAVES_GIVE_LITTLE -> "the lowest leaves give little and keep the air";
            case PLANTS_SHADE -> "the plants shade each other and stay small";
            case PLANTS_CROWD -> "they would crowd each other";
            case SEASON_ENDS -> "no flower that opens now would ripen in time";
            case FIRST_FRUIT_RIPE ->
                    facts.of().isEmpty()
                            ? "the first fruit is ripe: picking begins"
                            : "the first fruit has its size: picking begins";
            case LAST_FRUIT_PICKED -> "the last fruit is picked and the crop finished";
            case MAKES_ROOM -> "the next crop is due in its place, ripe or not";
            case BEGINS -> "the run begins with it";
            case FOLLOWS -> "the next crop of this tray";
            case NEXT_IN_TIME ->
                    "so that seedlings are ready when this crop leaves the tray on "
                            + Dates.weekday(facts.on().toLocalDate());
        };
    }

    private static String after(Facts facts) {
        return facts.has(Quantity.EC_AFTER)
                ? "; afterwards it reads " + figure(facts, Quantity.EC_AFTER)
                : "";
    }

    static String figure(Facts facts, Quantity quantity) {
        return Numbers.of(facts.get(quantity), quantity.unit());
    }
}
