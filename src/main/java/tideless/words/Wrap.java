package tideless.words;

import java.util.ArrayList;
import java.util.List;

/** Words broken into lines. */
public final class Wrap {
    private Wrap() {}

    /**
     * Lines of at most so many characters; a word that is longer is cut.
     *
     * @param room characters to a line, counted as code points; at least 1
     * @return at least one line, which may be empty
     */
    public static List<String> lines(String text, int room) {
        List<String> lines = new ArrayList<>();
        StringBuilder at = new StringBuilder();
        for (String word : text.split(" +")) {
            String rest = word;
            if (!at.isEmpty() && length(at) + 1 + length(rest) > room) {
                lines.add(at.toString());
                at.setLength(0);
            }
            while (length(rest) > room) {
                int cut = rest.offsetByCodePoints(0, room);
                lines.add(rest.substring(0, cut));
                rest = rest.substring(cut);
            }
            at.append(at.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(at.toString());
        return lines;
    }

    /** Code points. */
    public static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
