package tideless.scenario;

import java.util.List;
import tideless.solution.Composition;
import tideless.solution.Contact;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Feed;
import tideless.solution.Reagent;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;

/** {@link Solutions} by the solution room's recipes, waters and speciation. */
final class Chemistry implements Solutions {

    @Override
    public List<String> waters() {
        return SourceWater.names();
    }

    @Override
    public Composition water(String name) {
        return SourceWater.named(name).orElseThrow().composition();
    }

    @Override
    public List<String> recipes() {
        return Recipe.names();
    }

    @Override
    public double publishedEcMsPerCm(String recipe) {
        return Recipe.named(recipe).orElseThrow().publishedEcMsPerCm();
    }

    /**
     * {@inheritDoc} The pH is that in contact with air, where a tray's solution ends up, brought
     * about with nitric acid or, when it lies below already, potassium hydroxide; their ions count.
     */
    @Override
    public Composition feed(String recipe, Composition water, double ecMsPerCm, double ph) {
        Composition salts = Recipe.named(recipe).orElseThrow().composition();
        Reagent alkali = Reagent.named("potassium-hydroxide-50").orElseThrow();
        for (Reagent reagent : List.of(Reagent.nitric(), alkali)) {
            Feed.Outcome outcome =
                    Feed.madeToEcAndPh(salts, water, ecMsPerCm, ph, reagent, Contact.OUTDOOR_AIR);
            if (outcome instanceof Feed.Made made && made.phReached()) {
                return made.composition();
            }
        }
        if (Feed.madeToEc(salts, water, ecMsPerCm) instanceof Feed.Made made) {
            return made.composition();
        }
        throw new IllegalArgumentException(
                "no strength of %s in this water reads %s mS/cm".formatted(recipe, ecMsPerCm));
    }

    @Override
    public double ecMsPerCm(Composition water) {
        return ElectricalConductivity.at25MsPerCm(water);
    }
}
