package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tideless.report.MixFiles;
import tideless.report.MixTable;
import tideless.report.WriteResult;
import tideless.scenario.OptionReader;
import tideless.scenario.Problem;
import tideless.solution.Concentrate;
import tideless.solution.Mix;
import tideless.solution.MixCorrection;
import tideless.solution.MixingPlan;
import tideless.solution.MixingSheet;
import tideless.solution.Reagent;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;
import tideless.solution.TwoPart;
import tideless.solution.Weighing;

/** Says what to weigh and pour. */
@Command(
        name = "mix",
        header = "Say what to weigh and pour for a volume of feed, and how to put a reading right.",
        description = {
            "",
            "Prints the pourings in order, with the EC and pH the meters should show after each.",
            ""
        },
        footer = {
            "",
            "A bottle's label is written as it is printed, in per cent of mass:",
            "  tideless mix --volume \"24 L\" --ec \"1.4 mS/cm\" --ph 6.0 --ratio 1:300 \\",
            "    --part-a \"NO3-N 2.58 %%, NH4-N 0.13 %%, CaO 4.06 %%, K2O 1.42 %%\\",
            ", density 1.1 kg/L\" \\",
            "    --part-b \"NO3-N 0.68 %%, P2O5 1.93 %%, K2O 4.27 %%, MgO 0.91 %%\\",
            ", SO3 2.42 %%, density 1.1 kg/L\"",
            "",
            "Salts to weigh for a published recipe, in a water of your own:",
            "  tideless mix --volume \"5 gal\" --ec \"1.8 mS/cm\" --recipe hoagland-1 \\",
            "    --analysis \"calcium 55 mg/L, magnesium 12 mg/L, sodium 28 mg/L\\",
            ", sulfate 77 mg/L SO4, chloride 20 mg/L, alkalinity 8 dH, pH 7.4\"",
            "",
            "It came out too strong; add to the first example:",
            "  --reading-ec \"1.7 mS/cm\" --reading-ph 7.1 --vessel \"30 L\"",
            "",
            "A \"pH minus\" without a strength on it, tried once in a litre of the mix:",
            "  --ph-minus \"2 mL in 1 L from 7.1 to 6.2\"",
            "",
            "Exit codes: 0 done, 1 a file could not be written, 2 a fault in the command line or a"
                    + " wish that cannot be met."
        })
final class MixCommand implements Callable<Integer> {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    @Option(names = "--volume", paramLabel = "VOLUME", required = true, description = "finished")
    String volume;

    @Option(names = "--ec", paramLabel = "EC", required = true, description = "wanted, at 25 degC")
    String ec;

    @Option(names = "--ph", paramLabel = "PH", description = "wanted; left as it falls otherwise")
    String ph;

    @Option(
            names = "--water",
            paramLabel = "NAME",
            defaultValue = "soft-tap",
            showDefaultValue = Visibility.ALWAYS,
            description =
                    "pure, rain, reverse-osmosis, soft-tap, medium-tap, hard-tap; or what your"
                            + " meter reads in it, as \"0.3 mS/cm\"")
    String water;

    @Option(
            names = "--analysis",
            paramLabel = "TEXT",
            description =
                    "your water by its analysis: mg/L, mmol/L or meq/L; hardness and alkalinity also"
                            + " in dH or fH")
    String analysis;

    @Option(names = "--recipe", paramLabel = "NAME", description = "weigh salts for this recipe")
    String recipe;

    @Option(
            names = "--calcium",
            paramLabel = "SALT",
            defaultValue = "double-salt",
            showDefaultValue = Visibility.ALWAYS,
            description =
                    "calcium nitrate: double-salt, as shops sell it, with some ammonium; or"
                            + " tetrahydrate")
    String calcium;

    @Option(names = "--part-a", paramLabel = "LABEL", description = "the bottle with the calcium")
    String partA;

    @Option(names = "--part-b", paramLabel = "LABEL", description = "the other bottle")
    String partB;

    @Option(
            names = "--ratio",
            paramLabel = "1:N",
            description = "what the label says: 1 of each part to so much water, or as 3 mL per L")
    String ratio;

    @Option(
            names = "--acid",
            paramLabel = "NAME",
            defaultValue = "phosphoric-30",
            showDefaultValue = Visibility.ALWAYS,
            description =
                    "with its strength; nitric and strong ones are for trained staff (gloves and"
                            + " goggles with all)")
    String acid;

    @Option(
            names = "--base",
            paramLabel = "NAME",
            defaultValue = "potassium-bicarbonate-10",
            showDefaultValue = Visibility.ALWAYS,
            description =
                    "or potassium-carbonate-50, potassium-hydroxide-50 (gloves and goggles with"
                            + " all)")
    String base;

    @Option(
            names = "--ph-minus",
            paramLabel = "TRIAL",
            description = "your own acid, by one trial; in place of --acid")
    String phMinus;

    @Option(names = "--reading-ec", paramLabel = "EC", description = "what the mix reads")
    String readingEc;

    @Option(names = "--reading-ph", paramLabel = "PH", description = "what the mix reads")
    String readingPh;

    @Option(
            names = "--vessel",
            paramLabel = "VOLUME",
            description = "what the vessel holds (default: twice the volume)")
    String vessel;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            description = "folder for a page to print (mix.html) and mix.json")
    Path folder;

    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        OptionReader read = new OptionReader("tideless mix");
        OptionalDouble litres = read.litres("--volume", volume);
        Optional<MixingSheet.Wish> wish = wish(read, litres);
        OptionalDouble readEc =
                optional(readingEc).map(text -> read.msPerCm("--reading-ec", text)).orElse(NONE);
        OptionalDouble readPh =
                optional(readingPh).map(text -> read.ph("--reading-ph", text)).orElse(NONE);
        double vesselL = vesselL(read, litres);
        if (wish.isEmpty() || !read.problems().isEmpty()) {
            for (Problem problem : read.problems()) {
                err.println(problem);
            }
            err.flush();
            return Exit.FAULT;
        }
        if (phMinus != null) {
            // The trial is made in this mix before any acid: its strength can only be told now.
            MixingPlan bare = MixingSheet.of(with(wish.get(), OptionalDouble.empty(), null));
            if (!(bare instanceof MixingSheet tried)) {
                return refused(err, bare);
            }
            Optional<Reagent> own =
                    read.trial(
                            "--ph-minus",
                            phMinus,
                            tried.composition(),
                            wish.get().water().composition());
            if (own.isEmpty()) {
                err.println(read.problems().get(0));
                err.flush();
                return Exit.FAULT;
            }
            wish = Optional.of(with(wish.get(), wish.get().targetPh(), own.get()));
        }
        MixingPlan plan = MixingSheet.of(wish.get());
        if (!(plan instanceof MixingSheet sheet)) {
            return refused(err, plan);
        }
        Optional<MixCorrection> correction = Optional.empty();
        if (readEc.isPresent() || readPh.isPresent()) {
            MixingPlan put =
                    MixCorrection.of(
                            wish.get(),
                            sheet,
                            new MixCorrection.Reading(
                                    readEc, readPh, wish.get().volumeL(), vesselL));
            if (!(put instanceof MixCorrection done)) {
                return refused(err, put);
            }
            correction = Optional.of(done);
        }
        return show(new Mix(wish.get(), sheet, correction, read.remarks()));
    }

    /** What the vessel holds: as said, at least the volume; else twice it. */
    private double vesselL(OptionReader read, OptionalDouble litres) {
        double twice = 2 * litres.orElse(0);
        double holds = vessel == null ? twice : read.litres("--vessel", vessel).orElse(twice);
        if (holds < litres.orElse(0)) {
            read.fault("--vessel", '"' + vessel + '"', "at least --volume", "");
        }
        return holds;
    }

    private Optional<MixingSheet.Wish> wish(OptionReader read, OptionalDouble litres) {
        OptionalDouble target = read.msPerCm("--ec", ec);
        OptionalDouble wanted = optional(ph).map(text -> read.ph("--ph", text)).orElse(NONE);
        Optional<SourceWater> from =
                analysis == null
                        ? read.water("--water", water)
                        : read.analysis("--analysis", analysis);
        Optional<MixingSheet.Supply> supply = supply(read);
        Optional<Reagent> down = read.reagent("--acid", acid, true);
        Optional<Reagent> up = read.reagent("--base", base, false);
        if (!read.problems().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new MixingSheet.Wish(
                        litres.orElseThrow(),
                        target.orElseThrow(),
                        wanted,
                        from.orElseThrow(),
                        supply.orElseThrow(),
                        down.orElseThrow(),
                        up.orElseThrow()));
    }

    private Optional<MixingSheet.Supply> supply(OptionReader read) {
        boolean bottles = partA != null || partB != null;
        if (bottles == (recipe != null)) {
            read.fault(
                    "--recipe",
                    bottles ? '"' + recipe + "\" beside bottles" : "nothing",
                    "--recipe, or --part-a with --part-b and --ratio",
                    "");
            return Optional.empty();
        }
        if (!bottles) {
            Optional<Recipe> found = read.recipe("--recipe", recipe);
            boolean asSold = calcium.equals("double-salt");
            if (!asSold && !calcium.equals("tetrahydrate")) {
                read.fault("--calcium", '"' + calcium + '"', "double-salt, tetrahydrate", "");
                return Optional.empty();
            }
            return found.map(Recipe::composition)
                    .map(
                            wanted ->
                                    new MixingSheet.FromSalts(
                                            (asSold
                                                            ? Weighing.asSold(wanted)
                                                            : Weighing.forRecipe(wanted))
                                                    .orElseThrow()));
        }
        if (partA == null || partB == null || ratio == null) {
            read.fault(
                    partA == null ? "--part-a" : partB == null ? "--part-b" : "--ratio",
                    "nothing",
                    "--part-a, --part-b and --ratio together",
                    "");
            return Optional.empty();
        }
        Optional<Concentrate> a = read.label("--part-a", "part A", partA);
        Optional<Concentrate> b = read.label("--part-b", "part B", partB);
        OptionalDouble parts = read.ratio("--ratio", ratio);
        if (a.isEmpty() || b.isEmpty() || parts.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new MixingSheet.FromConcentrate(
                        new TwoPart(
                                a.get(),
                                b.get(),
                                parts.getAsDouble(),
                                TwoPart.Basis.PARTS_INTO_WATER)));
    }

    private static Optional<String> optional(String text) {
        return Optional.ofNullable(text);
    }

    private static MixingSheet.Wish with(
            MixingSheet.Wish wish, OptionalDouble targetPh, Reagent acid) {
        return new MixingSheet.Wish(
                wish.volumeL(),
                wish.targetMsPerCm(),
                targetPh,
                wish.water(),
                wish.supply(),
                acid == null ? wish.acid() : acid,
                wish.base());
    }

    private static int refused(PrintWriter err, MixingPlan plan) {
        if (!(plan instanceof MixingPlan.Refused refused)) {
            throw new AssertionError("no words for " + plan);
        }
        err.println("tideless mix: " + refused.inWords());
        err.flush();
        return Exit.FAULT;
    }

    private int show(Mix mix) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        if (folder != null) {
            WriteResult written = MixFiles.write(mix, folder, Tideless.shown(spec));
            if (!written.written()) {
                err.println(written.problem());
                err.flush();
                return Exit.FILE;
            }
            MixTable.print(out, mix, Terminal.width(), Tideless.shown(spec));
            out.println();
            out.println("mix.html and mix.json in " + folder);
        } else {
            MixTable.print(out, mix, Terminal.width(), Tideless.shown(spec));
        }
        out.flush();
        return Exit.DONE;
    }
}
