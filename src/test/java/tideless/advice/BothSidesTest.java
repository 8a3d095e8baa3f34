package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.RoomLimits;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Rigs;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TraySeries;

/** Whole rigs on either side of a published limit: told past it, and nothing told within it. */
class BothSidesTest {
    @TempDir Path folder;

    private Trace run(String crop, int days, String day, String night, String air, String lamp)
            throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(
                file,
                """
                title = "a rig"
                start = 2026-03-02
                length = "%d days"
                [climate]
                kind = "room"
                day_temperature = "%s degC"
                night_temperature = "%s degC"
                %s
                [lamp]
                type = "white-led"
                %s
                [water]
                source = "rain"
                [feed]
                recipe = "hoagland-2"
                ec = "1.6 mS/cm"
                ph = 5.8
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
                cup_bottom = "6 cm"
                %s
                plants = 8
                ground = "0.36 m2"
                [tray.t.valve]
                setting = "6.5 cm"
                seat = "3 mm"
                [visits]
                days = "daily"
                """
                        .formatted(days, day, night, air, lamp, crop));
        return Simulation.runUnread(
                assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario());
    }

    private static String lit(int umolPerM2S, int untilHour) {
        return "ppfd = \"%d umol/m2/s\"\non = \"00:00\"\noff = \"%02d:00\""
                .formatted(umolPerM2S, untilHour);
    }

    private static String air(double dayPercent, double nightPercent, double mPerS) {
        return "day_humidity = \"%s %%\"\nnight_humidity = \"%s %%\"\nair_speed = \"%s m/s\""
                .formatted(dayPercent, nightPercent, mPerS);
    }

    private static String named(String crop) {
        return "crop = \"" + crop + "\"";
    }

    private static PlantingTrace planting(Trace trace) {
        return trace.plantings(trace.trays().get(0)).get(0);
    }

    private static void assertTold(RoomLimits.Kind kind, Trace trace) {
        assertEquals(
                kind == null ? List.of() : List.of(kind),
                RoomFindings.of(trace, planting(trace)).stream()
                        .map(RoomFindings.Finding::kind)
                        .toList());
    }

    // Lettuce, day and night alike: a quarter of full growth at 8 degC, three quarters at 28.25.
    // Basil leaves are hurt below 12 degC by night. Spinach bears 14 h of light, lettuce any.
    @ParameterizedTest
    @CsvSource({
        "lettuce, 8.2, 8.2, ",
        "lettuce, 7.8, 7.8, TOO_COLD",
        "lettuce, 28.1, 28.1, ",
        "lettuce, 28.4, 28.4, TOO_HOT",
        "basil, 24, 12.3, ",
        "basil, 24, 11.7, TOO_COLD"
    })
    void cold_and_hot_rooms(String crop, String day, String night, RoomLimits.Kind kind)
            throws IOException {
        assertTold(kind, run(named(crop), 6, day, night, air(60, 70, 0.2), lit(250, 14)));
    }

    @Test
    void days_out_of_limits_that_lie_apart_are_counted_with_the_first_and_the_last() {
        Warning hot =
                warned(h -> h / 24 == 2 || h / 24 == 5 || h / 24 == 11 || h / 24 == 12 ? 36 : 22);
        assertEquals(4, hot.cause().facts().get(Quantity.DAYS_BEYOND));
        assertEquals(Rigs.START.plusDays(2), hot.from().toLocalDate());
        assertEquals(Rigs.START.plusDays(12), hot.until().toLocalDate());
    }

    private static Warning warned(IntToDoubleFunction airC) {
        return new MadeTrace(21)
                .with(TraySeries.AIR_TEMP, airC).advice().warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.TOO_HOT)
                        .findFirst()
                        .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"89, ", "91, TOO_HUMID"})
    void nights_about_as_damp_as_young_leaves_bear(double percent, RoomLimits.Kind kind)
            throws IOException {
        assertTold(kind, run(named("lettuce"), 6, "22", "18", air(65, percent, 0.2), lit(250, 14)));
    }

    // 17 mol/m2 in 16 h are 295 umol/m2/s.
    @ParameterizedTest
    @CsvSource({"300, 0.29, TOO_STILL", "300, 0.31, ", "290, 0.1, "})
    void still_air_matters_under_strong_light(int ppfd, double mPerS, RoomLimits.Kind kind)
            throws IOException {
        assertTold(kind, run(named("lettuce"), 6, "22", "18", air(60, 70, mPerS), lit(ppfd, 16)));
    }

    @ParameterizedTest
    @CsvSource({
        "spinach, 14, ",
        "spinach, 15, DAY_TOO_LONG",
        "dwarf-tomato, 18, ",
        "dwarf-tomato, 19, DAY_TOO_LONG",
        "lettuce, 24, "
    })
    void days_about_as_long_as_a_crop_bears(String crop, int hours, RoomLimits.Kind kind)
            throws IOException {
        assertTold(kind, run(named(crop), 6, "22", "18", air(60, 70, 0.2), lit(150, hours)));
    }

    // Two days out of a limit are borne, and three are told.
    @Test
    void three_cold_days_are_told_and_two_are_not() throws IOException {
        String cold = "7.8";
        assertTold(null, run(named("lettuce"), 2, cold, cold, air(60, 70, 0.2), lit(250, 14)));
        assertTold(
                RoomLimits.Kind.TOO_COLD,
                run(named("lettuce"), 3, cold, cold, air(60, 70, 0.2), lit(250, 14)));
    }

    // Set out 40 days old they are in flower on the first day; fruit sets between means of 16 degC
    // and lit hours of 32.
    @ParameterizedTest
    @CsvSource({"16.3, 16.3, ", "15.7, 15.7, SET_TOO_COLD", "31.8, 16, ", "32.3, 16, SET_TOO_HOT"})
    void tomatoes_in_flower(String day, String night, RoomLimits.Kind kind) throws IOException {
        String old = named("dwarf-tomato") + "\nnursery_age = \"40 days\"";
        Trace trace = run(old, 5, day, night, air(60, 70, 0.2), lit(250, 14));
        assertTold(kind, trace);
        assertEquals(
                1, trace.events().stream().filter(e -> e.kind() == Event.Kind.FLOWERING).count());
        Trace young = run(named("dwarf-tomato"), 4, day, night, air(60, 70, 0.2), lit(250, 14));
        assertTold(null, young);
    }

    // At 32.2 degC all day long a pollen's straight fall from 28 to 35 keeps three in ten from
    // setting, and the warning says so; in air that it bears whole nothing is taken.
    @Test
    void heat_takes_the_fruit_that_does_not_set() throws IOException {
        String crop = named("dwarf-tomato");
        Trace hot = run(crop, 40, "32.2", "32.2", air(60, 70, 0.2), lit(250, 14));
        Warning told =
                Advisor.advise(hot, hot).warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.SET_TOO_HOT)
                        .findFirst()
                        .orElseThrow();
        assertEquals(0.3, told.lossFrac(), 1e-6);
        Trace warm = run(crop, 40, "28", "28", air(60, 70, 0.2), lit(250, 14));
        assertEquals(0, warm.trays().get(0).lost().get(0).notSetFrac(), 1e-12);
    }

    // A run that ends on the evening before the weight is there misses it by no more than a day or
    // two, and one that goes on until then by nothing.
    @Test
    void a_crop_that_the_run_ends_upon_is_not_ready_by_the_days_it_lacks() throws IOException {
        String light = named("lettuce") + "\nharvest_weight = \"60 g\"";
        Trace whole = run(light, 40, "22", "18", air(60, 70, 0.2), lit(250, 16));
        int cutOn =
                (int)
                        (whole.events().stream()
                                        .filter(e -> e.kind() == Event.Kind.HARVEST)
                                        .findFirst()
                                        .orElseThrow()
                                        .atS()
                                / 86_400);
        assertEquals(0, RoomFindings.daysShort(whole, planting(whole)));
        for (int lacking = 2; lacking <= 6; lacking += 2) {
            Trace shorter = run(light, cutOn - lacking, "22", "18", air(60, 70, 0.2), lit(250, 16));
            double told = RoomFindings.daysShort(shorter, planting(shorter));
            assertEquals(lacking, told, 0.3 * lacking + 1);
        }
    }

    private Advice sealed(String feed, String level, String roots) throws IOException {
        Path file = folder.resolve("sealed.toml");
        Files.writeString(
                file,
                """
                title = "a sealed tray"
                start = 2026-03-02
                length = "50 days"
                [climate]
                kind = "room"
                day_temperature = "22 degC"
                night_temperature = "18 degC"
                [lamp]
                type = "white-led"
                ppfd = "250 umol/m2/s"
                [water]
                source = "rain"
                [feed]
                recipe = "hoagland-2"
                ec = "%s mS/cm"
                [tray.t]
                length = "60 cm"
                width = "50 cm"
                depth = "12 cm"
                cup_bottom = "6 cm"
                start_level = "%s cm"
                crop = "lettuce"
                plants = 8
                ground = "0.36 m2"
                transplant.root_length = "%s cm"
                cup_water = "0 mL"
                filling = "sealed"
                [visits]
                days = "daily"
                """
                        .formatted(feed, level, roots));
        Trace trace =
                Simulation.run(
                        assertInstanceOf(Reading.Good.class, ScenarioReader.read(file)).scenario());
        return Advisor.advise(trace, trace);
    }

    // Of weak solution the plants drink all but a film; of one of 4 mS/cm a fifteenth is left
    // when nothing more can be drunk; and roots of 1 cm never reach a level 4 cm below the cups.
    @ParameterizedTest
    @CsvSource({
        "0.9, 7.5, 1, FILM_FEEDS_NO_ROOT",
        "4, 7.5, 1, TOO_STRONG_TO_DRINK",
        "0.9, 2, 1, LEVEL_BELOW_ROOT_TIPS",
        "0.9, 5.1, 1, FILM_FEEDS_NO_ROOT"
    })
    void what_strands_roots_is_told_for_what_it_is(
            String feed, String level, String roots, Cause.Kind why) throws IOException {
        List<Warning> stranded =
                sealed(feed, level, roots).warnings().stream()
                        .filter(warning -> warning.kind() == Warning.Kind.STRANDED)
                        .toList();
        assertEquals(1, stranded.size());
        assertEquals(why, stranded.get(0).cause().kind());
        // Until they die of it, a day and a half or two later.
        assertTrue(stranded.get(0).measure().value() > 20, "" + stranded.get(0).measure());
    }
}
