package tideless.advice;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.Growing;
import tideless.crop.RoomLimits;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.Planting;
import tideless.sim.Event;
import tideless.sim.TraySeries;

/** What a crop asks of the hand: pollination, support, picking, harvest, cleaning, sowing. */
final class CropAdvice {
    /** A truss is shaken this often while it flowers, or at each visit, d; common practice. */
    private static final double POLLINATE_DAYS = 2;

    /** A crop that grows at least so tall leans when it bears, m; strawberries do not; assumed. */
    private static final double TALL_M = 0.3;

    /** Cucumbers that are raised indoors set fruit without pollen; common practice, no source. */
    private static final String SETS_WITHOUT_POLLEN = "Cucumis";

    /** Cucumbers are eaten long before they are ripe. */
    private static final String EATEN_UNRIPE = "Cucumis";

    /** Strawberries are not sown: runners and plugs are bought; common practice, no source. */
    private static final String FROM_RUNNERS = "Fragaria";

    /** Seedlings sown so much sooner than they need outgrow their plugs, d; assumed. */
    private static final double SOWN_EARLY_DAYS = 7;

    /** Ripe fruit is picked this often, or at each visit, d; common practice, no source. */
    private static final double PICK_DAYS = 3;

    /** Share of the wanted weight below which a crop is called light; assumed. */
    static final double LIGHT_FRAC = 0.95;

    /** The same for a crop that is cut before nobody comes for days, as runs do; assumed. */
    private static final double NEARLY_FRAC = 0.9;

    /** Nothing is sown for less than this share of a crop's time; assumed. */
    private static final double WORTH_SOWING_FRAC = 0.5;

    /** A wait of so many times the usual one is told beside it; assumed. */
    private static final double LONG_GAP_TIMES = 1.5;

    /** Pickings that end below this share of the greatest take more than grows; assumed. */
    private static final double FALLEN_FRAC = 0.5;

    private static final int WEEK_H = 7 * 24;

    private static final double MOST_FRAC = 0.5; // more are most of them, by the word

    private final TrayCase tray;
    private final Findings out;

    CropAdvice(TrayCase tray, Findings out) {
        this.tray = tray;
        this.out = out;
    }

    void add() {
        addSetOut();
        Seedlings.add(tray, out);
        Crowding.add(tray, out);
        addPickings();
        for (Event event : tray.events()) {
            switch (event.kind()) {
                case FLOWERING -> addFlowering(event);
                case FIRST_RIPE -> addPicking(event);
                case LEAVES_PICKED -> addPicked(event);
                case THINNED -> addDated(Task.Kind.THIN_OUT, event, crowded(event));
                case SPACED -> addDated(Task.Kind.SPACE_OUT, event, crowded(event));
                case TOPPED -> addDated(Task.Kind.TOP, event, Cause.of(Cause.Kind.SEASON_ENDS));
                case HARVEST -> addHarvest(event);
                case PLANTED -> addPlanting(event);
                default -> {}
            }
        }
    }

    /** The crop with which a run begins, and since when it was raised, which is before the run. */
    private void addSetOut() {
        if (tray.planting.number() > 0
                || !(tray.tray.planting() instanceof Planting.OfCrop crop)
                || crop.plants() == 0) {
            return;
        }
        LocalDateTime raisedFrom =
                tray.trace
                        .scenario()
                        .start()
                        .minusDays((long) crop.ageAtStartDays())
                        .atStartOfDay();
        double visitS = tray.trace.scenario().visits().timeOfDayS();
        if (crop.ageAtStartDays() >= 1 && !crop.traits().latinName().startsWith(FROM_RUNNERS)) {
            task(
                    Task.Kind.SOW,
                    visitS - FastMath.floor(crop.ageAtStartDays()) * Time.DAY_S,
                    Measure.of(crop.ageAtStartDays(), Unit.DAYS),
                    new Cause(
                            Cause.Kind.BEGINS,
                            Facts.NONE
                                    .named(String.valueOf(crop.plants()))
                                    .on(tray.trace.clockAt(visitS))));
        }
        task(
                Task.Kind.SET_OUT,
                visitS,
                Measure.of(crop.ageAtStartDays(), Unit.DAYS),
                new Cause(
                        Cause.Kind.BEGINS,
                        Facts.NONE.named(String.valueOf(crop.plants())).on(raisedFrom)));
    }

    /** What the scenario dates itself: at that day's visit, or at its hour where nobody is due. */
    private void addDated(Task.Kind kind, Event event, Cause cause) {
        double midnight = event.atS() / Time.HOUR_S;
        double next = tray.rounds.nextFrom(midnight);
        boolean visited = next > midnight && next < midnight + 24;
        double atS =
                visited
                        ? next * Time.HOUR_S
                        : event.atS() + tray.trace.scenario().visits().timeOfDayS();
        task(
                kind,
                atS,
                event.freshG() > 0 ? Measure.of(event.freshG(), Unit.GRAMS) : Measure.none(),
                cause);
    }

    private void addPicked(Event event) {
        if (event.detail().isEmpty()) {
            addDated(
                    Task.Kind.PICK_LEAVES,
                    event,
                    Cause.of(
                            fruits()
                                    ? Cause.Kind.OLD_LEAVES_GIVE_LITTLE
                                    : Cause.Kind.LEAVES_GROW_AGAIN));
        }
    }

    /** Pickings as a crop grows: each one that is past, and those to come by the first of them. */
    private void addPickings() {
        Log log = tray.trace.scenario().log();
        List<Event> toCome = new ArrayList<>();
        boolean first = true;
        for (Event event : tray.events()) {
            if (event.kind() != Event.Kind.LEAVES_PICKED || event.detail().isEmpty()) {
                continue;
            }
            if (!log.isEmpty() && event.atS() <= log.lastS()) {
                addPicking(List.of(event), false);
                first = false;
            } else {
                toCome.add(event);
            }
        }
        if (!toCome.isEmpty()) {
            addPicking(toCome, first);
        }
    }

    private void addPicking(List<Event> pickings, boolean first) {
        Event next = pickings.get(0);
        Event last = pickings.get(pickings.size() - 1);
        Facts facts = first ? Facts.NONE.named("first") : Facts.NONE;
        if (pickings.size() > 1) {
            double laterG =
                    pickings.stream().skip(1).mapToDouble(Event::freshG).reduce(0, Double::sum)
                            / (pickings.size() - 1);
            double[] gaps = daysBetween(pickings);
            double usual = gaps[(gaps.length - 1) / 2];
            double longest = gaps[gaps.length - 1];
            facts =
                    facts.and(Quantity.EVERY, FastMath.rint(usual))
                            .and(Quantity.LATER, laterG)
                            .on(tray.trace.clockAt(last.atS()));
            double most = pickings.stream().mapToDouble(Event::freshG).max().orElse(0);
            if (last.freshG() < FALLEN_FRAC * most) {
                facts = facts.and(Quantity.LAST, last.freshG());
            }
            if (longest >= LONG_GAP_TIMES * usual) {
                facts = facts.and(Quantity.LONGEST, FastMath.rint(longest));
            }
        }
        task(
                Task.Kind.PICK_LEAVES,
                dueHour(next) * Time.HOUR_S,
                Measure.of(next.freshG(), Unit.GRAMS),
                new Cause(Cause.Kind.LEAVES_GROW_AGAIN, facts));
    }

    /** From each picking to the next, d, the shortest time first. */
    private static double[] daysBetween(List<Event> pickings) {
        double[] days = new double[pickings.size() - 1];
        for (int i = 0; i < days.length; i++) {
            days[i] = (pickings.get(i + 1).atS() - pickings.get(i).atS()) / Time.DAY_S;
        }
        Arrays.sort(days);
        return days;
    }

    private static Cause crowded(Event event) {
        return new Cause(Cause.Kind.PLANTS_CROWD, Facts.NONE.named(event.detail()));
    }

    private boolean fruits() {
        return tray.traits != null && tray.traits.stages().fruits();
    }

    private void addFlowering(Event event) {
        double visit = tray.rounds.nextFrom(event.atS() / Time.HOUR_S);
        if (!tray.rounds.hours().contains(visit)) {
            return; // nobody comes any more
        }
        double due = visit * Time.HOUR_S;
        double open = dueAgain(event);
        LocalDateTime last = tray.trace.clockAt(tray.lastHour * Time.HOUR_S);
        if (tray.traits.growth().heightM() >= TALL_M) {
            task(Task.Kind.SUPPORT, due, Measure.none(), Cause.of(Cause.Kind.GROWS_TALL));
        }
        if (!tray.traits.latinName().startsWith(SETS_WITHOUT_POLLEN)
                && tray.rounds.hours().contains(open)) {
            task(
                    Task.Kind.POLLINATE,
                    open * Time.HOUR_S,
                    tray.rounds.comesEvery(POLLINATE_DAYS, open)
                            ? Measure.of(POLLINATE_DAYS, Unit.DAYS)
                            : Measure.none(),
                    new Cause(Cause.Kind.FLOWERS_OPEN, Facts.NONE.on(last)));
        }
    }

    /** First hour of what comes again and again from an event on: what is logged is done. */
    private double dueAgain(Event event) {
        double hour = event.atS() / Time.HOUR_S;
        return tray.isPast()
                ? tray.rounds.nextFrom(hour)
                : tray.rounds.nextFrom(hour, tray.trace.scenario().log());
    }

    /** Picking, by the week's growth of fruit: over the time that is left, or the last week. */
    private void addPicking(Event event) {
        double due = dueAgain(event);
        if (!tray.rounds.hours().contains(due)) {
            return; // nobody comes any more
        }
        int ripe = tray.trace.sampleAt(event.atS());
        int from = Math.max(tray.firstHour, Math.min(ripe, tray.lastHour - WEEK_H));
        double weeks = (tray.lastHour - from) / (double) WEEK_H;
        var fruit = tray.of.fruitFreshG();
        double weekly = weeks > 0 ? (fruit.at(tray.lastHour) - fruit.at(from)) / weeks : 0;
        task(
                Task.Kind.PICK,
                due * Time.HOUR_S,
                Measure.of(weekly, Unit.GRAMS),
                new Cause(
                        Cause.Kind.FIRST_FRUIT_RIPE,
                        withYield(
                                        tray.rounds.comesEvery(PICK_DAYS, due)
                                                ? Facts.of(Quantity.EVERY, PICK_DAYS)
                                                : Facts.NONE)
                                .named(
                                        tray.traits.latinName().startsWith(EATEN_UNRIPE)
                                                ? "unripe"
                                                : "")));
    }

    /** With the fruit of a plant that still stands when the run ends. */
    private Facts withYield(Facts facts) {
        return tray.firstS(Event.Kind.HARVEST).isPresent()
                        || tray.firstS(Event.Kind.DIED).isPresent()
                ? facts
                : facts.and(Quantity.LAST, tray.of.fruitFreshG().at(tray.lastHour));
    }

    private void addHarvest(Event event) {
        boolean fruits = fruits();
        double hour = dueHour(event);
        int sample = Math.min(tray.lastHour, tray.trace.sampleAt(event.atS()));
        task(
                Task.Kind.HARVEST,
                hour * Time.HOUR_S,
                Measure.of(
                        (fruits ? tray.of.fruitFreshG() : tray.of.freshG()).at(sample), Unit.GRAMS),
                whyHarvested(event, hour, fruits, sample));
        if (!isFollowed()) {
            task(
                    Task.Kind.CLEAN,
                    hour * Time.HOUR_S,
                    Measure.none(),
                    Cause.of(Cause.Kind.CROP_LEAVES_THE_TRAY));
        }
        if (tray.tray.next().isEmpty() && tray.tray.planting() instanceof Planting.OfCrop crop) {
            addSowing(crop, hour);
        }
    }

    private boolean isFollowed() {
        return tray.trace.plantings(tray.of).size() > tray.planting.number() + 1;
    }

    /** A crop that follows another: sown in time, its tray cleaned where the run does it. */
    private void addPlanting(Event event) {
        Planting.OfCrop crop = (Planting.OfCrop) tray.tray.planting();
        boolean fresh = tray.tray.next().get(tray.planting.number() - 1).fresh();
        out.tasks.add(
                new Task(
                        Task.Kind.CLEAN,
                        tray.id,
                        tray.trace.clockAt(event.atS()),
                        fresh ? event.volumeM3() * 1000 : 0,
                        event.drainedM3() * 1000,
                        Measure.none(),
                        Cause.of(Cause.Kind.CROP_LEAVES_THE_TRAY),
                        List.of(),
                        List.of(),
                        fresh));
        out.tasks.add(
                new Task(
                        Task.Kind.PLANT,
                        tray.id,
                        tray.trace.clockAt(event.atS()),
                        fresh ? 0 : event.volumeM3() * 1000,
                        0,
                        Measure.of(crop.ageAtStartDays(), Unit.DAYS),
                        new Cause(
                                Cause.Kind.FOLLOWS,
                                Facts.NONE.named(String.valueOf(crop.plants()))),
                        List.of(),
                        List.of(),
                        true));
        addSowing(crop, event.atS() / Time.HOUR_S);
    }

    /**
     * What is ready at the midnight that ends a run is cut at the last visit of that day, or, where
     * nobody came on it, in the next one's light: nobody cuts at midnight.
     */
    private double dueHour(Event event) {
        double hour = event.atS() / Time.HOUR_S;
        if (hour < tray.rounds.endHours()) {
            return hour;
        }
        double last = tray.rounds.lastUpTo(hour);
        return hour - last > 24
                ? hour + tray.trace.scenario().visits().timeOfDayS() / Time.HOUR_S
                : last;
    }

    private double awayUntil(double hour) {
        return tray.rounds.hours().stream()
                .filter(at -> at > hour)
                .findFirst()
                .orElse(tray.rounds.endHours());
    }

    private Cause whyHarvested(Event event, double hour, boolean fruits, int sample) {
        boolean early = event.detail().equals(Event.BEFORE_ABSENCE);
        if (event.detail().equals(Event.MAKES_ROOM)) {
            return new Cause(
                    Cause.Kind.MAKES_ROOM, fruits ? Facts.NONE.named("fruit") : Facts.NONE);
        }
        if (isLight(early ? NEARLY_FRAC : LIGHT_FRAC, sample)) {
            return new Cause(
                    Cause.Kind.WINDOW_ENDS, Facts.of(Quantity.WANTED, wantedG().orElse(0)));
        }
        if (!early) {
            return Cause.of(whyHarvested(fruits));
        }
        return isLeft(hour)
                ? new Cause(
                        Cause.Kind.BEFORE_ABSENCE,
                        Facts.NONE.on(tray.trace.clockAt(awayUntil(hour) * Time.HOUR_S)))
                : Cause.of(Cause.Kind.LAST_VISIT);
    }

    /** Weight of a plant that is waited for, g; empty where the stage or a day decides. */
    private OptionalDouble wantedG() {
        return tray.tray.planting() instanceof Planting.OfCrop crop
                        && crop.harvestAfterDays().isEmpty()
                        && !wasPicked()
                ? crop.harvestFreshG()
                : OptionalDouble.empty();
    }

    private boolean wasPicked() {
        return tray.firstS(Event.Kind.LEAVES_PICKED).isPresent();
    }

    private boolean isLight(double frac, int sample) {
        return tray.of.freshG().at(sample) < frac * wantedG().orElse(0);
    }

    /** Whether an absence begins between a visit and the next. */
    private boolean isLeft(double hour) {
        return tray.rounds.away().stream()
                .anyMatch(away -> away[0] > hour && away[0] < awayUntil(hour));
    }

    private Cause.Kind whyHarvested(boolean fruits) {
        if (fruits) {
            return Cause.Kind.LAST_FRUIT_PICKED;
        }
        return tray.tray.planting() instanceof Planting.OfCrop crop
                        && wasPicked()
                        && crop.harvestAfterDays().isEmpty()
                ? Cause.Kind.PICKED_OUT
                : Cause.Kind.READY;
    }

    /** Seedlings for an hour; those that follow another crop are told of even before the run. */
    private void addSowing(Planting.OfCrop crop, double readyHour) {
        double sowHour = readyHour - crop.ageAtStartDays() * 24;
        boolean isPlanned = !tray.tray.next().isEmpty();
        double grownHours = tray.lastHour + 1.0 - tray.firstHour;
        boolean isLeft = readyHour + WORTH_SOWING_FRAC * grownHours <= tray.rounds.endHours();
        if (isPlanned
                || sowHour >= 0 && isLeft && isSeasonFor(readyHour, grownHours) && !isTooHot()) {
            double sownHour = sowHour >= 0 ? sownAt(sowHour, readyHour) : sowHour;
            Facts facts = Facts.NONE.on(tray.trace.clockAt(readyHour * Time.HOUR_S));
            double younger = FastMath.rint((sownHour - sowHour) / 24);
            if (younger >= 1) {
                facts = facts.and(Quantity.YOUNGER, younger);
            }
            double aloneHours = longestAlone(sownHour, readyHour);
            if (aloneHours > 0) {
                facts = facts.and(Quantity.ALONE, FastMath.rint(aloneHours / 24));
            }
            task(
                    Task.Kind.SOW_NEXT,
                    sownHour * Time.HOUR_S,
                    Measure.of(nurseryDays(crop, sownHour, readyHour), Unit.DAYS),
                    new Cause(Cause.Kind.NEXT_IN_TIME, facts));
        }
    }

    /** As old as this crop was, or older where the last visit in time lies days before. */
    private static double nurseryDays(Planting.OfCrop crop, double sownHour, double readyHour) {
        return Math.max(crop.ageAtStartDays(), FastMath.rint((readyHour - sownHour) / 24));
    }

    /** Whether the air was too hot for it on most of its days, as it would be for the next. */
    private boolean isTooHot() {
        double days = (tray.lastHour + 1.0 - tray.firstHour) / 24;
        return RoomFindings.of(tray.trace, tray.planting).stream()
                .anyMatch(f -> f.kind() == RoomLimits.Kind.TOO_HOT && f.days() > MOST_FRAC * days);
    }

    /** The longest time between two visits to a nursery with an absence in it, h; 0 for none. */
    private double longestAlone(double sownHour, double readyHour) {
        double longest = 0;
        double from = sownHour;
        while (from < readyHour) {
            double next = awayUntil(from);
            longest = isLeft(from) ? Math.max(longest, next - from) : longest;
            from = next;
        }
        return longest;
    }

    /**
     * Whether the air and light that this run tells of after an hour would grow another such crop
     * at half of this one's pace.
     */
    private boolean isSeasonFor(double hour, double grownHours) {
        if (tray.traits == null) {
            return true;
        }
        int from = (int) hour;
        int to = (int) Math.min(tray.trace.hours(), hour + grownHours);
        return paceOf(from, to) >= WORTH_SOWING_FRAC * paceOf(tray.firstHour, tray.lastHour + 1);
    }

    /** Light a day, by what the air's warmth lets grow of it, mol/m2. */
    private double paceOf(int fromHour, int toHour) {
        double sum = 0;
        int days = 0;
        for (int h = fromHour; h + 24 <= toHour; h += 24) {
            double meanC = tray.of.of(TraySeries.AIR_TEMP).sum(h, h + 24) / 24;
            sum +=
                    Growing.temperatureFrac(tray.traits.growth(), meanC)
                            * tray.of.lightMolPerM2().sum(h, h + 24);
            days++;
        }
        return days > 0 ? sum / days : 0;
    }

    /** The visit before, or after an absence the one that follows where that is still in time. */
    private double sownAt(double sowHour, double readyHour) {
        double before = tray.rounds.lastUpTo(sowHour);
        double after = tray.rounds.nextFrom(sowHour);
        boolean tooSoon = sowHour - before > SOWN_EARLY_DAYS * 24;
        return tooSoon && after < readyHour ? after : before;
    }

    private void task(Task.Kind kind, double atS, Measure measure, Cause cause) {
        out.tasks.add(
                new Task(
                        kind,
                        tray.id,
                        tray.trace.clockAt(atS),
                        0,
                        0,
                        measure,
                        cause,
                        List.of(),
                        List.of(),
                        true));
    }
}
