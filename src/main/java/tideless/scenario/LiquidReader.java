package tideless.scenario;

import static tideless.scenario.LiquidKeys.ACID;
import static tideless.scenario.LiquidKeys.BOUGHT;
import static tideless.scenario.LiquidKeys.EC;
import static tideless.scenario.LiquidKeys.FEED_ANALYSIS;
import static tideless.scenario.LiquidKeys.PH;
import static tideless.scenario.LiquidKeys.RAIN_SHARE;
import static tideless.scenario.LiquidKeys.RATIO;
import static tideless.scenario.LiquidKeys.RECIPE;
import static tideless.scenario.LiquidKeys.SOURCE;
import static tideless.scenario.LiquidKeys.WATER_ANALYSIS;
import static tideless.scenario.LiquidKeys.WATER_EC;
import static tideless.scenario.Measure.plain;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import tideless.rig.Liquid;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Concentrate;
import tideless.solution.ElectricalConductivity;
import tideless.solution.TwoPart;

/** Reads the source water and the feed. */
final class LiquidReader {
    private LiquidReader() {}

    static Read<Liquid> water(Table water, Solutions solutions) {
        Read<Liquid> stated = stated(water, solutions);
        Read<Double> rain = water.get(RAIN_SHARE);
        if (!Read.allSound(stated, rain) || rain.value() == 0) {
            return rain.isSound() ? stated : Read.faulty();
        }
        Liquid of = stated.value();
        return Read.of(
                new Liquid(
                        of.name()
                                + ", "
                                + plain(rain.value(), UnitTable.SHARE, "%")
                                + " of it rain",
                        solutions.withRain(of.composition(), rain.value())));
    }

    private static Read<Liquid> stated(Table water, Solutions solutions) {
        boolean analysed = water.has("analysis");
        for (Key<?> other : List.of(SOURCE, WATER_EC)) {
            boolean beside = analysed || other == SOURCE && water.has(WATER_EC);
            if (beside && water.has(other)) {
                water.fault(
                        other,
                        Key.quoted(water.words(other))
                                + (analysed ? " beside [water.analysis]" : " beside ec"),
                        "one of the two",
                        "");
                return Read.faulty();
            }
        }
        if (analysed) {
            return analysis(water.child("analysis"), WATER_ANALYSIS, "water by analysis");
        }
        if (water.meant("analysis")) {
            return Read.faulty();
        }
        if (water.meant(WATER_EC)) {
            return water.get(WATER_EC)
                    .map(
                            ec ->
                                    new Liquid(
                                            "tap water of " + plain(ec) + " mS/cm",
                                            solutions.waterReading(ec)));
        }
        return water.getOr(SOURCE, Read.of("soft-tap"), name -> name)
                .map(name -> new Liquid(name, solutions.water(name)));
    }

    /**
     * The feed.
     *
     * @param rainFrac share of rain in that water, 0 to 1
     * @param middleEc what the crops are fed, mS/cm, asked for where no EC is stated; absent where
     *     no crop is known
     */
    static Read<Liquid> feed(
            Table feed,
            Read<Liquid> water,
            double rainFrac,
            Solutions solutions,
            Supplier<Read<Double>> middleEc) {
        if (feed.has("part_a") || feed.has("part_b")) {
            return ofBottles(feed, water, rainFrac, solutions, middleEc);
        }
        if (feed.has("analysis")) {
            for (Key<?> other : List.of(RECIPE, EC, PH, ACID, RATIO)) {
                if (feed.has(other)) {
                    feed.fault(
                            other,
                            Key.quoted(feed.words(other)) + " beside [feed.analysis]",
                            "one of the two",
                            "");
                }
            }
            return analysis(feed.child("analysis"), FEED_ANALYSIS, "feed by analysis");
        }
        boolean sound = feed.isSound();
        Read<String> recipe = feed.get(RECIPE);
        if (recipe.isAbsent() && !feed.meant("analysis")) {
            feed.missing(RECIPE);
        }
        Read<Double> middle = feed.has(EC) ? Read.absent() : middleEc.get();
        Read<Double> ec =
                middle.isSound()
                        ? feed.getOr(EC, middle, LiquidReader::middleWords)
                        : feed.getOr(
                                EC,
                                recipe.map(solutions::publishedEcMsPerCm),
                                published -> plain(published) + " mS/cm, as published");
        if (!sound || !Read.allSound(recipe, ec, water)) {
            return Read.faulty();
        }
        Solutions.Mix mix = mix(feed, Optional.empty(), water.value(), solutions, ec.value());
        return mix instanceof Solutions.Made made
                ? Read.of(
                        liquid(
                                feed,
                                Optional.empty(),
                                water.value(),
                                made,
                                ec.value(),
                                noted(feed, made, feed.value(PH), rainFrac)))
                : refused(feed, mix, plain(ec.value()) + " mS/cm");
    }

    /**
     * The same feed at the strength that a vessel has for itself; absent where it has none.
     *
     * @param vessel table of the vessel
     */
    static Read<Liquid> feedOf(Table vessel, Table feed, Liquid water, Solutions solutions) {
        Key<Double> key = VesselKeys.FEED_EC;
        if (!vessel.has(key)) {
            return Read.absent();
        }
        if (feed.has("analysis")) {
            vessel.fault(
                    key,
                    Key.quoted(vessel.words(key)) + " beside [feed.analysis]",
                    "only with a recipe or bottles, which can be made stronger or leaner",
                    "");
            return Read.faulty();
        }
        double ec = vessel.value(key);
        Optional<TwoPart> parts = feed.has("part_a") ? Optional.of(parts(feed)) : Optional.empty();
        Solutions.Mix mix = mix(feed, parts, water, solutions, ec);
        if (mix instanceof Solutions.Refused refused) {
            vessel.faultyValue(key, refused.allowed(), "Maybe use a softer water, or rain.");
            return Read.faulty();
        }
        Solutions.Made made = (Solutions.Made) mix;
        double ph = isWithoutAcid(feed) ? made.ph() : feed.value(PH);
        return Read.of(
                liquid(
                        feed,
                        parts,
                        water,
                        made,
                        ec,
                        reached(made, Math.floor(10 * ph + 0.5) / 10)));
    }

    /** Bottles that have been read without a fault. */
    private static TwoPart parts(Table feed) {
        OptionReader again = new OptionReader("");
        String a = feed.child("part_a").value(LiquidKeys.PART_A.label);
        String b = feed.child("part_b").value(LiquidKeys.PART_B.label);
        return new TwoPart(
                again.label("label", "part A", a).orElseThrow(),
                again.label("label", "part B", b).orElseThrow(),
                again.ratio("ratio", feed.value(RATIO)).orElseThrow(),
                TwoPart.Basis.PARTS_INTO_WATER);
    }

    /** Of two bottles, or where there are none of a recipe's salts. */
    private static Solutions.Mix mix(
            Table feed, Optional<TwoPart> parts, Liquid water, Solutions solutions, double ec) {
        double ph = feed.value(PH);
        String acid = isWithoutAcid(feed) ? Solutions.NO_ACID : feed.value(ACID);
        return parts.isPresent()
                ? solutions.feedOf(parts.get(), water.composition(), ec, ph, acid)
                : solutions.feed(feed.value(RECIPE), water.composition(), ec, ph, acid);
    }

    /** Of a bought feed of which neither acid nor pH is said, nobody pours acid. */
    private static boolean isWithoutAcid(Table feed) {
        return feed.has(BOUGHT) && feed.value(BOUGHT) && !feed.has(ACID) && !feed.has(PH);
    }

    /** What was mixed, by its name, and of bottles what goes in of each. */
    private static Liquid liquid(
            Table feed,
            Optional<TwoPart> parts,
            Liquid water,
            Solutions.Made made,
            double ec,
            double ph) {
        String kind =
                parts.isPresent()
                        ? "two bottles"
                        : (feed.value(BOUGHT) ? "bought, taken as " : "") + feed.value(RECIPE);
        List<Liquid.Bottle> bottles = List.of();
        if (parts.isPresent()) {
            double grams = made.strength() * parts.get().gramsPerL();
            bottles = List.of(poured(parts.get().a(), grams), poured(parts.get().b(), grams));
        }
        return new Liquid(
                "%s, EC %s mS/cm, pH %s".formatted(kind, plain(ec), plain(ph)),
                made.composition(),
                bottles,
                parts.map(of -> new Liquid.Dose(made.strength(), labelMsPerCm(of, water))));
    }

    private static double reached(Solutions.Made made, double askedPh) {
        return made.phReached() ? askedPh : Math.floor(10 * made.ph() + 0.5) / 10;
    }

    private static String middleWords(double band) {
        return plain(band) + " mS/cm, the middle of what its crops are fed";
    }

    /** EC at 25 degC of all that the labels say in a water, to the hundredth, mS/cm. */
    private static double labelMsPerCm(TwoPart parts, Liquid water) {
        Composition whole = water.composition().plus(parts.balancedAtLabelStrength());
        return Math.floor(100 * ElectricalConductivity.at25MsPerCm(whole) + 0.5) / 100;
    }

    /** Two bottles by their labels, at the ratio the labels state at full strength. */
    private static Read<Liquid> ofBottles(
            Table feed,
            Read<Liquid> water,
            double rainFrac,
            Solutions solutions,
            Supplier<Read<Double>> middleEc) {
        for (String other : new String[] {"recipe", "analysis"}) {
            if (feed.has(other)) {
                feed.fault(other, "[feed." + other + "] beside bottles", "one of the two", "");
            }
        }
        boolean sound = feed.isSound() && !feed.has("recipe") && !feed.has("analysis");
        Optional<Concentrate> a = bottle(feed.child("part_a"), LiquidKeys.PART_A, "part A");
        Optional<Concentrate> b = bottle(feed.child("part_b"), LiquidKeys.PART_B, "part B");
        if (!feed.has(RATIO)) {
            feed.missing(RATIO);
            sound = false;
        }
        if (!sound || a.isEmpty() || b.isEmpty() || !water.isSound()) {
            return Read.faulty();
        }
        OptionReader labels = new OptionReader("");
        OptionalDouble ratio = labels.ratio("ratio", feed.value(RATIO));
        if (ratio.isEmpty()) {
            feed.faultyValue(RATIO, labels.problems().get(0).allowed(), "");
            return Read.faulty();
        }
        TwoPart parts =
                new TwoPart(a.get(), b.get(), ratio.getAsDouble(), TwoPart.Basis.PARTS_INTO_WATER);
        noteUnnamed(feed, parts);
        Read<Double> middle = feed.has(EC) ? Read.absent() : middleEc.get();
        double ec =
                middle.isSound()
                        ? feed.getOr(EC, middle, LiquidReader::middleWords).value()
                        : feed.getOr(
                                        EC,
                                        Read.of(labelMsPerCm(parts, water.value())),
                                        whole -> plain(whole) + " mS/cm, as the labels say")
                                .value();
        double ph = feed.value(PH);
        Solutions.Mix mix = mix(feed, Optional.of(parts), water.value(), solutions, ec);
        return mix instanceof Solutions.Made made
                ? Read.of(
                        liquid(
                                feed,
                                Optional.of(parts),
                                water.value(),
                                made,
                                ec,
                                noted(feed, made, ph, rainFrac)))
                : refused(feed, mix, plain(ph));
    }

    /** Share of the nitrate up to which what labels leave out goes without saying; assumed. */
    private static final double UNNAMED_FRAC = 0.05;

    private static void noteUnnamed(Table feed, TwoPart parts) {
        double off = parts.chargeErrorMolPerM3();
        if (Math.abs(off) > UNNAMED_FRAC * parts.atLabelStrength().molPerM3(Component.NO3)) {
            feed.note(
                    RATIO,
                    "the two labels leave out "
                            + plain(Math.floor(100 * Math.abs(off) + 0.5) / 100)
                            + " mmol/L of charge at full strength, which counts as "
                            + (off > 0 ? "chloride" : "sodium")
                            + ": look on them for "
                            + (off > 0 ? "sulfate (SO3, S)" : "Ca, Mg, K or ammonium")
                            + ", or salt is told that is not there");
        }
    }

    /** Says why there is no feed; {@code unstated} stands where the key at fault is left out. */
    private static Read<Liquid> refused(Table feed, Solutions.Mix mix, String unstated) {
        if (!(mix instanceof Solutions.Refused refused)) {
            throw new AssertionError("no words for " + mix);
        }
        feed.fault(
                refused.key(),
                feed.has(refused.key()) ? Key.quoted(feed.words(refused.key())) : unstated,
                refused.allowed(),
                "Maybe use a softer water, or rain.");
        return Read.faulty();
    }

    /**
     * Says of an acid that stops short of the pH what it leaves and what would do, and of one for
     * trained staff that it is.
     *
     * @return the pH to name the feed by
     */
    private static double noted(Table feed, Solutions.Made made, double askedPh, double rainFrac) {
        String staff = feed.has(ACID) ? Solutions.CURRENT.trainedStaffOnly(feed.value(ACID)) : "";
        if (!staff.isEmpty()) {
            note(feed, ACID, staff);
        }
        if (isWithoutAcid(feed)) {
            double without = Math.floor(10 * made.ph() + 0.5) / 10;
            note(
                    feed,
                    PH,
                    "no acid is reckoned in a bought feed: in this water it reads pH "
                            + plain(without)
                            + " once it has stood, less where its maker put acid in; state what a"
                            + " meter reads after a day (feed.ph), or the acid that you pour"
                            + " (feed.acid)");
            return without;
        }
        if (made.phReached()) {
            return askedPh;
        }
        double reached = reached(made, askedPh);
        note(
                feed,
                PH,
                "pH "
                        + plain(askedPh)
                        + " is not reached: phosphoric acid stops at the 1 mmol/L of phosphate it"
                        + " may add, a full feed's worth, and leaves pH "
                        + plain(reached)
                        + " once it has stood; "
                        + (made.rainShareFrac().isEmpty()
                                ? "rain or reverse-osmosis water in place of this water comes nearer"
                                : "rain or reverse-osmosis water for "
                                        + plain(
                                                wholePercent(
                                                        1
                                                                - (1 - rainFrac)
                                                                        * (1
                                                                                - made.rainShareFrac()
                                                                                        .getAsDouble())))
                                        + " % of the water would do it (water.rain_share)")
                        + "; or sulfuric acid, which brings none (feed.acid = \"sulfuric\"; above"
                        + " 15 % not for private persons)"
                        + " (gloves and goggles; acid into water)");
        return reached;
    }

    private static double wholePercent(double frac) {
        return Math.floor(100 * frac + 0.5);
    }

    private static void note(Table feed, Key<?> key, String text) {
        List<String> at = List.of("feed", key.name());
        TomlFile file = feed.file();
        int line = feed.has(key) ? file.line(at) : file.line(List.of("feed"));
        file.note(new Note(file.name(), line, "feed." + key.name(), text));
    }

    private static Liquid.Bottle poured(Concentrate part, double gramsPerL) {
        return new Liquid.Bottle(part.name(), gramsPerL, part.millilitres(gramsPerL));
    }

    private static Optional<Concentrate> bottle(Table part, LiquidKeys.Bottle keys, String name) {
        Read<String> label = part.get(keys.label);
        if (label.isAbsent()) {
            part.missing(keys.label);
        }
        if (!label.isSound()) {
            return Optional.empty();
        }
        OptionReader reader = new OptionReader("");
        Optional<Concentrate> read = reader.label("label", name, label.value());
        for (Problem problem : reader.problems()) {
            part.fault(keys.label, problem.found(), problem.allowed(), problem.hint());
        }
        reader.remarks().forEach(remark -> part.note(keys.label, remark));
        return read;
    }

    private static Read<Liquid> analysis(Table analysis, LiquidKeys.Analysis keys, String name) {
        if (!analysis.isSound()) {
            return Read.faulty();
        }
        Map<Component, Double> values = new LinkedHashMap<>();
        for (Ion ion : Ion.values()) {
            Read<Double> value = analysis.get(keys.of(ion));
            if (value.isSound()) {
                values.put(ion.component(), value.value());
            }
        }
        Composition composition = Composition.of(values);
        noteImbalance(analysis, composition);
        return Read.of(new Liquid(name, composition));
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
            analysis.file()
                    .note(
                            new Note(
                                    analysis.file().name(),
                                    analysis.file().line(List.of("water", "analysis")),
                                    "",
                                    "the analysis does not balance: %s mmol/L of positive and %s of"
                                                    .formatted(plain(cations), plain(anions))
                                            + " negative charge; pH will carry the difference"));
        }
    }
}
