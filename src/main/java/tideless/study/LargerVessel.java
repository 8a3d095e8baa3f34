package tideless.study;

import java.util.Optional;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/**
 * A wider vessel for a tray topped up by hand, tried in all members, where no other way to keep it
 * brings nine rigs of ten through: what is drunk empty between visits is too small.
 */
final class LargerVessel {
    /** Areas that are tried, times the present one; 1.6 and 2.6 are 35 and 45 for 28 cm across. */
    private static final double[] WIDER = {1.6, 2.6};

    private static final double L_PER_M3 = 1000;

    private LargerVessel() {}

    /**
     * The least of them that does, else the one that serves clearly more rigs than what was found.
     *
     * @param chance share of the members that come through by what was found, 0-1
     * @throws InterruptedException when the workers are interrupted
     */
    static Optional<Cure> cure(
            Scenario scenario, Outlook outlook, double chance, long seed, Workers workers)
            throws InterruptedException {
        Tray tray = scenario.tray(outlook.harms().get(0).tray()).orElseThrow();
        if (!(tray.filling() instanceof Filling.ByHand hand)) {
            return Optional.empty();
        }
        Optional<Cure> best = Optional.empty();
        double most = Math.max(chance, outlook.chance());
        for (double times : WIDER) {
            Tray wider = tray.withShape(tray.shape().wider(times));
            double now =
                    most < Outlook.SURE
                            ? Outlook.chance(
                                    scenario.withTray(wider), outlook.members(), seed, workers)
                            : 0;
            if (now >= most + Outlook.CLEARLY_MORE_FRAC) {
                most = now;
                double heldM3 = tray.shape().volumeM3(hand.toLevelM());
                double enoughM3 = wider.shape().volumeM3(hand.toLevelM());
                best =
                        Optional.of(
                                new Cure(
                                        Cure.Kind.HOLD_MORE,
                                        Facts.of(Quantity.ENOUGH, L_PER_M3 * enoughM3)
                                                .and(Quantity.USABLE, L_PER_M3 * heldM3)
                                                .and(Quantity.CHANCE, now)));
            }
        }
        return best;
    }
}
