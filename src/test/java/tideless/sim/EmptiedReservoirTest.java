package tideless.sim;

import org.junit.jupiter.api.Test;

class EmptiedReservoirTest {
    /** A rig, found by a random law, whose last outflow is one rounding more than what is left. */
    @Test
    void a_reservoir_that_runs_out_to_its_floor_does_not_hold_less_than_nothing() {
        StepIndependenceProperties.largerLastsLonger(-8127498442913628327L, 3600, 1.5);
    }
}
