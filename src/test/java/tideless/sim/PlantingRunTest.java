package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.crop.CropTraits;
import tideless.crop.Transplant;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Planting;
import tideless.rig.Tending;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.scenario.Crops;
import tideless.solution.Component;

/** What salt, a film and want of air in the hours of a day leave of a crop's thirst and growth. */
class PlantingRunTest {
    /** From 2 mS/cm on its growth falls, its thirst by 4 % for each; growth ends at 10. */
    private static final CropTraits LETTUCE = Crops.named("lettuce");

    private static final int PLANTS = 4;
    private static final double DEEP_M = 0.05;
    private static final double DAY_S = 86_400;
    private static final double HOUR_S = 3600;

    private final EventLog log = new EventLog();
    private static final double LIMIT_MS_PER_CM = 3;

    private final Planting.OfCrop crop =
            new Planting.OfCrop(
                    LETTUCE,
                    PLANTS,
                    0.2,
                    14,
                    Transplant.AS_RAISED,
                    Planting.ThirstModel.CANOPY,
                    OptionalInt.empty(),
                    OptionalDouble.empty(),
                    Tending.NONE);

    private PlantingRun usedTo(double msPerCm, RootAir air) {
        Tray tray =
                TestTray.of(Rigs.tray("t", new Filling.Sealed(), crop, 0))
                        .cupBottomM(0.04)
                        .limits(new Limits(0, LIMIT_MS_PER_CM, 1, 13, 1e9, 1e9))
                        .make();
        return new PlantingRun(crop, tray, -30, DEEP_M, msPerCm, air, new TrayToll(60));
    }

    private PlantingRun usedTo(double msPerCm) {
        return usedTo(msPerCm, new RootAir(101_325, 22, false, true));
    }

    /** A day of 16 h of light, hour by hour, in solution of that strength and depth. */
    private double grownG(PlantingRun run, double msPerCm, double levelM, boolean deep) {
        return grownG(run, msPerCm, msPerCm, levelM, deep);
    }

    private double grownG(
            PlantingRun run, double msPerCm, double keptFull, double levelM, boolean deep) {
        double before = run.stand().plant().dryG();
        for (int hour = 1; hour <= 24; hour++) {
            double lit = hour <= 16 ? 1 : 0;
            run.bearAtBegin(msPerCm, 22, levelM, 1e-5, 600);
            run.stand().day.add(250 * lit, 0.9 * lit, 55 * lit, 22, 400, HOUR_S);
            run.end(levelM, deep, msPerCm, keptFull, 22, 1e-5, 1e-5, hour * HOUR_S, HOUR_S, log);
        }
        double[] feed = new double[Component.COUNT];
        for (int i = 0; i < feed.length; i++) {
            feed[i] = Rigs.FEED.molPerM3(i);
        }
        run.growOvernight(DAY_S, 1, levelM, feed, log);
        return run.stand().plant().dryG() - before;
    }

    private long told(Event.Kind kind) {
        return log.inOrder().stream().filter(event -> event.kind() == kind).count();
    }

    // 1 - 0.04 (EC - 2), and ever more to nothing at 22.2.
    @ParameterizedTest
    @CsvSource({"1.5, 1", "2, 1", "4, 0.92", "7, 0.80", "22.3, 0"})
    void salt_leaves_a_share_of_the_thirst(double msPerCm, double frac) {
        assertEquals(frac, usedTo(1.5).bearAtBegin(msPerCm, 22, DEEP_M, 1e-5, 600), 0.05 * frac);
    }

    @Test
    void want_of_air_leaves_a_share_of_the_thirst() {
        RootAir still = new RootAir(101_325, 22, false, false);
        PlantingRun run = usedTo(1.5, still);
        double rich = run.bearAtBegin(1.5, 22, DEEP_M, 1e-5, 600);
        for (int hour = 0; hour < 72; hour++) {
            still.step(0.01, 0.2, 0.0, 22, 60, 0, HOUR_S);
        }
        assertTrue(still.likelyGPerM3() < 0.2);
        double poor = run.bearAtBegin(1.5, 22, DEEP_M, 1e-5, 600);
        assertTrue(poor < 0.97 * rich, poor + " of " + rich);
    }

    @Test
    void growth_ends_at_the_crops_own_strength_and_not_before() {
        assertTrue(grownG(usedTo(9), 9.9, DEEP_M, true) > 0);
        assertEquals(0, grownG(usedTo(9), 10.1, DEEP_M, true), 1e-12);
        assertEquals(0, told(Event.Kind.SALT_WILTED));
    }

    // At 6.6 after 1.5 the shock is gone within the hour in which roots are used to a little more;
    // at 8 it lasts 2 d ln(6.5/5), 12.6 h: 13 of 24 hours without growth.
    @Test
    void a_shock_stops_growth_for_its_hours() {
        double calm = grownG(usedTo(8), 8, DEEP_M, true);
        double shocked = grownG(usedTo(1.5), 8, DEEP_M, true);
        assertEquals(11.0 / 24, shocked / calm, 1e-9);
        assertEquals(1, told(Event.Kind.SALT_WILTED));
    }

    /**
     * 8 mS/cm that, kept full, would be within what the crop bears is want of water; a twentieth
     * beyond it, the doubt of a meter, is salt. Both take the same.
     */
    @ParameterizedTest
    @CsvSource({"1.00, true", "1.05, true", "1.06, false"})
    void what_is_strong_because_it_is_little_is_want_of_water(double ofLimit, boolean isWater) {
        PlantingRun run = usedTo(1.5);
        grownG(run, 8, ofLimit * LIMIT_MS_PER_CM, DEEP_M, true);
        GrowthLost lost = run.stand().lost();
        double more = lost.frac(isWater ? Stress.WATER : Stress.SALT);
        double less = lost.frac(isWater ? Stress.SALT : Stress.WATER);
        assertTrue(more > 2 * less, more + " and " + less);
        assertEquals(
                isWater ? Event.DRUNK_DOWN : "",
                log.inOrder().stream()
                        .filter(e -> e.kind() == Event.Kind.SALT_WILTED)
                        .findFirst()
                        .orElseThrow()
                        .detail());
    }

    @Test
    void five_more_than_roots_are_used_to_stops_nothing() {
        double calm = grownG(usedTo(6.4), 6.4, DEEP_M, true);
        assertEquals(calm, grownG(usedTo(1.5), 6.4, DEEP_M, true), 1e-12);
        assertEquals(0, told(Event.Kind.SALT_WILTED));
    }

    // Four plugs of 15 mL for a thirst of 24 mL a day: the level hangs 2 cm below the cups.
    @Test
    void on_what_its_plug_holds_a_plant_grows_as_on_wet_roots() {
        double wet = grownInADayG(0.04 + 0.001, 1e-6);
        assertTrue(wet > 0);
        assertEquals(wet, grownInADayG(0.02, 0), 0.02 * wet);
        assertEquals(0, told(Event.Kind.STRANDED));
    }

    /** Of a plant set out that day, by what its wet roots drink in an hour. */
    private double grownInADayG(double levelM, double drunkM3) {
        Tray tray =
                TestTray.of(Rigs.tray("t", new Filling.Sealed(), crop, 0)).cupBottomM(0.04).make();
        PlantingRun run =
                new PlantingRun(
                        crop,
                        tray,
                        0,
                        levelM,
                        1.5,
                        new RootAir(101_325, 22, false, true),
                        new TrayToll(60));
        double before = run.stand().plant().dryG();
        for (int hour = 1; hour <= 24; hour++) {
            double lit = hour <= 16 ? 1 : 0;
            run.bearAtBegin(1.5, 22, levelM, 1e-6, HOUR_S);
            run.stand().day.add(250 * lit, 0.9 * lit, 55 * lit, 22, 400, HOUR_S);
            run.end(levelM, true, 1.5, 1.5, 22, 1e-6, drunkM3, hour * HOUR_S, HOUR_S, log);
        }
        run.growOvernight(DAY_S, 1, levelM, null, log);
        return run.stand().plant().dryG() - before;
    }

    @Test
    void a_film_and_a_solution_of_twenty_two_strand_wet_roots() {
        PlantingRun film = usedTo(1.5);
        grownG(film, 1.5, DEEP_M, false);
        assertTrue(film.roots().isStranded());
        PlantingRun strong = usedTo(21);
        grownG(strong, 22.3, DEEP_M, true);
        assertTrue(strong.roots().isStranded());
        PlantingRun sound = usedTo(21);
        grownG(sound, 22.1, DEEP_M, true);
        assertFalse(sound.roots().isStranded());
    }
}
