package tideless.cli;

import java.io.File;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;

/** Where Java begins: looks for the libraries first, and needs none of them to say so. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        List<String> missing = missing(new File(System.getProperty("java.class.path", "")));
        if (!missing.isEmpty()) {
            System.err.println(complaint(missing));
            System.exit(Exit.FILE);
        }
        Tideless.main(args);
    }

    /** Standard output itself, which says why it fails; {@link System#out} does not. */
    static OutputStream standardOutput() {
        return new FileOutputStream(FileDescriptor.out);
    }

    static String complaint(List<String> missing) {
        return "tideless.jar does not stand alone: %s missing beside it (%s); unpack the zip whole, or run \"mvn package\""
                .formatted(
                        missing.size() == 1 ? "a library is" : missing.size() + " libraries are",
                        missing.get(0) + (missing.size() > 1 ? " and others" : ""));
    }

    /**
     * Libraries a jar names in its manifest that do not lie beside it; none when it is no jar.
     *
     * @param jar what Java was started with
     */
    static List<String> missing(File jar) {
        List<String> missing = new ArrayList<>();
        if (!jar.isFile()) {
            return missing;
        }
        try (JarFile file = new JarFile(jar)) {
            String named = file.getManifest().getMainAttributes().getValue("Class-Path");
            for (String library : named == null ? new String[0] : named.split(" ")) {
                if (!new File(jar.getAbsoluteFile().getParentFile(), library).isFile()) {
                    missing.add(library);
                }
            }
        } catch (IOException e) {
            return missing; // Java itself has opened it; what follows will say what is wrong.
        }
        return missing;
    }
}
