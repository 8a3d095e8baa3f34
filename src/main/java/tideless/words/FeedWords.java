package tideless.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tideless.rig.Liquid;

/** What goes into the feed of a whole run. */
public final class FeedWords {
    private FeedWords() {}

    /** As "Feed in all: 126 L, of part A 0.45 L, of part B 0.45 L."; only of bottles. */
    public static String inAll(Liquid feed, double litres) {
        List<String> parts = new ArrayList<>();
        parts.add(String.format(Locale.ROOT, "Feed in all: %.0f L", litres));
        for (Liquid.Bottle bottle : feed.bottles()) {
            boolean weighed = Double.isNaN(bottle.millilitresPerL());
            double perL = weighed ? bottle.gramsPerL() : bottle.millilitresPerL();
            parts.add(
                    String.format(
                            Locale.ROOT,
                            "of %s %.2f %s",
                            bottle.name(),
                            perL * litres / 1000,
                            weighed ? "kg" : "L"));
        }
        return String.join(", ", parts) + ".";
    }
}
