package tideless.scenario;

import tideless.rig.Correction;

/** The keys of a file of corrections, as {@code fit} writes it. */
final class CorrectionKeys {
    static final KeyGroup FACTOR = new KeyGroup();
    static final Key<Double> TIMES =
            FACTOR.add(
                    Key.number("times")
                            .from("0.05", "20")
                            .fallsTo("1", Key.LEFT_OUT)
                            .about("how many times what was stated"));
    static final Key<Double> LEFT = FACTOR.add(left());

    static final KeyGroup VALVE = new KeyGroup();
    static final Key<Double> HIGHER =
            VALVE.add(
                    Key.quantity("higher", UnitTable.LENGTH)
                            .from("-10 cm", "10 cm")
                            .fallsTo("0 mm", Key.LEFT_OUT)
                            .about("how much higher the valve shuts than stated"));
    static final Key<Double> VALVE_LEFT = VALVE.add(left());

    static final KeyGroup LEAK = new KeyGroup();
    static final Key<Double> LOSES =
            LEAK.add(
                    Key.quantity("loses", UnitTable.FLOW)
                            .from("0 L/day", "100 L/day")
                            .fallsTo("0 L/day", Key.LEFT_OUT)
                            .about("what runs out where nothing drinks it"));
    static final Key<Double> LEAK_LEFT = LEAK.add(left());

    static final KeyTable TABLE =
            new KeyTable()
                    .at("crop.*." + Correction.THIRST, FACTOR)
                    .at("crop.*." + Correction.GROWTH, FACTOR)
                    .at("crop.*." + Correction.UPTAKE, FACTOR)
                    .at("crop.*." + Correction.SIZE, FACTOR)
                    .at(Correction.FEED, FACTOR)
                    .at(Correction.GAPS, FACTOR)
                    .at(Correction.METER, FACTOR)
                    .at("tray.*." + Correction.VALVE, VALVE)
                    .at("reservoir.*." + Correction.LITRES, FACTOR)
                    .at("reservoir.*." + Correction.LEAK, LEAK);

    private CorrectionKeys() {}

    private static Key<Double> left() {
        return Key.share("doubt_left")
                .from("0 %", "100 %")
                .fallsTo("100 %", Key.LEFT_OUT)
                .about("share of the doubt before the readings that is left");
    }
}
