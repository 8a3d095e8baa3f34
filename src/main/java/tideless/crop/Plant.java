package tideless.crop;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * One average plant of a tray.
 *
 * @param thermalTimeCd degree-days above the crop's base since sowing, degC d
 * @param leafDryG dry mass of standing leaf blades, g
 * @param stemDryG dry mass of standing stem and petiole, g
 * @param fruitDryG dry mass of fruit, picked or not, g
 * @param rootDryG dry mass of root, g
 * @param rootLengthM length of the leading roots below the cup's underside, m
 * @param pickedLeafDryG dry mass of leaf blades that were picked off, g
 * @param pickedStemDryG dry mass of the stalks that went with them, g
 * @param isTopped whether its growing points were taken out
 * @param leafSpreadFrac leaf area over what the same leaf mass has where it grew in the light of
 *     the crops' nurseries, above 0: thinner leaves in dull light, thicker ones in bright
 * @param setFrac share of the flowers of the fruit that grows now that did set, 0-1; of a leaf crop
 *     1
 */
@RecordBuilder
public record Plant(
        double thermalTimeCd,
        double leafDryG,
        double stemDryG,
        double fruitDryG,
        double rootDryG,
        double rootLengthM,
        double pickedLeafDryG,
        double pickedStemDryG,
        boolean isTopped,
        double leafSpreadFrac,
        double setFrac)
        implements PlantBuilder.With {

    /** A plant that nobody has picked leaves from nor topped, raised in a nursery's light. */
    public Plant(
            double thermalTimeCd,
            double leafDryG,
            double stemDryG,
            double fruitDryG,
            double rootDryG,
            double rootLengthM) {
        this(
                thermalTimeCd,
                leafDryG,
                stemDryG,
                fruitDryG,
                rootDryG,
                rootLengthM,
                0,
                0,
                false,
                1,
                1);
    }

    /** The same plant after growth. */
    Plant grown(
            double thenCd, double leafG, double stemG, double fruitG, double rootG, double rootM) {
        return new Plant(
                thenCd,
                leafG,
                stemG,
                fruitG,
                rootG,
                rootM,
                pickedLeafDryG,
                pickedStemDryG,
                isTopped,
                leafSpreadFrac,
                setFrac);
    }

    /** The same without growing points. */
    public Plant topped() {
        return withIsTopped(true);
    }

    /**
     * The same after leaves were taken off.
     *
     * @param leafFrac share of the standing leaf, 0-1
     * @param stemFrac share of the standing stem, 0-1
     */
    public Plant picked(double leafFrac, double stemFrac) {
        return withLeafDryG(leafDryG * (1 - leafFrac))
                .withStemDryG(stemDryG * (1 - stemFrac))
                .withPickedLeafDryG(pickedLeafDryG + leafDryG * leafFrac)
                .withPickedStemDryG(pickedStemDryG + stemDryG * stemFrac);
    }

    /** Dry mass of all leaf blades it ever grew, g. */
    public double everGrownLeafDryG() {
        return leafDryG + pickedLeafDryG;
    }

    /** Whole dry mass, picked leaves left out, g. */
    public double dryG() {
        return leafDryG + stemDryG + fruitDryG + rootDryG;
    }
}
