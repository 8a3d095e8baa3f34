package tideless.scenario;

import java.util.List;
import java.util.OptionalDouble;
import tideless.solution.Composition;
import tideless.solution.Reagent;
import tideless.solution.TwoPart;

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

    /** Tap water by its EC alone, mS/cm at 25 degC. */
    Composition waterReading(double msPerCm);

    /** A water with a share of rain, 0 to 1, in it. */
    Composition withRain(Composition water, double rainFrac);

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
     * @param acid one of {@link #ACIDS}, used where the pH has to fall
     */
    Mix feed(String recipe, Composition water, double ecMsPerCm, double ph, String acid);

    /** The same of two bottles; the volume they take up, below 1 %, is left out. */
    Mix feedOf(TwoPart bottles, Composition water, double ecMsPerCm, double ph, String acid);

    /** Acids by the names growers give them. */
    List<String> ACIDS = List.of("phosphoric", "nitric", "sulfuric");

    /** In place of one of {@link #ACIDS}: nothing is poured, and the pH is what comes of it. */
    String NO_ACID = "none";

    /** The bottle behind one of {@link #ACIDS}. */
    Reagent bottle(String acid);

    /** What to mind with one of {@link #ACIDS}; empty for one that anybody may own. */
    String trainedStaffOnly(String acid);

    /**
     * Solutions each of which is made once.
     *
     * @param solutions who makes them
     */
    record Once(Solutions solutions, MadeOnce once) implements Solutions {
        private record Feed(
                Object salts, Composition water, double ecMsPerCm, double ph, String acid) {}

        @Override
        public List<String> waters() {
            return solutions.waters();
        }

        @Override
        public Composition water(String name) {
            return solutions.water(name);
        }

        @Override
        public Composition waterReading(double msPerCm) {
            return solutions.waterReading(msPerCm);
        }

        @Override
        public Composition withRain(Composition water, double rainFrac) {
            return solutions.withRain(water, rainFrac);
        }

        @Override
        public List<String> recipes() {
            return solutions.recipes();
        }

        @Override
        public double publishedEcMsPerCm(String recipe) {
            return solutions.publishedEcMsPerCm(recipe);
        }

        @Override
        public Mix feed(
                String recipe, Composition water, double ecMsPerCm, double ph, String acid) {
            return once.get(
                    new Feed(recipe, water, ecMsPerCm, ph, acid),
                    () -> solutions.feed(recipe, water, ecMsPerCm, ph, acid));
        }

        @Override
        public Mix feedOf(
                TwoPart bottles, Composition water, double ecMsPerCm, double ph, String acid) {
            return once.get(
                    new Feed(bottles, water, ecMsPerCm, ph, acid),
                    () -> solutions.feedOf(bottles, water, ecMsPerCm, ph, acid));
        }

        @Override
        public String trainedStaffOnly(String acid) {
            return solutions.trainedStaffOnly(acid);
        }

        @Override
        public Reagent bottle(String acid) {
            return solutions.bottle(acid);
        }
    }

    /** What came of mixing. */
    sealed interface Mix {}

    /**
     * A feed.
     *
     * @param composition the feed
     * @param strength of the recipe or label, 1 = full
     * @param ph it has in air; above the one asked for where the acid's phosphate stops it
     * @param phReached whether it is the one asked for
     * @param rainShareFrac share of rain in the water with which the acid would do; empty where it
     *     does without and where not even rain helps
     */
    record Made(
            Composition composition,
            double strength,
            double ph,
            boolean phReached,
            OptionalDouble rainShareFrac)
            implements Mix {}

    /**
     * No feed.
     *
     * @param key which key is at fault, "ec" or "ph"
     * @param allowed what that key may hold
     */
    record Refused(String key, String allowed) implements Mix {}
}
