package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** Neither the machine's language nor its number of cores shows in anything written. */
@Isolated
class SameBytesTest {
    private static final String CALM = "scenarios/calm-bench.toml";

    private static final List<List<String>> COMMANDS =
            List.of(
                    List.of("run", CALM, "--members", "3"),
                    List.of("away", CALM, "--members", "3", "--every", "20"),
                    List.of("calendar", CALM, "--members", "2"),
                    List.of("sensitivity", CALM, "--points", "16"),
                    List.of("size", CALM, "--what", "reservoir", "--members", "3"),
                    List.of("compare", CALM, "--members", "2", "--vary", "tray.left.plants=4..6"));

    @TempDir Path folder;

    private final Locale locale = Locale.getDefault();
    private final TimeZone zone = TimeZone.getDefault();

    @AfterEach
    void asItWas() {
        Locale.setDefault(locale);
        TimeZone.setDefault(zone);
    }

    /** What each command prints, and a digest of each file that it writes. */
    private Map<String, String> all(String name, int threads)
            throws IOException, NoSuchAlgorithmException {
        Map<String, String> all = new TreeMap<>();
        for (List<String> command : COMMANDS) {
            Path to = folder.resolve(name).resolve(command.get(0));
            List<String> args = new ArrayList<>(command);
            args.add("--threads=" + threads);
            if (!command.get(0).equals("size")) {
                boolean file = command.get(0).equals("calendar");
                args.addAll(List.of("-o", file ? to + ".ics" : to.toString()));
            }
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int exit =
                    Tideless.execute(
                            new PrintWriter(out),
                            new PrintWriter(err),
                            args.toArray(String[]::new));
            assertEquals(0, exit, err.toString());
            all.put(command.get(0), out.toString().replace(folder.resolve(name).toString(), ""));
        }
        try (Stream<Path> files = Files.walk(folder.resolve(name))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                byte[] digest =
                        MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
                all.put(
                        folder.resolve(name).relativize(file).toString(),
                        HexFormat.of().formatHex(digest));
            }
        }
        return all;
    }

    @Test
    void languages_and_threads_change_no_byte() throws Exception {
        Locale.setDefault(Locale.ROOT);
        TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
        Map<String, String> plain = all("plain", 1);
        int number = 0;
        // Commas for points, i without its dot, digits of another script.
        for (String tag : List.of("de-DE", "tr-TR", "ar-EG-u-nu-arab")) {
            Locale.setDefault(Locale.forLanguageTag(tag));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
            Map<String, String> there = all(tag, 2 + number++);
            assertEquals(plain.keySet(), there.keySet(), tag);
            plain.forEach((what, bytes) -> assertEquals(bytes, there.get(what), tag + ", " + what));
        }
    }
}
