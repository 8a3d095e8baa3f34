package tideless.report;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.study.Forecast;
import tideless.study.Obeyed;
import tideless.study.ObeyingTest;
import tideless.words.WarningWords;

/**
 * Writes docs/advice-before-after.md: what the advice asked of a grower at first, what it asks now,
 * and what it still asks of one who did all of it.
 */
final class AdviceBeforeAfter {
    private static final Path PAGE = Path.of("docs", "advice-before-after.md");
    private static final Path BEFORE =
            Path.of("src", "test", "resources", "tideless", "report", "advice-before.csv");
    private static final Path DEFENDED =
            Path.of("src", "test", "resources", "tideless", "report", "advice-defended.csv");
    private static final int WIDTH = 100;

    private AdviceBeforeAfter() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, page(), StandardCharsets.UTF_8);
    }

    private static String page() throws IOException {
        Map<String, String[]> before = new TreeMap<>();
        for (String row : Files.readAllLines(BEFORE, StandardCharsets.UTF_8)) {
            if (!row.startsWith("#") && !row.startsWith("scenario")) {
                String[] cells = row.split(",");
                before.put(cells[0], cells);
            }
        }
        StringBuilder text = new StringBuilder();
        text.append("# The advice before and after\n\n");
        text.append(
                "Written by `AdviceBeforeAfter.main` of the tests, from the project's folder; ");
        text.append(
                "made again whenever numbers move.\n*Before* is the advice as it stood before it ");
        text.append(
                "held figures (its counts are kept in the tests' resources), *now* is today's,\n");
        text.append(
                "*obeyed* a second run that does what today's first run advised: it refills when ");
        text.append("it would not last, takes the larger\nreservoir, flushes where told. Flushes ");
        text.append("count fresh solution too; lines are those on a screen of 100 columns.\n\n");
        text.append("| scenario | tasks | flushes | drained, L | warnings | lines |\n");
        text.append("| --- | --- | --- | --- | --- | --- |\n");
        StringBuilder left = new StringBuilder();
        StringBuilder obeying = new StringBuilder();
        List<String> why = Files.readAllLines(DEFENDED, StandardCharsets.UTF_8);
        for (Path path : scenarios()) {
            String name = Path.of("scenarios").relativize(path).toString().replace('\\', '/');
            Obeyed runs = Obeyed.of(path);
            Forecast now = runs.first();
            Forecast obeyed = runs.second();
            obeying.append(row(name, runs));
            text.append("| ").append(name);
            String[] was = before.getOrDefault(name, new String[] {name, "", "", "", "", ""});
            int[] order = {1, 2, 4, 3, 5};
            String[] is = counts(now);
            String[] then = counts(obeyed);
            for (int i = 0; i < order.length; i++) {
                String old = was[order[i]].isEmpty() ? "-" : was[order[i]];
                text.append(" | ").append(old).append(", now ").append(is[i]);
                text.append(", obeyed ").append(then[i]);
            }
            text.append(" |\n");
            left.append("\n## ").append(name).append("\n\n");
            if (now.advice().warnings().isEmpty()) {
                left.append("No warnings.\n");
            }
            now.advice()
                    .warnings()
                    .forEach(
                            w ->
                                    left.append("- ")
                                            .append(WarningWords.text(w))
                                            .append(" *")
                                            .append(defended(why, name, w))
                                            .append("*\n"));
        }
        for (Path path : ObeyingTest.statedRigs()) {
            obeying.append(row(path.getFileName().toString(), Obeyed.of(path)));
        }
        text.append(OBEYING).append(obeying).append(TAKEN_AWAY).append(READ);
        text.append("\n# What is still warned of, and why\n\n");
        text.append(
                "Each with its figure, its limit and its cause; in italics the sentence that defends it.\n");
        return text.append(left).toString();
    }

    private static String defended(List<String> why, String scenario, Warning warning) {
        String start = scenario + ";" + warning.kind() + ";";
        return why.stream()
                .filter(line -> line.startsWith(start))
                .map(line -> line.substring(start.length()))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("nobody defends " + start));
    }

    private static String row(String name, Obeyed runs) {
        List<String> wishes = Obeyed.wishes(runs.third());
        return String.format(
                Locale.ROOT,
                "| %s | %+.1f %% | %.0f, %.0f, %.0f | %s, %s, %s | %s |\n",
                name,
                Math.round(-1000 * runs.worstLoss()) / 10.0,
                Obeyed.dryHours(runs.first()),
                Obeyed.dryHours(runs.second()),
                Obeyed.dryHours(runs.third()),
                lives(runs.first()),
                lives(runs.second()),
                lives(runs.third()),
                wishes.isEmpty() ? "nothing" : "**" + String.join(", ", wishes) + "**");
    }

    private static String lives(Forecast forecast) {
        return forecast.advice().verdict().survives() ? "yes" : "no";
    }

    private static final String OBEYING =
            """

            # Obeying

            Each rig is run as it stands, then as its grower would run it who does every task and the first cure of every
            warning, then so once more after the second run's advice. Rigs 01 to 10 were stated before one of them was run
            (`src/test/resources/tideless/study/obeying`), 11 to 20 once their answers had been read; `ObeyingTest` holds the
            table. Yields are weighed at one age. Cures of air, light and visiting days are beyond what is obeyed here, save a
            fan and somebody who tops up by hand. In bold what a third run still wants changed of rig,
            feed or valve, or done: a miss of the advice.

            | rig | yield of the worst tray, second against first | dry hours | survives | the third still asks |
            | --- | --- | --- | --- | --- |
            """;

    private static final String READ =
            """

            # Read as a whole

            The answers of `run` on the ten rigs above (hard tap, rain, a hot room among them), on a cold room (11/6 degC) and with 0, 1
            and 40 plants, and of `check` with 0 and 40, were read once from top to bottom as a grower would. What was odd, and is mended:

            - hard tap blamed the roots for a pH that the feed itself brought, and asked for more ammonium: now the water is named,
              with rain as the cure;
            - a bench without plants "survived" its holidays and was to be filled up for them: now nothing grows, and that is said;
            - a salad in the cold ended without a harvest and without a word: now the days it is short of are told;
            - "a stronger feed" did not say how strong.

            Rigs 11 to 20 were read likewise (`check` and `run --all`), by what a grower of years would say to each line. Mended:

            - top-ups and refills of nothing on the first days, and of drops later: a jug is carried for 2 mm in a tray and for a
              twentieth of a reservoir; none any more for a crop that is lost;
            - "refill on the visit before" for a reservoir that was filled on that very visit: it wants more litres;
            - "fill higher at each top-up" for a fortnight's holiday: now who is to come by when, or how many litres it takes;
            - a bucket topped up with plain water was to have "fresh solution sooner": now feed in place of the water;
            - a feed of 3.2 mS/cm for lettuce was "salts that stay behind": now the feed is too strong, and told is how strong;
            - longer hours of lamp for spinach that bolts in them; a lamp that nobody has; dry nights in the open;
            - a stake for strawberries, a brush for cucumbers, which set without pollen;
            - seedlings sown before a holiday, eighteen days too soon;
            - a flush told with the reading of three weeks before;
            - half of the rigs like a jar of basil run dry, and the lamp was to be changed first: now the jar;
            - lime and phosphate in two warnings that said the same; "every tray" to be read, those that are cut as well.

            What `new` writes for each crop by valve, by hand and filled once, and thirty rigs more (a cold garage, softened water, a
            stuck valve, a bucket filled once, a glasshouse, drowned roots, twelve trays), were read likewise. Mended:

            - one filling that "lasts the whole crop" lasted until the crop was lost: now it is tried, in a run with a larger tray,
              and where it would take more than twice the litres the tray is topped up;
            - a tray that dried out below a reservoir that was filled at every visit was to have the reservoir "refilled before it is
              empty": now what the reservoir itself wants, more litres or more visits;
            - drowned plants were to have more water, and those below a stuck valve smaller top-ups;
            - a reservoir that nobody refills, to be visited more often; a tray topped up to below its cups as well;
            - softened tap water "in place of feed" against its own sodium; hard water that leaves no room, to be made stronger;
            - a flush "only if the plain water told with the warning does not do", where none was told;
            - "a leaner feed" without a figure; none that would do, in the sun: fresh solution at a stated reading then;
            - all of the plain water at once, which left a refill without nutrients: half of each;
            - two strengths for one feed in one output; fresh solution for a tray in which salts pile up later;
            - what to change first of a tomato at 9 degC: a leaner feed; now a warmer place;
            - the nursery before a level 13 mm higher for seedlings that are just out of reach;
            - one cure told in full under four warnings.

            Odd and left: after a long absence a tray is filled to its mark at once, which drowns air roots for a week; topping it up
            by steps would leave it dry sooner. Acid and ammonium are told without a figure.
            """;

    private static final String TAKEN_AWAY =
            """

            # Warnings taken away, and why the rig is sound

            - *pH out* of all scenarios: how roots move the pH hangs on contents known to a tenth or so; it is a warning
              only where it is far out of band whichever way that doubt falls, for three days of a week, else a note.
            - *Precipitate* of lime or phosphate where the pH is within that doubt; gypsum falls at any pH and is told.
            - *Too salty* of lettuce and basil at 1.8 to 2.5 mS/cm: the limit is now the EC that costs 5 % of growth.
            - *Too salty* for hours before a flush that comes anyway, and at a hundredth above the limit: a band for the meter
              (5 %) and a day of patience.
            - *Too salty* of a tray that is flushed within four days anyway (the trough, the low-held tomatoes): the limit
              costs 5 %, so four days of it half a hundredth; the flush is a task, with its cures.
            - *Too lean* of a tomato on 1.6 mS/cm, of a chilli on 1.2: by the end both stand in twice that, since they drink
              more than they eat; fed stronger, as was told, they grew 1 % less and were flushed.
            - *Ran dry* of a reservoir for less than six hours before its refill: what its trays hold is enough.
            - *Precipitate* of gypsum in the dregs of a tank that has dried out: it wants water.
            - *Too lean* of seedlings in their first weeks: half the grown crop's least is enough until the canopy closes.
            - *Short of air* by the likely figures alone: oxygen is known to a factor of six, so that only what even the kindest
              figures leave short is told.
            - *Too lean* and *short of one nutrient* that begin in the week before a harvest: growers let a salad eat its tray up.
            - *Warm solution* by less than a kelvin above the limit: no thermometer in a tray is surer.
            - *Air roots drowned* after a flush of the tool's own: it fills no higher than the roots are used to.
            - *Too humid* in the open: dew falls there every clear night, and nobody can dry it.
            - *Precipitate* of each mineral by itself: what one cure helps is one warning; and in a tray what falls out of
              the reservoir above it is told there.
            - *Salt wilted* of a vessel drunk nearly empty: kept full it would suit the crop, so it wants water and says so.
            - *Too lean* beside *short of one nutrient*: one hunger, told by the name of what runs out.
            - *Too cold* of days in which a hardy crop only grows slowly: it comes so much later and is no worse for it.
            - *Lower the valve*, told of every valve tray, was never simulated and doubled the flushes; a valve that already
              serves cup and roots is left alone.
            - *A reservoir low before a holiday*: a task now (fill up the day before), not a warning.
            """;

    private static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            return files.filter(p -> p.toString().endsWith(".toml")).sorted().toList();
        }
    }

    /** Tasks, flushes, litres drained, warnings, lines. */
    private static String[] counts(Forecast forecast) {
        StringWriter table = new StringWriter();
        ForecastTable.print(
                new PrintWriter(table),
                forecast,
                false,
                WIDTH,
                ForecastTable.Depth.ALL,
                Telling.METRIC);
        long flushes = 0;
        double drained = 0;
        for (Task task : forecast.advice().tasks()) {
            if (task.kind() == Task.Kind.FLUSH || task.kind() == Task.Kind.FRESH_SOLUTION) {
                flushes++;
                drained += task.drainLitres();
            }
        }
        return new String[] {
            Integer.toString(forecast.advice().tasks().size()),
            Long.toString(flushes),
            String.format(Locale.ROOT, "%.1f", drained),
            Integer.toString(forecast.advice().warnings().size()),
            Long.toString(table.toString().lines().count())
        };
    }
}
