package tideless.scenario;

import java.util.Arrays;
import org.tomlj.TomlPosition;

/**
 * A TOML text without its blank lines and those that hold nothing but a comment, and where each
 * line that is left stood. The parser takes time that grows with the cube of such lines in a row: a
 * file of 3 kB could keep it for half a minute. Lines inside a text over several lines stay.
 */
public final class TomlLines {
    private final String text;
    private final int[] numbers;

    private TomlLines(String text, int[] numbers) {
        this.text = text;
        this.numbers = numbers;
    }

    /** Of a text as its owner wrote it. */
    public static TomlLines of(String text) {
        StringBuilder kept = new StringBuilder(text.length());
        int[] numbers = new int[16];
        int count = 0;
        String open = ""; // the quotation marks of a text over several lines that has not ended
        int number = 0;
        int at = 0;
        while (at < text.length()) {
            number++;
            int end = text.indexOf('\n', at);
            String line = text.substring(at, end < 0 ? text.length() : end + 1);
            at += line.length();
            if (open.isEmpty() && isIdle(line)) {
                continue;
            }
            open = openAfter(line, open);
            kept.append(line);
            if (count == numbers.length) {
                numbers = Arrays.copyOf(numbers, 2 * count);
            }
            numbers[count++] = number;
        }
        return new TomlLines(kept.toString(), Arrays.copyOf(numbers, count));
    }

    /** Whether a line means nothing: blank, or a comment of characters a comment may hold. */
    private static boolean isIdle(String line) {
        int i = 0;
        int end = line.endsWith("\r\n") ? line.length() - 2 : line.length();
        end = end == line.length() && line.endsWith("\n") ? end - 1 : end;
        while (i < end && (line.charAt(i) == ' ' || line.charAt(i) == '\t')) {
            i++;
        }
        if (i == end) {
            return true;
        }
        if (line.charAt(i) != '#') {
            return false;
        }
        for (; i < end; i++) {
            char c = line.charAt(i);
            if ((c < ' ' && c != '\t') || c == 127 || Character.isSurrogate(c)) {
                return false; // the parser says what is wrong with it
            }
        }
        return true;
    }

    /** Which quotation marks are open at the end of a line, empty for none. */
    private static String openAfter(String line, String openBefore) {
        String open = openBefore;
        int i = 0;
        while (i < line.length()) {
            char c = line.charAt(i);
            if (open.isEmpty()) {
                if (c == '#') {
                    return "";
                }
                if (c == '"' || c == '\'') {
                    String three = String.valueOf(c).repeat(3);
                    open = line.startsWith(three, i) ? three : String.valueOf(c);
                    i += open.length();
                    continue;
                }
                i++;
            } else if (c == '\\' && open.charAt(0) == '"') {
                i += 2;
            } else if (line.startsWith(open, i)) {
                i += open.length();
                // Up to two more marks may stand before the three that end it.
                while (open.length() == 3
                        && i < line.length()
                        && line.charAt(i) == open.charAt(0)) {
                    i++;
                }
                open = "";
            } else {
                i++;
            }
        }
        return open.length() == 3 ? open : ""; // a text of one line ends with it, sound or not
    }

    /** What to parse. */
    public String text() {
        return text;
    }

    /** Where a line of {@link #text()} stood, both counted from 1. */
    int inFile(int line) {
        if (numbers.length == 0) {
            return line;
        }
        int known = Math.min(Math.max(line, 1), numbers.length);
        return numbers[known - 1] + Math.max(0, line - numbers.length);
    }

    /** Where a place in {@link #text()} is in the text of its owner. */
    public TomlPosition inFile(TomlPosition parsed) {
        return TomlPosition.positionAt(inFile(parsed.line()), parsed.column());
    }
}
