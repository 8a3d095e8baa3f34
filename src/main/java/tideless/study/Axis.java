package tideless.study;

import java.util.List;

/**
 * What differs between designs in one direction.
 *
 * @param key what is varied; empty where whole scenarios stand side by side
 * @param unit of its numbers; empty for none
 * @param labels of its values, as written
 * @param numbers of its values, rising, in that unit; empty where they have none
 * @param present the numbers of the design as it stands; several where trays differ
 */
public record Axis(
        String key, String unit, List<String> labels, List<Double> numbers, List<Double> present) {
    /** How near a number is to that of the design as it stands to be taken for it, relative. */
    private static final double SAME = 1e-6;

    public Axis {
        labels = List.copyOf(labels);
        numbers = List.copyOf(numbers);
        present = List.copyOf(present);
    }

    /** How many values. */
    public int size() {
        return labels.size();
    }

    /** Whether a value is that of the design as it stands. */
    public boolean isPresent(int value) {
        return !numbers.isEmpty()
                && present.size() == 1
                && Math.abs(numbers.get(value) - present.get(0)) <= SAME * Math.abs(present.get(0));
    }
}
