package tideless.advice;

import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.Composition;

/**
 * How far plain water in place of feed brings a salty tray down, by the salts of the week before.
 *
 * <p>In a room only: where thirst rises with the sun the crop drinks more and takes no more, and a
 * week tells little of the next.
 *
 * <p>Salts count by the charge of their cations, c, mol/m3. In the week before, R litres left the
 * tray and feed came in their place; what the feed brought and the tray does not hold more has been
 * taken up, u a litre that left. W litres of water in place of feed so take W (u - c water) out of
 * what the tray holds. Of a reservoir the B litres of feed that it holds are drunk before that or
 * with it, and add B (c feed - u). The reading goes with a power of c, which feed and tray tell.
 *
 * @param litres to pour in place of feed into what fills the tray; of a reservoir with several
 *     trays so much that this tray's share is enough
 * @param ecAfterMsPerCm what the tray reads when that is drunk, mS/cm
 * @param doubtMsPerCm by which that may be off either way, mS/cm
 * @param laterFrac share of plain water in what is poured after that, so that salts neither pile up
 *     nor run out: feed of charge c so thinned brings what is taken, u a litre; 0-1
 */
record PlainWater(double litres, double ecAfterMsPerCm, double doubtMsPerCm, double laterFrac) {
    /** Less water than this is not worth measuring out each time; assumed. */
    private static final double WORTH_FRAC = 0.1;

    /** Nor is a feed thinned further than this: one nutrient of it would run out; assumed. */
    private static final double MOST_FRAC = 0.5;

    /** The fall of the reading may be less or more by this share of it, as uptake is; assumed. */
    private static final double FALL_DOUBT_FRAC = 0.4;

    private static final List<Component> CATIONS =
            List.of(Component.NH4, Component.K, Component.CA, Component.MG, Component.NA);

    private static final int WEEK_H = 168;
    private static final int LEAST_H = 48; // for a balance to mean anything; assumed

    /**
     * What it would be; null where water does not help: where it is about as salty as what the crop
     * takes, or too little is drunk to make a fall that a meter shows.
     */
    static PlainWater of(TrayCase tray, int hour) {
        boolean steady = tray.trace.scenario().climate() instanceof Climate.Room;
        if (!steady || tray.tray.filling() instanceof Filling.Sealed) {
            return null;
        }
        int from = Math.max(Math.max(tray.firstHour, hour - WEEK_H), hourAfterChange(tray, hour));
        double leftLitres = leaving(tray.of, from, hour);
        double volume = 1000 * tray.of.volumeM3().at(hour);
        double ec = tray.of.ecMsPerCm().at(hour);
        if (hour - from < LEAST_H || !(leftLitres > 0)) {
            return null;
        }
        double before = 1000 * tray.of.volumeM3().at(from);
        double came = leftLitres + volume - before;
        double held = chargeAt(tray, hour);
        double gained = volume * held - before * chargeAt(tray, from);
        double inFeed = charge(tray.feed);
        double inWater = charge(tray.trace.scenario().sourceWater().composition());
        double taken = (inFeed * came - gained) / leftLitres;
        double perLitre = taken - inWater;
        double high = tray.tray.limits().ecHighMsPerCm();
        double feedEc = tray.feedMsPerCm;
        double aimEc = feedEc < high ? 0.5 * (feedEc + high) : high;
        double power = FastMath.log(ec / feedEc) / FastMath.log(held / inFeed);
        if (!(perLitre > 0 && ec > feedEc && held > inFeed && power > 0)) {
            return null;
        }
        double aim = held * FastMath.pow(aimEc / ec, 1 / power);
        double share = share(tray, from, hour);
        double alongLitres = share * inReservoirLitres(tray, hour);
        double more = alongLitres * (inFeed - taken);
        double litres = (volume * (held - aim) + more) / perLitre;
        double toCome = leaving(tray.of, hour, tray.lastHour + 1) - alongLitres;
        litres = Math.min(litres, toCome);
        double after = held - (litres * perLitre - more) / volume;
        double ecAfter = ec * FastMath.pow(after / held, power);
        if (!(litres > 0) || ec - ecAfter < FlushRule.METER_DOUBT_FRAC * ec) {
            return null;
        }
        double surplus = (inFeed - taken) / (inFeed - inWater);
        return new PlainWater(
                litres / share,
                ecAfter,
                FALL_DOUBT_FRAC * (ec - ecAfter),
                surplus < WORTH_FRAC ? 0 : Math.min(MOST_FRAC, surplus));
    }

    /** As a cure tells it. */
    Facts facts() {
        Facts facts =
                Facts.of(Quantity.WATER, litres)
                        .and(Quantity.EC_AFTER, ecAfterMsPerCm)
                        .and(Quantity.EC_AFTER_DOUBT, doubtMsPerCm);
        return laterFrac > 0 ? facts.and(Quantity.LATER_SHARE, laterFrac) : facts;
    }

    private static double chargeAt(TrayCase tray, int hour) {
        double sum = 0;
        for (Component cation : CATIONS) {
            sum += cation.fixedCharge() * tray.of.molPerM3(cation.ordinal(), hour);
        }
        return sum;
    }

    private static double charge(Composition of) {
        double sum = 0;
        for (Component cation : CATIONS) {
            sum += cation.fixedCharge() * of.molPerM3(cation);
        }
        return sum;
    }

    /** What the reservoir holds, which is drunk before the water or with it, L; 0 without one. */
    private static double inReservoirLitres(TrayCase tray, int hour) {
        if (!(tray.tray.filling() instanceof Filling.ByValve valve)) {
            return 0;
        }
        int index = tray.trace.scenario().reservoirOf(valve);
        return 1000 * tray.trace.reservoirs().get(index).volumeM3().at(hour);
    }

    private static int hourAfterChange(TrayCase tray, int hour) {
        int after = 0;
        for (Event event : tray.events()) {
            int at = (int) Math.ceil(event.atS() / Time.HOUR_S);
            if (TrayCase.isChange(event) && at <= hour) {
                after = at;
            }
        }
        return after;
    }

    private static double leaving(TrayTrace of, int from, int to) {
        return to > from
                ? 1000 * (of.transpirationM3().sum(from, to) + of.evaporationM3().sum(from, to))
                : 0;
    }

    /** This tray's share of what leaves its reservoir, 0-1. */
    private static double share(TrayCase tray, int from, int to) {
        if (!(tray.tray.filling() instanceof Filling.ByValve valve)) {
            return 1;
        }
        double own = tray.of.inflowM3().sum(from, to);
        double all = 0;
        for (TrayTrace other : tray.trace.trays()) {
            all += other.tray().isFedBy(valve.reservoir()) ? other.inflowM3().sum(from, to) : 0;
        }
        return own > 0 ? own / all : 1;
    }
}
