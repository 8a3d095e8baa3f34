package tideless.scenario;

import java.time.LocalDate;
import java.util.List;

/** When and how much leaf is taken off plants that stand on. */
final class LeafPickingKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<LocalDate> FROM =
            KEYS.add(
                    Key.date("from")
                            .optional("2026-03-23")
                            .about("the first picking; with every, those after it"));
    static final Key<Double> EVERY =
            KEYS.add(
                    Key.quantity("every", UnitTable.DURATION)
                            .from("1 day", "365 days")
                            .optional("7 days")
                            .about("days between two pickings; left out, from is the only one"));
    static final Key<LocalDate> TO =
            KEYS.add(
                    Key.date("to")
                            .optional("2026-06-30")
                            .about("no picking after this day; left out, to the end"));
    static final Key<List<LocalDate>> DATES =
            KEYS.add(
                    Key.dates("dates")
                            .optional("[2026-03-23, 2026-04-02]")
                            .about("the days, in place of from and every"));
    static final Key<Double> SHARE =
            KEYS.add(
                    Key.share("share")
                            .above("0 %", "95 %")
                            .fallsTo("33 %", Key.COMMON_PRACTICE)
                            .about("share of the standing leaf that is taken"));

    private LeafPickingKeys() {}
}
