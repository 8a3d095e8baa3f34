package tideless.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tideless.advice.Cause;
import tideless.advice.Caution;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Task;

/** Tasks in words. */
public final class TaskWords {
    /** More than this nobody mixes at once, L: two buckets; common practice, no source. */
    private static final double CAN_L = 20;

    /**
     * Herbs and leaves left unpicked so long flower and grow woody, d; common practice, no source.
     */
    private static final double LEFT_DAYS = 28;

    private TaskWords() {}

    /** The figure and what it is held against, or the cause where no figure says it. */
    public static String why(Task task) {
        String why = figure(task);
        why = why.isEmpty() ? CauseWords.of(task.cause()) : why;
        if (task.drainLitres() > 0) {
            why += "; " + drained(task);
        }
        Facts facts = task.cause().facts();
        if (task.litres() > 0 && facts.has(Quantity.WATER)) {
            why += "; " + CauseWords.figure(facts, Quantity.WATER) + " of it plain water";
        }
        if (facts.has(Quantity.LITRES_DOUBT)) {
            why +=
                    "; give or take "
                            + CauseWords.figure(facts, Quantity.LITRES_DOUBT)
                            + ", a pen "
                            + CauseWords.figure(facts, Quantity.METER_DOUBT);
        }
        return task.isDone() ? why : why + "; advised, not done";
    }

    /** What is let out first; of a tray cleaned for the next crop, that it need not be. */
    private static String drained(Task task) {
        String litres = Numbers.litres(task.drainLitres()) + " L";
        return task.kind() == Task.Kind.CLEAN
                ? "drain and throw away " + litres + " first (kept where fresh = false)"
                : "drain " + litres + " first";
    }

    /** A flush that nobody does yet, and that plain water in place of feed may make needless. */
    private static boolean isPutOffByWater(Task task) {
        return !task.isDone()
                && !task.cures().isEmpty()
                && (task.cures().get(0).kind() == Cure.Kind.TOP_UP_WITH_WATER
                        || task.cures().get(0).kind() == Cure.Kind.WATER_IN_THE_NEXT_REFILL);
    }

    private static String waterFirst(Task task) {
        Cure water = task.cures().get(0);
        return "before that try "
                + CauseWords.figure(water.facts(), Quantity.WATER)
                + " of plain water in the next "
                + (water.kind() == Cure.Kind.TOP_UP_WITH_WATER ? "top-ups" : "refills");
    }

    /** Where a leaner feed was tried that makes a flush needless, or needed less. */
    private static String leaner(Task task) {
        return task.cures().stream()
                .limit(1)
                .filter(cure -> cure.facts().has(Quantity.WANTED_EC))
                .map(
                        cure ->
                                "; less often or never with a feed of "
                                        + CauseWords.figure(cure.facts(), Quantity.WANTED_EC))
                .findFirst()
                .orElse("");
    }

    /** Of a solution too lean, what is as good as used up in it. */
    private static String nearlyGone(Task task) {
        String what = task.cause().facts().of();
        return what.isEmpty() ? "" : ", " + what + " nearly gone";
    }

    /** The same in a few words, for a screen. */
    public static String brief(Task task) {
        String value = Numbers.of(task.measure().value(), task.measure().unit());
        String undone = task.isDone() ? "" : "; advised, not done";
        return switch (task.kind()) {
            case MIX -> mixedBriefly(task);
            case REFILL ->
                    value
                            + " left"
                            + switch (task.cause().kind()) {
                                case BEFORE_ABSENCE -> "; before you leave";
                                case TRAY_TOOK_IT ->
                                        " once its trays have filled; again before you leave";
                                default -> "";
                            }
                            + enough(task)
                            + undone;
            case READ_METERS -> "EC and pH of " + trays(task) + ", every " + value;
            case SOW_NEXT ->
                    "for the tray on "
                            + Dates.weekday(task.cause().facts().on().toLocalDate())
                            + younger(task.cause().facts())
                            + nobody(task.cause().facts())
                            + undone;
            case SUPPORT -> "a stake or a string for each plant";
            case POLLINATE ->
                    often(task) + ", to " + Dates.weekday(task.cause().facts().on().toLocalDate());
            case PICK ->
                    fruit(task)
                            + ", "
                            + often(task)
                            + (task.cause().facts().has(Quantity.LAST)
                                    ? "; "
                                            + CauseWords.figure(task.cause().facts(), Quantity.LAST)
                                            + " a plant by the end"
                                    : "");
            case HARVEST -> figure(task) + "; then clean";
            default -> why(task);
        };
    }

    /** As "every 2 days", or where nobody comes so often "at each visit". */
    private static String often(Task task) {
        Facts facts = task.cause().facts();
        if (facts.has(Quantity.EVERY)) {
            return "every " + CauseWords.figure(facts, Quantity.EVERY);
        }
        return task.kind() == Task.Kind.POLLINATE && !Double.isNaN(task.measure().value())
                ? "every " + Numbers.of(task.measure().value(), task.measure().unit())
                : "at each visit";
    }

    /**
     * As "feed: 29 L into can, 11.5 L into each of left and right", or "feed of 2.40 mS/cm: ...".
     */
    private static String mixed(Task task) {
        return ofFeed(task) + String.join(", ", pouredInto(task));
    }

    private static String ofFeed(Task task) {
        Measure ec = task.measure();
        return Double.isNaN(ec.value())
                ? "feed: "
                : "feed of " + Numbers.of(ec.value(), ec.unit()) + ": ";
    }

    private static List<String> pouredInto(Task task) {
        Map<String, List<String>> into = new LinkedHashMap<>();
        task.cause()
                .facts()
                .litresInto()
                .forEach(
                        (vessel, litres) ->
                                into.computeIfAbsent(Numbers.litres(litres), k -> new ArrayList<>())
                                        .add(Names.clean(vessel.name())));
        List<String> parts = new ArrayList<>();
        into.forEach(
                (litres, names) ->
                        parts.add(
                                litres
                                        + " L into "
                                        + (names.size() > 1 ? "each of " : "")
                                        + Names.list(names)));
        return parts;
    }

    /**
     * The same for a screen: what goes into the first of several, and that the rest has its place.
     */
    private static String mixedBriefly(Task task) {
        List<String> parts = pouredInto(task);
        return task.cause().facts().litresInto().size() <= 2 || parts.size() < 2
                ? mixed(task)
                : ofFeed(task) + parts.get(0) + ", the rest into trays";
    }

    /** Of more than anybody's can holds. */
    private static String inParts(Task mix) {
        return mix.litres() > CAN_L
                ? "; in parts, as your can holds, each of the same strength"
                : "";
    }

    /** Feed, plain water, or both. */
    private static String pouredIn(Task task) {
        Facts facts = task.cause().facts();
        double water = facts.has(Quantity.WATER) ? facts.get(Quantity.WATER) : 0;
        return water == 0 ? "feed" : water < task.litres() ? "feed and water" : "plain water";
    }

    private static String trays(Task task) {
        return Names.list(names(task));
    }

    private static List<String> names(Task task) {
        List<String> trays = List.of(task.cause().facts().of().split(", "));
        return trays.stream().map(Names::clean).toList();
    }

    /** As "; first picking, then about 60 g every 7 days, to Fri 22 May"; empty of one by date. */
    private static String later(Facts facts) {
        String first = facts.of().isEmpty() ? "" : "; first picking";
        if (!facts.has(Quantity.EVERY)) {
            return first;
        }
        String every =
                " every "
                        + CauseWords.figure(facts, Quantity.EVERY)
                        + (facts.has(Quantity.LONGEST)
                                ? " (once after "
                                        + CauseWords.figure(facts, Quantity.LONGEST)
                                        + (facts.get(Quantity.LONGEST) >= LEFT_DAYS
                                                ? ": cut hard before you leave, expect flowers"
                                                : "")
                                        + ")"
                                : "");
        String last = Dates.weekday(facts.on().toLocalDate());
        String then = first.isEmpty() ? "; then" : first + ", then";
        return facts.has(Quantity.LAST)
                ? then
                        + every
                        + ", falling to "
                        + CauseWords.figure(facts, Quantity.LAST)
                        + " on "
                        + last
                        + ": they are picked faster than they grow, so wait or stop once it gives"
                        + " half of the most"
                : then
                        + " about "
                        + CauseWords.figure(facts, Quantity.LATER)
                        + every
                        + ", to "
                        + last;
    }

    /** What would do for the rest of the season, where that is less than a filling; or empty. */
    private static String enough(Task refill) {
        Facts facts = refill.cause().facts();
        return facts.has(Quantity.ENOUGH)
                ? "; "
                        + (facts.get(Quantity.ENOUGH) > 0
                                ? CauseWords.figure(facts, Quantity.ENOUGH)
                                : "what is left")
                        + " would do to the last harvest on "
                        + Dates.weekday(facts.on().toLocalDate())
                : "";
    }

    /** As "6 plants, 14 days in the nursery (from Mon 16 Feb)", or "6 plants, sown in place". */
    private static String raised(Task task) {
        Facts facts = task.cause().facts();
        String plants = facts.of() + (facts.of().equals("1") ? " plant, " : " plants, ");
        return task.measure().value() > 0
                ? plants
                        + Numbers.of(task.measure().value(), task.measure().unit())
                        + " in the nursery"
                        + (facts.on() == null
                                ? ""
                                : " (sown on " + Dates.weekday(facts.on().toLocalDate()) + ")")
                : plants + "sown in place";
    }

    /** Of seedlings that are sown late, as ", 3 days younger"; else empty. */
    private static String younger(Facts facts) {
        return facts.has(Quantity.YOUNGER)
                ? ", " + CauseWords.figure(facts, Quantity.YOUNGER) + " younger"
                : "";
    }

    /** Of seedlings that are left alone in an absence; else empty. */
    private static String alone(Facts facts) {
        String nobody = nobody(facts);
        return nobody.isEmpty()
                ? ""
                : nobody + " meanwhile: wet well and cover, or have them watered";
    }

    private static String nobody(Facts facts) {
        return facts.has(Quantity.ALONE)
                ? "; nobody comes for " + CauseWords.figure(facts, Quantity.ALONE)
                : "";
    }

    /**
     * First sowings of several trays in a line, as "tomato, basil (9 Feb), pak-choi (12 Feb)": the
     * first on its day, the others with theirs.
     *
     * @param sowings in order of their days
     * @param cropOf name of what is sown for a task
     */
    public static String sowings(List<Task> sowings, Function<Task, String> cropOf) {
        List<String> parts = new ArrayList<>();
        LocalDate first = sowings.get(0).due().toLocalDate();
        for (Task sowing : sowings) {
            LocalDate day = sowing.due().toLocalDate();
            String crop = cropOf.apply(sowing);
            String part = day.equals(first) ? crop : crop + " (" + Dates.dayMonth(day) + ")";
            if (!parts.contains(part)) {
                parts.add(part);
            }
        }
        return String.join(", ", parts);
    }

    private static String fruit(Task task) {
        return task.cause().facts().of().isEmpty() ? "ripe fruit" : "fruit of eating size";
    }

    private static String figure(Task task) {
        Measure measure = task.measure();
        String value = Numbers.of(measure.value(), measure.unit());
        return switch (task.kind()) {
            case REFILL -> {
                String left =
                        value
                                + (task.cause().facts().has(Quantity.USABLE)
                                        ? " left above the highest seat"
                                        : " left above the outlet");
                if (task.cause().isBeforeAbsence()) {
                    yield left + "; " + CauseWords.of(task.cause());
                }
                yield (measure.side() == Measure.Side.NONE
                                ? left
                                : left + " (refill " + Numbers.limit(measure) + ")")
                        + enough(task);
            }
            case TOP_UP ->
                    value
                            + " deep; "
                            + pouredIn(task)
                            + " to "
                            + Numbers.of(measure.limit(), measure.unit());
            case MOVE_VALVE -> "to " + value + ", " + CauseWords.of(task.cause());
            case FLUSH ->
                    value
                            + " ("
                            + Numbers.limit(measure)
                            + ")"
                            + (isPutOffByWater(task) ? "; " + waterFirst(task) : leaner(task));
            case FRESH_SOLUTION ->
                    measure.value() < measure.limit()
                            ? value + " (" + Numbers.limit(measure) + ")" + nearlyGone(task)
                            : value + " (" + CauseWords.of(task.cause()) + ")";
            case HARVEST ->
                    value
                            + switch (task.cause().kind()) {
                                case LAST_FRUIT_PICKED ->
                                        " of fruit a plant in all (last fruit picked)";
                                case BEFORE_ABSENCE -> " a plant (nearly ready: before you leave)";
                                case LAST_VISIT ->
                                        " a plant (nearly ready; nobody comes again in this run)";
                                case WINDOW_ENDS ->
                                        " a plant (light: "
                                                + CauseWords.figure(
                                                        task.cause().facts(), Quantity.WANTED)
                                                + " is waited for, but it bolts or grows tough if"
                                                + " left)";
                                case PICKED_OUT ->
                                        " a plant (picked long enough: bolts or grows tough if left)";
                                case MAKES_ROOM ->
                                        (task.cause().facts().of().isEmpty() ? "" : " of fruit")
                                                + " a plant (makes room for the next crop)";
                                default -> " a plant (ready)";
                            };
            case MIX -> mixed(task) + ", to their first level" + inParts(task);
            case READ_METERS ->
                    "EC and pH of "
                            + Names.trays(names(task))
                            + ", then every "
                            + value
                            + ", to "
                            + Dates.weekday(task.cause().facts().on().toLocalDate())
                            + "; what differs from the plots is the truth";
            case TRANSPLANT ->
                    "roots "
                            + value
                            + ", "
                            + CauseWords.of(task.cause())
                            + "; until then "
                            + CureWords.of(task.cures());
            case SUPPORT -> "a stake or a string for each plant, clear of lamps and their leads";
            case POLLINATE ->
                    "shake or brush open flowers "
                            + often(task)
                            + ", to "
                            + Dates.weekday(task.cause().facts().on().toLocalDate());
            case PICK ->
                    fruit(task)
                            + " "
                            + often(task)
                            + ", about "
                            + value
                            + " a plant and week"
                            + (task.cause().facts().has(Quantity.LAST)
                                    ? "; "
                                            + CauseWords.figure(task.cause().facts(), Quantity.LAST)
                                            + " of fruit a plant by the end of the run"
                                    : "");
            case PICK_LEAVES ->
                    "about "
                            + value
                            + (task.cause().kind() == Cause.Kind.OLD_LEAVES_GIVE_LITTLE
                                    ? " of the lowest leaves from the whole tray"
                                    : " of leaf from the whole tray" + later(task.cause().facts()));
            case THIN_OUT ->
                    "leave "
                            + task.cause().facts().of()
                            + " plants; what comes out weighs about "
                            + value;
            case SPACE_OUT -> "to " + task.cause().facts().of() + " plants a m2";
            case TOP -> "pinch out every growing point; fruit that has set ripens";
            case CLEAN ->
                    (task.cause().kind() == Cause.Kind.CROP_IS_LOST
                                    ? "take out the dead plants, roots and all; "
                                    : "")
                            + (task.drainLitres() > 0 ? "" : "drain, ")
                            + "scrub, disinfect as the label says (never bleach with acid), rinse"
                            + (task.litres() > 0 ? ", fill with fresh feed" : "");
            case SOW ->
                    task.cause().facts().of()
                            + (task.cause().facts().of().equals("1") ? " plant" : " plants")
                            + " and a few to choose from, "
                            + value
                            + " in the nursery (for the tray on "
                            + Dates.weekday(task.cause().facts().on().toLocalDate())
                            + ")";
            case SET_OUT -> raised(task);
            case PLANT -> raised(task) + (task.litres() > 0 ? "; fill up with feed" : "");
            case SOW_NEXT ->
                    value
                            + " in the nursery (ready for the tray on "
                            + Dates.weekday(task.cause().facts().on().toLocalDate())
                            + younger(task.cause().facts())
                            + ")"
                            + alone(task.cause().facts());
        };
    }

    /** All of it as one sentence. */
    public static String text(Task task) {
        StringBuilder text = new StringBuilder();
        text.append(Names.of(task.kind())).append(", ");
        text.append(Names.of(task.vessel(), task.crop()));
        text.append(", ").append(Dates.visit(task.due(), true));
        if (task.litres() > 0) {
            text.append(", ").append(Numbers.litres(task.litres())).append(" L");
        }
        text.append(": ").append(why(task));
        if (!task.cures().isEmpty() && task.kind() != Task.Kind.TRANSPLANT) {
            text.append("; to need it less: ").append(CureWords.of(task.cures()));
        }
        for (Caution caution : task.cautions()) {
            text.append("; care: ").append(CautionWords.of(caution));
        }
        return text.append('.').toString();
    }
}
