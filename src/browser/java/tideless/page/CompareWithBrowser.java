package tideless.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/**
 * Runs every shipped scenario on this machine and in a browser without a window, and compares every
 * hourly number, event, ledger, task and warning to its last bit.
 */
public final class CompareWithBrowser {
    private static final Path SCENARIOS = Path.of("scenarios");
    private static final long PATIENCE_MINUTES = 10;

    private final Path module;
    private final Path runtime;
    private final List<String> scenarios;
    private final Map<String, Result> results = new ConcurrentHashMap<>();
    private final BlockingQueue<String> end = new LinkedBlockingQueue<>();

    /**
     * @param bits what the browser gave, as {@link EveryBit}
     * @param timing what it took, as it said
     */
    private record Result(String bits, String timing) {}

    private CompareWithBrowser(Path folder) throws IOException {
        module = folder.resolve("page.wasm");
        runtime = folder.resolve("runtime.js");
        try (Stream<Path> files = Files.walk(SCENARIOS)) {
            scenarios =
                    files.map(file -> slashed(SCENARIOS.relativize(file)))
                            .filter(name -> name.endsWith(".toml"))
                            .sorted()
                            .toList();
        }
    }

    /**
     * Compares every shipped scenario.
     *
     * @param args the folder of the compiled page, and the browser's command: one of the Chromium
     *     family that knows WebAssembly with garbage collection
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        CompareWithBrowser compare = new CompareWithBrowser(Path.of(args[0]));
        compare.browse(args[1]);
        if (!compare.report(System.out)) {
            throw new IllegalStateException("the browser gives other bytes");
        }
    }

    private void browse(String browser) throws IOException, InterruptedException {
        HttpServer server =
                HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::answer);
        server.start();
        Path profile = Files.createTempDirectory("tideless-browser");
        String address = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
        Process process =
                new ProcessBuilder(
                                browser,
                                "--headless=new",
                                "--no-sandbox",
                                "--disable-gpu",
                                "--no-first-run",
                                "--user-data-dir=" + profile,
                                address)
                        .redirectErrorStream(true)
                        .redirectOutput(module.resolveSibling("browser.log").toFile())
                        .start();
        try {
            String said = end.poll(PATIENCE_MINUTES, TimeUnit.MINUTES);
            if (said == null) {
                throw new IllegalStateException("the browser did not come to an end");
            }
            if (!said.isEmpty()) {
                throw new IllegalStateException("the browser failed: " + said);
            }
        } finally {
            process.descendants().forEach(ProcessHandle::destroy);
            process.destroy();
            process.waitFor();
            server.stop(0);
            delete(profile);
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            files.sorted((a, b) -> b.compareTo(a)).map(Path::toFile).forEach(File::delete);
        } catch (IOException e) {
            System.err.println("left behind: " + folder);
        }
    }

    private void answer(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath().substring(1);
        byte[] body = exchange.getRequestBody().readAllBytes();
        byte[] answer;
        String type = "text/plain; charset=utf-8";
        if (path.isEmpty()) {
            type = "text/html; charset=utf-8";
            answer = resource("compare.html");
        } else if (path.equals("page.wasm")) {
            type = "application/wasm";
            answer = Files.readAllBytes(module);
        } else if (path.equals("runtime.js")) {
            type = "text/javascript";
            answer = Files.readAllBytes(runtime);
        } else if (path.equals("scenarios")) {
            answer = String.join("\n", scenarios).getBytes(StandardCharsets.UTF_8);
        } else if (path.startsWith("scenario/")) {
            answer = Files.readAllBytes(SCENARIOS.resolve(known(path)));
        } else if (path.startsWith("beside/") && path.endsWith(".toml")) {
            answer = String.join("\n", beside(known(path))).getBytes(StandardCharsets.UTF_8);
        } else if (path.startsWith("beside/")) {
            answer = Files.readAllBytes(besideOf(path));
        } else if (path.startsWith("result/")) {
            String timing = exchange.getRequestURI().getQuery();
            results.put(known(path), new Result(new String(body, StandardCharsets.UTF_8), timing));
            answer = new byte[0];
        } else if (path.equals("end")) {
            end.add(new String(body, StandardCharsets.UTF_8));
            answer = new byte[0];
        } else {
            exchange.sendResponseHeaders(404, -1);
            exchange.close();
            return;
        }
        exchange.getResponseHeaders().add("Content-Type", type);
        exchange.sendResponseHeaders(200, answer.length == 0 ? -1 : answer.length);
        exchange.getResponseBody().write(answer);
        exchange.close();
    }

    private String known(String path) {
        String name = path.substring(path.indexOf('/') + 1);
        if (!scenarios.contains(name)) {
            throw new IllegalArgumentException("no scenario " + name);
        }
        return name;
    }

    /** Names of the files beside a scenario that it may name, seen from its folder. */
    private static List<String> beside(String scenario) throws IOException {
        Path folder = SCENARIOS.resolve(scenario).getParent();
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> slashed(folder.relativize(file)))
                    .filter(name -> name.endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    private Path besideOf(String path) throws IOException {
        for (String scenario : scenarios) {
            String start = "beside/" + scenario + "/";
            if (path.startsWith(start)) {
                String name = path.substring(start.length());
                if (beside(scenario).contains(name)) {
                    return SCENARIOS.resolve(scenario).resolveSibling(name);
                }
            }
        }
        throw new IllegalArgumentException("no file " + path);
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = CompareWithBrowser.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }

    private static String slashed(Path path) {
        return path.toString().replace(File.separatorChar, '/');
    }

    /** Whether all is the same. */
    private boolean report(PrintStream out) throws IOException {
        byte[] bytes = Files.readAllBytes(module);
        out.printf(Locale.ROOT, "module: %,d bytes, %,d by gzip%n", bytes.length, packed(bytes));
        out.printf(
                "%-40s %12s %10s %12s %10s %12s  %s%n",
                "scenario", "bytes", "differ", "numbers", "differ", "most", "in the browser, ms");
        boolean same = true;
        for (String scenario : scenarios) {
            Result result = results.get(scenario);
            if (result == null) {
                throw new IllegalStateException("the browser gave nothing for " + scenario);
            }
            Comparison comparison = Comparison.of(here(scenario), result.bits());
            out.printf(
                    Locale.ROOT,
                    "%-40s %,12d %,10d %,12d %,10d %12.1e  %s%n",
                    scenario,
                    comparison.bytes(),
                    comparison.bytesDiffer(),
                    comparison.numbers(),
                    comparison.numbersDiffer(),
                    comparison.mostRelative(),
                    result.timing());
            comparison.firstDifference().ifPresent(line -> out.println("    first: " + line));
            same &= comparison.bytesDiffer() == 0;
        }
        return same;
    }

    private static String here(String scenario) throws IOException {
        Path folder = Files.createTempDirectory("tideless-here");
        try {
            Session session = new Session(folder, 1);
            Path at = SCENARIOS.resolve(scenario);
            for (String file : beside(scenario)) {
                session.file(file, Files.readString(at.resolveSibling(file)));
            }
            List<String> faults = session.read(Files.readString(at));
            if (!faults.isEmpty()) {
                throw new IllegalStateException(scenario + ": " + faults);
            }
            session.run();
            return EveryBit.of(session.forecast());
        } finally {
            delete(folder);
        }
    }

    private static int packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes);
        }
        return packed.size();
    }
}
