package tideless.words;

import java.util.ArrayList;
import java.util.List;
import tideless.advice.Unit;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/** Cups that a file lets stand too deep in solution, in words. */
public final class CupWords {
    private CupWords() {}

    /**
     * A line of each tray whose cups are wet by far more than growers wet them; a deck that floats
     * holds them as it was made, and is not asked.
     */
    public static List<String> tooDeep(Scenario scenario) {
        List<String> lines = new ArrayList<>();
        for (Tray tray : scenario.trays()) {
            double heldM = tray.keptLevelM().orElse(tray.startLevelM());
            double wetM = heldM - tray.cupBottomM();
            if (tray.hasCupsUnder(heldM)) {
                lines.add(
                        Names.tray(tray.name())
                                + ": its level stands "
                                + mm(wetM)
                                + " above the underside of the cups, where "
                                + mm(Tray.CUP_WET_M)
                                + " is usual: plugs and stems that stay so deep rot. Is "
                                + key(tray)
                                + " meant to be "
                                + mm(tray.wetCupM())
                                + ", or do the cups hang higher?");
            }
        }
        return lines;
    }

    private static String key(Tray tray) {
        if (tray.filling() instanceof Filling.ByValve) {
            return "the valve's setting";
        }
        return tray.filling() instanceof Filling.ByHand ? "hand.to" : "start_level";
    }

    private static String mm(double lengthM) {
        return Numbers.of(1000 * lengthM, Unit.MILLIMETRES);
    }
}
