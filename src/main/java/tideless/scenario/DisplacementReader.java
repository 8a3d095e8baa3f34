package tideless.scenario;

import static tideless.scenario.Measure.plain;
import static tideless.scenario.TrayKeys.CUPS;
import static tideless.scenario.TrayKeys.CUP_SOLID;
import static tideless.scenario.TrayKeys.DEPTH;
import static tideless.scenario.ValveKeys.BODY;
import static tideless.scenario.ValveKeys.BODY_FROM;
import static tideless.scenario.ValveKeys.BODY_TO;

import java.util.List;
import tideless.rig.Displacement;
import tideless.rig.Shape;

/** Reads what keeps solution out of a tray: its cups and its valve's body. */
final class DisplacementReader {
    private final Table tray;
    private final Table valve;

    DisplacementReader(Table tray) {
        this.tray = tray;
        valve = tray.child("valve");
    }

    /**
     * What keeps solution out.
     *
     * @param vessel the empty tray
     * @param cupBottom the cups' underside above the floor, m
     * @param plants how many plants
     */
    Read<Displacement> read(Read<Shape> vessel, Read<Double> cupBottom, Read<Integer> plants) {
        Read<Double> cups = cupsM2(plants);
        Read<Displacement> body = body();
        if (!Read.allSound(vessel, cupBottom, cups, body)) {
            return Read.faulty();
        }
        return together(vessel.value(), cupBottom.value(), cups.value(), body.value());
    }

    private Read<Displacement> together(
            Shape vessel, double cupBottomM, double cupsM2, Displacement body) {
        Displacement cups = Displacement.NONE;
        if (cupsM2 > 0) {
            if (!fits(CUP_SOLID, cupsM2, vessel, cupBottomM, 0)) {
                return Read.faulty();
            }
            cups = cups.and(new Displacement.Solid(cupsM2, cupBottomM, vessel.depthM()));
        }
        if (body.isNone()) {
            return Read.of(cups);
        }
        Displacement.Solid one = body.solids().get(0);
        // Tightest where the body begins, or where the cups begin beside it.
        double beginsM = one.fromM();
        boolean beside = cupsM2 > 0 && beginsM < cupBottomM && cupBottomM < one.toM();
        if (!fits(BODY, one.areaM2(), vessel, beginsM, cups.sectionM2(beginsM))
                || (beside && !fits(BODY, one.areaM2(), vessel, cupBottomM, cupsM2))) {
            return Read.faulty();
        }
        return Read.of(cups.and(one));
    }

    /** Of all cups together, m2. */
    private Read<Double> cupsM2(Read<Integer> plants) {
        Read<Double> one = tray.get(CUP_SOLID);
        if (one.isAbsent()) {
            if (tray.has(CUPS)) {
                tray.faultyValue(CUPS, "only beside cup_solid", "");
                return Read.faulty();
            }
            return Read.of(0.0);
        }
        Read<Integer> cups = tray.getOr(CUPS, plants, count -> count + ", as many as plants");
        if (cups.holds(count -> count == 0)) {
            tray.note(CUP_SOLID, "no cups are counted, so nothing is displaced; maybe state cups");
        }
        return Read.both(cups, one, (count, oneM2) -> count * oneM2);
    }

    /** None when not stated. */
    private Read<Displacement> body() {
        Read<Double> area = valve.get(BODY);
        if (area.isAbsent()) {
            boolean alone = true;
            for (Key<?> key : List.of(BODY_FROM, BODY_TO)) {
                if (valve.has(key)) {
                    valve.faultyValue(key, "only beside body", "");
                    alone = false;
                }
            }
            return alone ? Read.of(Displacement.NONE) : Read.faulty();
        }
        Read<Double> depth = tray.get(DEPTH);
        Read<Double> from = valve.getOr(BODY_FROM, Read.of(0.0), floor -> "0 cm, the floor");
        Read<Double> to = valve.getOr(BODY_TO, depth, Heights::rim);
        if (!Read.allSound(area, depth, from, to)) {
            return Read.faulty();
        }
        double depthM = depth.value();
        double toM = to.value();
        if (toM > depthM + 1e-9) {
            valve.faultyValue(
                    BODY_TO,
                    "up to the rim (%s)".formatted(Heights.where(tray, DEPTH, depthM)),
                    "What stands above the rim displaces nothing.");
            return Read.faulty();
        }
        if (from.value() >= toM - 1e-9) {
            valve.faultyValue(
                    BODY_FROM,
                    valve.has(BODY_TO)
                            ? "below body_to (%s)".formatted(Heights.where(valve, BODY_TO, toM))
                            : "below the rim (%s)".formatted(Heights.where(tray, DEPTH, depthM)),
                    "");
            return Read.faulty();
        }
        return Read.of(
                Displacement.of(
                        List.of(
                                new Displacement.Solid(
                                        area.value(), from.value(), Math.min(toM, depthM)))));
    }

    /** Whether a body leaves room beside it at a level; says so when not. */
    private boolean fits(Key<?> key, double bodyM2, Shape vessel, double atM, double besideM2) {
        double ownM2 = vessel.areaM2(atM);
        double mostM2 = (1 - Displacement.LEAST_FREE_FRAC) * ownM2 - besideM2;
        if (bodyM2 <= mostM2 - 1e-9 * ownM2) {
            return true;
        }
        boolean cups = key == CUP_SOLID;
        Table table = cups ? tray : valve;
        String own = "the tray's own %s at %s".formatted(area(ownM2), Heights.cm(atM));
        table.fault(
                key,
                Key.quoted(table.words(key))
                        + (cups ? ", %s for all cups".formatted(area(bodyM2)) : ""),
                besideM2 > 0
                        ? "below %s: %s less %s of cups"
                                .formatted(area(ownM2 - besideM2), own, area(besideM2))
                        : "below " + own + (cups ? ", all cups together" : ""),
                "Solution must have room at every level: at least a hundredth of the tray's.");
        return false;
    }

    private static String area(double areaM2) {
        return plain(areaM2, UnitTable.AREA, "cm2"); // as cups are measured
    }
}
