package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.scenario.ChangedScenario.Change;

class ChangedScenarioTest {
    private static final Path BENCH = Path.of("scenarios/science-room-bench.toml");

    private static Scenario good(Reading reading) {
        assertThat(reading).isInstanceOf(Reading.Good.class);
        return ((Reading.Good) reading).scenario();
    }

    static List<Path> shipped() {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            return files.filter(file -> file.toString().endsWith(".toml")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void without_a_change_a_scenario_is_what_its_file_says(Path file) {
        Scenario plain = good(ScenarioReader.read(file));
        Scenario unchanged = good(ChangedScenario.read(file, List.of()));
        // The digest is of the text, whose layout and comments are gone.
        assertThat(unchanged).usingRecursiveComparison().ignoringFields("digest").isEqualTo(plain);
    }

    @Test
    void one_valve_is_set_to_another_level_and_nothing_else_moves() {
        Scenario plain = good(ScenarioReader.read(BENCH));
        Scenario changed =
                good(
                        ChangedScenario.read(
                                BENCH, List.of(new Change("tray.basil.valve.setting", "4 cm"))));
        assertThat(settingM(changed, "basil")).isCloseTo(0.04, within(1e-12));
        assertThat(settingM(changed, "tomato")).isEqualTo(settingM(plain, "tomato"));
        assertThat(changed.reservoirs()).isEqualTo(plain.reservoirs());
    }

    @Test
    void a_star_changes_every_tray() {
        Scenario changed =
                good(
                        ChangedScenario.read(
                                BENCH, List.of(new Change("tray.*.valve.setting", "31 mm"))));
        for (Tray tray : changed.trays()) {
            assertThat(settingM(changed, tray.name())).isCloseTo(0.031, within(1e-12));
        }
    }

    @Test
    void a_table_the_file_leaves_out_can_be_changed_too() {
        Scenario changed =
                good(ChangedScenario.read(BENCH, List.of(new Change("run.step", "1 h"))));
        assertThat(changed.numerics().stepS()).isEqualTo(3600);
    }

    @Test
    void a_vessel_that_is_not_there_is_refused_with_a_suggestion() {
        Reading reading =
                ChangedScenario.read(BENCH, List.of(new Change("tray.basl.depth", "9 cm")));
        assertThat(((Reading.Faulty) reading).problems())
                .singleElement()
                .satisfies(
                        problem -> {
                            assertThat(problem.key()).isEqualTo("tray.basl.depth");
                            assertThat(problem.hint()).contains("basil");
                        });
    }

    @Test
    void an_unknown_key_and_an_impossible_value_are_the_readers_own_faults() {
        Reading unknown =
                ChangedScenario.read(BENCH, List.of(new Change("tray.basil.dept", "9 cm")));
        assertThat(((Reading.Faulty) unknown).problems().get(0).found())
                .contains("did you mean \"depth\"?");
        Reading impossible =
                ChangedScenario.read(BENCH, List.of(new Change("tray.basil.valve.setting", "3 m")));
        Problem problem = ((Reading.Faulty) impossible).problems().get(0);
        assertThat(problem.key()).isEqualTo("tray.basil.valve.setting");
        assertThat(problem.line()).isZero(); // of a text that nobody sees
    }

    @Test
    void a_whole_table_is_no_value() {
        Reading reading = ChangedScenario.read(BENCH, List.of(new Change("tray.basil", "9 cm")));
        assertThat(reading).isInstanceOf(Reading.Faulty.class);
    }

    @Test
    void one_reading_after_another_is_what_each_would_be_alone() {
        // Shared between readings: crops, feeds and weather; here a change of each kind and back.
        Path trough = Path.of("scenarios/glasshouse-tomato-trough.toml");
        List<List<Change>> changes =
                List.of(
                        List.of(),
                        List.of(new Change("feed.ec", "2.1 mS/cm")),
                        List.of(new Change("climate.air_speed", "0.3 m/s")),
                        List.of(new Change("start", "2026-03-20")),
                        List.of(new Change("tray.trough.plants", "5")),
                        List.of(new Change("tray.trough.crop", "lettuce")),
                        List.of(new Change("climate.file", "nothing.csv")),
                        List.of());
        ChangedScenario shared = ChangedScenario.of(trough, Beside.NOTHING);
        for (List<Change> change : changes) {
            Reading alone = ChangedScenario.read(trough, change);
            Reading after = shared.read(change);
            assertThat(after).usingRecursiveComparison().isEqualTo(alone);
        }
    }

    @Test
    void what_several_readings_share_is_made_once_if_it_is_sound_and_noted_in_each() {
        MadeOnce once = new MadeOnce();
        TomlFile source = new TomlFile("x.toml");
        int[] made = {0};
        for (int i = 0; i < 3; i++) {
            assertThat(once.read("sound", source, () -> Read.of(++made[0])).value()).isEqualTo(1);
        }
        for (int i = 1; i <= 3; i++) {
            int said = i;
            Read<Integer> read =
                    once.read(
                            "told",
                            source,
                            () -> {
                                source.note(new Note("x.toml", 1, "key", "odd"));
                                return Read.of(said);
                            });
            assertThat(read.value()).isEqualTo(1);
            assertThat(source.notes()).hasSize(i);
        }
        assertThat(once.read("faulty", source, Read::<Integer>faulty).isSound()).isFalse();
        assertThat(once.read("faulty", source, () -> Read.of(7)).value()).isEqualTo(7);
    }

    private static double settingM(Scenario scenario, String tray) {
        return scenario.trays().stream()
                .filter(one -> one.name().equals(tray))
                .map(one -> ((Filling.ByValve) one.filling()).settingM())
                .findFirst()
                .orElseThrow();
    }
}
