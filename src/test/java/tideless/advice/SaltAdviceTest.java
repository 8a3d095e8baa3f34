package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tideless.rig.Limits;
import tideless.rig.Scenario;
import tideless.rig.TestDeck;
import tideless.rig.TestTray;
import tideless.rig.Tray;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.solution.Component;

/** Sodium, chloride and crusts on the tray of hard tap water, with limits drawn tight. */
class SaltAdviceTest {
    private static final double SODIUM_HIGH = 1.2;

    private static Trace trace;
    private static List<Warning> warnings;

    @BeforeAll
    static void run() {
        Scenario s =
                ((Reading.Good)
                                ScenarioReader.read(
                                        Path.of("scenarios", "lessons", "hard-tap.toml")))
                        .scenario();
        Tray t = s.trays().get(0);
        Limits was = t.limits();
        Tray tight =
                TestTray.of(t)
                        .limits(
                                new Limits(
                                        was.ecLowMsPerCm(),
                                        was.ecHighMsPerCm(),
                                        was.phLow(),
                                        was.phHigh(),
                                        SODIUM_HIGH,
                                        was.chlorideHighMolPerM3()))
                        // In the room's own air, so that lime falls out at all.
                        .deck(TestDeck.solutionCo2Ppm(420))
                        .make();
        trace = Simulation.run(s.withTrays(List.of(tight)));
        warnings = Advisor.advise(trace, trace).warnings();
    }

    private static Warning one(Warning.Kind kind) {
        List<Warning> found = warnings.stream().filter(w -> w.kind() == kind).toList();
        assertEquals(1, found.size(), kind.name());
        return found.get(0);
    }

    @Test
    void sodium_is_judged_from_the_hour_it_passes_its_limit_for_good() {
        Warning sodium = one(Warning.Kind.TOO_MUCH_SODIUM);
        int hour = 0;
        while (trace.trays().get(0).compositionAt(hour).molPerM3(Component.NA) <= SODIUM_HIGH) {
            hour++;
        }
        assertEquals(trace.clockAtSample(hour), sodium.from());
        assertEquals(SODIUM_HIGH, sodium.measure().limit());
        assertEquals(Unit.MMOL_PER_L, sodium.measure().unit());
        assertEquals(List.of(Cure.of(Cure.Kind.RAIN_WATER)), sodium.cures());
    }

    @Test
    void chloride_within_its_limit_is_no_warning() {
        assertTrue(warnings.stream().noneMatch(w -> w.kind() == Warning.Kind.TOO_MUCH_CHLORIDE));
    }

    /** How the roots move the pH here is within the model's doubt: lime may fall out, or not. */
    @Test
    void a_crust_that_hangs_on_a_doubtful_ph_is_no_warning() {
        assertTrue(
                trace.events().stream().anyMatch(e -> e.kind() == Event.Kind.PRECIPITATE),
                "nothing fell out: the test would show nothing");
        assertTrue(warnings.stream().noneMatch(w -> w.kind() == Warning.Kind.PH_OUT));
        assertTrue(warnings.stream().noneMatch(w -> w.kind() == Warning.Kind.PRECIPITATE));
    }

    /**
     * Acid that anybody may own stops at a feed's worth of phosphate, short of this water's lime.
     */
    @Test
    void a_ph_that_the_feed_itself_brings_is_laid_to_its_water() {
        Reading reading =
                ChangedScenario.read(
                        Path.of("scenarios", "lessons", "hard-tap.toml"),
                        List.of(new ChangedScenario.Change("feed.acid", "phosphoric")));
        Trace limed = Simulation.run(((Reading.Good) reading).scenario());
        Warning out =
                Advisor.advise(limed, limed).warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.PH_OUT)
                        .findFirst()
                        .orElseThrow();
        assertEquals(Cause.Kind.FEED_IS_ALKALINE, out.cause().kind());
        double feedPh = out.cause().facts().get(Quantity.FEED_PH);
        assertTrue(feedPh > 7.5 && feedPh < 9, "" + feedPh);
        assertEquals(
                List.of(Cure.of(Cure.Kind.RAIN_WATER), Cure.of(Cure.Kind.ACID_BY_METER)),
                out.cures());
    }

    @Test
    void the_first_nutrient_to_run_short_is_potassium() {
        assertEquals("potassium", one(Warning.Kind.SHORT_OF_ONE).cause().facts().of());
    }
}
