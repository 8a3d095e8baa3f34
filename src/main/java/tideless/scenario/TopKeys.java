package tideless.scenario;

import static tideless.scenario.UnitTable.DURATION;

import java.time.LocalDate;

/** At the top of a scenario. */
final class TopKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<String> TITLE =
            KEYS.add(Key.text("title").required("Wall bench").about("what you call it"));
    static final Key<LocalDate> START =
            KEYS.add(
                    Key.date("start")
                            .required("2026-03-02")
                            .about("the day the run begins, at 00:00 of the rig's own clock"));
    static final Key<Double> LENGTH =
            KEYS.add(
                    Key.quantity("length", DURATION)
                            .from("1 day", "1100 days")
                            .required("70 days")
                            .about("how long the run lasts, whole days"));

    private TopKeys() {}
}
