package org.teavm.classlib.java.util;

/**
 * {@code java.util.StringJoiner} in a browser, as far as the libraries that read TOML and CSV need
 * it: the compiler takes a class of this package and prefix for the platform's where it has none.
 */
public final class TStringJoiner {
    private final String delimiter;
    private final String prefix;
    private final String suffix;
    private final StringBuilder joined = new StringBuilder();
    private boolean empty = true;

    public TStringJoiner(CharSequence delimiter) {
        this(delimiter, "", "");
    }

    public TStringJoiner(CharSequence delimiter, CharSequence prefix, CharSequence suffix) {
        this.delimiter = delimiter.toString();
        this.prefix = prefix.toString();
        this.suffix = suffix.toString();
    }

    public TStringJoiner add(CharSequence text) {
        if (!empty) {
            joined.append(delimiter);
        }
        joined.append(text);
        empty = false;
        return this;
    }

    @Override
    public String toString() {
        return prefix + joined + suffix;
    }
}
