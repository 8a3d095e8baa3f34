package tideless.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Tray;
import tideless.rig.VesselId;
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
 * @param lampKwhLow power of the lamps, kWh; 0 without lamps. By their watts where these are told,
 *     else that of good ones which waste little
 * @param lampKwhHigh with poor ones, kWh; the same where all watts are told
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

    /** Of a run; lamps burn while a tray's plants live, and by their watts where these are told. */
    public static SeasonTakes of(Trace trace) {
        double drunk = 0;
        double photons = 0;
        Map<Lamp, List<PlantingTrace>> metered = new LinkedHashMap<>();
        for (TrayTrace run : trace.trays()) {
            drunk += L_PER_M3 * run.transpirationM3().sum();
            for (PlantingTrace planting : trace.plantings(run)) {
                Lamp lamp = planting.tray().lamp();
                if (lamp.plug().watts() > 0) {
                    metered.computeIfAbsent(lamp, key -> new ArrayList<>()).add(planting);
                } else if (lamp.isElectric()) {
                    photons +=
                            UMOL_PER_MOL
                                    * lamp.molPerM2(fromS(planting), toS(planting))
                                    * litM2(planting.tray());
                }
            }
        }
        double water = 0;
        for (Event event : trace.events()) {
            water += L_PER_M3 * event.waterM3();
        }
        double told = 0;
        for (Map.Entry<Lamp, List<PlantingTrace>> lamp : metered.entrySet()) {
            told += kwh(lamp.getKey(), lamp.getValue());
        }
        return new SeasonTakes(
                L_PER_M3 * trace.feedM3(),
                water,
                drunk,
                told + photons / HITS_FRAC / GOOD_UMOL_PER_J / J_PER_KWH,
                told + photons / HITS_FRAC / POOR_UMOL_PER_J / J_PER_KWH);
    }

    /**
     * Of lamps of one kind, which burn from the first day of the crops below them to the last one's
     * end; so many as light the trays' areas.
     */
    private static double kwh(Lamp lamp, List<PlantingTrace> below) {
        double fromS = below.stream().mapToDouble(SeasonTakes::fromS).min().orElseThrow();
        double toS = below.stream().mapToDouble(SeasonTakes::toS).max().orElseThrow();
        Map<VesselId, Double> areas = new LinkedHashMap<>();
        below.forEach(of -> areas.put(of.tray().id(), of.tray().shape().rimAreaM2()));
        double areaM2 = areas.values().stream().mapToDouble(area -> area).sum();
        long lamps = Math.max(1, FastMath.round(areaM2 / lamp.plug().litM2()));
        double fullS = UMOL_PER_MOL * lamp.molPerM2(fromS, toS) / lamp.ppfdUmolPerM2S();
        return lamps * lamp.plug().watts() * fullS / J_PER_KWH;
    }

    private static double fromS(PlantingTrace planting) {
        return planting.firstHour() * Time.HOUR_S;
    }

    private static double toS(PlantingTrace planting) {
        return (planting.lastHour() + 1) * Time.HOUR_S;
    }

    private static double litM2(Tray tray) {
        return tray.planting() instanceof Planting.OfCrop crop
                ? crop.groundM2()
                : tray.shape().rimAreaM2();
    }
}
