package tideless.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import tideless.words.Dates;

/**
 * Days since the start, labelled with dates. Not the library's date axis, which goes by the time
 * zone and the language of the machine.
 */
final class DayAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;
    private static final int[] STEPS = {1, 2, 7, 14};
    private static final double LABEL_PT = 34;

    private final transient LocalDate start;
    private final int days;

    DayAxis(LocalDate start, int days, boolean labelled) {
        this.start = start;
        this.days = days;
        setRange(0, days);
        setTickLabelsVisible(labelled);
        setTickLabelFont(Look.TEXT);
        setTickLabelPaint(Look.INK);
        setTickMarksVisible(labelled);
        setTickMarkPaint(Look.QUIET);
        setTickMarkStroke(Look.HAIR);
        setAxisLinePaint(Look.QUIET);
        setAxisLineStroke(Look.HAIR);
    }

    @Override
    public List<NumberTick> refreshTicks(
            Graphics2D g2, AxisState state, Rectangle2D dataArea, RectangleEdge edge) {
        List<NumberTick> ticks = new ArrayList<>();
        double room = dataArea.getWidth() / LABEL_PT;
        for (int step : STEPS) {
            if (days / (double) step <= room) {
                for (int day = 0; day <= days; day += step) {
                    ticks.add(tick(day));
                }
                return ticks;
            }
        }
        int months = (int) Math.ceil(days / 30.4 / room);
        LocalDate first = start.withDayOfMonth(1);
        for (int i = 0; ; i += months) {
            long day = first.plusMonths(i).toEpochDay() - start.toEpochDay();
            if (day > days) {
                return ticks;
            }
            if (day >= 0) {
                ticks.add(tick((int) day));
            }
        }
    }

    private NumberTick tick(int day) {
        return new NumberTick(
                TickType.MAJOR,
                day,
                Dates.dayMonth(start.plusDays(day)),
                TextAnchor.TOP_CENTER,
                TextAnchor.TOP_CENTER,
                0);
    }
}
