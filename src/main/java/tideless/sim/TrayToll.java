package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.physics.Time;

/** Sums up what a run did to one tray. Scratch space of one run. */
final class TrayToll {
    private double strandedS;
    private double wiltedS;
    private double drownedS;
    private double shortOfAirS;
    private double dryS;
    private double drunkM3;
    private double drunkTodayM3;
    private double lowestTodayM = Double.POSITIVE_INFINITY;
    private final List<Double> lowestOfDayM;
    private final List<Double> drunkOfDayM3;
    private double levelBeforeM = Double.POSITIVE_INFINITY;
    private double filmSinceS = Double.NaN;
    private boolean filmNoted;
    private final List<Double> filmFromS = new ArrayList<>();
    private final List<TraySeason.Left> leftOfDay;
    private final List<TraySeason.Yield> yields = new ArrayList<>();

    TrayToll(int days) {
        lowestOfDayM = new ArrayList<>(days);
        drunkOfDayM3 = new ArrayList<>(days);
        leftOfDay = new ArrayList<>(days);
    }

    /**
     * @param levelM at the end of the step, m
     * @param drunkM3 transpired in it, m3
     * @param dry whether nothing but a film is left
     */
    void step(double levelM, double drunkM3, boolean dry, double endS, double spanS) {
        lowestTodayM = Math.min(lowestTodayM, levelM);
        this.drunkM3 += drunkM3;
        drunkTodayM3 += drunkM3;
        dryS += dry ? spanS : 0;
        noteFilm(levelM, endS, spanS);
    }

    private void noteFilm(double levelM, double endS, double spanS) {
        if (levelM >= TraySeason.FILM_M) {
            filmSinceS = Double.NaN;
            filmNoted = false;
        } else if (Double.isNaN(filmSinceS)) {
            boolean fell = levelBeforeM > levelM && levelBeforeM < Double.POSITIVE_INFINITY;
            double belowFrac =
                    fell ? Math.min(1, (TraySeason.FILM_M - levelM) / (levelBeforeM - levelM)) : 1;
            filmSinceS = endS - belowFrac * spanS;
        }
        if (!filmNoted && endS - filmSinceS >= TraySeason.FILM_PATIENCE_S) { // false for NaN
            filmNoted = true;
            filmFromS.add(filmSinceS);
        }
        levelBeforeM = levelM;
    }

    /** The same for living plants. */
    void bear(RootFate roots, double spanS) {
        strandedS += roots.isStranded() ? spanS : 0;
        wiltedS += roots.isWilted() ? spanS : 0;
        drownedS += roots.isDrowned() ? spanS : 0;
    }

    /** A day has ended. */
    void endDay(boolean shortOfAir) {
        shortOfAirS += shortOfAir ? Time.DAY_S : 0;
        lowestOfDayM.add(lowestTodayM);
        lowestTodayM = Double.POSITIVE_INFINITY;
        drunkOfDayM3.add(drunkTodayM3);
        drunkTodayM3 = 0;
    }

    /** What is left of the growth of a day that has ended. */
    void leave(TraySeason.Left left) {
        leftOfDay.add(left);
    }

    /** A crop has left the tray, or the run has ended. */
    void reap(double freshG, double fruitFreshG, double pickedG, Optional<GrowthLost> lost) {
        yields.add(new TraySeason.Yield(freshG, fruitFreshG, pickedG, lost));
    }

    TraySeason season() {
        return new TraySeason(
                yields,
                drunkM3,
                dryS / Time.HOUR_S,
                strandedS / Time.HOUR_S,
                wiltedS / Time.HOUR_S,
                drownedS / Time.HOUR_S,
                shortOfAirS / Time.HOUR_S,
                lowestOfDayM,
                drunkOfDayM3,
                filmFromS,
                leftOfDay);
    }
}
