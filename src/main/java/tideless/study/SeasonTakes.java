package tideless.study;

import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Tray;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/**
 * What a season takes of water and power.
 *
 * @param feedLitres feed made in all, L
 * @param waterLitres plain water poured besides, L
 * @param drunkLitres what the plants drank, L
 * @param lampKwhLow power of the lamps with good ones that waste little, kWh; 0 without lamps
 * @param lampKwhHigh with poor ones, kWh
 */
public record SeasonTakes(
        double feedLitres,
        double waterLitres,
        double drunkLitres,
        double lampKwhLow,
        double lampKwhHigh) {
    /** Photons for each joule at the plug: white LED lamps from good to poor; from memory. */
    private static final double GOOD_UMOL_PER_J = 2.8;

    private static final double POOR_UMOL_PER_J = 1.8;

    /** Share of a lamp's photons that reach the plants below it; assumed. */
    private static final double HITS_FRAC = 0.8;

    private static final double UMOL_PER_MOL = 1e6;
    private static final double J_PER_KWH = 3.6e6;
    private static final double L_PER_M3 = 1000;

    /** Of a run; lamps burn while a tray's plants live. */
    public static SeasonTakes of(Trace trace) {
        double drunk = 0;
        double photons = 0;
        for (TrayTrace run : trace.trays()) {
            drunk += L_PER_M3 * run.transpirationM3().sum();
            for (PlantingTrace planting : trace.plantings(run)) {
                Tray tray = planting.tray();
                double fromS = planting.firstHour() * Time.HOUR_S;
                double toS = (planting.lastHour() + 1) * Time.HOUR_S;
                photons += UMOL_PER_MOL * tray.lamp().molPerM2(fromS, toS) * litM2(tray);
            }
        }
        double water = 0;
        for (Event event : trace.events()) {
            water += L_PER_M3 * event.waterM3();
        }
        return new SeasonTakes(
                L_PER_M3 * trace.feedM3(),
                water,
                drunk,
                photons / HITS_FRAC / GOOD_UMOL_PER_J / J_PER_KWH,
                photons / HITS_FRAC / POOR_UMOL_PER_J / J_PER_KWH);
    }

    private static double litM2(Tray tray) {
        return tray.planting() instanceof Planting.OfCrop crop
                ? crop.groundM2()
                : tray.shape().rimAreaM2();
    }
}
