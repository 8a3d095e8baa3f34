package tideless.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import tideless.report.ShownIn;
import tideless.scenario.Spelling;
import tideless.solution.ElectricalConductivity.PpmScale;

/** The program: reads the command line and hands it to a command. */
@Command(
        name = "tideless",
        mixinStandardHelpOptions = true,
        scope = ScopeType.INHERIT, // so that "tideless run --help" works too
        versionProvider = Tideless.Version.class,
        header = "Simulates hydroponic trays without a pump, and dates their refills and flushes.",
        description = {
            "",
            "Reads a scenario (your reservoir, valves, trays, crops, lamps, visits), runs the whole"
                    + " crop, and says when each tray and its reservoir need a refill, fresh"
                    + " solution or a flush.",
            ""
        },
        footer = {
            "",
            "Try:",
            "  tideless new my-bench.toml",
            "  tideless run scenarios/science-room-bench.toml",
            "  tideless show scenarios/science-room-bench.toml",
            "  tideless crops lettuce",
            "  tideless mix --volume \"24 L\" --ec \"1.4 mS/cm\" --recipe hoagland-1"
        })
public final class Tideless implements Runnable {
    private static final List<Class<?>> COMMANDS =
            List.of(
                    NewCommand.class,
                    RunCommand.class,
                    CheckCommand.class,
                    ShowCommand.class,
                    LightCommand.class,
                    MixCommand.class,
                    LeanCommand.class,
                    AwayCommand.class,
                    SizeCommand.class,
                    CalendarCommand.class,
                    CompareCommand.class,
                    SensitivityCommand.class,
                    LogCommand.class,
                    PageCommand.class,
                    FitCommand.class,
                    CropsCommand.class);

    /** Commands that tell of all the others. */
    private static final List<Class<?>> OF_ALL = List.of(AutoComplete.GenerateCompletion.class);

    /** Names of units. */
    enum Units {
        metric,
        us
    }

    /** Scales of a pen. */
    enum EcScale {
        ms(null, ""),
        ppm500(PpmScale.PPM_500, "ppm-500"),
        ppm700(PpmScale.PPM_700, "ppm-700");

        private final PpmScale scale;
        private final String unit;

        EcScale(PpmScale scale, String unit) {
            this.scale = scale;
            this.unit = unit;
        }
    }

    @Option(
            names = "--units",
            scope = ScopeType.INHERIT,
            paramLabel = "UNITS",
            defaultValue = "metric",
            description =
                    "metric or us: gallons, inches, degrees Fahrenheit; grams, millilitres, CSV,"
                            + " JSON and calendars stay metric")
    Units units;

    @Option(
            names = "--ec-scale",
            scope = ScopeType.INHERIT,
            paramLabel = "SCALE",
            defaultValue = "ms",
            description = "EC as ms (mS/cm), or as a pen's ppm500 or ppm700")
    EcScale ecScale;

    @Spec CommandSpec spec;

    /** The units that were asked for. */
    static ShownIn shown(CommandSpec of) {
        Tideless asked = (Tideless) of.root().userObject();
        return new ShownIn(asked.units == Units.us, asked.ecScale.scale);
    }

    /** The unit of a pen's ppm by what was asked for; empty for none. */
    static String pensPpm(CommandSpec of) {
        return ((Tideless) of.root().userObject()).ecScale.unit;
    }

    /** Commands know nothing of units but run, whose table has a column of them. */
    private static int executed(ParseResult parsed) {
        CommandLine line = parsed.commandSpec().commandLine();
        ShownIn shown = shown(parsed.commandSpec());
        boolean runs =
                parsed.hasSubcommand() && parsed.subcommand().commandSpec().name().equals("run");
        if (!shown.isMetric() && !runs) {
            line.setOut(new PrintWriter(new Told(line.getOut(), shown)));
        }
        int exit = new RunLast().execute(parsed);
        line.getOut().flush();
        return exit;
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "no command; there are new, run, check, show, light, mix, lean, away, size, calendar,"
                        + " compare, sensitivity, log, fit, page and crops");
    }

    /** The program's name and version. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() throws IOException {
            try (InputStream in = Tideless.class.getResourceAsStream("/tideless/version.txt")) {
                return new String[] {
                    "tideless " + new String(in.readAllBytes(), StandardCharsets.UTF_8).strip()
                };
            }
        }
    }

    /**
     * Runs one command line.
     *
     * @return the exit code: 0 done, 1 a file could not be read or written, 2 a fault in the
     *     command line or the scenario
     */
    public static int execute(PrintWriter out, PrintWriter err, String... args) {
        return commands(args)
                .setOut(out)
                .setErr(new PrintWriter(new Visible(err)))
                .setUsageHelpAutoWidth(true)
                .registerConverter(Path.class, Tideless::path)
                .registerConverter(Units.class, text -> one(text, Units.values()))
                .registerConverter(EcScale.class, text -> one(text, EcScale.values()))
                .registerConverter(Integer.class, Tideless::whole)
                .registerConverter(int.class, Tideless::whole)
                .registerConverter(long.class, Tideless::longWhole)
                .registerConverter(double.class, Tideless::number)
                .setExpandAtFiles(false) // "@name" is a name, not a file of further words
                .setParameterExceptionHandler(Tideless::refuse)
                .setExecutionStrategy(Tideless::executed)
                .execute(args);
    }

    /** Where the first word is a command, that one alone: to unfold them all takes its time. */
    static CommandLine commands(String... args) {
        CommandLine line = new CommandLine(new Tideless());
        List<Class<?>> meant =
                COMMANDS.stream()
                        .filter(one -> args.length > 0 && name(one).equals(args[0]))
                        .toList();
        if (meant.isEmpty()) {
            COMMANDS.forEach(line::addSubcommand);
            OF_ALL.forEach(line::addSubcommand);
            line.getSubcommands()
                    .get("generate-completion")
                    .getCommandSpec()
                    .usageMessage()
                    .header("Print what makes the tab key complete words, for bash and zsh.")
                    .description("", "  source <(tideless generate-completion)", "")
                    .footer("");
        } else {
            meant.forEach(line::addSubcommand);
        }
        return line;
    }

    private static String name(Class<?> command) {
        return command.getAnnotation(Command.class).name();
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(
                    "its letters are none of this system's (locale); maybe LC_ALL=C.UTF-8");
        }
    }

    /** One of some names, refused in the program's own words. */
    private static <E extends Enum<E>> E one(String text, E[] all) {
        List<String> names = Arrays.stream(all).map(Enum::name).toList();
        String name = text.strip().toLowerCase(Locale.ROOT);
        if (names.contains(name)) {
            return all[names.indexOf(name)];
        }
        String meant = Spelling.nearest(name, names);
        throw new TypeConversionException(
                "found \""
                        + text
                        + "\", allowed: "
                        + String.join(", ", names)
                        + (meant.isEmpty() ? "" : "; did you mean \"" + meant + "\"?"));
    }

    private static int whole(String text) {
        long number = longWhole(text);
        if (number != (int) number) {
            throw new TypeConversionException(
                    "found \"" + text + "\", allowed: a number that is not as large as that");
        }
        return (int) number;
    }

    static long longWhole(String text) {
        try {
            return Long.parseLong(text.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException(
                    "found \"" + text + "\", allowed: a whole number, as 40");
        }
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException("found \"" + text + "\", allowed: a number, as 0.9");
        }
    }

    private static int refuse(ParameterException fault, String[] args) {
        CommandLine line = fault.getCommandLine();
        PrintWriter err = line.getErr();
        err.println(fault.getMessage());
        if (line.getParent() == null && args.length > 0 && !args[0].startsWith("-")) {
            String meant = Spelling.nearest(args[0], line.getSubcommands().keySet());
            if (!meant.isEmpty()) {
                err.println("Did you mean \"tideless " + meant + "\"?");
            }
        } else {
            CommandLine.UnmatchedArgumentException.printSuggestions(fault, err);
        }
        err.println("Try \"" + line.getCommandSpec().qualifiedName() + " --help\".");
        err.flush();
        return Exit.FAULT;
    }

    public static void main(String[] args) {
        Warmup.begin(List.of(args));
        // The console's own charset may lack half of what a user's file holds: always UTF-8.
        Outlet outlet = new Outlet(Main.standardOutput());
        PrintWriter out = utf8(outlet);
        PrintWriter err = utf8(System.err);
        int exit = execute(out, err, args);
        System.exit(told(outlet, out, err) || exit != Exit.DONE ? exit : Exit.FILE);
    }

    /**
     * Whether all that was said has arrived, as far as anybody wanted it; says so when not, as on a
     * full disk.
     */
    static boolean told(Outlet outlet, PrintWriter out, PrintWriter err) {
        out.flush();
        if (outlet.lost()) {
            err.println("the output could not be written in full");
        }
        err.flush();
        return !outlet.lost();
    }

    private static PrintWriter utf8(OutputStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), false);
    }
}
