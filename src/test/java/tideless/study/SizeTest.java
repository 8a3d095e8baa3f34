package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.Visits;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.solution.Brine;
import tideless.study.threads.ThreadPool;
import tideless.words.SizeWords;

class SizeTest {
    private static final Scenario BENCH = read("science-room-bench");

    private static Scenario read(String name) {
        Path file = Path.of("scenarios", name + ".toml");
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Size.Goal asStated(int visitsEvery) {
        return new Size.Goal(OptionalInt.of(visitsEvery), 0.9, 1, 1);
    }

    private static Scenario drinking(int days, double litresPerDay, Filling filling) {
        return Rigs.scenario(
                days,
                3 * 3600,
                List.of(Rigs.reservoir(1, 0.42, Reservoir.Refill.When.EVERY_VISIT)),
                List.of(Rigs.tray("t", filling, Rigs.drinking(litresPerDay), 0)),
                Rigs.nobody());
    }

    @Test
    void a_reservoir_that_is_filled_up_has_to_hold_what_is_drunk_to_the_last() throws Exception {
        // 400 days without a visit at 2 L a day: empty on the last of them, and the crop on its
        // tray alone, is not enough.
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 1, 1, 1);
        Size size = Size.ofReservoir(drinking(400, 2, Rigs.valve()), "wall", goal, new InTurn());
        assertThat(size.found().orElseThrow()).isCloseTo(800, within(0.8));
        assertThat(size.onTrays()).isEmpty(); // it lends a hundredth, not worth a word
    }

    @Test
    void a_tank_that_runs_empty_is_no_answer_and_is_told() throws Exception {
        // Visits every two days drink 4 L; the first comes at eight on the first morning.
        // A tray lends some 9 L once: over 30 days a tank of (60 - 9) / 15 L a visit would do.
        Scenario rig =
                drinking(30, 2, Rigs.valve())
                        .withReservoirs(
                                List.of(
                                        Rigs.reservoir(
                                                0.05, 0.42, Reservoir.Refill.When.EVERY_VISIT)));
        Size size = Size.ofReservoir(rig, "wall", asStated(2), new InTurn());
        assertThat(size.found().orElseThrow()).isCloseTo(4, within(0.004));
        Size.OnTrays less = size.onTrays().orElseThrow();
        assertThat(less.litres()).isBetween(49 / 15.0, 54 / 15.0);
        assertThat(less.emptyDays()).isBetween(20.0, 29.0);
        assertThat(SizeWords.answer(size, asStated(2), rig.start()))
                .contains("no crop would be harmed either", "stand empty for ", "not advised");
        Scenario small =
                rig.withReservoirs(
                        List.of(rig.reservoirs().get(0).wider(less.litres() / size.given())));
        Size now = Size.ofReservoir(small, "wall", asStated(2), new InTurn());
        assertThat(now.isEnough(asStated(2))).isFalse();
        assertThat(now.found().orElseThrow()).isCloseTo(4, within(0.004));
        assertThat(SizeWords.now(now, asStated(2), rig.start()))
                .contains("does not come through on it; first reservoir wall runs empty about");
    }

    @Test
    void a_tank_that_nobody_fills_up_may_end_empty() throws Exception {
        // 400 days at 2 L a day. A tray of 0.2 m2 gives what stands above two
        // films, and ln(10) films more until a tenth of the thirst is left, which counts as dry.
        double litres = 2 * 400 - 200 * (0.05 - 2 * Brine.FILM_M + Math.log(10) * Brine.FILM_M);
        Scenario rig =
                drinking(400, 2, Rigs.valve())
                        .withReservoirs(
                                List.of(Rigs.reservoir(1, 0.42, Reservoir.Refill.When.NEVER)));
        Size size =
                Size.ofReservoir(
                        rig, "wall", new Size.Goal(OptionalInt.empty(), 1, 1, 1), new InTurn());
        assertThat(size.given()).isCloseTo(400, within(1e-9));
        assertThat(size.found().orElseThrow()).isCloseTo(litres, within(1e-3 * litres));
        assertThat(size.bounded()).isFalse();
        assertThat(size.isEnough(new Size.Goal(OptionalInt.empty(), 1, 1, 1))).isFalse();
    }

    @Test
    void visits_every_n_days_need_what_is_drunk_in_n_days() throws Exception {
        // Long seasons of visits every 30 days at 2 L a day: 60 L a round, and in the first what is
        // drunk before eight in the morning besides.
        Scenario rig = drinking(1000, 2, Rigs.valve());
        double found =
                Size.ofReservoir(rig, "wall", asStated(30), new InTurn()).found().orElseThrow();
        assertThat(found).isCloseTo(60 + 2 * 8 / 24.0, within(0.06));
        // And the other way round: 400 L last 200 days, but 28 are the most that is tried.
        Size visits = Size.ofVisits(rig, asStated(30), new InTurn());
        assertThat(visits.isEnough(asStated(30))).isTrue();
    }

    @Test
    void a_tray_that_no_reservoir_feeds_fast_enough_is_told_so() throws Exception {
        // A valve's tube of 6 mm cannot pass 3000 L a day at a head of half a metre.
        Scenario rig = drinking(20, 20_000, Rigs.valve());
        Size size = Size.ofReservoir(rig, "wall", asStated(1), new InTurn());
        assertThat(size.found()).isEmpty();
        assertThat(size.why()).isPresent();
        assertThat(size.changeFrac()).isInfinite();
    }

    @Test
    void fewer_plants_are_found_by_trying_each_number_too() throws Exception {
        Size.Goal goal = new Size.Goal(OptionalInt.of(6), 1, 1, 1);
        Scenario always = BENCH.withVisits(BENCH.visits().withAbsences(List.of()));
        int found =
                Size.ofPlants(always, "tomato", goal, new InTurn()).found().orElse(0.0).intValue();
        int most = 0;
        for (int plants = 1; plants <= 12; plants++) {
            Scenario rig = Size.every(Ensemble.atEnsembleStep(with(always, "tomato", plants)), 6);
            Fate fate =
                    Fate.of(rig, Simulation.season(rig, tideless.sim.Surroundings.forSeasons(rig)));
            boolean lasts = fate.survives() && fate.empties().isEmpty();
            most = lasts && most == plants - 1 ? plants : most;
        }
        assertThat(found).isEqualTo(most);
    }

    @Test
    void a_crowd_that_does_not_come_to_its_weight_is_no_answer() throws Exception {
        Scenario calm =
                ((Reading.Good) ScenarioReader.read(Path.of("scenarios/calm-bench.toml")))
                        .scenario();
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 1, 1, 1);
        Planting.OfCrop crop = (Planting.OfCrop) calm.trays().get(0).planting();
        double wantedG = crop.harvestFreshG().orElseThrow();
        Size crowd = Size.ofPlants(planted(calm, 5 * crop.plants()), "left", goal, new InTurn());
        assertThat(crowd.isEnough(goal)).isFalse();
        int found = crowd.found().orElseThrow().intValue();
        assertThat(leftG(calm, found)).isGreaterThanOrEqualTo(0.9 * wantedG);
        assertThat(leftG(calm, found + 1)).isLessThan(0.9 * wantedG);
        assertThat(SizeWords.now(crowd, goal, calm.start()))
                .contains(
                        "does not come through with every plant at its wanted weight",
                        "first tray left does not come to its weight");

        // What is to spare is told up to what growers put on such ground.
        Size most = Size.ofPlants(calm, "left", goal, new InTurn());
        double usualM2 = crop.traits().harvest().groundM2().orElseThrow();
        assertThat(most.found()).contains(Math.floor(crop.groundM2() / usualM2));
        assertThat(SizeWords.answer(most, goal, calm.start()))
                .contains("growers give each 450 cm2");
        assertThat(Size.changes(calm, goal, new InTurn()).sizes()).contains(most);
    }

    private static Scenario planted(Scenario scenario, int plants) {
        List<Tray> trays = new ArrayList<>(scenario.trays());
        trays.set(0, Size.planted(trays.get(0), plants));
        return scenario.withTrays(trays);
    }

    private static double leftG(Scenario scenario, int plants) {
        Scenario coarse = Ensemble.atEnsembleStep(planted(scenario, plants));
        Season season = Simulation.season(coarse, Surroundings.forSeasons(coarse));
        return season.trays().get(0).yields().get(0).freshG();
    }

    @Test
    void a_plant_of_a_crowd_is_told_to_weigh_what_a_run_of_so_many_gives() throws Exception {
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 1, 1, 1);
        Scenario few = with("basil", 4);
        Size size = Size.ofPlants(few, "basil", goal, new InTurn());
        Size.Weight each = size.each().orElseThrow();
        assertThat(each.nowG()).isEqualTo(basilG(few));
        int found = size.found().orElseThrow().intValue();
        assertThat(found).isNotEqualTo((int) size.given());
        assertThat(each.thenG()).isEqualTo(basilG(with("basil", found))).isLessThan(each.nowG());
        assertThat(SizeWords.answer(size, goal, BENCH.start()))
                .contains(", %.0f g each in place of %.0f g".formatted(each.thenG(), each.nowG()));
    }

    private static double basilG(Scenario scenario) {
        Scenario coarse = Ensemble.atEnsembleStep(scenario);
        Season season = Simulation.season(coarse, Surroundings.forSeasons(coarse));
        for (int i = 0; i < coarse.trays().size(); i++) {
            if (coarse.trays().get(i).name().equals("basil")) {
                return season.trays().get(i).yields().get(0).freshG();
            }
        }
        throw new AssertionError("no basil");
    }

    private static Scenario with(String tray, int plants) {
        return with(BENCH, tray, plants);
    }

    private static Scenario with(Scenario rig, String tray, int plants) {
        return rig.withTrays(
                rig.trays().stream()
                        .map(
                                t ->
                                        t.name().equals(tray)
                                                ? t.withPlanting(
                                                        ((Planting.OfCrop) t.planting())
                                                                .withPlants(plants))
                                                : t)
                        .toList());
    }

    @Test
    void a_higher_chance_takes_a_larger_reservoir_and_threads_take_none() throws Exception {
        Size.Goal half = new Size.Goal(OptionalInt.of(7), 0.5, 12, 3);
        Size.Goal most = new Size.Goal(OptionalInt.of(7), 0.9, 12, 3);
        Size one = Size.ofReservoir(BENCH, "shelf", most, new InTurn());
        assertThat(Size.ofReservoir(BENCH, "shelf", most, new ThreadPool(3)).toString())
                .isEqualTo(one.toString());
        assertThat(one.found().orElseThrow())
                .isGreaterThan(
                        Size.ofReservoir(BENCH, "shelf", half, new InTurn()).found().orElseThrow());
    }

    @Test
    void a_setting_is_found_that_keeps_a_third_of_the_roots_wet_and_none_dry_on_the_way() {
        ValveHeight height = ValveHeight.of(BENCH, "tomato");
        ValveHeight.AtFirst first = height.atFirst().orElseThrow();
        double settingM = height.foundMm().orElseThrow() / 1000;
        Trace trace = Simulation.run(set(BENCH, "tomato", first, settingM));
        TrayTrace tomato = of(trace, "tomato");
        double wetHours = 0;
        int hours = 0;
        for (int h = 0; h < trace.hours(); h++) {
            double cupM = tomato.tray().cupBottomM();
            double tipM = tomato.rootTipM().at(h);
            if (tipM < cupM && tomato.levelM().at(h) < settingM + 0.002) {
                double wetM = Math.min(cupM, tomato.levelM().at(h)) - tipM;
                wetHours += Math.max(0, wetM) / (cupM - tipM);
                hours++;
            }
        }
        assertThat(wetHours / hours).isCloseTo(1.0 / 3, within(5e-3));
        assertThat(harmed(trace, "tomato")).isFalse();
    }

    @Test
    void a_valve_begins_where_seedlings_are_wet_and_the_file_then_harms_none() {
        // Cups at 9 cm over a level of 4 cm: held there, or at what keeps a third wet in the end,
        // seedlings dry up within days.
        Scenario high = rig("cups-hung-high");
        assertThat(harmed(Simulation.run(high), "one")).isTrue();
        ValveHeight height = ValveHeight.of(high, "one");
        ValveHeight.AtFirst first = height.atFirst().orElseThrow();
        assertThat(first.mm()).isCloseTo(103, within(1e-9));
        double settingM = height.foundMm().orElseThrow() / 1000;
        assertThat(harmed(Simulation.run(set(high, "one", first, settingM)), "one")).isFalse();

        // So low a trough whose tank runs dry between visits has no reserve, and none is told.
        ValveHeight trough = ValveHeight.of(rig("trough-on-a-tank"), "trough");
        assertThat(trough.harms()).isTrue();
        assertThat(trough.foundMm()).isEmpty();
    }

    private static Scenario rig(String name) {
        Path file = Path.of("src/test/resources/tideless/study/rigs", name + ".toml");
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static Scenario set(
            Scenario rig, String tray, ValveHeight.AtFirst first, double settingM) {
        return rig.withTrays(
                rig.trays().stream()
                        .map(
                                t ->
                                        t.name().equals(tray)
                                                ? t.withStartLevelM(first.mm() / 1000)
                                                        .withFilling(moved(t, first, settingM))
                                                : t)
                        .toList());
    }

    private static Filling moved(Tray tray, ValveHeight.AtFirst first, double settingM) {
        return ((Filling.ByValve) tray.filling())
                .withSettingM(first.mm() / 1000)
                .withMoves(List.of(new Filling.Move(first.until(), settingM)));
    }

    private static TrayTrace of(Trace trace, String tray) {
        return trace.trays().stream()
                .filter(t -> t.tray().name().equals(tray))
                .findFirst()
                .orElseThrow();
    }

    private static boolean harmed(Trace trace, String tray) {
        return trace.events().stream()
                .filter(e -> e.vessel().name().equals(tray))
                .anyMatch(
                        e ->
                                e.kind() == Event.Kind.STRANDED
                                        || e.kind() == Event.Kind.WILTED
                                        || e.kind() == Event.Kind.DIED);
    }

    @Test
    void the_smallest_change_in_proportion_comes_first() throws Exception {
        List<Size> changes =
                Size.changes(BENCH, new Size.Goal(OptionalInt.of(9), 1, 2, 1), new InTurn())
                        .sizes();
        assertThat(changes).isSortedAccordingTo(Comparator.comparing(Size::changeFrac));
        assertThat(changes).extracting(Size::what).contains(Size.What.VISITS);
    }

    @Test
    void a_reservoir_is_judged_by_the_trays_it_feeds() throws Exception {
        Scenario fed = drinking(400, 2, Rigs.valve());
        Tray dry = Rigs.tray("dry", new Filling.Sealed(), Rigs.drinking(5), 0);
        Scenario both = fed.withTrays(List.of(fed.trays().get(0), dry));
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 1, 1, 1);
        assertThat(Size.ofReservoir(both, "wall", goal, new InTurn()).found())
                .isEqualTo(Size.ofReservoir(fed, "wall", goal, new InTurn()).found())
                .isPresent();
    }

    @Test
    void a_reservoir_that_is_more_than_enough_is_found_smaller() throws Exception {
        // 400 L usable for 30 days at 2 L.
        Size size =
                Size.ofReservoir(
                        drinking(30, 2, Rigs.valve()),
                        "wall",
                        new Size.Goal(OptionalInt.empty(), 1, 1, 1),
                        new InTurn());
        assertThat(size.found().orElseThrow()).isCloseTo(60, within(0.06));
    }

    @Test
    void a_visit_that_is_missed_counts_as_in_a_run() throws Exception {
        // 60 L a month at the median; the thirstiest of 40 stands drinks some 1.3 times as much.
        // Of 33 visits most members miss one, which takes two months' litres less what the tray
        // lends, some 9 L; and the unluckiest miss two together.
        Size.Goal all = new Size.Goal(OptionalInt.of(30), 1, 40, 1);
        double found =
                Size.ofReservoir(drinking(1000, 2, Rigs.valve()), "wall", all, new InTurn())
                        .found()
                        .orElseThrow();
        assertThat(found).isBetween(111.0, 234.0);
    }

    @Test
    void a_reservoir_may_stand_empty_after_a_visit_that_was_missed() throws Exception {
        // Half a litre a day and a visit a week: 3.5 L at the median; whoever misses a visit lives
        // on the 9 L of the tray.
        Size.Goal all = new Size.Goal(OptionalInt.of(7), 1, 40, 1);
        Scenario rig =
                drinking(120, 0.5, Rigs.valve())
                        .withReservoirs(
                                List.of(
                                        Rigs.reservoir(
                                                0.02, 0.42, Reservoir.Refill.When.EVERY_VISIT)));
        double found = Size.ofReservoir(rig, "wall", all, new InTurn()).found().orElseThrow();
        assertThat(found).isBetween(3.5, 6.5);
    }

    @Test
    void more_frequent_visits_fill_up_what_is_refilled_at_all_and_not_in_absences() {
        Scenario never =
                Rigs.scenario(
                        30,
                        3 * 3600,
                        List.of(Rigs.reservoir(1, 0.42, Reservoir.Refill.When.NEVER)),
                        List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(2), 0)),
                        Rigs.nobody());
        LocalDate from = never.start().plusDays(5);
        Scenario every =
                Size.every(
                        never.withVisits(
                                Rigs.nobody()
                                        .withAbsences(
                                                List.of(
                                                        new Visits.Absence(
                                                                from, from.plusDays(2))))),
                        2);
        assertThat(every.reservoirs().get(0).refill().when())
                .isEqualTo(Reservoir.Refill.When.NEVER);
        for (int day = 0; day < 30; day++) {
            assertThat(every.visits().on(never.start().plusDays(day)))
                    .as("day " + day)
                    .isEqualTo(day % 2 == 0 && day != 6);
        }
    }

    @Test
    void visits_as_rare_as_now_that_fill_up_are_no_change_at_all() {
        Size visits =
                new Size(
                        Size.What.VISITS,
                        Optional.empty(),
                        3,
                        Optional.of(3.0),
                        false,
                        0.5,
                        Optional.empty(),
                        3,
                        Optional.empty(),
                        Optional.empty());
        assertThat(visits.isFillingUpEnough()).isTrue();
        assertThat(visits.changeFrac()).isZero();
        Size rarer =
                new Size(
                        Size.What.VISITS,
                        Optional.empty(),
                        4,
                        Optional.of(3.0),
                        false,
                        0.5,
                        Optional.empty(),
                        3,
                        Optional.empty(),
                        Optional.empty());
        assertThat(rarer.changeFrac()).isEqualTo(0.25);
    }

    @Test
    void crops_that_follow_are_planted_in_proportion() {
        Scenario rig = read("two-crops");
        Tray left = rig.trays().get(0);
        Tray fewer = Size.planted(left, 2);
        assertThat(left.planting().plants()).isEqualTo(6);
        assertThat(left.next()).extracting(n -> n.crop().plants()).containsExactly(8, 6);
        assertThat(fewer.planting().plants()).isEqualTo(2);
        assertThat(fewer.next()).extracting(n -> n.crop().plants()).containsExactly(3, 2);
        assertThat(Size.planted(left, 0).next())
                .extracting(n -> n.crop().plants())
                .containsExactly(1, 1);
    }
}
