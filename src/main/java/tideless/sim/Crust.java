package tideless.sim;

import tideless.solution.Component;
import tideless.solution.Precipitation;

/** What has fallen out in one vessel; scratch space of one run. */
final class Crust {
    /** Fallen in all before it is worth a word, mol/m3: the least a label would print; assumed. */
    private static final double TOLD_FROM_MOL_PER_M3 = 0.05;

    /** mol, in the order of {@link Precipitation#MINERALS}. */
    final double[] mol = new double[Precipitation.MINERALS.size()];

    private final Precipitation rule = new Precipitation();
    private final double[] fallenMolPerM3 = new double[mol.length];
    private final double[] molPerM3 = new double[Component.COUNT];
    private final boolean[] told = new boolean[mol.length];

    /**
     * Lets fall what stands well above saturation.
     *
     * @param dissolvedMol changed in place
     */
    void settle(
            double[] dissolvedMol,
            double volumeM3,
            double tempC,
            double co2Ppm,
            double atS,
            String where,
            Happenings log) {
        if (!(volumeM3 > 0)) {
            return;
        }
        for (int i = 0; i < molPerM3.length; i++) {
            molPerM3[i] = dissolvedMol[i] / volumeM3;
        }
        java.util.Arrays.fill(fallenMolPerM3, 0);
        if (!rule.settle(molPerM3, tempC, co2Ppm, fallenMolPerM3)) {
            return;
        }
        for (int m = 0; m < mol.length; m++) {
            double fell = Math.min(fallenMolPerM3[m] * volumeM3, dissolvedMol[CA]);
            Component partner = Precipitation.MINERALS.get(m).partner();
            if (partner != Component.C) {
                fell = Math.min(fell, dissolvedMol[partner.ordinal()]);
                dissolvedMol[partner.ordinal()] -= fell;
            }
            dissolvedMol[CA] -= fell;
            mol[m] += fell;
            if (!told[m] && mol[m] > TOLD_FROM_MOL_PER_M3 * volumeM3) {
                told[m] = true;
                log.add(
                        Event.Kind.PRECIPITATE,
                        atS,
                        where,
                        0,
                        0,
                        Precipitation.MINERALS.get(m).title());
            }
        }
    }

    private static final int CA = Component.CA.ordinal();

    /** Of one component in the crust, mol. */
    double mol(Component component) {
        double sum = 0;
        for (int m = 0; m < mol.length; m++) {
            if (component == Component.CA || component == Precipitation.MINERALS.get(m).partner()) {
                sum += mol[m];
            }
        }
        return sum;
    }
}
