package tideless.crop;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which crop each row of {@link Emergence} is about, and what judges it: makes the library's {@code
 * judged.csv} and the tables by crop of docs/validation.md.
 */
final class JudgedCrops {
    /** Author and year, a report's number, or an abstract: what counts as a published trial. */
    private static final Pattern TRIAL =
            Pattern.compile(
                    "^[^,]*(\\(\\d{4}\\)|NASA/TP-\\d{4}-\\d+)|^[^,]*(?=, (record \\d+, )?abstract)"
                            + "|^Utah State University|^University of Florida");

    /** Rows whose name does not say the crop. */
    private static final Map<String, String> CROP =
            Map.ofEntries(
                    Map.entry("carotti-dry", "lettuce"),
                    Map.entry("carotti-fresh", "lettuce"),
                    Map.entry("pennisi-water", "lettuce"),
                    Map.entry("kratky-head", "lettuce"),
                    Map.entry("kratky-water", "lettuce"),
                    Map.entry("kratky-days", "lettuce"),
                    Map.entry("kratky-water-220", "lettuce"),
                    Map.entry("graamans-day", "lettuce"),
                    Map.entry("gavhane-ratio", "lettuce"),
                    Map.entry("gavhane-water", "lettuce"),
                    Map.entry("carmassi", "tomato"),
                    Map.entry("walters-dry", "basil"),
                    Map.entry("walters-fresh", "basil"),
                    Map.entry("mizuna-over-lettuce", "mizuna"),
                    Map.entry("medrano-night", "cucumber"));

    /**
     * What a nursery hands over at the usual age, from memory, low confidence: tomato with its
     * first truss in sight, sweet pepper, cucumber with four leaves.
     */
    private static final Map<String, String> HANDED_OVER =
            Map.of(
                    "tomato", "40-70 g, 800-2000 cm2",
                    "sweet-pepper", "25-50 g, 700-1700 cm2",
                    "cucumber", "20-60 g, 700-1600 cm2");

    /**
     * Figures of this page's rows at commit 26f77bb, 26 November 2026, in the rows' own units:
     * before crops had their own nurseries, two forms of thirst, carbon dioxide and later contents.
     */
    private static final Map<String, String> BEFORE =
            Map.ofEntries(
                    Map.entry("carotti-dry", "0.411"),
                    Map.entry("carotti-fresh", "8.22"),
                    Map.entry("pennisi-water", "55.3"),
                    Map.entry("kratky-head", "351"),
                    Map.entry("kratky-water", "5.19"),
                    Map.entry("kratky-days", "26.0"),
                    Map.entry("kratky-water-220", "3.27"),
                    Map.entry("chamber-lettuce", "1.21"),
                    Map.entry("chamber-spinach", "1.21"),
                    Map.entry("chamber-tomato", "2.68"),
                    Map.entry("chamber-sweet-pepper", "2.75"),
                    Map.entry("chamber-strawberry", "0.729"),
                    Map.entry("ksc-lettuce-peak", "3.22"),
                    Map.entry("mature-tomato", "1.39"),
                    Map.entry("mature-cucumber", "1.54"),
                    Map.entry("mature-sweet-pepper", "1.41"),
                    Map.entry("mature-strawberry", "0.150"),
                    Map.entry("mature-tomato-peak", "2.01"),
                    Map.entry("mature-dwarf-tomato", "0.365"),
                    Map.entry("mature-chilli", "0.682"),
                    Map.entry("carmassi", "3.01"),
                    Map.entry("graamans-day", "1.94"),
                    Map.entry("pak-choi-weight", "29.1"),
                    Map.entry("basil-water", "28.3"),
                    Map.entry("tomato-water", "33.6"),
                    Map.entry("uptake-lettuce-NO3", "13.0"),
                    Map.entry("uptake-lettuce-P", "0.743"),
                    Map.entry("uptake-lettuce-K", "6.87"),
                    Map.entry("uptake-lettuce-Ca", "1.63"),
                    Map.entry("uptake-lettuce-Mg", "0.789"));

    private JudgedCrops() {}

    private static String cropOf(Emergence.Row row) {
        String known = CROP.get(row.id());
        if (known != null) {
            return known;
        }
        String found = "";
        for (String name : CropFiles.names()) {
            if (row.id().contains(name) && name.length() > found.length()) {
                found = name;
            }
        }
        if (found.isEmpty()) {
            throw new IllegalStateException("of which crop is " + row.id());
        }
        return found;
    }

    /**
     * What was chosen with the row in view, is where numbers are from, or compares two models of
     * ours, judges nothing.
     */
    private static boolean judges(Emergence.Row row) {
        return !row.id().startsWith("uptake-")
                && !row.id().startsWith("two-models-")
                && !row.id().equals("graamans-day") // where lettuce's stomata are from
                && !row.id().equals("jin-lettuce")
                && !row.id().equals("mizuna-over-lettuce") // in view when brassicas' light use rose
                && !row.id().startsWith("ripening-tomato") // where its fruit's warmth is from
                && !row.id().equals("ripening-chilli")
                && !row.id().equals("ripening-sweet-pepper")
                && !row.id().startsWith("nederhoff-"); // in view when growth's answer to air rose
    }

    private static String trial(Emergence.Row row) {
        Matcher matcher = TRIAL.matcher(row.source());
        return matcher.find() ? matcher.group() : "";
    }

    /** Stands run by day in docs/validation-stands.md. */
    private static final Map<String, Integer> HOUSES = Map.of("cucumber", 3, "tomato", 4);

    /** Of one crop. */
    private record Count(
            Set<String> trials,
            Set<String> inView,
            int figures,
            int met,
            int handbook,
            int handbookMet,
            int set) {}

    private static Count count(String crop, List<Emergence.Row> rows) {
        Set<String> trials = new LinkedHashSet<>();
        Set<String> inView = new LinkedHashSet<>();
        int figures = 0;
        int met = 0;
        int handbook = 0;
        int handbookMet = 0;
        int set = 0;
        for (Emergence.Row row : rows) {
            if (!cropOf(row).equals(crop)) {
                continue;
            }
            if (!judges(row)) {
                set++;
                inView.add(trial(row));
            } else if (trial(row).isEmpty()) {
                handbook++;
                handbookMet += row.hit() ? 1 : 0;
            } else {
                trials.add(trial(row));
                figures++;
                met += row.hit() ? 1 : 0;
            }
        }
        return new Count(trials, inView, figures, met, handbook, handbookMet, set);
    }

    /** The library's table. */
    static String csv(List<Emergence.Row> rows) {
        StringBuilder csv =
                new StringBuilder("crop,trials,figures,met,handbook,handbook_met,houses\n");
        for (String crop : CropFiles.names()) {
            Count count = count(crop, rows);
            csv.append(
                    text(
                            "%s,%d,%d,%d,%d,%d,%d\n",
                            crop,
                            count.trials().size(),
                            count.figures(),
                            count.met(),
                            count.handbook(),
                            count.handbookMet(),
                            HOUSES.getOrDefault(crop, 0)));
        }
        return csv.toString();
    }

    /** Models and reviews: they set numbers, but nothing was grown for them. */
    private static final Set<String> NO_TRIAL =
            Set.of(
                    "",
                    "Pereira and Paredes (2025)",
                    "van Henten (1994)",
                    "Vanthoor (2011)",
                    "Graamans et al. (2017)");

    /** Trials of this very crop that set a number of it or were in view when one was chosen. */
    private static Set<String> setting(String crop, Count count) {
        Set<String> trials = new LinkedHashSet<>(setBy(crop, false));
        trials.addAll(count.inView());
        trials.removeAll(NO_TRIAL);
        return trials;
    }

    /** Trials that a crop was held beside in all: those that judge and those that set. */
    static int inAll(String crop, List<Emergence.Row> rows) {
        Count count = count(crop, rows);
        Set<String> all = new LinkedHashSet<>(count.trials());
        all.addAll(setting(crop, count));
        return all.size();
    }

    /** What judges each crop, as a part of the page. */
    static String byCrop(List<Emergence.Row> rows) {
        StringBuilder page = new StringBuilder();
        List<String> few = new ArrayList<>();
        List<String> fewJudge = new ArrayList<>();
        page.append(
                """
                ## What judges each crop

                A trial judges where an author or a report is named and it did not set what it judges; of some only the sign
                of an answer is known ("size not"), which judges little. A trial sets where a number of growth or stages of this very crop was taken
                from it, or where it was in view when a number was chosen; one that does both, by different figures, counts once in all. Trials of another
                crop that came along with its numbers stand in the last column and count for nothing here, nor do models and reviews (thirst, salt,
                roots and contents: `tideless crops NAME`). Other trials of roots, air and salt stand in docs/root-zone.md and are not counted. A crop whose
                numbers are all met may still be met by chance where only one or two trials are known. Rows that judge nothing were in view when
                numbers were chosen, gave them, or compare two models of ours. The measured houses (three of cucumber, four of tomato) judge days and
                weeks of their thirst, but chose the form of it (docs/validation-stands.md).

                | crop | trials that judge | that set | in all | judging figures met | growers' figures met | rows that judge nothing | judged by | set by | and, through another crop or as models and reviews |
                | --- | ---: | ---: | ---: | ---: | ---: | ---: | --- | --- | --- |
                """);
        for (String crop : CropFiles.names()) {
            Count count = count(crop, rows);
            if (inAll(crop, rows) < ENOUGH) {
                few.add(crop);
            }
            if (count.trials().size() < ENOUGH) {
                fewJudge.add(crop);
            }
            Set<String> setting = setting(crop, count);
            Set<String> others = setBy(crop, true);
            others.removeAll(setting);
            page.append(
                    text(
                            "| %s | %d | %d | %d | %d of %d | %d of %d | %d | %s | %s | %s |\n",
                            crop,
                            count.trials().size(),
                            setting.size(),
                            inAll(crop, rows),
                            count.met(),
                            count.figures(),
                            count.handbookMet(),
                            count.handbook(),
                            count.set(),
                            joined(count.trials()),
                            joined(setting),
                            joined(others)));
        }
        page.append(
                text(
                        "\nIn all, %s. Of trials that judge, %s. None was made up.\n\n",
                        few.isEmpty()
                                ? "each crop was held beside three at least"
                                : "fewer than three are known of " + String.join(", ", few),
                        fewJudge.isEmpty()
                                ? "each has three at least"
                                : "fewer than three are known of " + String.join(", ", fewJudge)));
        return page.toString();
    }

    /** Trials that each crop is to be held beside. */
    static final int ENOUGH = 3;

    private static String joined(Set<String> names) {
        return names.isEmpty() ? "none" : String.join("; ", names);
    }

    private static final Pattern AUTHOR =
            Pattern.compile(
                    "NASA/TP-\\d{4}-\\d+|(?:(?:[Vv]an|De) )?[A-Z][A-Za-z]+(?: et al\\.| and (?:van )?[A-Z][a-z]+)?,? \\(?\\d{4}\\)?");

    /**
     * Authors that the file names for growth and stages.
     *
     * @param borrowed those of numbers taken from another crop along with the others
     */
    private static Set<String> setBy(String crop, boolean borrowed) {
        Set<String> authors = new LinkedHashSet<>();
        for (CropTraits.Provenance number : CropFiles.read(crop).provenance()) {
            boolean counts =
                    number.key().startsWith("growth.") || number.key().startsWith("stages.");
            boolean ofThisCrop = !number.source().matches("(?s).*\\b([Aa]s|in dwarf) [a-z]+.*");
            Matcher matcher =
                    AUTHOR.matcher(counts && (borrowed || ofThisCrop) ? number.source() : "");
            while (matcher.find()) {
                authors.add(matcher.group().replaceAll(",? \\(?(\\d{4})\\)?$", " ($1)"));
            }
        }
        return authors;
    }

    /** Rows that stood on the page at {@link #BEFORE}, as a part of the page. */
    static String beforeAndAfter(List<Emergence.Row> rows) {
        StringBuilder page = new StringBuilder();
        page.append(
                """
                ## Before and after

                "Before" are the figures of commit 26f77bb (26 November 2026), taken once: before crops had nurseries of their own,
                two forms of thirst, an answer to carbon dioxide, and contents at feeds of substrate strength. The
                suspended pots were then asked at 20 mol/m2/d, now at 17, the middle of the 15 to 20 of their place; lettuce's uptake in
                another house's light.

                | check | before | | now | | published |
                | --- | ---: | --- | ---: | --- | ---: |
                """);
        int hits = 0;
        int hitsBefore = 0;
        for (Emergence.Row row : rows) {
            String before = BEFORE.get(row.id());
            if (before == null) {
                continue;
            }
            double was = Double.parseDouble(before);
            boolean hit = row.low() <= was && was <= row.high();
            hits += row.hit() ? 1 : 0;
            hitsBefore += hit ? 1 : 0;
            page.append(
                    text(
                            "| %s | %s | %s | %s %s | %s | %s to %s |\n",
                            row.id(),
                            before,
                            hit ? "hit" : "**MISS**",
                            Validation.three(row.found()),
                            row.unit(),
                            row.hit() ? "hit" : "**MISS**",
                            Validation.three(row.low()),
                            Validation.three(row.high())));
        }
        page.append(
                text(
                        "\nOf these %d rows %d lay inside today's bands before, %d do now. The tomato compartments below were"
                                + "\nthen %s.\n\n",
                        BEFORE.size(),
                        hitsBefore,
                        hits,
                        "+28, +19, +13 and +23 % off, with a daily R2 over all of 0.21 and a weekly one of 0.33"));
        return page.toString();
    }

    /** Transplants as the nurseries raise them, as a part of the page. */
    static String nurseries() {
        StringBuilder page = new StringBuilder();
        page.append(
                """
                ## Nurseries

                Each crop in its own nursery (cell or pot, light, days: its file has the sources). Weights and leaves
                are grown there, derived, and set by nobody; what nurseries hand over is from memory, low confidence, and
                known for three crops. `TransplantTest` holds these three.

                | crop | days | light, umol/m2/s | ground, cm2 | fresh, g | dry, g | leaf, cm2 | handed over |
                | --- | ---: | ---: | ---: | ---: | ---: | ---: | --- |
                """);
        for (String name : CropFiles.names()) {
            CropTraits crop = CropFiles.read(name);
            CropTraits.Nursery nursery = crop.nursery();
            Plant young = Growing.raisedInNursery(crop, nursery.days());
            page.append(
                    text(
                            "| %s | %.0f | %.0f | %.0f | %.2g | %.2g | %.0f | %s |\n",
                            name,
                            nursery.days(),
                            nursery.ppfdUmolPerM2S(),
                            1e4 * nursery.areaM2(),
                            Growing.freshG(crop, young),
                            young.dryG(),
                            1e4 * Canopy.leafAreaM2(crop, young),
                            HANDED_OVER.getOrDefault(name, "not known")));
        }
        return page.append('\n').toString();
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
