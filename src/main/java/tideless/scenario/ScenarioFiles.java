package tideless.scenario;

/** Where a scenario and the files it names are read from: a disk, or a page's memory. */
interface ScenarioFiles {
    /**
     * The first bytes of a file.
     *
     * @param name as the scenario names it; empty for the scenario itself
     * @param mostBytes no more are read, whatever the file claims to be
     */
    Content read(String name, int mostBytes);

    /** What to call a file in messages. */
    String label(String name);

    /**
     * What came of reading a file.
     *
     * @param bytes what was read; empty when it could not be
     * @param unreadable why it could not be read, as "there is no such file"; empty when it was
     */
    record Content(byte[] bytes, String unreadable) {
        /** Of a file that was read. */
        public static Content of(byte[] bytes) {
            return new Content(bytes, "");
        }

        /** Of a file that was not. */
        public static Content unreadable(String why) {
            return new Content(new byte[0], why);
        }
    }
}
