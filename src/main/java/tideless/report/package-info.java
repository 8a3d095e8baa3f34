/**
 * Terminal tables, plots, CSV and JSON. Lays out finished results; runs none and judges none.
 *
 * <p>The only room that knows JFreeChart, and, with {@code scenario}, the only one that touches
 * files. Files are written whole or not at all.
 *
 * <p>May import: {@code drawing}, {@code words}, {@code study}, {@code advice}, {@code sim}, {@code
 * rig}, {@code crop}, {@code solution}, {@code physics}, {@code java.lang}, {@code java.util},
 * {@code java.util.function}, {@code java.util.regex}, {@code java.util.stream}, {@code
 * java.lang.reflect}, {@code java.util.concurrent}, {@code java.util.concurrent.locks}, {@code
 * java.math}, {@code java.text}, {@code java.io}, {@code java.nio.channels}, {@code
 * java.nio.charset}, {@code java.nio.file}, {@code java.nio.file.attribute}, {@code java.time},
 * {@code java.time.format}, {@code java.time.temporal}, {@code java.util.zip}, {@code java.awt..},
 * {@code javax.imageio..}, {@code javax.xml.parsers}, {@code org.w3c.dom}, {@code org.jfree..},
 * {@code org.apache.batik..}, {@code de.siegmar.fastcsv.writer}, {@code
 * com.fasterxml.jackson.core..}, {@code biweekly..}, {@code com.github.mangstadt.vinnie..}, {@code
 * com.samskivert.mustache..}, {@code org.apache.commons.math3.util}. Held by {@code RoomsTest}.
 */
package tideless.report;
