package tideless.advice;

/** What a tray's plants would drink each day of a good solution. */
final class Thirsts {
    private Thirsts() {}

    /**
     * Thirst of each day while the crop lives, whatever salt or want of air lets it drink.
     *
     * @return m3 in the day; 0 before and after the crop
     */
    static double[] daily(TrayCase tray) {
        double[] daily = new double[tray.trace.hours() / 24];
        for (int day = tray.firstHour / 24; day < daily.length; day++) {
            if (day * 24 > tray.lastHour) {
                break;
            }
            int from = Math.max(day * 24, tray.firstHour);
            int to = Math.min(day * 24 + 24, tray.planting.endHour());
            daily[day] = tray.of.thirstM3().sum(from, Math.max(from, to));
        }
        return daily;
    }
}
