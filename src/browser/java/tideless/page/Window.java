package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;

/** A page in a browser without a screen. */
interface Window extends AutoCloseable {
    /** Opens a file or address and waits until the page is loaded. */
    void open(String address) throws InterruptedException, ExecutionException, TimeoutException;

    /** What an expression gives in the page; a promise is waited for. */
    JsonNode evaluate(String expression)
            throws InterruptedException, ExecutionException, TimeoutException;

    /** Faults and warnings of the page since it was opened, as the console shows them. */
    List<String> complaints();

    /** Addresses the page asked the browser for since it was opened. */
    List<String> requests();

    /** Sets the window's size in CSS pixels. */
    void size(int width, int height)
            throws InterruptedException, ExecutionException, TimeoutException;

    /** A key pressed and let go. */
    void key(Key key) throws InterruptedException, ExecutionException, TimeoutException;

    /**
     * A mouse or a finger put down at the first place of the window, drawn through the others, and
     * lifted.
     *
     * @param places x and y in turn, CSS pixels
     */
    void draw(boolean isFinger, double... places)
            throws InterruptedException, ExecutionException, TimeoutException;

    /** Where what the page saves comes to lie. */
    Path saved() throws IOException;

    /** Its processes. */
    Running running();

    /** What all its processes have used of the machine so far, ms. */
    default double cpuMs() {
        return running().cpuMs();
    }

    @Override
    void close() throws IOException;

    /** Keys of a keyboard. */
    enum Key {
        TAB("Tab", 9, "", '\uE004'),
        ENTER("Enter", 13, "\r", '\uE007'),
        DOWN("ArrowDown", 40, "", '\uE015'),
        UP("ArrowUp", 38, "", '\uE013');

        /** As a page is told of it. */
        final String told;

        /** Of the keyboards of old, which Chromium asks for. */
        final int code;

        /** What it writes. */
        final String text;

        /** As the WebDriver protocol has it (W3C 2018, "keyboard actions"). */
        final char value;

        Key(String told, int code, String text, char value) {
            this.told = told;
            this.code = code;
            this.text = text;
            this.value = value;
        }
    }
}
