package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tideless.advice.Warning;
import tideless.rig.Planting;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;

/**
 * Two trays on a tee below one reservoir, their level held at 20 mm, cups 30 and 50 mm above it.
 * What is wanted of the lettuce (nobody wilts, six to eight weeks from seed) is common practice
 * without a source; 150 g at 20 plants a square metre is the low end of suspended-pot practice.
 */
class LowHeldTraysTest {
    private static Forecast lettuce;
    private static Forecast tomatoes;

    @BeforeAll
    static void run() {
        lettuce = forecast("low-held-trays.toml");
        tomatoes = forecast("low-held-tomatoes.toml");
    }

    private static Forecast forecast(String name) {
        Reading reading = ScenarioReader.read(Path.of("scenarios", name));
        Reading.Good good = assertInstanceOf(Reading.Good.class, reading, reading.toString());
        assertEquals(List.of(), good.notes());
        return Forecasts.of(good.scenario(), 1);
    }

    private static Set<Event.Kind> told(Trace trace) {
        return trace.events().stream().map(Event::kind).collect(Collectors.toSet());
    }

    private static void assertNobodyThirsts(Trace trace) {
        for (Event.Kind fate :
                List.of(
                        Event.Kind.STRANDED,
                        Event.Kind.WILTED,
                        Event.Kind.DRIED_OUT,
                        Event.Kind.DROWNED,
                        Event.Kind.SALT_WILTED,
                        Event.Kind.DIED)) {
            assertFalse(told(trace).contains(fate), fate.toString());
        }
        for (TrayTrace tray : trace.trays()) {
            // What salt and want of oxygen cost the tomatoes: never a fiftieth.
            double unmet = tray.of(TraySeries.UNMET_THIRST).sum() / tray.thirstM3().sum();
            assertTrue(unmet < 0.02, "" + unmet);
        }
    }

    @Test
    void the_rig_is_the_one_it_says() {
        for (TrayTrace tray : lettuce.trace().trays()) {
            double cupM = tray.tray().cupBottomM();
            assertEquals(0.04, cupM - 0.02, 0.0101);
            Planting.OfCrop crop = (Planting.OfCrop) tray.tray().planting();
            assertEquals(20, crop.plants() / crop.groundM2(), 1e-9);
            double light = tray.of(TraySeries.LIGHT).sum() / lettuce.trace().scenario().days();
            assertTrue(light >= 10 && light <= 14, "" + light);
        }
    }

    @Test
    void nobody_wilts_and_nothing_is_warned_of() {
        assertNobodyThirsts(lettuce.trace());
        assertEquals(List.of(), lettuce.advice().warnings());
        assertTrue(lettuce.advice().verdict().survives());
    }

    @Test
    void about_a_third_of_the_hanging_roots_is_wet_by_geometry() {
        for (TrayTrace tray : lettuce.trace().trays()) {
            double wet = 0.02 / tray.tray().cupBottomM(); // 0.4 and 0.29
            assertEquals(wet, tray.of(TraySeries.WET_ROOT).at(20 * 24), 0.01);
        }
    }

    @Test
    void heads_of_150_grams_and_more_are_cut_six_to_eight_weeks_from_seed() {
        for (TrayTrace tray : lettuce.trace().trays()) {
            double cutS =
                    lettuce.trace().events().stream()
                            .filter(e -> e.kind() == Event.Kind.HARVEST)
                            .filter(e -> e.vessel().equals(tray.tray().id()))
                            .mapToDouble(Event::atS)
                            .findFirst()
                            .orElseThrow();
            double fromSeedDays = 14 + cutS / 86400;
            assertTrue(fromSeedDays >= 42 && fromSeedDays <= 56, "" + fromSeedDays);
            assertTrue(tray.freshG().at(lettuce.trace().hours() - 1) >= 150);
        }
    }

    @Test
    void a_fruiting_crop_lives_there_too_but_its_salts_build_up_in_so_little_water() {
        assertNobodyThirsts(tomatoes.trace());
        Set<Warning.Kind> warned =
                tomatoes.advice().warnings().stream()
                        .map(Warning::kind)
                        .collect(Collectors.toSet());
        assertEquals(Set.of(Warning.Kind.LOW_LIGHT), warned);
        for (TrayTrace tray : tomatoes.trace().trays()) {
            double highest = tray.ecMsPerCm().max(0, tomatoes.trace().lastLivingHour(tray));
            assertTrue(highest > 3 * 1.2, "" + highest);
            assertTrue(tray.fruitFreshG().at(tomatoes.trace().hours() - 1) > 300);
        }
        // What it takes of the harvest is next to nothing: no warning, and no flush.
        assertFalse(told(tomatoes.trace()).contains(Event.Kind.FLUSH));
    }
}
