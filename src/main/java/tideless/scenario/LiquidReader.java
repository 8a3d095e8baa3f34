package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.util.LinkedHashMap;
import java.util.Map;
import tideless.rig.Liquid;
import tideless.solution.Component;
import tideless.solution.Composition;

/** Reads the source water and the feed. */
final class LiquidReader {
    private LiquidReader() {}

    /** Null when faulty. */
    static Liquid water(Table water, Solutions solutions) {
        if (water.has("analysis")) {
            if (water.has("source")) {
                water.fault(
                        "source",
                        Key.quoted(water.words("source")) + " beside [water.analysis]",
                        "one of the two",
                        "");
                return null;
            }
            return analysis(water.child("analysis"), "water by analysis");
        }
        if (water.source().isExcused(water.full("analysis"))) {
            return null;
        }
        String name = "soft-tap";
        if (water.meant("source")) {
            name = water.choice("source");
        } else {
            water.holds("source", name);
        }
        return name == null ? null : new Liquid(name, solutions.water(name));
    }

    /** Null when faulty. */
    static Liquid feed(Table feed, Liquid water, Solutions solutions) {
        if (feed.has("analysis")) {
            for (String other : new String[] {"recipe", "ec", "ph", "acid"}) {
                if (feed.has(other)) {
                    feed.fault(
                            other,
                            Key.quoted(feed.words(other)) + " beside [feed.analysis]",
                            "one of the two",
                            "");
                }
            }
            return analysis(feed.child("analysis"), "feed by analysis");
        }
        double ph = feed.quantity("ph");
        String acid = feed.choice("acid");
        if (!feed.has("recipe")) {
            if (!feed.source().isExcused(feed.full("analysis"))) {
                feed.missing("recipe");
            }
            feed.quantityOr("ec", Double.NaN, "");
            return null;
        }
        String recipe = feed.choice("recipe");
        double publishedEc = recipe == null ? Double.NaN : solutions.publishedEcMsPerCm(recipe);
        double ec = feed.quantityOr("ec", publishedEc, plain(publishedEc) + " mS/cm, as published");
        if (recipe == null || water == null || acid == null || Double.isNaN(ec + ph)) {
            return null;
        }
        Solutions.Mix mix = solutions.feed(recipe, water.composition(), ec, ph, acid);
        if (!mix.key().isEmpty()) {
            feed.fault(
                    mix.key(),
                    feed.has(mix.key()) ? Key.quoted(feed.words(mix.key())) : plain(ec) + " mS/cm",
                    mix.allowed(),
                    "Maybe use a softer water, or rain.");
            return null;
        }
        return new Liquid(
                "%s, EC %s mS/cm, pH %s".formatted(recipe, plain(ec), plain(ph)),
                mix.composition());
    }

    private static Liquid analysis(Table analysis, String name) {
        Map<Component, Double> values = new LinkedHashMap<>();
        boolean good = true;
        for (Ion ion : Ion.values()) {
            if (analysis.has(ion.spelling())) {
                double value = analysis.quantity(ion.spelling());
                good &= !Double.isNaN(value);
                values.put(ion.component(), value);
            }
        }
        if (!good) {
            return null;
        }
        Composition composition = Composition.of(values);
        noteImbalance(analysis, composition);
        return new Liquid(name, composition);
    }

    /** Phosphate and inorganic carbon are counted with one charge, as near pH 6 to 8. */
    private static void noteImbalance(Table analysis, Composition composition) {
        double cations = 0;
        double anions = composition.molPerM3(Component.P) + composition.molPerM3(Component.C);
        for (Component component : Component.values()) {
            double charge = component.fixedCharge() * composition.molPerM3(component);
            cations += Math.max(0, charge);
            anions += Math.max(0, -charge);
        }
        double off = Math.abs(cations - anions);
        if (off > Math.max(0.2, 0.1 * Math.max(cations, anions))) { // 10 %: usual laboratory limit
            analysis.source()
                    .note(
                            new Note(
                                    analysis.source().file(),
                                    analysis.source().line(java.util.List.of("water", "analysis")),
                                    "",
                                    "the analysis does not balance: %s mmol/L of positive and %s of"
                                                    .formatted(plain(cations), plain(anions))
                                            + " negative charge; pH will carry the difference"));
        }
    }
}
