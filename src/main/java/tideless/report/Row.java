package tideless.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tideless.words.Dates;
import tideless.words.Wrap;

/**
 * A line above the axes of a panel: when something is done, or how long something lasts, each with
 * its date.
 *
 * @param name what it means
 * @param marks when something is done, rising
 * @param spans how long something lasts, from and to in days since the start, rising
 * @param fill of the spans; null where there are none
 * @param tints whether the same stretches of the panel are tinted with it
 */
record Row(String name, List<Mark> marks, List<double[]> spans, Color fill, boolean tints) {
    /** Height of one line of it, pt. */
    static final double LINE = 10.5;

    /** Dates that do not fit on so many lines are counted instead. */
    private static final int MOST_LINES = 3;

    private static final double HALF_MARK = 3;
    private static final double BLANK = 3.5;

    /**
     * Something done.
     *
     * @param day days since the start
     * @param done in this run; else advised alone
     * @param from of ten rigs like this, eight do it from this day on; NaN where nothing is known
     * @param to until this one; NaN likewise
     */
    record Mark(double day, boolean done, double from, double to) {
        /** On a day that is known. */
        static Mark on(double day) {
            return new Mark(day, true, Double.NaN, Double.NaN);
        }
    }

    /** A date where it stands: its left end, pt, and its line, counted from 0. */
    private record Placed(String text, double x, int line, double mark) {}

    /** All dates of a row; none where they were counted instead. */
    private record Layout(List<Placed> dates, int lines) {}

    Row {
        marks = List.copyOf(marks);
        spans = List.copyOf(spans);
    }

    /** Whether the marks stand too close for lines down the panel. */
    boolean crowded() {
        return marks.size() > 50;
    }

    /** Its height, pt. */
    double height(Graphics2D g2, LocalDate start, double left, double width, double days) {
        return LINE * layout(g2, start, left, width, days).lines();
    }

    /**
     * Draws it.
     *
     * @param y its top, pt
     * @param left where its days begin, pt
     * @param width of them all, pt
     * @param names room for its name, pt
     */
    void draw(
            Graphics2D g2,
            LocalDate start,
            double y,
            double left,
            double width,
            double days,
            double names) {
        double middle = y + LINE / 2;
        double perDay = width / days;
        String shown = Picture.fit(g2, name, Look.SMALL, names);
        Picture.text(
                g2,
                shown,
                Look.SMALL,
                left - 6 - Picture.width(g2, shown, Look.SMALL),
                middle + 2.5);
        g2.setStroke(Look.HAIR);
        g2.setPaint(Look.GRID);
        g2.draw(new Line2D.Double(left, middle, left + width, middle));
        for (Mark mark : marks) {
            drawLikely(g2, mark, middle, left, perDay, days);
        }
        for (double[] span : spans) {
            Rectangle2D bar =
                    new Rectangle2D.Double(
                            left + span[0] * perDay,
                            middle - 2.5,
                            Math.max(2, (span[1] - span[0]) * perDay),
                            5);
            g2.setPaint(Look.solid(fill));
            g2.fill(bar);
            g2.setPaint(Look.INK);
            g2.setStroke(Look.HAIR);
            g2.draw(bar);
        }
        Layout layout = layout(g2, start, left, width, days);
        for (Placed date : layout.dates()) {
            double base = y + date.line() * LINE + LINE / 2 + 2.5;
            if (date.line() > 0) {
                g2.setPaint(Look.LEADER);
                g2.setStroke(Look.HAIR);
                g2.draw(new Line2D.Double(date.mark(), middle + 3, date.mark(), base - 5.5));
            }
            g2.setPaint(Look.GROUND);
            double wide = Picture.width(g2, date.text(), Look.SMALL);
            // Over the line, and below the bar of eight in ten.
            g2.fill(new Rectangle2D.Double(date.x() - 1, base - 5.4, wide + 2, 6.9));
            Picture.text(g2, date.text(), Look.SMALL, date.x(), base);
        }
        for (Mark mark : marks) {
            drawMark(g2, mark, left + mark.day() * perDay, middle);
        }
        if (layout.dates().isEmpty()) {
            writeCount(g2, start, left + width + 9, middle);
        }
    }

    private static void drawLikely(
            Graphics2D g2, Mark mark, double middle, double left, double perDay, double days) {
        if (!(mark.to() > mark.from())) {
            return;
        }
        double from = left + Math.max(0, mark.from()) * perDay;
        double to = left + Math.min(days, mark.to()) * perDay;
        drawLikely(g2, from, Math.max(from, to), middle - 4.3);
    }

    /** From when to when eight rigs of ten do it: a line between two strokes. */
    static void drawLikely(Graphics2D g2, double from, double to, double y) {
        g2.setPaint(Look.DEEP);
        g2.setStroke(Look.LIKELY_LINE);
        g2.draw(new Line2D.Double(from, y, to, y));
        g2.draw(new Line2D.Double(from, y - 1.3, from, y + 1.3));
        g2.draw(new Line2D.Double(to, y - 1.3, to, y + 1.3));
    }

    private void drawMark(Graphics2D g2, Mark mark, double x, double middle) {
        g2.setPaint(Look.INK);
        g2.setStroke(Look.HAIR);
        if (crowded()) {
            g2.draw(new Line2D.Double(x, middle - 2.5, x, middle + 2.5));
            return;
        }
        var sign = Panel.polygon(x - 2.6, middle - 2.4, x + 2.6, middle - 2.4, x, middle + 2.6);
        if (!mark.done()) {
            g2.setPaint(Look.GROUND);
            g2.fill(sign);
            g2.setPaint(Look.INK);
            g2.draw(sign);
            return;
        }
        g2.fill(sign);
    }

    /** How many, and from when to when, in place of dates that do not fit. */
    private void writeCount(Graphics2D g2, LocalDate start, double x, double middle) {
        double first = marks.isEmpty() ? spans.get(0)[0] : marks.get(0).day();
        double last =
                marks.isEmpty()
                        ? spans.get(spans.size() - 1)[0]
                        : marks.get(marks.size() - 1).day();
        String count =
                Math.max(marks.size(), spans.size())
                        + " times, "
                        + date(start, first)
                        + " to "
                        + date(start, last);
        Picture.text(
                g2,
                Picture.fit(g2, count, Look.SMALL, Picture.WIDTH - 4 - x),
                Look.SMALL,
                x,
                middle + 2.5);
    }

    private static String date(LocalDate start, double day) {
        return Dates.dayMonth(start.plusDays((long) Math.floor(day + 1e-6)));
    }

    // A date stands to the right of its mark, else to the left, else on a line below; where three
    // lines are too few for all of them, all are counted.
    private Layout layout(Graphics2D g2, LocalDate start, double left, double width, double days) {
        List<double[]> at = new ArrayList<>();
        double perDay = width / days;
        for (Mark mark : marks) {
            double x = left + mark.day() * perDay;
            at.add(new double[] {x - HALF_MARK, x + HALF_MARK, mark.day()});
        }
        for (double[] span : spans) {
            at.add(
                    new double[] {
                        left + span[0] * perDay,
                        left + Math.max(span[0] * perDay + 2, span[1] * perDay) + 1,
                        span[0]
                    });
        }
        double end = left + width;
        double[] free = new double[MOST_LINES];
        Arrays.fill(free, left);
        List<Placed> dates = new ArrayList<>();
        int lines = 1;
        for (int i = 0; i < at.size(); i++) {
            double from = at.get(i)[0];
            double to = at.get(i)[1];
            String text = date(start, at.get(i)[2]);
            double length = Picture.width(g2, text, Look.SMALL);
            double next = i + 1 < at.size() ? at.get(i + 1)[0] : end;
            // Behind a stretch, the day it begins would read as that of its end.
            if (i < marks.size() && next - to >= length + BLANK) {
                dates.add(new Placed(text, to + 1.5, 0, to));
                free[0] = to + 1.5 + length;
                continue;
            }
            if (from - free[0] >= length + BLANK) {
                dates.add(new Placed(text, from - 1.5 - length, 0, from));
                free[0] = to;
                continue;
            }
            free[0] = to;
            double mark = (from + Math.min(to, from + 2 * HALF_MARK)) / 2;
            double x = Math.min(end - length, Math.max(left, mark - length / 2));
            int line = 1;
            while (line < MOST_LINES && x < free[line] + BLANK && free[line] > left) {
                line++;
            }
            if (line == MOST_LINES) {
                return new Layout(List.of(), 1);
            }
            dates.add(new Placed(text, x, line, mark));
            free[line] = x + length;
            lines = Math.max(lines, line + 1);
        }
        return new Layout(dates, lines);
    }

    /** Whether two names fit beside one another where they mean the same days. */
    static boolean fitTogether(String one, String other) {
        return Wrap.length(one) + Wrap.length(other) <= 14;
    }
}
