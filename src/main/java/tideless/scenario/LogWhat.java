package tideless.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tideless.rig.LogEntry;

/**
 * What an entry of a log may be about: its spellings, its units, what is impossible and what is
 * unlikely. Bounds are common practice where no source is named.
 */
enum LogWhat {
    LEVEL(List.of(UnitTable.LENGTH), "level", "water level", "height"),
    LITRES_IN(
            List.of(UnitTable.VOLUME),
            "litres in",
            "liters in",
            "feed in",
            "poured in",
            "added",
            "litres added",
            "liters added"),
    WATER_IN(List.of(UnitTable.VOLUME), "water in", "plain water in", "water added"),
    REFILL(
            List.of(UnitTable.VOLUME),
            "refill",
            "filled up",
            "topped up",
            "refilled",
            "filled",
            "top up"),
    EC(List.of(UnitTable.CONDUCTIVITY), "ec", "conductivity", "ppm"),
    PH(List.of(), "ph"),
    TEMPERATURE(List.of(UnitTable.TEMPERATURE), "temperature", "temp", "solution temperature"),
    FRESH_WEIGHT(List.of(UnitTable.MASS), "fresh weight", "plant weight", "weight"),
    CROP_TAKEN(List.of(UnitTable.MASS), "crop taken", "harvest", "harvested"),
    LEAVES_PICKED(List.of(UnitTable.MASS), "leaves picked", "picked", "picking"),
    ROOT_LENGTH(List.of(UnitTable.LENGTH), "root length", "roots"),
    PLANTS_LOST(List.of(), "plants lost", "plant lost", "lost"),
    FLUSH(List.of(), "flush", "flushed"),
    FRESH_SOLUTION(List.of(), "fresh solution", "new solution"),
    VALVE_MOVED(List.of(UnitTable.LENGTH), "valve moved", "valve set", "valve"),
    LAMP_CHANGED(
            List.of(UnitTable.PHOTON_FLUX, UnitTable.SHARE), "lamp changed", "lamp dimmed", "lamp"),
    NOTHING(List.of(), "nothing to see", "nothing", "looked");

    private final List<UnitTable> tables;
    private final List<String> spellings;

    LogWhat(List<UnitTable> tables, String... spellings) {
        this.tables = tables;
        this.spellings = List.of(spellings);
    }

    /** Units its value may have; none where it is a plain number or has no value. */
    List<UnitTable> tables() {
        return tables;
    }

    /** The first spelling. */
    String word() {
        return spellings.get(0);
    }

    /** Whether an entry of it is nothing without a value. */
    boolean needsValue() {
        return switch (this) {
            case REFILL, CROP_TAKEN, FLUSH, FRESH_SOLUTION, NOTHING -> false;
            default -> true;
        };
    }

    /** Whether an entry of it may have a value. */
    boolean mayHaveValue() {
        return switch (this) {
            case FLUSH, FRESH_SOLUTION, NOTHING -> false;
            default -> true;
        };
    }

    /** Whether it is said of trays only. */
    boolean isOfTrays() {
        return switch (this) {
            case FRESH_WEIGHT,
                    CROP_TAKEN,
                    LEAVES_PICKED,
                    ROOT_LENGTH,
                    PLANTS_LOST,
                    FLUSH,
                    FRESH_SOLUTION,
                    VALVE_MOVED,
                    LAMP_CHANGED ->
                    true;
            default -> false;
        };
    }

    /** The reading it is; null where it is a deed or a look. */
    LogEntry.Quantity quantity() {
        return switch (this) {
            case LEVEL -> LogEntry.Quantity.LEVEL;
            case EC -> LogEntry.Quantity.EC;
            case PH -> LogEntry.Quantity.PH;
            case TEMPERATURE -> LogEntry.Quantity.TEMPERATURE;
            case FRESH_WEIGHT -> LogEntry.Quantity.FRESH_MASS;
            case ROOT_LENGTH -> LogEntry.Quantity.ROOT_LENGTH;
            default -> null;
        };
    }

    /** What cannot be, in the unit of the records: least and most. */
    double[] possible() {
        return switch (this) {
            case EC -> new double[] {0, 20}; // a meter's scale ends there
            case PH -> new double[] {1, 13};
            case TEMPERATURE -> new double[] {-2, 60};
            case FRESH_WEIGHT -> new double[] {0, 50_000};
            case CROP_TAKEN, LEAVES_PICKED -> new double[] {0, 1e6};
            case ROOT_LENGTH -> new double[] {0, 3};
            default -> new double[] {0, Double.POSITIVE_INFINITY};
        };
    }

    /** What is seldom: least and most. */
    double[] likely() {
        return switch (this) {
            case EC -> new double[] {0.1, 6};
            case PH -> new double[] {3.5, 9};
            case TEMPERATURE -> new double[] {5, 38};
            case ROOT_LENGTH -> new double[] {0, 1};
            default -> new double[] {0, Double.POSITIVE_INFINITY};
        };
    }

    /** The one a text spells, whatever its case; null for none. */
    static LogWhat of(String text) {
        String tidy = text.strip().toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ');
        for (LogWhat what : values()) {
            if (what.spellings.contains(tidy)) {
                return what;
            }
        }
        return null;
    }

    /** What a column without a word is about by its unit, as "shelf (cm)"; null for none. */
    static LogWhat ofUnit(String unit) {
        for (LogWhat what : List.of(LEVEL, EC, TEMPERATURE)) {
            if (what.tables.get(0).spellings().contains(unit)) {
                return what;
            }
        }
        return null;
    }

    static List<String> words() {
        List<String> words = new ArrayList<>();
        for (LogWhat what : values()) {
            words.add(what.word());
        }
        return words;
    }

    /** The word that a misspelt one was meant to be, or an empty text. */
    static String nearest(String text) {
        List<String> all = new ArrayList<>();
        for (LogWhat what : values()) {
            all.addAll(what.spellings);
        }
        return Spelling.nearest(text.strip().toLowerCase(Locale.ROOT), all);
    }
}
