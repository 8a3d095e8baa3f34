package tideless.scenario;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tideless.solution.Recipe;

/**
 * What a first rig is fed, as it was told.
 *
 * @param recipe of the scenario's; empty where one is to be tried
 * @param msPerCm EC at 25 degC; empty where one is to be tried
 * @param isBought whether it comes in bottles or as a powder, whose label is not at hand
 */
record StarterFeed(String recipe, OptionalDouble msPerCm, boolean isBought) {
    static final String USUAL = "usual";

    static final String ALLOWED =
            "a recipe, as hoagland-2, or bought for bottles or a powder; with its strength or without, as"
                    + " bought 1.6 mS/cm, or hoagland-2 800 ppm-500";

    private static final Pattern STRENGTH =
            Pattern.compile(
                    "\\b(\\d+(?:\\.\\d+)?)\\s*(ms/cm|us/cm|\u00b5s/cm|ds/m|ppm-500|ppm-700)(?![\\w/])");

    private static final Pattern READY =
            Pattern.compile("\\b(bought|bottles?|powders?|kits?|two[ -]part|shop)\\b");

    private static final Pattern FILLING =
            Pattern.compile(
                    "\\b(usual|unknown|don'?t know|a|b|the|of|and|at|in|from|two|feed|my)\\b|[,;]");

    /** Null where it says nothing that could be used. */
    static StarterFeed of(String answer) {
        String told = answer.toLowerCase(Locale.ROOT);
        Matcher strength = STRENGTH.matcher(told);
        OptionalDouble msPerCm = OptionalDouble.empty();
        String rest = told;
        if (strength.find()) {
            msPerCm =
                    new OptionReader("")
                            .msPerCm(
                                    "",
                                    strength.group(1) + ' ' + StarterWater.unit(strength.group(2)));
            if (msPerCm.isEmpty()) {
                return null;
            }
            rest = told.substring(0, strength.start()) + told.substring(strength.end());
        }
        boolean bought = READY.matcher(rest).find();
        String name =
                FILLING.matcher(READY.matcher(rest).replaceAll(" "))
                        .replaceAll(" ")
                        .strip()
                        .replaceAll(" +", "-");
        boolean known = name.isEmpty() || Recipe.named(name).isPresent();
        return known ? new StarterFeed(name, msPerCm, bought) : null;
    }

    /** As it is kept, and read again. */
    String spelt() {
        String spelt =
                (isBought ? "bought " : "")
                        + (recipe.isEmpty() ? "" : recipe + " ")
                        + (msPerCm.isPresent()
                                ? Measure.plain(msPerCm.getAsDouble()) + " mS/cm"
                                : "");
        return spelt.isBlank() ? USUAL : spelt.strip();
    }

    /** One to be tried, with what was told in its place. */
    Starter.Feed instead(Starter.Feed of) {
        return new Starter.Feed(
                recipe.isEmpty() ? of.recipe() : recipe, msPerCm.orElse(of.msPerCm()));
    }
}
