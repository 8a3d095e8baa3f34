package tideless.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Pictures as bytes: PNG, and SVG by Batik on the JDK's own document. */
final class Images {
    /** An A5 page laid across at 200 dots an inch. */
    static final int PIXELS_WIDE = 1654;

    static final int PIXELS_HIGH = 1165;

    /** Packs a fifth less tightly than the writer would, in half the time. */
    private static final float QUICK = 0.9f;

    private static final String SVG = "http://www.w3.org/2000/svg";

    private Images() {}

    static byte[] png(Page picture) {
        return png(picture, PIXELS_WIDE);
    }

    /** The same in another size. */
    static byte[] png(Page picture, int wide) {
        int high = wide * PIXELS_HIGH / PIXELS_WIDE;
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        Graphics2D g2 = image.createGraphics();
        try {
            g2.setPaint(Color.WHITE);
            g2.fillRect(0, 0, wide, high);
            g2.scale(wide / Picture.WIDTH, wide / Picture.WIDTH);
            picture.draw(g2);
        } finally {
            g2.dispose();
        }
        return encoded(image);
    }

    private static byte[] encoded(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam quick = writer.getDefaultWriteParam();
            quick.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            quick.setCompressionQuality(QUICK);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), quick);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // memory does not fail to be written
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    static byte[] svg(Page picture) {
        Document document;
        try {
            document =
                    DocumentBuilderFactory.newDefaultInstance()
                            .newDocumentBuilder()
                            .getDOMImplementation()
                            .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e); // The JDK's own builder has no such fault.
        }
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(2);
        context.setComment("Drawn by Tideless");
        SVGGraphics2D g2 = new SVGGraphics2D(context, false);
        picture.draw(g2);
        Element root = g2.getRoot();
        root.setAttributeNS(null, "width", "210mm");
        root.setAttributeNS(
                null,
                "height",
                String.format(Locale.ROOT, "%.2fmm", 210 * Picture.HEIGHT / Picture.WIDTH));
        root.setAttributeNS(
                null,
                "viewBox",
                String.format(Locale.ROOT, "0 0 %.2f %.2f", Picture.WIDTH, Picture.HEIGHT));
        StringWriter text = new StringWriter(1 << 16);
        try {
            g2.stream(root, text, true, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        // Batik ends its lines as the machine does, and names a document type on the web that a
        // strict reader would go and fetch.
        return text.toString()
                .replace("\r\n", "\n")
                .replace('\r', '\n')
                .replaceFirst("<!DOCTYPE[^>]*>\\s*", "")
                .getBytes(StandardCharsets.UTF_8);
    }
}
