package tideless.sim;

import tideless.physics.HumidAir;
import tideless.physics.OpenWater;

/** Evaporation of one vessel's open surface in a step; scratch space of one run. */
final class Surface {
    /**
     * The transfer coefficient is worked out anew when the solution has moved by this much, K: a
     * quarter of a percent of it at most, where free convection drives it over a kelvin or more.
     */
    private static final double TEMP_MOVED_K = 0.01;

    private final double areaM2;
    private final double lengthM;
    private double knownAtC = Double.NaN;
    private double transferMPerS;

    /** Water lost, m3/s; dew is not collected. */
    double m3PerS;

    /** Its rise with the solution's temperature, m3/s/K. */
    double slopeM3PerSK;

    /**
     * @param areaM2 open to the air, m2; 0 for none
     * @param lengthM area over perimeter of the opening, m
     */
    Surface(double areaM2, double lengthM) {
        this.areaM2 = areaM2;
        this.lengthM = lengthM;
    }

    /** Works out {@link #m3PerS} and {@link #slopeM3PerSK} from the state at a step's start. */
    void begin(boolean wet, double tempC, AirSeries air, int step) {
        m3PerS = 0;
        slopeM3PerSK = 0;
        if (!(areaM2 > 0) || !wet) {
            knownAtC = Double.NaN;
            return;
        }
        double airC = air.tempC[step];
        double vapourPa = air.vapourPa[step];
        if (!air.sameAsBefore[step] || !(Math.abs(tempC - knownAtC) <= TEMP_MOVED_K)) {
            transferMPerS =
                    OpenWater.massTransferMPerS(
                            tempC, airC, vapourPa, air.speedMPerS[step], lengthM, air.pressurePa);
            knownAtC = tempC;
        }
        double saturatedPa = HumidAir.saturationPressurePa(tempC);
        double kgPerM2S =
                transferMPerS
                        * (HumidAir.vapourDensityKgPerM3(tempC, saturatedPa)
                                - HumidAir.vapourDensityKgPerM3(airC, vapourPa));
        double deficitPa = saturatedPa - vapourPa;
        if (kgPerM2S > 0) {
            double perM3 = areaM2 / TrayRun.WATER_KG_PER_M3;
            m3PerS = kgPerM2S * perM3;
            if (deficitPa > 1) {
                slopeM3PerSK =
                        m3PerS * HumidAir.saturationSlopePaPerK(tempC, saturatedPa) / deficitPa;
            }
        }
    }
}
