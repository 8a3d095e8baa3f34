package tideless.scenario;

import java.util.ArrayList;
import java.util.List;

/**
 * In what a number may be written.
 *
 * @param tables tables of units, the usual one first; none for a number without unit
 * @param plainToo whether it may stand without a unit
 */
record Units(List<UnitTable> tables, boolean plainToo) {
    static final Units NONE = new Units(List.of(), false);

    Read<Measure> read(String text) {
        return Measure.of(text, tables, plainToo);
    }

    /** In words, behind bounds that may be empty. */
    String allowed(String bounds) {
        List<String> units = new ArrayList<>();
        for (UnitTable table : tables) {
            units.addAll(table.shown());
        }
        if (units.isEmpty()) {
            return (bounds.isEmpty() ? "a number" : "a number " + bounds) + ", without unit";
        }
        String tail = (plainToo ? "with or without " : "in ") + String.join(", ", units);
        return bounds.isEmpty() ? "a number " + tail : bounds + ", " + tail;
    }
}
