package tideless.sim;

import java.util.Arrays;
import tideless.crop.CropTraits;
import tideless.crop.RootZone;
import tideless.rig.VesselId;

/**
 * What becomes of the hanging roots of a tray as its level moves: stranded above it and wilting on
 * their reserve, or drowned below it, and dead in the end. Scratch space of one run; heights are
 * above the tray's floor.
 */
final class RootFate {
    /**
     * Days in air after which a root is an air root, and in water after which it is not; assumed.
     */
    static final int MEMORY_DAYS = 7;

    private final CropTraits traits;
    private final double cupBottomM;
    private final double depthM;
    private final VesselId where;

    private double tipM;
    private boolean stranded;
    private double reserveFrac = 1;
    private boolean wilted;
    private double wiltedS;
    private boolean drowned;
    private double drownedS;
    private boolean dead;

    private final double[] highestOfDayM = new double[MEMORY_DAYS];
    private double highestTodayM;
    private double highestBeforeM = Double.NEGATIVE_INFINITY; // of those days
    private int daysSeen;

    // What the day has brought.
    private double dayStrandedS;
    private double dayDrownedS;

    /**
     * @param cupBottomM underside of the net cups, m
     * @param depthM of the tray, m
     * @param startLevelM level at the start, m
     * @param rootLengthM of the leading roots at the start, m
     * @param where told with each event
     */
    RootFate(
            CropTraits traits,
            double cupBottomM,
            double depthM,
            double startLevelM,
            double rootLengthM,
            VesselId where) {
        this.traits = traits;
        this.cupBottomM = cupBottomM;
        this.depthM = depthM;
        this.where = where;
        Arrays.fill(highestOfDayM, Double.NEGATIVE_INFINITY);
        highestTodayM = startLevelM;
        reach(rootLengthM);
    }

    /** The roots have grown to that length below the cup, m. */
    void reach(double rootLengthM) {
        tipM = RootZone.tipM(cupBottomM, rootLengthM);
    }

    /** Height of the root tips, m. */
    double tipM() {
        return tipM;
    }

    /** Share of the hanging span below a level, 0-1. */
    double wetFrac(double levelM) {
        return RootZone.wetFrac(cupBottomM, tipM, levelM);
    }

    /** Share of the water demand that roots in that level supply, 0-1. */
    double supplyFrac(double levelM) {
        return wilted ? 0 : RootZone.supplyFrac(wetFrac(levelM));
    }

    /** Highest level the roots bear, m. */
    double highestBorneM() {
        return daysSeen == 0 ? depthM : RootZone.highestBorneM(traits, usedToM());
    }

    /** Highest level of the last days at which the roots were not drowned, m. */
    private double usedToM() {
        return Math.max(highestTodayM, highestBeforeM);
    }

    boolean isStranded() {
        return stranded;
    }

    boolean isWilted() {
        return wilted;
    }

    boolean isDrowned() {
        return drowned;
    }

    boolean isDead() {
        return dead;
    }

    /**
     * Goes on by a step of living plants.
     *
     * @param levelM at its end, m
     * @param demandKgPerS water demand of all plants, kg/s
     * @param leafM2 of all plants, m2
     * @param endS its end, s
     * @param spanS its length, s
     */
    void step(
            double levelM,
            double demandKgPerS,
            double leafM2,
            double endS,
            double spanS,
            EventLog log) {
        boolean out = levelM <= tipM;
        if (out && !stranded) {
            log.add(Event.Kind.STRANDED, endS, where);
        } else if (!out && stranded) {
            rewet(endS, log);
        }
        stranded = out;
        if (stranded) {
            liveOnReserve(demandKgPerS / leafM2, endS, spanS, log);
        }
        boolean under = !out && levelM > highestBorneM();
        if (under) {
            under = stayUnder(levelM, endS, spanS, log);
        } else {
            drownedS = 0;
        }
        drowned = under;
    }

    private void rewet(double endS, EventLog log) {
        log.add(Event.Kind.REWETTED, endS, where);
        if (wilted) {
            wilted = false;
            wiltedS = 0;
            log.add(Event.Kind.RECOVERED, endS, where);
        }
        reserveFrac = 1;
    }

    private void liveOnReserve(double demandKgPerM2S, double endS, double spanS, EventLog log) {
        reserveFrac -= spanS / RootZone.dryReserveS(traits, demandKgPerM2S);
        dayStrandedS += spanS;
        if (reserveFrac <= 0 && !wilted) {
            wilted = true;
            log.add(Event.Kind.WILTED, endS, where);
        }
        if (wilted) {
            wiltedS += spanS;
            if (wiltedS >= RootZone.wiltToDeathS(traits)) {
                die(endS, log);
            }
        }
    }

    /** Whether they are drowned still. */
    private boolean stayUnder(double levelM, double endS, double spanS, EventLog log) {
        if (!drowned) {
            log.add(Event.Kind.DROWNED, endS, where);
        }
        drownedS += spanS;
        dayDrownedS += spanS;
        boolean noneInAir = levelM >= cupBottomM;
        if (noneInAir && drownedS >= traits.roots().drownedDeathDays() * Timeline.DAY_S) {
            die(endS, log);
        } else if (drownedS >= MEMORY_DAYS * Timeline.DAY_S) {
            highestTodayM = levelM; // new water roots have taken over
            return false;
        }
        return true;
    }

    private void die(double atS, EventLog log) {
        if (!dead) {
            dead = true;
            log.add(Event.Kind.DIED, atS, where);
        }
    }

    /** The level at the end of a step; drowned roots do not get used to it. */
    void meet(double levelM) {
        if (!drowned) {
            highestTodayM = Math.max(highestTodayM, levelM);
        }
    }

    /** At midnight: the day goes into the roots' memory. */
    void endDay(double levelM) {
        highestOfDayM[daysSeen % MEMORY_DAYS] = drowned ? usedToM() : highestTodayM;
        highestTodayM = drowned ? Double.NEGATIVE_INFINITY : levelM;
        highestBeforeM = Double.NEGATIVE_INFINITY;
        for (double highest : highestOfDayM) {
            highestBeforeM = Math.max(highestBeforeM, highest);
        }
        daysSeen++;
    }

    /** How long they were stranded since {@link #clearDay}, s. */
    double dayStrandedS() {
        return dayStrandedS;
    }

    /** How long they were drowned since {@link #clearDay}, s. */
    double dayDrownedS() {
        return dayDrownedS;
    }

    void clearDay() {
        dayStrandedS = 0;
        dayDrownedS = 0;
    }
}
