package tideless.crop;

import java.util.ArrayList;
import java.util.List;

/**
 * Published trials of growth by light and density, as rows for {@link Emergence}. What a source
 * leaves out (ages, densities, temperatures, humidity) was assumed here before any light use was
 * changed. One row says it set a number; all others judge.
 */
final class Trials {
    private static final double BAND = 0.3;

    private Trials() {}

    static List<Emergence.Row> rows() {
        List<Emergence.Row> rows = new ArrayList<>();
        lettuce(rows);
        basil(rows);
        pakChoi(rows);
        chambers(rows);
        fruitCrops(rows);
        return rows;
    }

    private static void lettuce(List<Emergence.Row> rows) {
        CropTraits lettuce = CropFiles.read("lettuce");
        Plant young = Growing.raisedInNursery(lettuce, 14);
        RoomSeason lamps = Emergence.lamp(225, 16, 24, 20, 0.70, 0.75);
        rows.add(
                new Emergence.Row(
                        "jin-lettuce",
                        "lettuce, 225 umol, 16 h, 28 d after 14, 25/m2: shoot dry per light",
                        "g/mol",
                        0.35,
                        0.85,
                        "Jin et al. (2023), abstract, mean 0.55 of 53 studies; sets light use",
                        shootDryG(lamps.run(lettuce, young, 0.04, 28).plant())
                                / (28 * lamps.lightMolPerM2() * 0.04)));

        // Palmer and van Iersel (2020): DLI 16, 20 degC, 819 ppm, 41 d from sowing; 20/m2 and 14 d
        // of nursery assumed.
        double slow = palmer(lettuce, 222, 20, 41);
        double fast = palmer(lettuce, 444, 10, 41);
        rows.add(
                new Emergence.Row(
                        "palmer-lettuce",
                        "lettuce, 16 mol/d in 20 h over 10 h, 41 d from sowing: shoot dry",
                        "",
                        1.08,
                        1.25,
                        "Palmer and van Iersel (2020), Agronomy 10:1659, 1.16",
                        slow / fast));

        // Gavhane et al. (2023): 200 umol white, 16 h against 12 h; 14 + 35 d, 23 degC, 65 %, 20/m2
        // assumed.
        RoomSeason.Outcome longDay =
                Emergence.lamp(200, 16, 23, 23, 0.65, 0.65).run(lettuce, young, 0.05, 35);
        RoomSeason.Outcome shortDay =
                Emergence.lamp(200, 12, 23, 23, 0.65, 0.65).run(lettuce, young, 0.05, 35);
        double head = Growing.freshG(lettuce, longDay.plant());
        String gavhane = "Gavhane et al. (2023), Sci. Rep. 13, abstract";
        rows.add(
                new Emergence.Row(
                        "gavhane-ratio",
                        "iceberg, 200 umol, 16 h over 12 h: head",
                        "",
                        1.25,
                        1.6,
                        gavhane + ", 1.43",
                        head / Growing.freshG(lettuce, shortDay.plant())));
        rows.add(
                new Emergence.Row(
                        "gavhane-water",
                        "iceberg, 200 umol, 16 h: fresh per water",
                        "g/L",
                        45,
                        90,
                        gavhane + ", 71",
                        head / longDay.thirstKg()));

        // Pond crop: 17 mol/d, 24/19 degC; 97 plants/m2 to day 21, then 38 to day 35. Its seedlings
        // stand 11 days at 250 umol day and night, 25 degC, 1500/m2: from memory.
        RoomSeason pond = Emergence.sun(17, 24, 19, 0.65, 0.80);
        RoomSeason plugs = Emergence.lamp(250, 24, 25, 25, 0.70, 0.70);
        Plant plug = plugs.run(lettuce, Growing.sown(lettuce), 1 / 1500.0, 11).plant();
        Plant spaced = pond.run(lettuce, plug, 1 / 97.0, 10).plant();
        rows.add(
                new Emergence.Row(
                        "pond-lettuce",
                        "pond lettuce, 17 mol/d, 97/m2 day 11-21, 38/m2 day 21-35: head",
                        "g",
                        (1 - BAND) * 146,
                        (1 + BAND) * 146,
                        "Cornell handbook, 142 read, 150 from memory, +-30 %",
                        Growing.freshG(lettuce, pond.run(lettuce, spaced, 1 / 38.0, 14).plant())));
    }

    private static double palmer(CropTraits traits, double ppfd, double litH, int daysFromSowing) {
        RoomSeason room = new RoomSeason(ppfd, litH, 4.7, 0.05, 20, 20, 0.7, 0.7, 0.15, 819, false);
        Plant young = Growing.raisedInNursery(traits, 14);
        return shootDryG(room.run(traits, young, 0.05, daysFromSowing - 14).plant());
    }

    private static void basil(List<Emergence.Row> rows) {
        CropTraits basil = CropFiles.read("basil");
        Plant young = Growing.raisedInNursery(basil, 14);
        // Walters and Currey (2018): 23 degC, 12-h days, 14 + 28 d and 25/m2 assumed.
        Plant dull = Emergence.sun(7, 25, 21, 0.60, 0.75).run(basil, young, 0.04, 28).plant();
        Plant bright = Emergence.sun(15, 25, 21, 0.60, 0.75).run(basil, young, 0.04, 28).plant();
        String walters = "Walters and Currey (2018), HortScience 53:1319, abstract";
        rows.add(
                new Emergence.Row(
                        "walters-dry",
                        "basil, 15 mol/d over 7: shoot dry",
                        "",
                        2.0,
                        3.5,
                        walters + ", 2.78",
                        shootDryG(bright) / shootDryG(dull)));
        rows.add(
                new Emergence.Row(
                        "walters-fresh",
                        "the same: shoot fresh",
                        "",
                        1.9,
                        3.1,
                        walters + ", 2.44",
                        Growing.freshG(basil, bright) / Growing.freshG(basil, dull)));
        // Dou et al. (2018): 16 h of lamps; 21 + 21 d, 24 degC, 25/m2 assumed.
        Plant three = Growing.raisedInNursery(basil, 21);
        double low = dou(basil, three, 9.3);
        rows.add(
                new Emergence.Row(
                        "dou-basil",
                        "basil, 16.5 mol/d over 9.3: shoot fresh",
                        "",
                        1.4,
                        2.2,
                        "Dou et al. (2018), HortScience 53:496, 1.79, from memory",
                        dou(basil, three, 16.5) / low));
    }

    private static double dou(CropTraits basil, Plant young, double mol) {
        RoomSeason room = Emergence.lamp(mol / (16 * 0.0036), 16, 24, 24, 0.65, 0.65);
        return Growing.freshG(basil, room.run(basil, young, 0.04, 21).plant());
    }

    private static void pakChoi(List<Emergence.Row> rows) {
        CropTraits pak = CropFiles.read("pak-choi");
        // Gobilik et al. (2021): 63/m2, day 37 from sowing; 18 mol/d, 28 degC, 75 % assumed.
        Plant young = Growing.raisedInNursery(pak, 14);
        RoomSeason sabah = Emergence.sun(18, 30, 26, 0.70, 0.80);
        rows.add(
                new Emergence.Row(
                        "gobilik-pak-choi",
                        "pak choi on a raft, 63/m2, day 37 from sowing, 18 mol/d",
                        "g",
                        55,
                        110,
                        "Gobilik et al. (2021), Trans. Sci. Technol. 8(1), 82.1; light assumed",
                        Growing.freshG(pak, sabah.run(pak, young, 1 / 63.0, 23).plant())));
        CropTraits mizuna = CropFiles.read("mizuna");
        rows.add(
                new Emergence.Row(
                        "palmer-mizuna",
                        "mizuna, 16 mol/d in 20 h over 10 h, 30 d: shoot dry",
                        "",
                        1.08,
                        1.30,
                        "Palmer and van Iersel (2020), Agronomy 10:1659, 1.187",
                        palmer(mizuna, 222, 20, 30) / palmer(mizuna, 444, 10, 30)));
        double mizunaDry = palmer(mizuna, 222, 16, 28);
        double lettuceDry = palmer(CropFiles.read("lettuce"), 222, 16, 28);
        rows.add(
                new Emergence.Row(
                        "mizuna-over-lettuce",
                        "mizuna over lettuce, 222 umol, 16 h, 28 d: shoot dry",
                        "",
                        1.0,
                        2.0,
                        "Jayalath and van Iersel (2021), Plants 10:704: larger at 125 umol and more",
                        mizunaDry / lettuceDry));
    }

    /** Edible dry mass of chambers at enriched air, from memory. */
    private static void chambers(List<Emergence.Row> rows) {
        rows.add(edible("lettuce", 4, 28, 1 / 19.2, 300, 16, 23, 6.57));
        rows.add(edible("spinach", 10, 30, 1 / 60.0, 300, 16, 23, 6.57));
    }

    private static Emergence.Row edible(
            String name,
            int age,
            int days,
            double groundM2,
            double ppfd,
            double litH,
            double tempC,
            double gPerM2Day) {
        CropTraits traits = CropFiles.read(name);
        RoomSeason room =
                new RoomSeason(ppfd, litH, 4.7, 0.05, tempC, tempC, 0.68, 0.68, 0.15, 1000, false);
        Plant young = Growing.raisedInNursery(traits, age);
        return new Emergence.Row(
                "edible-" + name,
                name + ", %.0f umol, %.0f h, 1000 ppm, %d d: shoot dry".formatted(ppfd, litH, days),
                "g/m2/d",
                0.65 * gPerM2Day,
                1.35 * gPerM2Day,
                "NASA/TP-2015-218570, from memory, +-35 %",
                shootDryG(room.run(traits, young, groundM2, days).plant()) / groundM2 / days);
    }

    /** Dry matter per litre of grown fruit crops in a house: yields from memory, derived. */
    private static void fruitCrops(List<Emergence.Row> rows) {
        rows.add(dryPerLitre("tomato", 42, 0.4, 4.5, 6.0));
        rows.add(dryPerLitre("cucumber", 24, 0.5, 4.0, 5.2));
        rows.add(dryPerLitre("sweet-pepper", 49, 0.35, 4.7, 6.2));
        rows.add(dryPerLitre("strawberry", 14, 0.11, 3.0, 4.3));
    }

    private static Emergence.Row dryPerLitre(
            String name, int age, double groundM2, double low, double high) {
        CropTraits traits = CropFiles.read(name);
        // The yields are those of enriched houses: 800 ppm, from memory.
        RoomSeason house = Emergence.enriched(Emergence.sun(20, 24, 18, 0.70, 0.85), 800);
        Plant young = Growing.raisedInNursery(traits, age);
        RoomSeason.Outcome grown = house.run(traits, young, groundM2, 60);
        RoomSeason.Outcome later = house.run(traits, grown.plant(), groundM2, 30);
        return new Emergence.Row(
                "dry-per-litre-" + name,
                name + " full grown, house, 20 mol/d, 800 ppm: dry matter per water",
                "g/L",
                low,
                high,
                "yield and water of a year, from memory, derived",
                (later.plant().dryG() - grown.plant().dryG()) / later.thirstKg());
    }

    private static double shootDryG(Plant plant) {
        return plant.dryG() - plant.rootDryG();
    }
}
