package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.physics.TubeFlow;
import tideless.rig.Filling;
import tideless.rig.Planting;
import tideless.rig.RootReach;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.scenario.Reading;
import tideless.sim.RigCheck;
import tideless.solution.ElectricalConductivity;
import tideless.words.CupWords;
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
            "What a file without one says is worked out: filling times, flow against peak thirst, weight.",
            ""
        },
        footer = {
            "",
            "Example:",
            "  tideless check my-bench.toml",
            "",
            "Exit codes: 0 no fault in the file, 1 the file could not be read, 2 a fault in it."
        })
final class CheckCommand implements Callable<Integer> {
    /** Flow that exceeds the peak thirst so many times needs no figure; assumed. */
    private static final double AMPLE = 10;

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
        List<RigCheck> rigs = RigCheck.of(sound);
        List<String> strong = tooStrong(sound);
        List<String> deep = CupWords.tooDeep(sound);
        Map<String, List<String>> reaches = reaches(sound);
        long looks =
                good.notes().size()
                        + strong.size()
                        + deep.size()
                        + reaches.keySet().stream().filter(CheckCommand::isToWait).count()
                        + rigs.stream()
                                .flatMap(rig -> rig.trays().stream())
                                .filter(feed -> feed.margin() < 1)
                                .count();
        out.println(
                scenario
                        + (looks == 0
                                ? ": no fault in the file (whether the crop comes through, run tells): "
                                : ": can be run, with "
                                        + counted((int) looks, "thing")
                                        + " to look at: ")
                        + sound.title()
                        + ", "
                        + counted(sound.reservoirs().size(), "reservoir")
                        + ", "
                        + counted(sound.trays().size(), "tray")
                        + ", "
                        + counted(sound.days(), "day"));
        line(out, "feed: %s", FeedWords.main(sound.feed()));
        FeedWords.own(sound).forEach(feed -> line(out, "feed of %s", feed));
        strong.forEach(out::println);
        sound.trays().forEach(tray -> printDisplaced(out, tray));
        deep.forEach(out::println);
        reaches.forEach((words, names) -> out.println(String.join(", ", names) + ": " + words));
        for (RigCheck rig : rigs) {
            print(out, rig);
        }
        if (!rigs.isEmpty()) {
            out.println();
            out.println(
                    "Caution: heavy water up high. Fix stand or brackets to the wall, keep it low where"
                            + " the feed allows;");
            out.println(
                    "mains near water: residual-current device, earthed frame, drip loops. Advice, no"
                            + " certificate.");
        }
        out.flush();
    }

    /** Feeds that are stronger than a crop bears. */
    private static List<String> tooStrong(Scenario sound) {
        List<String> strong = new ArrayList<>();
        for (Tray tray : sound.trays()) {
            double ec = ElectricalConductivity.at25MsPerCm(sound.feedOf(tray).composition());
            double high = tray.limits().ecHighMsPerCm();
            if (tray.planting() instanceof Planting.OfCrop crop && crop.plants() > 0 && ec > high) {
                strong.add(
                        String.format(
                                Locale.ROOT,
                                "%s: its feed of %.2f mS/cm is stronger than %s bears (%.2f mS/cm)",
                                Names.tray(tray.name()),
                                ec,
                                Names.clean(crop.cropName()),
                                high));
            }
        }
        return strong;
    }

    /** When what is set out is fit for the level of its tray; of trays that are alike once. */
    private static Map<String, List<String>> reaches(Scenario sound) {
        Map<String, List<String>> reaches = new LinkedHashMap<>();
        for (Tray tray : sound.trays()) {
            addReach(reaches, tray, "", sound.start());
            for (int i = 0; i < tray.next().size(); i++) {
                Tray then = tray.planted(i + 1);
                String crop = " (" + Names.clean(then.planting().cropName()) + ")";
                tray.next().get(i).on().ifPresent(on -> addReach(reaches, then, crop, on));
            }
        }
        return reaches;
    }

    private static boolean isToWait(String reach) {
        return !reach.startsWith("ready to transplant on");
    }

    private static void addReach(
            Map<String, List<String>> reaches, Tray tray, String named, LocalDate from) {
        if (tray.planting() instanceof Planting.OfCrop crop && crop.plants() > 0) {
            reaches.computeIfAbsent(
                            ReachWords.of(RootReach.of(tray, crop), from), k -> new ArrayList<>())
                    .add(Names.tray(tray.name()) + named);
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
        Map<String, List<RigCheck.Feed>> alike = new LinkedHashMap<>();
        for (RigCheck.Feed feed : rig.trays()) {
            alike.computeIfAbsent(flows(rig, feed), words -> new ArrayList<>()).add(feed);
        }
        alike.forEach(
                (words, feeds) -> {
                    List<String> names =
                            feeds.stream().map(feed -> Names.clean(feed.tray().name())).toList();
                    out.println(
                            (names.size() > 1 ? "  trays " : "  tray ")
                                    + Names.list(names)
                                    + (names.size() > 1 ? ", each: " : ": ")
                                    + words);
                    printStuck(out, feeds.get(0));
                });
        if (!rig.trays().isEmpty()) {
            out.println(
                    "  (all valves open at once; peak thirst: closed canopy in the run's thirstiest"
                            + " air, or the largest measured)");
        }
    }

    private static String flows(RigCheck rig, RigCheck.Feed feed) {
        return String.format(
                Locale.ROOT,
                "%s; %.0f mL/min with the reservoir full, %.0f at the outlet; peak thirst %.1f"
                        + " mL/min, margin %s",
                filling(rig, feed),
                feed.fullM3PerS() * 6e7,
                feed.lowM3PerS() * 6e7,
                feed.peakThirstM3PerS() * 6e7,
                margin(feed.margin()));
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

    private static String filling(RigCheck rig, RigCheck.Feed feed) {
        if (!Double.isNaN(feed.fillS())) {
            return String.format(Locale.ROOT, "fills in %.0f min", feed.fillS() / 60);
        }
        double litres = 0;
        for (RigCheck.Feed one : rig.trays()) {
            litres +=
                    1000
                            * one.tray()
                                    .shape()
                                    .volumeM3(((Filling.ByValve) one.tray().filling()).settingM());
        }
        return String.format(
                Locale.ROOT,
                "a full reservoir does not fill its trays from dry, which take %.1f L of its %.1f L:"
                        + " pour the first filling in by hand",
                litres,
                1000 * rig.usableM3());
    }

    private static String margin(double times) {
        if (!(times < AMPLE)) {
            return "ample";
        }
        return String.format(Locale.ROOT, "%.1f-fold", times)
                + (times < 1 ? ": TOO LITTLE at the lowest level" : "");
    }

    private static void line(PrintWriter out, String format, Object... values) {
        out.println(String.format(Locale.ROOT, format, values));
    }

    private static String counted(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
