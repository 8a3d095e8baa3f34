package tideless.scenario;

import java.util.List;

/** The words of a log. */
public final class LogTerms {
    private LogTerms() {}

    /** All that may stand under {@code what}. */
    public static List<String> all() {
        return LogWhat.words();
    }
}
