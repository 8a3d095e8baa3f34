package tideless.advice;

import java.time.LocalDateTime;
import java.util.List;
import tideless.rig.Planting;
import tideless.sim.Event;

/** Harvest and the next sowing of one tray, on days when somebody is there. */
final class CropAdvice {
    private final TrayCase tray;
    private final Findings out;

    CropAdvice(TrayCase tray, Findings out) {
        this.tray = tray;
        this.out = out;
    }

    void add() {
        for (Event event : tray.events()) {
            if (event.kind() == Event.Kind.FIRST_RIPE) {
                addHarvest(event, Cause.Kind.FIRST_FRUIT_RIPE);
            } else if (event.kind() == Event.Kind.HARVEST) {
                boolean fruits = tray.traits != null && tray.traits.stages().fruits();
                addHarvest(event, fruits ? Cause.Kind.LAST_FRUIT_PICKED : Cause.Kind.READY);
                addSowing(event);
            }
        }
    }

    private void addHarvest(Event event, Cause.Kind cause) {
        int hour = tray.trace.sampleAt(event.atS());
        double grams =
                cause == Cause.Kind.READY
                        ? tray.of.freshG().at(hour)
                        : tray.of.fruitFreshG().at(hour);
        task(
                Task.Kind.HARVEST,
                tray.rounds.nextFrom(event.atS() / 3600) * 3600,
                Measure.of(grams, Unit.GRAMS),
                Cause.of(cause));
    }

    private void addSowing(Event event) {
        if (!(tray.tray.planting() instanceof Planting.OfCrop crop)) {
            return;
        }
        double sowS = event.atS() - crop.ageAtStartDays() * 86400;
        if (sowS >= 0) {
            LocalDateTime ready = tray.trace.clockAt(event.atS());
            task(
                    Task.Kind.SOW_NEXT,
                    tray.rounds.lastUpTo(sowS / 3600) * 3600,
                    Measure.of(crop.ageAtStartDays(), Unit.DAYS),
                    new Cause(Cause.Kind.NEXT_IN_TIME, Facts.NONE.on(ready)));
        }
    }

    private void task(Task.Kind kind, double atS, Measure measure, Cause cause) {
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(atS),
                        0,
                        0,
                        measure,
                        cause,
                        List.of(),
                        true));
    }
}
