package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.Key.LEFT_OUT;
import static tideless.scenario.UnitTable.AREA;
import static tideless.scenario.UnitTable.FLOW;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.VOLUME;

import java.time.LocalDate;
import java.util.List;
import tideless.rig.Filling;
import tideless.rig.ValveFaults;

/** A float valve, what ails it and what shuts it. */
final class ValveKeys {
    static final KeyGroup KEYS = new KeyGroup();
    private static final String START = "the start";
    static final Key<String> FROM =
            KEYS.add(
                    Key.text("from")
                            .workedOut("the only reservoir", "shelf")
                            .about("name of the reservoir that feeds it"));
    static final Key<Double> SETTING =
            KEYS.add(
                    Key.quantity("setting", LENGTH)
                            .above("0 cm", "60 cm")
                            .required("5 cm")
                            .about("level above the tray's floor at which it shuts"));
    static final Key<List<Filling.Move>> MOVES =
            KEYS.add(
                    Key.moves("moves")
                            .workedOut("none", "[{ on = 2026-03-20, setting = \"40 mm\" }]")
                            .about(
                                    "later settings by date, each moved to at the hour of visits on that day, or at the next visit where nobody looks then"));
    static final Key<Double> BAND =
            KEYS.add(
                    Key.quantity("band", LENGTH)
                            .above("0 mm", "60 cm")
                            .fallsTo("5 mm", ASSUMED)
                            .about("it is wide open this far below the setting"));
    static final Key<Boolean> SNAP =
            KEYS.add(
                    Key.flag("snap")
                            .fallsTo("false", ASSUMED)
                            .about(
                                    "two states with the band as hysteresis, instead of throttling"));
    static final Key<Double> SEAT =
            KEYS.add(
                    Key.quantity("seat", LENGTH)
                            .from("0.2 mm", "50 mm")
                            .fallsTo("2 mm", COMMON_PRACTICE)
                            .about("bore of the seat"));
    static final Key<Double> DISCHARGE_COEFFICIENT =
            KEYS.add(
                    Key.number("discharge_coefficient")
                            .from("0.1", "1")
                            .fallsTo("0.61", "common practice between 0.60 and 0.62, no source")
                            .about("of the seat"));
    static final Key<Double> SEAT_HEIGHT =
            KEYS.add(
                    Key.quantity("seat_height", LENGTH)
                            .from("0 cm", "1 m")
                            .workedOut("the rim", "7 cm")
                            .about("height at which the feed enters, above the tray's floor"));
    static final Key<Double> BODY =
            KEYS.add(
                    Key.quantity("body", AREA)
                            .above("0 cm2", "1 m2")
                            .optional("30 cm2")
                            .about(
                                    "level section of the valve with its float, which keeps solution out; left out, it takes no room"));
    static final Key<Double> BODY_FROM =
            KEYS.add(
                    Key.quantity("body_from", LENGTH)
                            .from("0 cm", "60 cm")
                            .workedOut("the floor, where body is stated", "2 cm")
                            .about("underside of the valve body above the tray's floor"));
    static final Key<Double> BODY_TO =
            KEYS.add(
                    Key.quantity("body_to", LENGTH)
                            .above("0 cm", "60 cm")
                            .workedOut("the rim, where body is stated", "7 cm")
                            .about("top of the valve body above the tray's floor"));
    static final Key<ValveFaults.Stuck> STUCK =
            KEYS.add(
                    Key.choice(
                                    "stuck",
                                    Spellings.of(
                                            "no",
                                            ValveFaults.Stuck.NOT,
                                            "open",
                                            ValveFaults.Stuck.OPEN,
                                            "shut",
                                            ValveFaults.Stuck.SHUT))
                            .fallsTo("no", LEFT_OUT)
                            .about("where the valve hangs, whatever the level"));
    static final Key<LocalDate> STUCK_FROM =
            KEYS.add(
                    Key.date("stuck_from")
                            .workedOut(START, "2026-04-01")
                            .about("first day it hangs, from 00:00"));
    static final Key<LocalDate> STUCK_TO =
            KEYS.add(
                    Key.date("stuck_to")
                            .workedOut("the end", "2026-04-03")
                            .about("first day it no longer hangs"));
    static final Key<Double> SEEP =
            KEYS.add(
                    Key.quantity("seep", FLOW)
                            .from("0 L/day", "1000 L/day")
                            .fallsTo("0 L/day", LEFT_OUT)
                            .about("what leaks past the seat with the reservoir full"));
    static final Key<LocalDate> SEEP_FROM =
            KEYS.add(
                    Key.date("seep_from")
                            .workedOut(START, "2026-04-01")
                            .about("first day it seeps"));
    static final Key<Double> CLOGGING =
            KEYS.add(
                    Key.share("clogging")
                            .from("0 %", "90 %")
                            .fallsTo("0 %", LEFT_OUT)
                            .about("share of the seat's free area that silts up each day"));
    static final Key<LocalDate> CLOGGING_FROM =
            KEYS.add(
                    Key.date("clogging_from")
                            .workedOut(START, "2026-04-01")
                            .about("first day of clogging"));
    static final Key<Double> FLOAT_VOLUME =
            KEYS.add(
                    Key.quantity("float_volume", VOLUME)
                            .above("0 L", "5 L")
                            .optional("30 mL")
                            .about(
                                    "the whole float; with it the reader checks that the valve can shut against the full reservoir"));
    static final Key<Double> FLOAT_MASS =
            KEYS.add(
                    Key.quantity("float_mass", UnitTable.MASS)
                            .from("0 g", "5 kg")
                            .fallsTo("0 g", LEFT_OUT)
                            .beside(FLOAT_VOLUME)
                            .about("float, and the lever at its own arm"));
    static final Key<Double> FLOAT_LEVER =
            KEYS.add(
                    Key.number("float_lever")
                            .above("0", "100")
                            .fallsTo("1", ASSUMED)
                            .beside(FLOAT_VOLUME)
                            .about("arm of the float over arm of the plug"));
    static final Key<Double> FLOAT_SEAL =
            KEYS.add(
                    Key.number("float_seal")
                            .from("1", "10")
                            .fallsTo("2", "a cautious figure, assumed")
                            .beside(FLOAT_VOLUME)
                            .about(
                                    "force the seal wants over that of the water: 1 ideal, 2 cautious"));

    private ValveKeys() {}
}
