package tideless.advice;

import tideless.crop.Transpiration;

/** What a tray's plants want each day before salt cuts it. */
final class Thirsts {
    /** Below this share of its thirst left by salt a day tells nothing of the crop; assumed. */
    private static final double TELLING_FRAC = 0.5;

    private Thirsts() {}

    /**
     * Thirst of each day while the crop lives: what the run says, with the cut by salt taken back;
     * a day on which salt leaves less than half is told by the last day before it.
     *
     * @return m3 in the day; 0 before and after the crop
     */
    static double[] daily(TrayCase tray) {
        int days = tray.trace.hours() / 24;
        double[] daily = new double[days];
        int first = tray.firstHour / 24;
        for (int day = first; day < days; day++) {
            if (day * 24 > tray.lastHour) {
                break;
            }
            int from = Math.max(day * 24, tray.firstHour);
            int to = Math.min(day * 24 + 24, tray.planting.endHour());
            double sum = 0;
            double telling = 1;
            for (int h = from; h < to; h++) {
                double left = saltFrac(tray, h);
                telling = Math.min(telling, left);
                sum += tray.of.thirstM3().at(h) / Math.max(TELLING_FRAC, left);
            }
            boolean isTold = telling >= TELLING_FRAC || day == first;
            daily[day] = isTold ? sum : Math.max(sum, daily[day - 1]);
        }
        return daily;
    }

    private static double saltFrac(TrayCase tray, int hour) {
        double ec = tray.of.ecMsPerCm().at(hour);
        return tray.traits == null || Double.isNaN(ec)
                ? 1
                : Transpiration.saltFrac(tray.traits, ec);
    }
}
