package tideless.attack;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Sound files to break: every shipped scenario and lesson, cut to a few days so that many can be
 * tried; rigs of our own for logs, weather, air measured inside, crop files and bottles; and calls
 * of {@code mix}, of {@code new}, and of every other command that writes or runs something.
 *
 * @param benches sets of files, each with a bench.toml
 * @param calls command lines of {@code mix}
 * @param beginnings command lines of {@code new}, without the file it writes
 * @param doors command lines of the others, without the scenario and where they write to
 * @param lines lines of TOML
 * @param keys every key there is, with its table and an example
 * @param values what stands behind an equals sign
 * @param names of columns
 */
record Corpus(
        List<Map<String, String>> benches,
        List<List<String>> calls,
        List<List<String>> beginnings,
        List<Door> doors,
        List<String> lines,
        List<Stated> keys,
        List<String> values,
        List<String> names) {
    /** A key of the reference page; NAME in its table stands for any name. */
    record Stated(String table, String line) {}

    /**
     * A command that takes a scenario.
     *
     * @param words before the scenario
     * @param options after it
     * @param file what {@code -o} asks for: the name of a file, "" for a folder, or null where the
     *     command writes nothing
     */
    record Door(List<String> words, List<String> options, String file) {}

    static final String BENCH = "bench.toml";

    private static final String LONG_LOG =
            """
            # an invented log
            date,time,where,what,value,remark,use
            2026-03-02,08:00,shelf,level,25 cm,full,
            2026-03-02,09:30,a,valve moved,4 cm,,
            2026-03-03,8:00 pm,tray a,EC,1.62 mS/cm,,yes
            2026-03-03,20:00,a,ph,6.1,,no
            2026-03-03,20:00,a,temperature,19 degC,"cool, for once",
            2026-03-04,08:00,shelf,refill,0.8 L,,
            2026-03-04,08:00,shelf,water in,300 mL,,
            2026-03-04,08:00,a,fresh solution,,,
            2026-03-04,08:00,a,plants lost,2,,
            2026-03-04,08:00,a,fresh weight,12 g,,
            2026-03-04,08:00,all,lamp changed,50 %,,
            2026-03-04,21:00,,nothing to see,,,
            """;

    private static final String WIDE_LOG =
            """
            date;time;shelf level (cm);a EC (mS/cm);a root length (mm);a flush;remark
            02.03.2026;08:00;25,0;1,6;40;;full
            03.03.2026;08:00;24,3;1,65;;yes;
            04.03.2026;08:00;23,9;;;;
            """;

    private static final String RIG =
            """
            title = "Bench"
            start = 2026-03-02
            length = "3 days"
            [climate]
            kind = "room"
            day_temperature = "22 degC"
            [lamp]
            ppfd = "240 umol/m2/s"
            [feed]
            recipe = "steiner"
            ec = "1.6 mS/cm"
            [reservoir.shelf]
            length = "40 cm"
            width = "28 cm"
            depth = "28 cm"
            floor_above_bench = "60 cm"
            [tray.a]
            length = "60 cm"
            width = "35 cm"
            depth = "8 cm"
            gap = "5 %"
            crop = "basil"
            plants = 8
            [tray.a.valve]
            setting = "4.5 cm"
            """;

    private static final String LABELS =
            """
            ratio = "1:300"
            [feed.part_a]
            label = "NO3-N 2.58 %, NH4-N 0.127 %, CaO 4.06 %, K2O 1.42 %, density 1.1 kg/L"
            [feed.part_b]
            label = "NO3-N 0.677 %, P2O5 1.93 %, K2O 4.27 %, MgO 0.913 %, SO3 2.42 %, density 1.1 kg/L"
            """;

    List<String> texts() {
        return benches.stream().flatMap(files -> files.values().stream()).toList();
    }

    List<String> words() {
        return Stream.concat(calls.stream(), beginnings.stream()).flatMap(List::stream).toList();
    }

    /** Gathers them from the project's folder. */
    static Corpus gather() throws IOException {
        List<Map<String, String>> benches = new ArrayList<>();
        List<Path> shipped;
        try (Stream<Path> all = Files.walk(Path.of("scenarios"))) {
            shipped = all.filter(path -> path.toString().endsWith(".toml")).sorted().toList();
        }
        for (Path path : shipped) {
            Map<String, String> files = new LinkedHashMap<>();
            String text = Files.readString(path);
            files.put(
                    BENCH,
                    text.replaceFirst("length = \"\\d+ days\"", "length = \"3 days\"")
                            .replace("weather/typical-year-45n-8e.csv", "weather.csv"));
            if (text.contains("logged-bench-log.csv")) {
                files.put(
                        "logged-bench-log.csv",
                        Files.readString(path.resolveSibling("logged-bench-log.csv")));
            }
            if (text.contains("typical-year")) {
                files.put("weather.csv", typicalDays());
            }
            benches.add(files);
        }
        benches.add(
                Map.of(
                        BENCH,
                        RIG.replace("crop = \"basil\"\nplants = 8", "thirst_file = \"tray-a.csv\""),
                        "tray-a.csv",
                        "time,thirst\ndays,L/day\n0,1\n1,2.5\n2,1.5\n"));
        benches.add(
                Map.of(
                        BENCH,
                        weather("cover = \"inside\"\nfile = \"inside.csv\""),
                        "inside.csv",
                        hours(
                                "time,temperature,humidity,ppfd\nlocal,degC,%,umol/m2/s\n",
                                ",21,60,200")));
        benches.add(
                Map.of(
                        BENCH,
                        weather("cover = \"open\"\nfile = \"site.csv\""),
                        "site.csv",
                        hours(
                                "time,temperature,humidity,global,wind\nUTC,degC,%,W/m2,m/s\n",
                                ",11.5,60,200,2.5")));
        benches.add(
                Map.of(
                        BENCH,
                        weather("cover = \"glass\"\nclock = \"typical year\"\nfile = \"site.epw\""),
                        "site.epw",
                        resource("/tideless/scenario/invented.epw")));
        for (String crop : List.of("lettuce", "dwarf-tomato")) {
            benches.add(
                    Map.of(
                            BENCH,
                            RIG.replace("crop = \"basil\"", "crop_file = \"own.toml\""),
                            "own.toml",
                            resource("/tideless/crop/" + crop + ".toml")));
        }
        benches.add(
                Map.of(
                        BENCH,
                        RIG.replace("recipe = \"steiner\"\n", "")
                                .replace("[reservoir", LABELS + "[reservoir")));
        for (String log : List.of(LONG_LOG, WIDE_LOG)) {
            benches.add(
                    Map.of(BENCH, RIG + "[log]\nfile = \"bench-log.csv\"\n", "bench-log.csv", log));
        }
        return new Corpus(
                benches,
                callsOfMix(),
                callsOfNew(),
                doorsOfAll(),
                linesOf(benches),
                reference(),
                valuesOf(benches),
                namesOfColumns());
    }

    private static String weather(String climate) {
        return RIG.replace(
                "kind = \"room\"\nday_temperature = \"22 degC\"",
                "kind = \"weather\"\n"
                        + climate
                        + "\n[place]\nlatitude = \"45 N\"\nlongitude = \"8 E\"");
    }

    private static String hours(String head, String cells) {
        StringBuilder text = new StringBuilder(head);
        for (int h = 0; h <= 96; h++) {
            text.append("2026-03-%02dT%02d:00".formatted(1 + h / 24, h % 24))
                    .append(cells)
                    .append('\n');
        }
        return text.toString();
    }

    /** The days of the shipped weather that the cut scenarios meet. */
    private static String typicalDays() throws IOException {
        List<String> rows =
                Files.readAllLines(Path.of("scenarios/weather/typical-year-45n-8e.csv"));
        StringBuilder text = new StringBuilder();
        for (String row : rows) {
            if (!row.matches("\\d{8}:.*") || row.matches("\\d{4}041[3-9]:.*")) {
                text.append(row).append('\n');
            }
        }
        return text.toString();
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = Corpus.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static List<List<String>> callsOfMix() {
        List<String> bottles =
                List.of(
                        "mix",
                        "--volume=24 L",
                        "--ec=1.4 mS/cm",
                        "--ph=6.0",
                        "--ratio=1:300",
                        "--part-a=NO3-N 2.58 %, NH4-N 0.13 %, CaO 4.06 %, K2O 1.42 %, density 1.1 kg/L",
                        "--part-b=NO3-N 0.68 %, P2O5 1.93 %, K2O 4.27 %, MgO 0.91 %, SO3 2.42 %,"
                                + " density 1.1 kg/L");
        List<String> strong = new ArrayList<>(bottles);
        strong.addAll(List.of("--reading-ec=1.7 mS/cm", "--reading-ph=7.1", "--vessel=40 L"));
        List<String> weak = new ArrayList<>(bottles);
        weak.addAll(
                List.of(
                        "--reading-ec=0.6 mS/cm",
                        "--acid=nitric-38",
                        "--base=potassium-hydroxide-50"));
        List<String> trial = new ArrayList<>(bottles);
        trial.add("--ph-minus=2 mL in 1 L from 7.1 to 6.2");
        List<String> salts =
                List.of(
                        "mix",
                        "--volume=5 gal",
                        "--ec=1.8 mS/cm",
                        "--recipe=hoagland-1",
                        "--ec-scale=ppm500",
                        "--units=us",
                        "--analysis=calcium 55 mg/L, magnesium 12 mg/L, sodium 28 mg/L, sulfate 77 mg/L"
                                + " SO4, chloride 20 mg/L, alkalinity 8 dH, pH 7.4");
        List<String> pen =
                List.of(
                        "mix",
                        "--volume=20 L",
                        "--ec=900 ppm 500",
                        "--recipe=steiner",
                        "--water=hard-tap",
                        "--calcium=tetrahydrate",
                        "--ph=5.8",
                        "--reading-ph=4.2");
        return List.of(bottles, strong, weak, trial, salts, pen);
    }

    private static List<List<String>> callsOfNew() {
        List<String> teacher =
                List.of(
                        "new",
                        "--crop=lettuce",
                        "--plants=6",
                        "--trays=2",
                        "--size=60 x 35 x 8 cm",
                        "--filling=valve",
                        "--reservoir=60 L",
                        "--visits=mon wed fri",
                        "--away=2026-03-21 to 2026-03-29",
                        "--start=2026-03-02",
                        "--usual");
        List<String> bucket =
                List.of(
                        "new",
                        "--crop=1 dwarf-tomato",
                        "--size=5 gallon bucket",
                        "--filling=hand",
                        "--light=outdoors 12 h",
                        "--visits=daily",
                        "--start=May 1, 2026",
                        "--away=10 days from July 3",
                        "--usual");
        List<String> tank =
                List.of("new", "--crop=pak-choi", "--filling=once", "--light=2 x 12 W", "--usual");
        List<String> inWords =
                List.of(
                        "new",
                        "--crop=arugula",
                        "--size=2 ft x 14 in x 4 in",
                        "--filling=by hand",
                        "--visits=sat-mon and thursdays",
                        "--away=21.3.2026 - 29.3.2026",
                        "--start=2026-03-02",
                        "--usual");
        List<String> season =
                List.of(
                        "new",
                        "--crop=6 lettuce, 4 basil",
                        "--size=2 of 60 x 35 x 10 cm",
                        "--reservoir=60 L hard tap with 70 % rain",
                        "--light=80 W 14 h over both",
                        "--start=mid March 2026 to end of May 2026",
                        "--visits=twice a week",
                        "--away=half-term 15 to 19 April",
                        "--usual");
        List<String> bought =
                List.of(
                        "new",
                        "--filling=once",
                        "--water=0.3 mS/cm",
                        "--feed=bought 1.6 mS/cm",
                        "--end=10 weeks",
                        "--start=2026-03-02",
                        "--usual");
        return List.of(teacher, bucket, tank, inWords, season, bought);
    }

    private static List<Door> doorsOfAll() {
        String few = "--members=2";
        return List.of(
                new Door(List.of("log", "new"), List.of(), "log.csv"),
                new Door(List.of("page"), List.of(), "page.html"),
                new Door(List.of("calendar"), List.of(few, "--seed=3"), "tasks.ics"),
                new Door(List.of("check"), List.of("--units=us", "--ec-scale=ppm700"), null),
                new Door(List.of("light"), List.of("--units=us", "--ec-scale=ppm500"), null),
                new Door(List.of("away"), List.of("--from=2026-03-03", "--every=1", few), ""),
                new Door(List.of("away"), List.of("--absence=2026-03-03..2026-03-04", few), ""),
                new Door(
                        List.of("size"),
                        List.of("--what=reservoir", "--visits-every=2", "--chance=0.8", few),
                        null),
                new Door(List.of("size"), List.of("--what=plants", few), null),
                new Door(
                        List.of("compare"),
                        List.of(
                                "--vary=feed.ec=1.2 mS/cm..2 mS/cm/2",
                                "--members=1",
                                "--units=us",
                                "--ec-scale=ppm700"),
                        ""),
                new Door(List.of("sensitivity"), List.of("--points=4"), ""));
    }

    private static List<String> linesOf(List<Map<String, String>> benches) {
        TreeSet<String> lines = new TreeSet<>();
        for (Map<String, String> files : benches) {
            for (Map.Entry<String, String> file : files.entrySet()) {
                if (file.getKey().endsWith(".toml")) {
                    lines.addAll(List.of(file.getValue().split("\n")));
                }
            }
        }
        return List.copyOf(lines);
    }

    private static List<Stated> reference() throws IOException {
        List<Stated> keys = new ArrayList<>();
        String table = "";
        Matcher row =
                Pattern.compile("(?m)^## \\[(.*?)\\]|^\\| `([^`]+)` \\|.*\\| `([^`]+)` \\|$")
                        .matcher(Files.readString(Path.of("docs/scenario-reference.md")));
        while (row.find()) {
            if (row.group(1) != null) {
                table = row.group(1);
            } else {
                keys.add(new Stated(table, row.group(2) + " = " + row.group(3)));
            }
        }
        if (keys.size() < 100) {
            throw new IOException("docs/scenario-reference.md: no keys found in it");
        }
        return keys;
    }

    private static List<String> valuesOf(List<Map<String, String>> benches) {
        TreeSet<String> values = new TreeSet<>();
        for (Map<String, String> files : benches) {
            Matcher value = Pattern.compile("(?<== )[^\n]+").matcher(files.get(BENCH));
            while (value.find()) {
                values.add(value.group());
            }
        }
        return List.copyOf(values);
    }

    private static List<String> namesOfColumns() {
        return List.of(
                "time",
                "temperature",
                "humidity",
                "global",
                "wind",
                "pressure",
                "thirst",
                "ppfd",
                "co2",
                "lamp",
                "diffuse",
                "dew_point",
                "direct",
                "precipitation",
                "EC",
                "ec",
                "note");
    }
}
