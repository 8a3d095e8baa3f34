package tideless.report;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes an image as PNG (ISO/IEC 15948:2004): eight bits a channel, no alpha.
 *
 * <p>The JDK's own writer tries every filter on every row; on a picture that is mostly white ground
 * that took longer than the drawing and made the files no smaller.
 */
final class Png {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10};
    private static final int UP = 2;

    private Png() {}

    /**
     * @param image of type {@link BufferedImage#TYPE_INT_RGB}
     * @param dotsPerMetre printed size
     */
    static byte[] of(BufferedImage image, int dotsPerMetre) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 17);
        out.writeBytes(SIGNATURE);
        ByteBuffer header = ByteBuffer.allocate(13);
        header.putInt(image.getWidth()).putInt(image.getHeight());
        header.put(new byte[] {8, 2, 0, 0, 0}); // eight bits, true colour, no interlace
        chunk(out, "IHDR", header.array(), 13);
        ByteBuffer size = ByteBuffer.allocate(9);
        size.putInt(dotsPerMetre).putInt(dotsPerMetre).put((byte) 1);
        chunk(out, "pHYs", size.array(), 9);
        byte[] rows = rows(image);
        byte[] packed = new byte[rows.length / 8];
        Deflater deflater = new Deflater(4);
        try {
            deflater.setInput(rows);
            deflater.finish();
            int length = 0;
            while (!deflater.finished()) {
                if (length == packed.length) {
                    packed = Arrays.copyOf(packed, 2 * packed.length);
                }
                length += deflater.deflate(packed, length, packed.length - length);
            }
            chunk(out, "IDAT", packed, length);
        } finally {
            deflater.end();
        }
        chunk(out, "IEND", new byte[0], 0);
        return out.toByteArray();
    }

    // Each row less the one above: upright lines and white ground become zeros.
    private static byte[] rows(BufferedImage image) {
        int width = image.getWidth();
        int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        byte[] rows = new byte[image.getHeight() * (1 + 3 * width)];
        int at = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            rows[at++] = UP;
            int here = y * width;
            for (int x = 0; x < width; x++) {
                int pixel = pixels[here + x];
                int above = y == 0 ? 0 : pixels[here + x - width];
                rows[at++] = (byte) ((pixel >> 16) - (above >> 16));
                rows[at++] = (byte) ((pixel >> 8) - (above >> 8));
                rows[at++] = (byte) (pixel - above);
            }
        }
        return rows;
    }

    private static void chunk(ByteArrayOutputStream out, String type, byte[] data, int length) {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(data, 0, length);
        out.writeBytes(ByteBuffer.allocate(4).putInt(length).array());
        out.writeBytes(name);
        out.write(data, 0, length);
        out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
    }
}
