package tideless.scenario;

import java.util.Objects;

/**
 * One value that holds in a scenario, as {@code show} prints it.
 *
 * @param key the full key, as {@code tray.bench.depth}
 * @param value in the user's own words, or the default in words
 * @param isDefault whether the user left it out
 * @param line where it stands, counted from 1; 0 for a default
 */
public record EffectiveValue(String key, String value, boolean isDefault, int line) {
    public EffectiveValue {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(value, "value");
    }
}
