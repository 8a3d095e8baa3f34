package tideless.crop;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Weights, ratios and dates for the crops that few trials of {@link Trials} or none are about, by
 * light and density. Where an author stands in a row, an abstract was read or is remembered as the
 * row says; what is from memory alone is what growers and extension tell, and has a wide band: the
 * least and the most that would not surprise. Conditions and bands were written down before the
 * first run.
 */
final class MoreTrials {
    private static final String PRACTICE = "growers and extension, from memory, low confidence";
    private static final String NASA = "NASA/TP-2015-218570, from memory, low confidence, +-35 %";

    private MoreTrials() {}

    static List<Emergence.Row> rows() {
        List<Emergence.Row> rows = new ArrayList<>();
        leaves(rows);
        ratios(rows);
        chambers(rows);
        fruits(rows);
        dates(rows);
        return rows;
    }

    private static RoomSeason lamps(double ppfd) {
        return Emergence.lamp(ppfd, 16, 22, 20, 0.60, 0.70);
    }

    private static RoomSeason house(double mol, double dayC, double nightC) {
        return Emergence.sun(mol, dayC, nightC, 0.65, 0.80);
    }

    /** Fresh shoot of plants from the crop's usual nursery. */
    private static void leaves(List<Emergence.Row> rows) {
        leaf(rows, "kale", "house", house(12, 18, 14), 25, 42, 60, 220);
        leaf(rows, "kale", "lamps", lamps(250), 25, 28, 50, 160);
        leaf(rows, "chard", "house", house(14, 22, 16), 20, 35, 100, 300);
        leaf(rows, "chard", "lamps", lamps(200), 30, 28, 40, 160);
        leaf(rows, "rocket", "house", house(12, 20, 14), 800, 20, 1, 3);
        leaf(rows, "rocket", "lamps", lamps(200), 100, 21, 8, 30);
        leaf(rows, "coriander", "house", house(12, 20, 15), 60, 28, 8, 40);
        leaf(rows, "coriander", "lamps", lamps(200), 100, 28, 8, 35);
        leaf(rows, "parsley", "house", house(12, 20, 15), 40, 42, 15, 80);
        leaf(rows, "parsley", "lamps", lamps(200), 60, 35, 12, 50);
        leaf(rows, "mint", "house", house(15, 24, 18), 25, 42, 40, 180);
        leaf(rows, "mint", "lamps", lamps(200), 25, 35, 30, 120);
        leaf(rows, "celery", "house", house(17, 20, 15), 10, 75, 400, 1200);
        leaf(rows, "celery", "lamps", lamps(200), 25, 45, 60, 250);
        leaf(rows, "spinach", "house", house(12, 18, 12), 100, 35, 8, 40);
        leaf(rows, "spinach", "lamps", lamps(200), 100, 28, 8, 35);
        leaf(rows, "mizuna", "house", house(12, 18, 14), 40, 28, 25, 110);
        leaf(rows, "mizuna", "lamps", lamps(200), 40, 21, 20, 80);
        leaf(rows, "pak-choi", "lamps", lamps(200), 40, 28, 50, 150);
        leaf(rows, "basil", "house", house(15, 24, 20), 25, 28, 20, 90);
        leaf(rows, "basil", "lamps", lamps(200), 40, 28, 15, 60);
    }

    private static void leaf(
            List<Emergence.Row> rows,
            String name,
            String place,
            RoomSeason room,
            double perM2,
            int days,
            double lowG,
            double highG) {
        CropTraits crop = CropFiles.read(name);
        rows.add(
                new Emergence.Row(
                        "leaf-" + place + "-" + name,
                        text(
                                "%s in a %s, %.1f mol/d, %.0f/m2, %d d after a nursery of %.0f: shoot fresh",
                                name,
                                place.equals("lamps") ? "lamp room" : place,
                                room.lightMolPerM2(),
                                perM2,
                                days,
                                crop.nursery().days()),
                        "g",
                        lowG,
                        highG,
                        PRACTICE,
                        Growing.freshG(crop, grown(crop, room, perM2, days))));
    }

    private static Plant grown(CropTraits crop, RoomSeason room, double perM2, int days) {
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return room.run(crop, young, 1 / perM2, days).plant();
    }

    /** Shoot fresh in more light over less: what rises, and about how much. */
    private static void ratios(List<Emergence.Row> rows) {
        String lefsrud =
                "Lefsrud et al. (2006), Physiol. Plant. 127:624, from memory: rises, size not";
        ratio(rows, "kale", 500, 125, 25, 21, 1.5, 6, lefsrud);
        ratio(rows, "rocket", 300, 150, 100, 21, 1.2, 2.5, PRACTICE);
        ratio(
                rows,
                "coriander",
                300,
                100,
                100,
                28,
                1.5,
                3.5,
                "Nguyen et al. (2019), Agronomy 9:224, from memory: rises, size not");
        ratio(rows, "parsley", 280, 140, 60, 35, 1.4, 3, PRACTICE);
        ratio(rows, "mint", 280, 140, 25, 35, 1.4, 3, PRACTICE);
    }

    private static void ratio(
            List<Emergence.Row> rows,
            String name,
            double bright,
            double dull,
            double perM2,
            int days,
            double low,
            double high,
            String source) {
        CropTraits crop = CropFiles.read(name);
        rows.add(
                new Emergence.Row(
                        "light-" + name,
                        text(
                                "%s, %.0f over %.0f umol, 16 h, %.0f/m2, %d d: shoot fresh",
                                name, bright, dull, perM2, days),
                        "",
                        low,
                        high,
                        source,
                        Growing.freshG(crop, grown(crop, lamps(bright), perM2, days))
                                / Growing.freshG(crop, grown(crop, lamps(dull), perM2, days))));
    }

    /** Life-cycle means; light, density and start assumed as for lettuce and spinach. */
    private static void chambers(List<Emergence.Row> rows) {
        RoomSeason chamber = Emergence.enriched(Emergence.lamp(300, 16, 23, 23, 0.68, 0.68), 1000);
        chamber(rows, "chard", chamber, 10, 25, 45, 7.0, 1.77);
        chamber(rows, "celery", chamber, 28, 16, 75, 10.3, 1.24);
    }

    private static void chamber(
            List<Emergence.Row> rows,
            String name,
            RoomSeason room,
            int age,
            double perM2,
            int days,
            double dryG,
            double litres) {
        CropTraits crop = CropFiles.read(name);
        RoomSeason.Outcome outcome =
                room.run(crop, Growing.raisedInNursery(crop, age), 1 / perM2, days);
        String what = text("%s, 300 umol, 16 h, 1000 ppm, %d d", name, days);
        double shootG = outcome.plant().dryG() - outcome.plant().rootDryG();
        rows.add(
                new Emergence.Row(
                        "edible-" + name,
                        what + ": shoot dry",
                        "g/m2/d",
                        0.65 * dryG,
                        1.35 * dryG,
                        NASA,
                        shootG * perM2 / days));
        rows.add(
                new Emergence.Row(
                        "chamber-" + name,
                        what + ": water",
                        "L/m2/d",
                        0.65 * litres,
                        1.35 * litres,
                        NASA,
                        outcome.thirstKg() * perM2 / days));
    }

    private static void fruits(List<Emergence.Row> rows) {
        RoomSeason house = Emergence.sun(20, 24, 18, 0.70, 0.85);
        rows.add(weekly("cucumber", house, 2, 60, 800, 1500, "handbooks, from memory"));
        rows.add(weekly("tomato", house, 2.5, 80, 450, 800, "handbooks, 500-700, from memory"));
        rows.add(weekly("sweet-pepper", house, 3, 90, 150, 300, "handbooks, from memory"));
        rows.add(
                weekly(
                        "strawberry",
                        Emergence.sun(15, 20, 12, 0.70, 0.85),
                        9,
                        75,
                        20,
                        45,
                        "handbooks, from memory"));
        rows.add(
                weekly(
                        "chilli",
                        house,
                        3,
                        110,
                        80,
                        200,
                        "Wubs et al. (2009), HortScience 44:1296, abstract: small-fruited pepper, 4-5 fruits"
                                + " of 20-40 g; house assumed"));
        RoomSeason shelf = Emergence.lamp(300, 16, 24, 20, 0.60, 0.70);
        rows.add(
                new Emergence.Row(
                        "fruit-dwarf-tomato",
                        "dwarf tomato, 300 umol, 16 h, 11/m2, 110 d from sowing: fruit of a plant",
                        "g",
                        100,
                        600,
                        PRACTICE,
                        fruitG("dwarf-tomato", shelf, 11, 82)));
        // 16 h of lamps.
        rows.add(
                new Emergence.Row(
                        "light-dwarf-tomato",
                        "dwarf tomato, 18.4 over 10.4 mol/d, 11/m2, 110 d from sowing: fruit",
                        "",
                        1.1,
                        2.2,
                        "Agronomy (2022) 12:1704, abstract: more fruit; size from memory",
                        fruitG("dwarf-tomato", byMol(18.4), 11, 82)
                                / fruitG("dwarf-tomato", byMol(10.4), 11, 82)));
        // Nederhoff (1994): 364 and 620 ppm; 80 days of a house assumed.
        rows.add(
                new Emergence.Row(
                        "nederhoff-cucumber",
                        "cucumber, 620 over 364 ppm, 80 d of a house: fruit",
                        "",
                        1.17,
                        1.51,
                        "Nederhoff (1994), second hand, 1.34, +-half of the gain",
                        fruitG("cucumber", Emergence.enriched(house, 620), 2, 80)
                                / fruitG("cucumber", Emergence.enriched(house, 364), 2, 80)));
        CropTraits cucumber = CropFiles.read("cucumber");
        RoomSeason unheated = Emergence.sun(15, 24, 18, 0.70, 0.825);
        rows.add(
                new Emergence.Row(
                        "medrano-night",
                        "cucumber, leaf area index 3, 12 h of night, 18 degC, 82 %",
                        "L/m2",
                        0.08,
                        0.26,
                        "Medrano et al. (2005), Scientia Hort. 105:163, abstract, 0.12-0.20; air assumed",
                        12 * 3600 * unheated.standKgPerM2S(cucumber, 3, false)));
    }

    private static RoomSeason byMol(double mol) {
        return Emergence.lamp(mol / (16 * 0.0036), 16, 24, 20, 0.60, 0.70);
    }

    private static double fruitG(String name, RoomSeason room, double perM2, int days) {
        CropTraits crop = CropFiles.read(name);
        return Growing.fruitFreshG(crop, grown(crop, room, perM2, days));
    }

    private static Emergence.Row weekly(
            String name,
            RoomSeason room,
            double perM2,
            int days,
            double low,
            double high,
            String source) {
        return new Emergence.Row(
                "weekly-" + name,
                text(
                        "%s in full picking, house, %.0f mol/d, %.1f/m2: fruit of a plant in a week",
                        name, room.lightMolPerM2(), perM2),
                "g",
                low,
                high,
                source,
                fruitG(name, room, perM2, days + 7) - fruitG(name, room, perM2, days));
    }

    /** Days from flower to ripe fruit, and to the first fruit, at a steady warmth. */
    private static void dates(List<Emergence.Row> rows) {
        rows.add(
                ripening(
                        "tomato",
                        20,
                        43,
                        60,
                        "De Koning (1994), in a thesis of 2011, 51.6, +-15 %"));
        rows.add(
                ripening(
                        "sweet-pepper",
                        21.5,
                        50,
                        84,
                        "Wubs et al. (2009), HortScience 44:1296, abstract, 63-70, +-20 %"));
        rows.add(
                ripening(
                        "chilli",
                        21.5,
                        45,
                        67,
                        "Wubs et al. (2009), HortScience 44:1296, abstract: small fruit, 56, +-20 %"));
        rows.add(ripening("strawberry", 19, 22, 42, "handbooks, 28-35, from memory, +-20 %"));
        rows.add(
                new Emergence.Row(
                        "flower-strawberry",
                        "ever-bearing strawberry, bare root, 23 degC: days to the first flower",
                        "d",
                        41,
                        61,
                        "Park et al. (2022), IHC abstract, 51, +-20 %",
                        daysAt("strawberry", 23, stages("strawberry").floweringCd())));
        rows.add(
                new Emergence.Row(
                        "first-dwarf-tomato",
                        "dwarf tomato at 23 degC: days from sowing to the first ripe fruit",
                        "d",
                        65,
                        95,
                        PRACTICE,
                        daysAt("dwarf-tomato", 23, stages("dwarf-tomato").firstHarvestCd())));
        rows.add(
                new Emergence.Row(
                        "first-cucumber",
                        "cucumber at 22 degC: days from planting to the first fruit",
                        "d",
                        24,
                        40,
                        "handbooks, 28-35, from memory",
                        daysAt("cucumber", 22, stages("cucumber").firstHarvestCd())
                                - CropFiles.read("cucumber").nursery().days()));
    }

    private static CropTraits.Stages stages(String name) {
        return CropFiles.read(name).stages();
    }

    private static double daysAt(String name, double tempC, double degreeDays) {
        return RoomLimits.daysTo(CropFiles.read(name), 0, degreeDays, tempC);
    }

    private static Emergence.Row ripening(
            String name, double tempC, double low, double high, String source) {
        CropTraits.Stages stages = stages(name);
        return new Emergence.Row(
                "ripening-" + name,
                text("%s at %.1f degC: days from flower to ripe", name, tempC),
                "d",
                low,
                high,
                source,
                RoomLimits.daysTo(
                        CropFiles.read(name),
                        stages.floweringCd(),
                        stages.firstHarvestCd(),
                        tempC));
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
