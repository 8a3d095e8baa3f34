package tideless.report;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tideless.advice.Cure;
import tideless.rig.Scenario;
import tideless.study.Lighting;
import tideless.study.Size;
import tideless.study.ValveHeight;
import tideless.words.BrokenWords;
import tideless.words.CupWords;
import tideless.words.CureWords;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;
import tideless.words.SizeWords;
import tideless.words.Wrap;

/** How much is enough, for a terminal. */
public final class SizeTable {
    private static final String CROWD =
            "Plants share the same ground: more of them take no harm, but give less each. A head"
                    + " that stays below nine tenths of its wanted weight does not count as enough.";

    private static final String IN_TURN =
            "Numbers are of the first crop of a tray; those that follow change in proportion.";

    private final PrintWriter out;
    private final int width;

    /**
     * @param out where it is printed
     * @param width columns to fill
     */
    public SizeTable(PrintWriter out, int width) {
        this.out = out;
        this.width = width;
    }

    /** What each of some things would have to be. */
    public void print(Size.Found found, Size.Goal goal, Scenario scenario) {
        List<Size> sizes = found.sizes();
        title(scenario);
        if (sizes.isEmpty()) {
            sayBrokenOff();
            return;
        }
        for (Size size : sizes) {
            say(Names.begun(SizeWords.now(size, goal, scenario.start())));
            say("  " + Names.begun(SizeWords.answer(size, goal, scenario.start())));
            out.println();
        }
        note(goal, scenario);
        noteMissing(found);
        if (sizes.stream().anyMatch(s -> s.what() == Size.What.PLANTS)) {
            crowd(scenario);
        }
        out.flush();
    }

    /** What could be changed, the smallest change in proportion first. */
    public void printChanges(
            Size.Found found, Size.Goal goal, Scenario scenario, Optional<Cure> first) {
        List<Size> changes = found.sizes();
        title(scenario);
        if (changes.isEmpty()) {
            sayBrokenOff();
            return;
        }
        List<Size> needed =
                changes.stream().filter(c -> c.found().isPresent() && !c.isEnough(goal)).toList();
        boolean plants = changes.stream().anyMatch(c -> c.what() == Size.What.PLANTS);
        LocalDate start = scenario.start();
        if (needed.isEmpty() && changes.stream().allMatch(c -> c.isEnough(goal))) {
            say("Nothing need be changed. What is to spare:");
            changes.forEach(
                    c ->
                            say(
                                    "  "
                                            + Names.begun(SizeWords.now(c, goal, start))
                                            + " "
                                            + Names.begun(SizeWords.answer(c, goal, start))));
        } else {
            first.ifPresent(
                    cure -> say("What run tells to change first: " + CureWords.of(cure) + "."));
            say("Any one of these is enough, the smallest change in proportion first:");
            int number = 1;
            for (Size size : needed) {
                say("  " + number++ + ". " + SizeWords.change(size));
            }
            if (needed.isEmpty()) {
                say("  none");
            }
            for (Size size : changes) {
                if (size.found().isEmpty()) {
                    say(
                            "  not by "
                                    + size.vessel().map(Names::of).orElse("visits")
                                    + ": "
                                    + SizeWords.answer(size, goal, start));
                }
            }
        }
        out.println();
        note(goal, scenario);
        noteMissing(found);
        if (plants) {
            crowd(scenario);
        }
        out.flush();
    }

    private void crowd(Scenario scenario) {
        say(CROWD);
        if (scenario.trays().stream().anyMatch(tray -> !tray.next().isEmpty())) {
            say(IN_TURN);
        }
    }

    /** Says that the work was broken off too early. */
    public void sayBrokenOff() {
        say(BrokenWords.nothingSaid());
        out.flush();
    }

    private void noteMissing(Size.Found found) {
        if (!found.whole()) {
            say(
                    "Broken off: "
                            + found.sizes().size()
                            + " of "
                            + found.asked()
                            + " changes were looked at, the others are left out.");
        }
    }

    private void note(Size.Goal goal, Scenario scenario) {
        String share =
                goal.members() == 1
                        ? "Enough: nothing is harmed to the end of the run in the rig as stated"
                        : "Enough: nothing is harmed to the end of the run in "
                                + Numbers.percent(goal.chance())
                                + " of "
                                + goal.members()
                                + " rigs that yours might be";
        boolean reservoirs = scenario.reservoirs().stream().anyMatch(r -> r.refill().isAtVisits());
        boolean away = !scenario.visits().absences().isEmpty();
        say(
                share
                        + (reservoirs
                                ? ", and no reservoir that is filled up at visits runs empty"
                                        + " between two of them while a crop needs it"
                                        + (away
                                                ? "; in an absence crops may live on their trays,"
                                                        + " but litres are asked to last it."
                                                : ".")
                                : ".")
                        + " A crop that loses more than a quarter of its harvest to salt, hunger or"
                        + " want of water is harmed. "
                        + (goal.members() == 1
                                ? "Every visit takes place"
                                : "As in run, one visit in 25 does not take place, and crops may"
                                        + " live on their trays then; the others do")
                        + (away ? " but those of the absences stated" : "")
                        + (goal.visitsEvery().isPresent()
                                ? ", every "
                                        + Numbers.days(goal.visitsEvery().getAsInt())
                                        + " from the start, and fills up what is refilled at all."
                                : ", by the scenario's own round and rules."));
    }

    /** The settings of valves. */
    public void printValves(List<ValveHeight> valves, Scenario scenario) {
        title(scenario);
        for (ValveHeight valve : valves) {
            say(
                    Names.begun(Names.tray(valve.tray()))
                            + ": set at "
                            + mm(valve.givenMm())
                            + (Double.isNaN(valve.givenWetFrac())
                                    ? ", no root leaves the cup."
                                    : ", "
                                            + wet(valve.givenWetFrac())
                                            + " of the hanging roots is wet."));
            say("  " + answer(valve));
        }
        CupWords.tooDeep(scenario).forEach(line -> say("  " + Names.begun(line)));
        out.println();
        say(
                "A third wet and two thirds in air, as a mean over the hours in which roots hang out"
                        + " of the cup (common practice), from the day on which it is set so. Tried in a"
                        + " run of the rig as stated, which harms no root.");
        out.flush();
    }

    private static String answer(ValveHeight valve) {
        if (valve.harms()) {
            return "None is told: those that keep a third wet leave roots dry in the run as stated.";
        }
        if (valve.foundMm().isEmpty()) {
            return valve.wetFracAtLowest() > ValveHeight.WET_FRAC
                    ? "No setting keeps only a third wet: at the lowest, "
                            + mm(valve.lowestMm())
                            + ", it is "
                            + wet(valve.wetFracAtLowest())
                            + ". Hang the cups higher."
                    : "No setting up to " + mm(valve.highestMm()) + " keeps a third wet.";
        }
        return "Set it at "
                + mm(valve.foundMm().orElseThrow())
                + " for a third; on the last day it is "
                + wet(valve.lastWetFrac())
                + "."
                + valve.atFirst().map(SizeTable::atFirst).orElse("");
    }

    private static String atFirst(ValveHeight.AtFirst first) {
        return " So low from the first day it leaves roots dry: begin at "
                + mm(first.mm())
                + " and move it there on "
                + Dates.weekday(first.until())
                + ", when the roots reach (`moves` of the valve).";
    }

    private static String mm(double mm) {
        return Numbers.label(Math.floor(mm * 10 + 0.5) / 10) + " mm";
    }

    private static String wet(double frac) {
        return Numbers.percent(frac);
    }

    /** Hours of lamps. */
    public void printLamps(Lighting lighting) {
        title(lighting.scenario());
        for (Lighting.OfTray tray : lighting.trays()) {
            double longestH = LightTable.longestH(lighting.scenario(), tray.tray());
            say(Names.begun(Names.tray(tray.tray())) + ": " + hours(tray, longestH));
        }
        out.flush();
    }

    private static String hours(Lighting.OfTray tray, double longestH) {
        if (tray.stages().stream().allMatch(s -> Double.isNaN(s.needLowMolPerM2Day()))) {
            return "no crop whose need is known.";
        }
        if (!(tray.lampPpfdUmolPerM2S() > 0)) {
            return "no lamp.";
        }
        double least = 0;
        double most = longestH;
        double ppfd = 0;
        double needLow = 0;
        double needHigh = 0;
        for (Lighting.Stage stage : tray.stages()) {
            needLow = Math.max(needLow, stage.needLowMolPerM2Day());
            needHigh = Math.max(needHigh, stage.needHighMolPerM2Day());
            least = Math.max(least, Lighting.hoursForNeed(tray, stage));
            most = Math.min(most, Lighting.hoursForMost(tray, stage));
            ppfd = Math.max(ppfd, Lighting.ppfdForNeed(tray, stage));
        }
        String need = Numbers.label(needLow) + " to " + Numbers.label(needHigh) + " mol/m2/day";
        if (least > longestH) {
            return String.format(
                    Locale.ROOT,
                    "the %s h of light a day that it bears are not enough for %s: the lamp would"
                            + " have to give %.0f umol/m2/s in its %s h a day (now %.0f).",
                    Numbers.label(longestH),
                    need,
                    ppfd,
                    Numbers.label(tray.lampLitH()),
                    tray.lampPpfdUmolPerM2S());
        }
        return String.format(
                Locale.ROOT,
                "%.1f to %.1f h a day for %s (now %s h)%s.",
                least,
                Math.max(least, most),
                need,
                Numbers.label(tray.lampLitH()),
                most < least
                        ? "; in its brightest stage more than the crop can use"
                        : most == longestH
                                ? "; " + Numbers.label(longestH) + " h are the most for it"
                                : "");
    }

    private void title(Scenario scenario) {
        out.println(Names.clean(scenario.title()));
        out.println(Dates.span(scenario.start(), scenario.lastDay()));
        out.println();
    }

    private void say(String text) {
        String indent = text.startsWith("  ") ? "  " : "";
        Wrap.lines(text.strip(), width - indent.length())
                .forEach(line -> out.println(indent + line));
    }
}
