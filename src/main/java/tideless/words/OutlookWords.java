package tideless.words;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import tideless.advice.Task;
import tideless.physics.Time;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.Expected;
import tideless.study.Forecast;
import tideless.study.Outlook;
import tideless.study.StepError;

/** How sure a forecast is, in words a person uses. */
public final class OutlookWords {
    /** Harms told by name; more are left out. */
    private static final int TOLD_HARMS = 2;

    /** A difference below this is told as within it. */
    private static final double LEAST_TOLD_FRAC = 1e-4;

    private OutlookWords() {}

    private static final double MOST_FRAC = 0.5; // more are most of them, by the word

    /**
     * In how many rigs all comes through, and what harms first in the others.
     *
     * @param start the run's first day
     * @param survives whether the crops survive in the run as stated
     */
    public static String chance(Outlook outlook, LocalDate start, boolean survives) {
        long through = count(outlook.chance(), outlook);
        String of = through + " of " + outlook.members() + " rigs that yours might be come through";
        if (!survives) {
            return through == 0
                    ? "None of " + outlook.members() + " rigs that yours might be comes through."
                    : "Yet " + of + ".";
        }
        if (outlook.harms().isEmpty()) {
            return "All of " + outlook.members() + " rigs that yours might be come through.";
        }
        return (outlook.survives() ? "" : "Not surely, though: ")
                + of
                + "; "
                + harms(outlook, start)
                + ".";
    }

    /** Whether fewer than half of the rigs come through. */
    public static boolean isMostlyLost(Outlook outlook) {
        return outlook.chance() < MOST_FRAC;
    }

    /** Of a crop that lives in the run as stated, and is mostly lost. */
    static String mostlyLost(Outlook outlook, LocalDate start) {
        return "Count on losing the crop: it lives by the likeliest figures alone. Only "
                + count(outlook.chance(), outlook)
                + " of "
                + outlook.members()
                + " rigs that yours might be come through; "
                + harms(outlook, start)
                + ".";
    }

    /** Of crops that are poor as they stand: in how many rigs the plants live at all. */
    static String living(Outlook outlook) {
        return "Plants live in "
                + count(outlook.chance(), outlook)
                + " of "
                + outlook.members()
                + " rigs that yours might be.";
    }

    /** How sure a forecast is, line by line. */
    public static List<String> sureness(Forecast forecast) {
        if (forecast.outlook().isEmpty()) {
            if (forecast.isBrokenOff()) {
                return List.of(brokenOff(forecast));
            }
            return List.of("Run as stated alone (--members 1): nothing is known of it.");
        }
        Outlook outlook = forecast.outlook().get();
        LocalDate start = forecast.trace().scenario().start();
        List<String> lines = new ArrayList<>();
        if (forecast.isBrokenOff()) {
            lines.add(brokenOff(forecast));
        }
        lines.add(
                outlook.members()
                        + " rigs that yours might be were run: crop, air, feed, meter and valve a"
                        + " little different in each. \"Likely\" spans the dates of 8 in 10.");
        lines.add(chance(outlook, start, forecast.advice().verdict().survives()));
        for (Outlook.Absence absence : outlook.absences()) {
            lines.add(
                    "Away "
                            + Dates.shortSpan(absence.absence().from(), absence.absence().to())
                            + ": "
                            + count(absence.chance(), outlook)
                            + " of "
                            + outlook.members()
                            + " get over it.");
        }
        forecast.stepError().ifPresent(error -> lines.add(step(error)));
        return lines;
    }

    /** Of a forecast whose members were not all run. */
    public static String brokenOff(Forecast forecast) {
        return forecast.outlook()
                .map(o -> brokenOff(o.members(), forecast.members()))
                .orElse(
                        "Broken off before any rig that yours might be was run: how sure this is,"
                                + " is not known.");
    }

    /** Of work for so many rigs that was broken off after the first ones. */
    public static String brokenOff(int done, int asked) {
        return "Broken off: these are the first "
                + done
                + " of "
                + asked
                + " rigs, as --members "
                + done
                + " tells them.";
    }

    private static String harms(Outlook outlook, LocalDate start) {
        List<String> told = new ArrayList<>();
        for (Outlook.LikelyHarm harm : outlook.harms()) {
            if (told.size() == TOLD_HARMS) {
                told.add("and so on");
                break;
            }
            long members = count(harm.share(), outlook);
            told.add(
                    "in "
                            + members
                            + (told.isEmpty() ? " of them " : " ")
                            + AwayWords.harm(harm)
                            + " about "
                            + Dates.dayMonth(day(start, harm.atS().middle())));
        }
        return String.join(", ", told);
    }

    /**
     * How sure it is that an absence does no harm; empty where every member gets over it.
     *
     * @param survives whether the run as stated gets over it: beside one that does not, a bare
     *     share would be taken for those that are harmed
     */
    public static String absence(Outlook outlook, Outlook.Absence absence, boolean survives) {
        long through = count(absence.chance(), outlook);
        if (through == outlook.members()) {
            return "";
        }
        boolean isRare = through < outlook.members() / 2.0;
        boolean ofHarm = !isRare && !survives;
        return (isRare ? "lived through in only " : ofHarm ? "harmed in " : "in ")
                + (ofHarm ? outlook.members() - through : through)
                + " of "
                + outlook.members()
                + " rigs that yours might be";
    }

    /**
     * Within which days something is to be expected.
     *
     * @return as "8 times in 10 from 18 to 24 Mar"; empty where it falls on one day in all
     */
    public static String days(Expected expected, LocalDate start) {
        Band at = expected.atS();
        if (at.low() == Double.POSITIVE_INFINITY) {
            return "in " + percent(1 - at.neverFrac()) + " of rigs like yours only";
        }
        LocalDate early = day(start, at.low());
        if (at.high() == Double.POSITIVE_INFINITY) {
            return Dates.dayMonth(early)
                    + " or later, in "
                    + percent(at.neverFrac())
                    + " of rigs like yours not at all";
        }
        LocalDate late = day(start, at.high());
        return early.equals(late) ? "" : "likely " + Dates.shortSpan(early, late);
    }

    /**
     * What the longer step of the members costs, as "The rigs that yours might be are stepped by 3
     * hours: this run, stepped so, differs by 0.02 % in weight at harvest, less than 0.01 % in
     * water and 2 minutes in its dates."
     */
    public static String step(StepError error) {
        long minutes = (long) Math.ceil(error.shiftS() / 60 - 1e-9);
        return "The rigs that yours might be are stepped by "
                + Numbers.hours(error.stepS() / Time.HOUR_S)
                + ": this run, stepped so, differs by "
                + hundredths(error.weightFrac())
                + " in weight at harvest, "
                + hundredths(error.waterFrac())
                + " in water and "
                + minutes
                + (minutes == 1 ? " minute" : " minutes")
                + " in its dates"
                + (error.unmatched() == 0 ? "" : ", of which " + error.unmatched() + " come or go")
                + ".";
    }

    private static String hundredths(double frac) {
        return frac < LEAST_TOLD_FRAC ? "less than 0.01 %" : Numbers.two(100 * frac) + " %";
    }

    /** How many members a share is. */
    private static long count(double share, Outlook outlook) {
        return (long) Math.floor(share * outlook.members() + 0.5);
    }

    private static String percent(double frac) {
        return Numbers.percent(frac);
    }

    private static LocalDate day(LocalDate start, double atS) {
        LocalDateTime at = start.atStartOfDay().plusSeconds((long) atS);
        return at.toLocalDate();
    }

    /** Days on which a task is likely; empty where none are told. */
    public static String likely(Forecast forecast, Task task) {
        return forecast.expected(task)
                .filter(expected -> tells(expected.what().kind()))
                .map(expected -> days(expected, forecast.trace().scenario().start()))
                .orElse("");
    }

    /** Events whose days are worth a word: those that nobody's calendar fixes. */
    public static boolean tells(Event.Kind kind) {
        return kind != Event.Kind.TOP_UP;
    }
}
