package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.ChangedScenario.Change;
import tideless.scenario.Reading;
import tideless.sim.Event;

/** Young peppers whose level sinks below their cups before they have roots to follow it. */
class ValveTraysTest {
    private static final Path TROUGH = ObeyingRigs.still("pepper-trough");

    private static final int MEMBERS = 40;

    private static Scenario with(Change... changes) {
        Reading reading = ChangedScenario.read(TROUGH, List.of(changes));
        assertThat(reading).isInstanceOf(Reading.Good.class);
        return ((Reading.Good) reading).scenario();
    }

    private static Outlook outlook(Scenario scenario) {
        return Outlook.of(scenario, MEMBERS, 1, new InTurn()).orElseThrow();
    }

    @Test
    void a_valve_below_the_cups_is_held_at_them_until_roots_are_down() throws InterruptedException {
        Scenario low = with();
        Outlook outlook = outlook(low);
        assertThat(outlook.chance()).isLessThan(0.8);
        Cure cure = ValveTrays.cure(low, outlook, 1, new InTurn()).orElseThrow();
        assertThat(cure.kind()).isEqualTo(Cure.Kind.HIGHER_LEVEL_AT_FIRST);
        Facts facts = cure.facts();
        assertThat(facts.get(Quantity.LEVEL)).isEqualTo(173, within(0.1)); // 13 mm of cup are wet
        assertThat(facts.get(Quantity.SETTING)).isEqualTo(120, within(0.1));
        Scenario held =
                with(
                        new Change("tray.trough.valve.setting", "17.3 cm"),
                        new Change(
                                "tray.trough.valve.moves",
                                String.format(
                                        Locale.ROOT,
                                        "[{ on = %s, setting = \"12 cm\" }]",
                                        facts.on().toLocalDate())));
        assertThat(outlook(held).chance())
                .isGreaterThanOrEqualTo(Outlook.SURE)
                .isEqualTo(facts.get(Quantity.CHANCE), within(1e-9));
    }

    /** The same first harm of a trough whose valve keeps the cups wet asks for nothing of it. */
    @Test
    void a_valve_that_serves_the_cups_is_left_alone() throws InterruptedException {
        Scenario kept = with(new Change("tray.trough.valve.setting", "17.5 cm"));
        Outlook.LikelyHarm early = outlook(with()).harms().get(0);
        assertThat(early.kind()).isEqualTo(Event.Kind.WILTED);
        Outlook mostly = outlook(kept);
        Outlook.LikelyHarm same =
                new Outlook.LikelyHarm(early.kind(), early.tray(), 0.3, early.atS());
        Outlook told =
                new Outlook(
                        MEMBERS,
                        0.7,
                        List.of(same),
                        List.of(),
                        List.of(),
                        List.of(),
                        mostly.feedLitres());
        assertThat(ValveTrays.cure(kept, told, 1, new InTurn())).isEqualTo(Optional.empty());
    }
}
