package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.rig.Limits;
import tideless.rig.Planting;

/** Reads the bands a tray's solution must keep: the crop's own unless others are stated. */
final class LimitsReader {
    /** For measured thirst; common practice, no source. */
    private static final Limits USUAL = new Limits(0, 4, 5, 7, 10, 10);

    /** Loss of growth at which salt is harm, share; assumed. */
    private static final double HARMFUL_LOSS_FRAC = 0.05;

    private final Table limits;
    private final Read<CropTraits> crop;
    private final Read<CropTraits.Needs> needs;

    LimitsReader(Table limits, Read<Planting> planting) {
        this.limits = limits;
        crop =
                planting.then(
                        what ->
                                what instanceof Planting.OfCrop own
                                        ? Read.of(own.traits())
                                        : Read.absent());
        needs = crop.map(CropTraits::needs);
    }

    Read<Limits> read() {
        Read<Double> ecLow =
                band(
                        LimitKeys.EC_LOW,
                        CropTraits.Needs::ecLowMsPerCm,
                        USUAL.ecLowMsPerCm(),
                        " mS/cm");
        Read<Double> ecHigh =
                crop.isSound()
                        ? limits.getOr(
                                LimitKeys.EC_HIGH,
                                crop.map(LimitsReader::highMsPerCm),
                                high -> plain(high) + " mS/cm, where salt costs 5 % of growth")
                        : band(
                                LimitKeys.EC_HIGH,
                                CropTraits.Needs::ecHighMsPerCm,
                                USUAL.ecHighMsPerCm(),
                                " mS/cm");
        Read<Double> phLow = band(LimitKeys.PH_LOW, CropTraits.Needs::phLow, USUAL.phLow(), "");
        Read<Double> phHigh = band(LimitKeys.PH_HIGH, CropTraits.Needs::phHigh, USUAL.phHigh(), "");
        Read<Double> sodium =
                band(
                        LimitKeys.SODIUM_HIGH,
                        CropTraits.Needs::sodiumHighMolPerM3,
                        USUAL.sodiumHighMolPerM3(),
                        " mmol/L");
        Read<Double> chloride =
                band(
                        LimitKeys.CHLORIDE_HIGH,
                        CropTraits.Needs::chlorideHighMolPerM3,
                        USUAL.chlorideHighMolPerM3(),
                        " mmol/L");
        boolean rise = rises(LimitKeys.EC_LOW, ecLow, LimitKeys.EC_HIGH, ecHigh);
        rise &= rises(LimitKeys.PH_LOW, phLow, LimitKeys.PH_HIGH, phHigh);
        if (!rise || !Read.allSound(ecLow, ecHigh, phLow, phHigh, sodium, chloride)) {
            return Read.faulty();
        }
        return Read.of(
                new Limits(
                        ecLow.value(),
                        ecHigh.value(),
                        phLow.value(),
                        phHigh.value(),
                        sodium.value(),
                        chloride.value()));
    }

    /**
     * The EC of a loss that counts, or the upper end of the band it is fed in where that is more.
     */
    private static double highMsPerCm(CropTraits crop) {
        double harm = crop.salinity().lossMsPerCm(HARMFUL_LOSS_FRAC);
        return Math.max(crop.needs().ecHighMsPerCm(), 0.1 * FastMath.round(10 * harm));
    }

    private Read<Double> band(
            Key<Double> key, ToDoubleFunction<CropTraits.Needs> own, double usual, String unit) {
        double otherwise = needs.isSound() ? own.applyAsDouble(needs.value()) : usual;
        String whose = needs.isSound() ? ", the crop's own" : ", common practice";
        return limits.getOr(key, Read.of(otherwise), value -> plain(value) + unit + whose);
    }

    private boolean rises(
            Key<Double> low, Read<Double> lowest, Key<Double> high, Read<Double> highest) {
        if (lowest.holds(least -> highest.holds(most -> least >= most))) {
            limits.faultyValue(
                    limits.has(high) ? high : low,
                    "%s below %s".formatted(low.name(), high.name()),
                    "");
            return false;
        }
        return true;
    }
}
