package tideless.crop;

import tideless.physics.Time;

/** Roots that hang from a cup, and the level they meet. Heights are above the tray's floor. */
public final class RootZone {
    /**
     * Share of the hanging roots that must be wet for the full thirst to be met. Assumed: plants
     * whose roots stood mostly in moist air drank as much as submerged ones (tomato seedlings, Root
     * Research (Japan) 12(2), abstract), but no threshold is published.
     */
    static final double FULL_SUPPLY_WET_FRAC = 0.1;

    /** Longest reserve as a multiple of the crop's: leaf skin leaks in the dark too. Assumed. */
    static final double LONGEST_RESERVE = 10;

    /**
     * Least loss through leaf skin, m/s of leaf water: 0.1 mm a day, as the bound above. Assumed.
     */
    public static final double LEAST_LOSS_M_PER_S = 1e-3 / LONGEST_RESERVE / Time.DAY_S;

    private RootZone() {}

    /**
     * Height of the root tips: hanging straight to the floor, then sideways.
     *
     * @param cupBottomM the cup's underside, m
     * @param rootLengthM of the leading roots below it, m
     * @return m, at least 0
     */
    public static double tipM(double cupBottomM, double rootLengthM) {
        return Math.max(0, cupBottomM - rootLengthM);
    }

    /**
     * Share of the hanging span that lies below the level, 0-1. A level at or above the cup's
     * underside wets all of it, also of a seedling whose roots still end in the cup.
     *
     * @param cupBottomM the cup's underside, m
     * @param tipM the root tips, m, at most {@code cupBottomM}
     * @param levelM the solution, m
     */
    public static double wetFrac(double cupBottomM, double tipM, double levelM) {
        if (levelM >= cupBottomM) {
            return 1;
        }
        return levelM <= tipM ? 0 : (levelM - tipM) / (cupBottomM - tipM);
    }

    /**
     * Share of the thirst that wet roots can meet, 0-1: all of it from a tenth of the span on, in
     * proportion below.
     *
     * @param wetFrac as of {@link #wetFrac}
     */
    public static double supplyFrac(double wetFrac) {
        return Math.min(1, wetFrac / FULL_SUPPLY_WET_FRAC);
    }

    /**
     * How long a plant stands without any wet root before it wilts, s.
     *
     * @param thirstPerLeafAreaKgPerM2S its present thirst per leaf area, kg/m2/s; 1 mm a day is
     *     1/86400
     * @return the crop's reserve at 1 mm a day, shorter in proportion to thirst, at most ten times
     *     that reserve
     */
    public static double dryReserveS(CropTraits traits, double thirstPerLeafAreaKgPerM2S) {
        double reserveS = traits.roots().dryReserveH() * Time.HOUR_S;
        double mmPerDay = thirstPerLeafAreaKgPerM2S * Time.DAY_S;
        return reserveS / Math.max(1 / LONGEST_RESERVE, mmPerDay);
    }

    /**
     * Highest level the roots bear, m: what they are used to and the rise the crop bears above it.
     *
     * <p>Kratky (2004), Acta Hort. 648:83-89, abstract: a rise of more than 2 cm after air roots
     * have formed may injure.
     *
     * @param usedToLevelM level the roots are used to, m
     */
    public static double highestBorneM(CropTraits traits, double usedToLevelM) {
        return usedToLevelM + traits.roots().riseBorneM();
    }
}
