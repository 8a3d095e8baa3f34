package tideless.scenario;

import java.util.List;
import java.util.OptionalDouble;
import tideless.crop.Transplant;

/** Reads the young plant as its grower found it. */
final class TransplantReader {
    /**
     * Leaf to a gram of a fresh young plant, cm2/g: 20 to 50 in the library's nurseries. At most 75
     * m2/kg of a seedling's thinnest leaf, a tenth dry, and nothing but leaf; at least a third of
     * the nurseries' least, assumed.
     */
    private static final double MOST_LEAF_CM2_PER_G = 80;

    private static final double LEAST_LEAF_CM2_PER_G = 6;

    private TransplantReader() {}

    /** The young plant as it was found. */
    static Read<Transplant> read(Table young) {
        List<Key<Double>> keys =
                List.of(
                        TransplantKeys.LEAVES,
                        TransplantKeys.LEAF_AREA,
                        TransplantKeys.FRESH,
                        TransplantKeys.HEIGHT,
                        TransplantKeys.ROOT_LENGTH);
        OptionalDouble[] found = new OptionalDouble[keys.size()];
        for (int i = 0; i < found.length; i++) {
            Read<Double> one = young.get(keys.get(i));
            if (!one.isSound() && !one.isAbsent()) {
                return Read.faulty();
            }
            found[i] = one.isSound() ? OptionalDouble.of(one.value()) : OptionalDouble.empty();
        }
        if (found[1].isPresent()
                && found[2].isPresent()
                && !isPlant(young, found[1].getAsDouble(), found[2].getAsDouble())) {
            return Read.faulty();
        }
        sayUnused(young, found);
        return young.get(TransplantKeys.ROOTS_HANG)
                .map(
                        hang ->
                                new Transplant(
                                        found[0], found[1], found[2], found[3], found[4], hang));
    }

    // As Growing.atStart takes them.
    private static void sayUnused(Table young, OptionalDouble[] found) {
        if (found[1].isPresent() || found[2].isPresent()) {
            String by = found[1].isPresent() ? "leaf_area tells" : "fresh tells";
            sayUnused(young, TransplantKeys.LEAVES, by + " the size of the plant");
            sayUnused(young, TransplantKeys.HEIGHT, by + " the size of the plant");
        } else if (found[0].isPresent()) {
            sayUnused(young, TransplantKeys.HEIGHT, "leaves tells the size of the plant");
        }
        if (found[4].isPresent()) {
            sayUnused(young, TransplantKeys.ROOTS_HANG, "root_length tells the roots");
        }
    }

    private static void sayUnused(Table young, Key<?> key, String why) {
        if (young.has(key)) {
            young.note(key, "not used: " + why);
        }
    }

    // Leaf area and weight of one plant that no plant has together.
    private static boolean isPlant(Table young, double leafAreaM2, double freshG) {
        double cm2PerG = 1e4 * leafAreaM2 / freshG;
        if (cm2PerG >= LEAST_LEAF_CM2_PER_G && cm2PerG <= MOST_LEAF_CM2_PER_G) {
            return true;
        }
        young.faultyValue(
                TransplantKeys.LEAF_AREA,
                "%s to %s of leaf for the %s that the plant weighs"
                        .formatted(
                                PlantingReader.area(1e-4 * LEAST_LEAF_CM2_PER_G * freshG),
                                PlantingReader.area(1e-4 * MOST_LEAF_CM2_PER_G * freshG),
                                Words.shown(young.raw(TransplantKeys.FRESH.name()))),
                "Maybe one of the two is of the whole tray; or leave one of them out.");
        return false;
    }
}
