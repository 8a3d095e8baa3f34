package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is handed out says what it carries, and what it misses. */
class HandedOutTest {
    @TempDir Path folder;

    @Test
    void a_jar_without_its_libraries_names_them_in_one_line() throws IOException {
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, "lib/one.jar lib/two.jar");
        Path jar = folder.resolve("program.jar");
        try (OutputStream out = Files.newOutputStream(jar)) {
            new JarOutputStream(out, manifest).close();
        }
        assertEquals(List.of("lib/one.jar", "lib/two.jar"), Main.missing(jar.toFile()));
        Files.createDirectory(folder.resolve("lib"));
        Files.createFile(folder.resolve("lib/one.jar"));
        List<String> missing = Main.missing(jar.toFile());
        assertEquals(List.of("lib/two.jar"), missing);
        assertTrue(Main.complaint(missing).contains("lib/two.jar"));
        assertEquals(1, Main.complaint(missing).lines().count());
        Files.createFile(folder.resolve("lib/two.jar"));
        assertEquals(List.of(), Main.missing(jar.toFile()));
        assertEquals(List.of(), Main.missing(folder.resolve("classes").toFile()));
    }

    @Test
    void the_notice_names_every_library_and_the_licences_are_there() throws IOException {
        String notice = Files.readString(Path.of("src/dist/NOTICE"));
        List<String> libraries = new ArrayList<>();
        Matcher dependency =
                Pattern.compile("<dependency>(.*?)</dependency>", Pattern.DOTALL)
                        .matcher(
                                Files.readString(Path.of("pom.xml"))
                                        .replaceFirst("(?s)<profiles>.*", "")
                                        .replaceFirst(
                                                "(?s)<dependencyManagement>.*?</dependencyManagement>",
                                                ""));
        while (dependency.find()) {
            if (!dependency.group(1).contains("<scope>test</scope>")) {
                libraries.add(
                        dependency
                                .group(1)
                                .replaceAll("(?s).*<artifactId>(.*?)</artifactId>.*", "$1"));
            }
        }
        assertTrue(libraries.size() >= 7, "" + libraries);
        for (String library : libraries) {
            assertTrue(notice.contains(library), library);
        }
        Matcher licence = Pattern.compile("licences/[\\w.-]+\\.txt").matcher(notice);
        int seen = 0;
        while (licence.find()) {
            assertTrue(Files.exists(Path.of("src/dist", licence.group())), licence.group());
            seen++;
        }
        assertEquals(3, seen);
    }
}
