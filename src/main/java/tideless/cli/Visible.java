package tideless.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/**
 * Shows as "?" what nobody sees and a terminal may obey: a message repeats what was typed or stands
 * in the name of a file. Ends of lines pass.
 */
final class Visible extends FilterWriter {
    Visible(Writer out) {
        super(out);
    }

    @Override
    public void write(int c) throws IOException {
        write(Character.toString(c), 0, 1);
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
        write(new String(text, from, length), 0, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        StringBuilder shown = new StringBuilder();
        for (String line : text.substring(from, from + length).split("(?<=\n)")) {
            String end = line.endsWith("\r\n") ? "\r\n" : line.endsWith("\n") ? "\n" : "";
            line.substring(0, line.length() - end.length())
                    .codePoints()
                    .forEach(c -> shown.appendCodePoint(isUnseen(c) ? '?' : c));
            shown.append(end);
        }
        out.write(shown.toString());
    }

    private static boolean isUnseen(int c) {
        int type = Character.getType(c);
        return type == Character.CONTROL
                || type == Character.FORMAT
                || type == Character.SURROGATE
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR;
    }
}
