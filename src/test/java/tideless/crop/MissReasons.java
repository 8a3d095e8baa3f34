package tideless.crop;

import java.util.Map;
import java.util.TreeMap;

/** The known misses of {@link Emergence} by row, each with its reason. */
final class MissReasons {
    static final Map<String, Miss> ALL = new TreeMap<>();

    static {
        LeafMisses.all().forEach(MissReasons::add);
        AcidMisses.all().forEach(MissReasons::add);
        FruitMisses.all().forEach(MissReasons::add);
    }

    private MissReasons() {}

    private static void add(Miss miss) {
        if (ALL.put(miss.id(), miss) != null) {
            throw new IllegalStateException("two reasons for " + miss.id());
        }
    }

    static String why(String id) {
        Miss miss = ALL.get(id);
        return miss == null ? "a new miss, not yet looked into" : miss.why();
    }

    /** Prints all of them. */
    public static void main(String[] args) {
        ALL.values()
                .forEach(
                        miss ->
                                System.out.println(
                                        (miss.holds() ? "" : "NOT SO ")
                                                + miss.id()
                                                + ": "
                                                + miss.why()));
    }
}
