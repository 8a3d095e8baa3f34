package tideless.page;

import java.io.ByteArrayOutputStream;

/**
 * Bytes as text of 91 signs that mean nothing in a page: two signs for 13 bits, or for 14 where
 * these are below 89, so that 16 signs take 13 bytes, a twelfth less than base 64. {@code
 * engine.js} reads it.
 */
final class Dense {
    /** Nothing that begins an element or ends a text in quotation marks, no backslash, no blank. */
    static final String SIGNS =
            "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!#$%&()*+,-./:;=?@[]^_{|}~`'>";

    private static final int BASE = 91;
    private static final int BITS = 13;

    /** What is left of 91 x 91 pairs over 2^13: so many have room for a bit more. */
    private static final int WITH_ONE_MORE = BASE * BASE - (1 << BITS);

    private static final int BYTE = 8;

    private Dense() {}

    static String text(byte[] bytes) {
        StringBuilder text = new StringBuilder(bytes.length / 13 * 16 + 16);
        int held = 0;
        int bits = 0;
        for (byte one : bytes) {
            held |= (one & 0xff) << bits;
            bits += BYTE;
            if (bits > BITS) {
                int most = bitsOf(held);
                pair(text, held & (1 << most) - 1);
                held >>>= most;
                bits -= most;
            }
        }
        if (bits >= BYTE || held >= BASE) {
            pair(text, held);
        } else if (bits > 0) {
            text.append(SIGNS.charAt(held));
        }
        return text.toString();
    }

    private static int bitsOf(int value) {
        return (value & (1 << BITS) - 1) < WITH_ONE_MORE ? BITS + 1 : BITS;
    }

    private static void pair(StringBuilder text, int value) {
        text.append(SIGNS.charAt(value % BASE)).append(SIGNS.charAt(value / BASE));
    }

    /**
     * Reads what {@link #text} wrote.
     *
     * @throws IllegalArgumentException when it holds another sign
     */
    static byte[] bytes(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length() / 16 * 13 + 16);
        int held = 0;
        int bits = 0;
        for (int i = 0; i + 1 < text.length(); i += 2) {
            int value = sign(text.charAt(i)) + BASE * sign(text.charAt(i + 1));
            held |= value << bits;
            bits += bitsOf(value);
            for (; bits >= BYTE; bits -= BYTE) {
                bytes.write(held);
                held >>>= BYTE;
            }
        }
        if (text.length() % 2 != 0) {
            bytes.write(held | sign(text.charAt(text.length() - 1)) << bits);
        }
        return bytes.toByteArray();
    }

    private static int sign(char c) {
        int sign = SIGNS.indexOf(c);
        if (sign < 0) {
            throw new IllegalArgumentException("no such sign: " + c);
        }
        return sign;
    }
}
