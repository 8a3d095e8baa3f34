package tideless.solution;

/** Whether a solution may give CO2 to the air and take it up. */
public sealed interface Contact {
    /** Outdoor air, {@link ElectricalConductivity#AIR_CO2_PPM}. */
    Contact OUTDOOR_AIR = new InAir(ElectricalConductivity.AIR_CO2_PPM);

    /** Nothing leaves or enters: a full bottle, or the first minutes after stirring. */
    Contact CLOSED = new Closed();

    /**
     * In equilibrium with air: a shallow tray after a day or two.
     *
     * @param co2Ppm parts per million by volume, at one standard atmosphere
     */
    record InAir(double co2Ppm) implements Contact {
        public InAir {
            if (!(co2Ppm >= 0 && co2Ppm <= 1e6)) {
                throw new IllegalArgumentException("co2Ppm must lie in 0 to 1e6, was " + co2Ppm);
            }
        }
    }

    /** Carbon as carried. */
    record Closed() implements Contact {}
}
