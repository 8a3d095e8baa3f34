package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.physics.Time;
import tideless.rig.Liquid;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.Component;

/** Crops that follow one another on a tray. */
class SuccessionTest {
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    private static final String ROOM =
            """
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            night_temperature = "18 degC"
            day_humidity = "60 %"
            night_humidity = "70 %"
            [lamp]
            ppfd = "240 umol/m2/s"
            on = "06:00"
            off = "22:00"
            [feed]
            recipe = "steiner"
            ec = "1.5 mS/cm"
            """;

    private static final String TRAY =
            """
            [tray.t]
            length = "60 cm"
            width = "35 cm"
            depth = "15 cm"
            cup_bottom = "10 cm"
            gap = "1 %"
            """;

    private static final String SEALED = "start_level = \"11.3 cm\"\n";

    private static String lettuceCutAfter(int days) {
        return "crop = \"lettuce\"\nplants = 4\nharvest_after = \"" + days + " days\"\n";
    }

    private static Scenario scenario(LocalDate start, int days, String at, String rest) {
        return scenario(start, days, at, rest, TRAY);
    }

    private static Scenario scenario(
            LocalDate start, int days, String at, String rest, String tray) {
        String text =
                "title = \"t\"\nstart = %s\nlength = \"%d days\"\n".formatted(start, days)
                        + ROOM
                        + "[visits]\ndays = [\"mon\", \"tue\", \"wed\", \"thu\", \"fri\", \"sat\","
                        + " \"sun\"]\nat = \""
                        + at
                        + "\"\nflush = \"never\"\n"
                        + tray
                        + rest;
        Reading reading = ScenarioReader.read("t.toml", new FilesInMemory(text));
        return ((Reading.Good) reading).scenario();
    }

    private static List<Event> of(Trace trace, Event.Kind kind) {
        return trace.events().stream().filter(e -> e.kind() == kind).toList();
    }

    private static final String BASIL = "crop = \"basil\"\nplants = 5\nnursery_age = \"18 days\"\n";

    /** Basil for a month after 25 days of lettuce, somebody there at that hour. */
    private static Trace afterLettuce(String at) {
        String crops = lettuceCutAfter(25) + "[[tray.t.next]]\n" + BASIL;
        return Simulation.run(scenario(START, 55, at, SEALED + crops));
    }

    /** The same month of basil in a run of its own. */
    private static Trace alone(String at) {
        return Simulation.run(scenario(START.plusDays(25), 30, at, SEALED + BASIL));
    }

    /**
     * Cut and set out at a midnight, in a tray that is emptied, cleaned and filled: all that is
     * left of the crop before is its ledger. What differs is rounding: times count from another
     * start.
     */
    @Test
    void a_second_crop_in_fresh_solution_grows_as_it_would_alone() {
        Trace both = afterLettuce("00:00");
        Trace alone = alone("00:00");
        TrayTrace then = both.trays().get(0);
        TrayTrace now = alone.trays().get(0);
        int from = 25 * 24;
        for (TraySeries kind : TraySeries.values()) {
            // The filling on a run's first day is its start, and on a later one is poured in.
            boolean poured = kind == TraySeries.POURED || kind == TraySeries.DRAINED;
            int first = poured ? 1 : 0;
            for (int h = first; h < alone.hours(); h++) {
                double expected = now.of(kind).at(h);
                assertEquals(
                        expected,
                        then.of(kind).at(from + h),
                        1e-9 * Math.max(1e-6, Math.abs(expected)),
                        kind + " at hour " + h);
            }
        }
        assertTrue(now.freshG().at(alone.hours() - 1) > 10);
    }

    /** The plants' first morning is spent in the nursery: two hours of sixteen in this light. */
    @Test
    void a_crop_set_out_in_the_morning_lags_by_the_light_of_that_morning() {
        Trace both = afterLettuce("08:00");
        Trace alone = alone("08:00");
        double expected = alone.trays().get(0).freshG().at(30 * 24 - 1);
        double found = both.trays().get(0).freshG().at(55 * 24 - 1);
        assertTrue(found < expected, found + " of " + expected);
        // One day of growth is 10 to 15 % of a young plant; an eighth of its light a fiftieth.
        assertEquals(expected, found, 0.03 * expected);
    }

    private static final String VALVE =
            """
            [tray.t.valve]
            setting = "10.3 cm"
            [reservoir.r]
            length = "40 cm"
            width = "30 cm"
            depth = "30 cm"
            floor_above_bench = "50 cm"
            """;

    private static final String HAND = "[tray.t.hand]\nto = \"11 cm\"\n";

    @ParameterizedTest
    @ValueSource(strings = {"", "fresh = false\n", "planted = 2026-04-06\n"})
    void water_and_every_ion_are_kept_over_the_change_of_crop(String how) {
        for (String filling : List.of(VALVE, HAND)) {
            Trace trace =
                    Simulation.run(
                            scenario(
                                    START,
                                    60,
                                    "08:00",
                                    lettuceCutAfter(25)
                                            + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                            + how
                                            + filling));
            assertEquals(1, of(trace, Event.Kind.PLANTED).size());
            assertEquals(0, trace.water().relativeResidual(), 1e-12);
            for (Ledger ledger : trace.components()) {
                assertEquals(0, ledger.relativeResidual(), 1e-12, ledger.name());
            }
        }
    }

    @Test
    void a_member_of_an_ensemble_is_planted_as_the_run_is() {
        Scenario scenario =
                scenario(
                        START,
                        60,
                        "08:00",
                        lettuceCutAfter(25)
                                + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                + VALVE);
        Trace trace = Simulation.run(scenario);
        Season season = Simulation.season(scenario, Surroundings.of(scenario));
        assertEquals(trace.events(), season.events());
        List<TraySeason.Yield> yields = season.trays().get(0).yields();
        assertEquals(2, yields.size());
        PlantingTrace lettuce = trace.plantings(trace.trays().get(0)).get(0);
        assertEquals(
                trace.trays().get(0).freshG().at(lettuce.lastHour()), yields.get(0).freshG(), 0);
    }

    @Test
    void until_its_day_the_tray_is_empty_and_the_valve_holds_it() {
        Trace trace =
                Simulation.run(
                        scenario(
                                START,
                                60,
                                "08:00",
                                lettuceCutAfter(25)
                                        + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                        + "planted = 2026-04-06\n"
                                        + VALVE));
        TrayTrace tray = trace.trays().get(0);
        List<PlantingTrace> plantings = trace.plantings(tray);
        assertEquals(List.of("lettuce", "basil"), crops(plantings));
        assertEquals(25 * 24 + 8 - 1, plantings.get(0).lastHour());
        assertEquals(35 * 24 + 8, plantings.get(1).firstHour());
        for (int h = plantings.get(0).lastHour() + 1; h < plantings.get(1).firstHour(); h++) {
            assertEquals(0, tray.thirstM3().at(h), 0);
            assertEquals(0, tray.leafAreaIndex().at(h), 0);
            assertTrue(Double.isNaN(tray.rootTipM().at(h)));
            assertTrue(tray.evaporationM3().at(h) > 0);
            assertEquals(0.103, tray.levelM().at(h), 0.006);
        }
        assertTrue(tray.inflowM3().sum(26 * 24, 35 * 24) > 0);
        Event planted = of(trace, Event.Kind.PLANTED).get(0);
        assertEquals(35 * Time.DAY_S + 8 * 3600, planted.atS(), 0);
        assertEquals("basil", planted.detail());
        // Emptied and filled to where it stood: 60 by 35 cm, 10.3 cm deep, less what evaporated.
        assertEquals(0.6 * 0.35 * 0.103, planted.volumeM3(), 1e-12);
        assertEquals(tray.volumeM3().at(35 * 24 + 7), planted.drainedM3(), 1e-12);
        assertEquals(
                1.5,
                tray.ecMsPerCm().at(35 * 24 + 8),
                0.02,
                "fresh feed, but for an hour of the plants and the valve");
    }

    /** A visit in the midst of an hour: the sample that closes it finds no lettuce any more. */
    @Test
    void the_last_sample_of_a_crop_is_the_last_before_it_is_cut() {
        Trace trace =
                Simulation.runUnread(
                        scenario(START, 60, "08:30", SEALED + lettuceCutAfter(25) + LATER));
        TrayTrace tray = trace.trays().get(0);
        PlantingTrace lettuce = trace.plantings(tray).get(0);
        assertEquals(25 * 24 + 7, lettuce.lastHour());
        assertEquals(39 * 24 + 8, trace.plantings(tray).get(1).firstHour());
        assertTrue(tray.freshG().at(lettuce.lastHour()) > 50);
        assertTrue(Double.isNaN(tray.freshG().at(lettuce.lastHour() + 1)));
    }

    private static List<String> crops(List<PlantingTrace> plantings) {
        return plantings.stream().map(p -> p.tray().planting().cropName()).toList();
    }

    @Test
    void a_crop_that_is_not_out_by_then_makes_room() {
        Trace trace =
                Simulation.run(
                        scenario(
                                START,
                                40,
                                "08:00",
                                SEALED
                                        + "crop = \"lettuce\"\nplants = 4\n"
                                        + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                        + "planted = 2026-03-16\n"));
        Event cut = of(trace, Event.Kind.HARVEST).get(0);
        assertEquals(Event.MAKES_ROOM, cut.detail());
        assertEquals(14 * Time.DAY_S + 8 * 3600, cut.atS(), 0);
        assertEquals(cut.atS(), of(trace, Event.Kind.PLANTED).get(0).atS(), 0);
    }

    @Test
    void what_is_kept_is_topped_up_and_its_salts_stay() {
        Trace trace =
                Simulation.run(
                        scenario(
                                START,
                                40,
                                "08:00",
                                SEALED
                                        + lettuceCutAfter(25)
                                        + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                        + "fresh = false\nstart_level = \"11 cm\"\n"));
        TrayTrace tray = trace.trays().get(0);
        int before = 25 * 24 + 7;
        Event planted = of(trace, Event.Kind.PLANTED).get(0);
        assertEquals(0, planted.drainedM3(), 0);
        double missing = 0.6 * 0.35 * 0.11 - tray.volumeM3().at(before);
        assertTrue(missing > 1e-3, "nothing was drunk: " + missing);
        assertEquals(missing, planted.volumeM3(), 1e-12);
        // Mixed by volume, and an hour of the plants.
        double expected =
                (tray.ecMsPerCm().at(before) * tray.volumeM3().at(before) + 1.5 * missing)
                        / (0.6 * 0.35 * 0.11);
        assertEquals(expected, tray.ecMsPerCm().at(before + 1), 0.02);
    }

    @Test
    void a_crop_without_a_day_waits_for_the_cut_and_after_a_loss_for_its_seedlings() {
        String next = "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\nnursery_age = \"21 days\"\n";
        Trace unripe =
                Simulation.run(scenario(START, 20, "08:00", SEALED + lettuceCutAfter(25) + next));
        assertThat(of(unripe, Event.Kind.PLANTED)).isEmpty();
        Trace lost =
                Simulation.run(
                        scenario(
                                START,
                                60,
                                "08:00",
                                "start_level = \"1 cm\"\n" + lettuceCutAfter(25) + next));
        double diedS = of(lost, Event.Kind.DIED).get(0).atS();
        double dayS = Math.floor(diedS / Time.DAY_S) * Time.DAY_S;
        double visitS = dayS + 8 * 3600 > diedS ? dayS + 8 * 3600 : dayS + 32 * 3600;
        // Sown at the visit that finds the loss, and raised for 21 days.
        assertThat(of(lost, Event.Kind.PLANTED))
                .extracting(Event::atS)
                .containsExactly(visitS + 21 * Time.DAY_S);
        assertThat(of(lost, Event.Kind.HARVEST)).isEmpty();
    }

    /** Four days in a film kill; from then on nobody pours, for nothing follows. */
    @Test
    void a_tray_is_not_topped_up_once_its_crop_is_lost() {
        Scenario scenario =
                scenario(
                        START,
                        60,
                        "08:00",
                        "start_level = \"1 cm\"\n"
                                + lettuceCutAfter(50)
                                + "[tray.t.hand]\nto = \"1 cm\"\n");
        Trace trace = Simulation.runUnread(scenario);
        double diedS = of(trace, Event.Kind.DIED).get(0).atS();
        assertTrue(diedS < 20 * Time.DAY_S);
        assertThat(of(trace, Event.Kind.TOP_UP)).allMatch(e -> e.atS() <= diedS);
    }

    @Test
    void a_day_that_is_missed_is_made_up_for_at_the_next_visit() {
        Scenario scenario =
                scenario(
                        START,
                        40,
                        "08:00",
                        SEALED
                                + lettuceCutAfter(10)
                                + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n"
                                + "planted = 2026-03-16\n");
        boolean[] missed = new boolean[40];
        missed[14] = true;
        Trace trace =
                Simulation.runUnread(
                        scenario, new Departures(new double[0], new double[0][], missed, 1));
        assertEquals(15 * Time.DAY_S + 8 * 3600, of(trace, Event.Kind.PLANTED).get(0).atS(), 0);
    }

    /** Thirst departs by crop: the second one's share of what the crops of all trays depart by. */
    @Test
    void each_crop_departs_by_its_own_days() {
        Scenario scenario =
                scenario(
                        START,
                        30,
                        "00:00",
                        SEALED
                                + lettuceCutAfter(10)
                                + "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\n");
        double[] twice = new double[30];
        Arrays.fill(twice, 2);
        Trace plain = Simulation.runUnread(scenario);
        Trace thirsty =
                Simulation.runUnread(
                        scenario,
                        new Departures(
                                new double[0], new double[][] {{}, twice}, new boolean[0], 1));
        double[] factor = new double[2];
        for (int i = 0; i < 2; i++) {
            int h = 24 * (i == 0 ? 5 : 10) + 12;
            factor[i] =
                    thirsty.trays().get(0).thirstM3().at(h) / plain.trays().get(0).thirstM3().at(h);
        }
        assertEquals(1, factor[0], 1e-12);
        assertEquals(2, factor[1], 1e-9);
    }

    private static double hoursFrom(Trace trace, Event.Kind kind, double fromS) {
        return (of(trace, kind).get(0).atS() - fromS) / 3600;
    }

    /** Their cups hang nine centimetres above the water: lost as seedlings are, after a day. */
    @Test
    void seedlings_of_a_second_crop_are_as_tender_as_those_of_a_first() {
        String dry = "start_level = \"1 cm\"\n";
        Trace both =
                Simulation.run(
                        scenario(
                                START,
                                40,
                                "00:00",
                                SEALED + lettuceCutAfter(25) + "[[tray.t.next]]\n" + BASIL + dry));
        Trace alone = Simulation.run(scenario(START.plusDays(25), 15, "00:00", BASIL + dry));
        for (Event.Kind kind : List.of(Event.Kind.WILTED, Event.Kind.DIED)) {
            assertEquals(hoursFrom(alone, kind, 0), hoursFrom(both, kind, 25 * Time.DAY_S), 1e-6);
        }
    }

    private static final String NOBODY = "crop = \"lettuce\"\nplants = 0\n";
    private static final String LATER =
            "[[tray.t.next]]\ncrop = \"basil\"\nplants = 5\nplanted = 2026-04-10\n";

    /** In ten days from being set out salt above 8 mS/cm kills; the tray is older than that. */
    @Test
    void salt_kills_seedlings_by_the_days_since_they_were_set_out() {
        Scenario salty = scenario(START, 60, "08:00", SEALED + NOBODY + LATER);
        Scenario scenario =
                salty.withFeed(
                        new Liquid(salty.feed().name(), salty.feed().composition().times(8)));
        Event lost = of(Simulation.run(scenario), Event.Kind.DIED).get(0);
        assertEquals(40 * Time.DAY_S, lost.atS(), 0);
    }

    /** Half of an open tray evaporates in forty days: at once too salty for plants on feed. */
    @Test
    void young_plants_are_used_to_the_feed_and_not_to_what_stands_in_the_tray() {
        Trace trace =
                Simulation.run(
                        scenario(
                                START,
                                60,
                                "08:00",
                                "start_level = \"5 cm\"\ndeck_floats_down_to = \"0 cm\"\n"
                                        + NOBODY
                                        + LATER
                                        + "fresh = false\nstart_level = \"0 cm\"\n",
                                TRAY.replace("1 %", "60 %")));
        double feed = trace.trays().get(0).ecMsPerCm().at(0);
        double kept = trace.trays().get(0).ecMsPerCm().at(39 * 24);
        assertTrue(kept > feed + 6, kept + " from " + feed);
        assertEquals(1, of(trace, Event.Kind.SALT_WILTED).size());
        assertEquals(39, of(trace, Event.Kind.SALT_WILTED).get(0).atS() / Time.DAY_S, 0.5);
    }

    @Test
    void a_day_on_which_nobody_is_due_is_kept_all_the_same() {
        String wednesday = LATER.replace("2026-04-10", "2026-04-08");
        Scenario daily = scenario(START, 60, "08:00", SEALED + NOBODY + wednesday);
        Visits mondays =
                new Visits(Set.of(DayOfWeek.MONDAY), 8 * 3600, List.of(), daily.visits().flush());
        Trace trace = Simulation.runUnread(daily.withVisits(mondays));
        assertEquals(37 * Time.DAY_S + 8 * 3600, of(trace, Event.Kind.PLANTED).get(0).atS(), 0);
    }

    @Test
    void a_dry_tray_is_told_of_anew_to_each_crop() {
        Trace trace =
                Simulation.run(
                        scenario(
                                START,
                                60,
                                "08:00",
                                "start_level = \"0 cm\"\n"
                                        + "crop = \"lettuce\"\nplants = 4\n"
                                        + LATER
                                        + "fresh = false\n"));
        assertEquals(
                List.of(0.0, 39.0),
                of(trace, Event.Kind.DRIED_OUT).stream()
                        .map(e -> Math.floor(e.atS() / Time.DAY_S))
                        .toList());
    }

    /** From the visit of day 26, the first after the cut, to that of day 39. */
    @Test
    void nobody_tops_up_a_tray_that_waits_for_its_crop() {
        Trace trace =
                Simulation.runUnread(
                        scenario(START, 60, "08:00", lettuceCutAfter(25) + LATER + HAND));
        List<Double> days =
                of(trace, Event.Kind.TOP_UP).stream()
                        .map(e -> Math.floor(e.atS() / Time.DAY_S))
                        .toList();
        assertThat(days)
                .anyMatch(day -> day >= 20 && day < 25)
                .anyMatch(day -> day >= 39)
                .noneMatch(day -> day >= 25 && day < 39);
    }

    /** As none is changed within a week of a harvest. */
    @Test
    void within_a_week_of_a_planting_nothing_is_changed() {
        Scenario scenario = scenario(START, 60, "08:00", SEALED + NOBODY + LATER);
        TrayRun run = new TrayRun(scenario.trays().get(0), 0, 20, Rigs.air(20), 0);
        LocalDate day = LocalDate.of(2026, 4, 10);
        assertFalse(run.isNearPlanting(day.minusDays(7)));
        assertTrue(run.isNearPlanting(day.minusDays(6)));
    }

    @Test
    void cleaning_takes_what_has_dried_on_the_floor_along() {
        TraySalts salts = new TraySalts(1e-3, Rigs.FEED);
        salts.settleFilm(1e-6, 1e-4);
        int k = Component.K.ordinal();
        assertTrue(salts.driedMol[k] > 0);
        double before = salts.mol[k] + salts.driedMol[k];
        salts.wash();
        assertEquals(before, salts.drainedMol[k], 0);
        assertEquals(0, salts.mol[k] + salts.driedMol[k], 0);
        salts.settleFilm(1e-3, 0.01);
        assertEquals(0, salts.mol[k], 0);
    }
}
