package tideless.rig;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * A scenario with round numbers, of which a test states what matters to it. A record gains a
 * component here once, not in every test.
 */
public final class TestScenario {
    private String title = "rig";
    private LocalDate start;
    private int days = 7;
    private Place place = new Place(50, 8, 0);
    private Climate climate;
    private Liquid feed;
    private Liquid sourceWater;
    private List<Reservoir> reservoirs = List.of();
    private List<Tray> trays = List.of();
    private Visits visits;
    private Numerics numerics = new Numerics(600);
    private String digest = "0".repeat(64);

    /** Begins with what a record holds. */
    public static TestScenario of(Scenario other) {
        return new TestScenario()
                .title(other.title())
                .start(other.start())
                .days(other.days())
                .place(other.place())
                .climate(other.climate())
                .feed(other.feed())
                .sourceWater(other.sourceWater())
                .reservoirs(other.reservoirs())
                .trays(other.trays())
                .visits(other.visits())
                .numerics(other.numerics())
                .digest(other.digest());
    }

    public TestScenario title(String other) {
        title = other;
        return this;
    }

    public TestScenario start(LocalDate other) {
        start = other;
        return this;
    }

    public TestScenario days(int other) {
        days = other;
        return this;
    }

    public TestScenario place(Place other) {
        place = other;
        return this;
    }

    public TestScenario climate(Climate other) {
        climate = other;
        return this;
    }

    public TestScenario feed(Liquid other) {
        feed = other;
        return this;
    }

    public TestScenario sourceWater(Liquid other) {
        sourceWater = other;
        return this;
    }

    public TestScenario reservoirs(List<Reservoir> other) {
        reservoirs = other;
        return this;
    }

    public TestScenario trays(List<Tray> other) {
        trays = other;
        return this;
    }

    public TestScenario visits(Visits other) {
        visits = other;
        return this;
    }

    public TestScenario numerics(Numerics other) {
        numerics = other;
        return this;
    }

    public TestScenario digest(String other) {
        digest = other;
        return this;
    }

    public Scenario make() {
        return new Scenario(
                title,
                start,
                days,
                place,
                climate,
                feed,
                Map.of(),
                sourceWater,
                reservoirs,
                trays,
                visits,
                numerics,
                digest,
                Log.NONE,
                Correction.NONE);
    }
}
