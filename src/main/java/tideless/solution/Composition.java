package tideless.solution;

import java.util.Arrays;
import java.util.Map;

/** Concentrations of every {@link Component}, mol/m3 (the same number as mmol/L). Immutable. */
public final class Composition {
    /** Pure water. */
    public static final Composition WATER = new Composition(new double[Component.COUNT]);

    private final double[] molPerM3;

    private Composition(double[] molPerM3) {
        this.molPerM3 = molPerM3;
    }

    /**
     * Of so much of each.
     *
     * @param molPerM3 one value a component, in the order of {@link Component}, each finite and at
     *     least 0
     */
    public static Composition of(double... molPerM3) {
        if (molPerM3.length != Component.COUNT) {
            throw new IllegalArgumentException(
                    "needs %d values, had %d".formatted(Component.COUNT, molPerM3.length));
        }
        for (int i = 0; i < molPerM3.length; i++) {
            if (!(molPerM3[i] >= 0 && molPerM3[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "%s must be at least 0 and finite, was %s"
                                .formatted(Component.at(i).title(), molPerM3[i]));
            }
        }
        return new Composition(molPerM3.clone());
    }

    /** The stated components; all others 0. */
    public static Composition of(Map<Component, Double> molPerM3) {
        double[] values = new double[Component.COUNT];
        molPerM3.forEach((component, value) -> values[component.ordinal()] = value);
        return of(values);
    }

    /** One component, mol/m3. */
    public double molPerM3(Component component) {
        return molPerM3[component.ordinal()];
    }

    /** One component by its place in {@link Component}, mol/m3. */
    public double molPerM3(int index) {
        return molPerM3[index];
    }

    /** All components, a fresh array. */
    public double[] toArray() {
        return molPerM3.clone();
    }

    /** Every component times a factor of at least 0. */
    public Composition times(double factor) {
        double[] values = molPerM3.clone();
        for (int i = 0; i < values.length; i++) {
            values[i] *= factor;
        }
        return of(values);
    }

    /** The sum of two. */
    public Composition plus(Composition other) {
        double[] values = molPerM3.clone();
        for (int i = 0; i < values.length; i++) {
            values[i] += other.molPerM3[i];
        }
        return of(values);
    }

    /** This one with one component set. */
    public Composition with(Component component, double value) {
        double[] values = molPerM3.clone();
        values[component.ordinal()] = value;
        return of(values);
    }

    /** Charge of the components of fixed charge, mol charge/m3: cations less anions. */
    public double fixedChargeMolPerM3() {
        double sum = 0;
        for (int i = 0; i < molPerM3.length; i++) {
            sum += Component.at(i).fixedCharge() * molPerM3[i];
        }
        return sum;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Composition that && Arrays.equals(molPerM3, that.molPerM3);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(molPerM3);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("Composition[");
        for (int i = 0; i < molPerM3.length; i++) {
            text.append(i == 0 ? "" : ", ")
                    .append(Component.at(i).symbol())
                    .append(' ')
                    .append(molPerM3[i]);
        }
        return text.append(" mol/m3]").toString();
    }
}
