package tideless.crop;

import java.util.List;

/**
 * Published trials of which no more than the sign of an answer is known, remembered or read in an
 * abstract, and one season's litres. Bands are what would not surprise of such an answer;
 * conditions, where a source is not named for them, are assumed. Both were written down before the
 * first run, and no number of a crop was chosen by any of them.
 */
final class RememberedTrials {
    private static final String MICROGREENS =
            "Jones-Baumgardt et al. (2019), HortScience 54:1955, from memory: rises ever less, size not";
    private static final String CURREY =
            "Currey et al. (2019), Agronomy 9:389, from memory: rises, size not";
    private static final String LEFSRUD =
            "Lefsrud et al. (2006), Physiol. Plant. 127:624, from memory: rises, size not";

    private RememberedTrials() {}

    static List<Emergence.Row> rows() {
        return List.of(
                microgreens("rocket"),
                evenLess("rocket"),
                microgreens("kale"),
                evenLess("kale"),
                bright("coriander"),
                bright("parsley"),
                new Emergence.Row(
                        "irradiance-spinach",
                        "spinach, 500 over 125 umol, 16 h, 100/m2, 21 d: shoot fresh",
                        "",
                        1.5,
                        6,
                        LEFSRUD,
                        lampG("spinach", 500) / lampG("spinach", 125)),
                new Emergence.Row(
                        "choy-sum-pak-choi",
                        "choy sum (as pak choi), 400 over 300 umol, 16 h, 40/m2, 21 d: shoot fresh",
                        "",
                        1.01,
                        1.4,
                        "Huang et al. (2021), abstract: rises to 400 umol, size not",
                        lampG("pak-choi", 400) / lampG("pak-choi", 300)),
                strawberrySeason(),
                longDay(),
                lampsBesideSun());
    }

    // Kale in nutrient solution under 500 umol/m2/s, 21 degC; 25/m2 and 21 days assumed.
    private static Emergence.Row longDay() {
        return new Emergence.Row(
                "long-day-kale",
                "kale, 24 over 12 h of light: shoot dry",
                "",
                1.2,
                3.5,
                "Lefsrud and three more (2006), HortScience 41:603, from memory: rises with hours, size not",
                kaleDryG(24) / kaleDryG(12));
    }

    private static double kaleDryG(double litH) {
        CropTraits kale = CropFiles.read("kale");
        Plant young = Growing.raisedInNursery(kale, kale.nursery().days());
        Plant plant =
                Emergence.lamp(500, litH, 21, 21, 0.60, 0.70).run(kale, young, 0.04, 21).plant();
        return plant.dryG() - plant.rootDryG();
    }

    // A winter house of 6 mol/d and lamps of 100 umol for 16 h beside it; 22/18 degC, 40/m2 and 35
    // days assumed.
    private static Emergence.Row lampsBesideSun() {
        return new Emergence.Row(
                "lamps-parsley",
                "parsley, winter sun with lamps over without, 11.8 over 6 mol/d: shoot fresh",
                "",
                1.2,
                3.5,
                "Litvin et al. (2020), J. Am. Soc. Hort. Sci. 145:18, from memory: rises, size not",
                winterParsleyG(11.8) / winterParsleyG(6));
    }

    private static double winterParsleyG(double mol) {
        CropTraits crop = CropFiles.read("parsley");
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return Growing.freshG(
                crop,
                Emergence.sun(mol, 22, 18, 0.60, 0.75).run(crop, young, 1 / 40.0, 35).plant());
    }

    // Trays of seedlings of 12 days from sowing, 3000/m2 assumed.
    private static double microgreenG(String name, double ppfd) {
        CropTraits crop = CropFiles.read(name);
        RoomSeason shelf = Emergence.lamp(ppfd, 16, 21, 17, 0.60, 0.70);
        return Growing.freshG(crop, shelf.run(crop, Growing.sown(crop), 1 / 3000.0, 12).plant());
    }

    private static Emergence.Row microgreens(String name) {
        return new Emergence.Row(
                "microgreens-" + name,
                name + " microgreens, 600 over 100 umol, 16 h, 12 d from sowing: shoot fresh",
                "",
                1.2,
                5,
                MICROGREENS,
                microgreenG(name, 600) / microgreenG(name, 100));
    }

    private static Emergence.Row evenLess(String name) {
        double middle = microgreenG(name, 350);
        return new Emergence.Row(
                "microgreens-gain-" + name,
                "the same: gain from 350 to 600 umol over that from 100 to 350",
                "",
                0,
                0.95,
                MICROGREENS,
                (microgreenG(name, 600) - middle) / (middle - microgreenG(name, 100)));
    }

    // Thin film in a house, seedlings of three weeks; 24/20 degC, 25/m2 and 28 days assumed.
    private static Emergence.Row bright(String name) {
        return new Emergence.Row(
                "currey-" + name,
                name + ", 18 over 7 mol/d, 25/m2, 28 d after 21: shoot fresh",
                "",
                1.3,
                5,
                CURREY,
                houseG(name, 18) / houseG(name, 7));
    }

    private static double houseG(String name, double mol) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, 21);
        return Growing.freshG(
                crop, Emergence.sun(mol, 24, 20, 0.60, 0.75).run(crop, young, 0.04, 28).plant());
    }

    private static double lampG(String name, double ppfd) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        double groundM2 = name.equals("spinach") ? 0.01 : 0.025;
        return Growing.freshG(
                crop,
                Emergence.lamp(ppfd, 16, 22, 20, 0.60, 0.70)
                        .run(crop, young, groundM2, 21)
                        .plant());
    }

    // A plastic house in Japan: 200 days from autumn to May, 12 mol/d, 22/10 degC, 9/m2 assumed.
    private static Emergence.Row strawberrySeason() {
        CropTraits crop = CropFiles.read("strawberry");
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return new Emergence.Row(
                "season-strawberry",
                "strawberry in a plastic house, 200 d, 12 mol/d, 9/m2",
                "L/m2",
                0.65 * 380,
                1.35 * 380,
                "Yuan et al. (2004), Biosyst. Eng. 87:237, abstract, about 380, +-35 %; days and light assumed",
                9
                        * Emergence.sun(12, 22, 10, 0.65, 0.85)
                                .run(crop, young, 1 / 9.0, 200)
                                .thirstKg());
    }
}
