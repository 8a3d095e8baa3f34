package tideless.cli;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import tideless.rig.Scenario;

/** What several commands ask of their arguments. */
final class Arguments {
    /** A quantile of more is known no better than its model; assumed. */
    static final int MOST_MEMBERS = 10_000;

    private final CommandSpec spec;

    Arguments(CommandSpec spec) {
        this.spec = spec;
    }

    void requireMembers(int members) {
        requireWithin("--members", members, 1, MOST_MEMBERS);
    }

    void requireWithin(String option, int value, int least, int most) {
        if (value < least || value > most) {
            throw refused(option, Integer.toString(value), least + " to " + most);
        }
    }

    void requireFolder(Path folder) {
        if (folder != null && folder.toString().isEmpty()) {
            throw refused("-o", "\"\"", "the name of a folder");
        }
    }

    /** A date written as 2026-04-03. */
    LocalDate date(String option, String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw refused(option, "\"" + text + "\"", "a date that exists, as 2026-04-03");
        }
    }

    /** A day of a run of which no log tells. */
    void requireInRun(String option, LocalDate day, Scenario rig) {
        if (day.isBefore(rig.firstOpenDay()) || day.isAfter(rig.lastDay())) {
            throw refused(
                    option,
                    day.toString(),
                    (rig.log().isEmpty() ? "a day of the run, " : "a day after the log's last, ")
                            + rig.firstOpenDay()
                            + " to "
                            + rig.lastDay());
        }
    }

    /** What is said of a value that is not allowed. */
    ParameterException refused(String option, String found, String allowed) {
        return new ParameterException(
                spec.commandLine(), option + ": found " + found + ", allowed: " + allowed);
    }
}
