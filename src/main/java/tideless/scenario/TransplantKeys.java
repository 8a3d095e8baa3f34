package tideless.scenario;

import static tideless.scenario.UnitTable.AREA;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.MASS;

/** The young plants of a tray as their grower found them. */
final class TransplantKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> LEAVES =
            KEYS.add(
                    Key.number("leaves")
                            .above("0", "200")
                            .optional("4")
                            .about("true leaves of a plant when it is set out"));
    static final Key<Double> LEAF_AREA =
            KEYS.add(
                    Key.quantity("leaf_area", AREA)
                            .above("0 cm2", "10 m2")
                            .optional("600 cm2")
                            .about("its leaf area, one side"));
    static final Key<Double> FRESH =
            KEYS.add(
                    Key.quantity("fresh", MASS)
                            .above("0 g", "10 kg")
                            .optional("30 g")
                            .about("its fresh weight without root and plug"));
    static final Key<Double> HEIGHT =
            KEYS.add(
                    Key.quantity("height", LENGTH)
                            .above("0 cm", "5 m")
                            .optional("20 cm")
                            .about("its height"));
    static final Key<Double> ROOT_LENGTH =
            KEYS.add(
                    Key.quantity("root_length", LENGTH)
                            .from("0 cm", "5 m")
                            .optional("3 cm")
                            .about("its roots below the cup's underside"));

    static final Key<Boolean> ROOTS_HANG =
            KEYS.add(
                    Key.flag("roots_hang")
                            .fallsTo("false", "a plug fills its cell; common practice, no source")
                            .about(
                                    "its roots hung out of plug or damp paper in the nursery and grew"
                                            + " by its warmth, less 4 cm of plug"));

    private TransplantKeys() {}
}
