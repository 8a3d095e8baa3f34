package tideless.crop;

import java.util.List;
import java.util.Locale;
import tideless.physics.HumidAir;

/**
 * Published figures that had not been held against the crops before: read in abstracts, three
 * trials of which no more than the sign of an answer is remembered, and litres that handbooks tell.
 * What a source leaves out is assumed; conditions and bands were written down before the first run,
 * and no number of a crop was chosen by any of them.
 */
final class LaterTrials {
    private static final double BAND = 0.4;
    private static final String HERBS =
            "Walters and Lopez (2021), PLoS ONE 16:e0248662, from memory: rises, size not";
    private static final String MINTS =
            "Walters and Lopez (2023), PLoS ONE 18:e0294905, from memory: rises, size not";

    private LaterTrials() {}

    static List<Emergence.Row> rows() {
        // A rain cover in Hawaii: 20 mol/d, 26/19 degC, 2.5/m2 assumed.
        RoomSeason hawaii = Emergence.sun(20, 26, 19, 0.65, 0.85);
        // A house in the north of Mexico: 22 mol/d, 27/15 degC, 2.5/m2, 150 days assumed.
        RoomSeason mexico = Emergence.sun(22, 27, 15, 0.55, 0.80);
        int firstRipeDays = firstRipeDays(hawaii);
        return List.of(
                picked(
                        "held-level-tomato",
                        "tomato over a held level, 72 d of picking, 20 mol/d, 2.5/m2: fruit of a plant",
                        "Kratky et al. (2005), abstract, 2.68, +-40 %; light, density and warmth assumed",
                        2.68,
                        ripeKg(hawaii, firstRipeDays + 72)),
                picked(
                        "watered-from-below-tomato",
                        "tomato in pots watered from below, 2.0 mS/cm, 150 d, 22 mol/d, 2.5/m2: fruit of a plant",
                        "Mendez-Cifuentes (2023), abstract, 5.1, +-40 %; light, density, warmth and days assumed",
                        5.105,
                        ripeKg(mexico, 150)),
                coefficient(),
                byLeaf(),
                bottle(),
                edible("tomato", 28, 1 / 6.4, Emergence.lamp(600, 12, 26, 22, 0.68, 0.68), 10.43),
                edible(
                        "sweet-pepper",
                        28,
                        1 / 6.4,
                        Emergence.lamp(600, 12, 26, 22, 0.68, 0.68),
                        10.43),
                edible("strawberry", 1, 0.1, Emergence.lamp(400, 12, 20, 16, 0.68, 0.68), 7.79),
                aDay("lettuce", "in its first week", 22, 4, 0.02, 0.05),
                aDay("lettuce", "when it is cut", 22, 30, 0.1, 0.2),
                aDay("basil", "full grown", 20, 28, 0.05, 0.2),
                aDay("pak-choi", "full grown", 22, 28, 0.05, 0.2),
                aDay("spinach", "full grown", 40, 28, 0.03, 0.1),
                brighter("parsley", 35, HERBS),
                warmer("parsley", 35, HERBS),
                brighter("mint", 35, MINTS),
                warmer("mint", 35, MINTS),
                new Emergence.Row(
                        "microgreens-mizuna",
                        "mizuna microgreens, 315 over 105 umol, 16 h, 12 d from sowing: shoot dry",
                        "",
                        1.1,
                        3,
                        "Gerovac et al. (2016), HortScience 51:497, from memory: rises, size not",
                        microgreenG(315) / microgreenG(105)));
    }

    private static Emergence.Row picked(
            String id, String what, String source, double publishedKg, double foundKg) {
        return new Emergence.Row(
                id,
                what,
                "kg",
                (1 - BAND) * publishedKg,
                (1 + BAND) * publishedKg,
                source,
                foundKg);
    }

    private static int firstRipeDays(RoomSeason room) {
        CropTraits tomato = CropFiles.read("tomato");
        Plant plant = Growing.raisedInNursery(tomato, tomato.nursery().days());
        int days = 0;
        while (plant.thermalTimeCd() < tomato.stages().firstHarvestCd()) {
            plant = room.dayLater(tomato, plant, 0.4);
            days++;
        }
        return days;
    }

    // Fruit grows for a fixed time and as much each day, so that half of what came in the last such
    // time still hangs unripe.
    private static double ripeKg(RoomSeason room, int days) {
        CropTraits tomato = CropFiles.read("tomato");
        CropTraits.Stages stages = tomato.stages();
        double hangs =
                RoomLimits.daysTo(
                        tomato, stages.floweringCd(), stages.firstHarvestCd(), room.meanTempC());
        return 0.5
                * (fruitKg(tomato, room, days)
                        + fruitKg(tomato, room, days - (int) Math.round(hangs)));
    }

    private static double fruitKg(CropTraits tomato, RoomSeason room, int days) {
        Plant young = Growing.raisedInNursery(tomato, tomato.nursery().days());
        return Growing.fruitFreshG(tomato, room.run(tomato, young, 0.4, days).plant()) / 1000;
    }

    // Sunken house in winter, bearing, leaf area index 2 to 2.5 and basal coefficients of 1.06,
    // 1.11 and 0.99: 10 mol/d and 24/12 degC assumed, the reference that of a house.
    private static Emergence.Row coefficient() {
        RoomSeason house = Emergence.sun(10, 24, 12, 0.70, 0.90);
        CropTraits tomato = CropFiles.read("tomato");
        return new Emergence.Row(
                "basal-tomato",
                "bearing tomato, leaf area index 2.25, over a house's reference evapotranspiration",
                "",
                0.75 * 0.99,
                1.25 * 1.11,
                "Water (2022) 14:2410, abstract, 0.99 to 1.11, +-25 %; light and air assumed",
                standKg(house, tomato, 2.25) / house.referenceKgPerM2(tomato));
    }

    private static double standKg(RoomSeason room, CropTraits crop, double lai) {
        return 3600
                * (room.litH() * room.standKgPerM2S(crop, lai, true)
                        + (24 - room.litH()) * room.standKgPerM2S(crop, lai, false));
    }

    // Coefficient 0.447 x leaf area index on the reference of Priestley and Taylor: 16 mol/d, 27/19
    // degC, index 2 assumed; long wave taken as nil, as in the reference of houses.
    private static Emergence.Row byLeaf() {
        RoomSeason house = Emergence.sun(16, 27, 19, 0.65, 0.80);
        double jPerM2 = 0.77 * house.lightMolPerM2() * 1e6 / house.umolPerJ() * 2;
        double slope = HumidAir.saturationSlopePaPerK(house.dayTempC());
        double psychrometric =
                HumidAir.psychrometricPaPerK(RoomSeason.AIR_PRESSURE_PA, house.dayTempC());
        double referenceKg =
                1.26
                        * slope
                        / (slope + psychrometric)
                        * jPerM2
                        / HumidAir.latentHeatJPerKg(house.dayTempC());
        return new Emergence.Row(
                "by-leaf-cucumber",
                "cucumber, leaf area index 2, over the reference of Priestley and Taylor",
                "",
                0.75 * 0.894,
                1.25 * 0.894,
                "Nikolaou et al. (no year seen), abstract, 0.447 x leaf area index, +-25 %; light and air assumed",
                standKg(house, CropFiles.read("cucumber"), 2) / referenceKg);
    }

    // Sown in the bottle's net pot: 15 mol/d, 24/18 degC, room for the whole head assumed; 200 g is
    // the middle of such heads (second hand).
    private static Emergence.Row bottle() {
        CropTraits lettuce = CropFiles.read("lettuce");
        RoomSeason window = Emergence.sun(15, 24, 18, 0.60, 0.75);
        Plant young = Growing.raisedInNursery(lettuce, 10);
        int days = 0;
        while (Growing.freshG(lettuce, young) < 200) {
            young = window.dayLater(lettuce, young, 0.07);
            days++;
        }
        return new Emergence.Row(
                "bottle-lettuce",
                "lettuce in a bottle of 4 L, 15 mol/d: days from seed to 200 g",
                "d",
                0.9 * 42,
                1.1 * 49,
                "Kratky (2009), Acta Hort. 843:65, abstract, 6 to 7 weeks, +-10 %; light and weight assumed",
                10 + days);
    }

    private static Emergence.Row edible(
            String name, int age, double groundM2, RoomSeason room, double gPerM2Day) {
        CropTraits crop = CropFiles.read(name);
        Plant grown =
                Emergence.enriched(room, 1000)
                        .run(crop, Growing.raisedInNursery(crop, age), groundM2, 85)
                        .plant();
        return new Emergence.Row(
                "edible-" + name,
                name + " in the same chamber as its water, 85 d: fruit dry",
                "g/m2/d",
                0.65 * gPerM2Day,
                1.35 * gPerM2Day,
                "NASA/TP-2015-218570, from memory, +-35 %",
                grown.fruitDryG() / groundM2 / 85);
    }

    // Under 200 umol/m2/s for 16 h, 22/20 degC, 60/70 %, from the usual nursery; all assumed.
    private static Emergence.Row aDay(
            String name, String when, int perM2, int days, double lowL, double highL) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return new Emergence.Row(
                "day-%d-%s".formatted(days, name),
                text("%s under lamps, %d/m2, %s", name, perM2, when),
                "L/plant/d",
                lowL,
                highL,
                "handbooks, from memory, low confidence; lamps and density assumed",
                Emergence.lamp(200, 16, 22, 20, 0.60, 0.70)
                        .run(crop, young, 1.0 / perM2, days)
                        .lastDayThirstKg());
    }

    private static Emergence.Row brighter(String name, int days, String source) {
        return sign(
                "sun-" + name,
                text("%s, 15 over 6 mol/d, 40/m2, %d d: shoot fresh", name, days),
                1.3,
                5,
                source,
                houseG(name, 15, 22, days) / houseG(name, 6, 22, days));
    }

    private static Emergence.Row warmer(String name, int days, String source) {
        return sign(
                "warm-" + name,
                text("%s, 22 over 12 degC, 12 mol/d, 40/m2, %d d: shoot fresh", name, days),
                1.3,
                15,
                source,
                houseG(name, 12, 22, days) / houseG(name, 12, 12, days));
    }

    private static Emergence.Row sign(
            String id, String what, double low, double high, String source, double found) {
        return new Emergence.Row(id, what, "", low, high, source, found);
    }

    // From its usual nursery, day and night alike.
    private static double houseG(String name, double mol, double tempC, int days) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return Growing.freshG(
                crop,
                Emergence.sun(mol, tempC, tempC, 0.65, 0.75)
                        .run(crop, young, 1 / 40.0, days)
                        .plant());
    }

    // 3000/m2 assumed, as for the other microgreens.
    private static double microgreenG(double ppfd) {
        CropTraits mizuna = CropFiles.read("mizuna");
        Plant plant =
                Emergence.lamp(ppfd, 16, 21, 17, 0.60, 0.70)
                        .run(mizuna, Growing.sown(mizuna), 1 / 3000.0, 12)
                        .plant();
        return plant.dryG() - plant.rootDryG();
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
