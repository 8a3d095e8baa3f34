package tideless.page;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.teavm.tooling.EmptyTeaVMToolLog;
import org.teavm.tooling.TeaVMTargetType;
import org.teavm.tooling.TeaVMTool;
import org.teavm.tooling.TeaVMToolException;
import org.teavm.vm.TeaVMOptimizationLevel;
import tideless.drawing.RigPicture;

/**
 * Makes the page into which the command {@code page} puts a scenario: the engine compiled for a
 * browser, the loader, style and scripts, all in one text.
 *
 * <p>To compile takes a minute, so the engine is taken from where it was compiled before, in {@code
 * target/page} or in {@code docs/bench.html}, as long as it is of the very sources that stand here.
 */
public final class MakePage {
    private static final Path PARTS = Path.of("src/browser/resources/tideless/page/bench");
    private static final Path SCENARIOS = Path.of("scenarios");

    /** What the lessons of the page run. */
    private static final List<String> LESSONS =
            List.of(
                    "lessons/rich-feed.toml",
                    "lessons/lean-feed.toml",
                    "lessons/rain.toml",
                    "lessons/hard-tap.toml",
                    "outgrown-trough.toml",
                    "science-room-bench.toml");

    private static final Path COMMITTED = Path.of("docs/bench.html");
    private static final String RUNTIME = "org/teavm/backend/wasm/wasm-gc-runtime.min.js";

    /** In the order in which they follow each other. */
    private static final List<String> SCRIPTS =
            List.of(
                    "numbers.js",
                    "engine.js",
                    "plots.js",
                    "section.js",
                    "lists.js",
                    "controls.js",
                    "files.js",
                    "lessons.js",
                    "own.js",
                    "main.js");

    /** Stands in every crop file. */
    private static final String OF_A_CROP = "latin_name = \"";

    /** Sources of what makes and checks the page, which are not in it. */
    private static final Pattern BESIDE =
            Pattern.compile(
                    "/(MakePage|Check\\w*|Comparison|Window|Browser|Firefox|Running|Waits|Wire)\\.java$");

    private static final Pattern ENGINE =
            Pattern.compile("id=\"engine\" data-sources=\"([0-9a-f]{64})\">([^<]*)<");

    private MakePage() {}

    /**
     * Makes it.
     *
     * @param args the folder for the compiled module; the file to make; "sources" to compile where
     *     none is of these sources, "committed" to take that of {@code docs/bench.html} as it is
     */
    public static void main(String[] args)
            throws IOException, TeaVMToolException, NoSuchAlgorithmException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        boolean anySources = args[2].equals("committed");
        Engine engine = engine(folder, anySources);
        Path page = Path.of(args[1]);
        Files.createDirectories(page.getParent());
        Files.writeString(page, page(engine));
    }

    /**
     * @param sources SHA-256 of what it was compiled from
     * @param module packed by gzip, as {@link Dense} text
     */
    private record Engine(String sources, String module) {}

    private static Engine engine(Path folder, boolean anySources)
            throws IOException, TeaVMToolException, NoSuchAlgorithmException {
        String sources = sources();
        Path made = folder.resolve("engine.txt");
        for (Path place : List.of(made, COMMITTED)) {
            if (Files.exists(place)) {
                Matcher matcher = ENGINE.matcher(Files.readString(place));
                if (matcher.find()
                        && (matcher.group(1).equals(sources)
                                || (anySources && place.equals(COMMITTED)))) {
                    return kept(folder, new Engine(matcher.group(1), matcher.group(2)));
                }
            }
        }
        compile(folder);
        byte[] module = Files.readAllBytes(folder.resolve("page.wasm"));
        if (!new String(module, StandardCharsets.ISO_8859_1).contains(OF_A_CROP)) {
            throw new IllegalStateException("the crop files are not in the module");
        }
        Engine engine = new Engine(sources, Dense.text(packed(module)));
        Files.writeString(
                made, "id=\"engine\" data-sources=\"" + sources + "\">" + engine.module() + "<");
        return kept(folder, engine);
    }

    /** Lays the module and its loader where {@link CompareWithBrowser} looks for them. */
    private static Engine kept(Path folder, Engine engine) throws IOException {
        byte[] packed = Dense.bytes(engine.module());
        try (InputStream in = new GZIPInputStream(new java.io.ByteArrayInputStream(packed))) {
            Files.write(folder.resolve("page.wasm"), in.readAllBytes());
        }
        Files.writeString(folder.resolve("runtime.js"), runtime());
        return engine;
    }

    private static void compile(Path folder) throws TeaVMToolException {
        TeaVMTool tool = new TeaVMTool();
        tool.setLog(new EmptyTeaVMToolLog());
        tool.setTargetType(TeaVMTargetType.WEBASSEMBLY_GC);
        tool.setMainClass(Page.class.getName());
        tool.setTargetDirectory(folder.toFile());
        tool.setTargetFileName("page.wasm");
        tool.setObfuscated(true);
        tool.setOptimizationLevel(TeaVMOptimizationLevel.ADVANCED);
        tool.setClassLoader(MakePage.class.getClassLoader());
        tool.setClassPath(classPath());
        tool.generate();
        List<String> problems = new ArrayList<>();
        tool.getProblemProvider()
                .getSevereProblems()
                .forEach(
                        problem ->
                                problems.add(
                                        problem.getText()
                                                + " "
                                                + List.of(problem.getParams())
                                                + " at "
                                                + problem.getLocation()));
        if (!problems.isEmpty()) {
            throw new IllegalStateException(
                    "what a browser lacks is used:\n" + String.join("\n", problems));
        }
    }

    private static List<File> classPath() {
        if (MakePage.class.getClassLoader() instanceof URLClassLoader loader) {
            return Stream.of(loader.getURLs()).map(url -> new File(url.getPath())).toList();
        }
        String[] path = System.getProperty("java.class.path").split(File.pathSeparator);
        return Stream.of(path).map(File::new).toList();
    }

    /** SHA-256 over all that the module is compiled from, the door and the threads left out. */
    private static String sources() throws IOException, NoSuchAlgorithmException {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        digest.update(runtime().getBytes(StandardCharsets.UTF_8)); // changes with the compiler
        for (String root :
                List.of(
                        "src/main/java",
                        "src/main/resources/tideless/crop",
                        "src/browser/java",
                        "src/browser/resources/META-INF")) {
            try (Stream<Path> files = Files.walk(Path.of(root))) {
                for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                    String name = file.toString().replace(File.separatorChar, '/');
                    if (!name.contains("/tideless/cli/")
                            && !name.contains("/study/threads/")
                            && !BESIDE.matcher(name).find()) {
                        digest.update(name.getBytes(StandardCharsets.UTF_8));
                        digest.update(text(file).getBytes(StandardCharsets.UTF_8));
                    }
                }
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static String text(Path file) throws IOException {
        return Files.readString(file).replace("\r\n", "\n");
    }

    /**
     * The same without indents, empty lines and whole lines of comment: a page is to stay small.
     */
    private static String lean(String part) {
        boolean overLines =
                part.lines()
                        .map(line -> line.replaceAll("\"[^\"]*\"", "")) // what is quoted
                        .anyMatch(line -> line.chars().filter(c -> c == '`').count() % 2 == 1);
        if (overLines) {
            throw new IllegalStateException("a text over several lines would lose its indents");
        }
        return part.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("//"))
                .map(line -> line + "\n")
                .collect(Collectors.joining());
    }

    private static String runtime() throws IOException {
        try (InputStream in = TeaVMTool.class.getClassLoader().getResourceAsStream(RUNTIME)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String page(Engine engine) throws IOException, NoSuchAlgorithmException {
        StringBuilder script = new StringBuilder("\"use strict\";\n(() => {\n");
        for (String name : SCRIPTS) {
            script.append(lean(text(PARTS.resolve(name))));
        }
        script.append("})();\n");
        String style = lean(text(PARTS.resolve("bench.css"))) + RigPicture.STYLE;
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("POLICY", policy(style, script.toString()));
        parts.put("STYLE", style);
        parts.put("SOURCES", engine.sources());
        parts.put("ENGINE", engine.module());
        String worker =
                text(PARTS.resolve("bindings.js"))
                        + runtime()
                        + "\n"
                        + text(PARTS.resolve("worker.js"));
        parts.put("WORKER", Dense.text(packed(worker.getBytes(StandardCharsets.UTF_8))));
        parts.put("LESSONS", lessons());
        parts.put("SCRIPT", script.toString());
        String page = text(PARTS.resolve("bench.html"));
        for (Map.Entry<String, String> part : parts.entrySet()) {
            if (part.getValue().contains("</script") || part.getValue().contains("</style")) {
                throw new IllegalStateException(part.getKey() + " would end its own element");
            }
            page = page.replace("@" + part.getKey() + "@", part.getValue());
        }
        return page;
    }

    /**
     * Nothing may be fetched, sent, framed or run but what stands in the page: its own script and
     * style by their digests, a worker and pictures made in the page, and the module. No text is
     * ever evaluated: {@code bindings.js} makes what the compiler's loader would evaluate.
     */
    private static String policy(String style, String script) throws NoSuchAlgorithmException {
        return "default-src 'none'; base-uri 'none'; form-action 'none'; img-src blob:; "
                + "worker-src blob:; script-src 'wasm-unsafe-eval' "
                + digest(script)
                + "; style-src "
                + digest(style);
    }

    private static String digest(String text) throws NoSuchAlgorithmException {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        byte[] sha = digest.digest(text.getBytes(StandardCharsets.UTF_8));
        return "'sha256-" + Base64.getEncoder().encodeToString(sha) + "'";
    }

    private static String lessons() throws IOException {
        Map<String, Object> texts = new LinkedHashMap<>();
        for (String name : LESSONS) {
            Path scenario = SCENARIOS.resolve(name);
            texts.put(scenario.getFileName().toString(), text(scenario));
        }
        return Base64.getEncoder()
                .encodeToString(packed(Json.of(texts).getBytes(StandardCharsets.UTF_8)));
    }

    /** Takes its time. */
    private static final class Tight extends GZIPOutputStream {
        Tight(OutputStream out) throws IOException {
            super(out);
            def.setLevel(Deflater.BEST_COMPRESSION);
        }
    }

    private static byte[] packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new Tight(packed)) {
            out.write(bytes);
        }
        return packed.toByteArray();
    }
}
