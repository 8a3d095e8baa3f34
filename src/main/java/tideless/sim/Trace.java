package tideless.sim;

import java.time.LocalDateTime;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/**
 * All that one run leaves behind, hour by hour.
 *
 * @param scenario what was run
 * @param hours samples in every series; sample {@code h} closes the hour that ends at {@code h + 1}
 *     hours after the start
 * @param trays in the scenario's order
 * @param reservoirs in the scenario's order
 * @param events in order of time
 * @param water the water's ledger
 * @param components a ledger for each {@link tideless.solution.Component}
 */
public record Trace(
        Scenario scenario,
        int hours,
        List<TrayTrace> trays,
        List<ReservoirTrace> reservoirs,
        List<Event> events,
        Ledger water,
        List<Ledger> components) {

    public Trace {
        trays = List.copyOf(trays);
        reservoirs = List.copyOf(reservoirs);
        events = List.copyOf(events);
        components = List.copyOf(components);
    }

    /** The clock of the rig at an instant, to the second. */
    public LocalDateTime clockAt(double seconds) {
        return scenario.start().atStartOfDay().plusSeconds(FastMath.round(seconds));
    }

    /** The clock at which sample {@code hour} was taken. */
    public LocalDateTime clockAtSample(int hour) {
        return scenario.start().atStartOfDay().plusHours(hour + 1L);
    }

    /** The sample that closes the hour an instant lies in, within the run. */
    public int sampleAt(double seconds) {
        return Math.max(0, Math.min(hours - 1, (int) Math.ceil(seconds / Time.HOUR_S) - 1));
    }

    /** The crops a tray has had, in their order; one where they do not follow one another. */
    public List<PlantingTrace> plantings(TrayTrace tray) {
        return PlantingTrace.of(this, tray);
    }

    /** The sample at which a tray's last crop was harvested or lost; the last one when not. */
    public int lastLivingHour(TrayTrace tray) {
        List<PlantingTrace> plantings = plantings(tray);
        return plantings.get(plantings.size() - 1).lastHour();
    }

    /**
     * One of its trays.
     *
     * @throws IllegalArgumentException for none of them
     */
    public TrayTrace tray(VesselId id) {
        for (TrayTrace tray : trays) {
            if (tray.tray().id().equals(id)) {
                return tray;
            }
        }
        throw new IllegalArgumentException("no tray of this run: " + id);
    }

    /**
     * Feed made in the whole run, m3: what trays and reservoirs begin with, refills, fresh
     * solution, what trays are filled with for the next crop, and what hands top up with feed.
     */
    public double feedM3() {
        double made = 0;
        for (Tray tray : scenario.trays()) {
            made += tray.shape().volumeM3(tray.startLevelM());
        }
        for (Reservoir reservoir : scenario.reservoirs()) {
            made += reservoir.shape().volumeM3(reservoir.startLevelM());
        }
        for (Event event : events) {
            boolean poured =
                    switch (event.kind()) {
                        case REFILL, FRESH_SOLUTION, FLUSH, TOP_UP, PLANTED -> true;
                        default -> false;
                    };
            made += poured ? event.volumeM3() - event.waterM3() : 0;
        }
        return made;
    }
}
