package tideless.words;

import java.util.ArrayList;
import java.util.List;
import tideless.rig.Liquid;

/** What goes into the feed of a whole run. */
public final class FeedWords {
    private FeedWords() {}

    /** As "Feed in all: 126 L, of part A 0.45 L, of part B 0.45 L."; only of bottles. */
    public static String inAll(Liquid feed, double litres) {
        List<String> parts = new ArrayList<>();
        parts.add("Feed in all: " + Numbers.whole(litres) + " L");
        for (Liquid.Bottle bottle : feed.bottles()) {
            boolean weighed = Double.isNaN(bottle.millilitresPerL());
            double perL = weighed ? bottle.gramsPerL() : bottle.millilitresPerL();
            parts.add(
                    "of "
                            + bottle.name()
                            + " "
                            + Numbers.two(perL * litres / 1000)
                            + (weighed ? " kg" : " L"));
        }
        return String.join(", ", parts) + ".";
    }
}
