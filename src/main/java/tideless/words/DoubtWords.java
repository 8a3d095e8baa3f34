package tideless.words;

import java.util.ArrayList;
import java.util.List;
import tideless.crop.CropTraits;
import tideless.crop.ThirstDoubt;
import tideless.crop.TwoForms;

/** How far a forecast of thirst may lie off, in words. */
public final class DoubtWords {
    /** Leaf area index of a grown stand. */
    private static final double GROWN = 3;

    private DoubtWords() {}

    /**
     * The doubt as figures, in lines.
     *
     * @param isLittleKnown whether its stand is little known at any age: under lamps alone, and in
     *     the open
     */
    public static List<String> of(CropTraits crop, boolean isLittleKnown) {
        ThirstDoubt grown = ThirstDoubt.of(crop, isLittleKnown ? 0 : 1, GROWN);
        ThirstDoubt young = ThirstDoubt.of(crop, 0, 0);
        String also =
                grown.stand() == young.stand()
                        ? ""
                        : " (" + two(young.stand()) + " under lamps, in the open and while young)";
        return List.of(
                "between stands "
                        + two(grown.stand())
                        + also
                        + ", week to week "
                        + two(grown.week()),
                "day to day "
                        + two(grown.day())
                        + "; "
                        + two(grown.fitted())
                        + " between stands once a fortnight of readings has been fitted");
    }

    /** What two models that nothing decides between make of the crop, in lines. */
    public static List<String> ofForms(CropTraits crop) {
        List<String> lines = new ArrayList<>();
        TwoForms lamps = TwoForms.underLamps(crop);
        lines.add(
                "under lamps, 11.5 mol/m2 in 16 hours: canopy "
                        + litres(lamps.firstKgPerM2())
                        + ", penman-monteith "
                        + litres(lamps.secondKgPerM2()));
        if (crop.stages().fruits()) {
            TwoForms sun = TwoForms.inASunlitHouse(crop);
            lines.add(
                    "in a house, 8 MJ/m2 of sun: penman-monteith "
                            + litres(sun.firstKgPerM2())
                            + ", radiation "
                            + litres(sun.secondKgPerM2()));
        }
        return lines;
    }

    private static String litres(double kgPerM2) {
        return Numbers.one(kgPerM2) + " L/m2";
    }

    private static String two(double value) {
        return Numbers.two(value);
    }
}
