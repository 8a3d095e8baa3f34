package tideless.scenario;

import java.util.List;
import tideless.rig.Planting;

/** The transpiration models by the names a scenario calls them. */
final class ThirstModels {
    static final List<String> NAMES =
            List.of("combined", "canopy", "coefficient", "penman-monteith", "radiation");

    private ThirstModels() {}

    /** One of {@link #NAMES}. */
    static Planting.ThirstModel named(String name) {
        return switch (name) {
            case "combined" -> Planting.ThirstModel.COMBINED;
            case "canopy" -> Planting.ThirstModel.CANOPY;
            case "coefficient" -> Planting.ThirstModel.COEFFICIENT;
            case "penman-monteith" -> Planting.ThirstModel.PENMAN_MONTEITH;
            case "radiation" -> Planting.ThirstModel.RADIATION;
            default -> throw new AssertionError("no thirst model called " + name);
        };
    }
}
