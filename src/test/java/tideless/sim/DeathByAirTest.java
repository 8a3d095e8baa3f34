package tideless.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.crop.CropTraits;
import tideless.crop.Killing;
import tideless.physics.Time;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Crops;
import tideless.scenario.Reading;

/** What no crop lives through, whatever its roots have: by experience, on the calm bench. */
class DeathByAirTest {
    private static Optional<Event> death(String crop, String... keysAndValues) {
        List<ChangedScenario.Change> changes = new ArrayList<>();
        changes.add(new ChangedScenario.Change("tray.left.crop", crop));
        for (int i = 0; i < keysAndValues.length; i += 2) {
            changes.add(new ChangedScenario.Change(keysAndValues[i], keysAndValues[i + 1]));
        }
        Reading reading = ChangedScenario.read(Path.of("scenarios", "calm-bench.toml"), changes);
        return Simulation.run(((Reading.Good) reading).scenario()).events().stream()
                .filter(e -> e.kind() == Event.Kind.DIED)
                .filter(e -> e.vessel().name().equals("left"))
                .findFirst();
    }

    private static Optional<Event> inAir(String crop, String day, String night) {
        return death(crop, "climate.day_temperature", day, "climate.night_temperature", night);
    }

    private static double day(Optional<Event> death) {
        return death.orElseThrow().atS() / Time.DAY_S;
    }

    @Test
    void basil_freezes_in_its_first_night_and_kale_does_not() {
        Optional<Event> basil = inAir("basil", "10 degC", "-3 degC");
        assertThat(basil.orElseThrow().detail()).isEqualTo(Event.FROST);
        assertThat(day(basil)).isEqualTo(1);
        assertThat(inAir("kale", "10 degC", "-3 degC")).isEmpty();
    }

    // Tomatoes stand a light frost above -1 degC, and no more.
    @Test
    void frost_kills_below_its_limit_only() {
        assertThat(inAir("tomato", "18 degC", "-0.9 degC")).isEmpty();
        assertThat(inAir("tomato", "18 degC", "-1.1 degC")).isPresent();
    }

    // At 4 degC basil is 8 K below what its leaves bear, the others 3: 40 K d.
    @ParameterizedTest
    @CsvSource({"basil, 6", "tomato, 14", "sweet-pepper, 14", "cucumber, 14"})
    void a_tender_crop_is_chilled_to_death_within_days(String crop, double days) {
        Optional<Event> chilled = inAir(crop, "4 degC", "4 degC");
        assertThat(chilled.orElseThrow().detail()).isEqualTo(Event.CHILL);
        assertThat(day(chilled)).isEqualTo(days);
    }

    // A cool spring: it stalls and looks poor, and lives.
    @Test
    void a_tomato_in_a_cool_house_lives() {
        assertThat(inAir("tomato", "13 degC", "5 degC")).isEmpty();
        assertThat(inAir("tomato", "7.1 degC", "7.1 degC")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"lettuce", "kale", "spinach", "parsley"})
    void a_hardy_crop_is_not(String crop) {
        assertThat(inAir(crop, "4 degC", "4 degC")).isEmpty();
    }

    // Nights alone do not: 18 degC by day is warm in the mean.
    @Test
    void a_warm_day_is_a_new_start_for_what_was_chilled() {
        CropTraits basil = Crops.named("basil");
        assertThat(Killing.chilledKd(basil, 30, 4)).isEqualTo(38);
        assertThat(Killing.chilledKd(basil, 30, 12)).isEqualTo(0);
        assertThat(inAir("basil", "18 degC", "8 degC")).isEmpty();
    }

    @Test
    void an_hour_over_48_degrees_kills() {
        assertThat(inAir("tomato", "47.9 degC", "2 degC")).isEmpty();
        Optional<Event> scorched = inAir("tomato", "48.1 degC", "2 degC");
        assertThat(scorched.orElseThrow().detail()).isEqualTo(Event.HEAT);
    }

    // At 42 and 40 degC lettuce gains nothing, and breathes 4.4 times as fast as at 20: 14/4.4
    // days.
    @Test
    void heat_in_which_nothing_grows_kills_within_days() {
        Optional<Event> hot = inAir("lettuce", "42 degC", "40 degC");
        assertThat(hot.orElseThrow().detail()).isEqualTo(Event.HEAT);
        assertThat(day(hot)).isBetween(3.0, 5.0);
    }

    // In the dark at 22 and 18 degC, some 20: a fortnight.
    @Test
    void without_light_a_plant_lives_on_its_stores_for_a_fortnight() {
        Optional<Event> dark = death("lettuce", "lamp.ppfd", "0 umol/m2/s");
        assertThat(dark.orElseThrow().detail()).isEqualTo(Event.DARK);
        assertThat(day(dark)).isBetween(12.0, 16.0);
    }

    // Each day that gives something fills its stores again; a seed has its own.
    @Test
    void a_day_that_gives_something_is_a_new_start() {
        CropTraits lettuce = Crops.named("lettuce");
        assertThat(Killing.storesTakenDays(lettuce, 0.0011, 1, 20)).isEqualTo(-14);
        assertThat(Killing.storesTakenDays(lettuce, 0.0009, 1, 20)).isEqualTo(1);
        assertThat(Killing.storesTakenDays(lettuce, 0, 0, 20)).isEqualTo(-14);
    }

    // Below its base of some 4 degC kale rests: nothing grows, and nothing is used up.
    @Test
    void a_hardy_plant_rests_in_the_cold() {
        assertThat(
                        death(
                                "kale",
                                "climate.day_temperature",
                                "2 degC",
                                "climate.night_temperature",
                                "1 degC",
                                "length",
                                "80 days"))
                .isEmpty();
    }
}
