package tideless.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.sim.ReservoirTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** How long a reservoir lasts, and what would be enough. */
final class Sizings {
    private Sizings() {}

    static Sizing of(Trace trace, Trace unlimited, int index, VisitTimes rounds) {
        ReservoirTrace drawn = unlimited.reservoirs().get(index);
        Reservoir reservoir = trace.reservoirs().get(index).reservoir();
        double[] soFar = new double[unlimited.hours() + 1]; // m3 used by the end of each hour
        double leakM3 = Time.HOUR_S * trace.scenario().correction().leakM3PerS(reservoir.name());
        for (int h = 0; h < unlimited.hours(); h++) {
            double drawnM3 = leakM3 + drawn.outflowM3().at(h) + drawn.evaporationM3().at(h);
            // What runs over a rim is no thirst that a larger reservoir could meet.
            for (TrayTrace tray : unlimited.trays()) {
                if (tray.tray().isFedBy(reservoir.name())) {
                    drawnM3 -= tray.spillM3().at(h);
                }
            }
            soFar[h + 1] = soFar[h] + Math.max(0, drawnM3);
        }
        double usable = trace.scenario().feedingM3(reservoir);
        List<Double> days = new ArrayList<>();
        for (int day = 0; day < trace.scenario().days(); day++) {
            days.add((reaches(soFar, goneBy(soFar, day * 24) + usable) - day * 24) / 24);
        }
        double enough = 0;
        LocalDate outgrown = null;
        double toldHour = trace.scenario().log().lastS() / Time.HOUR_S;
        for (double[] gap : rounds.gaps()) {
            if (gap[1] <= toldHour) {
                continue;
            }
            double need = goneBy(soFar, gap[1]) - goneBy(soFar, gap[0]);
            enough = Math.max(enough, need);
            if (need > usable && outgrown == null) {
                outgrown = trace.scenario().start().plusDays((long) (gap[0] / 24));
            }
        }
        return new Sizing(
                reservoir.name(),
                days,
                rounds.longestGapDays(),
                outgrown,
                enough * 1000,
                usable * 1000);
    }

    private static double goneBy(double[] soFar, double hour) {
        int h = Math.min((int) hour, soFar.length - 1);
        if (h == soFar.length - 1) {
            return soFar[h];
        }
        return soFar[h] + (hour - h) * (soFar[h + 1] - soFar[h]);
    }

    /** The hour by which so much is gone; the end of the run when it never is. */
    private static double reaches(double[] soFar, double gone) {
        int last = soFar.length - 1;
        if (soFar[last] <= gone) {
            return last;
        }
        int h = 0;
        while (soFar[h + 1] <= gone) {
            h++;
        }
        return h + (gone - soFar[h]) / (soFar[h + 1] - soFar[h]);
    }
}
