package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.scenario.ChangedScenario;
import tideless.scenario.ChangedScenario.Change;
import tideless.scenario.Reading;
import tideless.words.VerdictWords;

/** What is named first is what most helps in runs; each is obeyed, and helps. */
class TriedFirstTest {
    private static final Path RIGS =
            Path.of("src", "test", "resources", "tideless", "study", "rigs");

    private static final Path GLASSHOUSE = Path.of("scenarios", "glasshouse-tomato-trough.toml");

    private static final Path FLUSHED = RIGS.resolve("often-flushed.toml");

    private static final Path LOW = RIGS.resolve("low-filled-bucket.toml");

    private static final Path TUNNEL = RIGS.resolve("hot-tunnel.toml");

    private static final Path SALTING = RIGS.resolve("salting-bucket.toml");

    private static final Path SMALL = RIGS.resolve("small-bucket.toml");

    private static final int MEMBERS = 20;

    private static Scenario read(Path path, List<Change> changes) {
        Reading reading = ChangedScenario.read(path, changes);
        assertThat(reading).isInstanceOf(Reading.Good.class);
        return ((Reading.Good) reading).scenario();
    }

    private static Forecast run(Path path, Change... changes) throws InterruptedException {
        return Forecasts.of(read(path, List.of(changes)), 1, MEMBERS, new InTurn());
    }

    private static double chance(Scenario scenario) throws InterruptedException {
        return Outlook.chance(scenario, MEMBERS, 1, new InTurn());
    }

    private static String last(Forecast forecast) {
        List<String> lines = VerdictWords.lines(forecast);
        return lines.get(lines.size() - 1);
    }

    // ---- a glasshouse whose drum runs dry and whose salt climbs --------------------------------

    @Test
    void more_visits_come_before_refills_that_serve_fewer_rigs() throws InterruptedException {
        Forecast forecast = run(GLASSHOUSE);
        assertThat(OtherThanRefills.isAsked(forecast.advice().verdict().first())).isTrue();
        Cure cure = forecast.surer().orElseThrow();
        assertThat(last(forecast)).startsWith("Change first (trough").contains("visits.days");
        String days = "[\"" + cure.facts().of().replace(", ", "\", \"") + "\"]";
        double visited = chance(read(GLASSHOUSE, List.of(new Change("visits.days", days))));
        Scenario given = read(GLASSHOUSE, List.of());
        double refilled =
                chance(
                        given.withReservoirs(
                                given.reservoirs().stream()
                                        .map(
                                                r ->
                                                        r.withRefill(
                                                                r.refill()
                                                                        .on(
                                                                                Reservoir.Refill
                                                                                        .When
                                                                                        .EVERY_VISIT)))
                                        .toList()));
        assertThat(visited)
                .isEqualTo(cure.facts().get(Quantity.CHANCE), within(1e-9))
                .isGreaterThanOrEqualTo(refilled + 0.05);
    }

    @Test
    void refills_that_serve_most_rigs_stay_first() throws InterruptedException {
        Scenario scenario = read(GLASSHOUSE, List.of());
        Outlook outlook = Outlook.of(scenario, 2, 1, new InTurn()).orElseThrow();
        Outlook sure =
                new Outlook(
                        2,
                        0.95,
                        outlook.harms(),
                        List.of(),
                        List.of(),
                        List.of(),
                        outlook.feedLitres());
        assertThat(OtherThanRefills.cure(scenario, sure, 1, new InTurn())).isEmpty();
    }

    // ---- a bucket filled once, below its cup ---------------------------------------------------

    @Test
    void a_bucket_filled_too_low_is_filled_higher_first() throws InterruptedException {
        Forecast forecast = run(LOW);
        assertThat(forecast.outlook().orElseThrow().chance()).isLessThan(0.8);
        Cure cure = forecast.surer().orElseThrow();
        assertThat(cure.facts().get(Quantity.START_LEVEL)).isEqualTo(253, within(0.1)); // 13 mm
        assertThat(last(forecast)).contains("a first filling to 253 mm");
        double filled = chance(read(LOW, List.of(new Change("tray.bucket.start_level", "253 mm"))));
        assertThat(filled)
                .isEqualTo(cure.facts().get(Quantity.CHANCE), within(1e-9))
                .isGreaterThanOrEqualTo(Outlook.SURE);
    }

    /** The cup is wet by 13 mm already. */
    @Test
    void one_that_wets_its_cup_is_not() throws InterruptedException {
        Scenario wet = read(LOW, List.of(new Change("tray.bucket.start_level", "253 mm")));
        Outlook low = run(LOW).outlook().orElseThrow();
        assertThat(FirstFilling.cure(wet, low, 1, new InTurn())).isEmpty();
    }

    // ---- buckets that are topped up by hand ----------------------------------------------------

    @Test
    void plain_water_in_the_top_ups_is_tried_against_salt_and_helps() throws InterruptedException {
        Forecast salty = run(SALTING);
        Cure cure = salty.advice().verdict().first().orElseThrow().cures().get(0);
        List<Change> changes = new ArrayList<>();
        for (Cure part : Stream.concat(Stream.of(cure), cure.then().stream()).toList()) {
            if (part.facts().has(Quantity.LATER_SHARE)) {
                changes.add(
                        new Change("tray.bucket.hand.water_share", Obeyed.shares(part.facts())));
            }
        }
        assertThat(changes).hasSize(1);
        double was = salty.trace().trays().get(0).lost().get(0).ownG();
        Forecast thinned = Forecasts.of(read(SALTING, changes), 1);
        assertThat(thinned.trace().trays().get(0).lost().get(0).ownG()).isGreaterThan(1.5 * was);
        assertThat(thinned.advice().verdict().survives()).isTrue();
    }

    @Test
    void a_vessel_that_no_upkeep_saves_is_told_to_be_wider() throws InterruptedException {
        Scenario small = read(SMALL, List.of());
        Outlook outlook = Outlook.of(small, MEMBERS, 1, new InTurn()).orElseThrow();
        assertThat(outlook.chance()).isLessThan(Outlook.SURE);
        Cure cure =
                LargerVessel.cure(small, outlook, outlook.chance(), 1, new InTurn()).orElseThrow();
        double times = cure.facts().get(Quantity.ENOUGH) / cure.facts().get(Quantity.USABLE);
        double across = 28 * Math.sqrt(times);
        Change wider = new Change("tray.bucket.diameter", across + " cm");
        assertThat(chance(read(SMALL, List.of(wider))))
                .isEqualTo(cure.facts().get(Quantity.CHANCE), within(0.051))
                .isGreaterThanOrEqualTo(outlook.chance() + 0.05);
        assertThat(LargerVessel.cure(small, outlook, 0.9, 1, new InTurn())).isEmpty();
    }

    /**
     * Two weeks in July: no neighbour's round that was tried keeps it alive in so small a bucket.
     */
    @Test
    void somebody_to_come_meanwhile_is_told_only_where_a_trial_bears_it_out() {
        Forecast left =
                Forecasts.of(
                        read(
                                SMALL,
                                List.of(
                                        new Change("visits.days", "[\"mon\", \"thu\"]"),
                                        new Change(
                                                "visits.away",
                                                "[{ from = 2026-07-10, to = 2026-07-23 }]"))),
                        1);
        assertThat(left.advice().verdict().survives()).isFalse();
        assertThat(left.advice().warnings())
                .flatExtracting(Warning::cures)
                .filteredOn(cure -> cure.kind() == Cure.Kind.TOPPED_UP_MEANWHILE)
                .allMatch(cure -> cure.facts().has(Quantity.LONGEST));
    }

    // ---- a tray that is flushed every week -----------------------------------------------------

    private static List<Task> flushes(Forecast forecast) {
        return forecast.advice().tasks().stream().filter(Task::isChange).toList();
    }

    @Test
    void a_feed_that_halves_the_flushes_is_told_first() throws InterruptedException {
        Forecast often = run(FLUSHED);
        assertThat(flushes(often)).hasSizeGreaterThan(FewerFlushes.OFTEN);
        Cure cure = flushes(often).get(0).cures().get(0);
        assertThat(last(often)).startsWith("Change first (flushed often, tray bed): a feed of ");
        Forecast leaner =
                run(
                        FLUSHED,
                        new Change("feed.ec", cure.facts().get(Quantity.WANTED_EC) + " mS/cm"));
        assertThat(flushes(leaner).size()).isLessThanOrEqualTo(flushes(often).size() / 2);
        assertThat(leaner.advice().verdict().survives()).isTrue();
        double was = often.trace().trays().get(0).lost().get(0).ownG();
        double is = leaner.trace().trays().get(0).lost().get(0).ownG();
        assertThat(is).isGreaterThan(0.99 * was);
        assertThat(last(leaner)).doesNotContain("flushed often");
    }

    @Test
    void no_feed_below_the_band_is_told_for_it() throws InterruptedException {
        Forecast bound = run(FLUSHED, new Change("tray.bed.limits.ec_low", "2.1 mS/cm"));
        assertThat(flushes(bound)).hasSizeGreaterThan(FewerFlushes.OFTEN);
        assertThat(flushes(bound))
                .noneMatch(
                        task ->
                                task.cures().stream()
                                        .anyMatch(c -> c.facts().has(Quantity.CHANGES_THEN)));
    }

    // ---- heat ----------------------------------------------------------------------------------

    private static Optional<Warning> of(Forecast forecast, Warning.Kind kind) {
        return forecast.advice().warnings().stream().filter(w -> w.kind() == kind).findFirst();
    }

    /** Days beyond, by how far the worst of them lies beyond, K d. */
    private static double excess(Optional<Warning> warning) {
        return warning.map(
                        w ->
                                w.cause().facts().get(Quantity.DAYS_BEYOND)
                                        * (w.measure().value() - w.measure().limit()))
                .orElse(0.0);
    }

    @Test
    void what_halves_the_heat_of_a_tunnel_is_told_with_its_keys() {
        Forecast hot = Forecasts.of(read(TUNNEL, List.of()), 1);
        Cure cure = of(hot, Warning.Kind.TOO_HOT).orElseThrow().cures().get(0);
        assertThat(cure.kind()).isEqualTo(Cure.Kind.WIDER_VENTS);
        Forecast vented = Forecasts.of(read(TUNNEL, Obeyed.against(cure.facts())), 1);
        assertThat(excess(of(vented, Warning.Kind.TOO_HOT)))
                .isLessThanOrEqualTo(excess(of(hot, Warning.Kind.TOO_HOT)) / 2);
        double was = hot.trace().trays().get(0).lost().get(0).ownG();
        assertThat(vented.trace().trays().get(0).lost().get(0).ownG()).isGreaterThan(0.99 * was);
    }

    /** Neither shade nor vents nor a closed deck cool the water of a tunnel in June by half. */
    @Test
    void where_nothing_in_the_file_helps_that_is_said() {
        Forecast hot = Forecasts.of(read(TUNNEL, List.of()), 1);
        List<Cure> cures = of(hot, Warning.Kind.WARM_SOLUTION).orElseThrow().cures();
        assertThat(cures)
                .noneMatch(
                        c ->
                                c.kind() == Cure.Kind.SHADE_OVERHEAD
                                        || c.kind() == Cure.Kind.WIDER_VENTS
                                        || c.kind() == Cure.Kind.CLOSED_DECK);
        Cure place = cures.get(cures.size() - 1);
        assertThat(place.kind()).isEqualTo(Cure.Kind.COOLER_PLACE);
        assertThat(place.facts().of()).contains("shade overhead").contains("a deck without gaps");
    }

    @Test
    void a_hot_room_is_told_how_cool_would_do() {
        Path bench = Path.of("scenarios", "calm-bench.toml");
        Change[] summer = {
            new Change("climate.day_temperature", "30 degC"),
            new Change("climate.night_temperature", "28 degC")
        };
        Forecast hot = Forecasts.of(read(bench, List.of(summer)), 1);
        Warning warm = of(hot, Warning.Kind.WARM_SOLUTION).orElseThrow();
        Cure cure = warm.cures().get(0);
        assertThat(cure.kind()).isEqualTo(Cure.Kind.COOLER_ROOM);
        Forecast cooler = Forecasts.of(read(bench, Obeyed.against(cure.facts())), 1);
        assertThat(warmth(of(cooler, Warning.Kind.WARM_SOLUTION)))
                .isLessThanOrEqualTo(warmth(Optional.of(warm)) / 2);
    }

    /** Days from the first to the last, by how far the worst lies beyond, K d. */
    private static double warmth(Optional<Warning> warning) {
        return warning.map(
                        w ->
                                (1 + Duration.between(w.from(), w.until()).toDays())
                                        * (w.measure().value() - w.measure().limit()))
                .orElse(0.0);
    }
}
