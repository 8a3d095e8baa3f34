package tideless.crop;

import java.util.ArrayList;
import java.util.List;
import tideless.solution.Component;

/**
 * What a crop takes from the solution for each litre it drinks, beside published uptake
 * concentrations of closed crops, in a feed of 2 mS/cm that does not run low.
 */
final class Uptake {
    /** A feed of about 2 mS/cm at 25 degC by the rule 0.19 + 0.095 x cations, mmol/L. */
    private static final double[] FEED = new double[Component.COUNT];

    static {
        FEED[Component.NO3.ordinal()] = 14;
        FEED[Component.NH4.ordinal()] = 1;
        FEED[Component.P.ordinal()] = 1.5;
        FEED[Component.K.ordinal()] = 7;
        FEED[Component.CA.ordinal()] = 4;
        FEED[Component.MG.ordinal()] = 1.5;
        FEED[Component.SO4.ordinal()] = 1.75;
    }

    private Uptake() {}

    /**
     * Of one stretch of a crop's life.
     *
     * @param perLitreMmol taken per litre drunk, by component, mmol/L; all nitrogen under nitrate
     * @param neutralShare share of the nitrogen taken as ammonium at which the uptake neither gives
     *     nor takes acid, 0-1
     */
    record Outcome(double[] perLitreMmol, double neutralShare) {}

    /** The feed diluted: so many times as strong. */
    static double[] feed(double times) {
        double[] feed = FEED.clone();
        for (int i = 0; i < feed.length; i++) {
            feed[i] *= times;
        }
        return feed;
    }

    static Outcome of(
            CropTraits traits, RoomSeason room, Plant start, double groundPerPlantM2, int days) {
        return of(traits, room, start, groundPerPlantM2, days, FEED);
    }

    static Outcome of(
            CropTraits traits,
            RoomSeason room,
            Plant start,
            double groundPerPlantM2,
            int days,
            double[] feed) {
        double[] taken = new double[Component.COUNT];
        double[] wanted = new double[Component.COUNT];
        double[] before = new double[Component.COUNT];
        double[] after = new double[Component.COUNT];
        Hunger.storeMol(traits, start, feed, before);
        Plant plant = start;
        double litres = 0;
        for (int day = 0; day < days; day++) {
            double drunk = room.thirstKg(traits, plant, groundPerPlantM2);
            Plant next = room.dayLater(traits, plant, groundPerPlantM2);
            double fruitG = next.fruitDryG() - plant.fruitDryG();
            double leafLikeG = next.dryG() - plant.dryG() - fruitG;
            Hunger.demandMol(traits, leafLikeG, fruitG, wanted);
            for (int i = 0; i < taken.length; i++) {
                taken[i] += wanted[i];
            }
            taken[Component.CA.ordinal()] +=
                    Hunger.calciumWithWaterMol(
                            traits, leafLikeG, fruitG, feed[Component.CA.ordinal()], drunk / 1000);
            litres += drunk;
            plant = next;
        }
        Hunger.storeMol(traits, plant, feed, after);
        for (int i = 0; i < taken.length; i++) {
            taken[i] = 1000 * (taken[i] + after[i] - before[i]) / litres;
        }
        double nitrogen = taken[Component.NO3.ordinal()];
        double base =
                nitrogen
                        + taken[Component.P.ordinal()]
                        + 2 * taken[Component.SO4.ordinal()]
                        - taken[Component.K.ordinal()]
                        - 2 * taken[Component.CA.ordinal()]
                        - 2 * taken[Component.MG.ordinal()];
        return new Outcome(taken, base / (2 * nitrogen));
    }

    private static final Component[] IONS = {
        Component.NO3, Component.P, Component.K, Component.CA, Component.MG
    };

    static List<Emergence.Row> rows() {
        String closed = "closed rockwool crops, De Kreij et al. (1999), from memory, +-25 %";
        RoomSeason house = Emergence.enriched(Emergence.sun(20, 24, 18, 0.70, 0.85), 800);
        List<Emergence.Row> rows = new ArrayList<>();
        rows.addAll(grown("tomato", 42, 0.4, house, closed, 11.75, 1.25, 6.5, 2.75, 1.0));
        rows.addAll(grown("cucumber", 24, 0.5, house, closed, 12.75, 1.25, 6.5, 2.75, 1.0));
        rows.addAll(grown("sweet-pepper", 49, 0.35, house, closed, 12.75, 1.0, 5.75, 3.5, 1.125));
        rows.addAll(
                grown(
                        "strawberry",
                        14,
                        0.11,
                        house,
                        "closed crops, from memory, low confidence, +-25 %",
                        9.5,
                        0.875,
                        4.0,
                        2.4,
                        0.875));
        RoomSeason glass = Emergence.sun(17, 22, 16, 0.65, 0.80);
        CropTraits lettuce = CropFiles.read("lettuce");
        rows.addAll(
                rows(
                        "lettuce",
                        of(lettuce, glass, Growing.raisedInNursery(lettuce, 14), 0.05, 35),
                        "Batavia lettuce, Front. Plant Sci. (2024) 1411572, +-25 %",
                        13.4,
                        1.72,
                        10.2,
                        3.13,
                        0.86));
        CropTraits basil = CropFiles.read("basil");
        rows.addAll(
                rows(
                        "basil",
                        of(
                                basil,
                                Emergence.lamp(215, 16, 24, 24, 0.60, 0.60),
                                Growing.raisedInNursery(basil, 21),
                                0.04,
                                35),
                        "contents by dry matter, derived, low confidence, +-25 %",
                        10,
                        0.9,
                        3.75,
                        1.6,
                        0.8));
        return rows;
    }

    private static List<Emergence.Row> grown(
            String name,
            int age,
            double groundM2,
            RoomSeason house,
            String source,
            double... published) {
        CropTraits traits = CropFiles.read(name);
        Plant full = house.run(traits, Growing.raisedInNursery(traits, age), groundM2, 60).plant();
        return rows(name, of(traits, house, full, groundM2, 30), source, published);
    }

    private static List<Emergence.Row> rows(
            String name, Outcome outcome, String source, double... published) {
        List<Emergence.Row> rows = new ArrayList<>();
        for (int i = 0; i < IONS.length; i++) {
            rows.add(
                    new Emergence.Row(
                            "uptake-" + name + "-" + IONS[i].symbol(),
                            name + ": uptake of " + IONS[i].title() + " per water",
                            "mmol/L",
                            0.75 * published[i],
                            1.25 * published[i],
                            source,
                            outcome.perLitreMmol()[IONS[i].ordinal()]));
        }
        return rows;
    }
}
