package tideless.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;

/**
 * A page for a browser that holds the engine and one scenario with all its files, and fetches
 * nothing. The page itself is made with the program ({@code src/browser}); only the scenario is put
 * into it here.
 */
public final class BenchPage {
    private static final String MADE = "bench.html";
    private static final String PLACE = "@SCENARIO@";

    private BenchPage() {}

    /**
     * Writes it.
     *
     * @param file where to; its folder is made when it is not there
     * @param name what messages call the scenario
     * @param texts the files it names by the names it gives them, itself by an empty one
     * @param beside what it is read with, a log or corrections, by kind
     * @param inputs files that were read for it, whose place it may not take
     */
    public static WriteResult write(
            Path file,
            String name,
            Map<String, String> texts,
            Map<String, Laid> beside,
            Collection<Path> inputs) {
        Optional<String> page = made();
        if (page.isEmpty()) {
            return new WriteResult(
                    List.of(),
                    file + ": this build of the program was made without the page",
                    false);
        }
        Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of("."));
        return ResultFiles.put(
                folder,
                () -> Map.of(file.getFileName().toString(), bytes(page.get(), name, texts, beside)),
                inputs);
    }

    private static Optional<String> made() {
        try (InputStream in = BenchPage.class.getResourceAsStream(MADE)) {
            return in == null
                    ? Optional.empty()
                    : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e); // the program's own file
        }
    }

    /**
     * A file that a scenario is read with and does not name.
     *
     * @param name what messages call it
     */
    public record Laid(String name, String text) {}

    private static byte[] bytes(
            String page, String name, Map<String, String> texts, Map<String, Laid> beside) {
        String packed = Base64.getEncoder().encodeToString(packed(name, texts, beside));
        return page.replace(PLACE, packed).getBytes(StandardCharsets.UTF_8);
    }

    /** In base 64 nothing a scenario holds can end the element it stands in. */
    private static byte[] packed(String name, Map<String, String> texts, Map<String, Laid> beside) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = new JsonFactory().createGenerator(new GZIPOutputStream(bytes))) {
            json.writeStartObject();
            json.writeStringField("name", name);
            json.writeStringField("text", texts.get(""));
            json.writeObjectFieldStart("files");
            for (Map.Entry<String, String> file : texts.entrySet()) {
                if (!file.getKey().isEmpty()) {
                    json.writeStringField(file.getKey(), file.getValue());
                }
            }
            json.writeEndObject();
            json.writeObjectFieldStart("beside");
            for (Map.Entry<String, Laid> laid : beside.entrySet()) {
                json.writeObjectFieldStart(laid.getKey());
                json.writeStringField("name", laid.getValue().name());
                json.writeStringField("text", laid.getValue().text());
                json.writeEndObject();
            }
            json.writeEndObject();
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // nothing is written but memory
        }
        return bytes.toByteArray();
    }
}
