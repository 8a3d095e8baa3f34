package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import picocli.CommandLine.Model.CommandSpec;
import tideless.scenario.Beside;
import tideless.scenario.NearFile;
import tideless.scenario.Note;
import tideless.scenario.Problem;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/** Reads a scenario for a command and says what is wrong with it. */
final class Scenarios {
    /** Commands whose answer is about the scenario as it is written. */
    private static final Set<String> LOOKING =
            Set.of("tideless run", "tideless check", "tideless show");

    private final int exit;
    private final Reading.Good good;

    private Scenarios(int exit, Reading.Good good) {
        this.exit = exit;
        this.good = good;
    }

    /**
     * Reads; faults go to standard error, one each. So do notes: all of them where the scenario
     * itself is looked at, and elsewhere only those of other files, or every question asked of a
     * scenario would repeat them.
     */
    static Scenarios read(Path path, CommandSpec spec) {
        return read(path, Beside.NOTHING, spec);
    }

    /** The same with files it does not name. */
    static Scenarios read(Path path, Beside beside, CommandSpec spec) {
        PrintWriter err = spec.commandLine().getErr();
        boolean all = LOOKING.contains(spec.qualifiedName());
        Reading reading = ScenarioReader.read(path, beside.withPen(Tideless.pensPpm(spec)));
        Scenarios result;
        if (reading instanceof Reading.Good good) {
            for (Note note : good.notes()) {
                if (all || !note.file().equals(good.files().get(0))) {
                    err.println("note: " + Tideless.shown(spec).told(note.toString()));
                }
            }
            result = new Scenarios(Exit.DONE, good);
        } else if (reading instanceof Reading.Faulty faulty) {
            for (Problem problem : faulty.problems()) {
                err.println(problem);
            }
            result = new Scenarios(Exit.FAULT, null);
        } else if (reading instanceof Reading.Unreadable unreadable) {
            err.println(unreadable);
            NearFile.to(Path.of(unreadable.file()))
                    .ifPresent(meant -> err.println("    Did you mean " + meant + "?"));
            result = new Scenarios(Exit.FILE, null);
        } else {
            throw new AssertionError("no words for " + reading);
        }
        err.flush();
        return result;
    }

    /**
     * Reads for a command and does its work on what is sound.
     *
     * @return the exit code
     */
    static int with(Path path, CommandSpec spec, Consumer<Reading.Good> work) {
        Scenarios read = read(path, spec);
        read.good().ifPresent(work);
        return read.exit();
    }

    /** Files that were read, which no result may take the place of. */
    static List<Path> inputs(Reading.Good good) {
        return good.files().stream().map(Path::of).toList();
    }

    Optional<Reading.Good> good() {
        return Optional.ofNullable(good);
    }

    int exit() {
        return exit;
    }
}
