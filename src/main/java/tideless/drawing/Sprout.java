package tideless.drawing;

import org.apache.commons.math3.util.FastMath;
import tideless.sim.TrayTrace;

/** A plant above its deck: a sign, as tall as its share of the season's greatest weight says. */
final class Sprout {
    private static final double LEAST = 7;
    private static final double MOST = 24;

    private Sprout() {}

    /** Size by its weight against the greatest of the season, 0-1; 1 where none is known. */
    static double share(TrayTrace run, int hour) {
        double greatest = 0;
        for (int h = 0; h < run.freshG().size(); h++) {
            double now = run.freshG().at(h);
            greatest = now > greatest ? now : greatest;
        }
        double now = run.freshG().at(hour);
        return greatest > 0 && now >= 0 ? FastMath.cbrt(now / greatest) : 1;
    }

    static void draw(Svg svg, double x, double deck, double share, boolean lost) {
        double tall = LEAST + share * (MOST - LEAST);
        double wide = tall * 0.55;
        String kind = lost ? "lost" : "leaf";
        svg.line(x, deck + 6, x, deck - tall * 0.7, "stem");
        double tip = lost ? deck - 2 : deck - tall;
        leaf(svg, x, deck - tall * 0.35, x - wide, tip, kind);
        leaf(svg, x, deck - tall * 0.35, x + wide, tip, kind);
        if (!lost) {
            leaf(svg, x, deck - tall * 0.5, x, deck - tall * 1.15, kind);
        }
    }

    private static void leaf(Svg svg, double x, double y, double tipX, double tipY, String kind) {
        double alongX = tipX - x;
        double alongY = tipY - y;
        double sideX = -alongY * 0.3;
        double sideY = alongX * 0.3;
        double midX = x + alongX * 0.55;
        double midY = y + alongY * 0.55;
        svg.area(kind, x, y, midX + sideX, midY + sideY, tipX, tipY, midX - sideX, midY - sideY);
    }
}
