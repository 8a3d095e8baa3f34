package tideless.rig;

import java.util.List;

/**
 * A float valve with round numbers, of which a test states what matters to it. A record gains a
 * component here once, not in every test.
 */
public final class TestValve {
    private String reservoir = "wall";
    private double settingM = 0.05;
    private double bandM = 0.005;
    private boolean snaps = false;
    private double seatBoreM = 0.002;
    private double dischargeCoefficient = 0.61;
    private double seatAboveFloorM = 0.06;
    private Tube branch = new Tube(0.004, 1.5, 3.5);
    private ValveFaults faults = ValveFaults.NONE;
    private List<Filling.Move> moves = List.of();

    /** Begins with what a record holds. */
    public static TestValve of(Filling.ByValve other) {
        return new TestValve()
                .reservoir(other.reservoir())
                .settingM(other.settingM())
                .bandM(other.bandM())
                .snaps(other.snaps())
                .seatBoreM(other.seatBoreM())
                .dischargeCoefficient(other.dischargeCoefficient())
                .seatAboveFloorM(other.seatAboveFloorM())
                .branch(other.branch())
                .faults(other.faults())
                .moves(other.moves());
    }

    public TestValve reservoir(String other) {
        reservoir = other;
        return this;
    }

    public TestValve settingM(double other) {
        settingM = other;
        return this;
    }

    public TestValve bandM(double other) {
        bandM = other;
        return this;
    }

    public TestValve snaps(boolean other) {
        snaps = other;
        return this;
    }

    public TestValve seatBoreM(double other) {
        seatBoreM = other;
        return this;
    }

    public TestValve dischargeCoefficient(double other) {
        dischargeCoefficient = other;
        return this;
    }

    public TestValve seatAboveFloorM(double other) {
        seatAboveFloorM = other;
        return this;
    }

    public TestValve branch(Tube other) {
        branch = other;
        return this;
    }

    public TestValve faults(ValveFaults other) {
        faults = other;
        return this;
    }

    public TestValve moves(List<Filling.Move> other) {
        moves = other;
        return this;
    }

    public Filling.ByValve make() {
        return new Filling.ByValve(
                reservoir,
                settingM,
                bandM,
                snaps,
                seatBoreM,
                dischargeCoefficient,
                seatAboveFloorM,
                branch,
                faults,
                moves);
    }
}
