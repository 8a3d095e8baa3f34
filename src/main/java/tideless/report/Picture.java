package tideless.report;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import tideless.drawing.DaysOff;

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

    /** As wide as the longest name of a harm, and the name of the axis. */
    private static final double LEFT = 105;

    private static final double RIGHT = 112;
    static final double EDGE = 14;
    private static final double NAMES = 26;
    private static final double TOP = 44;
    private static final double BOTTOM = 38;
    private static final double ROWS_GAP = 5;
    private static final double GAP = 10;
    private static final double STUB = 17;
    private static final String EIGHT_OF_TEN = "eight of ten rigs";

    Picture {
        panels = List.copyOf(panels);
    }

    @Override
    public void draw(Graphics2D g2) {
        begin(g2, title, subtitle);
        double rows = panels.stream().mapToDouble(panel -> above(g2, panel)).sum();
        double room = HEIGHT - TOP - BOTTOM - rows - (panels.size() - 1) * GAP;
        double each = room / panels.size();
        double y = TOP;
        for (int i = 0; i < panels.size(); i++) {
            Panel panel = panels.get(i);
            double top = y + above(g2, panel);
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
        drawKey(g2);
    }

    /** What the shades of the days mean, in the corner. */
    private void drawKey(Graphics2D g2) {
        DaysOff off = panels.get(0).off();
        Map<String, Color> shades = new LinkedHashMap<>();
        if (!off.absences().isEmpty()) {
            shades.put("nobody comes", Look.AWAY);
        }
        if (!off.weekends().isEmpty()) {
            shades.put("weekend", Look.REST);
        }
        boolean likely =
                panels.stream()
                        .flatMap(panel -> panel.rows().stream())
                        .flatMap(row -> row.marks().stream())
                        .anyMatch(mark -> mark.to() > mark.from());
        if (likely) {
            shades.put(EIGHT_OF_TEN, Look.LIKELY);
        }
        double right = WIDTH - EDGE;
        for (Map.Entry<String, Color> shade : shades.entrySet()) {
            right -= width(g2, shade.getKey(), Look.SMALL);
            text(g2, shade.getKey(), Look.SMALL, right, HEIGHT - 10);
            right -= STUB + 1;
            if (shade.getKey().equals(EIGHT_OF_TEN)) {
                Row.drawLikely(g2, right, right + STUB - 2, HEIGHT - 13);
            } else {
                sample(g2, shade.getValue(), right, HEIGHT - 13);
            }
            right -= 8;
        }
    }

    private static void sample(Graphics2D g2, Color fill, double x, double middle) {
        Rectangle2D sample = new Rectangle2D.Double(x, middle - 3, STUB - 2, 6);
        g2.setPaint(fill);
        g2.fill(sample);
        g2.setPaint(Look.LEADER);
        g2.setStroke(Look.HAIR);
        g2.draw(sample);
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
    private static double above(Graphics2D g2, Panel panel) {
        double high = 0;
        for (Row row : panel.rows()) {
            high += row.height(g2, panel.start(), LEFT, WIDTH - LEFT - RIGHT, panel.days());
        }
        return high > 0 ? high + ROWS_GAP : 0;
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
        double y = rowsTop;
        for (Row row : panel.rows()) {
            LocalDate start = panel.start();
            double names = LEFT - NAMES - 6;
            row.draw(g2, start, y, LEFT, data.getWidth(), panel.days(), names);
            y += row.height(g2, start, LEFT, data.getWidth(), panel.days());
        }
        drawEnds(g2, panel, plot, data);
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
                sample(g2, Look.BAND, x, y[i]);
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
