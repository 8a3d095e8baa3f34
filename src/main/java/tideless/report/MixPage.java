package tideless.report;

import java.util.List;
import tideless.solution.Mix;
import tideless.solution.MixCorrection;
import tideless.solution.MixingSheet;

/**
 * A mixing sheet as one page to print and take to the tap: whole in itself, no script, well-formed
 * as XML too.
 */
final class MixPage {
    private static final String STYLE =
            """
            body { font: 12pt/1.4 sans-serif; margin: 2em auto; max-width: 46em; padding: 0 1em;
                   color: #111; background: #fff; }
            h1 { font-size: 1.4em; margin: 0 0 .2em; }
            h2 { font-size: 1.1em; margin: 1.4em 0 .3em; }
            table { border-collapse: collapse; width: 100%; margin: .6em 0; }
            th, td { padding: .35em .6em; border-bottom: 1px solid #999; text-align: left; }
            th { border-bottom: 2px solid #111; font-size: .85em; }
            td.n, th.n { text-align: right; white-space: nowrap; }
            td.amount { font-weight: bold; }
            td.box::before { content: ""; display: inline-block; width: .8em; height: .8em;
                             border: 1.5px solid #111; }
            .cautions { border: 2px solid #111; padding: .4em 1em; margin-top: 1.4em; }
            .cautions li { margin: .25em 0; }
            .fine { font-size: .85em; color: #444; }
            @page { margin: 15mm; }
            @media print { body { margin: 0; max-width: none; padding: 0; }
                           tr, .cautions { break-inside: avoid; } }
            """;

    private MixPage() {}

    static String of(Mix mix, ShownIn shown) {
        StringBuilder page = new StringBuilder();
        page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\" />\n")
                .append("<meta name=\"viewport\" content=\"width=device-width\" />\n<title>Mixing")
                .append(" sheet: ")
                .append(text(MixWords.title(mix)))
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<h1>Mixing sheet: ")
                .append(text(MixWords.title(mix)))
                .append("</h1>\n<p>")
                .append(text(MixWords.strength(mix)))
                .append("</p>\n");
        steps(page, mix.sheet().steps(), shown);
        if (mix.correction().isPresent()) {
            MixCorrection correction = mix.correction().get();
            page.append("<h2>").append(text(MixWords.reading(correction))).append("</h2>\n");
            if (correction.steps().isEmpty()) {
                page.append("<p>Nothing to do: as near as the meters tell.</p>\n");
            } else {
                steps(page, correction.steps(), shown);
            }
            page.append("<p>").append(text(MixWords.after(correction))).append("</p>\n");
        }
        page.append("<div class=\"cautions\">\n<ul>\n");
        for (String caution : MixWords.cautions(mix)) {
            page.append("<li>").append(text(caution)).append("</li>\n");
        }
        return page.append(
                        "</ul>\n</div>\n<p class=\"fine\">EC in "
                                + shown.ecUnit()
                                + " at 25 degC, pH with the CO2")
                .append(" still in it. Worked out by Tideless ")
                .append(text(ResultJson.version()))
                .append("; it advises, your meters decide.</p>\n</body>\n</html>\n")
                .toString();
    }

    private static void steps(StringBuilder page, List<MixingSheet.Step> steps, ShownIn shown) {
        page.append("<table>\n<thead><tr><th></th><th>pour</th><th class=\"n\">amount</th>")
                .append("<th class=\"n\">EC then</th><th class=\"n\">pH then</th></tr></thead>\n")
                .append("<tbody>\n");
        for (MixingSheet.Step step : steps) {
            page.append("<tr><td class=\"box\"></td><td>")
                    .append(text(MixWords.poured(step)))
                    .append("</td><td class=\"n amount\">")
                    .append(text(MixWords.amount(step)))
                    .append("</td><td class=\"n\">")
                    .append(shown.ec(step.ecMsPerCm()))
                    .append("</td><td class=\"n\">")
                    .append(MixWords.ph(step.ph()))
                    .append("</td></tr>\n");
        }
        page.append("</tbody>\n</table>\n");
    }

    /** Words as they stand in a page. */
    static String text(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
