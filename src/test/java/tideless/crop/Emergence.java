package tideless.crop;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What growth and thirst come to when nothing is fitted, beside what was published. Conditions that
 * a source leaves out are assumed and said so. Run {@code main} for the table.
 */
final class Emergence {
    /**
     * One line.
     *
     * @param id short name
     * @param what quantity and conditions
     * @param unit of the three numbers
     * @param low least that counts as met, tolerance included
     * @param high most that counts as met
     * @param source where from
     * @param found ours
     */
    record Row(
            String id,
            String what,
            String unit,
            double low,
            double high,
            String source,
            double found) {
        boolean hit() {
            return low <= found && found <= high;
        }
    }

    private Emergence() {}

    /** White or red-blue lamp, hardly any near infrared. */
    static RoomSeason lamp(
            double ppfd, double litH, double day, double night, double rhDay, double rhNight) {
        return new RoomSeason(ppfd, litH, 4.7, 0.05, day, night, rhDay, rhNight, 0.15, 400, false);
    }

    /** Sun through glass, as much near infrared as light, spread evenly over 12 hours. */
    static RoomSeason sun(double mol, double day, double night, double rhDay, double rhNight) {
        return new RoomSeason(
                mol / (12 * 0.0036), 12, 4.57, 1, day, night, rhDay, rhNight, 0.2, 400, true);
    }

    /** All rows; run once, for some of them run whole trays. */
    static List<Row> rows() {
        return Once.ROWS;
    }

    private static final class Once {
        static final List<Row> ROWS = List.copyOf(run());
    }

    private static List<Row> run() {
        List<Row> rows = new ArrayList<>();
        CropTraits lettuce = CropFiles.read("lettuce");

        // Carotti et al. (2021): 25 plants/m2, 29 days; nursery of 14 days and 70 % humidity
        // assumed.
        RoomSeason carotti = lamp(200, 16, 24, 20, 0.70, 0.75);
        Plant young = Growing.raisedInNursery(lettuce, 14);
        RoomSeason.Outcome crop = carotti.run(lettuce, young, 0.04, 29);
        double mol = 29 * carotti.lightMolPerM2() * 0.04;
        Plant grown = crop.plant();
        String carottiSource = "Carotti et al. (2021), abstract, +-30 %";
        rows.add(
                new Row(
                        "carotti-dry",
                        "lettuce, 200 umol, 16 h, 29 d, 25/m2: shoot dry per light",
                        "g/mol",
                        0.7 * 1.01,
                        1.3 * 1.01,
                        carottiSource,
                        (grown.dryG() - grown.rootDryG()) / mol));
        rows.add(
                new Row(
                        "carotti-fresh",
                        "the same: shoot fresh per light",
                        "g/mol",
                        0.7 * 29,
                        1.3 * 29,
                        carottiSource,
                        Growing.freshG(lettuce, grown) / mol));

        // Pennisi et al. (2019): 215 umol, 16 h; 24 degC, 60 %, 25/m2, 14 + 28 days assumed.
        RoomSeason pennisi = lamp(215, 16, 24, 24, 0.60, 0.60);
        RoomSeason.Outcome led = pennisi.run(lettuce, young, 0.04, 28);
        rows.add(
                new Row(
                        "pennisi-water",
                        "lettuce, 215 umol, 16 h: fresh per water",
                        "g/L",
                        40,
                        90,
                        "Pennisi et al. (2019), Sci. Rep. 9:14127, best 75",
                        Growing.freshG(lettuce, led.plant()) / led.thirstKg()));

        // Kratky (2005): 1.434 m2; 30 plants, 14 + 35 days, 17 mol/d under a rain cover, 26/21 degC
        // assumed: the middle of 20 to 36 plants by litres, and of 15 to 20 mol/d.
        RoomSeason hawaii = sun(17, 26, 21, 0.65, 0.85);
        RoomSeason.Outcome pot = hawaii.run(lettuce, young, 1.434 / 30, 35);
        String kratky = "Kratky (2005), abstract, +-20 %";
        rows.add(
                new Row(
                        "kratky-head",
                        "suspended-pot lettuce, 35 d after transplant, 17 mol/d: head",
                        "g",
                        176,
                        264,
                        kratky,
                        Growing.freshG(lettuce, pot.plant())));
        rows.add(
                new Row(
                        "kratky-water",
                        "the same: water of a plant",
                        "L",
                        2.5,
                        4.5,
                        "Kratky (2005), 20 to 36 plants a tank, derived",
                        pot.thirstKg()));

        // The same, but stopped when the head has its published weight.
        int days = 1;
        while (Growing.freshG(lettuce, hawaii.run(lettuce, young, 1.434 / 30, days).plant())
                < 220) {
            days++;
        }
        rows.add(
                new Row(
                        "kratky-days",
                        "the same: days from transplant to a head of 220 g",
                        "d",
                        28,
                        45,
                        "Kratky (2005), 7 crops a year, derived",
                        days));
        rows.add(
                new Row(
                        "kratky-water-220",
                        "the same: water of a plant of 220 g",
                        "L",
                        2.5,
                        4.5,
                        "Kratky (2005), 20 to 36 plants a tank, derived",
                        hawaii.run(lettuce, young, 1.434 / 30, days).thirstKg()));

        // Life-cycle means of chambers; from memory. Day counts and densities as there where known.
        rows.add(chamber("lettuce", 4, 28, 1 / 19.2, lamp(300, 16, 23, 23, 0.68, 0.68), 1.77));
        rows.add(chamber("spinach", 10, 30, 1 / 60.0, lamp(300, 16, 23, 23, 0.68, 0.68), 1.77));
        rows.add(chamber("tomato", 28, 85, 1 / 6.4, lamp(600, 12, 26, 22, 0.68, 0.68), 2.77));
        rows.add(chamber("sweet-pepper", 28, 85, 1 / 6.4, lamp(600, 12, 26, 22, 0.68, 0.68), 2.77));
        rows.add(chamber("strawberry", 1, 85, 0.1, lamp(400, 12, 20, 16, 0.68, 0.68), 2.22));

        // Lettuce stand near harvest: 300 umol, 16-18 h, 23 degC, 65-70 %.
        RoomSeason ksc = enriched(lamp(300, 17, 23, 23, 0.68, 0.68), 1000);
        rows.add(
                new Row(
                        "ksc-lettuce-peak",
                        "lettuce stand near harvest, 300 umol, 17 h, 23 degC, 68 %",
                        "L/m2/d",
                        1.5,
                        2.5,
                        "Wheeler et al. (2003), from memory (1000 ppm CO2)",
                        ksc.run(lettuce, Growing.raisedInNursery(lettuce, 10), 0.052, 28)
                                        .lastDayThirstKg()
                                / 0.052));

        // Mature plants in a glasshouse, 20 mol/d, 24/18 degC assumed.
        RoomSeason glass = sun(20, 24, 18, 0.70, 0.85);
        rows.add(mature("tomato", 0.4, glass, 1.0, 1.5, "grower handbooks, typical, from memory"));
        rows.add(mature("cucumber", 0.5, glass, 1.0, 2.5, "grower handbooks, from memory"));
        rows.add(mature("sweet-pepper", 0.35, glass, 0.5, 1.5, "handbooks, from memory"));
        rows.add(mature("strawberry", 0.11, glass, 0.1, 0.4, "handbooks, from memory"));
        rows.add(
                mature(
                        "tomato",
                        0.4,
                        sun(40, 28, 20, 0.65, 0.85),
                        2.0,
                        3.0,
                        "grower handbooks, peak summer, from memory; 40 mol/d"));
        RoomSeason shelf = lamp(300, 16, 24, 20, 0.60, 0.70);
        rows.add(mature("dwarf-tomato", 0.09, shelf, 0.2, 0.6, "scaling, from memory"));
        rows.add(mature("chilli", 0.16, shelf, 0.2, 0.6, "from memory, low confidence"));

        // Carmassi et al. (2007): 8 MJ/m2/d inside at leaf area index 3 gives 2.89 mm/d.
        // 8 MJ of global as 4 MJ of light and 4 MJ of near infrared: 18.3 mol. +-35 %.
        RoomSeason pisa = sun(18.28, 24, 18, 0.70, 0.85);
        rows.add(
                new Row(
                        "carmassi",
                        "tomato, leaf area index 3, 8 MJ/m2/d inside, 24/18 degC, 70/85 %",
                        "L/m2/d",
                        0.65 * 2.89,
                        1.35 * 2.89,
                        "Carmassi et al. (2007), coefficients from memory, +-35 %",
                        canopyDay(CropFiles.read("tomato"), pisa, 3)));

        // Graamans et al. (2017), their day at leaf area index 3: 2.67, dark stomata 450 s/m.
        rows.add(
                new Row(
                        "graamans-day",
                        "lettuce, leaf area index 3, 16 h 200 umol 24 degC 70 %, 8 h 20 degC 75 %",
                        "L/m2/d",
                        0.75 * 2.67,
                        1.25 * 2.67,
                        "Graamans et al. (2017), recomputed, +-25 %",
                        canopyDay(lettuce, lamp(200, 16, 24, 20, 0.70, 0.75), 3)));

        CropTraits pak = CropFiles.read("pak-choi");
        RoomSeason tropics = sun(20, 30, 25, 0.65, 0.85);
        RoomSeason.Outcome pakPot = tropics.run(pak, Growing.raisedInNursery(pak, 14), 0.04, 24);
        rows.add(
                new Row(
                        "pak-choi-weight",
                        "pak choi in pots, 24 d, tropics (14 d nursery, 20 mol/d assumed)",
                        "g",
                        0.7 * 108.8,
                        1.3 * 108.8,
                        "Ahmad Tusi et al. (2026), abstract, +-30 %",
                        Growing.freshG(pak, pakPot.plant())));
        CropTraits basil = CropFiles.read("basil");
        RoomSeason.Outcome basilLed =
                pennisi.run(basil, Growing.raisedInNursery(basil, 14), 0.04, 35);
        rows.add(
                new Row(
                        "basil-water",
                        "basil, 215 umol, 16 h: fresh per water",
                        "g/L",
                        25,
                        55,
                        "Pennisi et al. (2019), Front. Plant Sci. 10:305, 33-44, from memory",
                        Growing.freshG(basil, basilLed.plant()) / basilLed.thirstKg()));

        CropTraits tomato = CropFiles.read("tomato");
        RoomSeason.Outcome vine = glass.run(tomato, Growing.raisedInNursery(tomato, 42), 0.4, 180);
        rows.add(
                new Row(
                        "tomato-water",
                        "vine tomato over 180 d in a glasshouse: water per fruit",
                        "L/kg",
                        15,
                        40,
                        "15-20 closed glasshouse, 25-40 non-circulating (Kratky et al. 2005, second hand)",
                        vine.thirstKg() / Growing.fruitFreshG(tomato, vine.plant()) * 1000));

        rows.addAll(Uptake.rows());

        // Two models of thirst over a season in a normal room: their ratio.
        RoomSeason room = lamp(200, 16, 22, 19, 0.55, 0.60);
        rows.add(twoModels("lettuce", 14, 0.04, 35, room));
        rows.add(twoModels("dwarf-tomato", 28, 0.09, 84, shelf));
        rows.add(twoModels("tomato", 42, 0.4, 180, glass));
        rows.addAll(Trials.rows());
        rows.addAll(MoreTrials.rows());
        rows.addAll(ReadTrials.rows());
        rows.addAll(RememberedTrials.rows());
        rows.addAll(LaterTrials.rows());
        rows.addAll(FurtherTrials.rows());
        return rows;
    }

    /** The same room with other air. */
    static RoomSeason enriched(RoomSeason room, double co2Ppm) {
        return new RoomSeason(
                room.ppfdUmolPerM2S(),
                room.litH(),
                room.umolPerJ(),
                room.nearInfraredPerPar(),
                room.dayTempC(),
                room.nightTempC(),
                room.dayHumidityFrac(),
                room.nightHumidityFrac(),
                room.airSpeedMPerS(),
                co2Ppm,
                room.house());
    }

    private static Row chamber(
            String name, int age, int days, double groundM2, RoomSeason room, double published) {
        CropTraits traits = CropFiles.read(name);
        RoomSeason.Outcome outcome =
                enriched(room, 1000)
                        .run(traits, Growing.raisedInNursery(traits, age), groundM2, days);
        return new Row(
                "chamber-" + name,
                String.format(
                        Locale.ROOT,
                        "%s, mean over %d d, %.0f umol, %.0f h (light, density, climate assumed)",
                        name,
                        days,
                        room.ppfdUmolPerM2S(),
                        room.litH()),
                "L/m2/d",
                0.65 * published,
                1.35 * published,
                "NASA/TP-2015-218570, from memory, +-35 % (enriched CO2)",
                outcome.thirstKg() / groundM2 / days);
    }

    private static Row mature(
            String name, double groundM2, RoomSeason room, double low, double high, String source) {
        CropTraits traits = CropFiles.read(name);
        RoomSeason.Outcome outcome =
                room.run(traits, Growing.raisedInNursery(traits, 40), groundM2, 90);
        return new Row(
                "mature-" + name + (room.lightMolPerM2() > 30 ? "-peak" : ""),
                String.format(
                        Locale.ROOT,
                        "%s full grown, %.1f plants/m2, %.0f mol/d",
                        name,
                        1 / groundM2,
                        room.lightMolPerM2()),
                "L/plant/d",
                low,
                high,
                source,
                outcome.lastDayThirstKg());
    }

    private static Row twoModels(String name, int age, double groundM2, int days, RoomSeason room) {
        CropTraits traits = CropFiles.read(name);
        RoomSeason.Outcome outcome =
                room.run(traits, Growing.raisedInNursery(traits, age), groundM2, days);
        return new Row(
                "two-models-" + name,
                String.format(
                        Locale.ROOT,
                        "%s, %d d: water by coefficient over water by canopy (%.2f L)",
                        name,
                        days,
                        outcome.canopyKg()),
                "",
                0.75,
                1.25,
                "the two models, +-25 %",
                outcome.coefficientKg() / outcome.canopyKg());
    }

    /** A canopy of a given leaf area index over a day, kg/m2. */
    private static double canopyDay(CropTraits traits, RoomSeason room, double lai) {
        return 3600
                * (room.litH() * room.canopyKgPerM2S(traits, lai, true)
                        + (24 - room.litH()) * room.canopyKgPerM2S(traits, lai, false));
    }

    public static void main(String[] args) {
        System.out.println("| check | found | published | | source |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (Row row : rows()) {
            System.out.printf(
                    Locale.ROOT,
                    "| %s: %s | %.3g %s | %.3g-%.3g | %s | %s |%n",
                    row.id(),
                    row.what(),
                    row.found(),
                    row.unit(),
                    row.low(),
                    row.high(),
                    row.hit() ? "met" : "missed",
                    row.source());
        }
    }
}
