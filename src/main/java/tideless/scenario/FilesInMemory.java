package tideless.scenario;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** A scenario and the files it names, held as texts. */
public final class FilesInMemory implements ScenarioFiles {
    private final Map<String, String> texts = new LinkedHashMap<>();
    private final String called;

    /** The scenario itself is called in messages by the name its reader is given. */
    public FilesInMemory(String scenario) {
        this("", scenario);
    }

    private FilesInMemory(String called, String text) {
        this.called = called;
        texts.put("", text);
    }

    /**
     * A file for itself, as one that {@link Beside} holds.
     *
     * @param called what messages call it
     */
    static FilesInMemory alone(String called, String text) {
        return new FilesInMemory(called, text);
    }

    /** Those that a scenario on a disk is read from, as far as they can be read. */
    public static FilesInMemory of(Path scenario) {
        FilesInMemory held = new FilesInMemory("");
        ScenarioReader.read(scenario.toString(), held.filledFrom(new FilesOnDisk(scenario)));
        return held;
    }

    private ScenarioFiles filledFrom(ScenarioFiles others) {
        return new ScenarioFiles() {
            @Override
            public String label(String name) {
                return others.label(name);
            }

            @Override
            public Content read(String name, int mostBytes) {
                Content content = others.read(name, mostBytes);
                if (content.unreadable().isEmpty()) {
                    put(name, new String(content.bytes(), StandardCharsets.UTF_8));
                }
                return content;
            }
        };
    }

    /** The files by the names the scenario gives them, itself by an empty one. */
    public Map<String, String> texts() {
        return Collections.unmodifiableMap(texts);
    }

    /** Puts a file in, or another text in its place. */
    public void put(String name, String text) {
        texts.put(name, text);
    }

    @Override
    public String label(String name) {
        return name.isEmpty() ? called : name;
    }

    @Override
    public Content read(String name, int mostBytes) {
        String text = texts.get(name);
        if (text == null) {
            return Content.unreadable("there is no such file");
        }
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return Content.of(bytes.length > mostBytes ? Arrays.copyOf(bytes, mostBytes) : bytes);
    }
}
