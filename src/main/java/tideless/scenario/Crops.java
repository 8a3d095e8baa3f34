package tideless.scenario;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.crop.CropTraits;

/** The crops that come with the program. */
public final class Crops {
    /** Everyday English names of the same crops; from memory. */
    private static final Map<String, String> ALSO_CALLED =
            Map.ofEntries(
                    Map.entry("arugula", "rocket"),
                    Map.entry("rucola", "rocket"),
                    Map.entry("bell-pepper", "sweet-pepper"),
                    Map.entry("bok-choi", "pak-choi"),
                    Map.entry("bok-choy", "pak-choi"),
                    Map.entry("pak-choy", "pak-choi"),
                    Map.entry("chili-pepper", "chilli"),
                    Map.entry("chile", "chilli"),
                    Map.entry("hot-pepper", "chilli"),
                    Map.entry("cilantro", "coriander"),
                    Map.entry("swiss-chard", "chard"),
                    Map.entry("paprika", "sweet-pepper"),
                    Map.entry("salad", "lettuce"),
                    Map.entry("patio-tomato", "dwarf-tomato"));

    /** Names of fruit, not of plants: which of the crops it is has to be said. */
    private static final Map<String, List<String>> KINDS =
            Map.of(
                    "cherry-tomato", List.of("dwarf-tomato", "tomato"),
                    "cherry-tomatoes", List.of("dwarf-tomato", "tomato"),
                    "cocktail-tomato", List.of("dwarf-tomato", "tomato"),
                    "grape-tomato", List.of("dwarf-tomato", "tomato"));

    private Crops() {}

    /** Their names, in the order of the library. */
    public static List<String> names() {
        return CropLibrary.SHIPPED.names();
    }

    /**
     * One crop.
     *
     * @param name one of {@link #names()}
     * @throws IllegalArgumentException when there is none of that name
     */
    public static CropTraits named(String name) {
        if (!names().contains(name)) {
            throw new IllegalArgumentException(
                    "no crop is called " + name + "; there are " + String.join(", ", names()));
        }
        TomlFile file = new TomlFile(CropLibrary.SHIPPED.label(name));
        Read<CropTraits> traits = CropReader.read(file, CropLibrary.SHIPPED.text(name));
        if (!traits.isSound()) {
            throw new IllegalStateException("a shipped crop is faulty: " + file.problems());
        }
        return traits.value();
    }

    /**
     * What is known of how well one crop is met; the table is made with docs/validation.md.
     *
     * @param name one of {@link #names()}
     */
    public static Judged judged(String name) {
        return Stream.of(CropLibrary.SHIPPED.judged().split("\n"))
                .filter(line -> line.startsWith(name + ","))
                .map(Judged::of)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("judged.csv has no line of " + name));
    }

    /**
     * What somebody may have meant by a name that no crop has, as a question; an empty text where
     * none is near.
     *
     * @param names those there are
     */
    public static String meant(String name, List<String> names) {
        List<String> kinds = KINDS.getOrDefault(plain(name), List.of());
        if (!kinds.isEmpty() && names.containsAll(kinds)) {
            return kinds.stream()
                    .map(kind -> Key.quoted(kind) + " (" + named(kind).about() + ")")
                    .collect(Collectors.joining(" or ", "Did you mean ", "?"));
        }
        String known = alsoCalled(name);
        String near = names.contains(known) ? known : Spelling.nearest(name, names);
        return near.isEmpty() ? "" : "Did you mean " + Key.quoted(near) + "?";
    }

    /** Whether a text calls a crop by its name here, as one thing or several. */
    public static boolean isNamedIn(String text, String name) {
        String plain = text.toLowerCase(Locale.ROOT).replace(' ', '-');
        return plain.contains(name)
                || name.length() > 1 && plain.contains(name.substring(0, name.length() - 1));
    }

    /** The name here of a crop that is also called otherwise, or an empty text. */
    static String alsoCalled(String name) {
        return ALSO_CALLED.getOrDefault(plain(name), "");
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replace(' ', '-');
    }
}
