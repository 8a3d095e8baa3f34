package tideless.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tideless.crop.CropTraits;
import tideless.scenario.Crops;

/** Lists the crop library. */
@Command(
        name = "crops",
        mixinStandardHelpOptions = true,
        header = "List the crop library, or one crop with the source of every number.",
        description = "",
        footer = {"", "Examples:", "  tideless crops", "  tideless crops lettuce"})
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
                String near = Crops.nearest(name);
                throw new ParameterException(
                        spec.commandLine(),
                        "CROP: found \""
                                + name
                                + "\", allowed: "
                                + String.join(", ", Crops.names())
                                + (near.isEmpty() ? "" : "\n    Did you mean \"" + near + "\"?"));
            }
            show(Crops.named(name), out);
        }
        out.flush();
        return Exit.DONE;
    }

    private static void list(PrintWriter out) {
        out.println(
                line("CROP", "LATIN NAME", "EC mS/cm", "pH", "LIGHT mol/m2/day", "FROM SOWING"));
        for (String name : Crops.names()) {
            CropTraits crop = Crops.named(name);
            CropTraits.Needs needs = crop.needs();
            out.println(
                    line(
                            name,
                            crop.latinName(),
                            span(needs.ecLowMsPerCm(), needs.ecHighMsPerCm()),
                            span(needs.phLow(), needs.phHigh()),
                            span(needs.lightLowMolPerM2Day(), needs.lightHighMolPerM2Day()),
                            text("%.0f degC d", crop.stages().firstHarvestCd())));
        }
        out.println();
        out.println("FROM SOWING is the warmth above the crop's base temperature to the first");
        out.println("harvest. \"tideless crops NAME\" shows every number with its source.");
    }

    private static String line(String... cells) {
        return text("%-14s%-30s%-11s%-10s%-18s%s", (Object[]) cells).stripTrailing();
    }

    private static String span(double low, double high) {
        return text("%s-%s", number(low), number(high));
    }

    private static String number(double value) {
        return value == Math.rint(value) ? text("%.0f", value) : text("%.1f", value);
    }

    private static void show(CropTraits crop, PrintWriter out) {
        out.println(crop.name() + " (" + crop.latinName() + ")");
        for (CropTraits.Provenance number : crop.provenance()) {
            String spread =
                    number.low().isEmpty() && number.high().isEmpty()
                            ? ""
                            : "  (" + number.low() + " to " + number.high() + ")";
            out.println("  " + number.key() + "  " + number.value() + spread);
            out.println("      " + number.standing() + ": " + number.source());
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
