package tideless.advice;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.RoomLimits;
import tideless.physics.HumidAir;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Planting;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;

/** Days of a run whose air or light a tray's crop does not bear, as figures. */
public final class RoomFindings {
    private static final int DAY_H = 24;

    /** Light of an hour below which it counts as dark, mol/m2; assumed. */
    private static final double DARK_MOL_PER_M2 = 0.0036;

    /** Days out of a limit before it is worth a word: one odd day is none; assumed. */
    public static final int DAYS_BORNE = 2;

    /** Days over which a gain is taken to tell how it grows; assumed. */
    private static final int GAIN_DAYS = 3;

    /** A fortnight that brings less than this share of the best one brings nothing; assumed. */
    private static final double STILL_FRAC = 0.1;

    private static final int FORTNIGHT_H = 14 * DAY_H;

    private RoomFindings() {}

    /**
     * One limit that was broken.
     *
     * @param firstDay first day beyond it, counted from 0
     * @param lastDay last day beyond it, likewise; those between need not all be
     * @param days how many days in all, more than {@link #DAYS_BORNE}
     * @param worst value farthest beyond, in the unit of its kind
     * @param limit the crop's
     */
    public record Finding(
            RoomLimits.Kind kind,
            int firstDay,
            int lastDay,
            int days,
            double worst,
            double limit) {}

    /** Every limit a crop had broken while it lived, in the order of the kinds. */
    public static List<Finding> of(Trace trace, PlantingTrace planting) {
        List<Finding> found = new ArrayList<>();
        TrayTrace tray = planting.run();
        if (!(planting.tray().planting() instanceof Planting.OfCrop crop) || crop.plants() == 0) {
            return found;
        }
        double speed =
                trace.scenario().climate() instanceof Climate.Room room
                        ? room.airSpeedMPerS()
                        : Double.POSITIVE_INFINITY;
        int flowersFrom = firstDay(planting, Event.Kind.FLOWERING);
        int until =
                Math.min(
                        firstDay(planting, Event.Kind.HARVEST),
                        Math.min(firstDay(planting, Event.Kind.DIED), trace.hours() / DAY_H));
        Map<RoomLimits.Kind, Finding> worst = new EnumMap<>(RoomLimits.Kind.class);
        for (int day = planting.firstHour() / DAY_H; day < until; day++) {
            RoomLimits.Day seen = day(tray, day, speed, day >= flowersFrom);
            for (Map.Entry<RoomLimits.Kind, RoomLimits.Beyond> one :
                    RoomLimits.beyond(crop.traits(), seen).entrySet()) {
                Finding finding =
                        new Finding(
                                one.getKey(),
                                day,
                                day,
                                1,
                                one.getValue().value(),
                                one.getValue().limit());
                worst.merge(one.getKey(), finding, RoomFindings::joined);
            }
        }
        if (isInTheOpen(trace)) {
            worst.remove(RoomLimits.Kind.TOO_HUMID); // dew by night: nobody dries the open air
        }
        worst.values().stream().filter(f -> f.days() > DAYS_BORNE).forEach(found::add);
        return found;
    }

    private static boolean isInTheOpen(Trace trace) {
        return trace.scenario().climate() instanceof Climate.Weather weather
                && weather.cover().kind().isOpen();
    }

    private static Finding joined(Finding before, Finding now) {
        boolean farther =
                Math.abs(now.worst() - now.limit()) > Math.abs(before.worst() - before.limit());
        return new Finding(
                before.kind(),
                before.firstDay(),
                now.lastDay(),
                before.days() + 1,
                farther ? now.worst() : before.worst(),
                before.limit());
    }

    private static int firstDay(PlantingTrace planting, Event.Kind kind) {
        return planting.events().stream()
                .filter(e -> e.kind() == kind)
                .mapToInt(e -> (int) (e.atS() / Time.DAY_S))
                .findFirst()
                .orElse(Integer.MAX_VALUE);
    }

    private static RoomLimits.Day day(TrayTrace tray, int day, double speed, boolean flowering) {
        double sumC = 0;
        double lowestC = Double.POSITIVE_INFINITY;
        double highestC = Double.NEGATIVE_INFINITY;
        double litC = 0;
        double darkHumidity = 0;
        double humidity = 0;
        double light = 0;
        int lit = 0;
        for (int h = day * DAY_H; h < (day + 1) * DAY_H; h++) {
            double airC = tray.of(TraySeries.AIR_TEMP).at(h);
            double saturated = HumidAir.saturationPressurePa(airC);
            double share = 1 - tray.of(TraySeries.AIR_DEFICIT).at(h) / saturated;
            double mol = tray.of(TraySeries.LIGHT).at(h);
            sumC += airC;
            lowestC = Math.min(lowestC, airC);
            highestC = Math.max(highestC, airC);
            humidity += share;
            light += mol;
            if (mol > DARK_MOL_PER_M2) {
                lit++;
                litC += airC;
            } else {
                darkHumidity += share;
            }
        }
        int dark = DAY_H - lit;
        return new RoomLimits.Day(
                sumC / DAY_H,
                lowestC,
                highestC,
                lit > 0 ? litC / lit : Double.NaN,
                dark > 0 ? darkHumidity / dark : humidity / DAY_H,
                lit,
                light,
                speed,
                flowering);
    }

    /**
     * Days a crop that is not ready at the end of its run would still need, in the air of its last
     * day, and where a weight is waited for with a gain that goes on growing as it did; 0 when it
     * was cut or picked, died or is cut on a stated day.
     */
    public static double daysShort(Trace trace, PlantingTrace planting) {
        TrayTrace tray = planting.run();
        if (!(planting.tray().planting() instanceof Planting.OfCrop crop)
                || crop.plants() == 0
                || crop.harvestAfterDays().isPresent()
                || firstDay(planting, Event.Kind.DIED) != Integer.MAX_VALUE
                || firstDay(planting, Event.Kind.LEAVES_PICKED) != Integer.MAX_VALUE
                || firstDay(planting, Event.Kind.HARVEST) != Integer.MAX_VALUE) {
            return 0;
        }
        CropTraits traits = crop.traits();
        int days = trace.hours() / DAY_H;
        double standsCd = Growing.raisedInNursery(traits, crop.ageAtStartDays()).thermalTimeCd();
        double lastC = 0;
        for (int day = planting.firstHour() / DAY_H; day < days; day++) {
            lastC = day(tray, day, 1, false).meanC();
            standsCd += Growing.warmthCd(traits, standsCd, lastC);
        }
        if (traits.stages().fruits() || crop.harvestFreshG().isEmpty()) {
            return RoomLimits.daysTo(traits, standsCd, traits.stages().firstHarvestCd(), lastC);
        }
        double byWeight =
                daysToWeight(
                        tray,
                        planting.firstHour(),
                        trace.hours() - 1,
                        crop.harvestFreshG().getAsDouble());
        return Math.min(
                byWeight, RoomLimits.daysTo(traits, standsCd, traits.harvest().latestCd(), lastC));
    }

    /**
     * Whether a leaf crop that is not ready has all but stopped growing by the end of its run,
     * after it grew: as autumn ends, when no count of days in such air is any use.
     */
    public static boolean standsStill(Trace trace, PlantingTrace planting) {
        if (planting.tray().planting().fruits() || !(daysShort(trace, planting) > 0)) {
            return false;
        }
        Series freshG = planting.run().freshG();
        int last = trace.hours() - 1;
        double best = 0;
        for (int h = planting.firstHour() + FORTNIGHT_H; h <= last; h += DAY_H) {
            best = Math.max(best, freshG.at(h) - freshG.at(h - FORTNIGHT_H));
        }
        return last - FORTNIGHT_H >= planting.firstHour()
                && freshG.at(last) - freshG.at(last - FORTNIGHT_H) < STILL_FRAC * best;
    }

    // The gain of the last day, and its growth from the three days before the last three to these.
    private static double daysToWeight(
            TrayTrace tray, int firstHour, int lastHour, double weightG) {
        double freshG = tray.freshG().at(lastHour);
        double leftG = weightG - freshG;
        double gainG = freshG - tray.freshG().at(Math.max(0, lastHour - DAY_H));
        if (leftG <= 0 || gainG <= 0) {
            return leftG <= 0 ? 0 : Double.POSITIVE_INFINITY;
        }
        int span = GAIN_DAYS * DAY_H;
        double growth = 0;
        if (lastHour - 2 * span >= firstHour) {
            double before = tray.freshG().at(lastHour - 2 * span);
            double middle = tray.freshG().at(lastHour - span);
            growth = Math.max(0, (freshG - 2 * middle + before) / (GAIN_DAYS * GAIN_DAYS));
        }
        return 2 * leftG / (gainG + Math.sqrt(gainG * gainG + 2 * growth * leftG));
    }
}
