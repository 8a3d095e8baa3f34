package tideless.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A published nutrient solution at full strength.
 *
 * @param id lower-case words with hyphens
 * @param title literature name
 * @param composition mol/m3; phosphate was H2PO4-. The tracer is 1 mol/m3: the recipe's own
 *     micronutrients, whole.
 * @param publishedEcMsPerCm as printed, rounded, at 25 degC; often a target at the dripper that
 *     includes some sodium and chloride of the water
 * @param source author and year
 * @param standing how well the composition is founded
 */
public record Recipe(
        String id,
        String title,
        Composition composition,
        double publishedEcMsPerCm,
        String source,
        Standing standing) {
    private static final String HOAGLAND =
            "Hoagland and Arnon (1950), California Agricultural Experiment Station Circular 347";
    private static final String STEINER = "Steiner (1984), ISOSC Proceedings 6, 633";
    private static final String DUTCH =
            "after Sonneveld and Straver (1994), Nutrient solutions for vegetables and flowers";
    private static final String CLOSED =
            "after De Kreij et al. (1999) and Sonneveld and Voogt (2009), closed systems";

    private static final List<Recipe> ALL =
            List.of(
                    recipe(
                            "hoagland-1",
                            "Hoagland no. 1",
                            HOAGLAND,
                            Standing.READ,
                            2.1,
                            new double[] {15, 0, 1, 6, 5, 2, 2}),
                    recipe(
                            "hoagland-2",
                            "Hoagland no. 2",
                            HOAGLAND,
                            Standing.READ,
                            2.0,
                            new double[] {14, 1, 1, 6, 4, 2, 2}),
                    recipe(
                            "steiner",
                            "Steiner universal",
                            STEINER,
                            Standing.FROM_MEMORY,
                            2.0,
                            new double[] {12, 0, 1, 7, 4.5, 2, 3.5}),
                    recipe(
                            "lettuce-water-culture",
                            "Lettuce, recirculating water culture",
                            DUTCH,
                            Standing.FROM_MEMORY,
                            2.6,
                            new double[] {19, 1.25, 2, 11, 4.5, 1, 1.125}),
                    recipe(
                            "tomato-substrate",
                            "Tomato, drip in substrate",
                            DUTCH,
                            Standing.FROM_MEMORY,
                            2.6,
                            new double[] {16, 1.2, 1.5, 9.5, 5.4, 2.4, 4.4}),
                    recipe(
                            "cucumber-substrate",
                            "Cucumber, drip in substrate",
                            DUTCH,
                            Standing.FROM_MEMORY,
                            2.2,
                            new double[] {16, 1.25, 1.25, 8, 4, 1.375, 1.375}),
                    recipe(
                            "pepper-substrate",
                            "Sweet pepper, drip in substrate",
                            DUTCH,
                            Standing.FROM_MEMORY,
                            2.2,
                            new double[] {15.5, 1.25, 1.25, 6.5, 4.75, 1.5, 1.75}),
                    recipe(
                            "strawberry-substrate",
                            "Strawberry, drip in substrate",
                            DUTCH,
                            Standing.FROM_MEMORY_UNSURE,
                            1.6,
                            new double[] {11.5, 1, 1, 5.5, 3.25, 1.25, 1.5}),
                    recipe(
                            "tomato-closed",
                            "Tomato, supply of a closed system",
                            CLOSED,
                            Standing.FROM_MEMORY,
                            1.6,
                            new double[] {10.75, 1, 1.25, 6.5, 2.75, 1, 1.5}),
                    recipe(
                            "cucumber-closed",
                            "Cucumber, supply of a closed system",
                            CLOSED,
                            Standing.FROM_MEMORY,
                            1.7,
                            new double[] {11.75, 1, 1.25, 6.5, 2.75, 1, 1}),
                    recipe(
                            "pepper-closed",
                            "Sweet pepper, supply of a closed system",
                            CLOSED,
                            Standing.FROM_MEMORY_UNSURE,
                            1.7,
                            new double[] {12.5, 0.5, 1, 5.75, 3.5, 1.125, 1}));

    public Recipe {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(composition, "composition");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(standing, "standing");
    }

    /** Amounts in the order NO3, NH4, P, K, Ca, Mg, SO4. */
    private static Recipe recipe(
            String id,
            String title,
            String source,
            Standing standing,
            double publishedEcMsPerCm,
            double[] amounts) {
        double[] all = new double[Component.COUNT];
        System.arraycopy(amounts, 0, all, 0, amounts.length);
        all[Component.TRACER.ordinal()] = 1;
        return new Recipe(id, title, Composition.of(all), publishedEcMsPerCm, source, standing);
    }

    /** One by its id. */
    public static Optional<Recipe> named(String id) {
        return ALL.stream().filter(r -> r.id().equals(id)).findFirst();
    }

    /** The ids, in order. */
    public static List<String> names() {
        List<String> names = new ArrayList<>();
        ALL.forEach(r -> names.add(r.id()));
        return List.copyOf(names);
    }
}
