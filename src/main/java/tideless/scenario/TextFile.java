package tideless.scenario;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * A file's bytes and text, or why there are none.
 *
 * @param bytes what was read; empty when unreadable
 * @param text the bytes as UTF-8 without a byte order mark; null when there is none
 * @param unreadable why the file could not be read; empty when it was
 * @param fault what is wrong with what was read; empty when nothing is
 */
record TextFile(byte[] bytes, String text, String unreadable, String fault) {

    static final int MEBIBYTE = 1 << 20;

    private static final String NO_UTF_8 = "bytes that are not UTF-8 text";

    static TextFile of(ScenarioFiles.Content content, int mostBytes) {
        if (!content.unreadable().isEmpty()) {
            return new TextFile(new byte[0], null, content.unreadable(), "");
        }
        byte[] bytes = content.bytes();
        if (bytes.length > mostBytes) {
            return new TextFile(
                    new byte[0], null, "", "a file of more than " + mostBytes / MEBIBYTE + " MB");
        }
        try {
            String text =
                    StandardCharsets.UTF_8
                            .newDecoder()
                            .onMalformedInput(CodingErrorAction.REPORT)
                            .onUnmappableCharacter(CodingErrorAction.REPORT)
                            .decode(ByteBuffer.wrap(bytes))
                            .toString();
            String bare = text.startsWith("\ufeff") ? text.substring(1) : text;
            return new TextFile(
                    bytes, bare, "", bare.isBlank() ? "nothing: the file is empty" : "");
        } catch (CharacterCodingException e) {
            return new TextFile(bytes, null, "", NO_UTF_8);
        }
    }

    /** What helps against {@link #fault}; empty where nothing is to be said. */
    String hint() {
        return fault.equals(NO_UTF_8)
                ? "A spreadsheet writes it where you save as \"CSV UTF-8\", an editor where you"
                        + " choose UTF-8."
                : "";
    }

    /** What would be allowed instead of {@link #fault}. */
    static String allowed(String what, int mostBytes) {
        return what + " in UTF-8, up to " + mostBytes / MEBIBYTE + " MB";
    }
}
