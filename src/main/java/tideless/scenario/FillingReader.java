package tideless.scenario;

import static tideless.scenario.TrayKeys.DEPTH;
import static tideless.scenario.TrayKeys.FILLING;
import static tideless.scenario.TrayKeys.FLOOR_ABOVE_BENCH;
import static tideless.scenario.TrayKeys.OVERFLOW;
import static tideless.scenario.ValveKeys.BAND;
import static tideless.scenario.ValveKeys.DISCHARGE_COEFFICIENT;
import static tideless.scenario.ValveKeys.FROM;
import static tideless.scenario.ValveKeys.MOVES;
import static tideless.scenario.ValveKeys.SEAT;
import static tideless.scenario.ValveKeys.SEAT_HEIGHT;
import static tideless.scenario.ValveKeys.SETTING;
import static tideless.scenario.ValveKeys.SNAP;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;
import tideless.rig.Visits;

/** Reads how a tray gets its solution. */
final class FillingReader {
    private final Table tray;
    private final Table reservoirs;
    private final List<Reservoir> goodReservoirs;
    private final Run run;
    private final Read<Visits> visits;
    private final Read<Double> overflow;
    private final Read<Double> cupBottom;

    /**
     * @param overflow level at which solution runs out of the tray, m
     * @param cupBottom the cups' underside above the tray's floor, m
     */
    FillingReader(
            Table tray,
            Table reservoirs,
            List<Reservoir> goodReservoirs,
            Run run,
            Read<Visits> visits,
            Read<Double> overflow,
            Read<Double> cupBottom) {
        this.tray = tray;
        this.reservoirs = reservoirs;
        this.goodReservoirs = goodReservoirs;
        this.run = run;
        this.visits = visits;
        this.overflow = overflow;
        this.cupBottom = cupBottom;
    }

    Read<Filling> read() {
        String usual = tray.meant("valve") ? "valve" : tray.meant("hand") ? "hand" : "sealed";
        Read<String> kind = tray.getOr(FILLING, Read.of(usual), words -> words);
        if (!kind.isSound()) {
            return Read.faulty();
        }
        for (String other : new String[] {"valve", "hand"}) {
            if (!other.equals(kind.value()) && tray.has(other)) {
                tray.fault(
                        other,
                        "a table beside filling = " + Key.quoted(kind.value()),
                        "one way of filling",
                        "");
            }
        }
        return switch (kind.value()) {
            case "valve" -> valve(tray.child("valve"));
            case "hand" -> hand(tray.child("hand"));
            case "sealed" -> Read.of(new Filling.Sealed());
            default -> throw new AssertionError("no filling for " + kind.value());
        };
    }

    private Read<Filling> valve(Table valve) {
        Read<String> from = reservoirName(valve);
        valve.need(SETTING, levelHint(SETTING));
        boolean sound = valve.isSound();
        Read<Double> seatHeight = valve.getOr(SEAT_HEIGHT, tray.get(DEPTH), Heights::rim);
        Read<Tube> branch = VesselReader.tube(valve.child("tubing"), TubingKeys.BRANCH);
        sound &= checkSetting(valve);
        Read<Reservoir> reservoir = reservoir(from);
        Read<List<Filling.Move>> moves = moves(valve, reservoir);
        if (sound && reservoir.isSound() && tray.get(FLOOR_ABOVE_BENCH).isSound()) {
            sound = checkHead(valve, reservoir.value(), seatHeight);
        }
        ValveReader more = new ValveReader(valve, run);
        Read<ValveFaults> faults = more.faults();
        sound &= more.shuts(head(reservoir, seatHeight));
        Read<Double> setting = valve.get(SETTING);
        if (seatHeight.holds(seatM -> setting.holds(settingM -> seatM < settingM))) {
            valve.note(
                    SEAT_HEIGHT,
                    "the feed enters below the setting: without an air gap a line can draw solution"
                            + " back; the run takes it that a check valve prevents that");
        }
        if (!sound || !Read.allSound(from, seatHeight, branch, faults, moves)) {
            return Read.faulty();
        }
        return Read.of(
                new Filling.ByValve(
                        from.value(),
                        setting.value(),
                        valve.value(BAND),
                        valve.value(SNAP),
                        valve.value(SEAT),
                        valve.value(DISCHARGE_COEFFICIENT),
                        seatHeight.value(),
                        branch.value(),
                        faults.value(),
                        moves.value()));
    }

    /** The moves, each on the day of the visit at which it is done. */
    private Read<List<Filling.Move>> moves(Table valve, Read<Reservoir> reservoir) {
        Read<List<Filling.Move>> stated = valve.getOr(MOVES, Read.of(List.of()), none -> "none");
        if (!stated.isSound()) {
            return Read.faulty();
        }
        boolean good = true;
        List<Filling.Move> done = new ArrayList<>();
        for (Filling.Move move : stated.value()) {
            String allowed = allowedOf(move, valve, reservoir);
            if (!allowed.isEmpty()) {
                valve.fault(
                        MOVES,
                        "%s from %s on".formatted(Heights.cm(move.settingM()), move.on()),
                        allowed,
                        "");
                good = false;
                continue;
            }
            good &= addAtVisit(move, valve, done);
        }
        return good ? Read.of(done) : Read.faulty();
    }

    /** What a move would have to keep to where it does not; else empty. */
    private String allowedOf(Filling.Move move, Table valve, Read<Reservoir> reservoir) {
        if (!run.outside(List.of(move.on())).isEmpty()) {
            return "a day of the run (%s to %s)".formatted(run.start().value(), run.last().value());
        }
        double toM = move.settingM();
        Read<Double> depth = tray.get(DEPTH);
        if (depth.holds(depthM -> toM >= depthM)) {
            return "below the deck (%s)".formatted(Heights.where(tray, DEPTH, depth.value()));
        }
        if (overflow.holds(overflowM -> toM >= overflowM)) {
            return "below the overflow (%s)"
                    .formatted(Heights.where(tray, OVERFLOW, overflow.value()));
        }
        Read<Double> band = valve.get(BAND);
        if (band.holds(bandM -> toM < bandM)) {
            return "at least the band (%s): below the floor a valve cannot open"
                    .formatted(Heights.where(valve, BAND, band.value()));
        }
        Read<Double> floor = tray.get(FLOOR_ABOVE_BENCH);
        if (reservoir.holds(
                from -> floor.holds(floorM -> outletAboveBenchM(from) < floorM + toM - 1e-9))) {
            return "below the outlet of reservoir %s (%s above the bench)"
                    .formatted(
                            Key.quoted(reservoir.value().name()),
                            Heights.cm(outletAboveBenchM(reservoir.value())));
        }
        return "";
    }

    /** A move is done by whoever looks next; says so where that is on another day. */
    private boolean addAtVisit(Filling.Move move, Table valve, List<Filling.Move> done) {
        if (!Read.allSound(visits, run.end())) {
            return true;
        }
        LocalDate day = move.on();
        while (day.isBefore(run.end().value()) && !visits.value().on(day)) {
            day = day.plusDays(1);
        }
        if (!day.isBefore(run.end().value())) {
            valve.fault(
                    MOVES,
                    "a move on %s, after the last visit".formatted(move.on()),
                    "a day up to the last visit of the run",
                    "");
            return false;
        }
        if (!done.isEmpty() && !day.isAfter(done.get(done.size() - 1).on())) {
            valve.fault(
                    MOVES,
                    "two moves that fall on one visit (%s)".formatted(day),
                    "one move a visit",
                    "");
            return false;
        }
        if (!day.equals(move.on())) {
            valve.note(
                    MOVES,
                    "nobody looks on %s: the valve is moved at the next visit, on %s"
                            .formatted(move.on(), day));
        }
        done.add(new Filling.Move(day, move.settingM()));
        return true;
    }

    private static double outletAboveBenchM(Reservoir reservoir) {
        return reservoir.floorAboveBenchM() + reservoir.outletLevelM();
    }

    /** A level that wets the cups as usual and does not run over; empty where there is none. */
    private String levelHint(Key<Double> key) {
        return Read.both(cupBottom, overflow, (cupM, overM) -> levelHint(key, cupM, overM))
                .orElse("");
    }

    private static String levelHint(Key<Double> key, double cupM, double overflowM) {
        double levelM = cupM + Tray.CUP_WET_M;
        return levelM < overflowM
                ? "Maybe add %s = \"%s\", which wets the cups by 1.3 cm."
                        .formatted(key.name(), Heights.cm(levelM))
                : "";
    }

    /** From the full reservoir's surface to the seat, m. */
    private Read<Double> head(Read<Reservoir> reservoir, Read<Double> seatHeight) {
        Read<Double> floor = tray.get(FLOOR_ABOVE_BENCH);
        return Read.both(
                Read.both(
                        reservoir,
                        floor,
                        (from, floorM) -> from.floorAboveBenchM() + from.fullLevelM() - floorM),
                seatHeight,
                (highestM, seatM) -> highestM - seatM);
    }

    /** Whether the valve shuts below the deck and the overflow, and opens above the floor. */
    private boolean checkSetting(Table valve) {
        Read<Double> setting = valve.get(SETTING);
        if (!setting.isSound()) {
            return false;
        }
        double settingM = setting.value();
        Read<Double> depth = tray.get(DEPTH);
        boolean good = true;
        if (depth.holds(depthM -> settingM >= depthM)) {
            valve.fault(
                    SETTING,
                    Key.quoted(valve.words(SETTING)),
                    "below the deck (%s)".formatted(Heights.where(tray, DEPTH, depth.value())),
                    "Maybe lower the valve; the deck lies on the rim.");
            good = false;
        } else if (overflow.holds(overflowM -> settingM >= overflowM)) {
            valve.fault(
                    SETTING,
                    Key.quoted(valve.words(SETTING)),
                    "below the overflow (%s)"
                            .formatted(Heights.where(tray, OVERFLOW, overflow.value())),
                    "Maybe lower the valve or raise the overflow.");
            good = false;
        }
        Read<Double> band = valve.get(BAND);
        if (band.holds(bandM -> bandM > settingM)) {
            valve.fault(
                    BAND,
                    Heights.found(valve, BAND, band.value()),
                    "up to the setting (%s)".formatted(Heights.where(valve, SETTING, settingM)),
                    "");
            good = false;
        }
        return good;
    }

    private Read<Reservoir> reservoir(Read<String> name) {
        for (Reservoir one : goodReservoirs) {
            if (name.holds(one.name()::equals)) {
                return Read.of(one);
            }
        }
        return Read.absent();
    }

    private Read<String> reservoirName(Table valve) {
        List<String> names = new ArrayList<>();
        for (Table one : reservoirs.named()) {
            names.add(one.name());
        }
        Read<String> written = valve.get(FROM);
        if (reservoirs.file().isExcused("reservoir")) {
            return Read.faulty(); // misspelt as a whole, which has been said
        }
        if (written.isFaulty() || written.holds(names::contains)) {
            return written;
        }
        String allowed =
                names.isEmpty()
                        ? "the name of a reservoir; there is none"
                        : String.join(", ", names.stream().map(Key::quoted).toList());
        if (written.isSound()) {
            String meant = Spelling.nearest(written.value(), names);
            valve.faultyValue(
                    FROM,
                    allowed,
                    meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
            return Read.faulty();
        }
        if (names.size() == 1) {
            valve.holds(FROM, names.get(0) + ", the only reservoir");
            return Read.of(names.get(0));
        }
        valve.fault(
                FROM,
                "nothing",
                allowed,
                names.isEmpty() ? "Maybe add a table [reservoir.shelf]." : "");
        return Read.faulty();
    }

    /**
     * The outlet by which a reservoir that stands as low as its tray feeds it all the same, to the
     * half centimetre and as much above the level; nothing where it is not that high when full.
     */
    private static String leftBehind(Reservoir reservoir, double levelM) {
        double halfCm = Math.ceil(200 * (levelM - reservoir.floorAboveBenchM()) - 1e-6) + 1;
        double outletM = halfCm / 200;
        return outletM > 0 && outletM < reservoir.fullLevelM()
                ? "; or, where it can stand no higher, count the lowest %s L as left behind: its outlet_height = \"%s\"."
                        .formatted(
                                Measure.plain(
                                        Math.floor(
                                                        10000 * reservoir.shape().volumeM3(outletM)
                                                                + 0.5)
                                                / 10),
                                Heights.cm(outletM))
                : ".";
    }

    /** Gravity feeds only downhill. */
    private boolean checkHead(Table valve, Reservoir reservoir, Read<Double> seatHeight) {
        double floorM = tray.value(FLOOR_ABOVE_BENCH);
        double outletM = outletAboveBenchM(reservoir);
        double levelM = floorM + valve.value(SETTING);
        if (outletM < levelM - 1e-9) {
            valve.fault(
                    SETTING,
                    "%s, which is %s above the bench"
                            .formatted(Key.quoted(valve.words(SETTING)), Heights.cm(levelM)),
                    "below the outlet of reservoir %s (%s above the bench)"
                            .formatted(Key.quoted(reservoir.name()), Heights.cm(outletM)),
                    "Nothing flows uphill: maybe raise the reservoir's floor_above_bench"
                            + leftBehind(reservoir, levelM));
            return false;
        }
        if (!seatHeight.isSound()) {
            return true;
        }
        double seatM = floorM + seatHeight.value();
        double fullM = reservoir.floorAboveBenchM() + reservoir.fullLevelM();
        if (fullM <= seatM) {
            valve.fault(
                    SEAT_HEIGHT,
                    "a feed that enters %s above the bench".formatted(Heights.cm(seatM)),
                    "below the full line of reservoir %s (%s above the bench)"
                            .formatted(Key.quoted(reservoir.name()), Heights.cm(fullM)),
                    "Nothing flows uphill: maybe raise the reservoir's floor_above_bench.");
            return false;
        }
        if (outletM < seatM) {
            valve.note(
                    SEAT_HEIGHT,
                    "the seat lies %s above the outlet of reservoir \"%s\": the last of it cannot flow"
                            .formatted(Heights.cm(seatM - outletM), reservoir.name()));
        }
        return true;
    }

    private Read<Filling> hand(Table hand) {
        hand.need(HandKeys.TO, levelHint(HandKeys.TO));
        boolean sound = hand.isSound();
        Read<List<LocalDate>> days =
                hand.getOr(HandKeys.DAYS, Read.of(List.of()), none -> "every visit");
        days.map(run::outside)
                .orElse(List.of())
                .forEach(
                        day ->
                                hand.note(
                                        HandKeys.DAYS,
                                        day + " lies outside the run and is passed over"));
        Read<Double> to = hand.get(HandKeys.TO);
        if (to.holds(toM -> overflow.holds(overflowM -> toM > overflowM + 1e-9))) {
            hand.faultyValue(
                    HandKeys.TO,
                    "up to the overflow (%s)"
                            .formatted(Heights.where(tray, OVERFLOW, overflow.value())),
                    "");
            return Read.faulty();
        }
        Read<Pouring> with =
                PouringReader.read(hand, HandKeys.WITH, HandKeys.WATER, HandKeys.WATER_SHARE, run);
        return sound && Read.allSound(days, with)
                ? Read.of(
                        new Filling.ByHand(
                                to.value(),
                                days.value(),
                                with.value(),
                                hand.value(HandKeys.IN_STEPS)))
                : Read.faulty();
    }
}
