package tideless;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The rooms of the house, from the ground up, and the signs on their doors. */
final class Rooms {
    /** A room may know those before it and none behind it. */
    static final List<String> NAMES =
            List.of(
                    "physics",
                    "solution",
                    "crop",
                    "rig",
                    "sim",
                    "advice",
                    "study",
                    "study.threads",
                    "words",
                    "drawing",
                    "scenario",
                    "report",
                    "cli");

    private static final Pattern SIGN =
            Pattern.compile("May[\\s*]+import:(.*?)Held[\\s*]+by", Pattern.DOTALL);
    private static final Pattern NAME = Pattern.compile("\\{@code\\s[\\s*]*([\\w.]+)}");

    private Rooms() {}

    /** What may be imported, as its {@code package-info.java} says: rooms and packages. */
    static List<String> sign(String room) throws IOException {
        Path door = Path.of("src/main/java/tideless", room.replace('.', '/'), "package-info.java");
        Matcher sign = SIGN.matcher(Files.readString(door));
        List<String> names = new ArrayList<>();
        if (sign.find()) {
            Matcher name = NAME.matcher(sign.group(1));
            while (name.find()) {
                names.add(name.group(1));
            }
        }
        return names;
    }
}
