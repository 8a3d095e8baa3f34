package tideless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.sim.Event;

/** The glossary says each word once, and every word that a run tells. */
class GlossaryTest {
    private static List<String> words() throws IOException {
        List<String> words = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("docs/glossary.md"))) {
            if (line.startsWith("| ") && !line.startsWith("| --") && !line.startsWith("| word ")) {
                words.addAll(List.of(line.split("\\|")[1].strip().split(", ")));
            }
        }
        return words;
    }

    @Test
    void each_word_stands_once() throws IOException {
        Set<String> seen = new HashSet<>();
        List<String> twice = words().stream().filter(word -> !seen.add(word)).toList();
        assertEquals(List.of(), twice);
        assertTrue(seen.size() >= 80, "words seen: " + seen.size());
    }

    @Test
    void every_task_warning_and_event_is_explained() throws IOException {
        List<Enum<?>> kinds = new ArrayList<>(List.of(Task.Kind.values()));
        kinds.addAll(List.of(Warning.Kind.values()));
        kinds.addAll(List.of(Event.Kind.values()));
        Set<String> words = new HashSet<>();
        words().forEach(word -> words.add(word.toLowerCase(Locale.ROOT)));
        List<String> missing =
                kinds.stream()
                        .map(kind -> kind.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                        .filter(word -> !words.contains(word))
                        .toList();
        assertEquals(List.of(), missing);
    }
}
