package tideless.rig;

/** {@link Deck#PLAIN} with one thing changed. */
public final class TestDeck {
    private TestDeck() {}

    /** It floats down to a level, m. */
    public static Deck floatingDownToM(double levelM) {
        Deck plain = Deck.PLAIN;
        return new Deck(
                levelM,
                plain.cupWaterM3(),
                plain.solutionCo2Ppm(),
                plain.drowningKills(),
                plain.aerated());
    }

    /** The solution holds a stated carbon dioxide, ppm. */
    public static Deck solutionCo2Ppm(double ppm) {
        Deck plain = Deck.PLAIN;
        return new Deck(
                plain.floatsDownToM(),
                plain.cupWaterM3(),
                ppm,
                plain.drowningKills(),
                plain.aerated());
    }

    /** A risen level kills. */
    public static Deck drowning() {
        Deck plain = Deck.PLAIN;
        return new Deck(
                plain.floatsDownToM(),
                plain.cupWaterM3(),
                plain.solutionCo2Ppm(),
                true,
                plain.aerated());
    }
}
