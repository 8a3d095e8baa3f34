package tideless.advice;

import java.util.ArrayList;
import java.util.List;

/** Tasks and warnings while they are gathered. */
final class Findings {
    final List<Task> tasks = new ArrayList<>();
    final List<Warning> warnings = new ArrayList<>();
}
