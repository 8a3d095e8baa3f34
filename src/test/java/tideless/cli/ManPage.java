package tideless.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The help of all commands as one page for {@code man}, made from the commands themselves. */
final class ManPage {
    static final Path PAGE = Path.of("src/dist/tideless.1");

    private final StringBuilder text = new StringBuilder();

    private ManPage() {}

    /** Makes the file: run this class's main. */
    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, of(Tideless.commands().getCommandSpec()));
    }

    /** The page of a command and all below it, in roff with the macros of man(7). */
    static String of(CommandSpec program) {
        return new ManPage().written(program);
    }

    private String written(CommandSpec program) {
        text.append(".\\\" Made from the commands by ManPage of the tests; change it there.\n");
        text.append(".TH TIDELESS 1\n.SH NAME\ntideless \\- ");
        words(List.of(program.usageMessage().header()));
        text.append(".SH SYNOPSIS\n.B tideless\n.I COMMAND\n[...]\n.SH DESCRIPTION\n");
        words(List.of(program.usageMessage().description()));
        text.append(".SH OPTIONS OF ALL COMMANDS\n");
        for (OptionSpec option : program.options()) {
            String label = option.arity().max() > 0 ? "=" + option.paramLabel() : "";
            entry(String.join(", ", option.names()) + label, List.of(option.description()));
        }
        Map<String, CommandSpec> commands = new LinkedHashMap<>();
        program.subcommands().forEach((name, line) -> commands.put(name, line.getCommandSpec()));
        commands.forEach((name, spec) -> command("tideless " + name, spec));
        text.append(".SH EXIT STATUS\n0 done, 1 a file could not be read or written, 2 a fault in")
                .append(" the command line or the scenario.\n.SH ENVIRONMENT\n")
                .append("NO_COLOR: no colours. COLUMNS: width of the lines.\n");
        return text.toString();
    }

    private void command(String name, CommandSpec spec) {
        UsageMessageSpec usage = spec.usageMessage();
        text.append(".SH ").append(quoted(name.toUpperCase(java.util.Locale.ROOT))).append('\n');
        text.append(".B ").append(escaped(name)).append('\n');
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            text.append(".I ").append(escaped(parameter.paramLabel())).append('\n');
        }
        text.append("[options]\n.PP\n");
        words(List.of(usage.header()));
        words(List.of(usage.description()));
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            entry(parameter.paramLabel(), List.of(parameter.description()));
        }
        for (OptionSpec option : spec.options()) {
            if (!option.inherited() && !option.usageHelp() && !option.versionHelp()) {
                String label = option.arity().max() > 0 ? "=" + option.paramLabel() : "";
                entry(String.join(", ", option.names()) + label, List.of(option.description()));
            }
        }
        text.append(".PP\n.nf\n");
        for (String line : usage.footer()) {
            text.append(escaped(line)).append('\n');
        }
        text.append(".fi\n");
        for (Map.Entry<String, CommandLine> below : spec.subcommands().entrySet()) {
            command(name + " " + below.getKey(), below.getValue().getCommandSpec());
        }
    }

    private void entry(String head, List<String> about) {
        text.append(".TP\n.B ").append(escaped(head)).append('\n');
        words(about);
    }

    private void words(List<String> lines) {
        for (String line : lines) {
            if (!line.isBlank()) {
                text.append(escaped(line.strip())).append('\n');
            }
        }
    }

    private static String quoted(String head) {
        return '"' + escaped(head) + '"';
    }

    /** A backslash, a leading dot and a hyphen mean something to roff. */
    private static String escaped(String line) {
        String plain = line.replace("\\", "\\e").replace("-", "\\-").replaceAll("%n", "");
        return plain.startsWith(".") || plain.startsWith("'") ? "\\&" + plain : plain;
    }
}
