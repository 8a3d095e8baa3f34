package tideless.report;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tideless.advice.Advice;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Place;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.TestScenario;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Thirst;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Ledger;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.study.Forecast;
import tideless.study.PhCourse;

/**
 * A forecast of made-up curves that look like a crop's: two trays on valves, one left to fall and
 * filled again by hand, one reservoir that is refilled at visits. No number in it is physics.
 */
final class MadeUpForecast {
    static final LocalDate START = LocalDate.of(2026, 9, 7);

    private final int days;
    private final int hours;
    private final List<Task> tasks = new ArrayList<>();
    private final List<Event> events = new ArrayList<>();

    private MadeUpForecast(int days) {
        this.days = days;
        this.hours = 24 * days;
    }

    /** Three trays and a reservoir over 70 days. */
    static Forecast threeTrays() {
        return new MadeUpForecast(70).forecast(List.of("Lettuce", "Basilikum groß", "Tomato"));
    }

    /** As many trays over as many days as asked, for pictures under strain. */
    static Forecast of(int days, String... names) {
        return new MadeUpForecast(days).forecast(Arrays.asList(names));
    }

    private static final Composition FEED =
            Composition.of(11.0, 1.2, 1.4, 6.0, 3.6, 1.8, 1.9, 0.9, 0.7, 0.4, 1.0);

    private Forecast forecast(List<String> names) {
        Tube tube = new Tube(0.006, 1.2, 2);
        Reservoir reservoir =
                new Reservoir(
                        "Wall tub",
                        Shape.tub(0.5, 0.3, 0.48, 0.25, 0.38),
                        0.35,
                        0.03,
                        0.6,
                        0.01,
                        0.35,
                        new Reservoir.Refill(Reservoir.Refill.When.LOW_AT_VISIT, 0.4, Pouring.FEED),
                        tube);
        List<Tray> trays = new ArrayList<>();
        List<TrayTrace> trayTraces = new ArrayList<>();
        double[] outflow = new double[hours];
        for (int i = 0; i < names.size(); i++) {
            Filling filling =
                    i % 3 == 2
                            ? new Filling.Sealed()
                            : new TestValve()
                                    .reservoir("Wall tub")
                                    .settingM(0.03 + 0.01 * (i % 2))
                                    .bandM(0.004)
                                    .snaps(i % 2 == 1)
                                    .dischargeCoefficient(0.6)
                                    .seatAboveFloorM(0.05)
                                    .branch(tube)
                                    .make();
            Tray tray =
                    new TestTray()
                            .name(names.get(i))
                            .shape(Shape.tub(0.5, 0.4, 0.48, 0.375, 0.1))
                            .cupBottomM(0.045 + 0.005 * (i % 3))
                            .openAreaM2(0.004)
                            .startLevelM(i % 3 == 2 ? 0.085 : 0.04)
                            .startLiquid(new Liquid("half strength", FEED))
                            .planting(
                                    new Planting.MeasuredThirst(
                                            names.get(i), 6 + i, Thirst.constant(1e-8)))
                            .filling(filling)
                            .lamp(new Lamp(240, 2.4, 0.2, 21600, 79200))
                            .limits(
                                    new Limits(
                                            1.0 + 0.2 * (i % 3),
                                            1.8 + 0.4 * (i % 3),
                                            5.5,
                                            6.5,
                                            4,
                                            4))
                            .make();
            trays.add(tray);
            trayTraces.add(trayTrace(tray, i, outflow));
        }
        ReservoirTrace reservoirTrace = reservoirTrace(reservoir, outflow);
        Scenario scenario =
                new TestScenario()
                        .title("Bench along the wall of an invented science room")
                        .start(START)
                        .days(days)
                        .place(new Place(48, 11, 500))
                        .climate(
                                new Climate.Room(
                                        23,
                                        19,
                                        0.55,
                                        0.6,
                                        21600,
                                        79200,
                                        0,
                                        Climate.Window.NONE,
                                        0.2,
                                        600,
                                        600))
                        .feed(new Liquid("half strength", FEED))
                        .sourceWater(new Liquid("tap", Composition.WATER))
                        .reservoirs(List.of(reservoir))
                        .trays(trays)
                        .visits(
                                new Visits(
                                        Set.of(
                                                DayOfWeek.MONDAY,
                                                DayOfWeek.WEDNESDAY,
                                                DayOfWeek.FRIDAY),
                                        8 * 3600,
                                        List.of(),
                                        Visits.Flush.AT_LIMIT))
                        .digest("0123456789abcdef".repeat(4))
                        .make();
        tasks.sort(
                Comparator.comparing(Task::due)
                        .thenComparing(task -> task.vessel().kind() != VesselId.Kind.RESERVOIR)
                        .thenComparing(task -> task.vessel().name()));
        events.sort(Comparator.comparingDouble(Event::atS));
        Trace trace =
                new Trace(
                        scenario,
                        hours,
                        trayTraces,
                        List.of(reservoirTrace),
                        events,
                        new Ledger(
                                "water",
                                "m3",
                                0.06,
                                List.of(
                                        new Ledger.Entry("refills", 0.4),
                                        new Ledger.Entry("flushes", 0.02)),
                                0.05,
                                List.of(
                                        new Ledger.Entry("transpired", 0.41),
                                        new Ledger.Entry("drained", 0.02 + 1e-17))),
                        Arrays.stream(Component.values())
                                .map(
                                        c ->
                                                new Ledger(
                                                        c.symbol(),
                                                        "mol",
                                                        1,
                                                        List.of(),
                                                        0.25,
                                                        List.of(new Ledger.Entry("crop", 0.75))))
                                .toList());
        List<PhCourse> known =
                trace.trays().stream().map(t -> new PhCourse(t.ph(), t.ph())).toList();
        return new Forecast(
                trace,
                trace,
                advice(names),
                known,
                1,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                7);
    }

    private TrayTrace trayTrace(Tray tray, int index, double[] outflow) {
        boolean sealed = tray.filling() instanceof Filling.Sealed;
        double[] level = new double[hours];
        double[] volume = new double[hours];
        double[] thirst = new double[hours];
        double[] drunk = new double[hours];
        double[] evaporation = new double[hours];
        double[] inflow = new double[hours];
        double[] tip = new double[hours];
        double[] usedTo = new double[hours];
        double[] ec = new double[hours];
        double[] ph = new double[hours];
        double[] fresh = new double[hours];
        double[] lit = new double[hours];
        double[] share = new double[hours];
        double now = tray.startLevelM();
        double salt = 1.3 + 0.1 * (index % 3);
        double used = tray.startLevelM();
        for (int h = 0; h < hours; h++) {
            double day = h / 24.0;
            boolean on = h % 24 >= 6 && h % 24 < 22;
            double size = 1 / (1 + Math.exp(-(day - 35 - 4 * (index % 3)) / 7));
            thirst[h] = (on ? 0.2 : 0.03) * 1e-3 * (0.03 + size) * (1.2 + 0.35 * (index % 4));
            evaporation[h] = 2e-6;
            double use = (thirst[h] + evaporation[h]) / 0.19;
            drunk[h] = thirst[h];
            if (tray.filling() instanceof Filling.ByValve valve) {
                double set = valve.settingM() - valve.bandM() * (0.2 + 0.5 * size);
                double wanted = now > set ? 0 : Math.min(use, 0.02);
                boolean starved = index == 0 && day > 52 && day < 54.5;
                inflow[h] = starved ? 0 : wanted * 0.19;
                outflow[h] += inflow[h];
                now = Math.max(0, now - use + (starved ? 0 : wanted));
                if (!starved && now < set && day > 50) {
                    outflow[h] += Math.min(0.004, set - now) * 0.19;
                    now += Math.min(0.004, set - now);
                }
            } else {
                now = Math.max(0, now - use);
            }
            tip[h] = Math.max(0, tray.cupBottomM() - 0.004 * day);
            if (sealed && now < 0.012 && h % 48 == 8) {
                double litres = 0.19 * (0.05 - now) * 1000;
                task(
                        Task.Kind.FRESH_SOLUTION,
                        h,
                        tray,
                        litres,
                        0,
                        Measure.atLeast(9, 12, Unit.MILLIMETRES));
                now = 0.05;
                salt = 1.5;
            }
            used = Math.min(tray.cupBottomM(), Math.max(now + 0.012, used - 0.0004));
            usedTo[h] = used + (day > 58 && day < 60 ? -0.02 : 0);
            salt *= 1 + (on ? 5e-4 : 1e-4) * (1 + 0.4 * (index % 3));
            if (!sealed && salt > tray.limits().ecHighMsPerCm() && h % 24 == 8) {
                task(
                        Task.Kind.FLUSH,
                        h,
                        tray,
                        7.2,
                        6.9,
                        Measure.atMost(salt, tray.limits().ecHighMsPerCm(), Unit.MS_PER_CM));
                salt = 1.4;
            }
            level[h] = now;
            volume[h] = tray.shape().volumeM3(now);
            ec[h] = now > 0 ? salt : Double.NaN;
            ph[h] = now > 0 ? 5.9 + 0.3 * Math.sin(day / 6) : Double.NaN;
            fresh[h] = 260 * size;
            lit[h] = on ? 240 : 0;
            share[h] =
                    Math.max(
                            0,
                            Math.min(
                                    1,
                                    (now - tip[h]) / Math.max(0.001, tray.cupBottomM() - tip[h])));
        }
        tasks.add(
                new Task(
                        Task.Kind.HARVEST,
                        tray.id(),
                        START.plusDays(days - 4L + index % 3).atTime(8, 0),
                        0,
                        0,
                        Measure.of(260, Unit.GRAMS),
                        Cause.of(Cause.Kind.READY),
                        List.of(),
                        List.of(),
                        true));
        Map<TraySeries, Series> series = new EnumMap<>(TraySeries.class);
        series.put(TraySeries.LEVEL, Series.of(level));
        series.put(TraySeries.VOLUME, Series.of(volume));
        series.put(TraySeries.SOLUTION_TEMP, flat(21.3));
        series.put(TraySeries.THIRST, Series.of(thirst));
        series.put(TraySeries.TRANSPIRATION, Series.of(drunk));
        series.put(TraySeries.EVAPORATION, Series.of(evaporation));
        series.put(TraySeries.INFLOW, Series.of(inflow));
        series.put(TraySeries.SPILL, flat(0));
        series.put(TraySeries.AIR_TEMP, flat(22.75));
        series.put(TraySeries.AIR_DEFICIT, flat(1234.5678));
        series.put(TraySeries.PPFD, Series.of(lit));
        series.put(TraySeries.LIGHT, flat(0.864));
        series.put(TraySeries.LEAF_AREA_INDEX, flat(2.2));
        series.put(TraySeries.FRESH_MASS, Series.of(fresh));
        series.put(TraySeries.FRUIT_FRESH_MASS, flat(0));
        series.put(TraySeries.ROOT_TIP, Series.of(tip));
        series.put(TraySeries.WET_ROOT, Series.of(share));
        series.put(TraySeries.USED_TO_LEVEL, Series.of(usedTo));
        series.put(TraySeries.EC, Series.of(ec));
        series.put(TraySeries.PH, Series.of(ph));
        series.put(TraySeries.UNMET_THIRST, flat(0));
        series.put(TraySeries.OXYGEN, flat(6.5));
        series.put(TraySeries.OXYGEN_POOREST, flat(1.2));
        series.put(TraySeries.OXYGEN_RICHEST, flat(8.4));
        series.put(TraySeries.SOLUTION_CO2, flat(2500));
        series.put(TraySeries.POURED, flat(0));
        series.put(TraySeries.DRAINED, flat(0));
        series.put(TraySeries.SET_BY_READING, flat(0));
        List<Series> none = mol(new double[hours]);
        return new TrayTrace(tray, series, mol(volume), none, none, none, List.of());
    }

    private void task(
            Task.Kind kind, int hour, Tray tray, double litres, double drain, Measure measure) {
        tasks.add(
                new Task(
                        kind,
                        tray.id(),
                        START.atStartOfDay().plusHours(hour),
                        litres,
                        drain,
                        measure,
                        Cause.of(
                                kind == Task.Kind.FLUSH
                                        ? Cause.Kind.SALTS_STAY_BEHIND
                                        : Cause.Kind.CROP_TAKES_IT_UP),
                        List.of(Cure.of(Cure.Kind.LEANER_FEED)),
                        List.of(),
                        true));
    }

    private ReservoirTrace reservoirTrace(Reservoir reservoir, double[] outflow) {
        double[] volume = new double[hours];
        double[] usable = new double[hours];
        double[] refill = new double[hours];
        double now = reservoir.fullM3();
        for (int h = 0; h < hours; h++) {
            now = Math.max(reservoir.deadM3(), now - outflow[h] - 5e-6);
            LocalDateTime clock = START.atStartOfDay().plusHours(h + 1L);
            boolean visit =
                    clock.getHour() == 8
                            && Set.of(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY)
                                    .contains(clock.getDayOfWeek());
            double left = (now - reservoir.deadM3()) / reservoir.usableM3();
            if (visit && left < 0.6) {
                refill[h] = reservoir.fullM3() - now;
                now = reservoir.fullM3();
                events.add(
                        new Event(
                                Event.Kind.REFILL,
                                3600.0 * (h + 1),
                                reservoir.id(),
                                refill[h],
                                0,
                                0,
                                Double.NaN,
                                0,
                                ""));
                tasks.add(
                        new Task(
                                Task.Kind.REFILL,
                                reservoir.id(),
                                clock,
                                refill[h] * 1000,
                                0,
                                Measure.atLeast(
                                        left * reservoir.usableM3() * 1000,
                                        0.6 * reservoir.usableM3() * 1000,
                                        Unit.LITRES),
                                Cause.of(Cause.Kind.RUNNING_LOW),
                                List.of(),
                                List.of(),
                                true));
            }
            volume[h] = now;
            usable[h] = now - reservoir.deadM3();
        }
        Map<ReservoirSeries, Series> series = new EnumMap<>(ReservoirSeries.class);
        series.put(ReservoirSeries.VOLUME, Series.of(volume));
        series.put(ReservoirSeries.USABLE, Series.of(usable));
        series.put(ReservoirSeries.SOLUTION_TEMP, flat(20.5));
        series.put(ReservoirSeries.OUTFLOW, Series.of(outflow));
        series.put(ReservoirSeries.EVAPORATION, flat(5e-6));
        series.put(ReservoirSeries.REFILL, Series.of(refill));
        series.put(ReservoirSeries.EC, flat(1.42));
        series.put(ReservoirSeries.PH, flat(5.8));
        return new ReservoirTrace(reservoir, series, mol(volume));
    }

    private Series flat(double value) {
        double[] values = new double[hours];
        Arrays.fill(values, value);
        return Series.of(values);
    }

    private static List<Series> mol(double[] volume) {
        List<Series> all = new ArrayList<>();
        for (int c = 0; c < Component.COUNT; c++) {
            double concentration = FEED.molPerM3(c);
            all.add(Series.of(Arrays.stream(volume).map(v -> v * concentration).toArray()));
        }
        return all;
    }

    private Advice advice(List<String> names) {
        List<Double> lasts = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            lasts.add(Math.min(days - day, 2.6 + 30 / (1 + Math.exp((day - 22) / 6.0))));
        }
        List<Warning> warnings = new ArrayList<>();
        LocalDateTime dry = START.atStartOfDay().plus(Duration.ofHours(53 * 24 + 5));
        VesselId first = VesselId.tray(names.get(0));
        warnings.add(
                new Warning(
                        Warning.Kind.STRANDED,
                        first,
                        dry,
                        dry.plusHours(31),
                        Measure.atMost(31, 0, Unit.HOURS),
                        Cause.of(Cause.Kind.LEVEL_BELOW_ROOT_TIPS),
                        List.of(Cure.of(Cure.Kind.REFILL_IN_TIME))));
        warnings.add(
                new Warning(
                        Warning.Kind.OUTGROWN,
                        VesselId.reservoir("Wall tub"),
                        START.plusDays(41).atStartOfDay(),
                        START.plusDays(Math.max(41, days)).atStartOfDay(),
                        Measure.atLeast(2.9, 3, Unit.DAYS),
                        Cause.of(Cause.Kind.DRAWN_FASTER_THAN_VISITS),
                        List.of(
                                new Cure(
                                        Cure.Kind.LARGER_RESERVOIR,
                                        Facts.of(Quantity.ENOUGH, 61.04)
                                                .and(Quantity.USABLE, 43.2)))));
        Verdict verdict =
                new Verdict(
                        false,
                        Optional.of(new Verdict.Harm(Warning.Kind.WILTED, first, dry)),
                        List.of(
                                new Verdict.Absence(
                                        START.plusDays(26),
                                        START.plusDays(35),
                                        true,
                                        START.plusDays(25),
                                        0.0412,
                                        first,
                                        Optional.of(new Verdict.FilledUp(true, 0.0523)))),
                        List.of(new Verdict.WaterLeft(first, dry, 5.2)),
                        Optional.of(warnings.get(0)));
        return new Advice(
                verdict,
                tasks,
                warnings,
                List.of(new Sizing("Wall tub", lasts, 3, START.plusDays(41), 61.04, 43.2)));
    }
}
