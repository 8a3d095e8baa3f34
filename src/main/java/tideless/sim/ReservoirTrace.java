package tideless.sim;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tideless.rig.Reservoir;
import tideless.solution.Composition;

/**
 * One reservoir over a run. States hold at the end of each hour; flows are totals over the hour.
 *
 * @param reservoir what it is
 * @param series one for each {@link ReservoirSeries}
 * @param componentMol a series for each {@link tideless.solution.Component}, mol in the reservoir
 */
public record ReservoirTrace(
        Reservoir reservoir, Map<ReservoirSeries, Series> series, List<Series> componentMol) {

    public ReservoirTrace {
        for (ReservoirSeries kind : ReservoirSeries.values()) {
            if (series.get(kind) == null) {
                throw new IllegalArgumentException("no series of " + kind);
            }
        }
        series = Collections.unmodifiableMap(new EnumMap<>(series));
        componentMol = List.copyOf(componentMol);
    }

    /** One series. */
    public Series of(ReservoirSeries kind) {
        return series.get(kind);
    }

    /** {@link ReservoirSeries#VOLUME}. */
    public Series volumeM3() {
        return of(ReservoirSeries.VOLUME);
    }

    /** {@link ReservoirSeries#USABLE}. */
    public Series usableM3() {
        return of(ReservoirSeries.USABLE);
    }

    /** {@link ReservoirSeries#OUTFLOW}. */
    public Series outflowM3() {
        return of(ReservoirSeries.OUTFLOW);
    }

    /** {@link ReservoirSeries#EVAPORATION}. */
    public Series evaporationM3() {
        return of(ReservoirSeries.EVAPORATION);
    }

    /** {@link ReservoirSeries#EC}. */
    public Series ecMsPerCm() {
        return of(ReservoirSeries.EC);
    }

    /** {@link ReservoirSeries#PH}. */
    public Series ph() {
        return of(ReservoirSeries.PH);
    }

    /** What is dissolved at the end of an hour; pure water when it is empty. */
    public Composition compositionAt(int hour) {
        return TrayTrace.compositionOf(componentMol, volumeM3().at(hour), hour);
    }
}
