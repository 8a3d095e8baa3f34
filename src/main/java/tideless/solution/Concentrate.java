package tideless.solution;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * One bottle, by its label.
 *
 * @param name as the user calls it
 * @param massPercent label terms in per cent of mass
 * @param densityKgPerL of the liquid (about 1.1 to 1.25), or {@link #POWDER}
 */
public record Concentrate(String name, Map<LabelTerm, Double> massPercent, double densityKgPerL) {
    /** Stands for the density of what is only weighed. */
    public static final double POWDER = Double.NaN;

    public Concentrate {
        Objects.requireNonNull(name, "name");
        double sum = 0;
        for (Map.Entry<LabelTerm, Double> term : massPercent.entrySet()) {
            if (!(term.getValue() >= 0 && term.getValue() <= 100)) {
                throw new IllegalArgumentException(
                        "%s must lie in 0 to 100 %%, was %s"
                                .formatted(term.getKey().printed(), term.getValue()));
            }
            sum += term.getValue();
        }
        if (!(sum <= 100)) {
            throw new IllegalArgumentException("the label adds up to " + sum + " %");
        }
        if (!(Double.isNaN(densityKgPerL) || (densityKgPerL > 0.5 && densityKgPerL < 3))) {
            throw new IllegalArgumentException(
                    "densityKgPerL must lie in (0.5, 3), was " + densityKgPerL);
        }
        EnumMap<LabelTerm, Double> ordered = new EnumMap<>(LabelTerm.class);
        ordered.putAll(massPercent);
        massPercent = Collections.unmodifiableMap(ordered);
    }

    /** Ions a kg of product, as a composition whose numbers are mol/kg. */
    public Composition molPerKg() {
        double[] values = new double[Component.COUNT];
        massPercent.forEach(
                (term, percent) -> values[term.component().ordinal()] += term.molPerKg(percent));
        return Composition.of(values);
    }

    /** Millilitres of so many grams; NaN for a powder. */
    public double millilitres(double grams) {
        return grams / densityKgPerL;
    }
}
