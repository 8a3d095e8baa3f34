package tideless.scenario;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What several readings of nearly the same scenario share: immutable things, made the first time
 * they are asked for. May be used by several threads; of a thing that two make at once the first
 * counts.
 */
final class MadeOnce {
    private final Map<Object, Object> made = new HashMap<>();

    /**
     * A thing by all that it is made from.
     *
     * @param key a record of its own kind for each kind of thing
     */
    @SuppressWarnings("unchecked") // the key's own type tells what is kept under it
    <T> T get(Object key, Supplier<T> make) {
        Object kept = kept(key);
        return kept != null ? (T) kept : (T) keep(key, make.get());
    }

    /** What was read, and what was noted beside. */
    private record Told<T>(Read<T> read, List<Note> notes) {}

    /**
     * Something read, if it is sound; what was noted of it is noted in every reading.
     *
     * @param source what is told of it
     */
    @SuppressWarnings("unchecked") // likewise
    <T> Read<T> read(Object key, TomlFile source, Supplier<Read<T>> read) {
        Told<T> kept = (Told<T>) kept(key);
        if (kept != null) {
            kept.notes.forEach(source::note);
            return kept.read;
        }
        int before = source.notes().size();
        Read<T> result = read.get();
        if (!result.isSound()) {
            return result;
        }
        List<Note> notes = source.notes();
        Told<T> told = new Told<>(result, List.copyOf(notes.subList(before, notes.size())));
        return ((Told<T>) keep(key, told)).read;
    }

    private synchronized Object kept(Object key) {
        return made.get(key);
    }

    private synchronized Object keep(Object key, Object value) {
        Object first = made.putIfAbsent(key, value);
        return first == null ? value : first;
    }
}
