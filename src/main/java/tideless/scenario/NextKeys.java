package tideless.scenario;

import static tideless.scenario.UnitTable.LENGTH;

import java.time.LocalDate;

/** A crop that follows another in the same tray, beside what every crop has. */
final class NextKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<LocalDate> PLANTED =
            KEYS.add(
                    Key.date("planted")
                            .optional("2026-04-13")
                            .about(
                                    "day at whose visit it is set out; what stands there by then makes room, and before it the tray is empty; left out, at the visit at which the crop before is cut"));
    static final Key<Boolean> FRESH =
            KEYS.add(
                    Key.flag("fresh")
                            .fallsTo("true", Key.COMMON_PRACTICE)
                            .about(
                                    "the tray is emptied, cleaned and filled with fresh feed first; false: what it holds stays, and is topped up with feed"));
    static final Key<Double> START_LEVEL =
            KEYS.add(
                    Key.quantity("start_level", LENGTH)
                            .from("0 cm", "60 cm")
                            .workedOut("the tray's own", "6 cm")
                            .about("level it is filled or topped up to when it is set out"));

    private NextKeys() {}
}
