package tideless.scenario;

import static tideless.scenario.TrayKeys.RESPACING;
import static tideless.scenario.TrayKeys.THINNING;
import static tideless.scenario.TrayKeys.TOPPED;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.physics.Time;
import tideless.rig.Tending;

/** Reads what hands do to a stand by date. */
final class TendingReader {
    private final Table tray;
    private final Table picking;
    private final Run run;
    private final List<Tending.Act> acts = new ArrayList<>();
    private boolean sound = true;

    TendingReader(Table tray, Run run) {
        this.tray = tray;
        this.run = run;
        picking = tray.child("leaf_picking");
    }

    /** Whether leaves are picked at all. */
    boolean picksLeaves() {
        return picking.exists();
    }

    /**
     * @param plants how many hang in it at first
     * @param deckM2 the deck, which the canopy has in any case, m2
     * @param asItGrows how leaves are taken without a date
     */
    Read<Tending> read(
            Read<CropTraits> traits,
            Read<Integer> plants,
            Read<Double> deckM2,
            Read<Optional<Tending.Picking>> asItGrows) {
        if (!run.start().isSound()) {
            return Read.faulty();
        }
        readPicking();
        if (tray.has(TOPPED)) {
            Read<LocalDate> day = tray.get(TOPPED);
            if (traits.holds(crop -> !crop.stages().fruits())) {
                refuse(TOPPED, "only with a fruit crop", "A leaf crop is cut: see leaf_picking.");
            } else if (day.isSound() && inRun(TOPPED, tray, day.value())) {
                acts.add(new Tending.Topping(day(day.value())));
            }
        }
        if (plants.isSound()) {
            readThinning(plants.value());
            if (deckM2.isSound()) {
                readSpacing(plants.value(), deckM2.value());
            }
        }
        acts.sort(Comparator.comparingInt(Tending.Act::day));
        return sound ? asItGrows.map(picking -> new Tending(acts, picking)) : Read.faulty();
    }

    private void readPicking() {
        if (!picking.exists()) {
            return;
        }
        Read<Double> share = picking.get(LeafPickingKeys.SHARE);
        Read<Double> everyS = picking.get(LeafPickingKeys.EVERY);
        Read<LocalDate> to = picking.get(LeafPickingKeys.TO);
        if (!share.isSound() || everyS.isFaulty() || to.isFaulty()) {
            sound = false;
            return;
        }
        boolean dated = picking.has(LeafPickingKeys.DATES);
        if (dated == picking.has(LeafPickingKeys.FROM)) {
            picking.fault(
                    dated ? LeafPickingKeys.DATES : LeafPickingKeys.FROM,
                    dated ? "dates beside from" : "nothing",
                    "either dates, or from with every",
                    dated ? "" : "Maybe add from = 2026-03-23 and every = \"7 days\".");
            sound = false;
            return;
        }
        if (!fits(dated, everyS, to)) {
            sound = false;
            return;
        }
        List<LocalDate> days =
                dated
                        ? picking.get(LeafPickingKeys.DATES).orElse(List.of())
                        : everyDays(everyS, to);
        for (LocalDate day : days) {
            if (!inRun(dated ? LeafPickingKeys.DATES : LeafPickingKeys.FROM, picking, day)) {
                return;
            }
            acts.add(new Tending.LeafPicking(day(day), share.value()));
        }
    }

    /** Whether keys beside from or dates have a meaning there. */
    private boolean fits(boolean dated, Read<Double> everyS, Read<LocalDate> to) {
        if (dated && (everyS.isSound() || to.isSound())) {
            Key<?> key = everyS.isSound() ? LeafPickingKeys.EVERY : LeafPickingKeys.TO;
            picking.fault(
                    key,
                    Words.shown(picking.raw(key.name())) + " beside dates",
                    "either dates, or from with every",
                    "");
            return false;
        }
        if (dated && picking.get(LeafPickingKeys.DATES).holds(List::isEmpty)) {
            picking.faultyValue(LeafPickingKeys.DATES, "at least one date", "");
            return false;
        }
        if (to.isSound() && everyS.isAbsent()) {
            picking.faultyValue(
                    LeafPickingKeys.TO, "only with every", "Maybe add every = \"7 days\".");
            return false;
        }
        Read<LocalDate> from = picking.get(LeafPickingKeys.FROM);
        if (to.holds(last -> from.holds(last::isBefore))) {
            picking.faultyValue(
                    LeafPickingKeys.TO, "days from the first picking on, " + from.value(), "");
            return false;
        }
        return true;
    }

    private List<LocalDate> everyDays(Read<Double> everyS, Read<LocalDate> to) {
        Read<LocalDate> from = picking.get(LeafPickingKeys.FROM);
        if (!from.isSound() || !run.last().isSound()) {
            sound = false;
            return List.of();
        }
        List<LocalDate> days = new ArrayList<>(List.of(from.value()));
        if (everyS.isSound()) {
            long step = Math.max(1, FastMath.round(everyS.value() / Time.DAY_S));
            LocalDate last = run.last().value();
            if (to.isSound() && to.value().isBefore(last)) {
                last = to.value();
            }
            for (LocalDate day = from.value().plusDays(step);
                    !day.isAfter(last);
                    day = day.plusDays(step)) {
                days.add(day);
            }
        }
        return days;
    }

    private void readThinning(int first) {
        int before = first;
        for (DatedNumber next : tray.get(THINNING).orElse(List.of())) {
            int left = (int) next.value();
            if (left != next.value() || left >= before) {
                refuse(
                        THINNING,
                        "a whole number of plants below the %d that hang there before"
                                .formatted(before),
                        "It states how many stay.");
                return;
            }
            if (!inRun(THINNING, tray, next.from())) {
                return;
            }
            acts.add(new Tending.Thinning(day(next.from()), left));
            before = left;
        }
    }

    private void readSpacing(int first, double deckM2) {
        for (DatedNumber next : tray.get(RESPACING).orElse(List.of())) {
            if (!inRun(RESPACING, tray, next.from())) {
                return;
            }
            int day = day(next.from());
            int plants = first;
            for (Tending.Act act : acts) {
                if (act instanceof Tending.Thinning thinning && thinning.day() <= day) {
                    plants = thinning.plants();
                }
            }
            double groundM2 = plants / next.value();
            if (groundM2 < deckM2 * (1 - 1e-9)) {
                refuse(
                        RESPACING,
                        "at most %s a m2: %d plants have the deck (%s) in any case"
                                .formatted(
                                        Measure.plain(plants / deckM2),
                                        plants,
                                        PlantingReader.area(deckM2)),
                        "Plants that do not use the whole deck still have it.");
                return;
            }
            acts.add(new Tending.Spacing(day, groundM2));
        }
    }

    private void refuse(Key<?> key, String allowed, String hint) {
        tray.faultyValue(key, allowed, hint);
        sound = false;
    }

    private int day(LocalDate date) {
        return (int) ChronoUnit.DAYS.between(run.start().value(), date);
    }

    /** How to say what was done before the run's first day is over. */
    private static String atFirst(Key<?> key) {
        if (key == TOPPED) {
            return "Young plants are topped once they stand in the tray.";
        }
        return key == THINNING || key == RESPACING
                ? "State what is there on the first day by plants and ground."
                : "State what leaf is there on the first day by leaf_area in transplant.";
    }

    /** Whether a day lies after the run's first and before its end. */
    private boolean inRun(Key<?> key, Table table, LocalDate date) {
        LocalDate start = run.start().value();
        boolean late = run.last().holds(date::isAfter);
        if (date.isAfter(start) && !late) {
            return true;
        }
        table.fault(
                key,
                date.toString(),
                run.last().isSound()
                        ? "days after the start, %s, to the end, %s"
                                .formatted(start, run.last().value())
                        : "days after the start, " + start,
                late ? "" : atFirst(key));
        sound = false;
        return false;
    }
}
