package tideless.report;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.words.Names;

/** An empty log of a rig: a table to type into and a sheet to hang up beside a pencil. */
public final class LogFiles {
    private static final String STYLE =
            """
            body { font: 11pt/1.3 sans-serif; margin: 1.5em auto; max-width: 60em; padding: 0 1em;
                   color: #111; background: #fff; }
            h1 { font-size: 1.3em; margin: 0 0 .2em; }
            table { border-collapse: collapse; width: 100%; margin: .6em 0; }
            th, td { border: 1px solid #555; padding: .2em .4em; text-align: left; }
            th { font-size: .85em; }
            td { height: 1.9em; }
            p { margin: .4em 0; }
            @page { size: landscape; margin: 10mm; }
            @media print { body { margin: 0; max-width: none; padding: 0; } }
            """;

    private static final int ROWS = 16; // as many as one sheet holds, A4 or letter, on its side

    private LogFiles() {}

    /**
     * Writes both, or neither; never over a file that is there.
     *
     * @param words all that may stand under what
     * @param shown the units of its examples
     * @param file the table's, ending in .csv; the sheet's ends in .html
     * @param inputs files that were read for it
     */
    public static WriteResult write(
            Scenario scenario,
            List<String> words,
            ShownIn shown,
            Path file,
            Collection<Path> inputs) {
        String name = file.getFileName().toString();
        Path sheet = file.resolveSibling(name.substring(0, name.length() - 4) + ".html");
        for (Path target : List.of(file, sheet)) {
            if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
                return new WriteResult(
                        List.of(),
                        target
                                + ": is there already, and a log is never written over"
                                + "\n    Maybe another name: -o other-log.csv",
                        true);
            }
        }
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(
                name,
                table(scenario, worded(words, shown), shown).getBytes(StandardCharsets.UTF_8));
        files.put(
                sheet.getFileName().toString(),
                sheet(scenario, worded(words, shown), shown).getBytes(StandardCharsets.UTF_8));
        Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of("."));
        return ResultFiles.put(folder, () -> files, inputs);
    }

    private static String reservoirs(Scenario scenario) {
        return named(scenario.reservoirs().stream().map(Reservoir::name).toList());
    }

    private static String trays(Scenario scenario) {
        return named(scenario.trays().stream().map(Tray::name).toList());
    }

    private static String named(List<String> names) {
        return names.isEmpty()
                ? "none"
                : String.join(", ", names.stream().map(Names::clean).toList());
    }

    /** Who pours gallons need not write of litres. */
    private static List<String> worded(List<String> words, ShownIn shown) {
        return words.stream()
                .map(word -> shown.us() && word.equals("litres in") ? "gallons in" : word)
                .toList();
    }

    private static String litresIn(List<String> words) {
        return words.contains("gallons in") ? "gallons in" : "litres in";
    }

    private static String mostWorth(Scenario scenario, ShownIn shown) {
        String much = shown.us() ? "gallons" : "litres";
        return (scenario.reservoirs().isEmpty()
                        ? "the level of each tray on three days a week and before it is topped up, the "
                                + much
                                + " that go in"
                        : "the level of the reservoir on three days a week, the "
                                + much
                                + " of each refill")
                + ", the EC of each tray once a week, and once the level in the evening and again the"
                + " next morning, which finds a leak.";
    }

    static String table(Scenario scenario, List<String> words, ShownIn shown) {
        String first = words.get(0);
        String where =
                scenario.reservoirs().isEmpty()
                        ? scenario.trays().get(0).name()
                        : scenario.reservoirs().get(0).name();
        return """
                # Log of: %s
                # One line for each thing you read or do, in any order. Lines that begin with # are passed over.
                # where: reservoirs %s; trays %s
                # what: %s
                # value: with its unit, as %s, 85 g; %s or refill say how much went in
                # use: no keeps a reading out that you do not believe
                # For example: %s,08:00,%s,%s,%s,before the refill,
                date,time,where,what,value,remark,use
                """
                .formatted(
                        Names.clean(scenario.title()),
                        reservoirs(scenario),
                        trays(scenario),
                        String.join(", ", words),
                        shown.told("14.5 cm, 6 L, 1.82 mS/cm, 20 degC"),
                        litresIn(words),
                        scenario.start(),
                        Names.clean(where),
                        first,
                        shown.told("14.5 cm"));
    }

    static String sheet(Scenario scenario, List<String> words, ShownIn shown) {
        StringBuilder page = new StringBuilder();
        String title = MixPage.text(Names.clean(scenario.title()));
        page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\" />\n")
                .append("<meta name=\"viewport\" content=\"width=device-width\" />\n<title>Log: ")
                .append(title)
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<h1>Log: ")
                .append(title)
                .append("</h1>\n<p>where: reservoirs: ")
                .append(MixPage.text(reservoirs(scenario)))
                .append("; trays: ")
                .append(MixPage.text(trays(scenario)))
                .append("</p>\n<p>what: ")
                .append(MixPage.text(String.join(", ", words)))
                .append("; value with its unit, as ")
                .append(shown.told("14.5 cm, 6 L, 1.82 mS/cm"))
                .append(", 85 g</p>\n<p>Most worth: ")
                .append(mostWorth(scenario, shown))
                .append("</p>\n<table>\n<thead><tr>");
        for (String column : List.of("date", "time", "where", "what", "value", "remark")) {
            page.append("<th>").append(column).append("</th>");
        }
        page.append("</tr></thead>\n<tbody>\n");
        String row = "<tr>" + "<td></td>".repeat(6) + "</tr>\n";
        return page.append(row.repeat(ROWS))
                .append("</tbody>\n</table>\n</body>\n</html>\n")
                .toString();
    }
}
