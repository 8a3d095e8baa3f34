package tideless.scenario;

import java.util.List;
import tideless.solution.Composition;

/**
 * What this room asks of the solution room: waters and recipes by name, and a feed made of them.
 * One place, so that the chemistry behind it can be exchanged.
 */
interface Solutions {
    /** The chemistry in use. */
    Solutions CURRENT = new Chemistry();

    /** Names of source waters, in a stable order. */
    List<String> waters();

    /** A source water by one of {@link #waters()}. */
    Composition water(String name);

    /** Names of recipes, in a stable order. */
    List<String> recipes();

    /** EC of a recipe as published, mS/cm at 25 degC. */
    double publishedEcMsPerCm(String recipe);

    /**
     * A feed of a recipe's salts in a water.
     *
     * @param recipe one of {@link #recipes()}
     * @param water what it is dissolved in
     * @param ecMsPerCm EC it is made up to, mS/cm at 25 degC
     * @param ph pH it is brought to
     */
    Composition feed(String recipe, Composition water, double ecMsPerCm, double ph);

    /** EC of a water, mS/cm at 25 degC; what a feed made of it cannot fall below. */
    double ecMsPerCm(Composition water);
}
