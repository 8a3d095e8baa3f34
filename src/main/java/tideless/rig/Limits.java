package tideless.rig;

/**
 * Bands a tray's solution must keep.
 *
 * @param ecLowMsPerCm least EC at 25 degC, mS/cm; 0 for none
 * @param ecHighMsPerCm greatest EC at 25 degC, mS/cm
 * @param phLow least pH
 * @param phHigh greatest pH
 * @param sodiumHighMolPerM3 most sodium, mol/m3
 * @param chlorideHighMolPerM3 most chloride, mol/m3
 */
public record Limits(
        double ecLowMsPerCm,
        double ecHighMsPerCm,
        double phLow,
        double phHigh,
        double sodiumHighMolPerM3,
        double chlorideHighMolPerM3) {
    public Limits {
        if (!(ecLowMsPerCm >= 0 && ecHighMsPerCm > ecLowMsPerCm)) {
            throw new IllegalArgumentException(
                    "EC band must rise, was %s to %s".formatted(ecLowMsPerCm, ecHighMsPerCm));
        }
        if (!(phLow > 0 && phHigh > phLow && phHigh < 14)) {
            throw new IllegalArgumentException(
                    "pH band must rise, was %s to %s".formatted(phLow, phHigh));
        }
    }
}
