package tideless.report;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Plain file names made of the user's own names. */
final class FileNames {
    private static final int LONGEST = 40;

    private FileNames() {}

    /**
     * A name for each: lower-case ASCII letters, digits and hyphens, no two alike even where a file
     * system takes no account of case. The same list gives the same names.
     */
    static List<String> of(List<String> names) {
        Set<String> taken = new LinkedHashSet<>();
        for (int i = 0; i < names.size(); i++) {
            String plain = plain(names.get(i));
            String base = plain.isEmpty() ? Integer.toString(i + 1) : plain;
            String name = base;
            for (int n = 2; !taken.add(name); n++) {
                name = base + "-" + n;
            }
        }
        return new ArrayList<>(taken);
    }

    private static String plain(String name) {
        String spelt =
                name.toLowerCase(Locale.ROOT)
                        .replace("\u00df", "ss")
                        .replace("\u00e6", "ae")
                        .replace("\u0153", "oe")
                        .replace("\u00f8", "o")
                        .replace("\u0142", "l")
                        .replace("\u0131", "i");
        StringBuilder plain = new StringBuilder();
        for (char c : Normalizer.normalize(spelt, Normalizer.Form.NFD).toCharArray()) {
            if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
                plain.append(c);
            } else if (Character.getType(c) != Character.NON_SPACING_MARK
                    && !plain.isEmpty()
                    && plain.charAt(plain.length() - 1) != '-') {
                plain.append('-');
            }
        }
        plain.setLength(Math.min(plain.length(), LONGEST));
        while (!plain.isEmpty() && plain.charAt(plain.length() - 1) == '-') {
            plain.setLength(plain.length() - 1);
        }
        return plain.toString();
    }
}
