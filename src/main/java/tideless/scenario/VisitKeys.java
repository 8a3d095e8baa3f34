package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.LEFT_OUT;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;
import tideless.rig.Visits;

/** When somebody looks, and what that person does. */
final class VisitKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Set<DayOfWeek>> DAYS =
            KEYS.add(
                    Key.weekdays("days")
                            .fallsTo("daily", ASSUMED)
                            .about("weekdays on which somebody looks"));
    static final Key<Double> AT =
            KEYS.add(Key.timeOfDay("at").fallsTo("08:00", ASSUMED).about("at what time"));
    static final Key<List<Visits.Absence>> AWAY =
            KEYS.add(
                    Key.spans("away")
                            .workedOut("none", "[{ from = 2026-04-03, to = 2026-04-12 }]")
                            .about("spans in which nobody comes, both ends included"));
    static final Key<Visits.Flush> FLUSH =
            KEYS.add(
                    Key.choice(
                                    "flush",
                                    Spellings.of(
                                            "at limit",
                                            Visits.Flush.AT_LIMIT,
                                            "never",
                                            Visits.Flush.NEVER))
                            .fallsTo("never", LEFT_OUT)
                            .about("whether a tray out of its EC band is drained and filled anew"));

    private VisitKeys() {}
}
