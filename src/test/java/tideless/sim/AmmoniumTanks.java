package tideless.sim;

import java.util.Locale;

/**
 * Trays whose feed has a share of ammonium, for rows of docs/validation.md: 20 L that a valve
 * holds, 250 umol/m2/s for 16 hours, 22/18 degC, water without alkali but for what brings the feed
 * to pH 5.8 in air and for what is stated.
 */
public final class AmmoniumTanks {
    /**
     * So many times the feed of {@link RootZoneSeasons}, whose cations are 12 meq/L: 1.8 mS/cm by
     * 0.19 + 0.095 x cations (Sonneveld et al. 1999, from memory).
     */
    private static final double AT_1_8 = (1.8 - 0.19) / 0.095 / 12;

    private AmmoniumTanks() {}

    /**
     * pH at noon of the 25th day on a tenth of ammonium at 1.8 mS/cm, from the usual nursery.
     *
     * @param plants on 0.36 m2 of ground
     * @param alkaliMmolPerL potassium with bicarbonate in the water, mmol/L
     */
    public static double phAfter25Days(String crop, int plants, double alkaliMmolPerL) {
        return run(crop, plants, "", 1, alkaliMmolPerL, AT_1_8, 26).ph().at(24 * 24 + 11);
    }

    /** See {@link RootZoneSeasons#phAfterThreeWeeks}. */
    public static double phAfterThreeWeeks(String crop, double ammoniumMmolPerL) {
        return RootZoneSeasons.phAfterThreeWeeks(crop, ammoniumMmolPerL);
    }

    /**
     * Fresh shoot of a plant after three weeks in the tray of {@link RootZoneSeasons}, g.
     *
     * @param ammoniumMmolPerL of 10 mmol/L of nitrogen
     */
    public static double freshGAfterThreeWeeks(String crop, double ammoniumMmolPerL) {
        TrayTrace tray = RootZoneSeasons.afterThreeWeeks(crop, ammoniumMmolPerL);
        return tray.freshG().at(tray.freshG().size() - 1);
    }

    /**
     * Fresh shoot of a tomato of 21 days after 24 more, g: without fruit and at one age, so that
     * shares of it are shares of dry weight.
     *
     * @param ammoniumMmolPerL of 10 mmol/L of nitrogen
     */
    public static double tomatoGAfter24Days(double ammoniumMmolPerL, int plants) {
        TrayTrace tray =
                run("tomato", plants, "nursery_age = \"21 days\"", ammoniumMmolPerL, 0, 1, 24);
        return tray.freshG().at(tray.freshG().size() - 1);
    }

    /**
     * Fresh shoot of a lettuce after four weeks, eight on 0.36 m2, g.
     *
     * @param ammoniumMmolPerL of 10 mmol/L of nitrogen
     * @param alkaliMmolPerL as above
     */
    public static double lettuceGAfterFourWeeks(double ammoniumMmolPerL, double alkaliMmolPerL) {
        TrayTrace tray = run("lettuce", 8, "", ammoniumMmolPerL, alkaliMmolPerL, 1, 28);
        return tray.freshG().at(tray.freshG().size() - 1);
    }

    /**
     * The tray after a run.
     *
     * @param age a line of the tray's; empty for the usual nursery
     * @param ammonium of 10 mmol/L of nitrogen
     * @param alkali potassium with bicarbonate in the water, mmol/L
     * @param times so much of all that is fed
     */
    static TrayTrace run(
            String crop,
            int plants,
            String age,
            double ammonium,
            double alkali,
            double times,
            int days) {
        double nitrate = 10 - ammonium;
        // K, Ca and Mg fill up the charge that ammonium leaves; chloride what it is too much.
        double anions = nitrate + 3;
        double potassium = Math.max(4, anions - ammonium - 6);
        double chloride = Math.max(0, ammonium + potassium + 6 - anions);
        potassium += RootZoneSeasons.ALKALI_MMOL_PER_L + alkali / times;
        String rig =
                """
                [feed.analysis]
                nitrate = "%s mmol/L"
                ammonium = "%s mmol/L"
                phosphate = "%s mmol/L"
                potassium = "%s mmol/L"
                calcium = "%s mmol/L"
                magnesium = "%s mmol/L"
                sulfate = "%s mmol/L"
                chloride = "%s mmol/L"
                [reservoir.shelf]
                length = "80 cm"
                width = "50 cm"
                depth = "50 cm"
                full_level = "47 cm"
                floor_above_bench = "60 cm"
                refill = "at every visit"
                [tray.t]
                length = "60 cm"
                width = "50 cm"
                depth = "12 cm"
                crop = "%s"
                cup_bottom = "6 cm"
                plants = %d
                ground = "0.36 m2"
                harvest_after = "40 days"
                %s
                [tray.t.valve]
                setting = "6.5 cm"
                seat = "3 mm"
                [visits]
                days = "daily"
                flush = "never"
                """
                        .formatted(
                                mmol(times * nitrate),
                                mmol(times * ammonium),
                                mmol(times),
                                mmol(times * potassium),
                                mmol(times * 2),
                                mmol(times),
                                mmol(times),
                                mmol(times * chloride),
                                crop,
                                plants,
                                age);
        return Simulation.run(
                        RootZoneSeasons.read(
                                RootZoneSeasons.ROOM.formatted(days, 22, 18, 250) + rig))
                .trays()
                .get(0);
    }

    private static String mmol(double mmolPerL) {
        return String.format(Locale.ROOT, "%.4f", mmolPerL);
    }
}
