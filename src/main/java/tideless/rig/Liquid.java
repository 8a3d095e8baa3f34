package tideless.rig;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tideless.solution.Composition;

/**
 * A liquid by what is dissolved in it.
 *
 * @param name how the user named it
 * @param composition mol/m3 of each component
 * @param bottles what of which bottles goes into it; none where it is not made of bottles
 * @param dose how it stands to what the bottles' labels say; empty where it is not made of bottles
 */
public record Liquid(
        String name, Composition composition, List<Bottle> bottles, Optional<Dose> dose) {
    public Liquid {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(composition, "composition");
        bottles = List.copyOf(bottles);
    }

    /** Not made of bottles. */
    public Liquid(String name, Composition composition) {
        this(name, composition, List.of(), Optional.empty());
    }

    /** The same so many times as strong, water and all, told as made of the same bottles. */
    public Liquid times(double factor) {
        return new Liquid(name, composition.times(factor), bottles, dose);
    }

    /**
     * A feed beside the one that its bottles' labels ask for.
     *
     * @param frac of what the labels say, 1 = all
     * @param labelMsPerCm what all of it reads in the same water, EC at 25 degC, mS/cm
     */
    public record Dose(double frac, double labelMsPerCm) {}

    /**
     * A concentrate and what goes of it into the liquid.
     *
     * @param name as "part A"
     * @param gramsPerL grams in a litre of the liquid
     * @param millilitresPerL millilitres in a litre of the liquid; NaN for a powder, or where no
     *     density is stated
     */
    public record Bottle(String name, double gramsPerL, double millilitresPerL) {
        public Bottle {
            Objects.requireNonNull(name, "name");
        }
    }
}
