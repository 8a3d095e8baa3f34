package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tideless.solution.Acidity;
import tideless.solution.Composition;
import tideless.solution.Contact;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Feed;
import tideless.solution.Reagent;
import tideless.solution.Recipe;
import tideless.solution.SourceWater;
import tideless.solution.TwoPart;

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
    public Composition waterReading(double msPerCm) {
        return SourceWater.reading(msPerCm).composition();
    }

    @Override
    public Composition withRain(Composition water, double rainFrac) {
        return SourceWater.withRain(water, rainFrac);
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
     * about with the acid or, where it lies below already, with potassium bicarbonate; their ions
     * count.
     */
    @Override
    public Mix feed(String recipe, Composition water, double ecMsPerCm, double ph, String acid) {
        return made(Recipe.named(recipe).orElseThrow().composition(), water, ecMsPerCm, ph, acid);
    }

    /** {@inheritDoc} The pH is as of {@link #feed}. */
    @Override
    public Mix feedOf(
            TwoPart bottles, Composition water, double ecMsPerCm, double ph, String acid) {
        return made(bottles.balancedAtLabelStrength(), water, ecMsPerCm, ph, acid);
    }

    private static Mix made(
            Composition salts, Composition water, double ecMsPerCm, double ph, String acid) {
        if (acid.equals(NO_ACID)) {
            return Feed.madeToEc(salts, water, ecMsPerCm) instanceof Feed.Made made
                    ? new Made(
                            made.composition(),
                            made.strength(),
                            Acidity.phInAir(
                                    made.composition(), 25, ElectricalConductivity.AIR_CO2_PPM),
                            true,
                            OptionalDouble.empty())
                    : refusal(Feed.madeToEc(salts, water, ecMsPerCm));
        }
        Reagent down = CURRENT.bottle(acid);
        List<Reagent> reagents =
                List.of(down, Reagent.named("potassium-bicarbonate-10").orElseThrow());
        Feed.Outcome outcome = null;
        for (Reagent reagent : reagents) {
            outcome = Feed.madeWithinCap(salts, water, ecMsPerCm, ph, reagent, Contact.OUTDOOR_AIR);
            if (!(outcome instanceof Feed.Made made)) {
                return refusal(outcome);
            }
            boolean stopped = !made.phReached() && made.reagentMolPerM3() > 0;
            if (made.phReached() || stopped) {
                OptionalDouble rain =
                        stopped
                                ? Feed.rainShareFrac(
                                        salts, water, ecMsPerCm, ph, down, Contact.OUTDOOR_AIR)
                                : OptionalDouble.empty();
                return new Made(made.composition(), made.strength(), made.ph(), !stopped, rain);
            }
        }
        return refusal(outcome);
    }

    @Override
    public Reagent bottle(String acid) {
        return Reagent.named(BOTTLES.get(acid)).orElseThrow();
    }

    @Override
    public String trainedStaffOnly(String acid) {
        Reagent bottle = bottle(acid);
        return bottle.isForTrainedStaff() ? bottle.title() + ": " + bottle.caution() : "";
    }

    private static Mix refusal(Feed.Outcome outcome) {
        if (outcome instanceof Feed.WaterTooSalty water) {
            return new Refused(
                    "ec",
                    "above the %s mS/cm of the water itself with the acid its pH needs"
                            .formatted(plain(water.waterMsPerCm())));
        }
        if (outcome instanceof Feed.OutOfReach reach) {
            return new Refused("ec", "up to " + plain(reach.highestMsPerCm()) + " mS/cm");
        }
        if (outcome instanceof Feed.Made made) {
            return new Refused("ph", "a pH that acid or alkali can reach from " + plain(made.ph()));
        }
        throw new AssertionError("no words for " + outcome);
    }

    /** The bottle behind each name: as strong as anybody may own it, where anybody may. */
    private static final Map<String, String> BOTTLES =
            Map.of(
                    "phosphoric", "phosphoric-30",
                    "nitric", "nitric-38",
                    "sulfuric", "sulfuric-15");
}
