package tideless.rig;

import java.util.Objects;
import tideless.solution.Composition;

/**
 * A liquid by what is dissolved in it.
 *
 * @param name how the user named it
 * @param composition mol/m3 of each component
 */
public record Liquid(String name, Composition composition) {
    public Liquid {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(composition, "composition");
    }
}
