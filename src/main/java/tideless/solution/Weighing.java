package tideless.solution;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Salts for a composition.
 *
 * @param molPerM3 of each salt, only those needed, in the order of {@link Salt}
 */
public record Weighing(Map<Salt, Double> molPerM3) {
    /** Amounts below this, mol/m3, are rounding: a millionth of a usual one. */
    private static final double ROUNDING = 1e-6;

    public Weighing {
        EnumMap<Salt, Double> ordered = new EnumMap<>(Salt.class);
        ordered.putAll(molPerM3);
        ordered.values()
                .forEach(
                        amount -> {
                            if (!(amount >= 0 && amount < 1e5)) {
                                throw new IllegalArgumentException(
                                        "an amount must lie in [0, 1e5) mol/m3, was " + amount);
                            }
                        });
        molPerM3 = Collections.unmodifiableMap(ordered);
    }

    /**
     * The usual way round: all calcium as nitrate, magnesium as sulfate as far as sulfate goes, the
     * rest of the sulfate and the phosphate with potassium, ammonium with nitrate. Sodium and
     * chloride with each other, chloride left over with potassium, then calcium.
     *
     * @param recipe charge balanced with phosphate as H2PO4-; carbon and tracer are passed over
     * @return empty where no amounts of at least 0 give it (charges that do not balance, potassium
     *     short of what sulfate and phosphate need)
     */
    public static Optional<Weighing> forRecipe(Composition recipe) {
        double[] left = recipe.toArray();
        EnumMap<Salt, Double> salts = new EnumMap<>(Salt.class);
        take(salts, left, Salt.SODIUM_CHLORIDE);
        take(salts, left, Salt.MAGNESIUM_SULFATE);
        take(salts, left, Salt.MAGNESIUM_NITRATE);
        take(salts, left, Salt.POTASSIUM_SULFATE);
        take(salts, left, Salt.MONOPOTASSIUM_PHOSPHATE);
        take(salts, left, Salt.MONOAMMONIUM_PHOSPHATE);
        take(salts, left, Salt.AMMONIUM_NITRATE);
        take(salts, left, Salt.POTASSIUM_CHLORIDE);
        take(salts, left, Salt.POTASSIUM_NITRATE);
        take(salts, left, Salt.CALCIUM_CHLORIDE);
        take(salts, left, Salt.CALCIUM_NITRATE);
        for (int i = 0; i < left.length; i++) {
            boolean passedOver = i == Component.C.ordinal() || i == Component.TRACER.ordinal();
            if (!passedOver && left[i] > ROUNDING) {
                return Optional.empty();
            }
        }
        return Optional.of(new Weighing(salts));
    }

    /**
     * With what shops sell and anybody may own: calcium nitrate is the double salt, whose ammonium
     * counts, and there is no ammonium nitrate, which is not sold to private persons. So calcium,
     * magnesium, potassium, phosphate and sulfate are the recipe's; ammonium is the double salt's,
     * and beyond it what can come with phosphate; nitrate follows.
     *
     * @param recipe as for {@link #forRecipe}
     * @return empty where {@link #forRecipe} is
     */
    public static Optional<Weighing> asSold(Composition recipe) {
        double ca = recipe.molPerM3(Component.CA);
        double chlorideOver =
                Math.max(0, recipe.molPerM3(Component.CL) - recipe.molPerM3(Component.NA));
        double ofDoubleSalt = Math.max(0, ca - chlorideOver / 2) / 5;
        double withPhosphate =
                Math.min(
                        recipe.molPerM3(Component.P),
                        Math.max(0, recipe.molPerM3(Component.NH4) - ofDoubleSalt));
        // The recipe as if its ammonium were only what phosphate brings: nitrate balances.
        Composition without = recipe.with(Component.NH4, withPhosphate);
        double nitrate =
                recipe.molPerM3(Component.NO3) - recipe.molPerM3(Component.NH4) + withPhosphate;
        if (!(nitrate >= 0)) {
            return Optional.empty();
        }
        without = without.with(Component.NO3, nitrate);
        double[] left = without.toArray();
        EnumMap<Salt, Double> salts = new EnumMap<>(Salt.class);
        take(salts, left, Salt.MONOAMMONIUM_PHOSPHATE);
        Optional<Weighing> rest = forRecipe(Composition.of(left));
        if (rest.isEmpty()) {
            return rest;
        }
        rest.get().molPerM3().forEach((salt, mol) -> salts.merge(salt, mol, Double::sum));
        Double pure = salts.remove(Salt.CALCIUM_NITRATE);
        if (pure != null) {
            salts.put(Salt.CALCIUM_AMMONIUM_NITRATE, pure / 5);
        }
        return Optional.of(new Weighing(salts));
    }

    /** As much of a salt as the scarcest of its ions allows. */
    private static void take(EnumMap<Salt, Double> salts, double[] left, Salt salt) {
        double amount = Double.POSITIVE_INFINITY;
        for (int i = 0; i < left.length; i++) {
            double each = salt.perMol().molPerM3(i);
            if (each > 0) {
                amount = Math.min(amount, left[i] / each);
            }
        }
        if (amount <= ROUNDING) {
            return;
        }
        for (int i = 0; i < left.length; i++) {
            left[i] = Math.max(0, left[i] - amount * salt.perMol().molPerM3(i));
        }
        salts.put(salt, amount);
    }

    /** What they give together, mol/m3. */
    public Composition composition() {
        Composition sum = Composition.WATER;
        for (Map.Entry<Salt, Double> salt : molPerM3.entrySet()) {
            sum = sum.plus(salt.getKey().perMol().times(salt.getValue()));
        }
        return sum;
    }
}
