package tideless.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/**
 * Something of a scenario that a slider moves or a list chooses.
 *
 * @param id by which the page names it
 * @param group what it belongs to, as "tray basil"
 * @param label what it is, as "depth"
 * @param unit of the values; empty for a count
 * @param low the least value
 * @param high the greatest
 * @param step from one value to the next
 * @param value where it stands now
 * @param choices what may be chosen, by the words for it; empty for a slider
 * @param chosen what is chosen
 * @param change the keys to be changed and what stands there then, for a value of a slider as its
 *     decimal digits, or one of the choices
 */
record Knob(
        String id,
        String group,
        String label,
        String unit,
        double low,
        double high,
        double step,
        double value,
        Map<String, String> choices,
        String chosen,
        Function<String, Map<List<String>, String>> change) {

    /** A slider. */
    static Knob slider(
            String id,
            String label,
            String unit,
            double[] lowHighStep,
            double value,
            DoubleFunction<Map<List<String>, String>> change) {
        return new Knob(
                id,
                "",
                label,
                unit,
                Math.min(lowHighStep[0], value),
                Math.max(lowHighStep[1], value),
                lowHighStep[2],
                value,
                Map.of(),
                "",
                to -> change.apply(Double.parseDouble(to)));
    }

    /** A list to choose from. */
    static Knob choice(
            String id,
            String label,
            Map<String, String> choices,
            String chosen,
            Function<String, Map<List<String>, String>> change) {
        return new Knob(id, "", label, "", 0, 0, 0, 0, choices, chosen, change);
    }

    /** The same as one of a group. */
    Knob in(String other) {
        return new Knob(id, other, label, unit, low, high, step, value, choices, chosen, change);
    }

    /** What the page is told of it. */
    Map<String, Object> told() {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("id", id);
        told.put("group", group);
        told.put("label", label);
        told.put("unit", unit);
        told.put("low", low);
        told.put("high", high);
        told.put("step", step);
        told.put("value", value);
        told.put("choices", choices);
        told.put("chosen", chosen);
        return told;
    }
}
