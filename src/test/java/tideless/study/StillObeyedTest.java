package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.advice.Task;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.scenario.ChangedScenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.GrowthLost;
import tideless.words.VerdictWords;

/**
 * Crops in still solution whose salt climbs or that starve: whoever writes the first change into
 * the file, runs it again and goes on so comes to an end, and to a harvest.
 */
class StillObeyedTest {
    private static final Path RIGS = ObeyingRigs.STILL;

    private static final int ROUNDS = 3;

    /**
     * What salt and hunger may still take: strawberries lose 2.4 % where their feed stays within
     * the band of their crop.
     */
    private static final double LEFT_FRAC = 0.03;

    @TempDir Path folder;

    /**
     * @param name of the rig's file
     * @param least share of what the crop would give in a root zone without harm that it gives in
     *     the end: what is left of it goes to want of air and to warmth
     */
    @ParameterizedTest
    @CsvSource({
        "tomato-bucket, 0.7",
        "strawberry-gutter, 0.75",
        "two-herbs, 0.95",
        "cucumber-trough, 0.7",
        "hot-chillies, 0.7",
        "peppers-on-water, 0.7",
        "tomato-holiday, 0.7"
    })
    void the_first_change_ends_and_brings_a_harvest(String name, double least) throws IOException {
        String text = Files.readString(RIGS.resolve(name + ".toml"));
        Forecast forecast = run(text);
        GrowthLost before = lost(forecast);
        int rounds = 0;
        for (Optional<Cure> first = first(forecast); first.isPresent(); first = first(forecast)) {
            assertThat(first.get().then()).hasSizeLessThanOrEqualTo(2);
            text = obeyed(text, forecast, first.get());
            forecast = run(text);
            rounds++;
            assertTrue(rounds <= ROUNDS, () -> name + " is told more and more");
        }
        GrowthLost after = lost(forecast);
        assertThat(after.ownG()).isGreaterThan(1.01 * before.ownG());
        assertThat(1 - after.frac()).isGreaterThan(least);
        assertThat(UpkeepSearch.ofSolution(after)).isLessThan(LEFT_FRAC);
        assertTrue(forecast.advice().verdict().survives());
        assertThat(forecast.outlook().orElseThrow().chance()).isGreaterThanOrEqualTo(0.8);
    }

    /** The same rigs are drawn for both. */
    @Test
    void the_next_run_finds_as_many_rigs_to_come_through_as_were_promised() throws IOException {
        String text = Files.readString(RIGS.resolve("tomato-bucket.toml"));
        Forecast forecast = run(text);
        Cure cure = first(forecast).orElseThrow();
        Forecast next = run(obeyed(text, forecast, cure), 100);
        assertThat(cure.facts().get(Quantity.CHANCE)).isGreaterThanOrEqualTo(Outlook.SURE);
        // Within one rig of a hundred: a file tells a feed and a level to their last digit.
        assertThat(next.outlook().orElseThrow().chance())
                .isCloseTo(cure.facts().get(Quantity.CHANCE), within(0.011));
    }

    @Test
    void what_is_told_first_brings_more_by_itself_than_what_is_told_behind_it() throws IOException {
        String text = Files.readString(RIGS.resolve("tomato-bucket.toml"));
        Forecast forecast = run(text);
        Cure cure = first(forecast).orElseThrow();
        assertThat(cure.then()).isNotEmpty();
        Cure firstAlone = new Cure(cure.kind(), cure.facts());
        double first = lost(run(obeyed(text, forecast, firstAlone))).ownG();
        double behind = lost(run(obeyed(text, forecast, cure.then().get(0)))).ownG();
        assertThat(first).isGreaterThan(behind);
    }

    /** A tomato can be kept within the band of its crop, these cucumbers cannot. */
    @Test
    void a_feed_below_the_band_is_told_where_nothing_within_it_serves_nearly_as_well()
            throws IOException {
        Cure within =
                first(run(Files.readString(RIGS.resolve("tomato-bucket.toml")))).orElseThrow();
        assertThat(within.facts().has(Quantity.WANTED_EC)).isFalse();
        Cure below =
                first(run(Files.readString(RIGS.resolve("cucumber-trough.toml")))).orElseThrow();
        assertThat(below.facts().get(Quantity.WANTED_EC))
                .isLessThan(below.facts().get(Quantity.BAND_FROM));
    }

    private static GrowthLost lost(Forecast forecast) {
        return forecast.trace().trays().get(0).lost().get(0);
    }

    private Forecast run(String text) throws IOException {
        return run(text, 20);
    }

    private Forecast run(String text, int members) throws IOException {
        Path file = folder.resolve("rig.toml");
        Files.writeString(
                file,
                text.replace(
                        "../../../../../../../scenarios",
                        Path.of("scenarios").toAbsolutePath().toString()));
        try {
            Reading reading = ScenarioReader.read(file);
            assertThat(reading).isInstanceOf(Reading.Good.class);
            return Forecasts.of(((Reading.Good) reading).scenario(), 1, members, new InTurn());
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What the verdict tells to change first; empty where it tells nothing. */
    private static Optional<Cure> first(Forecast forecast) {
        List<String> lines = VerdictWords.lines(forecast);
        String last = lines.get(lines.size() - 1);
        if (!last.startsWith("Change first (")) {
            return Optional.empty();
        }
        if (last.startsWith("Change first (flushed often")) {
            return forecast.advice().tasks().stream()
                    .flatMap(task -> task.cures().stream())
                    .filter(cure -> cure.facts().has(Quantity.CHANGES_THEN))
                    .findFirst();
        }
        return last.contains(" in some): ")
                ? forecast.surer()
                : Optional.of(forecast.advice().verdict().first().orElseThrow().cures().get(0));
    }

    // ---- what is written -----------------------------------------------------------------------

    private static String obeyed(String text, Forecast forecast, Cure cure) {
        Scenario scenario = forecast.trace().scenario();
        Facts facts = cure.facts();
        return switch (cure.kind()) {
            case KEEP_OTHERWISE -> {
                String so = kept(text, facts);
                for (Cure then : cure.then()) {
                    so = kept(so, then.facts());
                }
                yield so;
            }
            case TOPPED_UP_MEANWHILE -> written(text, "[visits]", "away", away(scenario, facts));
            case AIR_STONE -> written(text, "[tray.", "aerated", "true");
            case RAIN_WATER ->
                    written(
                            text.contains("[water]") ? text : text + "\n[water]\n",
                            "[water]",
                            "source",
                            "\"rain\"");
            case LEANER_FEED ->
                    written(text, "[feed]", "ec", figure(facts, Quantity.WANTED_EC, "mS/cm"));
            case FILL_AT_THE_VISIT_BEFORE ->
                    written(text, "[reservoir.", "refill", "\"at every visit\"");
            case LOWER_LEVEL -> moved(text, forecast);
            case COOLER_ROOM, WIDER_VENTS, SHADE_OVERHEAD -> {
                String so = text;
                for (ChangedScenario.Change change : Obeyed.against(facts)) {
                    String key = change.key().substring("climate.".length());
                    so = written(so, "[climate]", key, '"' + change.value() + '"');
                }
                yield so;
            }
            case HOLD_MORE -> {
                double times = facts.get(Quantity.ENOUGH) / facts.get(Quantity.USABLE);
                Matcher across = Pattern.compile("diameter = \"([0-9.]+) cm\"").matcher(text);
                assertThat(across.find()).isTrue();
                double wider = Double.parseDouble(across.group(1)) * Math.sqrt(times);
                yield across.replaceFirst(
                        String.format(Locale.ROOT, "diameter = \"%.2f cm\"", wider));
            }
            case CLOSED_DECK -> written(text, "[tray.", "gap", "\"0 %\"");
            case MORE_LIGHT, STRONGER_LAMP -> written(text, "[lamp]", "watts", "\"80 W\"");
            default -> throw new AssertionError("nobody can write " + cure);
        };
    }

    /** As the tasks say. */
    private static String moved(String text, Forecast forecast) {
        List<String> moves =
                forecast.advice().tasks().stream()
                        .filter(task -> task.kind() == Task.Kind.MOVE_VALVE)
                        .map(
                                task ->
                                        String.format(
                                                Locale.ROOT,
                                                "{ on = %s, setting = \"%.1f mm\" }",
                                                task.due().toLocalDate(),
                                                task.measure().value()))
                        .toList();
        assertThat(moves).isNotEmpty();
        return written(text, ".valve]", "moves", "[" + String.join(", ", moves) + "]");
    }

    private static String kept(String text, Facts facts) {
        String so = text;
        if (facts.has(Quantity.WANTED_EC)) {
            so = written(so, "[feed]", "ec", figure(facts, Quantity.WANTED_EC, "mS/cm"));
        }
        if (facts.has(Quantity.EC_LIMIT)) {
            so = written(so, "[visits]", "flush", "\"at limit\"");
        }
        if (facts.has(Quantity.LATER_SHARE)) {
            so =
                    facts.get(Quantity.LATER_SHARE) > 0
                            ? written(so, ".hand]", "water_share", Obeyed.shares(facts))
                            : written(so, ".hand]", "with", "\"solution\"");
        }
        if (facts.has(Quantity.LEVEL)) {
            so = written(so, ".hand]", "to", figure(facts, Quantity.LEVEL, "mm"));
        }
        if (facts.has(Quantity.START_LEVEL)) {
            so = written(so, "[tray.", "start_level", figure(facts, Quantity.START_LEVEL, "mm"));
        }
        if (!facts.of().isEmpty()) {
            so =
                    written(
                            so,
                            "[visits]",
                            "days",
                            "[\"" + facts.of().replace(", ", "\", \"") + "\"]");
        }
        return so;
    }

    private static String figure(Facts facts, Quantity quantity, String unit) {
        return String.format(Locale.ROOT, "\"%.2f %s\"", facts.get(quantity), unit);
    }

    private static String away(Scenario scenario, Facts facts) {
        Visits.Absence absence = scenario.visits().absences().get(0);
        List<String> parts = new ArrayList<>();
        double every = facts.has(Quantity.EVERY) ? facts.get(Quantity.EVERY) : 1;
        LocalDate from = absence.from();
        for (double day = 0; day <= facts.get(Quantity.LONGEST); day += every) {
            LocalDate comes = facts.on().toLocalDate().plusDays((long) day);
            if (comes.isAfter(from)) {
                parts.add("{ from = " + from + ", to = " + comes.minusDays(1) + " }");
            }
            from = comes.plusDays(1);
        }
        if (!from.isAfter(absence.to())) {
            parts.add("{ from = " + from + ", to = " + absence.to() + " }");
        }
        return "[" + String.join(", ", parts) + "]";
    }

    /** With a key of the first table whose header holds a text, in place of what it says. */
    private static String written(String text, String table, String key, String value) {
        String of = table.startsWith("[") ? table : "";
        Matcher header =
                Pattern.compile(
                                "(?m)^"
                                        + Pattern.quote(of)
                                        + ".*"
                                        + (of.isEmpty() ? Pattern.quote(table) : "")
                                        + ".*$")
                        .matcher(text);
        do {
            assertThat(header.find()).as(table).isTrue();
        } while (!header.group().contains(table));
        int next = text.indexOf("\n[", header.end());
        int end = next < 0 ? text.length() : next;
        String body = text.substring(header.end(), end);
        String without = body.replaceAll("(?m)^" + key + " = .*\\R?", "");
        return text.substring(0, header.end())
                + "\n"
                + key
                + " = "
                + value
                + without
                + text.substring(end);
    }
}
