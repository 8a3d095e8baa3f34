package tideless.crop;

import tideless.physics.Elementary;
import tideless.physics.StillWater;
import tideless.physics.Time;

/** What roots in water breathe, and what a want of oxygen does to the plant. */
public final class RootBreathing {
    /**
     * Known badly: the middle is used, the ends make the band.
     *
     * @param oxygenGPerGDryH breathed by whole roots at 25 degC, g O2 per g dry mass and hour
     * @param q10 rise per 10 K
     * @param drawnFrac share drawn from the water; the rest comes down gas spaces
     * @param halfGPerM3 dissolved oxygen at which a mass of roots draws half of that, g/m3
     * @param microbesGPerM3H drawn by microbes and slime, g/m3 and hour
     * @param transferFrac transfer velocity over the recommended one
     */
    public record Figures(
            double oxygenGPerGDryH,
            double q10,
            double drawnFrac,
            double halfGPerM3,
            double microbesGPerM3H,
            double transferFrac) {}

    /**
     * Recommended: 30 nmol/(g s) = 3.5 mg/(g h) of well-fed herbs (Lambers and Poorter, from
     * memory), Q10 2.0 and 0.7 from the water, half rate at 0.5 mg/L, microbes 0.02 mg/(L h) (from
     * memory, no source).
     */
    public static final Figures MIDDLE = new Figures(3.5e-3, 2.0, 0.7, 0.5, 0.02, 1);

    /** Every figure at the end of its range that leaves least oxygen; from memory. */
    public static final Figures POOREST =
            new Figures(7.0e-3, 2.0, 1.0, 0.2, 0.1, StillWater.FREE_LOW_FRAC);

    /** Every figure at the end of its range that leaves most oxygen; from memory. */
    public static final Figures RICHEST =
            new Figures(1.2e-3, 2.0, 0.4, 1.5, 0, StillWater.FREE_HIGH_FRAC);

    /**
     * Growth left when no root at all is in moist air, whatever the water holds: heads of 178 g
     * below a floating cover against 220 g below a fixed one that leaves a gap (Kratky 2005, J.
     * Veg. Sci. 11(2):35-42, abstract), less what dissolved oxygen accounts for. Plausible 0.75 to
     * 0.95; recommended.
     */
    public static final double NO_AIR_ROOTS_GROWTH_FRAC = 0.83;

    private static final double REFERENCE_C = 25;

    private static final double WARM_C = 33;

    private RootBreathing() {}

    /**
     * Oxygen that wet roots draw from rich water.
     *
     * @param wetRootDryG dry mass of the roots below the surface, g; those above it breathe for
     *     themselves
     * @param tempC of the solution, degC
     * @return g/s
     */
    public static double demandGPerS(Figures figures, double wetRootDryG, double tempC) {
        return figures.drawnFrac()
                * figures.oxygenGPerGDryH()
                / Time.HOUR_S
                * Elementary.exp(Elementary.log(figures.q10()) * ((tempC - REFERENCE_C) / 10))
                * wetRootDryG;
    }

    /** Dissolved oxygen from which the crop grows in full, g/m3; more in warm water. */
    public static double enoughGPerM3(CropTraits.RootResponse response, double tempC) {
        double warm = Math.max(0, Math.min(1, (tempC - REFERENCE_C) / (WARM_C - REFERENCE_C)));
        return response.oxygenEnoughGPerM3()
                + warm * (response.oxygenEnoughWarmGPerM3() - response.oxygenEnoughGPerM3());
    }

    /**
     * Share of growth left to a plant all of whose roots stand in that water, 0-1: full from {@link
     * #enoughGPerM3} on, straight to the crop's {@code noOxygenGrowthFrac} at none.
     *
     * <p>Recommended after Goto et al. (1996), Acta Hort. 440:205, and Yoshida et al. (1997) for
     * lettuce; Rong and Tachibana (1997), J. Jpn. Soc. Hort. Sci. 66:331, for tomato and cucumber.
     *
     * @param oxygenGPerM3 dissolved oxygen, g/m3
     * @param tempC of the solution, degC
     */
    public static double growthFrac(
            CropTraits.RootResponse response, double oxygenGPerM3, double tempC) {
        double share = Math.min(1, oxygenGPerM3 / enoughGPerM3(response, tempC));
        return response.noOxygenGrowthFrac() + (1 - response.noOxygenGrowthFrac()) * share;
    }

    /**
     * Share of the thirst that roots all of which stand in that water can meet, 0-1.
     *
     * <p>Cucumber: 0.68 + 0.05 C up to 6.4 mg/L, over its value there; fitted to 235, 186 and 164
     * g/d at 6.4, 3.2 and 0.32 mg/L (a heat-flux study under controlled oxygen). Other crops: as
     * growth falls, for want of a trial.
     */
    public static double waterFrac(
            CropTraits.RootResponse response, double oxygenGPerM3, double tempC) {
        double enough =
                Math.max(response.oxygenEnoughForWaterGPerM3(), enoughGPerM3(response, tempC));
        double share = Math.min(1, oxygenGPerM3 / enough);
        return response.noOxygenWaterFrac() + (1 - response.noOxygenWaterFrac()) * share;
    }

    /**
     * Share of what falls on wet roots that falls on the plant, when the rest hangs in moist air
     * and breathes for itself.
     *
     * @param frac of {@link #growthFrac} or {@link #waterFrac}
     * @param wetShare of the roots, 0-1
     */
    public static double ofPlant(double frac, double wetShare) {
        return 1 - wetShare * (1 - frac);
    }

    /**
     * Share of growth left for want of roots in air, 0-1. Loss in full where the solution touches
     * the deck, none from 10 mm of air on (the published tank that gave full heads began with 13
     * mm), straight between. It grows with the plant's cover of its ground: a seedling breathes
     * little, and so a gap that comes late costs in proportion to what has grown without it, as
     * published (7 % against 19 %). Form assumed.
     *
     * @param airGapM from the solution up to the deck, m
     * @param coverFrac ground under the crown over what it can reach, 0-1
     */
    public static double airRootFrac(double airGapM, double coverFrac) {
        double air = Math.max(0, Math.min(1, airGapM / StillWater.FREE_FROM_GAP_M));
        return 1 - (1 - NO_AIR_ROOTS_GROWTH_FRAC) * (1 - air) * coverFrac;
    }
}
