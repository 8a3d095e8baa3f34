package tideless.study;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import tideless.rig.Filling;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.solution.Brine;
import tideless.study.threads.ThreadPool;

/**
 * Makes docs/validation-decisions.md. What was fixed beforehand stands in the page as committed.
 */
final class ValidateDecisions {
    private static final double THIRD_WIDER = 4 / 3.0;
    private static final String RESULTS = "## What came of it";

    private final StringBuilder page = new StringBuilder();
    private final Workers workers = ThreadPool.ofAllCores();

    private ValidateDecisions() {}

    /**
     * Writes the page below what stands above its results.
     *
     * @param args the page; docs/validation-decisions.md where none is named
     */
    public static void main(String[] args) throws Exception {
        Path path = Path.of(args.length > 0 ? args[0] : "docs/validation-decisions.md");
        String before = Files.readString(path);
        int results = before.indexOf(RESULTS);
        String head = results < 0 ? before + "\n" : before.substring(0, results);
        ValidateDecisions made = new ValidateDecisions();
        made.coverage();
        made.closedForms();
        made.quantiles();
        made.shares();
        Files.writeString(path, head + made.page);
    }

    private void say(String format, Object... figures) {
        page.append(String.format(Locale.ROOT, format, figures)).append('\n');
    }

    private static Scenario read(String name) {
        Path file = Path.of("scenarios", name + ".toml");
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private void coverage() throws InterruptedException {
        say(RESULTS);
        say("");
        for (double times : new double[] {1, THIRD_WIDER}) {
            say(
                    times == 1
                            ? "Growers as the program believes, in per cent, by ranks (and in the band as printed):"
                            : "Growers a third less like the program's beliefs, the chance of missed visits apart:");
            say("");
            say("| scenario | first refill | first harvest | litres |");
            say("| --- | --- | --- | --- |");
            SplittableRandom random = new SplittableRandom(Growers.SEED);
            Map<Growers.Figure, Growers.Held> all = new EnumMap<>(Growers.Figure.class);
            for (String name : Growers.scenarios()) {
                Map<Growers.Figure, Growers.Held> held =
                        Growers.of(read(name), Growers.EACH, random, times, workers);
                row(name, held);
                held.forEach((figure, of) -> all.merge(figure, of, Growers.Held::and));
            }
            row("**all 300**", all);
            say("");
        }
    }

    private void row(String name, Map<Growers.Figure, Growers.Held> held) {
        StringBuilder row = new StringBuilder("| " + name + " |");
        for (Growers.Figure figure : Growers.Figure.values()) {
            Growers.Held of = held.get(figure);
            row.append(
                    String.format(
                            Locale.ROOT,
                            " %.0f (%.0f) |",
                            100 * of.rankFrac(),
                            100 * of.bandFrac()));
        }
        say("%s", row);
    }

    private void closedForms() throws InterruptedException {
        say("## Closed forms");
        say("");
        say("A tray that drinks a stated thirst and evaporates nothing, nobody refilling.");
        say("`SizeTest` and `AwayTest` hold both to 0.1 %%.");
        say("");
        say("| asked | closed form | found | off |");
        say("| --- | --- | --- | --- |");
        double litres = 2 * 400 - 200 * (0.05 - 2 * Brine.FILM_M + Math.log(10) * Brine.FILM_M);
        Scenario rig =
                Rigs.scenario(
                        400,
                        3 * 3600,
                        List.of(Rigs.reservoir(1, 0.42, Reservoir.Refill.When.NEVER)),
                        List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(2), 0)),
                        Rigs.nobody());
        double found =
                Size.ofReservoir(rig, "wall", new Size.Goal(OptionalInt.empty(), 1, 1, 1), workers)
                        .found()
                        .orElseThrow();
        row("`size`: usable litres for 400 days at 2 L a day", litres, found, "L");
        Scenario sealed =
                Rigs.scenario(
                        700,
                        3 * 3600,
                        List.of(),
                        List.of(Rigs.tray("t", new Filling.Sealed(), Rigs.drinking(0.02), 0)),
                        Rigs.nobody());
        double days =
                ((0.05 - 2 * Brine.FILM_M) + Math.log(10) * Brine.FILM_M) * 200 / 0.02 - 8 / 24.0;
        Away away =
                Away.of(sealed, new Away.Question(sealed.start(), 700, List.of()), 1, 1, workers);
        row(
                "`away`: days of a tray of 10 L at 20 mL a day",
                days,
                away.leaves().get(0).asItStands().days().middle(),
                "d");
        say("");
    }

    private void row(String what, double exact, double found, String unit) {
        say(
                "| %s | %.3f %s | %.3f %s | %.3f %% |",
                what, exact, unit, found, unit, 100 * (found / exact - 1));
    }

    private void quantiles() {
        say("## Quantiles against an exact distribution");
        say("");
        say(
                "Thirst alone is unknown, lognormal by 0.12; the day a reservoir is empty has then the");
        say(
                "quantiles exp(-+0.12 x 1.2816). Sum of how far the three quantiles are off, in per cent");
        say("(`OutlookTest`; what the tray itself lends leaves some 0.1).");
        say("");
        say("| members | off |");
        say("| --- | --- |");
        Scenario rig =
                Rigs.scenario(
                        45,
                        3 * 3600,
                        List.of(Rigs.reservoir(0.1, 0.42, Reservoir.Refill.When.WHEN_EMPTY)),
                        List.of(Rigs.tray("t", Rigs.valve(), Rigs.drinking(2), 0)),
                        Rigs.nobody());
        Surroundings shared = Surroundings.forSeasons(rig);
        Unknowns thirst = Unknowns.of(rig).only(Set.of(Unknown.Kind.THIRST));
        double statedS = firstS(Simulation.season(rig, shared));
        for (int members : new int[] {16, 64, 256, 1024}) {
            double[][] at = thirst.quantiles(members, 5);
            Band band =
                    Band.of(
                            IntStream.range(0, members)
                                    .mapToDouble(
                                            i ->
                                                    firstS(thirst.member(at[i]).season(shared))
                                                            / statedS)
                                    .toArray());
            double far = Math.exp(0.12 * 1.281552);
            double off =
                    Math.abs(band.low() * far - 1)
                            + Math.abs(band.middle() - 1)
                            + Math.abs(band.high() / far - 1);
            say("| %d | %.2f |", members, 100 * off);
        }
        say("");
    }

    private static double firstS(Season season) {
        return season.events().stream()
                .filter(e -> e.kind() == Event.Kind.REFILL)
                .findFirst()
                .orElseThrow()
                .atS();
    }

    private void shares() {
        say("## Shares of variance against published functions");
        say("");
        say(
                "Functions of Ishigami and Homma (1990; a = 7, b = 0.1) and of Sobol (g, with a = 0, 1,");
        say(
                "4.5, 9), whose shares are known in closed form (`SobolIndicesTest`, within 0.02 of 4096");
        say("points).");
        say("");
        say(
                "| function, unknown | alone | found +- error, 256 | 4096 | total | found, 256 | 4096 |");
        say("| --- | --- | --- | --- | --- | --- | --- |");
        double pi4 = Math.pow(Math.PI, 4);
        double v1 = 0.5 * (1 + 0.1 * pi4 / 5) * (1 + 0.1 * pi4 / 5);
        double v2 = 49.0 / 8;
        double v13 = 0.01 * pi4 * pi4 * (1.0 / 18 - 1.0 / 50);
        double all = v1 + v2 + v13;
        shares(
                "Ishigami",
                ValidateDecisions::ishigami,
                new double[] {v1 / all, v2 / all, 0},
                new double[] {(v1 + v13) / all, v2 / all, v13 / all});
        double[] a = {0, 1, 4.5, 9};
        double[] alone = new double[a.length];
        double[] total = new double[a.length];
        double product = 1;
        for (double one : a) {
            product *= 1 + part(one);
        }
        for (int i = 0; i < a.length; i++) {
            alone[i] = part(a[i]) / (product - 1);
            total[i] = part(a[i]) * product / (1 + part(a[i])) / (product - 1);
        }
        shares("g", u -> g(u, a), alone, total);
    }

    private static double part(double a) {
        return 1 / (3 * (1 + a) * (1 + a));
    }

    private static double g(double[] u, double[] a) {
        double g = 1;
        for (int i = 0; i < a.length; i++) {
            g *= (Math.abs(4 * u[i] - 2) + a[i]) / (1 + a[i]);
        }
        return g;
    }

    private static double ishigami(double[] u) {
        double x1 = Math.PI * (2 * u[0] - 1);
        double x2 = Math.PI * (2 * u[1] - 1);
        double x3 = Math.PI * (2 * u[2] - 1);
        return Math.sin(x1)
                + 7 * Math.sin(x2) * Math.sin(x2)
                + 0.1 * Math.pow(x3, 4) * Math.sin(x1);
    }

    private void shares(
            String name, ToDoubleFunction<double[]> function, double[] alone, double[] total) {
        SobolIndices few = found(function, alone.length, 256);
        SobolIndices many = found(function, alone.length, 4096);
        for (int i = 0; i < alone.length; i++) {
            say(
                    "| %s, %d | %.3f | %.3f +- %.3f | %.3f +- %.3f | %.3f | %.3f +- %.3f | %.3f +- %.3f |",
                    name,
                    i + 1,
                    alone[i],
                    few.first()[i],
                    few.firstError()[i],
                    many.first()[i],
                    many.firstError()[i],
                    total[i],
                    few.total()[i],
                    few.totalError()[i],
                    many.total()[i],
                    many.totalError()[i]);
        }
    }

    private static SobolIndices found(
            ToDoubleFunction<double[]> function, int unknowns, int points) {
        List<int[]> each = IntStream.range(0, unknowns).mapToObj(i -> new int[] {i}).toList();
        SobolIndices.Plan plan = SobolIndices.Plan.of(unknowns, each, points, 1);
        double[] results =
                IntStream.range(0, plan.size())
                        .mapToDouble(job -> function.applyAsDouble(plan.point(job)))
                        .toArray();
        return plan.shares(results, 1);
    }
}
