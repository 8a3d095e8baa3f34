package tideless.sim;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;

/**
 * A digest of every series, event and ledger of every shipped scenario, to the last bit. It says
 * nothing of right or wrong: it shows that a change meant to move no number moves none, and which
 * series of which scenario one that was meant to moves.
 */
public final class ResultDigests {
    static final Path KEPT =
            Path.of("src", "test", "resources", "tideless", "sim", "result-digests.csv");

    private static final String HEADER =
            """
            # Pinned, not checked: SHA-256 (first 16 digits) over the bits of what each shipped scenario leaves.
            # Renewed by ResultDigests.main of the tests (DEVELOPERS.md), together with docs/CHANGELOG.md.
            scenario,of,digest
            """;

    private ResultDigests() {}

    /** Writes them anew, from the project's folder. */
    public static void main(String[] args) throws IOException {
        Files.writeString(KEPT, HEADER + String.join("\n", all()) + "\n");
    }

    /** A row for each part of each scenario. */
    static List<String> all() throws IOException {
        List<String> rows = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of("scenarios"))) {
            for (Path path : files.filter(p -> p.toString().endsWith(".toml")).sorted().toList()) {
                if (!(ScenarioReader.read(path) instanceof Reading.Good good)) {
                    throw new IllegalStateException(path + " has faults");
                }
                String name = Path.of("scenarios").relativize(path).toString().replace('\\', '/');
                for (String row : of(Simulation.run(good.scenario()))) {
                    rows.add(name + "," + row);
                }
            }
        }
        return rows;
    }

    private static List<String> of(Trace trace) {
        List<String> rows = new ArrayList<>();
        for (TrayTrace tray : trace.trays()) {
            String where = "tray " + tray.tray().name() + " ";
            for (TraySeries of : TraySeries.values()) {
                rows.add(where + of + "," + digest(tray.of(of)));
            }
            rows.add(where + "ions," + digest(tray.componentMol().toArray(Series[]::new)));
        }
        for (ReservoirTrace reservoir : trace.reservoirs()) {
            String where = "reservoir " + reservoir.reservoir().name() + " ";
            for (ReservoirSeries of : ReservoirSeries.values()) {
                rows.add(where + of + "," + digest(reservoir.of(of)));
            }
            rows.add(where + "ions," + digest(reservoir.componentMol().toArray(Series[]::new)));
        }
        rows.add("events," + digest(trace.events().toString().getBytes(StandardCharsets.UTF_8)));
        String ledgers = trace.water() + "" + trace.components();
        rows.add("ledgers," + digest(ledgers.getBytes(StandardCharsets.UTF_8)));
        return rows;
    }

    private static String digest(Series... series) {
        int size = 0;
        for (Series one : series) {
            size += one.size();
        }
        ByteBuffer bits = ByteBuffer.allocate(size * Double.BYTES);
        for (Series one : series) {
            for (double value : one.toArray()) {
                bits.putDouble(value);
            }
        }
        return digest(bits.array());
    }

    private static String digest(byte[] bytes) {
        try {
            byte[] all = MessageDigest.getInstance("SHA-256").digest(bytes);
            return HexFormat.of().formatHex(all, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java has SHA-256", e);
        }
    }
}
