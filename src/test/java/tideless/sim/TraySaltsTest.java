package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tideless.crop.CropTraits;
import tideless.crop.Plant;
import tideless.scenario.Crops;
import tideless.solution.Component;
import tideless.solution.Composition;

/** What roots take from a tray, and the acid or base they leave for it. */
class TraySaltsTest {
    private static final int NO3 = Component.NO3.ordinal();
    private static final int NH4 = Component.NH4.ordinal();
    private static final int K = Component.K.ordinal();
    private static final int CA = Component.CA.ordinal();
    private static final int MG = Component.MG.ordinal();
    private static final CropTraits LETTUCE = Crops.named("lettuce");
    private static final double VOLUME_M3 = 0.01;
    private static final double HOUR_S = 3600;

    private final NutrientDemand demand = grown();

    /** A day's growth of a tenth of a gram on a plant of 2 g, which it asks the food for. */
    private static NutrientDemand grown() {
        Plant before = new Plant(500, 1.0, 0.5, 0.5, 0, 0.1);
        Plant after = new Plant(515, 1.05, 0.525, 0.525, 0, 0.1);
        NutrientDemand demand = NutrientDemand.ofCrop(LETTUCE, 1, before);
        demand.renew(before, after, null, 0);
        return demand;
    }

    /** 10 mmol/L of nitrate, 1 of phosphate and sulfate, and cations that leave so much acid. */
    private static Composition feed(double potassium, double acidMolPerM3) {
        double calcium = (10 + 1 + 2 - potassium - 2 - acidMolPerM3) / 2;
        return Composition.WATER
                .with(Component.NO3, 10)
                .with(Component.P, 1)
                .with(Component.SO4, 1)
                .with(Component.K, potassium)
                .with(Component.CA, calcium)
                .with(Component.MG, 1);
    }

    private double[] takenInAnHour(Composition solution) {
        return takenInAnHour(solution, 1);
    }

    private double[] takenInAnHour(Composition solution, double reachedFrac) {
        TraySalts salts = new TraySalts(VOLUME_M3, solution);
        salts.feed(demand);
        salts.begin();
        salts.end(VOLUME_M3, VOLUME_M3, 0, reachedFrac, 0, HOUR_S);
        return salts.uptakeMol;
    }

    private double askedMol(int component) {
        return demand.molPerS[component] * HOUR_S;
    }

    @Test
    void in_mild_solution_growth_gets_what_it_asks_for() {
        double[] taken = takenInAnHour(feed(5, -0.2));
        for (int i : new int[] {NO3, K, CA, MG}) {
            // Half-saturation is a hundredth of what there is.
            assertEquals(askedMol(i), taken[i], 0.06 * askedMol(i), Component.at(i).name());
        }
    }

    // Half of the thirst reached is half of what new growth asks for, with as little acid or base
    // for each mole; roots that hang dry take nothing.
    @Test
    void roots_that_get_at_half_their_water_get_at_half_their_salts() {
        double[] all = takenInAnHour(feed(5, -0.2), 1);
        double[] half = takenInAnHour(feed(5, -0.2), 0.5);
        for (int i : new int[] {NO3, K, CA, MG}) {
            assertEquals(0.5 * all[i], half[i], 1e-3 * all[i], Component.at(i).name());
        }
        for (double taken : takenInAnHour(feed(5, -0.2), 0)) {
            assertEquals(0, taken);
        }
    }

    // Preferred to nitrate, yet taken no faster than roots get at it.
    @Test
    void ammonium_is_reached_no_better_than_the_rest() {
        Composition mixed = feed(5, -0.2).with(Component.NH4, 5);
        double[] all = takenInAnHour(mixed, 1);
        double[] half = takenInAnHour(mixed, 0.5);
        assertEquals(0.5 * all[NH4], half[NH4], 1e-3 * all[NH4]);
        assertEquals(0.5 * all[NO3], half[NO3], 1e-3 * all[NO3]);
        assertTrue(all[NH4] > 0.5 * (all[NH4] + all[NO3]));
    }

    @Test
    void potassium_that_roots_do_not_reach_is_not_stood_in_for() {
        double[] all = takenInAnHour(feed(0, -0.2), 1);
        double[] half = takenInAnHour(feed(0, -0.2), 0.5);
        assertEquals(0.5 * all[CA], half[CA], 1e-3 * all[CA]);
        assertEquals(0.5 * all[MG], half[MG], 1e-3 * all[MG]);
    }

    // pH 4.5 without phosphate's help: 0.0363 mmol/L of acid, seven tenths.
    @Test
    void acid_keeps_cations_out_and_nitrate_comes_in() {
        double[] mild = takenInAnHour(feed(5, -0.2));
        Composition acid = feed(5, 0.036348).with(Component.P, 0).with(Component.NO3, 11);
        double[] taken = takenInAnHour(acid);
        assertEquals(0.7, taken[K] / mild[K], 2e-3);
        assertEquals(0.7, taken[MG] / mild[MG], 2e-3);
        assertEquals(1, taken[NO3] / mild[NO3], 1e-3);
    }

    @Test
    void what_acid_kept_out_is_not_asked_for_again_and_what_was_lacking_is() {
        Plant same = new Plant(515, 1.05, 0.525, 0.525, 0, 0.1);
        double asked = demand.molPerS[K];
        demand.forgo(K, 0.25 * asked * 86400);
        demand.renew(same, same, null, 0);
        assertEquals(0.75 * asked, demand.molPerS[K], 1e-9 * asked);
    }

    @Test
    void plants_taken_out_take_along_what_they_do_without() {
        Plant same = new Plant(515, 1.05, 0.525, 0.525, 0, 0.1);
        NutrientDemand two = NutrientDemand.ofCrop(LETTUCE, 2, new Plant(500, 1, 0.5, 0.5, 0, 0.1));
        two.renew(new Plant(500, 1, 0.5, 0.5, 0, 0.1), same, null, 0);
        double asked = two.molPerS[K];
        two.forgo(K, 0.25 * asked * 86400);
        two.thinTo(1);
        two.renew(same, same, null, 0);
        assertEquals(0.75 * 0.5 * asked, two.molPerS[K], 1e-9 * asked);
    }

    // Bear and Prince: the charge of a gram's cations is kept.
    @Test
    void calcium_and_magnesium_stand_in_for_potassium_that_is_gone() {
        double[] rich = takenInAnHour(feed(5, -0.2));
        double[] poor = takenInAnHour(feed(0, -0.2));
        assertEquals(0, poor[K]);
        assertEquals(
                rich[K] + 2 * rich[CA] + 2 * rich[MG], 2 * poor[CA] + 2 * poor[MG], 0.02 * rich[K]);
        assertEquals(rich[CA] / rich[MG], poor[CA] / poor[MG], 0.02 * rich[CA] / rich[MG]);
        assertEquals(rich[NO3], poor[NO3], 1e-9 * rich[NO3]);
    }

    @Test
    void only_the_potassium_of_new_growth_is_stood_in_for() {
        Plant same = new Plant(515, 1.05, 0.525, 0.525, 0, 0.1);
        demand.renew(same, same, null, 0); // a day's potassium owed, none wanted
        assertTrue(demand.molPerS[K] > 0);
        assertEquals(0, demand.freshMolPerS(K));
        double[] poor = takenInAnHour(feed(0, -0.2));
        double[] rich = takenInAnHour(feed(5, -0.2));
        assertEquals(rich[CA], poor[CA], 0.02 * rich[CA]);
    }

    // No nitrate: cations come in for the other anions and for what alkali there is, no further.
    @Test
    void roots_that_find_no_nitrogen_make_no_acid_for_cations() {
        assertEquals(0, acidMadeMol(takenInAnHour(spent(0, 0))), 1e-15);
        assertEquals(1e-4 * VOLUME_M3, acidMadeMol(takenInAnHour(spent(0, -1e-4))), 1e-15);
        // With a share of what an hour asks, that share of the acid they bear, 0.025 mmol/L.
        double[] taken = takenInAnHour(spent(2e-4, 0));
        double met = taken[NO3] / askedMol(NO3);
        assertTrue(met > 0.01 && met < 0.03, "" + met);
        assertEquals(met * 0.025 * VOLUME_M3, acidMadeMol(taken), 1e-12);
    }

    private static Composition spent(double nitrateMolPerM3, double acidMolPerM3) {
        return feed(5, acidMolPerM3)
                .with(Component.NO3, nitrateMolPerM3)
                .with(Component.CL, 10 - nitrateMolPerM3);
    }

    private static double acidMadeMol(double[] taken) {
        return taken[K]
                + 2 * taken[CA]
                + 2 * taken[MG]
                - taken[NO3]
                - taken[Component.P.ordinal()]
                - 2 * taken[Component.SO4.ordinal()];
    }

    // At pH 6.5 three to one: 0.25 of the nitrogen from a tenth of ammonium. At 4.5 nitrate is 1.36
    // times as ready, p = 2.206: 0.1969, and seven tenths of that come in.
    @Test
    void acid_turns_the_choice_towards_nitrate() {
        Composition mild =
                feed(4, -2).with(Component.NO3, 9).with(Component.NH4, 1).with(Component.P, 0);
        Composition acid =
                Composition.WATER
                        .with(Component.NO3, 9)
                        .with(Component.NH4, 1)
                        .with(Component.K, 8 - 0.036348);
        // Half-saturated at 0.05 mmol/L.
        double open = 1 / 1.05;
        double nitrogen = askedMol(NO3);
        assertEquals(0.25 * open, takenInAnHour(mild)[NH4] / nitrogen, 2e-4);
        assertEquals(0.7 * 0.1969 * open, takenInAnHour(acid)[NH4] / nitrogen, 2e-4);
    }

    // 10 ml of solution that holds a thousandth of an hour's nitrate: none is left, not 1e-300.
    @Test
    void what_is_used_up_is_gone() {
        TraySalts salts = new TraySalts(1e-5, feed(5, -0.2).with(Component.NO3, 0.01));
        salts.feed(demand);
        for (int hour = 0; hour < 10; hour++) {
            salts.begin();
            salts.end(1e-5, 1e-5, 0, 1, 0, HOUR_S);
            double left = salts.mol[NO3];
            assertTrue(left == 0 || left > 1e-9 * 1e-5, "" + left);
        }
        assertEquals(0, salts.mol[NO3]);
        assertEquals(1e-7, salts.uptakeMol[NO3], 1e-22);
    }
}
