package tideless.sim;

import java.util.function.ToDoubleFunction;

/**
 * The hourly series of a reservoir, in the order of the columns of its file. Recorder, trace and
 * files go through these constants: a new one is recorded and written without further ado.
 */
public enum ReservoirSeries implements HourlySeries {
    /** m3. */
    VOLUME("solution", "L", 1000, "all it holds", Kind.STATE, run -> run.water.m3),
    /** m3. */
    USABLE("usable", "L", 1000, "what lies above the outlet", Kind.STATE, ReservoirRun::usableM3),
    /** degC. */
    SOLUTION_TEMP(
            "solution_temperature",
            "degC",
            1,
            "temperature of the solution",
            Kind.STATE,
            run -> run.tempC),
    /** m3 in the hour. */
    OUTFLOW("outflow", "L/h", 1000, "let out to its trays", Kind.FLOW, run -> run.outflowM3),
    /** m3 in the hour. */
    EVAPORATION(
            "evaporation",
            "L/h",
            1000,
            "evaporated from its open surface",
            Kind.FLOW,
            run -> run.evaporatedM3),
    /** m3 in the hour. */
    REFILL("refill", "L/h", 1000, "poured in", Kind.FLOW, run -> run.refillM3),
    /** mS/cm at 25 degC; NaN when empty. */
    EC("ec_25C", "mS/cm", 1, "EC of the solution at 25 degC", Kind.METER, null),
    /** pH in contact with the air; NaN when empty. */
    PH("ph", "pH", 1, "pH of the solution in contact with the air", Kind.METER, null);

    private final Column column;
    private final Kind kind;
    final ToDoubleFunction<ReservoirRun> reader; // null for what a meter reads

    ReservoirSeries(
            String name,
            String unit,
            double factor,
            String about,
            Kind kind,
            ToDoubleFunction<ReservoirRun> reader) {
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
