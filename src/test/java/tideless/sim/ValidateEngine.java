package tideless.sim;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import jdk.jfr.Recording;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordedFrame;
import jdk.jfr.consumer.RecordedStackTrace;
import jdk.jfr.consumer.RecordingFile;
import tideless.physics.LiquidWater;
import tideless.rig.Filling;
import tideless.rig.Numerics;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Reservoir.Refill.When;
import tideless.rig.Scenario;
import tideless.rig.TestScenario;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Ensemble;
import tideless.study.Tolerances;
import tideless.study.threads.ThreadPool;

/** Makes docs/validation-engine.md: {@code java -cp ... tideless.sim.ValidateEngine FILE}. */
public final class ValidateEngine {
    private static final int ORDER_RIGS = 40;

    private ValidateEngine() {}

    public static void main(String[] args) throws IOException {
        StringBuilder page = new StringBuilder();
        page.append(
                """
                # The water engine, checked

                Made by `tideless.sim.ValidateEngine` (test scope); do not edit. The reference is Commons
                Math's Dormand and Prince 8(5,3) with events at a tolerance of 1e-12 on the same law, its
                flows by `TubeTree` at every evaluation (but for the speeds, see there). Shares are of what
                a tray holds at its setting or of all that passed through it, whichever is more; of the
                reservoir, of what it holds full.

                """);
        differences(page);
        order(page);
        doubt(page);
        hourly(page);
        speed(page);
        seasons(page);
        growth(page);
        profile(page);
        Files.writeString(Path.of(args[0]), page);
    }

    private static void differences(StringBuilder page) {
        page.append("## 200 random rigs, by step\n\n")
                .append("| step s | level mm | volume | inflow | spill | tracer |\n")
                .append("| --- | --- | --- | --- | --- | --- |\n");
        for (double stepS : new double[] {1, 10, 60, 600, 3600, 21600}) {
            var worst = new EngineAgainstGeneralPurposeTest.Differences(0, 0, 0, 0, 0);
            for (long seed : EngineAgainstGeneralPurposeTest.SEEDS) {
                RandomRig rig = new RandomRig(seed, 12);
                EngineRun engine = new EngineRun(rig, GravityFeed.BEND_MOST);
                engine.run(stepS);
                GeneralPurpose reference = new GeneralPurpose(rig, EngineRun.TEMP_C, 1e-12);
                reference.run();
                worst = worst.or(EngineAgainstGeneralPurposeTest.Differences.of(reference, engine));
            }
            line(
                    page,
                    "| %.0f | %.1e | %.1e | %.1e | %.1e | %.1e |%n",
                    stepS,
                    worst.levelM() * 1000,
                    worst.volumeFrac(),
                    worst.inflowFrac(),
                    worst.spillFrac(),
                    worst.tracerFrac());
        }
        page.append("\nWorst of all rigs at the end of 12 spans of 10 to 60 minutes.\n\n");
    }

    // Three throttling trays over a reservoir that falls fast: no events, so that the order shows.
    private static void order(StringBuilder page) {
        page.append("## Order of the closed form alone\n\n")
                .append(
                        "The bend limit lifted, so that no piece of Runge and Kutta is taken where a")
                .append(" closed form exists. Mean over ")
                .append(ORDER_RIGS)
                .append(" of the rigs above of the largest difference of inflow.\n\n")
                .append("| step s | mean difference | order |\n| --- | --- | --- |\n");
        double before = Double.NaN;
        for (double stepS : new double[] {600, 300, 150, 75, 37.5}) {
            double log = 0;
            int counted = 0;
            for (int k = 0; k < EngineAgainstGeneralPurposeTest.SEEDS.length; k++) {
                long seed = EngineAgainstGeneralPurposeTest.SEEDS[k];
                RandomRig rig = new RandomRig(seed, 2);
                EngineRun fine = new EngineRun(rig, 1e-13);
                fine.run(600);
                EngineRun coarse = new EngineRun(rig, Double.POSITIVE_INFINITY);
                coarse.run(stepS);
                double worst = 0;
                for (int i = 0; i < fine.inM3.length; i++) {
                    worst = Math.max(worst, Math.abs(fine.inM3[i] - coarse.inM3[i]));
                }
                EngineRun coarsest = new EngineRun(rig, Double.POSITIVE_INFINITY);
                coarsest.run(600);
                double start = 0;
                for (int i = 0; i < fine.inM3.length; i++) {
                    start = Math.max(start, Math.abs(fine.inM3[i] - coarsest.inM3[i]));
                }
                // The same rigs at every step.
                if (coarsest.feed.water.rungePieces == 0 && start > 1e-9 && counted < ORDER_RIGS) {
                    log += Math.log(Math.max(worst, 1e-18));
                    counted++;
                }
            }
            double mean = Math.exp(log / counted);
            line(
                    page,
                    "| %.1f | %.2e m3 | %s |%n",
                    stepS,
                    mean,
                    Double.isNaN(before)
                            ? ""
                            : String.format(
                                    Locale.ROOT, "%.2f", Math.log(before / mean) / Math.log(2)));
            before = mean;
        }
        page.append('\n');
    }

    // A line longer by a share has a friction factor greater by that share, in every regime.
    private static void doubt(StringBuilder page) {
        page.append("## What the doubt of the friction law does to a refill date\n\n")
                .append(
                        "In transition flow the law is good to 15 % or so. The rig of the tests, 30 L")
                .append(
                        " above the outlet, trunk and branch with a friction factor 15 % less or more")
                .append(" in every regime: 1.8 L a day drunk from a full tray, and the same tray")
                .append(" filling from dry.\n\n")
                .append("| friction | outlet uncovered after | dry tray in its band after |\n")
                .append("| --- | --- | --- |\n");
        for (double share : new double[] {0.85, 1, 1.15}) {
            Filling.ByValve sound = Rigs.valve();
            Tube branch = sound.branch();
            Filling.ByValve valve =
                    TestValve.of(sound)
                            .snaps(false)
                            .branch(
                                    new Tube(
                                            branch.boreM(),
                                            share * branch.lengthM(),
                                            branch.lossCoefficient()))
                            .faults(ValveFaults.NONE)
                            .make();
            Tray tray = Rigs.tray("tray", valve, Rigs.drinking(1.8), 0);
            Reservoir plain = Rigs.reservoir(0.1, 0.32, When.NEVER);
            Tube trunk = plain.trunk();
            Reservoir reservoir =
                    new Reservoir(
                            plain.name(),
                            plain.shape(),
                            plain.fullLevelM(),
                            plain.outletLevelM(),
                            plain.floorAboveBenchM(),
                            plain.openAreaM2(),
                            plain.startLevelM(),
                            plain.refill(),
                            new Tube(
                                    trunk.boreM(),
                                    share * trunk.lengthM(),
                                    trunk.lossCoefficient()));
            Trace trace =
                    Simulation.run(
                            Rigs.scenario(
                                    25, 600, List.of(reservoir), List.of(tray), Rigs.nobody()));
            line(
                    page,
                    "| %.2f | %.6f days | %.1f min |%n",
                    share,
                    uncoveredS(trace.events()) / 86400,
                    fillingS(reservoir, tray) / 60);
        }
        page.append(
                """

                A trickle loses next to nothing in its line and the float makes up for the rest: the doubt
                does not move the date by a tenth of a second. It shows in how long a dry tray takes to
                fill, and there most of the head is lost at the seat.

                """);
    }

    private static double uncoveredS(List<Event> events) {
        return events.stream()
                .filter(event -> event.kind() == Event.Kind.OUTLET_UNCOVERED)
                .mapToDouble(Event::atS)
                .min()
                .orElseThrow();
    }

    private static double fillingS(Reservoir reservoir, Tray tray) {
        FeedWater water =
                new FeedWater(
                        reservoir,
                        List.of(tray),
                        new VesselWater(0),
                        List.of(new VesselWater(0)),
                        GravityFeed.BEND_MOST);
        water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(EngineRun.TEMP_C);
        water.reservoir.m3 = reservoir.fullM3();
        Filling.ByValve valve = (Filling.ByValve) tray.filling();
        double wideM3 = tray.shape().volumeM3(valve.settingM() - valve.bandM());
        double atS = 0;
        while (water.trays[0].m3 < wideM3 && atS < 1e6) {
            atS += water.advance(60);
        }
        return atS;
    }

    private static Scenario bench() {
        Path file = Path.of("scenarios/science-room-bench.toml");
        return ((Reading.Good) ScenarioReader.read(file)).scenario();
    }

    private static void hourly(StringBuilder page) {
        page.append("## What a longer step does to a season\n\n")
                .append("The first scenario, whole model: 70 days, three trays.\n\n")
                .append("| step s | reservoir empty | drunk L | events |\n")
                .append("| --- | --- | --- | --- |\n");
        for (double stepS : new double[] {60, 600, 3600, 10800, 21600}) {
            Scenario scenario = bench().withNumerics(new Numerics(stepS));
            Season season = Simulation.season(scenario, Surroundings.forSeasons(scenario));
            line(
                    page,
                    "| %.0f | day %.5f | %.5f | %d |%n",
                    stepS,
                    uncoveredS(season.events()) / 86400,
                    season.water().out().get(0).amount() * 1000,
                    season.events().size());
        }
        page.append("\nAn ensemble tells of days: it runs at 10800 s.\n\n");
    }

    private static void speed(StringBuilder page) {
        page.append("## Speed of the water part, in one run\n\n")
                .append(
                        "Three throttling trays that hold their level under a thirst by day and night,")
                .append(
                        " three days. Both solve the same equations for the same twelve components with")
                .append(
                        " the same quick law of flow; events are looked for once in ten minutes. The")
                .append(
                        " error is the largest of volumes, inflows and tracer against tolerance 1e-13;")
                .append(" times are the least of many.\n\n")
                .append("| what | error | time us | times the engine's at 3600 s |\n")
                .append("| --- | --- | --- | --- |\n");
        RandomRig rig = new RandomRig();
        GeneralPurpose exact = new GeneralPurpose(rig, EngineRun.TEMP_C, 1e-13);
        exact.run();
        double[] stepsS = {3600, 600};
        double[] bestNs = new double[stepsS.length];
        double[] bytes = new double[stepsS.length];
        for (int s = 0; s < stepsS.length; s++) {
            bestNs[s] = Double.POSITIVE_INFINITY;
            EngineRun run = null;
            for (int k = 0; k < 6_000; k++) {
                run = new EngineRun(rig, GravityFeed.BEND_MOST);
                double allocated = allocatedBytes();
                long from = System.nanoTime();
                run.run(stepsS[s]);
                bestNs[s] = Math.min(bestNs[s], (double) (System.nanoTime() - from));
                bytes[s] = allocatedBytes() - allocated;
            }
            line(
                    page,
                    "| engine, step %.0f s | %.1e | %.1f | %.1f |%n",
                    stepsS[s],
                    EngineAgainstGeneralPurposeTest.Differences.of(exact, run).worstFrac(),
                    bestNs[s] / 1000,
                    bestNs[s] / bestNs[0]);
        }
        for (double tolerance : new double[] {1e-6, 1e-7, 1e-8, 1e-9}) {
            double least = Double.POSITIVE_INFINITY;
            GeneralPurpose reference = null;
            for (int k = 0; k < 60; k++) {
                reference = GeneralPurpose.quick(rig, tolerance);
                long from = System.nanoTime();
                reference.run();
                least = Math.min(least, (double) (System.nanoTime() - from));
            }
            line(
                    page,
                    "| Dormand and Prince 8(5,3), tolerance %.0e | %.1e | %.0f | %.0f |%n",
                    tolerance,
                    worstFrac(exact, reference),
                    least / 1000,
                    least / bestNs[0]);
        }
        for (int s = 0; s < stepsS.length; s++) {
            double traySteps = rig.durationS / stepsS[s] * rig.trays.size();
            line(
                    page,
                    "%nAt %.0f s the engine takes %.0f ns a tray and step and allocates %.1f bytes.%n",
                    stepsS[s],
                    bestNs[s] / traySteps,
                    bytes[s] / traySteps);
        }
        page.append(
                """

                The general-purpose solver is held back by the stiffness, not by its tolerance: its steps
                stay within a few times the minutes in which a float settles. The engine's step is bounded
                by how often something changes.

                """);
        randomSpeed(page);
    }

    private static void randomSpeed(StringBuilder page) {
        double engineNs = Double.POSITIVE_INFINITY;
        double referenceNs = Double.POSITIVE_INFINITY;
        for (int round = 0; round < 5; round++) {
            double engine = 0;
            double reference = 0;
            for (long seed : EngineAgainstGeneralPurposeTest.SEEDS) {
                RandomRig rig = new RandomRig(seed, 12);
                EngineRun run = new EngineRun(rig, GravityFeed.BEND_MOST);
                GeneralPurpose solver = GeneralPurpose.quick(rig, 1e-8);
                long from = System.nanoTime();
                run.run(3600);
                long between = System.nanoTime();
                solver.run();
                engine += between - from;
                reference += System.nanoTime() - between;
            }
            engineNs = Math.min(engineNs, engine);
            referenceNs = Math.min(referenceNs, reference);
        }
        line(
                page,
                "The 200 random rigs, which snap, spill, run dry and fill through turbulent lines nearly"
                        + " all the time and are hardly ever stiff: %.0f ms against %.0f ms at tolerance 1e-8,"
                        + " ratio %.0f.%n%n",
                engineNs / 1e6,
                referenceNs / 1e6,
                referenceNs / engineNs);
    }

    private static double worstFrac(GeneralPurpose exact, GeneralPurpose other) {
        double worst = 0;
        for (int i = 0; i < exact.size; i++) {
            for (int k = 0; k < 3; k++) {
                double wanted = exact.y[4 * i + k];
                double passed = Math.max(exact.y[4 * i], wanted);
                worst = Math.max(worst, Math.abs(wanted - other.y[4 * i + k]) / passed);
            }
        }
        return worst;
    }

    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private static double allocatedBytes() {
        return THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
    }

    private static void seasons(StringBuilder page) throws IOException {
        page.append("## Ten thousand seasons\n\n")
                .append(
                        "The first scenario (three trays, 70 days, whole model), each member drawn within")
                .append(" the usual tolerances, on two threads of ")
                .append(Runtime.getRuntime().availableProcessors())
                .append(" processors.\n\n")
                .append(
                        "| step s | a season, one thread, ms | members | together s | 10,000 take s |\n")
                .append("| --- | --- | --- | --- | --- |\n");
        for (double stepS : new double[] {10800, 3600, 600}) {
            Scenario scenario = bench().withNumerics(new Numerics(stepS));
            double alone = seasonNs(scenario, 500);
            int members = stepS == 10800 ? 10_000 : 1_000;
            long from = System.nanoTime();
            runMembers(scenario, members);
            double together = System.nanoTime() - from;
            line(
                    page,
                    "| %.0f | %.2f | %d | %.1f | %.0f |%n",
                    stepS,
                    alone / 1e6,
                    members,
                    together / 1e9,
                    together / members * 10_000 / 1e9);
        }
        page.append("\nOne thread: the least of many. Together: all of them, once.\n\n");
    }

    private static void runMembers(Scenario scenario, int members) throws IOException {
        try {
            Ensemble.of(
                    scenario,
                    Tolerances.USUAL,
                    members,
                    1,
                    new ThreadPool(2),
                    season -> season.water().end());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }

    private static double seasonNs(Scenario scenario, int runs) {
        Surroundings surroundings = Surroundings.forSeasons(scenario);
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < runs; k++) {
            long from = System.nanoTime();
            Simulation.season(scenario, surroundings);
            least = Math.min(least, (double) (System.nanoTime() - from));
        }
        return least;
    }

    // Copies of the tomato tray, which grows all the time.
    private static void growth(StringBuilder page) {
        page.append("## Cost by days and trays\n\n")
                .append(
                        "Copies of the first scenario's tomato tray below its reservoir, refilled when")
                .append(" empty, step 10800 s; least time of a season.\n\n")
                .append("| trays | days | time ms | us a tray and day | bytes a tray and step |\n")
                .append("| --- | --- | --- | --- | --- |\n");
        int[][] sizes = {{3, 35}, {3, 70}, {3, 140}, {1, 70}, {6, 70}, {12, 70}};
        double[] least = new double[sizes.length];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        for (int round = 0; round < 3; round++) {
            for (int i = 0; i < sizes.length; i++) {
                Scenario hours = copies(sizes[i][0], sizes[i][1], 10800);
                least[i] = Math.min(least[i], seasonNs(hours, 80));
            }
        }
        for (int i = 0; i < sizes.length; i++) {
            int[] size = sizes[i];
            double ns = least[i];
            Scenario hours = copies(size[0], size[1], 10800);
            Scenario tens = copies(size[0], size[1], 600);
            double more = seasonBytes(tens) - seasonBytes(hours);
            double traySteps = (double) size[0] * moreSteps(tens, hours);
            line(
                    page,
                    "| %d | %d | %.2f | %.1f | %.1f |%n",
                    size[0],
                    size[1],
                    ns / 1e6,
                    ns / 1e3 / size[0] / size[1],
                    more / traySteps);
        }
        page.append(
                """

                The bytes are those of a season at 600 s less those of one at 10800 s, over the steps it has
                more: what a day costs (the plants' records, what falls out) is in neither.

                """);
    }

    private static int moreSteps(Scenario fine, Scenario coarse) {
        return Timeline.of(fine, false).steps - Timeline.of(coarse, false).steps;
    }

    private static double seasonBytes(Scenario scenario) {
        Surroundings surroundings = Surroundings.forSeasons(scenario);
        double bytes = 0;
        for (int k = 0; k < 100; k++) {
            double before = allocatedBytes();
            Simulation.season(scenario, surroundings);
            bytes = allocatedBytes() - before;
        }
        return bytes;
    }

    private static Scenario copies(int trays, int days, double stepS) {
        Scenario bench = bench();
        Tray tomato = bench.trays().get(2);
        List<Tray> copies = new ArrayList<>();
        for (int i = 0; i < trays; i++) {
            copies.add(Rigs.named(tomato, "tomato-" + i));
        }
        Reservoir.Refill atOnce = new Reservoir.Refill(When.WHEN_EMPTY, 0, Pouring.FEED);
        return TestScenario.of(bench)
                .days(days)
                .reservoirs(List.of(bench.reservoirs().get(0).withRefill(atOnce)))
                .trays(copies)
                .numerics(new Numerics(stepS))
                .make();
    }

    private static void profile(StringBuilder page) throws IOException {
        page.append("## Where the time of a season goes\n\n")
                .append(
                        "Samples of the running thread by the Java Flight Recorder, by the call they lie")
                .append(" in.\n\n| part | step 10800 s | step 600 s |\n| --- | --- | --- |\n");
        List<Map<String, Double>> shares = new ArrayList<>();
        for (double stepS : new double[] {10800, 600}) {
            shares.add(sampled(bench().withNumerics(new Numerics(stepS))));
        }
        for (String part : PARTS.values()) {
            line(
                    page,
                    "| %s | %.0f %% | %.0f %% |%n",
                    part,
                    100 * shares.get(0).getOrDefault(part, 0.0),
                    100 * shares.get(1).getOrDefault(part, 0.0));
        }
        page.append("\nTimes hold for the machine of the day; only their ratios mean anything.\n");
    }

    private static final Map<String, String> PARTS = parts();

    private static Map<String, String> parts() {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("GravityFeed.step", "water, and what it carries");
        parts.put("TrayRun.begin", "light, thirst and evaporation");
        parts.put("TrayRun.end", "uptake, warmth and roots");
        parts.put("Simulation.settle", "what falls out, by full speciation, daily");
        parts.put("TrayRun.growOvernight", "growth and a reading of EC, daily");
        parts.put("Simulation.visit", "visits and their readings of EC");
        parts.put("", "all else");
        return parts;
    }

    private static Map<String, Double> sampled(Scenario scenario) throws IOException {
        seasonNs(scenario, 200); // warm
        Path file = Files.createTempFile("seasons", ".jfr");
        try (Recording recording = new Recording()) {
            recording.enable("jdk.ExecutionSample").withPeriod(Duration.ofMillis(10));
            recording.start();
            long until = System.nanoTime() + 15_000_000_000L;
            Surroundings surroundings = Surroundings.forSeasons(scenario);
            while (System.nanoTime() < until) {
                Simulation.season(scenario, surroundings);
            }
            recording.stop();
            recording.dump(file);
        }
        Map<String, Double> counts = new TreeMap<>();
        double all = 0;
        for (RecordedEvent event : RecordingFile.readAllEvents(file)) {
            String part = part(event.getStackTrace());
            if (part != null) {
                counts.merge(part, 1.0, Double::sum);
                all++;
            }
        }
        Files.delete(file);
        double whole = all;
        counts.replaceAll((part, count) -> count / whole);
        return counts;
    }

    /** The part a sample lies in; null when it is not of a season. */
    private static String part(RecordedStackTrace trace) {
        if (trace == null) {
            return null;
        }
        String below = "";
        for (RecordedFrame frame : trace.getFrames()) {
            String type = frame.getMethod().getType().getName();
            String call = type.substring(type.lastIndexOf('.') + 1);
            call += "." + frame.getMethod().getName();
            if (call.equals("Simulation.goThrough")) {
                return PARTS.getOrDefault(below, PARTS.get(""));
            }
            if (call.equals("Simulation.season")) {
                return PARTS.get("");
            }
            below = call;
        }
        return null;
    }

    private static void line(StringBuilder page, String format, Object... values) {
        page.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values));
    }
}
