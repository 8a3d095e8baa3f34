package tideless.sim;

import java.util.Locale;

/** Trays whose feed has a share of ammonium, for rows of docs/validation.md. */
public final class AmmoniumTanks {
    /**
     * So many times the feed of {@link RootZoneSeasons}, whose cations are 12 meq/L: 1.8 mS/cm by
     * 0.19 + 0.095 x cations (Sonneveld et al. 1999, from memory).
     */
    private static final double TIMES = (1.8 - 0.19) / 0.095 / 12;

    private static final int NOON_OF_DAY_25 = 24 * 24 + 11;

    private AmmoniumTanks() {}

    /**
     * pH at noon of the 25th day of a tray that a valve holds, in water without alkali but for what
     * brings the feed to pH 5.8: a tenth of the nitrogen ammonium, 1.8 mS/cm, 250 umol/m2/s for 16
     * hours, 22/18 degC.
     *
     * @param plants on 0.36 m2 of ground over 20 L of solution
     */
    public static double phAfter25Days(String crop, int plants) {
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
                [tray.t.valve]
                setting = "6.5 cm"
                seat = "3 mm"
                [visits]
                days = "daily"
                flush = "never"
                """
                        .formatted(
                                mmol(9),
                                mmol(1),
                                mmol(1),
                                mmol(5 + RootZoneSeasons.ALKALI_MMOL_PER_L),
                                mmol(2),
                                mmol(1),
                                mmol(1),
                                crop,
                                plants);
        return Simulation.run(
                        RootZoneSeasons.read(RootZoneSeasons.ROOM.formatted(26, 22, 18, 250) + rig))
                .trays()
                .get(0)
                .ph()
                .at(NOON_OF_DAY_25);
    }

    private static String mmol(double mmolPerL) {
        return String.format(Locale.ROOT, "%.4f", TIMES * mmolPerL);
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
}
