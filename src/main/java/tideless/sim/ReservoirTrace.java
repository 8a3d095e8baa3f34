package tideless.sim;

import java.util.List;
import tideless.rig.Reservoir;
import tideless.solution.Composition;

/**
 * One reservoir over a run. States hold at the end of each hour; flows are totals over the hour.
 *
 * @param reservoir what it is
 * @param volumeM3 all it holds, m3
 * @param usableM3 what lies above the outlet, m3
 * @param solutionTempC degC
 * @param outflowM3 to its trays, m3 in the hour
 * @param evaporationM3 lost from its open surface, m3 in the hour
 * @param refillM3 poured in, m3 in the hour
 * @param ecMsPerCm EC at 25 degC, mS/cm; NaN when empty
 * @param ph pH in contact with air; NaN when empty
 * @param componentMol a series for each {@link tideless.solution.Component}, mol in the reservoir
 */
public record ReservoirTrace(
        Reservoir reservoir,
        Series volumeM3,
        Series usableM3,
        Series solutionTempC,
        Series outflowM3,
        Series evaporationM3,
        Series refillM3,
        Series ecMsPerCm,
        Series ph,
        List<Series> componentMol) {

    public ReservoirTrace {
        componentMol = List.copyOf(componentMol);
    }

    /** What is dissolved at the end of an hour; pure water when it is empty. */
    public Composition compositionAt(int hour) {
        return TrayTrace.compositionOf(componentMol, volumeM3.at(hour), hour);
    }
}
