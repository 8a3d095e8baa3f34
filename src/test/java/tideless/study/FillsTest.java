package tideless.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.advice.Verdict;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Departures;
import tideless.sim.Event;
import tideless.sim.Simulation;
import tideless.words.VerdictWords;

/** What filling up before an absence buys is tried, and told with the absence. */
class FillsTest {
    private static final Path HOLIDAY =
            Path.of("src/test/resources/tideless/study/obeying/08-holiday.toml");

    @TempDir Path folder;

    /** Away from 21 March to that day of April; the reservoir is passed by on the 20th. */
    private Scenario holiday(int to) throws IOException {
        String text =
                Files.readString(HOLIDAY)
                        .replace("to = 2026-04-04", "to = 2026-04-%02d".formatted(to))
                        .replace("plants = 8", "plants = 8\nharvest_after = \"41 days\"");
        Path file = Files.writeString(folder.resolve("holiday.toml"), text);
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Verdict.Absence absence(Forecast forecast) {
        assertEquals(1, forecast.advice().verdict().absences().size());
        return forecast.advice().verdict().absences().get(0);
    }

    private static String told(Forecast forecast) {
        return VerdictWords.lines(forecast.advice().verdict()).get(1);
    }

    /** The run that is told is the run that whoever fills up has, to the millimetre. */
    @Test
    void a_fill_that_saves_the_crop_is_told_as_what_saves_it() throws IOException {
        Scenario scenario = holiday(8);
        Forecast forecast = Forecasts.of(scenario, 1);
        Verdict.Absence absence = absence(forecast);
        assertFalse(absence.survives());
        assertTrue(absence.filledUp().orElseThrow().survives());
        assertEquals(
                "Away 21 Mar to 8 Apr: does NOT survive, but does if you fill up on Fri 20 Mar;"
                        + " lowest then 1 mm (tray lettuce), 36 mm if you do.",
                told(forecast));

        Reservoir.Refill.When inTime = Reservoir.Refill.When.BEFORE_NEXT_VISIT;
        Scenario obeyed =
                scenario.withReservoirs(
                        scenario.reservoirs().stream()
                                .map(r -> r.withRefill(r.refill().on(inTime)))
                                .toList());
        Verdict.Absence second = absence(Forecasts.of(obeyed, 1));
        assertTrue(second.survives());
        assertEquals(second.lowestLevelM(), absence.filledUp().orElseThrow().lowestLevelM(), 1e-3);
    }

    /** A rule that fills up at every visit leaves no fill to advise. */
    @Test
    void a_fill_that_is_done_is_not_tried_again() throws IOException {
        Scenario scenario = holiday(8);
        Reservoir.Refill.When always = Reservoir.Refill.When.EVERY_VISIT;
        Forecast forecast =
                Forecasts.of(
                        scenario.withReservoirs(
                                scenario.reservoirs().stream()
                                        .map(r -> r.withRefill(r.refill().on(always)))
                                        .toList()),
                        1);
        assertEquals(Set.of(), Fills.of(forecast.advice()));
        assertEquals(Optional.empty(), absence(forecast).filledUp());
        assertFalse(told(forecast).contains("if you do"));
    }

    /** Nobody refills before either absence; one run fills up before both. */
    @Test
    void one_run_fills_up_before_every_absence() throws IOException {
        Scenario scenario = holiday(4);
        List<Visits.Absence> two =
                List.of(
                        new Visits.Absence(LocalDate.of(2026, 3, 21), LocalDate.of(2026, 3, 25)),
                        new Visits.Absence(LocalDate.of(2026, 3, 27), LocalDate.of(2026, 3, 30)));
        Visits visits = scenario.visits();
        Reservoir.Refill.When never = Reservoir.Refill.When.NEVER;
        Scenario often =
                scenario.withVisits(
                                new Visits(
                                        visits.weekdays(),
                                        visits.timeOfDayS(),
                                        two,
                                        visits.flush()))
                        .withReservoirs(
                                scenario.reservoirs().stream()
                                        .map(
                                                r ->
                                                        r.withStartLevelM(0.19)
                                                                .withRefill(r.refill().on(never)))
                                        .toList());
        Forecast forecast = Forecasts.of(often, 1);
        Set<LocalDate> days = Fills.of(forecast.advice());
        assertEquals(Set.of(LocalDate.of(2026, 3, 20), LocalDate.of(2026, 3, 26)), days);
        List<LocalDate> filled =
                Fills.run(often, days).events().stream()
                        .filter(e -> e.kind() == Event.Kind.REFILL)
                        .map(e -> often.start().plusDays((long) (e.atS() / 86400)))
                        .toList();
        assertTrue(filled.containsAll(days), filled.toString());
        forecast.advice()
                .verdict()
                .absences()
                .forEach(absence -> assertTrue(absence.filledUp().isPresent()));
    }

    @Test
    void days_to_fill_up_on_add_up() {
        Departures departures = Departures.NONE.filledUp(3).filledUp(7);
        assertTrue(departures.toString().contains("[3, 7]"), departures.toString());
    }

    /** A run that fills up on no day is the run as written. */
    @Test
    void a_run_without_a_fill_is_the_run_itself() throws IOException {
        Scenario scenario = holiday(4);
        assertEquals(
                Simulation.runUnread(scenario).events(), Fills.run(scenario, Set.of()).events());
    }
}
