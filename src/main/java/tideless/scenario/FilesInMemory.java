package tideless.scenario;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** A scenario and the files it names, held as texts. */
public final class FilesInMemory implements ScenarioFiles {
    private final Map<String, String> texts = new LinkedHashMap<>();

    /** The scenario itself is called in messages by the name its reader is given. */
    public FilesInMemory(String scenario) {
        texts.put("", scenario);
    }

    /** Puts a file in, or another text in its place. */
    public void put(String name, String text) {
        texts.put(name, text);
    }

    @Override
    public String label(String name) {
        return name;
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
