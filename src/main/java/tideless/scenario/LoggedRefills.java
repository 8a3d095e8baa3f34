package tideless.scenario;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/**
 * Says which litres of a log do not agree with the level read before them, or with a refill just
 * before. All stand: which of two is wrong only who wrote them knows.
 */
final class LoggedRefills {
    /** Litres that disagree by less are jugs and rulers, of their value; assumed. */
    private static final double ALIKE_FRAC = 0.25;

    /** Or by less than so much of level, m; assumed. */
    private static final double ALIKE_M = 0.01;

    private static final double TENTH_M3 = 1e-4; // of a litre

    private final Scenario scenario;
    private final LogReader reader;
    private final Map<VesselId, LogEntry.Reading> level = new HashMap<>();
    private final Map<VesselId, LogReader.Placed> filled = new HashMap<>();

    LoggedRefills(Scenario scenario, LogReader reader) {
        this.scenario = scenario;
        this.reader = reader;
    }

    /** A vessel that is filled to a mark. */
    private record Marked(Shape shape, double markM) {
        double toM3(double fromM, double toM) {
            return shape.volumeM3(Math.max(fromM, toM)) - shape.volumeM3(fromM);
        }

        boolean disagree(double m3, double otherM3) {
            double bornM3 = Math.max(ALIKE_FRAC * otherM3, ALIKE_M * shape.areaM2(markM));
            return Math.abs(m3 - otherM3) > bornM3;
        }
    }

    private Optional<Marked> marked(VesselId where) {
        Optional<Reservoir> reservoir = scenario.reservoir(where);
        if (reservoir.isPresent()) {
            return reservoir.map(r -> new Marked(r.shape(), r.fullLevelM()));
        }
        Optional<Tray> tray = scenario.tray(where);
        return tray.flatMap(
                t ->
                        t.filling() instanceof Filling.ByHand hand
                                ? Optional.of(
                                        new Marked(
                                                t.shape(),
                                                Math.min(hand.toLevelM(), t.overflowM())))
                                : Optional.empty());
    }

    /** Says it of what is sorted by time. */
    void say(List<LogReader.Placed> sorted) {
        for (LogReader.Placed one : sorted) {
            LogEntry entry = one.entry();
            if (entry instanceof LogEntry.Reading reading && reading.counts()) {
                if (reading.what() == LogEntry.Quantity.LEVEL) {
                    level.put(reading.where(), reading);
                } else if (reading.what() == LogEntry.Quantity.POURED) {
                    sayRefill(reading);
                }
            } else if (entry instanceof LogEntry.FilledUp done) {
                sayTwice(done, one);
                filled.put(done.where(), one);
                level.remove(done.where());
            } else if (entry instanceof LogEntry.Poured poured) {
                sayPoured(poured, one);
                level.remove(poured.where());
            } else if (entry instanceof LogEntry.Renewed renewed) {
                level.remove(renewed.where());
            }
        }
    }

    private Optional<LogEntry.Reading> justBefore(VesselId where, double atS) {
        return Optional.ofNullable(level.get(where))
                .filter(read -> atS - read.atS() <= LogReader.TWO_CLOCKS_S);
    }

    private void sayRefill(LogEntry.Reading litres) {
        Optional<Marked> vessel = marked(litres.where());
        Optional<LogEntry.Reading> before = justBefore(litres.where(), litres.atS());
        if (vessel.isEmpty() || before.isEmpty()) {
            return;
        }
        double roomM3 = vessel.get().toM3(before.get().value(), vessel.get().markM());
        if (vessel.get().disagree(litres.value(), roomM3)) {
            reader.note(
                    litres.line(),
                    "this refill took %s, but from the level in line %s to the mark go %s: which of them is right? Write no under use of the other"
                            .formatted(
                                    litres(litres.value()), before.get().line(), litres(roomM3)));
        }
    }

    private void sayPoured(LogEntry.Poured poured, LogReader.Placed one) {
        Optional<Marked> vessel = marked(poured.where());
        Optional<LogEntry.Reading> before = justBefore(poured.where(), poured.atS());
        if (vessel.isEmpty() || before.isEmpty()) {
            return;
        }
        Marked of = vessel.get();
        double roomM3 = of.toM3(before.get().value(), of.shape().depthM());
        if (poured.m3() > roomM3 && of.disagree(poured.m3(), roomM3)) {
            reader.note(
                    one.line().line(),
                    "%s were poured in, but from the level in line %s to the rim go %s: the rest is taken as spilt"
                            .formatted(litres(poured.m3()), before.get().line(), litres(roomM3)));
        }
    }

    /** A second refill shortly after one, of other litres; the same ones are told elsewhere. */
    private void sayTwice(LogEntry.FilledUp done, LogReader.Placed one) {
        LogReader.Placed other = filled.get(done.where());
        if (other == null
                || done.atS() - other.entry().atS() > LogReader.TWO_CLOCKS_S
                || one.line().value().text().equals(other.line().value().text())) {
            return;
        }
        reader.note(
                one.line().line(),
                "a second refill shortly after that in line %s, of other litres; if both together filled it to the mark, write one line with their sum"
                        .formatted(other.line().line()));
    }

    private static String litres(double m3) {
        return Measure.plain(FastMath.rint(m3 / TENTH_M3) * TENTH_M3, UnitTable.VOLUME, "L");
    }
}
