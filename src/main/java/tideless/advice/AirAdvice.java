package tideless.advice;

import java.util.List;
import java.util.function.IntPredicate;
import tideless.crop.CropTraits;
import tideless.crop.Killing;
import tideless.crop.RoomLimits;
import tideless.physics.HumidAir;
import tideless.physics.Oxygen;
import tideless.physics.Time;
import tideless.sim.TraySeries;

/** Warmth and light of one tray. */
final class AirAdvice {
    /** A solution has to be warm for this long before it is worth a word, h; assumed. */
    private static final int WARM_PATIENCE_H = 6;

    /** A thermometer in a tray, and the forecast of one, are no surer than this, K; assumed. */
    private static final double WARM_DOUBT_K = 1;

    /** Days over which light is judged; assumed. */
    private static final int LIGHT_DAYS = 14;

    /** Lamps are not lit longer than this over any crop, h; common practice, no source. */
    private static final double LONGEST_LIT_H = 18;

    /** Cold for less than this part of its time is borne by a hardy crop; assumed. */
    private static final double COLD_PART_FRAC = 1.0 / 3;

    /** So many days of heat make leaf of cool seasons bolt; common practice, no source. */
    private static final int BOLTING_DAYS = 7;

    /** Light short of the need by less is made up for by a lamp lit a little longer; assumed. */
    private static final double LITTLE_LIGHT_FRAC = 0.15;

    private final TrayCase tray;
    private final Findings out;

    AirAdvice(TrayCase tray, Findings out) {
        this.tray = tray;
        this.out = out;
    }

    void add() {
        if (tray.traits != null) {
            addWarmth();
            addLowLight();
            List<RoomFindings.Finding> findings = RoomFindings.of(tray.trace, tray.planting);
            boolean isHot = findings.stream().anyMatch(f -> f.kind() == RoomLimits.Kind.TOO_HOT);
            for (RoomFindings.Finding finding : findings) {
                if (!isHot || finding.kind() != RoomLimits.Kind.HOT_HOURS) {
                    addRoom(finding);
                }
            }
        }
    }

    private void addWarmth() {
        double warm = tray.traits.needs().solutionWarmC();
        var temp = tray.of.solutionTempC();
        IntPredicate isWarm = h -> temp.at(h) > warm + WARM_DOUBT_K;
        int from = tray.firstSpell(WARM_PATIENCE_H, isWarm);
        if (from < 0) {
            return;
        }
        double most = tray.greatest(from, temp::at);
        double pressure = HumidAir.pressurePa(tray.trace.scenario().place().altitudeM());
        out.warnings.add(
                new Warning(
                        Warning.Kind.WARM_SOLUTION,
                        tray.id,
                        tray.trace.clockAtSample(from),
                        tray.lastOf(from, isWarm),
                        Measure.atMost(most, warm, Unit.CELSIUS),
                        new Cause(
                                Cause.Kind.WARM_HOLDS_LITTLE_OXYGEN,
                                Facts.of(
                                        Quantity.OXYGEN,
                                        Oxygen.saturationMgPerL(most, 0, pressure))),
                        List.of(Cure.of(warmCure(from, warm)))));
    }

    /**
     * Shade takes the lamp's and the sun's part; solution in warm air grows as warm all the same.
     */
    private Cure.Kind warmCure(int from, double warmC) {
        int to = Math.min(from + 24, tray.lastHour + 1);
        double airC = tray.of.of(TraySeries.AIR_TEMP).sum(from, to) / (to - from);
        return airC > warmC ? Cure.Kind.COOLER_ROOM : Cure.Kind.SHADE_THE_TRAY;
    }

    private void addLowLight() {
        int days = Math.min(LIGHT_DAYS, (tray.lastHour + 1 - tray.firstHour) / 24);
        if (days == 0) {
            return;
        }
        int from = tray.firstHour;
        double light = meanLight(from, days);
        double low = tray.traits.needs().lightLowMolPerM2Day();
        if (!CropTraits.Needs.isShortOfLight(light, low)) {
            return;
        }
        // It lasts as long as one fortnight after the other is short: a lamp may be turned down, a
        // season may darken.
        int to = from + days * 24;
        while (to + LIGHT_DAYS * 24 <= tray.lastHour + 1) {
            double next = meanLight(to, LIGHT_DAYS);
            if (!CropTraits.Needs.isShortOfLight(next, low)) {
                break;
            }
            light = Math.min(light, next);
            to += LIGHT_DAYS * 24;
        }
        out.warnings.add(
                new Warning(
                        Warning.Kind.LOW_LIGHT,
                        tray.id,
                        tray.trace.clockAt(from * Time.HOUR_S),
                        tray.trace.clockAt(to * Time.HOUR_S),
                        Measure.atLeast(light, low, Unit.MOL_PER_M2_DAY),
                        new Cause(
                                Cause.Kind.TOO_LITTLE_LIGHT,
                                light >= (1 - LITTLE_LIGHT_FRAC) * low
                                        ? Facts.of(Quantity.LOSS, 0)
                                        : Facts.NONE),
                        List.of(Cure.of(lightCure(low / light)))));
    }

    private double meanLight(int fromHour, int days) {
        return tray.of.lightMolPerM2().sum(fromHour, fromHour + days * 24) / days;
    }

    private boolean hasLamp() {
        return tray.tray.lamp().isElectric();
    }

    /** Longer hours only where the crop bears as many as it takes. */
    private Cure.Kind lightCure(double times) {
        if (!hasLamp()) {
            return Cure.Kind.SUNNIER_PLACE;
        }
        double borneS = Time.HOUR_S * Math.min(LONGEST_LIT_H, tray.traits.response().longestDayH());
        return tray.tray.lamp().litS() * times <= borneS
                ? Cure.Kind.MORE_LIGHT
                : Cure.Kind.STRONGER_LAMP;
    }

    private void addRoom(RoomFindings.Finding finding) {
        Warning.Kind kind;
        Cure.Kind cure;
        Cause.Kind cause = Cause.Kind.AIR_OF_THE_ROOM;
        Unit unit = Unit.CELSIUS;
        boolean isLow = false;
        switch (finding.kind()) {
            case TOO_COLD -> {
                kind = Warning.Kind.TOO_COLD;
                cure = Cure.Kind.WARMER_ROOM;
                isLow = true;
            }
            case TOO_HOT -> {
                kind = Warning.Kind.TOO_HOT;
                cure = Cure.Kind.COOLER_ROOM;
                cause =
                        isLeafOfCoolSeasons() && finding.days() >= BOLTING_DAYS
                                ? Cause.Kind.BOLTS_IN_HEAT
                                : cause;
            }
            case HOT_HOURS -> {
                kind = Warning.Kind.TOO_HOT;
                cure = Cure.Kind.COOLER_ROOM;
                cause = Cause.Kind.BURNS_IN_HOT_HOURS;
            }
            case TOO_HUMID -> {
                kind = Warning.Kind.TOO_HUMID;
                cure = Cure.Kind.DRIER_NIGHTS;
                unit = Unit.FRACTION;
            }
            case TOO_STILL -> {
                kind = Warning.Kind.TOO_STILL;
                cure = Cure.Kind.MORE_WIND;
                unit = Unit.M_PER_S;
                isLow = true;
            }
            case DAY_TOO_LONG -> {
                kind = Warning.Kind.DAY_TOO_LONG;
                cure = hasLamp() ? Cure.Kind.SHORTER_DAY : Cure.Kind.OTHER_SEASON;
                unit = Unit.HOURS;
                cause = tray.traits.stages().fruits() ? cause : Cause.Kind.BOLTS_IN_LONG_DAYS;
            }
            case SET_TOO_COLD -> {
                kind = Warning.Kind.SET_TOO_COLD;
                cure = Cure.Kind.WARMER_ROOM;
                isLow = true;
            }
            default -> {
                kind = Warning.Kind.SET_TOO_HOT;
                cure = Cure.Kind.COOLER_ROOM;
            }
        }
        out.warnings.add(
                new Warning(
                        kind,
                        tray.id,
                        tray.trace.clockAt(finding.firstDay() * Time.DAY_S),
                        tray.trace.clockAtSample(24 * finding.lastDay() + 22), // on that day
                        isLow
                                ? Measure.atLeast(finding.worst(), finding.limit(), unit)
                                : Measure.atMost(finding.worst(), finding.limit(), unit),
                        new Cause(
                                cause,
                                (isOnlySlow(finding) ? Facts.of(Quantity.LOSS, 0) : Facts.NONE)
                                        .and(Quantity.DAYS_BEYOND, finding.days())),
                        List.of(Cure.of(cure))));
    }

    /** What grows on in the cold and is eaten before it flowers. */
    private boolean isLeafOfCoolSeasons() {
        return !tray.traits.stages().fruits() && !Killing.isTender(tray.traits);
    }

    /**
     * Cold that injures no leaf of this crop and is over in days, or of a hardy one in a part of
     * its time: it stands still, and comes so much later.
     */
    private boolean isOnlySlow(RoomFindings.Finding finding) {
        double days = (tray.lastHour + 1.0 - tray.firstHour) * Time.HOUR_S / Time.DAY_S;
        boolean isPart = !Killing.isTender(tray.traits) && finding.days() < COLD_PART_FRAC * days;
        return finding.kind() == RoomLimits.Kind.TOO_COLD
                && finding.limit() != tray.traits.response().chillC()
                && (finding.days() < Warning.AIR_DAYS || isPart);
    }
}
