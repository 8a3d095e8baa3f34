package tideless.scenario;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * A stopgap behind {@link Solutions} until the solution room's own recipes and conductivity are
 * joined: EC is counted as a tenth of the cation equivalents, mS/cm per mol/m3 (rule of growers,
 * within about 5 % for full recipes), pH is not brought to anything, and the salts of the recipe
 * are added to those of the water.
 */
final class PlainSolutions implements Solutions {
    private static final double MS_PER_CM_PER_EQUIVALENT = 0.1;

    private static final Map<String, Composition> WATERS = new LinkedHashMap<>();
    private static final Map<String, Composition> RECIPES = new LinkedHashMap<>();
    private static final Map<String, Double> PUBLISHED_EC = new LinkedHashMap<>();

    static {
        // Middles of the ranges usual for such waters, from memory.
        water("rain", 0.03, 0.01, 0.1, 0.01, 0.03, 0.1, 0.03, 0.03);
        water("reverse-osmosis", 0.03, 0.01, 0.2, 0.01, 0.1, 0.15, 0.01, 0.02);
        water("soft-tap", 0.35, 0.1, 0.35, 0.03, 0.65, 0.3, 0.1, 0.05);
        water("hard-tap", 3.0, 0.7, 1.0, 0.08, 5.25, 1.3, 0.6, 0.3);
        // Hoagland and Arnon (1950), California Agric. Exp. Stn. Circular 347.
        recipe("hoagland-1", 15, 0, 1, 6, 5, 2, 2, 2.1);
        recipe("hoagland-2", 14, 1, 1, 6, 4, 2, 2, 2.0);
        // Steiner (1984), from memory.
        recipe("steiner", 12, 0, 1, 7, 4.5, 2, 3.5, 2.0);
    }

    private static void water(
            String name,
            double ca,
            double mg,
            double na,
            double k,
            double hco3,
            double cl,
            double so4,
            double no3) {
        WATERS.put(
                name,
                Composition.of(
                        Map.of(
                                Component.CA, ca,
                                Component.MG, mg,
                                Component.NA, na,
                                Component.K, k,
                                Component.C, hco3,
                                Component.CL, cl,
                                Component.SO4, so4,
                                Component.NO3, no3)));
    }

    private static void recipe(
            String name,
            double no3,
            double nh4,
            double p,
            double k,
            double ca,
            double mg,
            double so4,
            double ec) {
        RECIPES.put(
                name,
                Composition.of(
                        Map.of(
                                Component.NO3, no3,
                                Component.NH4, nh4,
                                Component.P, p,
                                Component.K, k,
                                Component.CA, ca,
                                Component.MG, mg,
                                Component.SO4, so4,
                                Component.TRACER, 1.0)));
        PUBLISHED_EC.put(name, ec);
    }

    @Override
    public List<String> waters() {
        return List.copyOf(WATERS.keySet());
    }

    @Override
    public Composition water(String name) {
        return WATERS.get(name);
    }

    @Override
    public List<String> recipes() {
        return List.copyOf(RECIPES.keySet());
    }

    @Override
    public double publishedEcMsPerCm(String recipe) {
        return PUBLISHED_EC.get(recipe);
    }

    @Override
    public Composition feed(String recipe, Composition water, double ecMsPerCm, double ph) {
        Composition salts = RECIPES.get(recipe);
        double factor = Math.max(0, ecMsPerCm - ecMsPerCm(water)) / ecMsPerCm(salts);
        return water.plus(salts.times(factor));
    }

    @Override
    public double ecMsPerCm(Composition water) {
        double equivalents = 0;
        for (Component component : Component.values()) {
            equivalents += Math.max(0, component.fixedCharge()) * water.molPerM3(component);
        }
        return MS_PER_CM_PER_EQUIVALENT * equivalents;
    }
}
