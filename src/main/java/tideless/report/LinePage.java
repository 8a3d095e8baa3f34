package tideless.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import tideless.study.Axis;
import tideless.study.Compared;
import tideless.study.Design;

/**
 * Curves over one key, or points over whole scenarios; stretches without harm shaded and named, the
 * design as it stands marked by an upright line.
 *
 * @param title what it shows
 * @param subtitle of which scenario
 * @param valueLabel the upright axis, with its unit
 * @param shown unit of the axis across
 */
record LinePage(
        String title,
        String subtitle,
        String valueLabel,
        Compared compared,
        List<Curve> curves,
        ShownIn shown)
        implements Page {
    private static final CompareFrame FRAME = new CompareFrame(108);
    private static final double STUB = 17;
    private static final Color CLEAR = new Color(0, 0, 0, 0);

    /**
     * One curve.
     *
     * @param values over the axis's values, NaN for none
     */
    record Curve(String name, double[] values) {}

    LinePage {
        curves = List.copyOf(curves);
    }

    @Override
    public void draw(Graphics2D g2) {
        Picture.begin(g2, title, subtitle);
        XYPlot plot = plot();
        Rectangle2D data = FRAME.draw(g2, plot);
        drawNames(g2, plot, data);
        CompareFrame.name(g2, data, ComparePictures.label(axis(), shown), valueLabel);
    }

    private Axis axis() {
        return compared.axes().get(0);
    }

    private double at(int place) {
        return axis().numbers().isEmpty()
                ? place
                : shown.valueOf(axis().numbers().get(place), axis().unit());
    }

    private XYPlot plot() {
        boolean numeric = !axis().numbers().isEmpty();
        DefaultXYDataset set = new DefaultXYDataset();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(numeric, true);
        for (int c = 0; c < curves.size(); c++) {
            double[][] points = new double[2][axis().size()];
            for (int i = 0; i < axis().size(); i++) {
                points[0][i] = at(i);
                points[1][i] = curves.get(c).values()[i];
            }
            set.addSeries(c, points);
            Look.Line line = line(c);
            renderer.setSeriesPaint(c, line.colour());
            renderer.setSeriesStroke(c, line.stroke());
            double size = numeric ? 3 : 5;
            renderer.setSeriesShape(c, new Ellipse2D.Double(-size / 2, -size / 2, size, size));
        }
        NumberAxis up = numbers();
        up.setAutoRangeIncludesZero(true);
        up.setTickLabelInsets(new RectangleInsets(8, 4, 8, 4)); // fewer of them
        XYPlot plot = new XYPlot(set, numeric ? across() : names(), up, renderer);
        up.setRange(0, Math.max(1e-9, 1.06 * up.getRange().getUpperBound()));
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD); // dashes over a whole line
        plot.setBackgroundPaint(Look.GROUND);
        plot.setDomainGridlinePaint(Look.GRID);
        plot.setRangeGridlinePaint(Look.GRID);
        plot.setOutlinePaint(Look.LEADER);
        markHarmless(plot);
        if (numeric && axis().present().size() == 1) {
            ValueMarker now =
                    new ValueMarker(
                            shown.valueOf(axis().present().get(0), axis().unit()),
                            Look.INK,
                            Look.DUE);
            now.setLabel("as it stands");
            now.setLabelFont(Look.SMALL);
            now.setLabelBackgroundColor(CLEAR);
            now.setLabelPaint(Look.INK);
            boolean late = 2 * now.getValue() > at(0) + at(axis().size() - 1);
            now.setLabelAnchor(late ? RectangleAnchor.TOP_LEFT : RectangleAnchor.TOP_RIGHT);
            now.setLabelTextAnchor(late ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
            plot.addDomainMarker(now, Layer.FOREGROUND);
        }
        return plot;
    }

    private static Look.Line line(int curve) {
        return Look.TRAYS.get(curve % Look.TRAYS.size());
    }

    private ValueAxis across() {
        NumberAxis across = numbers();
        boolean whole =
                axis().unit().isEmpty()
                        && axis().numbers().stream().allMatch(n -> n == Math.floor(n));
        if (whole) { // there are no half plants
            across.setStandardTickUnits(NumberAxis.createIntegerTickUnits(Locale.ROOT));
        }
        double first = at(0);
        double last = at(axis().size() - 1);
        double room = last > first ? 0.04 * (last - first) : 1;
        across.setRange(first - room, last + room);
        return across;
    }

    private ValueAxis names() {
        SymbolAxis names = new SymbolAxis(null, ComparePictures.labels(axis(), 6, shown));
        style(names);
        names.setGridBandsVisible(false);
        names.setRange(-0.5, axis().size() - 0.5);
        return names;
    }

    private static NumberAxis numbers() {
        NumberAxis axis = new NumberAxis(null);
        // The library's own formats follow the language of the machine.
        axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(Locale.ROOT));
        style(axis);
        return axis;
    }

    private static void style(ValueAxis axis) {
        axis.setTickLabelFont(Look.TEXT);
        axis.setTickLabelPaint(Look.INK);
        axis.setAxisLinePaint(Look.LEADER);
    }

    /** Shades runs of designs without harm, half way to their neighbours. */
    private void markHarmless(XYPlot plot) {
        boolean named = false;
        int n = axis().size();
        for (int i = 0; i < n; i++) {
            if (!harmless(i)) {
                continue;
            }
            int to = i;
            while (to + 1 < n && harmless(to + 1)) {
                to++;
            }
            double from = i == 0 ? at(0) : 0.5 * (at(i - 1) + at(i));
            double until = to == n - 1 ? at(n - 1) : 0.5 * (at(to) + at(to + 1));
            IntervalMarker band = new IntervalMarker(from, until, Look.BAND);
            if (!named) {
                band.setLabel("without harm");
                band.setLabelFont(Look.SMALL);
                band.setLabelBackgroundColor(CLEAR);
                band.setLabelPaint(Look.INK);
                band.setLabelAnchor(RectangleAnchor.BOTTOM_LEFT);
                band.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
                named = true;
            }
            plot.addDomainMarker(band, Layer.BACKGROUND);
            i = to;
        }
    }

    private boolean harmless(int place) {
        return compared.at(place, 0).design().filter(Design::isHarmless).isPresent();
    }

    /** Each curve's name at its end. */
    private void drawNames(Graphics2D g2, XYPlot plot, Rectangle2D data) {
        record End(int curve, double y) {}
        List<End> ends = new ArrayList<>();
        for (int c = 0; c < curves.size(); c++) {
            double[] values = curves.get(c).values();
            int last = values.length - 1;
            while (last > 0 && Double.isNaN(values[last])) {
                last--;
            }
            if (!Double.isNaN(values[last])) {
                double y =
                        plot.getRangeAxis()
                                .valueToJava2D(values[last], data, plot.getRangeAxisEdge());
                ends.add(new End(c, y));
            }
        }
        ends.sort(Comparator.comparingDouble(End::y));
        double[] wanted = ends.stream().mapToDouble(End::y).toArray();
        double[] y = Picture.apart(wanted, 11, data.getY() + 5, data.getMaxY() - 5);
        double x = data.getMaxX() + 9;
        for (int i = 0; i < y.length; i++) {
            Look.Line line = line(ends.get(i).curve());
            g2.setStroke(Look.HAIR);
            g2.setPaint(Look.LEADER);
            g2.draw(new Line2D.Double(data.getMaxX() + 1, wanted[i], x - 1, y[i]));
            g2.setPaint(line.colour());
            g2.setStroke(line.stroke());
            g2.draw(new Line2D.Double(x, y[i], x + STUB, y[i]));
            String name = curves.get(ends.get(i).curve()).name();
            double textX = x + STUB + 3;
            Picture.text(
                    g2,
                    Picture.fit(g2, name, Look.TEXT, Picture.WIDTH - 4 - textX),
                    Look.TEXT,
                    textX,
                    y[i] + 3);
        }
    }
}
