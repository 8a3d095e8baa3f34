package tideless.rig;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A tray with round numbers, of which a test states what matters to it. A record gains a component
 * here once, not in every test.
 */
public final class TestTray {
    private String name = "tray";
    private Shape shape;
    private double overflowM = 0.09;
    private OptionalDouble overflowBoreM = OptionalDouble.empty();
    private double cupBottomM = 0.04;
    private double floorAboveBenchM = 0;
    private double openAreaM2 = 0;
    private double startLevelM = 0.05;
    private Liquid startLiquid;
    private Planting planting;
    private Filling filling = new Filling.Sealed();
    private Lamp lamp = Lamp.NONE;
    private Limits limits;
    private Deck deck = Deck.PLAIN;
    private List<NextPlanting> next = List.of();

    /** Begins with what a record holds. */
    public static TestTray of(Tray other) {
        return new TestTray()
                .name(other.name())
                .shape(other.shape())
                .overflowM(other.overflowM())
                .overflowBoreM(other.overflowBoreM())
                .cupBottomM(other.cupBottomM())
                .floorAboveBenchM(other.floorAboveBenchM())
                .openAreaM2(other.openAreaM2())
                .startLevelM(other.startLevelM())
                .startLiquid(other.startLiquid())
                .planting(other.planting())
                .filling(other.filling())
                .lamp(other.lamp())
                .limits(other.limits())
                .deck(other.deck())
                .next(other.next().toArray(new NextPlanting[0]));
    }

    public TestTray name(String other) {
        name = other;
        return this;
    }

    public TestTray shape(Shape other) {
        shape = other;
        return this;
    }

    public TestTray overflowM(double other) {
        overflowM = other;
        return this;
    }

    public TestTray overflowBoreM(OptionalDouble other) {
        overflowBoreM = other;
        return this;
    }

    public TestTray cupBottomM(double other) {
        cupBottomM = other;
        return this;
    }

    public TestTray floorAboveBenchM(double other) {
        floorAboveBenchM = other;
        return this;
    }

    public TestTray openAreaM2(double other) {
        openAreaM2 = other;
        return this;
    }

    public TestTray startLevelM(double other) {
        startLevelM = other;
        return this;
    }

    public TestTray startLiquid(Liquid other) {
        startLiquid = other;
        return this;
    }

    public TestTray planting(Planting other) {
        planting = other;
        return this;
    }

    public TestTray filling(Filling other) {
        filling = other;
        return this;
    }

    public TestTray lamp(Lamp other) {
        lamp = other;
        return this;
    }

    public TestTray limits(Limits other) {
        limits = other;
        return this;
    }

    public TestTray next(NextPlanting... others) {
        next = List.of(others);
        return this;
    }

    public TestTray deck(Deck other) {
        deck = other;
        return this;
    }

    public Tray make() {
        return new Tray(
                name,
                shape,
                overflowM,
                overflowBoreM,
                cupBottomM,
                floorAboveBenchM,
                openAreaM2,
                startLevelM,
                startLiquid,
                planting,
                filling,
                lamp,
                limits,
                deck,
                next);
    }
}
