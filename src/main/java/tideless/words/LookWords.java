package tideless.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.RigCheck;
import tideless.solution.ElectricalConductivity;

/** What of a rig is to be looked at before it is built, worked out without a season, in words. */
public final class LookWords {
    private static final double ML_PER_MIN = 6e7;

    private LookWords() {}

    /** What a crop suffers by, a line each. */
    public static List<String> harmful(Scenario scenario) {
        List<String> lines = new ArrayList<>(tooStrong(scenario));
        lines.addAll(CupWords.tooDeep(scenario));
        return lines;
    }

    /** As "tray a: its feed of 3.50 mS/cm is stronger than lettuce bears (2.50 mS/cm)". */
    public static List<String> tooStrong(Scenario scenario) {
        List<String> strong = new ArrayList<>();
        for (Tray tray : scenario.trays()) {
            double ec = ElectricalConductivity.at25MsPerCm(scenario.feedOf(tray).composition());
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

    /**
     * As "tray a: at the lowest level of reservoir wall 197 mL/min come, and the peak thirst is 208
     * mL/min". What comes of it in this season a run tells.
     */
    public static List<String> tooSlow(List<RigCheck> rigs) {
        List<String> slow = new ArrayList<>();
        for (RigCheck rig : rigs) {
            for (RigCheck.Feed feed : rig.trays()) {
                if (feed.isTooSlow()) {
                    slow.add(
                            String.format(
                                    Locale.ROOT,
                                    "%s: at the lowest level of %s %.1f mL/min come, and the peak"
                                            + " thirst is %.1f mL/min",
                                    Names.tray(feed.tray().name()),
                                    Names.of(rig.reservoir().id()),
                                    feed.lowM3PerS() * ML_PER_MIN,
                                    feed.peakThirstM3PerS() * ML_PER_MIN));
                }
            }
        }
        return slow;
    }
}
