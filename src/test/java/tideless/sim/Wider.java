package tideless.sim;

/** Departures of somebody who knows less than the program believes. */
public final class Wider {
    private Wider() {}

    /** The same with every factor of weeks and days so many times as far off, as logarithms. */
    public static Departures than(Departures of, int trays, int days, double times) {
        double[] stands = new double[trays];
        double[][] thirst = new double[trays][days];
        boolean[] missed = new boolean[days];
        for (int day = 0; day < days; day++) {
            missed[day] = of.isMissed(day);
            for (int tray = 0; tray < trays; tray++) {
                stands[tray] = of.standDeviate(tray);
                thirst[tray][day] = Math.pow(of.thirstFrac(tray, day), times);
            }
        }
        return new Departures(stands, thirst, missed, of.meterFrac());
    }
}
