package tideless.rig;

import java.util.OptionalInt;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.crop.Rooting;

/**
 * From which day on young plants are fit for the level of their tray.
 *
 * @param days after the start of the run, in the crop's nursery with their roots hanging, until the
 *     roots dip into that level; empty when they never grow so long
 * @param rootM length of the leading roots below the cups then, m; where they never reach it, the
 *     longest they grow
 * @param gapM how far the level is below the cups' underside, m; negative where it wets the cups
 */
public record RootReach(OptionalInt days, double rootM, double gapM) {
    /**
     * Depth in the solution below which a seedling is called dry, m; a judgement: a valve's level
     * hovers this much below its setting, and a seedling's roots end in its cup (Kratky 2010, CTAHR
     * VC-1, wets about 13 mm).
     */
    public static final double WET_M = 0.003;

    private static final int LONGEST_DAYS = 365;

    private static final double ROUNDING_M = 1e-9;

    /**
     * @param gapM from the cups' underside down to the level at the start, m
     */
    public static RootReach of(Planting.OfCrop crop, double gapM) {
        double neededM = gapM + WET_M - ROUNDING_M;
        double startM = crop.plantAtStart().rootLengthM();
        if (neededM > Math.max(startM, crop.traits().roots().longestM())) {
            return new RootReach(OptionalInt.empty(), crop.traits().roots().longestM(), gapM);
        }
        double rootM = startM;
        int days = 0;
        int asSeed = startM > 0 ? 0 : daysToEmergence(crop);
        while (rootM < neededM && days < LONGEST_DAYS) {
            days++;
            rootM = lengthM(crop, startM, asSeed, days);
        }
        return new RootReach(
                rootM < neededM ? OptionalInt.empty() : OptionalInt.of(days), rootM, gapM);
    }

    /** Of a tray at its start; its level, afloat or not, as it then stands. */
    public static RootReach of(Tray tray, Planting.OfCrop crop) {
        double cupM =
                tray.deck()
                        .cupBottomM(tray.startLevelM(), tray.shape().depthM(), tray.cupBottomM());
        return of(crop, cupM - tray.startLevelM());
    }

    private static int daysToEmergence(Planting.OfCrop crop) {
        int days = 0;
        while (!(ofAge(crop, days).dryG() > 0) && days < LONGEST_DAYS) {
            days++;
        }
        return days;
    }

    private static Plant ofAge(Planting.OfCrop crop, int daysMore) {
        return Growing.atStart(crop.traits(), crop.ageAtStartDays() + daysMore, crop.transplant());
    }

    private static double lengthM(Planting.OfCrop crop, double startM, int asSeed, int days) {
        boolean fromSeed =
                crop.transplant().rootsHang() && crop.transplant().rootLengthM().isEmpty();
        return fromSeed
                ? ofAge(crop, days).rootLengthM()
                : Rooting.hungOnM(crop.traits(), startM, Math.max(0, days - asSeed));
    }
}
