package tideless.study;

import java.util.List;
import java.util.stream.IntStream;
import tideless.crop.CropTraits;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.MolarMass;

/**
 * An end of what a crop's tissue may hold: the one that leaves its solution most acid, or most
 * base.
 *
 * <p>Roots that take more anions than cations pay with base, others with acid. What a gram of
 * growth leaves is a sum over its contents, each known within the range of the crop's file, taken
 * for its 5 to 95 %. With contents that err independently the sum has its own 5 and 95 % where each
 * content has gone its share of the way to its end: its part of the charge over the root of the sum
 * of all parts squared. All of them at their ends at once is not plausible, and starves the plant.
 * Leaf and fruit err alike; assumed.
 */
enum ContentsEnd {
    /** Little nitrate, much potassium, calcium and magnesium. */
    ACID,
    /** The other way round. */
    BASE;

    /** Keys of the contents in a crop's file, in the order of {@link #charges}. */
    private static final List<String> KEYS =
            List.of("nitrogen", "phosphorus", "potassium", "calcium", "magnesium", "sulfur");

    /**
     * Base left behind for each gram taken, mol charge/g: nitrogen as the feed has it, phosphate as
     * H2PO4-.
     */
    private static double[] charges(Composition feed) {
        double ammonium = feed.molPerM3(Component.NH4);
        double nitrogen = ammonium + feed.molPerM3(Component.NO3);
        double ammoniumFrac = nitrogen > 0 ? ammonium / nitrogen : 0;
        return new double[] {
            (1 - 2 * ammoniumFrac) / MolarMass.N,
            1 / MolarMass.P,
            -1 / Component.K.gramsPerMol(),
            -2 / Component.CA.gramsPerMol(),
            -2 / Component.MG.gramsPerMol(),
            2 / MolarMass.S
        };
    }

    /** Whether a scenario has a crop whose contents can be moved at all. */
    static boolean matters(Scenario scenario) {
        return scenario.trays().stream()
                .flatMap(tray -> IntStream.range(0, tray.plantings()).mapToObj(tray::planted))
                .anyMatch(
                        tray ->
                                tray.planting() instanceof Planting.OfCrop crop
                                        && !ACID.of(
                                                        crop.traits(),
                                                        scenario.feedOf(tray).composition())
                                                .nutrition()
                                                .equals(crop.traits().nutrition()));
    }

    /** The same rig with all its crops at this end. */
    Scenario of(Scenario scenario) {
        return scenario.withTrays(
                scenario.trays().stream()
                        .map(tray -> of(tray, scenario.feedOf(tray).composition()))
                        .toList());
    }

    private Tray of(Tray tray, Composition feed) {
        return tray.withCrops(crop -> crop.withTraits(of(crop.traits(), feed)));
    }

    /**
     * A crop at this end.
     *
     * @param feed whose nitrogen it takes
     */
    CropTraits of(CropTraits traits, Composition feed) {
        double[] charges = charges(feed);
        CropTraits.Nutrition nutrition = traits.nutrition();
        CropTraits.Contents leaf = moved(traits, "leaf", nutrition.leaf(), charges);
        return traits.withContents(
                leaf,
                traits.stages().fruits()
                        ? moved(traits, "fruit", nutrition.fruit(), charges)
                        : leaf);
    }

    private CropTraits.Contents moved(
            CropTraits traits, String part, CropTraits.Contents contents, double[] charges) {
        double[] held = {
            contents.nitrogen(),
            contents.phosphorus(),
            contents.potassium(),
            contents.calcium(),
            contents.magnesium(),
            contents.sulfur()
        };
        double[] toEnd = new double[held.length];
        double squares = 0;
        for (int i = 0; i < held.length; i++) {
            Plausible range = Plausible.of(traits, "nutrition." + part + "." + KEYS.get(i));
            boolean up = (charges[i] > 0) == (this == BASE);
            toEnd[i] = held[i] * ((up ? range.mostFrac() : range.leastFrac()) - 1);
            squares += charges[i] * charges[i] * toEnd[i] * toEnd[i];
        }
        double all = Math.sqrt(squares);
        for (int i = 0; i < held.length && all > 0; i++) {
            held[i] += Math.abs(charges[i] * toEnd[i]) / all * toEnd[i];
        }
        return new CropTraits.Contents(held[0], held[1], held[2], held[3], held[4], held[5]);
    }
}
