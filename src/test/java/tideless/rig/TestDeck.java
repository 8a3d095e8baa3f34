package tideless.rig;

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

    /** A risen level kills. */
    public static Deck drowning() {
        return made(Deck.PLAIN.floatsDownToM(), Deck.PLAIN.solutionCo2Ppm(), true);
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
