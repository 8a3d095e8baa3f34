package tideless.cli;

import tideless.report.Progress;

/** What the terminal can show, and what its owner wants. */
final class Terminal {
    private static final int USUAL_WIDTH = 100;
    private static final int WIDEST = 140;

    private Terminal() {}

    /** Colour only at a terminal, and never where NO_COLOR is set to anything. */
    static boolean colour() {
        String no = System.getenv("NO_COLOR");
        return (no == null || no.isEmpty()) && Progress.atTerminal();
    }

    /** Columns to fill, from COLUMNS where the shell tells. */
    static int width() {
        String columns = System.getenv("COLUMNS");
        if (columns != null && columns.matches("[0-9]{2,4}")) {
            return Math.min(WIDEST, Integer.parseInt(columns));
        }
        return USUAL_WIDTH;
    }
}
