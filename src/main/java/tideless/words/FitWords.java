package tideless.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.Fit;

/** Sentences about what a log teaches. */
public final class FitWords {
    private static final double L_PER_M3 = 1000;
    private static final double MM_PER_M = 1000;

    /** A reading that would leave more than this of the doubt is not worth the walk; assumed. */
    private static final double NEXT_WORTH = 0.97;

    /** Standard deviations of the doubt before beyond which something else is wrong; assumed. */
    private static final double FAR = 2;

    private FitWords() {}

    /** What was learned, a sentence each: first what is otherwise than stated. */
    public static List<String> learned(Fit fit) {
        List<String> off = new ArrayList<>();
        List<String> asStated = new ArrayList<>();
        List<String> open = new ArrayList<>();
        for (Fit.Learned one : fit.learned()) {
            if (one.what().equals(Correction.LEAK)) {
                continue;
            }
            if (one.isOff()) {
                off.add(
                        off(one)
                                + " ("
                                + range(one)
                                + ")"
                                + orLeak(fit, one)
                                + orOther(fit, one)
                                + far(one));
            } else if (one.left() < 0.8) {
                asStated.add(name(one) + " (" + range(one) + ")");
            } else {
                open.add(name(one));
            }
        }
        List<String> sentences = new ArrayList<>(off);
        allAlike(fit).ifPresent(sentences::add);
        if (off.isEmpty()) {
            sentences.add("Nothing is surely otherwise than stated.");
        }
        if (!asStated.isEmpty()) {
            sentences.add(
                    "As stated, as far as the log tells: " + String.join(", ", asStated) + ".");
        }
        if (!open.isEmpty()) {
            sentences.add("The log says little of " + Names.list(open) + ".");
        }
        return sentences;
    }

    /**
     * Crops that have nothing in common but their air and light seldom all drink more by chance.
     */
    private static Optional<String> allAlike(Fit fit) {
        List<Fit.Learned> thirst =
                fit.learned().stream().filter(o -> o.what().equals(Correction.THIRST)).toList();
        boolean more = thirst.stream().allMatch(one -> one.isOff() && one.deviate() > 0);
        boolean less = thirst.stream().allMatch(one -> one.isOff() && one.deviate() < 0);
        return thirst.size() < 2 || !more && !less
                ? Optional.empty()
                : Optional.of(
                        more
                                ? "All of them drink more: was it warmer, drier or brighter than the"
                                        + " scenario says? If only for some days, the dates below are"
                                        + " too early."
                                : "All of them drink less: was it colder, damper or darker than the"
                                        + " scenario says? If only for some days, the dates below are"
                                        + " too late.");
    }

    /** Of what a leak would explain as well. */
    private static String orLeak(Fit fit, Fit.Learned one) {
        return fit.leaks().stream()
                .filter(leak -> !leak.isSaid() && leak.instead().contains(one))
                .findFirst()
                .map(
                        leak ->
                                ", or does not, and reservoir %s leaks some %s: the log does not tell which"
                                        .formatted(
                                                Names.clean(leak.reservoir()),
                                                litresADay(leak.litresPerDay())))
                .orElse("");
    }

    /** Of what something else explains as well, that the log does not tell from it. */
    private static String orOther(Fit fit, Fit.Learned one) {
        return fit.tied().stream()
                .filter(tied -> tied.one().equals(one) || tied.other().equals(one))
                .map(tied -> tied.one().equals(one) ? tied.other() : tied.one())
                .filter(other -> !other.isOff())
                .findFirst()
                .map(other -> ", or " + instead(one, other) + ": the log does not tell which")
                .orElse("");
    }

    private static String instead(Fit.Learned one, Fit.Learned other) {
        if (other.what().equals(Correction.METER)) {
            return one.what().equals(Correction.FEED)
                    ? "your EC meter shows too " + (one.value() > 1 ? "much" : "little")
                    : "your EC meter is off";
        }
        return name(other) + " is otherwise";
    }

    /** Plants seldom differ so much: more often the scenario is wrong about them. */
    private static String far(Fit.Learned one) {
        boolean isOfPlants =
                List.of(Correction.THIRST, Correction.GROWTH, Correction.UPTAKE)
                        .contains(one.what());
        return isOfPlants && Math.abs(one.deviate()) > FAR
                ? "; plants seldom differ so much: are their number, their size at the start and"
                        + " their light as stated?"
                : ".";
    }

    private static String off(Fit.Learned one) {
        String times = Numbers.two(one.value()) + " times";
        String of = Names.clean(one.of());
        return switch (one.what()) {
            case Correction.THIRST ->
                    "Your " + of + " drinks " + times + " what the library's does";
            case Correction.GROWTH ->
                    "Your " + of + " grows " + times + " as fast as the library's";
            case Correction.UPTAKE ->
                    "Your " + of + " takes up " + times + " the nutrients of the library's";
            case Correction.SIZE ->
                    "Your young " + of + " were " + times + " as big as stated when set out";
            case Correction.FEED ->
                    "Your feed is mixed "
                            + more(one.value(), "stronger", "weaker")
                            + " than stated";
            case Correction.GAPS ->
                    "The gaps of the decks let through " + times + " what is stated";
            case Correction.METER ->
                    "Your EC meter shows " + more(one.value(), "too much", "too little");
            case Correction.VALVE ->
                    "The valve of tray "
                            + of
                            + " shuts "
                            + Numbers.one(Math.abs(one.value()) * MM_PER_M)
                            + " mm "
                            + (one.value() > 0 ? "higher" : "lower")
                            + " than stated";
            case Correction.LITRES ->
                    "A centimetre of reservoir " + of + " holds " + times + " what is stated";
            default -> throw new IllegalArgumentException("no words for " + one.what());
        };
    }

    private static String more(double times, String above, String below) {
        return Numbers.percent(Math.abs(times - 1)) + " " + (times > 1 ? above : below);
    }

    private static String range(Fit.Learned one) {
        if (one.what().equals(Correction.VALVE)) {
            return Numbers.one(one.low() * MM_PER_M)
                    + " to "
                    + Numbers.one(one.high() * MM_PER_M)
                    + " mm";
        }
        return Numbers.two(one.low()) + " to " + Numbers.two(one.high());
    }

    /** As "thirst of basil". */
    static String name(Fit.Learned one) {
        String of = Names.clean(one.of());
        return switch (one.what()) {
            case Correction.THIRST -> "thirst of " + of;
            case Correction.GROWTH -> "growth of " + of;
            case Correction.UPTAKE -> "uptake of " + of;
            case Correction.SIZE -> "size at the start of " + of;
            case Correction.FEED -> "strength of the feed";
            case Correction.GAPS -> "gaps of the decks";
            case Correction.METER -> "the EC meter";
            case Correction.VALVE -> "valve of tray " + of;
            case Correction.LITRES -> "litres to a centimetre of reservoir " + of;
            case Correction.LEAK -> "a leak of reservoir " + of;
            default -> throw new IllegalArgumentException("no words for " + one.what());
        };
    }

    /** Whether anything leaks, a sentence for each reservoir. */
    public static List<String> leaks(Fit fit) {
        return fit.leaks().stream().map(leak -> leak(fit.scenario(), leak)).toList();
    }

    private static String leak(Scenario scenario, Fit.Leak leak) {
        String name = "reservoir " + Names.clean(leak.reservoir());
        String evening =
                "read its level in the evening when the lamps go off, and in the morning before"
                        + " they go on, two or three times";
        String jug =
                "the jug you fill with holds less than you take it for, some "
                        + Numbers.percent(1 / leak.jugTimes())
                        + " of it";
        if (leak.isSaid() && leak.mayBeTheJug()) {
            return "Something leaks, or "
                    + jug
                    + ": the log does not tell which. Weigh the jug full and empty first, a litre is a"
                    + " kilogram. If it is right, "
                    + name
                    + ", its tubing or a tray below it loses about "
                    + litresADay(leak.litresPerDay())
                    + " that nothing drinks (up to "
                    + litresADay(leak.mostLitresPerDay())
                    + "): wipe joints and floor dry, lay paper under them overnight, look again.";
        }
        if (leak.isSaid()) {
            return "Something leaks"
                    + (leak.hasBegun()
                            ? ", and did not at first, but since a day from "
                                    + day(scenario, leak.beganS())
                                    + " to "
                                    + day(scenario, leak.beganByS())
                            : "")
                    + ": "
                    + name
                    + ", its tubing or a tray below it loses about "
                    + litresADay(leak.litresPerDay())
                    + " that nothing drinks (up to "
                    + litresADay(leak.mostLitresPerDay())
                    + "; without a leak one log in a hundred says so). Wipe joints and floor dry,"
                    + " lay paper under them overnight, look again.";
        }
        String limit =
                leak.shownFromL() < Math.min(MOST_LEAK_L, leak.drawnL())
                        ? "one below "
                                + litresADay(leak.shownFromL())
                                + ", or one that began lately, cannot be told from thirst in this log"
                        : "this log can tell none from thirst";
        if (leak.isOpen()) {
            return "A leak from "
                    + name
                    + " is not ruled out (about "
                    + litresADay(leak.litresPerDay())
                    + "; "
                    + limit
                    + ")"
                    + (leak.mayBeTheJug()
                            ? ", nor that "
                                    + jug
                                    + " (weigh it full and empty, a litre is a kilogram)"
                            : "")
                    + ": "
                    + evening
                    + ".";
        }
        return "Nothing points to a leak from "
                + name
                + "; "
                + limit
                + ". To find a smaller one, "
                + evening
                + ".";
    }

    /** A leak that empties any reservoir here; no limit beyond it is told. */
    private static final double MOST_LEAK_L = 20;

    static String litresADay(double litres) {
        return (litres < 0.95 ? Numbers.two(litres) : Numbers.litres(litres)) + " L a day";
    }

    /** What the log does not tell apart, and what would. */
    public static List<String> tied(Fit fit) {
        Set<String> said = new TreeSet<>();
        List<String> sentences = new ArrayList<>();
        for (Fit.Tied tied : fit.tied()) {
            String cure = cure(tied.one().what(), tied.other().what());
            sentences.add(
                    "The log does not tell apart "
                            + name(tied.one())
                            + " and "
                            + name(tied.other())
                            + (said.add(cure) ? ": " + cure : "")
                            + ".");
        }
        return sentences;
    }

    private static String cure(String one, String other) {
        List<String> both = List.of(one, other);
        if (both.contains(Correction.FEED) && both.contains(Correction.UPTAKE)) {
            return "EC alone cannot tell a strong feed from little uptake; weigh one refill or measure"
                    + " it with a jug, and dip the meter into fresh feed";
        }
        if (both.contains(Correction.THIRST) && both.contains(Correction.UPTAKE)) {
            return "EC alone cannot tell plants that drink much from plants that take up little; read"
                    + " the level of that tray with its valve shut for a day, or weigh one refill"
                    + " that it alone took";
        }
        if (both.contains(Correction.METER)) {
            return "dip the meter into a standard solution";
        }
        if (both.contains(Correction.LITRES)) {
            return "measure one refill with a jug and read the level before it";
        }
        if (both.contains(Correction.LEAK) || both.contains(Correction.GAPS)) {
            return "read the level in the evening and again in the morning, when plants drink little";
        }
        if (both.contains(Correction.GROWTH)) {
            return "weigh a plant";
        }
        return "read each tray by itself: its EC, or its level with the valve shut for a day";
    }

    /** Which reading to take next, or that none would help much. */
    public static String next(Fit fit) {
        Fit.Next best = fit.next().isEmpty() ? null : fit.next().get(0);
        if (best == null || best.shareLeft() > NEXT_WORTH) {
            return "No single reading would narrow the next dates much; go on as you do.";
        }
        return "Next, most worth: "
                + LogWords.name(best.what())
                + (best.what() == LogEntry.Quantity.FRESH_MASS ? " of one plant of " : " of ")
                + Names.of(best.where())
                + " in "
                + Numbers.days(best.inDays())
                + "; it would leave "
                + Numbers.percent(best.shareLeft())
                + " of the doubt of the next dates.";
    }

    /** What no noise explains, a sentence each. */
    public static List<String> oddities(Fit fit) {
        List<String> sentences = new ArrayList<>();
        List<Fit.Oddity> rest = new ArrayList<>(fit.oddities());
        List<VesselId> vessels = rest.stream().map(o -> o.reading().where()).distinct().toList();
        for (VesselId where : vessels) {
            List<Fit.Oddity> jugs = rest.stream().filter(o -> isJugSlip(o, where)).toList();
            long poured =
                    fit.readings().stream()
                            .map(Fit.Judged::reading)
                            .filter(r -> r.where().equals(where))
                            .filter(r -> r.what() == LogEntry.Quantity.POURED)
                            .count();
            if (jugs.size() >= FEW_JUGS && 2L * jugs.size() > poured) {
                rest.removeAll(jugs);
                sentences.add(jugs(where, jugs, poured));
            }
        }
        rest.forEach(o -> sentences.add(Names.begun(oddity(fit.scenario(), o))));
        return sentences;
    }

    /** From so many on slips of a jug are told together where they are most of its litres. */
    private static final int FEW_JUGS = 3;

    private static boolean isJugSlip(Fit.Oddity oddity, VesselId where) {
        return oddity.kind() == Fit.Oddity.Kind.SLIP
                && oddity.reading().what() == LogEntry.Quantity.POURED
                && oddity.reading().where().equals(where);
    }

    private static String jugs(VesselId where, List<Fit.Oddity> jugs, long poured) {
        return "Litres of refills of %s do not agree with its levels, %s of %s (lines %s): does the jug hold what you take it for, is it filled to the mark each time, and is each refill written down once?"
                .formatted(
                        Names.of(where),
                        jugs.size(),
                        poured,
                        Names.list(
                                jugs.stream()
                                        .map(o -> String.valueOf(o.reading().line()))
                                        .toList()));
    }

    /** Where a tray's water comes from; of what no valve feeds the vessel itself. */
    private static VesselId source(Scenario scenario, VesselId where) {
        return scenario.tray(where)
                .filter(tray -> tray.filling() instanceof Filling.ByValve)
                .map(tray -> VesselId.reservoir(((Filling.ByValve) tray.filling()).reservoir()))
                .orElse(where);
    }

    /** Whether a vessel has a valve or feeds one. */
    private static boolean hasValve(Scenario scenario, Fit.Oddity oddity) {
        return scenario.trays().stream()
                .anyMatch(
                        tray ->
                                tray.filling() instanceof Filling.ByValve
                                        && (tray.id().equals(oddity.reading().where())
                                                || tray.isFedBy(oddity.reading().where().name())));
    }

    /**
     * Readings of the log's last days that count for less since they lie far off, the farthest
     * first, a sentence each: what has begun lately looks like a slip.
     */
    public static List<String> countForLess(Fit fit) {
        return fit.readings().stream()
                .filter(one -> Math.abs(one.residual()) > FAR_OFF)
                .filter(
                        one ->
                                one.reading().atS()
                                        > fit.scenario().log().lastS() - LATELY_DAYS * Time.DAY_S)
                .filter(
                        one ->
                                fit.oddities().stream()
                                        .noneMatch(o -> o.reading().equals(one.reading())))
                .sorted(Comparator.comparingDouble(one -> -Math.abs(one.residual())))
                .limit(MOST_FAR_OFF)
                .map(one -> countsForLess(fit.scenario(), one))
                .toList();
    }

    private static String countsForLess(Scenario scenario, Fit.Judged one) {
        LogEntry.Reading reading = one.reading();
        return Names.begun(LogWords.name(reading.what()))
                + " of "
                + Names.of(reading.where())
                + " on "
                + LogWords.visit(scenario, reading.atS())
                + ", "
                + value(reading.what(), reading.value())
                + " where "
                + value(reading.what(), one.after())
                + " is foretold, counts for half or less (line "
                + reading.line()
                + "): read it once more; if it holds, do not lean on the dates below.";
    }

    /** Where a reading counts for half: root of 6.25, once in 80 of normal errors. */
    private static final double FAR_OFF = 2.5;

    private static final int MOST_FAR_OFF = 2;

    private static final double LATELY_DAYS = 7;

    private static String oddity(Scenario scenario, Fit.Oddity oddity) {
        String where = Names.of(oddity.reading().where());
        String at = LogWords.visit(scenario, oddity.reading().atS());
        String since = LogWords.visit(scenario, oddity.sinceS());
        String litres = Numbers.litres(oddity.amount()) + " L";
        String mm = Numbers.whole(oddity.amount() * MM_PER_M) + " mm";
        String line = " (line " + oddity.reading().line() + ")";
        return switch (oddity.kind()) {
            case NO_REFILL ->
                    "%s would be empty from %s on, and no refill of it stands in the log after that, nor its level%s: what is learned here is wrong until every refill is written down."
                            .formatted(
                                    Names.begun(
                                            Names.of(source(scenario, oddity.reading().where()))),
                                    since,
                                    line);
            case LEVEL_ROSE ->
                    "%s stood %s higher on %s than it can without a refill that is not in the log%s."
                            .formatted(where, litres, at, line);
            case LEVEL_FELL ->
                    "%s lost %s more between %s and %s than is drunk%s: a spill, %splants that run ahead of what is foretold, or a leak that began."
                            .formatted(
                                    where,
                                    litres,
                                    since,
                                    at,
                                    line,
                                    hasValve(scenario, oddity) ? "a valve that hung open, " : "");
            case BELOW_START ->
                    "%s stood %s lower on %s than its start and what is drunk make it%s: was it filled to %s at the start? Else a spill, %splants that run ahead of what is foretold, or a leak."
                            .formatted(
                                    where,
                                    litres,
                                    at,
                                    line,
                                    value(
                                            LogEntry.Quantity.LEVEL,
                                            startM(scenario, oddity.reading().where())),
                                    hasValve(scenario, oddity) ? "a valve that hung open, " : "");
            case NIGHT_LOSS ->
                    "%s lost %s in the night to %s, when plants drink little%s: %sa leak."
                            .formatted(
                                    where,
                                    litres,
                                    at,
                                    line,
                                    hasValve(scenario, oddity) ? "a valve that seeps, or " : "");
            case VALVE_HIGH ->
                    "%s stands %s above what its valve is set to, since %s%s: it seeps or hangs; clean its seat."
                            .formatted(where, mm, since, line);
            case VALVE_LOW ->
                    "%s stands %s below what its valve is set to, since %s%s: a clogged seat, air in the tube, or an empty reservoir."
                            .formatted(where, mm, since, line);
            case THINNED ->
                    "EC of %s is %s mS/cm lower on %s than anything known makes it%s: rain, a top-up with water or a refill that is not in the log."
                            .formatted(where, Numbers.two(oddity.amount()), at, line);
            case THICKENED ->
                    "EC of %s is %s mS/cm higher on %s than anything known makes it%s: a stronger mix, or a flush that was not done."
                            .formatted(where, Numbers.two(oddity.amount()), at, line);
            case SLIP ->
                    "%s of %s on %s fits none of the others%s: look at it again, or write no under use."
                            .formatted(
                                    Names.begun(LogWords.name(oddity.reading().what())),
                                    where,
                                    at,
                                    line);
        };
    }

    private static double startM(Scenario scenario, VesselId where) {
        return scenario.tray(where)
                .map(Tray::startLevelM)
                .orElseGet(() -> scenario.reservoir(where).orElseThrow().startLevelM());
    }

    /** As "Mon 9 Mar", or a span of days, or that it does not come. */
    public static String when(Scenario scenario, Band atS) {
        if (Double.isInfinite(atS.middle())) {
            return atS.neverFrac() >= 1 ? "not in this run" : "in fewer than half the rigs";
        }
        String middle = day(scenario, atS.middle());
        if (atS.members() == 1) {
            return middle;
        }
        String low = Dates.dayMonth(LogWords.clock(scenario, atS.low()).toLocalDate());
        if (Double.isInfinite(atS.high())) {
            return middle + " (" + low + " or later)";
        }
        String high = Dates.dayMonth(LogWords.clock(scenario, atS.high()).toLocalDate());
        return low.equals(high) ? middle : middle + " (" + low + " to " + high + ")";
    }

    private static String day(Scenario scenario, double atS) {
        return Dates.weekday(LogWords.clock(scenario, atS).toLocalDate());
    }

    /** As "refill of reservoir shelf". */
    public static String what(Event.Kind kind, VesselId where) {
        return MachineWords.of(kind).replace('-', ' ') + ", " + Names.of(where);
    }

    /** As "82 L (71 to 95 L)". */
    public static String litres(Band litres) {
        return Numbers.litres(litres.middle())
                + " L ("
                + Numbers.litres(litres.low())
                + " to "
                + Numbers.litres(litres.high())
                + " L)";
    }

    /** A value in the unit a grower reads it in, as "14.5 cm". */
    public static String value(LogEntry.Quantity what, double value) {
        return switch (what) {
            case LEVEL, ROOT_LENGTH -> Numbers.one(value * 100) + " cm";
            case POURED -> Numbers.one(value * L_PER_M3) + " L";
            case EC -> Numbers.two(value) + " mS/cm";
            case PH -> Numbers.one(value);
            case TEMPERATURE -> Numbers.one(value) + " degC";
            case FRESH_MASS -> Numbers.whole(value) + " g";
        };
    }

    /** The same of two values' distance: of temperatures in kelvin, which have no zero to shift. */
    private static String apart(LogEntry.Quantity what, double distance) {
        return what == LogEntry.Quantity.TEMPERATURE
                ? Numbers.one(distance) + " K"
                : value(what, distance);
    }

    /** Of what was read that nothing is learned from, a sentence each kind. */
    public static List<String> idle(Fit fit) {
        List<String> sentences = new ArrayList<>();
        for (LogEntry.Quantity what : LogEntry.Quantity.values()) {
            double off = 0;
            int count = 0;
            for (Fit.Judged one : fit.idle()) {
                if (one.reading().what() == what && !Double.isNaN(one.after())) {
                    off += one.reading().value() - one.after();
                    count++;
                }
            }
            if (fit.idle().stream().anyMatch(one -> one.reading().what() == what)) {
                double mean = off / Math.max(1, count);
                sentences.add(
                        idle(what)
                                + (count == 0
                                        ? "."
                                        : "; yours lie on average "
                                                + apart(what, Math.abs(mean))
                                                + (mean < 0 ? " below" : " above")
                                                + " what is foretold."));
            }
        }
        return sentences;
    }

    /** Why nothing is learned from a kind of reading. */
    static String idle(LogEntry.Quantity what) {
        return "Nothing is learned from "
                + LogWords.name(what)
                + switch (what) {
                    case PH -> ", which is foretold to no better than one or two units";
                    case TEMPERATURE ->
                            ", which follows the air: where it is off, state the air as it is";
                    case ROOT_LENGTH -> ", on which no water hangs once the roots dip in";
                    default -> "";
                };
    }

    /** How far readings of a kind lie from their forecasts on average, in a sentence. */
    public static String finding(Fit fit, LogEntry.Quantity what) {
        double before = 0;
        double after = 0;
        int count = 0;
        for (Fit.Judged one : fit.readings()) {
            if (one.reading().what() == what && !Double.isNaN(one.before())) {
                before += Math.abs(one.reading().value() - one.before());
                after += Math.abs(one.reading().value() - one.after());
                count++;
            }
        }
        return "From what was foretold a reading lies "
                + apart(what, before / Math.max(1, count))
                + " as stated, "
                + apart(what, after / Math.max(1, count))
                + " by the log, on average.";
    }

    /** What a reading was worth, as "took away 12 %". */
    public static String worth(Fit.Judged one) {
        return "took away " + Numbers.percent(one.worth());
    }

    /** The file of corrections. */
    public static String fragment(Fit fit) {
        StringBuilder toml = new StringBuilder();
        toml.append("# What fit learned of: ")
                .append(Names.clean(fit.scenario().title()))
                .append("\n# from its log up to ")
                .append(LogWords.visit(fit.scenario(), fit.scenario().log().lastS()))
                .append(
                        ". For run, away, size, compare and others: --corrected and this file,\n# or [log] corrected = \"corrected.toml\" in the scenario.\n")
                .append("# doubt_left: share of the doubt before the log that is left.\n");
        for (Fit.Learned one : fit.learned()) {
            toml.append("\n[").append(path(one)).append("]\n");
            switch (one.what()) {
                case Correction.VALVE ->
                        toml.append("higher = \"")
                                .append(digits(one.value() * MM_PER_M, 2))
                                .append(" mm\"\n");
                case Correction.LEAK ->
                        toml.append("loses = \"")
                                .append(digits(one.value() * L_PER_M3 * Time.DAY_S, 3))
                                .append(" L/day\"\n");
                default -> toml.append("times = ").append(digits(one.value(), 3)).append('\n');
            }
            toml.append("doubt_left = \"")
                    .append(Numbers.whole(100 * Math.min(1, one.left())))
                    .append(" %\"\n");
        }
        return toml.toString();
    }

    private static String digits(double value, int decimals) {
        return Numbers.rounded(value, decimals);
    }

    private static String path(Fit.Learned one) {
        String of = quoted(one.of());
        return switch (one.what()) {
            case Correction.THIRST, Correction.GROWTH, Correction.UPTAKE, Correction.SIZE ->
                    "crop." + of + "." + one.what();
            case Correction.VALVE -> "tray." + of + "." + one.what();
            case Correction.LITRES, Correction.LEAK -> "reservoir." + of + "." + one.what();
            default -> one.what();
        };
    }

    private static String quoted(String name) {
        return name.matches("[A-Za-z0-9_-]+")
                ? name
                : '"' + name.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
