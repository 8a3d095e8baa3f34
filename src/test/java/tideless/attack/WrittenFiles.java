package tideless.attack;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** What must not be in a file that the program wrote, whatever it was given. */
final class WrittenFiles {
    /** Words that would come alive where a page does not quote them. */
    static final List<String> MARKUP =
            List.of(
                    "<script>alert(1)</script>",
                    "'><img src=x onerror=alert(1)>",
                    "]]>&lt;&#0;<!--",
                    "<style>*{display:none}",
                    "</title></style>");

    private static final Pattern ALIVE =
            Pattern.compile(
                    "<script|<img src=x|onerror=(?!\\p{Alpha}+\\(1\\)&gt;)|<!--(?!Drawn by Tideless-->)|]]>&lt;");
    private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity|null)\\b");
    private static final Pattern UNSEEN =
            Pattern.compile("[\\x00-\\x08\\x0b-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069]");
    private static final int CALENDAR_OCTETS = 75; // RFC 5545 (2009), 3.1

    private WrittenFiles() {}

    /**
     * What is wrong with the files of a folder, or "".
     *
     * @param numbers whether a word for no number is wrong; not where the user typed one
     */
    static String fault(Path folder, boolean numbers) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.sorted().toList();
        }
        for (Path file : files) {
            String name = file.getFileName().toString();
            boolean picture = name.endsWith(".png");
            String what = picture ? "" : fault(name, Files.readString(file), numbers);
            if (!what.isEmpty()) {
                return name + ": " + what;
            }
        }
        return "";
    }

    private static String fault(String name, String text, boolean numbers) {
        if (name.startsWith("page")) {
            return ""; // its script is its own, and the scenario lies in it packed
        }
        if (name.endsWith(".html") || name.endsWith(".svg")) {
            if (ALIVE.matcher(text).find()) {
                return "markup of the user's";
            }
            if (numbers && NO_NUMBER.matcher(text.replaceAll("base64,[^\"]*", "")).find()) {
                return "no number";
            }
            if (UNSEEN.matcher(text).find()) {
                return "a character that is not seen";
            }
            return notWell(text);
        }
        if (name.endsWith(".ics")) {
            boolean whole =
                    text.startsWith("BEGIN:VCALENDAR\r\n") && text.endsWith("END:VCALENDAR\r\n");
            boolean folded =
                    text.lines()
                            .allMatch(
                                    line ->
                                            line.getBytes(StandardCharsets.UTF_8).length
                                                    <= CALENDAR_OCTETS);
            return whole && folded ? "" : "no calendar";
        }
        return "";
    }

    /** Pages and pictures are well-formed, or a browser guesses. */
    private static String notWell(String text) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature(
                    "http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new DefaultHandler()); // faults are told here, not printed
            builder.parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
            return "";
        } catch (SAXException e) {
            return "not well-formed: " + e.getMessage();
        } catch (IOException | ParserConfigurationException e) {
            throw new AssertionError(e);
        }
    }
}
