package tideless.words;

/** What is said of work that was broken off. */
public final class BrokenWords {
    private BrokenWords() {}

    /** Of work that came to nothing before. */
    public static String nothingSaid() {
        return "Broken off before anything could be said.";
    }
}
