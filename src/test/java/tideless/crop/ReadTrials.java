package tideless.crop;

import java.util.ArrayList;
import java.util.List;
import tideless.solution.Component;

/**
 * Published figures that were read (abstracts, tables, or quotations of them where a row says so)
 * and that no number of the crops was chosen by. What a source leaves out is assumed; conditions
 * and bands were written down before the first run.
 */
final class ReadTrials {
    private static final String ROPOKIS =
            "Ropokis et al. (2018), Front. Plant Sci. 9:1244, four cultivars, figures second hand, +-25 %";

    private ReadTrials() {}

    static List<Emergence.Row> rows() {
        List<Emergence.Row> rows = new ArrayList<>();
        lettuce(rows);
        leaves(rows);
        tomato(rows);
        peppers(rows);
        stillTanks(rows);
        warmthAndAir(rows);
        return rows;
    }

    private static void lettuce(List<Emergence.Row> rows) {
        CropTraits lettuce = CropFiles.read("lettuce");
        Plant young = Growing.raisedInNursery(lettuce, 14);
        // May to July: 20 mol/d, 25/18 degC, 16/m2 and 30 days assumed.
        RoomSeason.Outcome summer =
                Emergence.sun(20, 25, 18, 0.60, 0.80).run(lettuce, young, 1 / 16.0, 30);
        String ljubljana = "Thesis at the University of Ljubljana, record 146960, abstract, ";
        rows.add(
                new Emergence.Row(
                        "summer-lettuce-fresh",
                        "lettuce in a house, May to July: water per fresh",
                        "L/kg",
                        0.7 * 23.7,
                        1.3 * 23.7,
                        ljubljana + "23.7, +-30 %",
                        1000 * summer.thirstKg() / Growing.freshG(lettuce, summer.plant())));
        rows.add(
                new Emergence.Row(
                        "summer-lettuce-dry",
                        "the same: water per dry",
                        "L/kg",
                        0.7 * 474,
                        1.3 * 474,
                        ljubljana + "474, +-30 %",
                        1000 * summer.thirstKg() / shootDryG(summer.plant())));
        // The greenhouses among the studies that set the light use under lamps; 17 mol/d assumed.
        RoomSeason house = Emergence.sun(17, 22, 16, 0.65, 0.80);
        rows.add(
                new Emergence.Row(
                        "house-lettuce",
                        "lettuce in a house, 17 mol/d, 28 d after 14, 25/m2: shoot dry per light",
                        "g/mol",
                        0.7 * 0.39,
                        1.3 * 0.39,
                        "Jin et al. (2023), abstract, mean 0.39 of 13 studies in greenhouses, +-30 %",
                        shootDryG(house.run(lettuce, young, 0.04, 28).plant())
                                / (28 * house.lightMolPerM2() * 0.04)));
        // 4 to 6 weeks in the pond, light not told: 35 days, 17 mol/d, 24/19 degC assumed.
        rows.add(
                new Emergence.Row(
                        "raft-lettuce",
                        "lettuce on a raft, 43/m2, 35 d after 14, 17 mol/d: head",
                        "g",
                        150,
                        250,
                        "Hernandez et al. (2017), Acta Hort. 1170:619, abstract, 4 to 6 weeks; light assumed",
                        Growing.freshG(
                                lettuce,
                                Emergence.sun(17, 24, 19, 0.65, 0.80)
                                        .run(lettuce, young, 1 / 43.0, 35)
                                        .plant())));
    }

    private static void leaves(List<Emergence.Row> rows) {
        // The pots of the pak choi weighed there, same room as assumed for their weight.
        CropTraits pak = CropFiles.read("pak-choi");
        RoomSeason.Outcome pots =
                Emergence.sun(20, 30, 25, 0.65, 0.85)
                        .run(pak, Growing.raisedInNursery(pak, 14), 0.04, 24);
        rows.add(
                new Emergence.Row(
                        "water-pak-choi",
                        "pak choi in pots, 24 d, tropics: fresh per water",
                        "g/L",
                        0.75 * 65,
                        1.25 * 87.8,
                        "Ahmad Tusi et al. (2026), abstract, 65 to 87.8, +-25 %",
                        Growing.freshG(pak, pots.plant()) / pots.thirstKg()));
        // Solution culture and peat; 200 umol, 16 h, 100/m2 and 28 days assumed.
        CropTraits rocket = CropFiles.read("rocket");
        rows.add(
                new Emergence.Row(
                        "ammonium-rocket",
                        "rocket: share of ammonium that leaves the pH as it is",
                        "",
                        0.10,
                        0.55,
                        "Dickson and Fisher (2018), abstract: 0.55 in peat, above 0.10 in solution",
                        Uptake.of(
                                        rocket,
                                        Emergence.lamp(200, 16, 22, 20, 0.60, 0.70),
                                        Growing.raisedInNursery(rocket, rocket.nursery().days()),
                                        0.01,
                                        28)
                                .neutralShare()));
        // Relative growth rate over ten days from day 14, 20 over 13.5 mol/d; a house assumed.
        rows.add(
                new Emergence.Row(
                        "light-spinach",
                        "spinach, 20 over 13.5 mol/d: relative growth rate of young plants",
                        "",
                        0.9,
                        1.1,
                        "Logendra et al. in HortScience, abstract: no more from 13-14 mol/d on",
                        relativeGrowth("spinach", 20) / relativeGrowth("spinach", 13.5)));
    }

    static double relativeGrowth(String name, double mol) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, 14);
        Plant later =
                Emergence.sun(mol, 22, 18, 0.65, 0.80)
                        .run(crop, young, crop.harvest().groundM2().orElseThrow(), 10)
                        .plant();
        return Math.log(later.dryG() / young.dryG()) / 10;
    }

    private static void tomato(List<Emergence.Row> rows) {
        CropTraits tomato = CropFiles.read("tomato");
        // March to July at 35 degrees north: 20 mol/d, 28/17 degC assumed.
        RoomSeason house = Emergence.sun(20, 28, 17, 0.65, 0.85);
        rows.add(
                new Emergence.Row(
                        "solar-house-tomato",
                        "tomato in a solar greenhouse, fruit enlargement, 5.7/m2",
                        "L/m2/d",
                        0.75 * 3.39,
                        1.25 * 3.39,
                        "Ge (2025), sap flow, 3.39, +-25 %; light assumed, year from memory",
                        5.7
                                * house.run(
                                                tomato,
                                                Growing.raisedInNursery(tomato, 42),
                                                1 / 5.7,
                                                45)
                                        .lastDayThirstKg()));
        // A sheet of plugs in a house: 15 days from day 14, 12 mol/d, 25/18 degC, 400/m2 assumed.
        RoomSeason.Outcome plugs =
                Emergence.sun(12, 25, 18, 0.65, 0.80)
                        .run(tomato, Growing.raisedInNursery(tomato, 14), 1 / 400.0, 15);
        rows.add(
                new Emergence.Row(
                        "plug-tomato",
                        "a sheet of tomato plugs over 15 d: dry matter per water",
                        "g/L",
                        0.75 * 2.7,
                        1.25 * 4,
                        "Environ. Control Biol. 39:35, abstract, 2.7, later 3-4, +-25 %",
                        (plugs.plant().dryG() - Growing.raisedInNursery(tomato, 14).dryG())
                                / plugs.thirstKg()));
        rows.add(ripening(18, 57.5));
        rows.add(ripening(24, 42.7));
        // Water culture at 0.8 mS/cm: a fifth of the feed of the other rows of uptake.
        RoomSeason plain = Emergence.sun(20, 24, 18, 0.70, 0.85);
        double[] weak = Uptake.feed(0.38);
        Plant grown = plain.run(tomato, Growing.raisedInNursery(tomato, 42), 0.4, 60).plant();
        rows.add(
                new Emergence.Row(
                        "water-culture-tomato",
                        "tomato in water culture at 0.8 mS/cm: uptake of calcium per water",
                        "mmol/L",
                        0.75 * 1.76,
                        1.25 * 2.03,
                        "Variations in water and macronutrient uptake of soilless tomato, abstract, 1.76-2.03, +-25 %",
                        Uptake.of(tomato, plain, grown, 0.4, 30, weak)
                                .perLitreMmol()[Component.CA.ordinal()]));
        // Day and night of 30 and 25 over 25 and 20 degC under 16 h of lamps.
        CropTraits dwarf = CropFiles.read("dwarf-tomato");
        rows.add(
                new Emergence.Row(
                        "warm-dwarf-tomato",
                        "dwarf tomato, 30/25 over 25/20 degC, 80 d: fruit",
                        "",
                        0.4,
                        0.98,
                        "Utah State University, note on dwarf crops: less in three cultivars of four",
                        dwarfFruitG(dwarf, 30, 25) / dwarfFruitG(dwarf, 25, 20)));
    }

    private static double dwarfFruitG(CropTraits dwarf, double dayC, double nightC) {
        RoomSeason shelf = Emergence.lamp(300, 16, dayC, nightC, 0.60, 0.70);
        Plant young = Growing.raisedInNursery(dwarf, dwarf.nursery().days());
        return Growing.fruitFreshG(dwarf, shelf.run(dwarf, young, 1 / 11.0, 80).plant());
    }

    private static Emergence.Row ripening(double tempC, double days) {
        CropTraits tomato = CropFiles.read("tomato");
        CropTraits.Stages stages = tomato.stages();
        double ours =
                RoomLimits.daysTo(tomato, stages.floweringCd(), stages.firstHarvestCd(), tempC);
        return new Emergence.Row(
                "ripening-tomato-%.0f".formatted(tempC),
                "tomato at %.0f degC: days from flower to ripe".formatted(tempC),
                "d",
                0.85 * days,
                1.15 * days,
                "De Koning (1994), in a thesis of 2011, %s, +-15 %%".formatted(days),
                ours);
    }

    private static void peppers(List<Emergence.Row> rows) {
        CropTraits pepper = CropFiles.read("sweet-pepper");
        // Thin film near Athens, no enriched air: 20 mol/d, 26/19 degC, 2.9/m2 assumed.
        RoomSeason athens = Emergence.sun(20, 26, 19, 0.65, 0.80);
        Plant grown = athens.run(pepper, Growing.raisedInNursery(pepper, 49), 0.35, 60).plant();
        double[] taken = Uptake.of(pepper, athens, grown, 0.35, 60).perLitreMmol();
        ropokis(rows, taken, Component.NO3, 11.7, 13.7);
        ropokis(rows, taken, Component.P, 0.7, 1.1);
        ropokis(rows, taken, Component.K, 6.2, 9.0);
        ropokis(rows, taken, Component.CA, 2.4, 3.7);
        ropokis(rows, taken, Component.MG, 1.0, 1.5);
        // 300 and 450 ppm, 90 days of a house.
        RoomSeason house = Emergence.sun(20, 24, 18, 0.70, 0.85);
        rows.add(
                new Emergence.Row(
                        "nederhoff-sweet-pepper",
                        "sweet pepper, 450 over 300 ppm, 90 d of a house: fruit",
                        "",
                        1.23,
                        1.69,
                        "Nederhoff (1994), second hand, 1.46, +-half of the gain",
                        fruitG(pepper, Emergence.enriched(house, 450), 90)
                                / fruitG(pepper, Emergence.enriched(house, 300), 90)));
        // A thin film in the tropics, 120 days: 30 mol/d, 31/23 degC, 1.5/m2 assumed.
        CropTraits chilli = CropFiles.read("chilli");
        rows.add(
                new Emergence.Row(
                        "bush-chilli",
                        "chilli (C. chinense) in the tropics, 120 d, 1.5/m2: water of a plant",
                        "L",
                        0.65 * 276,
                        1.35 * 276,
                        "Cienc. Rural (2023) 53, abstract, 276, +-35 %; light and density assumed",
                        Emergence.sun(30, 31, 23, 0.65, 0.85)
                                .run(chilli, Growing.raisedInNursery(chilli, 49), 1 / 1.5, 120)
                                .thirstKg()));
    }

    private static void ropokis(
            List<Emergence.Row> rows, double[] taken, Component ion, double low, double high) {
        rows.add(
                new Emergence.Row(
                        "ropokis-sweet-pepper-" + ion.symbol(),
                        "sweet pepper in thin film: uptake of " + ion.title() + " per water",
                        "mmol/L",
                        0.75 * low,
                        1.25 * high,
                        ROPOKIS,
                        taken[ion.ordinal()]));
    }

    // Tanks that nothing stirs, summer of Taiwan: 22 mol/d, 31/25 degC; tomato 2.5/m2 for 100 days,
    // cucumber 2/m2 for 60 assumed, from the usual nursery.
    private static void stillTanks(List<Emergence.Row> rows) {
        RoomSeason taiwan = Emergence.sun(22, 31, 25, 0.65, 0.85);
        stillTank(rows, "tomato", taiwan, 2.5, 100, 3.1);
        stillTank(rows, "cucumber", taiwan, 2, 60, 4.72);
        // Almeria, late summer to spring: 14 mol/d, 24/15 degC, 2/m2, 210 days assumed; the water
        // is
        // what was given, of which a fifth to a third drains.
        CropTraits pepper = CropFiles.read("sweet-pepper");
        RoomSeason.Outcome almeria =
                Emergence.sun(14, 24, 15, 0.65, 0.85)
                        .run(pepper, Growing.raisedInNursery(pepper, 49), 0.5, 210);
        String meca = "Meca et al. (2007), Span. J. Agric. Res. 5:285, abstract, ";
        rows.add(
                new Emergence.Row(
                        "almeria-fruit-sweet-pepper",
                        "sweet pepper in a plastic house, 210 d, 14 mol/d, 2/m2: fruit",
                        "kg/m2",
                        0.65 * 6.5,
                        1.35 * 7.1,
                        meca
                                + "6.5 to 7.1 of the better grades, +-35 %; light, density and days assumed",
                        2 * Growing.fruitFreshG(pepper, almeria.plant()) / 1000));
        rows.add(
                new Emergence.Row(
                        "almeria-water-sweet-pepper",
                        "the same: water",
                        "L/m2",
                        300,
                        520,
                        meca + "520 given; a fifth to a third drains",
                        2 * almeria.thirstKg()));
    }

    private static void stillTank(
            List<Emergence.Row> rows,
            String name,
            RoomSeason room,
            double perM2,
            int days,
            double publishedKg) {
        CropTraits crop = CropFiles.read(name);
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        rows.add(
                new Emergence.Row(
                        "still-tank-" + name,
                        "%s in a still tank, %d d, 22 mol/d, 31/25 degC, %s/m2: fruit of a plant"
                                .formatted(name, days, perM2),
                        "kg",
                        0.6 * publishedKg,
                        1.4 * publishedKg,
                        "Imai (1987), Taiwan 1986, %s, +-40 %%; light, density and days assumed"
                                .formatted(publishedKg),
                        Growing.fruitFreshG(crop, room.run(crop, young, 1 / perM2, days).plant())
                                / 1000));
    }

    private static void warmthAndAir(List<Emergence.Row> rows) {
        // Two weeks from day 21, 16 h of 250 umol and 25/m2 assumed.
        String chang =
                "Chang et al. (2005), J. Hort. Sci. Biotech. 80:593, abstract: best of 15, 25, 30";
        double best = basilG(25);
        rows.add(
                new Emergence.Row(
                        "cool-basil",
                        "basil, 25 over 15 degC, 2 weeks: shoot fresh",
                        "",
                        1.1,
                        10,
                        chang,
                        best / basilG(15)));
        rows.add(
                new Emergence.Row(
                        "warm-basil",
                        "basil, 25 over 30 degC, 2 weeks: shoot fresh",
                        "",
                        1,
                        2,
                        chang,
                        best / basilG(30)));
        // Air drawn by fans against air over wet pads: 32 degC and 45 % against 27 degC and 75 % at
        // leaf area index 2.5 and 25 mol/d assumed.
        CropTraits cucumber = CropFiles.read("cucumber");
        rows.add(
                new Emergence.Row(
                        "fan-cucumber",
                        "cucumber, dry air by fans over damp air by pads: thirst by day",
                        "",
                        1.3,
                        1.9,
                        "Nikolaou et al. (2019), Agronomy 9:300, 1.6, +-half of the gain; air assumed",
                        Emergence.sun(25, 32, 22, 0.45, 0.8).standKgPerM2S(cucumber, 2.5, true)
                                / Emergence.sun(25, 27, 22, 0.75, 0.8)
                                        .standKgPerM2S(cucumber, 2.5, true)));
        // White lamps in the time of fruit, 16 h; 11/m2, 60 days from day 28 assumed.
        CropTraits dwarf = CropFiles.read("dwarf-tomato");
        rows.add(
                new Emergence.Row(
                        "bright-dwarf-tomato",
                        "dwarf tomato, 700 over 300 umol: share of fruit in dry mass",
                        "",
                        0.75,
                        0.93,
                        "Ke et al. (2023), Front. Plant Sci. 14:1076423, abstract, 0.83",
                        fruitShare(dwarf, 700) / fruitShare(dwarf, 300)));
        // A screenhouse in Israel in August: 30 mol/d, 32/24 degC; half-grown stand of 60 days,
        // 3/m2
        // assumed.
        CropTraits pepper = CropFiles.read("sweet-pepper");
        rows.add(
                new Emergence.Row(
                        "screenhouse-sweet-pepper",
                        "sweet pepper under a fine screen, August, 30 mol/d, 3/m2, 60 d",
                        "L/m2/d",
                        0.75 * 1.8,
                        1.25 * 2.1,
                        "Moller et al. (2004), abstract, 1.8-2.1, +-25 %; leaf, light and air assumed",
                        3
                                * Emergence.sun(30, 32, 24, 0.55, 0.8)
                                        .run(
                                                pepper,
                                                Growing.raisedInNursery(pepper, 49),
                                                1 / 3.0,
                                                60)
                                        .lastDayThirstKg()));
    }

    private static double basilG(double tempC) {
        CropTraits basil = CropFiles.read("basil");
        Plant young = Growing.raisedInNursery(basil, 21);
        return Growing.freshG(
                basil,
                Emergence.lamp(250, 16, tempC, tempC, 0.65, 0.65)
                        .run(basil, young, 0.04, 14)
                        .plant());
    }

    private static double fruitShare(CropTraits dwarf, double ppfd) {
        Plant plant =
                Emergence.lamp(ppfd, 16, 24, 20, 0.60, 0.70)
                        .run(dwarf, Growing.raisedInNursery(dwarf, 28), 1 / 11.0, 60)
                        .plant();
        return plant.fruitDryG() / plant.dryG();
    }

    private static double fruitG(CropTraits crop, RoomSeason room, int days) {
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        return Growing.fruitFreshG(crop, room.run(crop, young, 1 / 3.0, days).plant());
    }

    private static double shootDryG(Plant plant) {
        return plant.dryG() - plant.rootDryG();
    }
}
