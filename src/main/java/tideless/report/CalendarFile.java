package tideless.report;

import biweekly.ICalDataType;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VAlarm;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.parameter.Related;
import biweekly.property.DateTimeStamp;
import biweekly.property.RawProperty;
import biweekly.property.Trigger;
import biweekly.util.Duration;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tideless.rig.Scenario;
import tideless.rig.Visits;
import tideless.study.Forecast;
import tideless.words.Names;

/**
 * A forecast as iCalendar (RFC 5545). Times are those of the rig's own clock, bound to no zone. An
 * entry keeps its identifier from one run of a scenario to the next, so that a second import moves
 * it; entries that no longer come stay where they are. The stamp is the scenario's start: the same
 * forecast gives the same bytes.
 */
public final class CalendarFile {
    private static final int VISIT_MINUTES = 15;

    private static final int DAYS_OF_WEEK = 7;

    /** Characters to a line: 75 bytes at most (RFC 5545, 3.1), and some are more than one. */
    private static final int FOLD = 70;

    private final Scenario scenario;

    private CalendarFile(Scenario scenario) {
        this.scenario = scenario;
    }

    /**
     * Writes it.
     *
     * @param file where to; its folder is made when it is not there
     * @param inputs files that were read for it, whose place it may not take
     */
    public static WriteResult write(Forecast forecast, Path file, Collection<Path> inputs) {
        Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of("."));
        return ResultFiles.put(
                folder, () -> Map.of(file.getFileName().toString(), bytes(forecast)), inputs);
    }

    static byte[] bytes(Forecast forecast) {
        CalendarFile file = new CalendarFile(forecast.trace().scenario());
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//Tideless//" + ResultJson.version() + "//EN");
        calendar.addExperimentalProperty("X-WR-CALNAME", Names.clean(file.scenario.title()));
        Diary.of(forecast).entries().forEach(e -> calendar.addEvent(file.event(e)));
        StringWriter text = new StringWriter();
        try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(FOLD);
            writer.write(calendar);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // A string takes all it is given.
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private VEvent event(Diary.Entry entry) {
        VEvent event = new VEvent();
        event.setUid(entry.id());
        event.removeProperties(DateTimeStamp.class); // of the moment, and no two alike
        event.addExperimentalProperty("DTSTAMP", text(scenario.start()) + "T000000Z");
        event.setSequence(0);
        event.setSummary(entry.what());
        event.setDescription(entry.text());
        event.setTransparency(true);
        if (entry.lastDay().isPresent()) {
            date(event, "DTSTART", entry.from().toLocalDate());
            date(event, "DTEND", entry.lastDay().get().plusDays(1));
        } else {
            // The library turns dates into instants by the machine's zone; these are of no zone.
            event.addExperimentalProperty("DTSTART", text(entry.from()));
            event.addExperimentalProperty("DTEND", text(entry.from().plusMinutes(VISIT_MINUTES)));
        }
        entry.again().ifPresent(again -> addRule(event, entry.from(), again));
        if (entry.remindHours() > 0) {
            Duration before = Duration.builder().prior(true).hours(entry.remindHours()).build();
            event.addAlarm(VAlarm.display(new Trigger(before, Related.START), entry.what()));
        }
        return event;
    }

    // By weeks, on days of visits only; in absences nobody is there.
    private void addRule(VEvent event, LocalDateTime first, Diary.Again again) {
        Visits visits = scenario.visits();
        Set<DayOfWeek> days = weekdays(visits, first.getDayOfWeek(), again.everyDays());
        int weeks = Math.max(1, again.everyDays() / DAYS_OF_WEEK);
        event.addExperimentalProperty(
                "RRULE",
                "FREQ=WEEKLY;"
                        + (weeks > 1 ? "INTERVAL=" + weeks + ";" : "")
                        + "BYDAY="
                        + days.stream()
                                .map(day -> day.name().substring(0, 2))
                                .collect(Collectors.joining(","))
                        + ";UNTIL="
                        + text(again.lastDay().atTime(first.toLocalTime())));
        List<String> away = new ArrayList<>();
        LocalDate from = first.toLocalDate();
        for (LocalDate day = from; !day.isAfter(again.lastDay()); day = day.plusDays(1)) {
            if (days.contains(day.getDayOfWeek()) && visits.isAway(day)) {
                away.add(text(day.atTime(first.toLocalTime())));
            }
        }
        if (!away.isEmpty()) {
            event.addExperimentalProperty("EXDATE", String.join(",", away));
        }
    }

    /** Days of visits that lie at least so far apart, the first of them among them. */
    static Set<DayOfWeek> weekdays(Visits visits, DayOfWeek first, int everyDays) {
        Set<DayOfWeek> days = EnumSet.of(first);
        int sinceLast = 0;
        for (int ahead = 1; ahead < DAYS_OF_WEEK; ahead++) {
            sinceLast++;
            DayOfWeek day = first.plus(ahead);
            boolean roundTheWeek = DAYS_OF_WEEK - ahead >= everyDays;
            if (visits.weekdays().contains(day) && sinceLast >= everyDays && roundTheWeek) {
                days.add(day);
                sinceLast = 0;
            }
        }
        return days;
    }

    private static void date(VEvent event, String name, LocalDate day) {
        RawProperty property = event.addExperimentalProperty(name, ICalDataType.DATE, text(day));
        property.setParameter("VALUE", "DATE");
    }

    private static String text(LocalDate day) {
        return String.format(
                Locale.ROOT,
                "%04d%02d%02d",
                day.getYear(),
                day.getMonthValue(),
                day.getDayOfMonth());
    }

    private static String text(LocalDateTime at) {
        return text(at.toLocalDate())
                + String.format(
                        Locale.ROOT, "T%02d%02d%02d", at.getHour(), at.getMinute(), at.getSecond());
    }
}
