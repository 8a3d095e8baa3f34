package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import javax.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

class UnitTableTest {
    private static final Map<String, UnitTable> TABLES =
            Map.ofEntries(
                    Map.entry("length", UnitTable.LENGTH),
                    Map.entry("area", UnitTable.AREA),
                    Map.entry("volume", UnitTable.VOLUME),
                    Map.entry("temperature", UnitTable.TEMPERATURE),
                    Map.entry("duration", UnitTable.DURATION),
                    Map.entry("speed", UnitTable.SPEED),
                    Map.entry("illuminance", UnitTable.ILLUMINANCE),
                    Map.entry("heat loss", UnitTable.HEAT_LOSS));

    // Thompson and Taylor (2008), NIST Special Publication 811, Appendix B.8, printed to 7 digits:
    // half the last digit is at most 5e-7 of the value. From memory of the table.
    @ParameterizedTest(name = "1 {1} is {2} in SI")
    @CsvSource({
        "length, in, 2.54E-02",
        "length, ft, 3.048E-01",
        "area, in2, 6.4516E-04",
        "area, ft2, 9.290304E-02",
        "volume, gal, 3.785412E-03",
        "volume, qt, 9.463529E-04",
        "volume, fl oz, 2.957353E-05",
        "volume, imp gal, 4.54609E-03",
        "volume, ft3, 2.831685E-02",
        "volume, L, 1E-03",
        "duration, days, 8.64E+04",
        "speed, ft/min, 5.08E-03",
        "speed, mph, 4.4704E-01",
        "speed, kn, 5.144444E-01",
        "speed, km/h, 2.777778E-01",
        "illuminance, fc, 1.076391E+01",
        "heat loss, Btu/(h ft2 degF), 5.678263"
    })
    void a_factor_agrees_with_NIST_SP_811(String table, String unit, double expected) {
        double value = TABLES.get(table).value(1, unit).orElseThrow();
        assertEquals(expected, value, 5e-7 * expected);
    }

    // Fixed points: NIST SP 811, B.8: t/degC = (t/degF - 32)/1.8; t/degC = T/K - 273.15.
    @ParameterizedTest(name = "{0} {1} is {2} degC")
    @CsvSource({
        "32, degF, 0",
        "212, degF, 100",
        "72, degF, 22.222222",
        "-40, degF, -40",
        "295.15, K, 22"
    })
    void a_temperature_agrees_with_its_definition(double number, String unit, double degC) {
        // The one rounded figure is printed to 6 decimals.
        assertEquals(degC, UnitTable.TEMPERATURE.value(number, unit).orElseThrow(), 5e-7);
    }

    // An independent library's converters (not its parser); both claim exact definitions, so only
    // rounding may differ.
    @Test
    void factors_agree_with_an_independent_library() {
        agrees(UnitTable.LENGTH, "in", USCustomary.INCH, Units.METRE);
        agrees(UnitTable.LENGTH, "ft", USCustomary.FOOT, Units.METRE);
        agrees(UnitTable.AREA, "ft2", USCustomary.SQUARE_FOOT, Units.SQUARE_METRE);
        agrees(UnitTable.VOLUME, "gal", USCustomary.GALLON_LIQUID, Units.CUBIC_METRE);
        agrees(UnitTable.VOLUME, "fl oz", USCustomary.FLUID_OUNCE, Units.CUBIC_METRE);
        agrees(UnitTable.VOLUME, "ft3", USCustomary.CUBIC_FOOT, Units.CUBIC_METRE);
        agrees(UnitTable.VOLUME, "L", USCustomary.LITER, Units.CUBIC_METRE);
        agrees(UnitTable.SPEED, "mph", USCustomary.MILE_PER_HOUR, Units.METRE_PER_SECOND);
        agrees(UnitTable.SPEED, "kn", USCustomary.KNOT, Units.METRE_PER_SECOND);
        agrees(UnitTable.SPEED, "km/h", Units.KILOMETRE_PER_HOUR, Units.METRE_PER_SECOND);
        agrees(UnitTable.TEMPERATURE, "degF", USCustomary.FAHRENHEIT, Units.CELSIUS);
        agrees(UnitTable.TEMPERATURE, "K", Units.KELVIN, Units.CELSIUS);
        agrees(UnitTable.DURATION, "weeks", Units.WEEK, Units.SECOND);
        agrees(UnitTable.DURATION, "days", Units.DAY, Units.SECOND);
    }

    private static <Q extends javax.measure.Quantity<Q>> void agrees(
            UnitTable table, String spelling, Unit<Q> unit, Unit<Q> si) {
        for (double number : new double[] {1, 7.25, 300}) {
            double expected = unit.getConverterTo(si).convert(number);
            assertEquals(
                    expected,
                    table.value(number, spelling).orElseThrow(),
                    1e-12 * Math.max(1, Math.abs(expected)),
                    number + " " + spelling);
        }
    }

    // Molar masses: IUPAC abridged standard atomic weights. 50 mg/L NO3 and 11.3 mg/L NO3-N are the
    // same limit of drinking water in two countries' books (50 / 62.0049 = 0.8064; 11.3 / 14.0067 =
    // 0.8068), so they may differ by half of the last digit of 11.3.
    @Test
    void nitrate_by_ion_and_by_nitrogen_meet() {
        assertEquals(0.5, Ion.CALCIUM.equivalents().value(1, "meq/L").orElseThrow());
        assertEquals(1, Ion.BICARBONATE.equivalents().value(1, "meq/L").orElseThrow());
        UnitTable nitrate = Ion.NITRATE.table();
        double byIon = nitrate.value(50, "mg/L NO3").orElseThrow();
        assertEquals(0.80640, byIon, 5e-6);
        assertEquals(byIon, nitrate.value(11.3, "mg/L N").orElseThrow(), 0.05 / 14.0067);
    }

    @Test
    void plain_mg_per_litre_is_refused_where_laboratories_mean_two_things() {
        assertTrue(Ion.NITRATE.table().value(50, "mg/L").isEmpty());
        assertTrue(Ion.SULFATE.table().value(50, "mg/L").isEmpty());
        assertTrue(Ion.PHOSPHATE.table().value(50, "mg/L").isEmpty());
        assertFalse(Ion.SODIUM.table().value(50, "mg/L").isEmpty());
    }

    @Test
    void a_gallon_a_day_is_3785_millilitres_a_day() {
        double perDay = UnitTable.FLOW.value(1, "gal/day").orElseThrow() * 86400 * 1e6;
        assertEquals(3785.411784, perDay, 1e-6); // by definition of the gallon
    }

    @Test
    void conductivities_that_mean_the_same_are_the_same() {
        for (String text :
                List.of("1.2 mS/cm", "1200 uS/cm", "1200 \u03bcS/cm", "1.2 dS/m", "120 mS/m")) {
            assertEquals(
                    1.2,
                    Measure.of(text, List.of(UnitTable.CONDUCTIVITY), false).value().value(),
                    1e-12,
                    text);
        }
    }
}
