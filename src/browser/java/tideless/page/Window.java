package tideless.page;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
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

    @Override
    void close() throws IOException;
}
