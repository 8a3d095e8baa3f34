package tideless.report;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.advice.Caution;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.drawing.RigPicture;
import tideless.drawing.SeasonStrip;
import tideless.rig.Scenario;
import tideless.solution.Mix;
import tideless.solution.MixingSheet;
import tideless.study.Forecast;
import tideless.study.SeasonTakes;
import tideless.words.CautionWords;
import tideless.words.CropWords;
import tideless.words.CureWords;
import tideless.words.Dates;
import tideless.words.FeedWords;
import tideless.words.Names;
import tideless.words.OutlookWords;
import tideless.words.RigWords;
import tideless.words.TakesWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/**
 * A forecast as one page, whole in itself: to read on a phone, to print on two sheets and hang. The
 * template knows no logic and this no layout.
 */
final class ReportPage {
    private static final String TEMPLATE = "/tideless/report/report.html";

    private ReportPage() {}

    /**
     * The page.
     *
     * @param rig its scenes
     * @param shown what the meter shows of a mixture
     * @param plots each with its finding, and its SVG
     */
    static String of(
            Forecast forecast,
            Origins origins,
            List<RigPicture.Drawing> rig,
            Map<String, byte[]> plots,
            ShownIn shown) {
        Map<String, Object> page = new HashMap<>();
        addHead(page, forecast);
        addTasks(page, forecast);
        addMix(page, forecast, origins, shown);
        page.put("cautions", cautions(forecast));
        page.put("strip", SeasonStrip.of(forecast).svg());
        page.put("rig", rig.stream().map(RigPicture.Drawing::svg).toList());
        page.put("rigKey", RigWords.KEY);
        List<Map<String, String>> figures = new ArrayList<>();
        plots.forEach(
                (finding, svg) ->
                        figures.add(
                                Map.of(
                                        "finding",
                                        finding,
                                        "data",
                                        Base64.getEncoder().encodeToString(svg))));
        page.put("plots", figures);
        page.put("hasPlots", !figures.isEmpty());
        page.put("sure", OutlookWords.sureness(forecast));
        page.put("assumed", origins.assumed().stream().map(ReportPage::assumption).toList());
        page.put("notes", origins.notes());
        page.put("hasNotes", !origins.notes().isEmpty());
        page.put("version", ResultJson.version());
        page.put("seed", Long.toString(forecast.seed()));
        page.put("digest", forecast.trace().scenario().digest());
        return template().execute(page);
    }

    /** The same with every volume of a task on one line with its unit. */
    static String unbroken(String page) {
        return page.replaceAll("(\\d) (L|gal|fl oz)</strong>", "$1&#160;$2</strong>");
    }

    private static Template template() {
        try (InputStream in = ReportPage.class.getResourceAsStream(TEMPLATE)) {
            if (in == null) {
                throw new IllegalStateException(TEMPLATE + " is not in the program");
            }
            // A name the page does not have is a fault, not an empty place.
            return Mustache.compiler()
                    .strictSections(true)
                    .compile(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void addHead(Map<String, Object> page, Forecast forecast) {
        Scenario scenario = forecast.trace().scenario();
        LocalDate last = scenario.lastDay();
        page.put("title", Names.clean(scenario.title()));
        page.put("span", Dates.span(scenario.start(), last));
        page.put("days", Integer.toString(scenario.days()));
        String feed = FeedWords.main(scenario.feed());
        page.put(
                "feed",
                Stream.concat(Stream.of(feed), FeedWords.own(scenario).stream())
                        .collect(Collectors.joining("; ")));
        boolean survives =
                forecast.advice().verdict().survives()
                        && forecast.outlook().filter(OutlookWords::isMostlyLost).isEmpty();
        boolean surely = forecast.survives() && forecast.advice().warnings().isEmpty();
        page.put("survives", survives);
        page.put("careful", survives && !surely);
        List<String> verdict = new ArrayList<>(VerdictWords.lines(forecast));
        verdict.addAll(CropWords.unripe(forecast.trace()));
        verdict.addAll(CropWords.beside(forecast.advice().verdict()));
        CropWords.fruitOfTrials(forecast.trace()).ifPresent(verdict::add);
        page.put("verdict", verdict.get(0));
        page.put("more", verdict.subList(1, verdict.size()));
        page.put("hasMore", verdict.size() > 1);
    }

    private static void addTasks(Map<String, Object> page, Forecast forecast) {
        Checklist list = new Checklist(forecast);
        page.put("todo", list.title());
        page.put("weeks", list.weeks());
        List<Map<String, Object>> later = list.later();
        page.put("later", later);
        page.put("hasLater", !later.isEmpty());
        List<Warning> warnings = new ArrayList<>(forecast.advice().warnings());
        warnings.sort(Warning.GRAVEST_FIRST);
        page.put("warnings", sentences(WarningWords.alike(warnings)));
        page.put("hasWarnings", !warnings.isEmpty());
        page.put(
                "minor",
                WarningWords.minor(forecast.advice().minor()).map(p -> (Object) p).orElse(false));
        page.put(
                "past",
                WarningWords.past(forecast.advice().past()).map(p -> (Object) p).orElse(false));
    }

    /** A key in the parts between which a narrow screen may break it, and what stands for it. */
    private static Map<String, Object> assumption(Map.Entry<String, String> assumed) {
        return Map.of(
                "parts", List.of(assumed.getKey().split("(?<=[._])")), "value", assumed.getValue());
    }

    /** One each; a cure that is that of the one before is not told again. */
    private static List<String> sentences(List<List<Warning>> groups) {
        List<String> sentences = new ArrayList<>();
        String before = "";
        for (List<Warning> alike : groups) {
            String cure = CureWords.of(alike.get(0).cures());
            String told = Names.begun(WarningWords.text(alike));
            sentences.add(
                    !cure.isEmpty() && cure.equals(before)
                            ? told.replace("cure: " + cure, "cure: as above")
                            : told);
            before = cure;
        }
        return sentences;
    }

    private static void addMix(
            Map<String, Object> page, Forecast forecast, Origins origins, ShownIn shown) {
        Map<String, Object> sheet = origins.mix().map(mix -> sheet(mix, shown)).orElse(Map.of());
        page.put(
                "mixHead",
                forecast.trace().scenario().log().isEmpty()
                        ? "Mix on day one"
                        : "What was mixed on day one");
        page.put("mix", sheet.isEmpty() ? false : sheet);
        page.put("noMix", FeedWords.noSheet(forecast.trace().scenario().feed()));
        page.put(
                "takes",
                TakesWords.of(SeasonTakes.of(forecast.trace()), forecast.trace(), origins.mix()));
    }

    private static Map<String, Object> sheet(Mix mix, ShownIn shown) {
        List<Map<String, String>> steps = new ArrayList<>();
        for (MixingSheet.Step step : mix.sheet().steps()) {
            steps.add(
                    Map.of(
                            "what", MixWords.poured(step),
                            "amount", MixWords.amount(step),
                            "ec", shown.ec(step.ecMsPerCm()),
                            "ph", MixWords.ph(step.ph())));
        }
        return Map.of(
                "text",
                MixWords.title(mix) + ". " + MixWords.strength(mix),
                "ecUnit",
                shown.ecUnit(),
                "steps",
                steps,
                "cautions",
                MixWords.cautions(mix));
    }

    /** Each caution that belongs to a task, once, in a fixed order. */
    private static List<String> cautions(Forecast forecast) {
        Set<Caution> of = EnumSet.noneOf(Caution.class);
        for (Task task : forecast.toDo()) {
            of.addAll(task.cautions());
        }
        List<String> sentences = new ArrayList<>();
        for (Caution caution : of) {
            sentences.add(Names.begun(CautionWords.of(caution)) + ".");
        }
        sentences.addAll(CautionWords.always(forecast.trace().scenario()));
        return sentences;
    }
}
