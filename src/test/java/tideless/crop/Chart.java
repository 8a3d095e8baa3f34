package tideless.crop;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Small plots for the documents: lines and dots in panels, as PNG and SVG. */
final class Chart {
    static final Color INK = new Color(0x16202b);
    static final Color GRID = new Color(0xe1e5e9);
    static final Color QUIET = new Color(0x55616d);
    static final Color[] COLOURS = {
        new Color(0x0b4a86),
        new Color(0xd9790a),
        new Color(0x5b2263),
        new Color(0x2d8f82),
        new Color(0xb5481f)
    };
    static final float[][] DASHES = {null, {7, 2.5f}, {1.4f, 2}, {8, 2, 1.5f, 2}, {3, 2}};
    static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 13);
    static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 10);

    /**
     * A line or dots.
     *
     * @param name beside the line
     * @param x along
     * @param y up
     * @param dots dots instead of a line
     */
    record Curve(String name, double[] x, double[] y, boolean dots) {}

    /**
     * A panel.
     *
     * @param title above it
     * @param xLabel along, with unit
     * @param yLabel up, with unit
     * @param yFrom lowest of the upright axis
     * @param yTo highest
     * @param curves in the order of the colours
     */
    record Panel(
            String title,
            String xLabel,
            String yLabel,
            double yFrom,
            double yTo,
            List<Curve> curves) {}

    private Chart() {}

    static void panels(Graphics2D g, List<Panel> panels, int across, double width, double height) {
        int down = (panels.size() + across - 1) / across;
        for (int i = 0; i < panels.size(); i++) {
            double w = width / across;
            double h = (height - 24) / down;
            panel(
                    g,
                    panels.get(i),
                    new Rectangle2D.Double(
                            i % across * w + 44,
                            Math.floorDiv(i, across) * h + 22,
                            w - 58,
                            h - 62));
        }
        List<Curve> named = panels.get(0).curves();
        double x = 44;
        for (int i = 0; i < named.size(); i++) {
            stroke(g, i, named.get(i).dots());
            if (named.get(i).dots()) {
                g.fill(new Ellipse2D.Double(x + 8, height - 14, 5, 5));
            } else {
                g.draw(new Line2D.Double(x, height - 12, x + 22, height - 12));
            }
            x = 6 + text(g, named.get(i).name(), TEXT, x + 26, height - 8) + 12;
        }
    }

    private static void panel(Graphics2D g, Panel panel, Rectangle2D box) {
        double xFrom = Double.POSITIVE_INFINITY;
        double xTo = Double.NEGATIVE_INFINITY;
        for (Curve curve : panel.curves()) {
            for (double x : curve.x()) {
                xFrom = Math.min(xFrom, x);
                xTo = Math.max(xTo, x);
            }
        }
        text(g, panel.title(), TITLE, box.getX(), box.getY() - 6);
        g.setStroke(new BasicStroke(0.6f));
        double yStep = step(panel.yTo() - panel.yFrom());
        for (double y = panel.yFrom(); y <= panel.yTo() + 1e-9; y += yStep) {
            double at =
                    box.getMaxY()
                            - (y - panel.yFrom()) / (panel.yTo() - panel.yFrom()) * box.getHeight();
            g.setPaint(GRID);
            g.draw(new Line2D.Double(box.getX(), at, box.getMaxX(), at));
            String label = number(y);
            text(g, label, TEXT, box.getX() - 4 - wide(g, label), at + 3.5);
        }
        double xStep = step(xTo - xFrom);
        for (double x = Math.ceil(xFrom / xStep - 1e-9) * xStep; x <= xTo + 1e-9; x += xStep) {
            double at = box.getX() + (x - xFrom) / (xTo - xFrom) * box.getWidth();
            g.setPaint(GRID);
            g.setStroke(new BasicStroke(0.6f));
            g.draw(new Line2D.Double(at, box.getY(), at, box.getMaxY()));
            String label = number(x);
            text(g, label, TEXT, at - wide(g, label) / 2, box.getMaxY() + 12);
        }
        g.setPaint(QUIET);
        g.draw(box);
        text(
                g,
                panel.xLabel(),
                TEXT,
                box.getCenterX() - wide(g, panel.xLabel()) / 2,
                box.getMaxY() + 25);
        java.awt.geom.AffineTransform before = g.getTransform();
        g.translate(box.getX() - 32, box.getCenterY() + wide(g, panel.yLabel()) / 2);
        g.rotate(-Math.PI / 2);
        text(g, panel.yLabel(), TEXT, 0, 0);
        g.setTransform(before);
        for (int c = 0; c < panel.curves().size(); c++) {
            Curve curve = panel.curves().get(c);
            stroke(g, c, curve.dots());
            Path2D path = new Path2D.Double();
            for (int i = 0; i < curve.x().length; i++) {
                double x = box.getX() + (curve.x()[i] - xFrom) / (xTo - xFrom) * box.getWidth();
                double y =
                        box.getMaxY()
                                - (curve.y()[i] - panel.yFrom())
                                        / (panel.yTo() - panel.yFrom())
                                        * box.getHeight();
                if (curve.dots()) {
                    g.fill(new Ellipse2D.Double(x - 2.2, y - 2.2, 4.4, 4.4));
                } else if (i == 0) {
                    path.moveTo(x, y);
                } else {
                    path.lineTo(x, y);
                }
            }
            if (!curve.dots()) {
                g.draw(path);
            }
        }
    }

    private static double step(double range) {
        double raw = range / 5;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        for (double round : new double[] {1, 2, 5, 10}) {
            if (round * power >= raw * 0.999) {
                return round * power;
            }
        }
        throw new AssertionError(range);
    }

    private static void stroke(Graphics2D g, int i, boolean dots) {
        g.setPaint(COLOURS[i % COLOURS.length]);
        float[] dash = dots ? null : DASHES[i % DASHES.length];
        g.setStroke(
                new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0));
    }

    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", Math.abs(value) < 1e-9 ? 0 : value);
        return text.replaceFirst("\\.?0+$", "");
    }

    static double wide(Graphics2D g, String text) {
        return g.getFontMetrics(TEXT).getStringBounds(text, g).getWidth();
    }

    /** Writes, and gives where it ends. */
    static double text(Graphics2D g, String text, Font font, double x, double y) {
        g.setPaint(INK);
        g.setFont(font);
        g.drawString(text, (float) x, (float) y);
        return x + g.getFontMetrics(font).getStringBounds(text, g).getWidth();
    }

    /** Draws the same twice: {@code name.png} and {@code name.svg}. */
    static void write(
            Path folder, String name, double width, double height, Consumer<Graphics2D> drawing)
            throws IOException {
        double scale = 2;
        BufferedImage image =
                new BufferedImage(
                        (int) (scale * width), (int) (scale * height), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.scale(scale, scale);
        draw(g, width, height, drawing);
        g.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(image, "png", png);
        Files.write(folder.resolve(name + ".png"), png.toByteArray());

        Document document;
        try {
            document =
                    DocumentBuilderFactory.newDefaultInstance()
                            .newDocumentBuilder()
                            .getDOMImplementation()
                            .createDocument("http://www.w3.org/2000/svg", "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(2);
        context.setComment("Drawn by Tideless");
        SVGGraphics2D svg = new SVGGraphics2D(context, false);
        draw(svg, width, height, drawing);
        Element root = svg.getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + number(width) + " " + number(height));
        StringWriter text = new StringWriter();
        svg.stream(root, text, true, false);
        Files.write(
                folder.resolve(name + ".svg"),
                text.toString()
                        .replace("\r\n", "\n")
                        .replace('\r', '\n')
                        .replaceFirst("<!DOCTYPE[^>]*>\\s*", "")
                        .getBytes(StandardCharsets.UTF_8));
    }

    private static void draw(
            Graphics2D g, double width, double height, Consumer<Graphics2D> drawing) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setPaint(Color.WHITE);
        g.fill(new Rectangle2D.Double(0, 0, width, height));
        drawing.accept(g);
    }
}
