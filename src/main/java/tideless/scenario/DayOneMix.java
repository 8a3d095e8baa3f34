package tideless.scenario;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tideless.rig.Liquid;
import tideless.rig.Scenario;
import tideless.solution.Acidity;
import tideless.solution.Concentrate;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Mix;
import tideless.solution.MixingSheet;
import tideless.solution.Reagent;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;
import tideless.solution.Standing;
import tideless.solution.TwoPart;
import tideless.solution.Weighing;

/** What to weigh and pour for a scenario's own feed. */
public final class DayOneMix {
    private DayOneMix() {}

    /**
     * The mixing sheet of so much of its feed.
     *
     * @param litres finished, L
     * @return empty where there is nothing to mix, where the feed is told by its analysis alone or
     *     bought ready, or where no weighing gives it
     */
    public static Optional<Mix> of(Reading.Good good, double litres) {
        if (!(litres > 0)) {
            return Optional.empty();
        }
        Map<String, String> values = new HashMap<>();
        good.values().forEach(value -> values.put(value.key(), value.value()));
        Scenario scenario = good.scenario();
        Reagent acid =
                Solutions.CURRENT.bottle(values.getOrDefault("feed.acid", Solutions.ACIDS.get(0)));
        Reagent base = Reagent.named("potassium-bicarbonate-10").orElseThrow();
        return supply(values)
                .map(
                        supply ->
                                new MixingSheet.Wish(
                                        litres,
                                        ElectricalConductivity.at25MsPerCm(
                                                scenario.feed().composition()),
                                        OptionalDouble.of(
                                                Acidity.phClosed(
                                                        scenario.feed().composition(), 25)),
                                        water(scenario.sourceWater()),
                                        supply,
                                        acid,
                                        base))
                .flatMap(
                        wish ->
                                MixingSheet.ofFeed(wish) instanceof MixingSheet sheet
                                        ? Optional.of(
                                                new Mix(wish, sheet, Optional.empty(), List.of()))
                                        : Optional.empty());
    }

    private static SourceWater water(Liquid water) {
        return SourceWater.named(water.name())
                .orElseGet(
                        () ->
                                new SourceWater(
                                        "own",
                                        water.name(),
                                        water.composition(),
                                        Acidity.phInAir(
                                                water.composition(),
                                                25,
                                                ElectricalConductivity.AIR_CO2_PPM),
                                        "the scenario",
                                        Standing.STATED));
    }

    private static Optional<MixingSheet.Supply> supply(Map<String, String> values) {
        if ("true".equals(values.get("feed.bought"))) {
            return Optional.empty();
        }
        String recipe = values.get("feed.recipe");
        if (recipe != null) {
            return Recipe.named(recipe)
                    .flatMap(of -> Weighing.asSold(of.composition()))
                    .map(MixingSheet.FromSalts::new);
        }
        String labelA = values.get("feed.part_a.label");
        String labelB = values.get("feed.part_b.label");
        String ratio = values.get("feed.ratio");
        if (labelA == null || labelB == null || ratio == null) {
            return Optional.empty();
        }
        OptionReader read = new OptionReader("");
        Optional<Concentrate> a = read.label("label", "part A", labelA);
        Optional<Concentrate> b = read.label("label", "part B", labelB);
        OptionalDouble parts = read.ratio("ratio", ratio);
        return a.isEmpty() || b.isEmpty() || parts.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new MixingSheet.FromConcentrate(
                                new TwoPart(
                                        a.get(),
                                        b.get(),
                                        parts.getAsDouble(),
                                        TwoPart.Basis.PARTS_INTO_WATER)));
    }
}
