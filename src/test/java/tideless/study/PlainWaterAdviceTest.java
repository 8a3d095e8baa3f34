package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tideless.advice.Advisor;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Warning;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/** Whoever pours the plain water that is advised finds the reading that was told. */
class PlainWaterAdviceTest {
    private static final String OBEYING = "src/test/resources/tideless/study/obeying/";

    /**
     * The reading when so much has left the tray as was poured: the fall within its stated doubt,
     * and the meter's.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {"scenarios/hand-topped-bucket.toml", OBEYING + "03-outgrowing-fruit.toml"})
    void plain_water_brings_the_reading_to_what_was_told(String path) {
        // Of the tub, half empty when the tray is too salty: a full one holds a fortnight of feed.
        ChangedScenario.Change onTuesdays =
                new ChangedScenario.Change("visits.days", "[\"tue\", \"fri\"]");
        Reading reading =
                path.startsWith(OBEYING)
                        ? ChangedScenario.read(Path.of(path), List.of(onTuesdays))
                        : ScenarioReader.read(Path.of(path));
        Scenario read = ((Reading.Good) reading).scenario();
        Scenario scenario = read.withVisits(read.visits().withFlush(Visits.Flush.NEVER));
        // As the balance has it, before its run has shown whether anything else is better.
        Trace first = Simulation.run(scenario);
        Warning salty =
                Advisor.advise(first, first).warnings().stream()
                        .filter(w -> w.kind() == Warning.Kind.TOO_SALTY)
                        .findFirst()
                        .orElseThrow();
        Cure water =
                salty.cures().stream()
                        .filter(cure -> cure.facts().has(Quantity.WATER))
                        .findFirst()
                        .orElseThrow();
        double litres = water.facts().get(Quantity.WATER);
        double told = water.facts().get(Quantity.EC_AFTER);
        Pouring dose =
                new Pouring(
                        false,
                        List.of(new Pouring.Dose(salty.from().toLocalDate(), litres / 1000)));
        Trace obeyed = Simulation.run(pouring(scenario, salty, dose));

        int tray = 0;
        while (!scenario.trays().get(tray).id().equals(salty.vessel())) {
            tray++;
        }
        var of = obeyed.trays().get(tray);
        double poured = 0;
        int hour = 0;
        for (Event event : obeyed.events()) {
            poured += event.waterM3() * 1000;
            hour = event.waterM3() > 0 ? (int) (event.atS() / 3600) : hour;
        }
        assertEquals(litres, poured, 0.01 * litres);
        int from = (int) Duration.between(scenario.start().atStartOfDay(), salty.from()).toHours();
        double before = of.ecMsPerCm().at(from - 1);
        double left = 0;
        int end = from;
        double mixedLitres = 0;
        for (var r : obeyed.reservoirs()) {
            mixedLitres = 1000 * r.volumeM3().at(from - 1);
        }
        while (end < obeyed.lastLivingHour(of) && (left < litres + mixedLitres || end < hour)) {
            left += 1000 * (of.transpirationM3().at(end) + of.evaporationM3().at(end));
            end++;
        }
        double now = of.ecMsPerCm().at(end);
        double doubt = water.facts().get(Quantity.EC_AFTER_DOUBT);
        assertEquals(told, now, doubt + FlushRule.METER_DOUBT_FRAC * told);
        assertTrue(told < before - doubt, "nothing is promised");
        assertTrue(now < first.trays().get(tray).ecMsPerCm().at(end));
    }

    private static Scenario pouring(Scenario scenario, Warning salty, Pouring dose) {
        List<Tray> trays =
                scenario.trays().stream()
                        .map(
                                tray ->
                                        tray.id().equals(salty.vessel())
                                                        && tray.filling()
                                                                instanceof Filling.ByHand hand
                                                ? tray.withFilling(
                                                        new Filling.ByHand(
                                                                hand.toLevelM(), hand.days(), dose))
                                                : tray)
                        .toList();
        List<Reservoir> reservoirs =
                scenario.reservoirs().stream()
                        .map(
                                r ->
                                        r.withRefill(
                                                new Reservoir.Refill(
                                                        r.refill().when(),
                                                        r.refill().belowFrac(),
                                                        dose)))
                        .toList();
        return scenario.withTrays(trays).withReservoirs(reservoirs);
    }
}
