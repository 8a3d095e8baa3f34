package tideless.page;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How far two texts of {@link EveryBit} are apart.
 *
 * @param bytes of the first
 * @param bytesDiffer in place, and the bytes by which one is longer
 * @param numbers in the first
 * @param numbersDiffer of those, and what one has more
 * @param mostRelative greatest difference of two numbers as a share of the greatest of their line
 * @param firstDifference the first line that differs, shortened
 */
record Comparison(
        long bytes,
        long bytesDiffer,
        long numbers,
        long numbersDiffer,
        double mostRelative,
        Optional<String> firstDifference) {

    private static final Pattern NUMBER = Pattern.compile("[0-9a-f]{16}");

    static Comparison of(String first, String second) {
        byte[] one = first.getBytes(StandardCharsets.UTF_8);
        byte[] other = second.getBytes(StandardCharsets.UTF_8);
        long bytesDiffer = Math.abs(one.length - other.length);
        for (int i = 0; i < Math.min(one.length, other.length); i++) {
            bytesDiffer += one[i] == other[i] ? 0 : 1;
        }
        String[] lines = first.split("\n", -1);
        String[] others = second.split("\n", -1);
        long numbers = 0;
        long numbersDiffer = 0;
        double most = 0;
        Optional<String> difference = Optional.empty();
        for (int i = 0; i < Math.max(lines.length, others.length); i++) {
            String line = i < lines.length ? lines[i] : "";
            String twin = i < others.length ? others[i] : "";
            Line compared = Line.of(line.split("\t", -1), twin.split("\t", -1));
            numbers += compared.numbers;
            numbersDiffer += compared.differ;
            most = Math.max(most, compared.relative());
            if (difference.isEmpty() && !line.equals(twin)) {
                difference = Optional.of(shortened(line) + " / " + shortened(twin));
            }
        }
        return new Comparison(one.length, bytesDiffer, numbers, numbersDiffer, most, difference);
    }

    private static String shortened(String line) {
        return line.length() > 200 ? line.substring(0, 200) + "..." : line;
    }

    /** One line, number by number. */
    private static final class Line {
        private long numbers;
        private long differ;
        private double greatest;
        private double apart;

        static Line of(String[] cells, String[] others) {
            Line line = new Line();
            for (int i = 0; i < cells.length; i++) {
                if (NUMBER.matcher(cells[i]).matches()) {
                    line.take(cells[i], i < others.length ? others[i] : "");
                }
            }
            return line;
        }

        private void take(String cell, String other) {
            numbers++;
            double value = number(cell);
            greatest = Math.max(greatest, Double.isFinite(value) ? Math.abs(value) : 0);
            if (!cell.equals(other)) {
                differ++;
                double twin = NUMBER.matcher(other).matches() ? number(other) : Double.NaN;
                double by = Math.abs(value - twin);
                apart = Math.max(apart, Double.isNaN(by) ? Double.POSITIVE_INFINITY : by);
            }
        }

        private static double number(String cell) {
            return Double.longBitsToDouble(Long.parseUnsignedLong(cell, 16));
        }

        double relative() {
            return apart == 0 ? 0 : apart / greatest;
        }
    }
}
