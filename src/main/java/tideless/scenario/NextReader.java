package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.rig.Limits;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Visits;

/** Reads the crops that follow the first one of a tray. */
final class NextReader {
    static final String NEXT = "next";

    /** More are a slip; assumed. */
    private static final int MOST = 100;

    private final Table tray;
    private final Read<Shape> shape;
    private final CropReader crops;
    private final NamedFiles files;
    private final Run run;
    private final Read<Visits> visits;

    private LocalDate knownFrom; // day from which the crop before stands at the earliest
    private Planting.OfCrop before; // where the day is its own, else null
    private Planting.OfCrop last; // the crop before, whether its day is known or not

    NextReader(
            Table tray,
            Read<Shape> shape,
            CropReader crops,
            NamedFiles files,
            Run run,
            Read<Visits> visits) {
        this.tray = tray;
        this.shape = shape;
        this.crops = crops;
        this.files = files;
        this.run = run;
        this.visits = visits;
    }

    /**
     * In the order of the file.
     *
     * @param first what grows in the tray at first
     * @param startLevel the tray's own
     */
    Read<List<NextPlanting>> read(
            Read<Planting> first, Read<Double> startLevel, Read<Double> overflow) {
        List<Table> tables = tray.listed(NEXT);
        if (tables.isEmpty()) {
            return Read.of(List.of());
        }
        if (first.holds(planting -> !(planting instanceof Planting.OfCrop))) {
            tray.faultyName(
                    NEXT,
                    "a crop after a measured thirst",
                    "crops after a crop",
                    "Maybe state crop in place of thirst.");
            return Read.faulty();
        }
        if (tables.size() > MOST) {
            tray.faultyName(
                    NEXT,
                    tables.size() + " crops one after the other",
                    "up to " + MOST,
                    "A longer plan goes into several scenarios.");
            return Read.faulty();
        }
        knownFrom = run.start().orElse(null);
        before = first.isSound() ? (Planting.OfCrop) first.value() : null;
        last = before;
        List<NextPlanting> all = new ArrayList<>();
        for (int i = 0; i < tables.size(); i++) {
            Read<NextPlanting> one =
                    one(tables.get(i), makesRoom(tables, i + 1), startLevel, overflow);
            if (one.isSound()) {
                all.add(one.value());
            }
        }
        return all.size() == tables.size() ? Read.of(all) : Read.faulty();
    }

    /** Whether the crop before one of the tables is cut for it: it states no day. */
    static boolean makesRoom(List<Table> tables, int next) {
        return next < tables.size() && !tables.get(next).has(NextKeys.PLANTED);
    }

    private Read<NextPlanting> one(
            Table next, boolean makesRoom, Read<Double> startLevel, Read<Double> overflow) {
        boolean sound = next.isSound();
        Read<LocalDate> planted = next.get(NextKeys.PLANTED);
        boolean dated = planted.isAbsent() ? isUndated(next) : isInTime(next, planted);
        Read<Planting> crop =
                dated
                        ? new PlantingReader(next, shape, crops, files, runFrom(planted), makesRoom)
                                .readCrop()
                        : Read.faulty();
        if (planted.isAbsent()) {
            noteWait(next);
        }
        last = crop.isSound() ? (Planting.OfCrop) crop.value() : null;
        before = planted.isSound() ? last : null;
        Read<Limits> limits = new LimitsReader(next.child("limits"), crop).read();
        Read<Double> level =
                next.getOr(NextKeys.START_LEVEL, startLevel, levelM -> Heights.cm(levelM));
        if (level.holds(levelM -> overflow.holds(most -> levelM > most + 1e-9))) {
            next.faultyValue(
                    NextKeys.START_LEVEL,
                    "up to the overflow (%s)"
                            .formatted(Heights.where(tray, TrayKeys.OVERFLOW, overflow.value())),
                    "");
            return Read.faulty();
        }
        if (!sound || !Read.allSound(crop, limits, level)) {
            return Read.faulty();
        }
        return Read.of(
                new NextPlanting(
                        (Planting.OfCrop) crop.value(),
                        limits.value(),
                        planted.isSound() ? Optional.of(planted.value()) : Optional.empty(),
                        next.value(NextKeys.FRESH),
                        level.value()));
    }

    // A crop that is picked for months is not cut when a grower may think.
    private void noteWait(Table next) {
        if (last == null || !last.isPickedForLeaves() || last.harvestAfterDays().isPresent()) {
            return;
        }
        next.note(
                next.has(TrayKeys.CROP) ? TrayKeys.CROP : TrayKeys.CROP_FILE,
                "it waits until the %s before it is spent, which is picked as it grows; planted sets it out on a day"
                        .formatted(last.cropName()));
    }

    /** The rest of the run from a day on, of which a crop's days count. */
    private Run runFrom(Read<LocalDate> planted) {
        return planted.isAbsent()
                ? run
                : new Run(
                        planted,
                        Read.both(
                                planted,
                                run.end(),
                                (from, end) -> (int) ChronoUnit.DAYS.between(from, end)));
    }

    /** Whether nothing is dated of a crop of which nobody knows when it is set out. */
    private static boolean isUndated(Table next) {
        boolean sound = true;
        for (String name : List.of("sown", "respacing", "thinning", "topped", "leaf_picking")) {
            if (next.has(name)) {
                next.faultyName(
                        name,
                        "a date of a crop without one",
                        "only with planted",
                        name.equals("sown")
                                ? "Maybe state nursery_age instead."
                                : "Without it the crop is set out when the one before is cut.");
                sound = false;
            }
        }
        return sound;
    }

    private boolean isInTime(Table next, Read<LocalDate> planted) {
        if (!planted.isSound() || !run.last().isSound() || knownFrom == null) {
            return false;
        }
        LocalDate day = planted.value();
        if (!day.isAfter(knownFrom) || day.isAfter(run.last().value())) {
            next.faultyValue(
                    NextKeys.PLANTED,
                    "a day after %s, when the crop before is set out, to the end of the run, %s"
                            .formatted(knownFrom, run.last().value()),
                    "");
            return false;
        }
        if (before != null && before.harvestAfterDays().isPresent()) {
            LocalDate cut = knownFrom.plusDays(before.harvestAfterDays().getAsInt());
            if (day.isBefore(cut)) {
                next.faultyValue(
                        NextKeys.PLANTED,
                        "from %s on, the day from which the %s before it is cut"
                                .formatted(cut, before.cropName()),
                        "Maybe shorten harvest_after, or leave planted out: it is then set out at"
                                + " the visit at which the crop before is cut.");
                return false;
            }
        }
        if (visits.holds(rounds -> rounds.isAway(day))) {
            next.note(
                    NextKeys.PLANTED,
                    "nobody comes on %s by the visits; it is set out then all the same"
                            .formatted(day));
        }
        knownFrom = day;
        return true;
    }
}
