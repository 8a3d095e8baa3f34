package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.OptionalDouble;

/**
 * How a tray's plants hang over its solution, beyond the height of their cups.
 *
 * @param floatsDownToM level down to which the deck floats, cups and all, m above the floor; it
 *     rests there while the solution falls further. Infinite for a deck that lies on the rim
 * @param cupWaterM3 water that plug and filling of one cup can give a plant whose roots are all
 *     dry, m3; empty for what the crop's own plug holds, in its first days
 * @param solutionCo2Ppm carbon dioxide the solution stands with, ppm; 0 to work it out from what
 *     the roots breathe
 * @param drowningKills whether plants without a root in air are lost after the crop's days
 * @param aerated whether the solution is kept at the oxygen of the air, as by an air stone
 */
@RecordBuilder
public record Deck(
        double floatsDownToM,
        OptionalDouble cupWaterM3,
        double solutionCo2Ppm,
        boolean drowningKills,
        boolean aerated)
        implements DeckBuilder.With {
    /** A fixed deck, plugs in bare cups, the roots' own carbon dioxide; nobody drowns. */
    public static final Deck PLAIN =
            new Deck(Double.POSITIVE_INFINITY, OptionalDouble.empty(), 0, false, false);

    public Deck {
        if (!(floatsDownToM >= 0)) {
            throw new IllegalArgumentException(
                    "floatsDownToM must be at least 0, was " + floatsDownToM);
        }
        if (!(cupWaterM3.orElse(0) >= 0)) {
            throw new IllegalArgumentException("cupWaterM3 must be at least 0, was " + cupWaterM3);
        }
        if (!(solutionCo2Ppm >= 0 && solutionCo2Ppm <= 1e6)) {
            throw new IllegalArgumentException(
                    "solutionCo2Ppm must lie in 0 to 1e6, was " + solutionCo2Ppm);
        }
    }

    /** Whether it floats at all. */
    public boolean floats() {
        return floatsDownToM < Double.POSITIVE_INFINITY;
    }

    /**
     * Height of its underside over a level, m above the floor: afloat on it, or at the rim.
     *
     * @param rimM height of the rim, m
     */
    public double undersideM(double levelM, double rimM) {
        return floats() ? Math.max(floatsDownToM, levelM) : rimM;
    }

    /**
     * Height of the cups' underside over a level, m above the floor, at least 0.
     *
     * @param rimM height of the rim, m
     * @param cupBottomM the same with the deck on the rim, m
     */
    public double cupBottomM(double levelM, double rimM, double cupBottomM) {
        return floats() ? Math.max(0, undersideM(levelM, rimM) - (rimM - cupBottomM)) : cupBottomM;
    }
}
