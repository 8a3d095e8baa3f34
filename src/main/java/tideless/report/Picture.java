package tideless.report;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import tideless.words.Dates;

/**
 * One page: a title, and panels one above the other on a shared axis of dates.
 *
 * @param title what it shows
 * @param subtitle of which run
 * @param valueLabel the upright axis, with its unit
 * @param dateLabel the axis of dates
 * @param panels from the top
 * @param finding what is to be seen, in a sentence
 */
record Picture(
        String title,
        String subtitle,
        String valueLabel,
        String dateLabel,
        List<Panel> panels,
        String finding)
        implements Page {
    /** Width of an A5 page laid across, pt. */
    static final double WIDTH = 595.2;

    /** Height, pt, in the proportion of the pixels of {@link Images}. */
    static final double HEIGHT = WIDTH * Images.PIXELS_HIGH / Images.PIXELS_WIDE;

    private static final double LEFT = 86;
    private static final double RIGHT = 112;
    static final double EDGE = 14;
    private static final double NAMES = 28;
    private static final double TOP = 44;
    private static final double BOTTOM = 38;
    private static final double ROW = 10.5;
    private static final double ROWS_GAP = 5;
    private static final double GAP = 10;
    private static final double STUB = 17;

    Picture {
        panels = List.copyOf(panels);
    }

    @Override
    public void draw(Graphics2D g2) {
        begin(g2, title, subtitle);
        double rows = panels.stream().mapToDouble(Picture::above).sum();
        double room = HEIGHT - TOP - BOTTOM - rows - (panels.size() - 1) * GAP;
        double each = room / panels.size();
        double y = TOP;
        for (int i = 0; i < panels.size(); i++) {
            Panel panel = panels.get(i);
            double top = y + above(panel);
            drawPanel(g2, panel, y, top, each, i == panels.size() - 1);
            y = top + each + GAP;
        }

        double middle = (TOP + HEIGHT - BOTTOM) / 2;
        if (panels.size() == 1) {
            middle = (TOP + rows + HEIGHT - BOTTOM) / 2;
        }
        upright(g2, valueLabel, middle);
        double centre = (LEFT + WIDTH - RIGHT) / 2;
        text(g2, dateLabel, Look.TEXT, centre - width(g2, dateLabel, Look.TEXT) / 2, HEIGHT - 10);
    }

    /** Fills the ground and writes the head of a page. */
    static void begin(Graphics2D g2, String title, String subtitle) {
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(
                RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(
                RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setPaint(Look.GROUND);
        g2.fill(new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
        text(g2, fit(g2, title, Look.TITLE, WIDTH - 2 * EDGE), Look.TITLE, EDGE, 23);
        g2.setPaint(Look.QUIET);
        write(g2, fit(g2, subtitle, Look.TEXT, WIDTH - 2 * EDGE), Look.TEXT, EDGE, 35);
    }

    /** Writes the name of the upright axis about its middle. */
    static void upright(Graphics2D g2, String label, double middle) {
        AffineTransform level = g2.getTransform();
        g2.translate(EDGE + 7, middle + width(g2, label, Look.TEXT) / 2);
        g2.rotate(-Math.PI / 2);
        text(g2, label, Look.TEXT, 0, 0);
        g2.setTransform(level);
    }

    /** Room the rows of due dates take above a panel. */
    private static double above(Panel panel) {
        return panel.rows().isEmpty() ? 0 : panel.rows().size() * ROW + ROWS_GAP;
    }

    private static void drawPanel(
            Graphics2D g2, Panel panel, double rowsTop, double top, double height, boolean last) {
        XYPlot plot = panel.plot(last, height);
        AxisSpace left = new AxisSpace();
        left.setLeft(LEFT);
        AxisSpace below = new AxisSpace();
        below.setBottom(last ? BOTTOM : 0);
        plot.setFixedRangeAxisSpace(left, false);
        plot.setFixedDomainAxisSpace(below, false);
        Rectangle2D data = new Rectangle2D.Double(LEFT, top, WIDTH - LEFT - RIGHT, height);
        plot.draw(
                g2,
                new Rectangle2D.Double(0, top, WIDTH - RIGHT, height + (last ? BOTTOM : 0)),
                null,
                null,
                null);
        double days = plot.getDomainAxis().getRange().getLength();
        for (int i = 0; i < panel.rows().size(); i++) {
            drawRow(g2, panel, panel.rows().get(i), rowsTop + i * ROW, data, days);
        }
        drawEnds(g2, panel, plot, data);
    }

    private static void drawRow(
            Graphics2D g2, Panel panel, Panel.Row row, double y, Rectangle2D data, double days) {
        double perDay = data.getWidth() / days;
        double middle = y + ROW / 2;
        String name = fit(g2, row.name(), Look.SMALL, LEFT - NAMES - 6);
        text(g2, name, Look.SMALL, data.getX() - 6 - width(g2, name, Look.SMALL), middle + 2.5);
        g2.setStroke(Look.HAIR);
        g2.setPaint(Look.GRID);
        g2.draw(new Line2D.Double(data.getX(), middle, data.getMaxX(), middle));
        for (double[] span : row.spans()) {
            Rectangle2D bar =
                    new Rectangle2D.Double(
                            data.getX() + span[0] * perDay,
                            middle - 2.5,
                            Math.max(1, (span[1] - span[0]) * perDay),
                            5);
            g2.setPaint(row.fill());
            g2.fill(bar);
            g2.setPaint(Look.INK);
            g2.setStroke(Look.HAIR);
            g2.draw(bar);
        }
        List<double[]> taken = new ArrayList<>();
        for (double mark : row.marks()) {
            double x = data.getX() + mark * perDay;
            g2.setPaint(Look.INK);
            if (row.crowded()) {
                g2.draw(new Line2D.Double(x, middle - 2.5, x, middle + 2.5));
            } else {
                g2.fill(
                        Panel.polygon(
                                x - 2.6, middle - 2.4, x + 2.6, middle - 2.4, x, middle + 2.6));
            }
            taken.add(new double[] {x - 3, x + 3, mark});
        }
        for (double[] span : row.spans()) {
            taken.add(
                    new double[] {
                        data.getX() + span[0] * perDay, data.getX() + span[1] * perDay + 1, span[0]
                    });
        }
        writeDates(g2, panel, taken, middle, data);
    }

    // A date stands to the right of its mark where there is room, else to the left, else nowhere.
    private static void writeDates(
            Graphics2D g2, Panel panel, List<double[]> taken, double middle, Rectangle2D data) {
        double free = data.getX();
        for (int i = 0; i < taken.size(); i++) {
            double from = taken.get(i)[0];
            double to = taken.get(i)[1];
            long day = (long) Math.floor(taken.get(i)[2] + 1e-6);
            String date = Dates.dayMonth(panel.start().plusDays(day));
            double length = width(g2, date, Look.SMALL);
            double next = i + 1 < taken.size() ? taken.get(i + 1)[0] : data.getMaxX();
            boolean right = next - to >= length + 3.5;
            boolean left = from - free >= length + 3.5;
            if (right || left) {
                double x = right ? to + 1.5 : from - 1.5 - length;
                g2.setPaint(Look.GROUND);
                g2.fill(new Rectangle2D.Double(x - 1, middle - 4, length + 2, 8));
                text(g2, date, Look.SMALL, x, middle + 2.5);
            }
            free = right ? to + 1.5 + length : to;
        }
    }

    private static void drawEnds(Graphics2D g2, Panel panel, XYPlot plot, Rectangle2D data) {
        List<Panel.End> ends = new ArrayList<>(panel.ends());
        ends.sort(Comparator.comparingDouble(end -> -end.value()));
        FontMetrics metrics = g2.getFontMetrics(Look.TEXT);
        double step = metrics.getAscent() + 1.5;
        double[] wanted = new double[ends.size()];
        for (int i = 0; i < wanted.length; i++) {
            wanted[i] =
                    plot.getRangeAxis()
                            .valueToJava2D(ends.get(i).value(), data, plot.getRangeAxisEdge());
        }
        double[] y = apart(wanted, step, data.getY() + step / 2, data.getMaxY() - step / 2);
        double x = data.getMaxX() + 9;
        for (int i = 0; i < y.length; i++) {
            Panel.End end = ends.get(i);
            g2.setStroke(Look.HAIR);
            g2.setPaint(Look.LEADER);
            g2.draw(new Line2D.Double(data.getMaxX() + 1, wanted[i], x - 1, y[i]));
            if (end.line() == null) {
                g2.setPaint(Look.BAND);
                Rectangle2D sample = new Rectangle2D.Double(x, y[i] - 3, STUB - 2, 6);
                g2.fill(sample);
                g2.setPaint(Look.LEADER);
                g2.draw(sample);
            } else {
                g2.setPaint(end.line().colour());
                g2.setStroke(end.line().stroke());
                g2.draw(new Line2D.Double(x, y[i], x + STUB, y[i]));
            }
            if (end.marker() != null) {
                Shape marker =
                        AffineTransform.getTranslateInstance(x + STUB / 2, y[i])
                                .createTransformedShape(end.marker());
                g2.setPaint(end.hollow() ? Look.GROUND : end.line().colour());
                g2.fill(marker);
                g2.setPaint(end.line().colour());
                g2.setStroke(Look.OUTLINE);
                g2.draw(marker);
            }
            double textX = x + STUB + 3;
            String name = fit(g2, end.name(), Look.TEXT, WIDTH - 4 - textX);
            text(g2, name, Look.TEXT, textX, y[i] + metrics.getAscent() * 0.38);
        }
    }

    /** Places as near to the wanted ones as may be, a step apart, between two ends. */
    static double[] apart(double[] wanted, double step, double first, double last) {
        double[] y = wanted.clone();
        for (int i = 0; i < y.length; i++) {
            y[i] = Math.max(y[i], i == 0 ? first : y[i - 1] + step);
        }
        for (int i = y.length - 1; i >= 0; i--) {
            y[i] = Math.min(y[i], i == y.length - 1 ? last : y[i + 1] - step);
        }
        return y;
    }

    static void text(Graphics2D g2, String text, Font font, double x, double y) {
        g2.setPaint(Look.INK);
        write(g2, text, font, x, y);
    }

    static void write(Graphics2D g2, String text, Font font, double x, double y) {
        g2.setFont(font);
        g2.drawString(text, (float) x, (float) y);
    }

    static double width(Graphics2D g2, String text, Font font) {
        return g2.getFontMetrics(font).getStringBounds(text, g2).getWidth();
    }

    static String fit(Graphics2D g2, String text, Font font, double room) {
        if (width(g2, text, font) <= room) {
            return text;
        }
        int end = text.length();
        while (end > 1 && width(g2, text.substring(0, end) + "...", font) > room) {
            end = text.offsetByCodePoints(end, -1);
        }
        return text.substring(0, end).stripTrailing() + "...";
    }
}
