package tideless.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/**
 * Where the plot of a comparison lies on its page, and the names of its axes.
 *
 * @param right room at its right, for what explains it
 */
record CompareFrame(double right) {
    private static final double LEFT = 76;
    private static final double TOP = 48;
    private static final double BOTTOM = 44;

    /** Draws a plot into it, and tells where its data lie. */
    Rectangle2D draw(Graphics2D g2, XYPlot plot) {
        AxisSpace left = new AxisSpace();
        left.setLeft(LEFT);
        AxisSpace below = new AxisSpace();
        below.setBottom(BOTTOM);
        plot.setFixedRangeAxisSpace(left, false);
        plot.setFixedDomainAxisSpace(below, false);
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        plot.draw(
                g2,
                new Rectangle2D.Double(0, TOP, Picture.WIDTH - right, Picture.HEIGHT - TOP),
                null,
                null,
                null);
        return new Rectangle2D.Double(
                LEFT, TOP, Picture.WIDTH - LEFT - right, Picture.HEIGHT - TOP - BOTTOM);
    }

    /** The names of both axes. */
    static void name(Graphics2D g2, Rectangle2D data, String across, String up) {
        Picture.text(
                g2,
                across,
                Look.TEXT,
                data.getCenterX() - Picture.width(g2, across, Look.TEXT) / 2,
                Picture.HEIGHT - 12);
        Picture.upright(g2, up, data.getCenterY());
    }
}
