package tideless.sim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Recipe;

/**
 * Uptake and build-up that emerge from whole runs beside what was published; nothing is fitted. Run
 * {@code main} for the page.
 */
final class SaltValidation {
    /**
     * One line.
     *
     * @param low least that counts as met
     * @param high most that counts as met
     */
    record Row(String what, String unit, double found, double low, double high, String source) {
        boolean hit() {
            return low <= found && found <= high;
        }
    }

    private SaltValidation() {}

    private static final String CROP =
            """
            title = "%1$s"
            start = 2026-03-01
            length = "%2$d days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            night_temperature = "16 degC"
            day_humidity = "65 %%"
            night_humidity = "80 %%"
            air_speed = "0.2 m/s"
            [lamp]
            type = "sun"
            ppfd = "%3$d umol/m2/s"
            on = "06:00"
            off = "18:00"
            %4$s
            [feed]
            %5$s
            [reservoir.tank]
            length = "2 m"
            width = "1 m"
            depth = "1 m"
            full_level = "95 cm"
            floor_above_bench = "1 m"
            lid = true
            refill = "at every visit"
            [tray.gully]
            length = "2 m"
            width = "50 cm"
            depth = "%6$s"
            cup_bottom = "3 cm"
            gap = "0 %%"
            crop = "%1$s"
            plants = %7$d
            nursery_age = "%8$d days"
            ground = "%9$s m2"
            [tray.gully.valve]
            setting = "%10$s"
            seat = "6 mm"
            [visits]
            days = "daily"
            flush = "never"
            """;

    private static Trace run(Object... words) {
        try {
            Path file = Files.createTempFile("salts", ".toml");
            try {
                Files.writeString(file, String.format(Locale.ROOT, CROP, words));
                Reading reading = ScenarioReader.read(file);
                if (!(reading instanceof Reading.Good good)) {
                    throw new IllegalStateException(reading.toString());
                }
                return Simulation.run(good.scenario());
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static double taken(Trace trace, Component component) {
        for (Ledger.Entry entry : trace.components().get(component.ordinal()).out()) {
            if (entry.what().equals("taken by plants")) {
                return entry.amount();
            }
        }
        throw new IllegalStateException("nothing taken");
    }

    private static double drunkM3(Trace trace) {
        return trace.trays().get(0).transpirationM3().sum();
    }

    static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        // Light 17 mol/m2/d, density, climate, days assumed; feed as published, phosphate and all.
        Trace lettuce =
                run(
                        "lettuce",
                        35,
                        394,
                        "",
                        "recipe = \"lettuce-water-culture\"\nec = \"2.4 mS/cm\"",
                        "10 cm",
                        20,
                        14,
                        "1",
                        "5 cm");
        double[] batavia = {13.4, 1.72, 10.2, 3.13, 0.86};
        uptake(
                rows,
                lettuce,
                "lettuce in a lettuce feed",
                batavia,
                "Batavia lettuce, Front. Plant Sci. (2024) 1411572, read; +-30 %");
        Trace tomato =
                run(
                        "tomato",
                        150,
                        463,
                        "",
                        "recipe = \"tomato-closed\"\nec = \"1.6 mS/cm\"",
                        "10 cm",
                        3,
                        40,
                        "1.2",
                        "5 cm");
        double[] closed = {11.75, 1.25, 6.5, 2.75, 1.0};
        uptake(
                rows,
                tomato,
                "tomato in its closed-system feed",
                closed,
                "De Kreij et al. (1999), Sonneveld and Voogt (2009), from memory; +-30 %");
        rows.add(
                new Row(
                        "the same tomato: EC of the gully after 150 days over that of its feed",
                        "",
                        tomato.trays().get(0).ecMsPerCm().at(tomato.hours() - 1)
                                / ElectricalConductivity.at25MsPerCm(
                                        tomato.scenario().feed().composition()),
                        0.7,
                        1.3,
                        "a feed made of uptake keeps its EC, definition of the recipe; +-30 %"));

        // Water of 2 mmol/L NaCl, closed, 130 L/m2 drunk: Na did not exceed about 20 mmol/L.
        Trace salty =
                run(
                        "tomato",
                        75,
                        463,
                        "[water.analysis]\ncalcium = \"0.25 mmol/L\"\nbicarbonate = \"0.5 mmol/L\"\n"
                                + "sodium = \"2 mmol/L\"\nchloride = \"2 mmol/L\"",
                        "recipe = \"tomato-closed\"\nec = \"2.0 mS/cm\"",
                        "10 cm",
                        3,
                        40,
                        "1.2",
                        "5 cm");
        TrayTrace gully = salty.trays().get(0);
        double drunk = 0;
        int hour = 0;
        while (hour < salty.hours() - 1 && drunk < 0.130 * 1.2) {
            drunk += gully.transpirationM3().at(hour++);
        }
        rows.add(
                new Row(
                        "tomato on water of 2 mmol/L NaCl, 42 L of solution a m2 of ground: sodium"
                                + " after "
                                + Math.round(1000 * drunk / 1.2)
                                + " L/m2 drunk",
                        "mmol/L",
                        gully.compositionAt(hour).molPerM3(Component.NA),
                        2,
                        20,
                        "study of semi-closed tomato, abstract, read: 130 L/m2, \"did not exceed"
                                + " about 20\"; its volume is not known"));
        Composition base = Recipe.named("tomato-closed").orElseThrow().composition();
        rows.add(
                new Row(
                        "EC that 10 mmol/L more of NaCl adds to a tomato solution that holds 10",
                        "mS/cm",
                        ElectricalConductivity.at25MsPerCm(
                                        base.with(Component.NA, 20).with(Component.CL, 20))
                                - ElectricalConductivity.at25MsPerCm(
                                        base.with(Component.NA, 10).with(Component.CL, 10)),
                        0.81,
                        0.99,
                        "Carmassi et al. (2007), abstract, read: 3.0 to 3.9; +-10 %"));
        return rows;
    }

    private static void uptake(
            List<Row> rows, Trace trace, String what, double[] published, String source) {
        Component[] ions = {Component.NO3, Component.P, Component.K, Component.CA, Component.MG};
        for (int i = 0; i < ions.length; i++) {
            double mol = taken(trace, ions[i]);
            if (ions[i] == Component.NO3) {
                mol += taken(trace, Component.NH4);
            }
            rows.add(
                    new Row(
                            what
                                    + ": "
                                    + (ions[i] == Component.NO3 ? "nitrogen" : ions[i].title())
                                    + " per water drunk",
                            "mmol/L",
                            mol / drunkM3(trace),
                            0.7 * published[i],
                            1.3 * published[i],
                            source));
        }
    }

    static String page() {
        StringBuilder page = new StringBuilder();
        page.append("# Salts: predicted beside published\n\n")
                .append("<!-- Made by SaltValidation (tests). Do not edit. -->\n\n")
                .append("Whole runs, nothing fitted. Light, density and climate where a source")
                .append(" leaves them out are assumed and stand in\n`SaltValidation`. A miss is")
                .append(" shown as a miss.\n\n")
                .append("| what | unit | ours | published | | source |\n")
                .append("| --- | --- | ---: | ---: | --- | --- |\n");
        for (Row row : rows()) {
            page.append(
                    String.format(
                            Locale.ROOT,
                            "| %s | %s | %.2f | %.2f-%.2f | %s | %s |\n",
                            row.what(),
                            row.unit(),
                            row.found(),
                            row.low(),
                            row.high(),
                            row.hit() ? "met" : "**miss**",
                            row.source()));
        }
        return page.append(
                        """

                        Why the misses: potassium's luxury uptake is taken from a low-affinity constant of barley and an
                        upper content from sufficiency tables; calcium's share of mass flow is assumed and its ceiling is
                        the same tables', which lie below what closed crops take up (old leaves and crusts on roots hold
                        more). Our tomato grows less dry mass on a litre than the published uptake asks for (about 4 g
                        instead of 5), which lowers all its ions alike; with no drain the rest of its feed piles up. The
                        chemistry reads the step of sodium chloride 8 to 19 % above the measured one; so does a
                        general-purpose geochemistry program (1.08 mS/cm where ours reads 1.05 on its solution), so most of
                        that miss lies between the measured abstract and ionic theory, not in this code.

                        EC of single salts, against the same program: magnesium chloride +3 to +5.5 %, magnesium sulfate
                        -5 % at 42 mmol/L, monopotassium phosphate +7 to +9 %, ammonium sulfate -8 % at 38 mmol/L; they
                        stay as misses, for nine recipes at half to four times their strength read +0.9 % in the mean.

                        Closed culture of the literature that could not be rebuilt: Carmassi et al. (2003, 2005), Varlagas
                        et al. (2010) and Savvas et al. (2005) print in their abstracts that EC, sodium and chloride rise
                        and level off, without the volumes and figures a run needs. No published EC series of a still,
                        unstirred tray was found.
                        """)
                .toString();
    }

    public static void main(String[] args) throws IOException {
        Files.writeString(Path.of("docs/validation-salts.md"), page());
    }
}
