package tideless.scenario;

import static tideless.scenario.UnitTable.CONDUCTIVITY;

/** Bands a tray must keep. */
final class LimitKeys {
    private static final String CROPS = "the crop's own, else ";
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> EC_LOW =
            KEYS.add(
                    Key.quantity("ec_low", CONDUCTIVITY)
                            .from("0 mS/cm", "10 mS/cm")
                            .workedOut(CROPS + "0 mS/cm", "0.8 mS/cm")
                            .about("least EC at 25 degC"));
    static final Key<Double> EC_HIGH =
            KEYS.add(
                    Key.quantity("ec_high", CONDUCTIVITY)
                            .above("0 mS/cm", "20 mS/cm")
                            .workedOut(CROPS + "4 mS/cm", "2.5 mS/cm")
                            .about("greatest EC at 25 degC"));
    static final Key<Double> PH_LOW =
            KEYS.add(
                    Key.number("ph_low")
                            .from("3", "9")
                            .workedOut(CROPS + "5", "5.5")
                            .about("least pH"));
    static final Key<Double> PH_HIGH =
            KEYS.add(
                    Key.number("ph_high")
                            .from("3", "10")
                            .workedOut(CROPS + "7", "6.5")
                            .about("greatest pH"));
    static final Key<Double> SODIUM_HIGH =
            KEYS.add(
                    Key.quantity("sodium_high", Ion.SODIUM.table())
                            .above("0 mmol/L", "200 mmol/L")
                            .workedOut(CROPS + "10 mmol/L", "5 mmol/L")
                            .about("most sodium"));
    static final Key<Double> CHLORIDE_HIGH =
            KEYS.add(
                    Key.quantity("chloride_high", Ion.CHLORIDE.table())
                            .above("0 mmol/L", "200 mmol/L")
                            .workedOut(CROPS + "10 mmol/L", "5 mmol/L")
                            .about("most chloride"));

    private LimitKeys() {}
}
