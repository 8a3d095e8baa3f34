package tideless.words;

import java.time.LocalDate;
import tideless.advice.Unit;
import tideless.rig.RootReach;

/** From which day on seedlings are fit for the level of their tray, in words. */
public final class ReachWords {
    private ReachWords() {}

    /**
     * As "ready to transplant from Mon 21 Sep: roots 58 mm, the level is 50 mm below the cups;
     * until then a higher level, a wick, or wait with the roots hanging".
     *
     * @param start of the run
     */
    public static String of(RootReach reach, LocalDate start) {
        String roots = mm(reach.rootM());
        if (reach.days().isEmpty()) {
            return "never ready for this level: roots grow to " + roots + ", " + level(reach);
        }
        int days = reach.days().getAsInt();
        if (days == 0) {
            return "ready to transplant on "
                    + Dates.weekday(start)
                    + ": roots "
                    + roots
                    + ", "
                    + level(reach);
        }
        return "ready to transplant from "
                + Dates.weekday(start.plusDays(days))
                + ": roots "
                + roots
                + ", "
                + level(reach)
                + "; until then a higher level, a wick, or wait with the roots hanging";
    }

    private static String level(RootReach reach) {
        return reach.gapM() < 0
                ? "the level wets the cups by " + mm(-reach.gapM())
                : "the level is " + mm(reach.gapM()) + " below the cups";
    }

    private static String mm(double lengthM) {
        return Numbers.of(1000 * lengthM, Unit.MILLIMETRES);
    }
}
