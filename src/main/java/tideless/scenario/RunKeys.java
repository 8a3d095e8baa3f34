package tideless.scenario;

import static tideless.scenario.UnitTable.DURATION;

/** Numerical choices of a run. */
final class RunKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> STEP =
            KEYS.add(
                    Key.quantity("step", DURATION)
                            .from("1 s", "6 h")
                            .fallsTo("10 min", "docs/validation-engine.md")
                            .about("longest step of the run"));

    private RunKeys() {}
}
