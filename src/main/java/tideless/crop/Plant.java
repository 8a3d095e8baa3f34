package tideless.crop;

/**
 * One average plant of a tray.
 *
 * @param thermalTimeCd degree-days above the crop's base since sowing, degC d
 * @param leafDryG dry mass of leaf blades, g
 * @param stemDryG dry mass of stem and petiole, g
 * @param fruitDryG dry mass of fruit, picked or not, g
 * @param rootDryG dry mass of root, g
 * @param rootLengthM length of the leading roots below the cup's underside, m
 */
public record Plant(
        double thermalTimeCd,
        double leafDryG,
        double stemDryG,
        double fruitDryG,
        double rootDryG,
        double rootLengthM) {

    /** The same with other roots. */
    Plant withRootLengthM(double other) {
        return new Plant(thermalTimeCd, leafDryG, stemDryG, fruitDryG, rootDryG, other);
    }

    /** Whole dry mass, g. */
    public double dryG() {
        return leafDryG + stemDryG + fruitDryG + rootDryG;
    }
}
