package tideless.sim;

import java.util.List;
import tideless.solution.Component;

/** The concentration of each nutrient below which its uptake begins to slow. */
public final class Shortage {
    /** The nutrients a tray can run short of; ammonium is not missed while there is nitrate. */
    public static final List<Component> WATCHED =
            List.of(
                    Component.NO3,
                    Component.P,
                    Component.K,
                    Component.CA,
                    Component.MG,
                    Component.SO4);

    private Shortage() {}

    /**
     * Five times a cautious Michaelis constant: above it uptake follows growth, below it the roots'
     * own limit shows. Kinetics matter only below about 5 Km, 0.05 to 0.4 mol/m3, for nitrate,
     * potassium and phosphate at the constants of Epstein et al. (1963) and Siddiqi et al. (1990),
     * from memory; one value is taken for each ion, rounded.
     *
     * @return mol/m3
     */
    public static double leastMolPerM3(Component component) {
        return switch (component) {
            case NO3 -> 0.4;
            case P -> 0.05;
            case K -> 0.15;
            case CA -> 0.2;
            case MG -> 0.15;
            case SO4 -> 0.1;
            default -> 0;
        };
    }
}
