package tideless.scenario;

import static tideless.scenario.Measure.plain;

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
     * Null when faulty.
     *
     * @param vessel the empty tray, or null when it or its heights are faulty
     * @param cupBottomM the cups' underside above the floor, m
     * @param plants how many plants; below 0 when faulty
     */
    Displacement read(Shape vessel, double cupBottomM, int plants) {
        double cupsM2 = cupsM2(plants);
        Displacement body = body(vessel == null ? Double.NaN : vessel.depthM());
        if (vessel == null || body == null || Double.isNaN(cupsM2 + cupBottomM)) {
            return null;
        }
        Displacement cups = Displacement.NONE;
        if (cupsM2 > 0) {
            if (!fits("cup_solid", tray, cupsM2, vessel, cupBottomM, 0)) {
                return null;
            }
            cups = cups.and(new Displacement.Solid(cupsM2, cupBottomM, vessel.depthM()));
        }
        if (body != Displacement.NONE) {
            Displacement.Solid one = body.solids().get(0);
            // Tightest where the body begins, or where the cups begin beside it.
            double beginsM = one.fromM();
            boolean beside = cupsM2 > 0 && beginsM < cupBottomM && cupBottomM < one.toM();
            if (!fits("body", valve, one.areaM2(), vessel, beginsM, cups.sectionM2(beginsM))
                    || beside && !fits("body", valve, one.areaM2(), vessel, cupBottomM, cupsM2)) {
                return null;
            }
            return cups.and(one);
        }
        return cups;
    }

    /** Of all cups together, m2; NaN when faulty. */
    private double cupsM2(int plants) {
        if (!tray.has("cup_solid")) {
            if (tray.meant("cup_solid")) {
                return Double.NaN; // misspelt, which has been said
            }
            if (tray.has("cups")) {
                tray.faultyValue("cups", "only beside cup_solid", "");
                return Double.NaN;
            }
            return 0;
        }
        double oneM2 = tray.quantity("cup_solid");
        int cups = plants;
        if (tray.has("cups")) {
            cups = tray.count("cups");
        } else if (plants >= 0) {
            tray.holds("cups", plants + ", as many as plants");
        }
        if (cups == 0) {
            tray.note(
                    "cup_solid", "no cups are counted, so nothing is displaced; maybe state cups");
        }
        return cups < 0 ? Double.NaN : cups * oneM2;
    }

    /** None when not stated, null when faulty. */
    private Displacement body(double depthM) {
        if (!valve.meant("body")) {
            boolean alone = true;
            for (String key : new String[] {"body_from", "body_to"}) {
                if (valve.has(key)) {
                    valve.faultyValue(key, "only beside body", "");
                    alone = false;
                }
            }
            return alone ? Displacement.NONE : null;
        }
        double areaM2 = valve.quantity("body");
        double fromM = valve.quantityOr("body_from", 0, "0 cm, the floor");
        double toM = valve.quantityOr("body_to", depthM, VesselReader.cm(depthM) + ", the rim");
        if (Double.isNaN(areaM2 + fromM + toM + depthM)) {
            return null;
        }
        if (toM > depthM + 1e-9) {
            valve.faultyValue(
                    "body_to",
                    "up to the rim (%s)".formatted(VesselReader.where(tray, "depth", depthM)),
                    "What stands above the rim displaces nothing.");
            return null;
        }
        if (fromM >= toM - 1e-9) {
            valve.faultyValue(
                    "body_from",
                    valve.has("body_to")
                            ? "below body_to (%s)"
                                    .formatted(VesselReader.where(valve, "body_to", toM))
                            : "below the rim (%s)"
                                    .formatted(VesselReader.where(tray, "depth", depthM)),
                    "");
            return null;
        }
        return Displacement.of(
                List.of(new Displacement.Solid(areaM2, fromM, Math.min(toM, depthM))));
    }

    /** Whether a body leaves room beside it at a level; says so when not. */
    private boolean fits(
            String key, Table table, double bodyM2, Shape vessel, double atM, double besideM2) {
        double ownM2 = vessel.areaM2(atM);
        double mostM2 = (1 - Displacement.LEAST_FREE_FRAC) * ownM2 - besideM2;
        if (bodyM2 <= mostM2 - 1e-9 * ownM2) {
            return true;
        }
        boolean cups = key.equals("cup_solid");
        String tray = "the tray's own %s at %s".formatted(area(ownM2), VesselReader.cm(atM));
        table.fault(
                key,
                Key.quoted(table.words(key))
                        + (cups ? ", %s for all cups".formatted(area(bodyM2)) : ""),
                besideM2 > 0
                        ? "below %s: %s less %s of cups"
                                .formatted(area(ownM2 - besideM2), tray, area(besideM2))
                        : "below " + tray + (cups ? ", all cups together" : ""),
                "Solution must have room at every level: at least a hundredth of the tray's.");
        return false;
    }

    private static String area(double areaM2) {
        return plain(areaM2, UnitTable.AREA, "cm2"); // as cups are measured
    }
}
