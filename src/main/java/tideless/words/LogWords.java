package tideless.words;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.study.FarLevels;

/** Sentences about a grower's log. */
public final class LogWords {
    private LogWords() {}

    /** What a log holds, a line for all and one for each vessel. */
    public static List<String> held(Scenario scenario) {
        List<LogEntry> entries = scenario.log().entries();
        if (entries.isEmpty()) {
            return List.of("The log reads, and holds nothing of this run yet.");
        }
        List<LogEntry.Reading> readings = scenario.log().readings();
        long deeds = entries.stream().filter(e -> e instanceof LogEntry.Deed).count();
        long out = readings.stream().filter(r -> !r.counts()).count();
        List<String> lines = new ArrayList<>();
        lines.add(
                "The log reads: "
                        + counted(readings.size(), "reading")
                        + " and "
                        + counted(deeds, "thing")
                        + " done, "
                        + visit(scenario, entries.get(0).atS())
                        + " to "
                        + visit(scenario, scenario.log().lastS())
                        + (out > 0 ? "; " + counted(out, "reading") + " kept out as you say" : "")
                        + ".");
        vessels(scenario).forEach(vessel -> lines.add(of(entries, vessel)));
        lines.addAll(assumed(scenario));
        for (LogEntry.Quantity what : LogEntry.Quantity.values()) {
            if (!what.teaches() && readings.stream().anyMatch(r -> r.what() == what)) {
                lines.add(FitWords.idle(what) + ".");
            }
        }
        return lines;
    }

    /** What a run owes to a log and to what was learned from one, a sentence each. */
    public static List<String> lived(Scenario scenario) {
        List<String> lines = new ArrayList<>();
        if (!scenario.log().isEmpty()) {
            lines.add(
                    "Log up to "
                            + visit(scenario, scenario.log().lastS())
                            + ": what is dated before that is past, as it was written down.");
            List<String> done = new ArrayList<>();
            for (VesselId vessel : vessels(scenario)) {
                String deeds = deeds(scenario, vessel);
                if (!deeds.isEmpty()) {
                    done.add(Names.of(vessel) + ": " + deeds);
                }
            }
            if (!done.isEmpty()) {
                lines.add("Done: " + String.join("; ", done) + ".");
            }
            lines.addAll(assumed(scenario));
        }
        if (!scenario.correction().equals(Correction.NONE)) {
            lines.add("Corrected by what a log has taught." + leaks(scenario.correction()));
        }
        return lines;
    }

    private static String leaks(Correction correction) {
        StringBuilder sentences = new StringBuilder();
        new TreeMap<>(correction.leakM3PerS())
                .forEach(
                        (reservoir, m3PerS) ->
                                sentences
                                        .append(" Reservoir ")
                                        .append(Names.clean(reservoir))
                                        .append(" loses ")
                                        .append(FitWords.litresADay(L_PER_M3 * Time.DAY_S * m3PerS))
                                        .append(" that nothing drinks: mend the leak first."));
        return sentences.toString();
    }

    private static final double L_PER_M3 = 1000;

    /** What is taken as done in the days of a log though it does not say so, a sentence each. */
    public static List<String> assumed(Scenario scenario) {
        List<String> lines = new ArrayList<>();
        double fromS = scenario.log().keptFromS();
        if (!scenario.log().isEmpty() && fromS >= BEGUN_LATE_S) {
            lines.add(
                    "Up to the log's first line, "
                            + visit(scenario, fromS)
                            + ", all is taken as done by the scenario's rules.");
        }
        List<String> untold =
                vessels(scenario).stream()
                        .filter(vessel -> isFilledByRule(scenario, vessel))
                        .filter(vessel -> !scenario.log().tellsOfWater(vessel))
                        .map(Names::of)
                        .toList();
        if (!scenario.log().isEmpty() && !untold.isEmpty()) {
            lines.add(
                    "Of "
                            + Names.list(untold)
                            + " the log tells neither level nor refill: taken as filled by the"
                            + " scenario's rules.");
        }
        return lines;
    }

    private static boolean isFilledByRule(Scenario scenario, VesselId vessel) {
        return scenario.reservoir(vessel)
                        .filter(r -> r.refill().when() != Reservoir.Refill.When.NEVER)
                        .isPresent()
                || scenario.tray(vessel)
                        .filter(t -> t.filling() instanceof Filling.ByHand)
                        .isPresent();
    }

    /** A log that begins later than this is said to. */
    private static final double BEGUN_LATE_S = 7 * Time.DAY_S;

    /** Levels that hardly any plants explain, a sentence each. */
    public static List<String> far(Scenario scenario) {
        return FarLevels.of(scenario).stream().map(far -> far(scenario, far)).toList();
    }

    private static String far(Scenario scenario, FarLevels.Far far) {
        String low = level(far.lowM());
        String high = level(far.highM());
        boolean isAny = low.equals(high);
        Optional<Reservoir> drawnEmpty =
                scenario.reservoir(far.reading().where())
                        .filter(r -> far.reading().value() < r.outletLevelM());
        return "Odd, line %s: level of %s on %s, %s, where %s is foretold from what stands before it, %s. Was it read right, and is every refill, top-up and spill in the log?%s"
                .formatted(
                        far.reading().line(),
                        Names.of(far.reading().where()),
                        visit(scenario, far.reading().atS()),
                        level(far.reading().value()),
                        level(far.foretoldM()),
                        isAny
                                ? "however much plants drink"
                                : "and %s to %s for plants that drink twice or half as much"
                                        .formatted(low, high),
                        drawnEmpty
                                .map(
                                        r ->
                                                " No plant draws below its outlet at "
                                                        + level(r.outletLevelM())
                                                        + ": a leak does.")
                                .orElse(""));
    }

    private static String level(double metres) {
        return FitWords.value(LogEntry.Quantity.LEVEL, metres);
    }

    /** That a log is not lived again where the rig is to be another. */
    public static String setAside(Scenario scenario) {
        return "Tried from "
                + Dates.dayMonth(scenario.start())
                + " on without the log, which tells of the rig as it is"
                + (scenario.correction().equals(Correction.NONE)
                        ? "; what it teaches counts with --corrected and the file that fit writes."
                        : "; what it taught counts.");
    }

    private static List<VesselId> vessels(Scenario scenario) {
        List<VesselId> all = new ArrayList<>();
        scenario.reservoirs().forEach(r -> all.add(r.id()));
        scenario.trays().forEach(t -> all.add(t.id()));
        return all;
    }

    /** As "refilled 5 times, last on Mon 20 Apr 08:00, flushed on Fri 3 Apr 09:00". */
    private static String deeds(Scenario scenario, VesselId vessel) {
        Map<String, Integer> times = new LinkedHashMap<>();
        Map<String, Double> last = new LinkedHashMap<>();
        for (LogEntry entry : scenario.log().entries()) {
            if (entry instanceof LogEntry.Deed deed && deed.where().equals(vessel)) {
                times.merge(deed(deed), 1, Integer::sum);
                last.put(deed(deed), deed.atS());
            }
        }
        List<String> parts = new ArrayList<>();
        times.forEach(
                (what, count) ->
                        parts.add(
                                what
                                        + (count > 1 ? " " + count + " times, last on " : " on ")
                                        + visit(scenario, last.get(what))));
        return String.join(", ", parts);
    }

    private static String deed(LogEntry.Deed deed) {
        if (deed instanceof LogEntry.Renewed renewed) {
            return renewed.flush() ? "flushed" : "given fresh solution";
        }
        if (deed instanceof LogEntry.ValveMoved) {
            return "valve moved";
        }
        if (deed instanceof LogEntry.LampChanged) {
            return "lamp changed";
        }
        if (deed instanceof LogEntry.PlantsLost) {
            return "plants lost";
        }
        if (deed instanceof LogEntry.LeavesPicked) {
            return "picked";
        }
        if (deed instanceof LogEntry.Harvested) {
            return "harvested";
        }
        return "filled";
    }

    private static String of(List<LogEntry> entries, VesselId vessel) {
        StringBuilder line = new StringBuilder("  ").append(Names.of(vessel)).append(": ");
        List<String> parts = new ArrayList<>();
        for (LogEntry.Quantity quantity : LogEntry.Quantity.values()) {
            long count =
                    entries.stream()
                            .filter(e -> e instanceof LogEntry.Reading)
                            .map(e -> (LogEntry.Reading) e)
                            .filter(r -> r.where().equals(vessel) && r.what() == quantity)
                            .count();
            if (count > 0) {
                parts.add(count + " of " + name(quantity));
            }
        }
        long deeds =
                entries.stream()
                        .filter(e -> e instanceof LogEntry.Deed d && d.where().equals(vessel))
                        .count();
        if (deeds > 0) {
            parts.add(counted(deeds, "thing") + " done");
        }
        return line.append(parts.isEmpty() ? "nothing" : String.join(", ", parts)).toString();
    }

    /** As "EC". */
    public static String name(LogEntry.Quantity quantity) {
        return switch (quantity) {
            case LEVEL -> "level";
            case POURED -> "litres of a refill";
            case EC -> "EC";
            case PH -> "pH";
            case TEMPERATURE -> "temperature";
            case FRESH_MASS -> "fresh weight";
            case ROOT_LENGTH -> "root length";
        };
    }

    static String counted(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    /** When, by the rig's clock. */
    public static String visit(Scenario scenario, double atS) {
        return Dates.visit(clock(scenario, atS), false);
    }

    /** An instant of a run by the rig's clock. */
    public static LocalDateTime clock(Scenario scenario, double atS) {
        return scenario.start().atStartOfDay().plusSeconds((long) atS);
    }

    /** The day of an instant of a run. */
    public static LocalDate day(Scenario scenario, double atS) {
        return clock(scenario, atS).toLocalDate();
    }
}
