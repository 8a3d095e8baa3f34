package tideless.report;

import java.time.LocalDate;
import java.util.List;
import tideless.sim.Series;

/**
 * Draws a page that nobody sees, so that fonts and drawing classes are there when the first page
 * that somebody sees is drawn. Half of a first picture's time is theirs.
 */
public final class Warmup {
    private static final int PIXELS_WIDE = 160;

    private Warmup() {}

    /** Draws; a machine that cannot is told of where the real pictures are drawn. */
    public static void drawOnce() {
        System.setProperty("java.awt.headless", "true");
        Panel panel =
                new Panel(LocalDate.of(2000, 1, 1), 2)
                        .band("band", 1, 2, Look.BAND)
                        .level("level", 1.5, Look.FULL)
                        .due("due", List.of(Row.Mark.on(1)))
                        .curve(
                                "curve",
                                Curves.Curve.hourly(Series.of(1, 2, 3, 4, 5, 6), 1),
                                Look.LEVEL,
                                null);
        Picture picture = new Picture("title", "subtitle", "value", "date", List.of(panel), "");
        Images.svg(picture);
        Images.png(picture, PIXELS_WIDE);
    }
}
