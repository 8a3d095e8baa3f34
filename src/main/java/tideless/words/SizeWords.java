package tideless.words;

import java.time.LocalDate;
import tideless.physics.Time;
import tideless.sim.Event;
import tideless.study.Outlook;
import tideless.study.Size;

/** How much of one thing is enough, in words a person uses. */
public final class SizeWords {
    private SizeWords() {}

    /** How it stands now, in one sentence. */
    public static String now(Size size, Size.Goal goal, LocalDate start) {
        return subject(size)
                + ", "
                + amount(size, size.given())
                + " now: "
                + through(size, goal)
                + (size.isEnough(goal) || size.found().isEmpty()
                        ? ""
                        : size.why().map(why -> "; first " + harm(why, start)).orElse(""))
                + ".";
    }

    /** What would be enough, in one sentence. */
    public static String answer(Size size, Size.Goal goal, LocalDate start) {
        if (size.found().isEmpty()) {
            return none(size, start);
        }
        double found = size.found().orElseThrow();
        String amount = amount(size, found);
        if (size.bounded()) {
            return (found == size.given() ? "No more than that" : amount + " would do too")
                    + each(size)
                    + "; "
                    + notTried(size)
                    + ".";
        }
        return switch (size.what()) {
            case RESERVOIR ->
                    (size.isEnough(goal)
                                    ? amount + " would be enough."
                                    : amount
                                            + " needed, "
                                            + Numbers.litres(found - size.given())
                                            + " L more: at the same height a footprint "
                                            + Numbers.label(found / size.given())
                                            + " times as large.")
                            + size.onTrays().map(less -> onTrays(less, goal)).orElse("");
            case PLANTS, VISITS ->
                    (found == size.given() ? "No more than that" : "At most " + amount)
                            + each(size)
                            + ".";
        };
    }

    // Of an empty tank nobody should learn from a calculation that it was enough.
    private static String onTrays(Size.OnTrays less, Size.Goal goal) {
        double days = less.emptyDays();
        return " With "
                + Numbers.litres(less.litres())
                + " L no crop would be harmed either"
                + (goal.members() == 1
                        ? ""
                        : " in " + Numbers.percent(goal.chance()) + " of the rigs")
                + ", but the reservoir would stand empty "
                + (days < 1
                        ? "for less than a day"
                        : "for " + Numbers.days((int) Math.floor(days + 0.5)))
                + " in all while they live on what their trays hold: no reserve, and not advised.";
    }

    /** What a plant weighs then, and now where that is another weight; and all of them together. */
    private static String each(Size size) {
        return size.each()
                .map(
                        weight -> {
                            String then = Numbers.grams(weight.thenG());
                            String now = Numbers.grams(weight.nowG());
                            return ", "
                                    + then
                                    + (weight.ofFruit() ? " of fruit each" : " each")
                                    + (then.equals(now) ? "" : " in place of " + now)
                                    + together(size, weight);
                        })
                .orElse("");
    }

    /** Where plants crowd, more of them may yield no more, or less. */
    private static String together(Size size, Size.Weight weight) {
        double found = size.found().orElse(size.given());
        if (found == size.given()) {
            return "";
        }
        String then = Numbers.grams(found * weight.thenG());
        String now = Numbers.grams(size.given() * weight.nowG());
        return then.equals(now)
                ? ", " + then + " in all as now"
                : ", " + then + " in all in place of " + now;
    }

    /** The change in a few words, for a list. */
    public static String change(Size size) {
        double found = size.found().orElseThrow();
        double more = found - size.given();
        return switch (size.what()) {
            case RESERVOIR ->
                    Numbers.litres(more)
                            + " L more in "
                            + subject(size)
                            + " ("
                            + amount(size, found)
                            + ")";
            case PLANTS ->
                    count((int) -more, "plant")
                            + " less in "
                            + subject(size)
                            + " ("
                            + (int) found
                            + " of "
                            + (int) size.given()
                            + each(size)
                            + ")";
            case VISITS ->
                    size.isFillingUpEnough()
                            ? "all filled up at every visit ("
                                    + amount(size, found)
                                    + " would do then)"
                            : "a visit "
                                    + every(found)
                                    + ", all filled up at each, in place of "
                                    + amount(size, size.given());
        };
    }

    private static String none(Size size, LocalDate start) {
        String harm = size.why().map(why -> ": " + harm(why, start)).orElse("");
        return switch (size.what()) {
            case RESERVOIR ->
                    "No reservoir helps, not even one of "
                            + amount(size, size.tried())
                            + harm
                            + ". What fails is not its litres: look at "
                            + (size.why().filter(SizeWords::isOfSolution).isPresent()
                                    ? "the feed's strength, at flushes and at the water."
                                    : "valve, tube, level and roots.");
            case PLANTS -> "Not even one plant alone would do" + harm + ".";
            case VISITS -> "Not even a visit every day helps" + harm + ".";
        };
    }

    private static boolean isOfSolution(Outlook.LikelyHarm harm) {
        return harm.taken().isPresent()
                || harm.kind() == Event.Kind.SALT_WILTED
                || harm.by().equals(Event.SALT);
    }

    private static String harm(Outlook.LikelyHarm harm, LocalDate start) {
        return AwayWords.harm(harm)
                + (harm.taken().isPresent() ? " by " : " about ")
                + Dates.dayMonth(start.plusDays((long) (harm.atS().middle() / Time.DAY_S)));
    }

    /** In how many rigs it is enough; what that takes differs with what is looked for. */
    private static String through(Size size, Size.Goal goal) {
        long enough = (long) Math.floor(size.chanceGiven() * goal.members() + 0.5);
        String come =
                goal.members() > 1
                        ? enough + " of " + goal.members() + " rigs come through"
                        : enough > 0 ? "comes through" : "does not come through";
        return switch (size.what()) {
            case RESERVOIR -> come + " on it";
            case PLANTS ->
                    size.each().filter(Size.Weight::isAsked).isPresent()
                            ? come + " with every plant at its wanted weight"
                            : come;
            case VISITS -> come;
        };
    }

    private static String subject(Size size) {
        return size.vessel().map(Names::of).orElse("visits");
    }

    private static String amount(Size size, double amount) {
        return switch (size.what()) {
            case RESERVOIR -> Numbers.litres(amount) + " L usable";
            case PLANTS -> count((int) amount, "plant");
            case VISITS -> "one " + every(amount);
        };
    }

    private static String every(double days) {
        return days == 1 ? "every day" : "every " + (int) days + " days";
    }

    private static String notTried(Size size) {
        return switch (size.what()) {
            case RESERVOIR -> "no smaller one was tried";
            case PLANTS ->
                    size.each()
                            .map(Size.Weight::usualGroundM2)
                            .filter(m2 -> m2 > 0)
                            .map(m2 -> "growers give each " + area(m2))
                            .orElse("no greater number was tried");
            case VISITS -> "no rarer visit was tried";
        };
    }

    private static String area(double m2) {
        return m2 < 0.1 ? Numbers.label(m2 * 1e4) + " cm2" : Numbers.label(m2) + " m2";
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
