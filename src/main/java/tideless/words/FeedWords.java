package tideless.words;

import java.util.ArrayList;
import java.util.List;
import tideless.rig.Liquid;
import tideless.rig.Scenario;
import tideless.solution.Acidity;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;

/** What goes into the feed of a whole run. */
public final class FeedWords {
    private FeedWords() {}

    /** As "1.60 mS/cm; pH 5.8 once it has stood in air, 5.4 just mixed". */
    public static String readings(Composition feed) {
        return Numbers.two(ElectricalConductivity.at25MsPerCm(feed))
                + " mS/cm; pH "
                + Numbers.one(Acidity.phInAir(feed, 25, ElectricalConductivity.AIR_CO2_PPM))
                + " once it has stood in air, "
                + Numbers.one(Acidity.phClosed(feed, 25))
                + " just mixed";
    }

    /** The feed of a whole run; of bottles also how it stands to their labels. */
    public static String main(Liquid feed) {
        return readings(feed.composition()) + ofLabel(feed);
    }

    /** As "; 34 % of the labels' dose, which would read 4.40 mS/cm"; nothing without labels. */
    static String ofLabel(Liquid feed) {
        return feed.dose()
                .map(
                        dose ->
                                "; "
                                        + Numbers.whole(100 * dose.frac())
                                        + " % of the dose on the labels, all of which would read "
                                        + Numbers.two(dose.labelMsPerCm())
                                        + " mS/cm")
                .orElse("");
    }

    /** As "reservoir fruit: 2.40 mS/cm; pH ...", of each vessel with a feed of its own. */
    public static List<String> own(Scenario scenario) {
        List<String> lines = new ArrayList<>();
        scenario.ownFeeds()
                .forEach((vessel, feed) -> lines.add(Names.of(vessel) + ": " + main(feed)));
        return lines;
    }

    /** Where no mixing sheet can be made of a feed. */
    public static String noSheet(Liquid feed) {
        return "Mix what you feed ("
                + Names.clean(feed.name())
                + ") by the label of what you bought, until your meter reads "
                + Numbers.two(ElectricalConductivity.at25MsPerCm(feed.composition()))
                + " mS/cm: water first, then part A, stir, then part B; gloves and goggles. Here it is"
                + " taken to read pH "
                + Numbers.one(
                        Acidity.phInAir(feed.composition(), 25, ElectricalConductivity.AIR_CO2_PPM))
                + " once it has stood: read it after a day, and where it stands higher bring it there"
                + " by little acid, or state what it reads (feed.ph). What to"
                + " pour of each bottle is told once the labels stand in the scenario"
                + " ([feed.part_a], [feed.part_b] and ratio).";
    }

    /** As "Feed in all: 126 L, of part A 450 mL, of part B 450 mL."; only of bottles. */
    public static String inAll(Liquid feed, double litres) {
        List<String> parts = new ArrayList<>();
        parts.add("Feed in all: " + Numbers.whole(litres) + " L");
        for (Liquid.Bottle bottle : feed.bottles()) {
            parts.add("of " + poured(bottle, litres));
        }
        return String.join(", ", parts) + ".";
    }

    /** As "part A 190 mL", "part A 1.25 L" or "part A 209 g": what so much feed takes of it. */
    static String poured(Liquid.Bottle bottle, double litres) {
        double millilitres = bottle.millilitresPerL() * litres;
        return bottle.name()
                + " "
                + (Double.isNaN(millilitres)
                        ? Numbers.grams(bottle.gramsPerL() * litres)
                        : millilitres < 1000
                                ? Numbers.whole(millilitres) + " mL"
                                : Numbers.two(millilitres / 1000) + " L");
    }
}
