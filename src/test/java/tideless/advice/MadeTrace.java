package tideless.advice;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tideless.crop.Transplant;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tending;
import tideless.rig.TestScenario;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.scenario.Crops;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Ledger;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Rigs;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * A trace written by hand: a tray of 0.2 m2 whose valve holds 50 mm, a sound crop in feed of 2
 * mS/cm, somebody there every day; and what a test changes of it.
 */
final class MadeTrace {
    static final VesselId TRAY = VesselId.tray("tray");
    static final VesselId RESERVOIR = VesselId.reservoir("wall");
    private static final double AREA_M2 = 0.2;
    private static final Limits BASIL_LIMITS = new Limits(1, 4, 5.5, 6.5, 6, 11);

    private final int days;
    private final Map<TraySeries, IntToDoubleFunction> tray = new EnumMap<>(TraySeries.class);
    private final List<Event> events = new ArrayList<>();
    private final List<NextPlanting> next = new ArrayList<>();
    private String crop = "lettuce";
    private Log log = Log.NONE;
    private Correction correction = Correction.NONE;
    private OptionalDouble wanted = OptionalDouble.empty();
    private Filling filling = Rigs.valve();
    private Composition held = Rigs.FEED;
    private Limits limits = new Limits(1, 3, 5.5, 6.5, 6, 11);
    private UnaryOperator<TestTray> rig = t -> t;
    private String water = "water";
    private Composition feed; // null for the usual one
    private String feedName = "feed";
    private Composition waterHolds = Composition.WATER.with(Component.NA, 0.5);
    private final Map<Component, IntToDoubleFunction> taken = new EnumMap<>(Component.class);
    private IntToDoubleFunction drawn = h -> 0;
    private List<GrowthLost> lost = List.of();
    private double inReservoirFrac = 1;
    private Reservoir.Refill.When refill = Reservoir.Refill.When.LOW_AT_VISIT;
    private OptionalDouble otherInflow = OptionalDouble.empty();
    private Visits visits = Rigs.onWeekdays(DayOfWeek.values());

    /** Somebody there at eight every day but from one day of the run to another. */
    static Visits away(int fromDay, int toDay) {
        return new Visits(
                Set.of(DayOfWeek.values()),
                8 * 3600,
                List.of(
                        new Visits.Absence(
                                Rigs.START.plusDays(fromDay), Rigs.START.plusDays(toDay))),
                Visits.Flush.NEVER);
    }

    MadeTrace(int days) {
        this.days = days;
        with(TraySeries.LEVEL, h -> 0.05);
        with(TraySeries.SOLUTION_TEMP, h -> 20);
        with(TraySeries.LIGHT, h -> h % 24 >= 6 && h % 24 < 22 ? 0.9 : 0);
        with(TraySeries.AIR_TEMP, h -> 22);
        with(TraySeries.AIR_DEFICIT, h -> 1000);
        with(TraySeries.SOLUTION_CO2, h -> 420);
        with(TraySeries.LEAF_AREA_INDEX, h -> 2);
        with(TraySeries.USED_TO_LEVEL, h -> 0.07);
        with(TraySeries.THIRST, h -> 1e-5);
        with(TraySeries.EC, h -> 2);
        with(TraySeries.PH, h -> 6);
        with(TraySeries.FRESH_MASS, h -> 100 + h);
        with(TraySeries.FRUIT_FRESH_MASS, h -> h);
    }

    MadeTrace with(TraySeries series, IntToDoubleFunction value) {
        tray.put(series, value);
        return this;
    }

    /** With a grower's log whose last entry is of an hour. */
    MadeTrace logged(double hour) {
        log = new Log(List.of(new LogEntry.Looked(hour * 3600)));
        return this;
    }

    /** With a leak of the reservoir, L an hour. */
    MadeTrace leaking(double litres) {
        correction =
                new Correction(
                        Map.of(),
                        1,
                        1,
                        1,
                        Map.of(),
                        Map.of(),
                        Map.of(RESERVOIR.name(), litres / 1000 / 3600),
                        Map.of());
        return this;
    }

    MadeTrace wanting(double freshG) {
        wanted = OptionalDouble.of(freshG);
        return this;
    }

    MadeTrace of(String otherCrop) {
        crop = otherCrop;
        return this;
    }

    MadeTrace filled(Filling other) {
        filling = other;
        return this;
    }

    MadeTrace holding(Composition other) {
        held = other;
        return this;
    }

    MadeTrace limited(Limits other) {
        limits = other;
        return this;
    }

    /** With four basil plants of ten days that follow at an hour, in fresh solution or not. */
    MadeTrace then(double hour, boolean fresh) {
        Planting.OfCrop basil = crop("basil", 10);
        next.add(new NextPlanting(basil, BASIL_LIMITS, Optional.empty(), fresh, 0.05));
        return event(
                new Event(
                        Event.Kind.PLANTED,
                        hour * 3600,
                        TRAY,
                        fresh ? 0.010 : 0.001,
                        0,
                        fresh ? 0.009 : 0,
                        Double.NaN,
                        0,
                        "basil"));
    }

    private Planting.OfCrop crop(String name, double ageDays) {
        return new Planting.OfCrop(
                Crops.named(name),
                4,
                0.2,
                ageDays,
                Transplant.AS_RAISED,
                Planting.ThirstModel.CANOPY,
                OptionalInt.empty(),
                wanted,
                Tending.NONE);
    }

    /** With something else of the tray. */
    MadeTrace rigged(UnaryOperator<TestTray> other) {
        rig = other;
        return this;
    }

    /** With the name of its source water. */
    MadeTrace from(String other) {
        water = other;
        return this;
    }

    /** With what its source water holds. */
    MadeTrace from(Composition other) {
        waterHolds = other;
        return this;
    }

    /** With another feed. */
    MadeTrace fed(Composition other) {
        feed = other;
        return this;
    }

    /** With so much of a full reservoir all the time, 0-1. */
    MadeTrace reservoirAt(double frac) {
        inReservoirFrac = frac;
        return this;
    }

    /** With another rule of refilling. */
    MadeTrace refilled(Reservoir.Refill.When other) {
        refill = other;
        return this;
    }

    /** With so much of a component taken up since the start, mol. */
    MadeTrace taking(Component component, IntToDoubleFunction mol) {
        taken.put(component, mol);
        return this;
    }

    /** With so much let out of the reservoir, m3/h. */
    MadeTrace drawing(IntToDoubleFunction m3PerH) {
        drawn = m3PerH;
        return this;
    }

    /** Beside another tray below the same reservoir, into which so much runs, m3/h. */
    MadeTrace beside(double inflowM3PerH) {
        otherInflow = OptionalDouble.of(inflowM3PerH);
        return this;
    }

    MadeTrace visited(Visits other) {
        visits = other;
        return this;
    }

    MadeTrace event(Event.Kind kind, VesselId vessel, double hour) {
        return event(new Event(kind, hour * 3600, vessel, 0.004, 0, 0.003, 3, 0, "gypsum"));
    }

    /** With what its root zone took. */
    MadeTrace losing(GrowthLost other) {
        lost = List.of(other);
        return this;
    }

    /** Wilting by salt that is strong because it is little. */
    static Event drunkDown(double hour) {
        return new Event(
                Event.Kind.SALT_WILTED,
                hour * 3600,
                TRAY,
                0,
                0,
                0,
                Double.NaN,
                0,
                Event.DRUNK_DOWN);
    }

    MadeTrace event(Event event) {
        events.add(event);
        return this;
    }

    private Series hourly(IntToDoubleFunction value) {
        return Series.of(IntStream.range(0, days * 24).mapToDouble(value).toArray());
    }

    Trace trace() {
        Reservoir reservoir = Rigs.reservoir(0.1, 0.32, refill);
        Planting planting = crop(crop, 3);
        Tray of =
                rig.apply(
                                TestTray.of(Rigs.tray("tray", filling, planting, 0))
                                        .limits(limits)
                                        .next(next.toArray(new NextPlanting[0])))
                        .make();
        with(TraySeries.VOLUME, h -> AREA_M2 * tray.get(TraySeries.LEVEL).applyAsDouble(h));
        Map<TraySeries, Series> series = new EnumMap<>(TraySeries.class);
        for (TraySeries kind : TraySeries.values()) {
            series.put(kind, hourly(tray.getOrDefault(kind, h -> 0)));
        }
        Map<ReservoirSeries, Series> drum = new EnumMap<>(ReservoirSeries.class);
        for (ReservoirSeries kind : ReservoirSeries.values()) {
            drum.put(kind, hourly(h -> 0));
        }
        drum.put(ReservoirSeries.VOLUME, hourly(h -> inReservoirFrac * reservoir.fullM3()));
        double outM3 = reservoir.fullM3() - reservoir.usableM3();
        drum.put(
                ReservoirSeries.USABLE,
                hourly(h -> Math.max(0, inReservoirFrac * reservoir.fullM3() - outM3)));
        drum.put(ReservoirSeries.OUTFLOW, hourly(drawn));
        List<Series> trayMol = new ArrayList<>();
        List<Series> takenMol = new ArrayList<>();
        List<Series> drumMol = new ArrayList<>();
        for (int i = 0; i < Component.COUNT; i++) {
            double molPerM3 = held.molPerM3(i);
            trayMol.add(hourly(h -> molPerM3 * series.get(TraySeries.VOLUME).at(h)));
            drumMol.add(hourly(h -> 0));
            takenMol.add(hourly(taken.getOrDefault(Component.values()[i], h -> 0)));
        }
        List<Tray> trays = new ArrayList<>(List.of(of));
        List<TrayTrace> runs =
                new ArrayList<>(
                        List.of(
                                new TrayTrace(
                                        of, series, trayMol, takenMol, drumMol, drumMol, lost)));
        if (otherInflow.isPresent()) {
            Tray other = Rigs.tray("other", filling, Rigs.drinking(0), 0);
            Map<TraySeries, Series> beside = new EnumMap<>(series);
            beside.put(TraySeries.INFLOW, hourly(h -> otherInflow.getAsDouble()));
            trays.add(other);
            runs.add(new TrayTrace(other, beside, trayMol, drumMol, drumMol, drumMol, List.of()));
        }
        Scenario scenario = scenario(reservoir, trays);
        events.sort(Comparator.comparingDouble(Event::atS));
        return new Trace(
                scenario,
                days * 24,
                runs,
                List.of(new ReservoirTrace(reservoir, drum, drumMol)),
                events,
                new Ledger("water", "m3", 0, List.of(), 0, List.of()),
                List.of());
    }

    private Scenario scenario(Reservoir reservoir, List<Tray> trays) {
        Scenario usual = Rigs.scenario(days, 600, List.of(reservoir), trays, visits);
        return new TestScenario()
                .start(usual.start())
                .days(days)
                .climate(usual.climate())
                .feed(feed == null ? usual.feed() : new Liquid(feedName, feed))
                .sourceWater(new Liquid(water, waterHolds))
                .reservoirs(usual.reservoirs())
                .trays(usual.trays())
                .visits(visits)
                .numerics(usual.numerics())
                .make()
                .withLog(log)
                .withCorrection(correction);
    }

    /** With its feed by another name: a recipe's, a bottle's. */
    MadeTrace feedNamed(String name) {
        feed = feed == null ? Rigs.FEED : feed;
        feedName = name;
        return this;
    }

    /** Its first crop in its only tray. */
    TrayCase first() {
        Trace trace = trace();
        return new TrayCase(
                trace,
                trace.plantings(trace.trays().get(0)).get(0),
                VisitTimes.of(trace.scenario()));
    }

    Advice advice() {
        Trace trace = trace();
        return Advisor.advise(trace, trace);
    }

    List<Warning.Kind> warned() {
        Advice advice = advice();
        return Stream.concat(advice.warnings().stream(), advice.minor().stream())
                .map(Warning::kind)
                .toList();
    }
}
