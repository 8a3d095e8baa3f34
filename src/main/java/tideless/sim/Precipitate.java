package tideless.sim;

import java.util.Arrays;
import tideless.rig.VesselId;
import tideless.solution.Component;
import tideless.solution.Precipitation;

/** What has precipitated in one vessel; scratch space of one run. */
final class Precipitate {
    /** Fallen in all before it is worth a word, mol/m3: the least a label would print; assumed. */
    private static final double TOLD_FROM_MOL_PER_M3 = 0.05;

    /** mol, in the order of {@link Precipitation#MINERALS}. */
    final double[] mol = new double[Precipitation.MINERALS.size()];

    private final Precipitation rule = new Precipitation();
    private final double[] fallenMolPerM3 = new double[mol.length];
    private final double[] molPerM3 = new double[Component.COUNT];
    private final double[] soundMolPerM3 = new double[Component.COUNT];
    private double soundAtC = Double.NaN;
    private final boolean[] told = new boolean[mol.length];
    private final SaturationTrack track = new SaturationTrack();

    /**
     * Whether enough has changed since it was last settled that something may fall: a guess that
     * costs next to nothing, for every hour of a tray.
     */
    boolean mayFall(
            double[] dissolvedMol, double volumeM3, double carbonDioxideMolPerM3, double tempC) {
        return volumeM3 > 0 && track.isNearer(dissolvedMol, volumeM3, carbonDioxideMolPerM3, tempC);
    }

    /** The same of a tray that was last settled days ago. */
    boolean mayFallAfterDays(
            double[] dissolvedMol, double volumeM3, double carbonDioxideMolPerM3, double tempC) {
        return volumeM3 > 0
                && track.isNearerAfterDays(dissolvedMol, volumeM3, carbonDioxideMolPerM3, tempC);
    }

    /**
     * Lets fall what stands well above saturation, in a tray of which is asked by the hour whether
     * it {@link #mayFall}.
     *
     * @param dissolvedMol changed in place
     */
    void settle(
            double[] dissolvedMol,
            double volumeM3,
            double carbonDioxideMolPerM3,
            double tempC,
            double co2Ppm,
            double atS,
            VesselId vessel,
            EventLog log) {
        settle(dissolvedMol, volumeM3, tempC, co2Ppm, atS, vessel, log);
        if (volumeM3 > 0) {
            track.judged(dissolvedMol, volumeM3, carbonDioxideMolPerM3, tempC, rule.roomIndex());
        }
    }

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
            VesselId vessel,
            EventLog log) {
        if (!(volumeM3 > 0)) {
            return;
        }
        for (int i = 0; i < molPerM3.length; i++) {
            molPerM3[i] = dissolvedMol[i] / volumeM3;
        }
        if (isSoundStill(tempC)) {
            return;
        }
        Arrays.fill(fallenMolPerM3, 0);
        System.arraycopy(molPerM3, 0, soundMolPerM3, 0, molPerM3.length);
        soundAtC = tempC;
        if (!rule.settle(molPerM3, tempC, co2Ppm, fallenMolPerM3)) {
            return;
        }
        soundAtC = Double.NaN;
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
                        new Event(
                                Event.Kind.PRECIPITATE,
                                atS,
                                vessel,
                                0,
                                0,
                                0,
                                Double.NaN,
                                0,
                                Precipitation.MINERALS.get(m).title()));
            }
        }
    }

    // A reservoir under its lid stands as it stood.
    private boolean isSoundStill(double tempC) {
        if (!(Math.abs(tempC - soundAtC) <= SAME_K)) {
            return false;
        }
        for (int i = 0; i < molPerM3.length; i++) {
            if (Math.abs(molPerM3[i] - soundMolPerM3[i]) > SAME_FRAC * soundMolPerM3[i]) {
                return false;
            }
        }
        return true;
    }

    /** Warmth, K, and concentrations that differ by less are not judged anew: 1e-3 of an index. */
    private static final double SAME_K = 0.05;

    private static final double SAME_FRAC = 1e-9;

    private static final int CA = Component.CA.ordinal();

    /** Of one component that has precipitated, mol. */
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
