package tideless.scenario;

import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What came of reading a value: it, or that nothing was stated, or a fault, which is told where the
 * value stands.
 *
 * @param <T> what is read
 */
sealed interface Read<T> {
    /** A value that holds, the user's or the default. */
    record Sound<T>(T value) implements Read<T> {
        public Sound {
            Objects.requireNonNull(value, "value");
        }
    }

    /** Nothing was stated and nothing holds in its place. */
    record Absent<T>() implements Read<T> {}

    /**
     * No value that could be used.
     *
     * @param found what is at fault; empty for the whole value
     * @param allowed what may stand there; empty for what the key says
     * @param hint advice; empty when there is none
     */
    record Faulty<T>(String found, String allowed, String hint) implements Read<T> {}

    static <T> Read<T> of(T value) {
        return new Sound<>(value);
    }

    static <T> Read<T> absent() {
        return new Absent<>();
    }

    /** A fault that has been told already, or needs no more words than its key has. */
    static <T> Read<T> faulty() {
        return new Faulty<>("", "", "");
    }

    /** As {@link #faulty()}, with advice. */
    static <T> Read<T> faulty(String hint) {
        return new Faulty<>("", "", hint);
    }

    default boolean isSound() {
        return this instanceof Sound;
    }

    default boolean isAbsent() {
        return this instanceof Absent;
    }

    default boolean isFaulty() {
        return this instanceof Faulty;
    }

    /** The value; only where it {@link #isSound()}. */
    default T value() {
        if (this instanceof Sound<T> sound) {
            return sound.value;
        }
        throw new NoSuchElementException("nothing sound was read: " + this);
    }

    default T orElse(T otherwise) {
        return this instanceof Sound<T> sound ? sound.value : otherwise;
    }

    /** Whether there is a value and a test holds of it. */
    default void ifSound(Consumer<T> use) {
        if (isSound()) {
            use.accept(value());
        }
    }

    default boolean holds(Predicate<T> test) {
        return this instanceof Sound<T> sound && test.test(sound.value);
    }

    default <R> Read<R> map(Function<T, R> change) {
        return this instanceof Sound<T> sound ? of(change.apply(sound.value)) : lacking();
    }

    default <R> Read<R> then(Function<T, Read<R>> change) {
        return this instanceof Sound<T> sound ? change.apply(sound.value) : lacking();
    }

    /** The same want of a value, of another type. */
    private <R> Read<R> lacking() {
        return this instanceof Faulty<T> fault
                ? new Faulty<>(fault.found, fault.allowed, fault.hint)
                : absent();
    }

    /** Of two values one; a fault where either is none. */
    static <A, B, R> Read<R> both(Read<A> a, Read<B> b, BiFunction<A, B, R> made) {
        return a.isSound() && b.isSound() ? of(made.apply(a.value(), b.value())) : faulty();
    }

    static boolean allSound(Read<?>... reads) {
        for (Read<?> read : reads) {
            if (!read.isSound()) {
                return false;
            }
        }
        return true;
    }
}
