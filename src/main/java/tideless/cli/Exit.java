package tideless.cli;

/** What the program tells its caller. */
final class Exit {
    /** Done. */
    static final int DONE = 0;

    /** A file could not be read or written. */
    static final int FILE = 1;

    /** A fault in the command line or in the scenario. */
    static final int FAULT = 2;

    private Exit() {}
}
