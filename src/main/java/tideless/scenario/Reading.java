package tideless.scenario;

import java.util.List;
import java.util.Objects;
import tideless.rig.Scenario;

/** What came of reading a scenario file. */
public sealed interface Reading {

    /**
     * A scenario that can be run.
     *
     * @param scenario what the user said, checked
     * @param values every value that holds, the user's and the defaults, in the order read
     * @param notes what is worth saying besides
     * @param files names of the files it was read from, itself first, as messages call them
     */
    record Good(
            Scenario scenario, List<EffectiveValue> values, List<Note> notes, List<String> files)
            implements Reading {
        public Good {
            Objects.requireNonNull(scenario, "scenario");
            values = List.copyOf(values);
            notes = List.copyOf(notes);
            files = List.copyOf(files);
        }
    }

    /**
     * A file that was read but cannot be run.
     *
     * @param problems all its faults, at least one, by file, line and column
     */
    record Faulty(List<Problem> problems) implements Reading {
        public Faulty {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("a faulty file needs a fault");
            }
        }
    }

    /**
     * A file that could not be read at all.
     *
     * @param file as the user named it
     * @param reason why, in words
     */
    record Unreadable(String file, String reason) implements Reading {
        public Unreadable {
            Objects.requireNonNull(file, "file");
            Objects.requireNonNull(reason, "reason");
        }

        /** As it is printed. */
        @Override
        public String toString() {
            return file + ": " + reason;
        }
    }
}
