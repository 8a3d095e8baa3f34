package tideless.scenario;

import org.tomlj.Toml;

/** Has the parser of TOML unfold its tables, which it does once. */
public final class FirstParse {
    private FirstParse() {}

    /** Parses a line; may run beside anything else. */
    public static void unfold() {
        Toml.parse("[a]\nb = 1.5\nc = \"d\"\n");
    }
}
