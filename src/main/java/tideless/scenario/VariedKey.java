package tideless.scenario;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.math3.util.FastMath;

/**
 * A numeric key of a scenario and the values it is to take, as a command line states them: a list,
 * {@code tray.basil.depth=6 cm, 8 cm}, or a range with how many values it has, both ends among
 * them, {@code reservoir.shelf.length=20 cm..60 cm/9}.
 *
 * @param key its path; {@code *} stands for every name
 * @param unit in which all values stand; empty for a number without one
 * @param values rising, without repetition
 */
public record VariedKey(String key, String unit, List<Value> values) {
    /** More designs than this are no comparison; assumed. */
    public static final int MOST_VALUES = 10_000;

    private static final Pattern RANGE =
            Pattern.compile("(.+?)\\.\\.(.+?)(?:/\\s*(\\d{1,18})\\s*(?:steps|values)?)?");
    private static final Pattern MEASURE = Pattern.compile("([-+]?[0-9.]+(?:[eE][-+]?\\d+)?)(.*)");

    /**
     * One value.
     *
     * @param text as a scenario would state it
     * @param number of it, in the unit of all
     */
    public record Value(String text, double number) {}

    /** What was stated cannot be varied; the message says why in one line. */
    public static final class Refused extends Exception {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }

    public VariedKey {
        values = List.copyOf(values);
    }

    /** Whether a path of a scenario is one of those that are varied. */
    public boolean fits(String path) {
        String[] own = key.split("\\.", -1);
        String[] other = path.split("\\.", -1);
        boolean fits = own.length == other.length;
        for (int i = 0; fits && i < own.length; i++) {
            fits = own[i].equals("*") || own[i].equals(other[i]);
        }
        return fits;
    }

    /** Reads {@code KEY=VALUES}. */
    public static VariedKey of(String text) throws Refused {
        int sign = text.indexOf('=');
        if (sign < 1 || sign == text.length() - 1) {
            throw new Refused(
                    "found "
                            + Key.quoted(text)
                            + ", allowed: KEY=VALUES, as \"tray.basil.depth=6 cm, 8 cm\" or"
                            + " \"reservoir.shelf.length=20 cm..60 cm/9\"");
        }
        String path = text.substring(0, sign).strip();
        Key<?> key = key(path);
        List<Value> values = new ArrayList<>();
        String unit = null;
        for (String item : text.substring(sign + 1).split(",", -1)) {
            Matcher range = RANGE.matcher(item.strip());
            List<Value> more =
                    range.matches()
                            ? range(path, key, range)
                            : List.of(value(path, key, item.strip()));
            for (Value value : more) {
                String its = unitOf(value.text());
                if (unit != null && !its.equals(unit)) {
                    throw new Refused(
                            path
                                    + ": found "
                                    + Key.quoted(values.get(0).text())
                                    + " and "
                                    + Key.quoted(value.text())
                                    + ", allowed: all values in one unit");
                }
                unit = its;
                if (values.stream().noneMatch(v -> v.number() == value.number())) {
                    values.add(value);
                }
            }
        }
        values.sort(Comparator.comparingDouble(Value::number));
        return new VariedKey(path, unit, values);
    }

    /**
     * What a scenario states for it, in the unit of its values; several where a star meets more.
     */
    public List<Double> present(Reading.Good good) {
        String[] names = key.split("\\.", -1);
        Units units = units();
        List<Double> present = new ArrayList<>();
        for (EffectiveValue value : good.values()) {
            if (fits(names, value.key().split("\\.", -1))) {
                String text = value.value().replace("\"", "");
                Read<Measure> read = units.read(text);
                if (read.isSound()) {
                    Measure measure = read.value();
                    double number =
                            measure.table() == null || unit.isEmpty()
                                    ? measure.number()
                                    : measure.table().number(measure.value(), unit);
                    double tidy = rounded(number).doubleValue();
                    if (!present.contains(tidy)) {
                        present.add(tidy);
                    }
                }
            }
        }
        return present;
    }

    private Units units() {
        try {
            return key(key).kind().units();
        } catch (Refused e) {
            throw new IllegalStateException(e); // it was found when this was made
        }
    }

    private static boolean fits(String[] pattern, String[] names) {
        if (pattern.length != names.length) {
            return false;
        }
        for (int i = 0; i < names.length; i++) {
            if (!pattern[i].equals("*") && !pattern[i].equals(names[i])) {
                return false;
            }
        }
        return true;
    }

    private static Key<?> key(String path) throws Refused {
        String at = "";
        for (String name : path.split("\\.", -1)) {
            if (!at.isEmpty() && ScenarioKeys.TABLE.isNamed(at)) {
                at = KeyTable.join(at, "*");
                continue;
            }
            String next = KeyTable.join(at, name);
            if (!ScenarioKeys.TABLE.isTable(next) && ScenarioKeys.TABLE.key(next) == null) {
                List<String> allowed = ScenarioKeys.TABLE.allowedIn(at);
                String near = Spelling.nearest(name, allowed);
                throw new Refused(
                        path
                                + ": found no such key, allowed: "
                                + (at.isEmpty() ? "" : "in " + at + ": ")
                                + String.join(", ", allowed)
                                + (near.isEmpty()
                                        ? ""
                                        : "\n    Did you mean " + Key.quoted(near) + "?"));
            }
            at = next;
        }
        Key<?> key = ScenarioKeys.TABLE.key(at);
        if (key == null) {
            throw new Refused(
                    path
                            + ": found a table, allowed: one of its keys: "
                            + String.join(", ", ScenarioKeys.TABLE.allowedIn(at)));
        }
        if (key.kind().units().equals(Units.NONE)) {
            throw new Refused(path + ": found a key that holds no number, allowed: a numeric key");
        }
        return key;
    }

    private static Value value(String path, Key<?> key, String text) throws Refused {
        Read<Measure> read = key.kind().units().read(text);
        if (!read.isSound()) {
            throw new Refused(
                    path
                            + ": found "
                            + Key.quoted(text)
                            + ", allowed: "
                            + key.allowed()
                            + "\n    Or a range of so many values, as \"20 mm..80 mm/13\".");
        }
        double number = read.value().number();
        if (key.kind() instanceof Kind.Count && number != Math.floor(number)) {
            throw new Refused(path + ": found " + text + ", allowed: whole numbers");
        }
        return new Value(text, number);
    }

    private static List<Value> range(String path, Key<?> key, Matcher range) throws Refused {
        Value from = value(path, key, range.group(1).strip());
        Value to = value(path, key, range.group(2).strip());
        String unit = unitOf(to.text());
        String said = Key.quoted(range.group());
        if (!unitOf(from.text()).equals(unit) || !(from.number() < to.number())) {
            throw new Refused(
                    path
                            + ": found "
                            + said
                            + ", allowed: a range that rises, both ends in one unit");
        }
        boolean ofWholes = from.number() == Math.floor(from.number()) && unit.isEmpty();
        if (range.group(3) == null && !ofWholes) {
            throw new Refused(
                    path
                            + ": found "
                            + said
                            + ", allowed: a range with the number of its values, as "
                            + Key.quoted(range.group() + "/9"));
        }
        double steps =
                range.group(3) == null
                        ? to.number() - from.number() + 1
                        : Double.parseDouble(range.group(3));
        if (!(steps >= 2 && steps <= MOST_VALUES)) {
            throw new Refused(
                    path + ": found " + said + ", allowed: 2 to " + MOST_VALUES + " values");
        }
        List<Value> values = new ArrayList<>();
        double apart = to.number() - from.number();
        double step = apart / (steps - 1);
        if (key.kind() instanceof Kind.Count && step != Math.floor(step)) {
            throw new Refused(
                    path
                            + ": found "
                            + said
                            + ", allowed: whole numbers, so a number of values that gives them, as "
                            + Key.quoted(
                                    range.group(1).strip()
                                            + ".."
                                            + range.group(2).strip()
                                            + "/"
                                            + wholes((int) apart, steps)));
        }
        int decimals = Math.max(0, 2 - (int) Math.floor(FastMath.log10(step)));
        for (int i = 0; i < steps; i++) {
            double at = i == steps - 1 ? to.number() : from.number() + i * step;
            BigDecimal near = BigDecimal.valueOf(at).setScale(decimals, RoundingMode.HALF_UP);
            String number = near.stripTrailingZeros().toPlainString();
            values.add(value(path, key, unit.isEmpty() ? number : number + " " + unit));
        }
        return values;
    }

    /** The number of values nearest to one that was asked for by which a range falls on wholes. */
    private static int wholes(int apart, double asked) {
        int best = apart + 1;
        for (int steps = 1; steps <= apart; steps++) {
            boolean isNearer = Math.abs(steps + 1 - asked) < Math.abs(best - asked);
            best = apart % steps == 0 && isNearer ? steps + 1 : best;
        }
        return best;
    }

    /** To seven digits: what no ruler reads is not worth a line of figures. */
    private static BigDecimal rounded(double number) {
        return BigDecimal.valueOf(number).round(new MathContext(7, RoundingMode.HALF_UP));
    }

    private static String unitOf(String text) {
        Matcher matcher = MEASURE.matcher(text);
        return matcher.matches() ? matcher.group(2).strip() : "";
    }
}
