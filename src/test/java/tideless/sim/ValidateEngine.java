package tideless.sim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import tideless.scenario.Filling;
import tideless.scenario.Reservoir.Refill.When;
import tideless.scenario.Tray;
import tideless.scenario.ValveFaults;

/** Makes docs/validation-engine.md: {@code java -cp ... tideless.sim.ValidateEngine FILE}. */
final class ValidateEngine {
    private static final int ORDER_RIGS = 40;

    private ValidateEngine() {}

    public static void main(String[] args) throws IOException {
        StringBuilder page = new StringBuilder();
        page.append(
                """
                # The water engine, checked

                Made by `tideless.sim.ValidateEngine` (test scope); do not edit. The reference is Commons
                Math's Dormand and Prince 8(5,3) with events at a tolerance of 1e-12 on the same law, its
                flows by `TubeTree` at every evaluation. Shares are of what a tray holds at its setting or
                of all that passed through it, whichever is more; of the reservoir, of what it holds full.

                """);
        differences(page);
        order(page);
        doubt(page);
        speed(page);
        Files.writeString(Path.of(args[0]), page);
    }

    private static void differences(StringBuilder page) {
        page.append("## 200 random rigs, by step\n\n")
                .append("| step s | level mm | volume | inflow | spill | tracer |\n")
                .append("| --- | --- | --- | --- | --- | --- |\n");
        for (double stepS : new double[] {10, 60, 600, 3600}) {
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

    private static void doubt(StringBuilder page) {
        page.append("## What the doubt of the friction law does to a refill date\n\n")
                .append(
                        "In transition flow the law is good to 15 % or so. The rig of the tests, 30 L")
                .append(
                        " above the outlet and 1.8 L a day, with every opening passing 15 % less or")
                .append(" more:\n\n| flow | outlet uncovered after |\n| --- | --- |\n");
        for (double share : new double[] {0.85, 1, 1.15}) {
            Filling.ByValve sound = Rigs.valve();
            Filling.ByValve valve =
                    new Filling.ByValve(
                            sound.reservoir(),
                            sound.settingM(),
                            sound.bandM(),
                            false,
                            sound.seatBoreM() * Math.sqrt(share),
                            sound.dischargeCoefficient(),
                            sound.seatAboveFloorM(),
                            sound.branch(),
                            ValveFaults.NONE);
            Tray tray = Rigs.tray("tray", valve, Rigs.drinking(1.8), 0);
            Trace trace =
                    Simulation.run(
                            Rigs.scenario(
                                    25,
                                    600,
                                    List.of(Rigs.reservoir(0.1, 0.32, When.NEVER)),
                                    List.of(tray),
                                    Rigs.nobody()));
            double atS =
                    trace.events().stream()
                            .filter(event -> event.kind() == Event.Kind.OUTLET_UNCOVERED)
                            .mapToDouble(Event::atS)
                            .min()
                            .orElseThrow();
            line(page, "| %.2f | %.6f days |%n", share, atS / 86400);
        }
        page.append(
                """

                A trickle is laminar and the float makes up for the rest: the doubt shifts the level within
                the band by micrometres and the date by seconds. It matters for how long a dry tray takes
                to fill, which goes with 1/flow.

                """);
    }

    private static void speed(StringBuilder page) {
        page.append("## Speed, in one run\n\n")
                .append(
                        "Three throttling trays that hold their level under a thirst by day and night,")
                .append(
                        " three days at steps of 600 s; the general-purpose solver's rates are those of")
                .append(" `TubeTree`.\n\n");
        RandomRig rig = new RandomRig();
        double engineNs = 0;
        long bytes = 0;
        int runs = 4_000;
        var threads =
                (com.sun.management.ThreadMXBean)
                        java.lang.management.ManagementFactory.getThreadMXBean();
        long steps = Math.round(rig.durationS / 600) * rig.trays.size();
        long id = Thread.currentThread().getId();
        for (int k = 0; k < runs; k++) {
            EngineRun run = new EngineRun(rig, GravityFeed.BEND_MOST);
            long allocated = threads.getThreadAllocatedBytes(id);
            long from = System.nanoTime();
            run.run(600);
            if (k >= runs / 2) {
                engineNs += System.nanoTime() - from;
                bytes += threads.getThreadAllocatedBytes(id) - allocated;
            }
        }
        engineNs /= runs / 2;
        page.append("| what | error allowed | time | ratio |\n| --- | --- | --- | --- |\n");
        line(page, "| engine | 2e-8 of the volume | %.1f us | 1 |%n", engineNs / 1000);
        for (double tolerance : new double[] {1e-7, 1e-9, 1e-12}) {
            double referenceNs = 0;
            int times = 40;
            for (int k = 0; k < times; k++) {
                GeneralPurpose reference = new GeneralPurpose(rig, EngineRun.TEMP_C, tolerance);
                long from = System.nanoTime();
                reference.run();
                if (k >= times / 2) {
                    referenceNs += System.nanoTime() - from;
                }
            }
            referenceNs /= times / 2;
            line(
                    page,
                    "| Dormand and Prince 8(5,3) | %.0e, absolute %.0e m3 | %.1f us | %.0f |%n",
                    tolerance,
                    tolerance / 100,
                    referenceNs / 1000,
                    referenceNs / engineNs);
        }
        line(
                page,
                "%nThe engine takes %.0f ns a tray and step here, with twelve components carried along"
                        + " (the reference carries one), and allocates %.1f bytes a tray and step.%n",
                engineNs / steps,
                (double) bytes / (runs / 2) / steps);
        page.append("Times hold for the machine of the day; only their ratio means anything.\n");
    }

    private static void line(StringBuilder page, String format, Object... values) {
        page.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values));
    }
}
