package tideless.solution;

/** How well a figure is founded. */
public enum Standing {
    /** Read in the named source. */
    READ("read in the source"),
    /** From memory of the named source, not read again. */
    FROM_MEMORY("from memory"),
    /** From memory, and the least certain rows. */
    FROM_MEMORY_UNSURE("from memory, unsure"),
    /** Made up in the usual ranges. */
    CONSTRUCTED("constructed in the usual ranges"),
    /** Stated by the user. */
    STATED("stated by the user");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    /** For a reader. */
    public String words() {
        return words;
    }
}
