package tideless.crop;

import java.util.List;
import tideless.sim.AmmoniumTanks;

/** Why rows of solutions on ammonium are missed; see {@link Miss}. */
final class AcidMisses {
    /** Alkali that the growers' water may have held, mmol/L. */
    private static final double ALKALI = 0.3;

    private AcidMisses() {}

    static List<Miss> all() {
        double ph = AmmoniumTanks.phAfterThreeWeeks("chard", 10);
        double quarter =
                1
                        - AmmoniumTanks.tomatoGAfter24Days(2.5, 8)
                                / AmmoniumTanks.tomatoGAfter24Days(0, 8);
        return List.of(
                alkali(
                        "lettuce",
                        8,
                        "another source has lettuce level at 6 %% of ammonium (Dickson and Fisher 2018), and both cannot hold in water without alkali; "),
                alkali("spinach", 36, ""),
                alkali("rocket", 36, ""),
                Miss.shown(
                        "ammonium-chard",
                        ph < 4.5,
                        "ours hardly grows for acid alone (pH %.1f after three weeks), which keeps potassium, calcium and magnesium out; whether the"
                                + " trial's was held is not remembered, and ammonium itself harms nothing in ours",
                        ph),
                Miss.shown(
                        "three-quarters-tomato",
                        quarter > 0.1,
                        "the trial's pH stood at 4.5, which no plant on three quarters of ammonium can hold: its solution was renewed or held, the abstract"
                                + " does not say how; ours never is, and its plants starve of the cations that acid keeps out. That ours starve too readily is"
                                + " likely: a quarter of ammonium costs them %.0f %%, of which the abstract tells nothing",
                        100 * quarter),
                Miss.of("all-tomato", "as on three quarters of ammonium"));
    }

    private static Miss alkali(String name, int plants, String before) {
        Emergence.Row row = Miss.row("acidity-" + name);
        double ph = AmmoniumTanks.phAfter25Days(name, plants, ALKALI);
        return Miss.shown(
                row.id(),
                ph > row.found(),
                before
                        + "with %.1f meq/L of alkali in the water, which is not described, ours stands at %.2f%s",
                ALKALI,
                ph,
                Miss.within(row, ph) ? ", and the row is met" : "");
    }
}
