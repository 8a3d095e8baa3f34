package tideless.report;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.util.FastMath;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.DefaultXYDataset;
import tideless.words.Dates;

/** The pictures of {@code docs/validation.md}, in the hand of a run's own. */
public final class ValidationPictures {
    private ValidationPictures() {}

    /**
     * Something foretold beside what is published of it.
     *
     * @param what in words
     * @param found with its unit, in words
     * @param ratio of what was found to the middle of the band
     * @param low end of the band, over its middle
     * @param high likewise
     * @param hit whether it lies within
     */
    public record Beside(
            String what, String found, double ratio, double low, double high, boolean hit) {}

    /**
     * What was measured of one compartment, and foretold.
     *
     * @param name of it
     * @param days measured, day by day
     * @param weeks measured, by week
     * @param foretold by week
     */
    public record Compartment(String name, double[] days, double[] weeks, double[] foretold) {
        public Compartment {
            days = days.clone();
            weeks = weeks.clone();
            foretold = foretold.clone();
        }

        @Override
        public double[] days() {
            return days.clone();
        }

        @Override
        public double[] weeks() {
            return weeks.clone();
        }

        @Override
        public double[] foretold() {
            return foretold.clone();
        }
    }

    /**
     * One panel of responses.
     *
     * @param label along, with its unit
     * @param x along
     * @param y of each curve
     * @param step between the numbers along
     * @param most end of the axis up
     */
    public record Response(String label, double[] x, List<double[]> y, double step, double most) {
        public Response {
            x = x.clone();
            y = List.copyOf(y);
        }

        @Override
        public double[] x() {
            return x.clone();
        }
    }

    /** Rows that fit a page. */
    public static final int ROWS = 34;

    /** Draws rows beside their bands. */
    public static void bands(Path folder, String file, String title, List<Beside> rows)
            throws IOException {
        if (rows.size() > ROWS) {
            throw new IllegalArgumentException(rows.size() + " rows do not fit " + file);
        }
        write(folder, file, new BandsPage(title, rows));
    }

    /** Draws compartments one above the other, on one scale. */
    public static void compartments(
            Path folder, String file, LocalDate start, int days, List<Compartment> all)
            throws IOException {
        List<Panel> panels = new ArrayList<>();
        for (Compartment one : all) {
            double[] day = new double[one.days().length];
            for (int i = 0; i < day.length; i++) {
                day[i] = i + 0.5;
            }
            double[] week = new double[one.weeks().length];
            for (int i = 0; i < week.length; i++) {
                week[i] = 7 * i + 3.5;
            }
            panels.add(
                    new Panel(start, days)
                            .reach(0)
                            .curve(
                                    "foretold, weeks",
                                    new Curves.Curve(week, one.foretold()),
                                    Look.LEVEL,
                                    null)
                            .curve(
                                    "measured, weeks",
                                    new Curves.Curve(week, one.weeks()),
                                    Look.TRAYS.get(1),
                                    null)
                            .points(one.name() + ", days", new Curves.Curve(day, one.days())));
        }
        Panel.alike(panels);
        write(
                folder,
                file,
                new Picture(
                        "Cherry tomato in four compartments: foretold and measured",
                        "points: measured day by day",
                        "drunk (L/m2/day)",
                        Dates.span(start, start.plusDays(days - 1L)),
                        panels,
                        ""));
    }

    /** Draws responses side by side, the same curves in each. */
    public static void responses(
            Path folder,
            String file,
            String title,
            String valueLabel,
            List<String> names,
            List<Response> responses)
            throws IOException {
        write(folder, file, new ResponsesPage(title, valueLabel, names, responses));
    }

    private static void write(Path folder, String file, Page page) throws IOException {
        Files.write(folder.resolve(file + ".png"), Images.png(page));
        Files.write(folder.resolve(file + ".svg"), Images.svg(page));
    }

    /** A row each: what, how much, where in the band. */
    private record BandsPage(String title, List<Beside> rows) implements Page {
        private static final double TOP = 50;
        private static final double STEP = 9.8;
        private static final double FOUND = 385;
        private static final double FIRST = 395;
        private static final double DOUBLING = 46;

        private static double x(double ratio) {
            double doublings = FastMath.log(2, ratio);
            return FIRST + DOUBLING * (2 + Math.max(-2, Math.min(2, doublings)));
        }

        @Override
        public void draw(Graphics2D g2) {
            Picture.begin(
                    g2, title, "predicted over the middle of the published band, which is shaded");
            double foot = TOP + STEP * rows.size() + 2;
            for (int power = -2; power <= 2; power++) {
                double x = x(FastMath.pow(2, power));
                g2.setPaint(power == 0 ? Look.LEADER : Look.GRID);
                g2.setStroke(Look.HAIR);
                g2.draw(new Line2D.Double(x, TOP - 5, x, foot));
                String label = List.of("1/4", "1/2", "1", "2", "4").get(power + 2);
                double wide = Picture.width(g2, label, Look.TEXT);
                Picture.text(g2, label, Look.TEXT, x - wide / 2, foot + 10);
            }
            for (int i = 0; i < rows.size(); i++) {
                drawRow(g2, rows.get(i), TOP + STEP * (i + 0.5));
            }
            double key = Picture.HEIGHT - 10;
            dot(g2, Picture.EDGE + 4, key - 2.5, true);
            Picture.text(g2, "within its band", Look.TEXT, Picture.EDGE + 11, key);
            dot(g2, Picture.EDGE + 94, key - 2.5, false);
            Picture.text(g2, "outside", Look.TEXT, Picture.EDGE + 101, key);
        }

        private static void drawRow(Graphics2D g2, Beside row, double y) {
            double wide = Picture.width(g2, row.found(), Look.SMALL);
            double room = FOUND - wide - 6 - Picture.EDGE;
            double share = Math.min(1, room / Picture.width(g2, row.what(), Look.SMALL));
            Font font = Look.SMALL.deriveFont((float) (share * Look.SMALL.getSize2D()));
            Picture.text(g2, row.what(), font, Picture.EDGE, y + 2.5);
            Picture.text(g2, row.found(), Look.SMALL, FOUND - wide, y + 2.5);
            g2.setPaint(Look.BAND);
            double from = x(row.low());
            g2.fill(new Rectangle2D.Double(from, y - 3, x(row.high()) - from, 6));
            dot(g2, x(row.ratio()), y, row.hit());
        }

        private static void dot(Graphics2D g2, double x, double y, boolean hit) {
            Ellipse2D dot = new Ellipse2D.Double(x - 2.4, y - 2.4, 4.8, 4.8);
            g2.setPaint(hit ? Look.DEEP : Look.GROUND);
            g2.fill(dot);
            g2.setPaint(hit ? Look.DEEP : Look.RUST);
            g2.setStroke(Look.OUTLINE);
            g2.draw(dot);
        }
    }

    /** Six small plots of the same curves, with one key. */
    private record ResponsesPage(
            String title, String valueLabel, List<String> names, List<Response> responses)
            implements Page {
        private static final int ACROSS = 3;
        private static final double LEFT = 44;
        private static final double TOP = 46;
        private static final double WIDE = 150;
        private static final double HIGH = 132;
        private static final double STEP_X = 182;
        private static final double STEP_Y = 172;

        @Override
        public void draw(Graphics2D g2) {
            Picture.begin(g2, title, "one thing varied at a time; the rest as said below it");
            for (int i = 0; i < responses.size(); i++) {
                double x = LEFT + STEP_X * (i % ACROSS);
                double y = TOP + STEP_Y * Math.floorDiv(i, ACROSS);
                drawOne(g2, responses.get(i), new Rectangle2D.Double(x, y, WIDE, HIGH));
            }
            Picture.upright(g2, valueLabel, TOP + (STEP_Y + HIGH) / 2);
            double x = LEFT;
            double y = Picture.HEIGHT - 13;
            for (int c = 0; c < names.size(); c++) {
                Look.Line line = Look.TRAYS.get(c);
                g2.setPaint(line.colour());
                g2.setStroke(line.stroke());
                g2.draw(new Line2D.Double(x, y, x + 24, y));
                Picture.text(g2, names.get(c), Look.TEXT, x + 28, y + 3);
                x += 44 + Picture.width(g2, names.get(c), Look.TEXT);
            }
        }

        private static void drawOne(Graphics2D g2, Response response, Rectangle2D data) {
            DefaultXYDataset set = new DefaultXYDataset();
            XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
            renderer.setDrawSeriesLineAsPath(true); // or the dashes would begin anew at each point
            for (int c = 0; c < response.y().size(); c++) {
                set.addSeries(c, new double[][] {response.x(), response.y().get(c)});
                renderer.setSeriesPaint(c, Look.TRAYS.get(c).colour());
                renderer.setSeriesStroke(c, Look.TRAYS.get(c).stroke());
            }
            double[] x = response.x();
            NumberAxis across = axis(x[x.length - 1], response.step());
            NumberAxis up = axis(response.most(), response.most() > 12 ? 5 : 3);
            XYPlot plot = new XYPlot(set, across, up, renderer);
            plot.setBackgroundPaint(null);
            plot.setOutlineVisible(false);
            plot.setInsets(RectangleInsets.ZERO_INSETS);
            plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
            plot.setDomainGridlinePaint(Look.GRID);
            plot.setDomainGridlineStroke(Look.HAIR);
            plot.setRangeGridlinePaint(Look.GRID);
            plot.setRangeGridlineStroke(Look.HAIR);
            AxisSpace left = new AxisSpace();
            left.setLeft(20);
            AxisSpace below = new AxisSpace();
            below.setBottom(14);
            plot.setFixedRangeAxisSpace(left, false);
            plot.setFixedDomainAxisSpace(below, false);
            plot.draw(
                    g2,
                    new Rectangle2D.Double(
                            data.getX() - 20,
                            data.getY(),
                            data.getWidth() + 20,
                            data.getHeight() + 14),
                    null,
                    null,
                    null);
            double wide = Picture.width(g2, response.label(), Look.TEXT);
            Picture.text(
                    g2,
                    response.label(),
                    Look.TEXT,
                    data.getCenterX() - wide / 2,
                    data.getMaxY() + 23);
        }

        private static NumberAxis axis(double most, double step) {
            NumberAxis axis = new NumberAxis();
            axis.setRange(0, most);
            axis.setTickUnit(new NumberTickUnit(step), false, true);
            axis.setNumberFormatOverride(
                    new java.text.DecimalFormat(
                            "0.###", java.text.DecimalFormatSymbols.getInstance(Locale.ROOT)));
            axis.setTickLabelFont(Look.TEXT);
            axis.setTickLabelPaint(Look.INK);
            axis.setAxisLinePaint(Look.LEADER);
            axis.setTickMarkPaint(Look.LEADER);
            return axis;
        }
    }
}
