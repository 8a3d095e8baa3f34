package tideless.scenario;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What lights the plants, as it was told.
 *
 * @param lamp how a lamp was told
 * @param number watts over one tray, umol/m2/s or lux; 0 without a lamp
 * @param hours of the lamp a day; not finite where they were not told
 * @param sky daylight beside it, or in its place
 * @param under trays that one such lamp stands over; 0 where nobody said, {@link #ALL} for all
 */
record StarterLight(Told lamp, double number, double hours, Sky sky, int under) {
    /** One lamp over all trays, however many. */
    static final int ALL = Integer.MAX_VALUE;

    /** How a lamp is known. */
    enum Told {
        /** Nothing is: what the crop needs is put in, and said to be. */
        NEEDED("unknown"),
        NONE(""),
        WATTS("W"),
        PPFD("umol"),
        LUX("lux");

        private final String spelt;

        Told(String spelt) {
            this.spelt = spelt;
        }
    }

    /** What daylight there is, and the air with it; all from memory, low confidence. */
    enum Sky {
        NONE(0, 22, 4, 60, 70, 0),
        /**
         * A quarter of the open sky's light behind a bright window without shade: half of the sky
         * is seen, glass lets three quarters through, and the wall takes a third.
         */
        WINDOW(0.25, 22, 4, 60, 70, 0),
        /**
         * Three quarters of the open sky's, half to all beside a house; air of a mild summer, with
         * the light wind that comes down to a bed.
         */
        OUTDOORS(0.75, 22, 8, 60, 80, 1),
        /** Film keeps a third of the open sky's out, and the wind; the day is warmer. */
        POLYTUNNEL(0.65, 25, 9, 60, 85, 0.4);

        private final double shareFrac;
        private final double dayC;
        private final double nightFallC;
        private final int dayPercent;
        private final int nightPercent;
        private final double airMPerS;

        Sky(
                double shareFrac,
                double dayC,
                double nightFallC,
                int dayPercent,
                int nightPercent,
                double airMPerS) {
            this.shareFrac = shareFrac;
            this.dayC = dayC;
            this.nightFallC = nightFallC;
            this.dayPercent = dayPercent;
            this.nightPercent = nightPercent;
            this.airMPerS = airMPerS;
        }

        /** Share of the open sky's light. */
        double shareFrac() {
            return shareFrac;
        }

        /** By day at midsummer, and so much cooler at night. */
        double dayC() {
            return dayC;
        }

        double nightFallC() {
            return nightFallC;
        }

        int dayPercent() {
            return dayPercent;
        }

        int nightPercent() {
            return nightPercent;
        }

        /** 0 where a scenario's own default holds. */
        double airMPerS() {
            return airMPerS;
        }

        /** Whether plants stand in the weather, be it under film. */
        boolean isOutside() {
            return this == OUTDOORS || this == POLYTUNNEL;
        }

        String spelt() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private static final double MOST_W = 2000;
    private static final double MOST_PPFD = 2000;
    private static final double MOST_LUX = 100_000;
    private static final double LONGEST_H = 22;

    /** Daylight that counts, h: as long as a scenario takes when nothing is said. */
    private static final double DAYLIGHT_H = 12;

    private static final Pattern WATTAGE =
            Pattern.compile(
                    "(?:(\\d{1,2})\\s*(?:x|\u00d7)\\s*)?(\\d+(?:\\.\\d+)?)\\s*(?:w|watts?)\\b");
    private static final Pattern PHOTONS =
            Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(?:umol|\u00b5mol|ppfd)");
    private static final Pattern LUX = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(k?)lu?x\\b");
    private static final Pattern HOURS =
            Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(?:h|hrs?|hours?)\\b");
    private static final Pattern OVER_EACH =
            Pattern.compile("\\b(each|every|per|apiece|(over|for|above) (one|1|a) tray|a tray)\\b");
    private static final Pattern OVER_ALL =
            Pattern.compile(
                    "\\b(all|together|altogether|in total|the lot|whole (bench|shelf|rack))\\b");
    private static final Pattern OVER_SOME =
            Pattern.compile(
                    "\\b(?:over|for|above|lights?|per)(?: the| my| our)? (both|\\d{1,2}|two|three|four|five"
                            + "|six|seven|eight|nine|ten|eleven|twelve)\\b(?! ?(?:h|w)\\b| hours?| hrs?)");
    private static final Pattern NOT_KNOWN =
            Pattern.compile(
                    "unknown|enough|needed|as needed|as the crop needs|don'?t know|not known|\\?");
    private static final Pattern WINDOWS = Pattern.compile(".*\\b(windows?|windowsill|sill)\\b.*");
    private static final Pattern OPEN_SKY =
            Pattern.compile(
                    ".*\\b(sun|balcony|outdoors?|outside|terrace|patio|yard|garden|daylight)\\b.*");
    private static final Pattern UNDER_COVER =
            Pattern.compile(
                    ".*\\b(greenhouse|glasshouse|hothouse|poly-? ?tunnel|tunnel|cold ?frame"
                            + "|conservatory)\\b.*");

    /** Null where it says nothing that could be used. */
    static StarterLight of(String told) {
        String text = told.toLowerCase(Locale.ROOT);
        Matcher hours = HOURS.matcher(text);
        double h = hours.find() ? Double.parseDouble(hours.group(1)) : Double.NaN;
        if (h < 1 || h > LONGEST_H) {
            return null;
        }
        Sky sky =
                WINDOWS.matcher(text).matches()
                        ? Sky.WINDOW
                        : UNDER_COVER.matcher(text).matches()
                                ? Sky.POLYTUNNEL
                                : OPEN_SKY.matcher(text).matches() ? Sky.OUTDOORS : Sky.NONE;
        int under = under(text);
        OptionalDouble watts = watts(text);
        Matcher photons = PHOTONS.matcher(text);
        Matcher lux = LUX.matcher(text);
        if (watts.isPresent()) {
            return within(new StarterLight(Told.WATTS, watts.getAsDouble(), h, sky, under), MOST_W);
        }
        if (photons.find()) {
            double number = Double.parseDouble(photons.group(1));
            return within(new StarterLight(Told.PPFD, number, h, sky, 0), MOST_PPFD);
        }
        if (lux.find()) {
            double number = Double.parseDouble(lux.group(1)) * (lux.group(2).isEmpty() ? 1 : 1000);
            return within(new StarterLight(Told.LUX, number, h, sky, 0), MOST_LUX);
        }
        if (sky != Sky.NONE) {
            return new StarterLight(Told.NONE, 0, Double.NaN, sky, 0);
        }
        return NOT_KNOWN.matcher(text).matches()
                ? new StarterLight(Told.NEEDED, 0, Double.NaN, sky, 0)
                : null;
    }

    private static OptionalDouble watts(String text) {
        Matcher watts = WATTAGE.matcher(text);
        double sum = 0;
        while (watts.find()) {
            int lamps = watts.group(1) == null ? 1 : Integer.parseInt(watts.group(1));
            sum += lamps * Double.parseDouble(watts.group(2));
        }
        return sum > 0 ? OptionalDouble.of(sum) : OptionalDouble.empty();
    }

    /** Whether a word tells a place under the sky. */
    static boolean isOfSummer(String word) {
        String text = word.toLowerCase(Locale.ROOT);
        return OPEN_SKY.matcher(text).matches() || UNDER_COVER.matcher(text).matches();
    }

    private static int under(String text) {
        Matcher some = OVER_SOME.matcher(text);
        if (some.find()) {
            String trays = some.group(1);
            return trays.equals("both") ? 2 : StarterQuestion.number(trays);
        }
        return OVER_ALL.matcher(text).find() ? ALL : OVER_EACH.matcher(text).find() ? 1 : 0;
    }

    private static StarterLight within(StarterLight light, double most) {
        return light.number > 0 && light.number <= most ? light : null;
    }

    /** Whether it has to be told over how many trays it stands. */
    boolean leavesOpen(int trays) {
        return lamp == Told.WATTS && under == 0 && trays > 1;
    }

    /** Trays that one lamp lights. */
    int lit(int trays) {
        return Math.max(1, Math.min(under, trays));
    }

    boolean isNeeded() {
        return lamp == Told.NEEDED;
    }

    boolean hasLamp() {
        return lamp != Told.NONE;
    }

    /** As it is kept, and read again. */
    String spelt() {
        String daylight = sky == Sky.NONE ? "" : sky.spelt();
        if (number == 0) {
            return isNeeded() ? lamp.spelt : daylight;
        }
        return Measure.plain(number)
                + " "
                + lamp.spelt
                + (Double.isNaN(hours) ? "" : " " + Measure.plain(hours) + " h")
                + (under == 0
                        ? ""
                        : under == 1 ? " each" : " over " + (under == ALL ? "all" : under))
                + (daylight.isEmpty() ? "" : " and " + daylight);
    }

    /**
     * Lit hours a day.
     *
     * @param usualH of a lamp, where they were not told
     */
    double litH(double usualH) {
        double lampH = Double.isNaN(hours) ? usualH : hours;
        return hasLamp() ? lampH : DAYLIGHT_H;
    }
}
