package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.UnitTable.AREA;
import static tideless.scenario.UnitTable.DURATION;
import static tideless.scenario.UnitTable.FLOW;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.SHARE;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import tideless.rig.Planting;

/** A tray beside its inside and how it is filled. */
final class TrayKeys {
    static final KeyGroup KEYS = new KeyGroup();

    /** Those of a crop, which a crop that follows in the tray has too. */
    static final KeyGroup CROP_KEYS = new KeyGroup();

    /** Of {@link #HARVEST}: the whole plant when it is ready. */
    static final String ONCE = "once";

    /** Of {@link #HARVEST}: leaves from then on. */
    static final String PICKED = "picked";

    static final Key<Double> DEPTH =
            KEYS.add(
                    Key.quantity("depth", LENGTH)
                            .from("5 mm", "60 cm")
                            .required("8 cm")
                            .about("inside depth from the floor to the rim"));
    static final Key<Double> OVERFLOW =
            KEYS.add(
                    Key.quantity("overflow", LENGTH)
                            .above("0 cm", "60 cm")
                            .workedOut("the rim", "7 cm")
                            .about("level at which solution runs out"));
    static final Key<Double> OVERFLOW_BORE =
            KEYS.add(
                    Key.quantity("overflow_bore", LENGTH)
                            .from("2 mm", "20 cm")
                            .optional("16 mm")
                            .about(
                                    "bore of the hole whose lower edge, or of the standpipe whose mouth, is the overflow; with it check tells whether it carries a stuck valve"));
    static final Key<Double> CUP_BOTTOM =
            KEYS.add(
                    Key.quantity("cup_bottom", LENGTH)
                            .from("0 cm", "60 cm")
                            .workedOut("5 cm below the rim", "3 cm")
                            .about("underside of the net cups above the floor"));
    static final Key<Double> CUP_SOLID =
            KEYS.add(
                    Key.quantity("cup_solid", AREA)
                            .above("0 cm2", "1 m2")
                            .optional("12 cm2")
                            .about(
                                    "level section of one cup that keeps solution out, from cup_bottom to the deck: plastic and medium without the pores that fill; left out, cups take no room"));
    static final Key<Integer> CUPS =
            KEYS.add(
                    Key.count("cups")
                            .from("0", "100000")
                            .workedOut("as many as plants", "8")
                            .about("how many such cups hang in it, planted or not"));
    static final Key<Double> FLOOR_ABOVE_BENCH =
            KEYS.add(
                    Key.quantity("floor_above_bench", LENGTH)
                            .from("-1 m", "10 m")
                            .fallsTo("0 cm", ASSUMED)
                            .about("its floor above the bench"));
    static final Key<Measure> GAP =
            KEYS.add(
                    Key.measure("gap", SHARE, AREA)
                            .from("0 %", "100 %")
                            .fallsTo("2 %", ASSUMED)
                            .about(
                                    "water surface open to the air: a share of the deck, or an area"));
    static final Key<Double> FLOATS_DOWN_TO =
            KEYS.add(
                    Key.quantity("deck_floats_down_to", LENGTH)
                            .from("0 cm", "60 cm")
                            .optional("5 cm")
                            .about(
                                    "level down to which the deck floats with its cups; it rests there below that; left out, it lies on the rim"));
    static final Key<Double> CUP_WATER =
            KEYS.add(
                    Key.quantity("cup_water", UnitTable.VOLUME)
                            .from("0 mL", "1 L")
                            .workedOut("the crop's plug, for ten days after it is set out", "20 mL")
                            .about(
                                    "water the plug and filling of one cup can give a plant whose roots are all dry"));
    static final Key<Double> SOLUTION_CO2 =
            KEYS.add(
                    Key.quantity("solution_co2", UnitTable.MIXING_RATIO)
                            .from("150 ppm", "100000 ppm")
                            .optional("4000 ppm")
                            .about(
                                    "carbon dioxide the solution stands with, where it was measured; left out, worked out from the oxygen the roots take"));
    static final Key<Boolean> DROWNING_KILLS =
            KEYS.add(
                    Key.flag("drowning_kills")
                            .fallsTo("false", ASSUMED)
                            .about(
                                    "plants without a root in air are lost after the crop's days; left out, they only grow less"));
    static final Key<Boolean> AERATED =
            KEYS.add(
                    Key.flag("aerated")
                            .fallsTo("false", "what a tray without a pump is")
                            .about(
                                    "the solution is kept at the oxygen of the air, by an air stone or by a drained slab that is watered many times a day; left out, it is what surface and roots make of it, and a grown crop that uses it up drinks some 10 to 20 % less"));
    static final Key<Double> START_LEVEL =
            KEYS.add(
                    Key.quantity("start_level", LENGTH)
                            .from("0 cm", "60 cm")
                            .workedOut(
                                    "the valve's setting, the level topped up to where it wets the cups, else 1.3 cm above the cups' underside",
                                    "6 cm")
                            .about("level when the run starts, of fresh feed"));
    static final Key<String> CROP =
            ofCrop(
                    Key.text("crop")
                            .optional("basil")
                            .about("a crop of the library; or crop_file, thirst or thirst_file"));
    static final Key<String> CROP_FILE =
            ofCrop(
                    Key.file("crop_file")
                            .optional("my-basil.toml")
                            .about("a crop file of your own"));
    static final Key<Double> THIRST =
            KEYS.add(
                    Key.quantity("thirst", FLOW)
                            .from("0 L/day", "1000 L/day")
                            .optional("1.8 L/day")
                            .about("measured use of the whole tray"));
    static final Key<String> THIRST_FILE =
            KEYS.add(
                    Key.file("thirst_file")
                            .optional("thirst.csv")
                            .about(
                                    "measured use: a row of names (time, thirst) and a row of units"
                                            + " (local or days, L/day); rows a day or less apart are"
                                            + " each drunk until the next, others joined by straight"
                                            + " lines"));
    static final Key<Integer> PLANTS =
            ofCrop(
                    Key.count("plants")
                            .from("0", "100000")
                            .workedOut("needed with a crop unless a density is stated, else 0", "6")
                            .about("how many plants hang in it"));
    static final Key<Double> PLANTS_PER_M2 =
            ofCrop(
                    Key.number("plants_per_m2")
                            .above("0", "10000")
                            .optional("20")
                            .about(
                                    "density over the floor the canopy may spread over: with plants it gives ground, with ground plants"));
    static final Key<Double> STEMS_PER_M2 =
            ofCrop(
                    Key.number("stems_per_m2")
                            .above("0", "10000")
                            .optional("3.6")
                            .about("the same by stems, in place of plants_per_m2"));
    static final Key<Integer> STEMS =
            ofCrop(
                    Key.count("stems")
                            .from("1", "8")
                            .workedOut("1", "2")
                            .about(
                                    "stems a plant of a fruit crop is led up on; each spreads over as much ground as a plant"));
    static final Key<List<DatedNumber>> RESPACING =
            ofCrop(
                    Key.datedNumbers(
                                    "respacing",
                                    "plants_per_m2",
                                    "[{ from = 2026-03-16, plants_per_m2 = 14 }]")
                            .about(
                                    "density from a day on, the same plants moved apart or together"));
    static final Key<List<DatedNumber>> THINNING =
            ofCrop(
                    Key.datedNumbers("thinning", "plants", "[{ from = 2026-03-16, plants = 4 }]")
                            .about(
                                    "plants left from a day on, on the ground of all; the others are taken out"));
    static final Key<LocalDate> TOPPED =
            ofCrop(
                    Key.date("topped")
                            .optional("2026-08-20")
                            .about(
                                    "day on which the growing points of a fruit crop are taken out: all growth goes to fruit, and the crop ends when the last is ripe"));
    static final Key<LocalDate> SOWN =
            ofCrop(Key.date("sown").optional("2026-02-16").about("the day they were sown"));
    static final Key<Double> NURSERY_AGE =
            ofCrop(
                    Key.quantity("nursery_age", DURATION)
                            .from("0 days", "365 days")
                            .workedOut("the crop's usual, unless sown is stated", "14 days")
                            .about("days since sowing when they are set out"));
    static final Key<Double> GROUND =
            ofCrop(
                    Key.quantity("ground", AREA)
                            .above("0 cm2", "1000 m2")
                            .workedOut("the deck", "0.4 m2")
                            .about("floor the canopy may spread over; at least the deck"));
    static final Key<Planting.ThirstModel> THIRST_MODEL =
            ofCrop(
                    Key.choice(
                                    "thirst_model",
                                    Spellings.of(Planting.ThirstModel.values(), TrayKeys::spelling))
                            .fallsTo("combined", ASSUMED)
                            .about(
                                    "which transpiration model drives its thirst; combined: penman-monteith in the open, its mean with radiation"
                                            + " for fruit crops in a house's sun, canopy under lamps and for leaf crops under a roof"));
    static final Key<String> HARVEST =
            ofCrop(
                    Key.choice("harvest", ONCE, PICKED)
                            .workedOut(
                                    "once where harvest_after or harvest_weight is stated or a crop without a day follows, else as the crop is used",
                                    ONCE)
                            .about(
                                    "of a leaf crop: once, the whole plant is cut when it is ready; picked, leaves are taken from then on and the plants stand on"));
    static final Key<Double> HARVEST_AFTER =
            ofCrop(
                    Key.quantity("harvest_after", DURATION)
                            .from("0 days", "1100 days")
                            .workedOut("when the crop is ripe", "42 days")
                            .about(
                                    "days after it is set out from which it is ready to be cut, which is done at the next visit"));
    static final Key<Double> HARVEST_WEIGHT =
            ofCrop(
                    Key.quantity("harvest_weight", UnitTable.MASS)
                            .above("0 g", "20 kg")
                            .workedOut("the crop's own", "180 g")
                            .about(
                                    "fresh weight of a plant at which a leaf crop is cut, or picked for the first time"));
    static final Key<String> FILLING =
            KEYS.add(
                    Key.choice("filling", "valve", "hand", "sealed")
                            .workedOut(
                                    "what [tray.NAME.valve] or [tray.NAME.hand] says, else sealed",
                                    "valve")
                            .about("how it gets its solution"));

    private static <T> Key<T> ofCrop(Key<T> key) {
        CROP_KEYS.add(key);
        return KEYS.add(key);
    }

    private static String spelling(Planting.ThirstModel model) {
        return model.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private TrayKeys() {}
}
