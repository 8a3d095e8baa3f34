package tideless.words;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tideless.advice.Cure;
import tideless.advice.Quantity;
import tideless.advice.RoomFindings;
import tideless.advice.Shortfall;
import tideless.advice.Task;
import tideless.advice.Unit;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.TrayTrace;
import tideless.study.Forecast;
import tideless.study.Outlook;

/** A verdict in at most five lines. */
public final class VerdictWords {
    /** A tray that holds water for longer is not what a crop was harmed by, h; assumed. */
    private static final double PLENTY_H = 48;

    /** Absences told one by one; more are told together. */
    private static final int TOLD_ABSENCES = 2;

    /** A tray that always holds water for so long is not tight, h; assumed. */
    private static final double TIGHT_H = 10 * 24;

    /** What is cured by more water, or water in time. */
    private static final Set<Warning.Kind> OF_WATER =
            EnumSet.of(
                    Warning.Kind.DIED,
                    Warning.Kind.DRIED_OUT,
                    Warning.Kind.WILTED,
                    Warning.Kind.STRANDED,
                    Warning.Kind.RAN_DRY,
                    Warning.Kind.STARVED_VALVE,
                    Warning.Kind.OUTGROWN);

    /** What a crop that survives may have done for hours all the same. */
    private static final Set<Warning.Kind> WILTS =
            EnumSet.of(Warning.Kind.WILTED, Warning.Kind.SALT_WILTED);

    private static final String CHANGE_FIRST = "Change first (";

    /** Poor crops told one by one. */
    private static final int TOLD_LOSSES = 2;

    /** Who drains a tray oftener than this in a season looks for another feed; assumed. */
    private static final int FLUSHED_OFTEN = 4;

    /** Roots bear an afternoon of it, and not so many days; assumed. */
    private static final int ROTTEN_DAYS = 3;

    /** Who fills up so few days before leaving fills up for it, d; assumed. */
    private static final int SOON_DAYS = 2;

    private VerdictWords() {}

    /** The lines of a forecast, with how sure it is where members were run. */
    public static List<String> lines(Forecast forecast) {
        Verdict verdict = forecast.advice().verdict();
        Optional<Outlook> outlook = forecast.outlook();
        if (outlook.isEmpty()) {
            List<String> alone =
                    lines(verdict, survival(verdict, forecast.advice().warnings()), a -> "");
            addNothingMore(forecast, alone);
            return notWhereRootsRot(forecast, notWhereHopeless(forecast, alone));
        }
        Scenario scenario = forecast.trace().scenario();
        List<String> lines =
                lines(
                        verdict,
                        survival(
                                verdict,
                                forecast.advice().warnings(),
                                outlook.get(),
                                scenario.start()),
                        absence -> sureness(outlook.get(), absence));
        if (!outlook.get().survives()
                && (forecast.isRefillOutdone() || !warnsOfWater(verdict, outlook.get()))) {
            outlook.get().harms().stream()
                    .findFirst()
                    .flatMap(harm -> surer(forecast, harm))
                    .ifPresent(line -> putFirst(lines, verdict, line));
        }
        addNothingMore(forecast, lines);
        return notWhereRootsRot(forecast, notWhereHopeless(forecast, lines));
    }

    /** Of a tray flushed often a feed that was tried, or that no change is left to be told. */
    private static void addNothingMore(Forecast forecast, List<String> lines) {
        boolean isTold = lines.get(lines.size() - 1).startsWith(CHANGE_FIRST);
        if (isTold || forecast.advice().verdict().first().isPresent()) {
            return;
        }
        Optional<String> fewer = fewerFlushes(forecast);
        if (fewer.isPresent()) {
            lines.add(fewer.get());
        } else if (!forecast.advice().warnings().isEmpty()) {
            lines.add(
                    mostFlushed(forecast)
                            .map(
                                    often ->
                                            "It is flushed often ("
                                                    + often
                                                    + "): the command lean tells which feed needs"
                                                    + " that least.")
                            .orElse(
                                    "No other change was tried that helps: warnings and notes tell"
                                            + " what may yet be done."));
        }
    }

    private static Optional<String> fewerFlushes(Forecast forecast) {
        for (Task task : forecast.advice().tasks()) {
            for (Cure cure : task.cures()) {
                if (cure.facts().has(Quantity.CHANGES_THEN)) {
                    return Optional.of(
                            CHANGE_FIRST
                                    + "flushed often, "
                                    + Names.of(task.vessel())
                                    + "): "
                                    + CureWords.of(cure)
                                    + ".");
                }
            }
        }
        return Optional.empty();
    }

    /** As "tray north 21 times", of what is flushed oftenest; empty where nothing is often. */
    private static Optional<String> mostFlushed(Forecast forecast) {
        Map<VesselId, Integer> times = new LinkedHashMap<>();
        for (Task task : forecast.advice().tasks()) {
            if (task.kind() == Task.Kind.FLUSH) {
                times.merge(task.vessel(), 1, Integer::sum);
            }
        }
        return times.entrySet().stream()
                .filter(e -> e.getValue() > FLUSHED_OFTEN)
                .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
                .map(e -> Names.of(e.getKey()) + " " + Numbers.times(e.getValue()));
    }

    /** Whoever survives and never gets ready is no success: said in the first line. */
    private static List<String> notWhereHopeless(Forecast forecast, List<String> lines) {
        List<String> never = new ArrayList<>();
        for (TrayTrace tray : forecast.trace().trays()) {
            for (PlantingTrace planting : forecast.trace().plantings(tray)) {
                if (CropWords.isHopeless(RoomFindings.daysShort(forecast.trace(), planting))) {
                    never.add(Names.of(tray.tray().id(), planting.crop()));
                }
            }
        }
        if (!never.isEmpty()) {
            lines.set(
                    0,
                    lines.get(0)
                            + " Yet in such air it never gets ready: "
                            + String.join(", ", never)
                            + ".");
        }
        return lines;
    }

    /** Whoever survives by what is reckoned here, in a solution in which roots rot, is told so. */
    private static List<String> notWhereRootsRot(Forecast forecast, List<String> lines) {
        List<String> rotten = new ArrayList<>();
        for (TrayTrace tray : forecast.trace().trays()) {
            for (PlantingTrace planting : forecast.trace().plantings(tray)) {
                if (hotDays(tray, planting) >= ROTTEN_DAYS) {
                    rotten.add(
                            Names.of(tray.tray().id(), planting.crop())
                                    + " ("
                                    + Numbers.of(hottestC(tray, planting), Unit.CELSIUS)
                                    + ")");
                }
            }
        }
        if (forecast.advice().verdict().survives() && !rotten.isEmpty()) {
            lines.set(
                    0,
                    lines.get(0)
                            + " Yet roots rot within days in a solution so warm, which is not"
                            + " counted here: "
                            + String.join(", ", rotten)
                            + ".");
        }
        return lines;
    }

    /** Days on which the solution is so warm about living plants, or about any that drink. */
    private static int hotDays(TrayTrace tray, PlantingTrace planting) {
        int days = 0;
        boolean grows = planting.tray().planting().plants() > 0;
        for (int h = planting.firstHour(); grows && h <= planting.lastHour(); h += 24) {
            int to = Math.min(h + 24, planting.lastHour() + 1);
            days += tray.solutionTempC().max(h, to) >= Warning.ROTS_C ? 1 : 0;
        }
        return days;
    }

    private static double hottestC(TrayTrace tray, PlantingTrace planting) {
        return tray.solutionTempC().max(planting.firstHour(), planting.lastHour() + 1);
    }

    /** Whether it ran dry, as is told already, or plants came to harm beside plenty of water. */
    private static boolean isLost(Verdict verdict, Verdict.WaterLeft left) {
        return verdict.firstHarm()
                .filter(
                        harm ->
                                harm.kind() == Warning.Kind.DRIED_OUT
                                        ? harm.vessel().equals(left.tray())
                                        : left.hours() > PLENTY_H)
                .isPresent();
    }

    /** Whether it came closest in an absence, of which the lowest level is told. */
    private static boolean isToldOfAbsence(Verdict verdict, Verdict.WaterLeft left) {
        LocalDate on = left.at().toLocalDate();
        return verdict.absences().stream()
                .limit(TOLD_ABSENCES)
                .anyMatch(
                        a ->
                                a.lowestIn() != null
                                        && !on.isBefore(a.from())
                                        && !on.isAfter(a.to().plusDays(1)));
    }

    /** Whether its first cure says neither how high nor how often: nothing was reckoned for it. */
    private static boolean isWithoutFigure(Warning warning) {
        return warning.cures().stream()
                .limit(1)
                .anyMatch(
                        cure ->
                                cure.kind() == Cure.Kind.FILL_HIGHER
                                                && !cure.facts().has(Quantity.LEVEL)
                                        || cure.kind() == Cure.Kind.VISIT_MORE_OFTEN
                                                && !cure.facts().has(Quantity.EVERY));
    }

    private static boolean isTriedInManyRigs(Warning warning) {
        return warning.cures().stream()
                .limit(1)
                .anyMatch(cure -> cure.kind() == Cure.Kind.KEEP_OTHERWISE);
    }

    /**
     * Whether what is to be changed first brings water in time, or was tried where some want it.
     * Water in time is no answer where salt is what most of the others come to harm by.
     */
    private static boolean warnsOfWater(Verdict verdict, Outlook outlook) {
        boolean isOfSalt =
                verdict.survives() && outlook.harms().get(0).kind() == Event.Kind.SALT_WILTED;
        return verdict.first()
                .filter(w -> !isWithoutFigure(w))
                .filter(w -> isTriedInManyRigs(w) || !isOfSalt && OF_WATER.contains(w.kind()))
                .isPresent();
    }

    /** In place of what else would be changed first, as long as plants may want water. */
    private static void putFirst(List<String> lines, Verdict verdict, String line) {
        if (verdict.first().isPresent()) {
            lines.remove(lines.size() - 1);
        }
        lines.add(line);
    }

    /** What was tried, or what any rig of its kind takes that was not. */
    private static Optional<String> surer(Forecast forecast, Outlook.LikelyHarm harm) {
        return forecast.surer()
                .or(() -> untried(forecast, harm))
                .map(
                        cure ->
                                CHANGE_FIRST
                                        + AwayWords.harm(harm)
                                        + " in some): "
                                        + CureWords.of(cure)
                                        + ".");
    }

    /** Where nothing was tried that helps; how high or how often is told where it was alone. */
    private static Optional<Cure> untried(Forecast forecast, Outlook.LikelyHarm harm) {
        if (harm.kind() == Event.Kind.SALT_WILTED) {
            return Optional.empty();
        }
        Scenario scenario = forecast.trace().scenario();
        Optional<Cure> larger =
                forecast.advice().sizings().stream()
                        .filter(s -> s.isShort() && isFed(scenario, harm.tray(), s.reservoir()))
                        .map(s -> new Cure(Cure.Kind.LARGER_RESERVOIR, s.larger()))
                        .findFirst();
        if (larger.isPresent()) {
            return larger;
        }
        Cure cure =
                Shortfall.cureOf(
                        scenario,
                        harm.tray(),
                        scenario.start().atStartOfDay().plusSeconds((long) harm.atS().low()));
        boolean isHigherOrOftener =
                cure.kind() == Cure.Kind.FILL_HIGHER || cure.kind() == Cure.Kind.VISIT_MORE_OFTEN;
        return isHigherOrOftener ? Optional.empty() : Optional.of(cure);
    }

    private static boolean isFed(Scenario scenario, VesselId tray, String reservoir) {
        return scenario.tray(tray).filter(of -> of.isFedBy(reservoir)).isPresent();
    }

    private static String sureness(Outlook outlook, Verdict.Absence absence) {
        for (Outlook.Absence one : outlook.absences()) {
            if (one.absence().from().equals(absence.from())
                    && one.absence().to().equals(absence.to())) {
                String text = OutlookWords.absence(outlook, one, absence.survives());
                return text.isEmpty() ? "" : " (" + text + ")";
            }
        }
        return "";
    }

    /** The lines of one run, in the order in which a grower wants to know. */
    public static List<String> lines(Verdict verdict) {
        return lines(verdict, survival(verdict, List.of()), absence -> "");
    }

    /** Of rigs of which most are lost nobody is told that the crop survives. */
    private static String survival(
            Verdict verdict, List<Warning> warnings, Outlook outlook, LocalDate start) {
        String stated = survival(verdict, warnings);
        boolean nothingGrows = verdict.firstHarm().isEmpty() && verdict.waterLeft().isEmpty();
        if (nothingGrows) {
            return stated;
        }
        if (verdict.survives() && !verdict.poor().isEmpty()) {
            return stated + " " + OutlookWords.living(outlook);
        }
        if (verdict.survives() && OutlookWords.isMostlyLost(outlook)) {
            return OutlookWords.mostlyLost(outlook, start);
        }
        return stated + " " + OutlookWords.chance(outlook, start, verdict.survives());
    }

    private static List<String> lines(
            Verdict verdict, String survival, Function<Verdict.Absence, String> sureness) {
        List<String> lines = new ArrayList<>();
        lines.add(survival);
        List<Verdict.Absence> absences = verdict.absences();
        int told = absences.size() > TOLD_ABSENCES ? TOLD_ABSENCES - 1 : absences.size();
        for (Verdict.Absence absence : absences.subList(0, told)) {
            lines.add(
                    absence.lowestIn() == null
                            ? nothingThen(verdict, absence)
                            : absence(absence, sureness.apply(absence)));
        }
        if (told < absences.size()) {
            lines.add(rest(absences.subList(told, absences.size())));
        }
        verdict.tightest()
                .filter(left -> left.hours() < TIGHT_H)
                .filter(left -> !isLost(verdict, left) && !isToldOfAbsence(verdict, left))
                .ifPresent(left -> lines.add(tightest(left)));
        verdict.first().ifPresent(warning -> lines.add(first(warning)));
        return lines;
    }

    /** As "The crop survives, but tray one wilts for 4 hours from Thu 5 Mar 22:30."; the first. */
    private static String alive(List<Warning> warnings) {
        return warnings.stream()
                .filter(w -> WILTS.contains(w.kind()))
                .min(Comparator.comparing(Warning::from))
                .map(
                        wilt ->
                                "The crop survives, but "
                                        + Names.of(wilt.vessel(), wilt.crop())
                                        + " wilts "
                                        + (wilt.kind() == Warning.Kind.SALT_WILTED
                                                ? "from salt "
                                                : "")
                                        + lasting(wilt)
                                        + "from "
                                        + Dates.visit(wilt.from(), false)
                                        + ".")
                .orElse("The crop survives: nothing dies, wilts or dries out.");
    }

    private static String lasting(Warning wilt) {
        double hours = Duration.between(wilt.from(), wilt.until()).toMinutes() / 60.0;
        return hours > 0 ? "for " + Numbers.hours(Math.max(1, hours)) + " " : "";
    }

    private static String survival(Verdict verdict, List<Warning> warnings) {
        if (verdict.firstHarm().isEmpty()) {
            if (!verdict.poor().isEmpty()) {
                return "The plants live, but give little: " + poor(verdict.poor()) + ".";
            }
            return verdict.waterLeft().isEmpty()
                    ? "Nothing grows here: no tray drinks."
                    : alive(warnings);
        }
        Verdict.Harm harm = verdict.firstHarm().get();
        return "The crop does not come through: "
                + Names.of(harm.vessel())
                + " "
                + switch (harm.kind()) {
                    case DIED -> "is lost";
                    case WILTED -> "wilts for hours";
                    case SALT_WILTED -> "wilts from salt";
                    default -> "dries out";
                }
                + " from "
                + Dates.visit(harm.at(), false)
                + verdict.first()
                        .filter(gravest -> isLostLater(gravest, harm))
                        .map(lost -> " and is lost on " + Dates.visit(lost.from(), false))
                        .orElse("")
                + ".";
    }

    /** As "tray gutter (strawberry) 3 % of what it could, for salt takes most"; the worst two. */
    private static String poor(List<Verdict.Loss> losses) {
        List<String> parts = new ArrayList<>();
        for (Verdict.Loss loss : losses.subList(0, Math.min(TOLD_LOSSES, losses.size()))) {
            parts.add(
                    Names.of(loss.tray(), loss.cropName())
                            + " loses "
                            + Numbers.percent(loss.frac())
                            + " of the harvest, "
                            + to(loss));
        }
        int more = losses.size() - parts.size();
        return String.join("; ", parts) + (more > 0 ? "; and " + more + " more" : "");
    }

    private static String to(Verdict.Loss loss) {
        String most = Names.of(loss.most());
        return loss.mostFrac() > 0.5 * loss.frac()
                ? "most of it to " + most
                : Numbers.percent(loss.mostFrac()) + " to " + most + " alone";
    }

    private static boolean isLostLater(Warning gravest, Verdict.Harm harm) {
        return gravest.kind() == Warning.Kind.DIED
                && harm.kind() != Warning.Kind.DIED
                && gravest.vessel().equals(harm.vessel());
    }

    /** Of an absence from empty trays. */
    private static String nothingThen(Verdict verdict, Verdict.Absence absence) {
        boolean dead =
                verdict.firstHarm()
                        .filter(harm -> harm.at().toLocalDate().isBefore(absence.from()))
                        .isPresent();
        return "Away "
                + Dates.shortSpan(absence.from(), absence.to())
                + (dead ? ": no plant is left by then." : ": nothing grows then in this run.");
    }

    private static String absence(Verdict.Absence absence, String sureness) {
        StringBuilder text = new StringBuilder("Away ");
        text.append(Dates.shortSpan(absence.from(), absence.to())).append(": ");
        boolean saves =
                !absence.survives() && absence.filledUp().filter(f -> f.survives()).isPresent();
        text.append(absence.survives() ? "survives" : "does NOT survive").append(sureness);
        if (absence.fillUpOn() != null) {
            text.append(saves ? ", but does if you fill up on " : "; fill up on ")
                    .append(Dates.weekday(absence.fillUpOn()));
            if (absence.fillUpOn().isBefore(absence.from().minusDays(SOON_DAYS))) {
                text.append(", or better on the day you leave");
            }
        }
        String lowest = Numbers.of(absence.lowestLevelM() * 1000, Unit.MILLIMETRES);
        text.append("; lowest then ")
                .append(lowest)
                .append(" (")
                .append(Names.of(absence.lowestIn()))
                .append(")");
        absence.filledUp()
                .map(filled -> Numbers.of(filled.lowestLevelM() * 1000, Unit.MILLIMETRES))
                .filter(filled -> !filled.equals(lowest))
                .ifPresent(filled -> text.append(", ").append(filled).append(" if you do"));
        return text.append(".").toString();
    }

    private static String rest(List<Verdict.Absence> absences) {
        List<String> lost = new ArrayList<>();
        for (Verdict.Absence absence : absences) {
            if (!absence.survives()) {
                lost.add(Dates.shortSpan(absence.from(), absence.to()));
            }
        }
        return absences.size()
                + " more absences: "
                + (lost.isEmpty() ? "all survived" : "not survived: " + String.join(", ", lost))
                + ".";
    }

    private static String tightest(Verdict.WaterLeft left) {
        return "Tightest on "
                + Dates.visit(left.at(), false)
                + ": "
                + Names.of(left.tray())
                + " holds water for "
                + (left.hours() < 72
                        ? Numbers.hours(left.hours())
                        : Numbers.days(left.hours() / 24))
                + ".";
    }

    private static String first(Warning warning) {
        return warning.cures().isEmpty()
                ? "Look first at: " + WarningWords.head(warning, false) + "."
                : CHANGE_FIRST
                        + Names.of(warning.kind())
                        + ", "
                        + Names.of(warning.vessel(), warning.crop())
                        + "): "
                        + CureWords.of(warning.cures().get(0))
                        + ".";
    }
}
