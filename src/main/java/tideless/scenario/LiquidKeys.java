package tideless.scenario;

import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.Key.LEFT_OUT;
import static tideless.scenario.UnitTable.CONDUCTIVITY;

import java.util.EnumMap;
import java.util.Map;

/** The source water and the feed. */
final class LiquidKeys {
    private LiquidKeys() {}

    static final KeyGroup WATER = new KeyGroup();
    static final Key<String> SOURCE =
            WATER.add(
                    Key.choice("source", Solutions.CURRENT.waters())
                            .workedOut("soft-tap, unless an analysis is stated", "soft-tap")
                            .about(
                                    "source water by name; or state what a meter reads in it, or"
                                            + " [water.analysis]"));
    static final Key<Double> WATER_EC =
            WATER.add(
                    Key.quantity("ec", CONDUCTIVITY)
                            .from("0.01 mS/cm", "1.2 mS/cm")
                            .optional("0.3 mS/cm")
                            .about(
                                    "what a meter reads in tap water of which nothing else is known:"
                                            + " one between the named waters is taken; in place of"
                                            + " source"));
    static final Key<Double> RAIN_SHARE =
            WATER.add(
                    Key.share("rain_share")
                            .from("0 %", "100 %")
                            .fallsTo("0 %", LEFT_OUT)
                            .about("share of rain (or reverse-osmosis) water mixed into it"));

    static final KeyGroup FEED = new KeyGroup();
    static final Key<String> RECIPE =
            FEED.add(
                    Key.choice("recipe", Solutions.CURRENT.recipes())
                            .optional("hoagland-1")
                            .about("published recipe; or state [feed.analysis]"));
    static final Key<Double> EC =
            FEED.add(
                    Key.quantity("ec", CONDUCTIVITY)
                            .above("0 mS/cm", "6 mS/cm")
                            .workedOut(
                                    "the middle of what its crops are fed, else the recipe's"
                                            + " published EC or what the bottles' labels say",
                                    "1.6 mS/cm")
                            .about("EC at 25 degC the feed is made up to"));
    static final Key<Double> PH =
            FEED.add(
                    Key.number("ph")
                            .from("4", "8")
                            .fallsTo("5.8", COMMON_PRACTICE)
                            .about("pH it is brought to"));
    static final Key<String> ACID =
            FEED.add(
                    Key.choice("acid", Solutions.ACIDS)
                            .fallsTo(
                                    "phosphoric",
                                    "anybody may own it up to 30 %; no more than brings 1 mmol/L"
                                            + " of phosphate, a full feed's worth")
                            .about(
                                    "acid that brings the pH down, nitric for trained staff only;"
                                            + " acid into water, gloves, goggles"));

    static final Key<String> RATIO =
            FEED.add(
                    Key.text("ratio")
                            .optional("1:300")
                            .about(
                                    "of two bottles: 1 of each part to so much water, as their label"
                                            + " says; with [feed.part_a] and [feed.part_b]"));

    static final Key<Boolean> BOUGHT =
            FEED.add(
                    Key.flag("bought")
                            .fallsTo("false", LEFT_OUT)
                            .about(
                                    "the recipe stands for bottles or a powder bought ready, whose label is"
                                            + " not at hand: no salts are weighed for it"));

    static final Bottle PART_A = new Bottle("the bottle with the calcium");
    static final Bottle PART_B = new Bottle("the other bottle");

    /** One of two bottles. */
    static final class Bottle {
        final KeyGroup keys = new KeyGroup();
        final Key<String> label;

        private Bottle(String what) {
            label =
                    keys.add(
                            Key.text("label")
                                    .optional("NO3-N 2.58 %, CaO 4.06 %, density 1.1 kg/L")
                                    .about("label of " + what + ", in per cent of mass"));
        }
    }

    static final Analysis WATER_ANALYSIS = new Analysis("of the source water; 0 when not stated");
    static final Analysis FEED_ANALYSIS = new Analysis("of the finished feed; 0 when not stated");

    /** The ions of one liquid. */
    static final class Analysis {
        final KeyGroup keys = new KeyGroup();
        private final Map<Ion, Key<Double>> byIon = new EnumMap<>(Ion.class);

        private Analysis(String about) {
            for (Ion ion : Ion.values()) {
                byIon.put(
                        ion,
                        keys.add(
                                Key.quantity(ion.spelling(), ion.table(), ion.equivalents())
                                        .from("0 mmol/L", "100 mmol/L")
                                        .optional("0.5 mmol/L")
                                        .about(ion.spelling() + " " + about)));
            }
        }

        Key<Double> of(Ion ion) {
            return byIon.get(ion);
        }
    }
}
