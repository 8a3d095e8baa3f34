package tideless.solution;

import java.util.Optional;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Water to add when a reading came out too strong.
 *
 * @param addL litres of water to pour in
 * @param takeOutL litres of solution to take out first, 0 where the vessel has room
 * @param volumeL litres afterwards
 * @param stepRuleL what the straight-line rule V (EC - target)/(target - EC of water) says, no
 *     vessel limit: it falls short, for EC bends on dilution
 * @param before the solution as the reading says it is
 * @param after the mix
 * @param ecMsPerCm what it will read at 25 degC
 */
record Dilution(
        double addL,
        double takeOutL,
        double volumeL,
        double stepRuleL,
        Composition before,
        Composition after,
        double ecMsPerCm) {

    /**
     * Water that brings a solution to a target EC. Ions mix in a straight line; EC is worked out
     * from the mixed ions.
     *
     * @param before its own ions, mol/m3
     * @param volumeL litres there are
     * @param vesselL litres the vessel holds, at least {@code volumeL}
     * @param water poured in
     * @param targetMsPerCm at 25 degC
     * @return empty where the water itself reads the target or more
     */
    public static Optional<Dilution> toEc(
            Composition before,
            double volumeL,
            double vesselL,
            Composition water,
            double targetMsPerCm) {
        if (!(volumeL > 0 && vesselL >= volumeL)) {
            throw new IllegalArgumentException(
                    "needs 0 < volumeL <= vesselL, had %s and %s".formatted(volumeL, vesselL));
        }
        double ec = ElectricalConductivity.at25MsPerCm(before);
        double waterEc = ElectricalConductivity.at25MsPerCm(water);
        if (ec <= targetMsPerCm) {
            return Optional.of(new Dilution(0, 0, volumeL, 0, before, before, ec));
        }
        if (waterEc >= targetMsPerCm) {
            return Optional.empty();
        }
        double waterFrac =
                new BrentSolver(1e-13, 1e-13)
                        .solve(
                                200,
                                w ->
                                        ElectricalConductivity.at25MsPerCm(mixed(before, water, w))
                                                - targetMsPerCm,
                                0,
                                1);
        Composition after = mixed(before, water, waterFrac);
        double wholeL = volumeL / (1 - waterFrac);
        double takeOutL = 0;
        if (wholeL > vesselL) {
            wholeL = vesselL;
            takeOutL = volumeL - (1 - waterFrac) * vesselL;
        }
        return Optional.of(
                new Dilution(
                        waterFrac * wholeL,
                        takeOutL,
                        wholeL,
                        volumeL * (ec - targetMsPerCm) / (targetMsPerCm - waterEc),
                        before,
                        after,
                        ElectricalConductivity.at25MsPerCm(after)));
    }

    private static Composition mixed(Composition one, Composition other, double otherFrac) {
        return one.times(1 - otherFrac).plus(other.times(otherFrac));
    }
}
