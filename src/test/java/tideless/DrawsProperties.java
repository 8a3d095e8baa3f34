package tideless;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;

/** A fixed seed is heard, and so is how often to try: see {@link Draws}. */
class DrawsProperties {
    private static final int TRIES = 7;

    private static final List<Long> ONE = new ArrayList<>();
    private static final List<Long> OTHER = new ArrayList<>();

    @Property(tries = TRIES)
    void draws(@ForAll long any) {
        ONE.add(any);
    }

    @Property(tries = TRIES)
    void draws_again(@ForAll long any) {
        OTHER.add(any);
    }

    @AfterContainer
    static void as_many_as_asked_for_and_alike_from_one_seed() {
        assertEquals(TRIES * Integer.getInteger("tideless.tries", 1), ONE.size());
        boolean fixed = !System.getProperty("tideless.seed", "").isEmpty();
        assertEquals(fixed, ONE.equals(OTHER), ONE + " and " + OTHER);
    }
}
