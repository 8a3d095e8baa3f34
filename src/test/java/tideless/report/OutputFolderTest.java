package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutputFolderTest {
    @TempDir Path dir;

    private static final Map<String, byte[]> SET = new LinkedHashMap<>();

    static {
        SET.put("a.csv", bytes("new a"));
        SET.put("b.csv", bytes("new b"));
        SET.put("c.csv", bytes("new c"));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Every file under a folder, with what it holds. */
    private static Map<String, String> tree(Path folder) throws IOException {
        Map<String, String> tree = new TreeMap<>();
        try (var all = Files.walk(folder)) {
            for (Path at : all.toList()) {
                String name = folder.relativize(at).toString();
                tree.put(name, Files.isDirectory(at) ? "/" : Files.readString(at));
            }
        }
        return tree;
    }

    /** A disk that fails at its n-th write or move. */
    private static final class FailingDisk implements OutputFolder.Disk {
        private final int writes;
        private final int moves;
        private final IOException fault;
        private int written;
        private int moved;

        FailingDisk(int writes, int moves, IOException fault) {
            this.writes = writes;
            this.moves = moves;
            this.fault = fault;
        }

        @Override
        public void write(Path file, byte[] content) throws IOException {
            if (++written == writes) {
                Files.write(file, bytes("ne"));
                throw fault;
            }
            Files.write(file, content);
        }

        @Override
        public void move(Path from, Path to) throws IOException {
            if (++moved == moves) {
                throw fault;
            }
            Files.move(from, to);
        }
    }

    @Test
    void a_set_is_written_in_order_and_other_files_stay() throws IOException {
        Files.writeString(dir.resolve("notes.txt"), "mine");
        Files.writeString(dir.resolve("b.csv"), "old b");
        assertThat(OutputFolder.write(dir, SET))
                .containsExactly(dir.resolve("a.csv"), dir.resolve("b.csv"), dir.resolve("c.csv"));
        assertThat(tree(dir))
                .containsExactlyInAnyOrderEntriesOf(
                        Map.of(
                                "",
                                "/",
                                "notes.txt",
                                "mine",
                                "a.csv",
                                "new a",
                                "b.csv",
                                "new b",
                                "c.csv",
                                "new c"));
    }

    @Test
    void missing_folders_are_made() throws IOException {
        Path deep = dir.resolve("x/y/z");
        OutputFolder.write(deep, SET);
        assertThat(deep.resolve("c.csv")).hasContent("new c");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void a_full_disk_leaves_everything_as_it_was(int atWrite) throws IOException {
        Files.writeString(dir.resolve("b.csv"), "old b");
        Map<String, String> before = tree(dir);
        IOException full = new IOException("No space left on device");
        assertThatThrownBy(() -> OutputFolder.write(dir, SET, new FailingDisk(atWrite, 0, full)))
                .isInstanceOf(OutputFolder.NotWritten.class)
                .hasMessageStartingWith(dir.toString())
                .hasMessageContaining(List.of("a.csv", "b.csv", "c.csv").get(atWrite - 1))
                .hasMessageEndingWith(": the disk is full");
        assertThat(tree(dir)).isEqualTo(before);
    }

    // Four moves: a in, the old b aside, the new b in, c in.
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void a_failing_move_leaves_everything_as_it_was(int atMove) throws IOException {
        Files.writeString(dir.resolve("b.csv"), "old b");
        Map<String, String> before = tree(dir);
        IOException denied = new AccessDeniedException("x");
        assertThatThrownBy(() -> OutputFolder.write(dir, SET, new FailingDisk(0, atMove, denied)))
                .isInstanceOf(OutputFolder.NotWritten.class)
                .hasMessageEndingWith(": no permission to write there");
        assertThat(tree(dir)).isEqualTo(before);
    }

    @Test
    void folders_made_on_the_way_are_gone_after_a_failure() throws IOException {
        IOException full = new IOException("No space left on device");
        assertThatThrownBy(
                        () ->
                                OutputFolder.write(
                                        dir.resolve("x/y"), SET, new FailingDisk(2, 0, full)))
                .isInstanceOf(OutputFolder.NotWritten.class);
        assertThat(tree(dir)).containsOnlyKeys("");
    }

    @Test
    void a_file_in_the_folders_place_is_named() throws IOException {
        Path file = Files.writeString(dir.resolve("out"), "mine");
        assertThatThrownBy(() -> OutputFolder.write(file, SET))
                .hasMessage(file + ": is a file, not a folder");
        assertThatThrownBy(() -> OutputFolder.write(file.resolve("deeper"), SET))
                .hasMessage(file.resolve("deeper") + ": " + file + " is a file, not a folder");
        assertThat(file).hasContent("mine");
    }

    @Test
    void a_folder_in_a_files_place_is_left_alone() throws IOException {
        Files.createDirectory(dir.resolve("c.csv"));
        Files.writeString(dir.resolve("c.csv/kept"), "mine");
        Map<String, String> before = tree(dir);
        assertThatThrownBy(() -> OutputFolder.write(dir, SET))
                .hasMessageContaining("c.csv: is a folder");
        assertThat(tree(dir)).isEqualTo(before);
    }

    @Test
    void a_file_that_was_read_is_not_written_over() throws IOException {
        Path input = Files.writeString(dir.resolve("b.csv"), "measured");
        assertThatThrownBy(() -> OutputFolder.write(dir, SET, List.of(input)))
                .isInstanceOf(OutputFolder.WouldOverwrite.class)
                .hasMessageContaining("b.csv: the scenario reads this file");
        assertThat(tree(dir)).containsEntry("b.csv", "measured").hasSize(2);
        Path link = Files.createSymbolicLink(dir.resolve("link.csv"), input);
        assertThatThrownBy(() -> OutputFolder.write(dir, SET, List.of(link)))
                .isInstanceOf(OutputFolder.WouldOverwrite.class);
    }

    @Test
    void what_a_killed_process_left_is_swept_and_its_old_files_go_back() throws IOException {
        Path left = Files.createDirectories(dir.resolve(PartFolder.NAME + "1"));
        Files.writeString(left.resolve(PartFolder.LOCK), "");
        Files.writeString(left.resolve("a.csv"), "half");
        Path former = Files.createDirectory(left.resolve(PartFolder.FORMER));
        Files.writeString(former.resolve("old.csv"), "old");
        OutputFolder.write(dir, SET);
        assertThat(tree(dir).keySet()).containsExactly("", "a.csv", "b.csv", "c.csv", "old.csv");
        assertThat(tree(dir)).containsEntry("old.csv", "old").containsEntry("a.csv", "new a");
    }

    @Test
    void the_part_folder_of_a_living_process_is_left_alone() throws IOException {
        PartFolder other = PartFolder.in(dir);
        Files.writeString(other.path().resolve("a.csv"), "theirs");
        OutputFolder.write(dir, SET);
        assertThat(other.path().resolve("a.csv")).hasContent("theirs");
        other.remove();
        assertThat(tree(dir).keySet()).containsExactly("", "a.csv", "b.csv", "c.csv");
    }

    @Test
    void a_process_that_is_asked_to_end_leaves_no_part_folder_and_begins_no_work()
            throws IOException {
        PartFolder part = PartFolder.in(dir);
        Files.writeString(part.path().resolve("a.csv"), "half");
        part.end();
        assertThat(tree(dir).keySet()).containsExactly("");
        assertThatThrownBy(() -> part.unlessEnding(() -> Files.writeString(dir.resolve("a"), "x")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("asked to end");
        part.remove();
    }
}
