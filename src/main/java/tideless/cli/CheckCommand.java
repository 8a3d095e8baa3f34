package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.physics.TubeFlow;
import tideless.rig.Planting;
import tideless.rig.RootReach;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.sim.RigCheck;
import tideless.words.FeedWords;
import tideless.words.Names;
import tideless.words.ReachWords;

/** Checks one scenario without running it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        header = "Check a scenario without running it.",
        description = {
            "",
            "Every fault is told with its line, what was found and what is allowed.",
            "A sound rig is checked: filling times, flow against peak thirst, weight.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless check my-bench.toml",
            "",
            "Exit codes: 0 sound, 1 the file could not be read, 2 a fault in it."
        })
final class CheckCommand implements Callable<Integer> {
    @Parameters(paramLabel = "SCENARIO", description = "a .toml scenario file")
    Path scenario;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        return Scenarios.with(scenario, spec, this::check);
    }

    private void check(Reading.Good good) {
        PrintWriter out = spec.commandLine().getOut();
        Scenario sound = good.scenario();
        out.println(
                scenario
                        + ": sound: "
                        + sound.title()
                        + ", "
                        + counted(sound.reservoirs().size(), "reservoir")
                        + ", "
                        + counted(sound.trays().size(), "tray")
                        + ", "
                        + counted(sound.days(), "day"));
        line(out, "feed: %s", FeedWords.readings(sound.feed().composition()));
        FeedWords.own(sound).forEach(feed -> line(out, "feed of %s", feed));
        for (Tray tray : sound.trays()) {
            printDisplaced(out, tray);
            printReach(out, tray, "", sound.start());
            for (int i = 0; i < tray.next().size(); i++) {
                Tray then = tray.planted(i + 1);
                String crop = " (" + Names.clean(then.planting().cropName()) + ")";
                tray.next().get(i).on().ifPresent(on -> printReach(out, then, crop, on));
            }
        }
        for (RigCheck rig : RigCheck.of(sound)) {
            print(out, rig);
        }
        out.flush();
    }

    /** When what is set out on a day is fit for the level of its tray. */
    private static void printReach(PrintWriter out, Tray tray, String named, LocalDate from) {
        if (tray.planting() instanceof Planting.OfCrop crop && crop.plants() > 0) {
            out.println(
                    Names.tray(tray.name())
                            + named
                            + ": "
                            + ReachWords.of(RootReach.of(tray, crop), from));
        }
    }

    private static void printDisplaced(PrintWriter out, Tray tray) {
        Shape shape = tray.shape();
        double keptOutM3 = shape.displacement().volumeM3(tray.overflowM());
        if (keptOutM3 > 0) {
            line(
                    out,
                    "%s: holds %.1f L at the overflow; what hangs and stands in it keeps out"
                            + " %.1f L",
                    Names.tray(tray.name()),
                    1000 * shape.volumeM3(tray.overflowM()),
                    1000 * keptOutM3);
        }
    }

    private static void print(PrintWriter out, RigCheck rig) {
        out.println();
        line(
                out,
                "reservoir %s: %.1f L usable, %.1f L below the outlet; full it weighs %.0f kg (%.0f N)",
                rig.reservoir().name(),
                1000 * rig.usableM3(),
                1000 * rig.deadM3(),
                rig.weightN() / TubeFlow.GRAVITY_M_PER_S2,
                rig.weightN());
        line(
                out,
                "  on a stand as narrow as its floor%s it tips at %.1f degrees, or by a"
                        + " push of %.0f N at the full level; sooner as the water runs to one side",
                rig.reservoir().shape().sidesStated()
                        ? ""
                        : " (no sides stated, taken as square: a narrower one tips sooner)",
                Math.floor(10 * Math.toDegrees(rig.tippingAngleRad())) / 10,
                Math.floor(rig.tippingPushN()));
        out.println(
                "  Caution: heavy water up high. Fix stand or brackets to the wall, keep it low where"
                        + " the feed allows;");
        out.println(
                "  mains near water: residual-current device, earthed frame, drip loops. Advice, no"
                        + " certificate.");
        for (RigCheck.Feed feed : rig.trays()) {
            line(
                    out,
                    "  tray %s: %s; %.0f mL/min with the reservoir full, %.0f at the outlet;"
                            + " peak thirst %.1f mL/min, margin %s",
                    feed.tray().name(),
                    filling(feed),
                    feed.fullM3PerS() * 6e7,
                    feed.lowM3PerS() * 6e7,
                    feed.peakThirstM3PerS() * 6e7,
                    margin(feed.margin()));
            printStuck(out, feed);
        }
        if (!rig.trays().isEmpty()) {
            out.println(
                    "  (all valves open at once; peak thirst: closed canopy in the run's thirstiest"
                            + " air, or the largest measured)");
        }
    }

    private static void printStuck(PrintWriter out, RigCheck.Feed feed) {
        if (Double.isNaN(feed.holeM3PerS())) {
            return;
        }
        line(
                out,
                "    hung open with the reservoir full its valve brings %.0f mL/min; the overflow of"
                        + " %.0f mm passes %.0f mL/min before the rim is reached:",
                feed.stuckM3PerS() * 6e7,
                feed.tray().overflowBoreM().orElseThrow() * 1000,
                feed.holeM3PerS() * 6e7);
        if (feed.holeMargin() < 1) {
            out.println(
                    "    MORE THAN THE HOLE PASSES: a stuck valve goes over the rim onto the floor");
        } else if (feed.holeMargin() < RigCheck.HOLE_MARGIN) {
            out.println("    the hole carries it with little to spare: roots or leaves narrow it");
        } else {
            out.println("    the hole carries it, while no roots, leaves or hose narrow it");
        }
    }

    private static String filling(RigCheck.Feed feed) {
        if (!Double.isNaN(feed.fillS())) {
            return String.format(Locale.ROOT, "fills in %.0f min", feed.fillS() / 60);
        }
        return "does not fill from dry out of one reservoir";
    }

    private static String margin(double times) {
        if (!(times < 1000)) {
            return "ample";
        }
        return String.format(Locale.ROOT, times < 10 ? "%.1f-fold" : "%.0f-fold", times)
                + (times < 1 ? ": TOO LITTLE at the lowest level" : "");
    }

    private static void line(PrintWriter out, String format, Object... values) {
        out.println(String.format(Locale.ROOT, format, values));
    }

    private static String counted(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
