package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimestampsTest {
    private static final LocalDateTime ONE_O_CLOCK = LocalDateTime.of(2026, 3, 25, 13, 0);

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-03-25T13:00",
                "2026-03-25 13:00:00",
                "2026/03/25 13:00",
                "20260325:1300",
                "25.03.2026 13:00",
                "25.3.2026 13:00:00",
                "25/03/2026 13:00",
                "03/25/2026 13:00",
                "3/25/2026 1:00 PM",
                "25-03-2026 13:00",
                "2026-03-25T13:00:00.000"
            })
    void one_afternoon_is_read_in_every_spelling(String text) {
        assertEquals(ONE_O_CLOCK, Timestamps.of(List.of(text)).read(text).value());
        assertTrue(Timestamps.isOne(text));
    }

    @Test
    void midnight_and_noon_on_a_twelve_hour_clock() {
        Timestamps months = Timestamps.of(List.of("3/25/2026 1:00 PM"));
        assertEquals(LocalDateTime.of(2026, 3, 2, 0, 5), months.read("3/2/2026 12:05 AM").value());
        assertEquals(LocalDateTime.of(2026, 3, 2, 12, 5), months.read("3/2/2026 12:05 pm").value());
        assertFalse(months.read("3/2/2026 13:05 PM").isSound());
    }

    @Test
    void day_and_month_are_told_apart_by_the_whole_column_or_not_at_all() {
        assertEquals(
                LocalDateTime.of(2026, 3, 2, 0, 0),
                Timestamps.of(List.of("02/03/2026", "13/03/2026")).read("02/03/2026").value());
        assertEquals(
                LocalDateTime.of(2026, 2, 3, 0, 0),
                Timestamps.of(List.of("02/03/2026", "02/13/2026")).read("02/03/2026").value());
        assertFalse(
                Timestamps.of(List.of("02/03/2026", "03/03/2026")).read("02/03/2026").isSound());
    }

    @Test
    void what_is_no_date_is_none() {
        Timestamps any = Timestamps.of(List.of());
        for (String text :
                new String[] {"", "UTC", "local", "2026-13-01", "2026-02-30 10:00", "1"}) {
            assertFalse(any.read(text).isSound(), text);
        }
        assertFalse(Timestamps.isOne("UTC+01:00"));
        assertFalse(Timestamps.isOne("days"));
    }
}
