package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeasureTest {
    private static Read<Measure> length(String text) {
        return Measure.of(text, List.of(UnitTable.LENGTH), false);
    }

    private static String hint(String text) {
        return length(text) instanceof Read.Faulty<Measure> fault ? fault.hint() : "";
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2 cm", "2cm", " 2  cm ", "+2 cm", "2.0 cm", "20 mm", "0.02 m", "2e-2 m", ".02 m"
            })
    void two_centimetres_may_be_written_so(String text) {
        assertEquals(0.02, length(text).value().value(), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2",
                "cm",
                "",
                " ",
                "2 CM",
                "2 metres",
                "1,5 cm",
                "1,000 cm",
                "NaN cm",
                "nan",
                "Infinity m",
                "-inf m",
                "1e300 cm",
                "1e-300 cm",
                "1e999 cm",
                "2 cm 3 mm",
                "2 cm/s",
                "--2 cm",
                "2 2 cm",
                "0x10 cm",
                "1_000 cm",
                "\u0661 cm",
                "1e cm",
                "two cm",
                "2 cm; DROP",
                "1'000 m"
            })
    void anything_else_is_a_fault(String text) {
        assertFalse(length(text).isSound(), text);
    }

    @Test
    void a_very_long_number_is_a_fault_and_no_wait() {
        assertFalse(length("9".repeat(100_000) + " cm").isSound());
    }

    @Test
    void both_signs_for_micro_are_one() {
        List<UnitTable> tables = List.of(UnitTable.PHOTON_FLUX);
        assertEquals(450, Measure.of("450 \u00b5mol/m2/s", tables, false).value().value());
        assertEquals(450, Measure.of("450 \u03bcmol/m2/s", tables, false).value().value());
        assertEquals(450, Measure.of("450 umol/m2/s", tables, false).value().value());
    }

    @Test
    void a_wrong_case_is_put_right_in_the_hint() {
        assertEquals("Did you mean \"cm\"?", hint("2 CM"));
    }

    @Test
    void a_number_for_people_has_no_idle_digits() {
        assertEquals("8", Measure.plain(8.0));
        assertEquals("0.127", Measure.plain(0.127));
        assertEquals("9600", Measure.plain(9600.000001));
        assertEquals("40000", Measure.plain(40000));
        assertEquals("-4.5", Measure.plain(-4.5));
        assertEquals("0", Measure.plain(0));
        assertEquals("8 cm", Measure.plain(0.08, UnitTable.LENGTH, "cm"));
    }
}
