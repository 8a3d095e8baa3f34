package tideless.scenario;

/** The inside of a tray or a reservoir. */
final class VesselKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<String> SHAPE =
            KEYS.add(
                    Key.choice("shape", "box", "cylinder", "tub", "bucket")
                            .workedOut("cylinder where a diameter is stated, else box", "box")
                            .about("tub: a box, bucket: a cylinder, each narrower at the floor"));
    static final Key<Double> LENGTH =
            KEYS.add(
                    Key.quantity("length", UnitTable.LENGTH)
                            .from("1 cm", "100 m")
                            .optional("60 cm")
                            .onlyWith(SHAPE, "box", "tub")
                            .about("inside length at the rim"));
    static final Key<Double> WIDTH =
            KEYS.add(
                    Key.quantity("width", UnitTable.LENGTH)
                            .from("1 cm", "10 m")
                            .optional("35 cm")
                            .onlyWith(SHAPE, "box", "tub")
                            .about("inside width at the rim"));
    static final Key<Double> DIAMETER =
            KEYS.add(
                    Key.quantity("diameter", UnitTable.LENGTH)
                            .from("1 cm", "10 m")
                            .optional("28 cm")
                            .onlyWith(SHAPE, "cylinder", "bucket")
                            .about("inside diameter at the rim"));
    static final Key<Double> FLOOR_LENGTH =
            KEYS.add(
                    Key.quantity("floor_length", UnitTable.LENGTH)
                            .from("1 cm", "100 m")
                            .optional("55 cm")
                            .onlyWith(SHAPE, "tub")
                            .about("inside length at the floor"));
    static final Key<Double> FLOOR_WIDTH =
            KEYS.add(
                    Key.quantity("floor_width", UnitTable.LENGTH)
                            .from("1 cm", "10 m")
                            .optional("30 cm")
                            .onlyWith(SHAPE, "tub")
                            .about("inside width at the floor"));
    static final Key<Double> FLOOR_DIAMETER =
            KEYS.add(
                    Key.quantity("floor_diameter", UnitTable.LENGTH)
                            .from("1 cm", "10 m")
                            .optional("25 cm")
                            .onlyWith(SHAPE, "bucket")
                            .about("inside diameter at the floor"));
    static final Key<Double> VOLUME =
            KEYS.add(
                    Key.quantity("volume", UnitTable.VOLUME)
                            .from("50 mL", "100000 L")
                            .optional("30 L")
                            .onlyWith(SHAPE, "box", "cylinder")
                            .about("inside volume to the rim, with depth instead of the sides"));
    static final Key<Double> FEED_EC =
            KEYS.add(
                    Key.quantity("feed_ec", UnitTable.CONDUCTIVITY)
                            .above("0 mS/cm", "6 mS/cm")
                            .optional("2.2 mS/cm")
                            .about(
                                    "EC at 25 degC of the feed made for it, where it is not that of"
                                            + " [feed]; a tray with a valve has that of its reservoir"));

    private VesselKeys() {}
}
