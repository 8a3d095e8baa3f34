package tideless.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TimeZone;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.Test;
import tideless.advice.Task;
import tideless.rig.Visits;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;
import tideless.study.threads.ThreadPool;

/** The calendar, read by another library than the one that writes it. */
class CalendarFileTest {
    private static final Forecast BENCH = forecast(3);

    private static Forecast forecast(int members) {
        Path file = Path.of("scenarios/science-room-bench.toml");
        Reading.Good good = (Reading.Good) ScenarioReader.read(file);
        try {
            return Forecasts.of(good.scenario(), 1, members, new ThreadPool(2));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<VEvent> events(byte[] bytes) throws Exception {
        Calendar calendar = new CalendarBuilder().build(new ByteArrayInputStream(bytes));
        assertThat(calendar.validate().hasErrors()).isFalse();
        for (VEvent event : calendar.<VEvent>getComponents(Component.VEVENT)) {
            assertThat(event.validate().hasErrors()).as(event.toString()).isFalse();
        }
        return calendar.getComponents(Component.VEVENT);
    }

    private static String value(VEvent event, String property) {
        return event.<Property>getRequiredProperty(property).getValue();
    }

    @Test
    void another_library_finds_every_task_at_its_hour_with_a_reminder() throws Exception {
        List<VEvent> events = events(CalendarFile.bytes(BENCH));
        Set<String> ids = new HashSet<>();
        events.forEach(e -> assertThat(ids.add(value(e, Property.UID))).isTrue());
        for (Task task : BENCH.advice().tasks()) {
            if (task.kind() == Task.Kind.SET_OUT || task.kind() == Task.Kind.SOW) {
                continue; // whole days of their own: DiaryTest
            }
            String at = task.due().toString().replaceAll("[-:]", "") + "00";
            assertThat(events)
                    .anyMatch(
                            e ->
                                    value(e, Property.DTSTART).equals(at)
                                            && value(e, Property.DESCRIPTION)
                                                    .equals(tideless.words.TaskWords.text(task))
                                            && e.getAlarms().size() == 1);
        }
    }

    @Test
    void rounds_leave_out_the_days_on_which_nobody_comes() throws Exception {
        VEvent rounds =
                events(CalendarFile.bytes(BENCH)).stream()
                        .filter(e -> value(e, Property.UID).contains("look-in"))
                        .findFirst()
                        .orElseThrow();
        var visits = BENCH.trace().scenario().visits();
        var start = BENCH.trace().scenario().start();
        Set<String> days = new HashSet<>();
        rounds.<java.time.LocalDateTime>calculateRecurrenceSet(
                        new net.fortuna.ical4j.model.Period<>(
                                start.atStartOfDay(), start.plusDays(400).atStartOfDay()))
                .forEach(p -> days.add(p.getStart().toString().substring(0, 10)));
        Set<String> expected = new HashSet<>();
        for (int day = 0; day < BENCH.trace().scenario().days(); day++) {
            if (visits.on(start.plusDays(day))) {
                expected.add(start.plusDays(day).toString());
            }
        }
        assertThat(days).isEqualTo(expected);
    }

    // Tuesdays and Saturdays, every two days: at each; Mondays to Fridays: Monday, Wednesday,
    // Friday.
    @Test
    void what_comes_again_comes_on_days_of_visits_so_far_apart() {
        Visits visits = BENCH.trace().scenario().visits();
        Visits twice = visits.withWeekdays(EnumSet.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY));
        assertThat(CalendarFile.weekdays(twice, DayOfWeek.SATURDAY, 2))
                .containsExactly(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY);
        assertThat(CalendarFile.weekdays(twice, DayOfWeek.SATURDAY, 4))
                .containsExactly(DayOfWeek.SATURDAY);
        Visits school = visits.withWeekdays(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY));
        assertThat(CalendarFile.weekdays(school, DayOfWeek.MONDAY, 2))
                .containsExactly(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY);
        assertThat(CalendarFile.weekdays(school, DayOfWeek.MONDAY, 3))
                .containsExactly(DayOfWeek.MONDAY, DayOfWeek.THURSDAY);
        assertThat(CalendarFile.weekdays(school, DayOfWeek.MONDAY, 14))
                .containsExactly(DayOfWeek.MONDAY);
    }

    @Test
    void picking_and_reading_come_again_until_they_end_and_not_in_absences() throws Exception {
        Visits visits = BENCH.trace().scenario().visits();
        LocalDate start = BENCH.trace().scenario().start();
        int seen = 0;
        for (VEvent event : events(CalendarFile.bytes(BENCH))) {
            String id = value(event, Property.UID);
            if (!id.contains("read-meters") && !id.contains("pick-tray")) {
                continue;
            }
            seen++;
            List<LocalDate> days = new ArrayList<>();
            event.<LocalDateTime>calculateRecurrenceSet(
                            new net.fortuna.ical4j.model.Period<>(
                                    start.atStartOfDay(), start.plusDays(400).atStartOfDay()))
                    .forEach(p -> days.add(p.getStart().toLocalDate()));
            assertThat(days).hasSizeGreaterThan(1);
            assertThat(days).allMatch(visits::on);
            assertThat(days).allMatch(d -> !d.isAfter(BENCH.trace().scenario().lastDay()));
        }
        assertThat(seen).isPositive();
    }

    @Test
    void another_run_keeps_the_identifiers_and_no_zone_changes_a_byte() {
        byte[] one = CalendarFile.bytes(BENCH);
        TimeZone zone = TimeZone.getDefault();
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("America/New_York"));
            assertThat(CalendarFile.bytes(BENCH)).isEqualTo(one);
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Apia"));
            assertThat(CalendarFile.bytes(BENCH)).isEqualTo(one);
        } finally {
            TimeZone.setDefault(zone);
        }
        assertThat(ids(CalendarFile.bytes(forecast(1)))).isEqualTo(ids(one));
        for (String line : new String(one, StandardCharsets.UTF_8).split("\r\n")) {
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        }
    }

    private static List<String> ids(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8)
                .replace("\r\n ", "")
                .lines()
                .filter(line -> line.startsWith("UID:"))
                .toList();
    }
}
