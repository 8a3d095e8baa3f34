package tideless.solution;

/** How well a figure is founded. */
public enum Standing {
    /** Read in the named source. */
    READ,
    /** From memory of the named source, not read again. */
    FROM_MEMORY,
    /** From memory, and the least certain rows. */
    FROM_MEMORY_UNSURE,
    /** Made up in the usual ranges. */
    CONSTRUCTED,
    /** Stated by the user. */
    STATED
}
