package tideless.advice;

/** What can hurt at a task; each is told once, at the first task whose hand it concerns. */
public enum Caution {
    /** Acids, bases and concentrates; a school's own assessment. */
    CHEMICALS,
    /** Copper, brass and zinc dissolve into the feed. */
    NO_BRASS_OR_ZINC,
    /** Light in the solution grows algae. */
    LIGHT_TIGHT,
    /** Open still water breeds mosquitoes. */
    MOSQUITO_MESH,
    /** Mains beside water. */
    LAMP_DRIVERS,
    /** A valve that sticks empties the reservoir onto the floor. */
    TAP_AND_TRAY,
    /** Where drained feed may go. */
    DRAINED_FEED,
    /** Warm still water and spray. */
    NO_SPRAY,
    /** Rain off a roof and leaves eaten raw. */
    ROOF_RAIN
}
