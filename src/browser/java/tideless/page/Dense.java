package tideless.page;

import java.nio.charset.StandardCharsets;

/**
 * Bytes as text of 85 signs that mean nothing in a page: five signs for four bytes, a sixteenth
 * less than base 64 takes. {@code engine.js} reads it.
 */
final class Dense {
    /** No quotation marks, ampersand, angle brackets, backslash or backquote. */
    static final String SIGNS =
            "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!#$%()*+,-./:;=?@[]^_{|";

    private static final int BASE = 85;
    private static final int BYTES = 4;
    private static final int SIGNS_OF_GROUP = 5;

    private Dense() {}

    static String text(byte[] bytes) {
        StringBuilder text = new StringBuilder(bytes.length / BYTES * SIGNS_OF_GROUP + BYTES);
        for (int from = 0; from < bytes.length; from += BYTES) {
            int many = Math.min(BYTES, bytes.length - from);
            long group = 0;
            for (int i = 0; i < BYTES; i++) {
                group = group << 8 | (i < many ? bytes[from + i] & 0xff : 0);
            }
            char[] signs = new char[SIGNS_OF_GROUP];
            for (int i = SIGNS_OF_GROUP - 1; i >= 0; i--) {
                signs[i] = SIGNS.charAt((int) (group % BASE));
                group /= BASE;
            }
            text.append(signs, 0, many + 1);
        }
        return text.toString();
    }

    static byte[] bytes(String text) {
        int groups = text.length() / SIGNS_OF_GROUP;
        int rest = text.length() % SIGNS_OF_GROUP;
        byte[] bytes = new byte[groups * BYTES + Math.max(0, rest - 1)];
        byte[] ascii = text.getBytes(StandardCharsets.US_ASCII);
        for (int from = 0, to = 0; from < ascii.length; from += SIGNS_OF_GROUP, to += BYTES) {
            long group = 0;
            for (int i = 0; i < SIGNS_OF_GROUP; i++) {
                int sign = from + i < ascii.length ? SIGNS.indexOf(ascii[from + i]) : BASE - 1;
                if (sign < 0 || sign >= BASE) {
                    throw new IllegalArgumentException("no such sign: " + (char) ascii[from + i]);
                }
                group = group * BASE + sign;
            }
            for (int i = 0; i < BYTES && to + i < bytes.length; i++) {
                bytes[to + i] = (byte) (group >> 8 * (BYTES - 1 - i));
            }
        }
        return bytes;
    }
}
