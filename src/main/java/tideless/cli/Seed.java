package tideless.cli;

import picocli.CommandLine.Help.Visibility;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The seed of a command that draws. */
final class Seed {
    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = Typed.class,
            defaultValue = "1",
            showDefaultValue = Visibility.ALWAYS,
            description = "seed of all that is drawn")
    long value;

    /** A seed as it is typed; a minus is a slip, and nobody needs one. */
    static final class Typed implements ITypeConverter<Long> {
        @Override
        public Long convert(String text) {
            long seed = Tideless.longWhole(text);
            if (seed < 0) {
                throw new TypeConversionException(
                        "found \"" + text + "\", allowed: a whole number from 0 up, as 1");
            }
            return seed;
        }
    }
}
