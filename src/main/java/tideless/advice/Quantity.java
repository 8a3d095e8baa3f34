package tideless.advice;

/** What a figure beside a cause or a cure stands for. */
public enum Quantity {
    FEED_EC(Unit.MS_PER_CM),
    WANTED_EC(Unit.MS_PER_CM),
    FEED_PH(Unit.PH),
    WATER_EC(Unit.MS_PER_CM),
    EC_AFTER(Unit.MS_PER_CM),
    EC_AFTER_DOUBT(Unit.MS_PER_CM),
    EC_LIMIT(Unit.MS_PER_CM),
    BAND_FROM(Unit.MS_PER_CM),
    BAND_TO(Unit.MS_PER_CM),
    FEED_CONTENT(Unit.MMOL_PER_L),
    WATER_CONTENT(Unit.MMOL_PER_L),
    WATER(Unit.LITRES),
    LATER_SHARE(Unit.FRACTION),
    LITRES_DOUBT(Unit.LITRES),
    METER_DOUBT(Unit.MS_PER_CM),
    ENOUGH(Unit.LITRES),
    USABLE(Unit.LITRES),
    SPILT(Unit.LITRES),
    LEVEL(Unit.MILLIMETRES),
    START_LEVEL(Unit.MILLIMETRES),
    SETTING(Unit.MILLIMETRES),
    RISE(Unit.MILLIMETRES),
    LEVEL_BELOW_CUPS(Unit.MILLIMETRES),
    CUPS_WET_BY(Unit.MILLIMETRES),
    OXYGEN(Unit.MG_PER_L),
    EVAPORATED_SHARE(Unit.FRACTION),
    GAIN(Unit.FRACTION),
    CHANCE(Unit.FRACTION),
    LOSS(Unit.FRACTION),
    BORNE_FROM(Unit.CELSIUS),
    DAY_TEMP(Unit.CELSIUS),
    NIGHT_TEMP(Unit.CELSIUS),
    AIR_CHANGES(Unit.TIMES),
    CHANGES_NOW(Unit.TIMES),
    REFILL_BELOW(Unit.FRACTION),
    CHANGES_THEN(Unit.TIMES),
    LIGHT_SHARE(Unit.FRACTION),
    DAYS_BEYOND(Unit.DAYS),
    SURE(Unit.NONE),
    LATE(Unit.DAYS),
    EVERY(Unit.DAYS),
    LONGEST(Unit.DAYS),
    YOUNGER(Unit.DAYS),
    ALONE(Unit.DAYS),
    WANTED(Unit.GRAMS),
    GIVES_NOW(Unit.GRAMS),
    GIVES_THEN(Unit.GRAMS),
    COULD_GIVE(Unit.GRAMS),
    LATER(Unit.GRAMS),
    LAST(Unit.GRAMS),
    HELD_WATER(Unit.HOURS);

    private final Unit unit;

    Quantity(Unit unit) {
        this.unit = unit;
    }

    public Unit unit() {
        return unit;
    }
}
