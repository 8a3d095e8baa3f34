package tideless.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Displacement.Solid;

/** What must hold of every vessel, with anything in it or nothing. */
class ShapeProperties {
    /** Rounding of a sum of some numbers of the size of a full vessel's volume or area. */
    private static final double ROUNDING = 1e-14;

    @Provide
    Arbitrary<Shape> vessels() {
        Arbitrary<Double> share = Arbitraries.doubles().between(0, 1).ofScale(4);
        return Combinators.combine(
                        Arbitraries.doubles().between(0.005, 2).ofScale(6),
                        Arbitraries.doubles().between(0.2, 1),
                        Arbitraries.doubles().between(0.02, 0.6).ofScale(6),
                        share.list().ofSize(6),
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.doubles().between(0, 1).ofScale(2))
                .as(ShapeProperties::vessel);
    }

    /** A vessel with up to three bodies that together leave a tenth of its floor free. */
    private static Shape vessel(
            double rimM2,
            double taper,
            double depthM,
            List<Double> shares,
            int bodies,
            double kind) {
        List<Solid> solids = new ArrayList<>();
        for (int i = 0; i < bodies; i++) {
            double from = shares.get(i) * depthM;
            double to =
                    i == 0 ? depthM : Math.min(depthM, from + shares.get(3 + i) * (depthM - from));
            if (from < to) {
                double section = (0.01 + 0.29 * shares.get(3)) * taper * rimM2;
                solids.add(new Solid(section, from, to));
            }
        }
        return vessel(rimM2, taper, depthM, kind).with(Displacement.of(solids));
    }

    /** A bucket, or a tub that tapers more in its length or in its width. */
    private static Shape vessel(double rimM2, double taper, double depthM, double kind) {
        double sideM = Math.sqrt(rimM2);
        if (kind < 0.3) {
            double rimM = 2 * sideM / Math.sqrt(Math.PI);
            return Shape.bucket(rimM, Math.sqrt(taper) * rimM, depthM);
        }
        double longer = FastMath.pow(taper, (kind - 0.3) / 0.7);
        return Shape.tub(
                1.6 * sideM,
                sideM / 1.6,
                longer * 1.6 * sideM,
                taper / longer * sideM / 1.6,
                depthM);
    }

    @Property
    void a_level_comes_back_from_its_volume(
            @ForAll("vessels") Shape vessel,
            @ForAll @DoubleRange(min = 0, max = 1.2) @Scale(9) double share) {
        double levelM = share * vessel.depthM();
        double back = vessel.levelM(vessel.volumeM3(levelM));
        // A tenth of the floor is free, so that rounding of the volume counts up to tenfold, and
        // the floor is a fifth of the rim.
        assertEquals(levelM, back, 50 * ROUNDING * vessel.depthM());
    }

    @Property
    void a_volume_comes_back_from_its_level(
            @ForAll("vessels") Shape vessel,
            @ForAll @DoubleRange(min = 0, max = 1.2) @Scale(9) double share) {
        double fullM3 = vessel.volumeM3(vessel.depthM());
        double ownM3 = vessel.with(Displacement.NONE).volumeM3(vessel.depthM());
        double volumeM3 = share * fullM3;
        assertEquals(volumeM3, vessel.volumeM3(vessel.levelM(volumeM3)), 50 * ROUNDING * ownM3);
    }

    @Property
    void more_solution_stands_higher(
            @ForAll("vessels") Shape vessel,
            @ForAll @DoubleRange(min = 0, max = 1.2) @Scale(9) double one,
            @ForAll @DoubleRange(min = 1e-9, max = 0.5) @Scale(9) double more) {
        double fullM3 = vessel.volumeM3(vessel.depthM());
        double low = vessel.levelM(one * fullM3);
        double high = vessel.levelM((one + more) * fullM3);
        assertTrue(high > low, low + " and " + high);
        double depthM = vessel.depthM();
        assertTrue(vessel.volumeM3((one + more) * depthM) > vessel.volumeM3(one * depthM));
    }

    /**
     * Between two heights at which nothing begins or ends the area is a parabola, so that Simpson's
     * rule gives the volume between exactly: area is what volume changes by.
     */
    @Property
    void the_area_is_the_derivative_of_the_volume(
            @ForAll("vessels") Shape vessel,
            @ForAll @DoubleRange(min = 0.001, max = 0.4) @Scale(9) double low,
            @ForAll @DoubleRange(min = 0.5, max = 0.999) @Scale(9) double high) {
        TreeSet<Double> heights = new TreeSet<>(List.of(0.0, vessel.depthM()));
        for (Solid solid : vessel.displacement().solids()) {
            heights.add(solid.fromM());
            heights.add(solid.toM());
        }
        double ownM3 = vessel.with(Displacement.NONE).volumeM3(vessel.depthM());
        double from = 0;
        for (double to : heights.tailSet(0.0, false)) {
            double a = from + low * (to - from);
            double b = from + high * (to - from);
            assertTrue(vessel.areaM2(a) > 0);
            assertEquals(
                    (b - a)
                            / 6
                            * (vessel.areaM2(a)
                                    + 4 * vessel.areaM2(0.5 * (a + b))
                                    + vessel.areaM2(b)),
                    vessel.volumeM3(b) - vessel.volumeM3(a),
                    ROUNDING * ownM3);
            from = to;
        }
    }

    @Property
    void solution_and_what_displaces_it_fill_the_vessel(
            @ForAll("vessels") Shape vessel,
            @ForAll @DoubleRange(min = 0, max = 1.2) @Scale(9) double share) {
        double levelM = share * vessel.depthM();
        double displaced = 0;
        for (Solid solid : vessel.displacement().solids()) {
            double wetM = Math.min(levelM, solid.toM()) - solid.fromM();
            displaced += solid.areaM2() * Math.max(0, wetM);
        }
        Shape empty = vessel.with(Displacement.NONE);
        assertEquals(
                empty.volumeM3(levelM),
                vessel.volumeM3(levelM) + displaced,
                ROUNDING * empty.volumeM3(vessel.depthM()));
    }

    // Where one pair of sides is upright the area is a straight line and the level a root.
    @Property
    void a_trough_of_one_upright_pair_of_sides_is_a_parabola(
            @ForAll @DoubleRange(min = 0.05, max = 2) @Scale(9) double rimM,
            @ForAll @DoubleRange(min = 0.2, max = 0.99) @Scale(9) double taper,
            @ForAll @DoubleRange(min = 0.02, max = 0.6) @Scale(9) double depthM,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(9) double share) {
        Shape trough = Shape.tub(1, rimM, 1, taper * rimM, depthM);
        double slope = (1 - taper) * rimM / depthM;
        double level = share * depthM;
        double volume = level * (taper * rimM + 0.5 * slope * level);
        assertEquals(volume, trough.volumeM3(level), ROUNDING);
        double root =
                (Math.sqrt(taper * rimM * taper * rimM + 2 * slope * volume) - taper * rimM)
                        / slope;
        // The difference cancels where the taper is slight.
        assertEquals(root, trough.levelM(volume), 1e-12 * depthM);
    }
}
