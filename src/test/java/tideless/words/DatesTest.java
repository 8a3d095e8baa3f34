package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DatesTest {
    /** 15 to 19 Feb reads as five days, where it was a year and five. */
    @ParameterizedTest
    @CsvSource({
        "2027-02-15, 2027-02-19, 15 to 19 Feb",
        "2026-12-19, 2027-01-10, 19 Dec to 10 Jan",
        "2026-02-15, 2027-02-14, 15 Feb to 14 Feb",
        "2026-02-15, 2027-02-15, 15 Feb 2026 to 15 Feb 2027",
        "2026-02-15, 2027-02-19, 15 Feb 2026 to 19 Feb 2027"
    })
    void a_span_of_a_year_or_more_says_its_years(LocalDate from, LocalDate to, String told) {
        assertEquals(told, Dates.shortSpan(from, to));
    }
}
