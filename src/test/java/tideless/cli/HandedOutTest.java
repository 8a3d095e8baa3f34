package tideless.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
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
    void the_page_for_man_is_made_from_the_commands_of_today_and_goes_into_the_zip()
            throws IOException {
        String page = Files.readString(ManPage.PAGE);
        assertEquals(page, ManPage.of(Tideless.commands().getCommandSpec()), "run ManPage.main");
        assertTrue(page.contains(".SH \"TIDELESS LOG NEW\""), "commands below commands");
        assertTrue(page.contains("\\-\\-members=N"), "options");
        assertTrue(Files.readString(Path.of("src/assembly/zip.xml")).contains("" + ManPage.PAGE));
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
            if (!dependency.group(1).matches("(?s).*<scope>(test|provided)</scope>.*")) {
                libraries.add(
                        dependency
                                .group(1)
                                .replaceAll("(?s).*?<artifactId>(.*?)</artifactId>.*", "$1"));
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
        assertEquals(6, seen);
    }

    /**
     * Nothing here can run it, so its text is held: ends of lines that its reader knows, every path
     * in quotes, the words of the command line passed on as typed, and what Java ended with.
     */
    @Test
    void the_launcher_for_windows_quotes_every_path_and_passes_all_on() throws IOException {
        String text = Files.readString(Path.of("src/dist/tideless.bat"));
        assertEquals(text, text.replace("\r\n", "\n").replace("\n", "\r\n"));
        assertTrue(text.chars().allMatch(c -> c < 127), "a console's letters may be others");
        List<String> lines = text.lines().toList();
        assertEquals("@echo off", lines.get(0));
        assertTrue(lines.contains("setlocal"), "it would leave variables behind");
        assertEquals("exit /b %ERRORLEVEL%", lines.get(lines.size() - 1));
        String start = lines.get(lines.size() - 2);
        assertTrue(start.startsWith("\"%JAVA%\" "), start);
        assertTrue(start.endsWith(" -jar \"%~dp0tideless.jar\" %*"), start);
        for (String line : lines) {
            String bare = line.startsWith("rem ") ? "" : line.replaceAll("\"[^\"]*\"", "");
            if (!line.contains("JAVA_HOME:")) { // there a quote is what is taken out
                assertTrue(
                        !bare.replace("%ERRORLEVEL%", "").replace("%*", "").contains("%"),
                        "a path without quotes: " + line);
            }
        }
        // What only some Javas know must not stop the others.
        assertTrue(
                start.indexOf("-XX:+IgnoreUnrecognizedVMOptions")
                        < start.indexOf("-XX:+AutoCreateSharedArchive"));
    }

    @Test
    void the_launcher_for_unix_works_from_a_folder_with_blanks_and_through_a_link()
            throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")));
        Path home = Files.createDirectories(folder.resolve("my programs/tide less"));
        Path launcher = Files.copy(Path.of("src/dist/tideless"), home.resolve("tideless"));
        Path bin = Files.createDirectories(folder.resolve("a java/bin"));
        Path java = bin.resolve("java");
        Files.writeString(java, "#!/bin/sh\nfor word; do echo \"<$word>\"; done\nexit 2\n");
        assertTrue(launcher.toFile().setExecutable(true) && java.toFile().setExecutable(true));
        Path link = folder.resolve("a link");
        Files.createSymbolicLink(link, launcher);
        for (Path started : List.of(launcher, link)) {
            ProcessBuilder process =
                    new ProcessBuilder(started.toString(), "check", "my bench.toml", "", "a*");
            process.environment().put("JAVA_HOME", folder.resolve("a java").toString());
            Process running = process.redirectErrorStream(true).start();
            List<String> told =
                    new String(running.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                            .lines()
                            .toList();
            assertEquals(2, running.waitFor(), told.toString());
            assertTrue(told.contains("<-Dtideless.called=" + started + ">"), told.toString());
            int jar = told.indexOf("<-jar>");
            assertEquals(
                    List.of(
                            "<-jar>",
                            "<" + home.toRealPath().resolve("tideless.jar") + ">",
                            "<check>",
                            "<my bench.toml>",
                            "<>",
                            "<a*>"),
                    told.subList(jar, told.size()));
        }
    }
}
