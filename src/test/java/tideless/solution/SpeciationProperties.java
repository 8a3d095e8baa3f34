package tideless.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** Laws of solutions; each law is a plain method on plain values. */
class SpeciationProperties {
    /** Sums of salts and a little acid or lye: charge balanced but for pH, up to 0.5 mol/kg. */
    @Provide
    Arbitrary<Composition> solutions() {
        Arbitrary<Double> amount =
                Arbitraries.doubles().between(-6, 1.9).map(x -> x < -5.5 ? 0 : Math.pow(10, x));
        return Combinators.combine(
                        amount.array(double[].class).ofSize(11),
                        Arbitraries.doubles().between(-6, 0))
                .as(
                        (n, logScale) -> {
                            Composition sum = Composition.WATER;
                            Salt[] salts = Salt.values();
                            for (int i = 0; i < n.length; i++) {
                                sum = sum.plus(salts[i % salts.length].perMol().times(n[i]));
                            }
                            sum =
                                    sum.plus(
                                            Composition.WATER
                                                    .with(Component.C, n[0] * 0.3)
                                                    .with(Component.NA, n[3] * 0.3)
                                                    .with(Component.NO3, n[4] * 0.3));
                            double strength = 0;
                            for (Component c : Component.values()) {
                                int z = Math.max(1, Math.abs(c.fixedCharge()));
                                strength += 0.5e-3 * z * z * sum.molPerM3(c);
                            }
                            double scale = Math.pow(10, logScale);
                            return sum.times(scale * Math.min(1, 0.5 / strength));
                        });
    }

    private static void allSpeciesPositive(Speciation s) {
        for (Species species : Species.values()) {
            assertThat(s.molPerM3(species)).as(species.name()).isNotNegative().isFinite();
        }
    }

    /** Amounts of a component over all its forms add up to its total. */
    private static void massIsKept(Composition c, Speciation s, boolean carbonToo) {
        double[] sums = new double[Component.COUNT];
        for (Species species : Species.values()) {
            double n = s.molPerM3(species);
            if (species.cation().component != null) {
                sums[species.cation().component.ordinal()] += n;
            }
            switch (species.ligand()) {
                case SULFATE -> sums[Component.SO4.ordinal()] += n;
                case PHOSPHATE -> sums[Component.P.ordinal()] += n;
                case CARBONATE -> sums[Component.C.ordinal()] += n;
                default -> sums[Component.TRACER.ordinal()] = 0;
            }
        }
        sums[Component.NO3.ordinal()] = s.molPerM3(Species.NO3);
        sums[Component.CL.ordinal()] = s.molPerM3(Species.CL);
        for (Component component : Component.values()) {
            if (component != Component.TRACER && (carbonToo || component != Component.C)) {
                double total = c.molPerM3(component);
                assertThat(sums[component.ordinal()])
                        .as(component.title())
                        .isCloseTo(total, within(1e-10 * total + 1e-25));
            }
        }
    }

    /** Charge from the species themselves. */
    private static void chargeBalances(Speciation s) {
        double net = 0;
        double positive = 0;
        for (Species species : Species.values()) {
            net += species.charge() * s.molPerM3(species);
            positive += Math.max(0, species.charge()) * s.molPerM3(species);
        }
        assertThat(net).isCloseTo(0, within(1e-10 * positive));
    }

    /**
     * Activities recomputed here from amounts by Davies' equation, then the laws of mass action.
     */
    private static void massActionHolds(Speciation s, Equilibria k) {
        double strength = 0;
        for (Species species : Species.values()) {
            strength += 0.5e-3 * species.charge() * species.charge() * s.molPerM3(species);
        }
        double root = Math.sqrt(strength);
        double unit = -k.debyeHuckelA * (root / (1 + root) - 0.3 * strength);
        double[] a = new double[Species.COUNT];
        for (Species species : Species.values()) {
            int z = species.charge();
            double logG = z == 0 ? 0.1 * strength : unit * z * z;
            a[species.ordinal()] = s.molPerM3(species) * 1e-3 * Math.pow(10, logG);
        }
        double h = Math.pow(10, -s.ph());
        equal(a[Species.H.ordinal()], h);
        equal(a[Species.OH.ordinal()] * h, k.formation[Species.OH.ordinal()]);
        equal(
                a[Species.NH3.ordinal()] * h,
                k.formation[Species.NH3.ordinal()] * a[Species.NH4.ordinal()]);
        equal(a[Species.HCO3.ordinal()] * h, k.carbonic1 * a[Species.CO2.ordinal()]);
        pair(a, Math.pow(10, 2.25), Species.CASO4, Species.CA, Species.SO4, k);
        pair(a, Math.pow(10, 2.37), Species.MGSO4, Species.MG, Species.SO4, k);
        pair(a, Math.pow(10, 0.85), Species.KSO4, Species.K, Species.SO4, k);
        pair(a, Math.pow(10, 2.739), Species.CAHPO4, Species.CA, Species.HPO4, k);
        pair(a, Math.pow(10, 1.513), Species.MGH2PO4, Species.MG, Species.H2PO4, k);
    }

    private static void pair(
            double[] a,
            double constant,
            Species pair,
            Species cation,
            Species anion,
            Equilibria k) {
        if (k.tempC == 25) {
            equal(a[pair.ordinal()], constant * a[cation.ordinal()] * a[anion.ordinal()]);
        }
    }

    private static void equal(double found, double expected) {
        // 1e-10 is the promise; amounts below 1e-30 mol/kg count as none.
        assertThat(found).isCloseTo(expected, within(1e-10 * Math.abs(expected) + 1e-30));
    }

    @Property(tries = 500)
    void equilibrium_holds_closed(
            @ForAll("solutions") Composition c,
            @ForAll @DoubleRange(min = 0, max = 50) double tempC) {
        double t = tempC > 40 ? 25 : tempC;
        Speciation s = Speciation.closed(c, t);
        allSpeciesPositive(s);
        massIsKept(c, s, true);
        chargeBalances(s);
        massActionHolds(s, Equilibria.at(t));
    }

    @Property(tries = 500)
    void equilibrium_holds_in_air(
            @ForAll("solutions") Composition c,
            @ForAll @DoubleRange(min = 100, max = 5000) double co2Ppm) {
        Speciation s = Speciation.inAir(c, 25, co2Ppm);
        allSpeciesPositive(s);
        massIsKept(c, s, false);
        chargeBalances(s);
        massActionHolds(s, Equilibria.AT_25);
        assertThat(s.co2PressureAtm()).isCloseTo(co2Ppm * 1e-6, withinPercentage(1e-8));
    }

    /** Amounts without any balance, some absent, some all but: pH runs from acid to lye. */
    @Provide
    Arbitrary<Composition> anything() {
        return Arbitraries.doubles()
                .between(-12, 2)
                .map(x -> x < -9 ? 0 : Math.pow(10, x))
                .array(double[].class)
                .ofSize(Component.COUNT)
                .map(Composition::of);
    }

    @Property(tries = 500)
    void amounts_that_do_not_balance_have_an_equilibrium_too(
            @ForAll("anything") Composition c, @ForAll @DoubleRange(min = 2, max = 12) double ph) {
        for (Speciation s :
                new Speciation[] {
                    Speciation.closed(c, 25),
                    Speciation.inAir(c, 25, 420),
                    Speciation.atPh(c, 25, ph)
                }) {
            allSpeciesPositive(s);
            massActionHolds(s, Equilibria.AT_25);
            assertThat(s.worstResidual()).isLessThan(1e-10);
            assertThat(s.ecMsPerCm()).isPositive();
        }
        massIsKept(c, Speciation.closed(c, 25), true);
        chargeBalances(Speciation.closed(c, 25));
    }

    @Property(tries = 300)
    void equilibrium_holds_at_a_stated_ph(
            @ForAll("solutions") Composition c, @ForAll @DoubleRange(min = 3, max = 10) double ph) {
        Speciation s = Speciation.atPh(c, 25, ph);
        allSpeciesPositive(s);
        massIsKept(c, s, true);
        massActionHolds(s, Equilibria.AT_25);
    }

    /**
     * What a reading's residual leaves open of pH: the residual is a share of the charges, and pH
     * moves by what of it the solution does not buffer. In air the buffering is at least ln 10 (H+
     * + OH- + HCO3-): small beside the salts of a strong, acid solution, where 1e-10 of the charges
     * is 1e-7 of pH and more.
     */
    private static double phLeftOpenBy(double residualFrac, Speciation s) {
        double positive = 0;
        for (Species species : Species.values()) {
            positive += Math.max(0, species.charge()) * s.molPerM3(species);
        }
        double buffering =
                Math.log(10)
                        * (s.molPerM3(Species.H)
                                + s.molPerM3(Species.OH)
                                + s.molPerM3(Species.HCO3));
        return residualFrac * positive / buffering + 1e-9;
    }

    /** Any starting point, also one far off, ends at the same place. */
    @Property(tries = 300)
    void the_start_does_not_matter(
            @ForAll("solutions") Composition c, @ForAll("solutions") Composition before) {
        Meter meter = new Meter(420);
        meter.read(before.toArray());
        meter.read(c.toArray());
        Speciation cold = Speciation.inAir(c, 25, 420);
        double asked = phLeftOpenBy(1e-10, cold);
        assertThat(meter.ph()).isCloseTo(cold.ph(), within(asked));
        assertThat(meter.ecMsPerCm()).isCloseTo(cold.ecMsPerCm(), withinPercentage(1e-7));
    }

    /** The bracketed roots that stand behind Newton's steps find the same. */
    @Property(tries = 10)
    void the_slow_way_agrees_with_the_fast_one(@ForAll("solutions") Composition c) {
        SpeciationSolver solver = new SpeciationSolver();
        solver.solveClosed(c.toArray(), Equilibria.AT_25);
        double ph = solver.ph();
        double strength = solver.ionicStrength();
        solver.nested();
        assertThat(solver.ph()).isCloseTo(ph, within(1e-6));
        assertThat(solver.ionicStrength()).isCloseTo(strength, withinPercentage(1e-6));
    }

    @Property(tries = 200)
    void ec_rises_with_every_salt(
            @ForAll("solutions") Composition c,
            @ForAll Salt salt,
            @ForAll @DoubleRange(min = 0.01, max = 2) double more) {
        // At strengths of use: I up to about 0.1 mol/kg.
        Composition feed = c.times(0.2);
        assertThat(ClosedForms.msPerCm(feed.plus(salt.perMol().times(more)), 25, 6))
                .isGreaterThan(ClosedForms.msPerCm(feed, 25, 6));
    }

    @Property(tries = 200)
    void ph_falls_with_acid_in_either_contact(
            @ForAll("solutions") Composition c,
            @ForAll @DoubleRange(min = 0.01, max = 5) double acid) {
        Composition dosed = c.with(Component.NO3, c.molPerM3(Component.NO3) + acid);
        assertThat(Acidity.phClosed(dosed, 25)).isLessThan(Acidity.phClosed(c, 25));
        assertThat(Acidity.phInAir(dosed, 25, 420)).isLessThan(Acidity.phInAir(c, 25, 420));
    }

    @Property(tries = 100)
    void an_acid_dose_brings_the_ph_it_was_asked_for(
            @ForAll("solutions") Composition c,
            @ForAll @DoubleRange(min = 4, max = 8) double target) {
        Composition alkaline = c.with(Component.NA, c.molPerM3(Component.NA) + 5);
        Acidity.strongAcidMolPerM3(alkaline, 25, target, Contact.OUTDOOR_AIR)
                .ifPresent(
                        dose ->
                                assertThat(
                                                Acidity.phInAir(
                                                        alkaline.with(
                                                                Component.NO3,
                                                                alkaline.molPerM3(Component.NO3)
                                                                        + dose),
                                                        25,
                                                        420))
                                        .isCloseTo(target, within(1e-4)));
        assertThat(Acidity.phInAir(alkaline, 25, 420)).isFinite();
    }

    @Property(tries = 100)
    void dilution_mixes_ions_in_a_straight_line(
            @ForAll @DoubleRange(min = 0.5, max = 2) double strength,
            @ForAll @DoubleRange(min = 0.3, max = 0.95) double share) {
        Composition water = SourceWater.named("soft-tap").orElseThrow().composition();
        Composition before =
                water.plus(Recipe.named("steiner").orElseThrow().composition().times(strength));
        double target = share * ElectricalConductivity.at25MsPerCm(before);
        Dilution.toEc(before, 10, 15, water, target)
                .ifPresent(
                        d -> {
                            double kept = 10 - d.takeOutL();
                            assertThat(d.volumeL()).isCloseTo(kept + d.addL(), within(1e-9));
                            assertThat(d.volumeL()).isLessThanOrEqualTo(15 + 1e-9);
                            for (Component component : Component.values()) {
                                double expected =
                                        (kept * before.molPerM3(component)
                                                        + d.addL() * water.molPerM3(component))
                                                / d.volumeL();
                                assertThat(d.after().molPerM3(component))
                                        .isCloseTo(expected, within(1e-9));
                            }
                        });
        assertThat(target).isPositive();
    }

    @Property(tries = 100)
    void a_feed_reads_what_was_asked_for(@ForAll @DoubleRange(min = 0.3, max = 6) double target) {
        for (String id : SourceWater.names()) {
            SourceWater water = SourceWater.named(id).orElseThrow();
            Feed.Outcome outcome =
                    Feed.madeToEc(
                            Recipe.named("cucumber-substrate").orElseThrow().composition(),
                            water.composition(),
                            target);
            if (outcome instanceof Feed.Made made) {
                assertThat(ElectricalConductivity.at25MsPerCm(made.composition()))
                        .isCloseTo(target, within(1e-6));
            } else {
                assertThat(ElectricalConductivity.at25MsPerCm(water.composition()))
                        .isGreaterThan(target);
            }
        }
    }
}
