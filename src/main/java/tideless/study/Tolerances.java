package tideless.study;

import java.util.List;
import java.util.SplittableRandom;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/**
 * How far a rig as built may lie from the rig as planned; every share is drawn evenly between less
 * and more.
 *
 * @param feedFrac strength of the mixed feed, share of it; one draw a season
 * @param settingM level at which a float valve shuts, m; one draw a tray
 * @param lampFrac light of a lamp, share of it; one draw a tray
 */
public record Tolerances(double feedFrac, double settingM, double lampFrac)
        implements Ensemble.Draw {

    /**
     * A concentrate measured by a kitchen jug, a float set with a ruler, a lamp hung by eye.
     * Assumed; common practice, no source.
     */
    public static final Tolerances USUAL = new Tolerances(0.05, 0.001, 0.1);

    public Tolerances {
        if (!(feedFrac >= 0 && feedFrac < 1 && lampFrac >= 0 && lampFrac < 1)) {
            throw new IllegalArgumentException(
                    "shares must lie in [0, 1), were %s and %s".formatted(feedFrac, lampFrac));
        }
        if (!(settingM >= 0)) {
            throw new IllegalArgumentException("settingM must be at least 0, was " + settingM);
        }
    }

    @Override
    public Scenario member(Scenario scenario, SplittableRandom random) {
        double strength = 1 + evenly(random) * feedFrac;
        List<Tray> trays = scenario.trays().stream().map(tray -> built(tray, random)).toList();
        return scenario.withTrays(trays).withFeeds(feed -> feed.times(strength));
    }

    private Tray built(Tray tray, SplittableRandom random) {
        double shift = evenly(random) * settingM;
        double brightness = 1 + evenly(random) * lampFrac;
        Filling filling = tray.filling();
        if (filling instanceof Filling.ByValve valve) {
            filling =
                    valve.withSettings(
                            settingM ->
                                    Math.max(
                                            valve.bandM(),
                                            Math.min(tray.overflowM(), settingM + shift)));
        }
        return tray.withFilling(filling).withLamp(tray.lamp().times(brightness));
    }

    /** Between -1 and 1. */
    private static double evenly(SplittableRandom random) {
        return 2 * random.nextDouble() - 1;
    }
}
