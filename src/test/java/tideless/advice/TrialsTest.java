package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.crop.RoomLimits;
import tideless.rig.Deck;
import tideless.rig.Scenario;
import tideless.rig.TestDeck;
import tideless.rig.TestTray;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Events;
import tideless.sim.Ledger;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;

/** Rigs on which roots, air, salt or drought once left no trace: each must leave its own. */
class TrialsTest {
    @TempDir Path folder;

    private static String room(double dayC, double nightC, String lamp) {
        return """
        start = 2026-03-02
        [climate]
        kind = "room"
        day_temperature = "%s degC"
        night_temperature = "%s degC"
        day_humidity = "60 %%"
        night_humidity = "70 %%"
        [lamp]
        type = "white-led"
        %s
        [water]
        source = "rain"
        [feed]
        recipe = "hoagland-2"
        ec = "1.4 mS/cm"
        ph = 5.8
        """
                .formatted(dayC, nightC, lamp);
    }

    private static final String LIT = "ppfd = \"250 umol/m2/s\"\non = \"06:00\"\noff = \"22:00\"";

    private Scenario scenario(String head, String rest) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(file, head + rest);
        return assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario();
    }

    private Trace run(int days, String room, String rig) throws IOException {
        String head = "title = \"a rig\"\nlength = \"%d days\"\n".formatted(days);
        Trace trace = Simulation.run(scenario(head + room, rig));
        assertTrue(trace.water().relativeResidual() <= 1e-12, "" + trace.water());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() <= 1e-12, "" + ledger);
        }
        return trace;
    }

    private static long told(Trace trace, Event.Kind kind) {
        return trace.events().stream().filter(e -> e.kind() == kind).count();
    }

    private static double head(TrayTrace tray) {
        return tray.freshG().at(tray.freshG().size() - 1);
    }

    private static double unmetShare(TrayTrace tray) {
        return tray.of(TraySeries.UNMET_THIRST).sum() / tray.thirstM3().sum();
    }

    private static String lettuceTray(String setting, String more) {
        return """
        [reservoir.shelf]
        length = "80 cm"
        width = "50 cm"
        depth = "50 cm"
        full_level = "47 cm"
        floor_above_bench = "60 cm"
        refill = "at every visit"
        [tray.t]
        length = "60 cm"
        width = "50 cm"
        depth = "12 cm"
        %s
        plants = 8
        ground = "0.36 m2"
        [tray.t.valve]
        setting = "%s"
        seat = "3 mm"
        [visits]
        days = "daily"
        """
                .formatted(more, setting);
    }

    @Test
    void a_bucket_filled_on_saturdays_only_dries_between_them_and_costs_growth()
            throws IOException {
        String bucket =
                """
                [tray.bucket]
                shape = "bucket"
                diameter = "28 cm"
                floor_diameter = "22 cm"
                depth = "30 cm"
                cup_bottom = "22 cm"
                start_level = "23 cm"
                crop = "tomato"
                plants = 1
                nursery_age = "35 days"
                ground = "0.5 m2"
                [tray.bucket.hand]
                to = "15 cm"
                [visits]
                flush = "never"
                days = %s
                """;
        String sun = LIT.replace("250", "450");
        Trace weekly = run(84, room(24, 18, sun), bucket.formatted("[\"sat\"]"));
        Trace daily = run(84, room(24, 18, sun), bucket.formatted("\"daily\""));
        TrayTrace dry = weekly.trays().get(0);
        assertTrue(told(weekly, Event.Kind.DRIED_OUT) >= 1);
        assertTrue(told(weekly, Event.Kind.WILTED) >= 1);
        assertEquals(0, told(daily, Event.Kind.DRIED_OUT));
        assertTrue(unmetShare(dry) > 0.1, "" + unmetShare(dry));
        assertTrue(head(dry) < 0.8 * head(daily.trays().get(0)));
    }

    @Test
    void eight_litres_do_not_carry_two_trays_at_twenty_millimetres_through_twelve_days()
            throws IOException {
        String tray =
                """
                [tray.%s]
                length = "38 cm"
                width = "30 cm"
                depth = "10 cm"
                cup_bottom = "1.5 cm"
                crop = "lettuce"
                nursery_age = "28 days"
                harvest_after = "34 days"
                plants = 6
                ground = "0.16 m2"
                [tray.%s.valve]
                setting = "2 cm"
                """;
        Trace trace =
                run(
                        34,
                        room(23, 19, LIT),
                        """
                        [reservoir.top]
                        length = "25 cm"
                        width = "20 cm"
                        depth = "17 cm"
                        full_level = "16 cm"
                        floor_above_bench = "80 cm"
                        [visits]
                        days = ["mon", "thu"]
                        away = [{ from = 2026-03-24, to = 2026-04-04 }]
                        """
                                + tray.formatted("upper", "upper")
                                + tray.formatted("lower", "lower"));
        assertEquals(2, told(trace, Event.Kind.DRIED_OUT));
        for (TrayTrace one : trace.trays()) {
            assertTrue(one.of(TraySeries.UNMET_THIRST).sum() > 0.5e-3);
            double most = 0;
            for (int h = 0; h < trace.hours(); h++) {
                double na = one.molPerM3(Component.NA.ordinal(), h);
                most = Double.isNaN(na) ? most : Math.max(most, na);
            }
            assertTrue(most <= 6100 * (1 + 1e-9), "" + most);
        }
    }

    @Test
    void a_tray_filled_to_its_deck_gives_lighter_heads_than_one_with_air() throws IOException {
        String lettuce =
                "crop = \"lettuce\"\nnursery_age = \"16 days\"\nharvest_after = \"30 days\"\n";
        Trace brim =
                run(
                        40,
                        room(22, 18, LIT),
                        lettuceTray("11.95 cm", lettuce + "cup_bottom = \"6.4 cm\""));
        Trace air =
                run(
                        40,
                        room(22, 18, LIT),
                        lettuceTray("6.5 cm", lettuce + "cup_bottom = \"6 cm\""));
        double share = head(brim.trays().get(0)) / head(air.trays().get(0));
        assertTrue(share > 0.70 && share < 0.90, "" + share);
        assertTrue(brim.trays().get(0).of(TraySeries.OXYGEN).min(0, brim.hours()) < 1.5);
    }

    /** Kratky (2005): 178, 205 and 220 g, that is 81 : 93 : 100; five points. */
    @Test
    void a_gap_never_late_or_always_gives_the_published_heads() {
        Reading.Good tank =
                assertInstanceOf(
                        Reading.Good.class,
                        ScenarioReader.read(Path.of("scenarios", "sealed-lettuce-tank.toml")));
        double always = head(tank.scenario(), Deck.PLAIN);
        double late = head(tank.scenario(), TestDeck.floatingDownToM(0.05));
        double never = head(tank.scenario(), TestDeck.floatingDownToM(0));
        assertEquals(93, 100 * late / always, 5);
        assertEquals(81, 100 * never / always, 5);
    }

    private static double head(Scenario tank, Deck deck) {
        return head(
                Simulation.runUnread(
                                tank.withTrays(
                                        List.of(
                                                TestTray.of(tank.trays().get(0))
                                                        .deck(deck)
                                                        .make())))
                        .trays()
                        .get(0));
    }

    @Test
    void a_trough_that_obeys_a_low_valve_dries_first_when_nobody_comes() throws IOException {
        String trough =
                """
                [reservoir.drum]
                length = "30 cm"
                width = "30 cm"
                depth = "30 cm"
                full_level = "28 cm"
                floor_above_bench = "40 cm"
                refill = "never"
                [tray.trough]
                length = "1 m"
                width = "30 cm"
                depth = "15 cm"
                cup_bottom = "8 cm"
                start_level = "8.5 cm"
                crop = "tomato"
                nursery_age = "35 days"
                plants = 3
                ground = "1 m2"
                [tray.trough.valve]
                setting = "%s"
                seat = "3 mm"
                [visits]
                days = ["sun"]
                """;
        Trace low = run(60, room(24, 18, LIT), trough.formatted("2.7 cm"));
        Trace high = run(60, room(24, 18, LIT), trough.formatted("8.5 cm"));
        double lowDry = Events.firstS(low, Event.Kind.DRIED_OUT);
        double highDry = Events.firstS(high, Event.Kind.DRIED_OUT);
        assertTrue(lowDry <= highDry + 86_400, lowDry + " against " + highDry);
        assertTrue(told(low, Event.Kind.WILTED) >= 1);
        assertEquals(1, told(low, Event.Kind.DIED));
    }

    @Test
    void a_sealed_tank_run_on_past_its_end_grows_nothing_from_a_film() throws IOException {
        Trace trace =
                run(
                        60,
                        room(25, 20, LIT),
                        """
                        [tray.tank]
                        length = "100 cm"
                        width = "60 cm"
                        depth = "9 cm"
                        cup_bottom = "6.3 cm"
                        start_level = "7.6 cm"
                        crop = "lettuce"
                        harvest_after = "59 days"
                        plants = 16
                        filling = "sealed"
                        [visits]
                        days = ["mon"]
                        """);
        TrayTrace tank = trace.trays().get(0);
        int dry = (int) (Events.firstS(trace, Event.Kind.DRIED_OUT) / 3600);
        assertTrue(dry < 55 * 24);
        assertEquals(1, told(trace, Event.Kind.DIED));
        assertTrue(head(tank) < 1.1 * tank.freshG().at(dry));
        for (int h = 0; h < trace.hours(); h++) {
            double na = tank.molPerM3(Component.NA.ordinal(), h);
            assertTrue(Double.isNaN(na) || na <= 6100 * (1 + 1e-9));
            assertTrue(!(tank.ecMsPerCm().at(h) > 20));
        }
    }

    private List<RoomLimits.Kind> beyond(Trace trace) {
        return RoomFindings.of(trace, trace.plantings(trace.trays().get(0)).get(0)).stream()
                .map(RoomFindings.Finding::kind)
                .toList();
    }

    @Test
    void basil_in_a_cold_room_is_told_so_and_that_it_will_not_be_ready() throws IOException {
        Trace trace =
                run(
                        45,
                        room(13, 6, LIT),
                        lettuceTray("6.5 cm", "crop = \"basil\"\ncup_bottom = \"6 cm\""));
        assertEquals(List.of(RoomLimits.Kind.TOO_COLD), beyond(trace));
        RoomFindings.Finding cold =
                RoomFindings.of(trace, trace.plantings(trace.trays().get(0)).get(0)).get(0);
        assertEquals(12, cold.limit());
        assertEquals(6, cold.worst(), 0.5);
        assertTrue(trace.events().stream().noneMatch(e -> e.kind() == Event.Kind.HARVEST));
    }

    @Test
    void lettuce_in_a_hot_room_is_told_so() throws IOException {
        Trace trace =
                run(
                        40,
                        room(31, 27, LIT),
                        lettuceTray("6.5 cm", "crop = \"lettuce\"\ncup_bottom = \"6 cm\""));
        assertEquals(List.of(RoomLimits.Kind.TOO_HOT), beyond(trace));
    }

    @Test
    void a_tomato_in_light_without_an_end_is_told_so_and_a_sound_room_is_not() throws IOException {
        String dwarf = "crop = \"dwarf-tomato\"\ncup_bottom = \"6 cm\"";
        String always = LIT.replace("06:00", "00:00").replace("22:00", "24:00");
        Trace endless = run(40, room(23, 19, always), lettuceTray("6.5 cm", dwarf));
        assertEquals(List.of(RoomLimits.Kind.DAY_TOO_LONG), beyond(endless));
        Trace sound = run(40, room(23, 19, LIT), lettuceTray("6.5 cm", dwarf));
        assertEquals(List.of(), beyond(sound));
    }

    @Test
    void a_tray_of_measured_thirst_that_runs_dry_says_so_and_counts_what_was_not_met()
            throws IOException {
        Trace trace =
                run(
                        20,
                        room(22, 18, LIT),
                        """
                        [tray.t]
                        length = "50 cm"
                        width = "40 cm"
                        depth = "10 cm"
                        cup_bottom = "4 cm"
                        start_level = "5 cm"
                        gap = "0 %"
                        thirst = "1 L/day"
                        filling = "sealed"
                        [visits]
                        days = ["mon"]
                        """);
        // 10 L less a film of 0.2 L at 1 L a day: twenty days ask for 20.
        assertEquals(1, told(trace, Event.Kind.DRIED_OUT));
        assertEquals(10.2e-3, trace.trays().get(0).of(TraySeries.UNMET_THIRST).sum(), 0.05e-3);
    }

    private Trace onAmmonium(double ammoniumMmolPerL) throws IOException {
        double nitrate = 10 - ammoniumMmolPerL;
        // K, Ca and Mg fill up the charge that ammonium leaves; chloride what it is too much.
        double potassium = Math.max(4, nitrate + 1 + 2 - ammoniumMmolPerL - 2 * 2 - 2 * 1);
        double chloride = Math.max(0, ammoniumMmolPerL + potassium + 4 + 2 - nitrate - 1 - 2);
        String room =
                room(22, 18, LIT)
                        .replaceAll(
                                "(?s)\\[feed\\].*",
                                """
                                [feed.analysis]
                                nitrate = "%s mmol/L"
                                ammonium = "%s mmol/L"
                                phosphate = "1 mmol/L"
                                potassium = "%s mmol/L"
                                calcium = "2 mmol/L"
                                magnesium = "1 mmol/L"
                                sulfate = "1 mmol/L"
                                chloride = "%s mmol/L"
                                """
                                        .formatted(nitrate, ammoniumMmolPerL, potassium, chloride));
        return run(
                35,
                room,
                lettuceTray(
                                "6.5 cm",
                                "crop = \"lettuce\"\ncup_bottom = \"6 cm\"\nharvest_after = \"32 days\"")
                        .replace("days = \"daily\"", "days = \"daily\"\nflush = \"never\""));
    }

    @Test
    void a_rooted_tray_stays_between_four_and_a_half_and_eight_on_up_to_a_third_of_ammonium()
            throws IOException {
        for (double ammonium : new double[] {0, 1, 3}) {
            Trace trace = onAmmonium(ammonium);
            TrayTrace tray = trace.trays().get(0);
            int rooted = (int) (Events.firstS(trace, Event.Kind.HARVEST) / 3600);
            double low = tray.ph().min(0, rooted);
            double high = tray.ph().max(0, rooted);
            assertTrue(low >= 4.5 && high <= 8.0, ammonium + ": " + low + " to " + high);
        }
    }

    @Test
    void ammonium_alone_brings_a_tray_below_four_and_a_half() throws IOException {
        Trace trace = onAmmonium(10);
        assertTrue(trace.trays().get(0).ph().min(0, trace.hours()) < 4.5);
    }

    @Test
    void heads_are_cut_on_the_first_day_they_weigh_what_was_asked() throws IOException {
        Trace trace = wanting("60 g", 35);
        TrayTrace tray = trace.trays().get(0);
        int cut = (int) (Events.firstS(trace, Event.Kind.HARVEST) / 3600);
        assertTrue(tray.freshG().at(cut) >= 60, "" + tray.freshG().at(cut));
        assertTrue(tray.freshG().at(cut - 25) < 60, "" + tray.freshG().at(cut - 25));
    }

    @Test
    void heads_that_do_not_get_there_in_the_run_are_not_called_ready() throws IOException {
        Trace trace = wanting("900 g", 35);
        assertTrue(head(trace.trays().get(0)) > 60);
        assertEquals(0, told(trace, Event.Kind.HARVEST));
    }

    @Test
    void heads_still_light_when_they_would_bolt_are_cut_and_called_light() throws IOException {
        assertEquals(Cause.Kind.WINDOW_ENDS, causeOfHarvest(wanting("2 kg", 80)));
        assertEquals(Cause.Kind.READY, causeOfHarvest(wanting("60 g", 35)));
    }

    private static Cause.Kind causeOfHarvest(Trace trace) {
        return Advisor.advise(trace, trace).tasks().stream()
                .filter(task -> task.kind() == Task.Kind.HARVEST)
                .findFirst()
                .orElseThrow()
                .cause()
                .kind();
    }

    private Trace wanting(String weight, int days) throws IOException {
        String lettuce = "crop = \"lettuce\"\nharvest_weight = \"%s\"\ncup_bottom = \"6 cm\"";
        return run(days, room(22, 18, LIT), lettuceTray("6.5 cm", lettuce.formatted(weight)));
    }
}
