package tideless.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tideless.rig.Filling;
import tideless.rig.Scenario;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Hands each caution to the first task it belongs to. */
final class Cautions {
    /**
     * Legionella grows from here, degC; between 20 and 45, guidance on water systems, from memory.
     */
    private static final double LEGIONELLA_C = 20;

    private final Scenario scenario;
    private final boolean warm;
    private final Set<Caution> told = EnumSet.noneOf(Caution.class);

    private Cautions(Trace trace) {
        scenario = trace.scenario();
        double most = 0;
        for (TrayTrace tray : trace.trays()) {
            most = Math.max(most, tray.solutionTempC().max(0, trace.hours()));
        }
        warm = most > LEGIONELLA_C;
    }

    /** The same tasks, in the same order, with their cautions. */
    static List<Task> addedTo(List<Task> tasks, Trace trace) {
        Cautions cautions = new Cautions(trace);
        List<Task> with = new ArrayList<>();
        for (Task task : tasks) {
            List<Caution> here = new ArrayList<>();
            for (Caution caution : cautions.of(task)) {
                if (cautions.told.add(caution)) {
                    here.add(caution);
                }
            }
            with.add(here.isEmpty() ? task : task.withCautions(here));
        }
        return with;
    }

    private List<Caution> of(Task task) {
        return switch (task.kind()) {
            case MIX -> {
                List<Caution> all = new ArrayList<>();
                all.add(Caution.CHEMICALS);
                all.add(Caution.NO_BRASS_OR_ZINC);
                all.add(Caution.LIGHT_TIGHT);
                if (scenario.trays().stream().anyMatch(t -> t.openAreaM2() > 0)
                        || scenario.reservoirs().stream().anyMatch(r -> r.openAreaM2() > 0)) {
                    all.add(Caution.MOSQUITO_MESH);
                }
                if (scenario.hasLamps()) {
                    all.add(Caution.LAMP_DRIVERS);
                }
                yield all;
            }
            case REFILL ->
                    task.cause().isBeforeAbsence() && hasValve()
                            ? List.of(Caution.TAP_AND_TRAY)
                            : List.of();
            case FLUSH, FRESH_SOLUTION -> List.of(Caution.DRAINED_FEED);
            case HARVEST, PICK, PICK_LEAVES ->
                    scenario.sourceWater().name().contains("rain")
                            ? List.of(Caution.ROOF_RAIN)
                            : List.of();
            case CLEAN ->
                    warm
                            ? List.of(Caution.NO_SPRAY, Caution.DRAINED_FEED)
                            : List.of(Caution.DRAINED_FEED);
            default -> List.of();
        };
    }

    private boolean hasValve() {
        return scenario.trays().stream().anyMatch(t -> t.filling() instanceof Filling.ByValve);
    }
}
