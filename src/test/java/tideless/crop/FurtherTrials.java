package tideless.crop;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import tideless.sim.AmmoniumTanks;

/**
 * Trials of the crops of which fewer than three were known: one that was read (solutions on a tenth
 * of ammonium), the others from memory, mostly no more than the sign of an answer. What a source
 * leaves out or is not remembered is assumed; conditions and bands were written down and committed
 * before the first run, and no number of a crop was chosen by any of them.
 */
final class FurtherTrials {
    private static final String MASSON =
            "Masson et al. (1991), J. Am. Soc. Hort. Sci. 116:594, from memory, %s, +-half of the"
                    + " gain; sun, hours and cells assumed";
    private static final String CLARK =
            "Clark and Menary (1980), Aust. J. Plant Physiol. 7:685, from memory: rises, size not";
    private static final String FAHLEN =
            "Fahlen et al. (1997), J. Sci. Food Agric. 73:111, from memory: rises, size not";
    private static final String FLORIDA =
            "University of Florida growers' article, read: %s on a tenth of ammonium at 1.8 mS/cm;"
                    + " weeks, light and density assumed";
    private static final String SANTAMARIA =
            "Santamaria et al. (1999), J. Plant Nutr. 22:1091, from memory, low confidence: less,"
                    + " size not";
    private static final String BAUMBAUER =
            "Baumbauer et al. (2019), HortScience 54:2159, from memory: loses less than lettuce,"
                    + " size not";

    private FurtherTrials() {}

    static List<Emergence.Row> rows() {
        return List.of(
                lit("celery", 1.22),
                lit("lettuce", 1.40),
                lit("tomato", 1.24),
                enrichedCelery(),
                firstPod(),
                sign(
                        "photons-mint",
                        "mint, 400 over 200 umol, 16 h, 25/m2, 35 d: shoot dry",
                        1.2,
                        3,
                        CLARK,
                        mintDryG(400, 16, 20) / mintDryG(200, 16, 20)),
                sign(
                        "hours-mint",
                        "mint, 16 over 10 h of 300 umol, 25/m2, 35 d: shoot dry",
                        1.1,
                        3,
                        CLARK,
                        mintDryG(300, 16, 20) / mintDryG(300, 10, 20)),
                sign(
                        "bright-mint",
                        "mint, 320 over 160 umol, 16 h, 25/m2, 35 d, 21 degC: shoot dry",
                        1.2,
                        3.5,
                        FAHLEN,
                        mintDryG(320, 16, 21) / mintDryG(160, 16, 21)),
                sign(
                        "warmth-mint",
                        "mint, 21 over 15 degC, 240 umol, 16 h, 25/m2, 35 d: shoot dry",
                        1.05,
                        5,
                        FAHLEN,
                        mintDryG(240, 16, 21) / mintDryG(240, 16, 15)),
                sign(
                        "roots-coriander",
                        "coriander, roots at 25 over 15 degC for two weeks, 200 umol, 16 h: shoot"
                                + " fresh",
                        1.05,
                        5,
                        "Nguyen et al. (2020), Agronomy 10:413, from memory: heavier, size not",
                        rootedAtG(25) / rootedAtG(15)),
                // Beyond four times a plant alone would weigh as much in a crowd, which it does
                // not.
                sign(
                        "spacing-chard",
                        "chard, 40 over 10 plants/m2, 14 mol/d, 56 d: shoot fresh of a square"
                                + " metre",
                        1.05,
                        3.8,
                        "Maboko and Du Plooy (2013), from memory: rises, and a plant's falls, size"
                                + " not",
                        4 * chardG(40) / chardG(10)),
                dullLight("kale", 25),
                dullLight("spinach", 100),
                // The band of docs/root-zone.md for the three that held; rocket half a unit about
                // what it rose to.
                acidity("lettuce", 8, "held 5.7 to 6.0", 5.3, 6.5),
                acidity("basil", 9, "held 5.7 to 6.0", 5.3, 6.5),
                acidity("spinach", 36, "held 5.7 to 6.0", 5.3, 6.5),
                acidity("rocket", 36, "rose to 7.0", 6.5, 7.5),
                onAmmonium("chard"),
                onAmmonium("celery"),
                ofNitrate(
                        "three-quarters-tomato",
                        "three quarters of ammonium",
                        7.5,
                        0.44,
                        0.84,
                        "0.64"),
                ofNitrate("all-tomato", "ammonium alone", 10, 0.1, 0.45, "0.245"),
                sign(
                        "third-lettuce",
                        "lettuce, 30 % of ammonium over none, water of 2 meq/L of alkali, 4 weeks:"
                                + " shoot fresh",
                        0.95,
                        1.6,
                        "Savvas et al. (2006), abstract: best of 0 to 30 %, size not; water, weeks"
                                + " and density assumed",
                        AmmoniumTanks.lettuceGAfterFourWeeks(3, 2)
                                / AmmoniumTanks.lettuceGAfterFourWeeks(0, 2)));
    }

    private static Emergence.Row sign(
            String id, String what, double low, double high, String source, double found) {
        return new Emergence.Row(id, what, "", low, high, source, found);
    }

    // Early spring under glass: 8 mol/d of sun, lamps of 100 umol/m2/s for 16 h beside it, 18 degC,
    // cells of 25 cm2, the usual ages of plants for the field.
    private static Emergence.Row lit(String name, double gain) {
        return sign(
                "lamps-" + name,
                text(
                        "%s, sun of 8 mol/d with lamps of 100 umol over without, %d d from sowing:"
                                + " shoot dry",
                        name, LIT_DAYS.get(name)),
                1 + 0.5 * (gain - 1),
                1 + 1.5 * (gain - 1),
                text(MASSON, text("%.2f", gain)),
                litOverUnlit(name, 8));
    }

    /** Shoot dry with those lamps over without. */
    static double litOverUnlit(String name, double sunMolPerM2) {
        CropTraits crop = CropFiles.read(name);
        int days = LIT_DAYS.get(name);
        return transplantDryG(crop, sunAndLamps(sunMolPerM2), days)
                / transplantDryG(crop, Emergence.sun(sunMolPerM2, 18, 18, 0.65, 0.75), days);
    }

    private static final Map<String, Integer> LIT_DAYS =
            Map.of("celery", 56, "lettuce", 28, "tomato", 35);

    // Sun and lamps as one light of 16 h: beside 8 mol/d its mean photon falls in 295 umol/m2/s,
    // worked by hand in 291.
    private static RoomSeason sunAndLamps(double sunMolPerM2) {
        double mol = sunMolPerM2 + 100 * 16 * 0.0036;
        return new RoomSeason(mol / (16 * 0.0036), 16, 4.57, 1, 18, 18, 0.65, 0.75, 0.2, 400, true);
    }

    private static double transplantDryG(CropTraits crop, RoomSeason house, int days) {
        return shootDryG(house.run(crop, Growing.sown(crop), 0.0025, days).plant());
    }

    // The same cells and sun, without lamps.
    private static Emergence.Row enrichedCelery() {
        CropTraits celery = CropFiles.read("celery");
        RoomSeason house = Emergence.sun(8, 18, 18, 0.65, 0.75);
        return sign(
                "enriched-celery",
                "celery, 1000 over 330 ppm, 8 mol/d, 56 d from sowing: shoot dry",
                1.05,
                2,
                "Tremblay et al. (1988), HortScience 23, from memory: rises, size not",
                transplantDryG(celery, Emergence.enriched(house, 1000), 56)
                        / transplantDryG(celery, Emergence.enriched(house, 330), 56));
    }

    private static Emergence.Row firstPod() {
        CropTraits chilli = CropFiles.read("chilli");
        return new Emergence.Row(
                "first-chilli",
                "chilli at 23.5 degC: days from sowing to the first ripe pod",
                "d",
                0.8 * 109,
                1.2 * 109,
                "NASA plant habitat trial PH-04 (2021), from memory, 109, +-20 %; warmth assumed",
                RoomLimits.daysTo(chilli, 0, chilli.stages().firstHarvestCd(), 23.5));
    }

    // From the usual cutting.
    private static double mintDryG(double ppfd, double litH, double tempC) {
        CropTraits mint = CropFiles.read("mint");
        Plant young = Growing.raisedInNursery(mint, mint.nursery().days());
        return shootDryG(
                Emergence.lamp(ppfd, litH, tempC, tempC, 0.65, 0.65)
                        .run(mint, young, 0.04, 35)
                        .plant());
    }

    // Air of 22/20 degC, 60/m2; two weeks alike after the nursery and two of the roots' warmth, by
    // the rule of docs/root-zone.md.
    private static double rootedAtG(double rootsC) {
        CropTraits crop = CropFiles.read("coriander");
        RoomSeason room = Emergence.lamp(200, 16, 22, 20, 0.60, 0.70);
        Plant plant = Growing.raisedInNursery(crop, crop.nursery().days());
        plant = room.run(crop, plant, 1 / 60.0, 14).plant();
        double airFrac = Growing.temperatureFrac(crop.growth(), room.meanTempC());
        for (int day = 0; day < 14; day++) {
            plant =
                    Growing.dayLater(
                            crop,
                            plant,
                            1 / 60.0,
                            room.lightMolPerM2(),
                            room.ppfdUmolPerM2S(),
                            room.umolPerJ(),
                            room.meanTempC(),
                            RootWarmth.besideAirFrac(crop.response(), rootsC, airFrac));
        }
        return Growing.freshG(crop, plant);
    }

    // A house of 22/16 degC, from the usual nursery, cut once: pickings are not remembered.
    private static double chardG(double perM2) {
        return houseG("chard", 14, 22, 16, perM2, 56);
    }

    private static double houseG(
            String name, double mol, double dayC, double nightC, double perM2, int days) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return Growing.freshG(
                crop,
                Emergence.sun(mol, dayC, nightC, 0.65, 0.80)
                        .run(crop, young, 1 / perM2, days)
                        .plant());
    }

    // Share of the weight of 18 mol/d left at 6; 20/16 degC and 28 days assumed.
    private static double leftInDullLight(String name, double perM2) {
        return houseG(name, 6, 20, 16, perM2, 28) / houseG(name, 18, 20, 16, perM2, 28);
    }

    private static Emergence.Row dullLight(String name, double perM2) {
        return sign(
                "dull-" + name,
                text("%s, share of its weight left at 6 of 18 mol/d, over that of lettuce", name),
                1.01,
                2.5,
                BAUMBAUER,
                leftInDullLight(name, perM2) / leftInDullLight("lettuce", 25));
    }

    private static Emergence.Row acidity(
            String name, int plants, String published, double low, double high) {
        return new Emergence.Row(
                "acidity-" + name,
                text("%s in a tank, a tenth of its nitrogen ammonium, after 25 d: pH", name),
                "",
                low,
                high,
                text(FLORIDA, published),
                AmmoniumTanks.phAfter25Days(name, plants, 0));
    }

    private static Emergence.Row onAmmonium(String name) {
        return sign(
                "ammonium-" + name,
                text("%s, ammonium alone over nitrate alone, 3 weeks: shoot fresh", name),
                0.1,
                0.9,
                SANTAMARIA,
                AmmoniumTanks.freshGAfterThreeWeeks(name, 10)
                        / AmmoniumTanks.freshGAfterThreeWeeks(name, 0));
    }

    // Seedlings of 21 days, 24 days in solution as there; light, density and volume assumed. Older
    // plants had been seen before (0.80 and 0.74 by fresh weight, after three weeks). What the same
    // abstract tells of pH set what roots bear.
    private static Emergence.Row ofNitrate(
            String id, String what, double ammonium, double low, double high, String published) {
        return sign(
                id,
                text("tomato seedlings, %s over nitrate alone, 24 d: dry", what),
                low,
                high,
                text(
                        "Tomato on nitrate and ammonium in solution (2021), abstract, %s of the"
                                + " shoot, +-0.2",
                        published),
                AmmoniumTanks.tomatoGAfter24Days(ammonium, 8)
                        / AmmoniumTanks.tomatoGAfter24Days(0, 8));
    }

    private static double shootDryG(Plant plant) {
        return plant.dryG() - plant.rootDryG();
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
