package tideless.sim;

import tideless.crop.CarbonDioxide;

/** Light and warmth of the day so far, as growth asks for them; scratch space of one run. */
final class DayClimate {
    private double molPerM2;
    private double joulesPerM2;
    private double ppfdMol;
    private double tempCS;
    private double co2PpmMol;
    private double litSetS;
    private double litS;
    private double spanS;
    private double lowestC = Double.POSITIVE_INFINITY;
    private double highestC = Double.NEGATIVE_INFINITY;

    /**
     * Adds a step.
     *
     * @param ppfdUmolPerM2S light on the canopy, umol/m2/s
     * @param molPerM2OfStep what that comes to over the step, mol/m2
     * @param parWPerM2 its power, W/m2
     * @param co2Ppm carbon dioxide of the air, umol/mol
     */
    void add(
            double ppfdUmolPerM2S,
            double molPerM2OfStep,
            double parWPerM2,
            double airC,
            double co2Ppm,
            double stepS) {
        molPerM2 += molPerM2OfStep;
        joulesPerM2 += parWPerM2 * stepS;
        ppfdMol += ppfdUmolPerM2S * molPerM2OfStep;
        tempCS += airC * stepS;
        lowestC = Math.min(lowestC, airC);
        highestC = Math.max(highestC, airC);
        co2PpmMol += co2Ppm * molPerM2OfStep;
        spanS += stepS;
    }

    /**
     * Adds what flowers find in the air of a lit step.
     *
     * @param setFrac share of them that set, 0-1
     */
    void addFlowers(double setFrac, double stepS) {
        litSetS += setFrac * stepS;
        litS += stepS;
    }

    /** Light, mol/m2. */
    double molPerM2() {
        return molPerM2;
    }

    /**
     * Light at which the mean photon of the day fell, umol/m2/s: that of a lamp while it is on; of
     * a half-sine of sun pi^2 / 8 of the mean of its lit hours. What a photon makes depends on how
     * many others fall with it.
     */
    double litPpfdUmolPerM2S() {
        return molPerM2 > 0 ? ppfdMol / molPerM2 : 0;
    }

    /** Photons per joule of the day's light, umol/J. */
    double umolPerJ() {
        return joulesPerM2 > 0 ? molPerM2 * 1e6 / joulesPerM2 : AirSeries.SUN_UMOL_PER_J;
    }

    /** Mean temperature of the air, degC. */
    double meanTempC() {
        return tempCS / spanS;
    }

    /** Coldest air of a step, degC. */
    double lowestC() {
        return lowestC;
    }

    /** Warmest air of a step, degC. */
    double highestC() {
        return highestC;
    }

    /**
     * Carbon dioxide of the air, weighed by light, umol/mol; outdoor air on a day without light.
     */
    double litCo2Ppm() {
        return molPerM2 > 0 ? co2PpmMol / molPerM2 : CarbonDioxide.AMBIENT_PPM;
    }

    /** Share of the flowers of the lit hours that set, 0-1; all on a day without light. */
    double setFrac() {
        return litS > 0 ? litSetS / litS : 1;
    }

    /** Length so far, s. */
    double spanS() {
        return spanS;
    }

    void clear() {
        molPerM2 = 0;
        joulesPerM2 = 0;
        ppfdMol = 0;
        tempCS = 0;
        co2PpmMol = 0;
        litSetS = 0;
        litS = 0;
        spanS = 0;
        lowestC = Double.POSITIVE_INFINITY;
        highestC = Double.NEGATIVE_INFINITY;
    }
}
