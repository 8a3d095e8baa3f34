package tideless.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * A file's bytes and text, or why there are none. Never reads more than a stated number of bytes,
 * whatever the file claims to be.
 *
 * @param bytes what was read; empty when unreadable
 * @param text the bytes as UTF-8 without a byte order mark; null when there is none
 * @param unreadable why the file could not be read; empty when it was
 * @param fault what is wrong with what was read; empty when nothing is
 */
record TextFile(byte[] bytes, String text, String unreadable, String fault) {

    static final int MEBIBYTE = 1 << 20;

    static TextFile read(Path path, int mostBytes) {
        if (Files.isDirectory(path)) {
            return unreadable("is a directory, not a file");
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(path)) {
            bytes = in.readNBytes(mostBytes + 1);
        } catch (NoSuchFileException e) {
            return unreadable("there is no such file");
        } catch (AccessDeniedException e) {
            return unreadable("may not be read");
        } catch (IOException | SecurityException e) {
            return unreadable("cannot be read");
        }
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
            return new TextFile(bytes, null, "", "bytes that are not UTF-8 text");
        }
    }

    private static TextFile unreadable(String why) {
        return new TextFile(new byte[0], null, why, "");
    }

    /** What would be allowed instead of {@link #fault}. */
    static String allowed(String what, int mostBytes) {
        return what + " in UTF-8, up to " + mostBytes / MEBIBYTE + " MB";
    }
}
