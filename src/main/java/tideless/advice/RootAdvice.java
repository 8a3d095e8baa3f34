package tideless.advice;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.Killing;
import tideless.crop.Osmosis;
import tideless.crop.RoomLimits;
import tideless.crop.RootBreathing;
import tideless.crop.Wilting;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.sim.Event;
import tideless.sim.FlushRule;
import tideless.sim.Series;
import tideless.sim.TraySeries;
import tideless.solution.Brine;

/** Levels and roots of one tray: dried out, stranded, wilted, drowned, lost. */
final class RootAdvice {
    /** Depth of solution that supplies a tenth of the thirst, m: with less roots are stranded. */
    private static final double NO_SUPPLY_M = 1.1 * Brine.FILM_M;

    /** So near to the strength at which nothing is drunk a solution stays that nobody drinks. */
    private static final double ROUNDING = 1e-3;

    /** Hours that even the kindest figures must leave short of air; assumed. */
    private static final int SURE_H = 6;

    /**
     * A tray with less over its floor than this holds no water to speak of, m: no floor is level to
     * better, and what is left lies in the low corner; assumed.
     */
    static final double FILM_M = 0.002;

    /** It has to stand so for this long, h; assumed. */
    static final int FILM_PATIENCE_H = 3;

    /** Largest rise that roots are said to bear where no crop tells, m; assumed. */
    private static final double RISE_BORNE_M = 0.02;

    /** A jug is poured to a mark no better than this, m; assumed. */
    private static final double POURED_TO_M = 0.005;

    /** By so much a level is lowered where roots want air, m; assumed. */
    private static final double LOWER_BY_M = 0.02;

    /** But not below this: a tray is to hold water for a while; assumed, m. */
    private static final double LEAST_LEVEL_M = 0.04;

    /** A filling of which so much is left was not too small: its roots hang above it; assumed. */
    private static final double OUT_OF_REACH_FRAC = 0.5;

    private final TrayCase tray;
    private final List<Cure> reservoirCures;
    private final Findings out;

    /**
     * @param reservoirCures what keeps the tray's reservoir from running dry, where it does
     */
    RootAdvice(TrayCase tray, List<Cure> reservoirCures, Findings out) {
        this.tray = tray;
        this.reservoirCures = reservoirCures;
        this.out = out;
    }

    /** Hour from which a tray stands dry while its crop lives. */
    static OptionalInt driedOut(TrayCase tray) {
        int film = tray.firstSpell(FILM_PATIENCE_H, isDry(tray));
        OptionalDouble told = tray.firstS(Event.Kind.DRIED_OUT);
        IntStream event =
                told.isPresent()
                        ? IntStream.of(tray.trace.sampleAt(told.getAsDouble()))
                        : IntStream.empty();
        return IntStream.concat(
                        IntStream.of(film).filter(hour -> hour >= 0),
                        event.filter(hour -> hour <= tray.lastHour))
                .min();
    }

    private static IntPredicate isDry(TrayCase tray) {
        return h -> tray.of.levelM().at(h) < FILM_M;
    }

    void add() {
        addTopUps();
        addDriedOut();
        addSpell(
                Event.Kind.STRANDED,
                Warning.Kind.STRANDED,
                h -> whyStranded(h).isPresent(),
                Cause.of(whyStrandedAtFirst()),
                waterCures());
        addWilted();
        if (!isDrownedByAHair()) {
            addSpell(
                    Event.Kind.DROWNED,
                    Warning.Kind.DROWNED,
                    h -> tray.of.levelM().at(h) > tray.of.usedToLevelM().at(h),
                    Cause.of(Cause.Kind.ROSE_ABOVE_AIR_ROOTS),
                    drownedCures());
        }
        Wilt.of(tray).stream()
                .filter(wilt -> wilt.kind() == Warning.Kind.SALT_WILTED)
                .findFirst()
                .ifPresent(this::addSaltWilted);
        if (isShortOfAirForSure()) {
            addOnce(
                    Event.Kind.SHORT_OF_AIR,
                    Warning.Kind.SHORT_OF_AIR,
                    Cause.of(Cause.Kind.ROOTS_BREATHE_MORE_THAN_COMES),
                    airCures());
        }
        addDied();
    }

    /** Roots in want of water, or left with so little that it is too strong to drink. */
    private void addWilted() {
        OptionalDouble thirsty = tray.firstS(Event.Kind.WILTED);
        Optional<Wilt> down = Wilt.firstDrunkDown(tray);
        if (down.isPresent() && down.get().fromS() < thirsty.orElse(Double.POSITIVE_INFINITY)) {
            int from = tray.trace.sampleAt(down.get().fromS());
            int to = Math.max(from, Math.min(tray.lastHour, tray.trace.sampleAt(down.get().toS())));
            double least = Double.POSITIVE_INFINITY;
            for (int h = from; h <= to; h++) {
                least = Math.min(least, tray.of.levelM().at(h));
            }
            Cause cause = new Cause(Cause.Kind.DRUNK_DOWN, Facts.of(Quantity.LEVEL, 1000 * least));
            warnWilted(down.get(), cause, drunkDownCures(from));
        } else if (thirsty.isPresent()) {
            Cause cause =
                    new Cause(Cause.Kind.RESERVE_USED_UP, Facts.NONE.named(whatWiltingCost()));
            Wilt.of(tray).stream()
                    .filter(wilt -> wilt.fromS() == thirsty.getAsDouble())
                    .findFirst()
                    .ifPresent(wilt -> warnWilted(wilt, cause, waterCures()));
        }
    }

    /** Of a tray topped up by hand what it takes on the thirstiest day; else as of any want. */
    private List<Cure> drunkDownCures(int hour) {
        double worstM3 = Arrays.stream(Thirsts.daily(tray)).max().orElse(0);
        if (!(tray.tray.filling() instanceof Filling.ByHand hand)
                || tray.rounds.isLeftFor(hour)
                || !(worstM3 > 0)) {
            return waterCures();
        }
        double heldM3 = tray.tray.shape().volumeM3(hand.toLevelM());
        double lastsDays = FastMath.floor((1 - FlushRule.LOW_FRAC) * heldM3 / worstM3);
        double gapDays = (tray.rounds.nextFrom(hour + 1.0) - tray.rounds.lastUpTo(hour)) / 24;
        Cure larger =
                new Cure(
                        Cure.Kind.HOLD_MORE,
                        Facts.of(
                                        Quantity.ENOUGH,
                                        1000 * gapDays * worstM3 / (1 - FlushRule.LOW_FRAC))
                                .and(Quantity.USABLE, 1000 * heldM3));
        return lastsDays >= 1 && lastsDays < gapDays
                ? List.of(
                        new Cure(Cure.Kind.VISIT_MORE_OFTEN, Facts.of(Quantity.EVERY, lastsDays)),
                        larger)
                : List.of(larger, Cure.of(Cure.Kind.VISIT_MORE_OFTEN));
    }

    /** From its beginning to its end. */
    private void warnWilted(Wilt wilt, Cause cause, List<Cure> cures) {
        double toS = Math.min(Math.max(wilt.fromS(), wilt.toS()), tray.lastHour * Time.HOUR_S);
        warn(
                wilt.kind(),
                wilt.fromS(),
                later(wilt.fromS(), tray.trace.clockAt(toS)),
                Measure.none(),
                cause,
                cures);
    }

    private void addSaltWilted(Wilt wilt) {
        warnWilted(
                wilt,
                Cause.of(Cause.Kind.SALTIER_THAN_ROOTS_ARE_USED_TO),
                List.of(
                        new Cure(
                                Cure.Kind.CHANGE_AT_LIMIT,
                                Facts.of(Quantity.EC_LIMIT, tray.tray.limits().ecHighMsPerCm()))));
    }

    /** Whether the level rose above what roots bear, and by less than anybody pours to. */
    private boolean isDrownedByAHair() {
        double above = Double.NEGATIVE_INFINITY;
        for (int h = tray.firstHour; h <= tray.lastHour; h++) {
            above = Math.max(above, tray.of.levelM().at(h) - tray.of.usedToLevelM().at(h));
        }
        return above > 0 && above < POURED_TO_M;
    }

    /** What kills by itself, by the detail of the event. */
    private static final Map<String, Cause.Kind> DEATHS =
            Map.of(
                    Event.FROST, Cause.Kind.FROST_KILLS,
                    Event.CHILL, Cause.Kind.CHILL_KILLS,
                    Event.HEAT, Cause.Kind.HEAT_KILLS,
                    Event.DARK, Cause.Kind.DARK_KILLS,
                    Event.SALT, Cause.Kind.SALT_KILLS);

    private void addDied() {
        Cause.Kind why = whyDied();
        addOnce(
                Event.Kind.DIED,
                Warning.Kind.DIED,
                why == Cause.Kind.CHILL_KILLS
                        ? new Cause(
                                why,
                                Facts.of(Quantity.BORNE_FROM, Killing.chilledBelowC(tray.traits)))
                        : Cause.of(why),
                switch (why) {
                    case WITHOUT_WATER -> waterCures(deadlyDry());
                    case WITHOUT_AIR -> drownedCures();
                    case FROST_KILLS, CHILL_KILLS -> List.of(Cure.of(Cure.Kind.WARMER_ROOM));
                    case HEAT_KILLS -> List.of(Cure.of(Cure.Kind.COOLER_ROOM));
                    case DARK_KILLS -> List.of(Cure.of(Cure.Kind.MORE_LIGHT));
                    default -> List.of(Cure.of(Cure.Kind.LEANER_FEED));
                });
    }

    private Cause.Kind whyDied() {
        Optional<Cause.Kind> byItself =
                tray.events().stream()
                        .filter(e -> e.kind() == Event.Kind.DIED)
                        .map(e -> DEATHS.get(e.detail()))
                        .filter(Objects::nonNull)
                        .findFirst();
        if (byItself.isPresent()) {
            return byItself.get();
        }
        if (endsIn(Event.Kind.WILTED, Event.Kind.RECOVERED)) {
            return Cause.Kind.WITHOUT_WATER;
        }
        return endsIn(Event.Kind.DROWNED, Event.Kind.STRANDED)
                ? Cause.Kind.WITHOUT_AIR
                : Cause.Kind.SALT_KILLS_SEEDLINGS;
    }

    /** Whether one of two kinds of event has come last. */
    private boolean endsIn(Event.Kind begins, Event.Kind ends) {
        boolean is = false;
        for (Event event : tray.events()) {
            is = event.kind() == begins || is && event.kind() != ends;
        }
        return is;
    }

    /** What lets the level rise slowly, or not at all. */
    private List<Cure> drownedCures() {
        double riseM = tray.traits == null ? RISE_BORNE_M : tray.traits.roots().riseBorneM();
        Facts rise = Facts.of(Quantity.RISE, riseM * 1000);
        if (!(tray.tray.filling() instanceof Filling.ByValve)) {
            return List.of(
                    new Cure(
                            Cure.Kind.TOP_UP_LITTLE_AND_OFTEN,
                            firstTooHigh().map(event -> borneAt(rise, event)).orElse(rise)));
        }
        if (tray.firstS(Event.Kind.OVERFLOW_BEGAN).isPresent()) {
            return List.of(Cure.of(Cure.Kind.MEND_VALVE));
        }
        return reservoirCures.isEmpty()
                ? List.of(new Cure(Cure.Kind.RAISE_BY_STEPS, rise))
                : reservoirCures;
    }

    /** The top-up that rose above the roots in air; empty where none did. */
    private Optional<Event> firstTooHigh() {
        OptionalDouble drowned = tray.firstS(Event.Kind.DROWNED);
        return tray.events().stream()
                .filter(event -> event.kind() == Event.Kind.TOP_UP)
                .filter(event -> drowned.isPresent() && event.atS() <= drowned.getAsDouble())
                .filter(event -> drowned.getAsDouble() - event.atS() < Time.DAY_S)
                .reduce((before, after) -> after);
    }

    /** With its visit and the highest level that the roots bore then. */
    private Facts borneAt(Facts rise, Event event) {
        int before = Math.max(tray.firstHour, tray.trace.sampleAt(event.atS()) - 1);
        return rise.and(Quantity.LEVEL, 1000 * tray.of.usedToLevelM().at(before))
                .on(tray.trace.clockAt(event.atS()));
    }

    private Cause.Kind whyStrandedAtFirst() {
        return tray.firstS(Event.Kind.STRANDED).stream()
                .mapToObj(atS -> whyStranded(tray.trace.sampleAt(atS)))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(Cause.Kind.LEVEL_BELOW_ROOT_TIPS);
    }

    /** What keeps all roots from water in an hour; empty where some drink. */
    private Optional<Cause.Kind> whyStranded(int hour) {
        double levelM = tray.of.levelM().at(hour);
        if (levelM <= tray.of.rootTipM().at(hour)) {
            return Optional.of(Cause.Kind.LEVEL_BELOW_ROOT_TIPS);
        } else if (levelM < NO_SUPPLY_M) {
            return Optional.of(Cause.Kind.FILM_FEEDS_NO_ROOT);
        }
        double most = Osmosis.NO_UPTAKE_MS_PER_CM * (1 - ROUNDING);
        return tray.of.osmoticMsPerCm(hour) >= most
                ? Optional.of(Cause.Kind.TOO_STRONG_TO_DRINK)
                : Optional.empty();
    }

    /** The worst that wilting left behind, in the words of the run; empty for nothing. */
    private String whatWiltingCost() {
        String worst = "";
        for (Wilting.Recovery recovery : Wilting.Recovery.values()) {
            for (Event event : tray.events()) {
                boolean so =
                        event.kind() == Event.Kind.RECOVERED
                                && event.detail().equals(recovery.title());
                worst = so ? recovery.title() : worst;
            }
        }
        return worst;
    }

    // The figures behind oxygen span a factor of some six: a likely want of it may be none, so that
    // only what even the kindest of them leaves short is worth a warning.
    private boolean isShortOfAirForSure() {
        if (tray.traits == null) {
            return false;
        }
        Series richest = tray.of.of(TraySeries.OXYGEN_RICHEST);
        Series tempC = tray.of.of(TraySeries.SOLUTION_TEMP);
        return tray.hoursOf(
                        h ->
                                richest.at(h)
                                        < RootBreathing.enoughGPerM3(
                                                tray.traits.response(), tempC.at(h)))
                >= SURE_H;
    }

    /** A lower level where enough is left of it; bubbles where not, and in any case. */
    private List<Cure> airCures() {
        List<Cure> cures = new ArrayList<>();
        double lowerM = keptAtM() - LOWER_BY_M;
        if (lowerM >= LEAST_LEVEL_M && tray.tray.cupBottomM() > LOWER_BY_M) {
            cures.add(new Cure(Cure.Kind.LOWER_LEVEL, Facts.of(Quantity.LEVEL, lowerM * 1000)));
        }
        cures.add(Cure.of(Cure.Kind.AIR_STONE));
        if (isOfSeveral()) {
            cures.add(Cure.of(Cure.Kind.FEWER_PLANTS));
        }
        return cures;
    }

    /** The level that a valve or a hand keeps at first, m; of a tray that is filled once 0. */
    private double keptAtM() {
        if (tray.tray.filling() instanceof Filling.ByValve valve) {
            return valve.settingM(tray.setOn(tray.firstHour));
        }
        return tray.tray.filling() instanceof Filling.ByHand hand ? hand.toLevelM() : 0;
    }

    private void addTopUps() {
        for (Event event : tray.events()) {
            if (event.kind() == Event.Kind.TOP_UP) {
                double level = tray.of.levelM().at(tray.trace.sampleAt(event.atS()));
                double to = filledToM(level, event.volumeM3());
                out.tasks.add(
                        new Task(
                                Task.Kind.TOP_UP,
                                tray.id,
                                tray.trace.clockAt(event.atS()),
                                event.volumeM3() * 1000,
                                0,
                                Measure.atLeast(level * 1000, to * 1000, Unit.MILLIMETRES),
                                new Cause(Cause.Kind.KEPT_BY_HAND, Facts.waterIn(event)),
                                List.of(),
                                List.of(),
                                true));
            }
        }
    }

    /** Its mark, or where it began: young plants are filled up for as their roots reach, m. */
    private double filledToM(double fromM, double pouredM3) {
        Shape shape = tray.tray.shape();
        double markM = ((Filling.ByHand) tray.tray.filling()).toLevelM();
        double reachedM = shape.levelM(shape.volumeM3(fromM) + pouredM3);
        return reachedM > markM + POURED_TO_M ? reachedM : markM;
    }

    private void addDriedOut() {
        OptionalInt dried = driedOut(tray);
        if (dried.isEmpty()) {
            return;
        }
        int from = dried.getAsInt();
        IntPredicate dry = isDry(tray);
        out.warnings.add(
                new Warning(
                        Warning.Kind.DRIED_OUT,
                        tray.id,
                        tray.trace.clockAtSample(from),
                        tray.lastOf(from, dry),
                        Measure.atMost(Math.max(1, tray.hoursOf(dry)), 0, Unit.HOURS),
                        new Cause(Cause.Kind.DRUNK_UP, tray.rounds.leftBefore(from, tray.trace)),
                        waterCures()));
    }

    /** The first hour in want of water. */
    private int firstDry() {
        int first = driedOut(tray).orElse(tray.lastHour);
        for (Event.Kind kind : List.of(Event.Kind.STRANDED, Event.Kind.WILTED, Event.Kind.DIED)) {
            OptionalDouble at = tray.firstS(kind);
            if (at.isPresent()) {
                first = Math.min(first, tray.trace.sampleAt(at.getAsDouble()));
            }
        }
        Optional<Wilt> down = Wilt.firstDrunkDown(tray);
        return down.isEmpty() ? first : Math.min(first, tray.trace.sampleAt(down.get().fromS()));
    }

    /** What brings water in time to what wants it first. */
    private List<Cure> waterCures() {
        return waterCures(firstDry());
    }

    /** Hour in which that want of water began which the crop died of: mostly the first. */
    private int deadlyDry() {
        double diedS = tray.firstS(Event.Kind.DIED).orElse(Double.POSITIVE_INFINITY);
        return tray.events().stream()
                .filter(e -> e.kind() == Event.Kind.STRANDED && e.atS() <= diedS)
                .mapToInt(e -> tray.trace.sampleAt(e.atS()))
                .reduce((before, after) -> after)
                .orElse(firstDry());
    }

    /** What brings water in time, by how the tray is filled. */
    private List<Cure> waterCures(int dry) {
        boolean isFirst = dry <= firstDry() + 1;
        if (isFirst && Seedlings.isDryBeforeReach(tray)) {
            return Seedlings.untilThen(tray);
        }
        if (tray.tray.filling() instanceof Filling.ByValve valve) {
            return valveCures(valve, dry);
        }
        if (tray.tray.filling() instanceof Filling.ByHand) {
            return handCures(dry);
        }
        double filledM3 = tray.tray.shape().volumeM3(tray.tray.startLevelM());
        if (tray.of.volumeM3().at(dry) >= OUT_OF_REACH_FRAC * filledM3) {
            return outOfReachCures();
        }
        Cure larger =
                Cure.largerThan(
                        tray.tray,
                        Facts.of(Quantity.ENOUGH, 1000 * wholeCropM3())
                                .and(Quantity.USABLE, 1000 * filledM3));
        return isOfSeveral() ? List.of(larger, Cure.of(Cure.Kind.FEWER_PLANTS)) : List.of(larger);
    }

    private boolean isOfSeveral() {
        return tray.tray.planting().plants() > 1;
    }

    /** Of plants that want water above a tray that holds plenty: in the cold no root grows down. */
    private List<Cure> outOfReachCures() {
        boolean isCold =
                tray.traits != null
                        && RoomFindings.of(tray.trace, tray.planting).stream()
                                .anyMatch(f -> f.kind() == RoomLimits.Kind.TOO_COLD);
        return isCold
                ? List.of(Cure.of(Cure.Kind.WARMER_ROOM), Cure.of(Cure.Kind.HANG_CUP_LOWER))
                : List.of(Cure.of(Cure.Kind.HANG_CUP_LOWER));
    }

    /** Of a tray that its valve left dry, or whose roots hang above the level that it holds. */
    private List<Cure> valveCures(Filling.ByValve valve, int dry) {
        Optional<Cure> atTheValve = ValveAdvice.cureAt(tray, valve, dry);
        if (atTheValve.isPresent()) {
            return List.of(atTheValve.get());
        }
        double tipM = lowestTipM(dry);
        if (tray.of.levelM().at(dry) >= FILM_M && valve.settingM(tray.setOn(dry)) <= tipM) {
            return List.of(
                    new Cure(
                            Cure.Kind.RAISE_LEVEL,
                            Facts.of(Quantity.LEVEL, (tipM + Tray.CUP_WET_M) * 1000)));
        }
        return reservoirCures.isEmpty()
                ? List.of(Cure.of(Cure.Kind.REFILL_IN_TIME))
                : reservoirCures;
    }

    /** Where the roots end in the hour in which it begins, or in that after it, m. */
    private double lowestTipM(int dry) {
        int next = Math.min(dry + 1, tray.lastHour);
        return Math.max(tray.of.rootTipM().at(dry), tray.of.rootTipM().at(next));
    }

    /** Of a tray topped up by hand: it held too little from one top-up to the next. */
    private List<Cure> handCures(int dry) {
        boolean hangs = tray.of.levelM().at(dry) <= lowestTipM(dry);
        if (hangs && tray.of.levelM().at(dry) >= FILM_M) {
            return List.of(Cure.of(Cure.Kind.FILL_HIGHER), Cure.of(Cure.Kind.HANG_CUP_LOWER));
        }
        double from = tray.planting.fromS() / Time.HOUR_S;
        double next = tray.rounds.nextFrom(dry + 1.0);
        for (Event event : tray.events()) {
            double hour = event.atS() / Time.HOUR_S;
            from = event.kind() == Event.Kind.TOP_UP && hour <= dry ? hour : from;
        }
        double held = tray.of.volumeM3().at((int) from);
        double enoughM3 = held * (next - from) / Math.max(1, dry - from);
        List<Cure> cures = new ArrayList<>();
        if (leavesBetween(from, next)) {
            cures.add(
                    new Cure(
                            Cure.Kind.TOPPED_UP_MEANWHILE,
                            Facts.NONE.on(tray.trace.clockAtSample(dry).minusDays(1))));
        }
        double roomM = Seedlings.firstLevelM(tray.tray);
        cures.add(
                enoughM3 <= tray.tray.shape().volumeM3(roomM)
                        ? new Cure(
                                Cure.Kind.FILL_HIGHER,
                                Facts.of(Quantity.LEVEL, 1000 * tray.tray.shape().levelM(enoughM3)))
                        : new Cure(
                                Cure.Kind.HOLD_MORE,
                                Facts.of(Quantity.ENOUGH, 1000 * enoughM3)
                                        .and(Quantity.USABLE, 1000 * held)));
        cures.add(Cure.of(Cure.Kind.VISIT_MORE_OFTEN));
        return cures;
    }

    private boolean leavesBetween(double fromHour, double toHour) {
        return tray.rounds.away().stream()
                .anyMatch(away -> away[0] >= fromHour && away[0] < toHour);
    }

    /** What leaves a filling until the crop does, its thirst before salt cuts it, m3. */
    private double wholeCropM3() {
        double m3 = tray.of.evaporationM3().sum(tray.firstHour, tray.lastHour + 1);
        for (double day : Thirsts.daily(tray)) {
            m3 += day;
        }
        return m3;
    }

    private void addSpell(
            Event.Kind begins, Warning.Kind kind, IntPredicate is, Cause cause, List<Cure> cures) {
        OptionalDouble began = tray.firstS(begins);
        if (began.isEmpty()) {
            return;
        }
        int first = tray.trace.sampleAt(began.getAsDouble());
        warn(
                kind,
                began.getAsDouble(),
                later(began.getAsDouble(), tray.lastOf(first, is)),
                Measure.atMost(
                        Math.max(1, tray.hoursOf(h -> h >= first && is.test(h))), 0, Unit.HOURS),
                cause,
                cures);
    }

    private LocalDateTime later(double firstS, LocalDateTime end) {
        LocalDateTime from = tray.trace.clockAt(firstS);
        return end.isBefore(from) ? from : end;
    }

    private void addOnce(Event.Kind begins, Warning.Kind kind, Cause cause, List<Cure> cures) {
        tray.firstS(begins).ifPresent(first -> warnAt(kind, first, cause, cures));
    }

    private void warnAt(Warning.Kind kind, double atS, Cause cause, List<Cure> cures) {
        warn(kind, atS, tray.trace.clockAt(atS), Measure.none(), cause, cures);
    }

    private void warn(
            Warning.Kind kind,
            double firstS,
            LocalDateTime until,
            Measure measure,
            Cause cause,
            List<Cure> cures) {
        out.warnings.add(
                new Warning(
                        kind, tray.id, tray.trace.clockAt(firstS), until, measure, cause, cures));
    }
}
