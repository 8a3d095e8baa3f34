package tideless.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.solution.Component;
import tideless.study.LeanFeed;

/** What came of looking for a feed without a flush. */
public final class LeanWords {
    private LeanWords() {}

    /** What was found and what stands in the way of another. */
    public static List<String> found(LeanFeed lean) {
        List<String> told = new ArrayList<>();
        told.add("The feed as it stands: " + ec(lean.given()) + ".");
        if (lean.exists()) {
            told.add(
                    "From "
                            + Numbers.two(lean.leanest().orElseThrow())
                            + " to "
                            + ec(lean.richest().orElseThrow())
                            + " every tray stays in its band to harvest without a flush; make "
                            + ec(lean.recommendedMsPerCm())
                            + ", clear of the edge by what mixing and meter may be off.");
        } else {
            told.add("No feed keeps every tray in its band without a flush.");
        }
        lean.richestTooLean().ifPresent(trial -> told.add(why(trial, trial.tooLean())));
        lean.leanestTooSalty().ifPresent(trial -> told.add(why(trial, trial.tooSalty())));
        if (lean.richest().isEmpty()) {
            told.add(
                    "  Not even the leanest feed of this water (which alone reads "
                            + ec(lean.waterMsPerCm())
                            + ") stays in band.");
        }
        if (lean.leanest().isEmpty()) {
            told.add("  Twice the given strength still leaves a tray too lean.");
        }
        if (!lean.flushed().isEmpty()) {
            told.add("So flush: make " + ec(lean.flushed().get(0).feedMsPerCm()) + ", and");
            lean.flushed().forEach(flushed -> told.add("  " + flushed(flushed)));
        }
        return told;
    }

    /** As "flush tray left every 20 days or so (3 times), first on Sun 29 Mar at 2.56 mS/cm". */
    private static String flushed(LeanFeed.Flushed flushed) {
        String often =
                flushed.times() == 1
                        ? " once, on "
                        : " every "
                                + Numbers.whole(flushed.everyDays())
                                + " days"
                                + " or so ("
                                + flushed.times()
                                + " times), first on ";
        return "flush "
                + Names.tray(flushed.tray())
                + often
                + Dates.weekday(flushed.first())
                + " at "
                + ec(flushed.ecMsPerCm());
    }

    private static String why(LeanFeed.Trial trial, Optional<LeanFeed.Leaving> leaving) {
        return "  At " + ec(trial.ecMsPerCm()) + " " + leaving(leaving.orElseThrow()) + ".";
    }

    /** What becomes of one feed, as "all in band". */
    public static String trial(LeanFeed.Trial trial) {
        List<String> told = new ArrayList<>();
        trial.tooSalty().ifPresent(leaving -> told.add(leaving(leaving)));
        trial.tooLean().ifPresent(leaving -> told.add(leaving(leaving)));
        return told.isEmpty() ? "all in band" : String.join("; ", told);
    }

    /** As "tray left is too lean from Sun 29 Mar (0.77 mS/cm)". */
    private static String leaving(LeanFeed.Leaving leaving) {
        String ion = leaving.ion().map(Component::title).orElse("");
        String what =
                switch (leaving.fault()) {
                    case TOO_SALTY -> "too salty";
                    case TOO_RICH -> "too rich in " + ion;
                    case TOO_LEAN -> "too lean";
                    case SHORT -> "short of " + ion;
                };
        String figure =
                switch (leaving.fault()) {
                    case TOO_SALTY, TOO_LEAN -> ec(leaving.figure());
                    case TOO_RICH -> Numbers.two(leaving.figure()) + " mmol/L at the end";
                    case SHORT -> Numbers.two(leaving.figure()) + " mmol/L";
                };
        return Names.tray(leaving.tray())
                + " is "
                + what
                + " from "
                + Dates.weekday(leaving.since())
                + " ("
                + figure
                + ")";
    }

    private static String ec(double msPerCm) {
        return Numbers.two(msPerCm) + " mS/cm";
    }
}
