package tideless.solution;

/** Compositions by the formula of one salt, for tests. */
final class Salts {
    private Salts() {}

    static Composition of(String formula, double molPerM3) {
        Composition w = Composition.WATER;
        double c = molPerM3;
        return switch (formula) {
            case "KCl" -> w.with(Component.K, c).with(Component.CL, c);
            case "NaCl" -> w.with(Component.NA, c).with(Component.CL, c);
            case "CaCl2" -> w.with(Component.CA, c).with(Component.CL, 2 * c);
            case "MgCl2" -> w.with(Component.MG, c).with(Component.CL, 2 * c);
            case "KNO3" -> w.with(Component.K, c).with(Component.NO3, c);
            case "Na2SO4" -> w.with(Component.NA, 2 * c).with(Component.SO4, c);
            case "K2SO4" -> w.with(Component.K, 2 * c).with(Component.SO4, c);
            case "MgSO4" -> w.with(Component.MG, c).with(Component.SO4, c);
            case "CaSO4" -> w.with(Component.CA, c).with(Component.SO4, c);
            case "NH4Cl" -> w.with(Component.NH4, c).with(Component.CL, c);
            case "(NH4)2SO4" -> w.with(Component.NH4, 2 * c).with(Component.SO4, c);
            case "HNO3" -> w.with(Component.NO3, c);
            case "NaHCO3" -> w.with(Component.NA, c).with(Component.C, c);
            case "KH2PO4" -> w.with(Component.K, c).with(Component.P, c);
            default -> throw new IllegalArgumentException(formula);
        };
    }
}
