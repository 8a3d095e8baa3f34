package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.advice.Advice;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.VesselId;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Ledger;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Every scenario that comes with the program, run whole. */
class ShippedScenariosTest {
    static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            List<Path> found =
                    files.filter(path -> path.toString().endsWith(".toml")).sorted().toList();
            assertTrue(found.size() >= 4, "" + found);
            return found;
        }
    }

    private static Forecast forecast(String name) {
        return forecast(Path.of("scenarios", name));
    }

    private static Forecast forecast(Path path) {
        Reading reading = ScenarioReader.read(path);
        Reading.Good good = assertInstanceOf(Reading.Good.class, reading, reading.toString());
        return Forecasts.of(good.scenario(), 1);
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void water_and_every_ion_close_over_the_season(Path path) {
        Trace trace = forecast(path).trace();
        assertTrue(trace.water().relativeResidual() < 1e-12, trace.water().toString());
        for (Ledger ledger : trace.components()) {
            assertTrue(ledger.relativeResidual() < 1e-12, ledger.toString());
        }
    }

    @Test
    void on_the_calm_bench_all_goes_well_and_nothing_is_warned_of() {
        Advice advice = forecast("calm-bench.toml").advice();
        assertEquals(List.of(), advice.warnings());
        assertTrue(advice.verdict().survives());
        assertEquals(1, advice.verdict().absences().size());
        assertTrue(advice.verdict().absences().get(0).survives());
    }

    /** Cut and set out, tray by tray: the right one is empty over the holidays. */
    @Test
    void on_the_bench_of_two_crops_every_crop_is_cut_and_nothing_is_warned_of() {
        Forecast bench = forecast("two-crops.toml");
        assertEquals(List.of(), bench.advice().warnings());
        assertTrue(bench.advice().verdict().survives());
        List<String> crops = new ArrayList<>();
        for (TrayTrace tray : bench.trace().trays()) {
            for (PlantingTrace planting : bench.trace().plantings(tray)) {
                crops.add(tray.tray().name() + " " + planting.crop());
                assertTrue(
                        planting.events().stream().anyMatch(e -> e.kind() == Event.Kind.HARVEST),
                        crops.toString());
                double wanted = planting.crop().equals("basil") ? 50 : 180;
                double cut = tray.freshG().at(planting.lastHour());
                // A head that is ready on the day after a visit waits for the next one.
                assertTrue(cut >= wanted && cut < 1.25 * wanted, crops + " " + cut);
            }
        }
        assertEquals(
                List.of(
                        "left lettuce",
                        "left basil",
                        "left lettuce",
                        "right lettuce",
                        "right basil"),
                crops);
        PlantingTrace basil = bench.trace().plantings(bench.trace().trays().get(1)).get(1);
        assertEquals("2026-04-13T08:00", bench.trace().clockAt(basil.fromS()).toString());
    }

    @Test
    void the_science_room_gets_its_refills_before_its_reservoir_is_empty() {
        Forecast bench = forecast("science-room-bench.toml");
        List<Task> refills =
                bench.advice().tasks().stream()
                        .filter(task -> task.kind() == Task.Kind.REFILL)
                        .toList();
        assertTrue(refills.size() >= 2, refills.toString());
        for (Task refill : refills) {
            assertTrue(
                    refill.vessel().kind() == VesselId.Kind.RESERVOIR
                            && refill.litres() > 1
                            && refill.litres() < 28);
            assertTrue(
                    bench.trace().scenario().visits().on(refill.due().toLocalDate()),
                    "refilled on a day nobody comes: " + refill);
        }
    }

    @Test
    void the_glasshouse_tomatoes_outgrow_their_reservoir_and_the_size_it_asks_for_is_enough() {
        Forecast house = forecast("glasshouse-tomato-trough.toml");
        Advice advice = house.advice();
        assertTrue(
                advice.warnings().stream().anyMatch(w -> w.kind() == Warning.Kind.OUTGROWN),
                advice.warnings().toString());
        var sizing = advice.sizings().get(0);
        assertTrue(sizing.enoughUsableLitres() > sizing.usableLitres());
        assertTrue(sizing.outgrownFrom().isAfter(house.trace().scenario().start()));
    }

    @Test
    void the_trough_outgrows_its_reservoir_on_weekly_visits() {
        Advice advice = forecast("outgrown-trough.toml").advice();
        assertFalse(advice.verdict().survives());
        var sizing = advice.sizings().get(0);
        assertTrue(sizing.enoughUsableLitres() > 2 * sizing.usableLitres(), sizing.toString());
    }

    @Test
    void the_tray_of_depth_and_valve_does_well_as_it_stands() {
        Advice advice = forecast("depth-and-valve.toml").advice();
        assertEquals(List.of(), advice.warnings());
        assertTrue(advice.verdict().survives());
    }

    @Test
    void the_published_tank_holds_and_leaves_what_the_abstract_says() {
        PublishedTank tank = PublishedTank.run();
        // Kratky (2005), abstract: 109 L at 7.6 cm, harvest at 1.3 cm. Volumes to 1 %.
        assertEquals(109, tank.startLitres, 1.09);
        assertEquals(90.4, tank.usedLitres, 0.904);
    }

    @Test
    void the_page_on_the_published_tank_is_what_the_program_says() throws IOException {
        assertEquals(PublishedTank.run().page(), Files.readString(PublishedTank.PAGE));
    }
}
