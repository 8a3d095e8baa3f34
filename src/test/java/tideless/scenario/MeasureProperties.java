package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class MeasureProperties {
    private static Set<UnitTable> tables() {
        Set<UnitTable> tables = new LinkedHashSet<>();
        ScenarioKeys.TABLE.keys().values().forEach(key -> tables.addAll(key.tables()));
        CropKeys.TABLE.keys().values().forEach(key -> tables.addAll(key.tables()));
        return tables;
    }

    record Spelling(UnitTable table, String unit) {}

    @Provide
    Arbitrary<Spelling> spellings() {
        List<Spelling> all = new ArrayList<>();
        for (UnitTable table : tables()) {
            table.spellings().forEach(unit -> all.add(new Spelling(table, unit)));
        }
        return Arbitraries.of(all);
    }

    @Property
    void what_is_written_and_read_comes_back(
            @ForAll("spellings") Spelling spelling,
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double number) {
        comesBack(spelling.table(), spelling.unit(), number);
    }

    static void comesBack(UnitTable table, String unit, double number) {
        double tidy = Math.rint(number * 1000) / 1000;
        String text = java.math.BigDecimal.valueOf(tidy).toPlainString() + " " + unit;
        Measure read = Measure.of(text, List.of(table), false).value();
        // A shift (degF, K) loses the digits of the shift: 273.15 * 2^-52 is 6e-14.
        assertEquals(tidy, table.number(read.value(), unit), 1e-12 * Math.max(1e3, Math.abs(tidy)));
    }

    @Property
    void no_text_makes_an_exception(@ForAll String text, @ForAll("spellings") Spelling spelling) {
        assertNotNull(Measure.of(text, List.of(spelling.table()), true));
        assertNotNull(Measure.of("1 " + text, List.of(spelling.table()), true));
    }
}
