/**
 * Terminal tables, plots, CSV and JSON. Reads results only and works nothing out.
 *
 * <p>The only room that knows JFreeChart, and, with {@code scenario}, the only one that touches
 * files. Files are written whole or not at all.
 *
 * <p>May import: {@code study}, {@code advice}, {@code sim}, {@code scenario} and what lies below
 * them. Held by {@code RoomsTest}.
 */
package tideless.report;
