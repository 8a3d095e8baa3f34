package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.words.CupWords;
import tideless.words.CureWords;
import tideless.words.WarningWords;

/** Cups that stand far below the level for weeks, and what brings them out of it. */
class CupTrialsTest {
    private static final String RESERVOIR =
            """
            [reservoir.main]
            volume = "60 L"
            depth = "35 cm"
            floor_above_bench = "60 cm"
            """;

    private static final String TRAY =
            """
            length = "80 cm"
            width = "40 cm"
            depth = "16 cm"
            crop = "basil"
            plants = 6
            ground = "0.5 m2"
            cup_bottom = "%s"
            """;

    @TempDir Path folder;

    private Scenario scenario(String cups, String filling) throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("deep.toml"),
                        """
                        title = "Near the rim"
                        start = 2026-03-02
                        length = "40 days"
                        [climate]
                        kind = "room"
                        day_temperature = "24 degC"
                        night_temperature = "20 degC"
                        [lamp]
                        ppfd = "250 umol/m2/s"
                        on = "06:00"
                        off = "22:00"
                        [feed]
                        recipe = "hoagland-2"
                        ec = "1.6 mS/cm"
                        %s
                        [tray.one]
                        %s%s
                        [visits]
                        days = ["mon"]
                        """
                                .formatted(
                                        filling.startsWith("valve") ? RESERVOIR : "",
                                        TRAY.formatted(cups),
                                        filling));
        Reading reading = ScenarioReader.read(file);
        return ((Reading.Good) reading).scenario();
    }

    private static Optional<Warning> deep(Scenario scenario) {
        return Forecasts.of(scenario, 1).advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.CUPS_UNDER)
                .findFirst();
    }

    private static Scenario obeyed(Scenario scenario, Cure cure) {
        return scenario.withTray(CupTrials.with(scenario.trays().get(0), cure));
    }

    @Test
    void a_valve_near_the_rim_is_to_be_set_to_the_cups_and_then_nothing_is_told()
            throws IOException {
        Scenario rig = scenario("6 cm", "valve.setting = \"14 cm\"\n");
        Warning warning = deep(rig).orElseThrow();
        assertTrue(
                WarningWords.text(warning).contains("stands up to 80 mm above the underside"),
                WarningWords.text(warning));
        Cure cure = warning.cures().get(0);
        assertEquals(Cure.Kind.LEVEL_AT_CUPS, cure.kind());
        assertEquals(73, cure.facts().get(Quantity.SETTING), 1e-9);
        assertEquals(Optional.empty(), deep(obeyed(rig, cure)));
        assertEquals(
                List.of(
                        "tray one: its level stands 80 mm above the underside of the cups, where 13"
                                + " mm is usual: plugs and stems that stay so deep rot. Is the valve's"
                                + " setting meant to be 73 mm, or do the cups hang higher?"),
                CupWords.tooDeep(rig));
        assertEquals(List.of(), CupWords.tooDeep(obeyed(rig, cure)));
        assertTrue(rig.trays().get(0).keepsCupsUnder());
        assertFalse(obeyed(rig, cure).trays().get(0).keepsCupsUnder());
        Scenario later =
                scenario(
                        "6 cm",
                        "valve.setting = \"14 cm\"\n"
                                + "valve.moves = [{ on = 2026-03-16, setting = \"6 cm\" }]\n");
        assertFalse(later.trays().get(0).keepsCupsUnder(), "it is lowered later");
    }

    /** A tray topped up by hand, and one filled once, whose water the whole crop needs. */
    @Test
    void what_is_filled_by_hand_or_once_is_told_in_its_own_words() throws IOException {
        Scenario byHand = scenario("6 cm", "hand.to = \"14 cm\"\n");
        Cure lower = deep(byHand).orElseThrow().cures().get(0);
        assertTrue(
                CureWords.of(lower)
                        .startsWith("fill no higher than 73 mm, which wets the cups by 13 mm"),
                CureWords.of(lower));
        assertEquals(Optional.empty(), deep(obeyed(byHand, lower)));
        Scenario once = scenario("4 cm", "filling = \"sealed\"\nstart_level = \"14 cm\"\n");
        Cure higher = deep(once).orElseThrow().cures().get(0);
        assertTrue(
                CureWords.of(higher).startsWith("hang the cups higher, their underside at 127 mm"),
                CureWords.of(higher));
        assertEquals(Optional.empty(), deep(obeyed(once, higher)));
    }

    /** Lowered to cups 5 mm above its floor the tray would run dry from visit to visit. */
    @Test
    void a_level_that_would_leave_plants_dry_is_not_told() throws IOException {
        Scenario thin = scenario("5 mm", "hand.to = \"5 cm\"\n");
        Warning warning = deep(thin).orElseThrow();
        assertTrue(
                warning.cures().stream().allMatch(c -> c.kind() == Cure.Kind.HANG_CUP_HIGHER),
                CureWords.of(warning.cures()));
    }
}
