package tideless.scenario;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Concentrate;
import tideless.solution.LabelTerm;
import tideless.solution.Reagent;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;
import tideless.solution.Standing;
import tideless.solution.WaterAnalysis;

/**
 * Values given on a command line, read by the same tables and refused in the same words as those of
 * a scenario file. Every fault is kept, so that all are told in one go; a faulty value reads as
 * empty.
 */
public final class OptionReader {
    private static final Key<Double> VOLUME =
            Key.quantity("volume", UnitTable.VOLUME)
                    .above("0 L", "100000 L")
                    .required("24 L")
                    .about("how much");
    private static final Key<Double> EC =
            Key.quantity("ec", UnitTable.CONDUCTIVITY)
                    .above("0 mS/cm", "20 mS/cm")
                    .required("1.4 mS/cm")
                    .about("EC at 25 degC");
    private static final Key<Double> PH =
            Key.number("ph").from("3", "10").required("6.0").about("pH");
    private static final Key<Double> SHARE =
            Key.share("share").from("0 %", "100 %").required("2.6 %").about("share by mass");
    private static final Key<Double> DENSITY =
            Key.quantity("density", UnitTable.DENSITY)
                    .from("0.6 kg/L", "2.5 kg/L")
                    .required("1.1 kg/L")
                    .about("density");
    private static final Key<Double> HARDNESS =
            Key.quantity("hardness", UnitTable.HARDNESS)
                    .from("0 dH", "200 dH")
                    .required("14 dH")
                    .about("calcium and magnesium");
    private static final Key<Double> ALKALINITY =
            Key.quantity("alkalinity", UnitTable.ALKALINITY)
                    .from("0 meq/L", "50 meq/L")
                    .required("2.5 meq/L")
                    .about("alkalinity");

    private static final Pattern BARE_MASS = Pattern.compile("[0-9.]+\\s*(?:mg/[Ll]|ppm)");
    private static final Pattern RATIO = Pattern.compile("1\\s*:\\s*(\\d{1,5}(?:\\.\\d+)?)");
    private static final Pattern DOSE =
            Pattern.compile(
                    "(\\d{1,4}(?:\\.\\d+)? ?[A-Za-z]+) ?(?:per|/|in) ?(?:(\\d{1,4}(?:\\.\\d+)?) ?)?([A-Za-z]+)");
    private static final Pattern ITEM = Pattern.compile("([A-Za-z][A-Za-z0-9-]*)\\s+(\\S.*)");
    private static final Pattern TRIAL =
            Pattern.compile(
                    "(.+?) in (.+?)(?: of (water|solution))? from (?:pH )?(.+?) to (?:pH )?(.+)");

    private final String command;
    private final List<Problem> problems = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();

    /**
     * @param command how the user calls it, as "tideless mix": stands where a file's name would
     */
    public OptionReader(String command) {
        this.command = command;
    }

    /** What was wrong, in the order read. */
    public List<Problem> problems() {
        return List.copyOf(problems);
    }

    /** What is worth saying of values that are sound, as of an analysis that does not balance. */
    public List<String> remarks() {
        return List.copyOf(remarks);
    }

    /** Tells of a fault that no single value has. */
    public void fault(String option, String found, String allowed, String hint) {
        problems.add(new Problem(command, 0, 0, option, found, allowed, hint));
    }

    private OptionalDouble read(String option, String text, Key<Double> key) {
        Read<Double> read = key.read(text);
        if (read instanceof Read.Faulty<Double> wrong) {
            fault(option, Key.quoted(text), key.allowed(), wrong.hint());
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(read.value());
    }

    /** Litres. */
    public OptionalDouble litres(String option, String text) {
        OptionalDouble m3 = read(option, text, VOLUME);
        return m3.isEmpty() ? m3 : OptionalDouble.of(m3.getAsDouble() * 1000);
    }

    /** mS/cm at 25 degC. */
    public OptionalDouble msPerCm(String option, String text) {
        return read(option, text, EC);
    }

    /** pH. */
    public OptionalDouble ph(String option, String text) {
        return read(option, text, PH);
    }

    /** The 300 of "1:300". */
    public OptionalDouble ratio(String option, String text) {
        String stated = text.strip();
        Matcher shape = RATIO.matcher(stated);
        Matcher dose = DOSE.matcher(stated);
        double ratio = shape.matches() ? Double.parseDouble(shape.group(1)) : 0;
        if (dose.matches()) {
            String of =
                    dose.group(2) == null
                            ? "1 " + dose.group(3)
                            : dose.group(2) + " " + dose.group(3);
            Read<Double> part = VOLUME.read(LabelWords.spoons(dose.group(1)));
            Read<Double> water = VOLUME.read(of);
            ratio = Read.allSound(part, water) ? water.value() / part.value() : 0;
        }
        if (!(ratio >= 10 && ratio <= 10_000)) {
            fault(
                    option,
                    Key.quoted(text),
                    "from 1:10 up to 1:10000, as \"1:300\", \"3 mL per L\" or \"2 tsp per gal\"",
                    "");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(ratio);
    }

    private <T> Optional<T> named(
            String option, String text, Optional<T> found, List<String> names) {
        if (found.isEmpty()) {
            fault(option, Key.quoted(text), String.join(", ", names), nearest(text, names));
        }
        return found;
    }

    private static String nearest(String text, List<String> names) {
        String meant = Spelling.nearest(text, names);
        return meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?";
    }

    /** A source water by name, or tap water by what a meter reads in it, as "0.3 mS/cm". */
    public Optional<SourceWater> water(String option, String text) {
        if (!text.isEmpty() && Character.isDigit(text.charAt(0))) {
            OptionalDouble ec = read(option, text, LiquidKeys.WATER_EC);
            return ec.isPresent()
                    ? Optional.of(SourceWater.reading(ec.getAsDouble()))
                    : Optional.empty();
        }
        return named(option, text, SourceWater.named(text), SourceWater.names());
    }

    /** A published recipe by name. */
    public Optional<Recipe> recipe(String option, String text) {
        return named(option, text, Recipe.named(text), Recipe.names());
    }

    /** An acid, or a base, by name; one of the other kind is refused. */
    public Optional<Reagent> reagent(String option, String text, boolean acid) {
        return named(
                option,
                text,
                Reagent.named(text).filter(reagent -> reagent.isAcid() == acid),
                Reagent.names(acid));
    }

    /** Nitrogen, phosphate as P2O5 and potassium as K2O in per cent, as fertilisers are graded. */
    private static final Pattern GRADE =
            Pattern.compile("(\\d{1,2}(?:\\.\\d+)?)-(\\d{1,2}(?:\\.\\d+)?)-(\\d{1,2}(?:\\.\\d+)?)");

    /** Of a bottle that says "liquid" and no density, kg/L: they run from 1.1 to 1.25; assumed. */
    private static final double LIQUID_KG_PER_L = 1.15;

    /**
     * A bottle by its label, as "NO3-N 2.58 %, CaO 4.06 %, K2O 1.42 %, density 1.1 kg/L", or as
     * "5-0-1, Calcium 5 %, liquid". Nitrogen of a grade, or of which it is not said whether nitrate
     * or ammonium, counts as nitrate, which is told among the {@link #remarks()}.
     */
    public Optional<Concentrate> label(String option, String name, String text) {
        Map<LabelTerm, Double> percent = new EnumMap<>(LabelTerm.class);
        OptionalDouble density = OptionalDouble.empty();
        int faults = problems.size();
        double sum = 0;
        for (String item : terms(name, text)) {
            Matcher shape = ITEM.matcher(item);
            if (item.equals("liquid")) {
                density = OptionalDouble.of(LIQUID_KG_PER_L);
                remarks.add(
                        "%s: a litre was taken to weigh 1.15 kg (liquids run from 1.1 to 1.25); weigh one, or read the label."
                                .formatted(name));
                continue;
            }
            if (!shape.matches()) {
                fault(
                        option,
                        Key.quoted(item),
                        "terms of a label with their share, as \"CaO 4.06 %\", a grade as 5-0-1,"
                                + " liquid, with commas between",
                        "");
                continue;
            }
            String what = shape.group(1);
            String at = option + " " + what;
            if (what.equals("density")) {
                density = read(at, shape.group(2), DENSITY);
                continue;
            }
            Optional<LabelTerm> term = term(what);
            if (term.isEmpty()) {
                List<String> printed = new ArrayList<>();
                for (LabelTerm each : LabelTerm.values()) {
                    printed.add(each.printed());
                }
                fault(
                        option,
                        Key.quoted(what),
                        String.join(", ", printed)
                                + ", N, density, or their words, as Soluble Potash",
                        nearest(what, printed));
                continue;
            }
            double share = read(at, shape.group(2), SHARE).orElse(0); // a fault ends it below
            sum += share;
            percent.merge(term.get(), share * 100, Double::sum);
        }
        if (problems.size() > faults) {
            return Optional.empty();
        }
        if (!(sum > 0 && sum <= 1)) {
            fault(option, Measure.plain(100 * sum) + " % in all", "above 0 % up to 100 %", "");
            return Optional.empty();
        }
        return Optional.of(new Concentrate(name, percent, density.orElse(Concentrate.POWDER)));
    }

    /** The terms of a label one by one, a grade as its three. */
    private List<String> terms(String name, String text) {
        List<String> terms = new ArrayList<>();
        boolean guessed = false;
        boolean traces = false;
        List<String> items = LabelWords.inTerms(text);
        boolean parted = items.stream().anyMatch(item -> item.matches("N(O3|H4)?-N.*"));
        for (String item : items) {
            if (LabelWords.isTrace(item)) {
                traces = true;
                continue;
            }
            if (parted && item.startsWith("N ")) {
                continue; // the total, of which the parts are told too
            }
            Matcher grade = GRADE.matcher(item);
            if (grade.matches()) {
                guessed = true;
                String[] graded = {"N-NO3", "P2O5", "K2O"};
                for (int i = 0; i < graded.length; i++) {
                    terms.add(graded[i] + " " + grade.group(i + 1) + " %");
                }
            } else if (item.startsWith("N ")) {
                guessed = true;
                terms.add("N-NO3" + item.substring(1));
            } else {
                terms.add(item);
            }
        }
        if (traces) {
            remarks.add(
                    "%s: its trace elements are left out here: neither EC nor pH shows them."
                            .formatted(name));
        }
        if (guessed) {
            remarks.add(
                    "%s: its nitrogen was taken for nitrate; where the label tells ammonium (NH4-N), the pH will fall lower."
                            .formatted(name));
        }
        return terms;
    }

    private static Optional<LabelTerm> term(String what) {
        String turned = what.matches("N(O3|H4)-N") ? "N-" + what.substring(0, 3) : what;
        for (LabelTerm term : LabelTerm.values()) {
            if (term.printed().equals(turned)) {
                return Optional.of(term);
            }
        }
        return Optional.empty();
    }

    /**
     * A water by its analysis, as "calcium 55 mg/L, sodium 1.2 mmol/L, alkalinity 5 dH, pH 7.6".
     * Ions as in a scenario's [water.analysis], in mg/L, mmol/L or meq/L; besides hardness (a fifth
     * of it counts as magnesium), alkalinity and pH. The charges are balanced and what was done for
     * it is among the {@link #remarks()}.
     */
    public Optional<SourceWater> analysis(String option, String text) {
        WaterAnalysis sheet = new WaterAnalysis();
        int faults = problems.size();
        List<String> allowed = new ArrayList<>();
        for (Ion ion : Ion.values()) {
            allowed.add(ion.spelling());
        }
        allowed.addAll(List.of("hardness", "alkalinity", "pH"));
        for (String item : text.split(",", -1)) {
            Matcher shape = ITEM.matcher(item.strip());
            String what = shape.matches() ? shape.group(1) : item.strip();
            String value = shape.matches() ? shape.group(2) : "";
            String at = option + " " + what;
            switch (what) {
                case "hardness" -> {
                    read(at, value, HARDNESS)
                            .ifPresent(
                                    both ->
                                            sheet.hardness(
                                                    both, WaterAnalysis.Hardness.MMOL_PER_L, 0.2));
                }
                case "alkalinity" ->
                        read(at, value, ALKALINITY)
                                .ifPresent(
                                        meq ->
                                                sheet.alkalinity(
                                                        meq, WaterAnalysis.Alkalinity.MEQ_PER_L));
                case "pH" -> {
                    OptionalDouble ph = read(at, value, PH);
                    if (ph.orElse(3) > 3) {
                        sheet.ph(ph.getAsDouble());
                    }
                }
                default -> {
                    Optional<Ion> ion = ion(what);
                    if (ion.isEmpty()) {
                        fault(
                                option,
                                Key.quoted(what),
                                String.join(", ", allowed),
                                nearest(what, allowed));
                        continue;
                    }
                    state(sheet, at, ion.get(), value);
                }
            }
        }
        if (problems.size() > faults) {
            return Optional.empty();
        }
        WaterAnalysis.Checked checked = sheet.check();
        remarks.addAll(checked.remarks());
        Composition composition = checked.composition();
        return Optional.of(
                new SourceWater(
                        "own",
                        "your water",
                        composition,
                        Acidity.phClosed(composition, 25),
                        "the user's analysis",
                        Standing.READ));
    }

    private static Optional<Ion> ion(String spelling) {
        for (Ion ion : Ion.values()) {
            if (ion.isSpelt(spelling)) {
                return Optional.of(ion);
            }
        }
        return Optional.empty();
    }

    private void state(WaterAnalysis sheet, String at, Ion ion, String text) {
        Key<Double> key =
                Key.quantity(ion.spelling(), ion.table(), ion.equivalents())
                        .from("0 mmol/L", "100 mmol/L")
                        .required("1 mmol/L")
                        .about(ion.spelling());
        String stated = text.strip();
        if (BARE_MASS.matcher(stated).matches() && !ion.table().knows("mg/L")) {
            stated += " " + ion.itself();
            remarks.add(
                    "%s %s was read as %s itself (%s); a laboratory that counts %s writes \"mg/L %s\"."
                            .formatted(
                                    ion.spelling(),
                                    text.strip(),
                                    ion.spelling(),
                                    ion.itself(),
                                    ion.otherwise(),
                                    ion.otherwise()));
        }
        OptionalDouble value = read(at, stated, key);
        if (value.isEmpty()) {
            return;
        }
        if (ion.component() == Component.C) {
            sheet.alkalinity(value.getAsDouble(), WaterAnalysis.Alkalinity.MEQ_PER_L);
        } else {
            sheet.with(ion.component(), value.getAsDouble(), WaterAnalysis.Unit.MMOL_PER_L);
        }
    }

    /**
     * The grower's own acid by one trial, as "2 mL in 1 L from 7.4 to 6.1" or "... of water from".
     *
     * @param solution what it was tried in unless it says water
     */
    public Optional<Reagent> trial(
            String option, String text, Composition solution, Composition water) {
        Matcher shape = TRIAL.matcher(text.strip());
        if (!shape.matches()) {
            fault(
                    option,
                    Key.quoted(text),
                    "what was poured into how much, and the pH before and after, as \"2 mL in 1 L"
                            + " from 7.4 to 6.1\" or \"2 mL in 1 L of water from 7.8 to 5.9\"",
                    "");
            return Optional.empty();
        }
        OptionalDouble poured = litres(option, shape.group(1));
        OptionalDouble sample = litres(option, shape.group(2));
        OptionalDouble before = ph(option, shape.group(4));
        OptionalDouble after = ph(option, shape.group(5));
        if (poured.isEmpty() || sample.isEmpty() || before.isEmpty() || after.isEmpty()) {
            return Optional.empty();
        }
        boolean inWater = "water".equals(shape.group(3));
        Optional<Reagent> reagent =
                Acidity.calibrated(
                        inWater ? water : solution,
                        25,
                        sample.getAsDouble(),
                        poured.getAsDouble() * 1000,
                        before.getAsDouble(),
                        after.getAsDouble());
        if (reagent.isEmpty()) {
            fault(
                    option,
                    Key.quoted(text),
                    "a pH that falls, in a "
                            + (inWater ? "water" : "solution")
                            + " that can read the first, by an amount that some acid can do it with",
                    String.format(
                            Locale.ROOT,
                            "As mixed it reads pH %.1f.",
                            Acidity.phClosed(inWater ? water : solution, 25)));
            return Optional.empty();
        }
        return reagent;
    }
}
