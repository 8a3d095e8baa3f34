package tideless.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.crop.Canopy;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.scenario.Crops;
import tideless.scenario.Judged;
import tideless.words.DoubtWords;

/** Lists the crop library. */
@Command(
        name = "crops",
        mixinStandardHelpOptions = true,
        header = "List the crop library, or one crop with the source of every number.",
        description = "",
        footer = {
            "",
            "Examples:",
            "  tideless crops",
            "  tideless crops lettuce",
            "",
            "Exit codes: 0 done, 2 no crop of the library."
        })
final class CropsCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "CROP",
            arity = "0..1",
            description = "a crop of the library; all of them in short when left out")
    String name;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        if (name == null) {
            list(out);
        } else {
            if (!Crops.names().contains(name)) {
                String meant = Crops.meant(name, Crops.names());
                throw new ParameterException(
                        spec.commandLine(),
                        "CROP: found \""
                                + name
                                + "\", allowed: "
                                + String.join(", ", Crops.names())
                                + (meant.isEmpty() ? "" : "\n    " + meant));
            }
            show(Crops.named(name), out);
        }
        out.flush();
        return Exit.DONE;
    }

    private static void list(PrintWriter out) {
        out.println(
                line(
                        "CROP",
                        "WHAT IT IS",
                        "HARVEST",
                        "FEED mS/cm",
                        "pH",
                        "LIGHT mol/m2/day",
                        "FROM SOWING",
                        "SOURCED"));
        for (String name : Crops.names()) {
            CropTraits crop = Crops.named(name);
            CropTraits.Needs needs = crop.needs();
            out.println(
                    line(
                            name,
                            crop.about(),
                            use(crop),
                            span(needs.ecLowMsPerCm(), needs.ecHighMsPerCm()),
                            span(needs.phLow(), needs.phHigh()),
                            span(needs.lightLowMolPerM2Day(), needs.lightHighMolPerM2Day()),
                            text("%.0f degC d", crop.stages().firstHarvestCd()),
                            text("%.0f %%", 100 * sourcedFrac(crop))));
        }
        out.println();
        out.println(
                "HARVEST once is the whole plant, picked leaf by leaf as it grows. FEED is what it is");
        out.println(
                "fed at; a tray may stand higher, to where salt costs a twentieth of growth (\"tideless show\").");
        out.println("FROM SOWING is the warmth above the crop's base temperature to the first");
        out.println(
                "harvest. SOURCED is the share of a crop's numbers with a source of their own, read");
        out.println("or from memory; the rest is common practice, assumed, or the nearest crop's.");
        out.println("\"tideless crops NAME\" shows every number with its source.");
    }

    private static String use(CropTraits crop) {
        if (crop.stages().fruits()) {
            return "fruit";
        }
        return crop.harvest().pickedEveryDays().isPresent() ? "picked" : "once";
    }

    private static double sourcedFrac(CropTraits crop) {
        long sourced =
                crop.provenance().stream()
                        .filter(
                                number ->
                                        !number.standing().equals("assumed")
                                                && !number.standing().equals("common practice"))
                        .count();
        return (double) sourced / crop.provenance().size();
    }

    private static String line(String... cells) {
        return text("%-14s%-40s%-9s%-12s%-10s%-18s%-13s%s", (Object[]) cells).stripTrailing();
    }

    private static String span(double low, double high) {
        return text("%s-%s", number(low), number(high));
    }

    private static String number(double value) {
        return value == Math.rint(value) ? text("%.0f", value) : text("%.1f", value);
    }

    private static void show(CropTraits crop, PrintWriter out) {
        out.println(
                crop.name()
                        + " ("
                        + crop.latinName()
                        + ")"
                        + (crop.about().isEmpty() ? "" : ": " + crop.about()));
        for (CropTraits.Provenance number : crop.provenance()) {
            String spread =
                    number.low().isEmpty() && number.high().isEmpty()
                            ? ""
                            : "  (" + number.low() + " to " + number.high() + ")";
            out.println("  " + number.key() + "  " + number.value() + spread);
            out.println("      " + number.standing() + ": " + number.source());
        }
        standings(crop, out);
        transplant(crop, out);
        judged(Crops.judged(crop.name()), out);
        doubt(crop, out);
    }

    private static void standings(CropTraits crop, PrintWriter out) {
        Map<String, Integer> counts = new TreeMap<>();
        for (CropTraits.Provenance number : crop.provenance()) {
            counts.merge(number.standing(), 1, Integer::sum);
        }
        List<String> parts = new ArrayList<>();
        counts.forEach((standing, count) -> parts.add(count + " " + standing));
        out.println();
        out.println(
                "Its " + crop.provenance().size() + " numbers: " + String.join(", ", parts) + ".");
    }

    private static void transplant(CropTraits crop, PrintWriter out) {
        Plant young = Growing.raisedInNursery(crop, crop.nursery().days());
        out.println(
                text(
                        "Its transplant of %.0f days, grown in that nursery (derived): %s g fresh,"
                                + " %s g dry, %.0f cm2 of leaf.",
                        crop.nursery().days(),
                        small(Growing.freshG(crop, young)),
                        small(young.dryG()),
                        1e4 * Canopy.leafAreaM2(crop, young)));
    }

    private static void judged(Judged by, PrintWriter out) {
        String handbooks =
                by.handbook() == 0
                        ? ""
                        : text(
                                " From memory of growers and handbooks: %d of %d met.",
                                by.handbookMet(), by.handbook());
        if (by.houses() > 0) {
            out.println(
                    by.houses()
                            + " measured stands judge its thirst by days and weeks; they also chose"
                            + " its form (docs/validation-stands.md).");
        }
        out.println(
                text(
                        "Judged by %d published %s: %d of %d figures met.%s See docs/validation.md.",
                        by.trials(),
                        by.trials() == 1 ? "trial" : "trials",
                        by.met(),
                        by.figures(),
                        handbooks));
    }

    private static String small(double grams) {
        return grams < 0.1 ? text("%.2f", grams) : text("%.1f", grams);
    }

    private static void doubt(CropTraits crop, PrintWriter out) {
        out.println("Doubt of its thirst, standard deviation of the logarithm:");
        DoubtWords.of(crop, false).forEach(line -> out.println("  " + line));
        out.println("and by two models of a full stand, between which nothing measured decides:");
        DoubtWords.ofForms(crop).forEach(line -> out.println("  " + line));
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
