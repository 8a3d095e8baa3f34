package tideless.cli;

import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.Option;

/** The seed of a command that draws. */
final class Seed {
    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            showDefaultValue = Visibility.ALWAYS,
            description = "seed of all that is drawn")
    long value;
}
