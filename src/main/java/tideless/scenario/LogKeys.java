package tideless.scenario;

/** What was read and done so far. */
final class LogKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<String> FILE =
            KEYS.add(
                    Key.file("file")
                            .optional("bench-log.csv")
                            .about("a log of what was read and done, as log new makes it"));

    private LogKeys() {}
}
