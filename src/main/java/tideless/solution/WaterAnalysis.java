package tideless.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A laboratory's sheet or a household test kit turned into a {@link Composition}. A builder: fill
 * it in one place, then ask for {@link #check()}.
 */
public final class WaterAnalysis {
    /** Charge error above which a sheet is doubted, of the mean; common practice. */
    public static final double TOLERABLE_CHARGE_ERROR_FRAC = 0.05;

    /** Taken for a tap water that states none; common practice, no source. */
    private static final double USUAL_PH = 7.5;

    /** Of one ion. */
    public enum Unit {
        /** Milligrams of the ion a litre (of the element for phosphorus). */
        MG_PER_L,
        /** Millimoles a litre, the same number as mol/m3. */
        MMOL_PER_L,
        /** Milliequivalents of charge a litre. */
        MEQ_PER_L,
        /** Milligrams of nitrogen a litre, for nitrate and ammonium. */
        MG_PER_L_AS_N,
        /** Milligrams of sulfur a litre, for sulfate. */
        MG_PER_L_AS_S
    }

    /** Of hardness, calcium and magnesium together. */
    public enum Hardness {
        /** German degrees: 10 mg CaO a litre. */
        DEGREES_DH(10 / MolarMass.CAO),
        /** French degrees: 10 mg CaCO3 a litre. */
        DEGREES_FH(10 / MolarMass.CACO3),
        /** Milligrams a litre as CaCO3 ("ppm hardness"). */
        MG_PER_L_CACO3(1 / MolarMass.CACO3),
        /** Millimoles of Ca + Mg a litre. */
        MMOL_PER_L(1);

        private final double molPerM3;

        Hardness(double molPerM3) {
            this.molPerM3 = molPerM3;
        }

        /** Ca + Mg, mol/m3. */
        public double molPerM3(double value) {
            return value * molPerM3;
        }
    }

    /** Of alkalinity. */
    public enum Alkalinity {
        /** Milliequivalents a litre (mmol of acid a litre). */
        MEQ_PER_L(1),
        /** Milligrams a litre as CaCO3. */
        MG_PER_L_CACO3(2 / MolarMass.CACO3),
        /** Milligrams of bicarbonate a litre. */
        MG_PER_L_HCO3(1 / MolarMass.HCO3),
        /** German degrees of carbonate hardness. */
        DEGREES_DH(20 / MolarMass.CAO),
        /** French degrees: 10 mg of CaCO3 a litre. */
        DEGREES_FH(20 / MolarMass.CACO3);

        private final double eqPerM3;

        Alkalinity(double eqPerM3) {
            this.eqPerM3 = eqPerM3;
        }

        /** mol charge/m3. */
        public double eqPerM3(double value) {
            return value * eqPerM3;
        }
    }

    private final double[] molPerM3 = new double[Component.COUNT];
    private double alkalinityEqPerM3 = Double.NaN;
    private double ph = Double.NaN;

    /** An amount of one ion as mol/m3. */
    public static double molPerM3(Component component, double value, Unit unit) {
        boolean nitrogen = component == Component.NO3 || component == Component.NH4;
        return switch (unit) {
            case MG_PER_L -> value / component.gramsPerMol();
            case MMOL_PER_L -> value;
            case MEQ_PER_L -> {
                // Phosphate as H2PO4-.
                int z = component == Component.P ? 1 : Math.abs(component.fixedCharge());
                if (z == 0) {
                    throw new IllegalArgumentException(component.title() + " has no charge");
                }
                yield value / z;
            }
            case MG_PER_L_AS_N -> {
                if (!nitrogen) {
                    throw new IllegalArgumentException(component.title() + " holds no nitrogen");
                }
                yield value / MolarMass.N;
            }
            case MG_PER_L_AS_S -> {
                if (component != Component.SO4) {
                    throw new IllegalArgumentException(component.title() + " holds no sulfur");
                }
                yield value / MolarMass.S;
            }
        };
    }

    /** States one ion; a second time replaces the first. */
    public WaterAnalysis with(Component component, double value, Unit unit) {
        molPerM3[component.ordinal()] = molPerM3(component, value, unit);
        return this;
    }

    /**
     * States calcium and magnesium by total hardness.
     *
     * @param magnesiumFrac share of magnesium in it; 0.2 is common in tap waters (common practice,
     *     no source)
     */
    public WaterAnalysis hardness(double value, Hardness unit, double magnesiumFrac) {
        if (!(magnesiumFrac >= 0 && magnesiumFrac <= 1)) {
            throw new IllegalArgumentException(
                    "magnesiumFrac must lie in 0 to 1, was " + magnesiumFrac);
        }
        double both = unit.molPerM3(value);
        molPerM3[Component.CA.ordinal()] = both * (1 - magnesiumFrac);
        molPerM3[Component.MG.ordinal()] = both * magnesiumFrac;
        return this;
    }

    /** States the alkalinity. */
    public WaterAnalysis alkalinity(double value, Alkalinity unit) {
        alkalinityEqPerM3 = unit.eqPerM3(value);
        return this;
    }

    /** States the pH as it comes from the tap. */
    public WaterAnalysis ph(double value) {
        if (!(value > 3 && value < 11)) {
            throw new IllegalArgumentException("pH of a water must lie in 3 to 11, was " + value);
        }
        ph = value;
        return this;
    }

    /**
     * What the sheet says, checked.
     *
     * @param composition charge balanced, with the carbon that fits its pH (with none stated but an
     *     alkalinity, 7.5; else air's)
     * @param chargeErrorFrac cations less anions over their mean, as stated; NaN where no
     *     alkalinity was stated and bicarbonate was left to balance
     * @param remarks what was amiss and what was done about it
     */
    public record Checked(Composition composition, double chargeErrorFrac, List<String> remarks) {
        public Checked {
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Balances the charge. Without an alkalinity, bicarbonate takes what is missing. With one, the
     * difference goes to sodium or chloride, the two that small kits leave out.
     */
    public Checked check() {
        List<String> remarks = new ArrayList<>();
        double readPh = ph;
        if (Double.isNaN(ph) && alkalinityEqPerM3 > 0) {
            readPh = USUAL_PH;
            remarks.add(
                    "The analysis states no pH: 7.5 was taken, as tap waters mostly read (common"
                            + " practice).");
        }
        Composition stated = Composition.of(molPerM3).with(Component.C, 0);
        double charge = stated.fixedChargeMolPerM3() - stated.molPerM3(Component.P);
        double errorFrac = Double.NaN;
        Composition balanced = stated;
        if (alkalinityEqPerM3 >= 0) {
            double cations = 0;
            for (int i = 0; i < Component.COUNT; i++) {
                cations += Math.max(0, Component.at(i).fixedCharge()) * stated.molPerM3(i);
            }
            double difference = charge - alkalinityEqPerM3;
            double mean = cations - difference / 2;
            errorFrac = mean > 0 ? difference / mean : 0;
            if (Math.abs(errorFrac) > TOLERABLE_CHARGE_ERROR_FRAC) {
                remarks.add(
                        String.format(
                                Locale.ROOT,
                                "Cations and anions differ by %.1f %% of their mean: doubt one"
                                        + " figure of this analysis.",
                                100 * errorFrac));
            }
            Component closing = difference > 0 ? Component.CL : Component.NA;
            if (Math.abs(difference) > 1e-9) {
                balanced = stated.with(closing, stated.molPerM3(closing) + Math.abs(difference));
                remarks.add(
                        String.format(
                                Locale.ROOT,
                                "%.3f mmol/L of %s was added so that the charges balance.",
                                Math.abs(difference),
                                closing.title()));
            }
        } else if (charge < -0.1) {
            // An acid water is possible (rain), a tenth of a mmol/L of free acid is not.
            balanced = stated.with(Component.NA, stated.molPerM3(Component.NA) - charge);
            remarks.add(
                    String.format(
                            Locale.ROOT,
                            "Anions exceed cations by %.3f mmol/L: sodium was added for them.",
                            -charge));
        }
        OptionalDouble carbon =
                readPh > 0 ? Acidity.carbonForPh(balanced, 25, readPh) : OptionalDouble.empty();
        if (readPh > 0 && carbon.isEmpty()) {
            remarks.add(
                    String.format(
                            Locale.ROOT,
                            "These ions cannot read pH %.2f: carbon as in air was taken.",
                            readPh));
        }
        Composition whole =
                carbon.isPresent()
                        ? balanced.with(Component.C, carbon.getAsDouble())
                        : Acidity.inAir(balanced, 25, ElectricalConductivity.AIR_CO2_PPM);
        return new Checked(whole, errorFrac, remarks);
    }
}
