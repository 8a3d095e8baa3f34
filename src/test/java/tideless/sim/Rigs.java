package tideless.sim;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import tideless.rig.Climate;
import tideless.rig.Deck;
import tideless.rig.Filling;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Numerics;
import tideless.rig.Planting;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.TestScenario;
import tideless.rig.TestShape;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Thirst;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.Visits;
import tideless.solution.Component;
import tideless.solution.Composition;

/** Small rigs with round numbers, for tests. */
public final class Rigs {
    public static final LocalDate START = LocalDate.of(2026, 9, 7);

    /** Steiner's solution with a tracer of 1 mol/m3 and a little sodium chloride. */
    public static final Composition FEED =
            Composition.of(12, 0.5, 1, 7, 4.5, 2, 3.75, 0.5, 0.5, 0, 1);

    public static final Liquid FEED_LIQUID = new Liquid("feed", FEED);

    public static final Limits WIDE = new Limits(0, 50, 1, 13, 1e9, 1e9);

    private Rigs() {}

    /** Square. */
    public static Shape box(double areaM2, double depthM) {
        double sideM = Math.sqrt(areaM2);
        return TestShape.box(sideM, areaM2 / sideM, depthM);
    }

    public static Reservoir reservoir(double areaM2, double fullM, Reservoir.Refill.When when) {
        return new Reservoir(
                "wall",
                box(areaM2, fullM + 0.02),
                fullM,
                0.02,
                0.60,
                0,
                fullM,
                new Reservoir.Refill(when, 0.5, Pouring.FEED),
                new Tube(0.006, 0.5, 0.5));
    }

    public static Filling.ByValve valve() {
        return new TestValve().make();
    }

    public static Tray tray(String name, Filling filling, Planting planting, double openAreaM2) {
        return new TestTray()
                .name(name)
                .shape(box(0.2, 0.10))
                .openAreaM2(openAreaM2)
                .startLiquid(FEED_LIQUID)
                .planting(planting)
                .filling(filling)
                .limits(WIDE)
                .make();
    }

    /** The same with another inside. */
    static Tray withShape(Tray tray, Shape shape) {
        return changed(tray, shape, tray.overflowM(), tray.overflowBoreM(), tray.startLevelM());
    }

    /** The same with another overflow. */
    static Tray withOverflow(Tray tray, double overflowM, OptionalDouble boreM) {
        return changed(tray, tray.shape(), overflowM, boreM, tray.startLevelM());
    }

    /** The same from another level. */
    static Tray startingAt(double levelM, Tray tray) {
        return changed(tray, tray.shape(), tray.overflowM(), tray.overflowBoreM(), levelM);
    }

    /** The same by another name. */
    static Tray named(Tray tray, String name) {
        return changed(
                name,
                tray,
                tray.shape(),
                tray.overflowM(),
                tray.overflowBoreM(),
                tray.startLevelM());
    }

    private static Tray changed(
            Tray tray, Shape shape, double overflowM, OptionalDouble boreM, double startM) {
        return changed(tray.name(), tray, shape, overflowM, boreM, startM);
    }

    private static Tray changed(
            String name,
            Tray tray,
            Shape shape,
            double overflowM,
            OptionalDouble boreM,
            double startM) {
        return TestTray.of(tray)
                .name(name)
                .shape(shape)
                .overflowM(overflowM)
                .overflowBoreM(boreM)
                .startLevelM(startM)
                .deck(Deck.PLAIN)
                .make();
    }

    public static Planting drinking(double litresPerDay) {
        return new Planting.MeasuredThirst(
                "measured", 1, Thirst.constant(litresPerDay * 1e-3 / 86400));
    }

    public static Climate room() {
        return new Climate.Room(22, 22, 0.6, 0.6, 0, 0, 0, Climate.Window.NONE, 0.1, 420, 420);
    }

    public static Scenario scenario(
            int days, double stepS, List<Reservoir> reservoirs, List<Tray> trays, Visits visits) {
        return new TestScenario()
                .start(START)
                .days(days)
                .climate(room())
                .feed(FEED_LIQUID)
                .sourceWater(new Liquid("water", Composition.WATER.with(Component.NA, 0.5)))
                .reservoirs(reservoirs)
                .trays(trays)
                .visits(visits)
                .numerics(new Numerics(stepS))
                .make();
    }

    public static Visits nobody() {
        return new Visits(Set.of(), 8 * 3600, List.of(), Visits.Flush.NEVER);
    }

    public static Visits onWeekdays(DayOfWeek... days) {
        return new Visits(Set.of(days), 8 * 3600, List.of(), Visits.Flush.NEVER);
    }

    /** Air of a solution at one standard atmosphere. */
    static RootAir air(double tempC) {
        return new RootAir(101_325, tempC, false, false);
    }
}
