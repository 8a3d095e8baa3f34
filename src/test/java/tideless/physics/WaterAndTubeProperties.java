package tideless.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** Laws of tubes, seats and trees. Each law is a plain method on plain values. */
class WaterAndTubeProperties {

    /** A tube with water in it. */
    record Line(
            double boreM,
            double lengthM,
            double lossCoefficient,
            double roughnessFrac,
            double tempC) {
        double flow(double headM) {
            return ClosedForms.flowM3PerS(
                    headM, boreM, lengthM, lossCoefficient, roughnessFrac * boreM, tempC);
        }

        double flowThroughSeat(double headM, double seatBoreM, double openingFrac) {
            return ClosedForms.flowThroughSeatM3PerS(
                    headM,
                    boreM,
                    lengthM,
                    lossCoefficient,
                    roughnessFrac * boreM,
                    seatBoreM,
                    0.61,
                    openingFrac,
                    tempC);
        }

        double head(double flowM3PerS) {
            return ClosedForms.headLossM(
                    flowM3PerS, boreM, lengthM, lossCoefficient, roughnessFrac * boreM, tempC);
        }
    }

    @Provide
    Arbitrary<Line> lines() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.001, 0.03).ofScale(12),
                        Arbitraries.oneOf(
                                Arbitraries.just(0.0),
                                Arbitraries.doubles().between(0.05, 20).ofScale(12)),
                        Arbitraries.doubles().between(0.5, 50).ofScale(12),
                        Arbitraries.oneOf(
                                Arbitraries.just(0.0),
                                Arbitraries.doubles().between(0, 0.05).ofScale(12)),
                        Arbitraries.doubles().between(2, 40).ofScale(12))
                .as(Line::new);
    }

    @Property
    void flow_turns_with_the_head(
            @ForAll("lines") Line line,
            @ForAll @Scale(12) @DoubleRange(min = 1e-9, max = 60) double headM) {
        flowIsOdd(line, headM);
    }

    static void flowIsOdd(Line line, double headM) {
        assertEquals(-line.flow(headM), line.flow(-headM), 0);
        assertTrue(line.flow(headM) > 0);
    }

    @Property
    void more_head_never_gives_less_flow(
            @ForAll("lines") Line line,
            @ForAll @Scale(12) @DoubleRange(min = 1e-9, max = 60) double headM,
            @ForAll @Scale(12) @DoubleRange(min = 1e-6, max = 1) double more) {
        flowRises(line, headM, headM * (1 + more));
    }

    static void flowRises(Line line, double lowM, double highM) {
        assertTrue(line.flow(highM) > line.flow(lowM));
    }

    // 1e-11: the root is found to 1e-14 in the logarithm of speed, and head goes with up to the
    // fifth power of it in the transition.
    @Property
    void head_loss_and_flow_undo_each_other(
            @ForAll("lines") Line line,
            @ForAll @Scale(12) @DoubleRange(min = 1e-9, max = 60) double headM) {
        headLossComesBack(line, headM);
    }

    static void headLossComesBack(Line line, double headM) {
        assertEquals(headM, line.head(line.flow(headM)), 1e-11 * headM);
    }

    @Property
    void a_seat_never_raises_the_flow(
            @ForAll("lines") Line line,
            @ForAll @Scale(12) @DoubleRange(min = 1e-6, max = 3) double headM,
            @ForAll @Scale(12) @DoubleRange(min = 0.0005, max = 0.02) double seatBoreM,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 1) double openingFrac,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 1) double share) {
        seatOnlyHinders(line, headM, seatBoreM, openingFrac, share * openingFrac);
    }

    static void seatOnlyHinders(
            Line line, double headM, double seatBoreM, double openingFrac, double lessOpenFrac) {
        double free = line.flow(headM);
        double seated = line.flowThroughSeat(headM, seatBoreM, openingFrac);
        double tighter = line.flowThroughSeat(headM, seatBoreM, lessOpenFrac);
        assertTrue(seated <= free * (1 + 1e-12));
        assertTrue(tighter <= seated * (1 + 1e-12));
        assertTrue(tighter >= 0);
        double orifice = openingFrac * Orifice.flowM3PerS(headM, seatBoreM, 0.61);
        assertTrue(seated <= orifice * (1 + 1e-12));
    }

    @Property
    void friction_is_continuous(
            @ForAll @Scale(12) @DoubleRange(min = 0.01, max = 1e6) double reynolds,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 0.05) double roughness) {
        frictionHasNoJump(reynolds, roughness);
    }

    static void frictionHasNoJump(double reynolds, double roughness) {
        double here = TubeFlow.friction(reynolds, roughness).factor();
        double there = TubeFlow.friction(reynolds * (1 + 1e-9), roughness).factor();
        assertTrue(here > 0);
        assertEquals(here, there, 2e-8 * here);
        assertTrue(here >= 64 / reynolds * (1 - 1e-12));
    }

    @Property
    void the_slope_of_the_friction_is_that_of_its_factor(
            @ForAll @Scale(12) @DoubleRange(min = 10, max = 1e6) double reynolds,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 0.05) double roughness) {
        frictionSlopeIsThatOfItsFactor(reynolds, roughness);
    }

    // By differences a thousandth apart: their own error is some 1e-5 in the transition. At 800 the
    // laminar law takes over, whose slope it has reached to rounding.
    static void frictionSlopeIsThatOfItsFactor(double reynolds, double roughness) {
        double step = 1e-3;
        double rise =
                Math.log(
                                TubeFlow.friction(reynolds * (1 + step), roughness).factor()
                                        / TubeFlow.friction(reynolds * (1 - step), roughness)
                                                .factor())
                        / Math.log((1 + step) / (1 - step));
        assertEquals(rise, TubeFlow.friction(reynolds, roughness).slope(), 1e-3);
    }

    @Property
    void a_flow_tells_how_the_head_rises_with_it(
            @ForAll @Scale(12) @DoubleRange(min = 1e-4, max = 10) double headM,
            @ForAll @Scale(12) @DoubleRange(min = 0.1, max = 20) double lengthM,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 1e4) double losses,
            @ForAll @DoubleRange(min = 0.2, max = 5) double near) {
        headRisesWithFlowAsTold(headM, lengthM, losses, near);
    }

    static void headRisesWithFlowAsTold(double headM, double lengthM, double losses, double near) {
        double bore = 4e-3;
        double rough = TubeFlow.PLASTIC_ROUGHNESS_M;
        double viscosity = LiquidWater.kinematicViscosityM2PerS(20);
        double plain =
                TubeFlow.flowAtViscosityM3PerS(headM, bore, lengthM, losses, rough, viscosity);
        TubeFlow.Flow found =
                TubeFlow.flowNear(headM, bore, lengthM, losses, rough, viscosity, near * plain);
        assertEquals(plain, found.m3PerS(), 1e-12 * plain);
        double step = 1e-4;
        double rise =
                Math.log(
                                ClosedForms.headLossM(
                                                plain * (1 + step),
                                                bore,
                                                lengthM,
                                                losses,
                                                rough,
                                                20)
                                        / ClosedForms.headLossM(
                                                plain * (1 - step),
                                                bore,
                                                lengthM,
                                                losses,
                                                rough,
                                                20))
                        / Math.log((1 + step) / (1 - step));
        assertEquals(rise, found.headOrder(), 1e-4); // the differences' own error
    }

    /** Heads and openings of a tree of three. */
    record Question(
            double reservoirM,
            double[] outletM,
            double[] opening,
            boolean[] back,
            double trunkLengthM,
            double trunkBoreM) {
        TubeTree tree(int first, int second, int third) {
            TubeTree.Branch[] branches = {
                new TubeTree.Branch(0.004, 1, 3, 0.002, 0.61),
                new TubeTree.Branch(0.006, 2, 1.5, 0, 1),
                new TubeTree.Branch(0.004, 0, 0, 0.003, 0.61)
            };
            return new TubeTree(
                    trunkBoreM,
                    trunkLengthM,
                    0.5,
                    TubeFlow.PLASTIC_ROUGHNESS_M,
                    List.of(branches[first], branches[second], branches[third]));
        }

        double[] flows(int first, int second, int third) {
            int[] order = {first, second, third};
            double[] outlets = new double[3];
            double[] openings = new double[3];
            boolean[] backs = new boolean[3];
            for (int i = 0; i < 3; i++) {
                outlets[i] = outletM[order[i]];
                openings[i] = opening[order[i]];
                backs[i] = back[order[i]];
            }
            return ClosedForms.flowsM3PerS(
                    tree(first, second, third), reservoirM, outlets, openings, backs, 20);
        }
    }

    @Provide
    Arbitrary<Question> questions() {
        Arbitrary<Double> heads = Arbitraries.doubles().between(0, 1).ofScale(12);
        Arbitrary<Double> openings =
                Arbitraries.oneOf(
                        Arbitraries.just(0.0),
                        Arbitraries.just(1.0),
                        Arbitraries.doubles().between(1e-6, 1).ofScale(12));
        Arbitrary<double[]> three =
                Combinators.combine(heads, heads, heads).as((a, b, c) -> new double[] {a, b, c});
        Arbitrary<double[]> threeOpenings =
                Combinators.combine(openings, openings, openings)
                        .as((a, b, c) -> new double[] {a, b, c});
        Arbitrary<Boolean> either = Arbitraries.of(true, false);
        Arbitrary<boolean[]> backs =
                Combinators.combine(either, either, either)
                        .as((a, b, c) -> new boolean[] {a, b, c});
        return Combinators.combine(
                        heads,
                        three,
                        threeOpenings,
                        backs,
                        Arbitraries.doubles().between(0, 5).ofScale(12),
                        Arbitraries.doubles().between(0.003, 0.02).ofScale(12))
                .as(Question::new);
    }

    @Property
    void what_leaves_through_the_branches_came_through_the_trunk(
            @ForAll("questions") Question question) {
        treeIsContinuous(question);
    }

    // The trunk's flow is taken from the head at the junction. A head of 1 m carries 16 digits, so
    // a
    // trunk that loses little can be told only to the flow that 4e-15 m of its head makes.
    static void treeIsContinuous(Question question) {
        TubeTree tree = question.tree(0, 1, 2);
        double[] flows = new double[3];
        double nu = LiquidWater.kinematicViscosityM2PerS(20);
        double junction =
                tree.junctionHeadM(
                        question.reservoirM,
                        question.outletM,
                        question.opening,
                        question.back,
                        nu,
                        flows);
        double sum = flows[0] + flows[1] + flows[2];
        double loss = question.reservoirM - junction;
        double least = trunk(question, loss - 4e-15, nu);
        double most = trunk(question, loss + 4e-15, nu);
        // The same rounding of head on the most open branch, a bare 3 mm seat: 1.2e-12 m3/s, 0.1 mL
        // a
        // day. A trial with 1e-9 of the flow alone failed on flows of 1e-14 m3/s.
        double slack =
                Orifice.flowM3PerS(4e-15, 0.003, 0.61)
                        + 1e-9 * (Math.abs(flows[0]) + Math.abs(flows[1]) + Math.abs(flows[2]));
        assertTrue(
                sum >= least - slack && sum <= most + slack,
                () -> sum + " is not within " + least + " to " + most);
        for (int i = 0; i < 3; i++) {
            if (question.opening[i] == 0) {
                assertEquals(0, flows[i], 0);
            }
            if (!question.back[i]) {
                assertTrue(flows[i] >= 0);
            }
        }
    }

    private static double trunk(Question question, double headM, double nu) {
        return TubeFlow.flowAtViscosityM3PerS(
                headM,
                question.trunkBoreM,
                question.trunkLengthM,
                0.5,
                TubeFlow.PLASTIC_ROUGHNESS_M,
                nu);
    }

    @Property
    void the_order_of_the_branches_does_not_matter(@ForAll("questions") Question question) {
        treeIsSymmetric(question);
    }

    // Summing in another order changes the last digits of the head, 1e-15 m, and a branch's flow
    // with
    // its root: 1e-6 of the largest plus 1e-11 m3/s (0.6 uL/min).
    static void treeIsSymmetric(Question question) {
        double[] forward = question.flows(0, 1, 2);
        double[] turned = question.flows(2, 0, 1);
        double largest = 0;
        for (double flow : forward) {
            largest = Math.max(largest, Math.abs(flow));
        }
        double slack = 1e-6 * largest + 1e-11;
        assertEquals(forward[2], turned[0], slack);
        assertEquals(forward[0], turned[1], slack);
        assertEquals(forward[1], turned[2], slack);
    }

    @Property
    void oxygen_falls_with_warmth_salt_and_altitude(
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 39) double tempC,
            @ForAll @Scale(12) @DoubleRange(min = 0, max = 39) double salinity,
            @ForAll @Scale(12) @DoubleRange(min = 51_000, max = 105_000) double pressurePa) {
        oxygenFalls(tempC, salinity, pressurePa);
    }

    static void oxygenFalls(double tempC, double salinity, double pressurePa) {
        double here = Oxygen.saturationMgPerL(tempC, salinity, pressurePa);
        assertTrue(here > 0);
        assertTrue(Oxygen.saturationMgPerL(tempC + 1, salinity, pressurePa) < here);
        assertTrue(Oxygen.saturationMgPerL(tempC, salinity + 1, pressurePa) < here);
        assertTrue(Oxygen.saturationMgPerL(tempC, salinity, pressurePa - 1000) < here);
    }
}
