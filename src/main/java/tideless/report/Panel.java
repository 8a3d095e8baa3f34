package tideless.report;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYDifferenceRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import tideless.drawing.DaysOff;

/**
 * One pair of axes of a picture, with rows of due dates above and names at the line ends. Gathers
 * its parts, then becomes a plot.
 */
final class Panel {
    /**
     * The name of a line, written beside its end.
     *
     * @param name what it is
     * @param line how it is drawn; null for an area
     * @param marker on the line; null for none
     * @param hollow whether the marker is
     * @param value at its end
     */
    record End(String name, Look.Line line, Shape marker, boolean hollow, double value) {}

    private record Area(Curves between, Color fill) {}

    private final LocalDate start;
    private final int days;
    private final List<Row> rows = new ArrayList<>();
    private final List<End> ends = new ArrayList<>();
    private final List<Curves.Curve> curves = new ArrayList<>();
    private final List<Look.Line> lines = new ArrayList<>();
    private final List<Shape> markers = new ArrayList<>();
    private final List<Area> areas = new ArrayList<>();
    private final List<Curves.Curve> dots = new ArrayList<>();
    private final List<ValueMarker> levels = new ArrayList<>();
    private final List<IntervalMarker> bands = new ArrayList<>();
    private final List<ValueMarker> changes = new ArrayList<>();
    private final List<double[]> empty = new ArrayList<>();
    private DaysOff off = new DaysOff(List.of(), List.of());
    private String fadedWord = "empty";
    private double most = Double.POSITIVE_INFINITY;
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    Panel(LocalDate start, int days) {
        this.start = start;
        this.days = days;
    }

    List<Row> rows() {
        return rows;
    }

    List<End> ends() {
        return ends;
    }

    LocalDate start() {
        return start;
    }

    int days() {
        return days;
    }

    DaysOff off() {
        return off;
    }

    /** Shades weekends and absences. */
    Panel shade(DaysOff daysOff) {
        off = daysOff;
        return this;
    }

    /** Marks of things done; nothing when there are none. */
    Panel due(String name, List<Row.Mark> marks) {
        if (!marks.isEmpty()) {
            rows.add(new Row(name, marks, List.of(), null, false));
        }
        return this;
    }

    /** Fades days on which nothing grows, and says so where there is room. */
    Panel empty(double fromDay, double toDay) {
        if (toDay > fromDay) {
            empty.add(new double[] {fromDay, toDay});
        }
        return this;
    }

    /**
     * No value above this is worth the scale: what lies higher leaves the panel at its top. To be
     * said before the curves.
     */
    Panel within(double highest) {
        most = highest;
        return this;
    }

    /** Lowest and highest value its axis has to reach. */
    List<Double> reaches() {
        return List.of(low, high);
    }

    /** Gives panels one scale. */
    static void alike(List<Panel> panels) {
        List<Double> all = panels.stream().flatMap(panel -> panel.reaches().stream()).toList();
        for (Panel panel : panels) {
            panel.low = Math.min(panel.low, Collections.min(all));
            panel.high = Math.max(panel.high, Collections.max(all));
        }
    }

    /** Stretches of time, and a tint on them; nothing when there are none. */
    Panel spans(String name, List<double[]> spans, Color fill) {
        return spans(name, spans, fill, true);
    }

    /** Likewise, with a tint or with a bar alone. */
    Panel spans(String name, List<double[]> spans, Color fill, boolean tints) {
        if (!spans.isEmpty()) {
            rows.add(new Row(name, List.of(), spans, fill, tints));
        }
        return this;
    }

    /** A curve with its name at its end, and a marker on some of its points or null. */
    Panel curve(String name, Curves.Curve curve, Look.Line line, Shape marker) {
        int last = curve.last();
        if (last >= 0) {
            curves.add(curve);
            lines.add(line);
            markers.add(marker);
            boolean leaves = curve.max() > most;
            ends.add(
                    new End(
                            leaves ? name + ", up to " + Math.round(curve.max()) : name,
                            line,
                            marker,
                            hollow(curves.size() - 1),
                            Math.min(most, curve.value()[last])));
            reach(curve.min());
            reach(Math.min(most, curve.max()));
        }
        return this;
    }

    /** Points without a line between them, with a name at the last. */
    Panel points(String name, Curves.Curve points) {
        int last = points.last();
        if (last >= 0) {
            dots.add(points);
            ends.add(new End(name, Look.READ, marker(0), true, points.value()[last]));
            reach(points.min());
            reach(points.max());
        }
        return this;
    }

    /** Names what is shaded so in its areas, at a value. */
    Panel name(String name, double value) {
        ends.add(new End(name, null, null, false, value));
        return this;
    }

    /** Shades what lies between two curves of the same days. */
    Panel area(Curves.Curve low, Curves.Curve high, Color fill) {
        areas.add(new Area(new Curves(List.of(high, low)), fill));
        reach(low.min());
        reach(high.max());
        return this;
    }

    /** A line that does not move. */
    Panel level(String name, double value, Look.Line line) {
        ValueMarker marker = new ValueMarker(value, line.colour(), line.stroke());
        marker.setAlpha(1);
        levels.add(marker);
        ends.add(new End(name, line, null, false, value));
        reach(value);
        return this;
    }

    /** A line down the panel at an instant from which something else holds, with its name. */
    Panel change(String name, double atDays) {
        ValueMarker marker = new ValueMarker(atDays, Look.QUIET, Look.CHANGE);
        marker.setAlpha(1);
        marker.setLabel(name);
        marker.setLabelFont(Look.TEXT);
        marker.setLabelPaint(Look.INK);
        marker.setLabelBackgroundColor(Look.GROUND);
        marker.setLabelAnchor(RectangleAnchor.TOP_RIGHT);
        marker.setLabelTextAnchor(TextAnchor.TOP_LEFT);
        marker.setLabelOffset(new RectangleInsets(2, 3, 2, 3));
        changes.add(marker);
        return this;
    }

    /** A shaded band of finite values. */
    Panel band(String name, double from, double to, Color fill) {
        IntervalMarker band = new IntervalMarker(from, to, fill);
        band.setAlpha(1);
        bands.add(band);
        if (!name.isEmpty()) {
            ends.add(new End(name, null, null, false, (from + to) / 2));
        }
        reach(from);
        reach(to);
        return this;
    }

    /** Takes a value into the range of the axis. */
    Panel reach(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("an axis cannot reach " + value);
        }
        low = Math.min(low, value);
        high = Math.max(high, value);
        return this;
    }

    /**
     * The plot.
     *
     * @param dates whether to write dates below it
     * @param height of its axes, pt
     */
    XYPlot plot(boolean dates, double height) {
        XYPlot plot = new XYPlot();
        plot.setDomainAxis(new DayAxis(start, days, dates));
        plot.setRangeAxis(valueAxis(height));
        plot.setInsets(RectangleInsets.ZERO_INSETS);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setBackgroundPaint(null);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinePaint(Look.GRID);
        plot.setDomainGridlineStroke(Look.HAIR);
        plot.setRangeGridlinePaint(Look.GRID);
        plot.setRangeGridlineStroke(Look.HAIR);
        for (Row row : rows) {
            if (row.tints()) {
                row.spans().forEach(span -> shade(plot, span, row.fill(), Layer.BACKGROUND));
            }
        }
        off.weekends().forEach(span -> shade(plot, span, Look.REST, Layer.BACKGROUND));
        off.absences().forEach(span -> shade(plot, span, Look.AWAY, Layer.BACKGROUND));
        empty.forEach(span -> fade(plot, span));
        bands.forEach(band -> plot.addRangeMarker(band, Layer.BACKGROUND));
        for (Row row : rows) {
            for (Row.Mark at : row.crowded() ? List.<Row.Mark>of() : row.marks()) {
                ValueMarker marker = new ValueMarker(at.day(), Look.MARK, Look.DUE);
                marker.setAlpha(1);
                plot.addDomainMarker(marker, Layer.BACKGROUND);
            }
        }
        levels.forEach(level -> plot.addRangeMarker(level, Layer.BACKGROUND));
        changes.forEach(change -> plot.addDomainMarker(change, Layer.FOREGROUND));
        // A fifth of a point on the page: nobody sees it, and a tenth of the work is left.
        double tolerance = 0.2 / height * plot.getRangeAxis().getRange().getLength();
        List<Curves.Curve> drawn = new ArrayList<>();
        for (int i = 0; i < curves.size(); i++) {
            // The markers of a curve count its points.
            drawn.add(markers.get(i) == null ? curves.get(i).thinned(tolerance) : curves.get(i));
        }
        plot.setDataset(new Curves(drawn));
        plot.setRenderer(renderer());
        for (int i = 0; i < areas.size(); i++) {
            plot.setDataset(i + 1, areas.get(i).between());
            plot.setRenderer(i + 1, shading(areas.get(i).fill()));
        }
        if (!dots.isEmpty()) {
            plot.setDataset(areas.size() + 1, new Curves(dots));
            plot.setRenderer(areas.size() + 1, dotted());
        }
        return plot;
    }

    private static IntervalMarker shade(XYPlot plot, double[] span, Color fill, Layer layer) {
        IntervalMarker marker = new IntervalMarker(span[0], span[1], fill);
        marker.setAlpha(1);
        plot.addDomainMarker(marker, layer);
        return marker;
    }

    /** What stands over days that are faded. */
    Panel fadedAs(String word) {
        fadedWord = word;
        return this;
    }

    private void fade(XYPlot plot, double[] span) {
        IntervalMarker marker = shade(plot, span, Look.FADED, Layer.FOREGROUND);
        if (span[1] - span[0] > days / 12.0) {
            marker.setLabel(fadedWord);
            marker.setLabelFont(Look.SMALL);
            marker.setLabelPaint(Look.QUIET);
            marker.setLabelBackgroundColor(Look.GROUND);
            marker.setLabelAnchor(RectangleAnchor.TOP);
            marker.setLabelTextAnchor(TextAnchor.TOP_CENTER);
            marker.setLabelOffset(new RectangleInsets(3, 0, 0, 0));
        }
    }

    private NumberAxis valueAxis(double height) {
        NumberAxis axis = new NumberAxis();
        if (!(high > low)) {
            high = Double.isFinite(high) ? high + 1 : 1;
            low = Double.isFinite(low) ? low : 0;
        }
        double spare = 0.06 * (high - low);
        axis.setRange(low == 0 ? 0 : low - spare, high + spare);
        axis.setTickUnit(
                new NumberTickUnit(
                        step(
                                axis.getRange().getLength(),
                                Math.min(height / 14, Math.max(5, height / 28)))),
                false,
                true);
        // The library's own formats follow the language of the machine.
        axis.setNumberFormatOverride(
                new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT)));
        axis.setTickLabelFont(Look.TEXT);
        axis.setTickLabelPaint(Look.INK);
        axis.setTickMarkPaint(Look.QUIET);
        axis.setTickMarkStroke(Look.HAIR);
        axis.setAxisLinePaint(Look.QUIET);
        axis.setAxisLineStroke(Look.HAIR);
        return axis;
    }

    /** A round step that cuts a length into no more than so many parts. */
    private static double step(double length, double parts) {
        double least = length / parts;
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        double share = least / power;
        return power * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
    }

    private XYLineAndShapeRenderer renderer() {
        int every = Math.max(1, days / 10);
        XYLineAndShapeRenderer renderer =
                new XYLineAndShapeRenderer(true, false) {
                    private static final long serialVersionUID = 1L;

                    @Override
                    public boolean getItemShapeVisible(int series, int item) {
                        // Each curve's at other days, so that none hides another's.
                        return markers.get(series) != null
                                && (item + series * every / markers.size()) % every == 0;
                    }
                };
        renderer.setDrawSeriesLineAsPath(true);
        renderer.setAutoPopulateSeriesPaint(false);
        renderer.setAutoPopulateSeriesStroke(false);
        renderer.setAutoPopulateSeriesShape(false);
        renderer.setUseFillPaint(true);
        for (int i = 0; i < curves.size(); i++) {
            renderer.setSeriesPaint(i, lines.get(i).colour());
            renderer.setSeriesStroke(i, lines.get(i).stroke());
            if (markers.get(i) != null) {
                renderer.setSeriesShape(i, markers.get(i));
                renderer.setSeriesFillPaint(i, hollow(i) ? Look.GROUND : lines.get(i).colour());
                renderer.setSeriesOutlineStroke(i, Look.OUTLINE);
            }
        }
        renderer.setDrawOutlines(true);
        renderer.setUseOutlinePaint(false);
        return renderer;
    }

    private XYLineAndShapeRenderer dotted() {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setUseFillPaint(true);
        renderer.setDrawOutlines(true);
        for (int i = 0; i < dots.size(); i++) {
            renderer.setSeriesPaint(i, Look.READ.colour());
            renderer.setSeriesShape(i, marker(0));
            renderer.setSeriesFillPaint(i, Look.GROUND);
            renderer.setSeriesOutlineStroke(i, Look.OUTLINE);
        }
        return renderer;
    }

    private static XYDifferenceRenderer shading(Color fill) {
        XYDifferenceRenderer renderer = new XYDifferenceRenderer(fill, fill, false);
        for (int edge = 0; edge < 2; edge++) {
            renderer.setSeriesPaint(edge, fill);
            renderer.setSeriesStroke(edge, Look.HAIR);
        }
        return renderer;
    }

    private static boolean hollow(int series) {
        return series % 2 == 1;
    }

    /** A small shape round the origin, another for each number up to six. */
    static Shape marker(int number) {
        double r = 2.4;
        return switch (Math.floorMod(number, 6)) {
            case 0 -> new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
            case 1 -> new Rectangle2D.Double(-r, -r, 2 * r, 2 * r);
            case 2 -> polygon(0, -1.2 * r, 1.2 * r, r, -1.2 * r, r);
            case 3 -> polygon(0, -1.3 * r, 1.3 * r, 0, 0, 1.3 * r, -1.3 * r, 0);
            case 4 -> polygon(0, 1.2 * r, 1.2 * r, -r, -1.2 * r, -r);
            default -> polygon(-r, -r, r, r, r, -r, -r, r);
        };
    }

    static Path2D polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }
}
