package tideless.attack;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Ways to break a text, each drawn from a stream of random numbers. */
final class Mutations {
    private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");
    private static final Pattern UNIT = Pattern.compile("(?<=\\d )[A-Za-z%/][\\w/%^()]*");
    private static final Pattern QUOTED = Pattern.compile("\"[^\"\n]*\"");
    private static final Pattern VALUE = Pattern.compile("(?<== )[^\n]+");
    private static final Pattern CELL = Pattern.compile("[^,;\n]*");
    private static final Pattern DATE =
            Pattern.compile("\\d{4}-?\\d\\d-?\\d\\d([T: ]\\d\\d:?\\d\\d)?");

    private static final String[] NUMBERS = {
        "0",
        "-0",
        "-1",
        "1",
        "0.03",
        "1e-300",
        "1e-320",
        "1e308",
        "1e309",
        "-1e9",
        "NaN",
        "nan",
        "inf",
        "-inf",
        "Infinity",
        "0x10",
        "1_000",
        "1,5",
        ".5",
        "5.",
        "+.5",
        "1e",
        "1.2.3",
        "00012",
        "9223372036854775808",
        "99999999999999999999999",
        "0.1000000000000000055511151231257827",
        "100",
        "1000",
        "1100",
        "100000",
        "0.001",
        "12",
        "23.999999",
        "24",
        "\u0661\u0662",
        "1e-9"
    };

    private static final String[] UNITS = {
        "cm",
        "mm",
        "m",
        "in",
        "ft",
        "L",
        "mL",
        "gal",
        "m3",
        "degC",
        "degF",
        "K",
        "%",
        "days",
        "h",
        "min",
        "s",
        "weeks",
        "mS/cm",
        "uS/cm",
        "ppm",
        "ppm 500",
        "ppm 700",
        "umol/m2/s",
        "lux",
        "W",
        "m/s",
        "mol/L",
        "mmol/L",
        "meq/L",
        "mg/L",
        "dH",
        "fH",
        "L/day",
        "kPa",
        "Pa",
        "g",
        "kg/L",
        "",
        "\u00b0C",
        "\u00b5S/cm",
        "liters",
        "CM",
        "furlongs",
        "hPa",
        "UTC",
        "local",
        "W/m2",
        "MJ/m2/day"
    };

    private static final String[] DATES = {
        "0000-01-01",
        "0001-01-01",
        "1899-12-31",
        "2024-02-29",
        "2026-02-29",
        "2026-13-01",
        "2026-03-32",
        "2200-12-31",
        "9999-12-31",
        "+10000-01-01",
        "2026-03-02T25:00:00",
        "2026-03-02T00:00:00+25:00",
        "2026-03-02 24:00",
        "2026-3-2",
        "02.03.2026",
        "20260302:0000",
        "2026-03-29T02:30",
        "2026-03-02T00:00Z",
        "2026-03-01",
        "2026-03-04T07:59:59.999999999"
    };

    private static final String[] WORDS = {
        "",
        " ",
        "\u0000",
        "\u0007",
        "\u001b[31m",
        "\u202e",
        "\ufeff",
        "\ud83c\udf45",
        "\ud800",
        "\\u0007",
        "\\u202e",
        "\\U0010FFFF",
        "\\ud800",
        "\\",
        "\\\\",
        "%s",
        "%n",
        "{}",
        "${user.home}",
        "../../../etc/passwd",
        "/dev/zero",
        "/dev/stdin",
        "CON",
        "tasks.csv",
        "result.json",
        ".",
        "..",
        "/",
        "a/b",
        "a\\b",
        "null",
        "true",
        "never",
        "daily",
        "at limit",
        "when low at a visit",
        "room",
        "weather",
        "inside",
        "bucket",
        "box",
        "tub",
        "sealed",
        "24:00",
        "00:00",
        "-1:00",
        "12:60",
        "7",
        "basil",
        "pure",
        "steiner",
        "hoagland-2",
        WrittenFiles.MARKUP.get(0),
        WrittenFiles.MARKUP.get(1),
        WrittenFiles.MARKUP.get(2),
        WrittenFiles.MARKUP.get(3),
        WrittenFiles.MARKUP.get(4)
    };

    private static final String[] MARKS = {
        "\"",
        "'",
        "\"\"\"",
        "'''",
        "[",
        "]",
        "[[",
        "]]",
        "{",
        "}",
        "=",
        "==",
        ".",
        ",",
        ";",
        "#",
        "\n",
        "\r",
        "\r\n",
        "\t",
        "\u0000",
        "\ufeff",
        "\u00a0",
        "\u2028",
        "\\",
        "\\x",
        "[[[[[[[[[[[[[[[[[[[[",
        "{a={a={a={a={",
        "a.b.c.d.e.f.g.h = 1\n",
        "[tray]\n",
        "[[tray]]\n",
        "[tray.x]\n",
        "[reservoir]\n",
        "tray = 1\n",
        "x = [1,\n",
        "inf",
        "nan",
        "-",
        "+",
        ":",
        "/",
        "|",
        "\u001b[2J"
    };

    private final SplittableRandom random;
    private final Corpus corpus;

    Mutations(SplittableRandom random, Corpus corpus) {
        this.random = random;
        this.corpus = corpus;
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private String one(String[] of) {
        return of[random.nextInt(of.length)];
    }

    /** A text broken in one to five places. */
    String broken(String text, boolean table) {
        String now = text;
        int places = 1 + Math.min(below(5), Math.min(below(5), below(5)));
        for (int i = 0; i < places && now.length() < 100_000; i++) {
            now = table && below(3) > 0 ? inTable(now) : inWords(now);
        }
        return now;
    }

    private String inWords(String text) {
        return switch (below(36)) {
            case 0, 1, 2 -> replaced(text, NUMBER, one(NUMBERS));
            case 3 -> replaced(text, UNIT, one(UNITS));
            case 4 -> replaced(text, QUOTED, '"' + one(WORDS) + '"');
            case 5 -> replaced(text, QUOTED, '"' + one(NUMBERS) + ' ' + one(UNITS) + '"');
            case 6 -> replaced(text, VALUE, one(corpus.values()));
            case 7 -> replaced(text, DATE, one(DATES));
            case 8, 9, 10 -> atLine(text, one(corpus.lines()) + "\n");
            case 11 -> at(text, one(MARKS));
            case 12 -> letters(text);
            case 13, 14 -> lines(text);
            case 15 -> text.substring(0, below(text.length() + 1));
            case 16 -> bulk(text);
            case 17 -> spliced(text, one(corpus.texts()));
            case 18, 19, 20, 21, 22 -> scaled(text);
            case 23 -> swappedValues(text);
            default -> stated(text, one(corpus.keys()));
        };
    }

    /** A number made so many times as large or small. */
    private String scaled(String text) {
        List<MatchResult> found = NUMBER.matcher(text).results().toList();
        if (found.isEmpty()) {
            return text;
        }
        MatchResult at = one(found);
        double factor = List.of(0.0, 0.1, 0.5, 0.9, 1.1, 2.0, 5.0, 10.0, 100.0).get(below(9));
        double now = factor * Double.parseDouble(at.group());
        String by =
                now == Math.rint(now) && now < 1e9
                        ? Long.toString((long) now)
                        : Double.toString(now);
        return text.substring(0, at.start()) + by + text.substring(at.end());
    }

    private String swappedValues(String text) {
        List<MatchResult> found = VALUE.matcher(text).results().toList();
        return found.isEmpty() ? text : replaced(text, VALUE, one(found).group());
    }

    /** A key that may stand in the file, put where it belongs. */
    private String stated(String text, Corpus.Stated key) {
        String line = below(4) == 0 ? scaled(key.line()) : key.line();
        if (key.table().isEmpty()) {
            return line + "\n" + text;
        }
        Pattern head =
                Pattern.compile(
                        "(?m)^\\["
                                + key.table().replace(".", "\\.").replace("NAME", "([\\w-]+)")
                                + "]\n");
        List<MatchResult> found = head.matcher(text).results().toList();
        if (found.isEmpty()) {
            String name = key.table().startsWith("tray") ? "tray" : "reservoir";
            List<MatchResult> named =
                    Pattern.compile("(?m)^\\[" + name + "\\.([\\w-]+)]")
                            .matcher(text)
                            .results()
                            .toList();
            String own = named.isEmpty() ? "a" : one(named).group(1);
            return text + "\n[" + key.table().replace("NAME", own) + "]\n" + line + "\n";
        }
        MatchResult at = one(found);
        String name = line.substring(0, line.indexOf(' '));
        String without =
                text.substring(at.end())
                        .replaceFirst("(?m)^" + name.replace(".", "\\.") + " = .*\n", "");
        return text.substring(0, at.end()) + line + "\n" + without;
    }

    private String inTable(String text) {
        return switch (below(11)) {
            case 0, 1 -> replaced(text, CELL, one(NUMBERS));
            case 2 -> replaced(text, CELL, one(WORDS));
            case 3 -> replaced(text, DATE, one(DATES));
            case 4 -> replaced(text, CELL, one(corpus.names()));
            case 5 -> replaced(text, CELL, one(UNITS));
            case 6 -> at(text, ",");
            case 7 -> below(2) == 0 ? text.replace(',', ';') : text.replace('.', ',');
            case 8 -> lines(text);
            case 9 -> text.replace(',', ';').replace('.', ',');
            default -> below(2) == 0 ? text.replace("\n", "\r\n") : text.replace("\n", "\r");
        };
    }

    private String replaced(String text, Pattern pattern, String by) {
        List<MatchResult> found = pattern.matcher(text).results().toList();
        if (found.isEmpty()) {
            return at(text, by);
        }
        MatchResult at = one(found);
        return text.substring(0, at.start()) + by + text.substring(at.end());
    }

    private String at(String text, String more) {
        int place = below(text.length() + 1);
        return text.substring(0, place) + more + text.substring(place);
    }

    private String atLine(String text, String more) {
        int place = text.indexOf('\n', below(text.length() + 1)) + 1;
        return text.substring(0, place) + more + text.substring(place);
    }

    /** Some letters taken, doubled or made others. */
    private String letters(String text) {
        StringBuilder now = new StringBuilder(text);
        for (int i = below(8); i >= 0 && now.length() > 0; i--) {
            int place = below(now.length());
            switch (below(4)) {
                case 0 -> now.deleteCharAt(place);
                case 1 -> now.insert(place, now.charAt(place));
                case 2 -> now.setCharAt(place, (char) below(256));
                default -> now.setCharAt(place, (char) (now.charAt(place) ^ 1 << below(7)));
            }
        }
        return now.toString();
    }

    /** Lines taken, doubled, swapped or moved. */
    private String lines(String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int from = below(lines.size());
        int to = below(lines.size());
        switch (below(4)) {
            case 0 -> lines.remove(from);
            case 1 -> lines.add(to, lines.get(from));
            case 2 -> lines.add(to, lines.remove(from));
            default -> lines.subList(Math.min(from, to), Math.max(from, to)).clear();
        }
        return String.join("\n", lines);
    }

    /** Much of one thing. */
    private String bulk(String text) {
        int times = 1 << below(11);
        return switch (below(6)) {
            case 0 -> atLine(text, "\n".repeat(times));
            case 1 -> atLine(text, "# x\n".repeat(times));
            case 2 -> at(text, one(MARKS).repeat(Math.min(times, 300)));
            case 3 -> at(text, "x".repeat(times));
            case 4 -> atLine(text, (one(corpus.lines()) + "\n").repeat(Math.min(times, 60)));
            default -> replaced(text, NUMBER, "9".repeat(times));
        };
    }

    private String spliced(String text, String other) {
        int place = below(text.length() + 1);
        return text.substring(0, place) + other.substring(below(other.length() + 1));
    }

    /** A title that a page must quote, in place of the scenario's own. */
    String markedUp(String text) {
        String title = "title = '''" + one(WrittenFiles.MARKUP) + "'''";
        return text.replaceFirst("(?m)^title = .*", Matcher.quoteReplacement(title));
    }

    /** A command line broken in one to three places. */
    List<String> brokenCall(List<String> call) {
        List<String> now = new ArrayList<>(call);
        for (int i = below(3); i >= 0; i--) {
            int place = 1 + below(Math.max(1, now.size() - 1));
            if (place >= now.size()) {
                now.add(one(corpus.words()));
                continue;
            }
            String word = now.get(place);
            switch (below(9)) {
                case 0 -> now.remove(place);
                case 1 -> now.add(place, one(corpus.words()));
                case 2, 3 -> now.set(place, replaced(word, NUMBER, one(NUMBERS)));
                case 4 -> now.set(place, replaced(word, UNIT, one(UNITS)));
                case 5 -> now.set(place, letters(word));
                case 6 -> now.set(place, word.replaceAll("(?<==).*", "") + one(WORDS));
                case 7 -> now.set(place, at(word, one(MARKS)));
                default -> now.add(one(corpus.words()));
            }
        }
        return now;
    }
}
