package tideless.rig;

/**
 * Numerical choices.
 *
 * @param stepS longest step of the run, s; 1 to 21600
 */
public record Numerics(double stepS) {
    public Numerics {
        if (!(stepS >= 1 && stepS <= 21600)) {
            throw new IllegalArgumentException("stepS must lie in 1 to 21600, was " + stepS);
        }
    }
}
