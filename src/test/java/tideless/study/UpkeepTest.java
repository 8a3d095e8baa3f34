package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;

/** Tomatoes want 2.0 mS/cm at least, by their crop file. */
class UpkeepTest {
    private static Facts changesWith(double feedMsPerCm) {
        Reading reading = ChangedScenario.read(ObeyingRigs.still("tomato-bucket"), List.of());
        assertThat(reading).isInstanceOf(Reading.Good.class);
        Scenario scenario = ((Reading.Good) reading).scenario();
        return new Upkeep(
                        VesselId.tray("bucket"),
                        OptionalDouble.of(feedMsPerCm),
                        true,
                        false,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty())
                .facts(scenario, Upkeep.Part.CHANGES);
    }

    /** Or the leaner tray would be poured away at its first reading. */
    @Test
    void a_feed_below_the_band_has_no_least_reading_at_which_it_is_changed() {
        assertThat(changesWith(2.2).get(Quantity.BAND_FROM)).isEqualTo(2.0);
        assertThat(changesWith(1.4).has(Quantity.BAND_FROM)).isFalse();
        assertThat(changesWith(1.4).has(Quantity.EC_LIMIT)).isTrue();
    }
}
