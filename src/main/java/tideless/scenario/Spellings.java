package tideless.scenario;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** What each spelling of a choice stands for, in the order they are shown. */
final class Spellings {
    private Spellings() {}

    static <T> Map<String, T> of(T[] all, Function<T, String> spelling) {
        Map<String, T> meanings = new LinkedHashMap<>();
        for (T one : all) {
            meanings.put(spelling.apply(one), one);
        }
        return meanings;
    }

    static <T> Map<String, T> of(String a, T first, String b, T second) {
        Map<String, T> meanings = new LinkedHashMap<>();
        meanings.put(a, first);
        meanings.put(b, second);
        return meanings;
    }

    static <T> Map<String, T> of(String a, T first, String b, T second, String c, T third) {
        Map<String, T> meanings = of(a, first, b, second);
        meanings.put(c, third);
        return meanings;
    }
}
