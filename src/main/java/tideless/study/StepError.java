package tideless.study;

import java.util.List;
import java.util.Map;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;
import tideless.sim.Trace;
import tideless.sim.TraySeason;
import tideless.sim.TrayTrace;

/**
 * What the longer step of members costs: the run itself, stepped as they are, beside the run.
 *
 * @param stepS the members' step, s
 * @param weightFrac greatest difference of a head's or plant's weight at its harvest, of it
 * @param waterFrac greatest difference of what a tray's plants drank, of it
 * @param shiftS greatest shift of a dated event that both tell, s
 * @param unmatched dated events that only one of them tells
 */
public record StepError(
        double stepS, double weightFrac, double waterFrac, double shiftS, int unmatched) {
    /** Of a run, by one season more. */
    public static StepError of(Trace trace) {
        var coarse = Ensemble.atEnsembleStep(trace.scenario());
        return of(trace, Simulation.season(coarse, Surroundings.forSeasons(coarse)));
    }

    static StepError of(Trace trace, Season coarse) {
        double weightFrac = 0;
        double waterFrac = 0;
        for (int i = 0; i < trace.trays().size(); i++) {
            TrayTrace tray = trace.trays().get(i);
            double drunk = tray.transpirationM3().sum(0, trace.hours());
            waterFrac = Math.max(waterFrac, frac(coarse.trays().get(i).drunkM3(), drunk));
            List<PlantingTrace> plantings = trace.plantings(tray);
            List<TraySeason.Yield> yields = coarse.trays().get(i).yields();
            long cut =
                    coarse.events().stream()
                            .filter(e -> e.kind() == Event.Kind.HARVEST)
                            .filter(e -> e.vessel().equals(tray.tray().id()))
                            .count();
            for (int n = 0; n < Math.min(cut, plantings.size()); n++) {
                double fine = tray.freshG().at(plantings.get(n).lastHour());
                weightFrac = Math.max(weightFrac, frac(yields.get(n).freshG(), fine));
            }
        }
        Map<Expected.What, Fate.Dated> fine = Fate.dated(trace.events());
        Map<Expected.What, Fate.Dated> told = Fate.dated(coarse.events());
        double shiftS = 0;
        int unmatched = 0;
        for (Map.Entry<Expected.What, Fate.Dated> one : fine.entrySet()) {
            Fate.Dated other = told.get(one.getKey());
            if (other == null) {
                unmatched++;
            } else {
                shiftS = Math.max(shiftS, Math.abs(other.atS() - one.getValue().atS()));
            }
        }
        for (Expected.What what : told.keySet()) {
            unmatched += fine.containsKey(what) ? 0 : 1;
        }
        return new StepError(
                Ensemble.atEnsembleStep(trace.scenario()).numerics().stepS(),
                weightFrac,
                waterFrac,
                shiftS,
                unmatched);
    }

    private static double frac(double coarse, double fine) {
        return fine > 0 ? Math.abs(coarse - fine) / fine : 0;
    }
}
