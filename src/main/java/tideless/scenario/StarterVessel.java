package tideless.scenario;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.util.FastMath;

/**
 * The inside of a tray as it was told.
 *
 * @param shape of a scenario: box, cylinder or bucket
 * @param lengthCm or diameter at the rim
 * @param widthCm or diameter at the floor; of a cylinder that at the rim
 * @param depthCm from the floor to the rim
 * @param isUs whether it was told in inches, feet or gallons
 */
record StarterVessel(String shape, double lengthCm, double widthCm, double depthCm, boolean isUs) {
    /** Shallower, roots find no room; deeper, nobody reaches the floor. */
    private static final double LEAST_DEPTH_CM = 3;

    private static final double MOST_DEPTH_CM = 60;

    /**
     * Of a usual bucket the floor is so much narrower than the rim, and it is so much deeper than
     * the rim is wide; common practice, no source.
     */
    private static final double FLOOR_PER_RIM = 0.9;

    private static final double DEPTH_PER_RIM = 1.2;

    /** A length, with its unit or without one where a later side has it. */
    private static final Pattern SIDE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(cm|mm|m|in|ft|)");

    private static final Pattern BUCKET =
            Pattern.compile("(?:a |round )?(.*\\d.*?)[ -]*(straight )?(?:bucket|pail)s?");

    /** Exact, by the definition of the inch. */
    private static final Map<String, Double> CENTIMETRES =
            Map.of("cm", 1.0, "mm", 0.1, "m", 100.0, "in", 2.54, "ft", 30.48);

    /** As it is kept: "12 x 14 in" for "12\" by 14 inches" and the like. */
    static String plain(String text) {
        return text.replaceAll("\\s*(inches|inch|\"|\u2033)", " in")
                .replaceAll("\\s*(feet|foot)", " ft")
                .replaceAll("\\s*(centimetres|centimeters)", " cm")
                .replaceAll("\\s*(metres|meters|metre|meter)", " m")
                .replaceAll("(?<=[\\d\\s])(by|\\*|\u00d7)(?=[\\d\\s])", "x")
                .replaceAll("(?<=\\d),(?=\\d)", ".");
    }

    /** What a text says; null where it is no size of a vessel. */
    static StarterVessel of(String text) {
        String plain = plain(text);
        Matcher bucket = BUCKET.matcher(plain);
        StarterVessel vessel =
                bucket.matches()
                        ? bucket(bucket.group(1), bucket.group(2) != null)
                        : bySides(plain);
        return vessel != null && vessel.depthCm >= LEAST_DEPTH_CM && vessel.depthCm <= MOST_DEPTH_CM
                ? vessel
                : null;
    }

    /** A bucket that holds what its maker says, to the rim. */
    private static StarterVessel bucket(String volume, boolean straight) {
        String spelt = volume.strip().replace('-', ' ');
        OptionalDouble litres = new OptionReader("").litres("", spelt);
        if (litres.isEmpty()) {
            return null;
        }
        double floor = straight ? 1 : FLOOR_PER_RIM;
        double perCube = FastMath.PI / 12 * DEPTH_PER_RIM * (1 + floor + floor * floor);
        double rimCm = FastMath.cbrt(litres.getAsDouble() * 1000 / perCube);
        boolean isUs = isInGallons(spelt);
        return new StarterVessel(
                straight ? "cylinder" : "bucket",
                rimCm,
                rimCm * floor,
                rimCm * DEPTH_PER_RIM,
                isUs);
    }

    /** Whether a volume is told in gallons. */
    static boolean isInGallons(String volume) {
        return volume.matches("(?i).*(gal|qt|quart).*");
    }

    /** Whether it is a bucket that was told by what it holds. */
    static boolean isNamedByVolume(String size) {
        return BUCKET.matcher(plain(size)).matches();
    }

    /** See {@link StarterQuestion#deeper}. */
    static Optional<String> deeper(String size, double times) {
        String plain = plain(size);
        Matcher bucket = BUCKET.matcher(plain);
        StarterVessel now = of(plain);
        String more;
        if (bucket.matches()) {
            String straight = bucket.group(2) == null ? " bucket" : " straight bucket";
            more =
                    StarterQuestion.larger(bucket.group(1).strip().replace('-', ' '), times)
                            .map(volume -> volume + straight)
                            .orElse("");
        } else {
            double unitCm = now.isUs ? CENTIMETRES.get("in") : 1;
            double step = now.isUs ? 0.5 : 1;
            double deep = Math.ceil(now.depthCm * times / unitCm / step - 1e-9) * step;
            more =
                    Measure.plain(now.lengthCm / unitCm)
                            + " x "
                            + (now.isRound() ? "" : Measure.plain(now.widthCm / unitCm) + " x ")
                            + Measure.plain(deep)
                            + (now.isUs ? " in" : " cm");
        }
        return of(more) == null ? Optional.empty() : Optional.of(more);
    }

    private static StarterVessel bySides(String plain) {
        String[] sides = plain.split("x");
        if (sides.length < 2 || sides.length > 3) {
            return null;
        }
        double[] cm = new double[sides.length];
        String unit = "";
        for (int i = sides.length - 1; i >= 0; i--) {
            Matcher side = SIDE.matcher(sides[i].strip());
            if (!side.matches()) {
                return null;
            }
            unit = side.group(2).isEmpty() ? unit : side.group(2); // that of the side behind it
            if (unit.isEmpty()) {
                return null;
            }
            cm[i] = Double.parseDouble(side.group(1)) * CENTIMETRES.get(unit);
        }
        if (!(cm[0] >= 5 && cm[0] <= 1000 && cm[1] >= 3 && cm[1] <= 1000)) {
            return null;
        }
        boolean round = cm.length == 2;
        return new StarterVessel(
                round ? "cylinder" : "box",
                cm[0],
                round ? cm[0] : cm[1],
                cm[cm.length - 1],
                plain.matches(".*(in|ft)\\s*"));
    }

    /** Width of a round crown over so much ground, m. */
    static double acrossM(double groundM2) {
        return FastMath.sqrt(groundM2 * 4 / FastMath.PI);
    }

    boolean isRound() {
        return !shape.equals("box");
    }

    /** At the rim, m2. */
    double rimM2() {
        return (isRound() ? FastMath.PI / 4 * lengthCm * lengthCm : lengthCm * widthCm) * 1e-4;
    }

    /**
     * Ground on which the plants' leaves may spread where there is room around: alone in a round
     * one, or in one row in a tray that is narrower than they are wide; elsewhere the deck.
     *
     * @param aloneM2 what one plant covers that nothing hinders
     */
    double groundM2(int plants, double aloneM2, boolean roomAround) {
        double wideCm = 100 * acrossM(aloneM2);
        double openM2 = rimM2();
        if (isRound() && plants == 1) {
            openM2 = aloneM2;
        } else if (!isRound() && roomAround && FastMath.min(lengthCm, widthCm) < wideCm) {
            double rowCm = FastMath.max(lengthCm, widthCm);
            openM2 = FastMath.min(plants * aloneM2, rowCm * wideCm * 1e-4);
        }
        return FastMath.max(rimM2(), openM2);
    }
}
