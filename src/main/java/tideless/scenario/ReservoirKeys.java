package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.UnitTable.LENGTH;
import static tideless.scenario.UnitTable.SHARE;
import static tideless.scenario.UnitTable.VOLUME;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;

/** A reservoir beside its inside. */
final class ReservoirKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> DEPTH =
            KEYS.add(
                    Key.quantity("depth", LENGTH)
                            .from("5 mm", "5 m")
                            .required("30 cm")
                            .about("inside depth from the floor to the rim"));
    static final Key<Double> FULL_LEVEL =
            KEYS.add(
                    Key.quantity("full_level", LENGTH)
                            .above("0 cm", "5 m")
                            .workedOut("the rim", "30 cm")
                            .about("level above its floor when full"));
    static final Key<Double> OUTLET_HEIGHT =
            KEYS.add(
                    Key.quantity("outlet_height", LENGTH)
                            .from("0 cm", "5 m")
                            .fallsTo("1 cm", ASSUMED)
                            .about("outlet above its floor; what lies below never leaves"));
    static final Key<Double> FLOOR_ABOVE_BENCH =
            KEYS.add(
                    Key.quantity("floor_above_bench", LENGTH)
                            .from("-1 m", "10 m")
                            .required("40 cm")
                            .about("its floor above the bench the trays stand on"));
    static final Key<Boolean> LID =
            KEYS.add(
                    Key.flag("lid")
                            .fallsTo("true", COMMON_PRACTICE)
                            .about("whether it is covered"));
    static final Key<Measure> START =
            KEYS.add(
                    Key.measure("start", LENGTH, SHARE, VOLUME)
                            .from("0 cm", "5 m")
                            .workedOut("full", "80 %")
                            .about(
                                    "what is in it at the start: a level, a share of full or a volume"));
    static final Key<Reservoir.Refill.When> REFILL =
            KEYS.add(
                    Key.choice("refill", refills())
                            .fallsTo("when it would not last", COMMON_PRACTICE)
                            .about(
                                    "at which visits it is refilled, always to full; left out: when it"
                                            + " would not last to the next visit, and before an"
                                            + " absence"));
    static final Key<Double> REFILL_BELOW =
            KEYS.add(
                    Key.share("refill_below")
                            .above("0 %", "100 %")
                            .fallsTo("50 %", ASSUMED)
                            .onlyWith(REFILL, "when low at a visit")
                            .about("low means less than this share of the usable volume"));

    static final Key<String> WITH =
            KEYS.add(
                    Key.choice("with", "solution", "water")
                            .fallsTo("solution", COMMON_PRACTICE)
                            .about(
                                    "refilled with feed or with source water; its first filling is feed"));
    static final Key<List<Pouring.Dose>> WATER =
            KEYS.add(
                    Key.doses("water")
                            .workedOut("none", "[{ from = 2026-04-01, volume = \"5 L\" }]")
                            .about(
                                    "so much source water in place of feed, in the refills from that day on"));

    static final Key<List<DatedShare>> WATER_SHARE =
            KEYS.add(
                    Key.strengths("water_share")
                            .workedOut("none", "[{ from = 2026-04-01, share = \"50 %\" }]")
                            .about(
                                    "share of source water in each refill from that day on, once no litres of"
                                            + " water are due"));

    private static Map<String, Reservoir.Refill.When> refills() {
        Map<String, Reservoir.Refill.When> meanings = new LinkedHashMap<>();
        meanings.put("when it would not last", Reservoir.Refill.When.BEFORE_NEXT_VISIT);
        meanings.put("when low at a visit", Reservoir.Refill.When.LOW_AT_VISIT);
        meanings.put("at every visit", Reservoir.Refill.When.EVERY_VISIT);
        meanings.put("when empty", Reservoir.Refill.When.WHEN_EMPTY);
        meanings.put("never", Reservoir.Refill.When.NEVER);
        return meanings;
    }

    private ReservoirKeys() {}
}
