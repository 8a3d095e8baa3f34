package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.UnitTable.LENGTH;

import java.time.LocalDate;
import java.util.List;
import tideless.rig.Pouring;

/** Topping up by hand. */
final class HandKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> TO =
            KEYS.add(
                    Key.quantity("to", LENGTH)
                            .above("0 cm", "60 cm")
                            .required("5 cm")
                            .about("level it is topped up to"));
    static final Key<List<LocalDate>> DAYS =
            KEYS.add(
                    Key.dates("days")
                            .workedOut("every visit", "[2026-03-09, 2026-03-16]")
                            .about("days it is topped up"));
    static final Key<String> WITH =
            KEYS.add(
                    Key.choice("with", "solution", "water")
                            .fallsTo("solution", COMMON_PRACTICE)
                            .about("topped up with feed or with source water"));

    static final Key<List<Pouring.Dose>> WATER =
            KEYS.add(
                    Key.doses("water")
                            .workedOut("none", "[{ from = 2026-04-01, volume = \"2 L\" }]")
                            .about(
                                    "so much source water in place of feed, in the top-ups from that day on"));

    static final Key<List<DatedShare>> WATER_SHARE =
            KEYS.add(
                    Key.strengths("water_share")
                            .workedOut("none", "[{ from = 2026-04-01, share = \"50 %\" }]")
                            .about(
                                    "share of source water in each top-up from that day on, once no litres of"
                                            + " water are due"));

    static final Key<Boolean> IN_STEPS =
            KEYS.add(
                    Key.flag("in_steps")
                            .fallsTo("false", ASSUMED)
                            .about(
                                    "topped up no higher at once than roots in air bear, so that a tray"
                                            + " which fell far is raised visit by visit; false: to its"
                                            + " level, and they may drown"));

    private HandKeys() {}
}
