package tideless.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program: reads the command line and hands it to a command. */
@Command(
        name = "tideless",
        mixinStandardHelpOptions = true,
        description = "Simulates passive hydroponic trays and dates the refills and flushes.")
public final class Tideless implements Callable<Integer> {
    @Spec CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getErr());
        return 2;
    }

    public static void main(String[] args) {
        System.exit(new CommandLine(new Tideless()).execute(args));
    }
}
