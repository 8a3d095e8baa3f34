package tideless.sim;

import java.util.Arrays;
import tideless.crop.CropTraits;
import tideless.crop.RootZone;
import tideless.crop.Wilting;
import tideless.physics.LiquidWater;
import tideless.physics.Time;
import tideless.rig.Deck;
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

    /**
     * Who fills up young plants wets their cups by no more, and roots that hang so deep are down,
     * m; common practice, no source.
     */
    private static final double CUP_WET_M = 0.02;

    /** A vessel of young plants seldom falls faster, m/d; assumed. */
    private static final double FALLS_M_PER_DAY = 0.01;

    private final CropTraits traits;
    private final double cupBottomM;
    private final double depthM;
    private final Deck deck;
    private final VesselId where;

    private double rootLengthM;
    private boolean stranded;
    private boolean onCupWater;
    private double cupDrunkM3; // by one plant since its cup was wet
    private double reserveFrac = 1;
    private boolean wilted;
    private double wiltedS;
    private boolean drowned;
    private double drownedS;
    private boolean dead;
    private Wilting.Recovery recovery = Wilting.Recovery.FULL;
    private double recoveredAtS;

    private final double begunAtM;
    private final double[] highestOfDayM = new double[MEMORY_DAYS];
    private double highestTodayM;
    private double highestBeforeM = Double.NEGATIVE_INFINITY; // of those days
    private double grownUsedToM = Double.NEGATIVE_INFINITY; // by new water roots, today
    private int daysSeen;

    // What the day has brought.
    private double dayDrownedS;

    /**
     * @param cupBottomM underside of the net cups, m
     * @param depthM of the tray, m
     * @param startLevelM level at the start, m
     * @param rootLengthM of the leading roots at the start, m
     * @param deck it hangs from
     * @param where told with each event
     */
    RootFate(
            CropTraits traits,
            double cupBottomM,
            double depthM,
            double startLevelM,
            double rootLengthM,
            Deck deck,
            VesselId where) {
        this.traits = traits;
        this.cupBottomM = cupBottomM;
        this.depthM = depthM;
        this.deck = deck;
        this.where = where;
        Arrays.fill(highestOfDayM, Double.NEGATIVE_INFINITY);
        highestTodayM = startLevelM;
        begunAtM = startLevelM;
        reach(rootLengthM);
    }

    /** The roots have grown to that length below the cup, m. */
    void reach(double rootLengthM) {
        this.rootLengthM = rootLengthM;
    }

    private double cupM(double levelM) {
        return deck.cupBottomM(levelM, depthM, cupBottomM);
    }

    /** Height of the root tips over a level, m; the level matters below a deck that floats. */
    double tipM(double levelM) {
        return RootZone.tipM(cupM(levelM), rootLengthM);
    }

    /** Share of the hanging span below a level, 0-1. */
    double wetFrac(double levelM) {
        return RootZone.wetFrac(cupM(levelM), tipM(levelM), levelM);
    }

    /** Air between a level and the deck, m. */
    double airGapM(double levelM) {
        return deck.undersideM(levelM, depthM) - levelM;
    }

    /**
     * Share of all roots, from the deck down to their tips, below a level, 0-1: they fill the cup
     * and hang from it, evenly; assumed.
     */
    double soakedFrac(double levelM) {
        double spanM = deck.undersideM(levelM, depthM) - tipM(levelM);
        return spanM > 0 ? Math.max(0, Math.min(1, (levelM - tipM(levelM)) / spanM)) : 1;
    }

    /** Whether no root is wet and the plants drink what their plugs and cups hold. */
    boolean drinksCupWater() {
        return onCupWater;
    }

    /** Share of the water demand that roots in that level supply, 0-1. */
    double supplyFrac(double levelM) {
        return wilted ? 0 : RootZone.supplyFrac(wetFrac(levelM));
    }

    /** Highest level the roots bear, m. */
    double highestBorneM() {
        return daysSeen == 0 ? depthM : RootZone.highestBorneM(traits, usedToM());
    }

    /**
     * Highest level of the days gone by at which the roots were not drowned, m. A rise counts
     * whether it took a minute or the whole day: nobody gets used to water within hours.
     */
    private double usedToM() {
        return Math.max(grownUsedToM, highestBeforeM);
    }

    /**
     * Level to which whoever comes fills up a young crop by hand, m: where it began, as long as
     * cups and roots would hang dry before the next time, else its mark.
     *
     * @param markM to which it is filled later, m
     * @param daysAhead until somebody comes again
     */
    double youngMarkM(double markM, double levelM, int daysAhead) {
        double keptM = Math.min(begunAtM, cupM(levelM) + CUP_WET_M);
        double wantedM = Math.min(CUP_WET_M, FALLS_M_PER_DAY * daysAhead);
        boolean lasts = levelM - tipM(levelM) >= wantedM;
        return lasts ? markM : Math.max(markM, keptM);
    }

    /** Whether all is well with them, and would be at a level that rises so far, m. */
    boolean isSound(double levelM, double mostM) {
        return !stranded
                && !onCupWater
                && !wilted
                && !drowned
                && supplyFrac(levelM) >= 1
                && mostM <= highestBorneM();
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
     * @param supplied whether wet roots find water there: more than a film, not too salty
     * @param demandKgPerS water demand of all plants, kg/s
     * @param leafM2 of all plants, m2
     * @param plants how many
     * @param rootDryG dry mass of root of one, g
     * @param seedlings whether they were set out within {@link Wilting#SEEDLING_DAYS}
     * @param endS its end, s
     * @param spanS its length, s
     */
    void step(
            double levelM,
            boolean supplied,
            double demandKgPerS,
            double leafM2,
            double plants,
            double rootDryG,
            boolean seedlings,
            double endS,
            double spanS,
            EventLog log) {
        boolean dry = !supplied || levelM <= tipM(levelM);
        onCupWater =
                dry
                        && !stranded
                        && drinkCupWater(
                                lossM3PerS(demandKgPerS, leafM2) * spanS / plants, seedlings);
        if (!dry) {
            cupDrunkM3 = 0;
        }
        boolean out = dry && !onCupWater;
        if (out && !stranded) {
            log.add(Event.Kind.STRANDED, endS, where);
        } else if (!out && stranded) {
            rewet(seedlings, endS, log);
        }
        stranded = out;
        if (stranded) {
            double storeM3 = plants * Wilting.storeM3(rootDryG);
            liveOnReserve(demandKgPerS, leafM2, storeM3, seedlings, endS, spanS, log);
        }
        boolean under = !dry && levelM > highestBorneM();
        if (under) {
            under = stayUnder(levelM, endS, spanS, log);
        } else {
            drownedS = 0;
        }
        drowned = under;
    }

    /**
     * Whether plug and cup still give that much to each plant, m3; they do no more once they fail.
     */
    private boolean drinkCupWater(double lossM3, boolean seedlings) {
        double holdsM3 = deck.cupWaterM3().orElse(seedlings ? traits.nursery().plugWaterM3() : 0);
        cupDrunkM3 += lossM3;
        return cupDrunkM3 <= holdsM3;
    }

    private static double lossM3PerS(double demandKgPerS, double leafM2) {
        return Math.max(leafM2 * RootZone.LEAST_LOSS_M_PER_S, demandKgPerS / LiquidWater.KG_PER_M3);
    }

    private void rewet(boolean seedlings, double endS, EventLog log) {
        log.add(Event.Kind.REWETTED, endS, where);
        reserveFrac = 1;
        if (!wilted) {
            return;
        }
        Wilting.Recovery now =
                Wilting.recovery(
                        wiltedS / Time.HOUR_S, Wilting.lostAfterH(traits, seedlings), seedlings);
        if (now.ordinal() >= recovery.ordinal() || recoveryGrowthFrac(endS) >= 1) {
            recovery = now;
            recoveredAtS = endS;
        }
        wilted = false;
        wiltedS = 0;
        log.add(new Event(Event.Kind.RECOVERED, endS, where, 0, 0, 0, Double.NaN, 0, now.title()));
    }

    /** Growth that wilting gone by leaves at an instant, 0-1. */
    double recoveryGrowthFrac(double atS) {
        return Wilting.growthFrac(recovery, (atS - recoveredAtS) / Time.DAY_S);
    }

    private void liveOnReserve(
            double demandKgPerS,
            double leafM2,
            double storeM3,
            boolean seedlings,
            double endS,
            double spanS,
            EventLog log) {
        double standsS =
                RootZone.dryReserveS(traits, leafM2 > 0 ? demandKgPerS / leafM2 : 0)
                        + Wilting.standsS(storeM3, lossM3PerS(demandKgPerS, leafM2));
        reserveFrac -= spanS / standsS;
        if (reserveFrac <= 0 && !wilted) {
            wilted = true;
            log.add(Event.Kind.WILTED, endS, where);
        }
        if (wilted) {
            wiltedS += spanS;
            if (wiltedS >= Wilting.lostAfterH(traits, seedlings) * Time.HOUR_S) {
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
        boolean noneInAir = levelM >= cupM(levelM);
        if (deck.drowningKills()
                && noneInAir
                && drownedS >= traits.roots().drownedDeathDays() * Time.DAY_S) {
            die(endS, log);
        } else if (drownedS >= MEMORY_DAYS * Time.DAY_S) {
            highestTodayM = levelM; // new water roots have taken over
            grownUsedToM = levelM;
            return false;
        }
        return true;
    }

    /** Ends the plants' lives. */
    void die(double atS, EventLog log) {
        die(atS, "", log);
    }

    /** The same of what roots have no part in. */
    void die(double atS, String of, EventLog log) {
        if (!dead) {
            dead = true;
            log.add(Event.Kind.DIED, atS, where, of);
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
        grownUsedToM = Double.NEGATIVE_INFINITY;
        highestBeforeM = Double.NEGATIVE_INFINITY;
        for (double highest : highestOfDayM) {
            highestBeforeM = Math.max(highestBeforeM, highest);
        }
        daysSeen++;
    }

    /** How long they were drowned since {@link #clearDay}, s. */
    double dayDrownedS() {
        return dayDrownedS;
    }

    void clearDay() {
        dayDrownedS = 0;
    }
}
