package tideless.scenario;

/** What was read and done so far. */
final class LogKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<String> FILE =
            KEYS.add(
                    Key.file("file")
                            .optional("bench-log.csv")
                            .about("a log of what was read and done, as log new makes it"));

    static final Key<String> CORRECTED =
            KEYS.add(
                    Key.file("corrected")
                            .optional("corrected.toml")
                            .about(
                                    "corrections that fit has written for this scenario; fit itself"
                                            + " leaves them aside"));

    private LogKeys() {}
}
