package tideless.rig;

import java.util.OptionalDouble;

/** {@link Deck#PLAIN} with one thing changed; a deck gains a component here once. */
public final class TestDeck {
    private TestDeck() {}

    /** It floats down to a level, m. */
    public static Deck floatingDownToM(double levelM) {
        return made(levelM, Deck.PLAIN.solutionCo2Ppm(), Deck.PLAIN.drowningKills());
    }

    /** The solution holds a stated carbon dioxide, ppm. */
    public static Deck solutionCo2Ppm(double ppm) {
        return made(Deck.PLAIN.floatsDownToM(), ppm, Deck.PLAIN.drowningKills());
    }

    /** A risen level kills, and plugs and cups hold nothing. */
    public static Deck drowning() {
        return new Deck(
                Deck.PLAIN.floatsDownToM(),
                OptionalDouble.of(0),
                Deck.PLAIN.solutionCo2Ppm(),
                true,
                Deck.PLAIN.aerated());
    }

    /** Plug and filling of a cup hold so much, m3. */
    public static Deck cupWaterM3(double waterM3) {
        return new Deck(
                Deck.PLAIN.floatsDownToM(),
                OptionalDouble.of(waterM3),
                Deck.PLAIN.solutionCo2Ppm(),
                Deck.PLAIN.drowningKills(),
                Deck.PLAIN.aerated());
    }

    private static Deck made(double floatsDownToM, double solutionCo2Ppm, boolean drowningKills) {
        return new Deck(
                floatsDownToM,
                Deck.PLAIN.cupWaterM3(),
                solutionCo2Ppm,
                drowningKills,
                Deck.PLAIN.aerated());
    }
}
