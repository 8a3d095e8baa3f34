package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import tideless.crop.CropTraits;

/** The crops that come with the program. */
public final class Crops {
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

    /** The known name nearest to a misspelt one, or an empty text when none is near. */
    public static String nearest(String name) {
        List<String> near = new ArrayList<>(names());
        near.removeIf(known -> KeyTable.editDistance(known, name) > 2);
        return near.isEmpty() ? "" : near.get(0);
    }
}
