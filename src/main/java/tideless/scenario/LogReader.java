package tideless.scenario;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tideless.physics.Time;
import tideless.rig.Lamp;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/**
 * Reads a log for a scenario. What cannot be is a fault, with line and column; what is odd but may
 * be is said and stands.
 */
final class LogReader {
    private static final Pattern CLOCK =
            Pattern.compile(
                    "(\\d{1,2})(?:[.:h](\\d\\d))?(?::\\d\\d)?\\s*(?:h|Uhr)?(?:([AaPp])\\.?[Mm]\\.?)?");

    /** Within so long the same deed may have been written down twice, by two clocks; assumed. */
    static final double TWO_CLOCKS_S = 1.5 * Time.HOUR_S;

    /** Two levels of one instant that differ by no more are one reading; assumed, m. */
    private static final double ONE_LEVEL_M = 0.005;

    private final String label;
    private final TomlFile source;
    private final Scenario scenario;
    private final LogRules rules;
    private LogDates dates;
    private boolean tellsTime;
    private int outside;
    private final List<Misdated> misdated = new ArrayList<>();

    /** A line of another year than the run's, and the day that may be meant. */
    private record Misdated(LogTable.Line line, LocalDate meant) {}

    /** An entry and where it stands. */
    record Placed(LogEntry entry, LogWhat what, LogTable.Line line) {}

    private LogReader(String label, TomlFile source, Scenario scenario) {
        this.label = label;
        this.source = source;
        this.scenario = scenario;
        rules = new LogRules(scenario, this);
    }

    /**
     * Reads a text.
     *
     * @param label how to name the file to the user
     * @param source told of all that is wrong or odd
     * @param scenario the rig it is about
     * @param pensPpm the unit that a pen's ppm is; empty where that is not known
     */
    static Read<Log> read(
            String label, String text, TomlFile source, Scenario scenario, String pensPpm) {
        int before = source.problems().size();
        Read<List<LogTable.Line>> lines =
                LogTable.read(label, text, source, vessels(scenario), pensPpm);
        if (!lines.isSound()) {
            return Read.faulty();
        }
        LogReader reader = new LogReader(label, source, scenario);
        Log log = reader.log(lines.value());
        return source.problems().size() > before ? Read.faulty() : Read.of(log);
    }

    private Log log(List<LogTable.Line> lines) {
        LocalDateTime begin = scenario.start().atStartOfDay();
        dates =
                LogDates.of(
                        begin,
                        begin.plusDays(scenario.days()),
                        lines.stream().map(line -> line.date().text()).toList());
        List<Placed> placed = new ArrayList<>();
        for (LogTable.Line line : lines) {
            read(line, placed);
        }
        sayMisdated();
        if (lines.isEmpty()) {
            note(1, "nothing is written in this log yet");
        }
        if (outside > 0) {
            note(
                    1,
                    outside
                            + (outside == 1 ? " entry lies" : " entries lie")
                            + " outside the run, %s to %s, and %s not used; length says how long it is"
                                    .formatted(
                                            scenario.start(),
                                            scenario.lastDay(),
                                            outside == 1 ? "is" : "are"));
        }
        sayDisorder(placed);
        if (isNewestFirst(placed)) {
            Collections.reverse(placed); // what was done in one minute, too
        }
        placed.sort(Comparator.comparingDouble(one -> one.entry().atS())); // stable
        return new Log(checked(placed).stream().map(Placed::entry).toList());
    }

    private void read(LogTable.Line line, List<Placed> placed) {
        Read<Double> at = instant(line);
        LogWhat what = LogWhat.of(line.what().text());
        if (what == null) {
            String meant = LogWhat.nearest(line.what().text());
            problem(
                    line.line(),
                    line.what(),
                    LogTable.WHAT,
                    line.what().isEmpty()
                            ? "nothing"
                            : Key.quoted(TomlFile.shown(line.what().text())),
                    String.join(", ", LogWhat.words()),
                    meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
            return;
        }
        Read<Boolean> use = use(line);
        if (!use.isSound() || at.isFaulty()) {
            return;
        }
        if (at.isAbsent()) {
            outside++;
        }
        List<LogEntry> entries = rules.entries(what, line, at.orElse(0.0), use.value());
        if (at.isSound()) {
            entries.forEach(entry -> placed.add(new Placed(entry, what, line)));
        }
    }

    private Read<Boolean> use(LogTable.Line line) {
        String word = line.use().text().toLowerCase(Locale.ROOT);
        if (List.of("", "yes", "y", "1").contains(word)) {
            return Read.of(true);
        }
        if (List.of("no", "n", "0").contains(word)) {
            return Read.of(false);
        }
        problem(
                line.line(),
                line.use(),
                LogTable.USE,
                Key.quoted(TomlFile.shown(line.use().text())),
                "yes, no, or nothing for yes",
                "");
        return Read.faulty();
    }

    /** Seconds since the start; absent outside the run. */
    private Read<Double> instant(LogTable.Line line) {
        LogTable.Cell date = line.date();
        LogTable.Cell time = line.time();
        boolean both = date.text().indexOf(':') >= 0;
        String clock = both ? "" : clock(line);
        if (clock == null) {
            return Read.faulty();
        }
        Read<LocalDateTime> when = dates.read(date.text(), clock);
        if (!when.isSound()) {
            problem(
                    line.line(),
                    date,
                    LogTable.DATE,
                    date.isEmpty() ? "nothing" : Key.quoted(TomlFile.shown(date.text())),
                    "a date, as 2026-03-09, 09.03.2026 or 9 Mar",
                    LogDates.hint(date.text()));
            return Read.faulty();
        }
        LocalDateTime at = when.value();
        if (!both && time.isEmpty()) {
            at = at.toLocalDate().atStartOfDay().plusSeconds((long) visitS());
            if (!tellsTime) {
                tellsTime = true;
                note(
                        line.line(),
                        "no time of day: %s, that of the visits, is taken here and wherever none stands"
                                .formatted(Time.clock(visitS())));
            }
        }
        return placed(line, at);
    }

    private double visitS() {
        return scenario.visits().timeOfDayS();
    }

    /** As Timestamps reads it; empty where none is stated, null where it is none. */
    private String clock(LogTable.Line line) {
        LogTable.Cell time = line.time();
        if (time.isEmpty()) {
            return "00:00";
        }
        Matcher clock = CLOCK.matcher(time.text());
        if (clock.matches()) {
            String minutes = clock.group(2) == null ? "00" : clock.group(2);
            String half = clock.group(3) == null ? "" : " " + clock.group(3) + "m";
            int hour = Integer.parseInt(clock.group(1));
            boolean fits = half.isEmpty() ? hour < 24 : hour >= 1 && hour <= 12;
            if (fits && Integer.parseInt(minutes) < 60) {
                return clock.group(1) + ":" + minutes + half;
            }
        }
        problem(
                line.line(),
                time,
                LogTable.TIME,
                Key.quoted(TomlFile.shown(time.text())),
                "a time of day, as 08:00 or 8:00 pm",
                "");
        return null;
    }

    private Read<Double> placed(LogTable.Line line, LocalDateTime at) {
        LocalDateTime begin = scenario.start().atStartOfDay();
        LocalDateTime end = begin.plusDays(scenario.days());
        if (!at.isBefore(begin) && at.isBefore(end)) {
            return Read.of((double) ChronoUnit.SECONDS.between(begin, at));
        }
        for (int years : new int[] {1, -1, 2, -2, 10, -10, 100, -100}) {
            LocalDateTime other = at.plusYears(years);
            if (!other.isBefore(begin) && other.isBefore(end)) {
                misdated.add(new Misdated(line, other.toLocalDate()));
                return Read.faulty();
            }
        }
        return Read.absent();
    }

    /** Those of another year, in one sentence: who miswrites it does so from top to bottom. */
    private void sayMisdated() {
        if (misdated.isEmpty()) {
            return;
        }
        Misdated first = misdated.get(0);
        int more = misdated.size() - 1;
        problem(
                first.line().line(),
                first.line().date(),
                LogTable.DATE,
                Key.quoted(TomlFile.shown(first.line().date().text())),
                "a day of the run, %s to %s".formatted(scenario.start(), scenario.lastDay()),
                "Did you mean "
                        + first.meant()
                        + "?"
                        + (more == 0
                                ? ""
                                : more == 1
                                        ? " One more line is of another year."
                                        : " " + more + " more lines are of another year."));
    }

    /** Whether a log was written from the bottom up. */
    private static boolean isNewestFirst(List<Placed> placed) {
        int falls = 0;
        for (int i = 1; i < placed.size(); i++) {
            falls +=
                    (int)
                            Math.signum(
                                    placed.get(i - 1).entry().atS() - placed.get(i).entry().atS());
        }
        return falls > 0;
    }

    private void sayDisorder(List<Placed> placed) {
        for (int i = 1; i < placed.size(); i++) {
            if (placed.get(i).entry().atS() < placed.get(i - 1).entry().atS()) {
                note(
                        placed.get(i).line().line(),
                        "stands after a later entry; all are sorted by date and time");
                return;
            }
        }
    }

    /** Without what stands twice; what contradicts itself is told. */
    private List<Placed> checked(List<Placed> sorted) {
        List<Placed> kept = new ArrayList<>();
        for (Placed one : sorted) {
            if (!contradicts(one, kept)) {
                kept.add(one);
            }
        }
        sayRises(kept);
        new LoggedRefills(scenario, this).say(kept);
        return kept;
    }

    /** Whether one stands twice or against another of its instant, which has then been said. */
    private boolean contradicts(Placed one, List<Placed> before) {
        if (one.entry() instanceof LogEntry.Looked) {
            return false;
        }
        for (int i = before.size() - 1; i >= 0; i--) {
            Placed other = before.get(i);
            double apartS = one.entry().atS() - other.entry().atS();
            if (apartS > TWO_CLOCKS_S) {
                return false;
            }
            boolean isAlike =
                    other.what() == one.what()
                            && other.entry().getClass() == one.entry().getClass()
                            && vessel(other.entry()).equals(vessel(one.entry()));
            if (!isAlike) {
                if (apartS == 0
                        && one.what() != LogWhat.REFILL
                        && other.entry() instanceof LogEntry.Deed deed
                        && deed.where().equals(vessel(one.entry()))
                        && one.entry() instanceof LogEntry.Reading) {
                    return false; // before a deed and after it
                }
                continue;
            }
            boolean same = isSame(one, other);
            if (apartS == 0 && same) {
                if (one.line().line() != other.line().line()) {
                    note(
                            one.line().line(),
                            one.line().value().text().equals(other.line().value().text())
                                    ? "the same as line %s; counted once"
                                            .formatted(other.line().line())
                                    : "read twice at one time: %s of line %s counts"
                                            .formatted(words(other), other.line().line()));
                }
                return true;
            }
            if (apartS == 0) {
                problem(
                        one.line().line(),
                        one.line().value(),
                        LogTable.VALUE,
                        "%s, but line %s of the same time says %s"
                                .formatted(words(one), other.line().line(), words(other)),
                        "one " + one.what().word() + " of a vessel at a time",
                        "Which of the two? Take the other out, or write no under use.");
                return true;
            }
            if (same && one.entry() instanceof LogEntry.Deed) {
                note(
                        one.line().line(),
                        "the same %s as in line %s, shortly after it; both are entered: if two clocks wrote down one, take one out"
                                .formatted(one.what().word(), other.line().line()));
                return false;
            }
        }
        return false;
    }

    private static String words(Placed one) {
        String value = one.line().value().text();
        return value.isEmpty() ? one.what().word() : TomlFile.shown(value);
    }

    static VesselId vessel(LogEntry entry) {
        if (entry instanceof LogEntry.Reading reading) {
            return reading.where();
        }
        return entry instanceof LogEntry.Deed deed ? deed.where() : VesselId.tray("");
    }

    private static boolean isSame(Placed one, Placed other) {
        if (one.entry() instanceof LogEntry.Reading a
                && other.entry() instanceof LogEntry.Reading b) {
            double apart = Math.abs(a.value() - b.value());
            return apart == 0 || (a.what() == LogEntry.Quantity.LEVEL && apart <= ONE_LEVEL_M);
        }
        return one.line().value().text().equals(other.line().value().text());
    }

    /** A level that rose though nothing was poured in: a refill that is missing, or a slip. */
    private void sayRises(List<Placed> kept) {
        Map<VesselId, LogEntry.Reading> last = new HashMap<>();
        for (Placed one : kept) {
            if (one.entry() instanceof LogEntry.FilledUp
                    || one.entry() instanceof LogEntry.Poured) {
                last.remove(vessel(one.entry()));
            }
            if (one.entry() instanceof LogEntry.Reading reading
                    && reading.what() == LogEntry.Quantity.LEVEL
                    && reading.counts()
                    && reading.where().kind() == VesselId.Kind.RESERVOIR) {
                LogEntry.Reading before = last.put(reading.where(), reading);
                if (before != null && reading.value() > before.value() + 2 * ONE_LEVEL_M) {
                    note(
                            one.line().line(),
                            "the level rose by %s since line %s though no refill is written between: is one missing?"
                                    .formatted(
                                            Measure.plain(
                                                    reading.value() - before.value(),
                                                    UnitTable.LENGTH,
                                                    "cm"),
                                            before.line()));
                }
            }
        }
    }

    void problem(
            int line, LogTable.Cell cell, String key, String found, String allowed, String hint) {
        source.add(new Problem(label, line, Math.max(1, cell.column()), key, found, allowed, hint));
    }

    void note(int line, String text) {
        source.note(new Note(label, line, "", text));
    }

    /** The trays of a scenario under the lamps that a log says were changed. */
    static Scenario relit(Scenario scenario, Log log) {
        List<Tray> trays = new ArrayList<>();
        for (Tray tray : scenario.trays()) {
            Lamp lamp = tray.lamp();
            for (LogEntry entry : log.entries()) {
                if (entry instanceof LogEntry.LampChanged changed
                        && changed.where().equals(tray.id())) {
                    lamp = lamp.from((int) (changed.atS() / Time.DAY_S), changed.ppfdUmolPerM2S());
                }
            }
            trays.add(tray.withLamp(lamp));
        }
        return scenario.withTrays(trays);
    }

    /** Names of vessels a log may speak of. */
    static List<String> vessels(Scenario scenario) {
        List<String> names = new ArrayList<>();
        scenario.reservoirs().stream().map(Reservoir::name).forEach(names::add);
        scenario.trays().stream().map(Tray::name).forEach(names::add);
        return names.stream().distinct().toList();
    }
}
