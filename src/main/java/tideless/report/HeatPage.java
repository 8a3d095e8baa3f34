package tideless.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.Serializable;
import java.util.Arrays;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.PaintScale;
import org.jfree.chart.renderer.xy.XYBlockRenderer;
import org.jfree.data.xy.DefaultXYZDataset;
import tideless.study.Compared;
import tideless.study.Design;
import tideless.words.DesignWords;

/**
 * A map of one figure over two keys: the darker the more; the region without harm outlined, the
 * design as it stands ringed, what cannot be built crossed out.
 *
 * @param title what it shows
 * @param subtitle of which scenario
 * @param valueLabel of the shades, with the unit
 * @param values of the cells, NaN for none
 * @param shown units of the axes
 */
record HeatPage(
        String title,
        String subtitle,
        String valueLabel,
        Compared compared,
        double[] values,
        ShownIn shown)
        implements Page {
    private static final CompareFrame FRAME = new CompareFrame(132);
    private static final int LABELS = 11;
    private static final int SHADES = 64;
    private static final Color LIGHT = new Color(0xf2f6fa);
    private static final Color DARK = new Color(0x0a3560);
    private static final BasicStroke THICK =
            new BasicStroke(2.2f, BasicStroke.CAP_SQUARE, BasicStroke.JOIN_MITER);
    private static final BasicStroke HALO =
            new BasicStroke(4f, BasicStroke.CAP_SQUARE, BasicStroke.JOIN_MITER);

    /** Shades between two values. */
    private record Shades(double least, double most) implements PaintScale, Serializable {
        private static final long serialVersionUID = 1L;

        @Override
        public double getLowerBound() {
            return least;
        }

        @Override
        public double getUpperBound() {
            return most;
        }

        @Override
        public Color getPaint(double value) {
            double share = most > least ? (value - least) / (most - least) : 0;
            share = Math.max(0, Math.min(1, share));
            return new Color(
                    mixed(LIGHT.getRed(), DARK.getRed(), share),
                    mixed(LIGHT.getGreen(), DARK.getGreen(), share),
                    mixed(LIGHT.getBlue(), DARK.getBlue(), share));
        }

        private static int mixed(int light, int dark, double share) {
            return (int) Math.floor(light + share * (dark - light) + 0.5);
        }
    }

    @Override
    public void draw(Graphics2D g2) {
        Picture.begin(g2, title, subtitle);
        double least = Arrays.stream(values).filter(Double::isFinite).min().orElse(0);
        double most = Arrays.stream(values).filter(Double::isFinite).max().orElse(1);
        Shades shades = new Shades(least, most);
        XYPlot plot = plot(shades);
        Rectangle2D data = FRAME.draw(g2, plot);
        drawUnbuildable(g2, plot, data);
        drawOutline(g2, plot, data);
        drawPresent(g2, plot, data);
        drawKey(g2, shades, data);
        CompareFrame.name(
                g2,
                data,
                ComparePictures.label(compared.axes().get(0), shown),
                ComparePictures.label(compared.axes().get(1), shown));
    }

    private int columns() {
        return compared.axes().get(0).size();
    }

    private int row(int cell) {
        return cell / columns();
    }

    private XYPlot plot(Shades shades) {
        int n = values.length;
        double[][] cells = new double[3][n];
        int kept = 0;
        for (int i = 0; i < n; i++) {
            if (Double.isFinite(values[i])) {
                cells[0][kept] = i % columns();
                cells[1][kept] = row(i);
                cells[2][kept++] = values[i];
            }
        }
        DefaultXYZDataset set = new DefaultXYZDataset();
        set.addSeries(
                0,
                new double[][] {
                    Arrays.copyOf(cells[0], kept),
                    Arrays.copyOf(cells[1], kept),
                    Arrays.copyOf(cells[2], kept)
                });
        XYBlockRenderer blocks = new XYBlockRenderer();
        blocks.setPaintScale(shades);
        blocks.setBlockWidth(1);
        blocks.setBlockHeight(1);
        XYPlot plot = new XYPlot(set, axis(0), axis(1), blocks);
        plot.setBackgroundPaint(Look.GROUND);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.setOutlinePaint(Look.INK);
        return plot;
    }

    private ValueAxis axis(int which) {
        tideless.study.Axis of = compared.axes().get(which);
        SymbolAxis axis = new SymbolAxis(null, ComparePictures.labels(of, LABELS, shown));
        axis.setRange(-0.5, of.size() - 0.5);
        axis.setGridBandsVisible(false);
        axis.setTickLabelFont(Look.TEXT);
        axis.setTickLabelPaint(Look.INK);
        axis.setAxisLineVisible(false);
        return axis;
    }

    private static Rectangle2D cell(XYPlot plot, Rectangle2D data, int x, int y) {
        ValueAxis across = plot.getDomainAxis();
        ValueAxis up = plot.getRangeAxis();
        double left = across.valueToJava2D(x - 0.5, data, plot.getDomainAxisEdge());
        double right = across.valueToJava2D(x + 0.5, data, plot.getDomainAxisEdge());
        double top = up.valueToJava2D(y + 0.5, data, plot.getRangeAxisEdge());
        double bottom = up.valueToJava2D(y - 0.5, data, plot.getRangeAxisEdge());
        return new Rectangle2D.Double(left, top, right - left, bottom - top);
    }

    private void drawUnbuildable(Graphics2D g2, XYPlot plot, Rectangle2D data) {
        for (int i = 0; i < values.length; i++) {
            if (!compared.cells().get(i).isUnbuildable()) {
                continue;
            }
            cross(g2, cell(plot, data, i % columns(), i / columns()));
        }
    }

    private static void cross(Graphics2D g2, Rectangle2D cell) {
        g2.setPaint(Look.LEADER);
        g2.setStroke(Look.HAIR);
        g2.draw(new Line2D.Double(cell.getX(), cell.getY(), cell.getMaxX(), cell.getMaxY()));
        g2.draw(new Line2D.Double(cell.getX(), cell.getMaxY(), cell.getMaxX(), cell.getY()));
    }

    private boolean harmless(int x, int y) {
        return x >= 0
                && y >= 0
                && x < columns()
                && y < compared.rows()
                && compared.at(x, y).design().filter(Design::isHarmless).isPresent();
    }

    private void drawOutline(Graphics2D g2, XYPlot plot, Rectangle2D data) {
        Path2D outline = new Path2D.Double();
        for (int y = 0; y < compared.rows(); y++) {
            for (int x = 0; x < columns(); x++) {
                if (!harmless(x, y)) {
                    continue;
                }
                Rectangle2D at = cell(plot, data, x, y);
                edge(outline, !harmless(x - 1, y), at.getX(), at.getY(), at.getX(), at.getMaxY());
                edge(
                        outline,
                        !harmless(x + 1, y),
                        at.getMaxX(),
                        at.getY(),
                        at.getMaxX(),
                        at.getMaxY());
                edge(outline, !harmless(x, y + 1), at.getX(), at.getY(), at.getMaxX(), at.getY());
                edge(
                        outline,
                        !harmless(x, y - 1),
                        at.getX(),
                        at.getMaxY(),
                        at.getMaxX(),
                        at.getMaxY());
            }
        }
        stroke(g2, outline);
    }

    private static void edge(
            Path2D outline, boolean wanted, double x0, double y0, double x1, double y1) {
        if (wanted) {
            outline.moveTo(x0, y0);
            outline.lineTo(x1, y1);
        }
    }

    private static void stroke(Graphics2D g2, java.awt.Shape outline) {
        g2.setPaint(Look.GROUND);
        g2.setStroke(HALO);
        g2.draw(outline);
        g2.setPaint(Look.INK);
        g2.setStroke(THICK);
        g2.draw(outline);
    }

    private void drawPresent(Graphics2D g2, XYPlot plot, Rectangle2D data) {
        double[] at = new double[2];
        for (int a = 0; a < 2; a++) {
            at[a] = place(compared.axes().get(a));
        }
        if (Double.isNaN(at[0]) || Double.isNaN(at[1])) {
            return;
        }
        ring(
                g2,
                plot.getDomainAxis().valueToJava2D(at[0], data, plot.getDomainAxisEdge()),
                plot.getRangeAxis().valueToJava2D(at[1], data, plot.getRangeAxisEdge()));
    }

    private static void ring(Graphics2D g2, double x, double y) {
        g2.setPaint(Look.GROUND);
        g2.fill(new Ellipse2D.Double(x - 5, y - 5, 10, 10));
        g2.setPaint(Look.INK);
        g2.setStroke(Look.OUTLINE);
        g2.draw(new Ellipse2D.Double(x - 5, y - 5, 10, 10));
        g2.fill(new Ellipse2D.Double(x - 2, y - 2, 4, 4));
    }

    /** Where the design as it stands lies among an axis's values, between two where it must. */
    private static double place(tideless.study.Axis axis) {
        if (axis.present().size() != 1) {
            return Double.NaN;
        }
        double present = axis.present().get(0);
        for (int i = 0; i < axis.size(); i++) {
            if (axis.isPresent(i)) {
                return i;
            }
            if (i > 0 && axis.numbers().get(i - 1) < present && present < axis.numbers().get(i)) {
                double from = axis.numbers().get(i - 1);
                return i - 1 + (present - from) / (axis.numbers().get(i) - from);
            }
        }
        return Double.NaN;
    }

    private void drawKey(Graphics2D g2, Shades shades, Rectangle2D data) {
        double x = data.getMaxX() + 16;
        double top = data.getY() + 26;
        double high = 150;
        double room = Picture.WIDTH - x - 6;
        int line = 0;
        for (String words : tideless.words.Wrap.lines(valueLabel, 24)) {
            Picture.text(
                    g2,
                    Picture.fit(g2, words, Look.TEXT, room),
                    Look.TEXT,
                    x,
                    data.getY() + 8 + 10 * line++);
        }
        for (int i = 0; i < SHADES; i++) {
            double share = 1 - i / (SHADES - 1.0);
            g2.setPaint(shades.getPaint(shades.least() + share * (shades.most() - shades.least())));
            g2.fill(new Rectangle2D.Double(x, top + i * high / SHADES, 14, high / SHADES + 0.3));
        }
        g2.setPaint(Look.INK);
        g2.setStroke(Look.HAIR);
        g2.draw(new Rectangle2D.Double(x, top, 14, high));
        for (int i = 0; i <= 4; i++) {
            double value = shades.least() + (1 - i / 4.0) * (shades.most() - shades.least());
            Picture.text(g2, round(value, shades), Look.TEXT, x + 18, top + i * high / 4 + 3);
        }
        double y = top + high + 24;
        stroke(g2, new Rectangle2D.Double(x + 1, y - 7, 12, 8));
        Picture.text(g2, "without harm", Look.TEXT, x + 20, y);
        y += 18;
        if (!Double.isNaN(place(compared.axes().get(0)))
                && !Double.isNaN(place(compared.axes().get(1)))) {
            ring(g2, x + 7, y - 3);
            Picture.text(g2, "as it stands", Look.TEXT, x + 20, y);
            y += 18;
        }
        if (!compared.unbuildable().isEmpty()) {
            Rectangle2D sample = new Rectangle2D.Double(x + 1, y - 8, 12, 10);
            cross(g2, sample);
            g2.draw(sample);
            Picture.text(g2, "not buildable", Look.TEXT, x + 20, y);
        }
    }

    private static String round(double value, Shades shades) {
        double span = shades.most() - shades.least();
        double step = span >= 40 ? 1 : span >= 4 ? 0.1 : 0.01;
        return DesignWords.number(Math.floor(value / step + 0.5) / (1 / step));
    }
}
