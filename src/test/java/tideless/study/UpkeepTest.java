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

/** Tomatoes want 2.0 mS/cm at least and are fed 4.0 at most, by their crop file. */
class UpkeepTest {
    private static Facts changesWith(double feedMsPerCm) {
        return factsWith(feedMsPerCm, Upkeep.Part.CHANGES);
    }

    private static Facts factsWith(double feedMsPerCm, Upkeep.Part part) {
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
                .facts(scenario, part);
    }

    /** Or the leaner tray would be poured away at its first reading. */
    @Test
    void a_feed_below_the_band_has_no_least_reading_at_which_it_is_changed() {
        assertThat(changesWith(2.2).get(Quantity.BAND_FROM)).isEqualTo(2.0);
        assertThat(changesWith(1.4).has(Quantity.BAND_FROM)).isFalse();
        assertThat(changesWith(1.4).has(Quantity.EC_LIMIT)).isTrue();
    }

    @Test
    void a_feed_above_what_growers_pour_is_said_to_be() {
        assertThat(factsWith(4.1, Upkeep.Part.FEED).get(Quantity.BAND_TO)).isEqualTo(4.0);
        assertThat(factsWith(4.0, Upkeep.Part.FEED).has(Quantity.BAND_TO)).isFalse();
    }
}
