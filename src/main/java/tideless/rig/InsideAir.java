package tideless.rig;

import java.util.EnumMap;
import java.util.Map;

/**
 * Air and light as they were measured at the plants, hour by hour and without gaps. Value {@code h}
 * is the mean of the hour that begins {@code h} hours after the scenario's start; after the last
 * hour its values are held.
 */
public final class InsideAir {
    /** What is known of every hour. */
    public enum Quantity {
        /** Air temperature, degC. */
        TEMP_C,
        /** Vapour pressure, Pa. */
        VAPOUR_PA,
        /** Sun inside, 400-700 nm, W/m2. */
        SUN_PAR_W_PER_M2,
        /** Lamps of the house at the canopy, 400-700 nm, umol/m2/s. */
        LAMP_PPFD_UMOL_PER_M2_S,
        /** Carbon dioxide, umol/mol. */
        CO2_PPM,
        /** Air speed at the leaves, m/s. */
        AIR_SPEED_M_PER_S,
        /** The solution's temperature, degC; NaN where it is worked out. */
        SOLUTION_TEMP_C
    }

    private final String source;
    private final String filled;
    private final Map<Quantity, double[]> hourly = new EnumMap<>(Quantity.class);
    private final boolean recordsLamps;
    private final double lampUmolPerJ;
    private final double lampNearInfraredPerPar;
    private final int hours;

    /**
     * @param source file name and licence line, for the report
     * @param filled what was missing from the file and how it was filled, one sentence; empty when
     *     nothing was
     * @param hourly every quantity, all of one length above 0
     * @param recordsLamps whether the light of lamps is in it
     * @param lampUmolPerJ photons per joule of the lamps' 400-700 nm light, umol/J
     * @param lampNearInfraredPerPar near infrared at the canopy per unit of their 400-700 nm power,
     *     W/W
     */
    public InsideAir(
            String source,
            String filled,
            Map<Quantity, double[]> hourly,
            boolean recordsLamps,
            double lampUmolPerJ,
            double lampNearInfraredPerPar) {
        this.source = source;
        this.filled = filled;
        this.recordsLamps = recordsLamps;
        this.lampUmolPerJ = lampUmolPerJ;
        this.lampNearInfraredPerPar = lampNearInfraredPerPar;
        if (!(lampUmolPerJ > 0)) {
            throw new IllegalArgumentException("lampUmolPerJ must be above 0, was " + lampUmolPerJ);
        }
        for (Quantity quantity : Quantity.values()) {
            double[] values = hourly.get(quantity);
            if (values == null || values.length == 0) {
                throw new IllegalArgumentException("inside air needs " + quantity);
            }
            this.hourly.put(quantity, values.clone());
        }
        hours = hourly.get(Quantity.TEMP_C).length;
        for (double[] values : this.hourly.values()) {
            if (values.length != hours) {
                throw new IllegalArgumentException("inside columns must be of one length");
            }
        }
    }

    public String source() {
        return source;
    }

    /** What was missing from the file and how it was filled; empty when nothing was. */
    public String filled() {
        return filled;
    }

    /** How many hours there are. */
    public int hours() {
        return hours;
    }

    /** A quantity's mean of an hour. */
    public double at(Quantity quantity, int hour) {
        return hourly.get(quantity)[Math.min(hour, hours - 1)];
    }

    /** Whether any sun reaches the plants in the whole series. */
    public boolean isSunlit() {
        for (double par : hourly.get(Quantity.SUN_PAR_W_PER_M2)) {
            if (par > 0) {
                return true;
            }
        }
        return false;
    }

    /** Whether the series holds the light of lamps, so that none over a tray may add it again. */
    public boolean recordsLamps() {
        return recordsLamps;
    }

    /** Photons per joule of the lamps' 400-700 nm light, umol/J. */
    public double lampUmolPerJ() {
        return lampUmolPerJ;
    }

    /** Near infrared per unit of the lamps' 400-700 nm power, W/W. */
    public double lampNearInfraredPerPar() {
        return lampNearInfraredPerPar;
    }
}
