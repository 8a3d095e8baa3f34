package tideless.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/** Crops that are known by name. */
interface CropLibrary {
    /** The crops that come with the program: resource files beside an index. */
    @SuppressWarnings("ClassInitializationDeadlock") // nobody reaches Resources but through here
    CropLibrary SHIPPED = new Resources("/tideless/crop/");

    /** Names, in the order of the index. */
    List<String> names();

    /** The crop file of a name out of {@link #names()}. */
    String text(String name);

    /** A line for each crop: how far it was held beside what is published ({@link Judged}). */
    default String judged() {
        return "";
    }

    /**
     * Where crops made of these files are kept.
     *
     * @param once what the readings of one scenario share
     */
    default MadeOnce kept(MadeOnce once) {
        return once;
    }

    /** What to call the file of a name in a message. */
    default String label(String name) {
        return "crop " + name;
    }

    /**
     * A library each of whose files is read once.
     *
     * @param library the one that reads
     */
    record Once(CropLibrary library, MadeOnce once) implements CropLibrary {
        private record Names() {}

        private record Text(String name) {}

        @Override
        public List<String> names() {
            return once.get(new Names(), library::names);
        }

        @Override
        public String text(String name) {
            return once.get(new Text(name), () -> library.text(name));
        }

        @Override
        public String judged() {
            return library.judged();
        }

        @Override
        public MadeOnce kept(MadeOnce once) {
            return library.kept(once);
        }

        @Override
        public String label(String name) {
            return library.label(name);
        }
    }

    /** Crop files in a folder of resources, listed one name a line in {@code index.txt}. */
    record Resources(String folder) implements CropLibrary {
        private static final MadeOnce UNCHANGING = new MadeOnce();

        @Override
        public List<String> names() {
            String index = resource("index.txt");
            return index == null
                    ? List.of()
                    : Stream.of(index.split("\n"))
                            .map(String::strip)
                            .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                            .map(line -> line.replaceAll("\\.toml$", ""))
                            .toList();
        }

        @Override
        public String text(String name) {
            String text = resource(name + ".toml");
            if (text == null) {
                throw new IllegalStateException("the index names a crop without a file: " + name);
            }
            return text;
        }

        @Override
        public String judged() {
            return resource("judged.csv");
        }

        /** A resource never changes: its crop is read once in the life of the program. */
        @Override
        public MadeOnce kept(MadeOnce once) {
            return UNCHANGING;
        }

        private String resource(String name) {
            try (InputStream in = CropLibrary.class.getResourceAsStream(folder + name)) {
                return in == null ? null : new String(in.readAllBytes(), StandardCharsets.UTF_8);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
