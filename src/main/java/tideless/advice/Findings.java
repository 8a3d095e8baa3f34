package tideless.advice;

import java.util.ArrayList;
import java.util.List;

/** Tasks and warnings while they are gathered. */
final class Findings {
    final List<Task> tasks = new ArrayList<>();
    final List<Warning> warnings = new ArrayList<>();

    /**
     * Takes over what another has gathered, told of a crop among several; empty for one alone. A
     * tray is cleaned of one crop for another.
     */
    void take(Findings of, String crop) {
        for (Task task : of.tasks) {
            boolean ofNone = crop.isEmpty() || task.kind() == Task.Kind.CLEAN;
            tasks.add(ofNone ? task : task.withCrop(crop));
        }
        of.warnings.forEach(
                warning -> warnings.add(crop.isEmpty() ? warning : warning.withCrop(crop)));
    }
}
