package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.time.LocalDate;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Lamp;

/** Reads a lamp, and holds what is promised of it against what it can give. */
final class LampReader {
    private static final double DAY_S = 86400;
    private static final LocalDate ANY_DAY = LocalDate.of(2000, 1, 1);
    private static final String ONE_OF = "one of ppfd, lux, or watts with area";

    private LampReader() {}

    /**
     * The lamp of a table that stands in the file; {@link Lamp#NONE} when it is faulty.
     *
     * @param start the run's first day; null when it is faulty
     */
    static Lamp read(Table lamp, LocalDate start) {
        String spelling = lamp.choice("type");
        LampType type = spelling == null ? null : LampType.of(spelling);
        double onS = lamp.clock("on");
        double offS = lamp.clock("off");
        checkHours(lamp, onS, offS);
        List<Lamp.Level> levels = lamp.levels("levels");
        List<Lamp.Strength> strengths =
                lamp.strengths("strengths", start == null ? ANY_DAY : start);
        double ppfd = ppfd(lamp, type);
        if (type == null
                || levels == null
                || strengths == null
                || Double.isNaN(onS + offS)
                || !(ppfd >= 0)) {
            return Lamp.NONE;
        }
        if (ppfd > 3000) {
            lamp.fault(
                    lamp.has("watts") ? "watts" : "lux",
                    plain(ppfd) + " umol/m2/s worked out from it",
                    "up to 3000 umol/m2/s",
                    "");
            return Lamp.NONE;
        }
        return new Lamp(
                ppfd, type.umolPerJ(), type.nearInfraredPerPar(), onS, offS, levels, strengths);
    }

    private static double ppfd(Table lamp, LampType type) {
        if (lamp.meant("ppfd")) {
            for (String other : new String[] {"lux", "watts"}) {
                if (lamp.has(other)) {
                    lamp.fault(other, lamp.words(other) + " beside ppfd", ONE_OF, "");
                }
            }
            return lamp.quantityOr("ppfd", Double.NaN, "");
        }
        if (!lamp.meant("lux") && !lamp.meant("watts")) {
            lamp.fault("ppfd", "nothing", ONE_OF, "Maybe add ppfd = \"220 umol/m2/s\".");
            return Double.NaN;
        }
        double fromWatts = lamp.meant("watts") ? fromWatts(lamp, type) : Double.NaN;
        return lamp.meant("lux") ? fromLux(lamp, type, fromWatts) : fromWatts;
    }

    private static double fromLux(Table lamp, LampType type, double fromWattsUmol) {
        double lux = lamp.quantityOr("lux", Double.NaN, "");
        if (type == null || Double.isNaN(lux)) {
            return Double.NaN;
        }
        if (Double.isNaN(type.luxPerUmolPerM2S())) {
            lamp.faultyValue(
                    "lux",
                    "ppfd, or watts with area, for type = " + Key.quoted(type.spelling()),
                    "Lux counts green light as the eye does; it says nothing of a red and blue lamp.");
            return Double.NaN;
        }
        double mostLux = fromWattsUmol * type.luxPerUmolPerM2S();
        if (lux > mostLux * 1.05) { // 5 %: figures on a lamp's box are rounded
            lamp.fault(
                    "lux",
                    Key.quoted(lamp.words("lux")),
                    "up to %s lux on average: %s".formatted(plain(mostLux), sum(lamp, mostLux)),
                    "Maybe the reading was taken close under the lamp; measure at several places"
                            + " at the height of the leaves and take the mean.");
            return Double.NaN;
        }
        return lux / type.luxPerUmolPerM2S();
    }

    private static String sum(Table lamp, double mostLux) {
        String efficacy = lamp.has("efficacy") ? lamp.words("efficacy") : "100 lm/W";
        String onTarget = lamp.has("on_target") ? " x " + lamp.words("on_target") : "";
        return "%s x %s%s over %s gives %s lux"
                .formatted(
                        lamp.words("watts"),
                        efficacy,
                        onTarget,
                        lamp.words("area"),
                        plain(mostLux));
    }

    private static double fromWatts(Table lamp, LampType type) {
        double watts = lamp.quantityOr("watts", Double.NaN, "");
        Measure.Read efficacy = lamp.measure("efficacy");
        double onTarget = lamp.quantity("on_target");
        if (!lamp.has("area")) {
            lamp.missing("area");
            return Double.NaN;
        }
        double areaM2 = lamp.quantity("area");
        if (type == null || Double.isNaN(watts + efficacy.value() + onTarget + areaM2)) {
            return Double.NaN;
        }
        double perM2 = watts * efficacy.value() * onTarget / areaM2;
        if (efficacy.table() == UnitTable.PHOTONS_PER_JOULE) {
            if (efficacy.value() > 5) { // one photon of 700 nm carries 1/5.85 J per umol
                lamp.faultyValue("efficacy", "above 0 up to 5 umol/J", "");
                return Double.NaN;
            }
            return perM2;
        }
        if (Double.isNaN(type.luxPerUmolPerM2S())) {
            lamp.faultyValue(
                    lamp.has("efficacy") ? "efficacy" : "watts",
                    "an efficacy in umol/J for type = " + Key.quoted(type.spelling()),
                    "");
            return Double.NaN;
        }
        return perM2 / type.luxPerUmolPerM2S();
    }

    private static void checkHours(Table lamp, double onS, double offS) {
        double promisedS = lamp.quantityOr("hours", Double.NaN, "");
        double litS = offS > onS ? offS - onS : offS - onS + DAY_S;
        if (Math.abs(promisedS - litS) > 60) { // NaN is never above
            lamp.fault(
                    "hours",
                    Key.quoted(lamp.words("hours")),
                    "%s h, as on = %s and off = %s say"
                            .formatted(plain(litS / 3600), clock(onS), clock(offS)),
                    "Maybe the clock is set wrong, or the hours are.");
        }
    }

    /** As {@code "08:00"} in quotation marks. */
    static String clock(double secondsAfterMidnight) {
        long minutes = FastMath.round(secondsAfterMidnight / 60);
        return Key.quoted(
                String.format(java.util.Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60));
    }
}
