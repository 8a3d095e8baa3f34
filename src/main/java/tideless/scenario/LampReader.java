package tideless.scenario;

import static tideless.scenario.LampKeys.AREA;
import static tideless.scenario.LampKeys.EFFICACY;
import static tideless.scenario.LampKeys.HOURS;
import static tideless.scenario.LampKeys.LEVELS;
import static tideless.scenario.LampKeys.LUX;
import static tideless.scenario.LampKeys.OFF;
import static tideless.scenario.LampKeys.ON;
import static tideless.scenario.LampKeys.ON_TARGET;
import static tideless.scenario.LampKeys.PPFD;
import static tideless.scenario.LampKeys.STRENGTHS;
import static tideless.scenario.LampKeys.TYPE;
import static tideless.scenario.LampKeys.WATTS;
import static tideless.scenario.Measure.plain;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import tideless.physics.Light;
import tideless.physics.Time;
import tideless.rig.Lamp;

/** Reads a lamp, and holds what is promised of it against what it can give. */
final class LampReader {
    private static final String ONE_OF = "one of ppfd, lux, or watts with area";
    private static final double MOST_PPFD = 3000;

    private final Table lamp;
    private final Run run;

    private LampReader(Table lamp, Run run) {
        this.lamp = lamp;
        this.run = run;
    }

    /** The lamp of a table that stands in the file; {@link Lamp#NONE} when it is faulty. */
    static Lamp read(Table lamp, Run run) {
        return new LampReader(lamp, run).lamp().orElse(Lamp.NONE);
    }

    private Read<Lamp> lamp() {
        boolean sound = lamp.isSound();
        Read<Double> ppfd = ppfd();
        if (!sound || !Read.allSound(ppfd, run.start())) {
            return Read.faulty();
        }
        if (ppfd.value() > MOST_PPFD) {
            lamp.fault(
                    lamp.has(WATTS) ? WATTS : LUX,
                    plain(ppfd.value()) + " umol/m2/s worked out from it",
                    "up to 3000 umol/m2/s",
                    "");
            return Read.faulty();
        }
        Light.Source light = lamp.value(TYPE).light();
        Lamp made =
                new Lamp(
                        ppfd.value(),
                        light.umolPerJ(),
                        light.nearInfraredPerPar(),
                        lamp.value(ON),
                        lamp.value(OFF),
                        lamp.get(LEVELS).orElse(List.of()),
                        strengths(run.start().value()),
                        plug(light));
        checkHours(made);
        checkLevels(made);
        return Read.of(made);
    }

    private Lamp.Plug plug(Light.Source light) {
        if (light == Light.Source.SUN_AND_SKY) {
            return new Lamp.Plug(true, 0, 0);
        }
        double watts = lamp.get(WATTS).orElse(Double.NaN);
        double area = lamp.get(AREA).orElse(Double.NaN); // a lamp told by its light may lack it
        return lamp.meant(WATTS) && watts > 0 && area > 0
                ? new Lamp.Plug(false, watts, area)
                : Lamp.Plug.UNKNOWN;
    }

    private List<Lamp.Strength> strengths(LocalDate start) {
        return lamp.get(STRENGTHS).orElse(List.of()).stream()
                .map(
                        share ->
                                new Lamp.Strength(
                                        (int) ChronoUnit.DAYS.between(start, share.from()),
                                        share.frac()))
                .toList();
    }

    private Read<Double> ppfd() {
        if (lamp.meant(PPFD)) {
            for (Key<?> other : List.of(LUX, WATTS)) {
                if (lamp.has(other)) {
                    lamp.fault(other, lamp.words(other) + " beside ppfd", ONE_OF, "");
                }
            }
            return lamp.get(PPFD);
        }
        if (!lamp.meant(LUX) && !lamp.meant(WATTS)) {
            lamp.fault(PPFD, "nothing", ONE_OF, "Maybe add ppfd = \"220 umol/m2/s\".");
            return Read.faulty();
        }
        Read<Double> fromWatts = lamp.meant(WATTS) ? fromWatts() : Read.absent();
        return lamp.meant(LUX) ? fromLux(fromWatts) : fromWatts;
    }

    private Read<Double> fromLux(Read<Double> fromWatts) {
        if (!Read.allSound(lamp.get(TYPE), lamp.get(LUX))) {
            return Read.faulty();
        }
        LampType type = lamp.value(TYPE);
        double lux = lamp.value(LUX);
        if (!type.hasLux()) {
            lamp.faultyValue(
                    LUX,
                    "ppfd, or watts with area, for type = " + Key.quoted(type.spelling()),
                    "Lux counts green light as the eye does; it says nothing of a red and blue"
                            + " lamp.");
            return Read.faulty();
        }
        if (fromWatts.isSound()) {
            double mostLux = Light.ppfdToLux(fromWatts.value(), type.light());
            if (lux > mostLux * 1.05) { // 5 %: figures on a lamp's box are rounded
                lamp.fault(
                        LUX,
                        Key.quoted(lamp.words(LUX)),
                        "up to %s lux on average: %s".formatted(plain(mostLux), sum(mostLux)),
                        "Maybe the reading was taken close under the lamp; measure at several"
                                + " places at the height of the leaves and take the mean.");
                return Read.faulty();
            }
        }
        return Read.of(Light.luxToPpfdUmolPerM2S(lux, type.light()));
    }

    private String sum(double mostLux) {
        String efficacy = lamp.has(EFFICACY) ? lamp.words(EFFICACY) : EFFICACY.fallback();
        String onTarget = lamp.has(ON_TARGET) ? " x " + lamp.words(ON_TARGET) : "";
        return "%s x %s%s over %s gives %s lux"
                .formatted(lamp.words(WATTS), efficacy, onTarget, lamp.words(AREA), plain(mostLux));
    }

    private Read<Double> fromWatts() {
        if (!lamp.has(AREA)) {
            return lamp.missing(
                    AREA,
                    "Maybe the decks it lights, length times width, together: two of 60 by 40 cm"
                            + " are area = \"0.48 m2\".");
        }
        if (!Read.allSound(
                lamp.get(TYPE),
                lamp.get(WATTS),
                lamp.get(EFFICACY),
                lamp.get(ON_TARGET),
                lamp.get(AREA))) {
            return Read.faulty();
        }
        LampType type = lamp.value(TYPE);
        Measure efficacy = lamp.value(EFFICACY);
        double perM2 =
                Light.lampMeanLux(
                        lamp.value(WATTS),
                        efficacy.value(),
                        lamp.value(AREA),
                        lamp.value(ON_TARGET));
        if (efficacy.table() == UnitTable.PHOTONS_PER_JOULE) {
            if (efficacy.value() > 5) { // one photon of 700 nm carries 1/5.85 J per umol
                lamp.faultyValue(EFFICACY, "above 0 up to 5 umol/J", "");
                return Read.faulty();
            }
            return Read.of(perM2);
        }
        if (!type.hasLux()) {
            lamp.faultyValue(
                    lamp.has(EFFICACY) ? EFFICACY : WATTS,
                    "an efficacy in umol/J for type = " + Key.quoted(type.spelling()),
                    "");
            return Read.faulty();
        }
        return Read.of(Light.luxToPpfdUmolPerM2S(perM2, type.light()));
    }

    /** Holds what is counted on against what clock and dimming give. */
    private void checkHours(Lamp made) {
        double litS = made.burningS();
        if (lamp.get(HOURS).holds(hoursS -> Math.abs(hoursS - litS) > 60)) {
            boolean dims = !made.levels().isEmpty();
            lamp.fault(
                    HOURS,
                    Key.quoted(lamp.words(HOURS)),
                    "%s h, as on = %s and off = %s%s say"
                            .formatted(
                                    plain(litS / Time.HOUR_S),
                                    Key.quoted(Time.clock(made.onS())),
                                    Key.quoted(Time.clock(made.offS())),
                                    dims ? " with levels" : ""),
                    "Maybe the clock is set wrong, or the hours are.");
        }
    }

    /**
     * Says of levels that hold while the lamp is off alone, and of a lamp that never gives light.
     */
    private void checkLevels(Lamp made) {
        List<Lamp.Level> levels = made.levels();
        if (!levels.isEmpty() && made.litS() == 0) {
            lamp.note(LEVELS, "they leave this lamp dark all day");
            return;
        }
        for (int i = 0; i < levels.size(); i++) {
            double fromS = levels.get(i).fromS();
            double toS = levels.get((i + 1) % levels.size()).fromS();
            if (levels.size() > 1 && !made.isOnBetween(fromS, toS)) {
                lamp.note(
                        LEVELS,
                        "the level from %s on is not used: the lamp is off from %s to %s"
                                .formatted(
                                        Time.clock(fromS),
                                        Time.clock(made.offS()),
                                        Time.clock(made.onS())));
            }
        }
    }
}
