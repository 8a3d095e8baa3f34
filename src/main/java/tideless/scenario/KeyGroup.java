package tideless.scenario;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Keys that are declared together and stand in one table, in the order they are explained. */
final class KeyGroup {
    private final List<Key<?>> keys = new ArrayList<>();

    <T> Key<T> add(Key<T> key) {
        keys.add(key);
        return key;
    }

    List<Key<?>> keys() {
        return Collections.unmodifiableList(keys);
    }
}
