package tideless.scenario;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Files a scenario is read with that it does not name itself.
 *
 * @param log a log in place of the one it names, if any
 * @param corrected corrections that {@code fit} made for it, in place of those it names, if any
 * @param asStated whether corrections that it names are left aside
 * @param pensPpm the unit that a pen's ppm is in a log, as "ppm-500"; empty where the scenario is
 *     to say
 */
public record Beside(
        Optional<ScenarioFiles> log,
        Optional<ScenarioFiles> corrected,
        boolean asStated,
        String pensPpm) {
    private static final String LOG = "log";
    private static final String CORRECTED = "corrected";

    /** None. */
    public static final Beside NOTHING = new Beside(Optional.empty(), Optional.empty(), false, "");

    /**
     * Files on a disk.
     *
     * @param log null for none
     * @param corrected null for none
     */
    public static Beside files(Path log, Path corrected) {
        return new Beside(on(log), on(corrected), false, "");
    }

    /**
     * Of who learns from a log, anew from the start.
     *
     * @param log null for none
     */
    public static Beside asStated(Path log) {
        return new Beside(on(log), Optional.empty(), true, "");
    }

    /** The same, ppm of a log being of this pen. */
    public Beside withPen(String ppm) {
        return new Beside(log, corrected, asStated, ppm);
    }

    /** Those that there are. */
    List<ScenarioFiles> files() {
        return Stream.of(log, corrected).flatMap(Optional::stream).toList();
    }

    /**
     * One of them.
     *
     * @param kind "log" or "corrected"
     * @param name what messages call it
     */
    public record Text(String kind, String name, String text) {}

    /**
     * Files held as texts.
     *
     * @param texts one of a kind at most
     * @throws IllegalArgumentException when one is of another kind
     */
    public static Beside of(Collection<Text> texts) {
        Optional<ScenarioFiles> log = Optional.empty();
        Optional<ScenarioFiles> corrected = Optional.empty();
        for (Text one : texts) {
            Optional<ScenarioFiles> held = Optional.of(FilesInMemory.alone(one.name(), one.text()));
            switch (one.kind()) {
                case LOG -> log = held;
                case CORRECTED -> corrected = held;
                default -> throw new IllegalArgumentException("nothing is read as " + one.kind());
            }
        }
        return new Beside(log, corrected, false, "");
    }

    /** Those there are, as texts, where they were read before. */
    public List<Text> texts() {
        List<Text> texts = new ArrayList<>();
        log.ifPresent(files -> texts.add(text(LOG, files)));
        corrected.ifPresent(files -> texts.add(text(CORRECTED, files)));
        return texts;
    }

    private static Text text(String kind, ScenarioFiles files) {
        byte[] bytes = files.read("", TextFile.MEBIBYTE).bytes();
        return new Text(kind, files.label(""), new String(bytes, StandardCharsets.UTF_8));
    }

    private static Optional<ScenarioFiles> on(Path path) {
        return Optional.ofNullable(path).map(FilesOnDisk::new);
    }
}
