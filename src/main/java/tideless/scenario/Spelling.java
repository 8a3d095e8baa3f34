package tideless.scenario;

import java.util.Locale;

/** What a misspelt name was meant to be. */
public final class Spelling {
    /** Of fewer letters nobody knows what they stand for; chosen. */
    private static final int LEAST_CONSONANTS = 3;

    private Spelling() {}

    /** The one of some names that a misspelt one was most likely meant to be, or empty. */
    public static String nearest(String misspelt, Iterable<String> names) {
        String best = "";
        int least = Integer.MAX_VALUE;
        if (misspelt.length() > 40) {
            return best;
        }
        for (String name : names) {
            if (plain(misspelt).equals(plain(name))) {
                return name;
            }
        }
        for (String name : names) {
            int distance = editDistance(misspelt, name);
            if (distance < least) {
                least = distance;
                best = name;
            }
        }
        if (least <= Math.max(1, Math.min(misspelt.length(), best.length()) / 3)) {
            return best;
        }
        String held = holding(misspelt, names);
        return held.isEmpty() ? shortened(misspelt, names) : held;
    }

    /** The one name whose consonants were written, as "lvl" for "level"; or empty. */
    private static String shortened(String written, Iterable<String> names) {
        String bare = plain(written);
        String found = "";
        for (String name : names) {
            if (bare.length() >= LEAST_CONSONANTS
                    && bare.equals(plain(name).replaceAll("[aeiou]", ""))) {
                if (!found.isEmpty()) {
                    return "";
                }
                found = name;
            }
        }
        return found;
    }

    /**
     * The one name that ends with what was written, as "pepper" is a "sweet-pepper", or that it
     * ends with, as a "cherry-tomato" is a "tomato"; or empty.
     */
    private static String holding(String written, Iterable<String> names) {
        String found = "";
        for (String name : names) {
            boolean within =
                    written.length() > 2
                            && (name.endsWith("-" + written) || name.endsWith("_" + written));
            if (within || written.endsWith("-" + name)) {
                if (!found.isEmpty()) {
                    return "";
                }
                found = name;
            }
        }
        return found;
    }

    /** Whether two words differ at most in parting, case, or one thing and several. */
    static boolean isSameWord(String one, String other) {
        return plain(one).equals(plain(other));
    }

    /** A name as it is heard: one thing or several, parted or in one word, large or small. */
    private static String plain(String name) {
        String one = name.replace("-", "").replace("_", "").toLowerCase(Locale.ROOT);
        if (one.endsWith("ves")) {
            return one.substring(0, one.length() - 3) + "f";
        }
        if (one.endsWith("oes")) {
            return one.substring(0, one.length() - 2);
        }
        if (one.endsWith("ies")) {
            return one.substring(0, one.length() - 3) + "y";
        }
        return one.endsWith("s") ? one.substring(0, one.length() - 1) : one;
    }

    /** Letters added, left out, exchanged or swapped with their neighbour. */
    private static int editDistance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + cost);
                if (i > 1
                        && j > 1
                        && a.charAt(i - 1) == b.charAt(j - 2)
                        && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
