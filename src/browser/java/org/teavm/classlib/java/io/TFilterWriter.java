package org.teavm.classlib.java.io;

import java.io.IOException;
import java.io.Writer;

/** Stands in for {@link java.io.FilterWriter}, which the compiler for the browser lacks. */
public abstract class TFilterWriter extends Writer {
    protected Writer out;

    protected TFilterWriter(Writer out) {
        super(out);
        this.out = out;
    }

    @Override
    public void write(int c) throws IOException {
        out.write(c);
    }

    @Override
    public void write(char[] chars, int from, int length) throws IOException {
        out.write(chars, from, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        out.write(text, from, length);
    }

    @Override
    public void flush() throws IOException {
        out.flush();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
