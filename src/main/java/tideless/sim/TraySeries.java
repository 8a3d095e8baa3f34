package tideless.sim;

import tideless.physics.HumidAir;

/**
 * The hourly series of a tray, in the order of the columns of its file. Recorder, trace and files
 * go through these constants: a new one is recorded and written without further ado.
 */
public enum TraySeries implements HourlySeries {
    /** m above the tray's floor. */
    LEVEL(
            "level_above_floor",
            "mm",
            1000,
            "level of the solution",
            Kind.STATE,
            (run, air, step) -> run.levelM()),
    /** m3. */
    VOLUME("solution", "L", 1000, "solution", Kind.STATE, (run, air, step) -> run.water.m3),
    /** degC. */
    SOLUTION_TEMP(
            "solution_temperature",
            "degC",
            1,
            "temperature of the solution",
            Kind.STATE,
            (run, air, step) -> run.tempC),
    /** m3 in the hour. */
    THIRST(
            "thirst",
            "L/h",
            1000,
            "what the plants would transpire with every root they want in the water",
            Kind.FLOW,
            (run, air, step) -> run.waterDemandM3),
    /** m3 in the hour. */
    TRANSPIRATION(
            "transpiration",
            "L/h",
            1000,
            "what the plants did transpire",
            Kind.FLOW,
            (run, air, step) -> run.transpirationM3),
    /** m3 in the hour. */
    EVAPORATION(
            "evaporation",
            "L/h",
            1000,
            "evaporated through the gaps of the deck",
            Kind.FLOW,
            (run, air, step) -> run.evaporationM3),
    /** m3 in the hour. */
    INFLOW(
            "inflow",
            "L/h",
            1000,
            "come in through the valve",
            Kind.FLOW,
            (run, air, step) -> run.inflowM3),
    /** m3 in the hour. */
    SPILL(
            "spill",
            "L/h",
            1000,
            "run out over the overflow",
            Kind.FLOW,
            (run, air, step) -> run.spillM3),
    /** m3 in the hour. */
    POURED(
            "poured",
            "L/h",
            1000,
            "poured in by hand: topped up, or fresh after a flush or for the next crop",
            Kind.ACCOUNT,
            (run, air, step) -> run.toppedUpM3 + run.freshM3),
    /** m3 in the hour. */
    DRAINED(
            "drained",
            "L/h",
            1000,
            "taken out by hand: before a flush or the next crop",
            Kind.ACCOUNT,
            (run, air, step) -> run.drainedM3),
    /** m3 in the hour. */
    SET_BY_READING(
            "set_by_reading",
            "L/h",
            1000,
            "more, or less than 0, by a level that the log read than was reckoned",
            Kind.ACCOUNT,
            (run, air, step) -> run.setByReadingM3),
    /** degC. */
    AIR_TEMP(
            "air_temperature",
            "degC",
            1,
            "air at the leaves",
            Kind.STATE,
            (run, air, step) -> air.tempC[step]),
    /** Pa. */
    AIR_DEFICIT(
            "air_vapour_deficit",
            "Pa",
            1,
            "vapour pressure deficit of that air",
            Kind.STATE,
            (run, air, step) ->
                    HumidAir.saturationPressurePa(air.tempC[step]) - air.vapourPa[step]),
    /** umol/m2/s. */
    PPFD(
            "ppfd",
            "umol/m2/s",
            1,
            "light on the canopy",
            Kind.STATE,
            (run, air, step) -> run.ppfdUmolPerM2S),
    /** mol/m2 in the hour. */
    LIGHT(
            "light",
            "mol/m2/h",
            1,
            "light on the canopy over the hour",
            Kind.FLOW,
            (run, air, step) -> run.lightMolPerM2),
    /** m2 leaf per m2 ground. */
    LEAF_AREA_INDEX(
            "leaf_area_index",
            "m2/m2",
            1,
            "leaf area on the ground the plants stand on",
            Kind.STATE,
            (run, air, step) -> run.leafAreaIndex()),
    /** g a plant. */
    FRESH_MASS(
            "fresh_mass",
            "g/plant",
            1,
            "fresh mass of shoot and fruit",
            Kind.STATE,
            (run, air, step) -> run.freshG()),
    /** g a plant. */
    FRUIT_FRESH_MASS(
            "fruit_fresh_mass",
            "g/plant",
            1,
            "fresh mass of the fruit",
            Kind.STATE,
            (run, air, step) -> run.fruitFreshG()),
    /** m above the tray's floor. */
    ROOT_TIP(
            "root_tip_above_floor",
            "mm",
            1000,
            "height of the root tips",
            Kind.STATE,
            (run, air, step) -> run.rootTipM()),
    /** 0-1. */
    WET_ROOT(
            "wet_root_share",
            "m/m",
            1,
            "share of the root's hanging span below the level",
            Kind.STATE,
            (run, air, step) -> run.wetRootFrac()),
    /** m above the tray's floor. */
    USED_TO_LEVEL(
            "roots_bear_level_above_floor",
            "mm",
            1000,
            "highest level the roots bear without drowning",
            Kind.STATE,
            (run, air, step) -> run.highestBorneM()),
    /** m3 in the hour. */
    UNMET_THIRST(
            "unmet_thirst",
            "L/h",
            1000,
            "thirst that no wet root met: no water, a film, too salty, short of air",
            Kind.FLOW,
            (run, air, step) -> Math.max(0, run.waterDemandM3 - run.transpirationM3)),
    /** g/m3. */
    OXYGEN(
            "oxygen",
            "mg/L",
            1,
            "dissolved oxygen, likely; known to within a factor of some six",
            Kind.STATE,
            (run, air, step) -> run.air.likelyGPerM3()),
    /** g/m3. */
    OXYGEN_POOREST(
            "oxygen_poorest",
            "mg/L",
            1,
            "dissolved oxygen with every figure at its poor end",
            Kind.STATE,
            (run, air, step) -> run.air.poorestGPerM3()),
    /** g/m3. */
    OXYGEN_RICHEST(
            "oxygen_richest",
            "mg/L",
            1,
            "dissolved oxygen with every figure at its rich end",
            Kind.STATE,
            (run, air, step) -> run.air.richestGPerM3()),
    /** ppm. */
    SOLUTION_CO2(
            "solution_co2",
            "ppm",
            1,
            "carbon dioxide of the air the solution is at rest with",
            Kind.STATE,
            (run, air, step) -> run.solutionCo2Ppm()),
    /** mS/cm at 25 degC; NaN in a dry tray. */
    EC("ec_25C", "mS/cm", 1, "EC of the solution at 25 degC", Kind.METER, null),
    /** pH in contact with {@link #SOLUTION_CO2}; NaN in a dry tray, in a brine and in a film. */
    PH("ph", "pH", 1, "pH of the solution with its own carbon dioxide", Kind.METER, null);

    /** How a value is read at the end of a step. */
    @FunctionalInterface
    interface Reader {
        double read(TrayRun run, AirSeries air, int step);
    }

    private final Column column;
    private final Kind kind;
    final Reader reader; // null for what a meter reads

    TraySeries(String name, String unit, double factor, String about, Kind kind, Reader reader) {
        column = new Column(name, unit, factor, about);
        this.kind = kind;
        this.reader = reader;
    }

    @Override
    public Column column() {
        return column;
    }

    @Override
    public Kind kind() {
        return kind;
    }
}
