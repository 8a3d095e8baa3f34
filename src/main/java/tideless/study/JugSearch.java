package tideless.study;

import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;

/**
 * Whether what looks like a leak may be a jug that holds less than it is taken for: a log without a
 * leak whose litres of refills are written otherwise than they are.
 */
final class JugSearch {
    private JugSearch() {}

    /**
     * What the log says then; empty where no refill was measured or the jug would hold more.
     *
     * <p>It is looked for from plants as stated: made thirsty by its litres they empty the
     * reservoir, beyond which no forecast moves.
     *
     * @param tight what may be learned without a leak
     */
    static Optional<Found> of(LoggedReadings readings, FitSpace tight, Reservoir reservoir)
            throws InterruptedException {
        double written = 0;
        double stated = 0;
        for (int i = 0; i < readings.believed().size(); i++) {
            LogEntry.Reading reading = readings.believed().get(i);
            if (reading.what() == LogEntry.Quantity.POURED
                    && reading.where().equals(reservoir.id())) {
                written += reading.value();
                stated += readings.stated()[i];
            }
        }
        if (!(written > 0 && stated > 0)) {
            return Optional.empty();
        }
        FitSpace measured = tight.measured(reservoir.name());
        double[] from = new double[measured.size()];
        from[tight.size()] = FastMath.log(written / stated) / FitSpace.JUG_SD;
        Posterior jug = readings.posterior(measured, Posterior.Start.at(from));
        return jug.mode()[tight.size()] > 0
                ? Optional.of(new Found(measured, jug))
                : Optional.empty();
    }
}
