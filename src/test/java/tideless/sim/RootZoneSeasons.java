package tideless.sim;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import tideless.rig.Scenario;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.Acidity;
import tideless.solution.Composition;

/** Seasons in rigs like those of published trials on still solution, for {@link RootZonePage}. */
final class RootZoneSeasons {
    static final String ROOM =
            """
            title = "a trial's rig"
            start = 2026-03-02
            length = "%d days"
            [climate]
            kind = "room"
            day_temperature = "%s degC"
            night_temperature = "%s degC"
            day_humidity = "60 %%"
            night_humidity = "70 %%"
            [lamp]
            type = "white-led"
            ppfd = "%d umol/m2/s"
            on = "06:00"
            off = "22:00"
            [water]
            source = "rain"
            """;

    /** Base that brings 1 mmol/L of phosphate from H2PO4- to pH 5.8 in air: 5.77 to 5.80. */
    static final double ALKALI_MMOL_PER_L = 0.085;

    private RootZoneSeasons() {}

    static Scenario read(String text) {
        Reading read = ScenarioReader.read("trial.toml", new FilesInMemory(text));
        if (read instanceof Reading.Good good) {
            return good.scenario();
        }
        throw new IllegalStateException(read.toString());
    }

    /**
     * pH at noon of the 21st day of a tray of eight plants whose level a valve holds, fed with
     * nitrogen of 10 mmol/L, a share of it ammonium, in water without alkali but for what brings
     * its phosphate to pH 5.8 in air: the published tanks stood between 5.7 and 6.0.
     */
    static double phAfterThreeWeeks(String crop, double ammoniumMmolPerL) {
        return afterThreeWeeks(crop, ammoniumMmolPerL).ph().at(NOON_OF_LAST_DAY);
    }

    private static final int NOON_OF_LAST_DAY = 20 * 24 + 11;

    static TrayTrace afterThreeWeeks(String crop, double ammoniumMmolPerL) {
        return AmmoniumTanks.run(crop, 8, "", ammoniumMmolPerL, 0, 1, 22);
    }

    /**
     * Head of a crop on a raft in a pond 45 cm deep after five weeks, unaerated over aerated: 43
     * plants a square metre.
     */
    static double stillOverAerated(String crop, int dayC, int nightC) {
        return raft(crop, dayC, nightC, false) / raft(crop, dayC, nightC, true);
    }

    private static double raft(String crop, int dayC, int nightC, boolean aerated) {
        String rig =
                """
                [feed]
                recipe = "hoagland-2"
                ec = "1.6 mS/cm"
                ph = 5.8
                [tray.pond]
                length = "1 m"
                width = "1 m"
                depth = "50 cm"
                cup_bottom = "48 cm"
                start_level = "45 cm"
                filling = "sealed"
                deck_floats_down_to = "0 cm"
                aerated = %s
                crop = "%s"
                plants = 43
                ground = "1 m2"
                harvest_after = "34 days"
                [visits]
                days = "daily"
                flush = "never"
                """
                        .formatted(aerated, crop);
        Trace trace = Simulation.run(read(ROOM.formatted(35, dayC, nightC, 250) + rig));
        TrayTrace pond = trace.trays().get(0);
        return pond.freshG().at(trace.lastLivingHour(pond));
    }

    /**
     * Share of ammonium in the feed at which that tray's solution, stirred in air, stands at pH 5.8
     * after three weeks as the feed does; 0 where it has turned more acid than that on nitrate
     * alone.
     */
    static double neutralShare(String crop) {
        double base = 0;
        double acid = 3;
        if (hasTurnedAcid(crop, base)) {
            return 0;
        }
        while (acid - base > 0.005) {
            double middle = 0.5 * (base + acid);
            if (hasTurnedAcid(crop, middle)) {
                acid = middle;
            } else {
                base = middle;
            }
        }
        return 0.5 * (base + acid) / 10;
    }

    private static boolean hasTurnedAcid(String crop, double ammoniumMmolPerL) {
        Composition left = afterThreeWeeks(crop, ammoniumMmolPerL).compositionAt(NOON_OF_LAST_DAY);
        return Acidity.phInAir(left, 25, 420) < 5.8;
    }

    /** A line for each tray of a shipped scenario: its pH while roots live in it. */
    static String phLines(List<String> scenarios) {
        StringBuilder text = new StringBuilder();
        for (String name : scenarios) {
            Path file = Path.of("scenarios", name + ".toml");
            Trace trace = Simulation.run(((Reading.Good) ScenarioReader.read(file)).scenario());
            for (TrayTrace tray : trace.trays()) {
                text.append(phLine(name, trace, tray));
            }
        }
        return text.toString();
    }

    private static String phLine(String name, Trace trace, TrayTrace tray) {
        int hours = trace.lastLivingHour(tray) + 1;
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        int below = 0;
        int above = 0;
        for (int hour = 0; hour < hours; hour++) {
            double ph = tray.ph().at(hour);
            if (!Double.isNaN(ph)) {
                least = Math.min(least, ph);
                greatest = Math.max(greatest, ph);
                below += ph < 4.5 ? 1 : 0;
                above += ph > 8.0 ? 1 : 0;
            }
        }
        return String.format(
                Locale.ROOT,
                "| %s | %s | %.2f | %.2f | %d | %d | %d | %s |\n",
                name,
                tray.tray().name(),
                least,
                greatest,
                below,
                above,
                hours,
                below + above == 0 ? "met" : "**missed**");
    }
}
