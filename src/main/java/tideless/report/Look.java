package tideless.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.List;

/**
 * How the pictures look: white ground, thin grid, few colours. All lengths are points on an A5 page
 * laid across. The colours differ in lightness as well as in hue, and every line has a dash of its
 * own, so that a picture also reads in grey and with any colour vision.
 */
final class Look {
    static final Color GROUND = Color.WHITE;
    static final Color INK = new Color(0x16202b);
    static final Color QUIET = new Color(0x55616d);
    static final Color GRID = new Color(0xe1e5e9);
    static final Color LEADER = new Color(0x97a2ad);
    static final Color MARK = new Color(0xb3bcc5);

    // Areas let the grid and the due dates through. Weekends, absences and harm are those of the
    // season's strips.
    static final Color REST = new Color(0x6e, 0x63, 0x4a, 22);
    static final Color AWAY = new Color(0x6e, 0x63, 0x4a, 66);
    static final Color HARM = new Color(0xa3, 0x20, 0x1a, 40);

    /** Laid over days on which a tray is empty. */
    static final Color FADED = new Color(255, 255, 255, 178);

    static final Color BAND = new Color(0x3f, 0x8f, 0x63, 36);
    static final Color DEAD = new Color(0x55, 0x50, 0x40, 44);
    static final Color STRANDED = new Color(0xe0, 0x8a, 0x35, 90);
    static final Color DROWNED = new Color(0x2c, 0x55, 0x8a, 110);

    static final Color DEEP = new Color(0x0b4a86);
    static final Color RUST = new Color(0xb5481f);
    static final Color TEAL = new Color(0x2d8f82);

    /** What eight members of ten do, of one case and of the other. */
    static final Color LIKELY = new Color(0x0b, 0x4a, 0x86, 56);

    static final Color LIKELY_TOO = new Color(0xd9, 0x79, 0x0a, 44);

    static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 12);
    static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 8);
    static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 7);

    /**
     * A line.
     *
     * @param colour its colour
     * @param stroke its width and dash
     */
    record Line(Color colour, BasicStroke stroke) {}

    static final Line LEVEL = line(DEEP, 1.5f);

    /** Readings: marks, and of their line hardly a point beside their name. */
    static final Line READ = line(RUST, 0.5f, 0.5f, 90);

    static final Line ROOT_TIP = line(RUST, 1.3f, 6, 2.5f);
    static final Line BORNE = line(TEAL, 1.1f, 1.2f, 2.2f);
    static final Line CUP = line(QUIET, 0.9f, 10, 3);
    static final Line VALVE = line(INK, 0.9f, 7, 2, 1.5f, 2);
    static final Line FULL = line(QUIET, 0.9f, 10, 3);
    static final Line DEAD_VOLUME = line(RUST, 1.1f, 4, 2);
    static final BasicStroke LIKELY_LINE = new BasicStroke(0.9f);
    static final BasicStroke HAIR = new BasicStroke(0.5f);

    /** Where one thing ends and another begins. */
    static final BasicStroke CHANGE = new BasicStroke(1.1f);

    static final BasicStroke OUTLINE = new BasicStroke(1);
    static final BasicStroke DUE =
            new BasicStroke(
                    0.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 2}, 0);

    /** One for each tray of a picture. */
    static final List<Line> TRAYS =
            List.of(
                    line(DEEP, 1.6f),
                    line(new Color(0xcc6f06), 1.6f, 7, 2.5f),
                    line(new Color(0x5b2263), 1.4f, 1.4f, 2),
                    line(new Color(0x4a8ac2), 2.2f),
                    line(TEAL, 1.5f, 8, 2, 1.5f, 2),
                    line(RUST, 1.3f, 3, 2));

    private Look() {}

    /** The same colour, letting nothing through. */
    static Color solid(Color colour) {
        return new Color(colour.getRed(), colour.getGreen(), colour.getBlue());
    }

    private static Line line(Color colour, float width, float... dash) {
        return new Line(
                colour,
                new BasicStroke(
                        width,
                        BasicStroke.CAP_BUTT,
                        BasicStroke.JOIN_ROUND,
                        10,
                        dash.length == 0 ? null : dash,
                        0));
    }
}
