package tideless.scenario;

/**
 * Reads a scenario again and again while its text changes little by little: what is alike from one
 * reading to the next (crops, weather, the feed) is made once.
 */
public final class Rereading {
    /** After so many readings all is made anew, so that what is kept does not grow for ever. */
    private static final int MOST_READINGS = 500;

    private MadeOnce once = new MadeOnce();
    private int readings;

    /** As {@link ScenarioReader} does, with files that the scenario does not name. */
    public Reading read(String name, ScenarioFiles files, Beside beside) {
        if (++readings > MOST_READINGS) {
            once = new MadeOnce();
            readings = 1;
        }
        return ScenarioReader.read(name, files, beside, once);
    }
}
