package tideless.report;

import java.awt.Graphics2D;

/** Something drawn on an A5 page laid across, in points. */
interface Page {
    /** Draws it whole, its ground included. */
    void draw(Graphics2D g2);
}
