package tideless.words;

import java.util.ArrayList;
import java.util.List;
import tideless.advice.Unit;
import tideless.rig.Limits;
import tideless.rig.Tray;
import tideless.sim.PlantingTrace;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** What a plot finds, for those who do not see it and those who do. */
public final class PlotWords {
    private static final int HOURS = 24;

    private PlotWords() {}

    /** Of how a reservoir falls. */
    public static String reservoir(Trace trace, ReservoirTrace run) {
        int lowest = 0;
        for (int hour = 0; hour < trace.hours(); hour++) {
            if (run.usableM3().at(hour) < run.usableM3().at(lowest)) {
                lowest = hour;
            }
        }
        return "Reservoir "
                + Names.clean(run.reservoir().name())
                + " is lowest on "
                + on(trace, lowest)
                + ", with "
                + Numbers.litres(1000 * run.usableM3().at(lowest))
                + " of "
                + Numbers.litres(1000 * run.reservoir().usableM3())
                + " L above its outlet.";
    }

    /** Of a tray's level. */
    public static String level(Trace trace, TrayTrace run) {
        int lowest = 0;
        int highest = 0;
        for (PlantingTrace planting : trace.plantings(run)) {
            for (int hour = planting.firstHour(); hour <= planting.lastHour(); hour++) {
                lowest = run.levelM().at(hour) < run.levelM().at(lowest) ? hour : lowest;
                highest = run.levelM().at(hour) > run.levelM().at(highest) ? hour : highest;
            }
        }
        Tray tray = run.tray();
        double lowM = run.levelM().at(lowest);
        if (mm(lowM).equals(mm(run.levelM().at(highest)))) {
            return "The level of " + Names.of(tray.id()) + " is held at " + mm(lowM) + ".";
        }
        return "The level of "
                + Names.of(tray.id())
                + " is lowest on "
                + on(trace, lowest)
                + ", at "
                + mm(lowM)
                + ", with roots "
                + (RigWords.isOnFloor(run.rootTipM().at(lowest))
                        ? "on the floor"
                        : "down to " + mm(run.rootTipM().at(lowest)))
                + "; highest it stands at "
                + mm(run.levelM().at(highest))
                + ".";
    }

    /**
     * One curve.
     *
     * @param run whose it is
     * @param names of all the trays that it stands for
     */
    public record Drawn(TrayTrace run, String names) {}

    /** Of the EC of some trays. */
    public static String ec(Trace trace, List<Drawn> curves) {
        List<String> parts = new ArrayList<>();
        for (Drawn curve : curves) {
            trace.plantings(curve.run()).forEach(of -> parts.add(ec(of, curve.names())));
        }
        return "EC while plants live: " + String.join("; ", parts) + ".";
    }

    private static String ec(PlantingTrace planting, String name) {
        Series ec = planting.run().ecMsPerCm();
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (int hour = planting.firstHour(); hour <= planting.lastHour(); hour++) {
            if (ec.at(hour) > 0) { // not of a dry tray
                low = Math.min(low, ec.at(hour));
                high = Math.max(high, ec.at(hour));
            }
        }
        Limits limits = planting.tray().limits();
        return Names.clean(name)
                + Names.ofCrop(planting.crop())
                + (high > 0
                        ? " " + Numbers.two(low) + " to " + Numbers.two(high) + " mS/cm"
                        : " dry")
                + (Double.isFinite(limits.ecHighMsPerCm())
                        ? " (bears up to " + Numbers.two(limits.ecHighMsPerCm()) + " mS/cm)"
                        : "");
    }

    /** Of the pH of some trays. */
    public static String ph(Trace trace, List<Drawn> curves) {
        List<String> parts = new ArrayList<>();
        for (Drawn curve : curves) {
            trace.plantings(curve.run()).forEach(of -> parts.add(ph(of, curve.names())));
        }
        return "pH while plants live: "
                + String.join("; ", parts)
                + ". Dotted: how high or low it may be, for what is not known of the crop; a warning"
                + " comes where all of that is half a unit out of the band for days, a note where"
                + " the likely pH is so for a week.";
    }

    private static String ph(PlantingTrace planting, String name) {
        Series ph = planting.run().ph();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int hour = planting.firstHour(); hour <= planting.lastHour(); hour++) {
            if (!Double.isNaN(ph.at(hour))) { // not of a dry tray
                low = Math.min(low, ph.at(hour));
                high = Math.max(high, ph.at(hour));
            }
        }
        Limits limits = planting.tray().limits();
        return Names.clean(name)
                + Names.ofCrop(planting.crop())
                + (high >= low ? " " + Numbers.one(low) + " to " + Numbers.one(high) : " dry")
                + " (band "
                + Numbers.one(limits.phLow())
                + " to "
                + Numbers.one(limits.phHigh())
                + ")";
    }

    /** Of what the plants of some trays drink. */
    public static String thirst(Trace trace, List<Drawn> curves) {
        List<String> parts = new ArrayList<>();
        for (Drawn curve : curves) {
            TrayTrace run = curve.run();
            double most = 0;
            int on = 0;
            for (int day = 0; day < trace.hours() / HOURS; day++) {
                double litres = 1000 * run.transpirationM3().sum(HOURS * day, HOURS * day + HOURS);
                if (litres > most) {
                    most = litres;
                    on = HOURS * day;
                }
            }
            parts.add(
                    Names.clean(curve.names())
                            + " "
                            + Numbers.litres(most)
                            + " L on "
                            + on(trace, on));
        }
        return "Most drunk in a day: " + String.join("; ", parts) + ".";
    }

    // The last sample is midnight after the last day, which is that day's evening to everybody.
    private static String on(Trace trace, int hour) {
        int within = Math.min(hour, trace.hours() - 2);
        return Dates.dayMonth(trace.clockAtSample(within).toLocalDate());
    }

    private static String mm(double lengthM) {
        return Numbers.of(1000 * lengthM, Unit.MILLIMETRES);
    }
}
