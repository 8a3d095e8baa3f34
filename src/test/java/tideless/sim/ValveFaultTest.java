package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Advice;
import tideless.advice.Advisor;
import tideless.advice.Cause;
import tideless.advice.Cure;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;
import tideless.rig.VesselId;

/**
 * Valves that ail from a day of the run, against closed forms. The seat alone limits (no tubes), so
 * that every flow is Torricelli's: 2 mm, Cd 0.61.
 *
 * <p>The reservoir of 0.1 m2 is full at 0.32 m, its outlet at 0.02 m: 30 L; its floor stands 0.60 m
 * above the bench, the seats 0.10 m: 0.82 m of head when full, 0.52 m at the outlet. The tray of
 * 0.2 m2 is kept at 50 mm with a band of 5 mm and runs over at 90 mm, 8 L higher.
 */
class ValveFaultTest {
    private static final double DAY_S = 86400;
    private static final double AREA_M2 = 0.2;
    private static final double WALL_M2 = 0.1;
    private static final double SETTING_M = 0.05;
    private static final double BAND_M = 0.005;
    private static final double BRIM_M3 = AREA_M2 * 0.09;
    private static final double FULL_HEAD_M = 0.82;
    private static final double LOW_HEAD_M = 0.52;

    /** Flow of the open seat under a head is this times its root, m^2.5/s. */
    private static final double SEAT = 0.61 * Math.PI * 1e-6 * Math.sqrt(2 * 9.80665);

    private static final Tube NO_TUBE = new Tube(0.01, 0, 0);

    private static ValveFaults stuck(ValveFaults.Stuck where, int fromDay, int toDay) {
        return new ValveFaults(
                where,
                Rigs.START.plusDays(fromDay),
                Rigs.START.plusDays(toDay),
                0,
                LocalDate.EPOCH,
                0,
                LocalDate.EPOCH);
    }

    private static ValveFaults seeping(double litresPerDay, int fromDay) {
        return new ValveFaults(
                ValveFaults.Stuck.NOT,
                LocalDate.EPOCH,
                LocalDate.EPOCH,
                litresPerDay * 1e-3 / DAY_S,
                Rigs.START.plusDays(fromDay),
                0,
                LocalDate.EPOCH);
    }

    private static ValveFaults clogging(double perDay, int fromDay) {
        return new ValveFaults(
                ValveFaults.Stuck.NOT,
                LocalDate.EPOCH,
                LocalDate.EPOCH,
                0,
                LocalDate.EPOCH,
                perDay,
                Rigs.START.plusDays(fromDay));
    }

    private static Filling.ByValve valve(double bandM, ValveFaults faults) {
        return new TestValve()
                .settingM(SETTING_M)
                .bandM(bandM)
                .seatAboveFloorM(0.10)
                .branch(NO_TUBE)
                .faults(faults)
                .make();
    }

    private static Tray tray(String name, double bandM, ValveFaults faults, double litresPerDay) {
        return new TestTray()
                .name(name)
                .shape(Rigs.box(AREA_M2, 0.10))
                .startLevelM(SETTING_M)
                .startLiquid(Rigs.FEED_LIQUID)
                .planting(Rigs.drinking(litresPerDay))
                .filling(valve(bandM, faults))
                .limits(Rigs.WIDE)
                .make();
    }

    private static Reservoir wall(double areaM2) {
        return new Reservoir(
                "wall",
                Rigs.box(areaM2, 0.32),
                0.32,
                0.02,
                0.60,
                0,
                0.32,
                new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0.5, Pouring.FEED),
                NO_TUBE);
    }

    private static Trace run(int days, double stepS, double wallM2, Tray... trays) {
        return Simulation.run(
                Rigs.scenario(days, stepS, List.of(wall(wallM2)), List.of(trays), Rigs.nobody()));
    }

    private static Optional<Event> first(Trace trace, Event.Kind kind) {
        return trace.events().stream().filter(event -> event.kind() == kind).findFirst();
    }

    private static Optional<Warning> warning(Trace trace, Warning.Kind kind) {
        Scenario scenario = trace.scenario();
        Advice advice = Advisor.advise(trace, Simulation.run(scenario));
        return advice.warnings().stream().filter(one -> one.kind() == kind).findFirst();
    }

    private static double amount(List<Ledger.Entry> entries, String what) {
        return entries.stream()
                .filter(entry -> entry.what().equals(what))
                .mapToDouble(Ledger.Entry::amount)
                .sum();
    }

    // What ails it at an instant.

    @Test
    void each_fault_begins_at_midnight_of_its_day_and_not_before() {
        ValveFaults faults =
                new ValveFaults(
                        ValveFaults.Stuck.OPEN,
                        Rigs.START.plusDays(3),
                        Rigs.START.plusDays(5),
                        1e-9,
                        Rigs.START.plusDays(2),
                        0.2,
                        Rigs.START.plusDays(1));
        ValveFault fault = new ValveFault(faults, Rigs.START, 0.01);
        double before = Math.ulp(5 * DAY_S);
        assertTrue(Double.isNaN(fault.stuckFrac(3 * DAY_S - before)));
        assertEquals(1, fault.stuckFrac(3 * DAY_S));
        assertEquals(1, fault.stuckFrac(5 * DAY_S - before));
        assertTrue(Double.isNaN(fault.stuckFrac(5 * DAY_S)));
        assertEquals(0, fault.leakFrac(2 * DAY_S - before));
        assertEquals(0.01, fault.leakFrac(2 * DAY_S));
        assertEquals(1, fault.clearFrac(DAY_S - before));
        assertEquals(1, fault.clearFrac(DAY_S));
    }

    /** A share of what is still free goes each day: 0.8, 0.64, 0.512 of the area. */
    @Test
    void clogging_takes_its_share_of_the_free_area_each_day() {
        ValveFault fault = new ValveFault(clogging(0.2, 1), Rigs.START, 0);
        assertEquals(0.8, fault.clearFrac(2 * DAY_S), 1e-15);
        assertEquals(0.64, fault.clearFrac(3 * DAY_S), 1e-15);
        assertEquals(0.512, fault.clearFrac(4 * DAY_S), 1e-15);
        assertEquals(Math.sqrt(0.8), fault.clearFrac(1.5 * DAY_S), 1e-15);
        // Begun a week before the run.
        assertEquals(
                Math.pow(0.8, 7),
                new ValveFault(clogging(0.2, -7), Rigs.START, 0).clearFrac(0),
                1e-15);
    }

    @Test
    void a_valve_that_hangs_shut_is_shut_and_a_sound_one_has_no_fault() {
        ValveFault shut = new ValveFault(stuck(ValveFaults.Stuck.SHUT, 0, 2), Rigs.START, 0);
        assertEquals(0, shut.stuckFrac(0));
        assertTrue(!shut.isSound());
        assertTrue(new ValveFault(ValveFaults.NONE, Rigs.START, 0).isSound());
    }

    // Stuck open.

    @ParameterizedTest
    @ValueSource(doubles = {60, 600, 3600})
    void a_valve_stuck_open_lets_the_reservoir_run_over_the_brim_to_the_litre(double stepS) {
        int day = 5;
        Tray ailing = tray("ailing", BAND_M, stuck(ValveFaults.Stuck.OPEN, day, 99), 1.0);
        Tray sound = tray("sound", BAND_M, ValveFaults.NONE, 0);
        Trace trace = run(10, stepS, WALL_M2, sound, ailing);
        Trace well = run(10, stepS, WALL_M2, sound, tray("ailing", BAND_M, ValveFaults.NONE, 1.0));
        TrayTrace tray = trace.trays().get(1);

        // Nothing before the date: the same bits as with a sound valve.
        for (int h = 0; h < 24 * day; h++) {
            assertEquals(well.trays().get(1).levelM().at(h), tray.levelM().at(h));
            assertEquals(0, tray.spillM3().at(h));
        }
        assertEquals(0, trace.trays().get(0).spillM3().sum());

        // Torricelli: the root of the head falls on a straight line, until the outlet is bare.
        int before = 24 * day - 1;
        double head0 =
                FULL_HEAD_M - 0.32 + trace.reservoirs().get(0).volumeM3().at(before) / WALL_M2;
        double perS = SEAT / (2 * WALL_M2);
        double emptyS = (Math.sqrt(head0) - Math.sqrt(LOW_HEAD_M)) / perS;
        double emptyAtS = first(trace, Event.Kind.OUTLET_UNCOVERED).orElseThrow().atS();
        // A second of 80 minutes: the engine's bends are far below, and a step ends nowhere near.
        assertEquals(day * DAY_S + emptyS, emptyAtS, 1);

        // At the brim when 8 L and what was drunk meanwhile have come.
        double thirst = 1e-3 / DAY_S;
        double wanted = BRIM_M3 - tray.volumeM3().at(before);
        double low = 0;
        double high = emptyS;
        for (int round = 0; round < 100; round++) {
            double mid = 0.5 * (low + high);
            double root = Math.sqrt(head0) - perS * mid;
            double came = WALL_M2 * (head0 - root * root);
            if (came - thirst * mid < wanted) {
                low = mid;
            } else {
                high = mid;
            }
        }
        Event overflow = first(trace, Event.Kind.OVERFLOW_BEGAN).orElseThrow();
        assertEquals(VesselId.tray("ailing"), overflow.vessel());
        assertEquals(day * DAY_S + low, overflow.atS(), 1);
        assertEquals(
                1,
                trace.events().stream()
                        .filter(event -> event.kind() == Event.Kind.OVERFLOW_BEGAN)
                        .count());

        // On the floor: all that was above the outlet, less what filled the tray and was drunk.
        double usable = trace.reservoirs().get(0).usableM3().at(before);
        double spilled = usable - wanted - thirst * emptyS;
        assertEquals(spilled, tray.spillM3().sum(), 1e-8);
        assertEquals(spilled, amount(trace.water().out(), "spilled"), 1e-8);
        assertEquals(tray.spillM3().sum(), amount(trace.water().out(), "spilled"), 1e-15);
        assertTrue(trace.water().relativeResidual() < 1e-12);

        // And from then on the tray falls by what is drunk.
        double atEnd = BRIM_M3 - thirst * (10 * DAY_S - emptyAtS);
        assertEquals(atEnd, tray.volumeM3().at(239), 1e-9);

        Warning warned = warning(trace, Warning.Kind.OVERFLOW).orElseThrow();
        assertEquals(VesselId.tray("ailing"), warned.vessel());
        assertEquals(trace.clockAt(overflow.atS()), warned.from());
        assertEquals(LocalDate.of(2026, 9, 12), warned.from().toLocalDate());
        // 25 L less 8 L less an hour's drinking: 16.96 L.
        assertEquals(17.0, warned.measure().value(), 0.05);
        assertTrue(warning(well, Warning.Kind.OVERFLOW).isEmpty());
    }

    // Stuck shut.

    @ParameterizedTest
    @ValueSource(doubles = {60, 600, 3600})
    void a_valve_stuck_shut_lets_the_level_fall_by_the_loss_and_recovers(double stepS) {
        Tray ailing = tray("tray", BAND_M, stuck(ValveFaults.Stuck.SHUT, 3, 6), 1.0);
        Trace trace = run(9, stepS, WALL_M2, ailing);
        Trace well = run(9, stepS, WALL_M2, tray("tray", BAND_M, ValveFaults.NONE, 1.0));
        Series level = trace.trays().get(0).levelM();
        Series came = trace.trays().get(0).inflowM3();
        double perHourM = 1e-3 / 24 / AREA_M2;
        for (int h = 0; h < 72; h++) {
            assertEquals(well.trays().get(0).levelM().at(h), level.at(h));
        }
        double startM = level.at(71);
        for (int h = 72; h < 144; h++) {
            assertEquals(0, came.at(h));
            // A sum of some thousand steps, each rounded to 1e-18 m3.
            assertEquals(startM - perHourM * (h - 71), level.at(h), 1e-13);
        }
        assertEquals(startM - 0.015, level.at(143), 1e-13);
        // 3 L come back through an open seat of 7.5 mL/s in seven minutes, and the last by tau
        // = 0.2 x 0.005 / 7.5e-6 = 133 s: after an hour it is where it would have been.
        assertEquals(well.trays().get(0).levelM().at(145), level.at(145), 1e-7);
        assertEquals(well.trays().get(0).levelM().at(215), level.at(215), 1e-8);
        assertEquals(0, trace.trays().get(0).spillM3().sum());
        assertTrue(first(trace, Event.Kind.DRIED_OUT).isEmpty());
    }

    /** It is below its band by 3 mm 8 mm after it shut: 1.6 days. It hangs; it is not too small. */
    @Test
    void a_valve_stuck_shut_is_told_as_such_and_not_as_one_too_small() {
        Trace trace =
                run(
                        9,
                        600,
                        WALL_M2,
                        tray("tray", BAND_M, stuck(ValveFaults.Stuck.SHUT, 3, 6), 1.0));
        Warning warned = warning(trace, Warning.Kind.STARVED_VALVE).orElseThrow();
        assertEquals(VesselId.tray("tray"), warned.vessel());
        assertEquals(Cause.Kind.VALVE_HANGS_SHUT, warned.cause().kind());
        assertEquals(LocalDate.of(2026, 9, 11), warned.from().toLocalDate());
        assertEquals(List.of(Cure.of(Cure.Kind.FREE_VALVE)), warned.cures());
    }

    @Test
    void a_tray_whose_valve_stays_shut_runs_dry_when_its_volume_says() {
        Trace trace =
                run(9, 600, WALL_M2, tray("tray", BAND_M, stuck(ValveFaults.Stuck.SHUT, 1, 99), 2));
        double startM3 = trace.trays().get(0).volumeM3().at(23);
        // The last 2 mm on the floor are a film that feeds ever less: a tenth is left after ln 10
        // times a millimetre's worth. Noticed at the end of a step of 600 s; steps of a fifteenth
        // of that time take the film 3.5 % (700 s) too fast.
        double millimetreM3 = trace.trays().get(0).tray().shape().volumeM3(1e-3);
        double usableM3 = startM3 - millimetreM3 * (2 - Math.log(10));
        double dryS = DAY_S + usableM3 / (2e-3 / DAY_S);
        assertEquals(dryS, first(trace, Event.Kind.DRIED_OUT).orElseThrow().atS(), 1200);
        assertTrue(first(trace, Event.Kind.OUTLET_UNCOVERED).isEmpty());
    }

    // A seep.

    /**
     * A litre a day with the reservoir full goes with the root of the head: the root falls on a
     * straight line, and the level rises by what has come less what was drunk.
     */
    @ParameterizedTest
    @ValueSource(doubles = {60, 600, 3600})
    void a_seep_lifts_the_level_by_what_seeps_less_the_loss(double stepS) {
        int days = 12;
        Trace trace = run(days, stepS, WALL_M2, tray("tray", BAND_M, seeping(1.0, 0), 0.4));
        Series level = trace.trays().get(0).levelM();
        double perS = 1e-3 / DAY_S / (2 * WALL_M2 * Math.sqrt(FULL_HEAD_M));
        for (int h = 0; h < days * 24; h++) {
            double atS = 3600.0 * (h + 1);
            double root = Math.sqrt(FULL_HEAD_M) - perS * atS;
            double came = WALL_M2 * (FULL_HEAD_M - root * root);
            double expected = SETTING_M + (came - 0.4e-3 / DAY_S * atS) / AREA_M2;
            assertEquals(expected, level.at(h), 1e-8);
        }
        assertTrue(level.at(days * 24 - 1) > SETTING_M + 0.03, "it must creep");
        assertTrue(first(trace, Event.Kind.OVERFLOW_BEGAN).isEmpty());
    }

    /** Three litres a day and nobody drinks: over the brim, and the reservoir is empty in time. */
    @Test
    void a_seep_runs_the_reservoir_down_to_its_outlet() {
        Trace trace = run(20, 600, WALL_M2, tray("tray", BAND_M, seeping(3.0, 2), 0));
        double perS = 3e-3 / DAY_S / (2 * WALL_M2 * Math.sqrt(FULL_HEAD_M));
        double emptyS = (Math.sqrt(FULL_HEAD_M) - Math.sqrt(LOW_HEAD_M)) / perS;
        double brimS = (Math.sqrt(FULL_HEAD_M) - Math.sqrt(FULL_HEAD_M - 0.008 / WALL_M2)) / perS;
        assertEquals(
                2 * DAY_S + emptyS,
                first(trace, Event.Kind.OUTLET_UNCOVERED).orElseThrow().atS(),
                1);
        assertEquals(
                2 * DAY_S + brimS, first(trace, Event.Kind.OVERFLOW_BEGAN).orElseThrow().atS(), 1);
        // 30 L less the 8 that stand in the tray.
        assertEquals(0.022, trace.trays().get(0).spillM3().sum(), 1e-9);
        for (int h = 0; h < 48; h++) {
            assertEquals(SETTING_M, trace.trays().get(0).levelM().at(h), 1e-15);
        }
        Warning warned = warning(trace, Warning.Kind.OVERFLOW).orElseThrow();
        assertEquals(22.0, warned.measure().value(), 1e-6);
    }

    /** Less than what is drunk: the float makes up for the rest, and nothing is to be seen. */
    @Test
    void a_seep_below_the_loss_is_hidden_by_the_float() {
        Trace seeps = run(6, 600, WALL_M2, tray("tray", BAND_M, seeping(0.5, 0), 1.0));
        Trace well = run(6, 600, WALL_M2, tray("tray", BAND_M, ValveFaults.NONE, 1.0));
        Series level = seeps.trays().get(0).levelM();
        // Rest: b q / Q below the setting, 5 mm x 11.57 uL/s / 10.59 mL/s, about half of it now.
        for (int h = 24; h < 144; h++) {
            assertTrue(level.at(h) < SETTING_M);
            assertTrue(level.at(h) > well.trays().get(0).levelM().at(h));
        }
        assertEquals(
                well.reservoirs().get(0).volumeM3().at(143),
                seeps.reservoirs().get(0).volumeM3().at(143),
                1e-5 * AREA_M2);
    }

    // Clogging.

    /**
     * A fifth of the free seat a day from day 2, and 20 L a day drunk from a reservoir of 3 m2 (900
     * L). Wide open the valve passes its thirst until 0.8^d SEAT sqrt(h) = q, with h falling by
     * what is drunk; then the level leaves a band of 0.5 mm within tau = A b/q = 432 s.
     */
    @Test
    void a_clogging_valve_fails_at_the_hour_of_the_closed_form() {
        double wallM2 = 3;
        double bandM = 0.0005;
        double thirst = 20e-3 / DAY_S;
        Trace trace = run(32, 600, wallM2, tray("tray", bandM, clogging(0.2, 2), 20));
        double low = 2 * DAY_S;
        double high = 32 * DAY_S;
        for (int round = 0; round < 100; round++) {
            double mid = 0.5 * (low + high);
            double head = FULL_HEAD_M - thirst * mid / wallM2;
            double open = Math.pow(0.8, mid / DAY_S - 2) * SEAT * Math.sqrt(head);
            if (open > thirst) {
                low = mid;
            } else {
                high = mid;
            }
        }
        Series level = trace.trays().get(0).levelM();
        int left = 0;
        while (level.at(left) >= SETTING_M - bandM) {
            left++;
        }
        // Seen at the end of an hour: within this hour and tau after the closed form.
        double sinceS = 3600.0 * (left + 1) - low;
        assertTrue(sinceS > 0 && sinceS < 3600 + 432, sinceS + " s after " + low / DAY_S + " d");

        // Then what is wanting grows: A dh = q (1 - 0.8^d) dt. Starved at 3 mm below the band.
        double rate = -Math.log(0.8) / DAY_S;
        double wantedM3 = 0.003 * AREA_M2;
        double a = 0;
        double b = 5 * DAY_S;
        for (int round = 0; round < 100; round++) {
            double mid = 0.5 * (a + b);
            if (thirst * (mid + Math.expm1(-rate * mid) / rate) < wantedM3) {
                a = mid;
            } else {
                b = mid;
            }
        }
        Warning warned = warning(trace, Warning.Kind.STARVED_VALVE).orElseThrow();
        assertEquals(VesselId.tray("tray"), warned.vessel());
        double warnedS = Duration.between(Rigs.START.atStartOfDay(), warned.from()).toSeconds();
        // Within an hour of sampling; the head that goes on falling makes 1 % of the fall.
        assertEquals(low + a, warnedS, 3600);
        assertEquals(Cause.Kind.VALVE_SILTS_UP, warned.cause().kind());
        assertEquals(List.of(Cure.of(Cure.Kind.CLEAN_SEAT)), warned.cures());
    }

    /** A tenth a day under a small thirst: the float opens further and the level hardly moves. */
    @Test
    void a_clogging_valve_hangs_lower_in_its_band_by_the_area_that_is_left() {
        Trace trace = run(15, 600, 30, tray("tray", BAND_M, clogging(0.1, 0), 5));
        Series level = trace.trays().get(0).levelM();
        double thirst = 5e-3 / DAY_S;
        for (int day = 3; day <= 15; day++) {
            double head = FULL_HEAD_M - thirst * day * DAY_S / 30;
            double open = Math.pow(0.9, day) * SEAT * Math.sqrt(head);
            double below = BAND_M * thirst / open;
            // It trails its rest by tau = A b / open at ln(0.9) a day: 0.4 % of it at most here.
            assertEquals(below, SETTING_M - level.at(24 * day - 1), 0.01 * below, "day " + day);
        }
    }
}
