package tideless.scenario;

import static tideless.scenario.TrayKeys.GROUND;
import static tideless.scenario.TrayKeys.PLANTS;
import static tideless.scenario.TrayKeys.PLANTS_PER_M2;
import static tideless.scenario.TrayKeys.STEMS_PER_M2;

import org.apache.commons.math3.util.FastMath;

/** Reads plants, ground and density, of which any two give the third. */
final class StandReader {
    private final Table tray;
    private final Read<Double> deckM2;
    private final Read<Integer> stems;

    StandReader(Table tray, Read<Double> deckM2, Read<Integer> stems) {
        this.tray = tray;
        this.deckM2 = deckM2;
        this.stems = stems;
    }

    Read<Stand> read() {
        Read<Double> perM2 = perM2();
        Read<Integer> plants = tray.get(PLANTS);
        Read<Double> ground = tray.get(GROUND);
        if (perM2.isFaulty() || plants.isFaulty() || ground.isFaulty()) {
            return Read.faulty();
        }
        if (plants.isAbsent() && perM2.isAbsent()) {
            return tray.missing(PLANTS);
        }
        if (!deckM2.isSound()) {
            return Read.faulty();
        }
        if (ground.holds(groundM2 -> groundM2 < deckM2.value() * (1 - 1e-9))) {
            tray.faultyValue(
                    GROUND,
                    "at least the deck (%s)".formatted(PlantingReader.area(deckM2.value())),
                    "Plants that do not use the whole deck still have it.");
            return Read.faulty();
        }
        if (perM2.isAbsent()) {
            return Read.of(new Stand(plants.value(), ground.isSound() ? ground.value() : deck("")));
        }
        return ground.isSound()
                ? onGround(plants, perM2.value(), ground.value())
                : dense(plants, perM2.value());
    }

    /** Plants a m2; absent where no density is stated. */
    private Read<Double> perM2() {
        if (tray.has(PLANTS_PER_M2) && tray.has(STEMS_PER_M2)) {
            tray.faultyValue(
                    STEMS_PER_M2, "plants_per_m2 or stems_per_m2", "State one of the two.");
            return Read.faulty();
        }
        Read<Double> ofStems = tray.get(STEMS_PER_M2);
        if (ofStems.isSound() && !stems.isSound()) {
            return Read.faulty();
        }
        return ofStems.isAbsent()
                ? tray.get(PLANTS_PER_M2)
                : ofStems.map(perM2 -> perM2 / stems.value());
    }

    // Whole plants stand on stated ground: half of one is what a density cannot say.
    private Read<Stand> onGround(Read<Integer> plants, double perM2, double groundM2) {
        double by = perM2 * groundM2;
        int count = plants.isSound() ? plants.value() : whole(by);
        if (plants.isSound() && FastMath.abs(count - by) > 0.5 + 1e-9) {
            return contradicted(
                    "%s plants on the ground (%s)"
                            .formatted(Measure.plain(by), PlantingReader.area(groundM2)),
                    count / groundM2);
        }
        holdsPlants(plants, count);
        return Read.of(new Stand(count, groundM2));
    }

    private Read<Stand> dense(Read<Integer> plants, double perM2) {
        double deck = deckM2.value();
        double by = perM2 * deck;
        int count = plants.isSound() ? plants.value() : whole(by);
        double groundM2 = count / perM2;
        holdsPlants(plants, count);
        if (!(groundM2 < deck)) {
            tray.holds(GROUND, PlantingReader.area(groundM2) + ", plants over their density");
            return Read.of(new Stand(count, groundM2));
        }
        if (plants.isSound() && by - count > 0.5 + 1e-9) {
            return contradicted(
                    "%s plants on the deck (%s), which they have in any case"
                            .formatted(Measure.plain(by), PlantingReader.area(deck)),
                    count / deck);
        }
        return Read.of(new Stand(count, deck("")));
    }

    private static int whole(double plants) {
        return (int) Math.max(1, FastMath.round(plants));
    }

    private void holdsPlants(Read<Integer> stated, int count) {
        if (!stated.isSound()) {
            tray.holds(PLANTS, count + ", density times ground");
        }
    }

    private double deck(String why) {
        tray.holds(GROUND, PlantingReader.area(deckM2.value()) + ", the deck" + why);
        return deckM2.value();
    }

    private Read<Stand> contradicted(String means, double perM2) {
        Key<Double> key = tray.has(STEMS_PER_M2) ? STEMS_PER_M2 : PLANTS_PER_M2;
        double shown = key == STEMS_PER_M2 ? perM2 * stems.value() : perM2;
        tray.fault(
                key,
                "%s, which means %s, beside plants = %s"
                        .formatted(tray.words(key), means, tray.words(PLANTS)),
                "plants, ground and density that agree",
                "Maybe %s = %s, or leave one of them out."
                        .formatted(key.name(), Measure.plain(shown)));
        return Read.faulty();
    }
}
