package tideless.solution;

import java.util.Objects;

/**
 * A two-part concentrate with the dilution its label prints.
 *
 * @param a holds the calcium
 * @param b holds the sulfates and phosphates
 * @param ratio the 300 of "1:300"
 * @param basis what the label counts
 */
public record TwoPart(Concentrate a, Concentrate b, double ratio, Basis basis) {
    /** What "1:300" counts; labels differ and the difference is below 1 %. */
    public enum Basis {
        /** 1 g of each part put into 300 g of water: 302 g in all. */
        PARTS_INTO_WATER,
        /** 1 g of each part in 300 g of finished solution. */
        PARTS_IN_TOTAL
    }

    public TwoPart {
        Objects.requireNonNull(a, "a");
        Objects.requireNonNull(b, "b");
        Objects.requireNonNull(basis, "basis");
        if (!(ratio >= 10 && ratio <= 10_000)) {
            throw new IllegalArgumentException("ratio must lie in 10 to 10000, was " + ratio);
        }
    }

    /** Grams of each part in a litre of finished solution at label strength (1 kg a litre). */
    public double gramsPerL() {
        return 1000 / (basis == Basis.PARTS_INTO_WATER ? ratio + 2 : ratio);
    }

    /**
     * What both parts add at label strength, mol/m3. The tracer is 1 at label strength: the
     * product's own micronutrients, whole.
     */
    public Composition atLabelStrength() {
        return share(a).plus(share(b)).with(Component.TRACER, 1);
    }

    /**
     * The same with the charge closed, phosphate as H2PO4-: a bottle is neutral, so what its label
     * does not name is counted as chloride where cations exceed, as sodium where anions do.
     */
    public Composition balancedAtLabelStrength() {
        return atLabelStrength().plus(unnamed());
    }

    /** The ion that closes the charge, mol/m3 at label strength. */
    Composition unnamed() {
        return closing(chargeErrorMolPerM3());
    }

    /** The same of one part by itself: a bottle is neutral too. */
    Composition unnamed(Concentrate part) {
        return closing(errorMolPerM3(share(part)));
    }

    private static Composition closing(double error) {
        return Composition.WATER.with(error > 0 ? Component.CL : Component.NA, Math.abs(error));
    }

    /** What one part adds at label strength, mol/m3. */
    Composition share(Concentrate part) {
        return part.molPerKg().times(gramsPerL());
    }

    /** Charge of both labels together, mol charge/m3 at label strength: 0 for a whole label. */
    public double chargeErrorMolPerM3() {
        return errorMolPerM3(atLabelStrength());
    }

    private static double errorMolPerM3(Composition named) {
        return named.fixedChargeMolPerM3() - named.molPerM3(Component.P);
    }
}
