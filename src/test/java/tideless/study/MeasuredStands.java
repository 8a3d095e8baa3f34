package tideless.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Series;
import tideless.sim.Simulation;
import tideless.sim.Trace;

/**
 * Runs the program on stands whose water uptake was measured, and writes {@code
 * docs/validation-stands.md}. The series are not shipped: the command takes their folders, and
 * without them the page keeps its figures.
 *
 * <p>Nothing is fitted. What the publishers do not tell is assumed here, once, for all stands.
 */
public final class MeasuredStands {
    private static final LocalDate CUCUMBER_START = LocalDate.of(2018, 8, 14);
    private static final LocalDate TOMATO_START = LocalDate.of(2019, 12, 16);

    /** Photons at the crop per energy of the tomato houses' lamps: as in the page of the crops. */
    private static final double LAMP_UMOL_PER_J = (100 + 97) / (81 + 61.5);

    private MeasuredStands() {}

    /**
     * Writes the page.
     *
     * @param args the cucumber houses' folder, the tomato compartments' folder, the page; none of
     *     them to leave the page as it is
     */
    public static void main(String[] args) throws IOException {
        if (args.length < 2) {
            System.out.println("No folders of the series: the page keeps its figures.");
            return;
        }
        String page = page(Path.of(args[0]), Path.of(args[1]));
        if (args.length > 2) {
            Files.writeString(Path.of(args[2]), page);
        }
        System.out.print(page);
    }

    /** One stand by day, L/m2/d. */
    private record Stand(
            String name, List<LocalDate> dates, List<Double> measured, List<Double> predicted) {
        Stand from(LocalDate from, LocalDate to) {
            Stand cut = new Stand(name, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
            for (int i = 0; i < dates.size(); i++) {
                if (!dates.get(i).isBefore(from) && dates.get(i).isBefore(to)) {
                    cut.add(dates.get(i), measured.get(i), predicted.get(i));
                }
            }
            return cut;
        }

        void add(LocalDate date, double m, double p) {
            dates.add(date);
            measured.add(m);
            predicted.add(p);
        }

        /** Means of seven kept days after another; the last may be fewer, but at least four. */
        Stand weekly() {
            Stand weeks = new Stand(name, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
            for (int i = 0; i + 4 <= dates.size(); i += 7) {
                int to = Math.min(dates.size(), i + 7);
                weeks.add(
                        dates.get(i),
                        mean(measured.subList(i, to)),
                        mean(predicted.subList(i, to)));
            }
            return weeks;
        }

        double log() {
            return Math.log(mean(predicted) / mean(measured));
        }

        double r2() {
            double c = covariance(measured, predicted);
            return c * c / (covariance(measured, measured) * covariance(predicted, predicted));
        }
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
    }

    private static double covariance(List<Double> a, List<Double> b) {
        double sum = 0;
        for (int i = 0; i < a.size(); i++) {
            sum += (a.get(i) - mean(a)) * (b.get(i) - mean(b));
        }
        return sum / a.size();
    }

    /** A folder's folders, in order of their names. */
    private static List<Path> folders(Path folder) throws IOException {
        try (var all = Files.list(folder)) {
            return all.filter(Files::isDirectory).sorted().toList();
        }
    }

    private static String letter(int index) {
        return String.valueOf((char) ('A' + index));
    }

    private static String page(Path cucumber, Path tomato) throws IOException {
        StringBuilder page = new StringBuilder();
        List<Stand> houses = new ArrayList<>();
        for (Path house : folders(cucumber)) {
            houses.add(cucumberHouse(cucumber, house, letter(houses.size())));
        }
        List<Stand> compartments = new ArrayList<>();
        for (Path compartment : folders(tomato)) {
            compartments.add(tomatoCompartment(tomato, compartment, letter(compartments.size())));
        }
        page.append(
                """
                # Validation: measured stands, run by the whole program

                <!-- Made by tideless.study.MeasuredStands from series that are not shipped. Do not edit; run

                    mvn -q -B test-compile exec:java -P validation -Dpage=tideless.study.MeasuredStands \\
                        -Dexec.args="CUCUMBER-FOLDER TOMATO-FOLDER docs/validation-stands.md"

                -->

                """);
        page.append(
                "Run on %s; series not shipped, SHA-256 of the files read: cucumber `%s`, tomato `%s`.\n\n"
                        .formatted(
                                LocalDate.now(ZoneOffset.UTC),
                                digest(cucumber, "weather_hourly.csv", "climate_hourly.csv"),
                                digest(tomato, "weather_hourly.csv", "crop.csv")));
        page.append(
                """
                No run is fitted. Measured is irrigation less drain per floor area: it includes what slab and fruit
                store, so weeks agree better than days. Predicted is what the plants transpire. Houses and compartments are lettered in the order of
                their folders' names. The stands grew on slabs that are watered and drained many times a day: the
                oxygen of a still tray, which the program would let them run short of, is switched off
                (`crop_override.root_zone`), in growth and in thirst, after it had been seen what it does: with it the biases below
                are -15, -21 and -8 % for the cucumbers, -19, -24, -12 and -15 % for the tomatoes.

                Which form holds for sunlit fruit crops, with which coefficient, was chosen on thirteen stands of which
                these seven are part: their levels judge nothing independently. The nurseries were not chosen on them.
                With the canopy alone, every nursery one small cell and no carbon dioxide in the leaves, the same runs
                gave: cucumbers +7, -6, +16 %, R2 by day 0.25, 0.02, 0.06, by week 0.05, 0.16, 0.01; young stands -70,
                -72, -61 %; tomatoes +20, +11, +28, +22 %, by day 0.54, 0.17, 0.15, 0.24.

                ## Cucumber, three houses, 2018

                Hemming et al. (2019), Sensors 19:1807; data doi:10.4121/uuid:e4987a7b-04dd-4c89-9b18-883aad30ba9a.
                Inside air, carbon dioxide and lamps as measured (`cover = "inside"`). Sun inside = outside x 0.50 x
                (1 - 0.25 energy screen)(1 - 0.98 blackout screen), the publisher's factors; sodium lamps 187
                umol/m2/s at full level. Assumed: 2.5 plants/m2 (trade press), 21 days from sowing on 14 August,
                air speed 0.2 m/s, feed 2.5 mS/cm renewed at its limit, roots never short of water. Seven
                hours of 29 August and from 18 October are missing from the files and filled (`longer_gaps`). The water figures of 14 to 22
                August are one record copied into all houses: no evidence, left out.

                | house, 5 September to 6 December | measured L/m2/d | predicted | bias | R2 day | R2 week |
                | --- | ---: | ---: | ---: | ---: | ---: |
                """);
        LocalDate full = LocalDate.of(2018, 9, 5);
        LocalDate end = LocalDate.of(2018, 12, 7);
        rows(page, houses, full, end);
        page.append(
                "\n| house, young stand 23 August to 4 September | measured L/m2/d | predicted | bias |\n");
        page.append("| --- | ---: | ---: | ---: |\n");
        for (Stand house : houses) {
            Stand young = house.from(LocalDate.of(2018, 8, 23), full);
            page.append(
                    text(
                            "| %s | %.2f | %.2f | %+.0f %% |\n",
                            house.name(),
                            mean(young.measured()),
                            mean(young.predicted()),
                            100 * Math.expm1(young.log())));
        }
        page.append(
                """

                ## Cherry tomato, four compartments, 2020

                Hemming et al. (2020), Sensors 20:6430; data doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7.
                Inside air is not known: 24 degC and 70 % where there is light, 18 degC and 85 % else, 420 ppm and 0.2
                m/s are assumed. Light: outside x 0.50 (screens not known) and lamps by their daily energy. Each stem
                counts as a plant; 49 days from sowing on 16 December is assumed. Days the publisher's record
                marks as negative or a spike are left out.

                | compartment, 1 March to 15 May | measured L/m2/d | predicted | bias | R2 day | R2 week |
                | --- | ---: | ---: | ---: | ---: | ---: |
                """);
        rows(page, compartments, LocalDate.of(2020, 3, 1), LocalDate.of(2020, 5, 16));
        return page.toString();
    }

    private static void rows(StringBuilder page, List<Stand> stands, LocalDate from, LocalDate to) {
        double squares = 0;
        for (Stand stand : stands) {
            Stand judged = stand.from(from, to);
            squares += judged.log() * judged.log() / stands.size();
            page.append(
                    text(
                            "| %s | %.2f | %.2f | %+.0f %% | %.2f | %.2f |\n",
                            stand.name(),
                            mean(judged.measured()),
                            mean(judged.predicted()),
                            100 * Math.expm1(judged.log()),
                            judged.r2(),
                            judged.weekly().r2()));
        }
        page.append(text("\nRoot mean square of the log over them: %.2f.\n", Math.sqrt(squares)));
    }

    private static Stand cucumberHouse(Path folder, Path house, String name) throws IOException {
        Map<String, Map<String, String>> outside = table(folder.resolve("weather_hourly.csv"));
        StringBuilder csv = new StringBuilder("time,Tair,RHair,CO2air,sun,AssimLight\n");
        table(house.resolve("climate_hourly.csv"))
                .forEach(
                        (time, row) -> {
                            csv.append(time).append(',').append(row.get("Tair"));
                            csv.append(',').append(row.get("RHair"));
                            csv.append(',').append(row.get("CO2air"));
                            csv.append(',').append(sun(row, outside.get(time)));
                            csv.append(',').append(row.get("AssimLight")).append('\n');
                        });
        Trace trace =
                run(
                        csv.toString(),
                        CUCUMBER_START,
                        115,
                        """
                        temperature = "Tair in degC"
                        humidity = "RHair in %"
                        co2 = "CO2air in ppm"
                        global = "sun in W/m2"
                        lamp = "AssimLight in %"
                        """,
                        "cucumber",
                        2.5,
                        21);
        return stand(name, house, CUCUMBER_START, trace);
    }

    /** Sun inside, W/m2; empty where something is missing. */
    private static String sun(Map<String, String> inside, Map<String, String> outside) {
        if (outside == null
                || outside.get("Iglob").isEmpty()
                || inside.get("EnScr").isEmpty()
                || inside.get("BlackScr").isEmpty()) {
            return "";
        }
        double screens =
                (1 - 0.25 * number(inside, "EnScr") / 100)
                        * (1 - 0.98 * number(inside, "BlackScr") / 100);
        return text("%.3f", Math.max(0, number(outside, "Iglob")) * 0.50 * screens);
    }

    private static Stand tomatoCompartment(Path folder, Path compartment, String name)
            throws IOException {
        Map<String, Map<String, String>> days = table(compartment.resolve("daily.csv"));
        StringBuilder csv = new StringBuilder("time,T,RH,sun,lamps\n");
        table(folder.resolve("weather_hourly.csv"))
                .forEach(
                        (time, row) -> {
                            Map<String, String> day = days.get(time.substring(0, 10));
                            if (day == null || row.get("PARout").isEmpty()) {
                                return;
                            }
                            int hour = Integer.parseInt(time.substring(11, 13));
                            boolean high = hour >= 7 && hour < 23;
                            double kWh =
                                    Math.max(0, number(day, high ? "ElecHigh" : "ElecLow"))
                                            / (high ? 16 : 8);
                            double lamps = kWh * 1000 * LAMP_UMOL_PER_J;
                            double sun = 0.50 * Math.max(0, number(row, "PARout"));
                            csv.append(time)
                                    .append(sun + lamps > 10 ? ",24,70," : ",18,85,")
                                    .append(text("%.3f,%.3f\n", sun, lamps));
                        });
        Map<String, String> crop =
                table(compartment.resolve("crop.csv")).values().stream()
                        .filter(row -> !row.get("stem_dens").isEmpty())
                        .findFirst()
                        .orElseThrow();
        Trace trace =
                run(
                        csv.toString(),
                        TOMATO_START,
                        152,
                        """
                        temperature = "T in degC"
                        humidity = "RH in %"
                        ppfd = "sun in umol/m2/s"
                        lamp = "lamps in umol/m2/s"
                        """,
                        "tomato",
                        number(crop, "stem_dens"),
                        49);
        return stand(name, compartment, TOMATO_START, trace);
    }

    private static final int PLANTS = 10;

    private static Trace run(
            String csv,
            LocalDate start,
            int days,
            String columns,
            String crop,
            double plantsPerM2,
            int ageDays)
            throws IOException {
        Path folder = Files.createTempDirectory("stand");
        try {
            Files.writeString(folder.resolve("inside.csv"), csv);
            Files.writeString(
                    folder.resolve("stand.toml"),
                    text(
                            """
                            title = "measured stand"
                            start = %s
                            length = "%d days"
                            [climate]
                            kind = "weather"
                            cover = "inside"
                            file = "inside.csv"
                            longer_gaps = "days beside"
                            lamps_type = "high-pressure-sodium"
                            lamps_full = "187 umol/m2/s"
                            [climate.columns]
                            %s
                            [feed]
                            recipe = "steiner"
                            ec = "2.5 mS/cm"
                            [tray.stand]
                            length = "150 cm"
                            width = "100 cm"
                            depth = "30 cm"
                            crop = "%s"
                            plants = %d
                            ground = "%.4f m2"
                            nursery_age = "%d days"
                            harvest_after = "300 days"
                            cup_bottom = "18.5 cm"
                            start_level = "20 cm"
                            hand = { to = "20 cm" }
                            [tray.stand.crop_override.root_zone]
                            water_without_oxygen = "100 %%"
                            growth_without_oxygen = "100 %%"
                            [visits]
                            days = "daily"
                            at = "00:00"
                            flush = "at limit"
                            """,
                            start, days, columns, crop, PLANTS, PLANTS / plantsPerM2, ageDays));
            Reading reading = ScenarioReader.read(folder.resolve("stand.toml"));
            if (reading instanceof Reading.Good good) {
                good.notes().forEach(note -> System.err.println(note.key() + ": " + note.text()));
                Trace trace = Simulation.run(good.scenario());
                trace.events().stream()
                        .map(event -> event.kind().toString())
                        .filter(kind -> !kind.equals("TOP_UP"))
                        .distinct()
                        .forEach(kind -> System.err.println("event " + kind));
                return trace;
            }
            throw new IOException(String.valueOf(reading));
        } finally {
            Files.deleteIfExists(folder.resolve("inside.csv"));
            Files.deleteIfExists(folder.resolve("stand.toml"));
            Files.deleteIfExists(folder);
        }
    }

    private static Stand stand(String name, Path folder, LocalDate start, Trace trace)
            throws IOException {
        Stand stand = new Stand(name, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        Series drunk = trace.trays().get(0).transpirationM3();
        double groundM2 =
                ((tideless.rig.Planting.OfCrop) trace.trays().get(0).tray().planting()).groundM2();
        table(folder.resolve("daily.csv"))
                .forEach(
                        (date, row) -> {
                            int day =
                                    (int) (LocalDate.parse(date).toEpochDay() - start.toEpochDay());
                            boolean kept =
                                    row.get("flag").isEmpty() && !row.get("uptake").isEmpty();
                            if (kept && day >= 0 && 24 * day + 24 <= drunk.size()) {
                                stand.add(
                                        LocalDate.parse(date),
                                        number(row, "uptake"),
                                        1000 * drunk.sum(24 * day, 24 * day + 24) / groundM2);
                            }
                        });
        return stand;
    }

    /** Rows by their first cell, cells by their names. */
    private static Map<String, Map<String, String>> table(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        String[] names = lines.get(0).split(",", -1);
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < names.length && i < cells.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.put(cells[0], row);
        }
        return rows;
    }

    private static double number(Map<String, String> row, String name) {
        return Double.parseDouble(row.get(name));
    }

    /** Of all files of these names and of every daily.csv, in order of their paths. */
    private static String digest(Path folder, String... names) throws IOException {
        MessageDigest sha;
        try {
            sha = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
        List<String> read = new ArrayList<>(List.of(names));
        read.add("daily.csv");
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted().toList()) {
                if (read.contains(file.getFileName().toString())) {
                    sha.update(Files.readAllBytes(file));
                }
            }
        }
        return HexFormat.of().formatHex(sha.digest()).substring(0, 16);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
