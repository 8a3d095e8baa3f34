package tideless.scenario;

/**
 * Between which two values a number must lie, as written in the units of the first table. Where
 * several tables are allowed the reader checks the others against the vessel itself.
 */
final class Bounds {
    private final Units units;
    private final String lowWords;
    private final boolean lowIncluded;
    private final String highWords;
    private final Measure low;
    private final Measure high;

    Bounds(Units units, String low, boolean lowIncluded, String high) {
        this.units = units;
        this.lowWords = low;
        this.lowIncluded = lowIncluded;
        this.highWords = high;
        this.low = units.read(low).value();
        this.high = units.read(high).value();
    }

    Measure low() {
        return low;
    }

    Measure high() {
        return high;
    }

    /** As it is written. */
    String lowest() {
        return lowWords;
    }

    /** As it is written. */
    String highest() {
        return highWords;
    }

    boolean isLowIncluded() {
        return lowIncluded;
    }

    boolean contain(Measure measure) {
        boolean several = units.tables().size() > 1;
        if (several && measure.table() != null && measure.table() != units.tables().get(0)) {
            return measure.value() >= 0;
        }
        double value = measure.value();
        return (lowIncluded ? value >= low.value() : value > low.value()) && value <= high.value();
    }

    /** In words. */
    @Override
    public String toString() {
        return (lowIncluded ? "from " + lowWords : "above " + lowWords) + " up to " + highWords;
    }
}
