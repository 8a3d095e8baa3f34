package tideless.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;

/** Names what of a log no noise explains once all factors are fitted. */
final class Oddities {
    /** Deviations beyond which a reading is no noise: once in 60 under Student's t with 4. */
    private static final double FAR = 4;

    /** Of a level in a tray that a valve holds, seen at least twice running. */
    private static final double AGAIN = 2.5;

    /** Less than this at a level nobody looks at twice, m; assumed. */
    private static final double LEVEL_M = 0.01;

    /** Of a level that a valve holds, m; assumed. */
    private static final double HELD_M = 0.005;

    /** A night's loss that a ruler shows: three deviations of two readings, m. */
    private static final double NIGHT_M = 3 * 1.5 * Believed.RULER_M;

    private static final double NIGHT_LEAST_S = 5 * Time.HOUR_S;
    private static final double NIGHT_MOST_S = 16 * Time.HOUR_S;
    private static final double EVENING_S = 17 * Time.HOUR_S;
    private static final double MORNING_S = 11 * Time.HOUR_S;

    private static final double L_PER_M3 = 1000;

    private final Scenario scenario;
    private final List<Fit.Judged> judged;
    private final List<Fit.Oddity> found = new ArrayList<>();

    private final Map<VesselId, Double> dryFromS = new HashMap<>();

    private Oddities(Scenario scenario, List<Fit.Judged> judged) {
        this.scenario = scenario;
        this.judged = judged;
    }

    /**
     * Names them.
     *
     * @param events of the run as stated, with the deeds of the log
     */
    static List<Fit.Oddity> of(Scenario scenario, List<Fit.Judged> judged, List<Event> events) {
        Oddities oddities = new Oddities(scenario, judged);
        events.forEach(oddities::lookForRefills);
        for (int i = 0; i < judged.size(); i++) {
            oddities.look(i);
        }
        return oddities.found;
    }

    /** A vessel that would be dry from some day of the log on, for nobody wrote a refill down. */
    private void lookForRefills(Event event) {
        VesselId where = event.vessel();
        boolean isDry =
                event.kind() == Event.Kind.OUTLET_UNCOVERED
                        || event.kind() == Event.Kind.DRIED_OUT && held(where).isEmpty();
        if (!isDry
                || dryFromS.containsKey(where)
                || scenario.log().entries().stream()
                        .anyMatch(entry -> tellsOf(where, entry) && entry.atS() >= event.atS())) {
            return;
        }
        judged.stream()
                .filter(one -> one.reading().atS() > event.atS() && hangsOn(one, where))
                .findFirst()
                .ifPresent(
                        one -> {
                            dryFromS.put(where, event.atS());
                            add(Fit.Oddity.Kind.NO_REFILL, one, event.atS(), 0);
                        });
    }

    /** Whether what stands in a vessel is known again by an entry. */
    static boolean tellsOf(VesselId where, LogEntry entry) {
        return entry instanceof LogEntry.Reading reading
                ? reading.where().equals(where)
                        && reading.counts()
                        && reading.what() == LogEntry.Quantity.LEVEL
                : entry instanceof LogEntry.Deed deed && deed.where().equals(where);
    }

    private boolean hangsOn(Fit.Judged one, VesselId where) {
        return one.reading().where().equals(where)
                || where.kind() == VesselId.Kind.RESERVOIR
                        && scenario.tray(one.reading().where())
                                .filter(tray -> tray.isFedBy(where.name()))
                                .isPresent();
    }

    private void look(int i) {
        Fit.Judged one = judged.get(i);
        boolean isOfDry =
                dryFromS.entrySet().stream()
                        .anyMatch(
                                dry ->
                                        one.reading().atS() > dry.getValue()
                                                && hangsOn(one, dry.getKey()));
        if (isOfDry || Double.isNaN(one.after())) {
            return;
        }
        switch (one.reading().what()) {
            case LEVEL -> {
                Optional<Tray> held = held(one.reading().where());
                if (held.isPresent()) {
                    lookAtHeld(i);
                } else {
                    lookAtLevel(i);
                }
            }
            case EC -> lookAtEc(i);
            default -> {
                if (Math.abs(one.residual()) > FAR) {
                    add(Fit.Oddity.Kind.SLIP, one, one.reading().atS(), off(one));
                }
            }
        }
    }

    private void add(Fit.Oddity.Kind kind, Fit.Judged one, double sinceS, double amount) {
        found.add(new Fit.Oddity(kind, one.reading(), sinceS, amount));
    }

    private static double off(Fit.Judged one) {
        return Math.abs(one.reading().value() - one.after());
    }

    private Optional<Tray> held(VesselId where) {
        return scenario.tray(where).filter(t -> t.filling() instanceof Filling.ByValve);
    }

    private Optional<Fit.Judged> before(int i) {
        LogEntry.Reading reading = judged.get(i).reading();
        for (int j = i - 1; j >= 0; j--) {
            LogEntry.Reading earlier = judged.get(j).reading();
            if (earlier.where().equals(reading.where()) && earlier.what() == reading.what()) {
                return Optional.of(judged.get(j));
            }
        }
        return Optional.empty();
    }

    private Optional<Fit.Judged> after(int i) {
        LogEntry.Reading reading = judged.get(i).reading();
        for (int j = i + 1; j < judged.size(); j++) {
            LogEntry.Reading later = judged.get(j).reading();
            if (later.where().equals(reading.where()) && later.what() == reading.what()) {
                return Optional.of(judged.get(j));
            }
        }
        return Optional.empty();
    }

    private void lookAtLevel(int i) {
        Fit.Judged one = judged.get(i);
        double lessM = one.after() - one.reading().value();
        double sinceS = Believed.knownFromS(scenario, one.reading());
        double litres =
                L_PER_M3 * Math.abs(volume(one, one.after()) - volume(one, one.reading().value()));
        // One that is far off and whose next is as far off the other way was read wrongly.
        boolean turnsBack =
                after(i).filter(
                                next ->
                                        Math.abs(next.residual()) > FAR
                                                && next.residual() * one.residual() < 0)
                        .isPresent();
        if (Math.abs(one.residual()) > FAR && Math.abs(lessM) > LEVEL_M) {
            boolean turnedBack =
                    before(i)
                            .filter(
                                    last ->
                                            Math.abs(last.residual()) > FAR
                                                    && last.residual() * one.residual() < 0)
                            .isPresent();
            if (turnsBack) {
                add(Fit.Oddity.Kind.SLIP, one, sinceS, Math.abs(lessM));
            } else if (!turnedBack) {
                add(fellOrRose(one, lessM), one, sinceS, litres);
            }
            return;
        }
        double readS = before(i).map(b -> b.reading().atS()).orElse(0.0);
        if (isNight(readS, one.reading().atS()) && lessM > NIGHT_M) {
            add(Fit.Oddity.Kind.NIGHT_LOSS, one, readS, litres);
        }
    }

    private Fit.Oddity.Kind fellOrRose(Fit.Judged one, double lessM) {
        if (lessM < 0) {
            return Fit.Oddity.Kind.LEVEL_ROSE;
        }
        return Believed.isOfStart(scenario, one.reading())
                ? Fit.Oddity.Kind.BELOW_START
                : Fit.Oddity.Kind.LEVEL_FELL;
    }

    private static boolean isNight(double fromS, double toS) {
        return toS - fromS >= NIGHT_LEAST_S
                && toS - fromS <= NIGHT_MOST_S
                && fromS % Time.DAY_S >= EVENING_S
                && toS % Time.DAY_S <= MORNING_S;
    }

    private double volume(Fit.Judged one, double levelM) {
        VesselId where = one.reading().where();
        Shape shape =
                scenario.tray(where)
                        .map(Tray::shape)
                        .orElseGet(() -> scenario.reservoir(where).orElseThrow().shape());
        return shape.volumeM3(Math.max(0, Math.min(shape.depthM(), levelM)));
    }

    private void lookAtHeld(int i) {
        Fit.Judged one = judged.get(i);
        double higherM = one.reading().value() - one.after();
        Optional<Fit.Judged> last = before(i);
        boolean again =
                last.filter(
                                b ->
                                        Math.abs(b.residual()) > AGAIN
                                                && b.residual() * one.residual() > 0)
                        .isPresent();
        boolean isFar = Math.abs(one.residual()) > FAR && Math.abs(higherM) > LEVEL_M;
        if (isFar && !again && after(i).isPresent()) {
            // The next says whether it stays so.
            if (Math.abs(after(i).get().residual()) < AGAIN) {
                add(Fit.Oddity.Kind.SLIP, one, one.reading().atS(), Math.abs(higherM));
            }
            return;
        }
        if (isFar && !again) {
            add(
                    higherM > 0 ? Fit.Oddity.Kind.VALVE_HIGH : Fit.Oddity.Kind.VALVE_LOW,
                    one,
                    one.reading().atS(),
                    Math.abs(higherM));
            return;
        }
        if (again && Math.abs(one.residual()) > AGAIN && Math.abs(higherM) > HELD_M) {
            add(
                    higherM > 0 ? Fit.Oddity.Kind.VALVE_HIGH : Fit.Oddity.Kind.VALVE_LOW,
                    one,
                    last.get().reading().atS(),
                    Math.abs(higherM));
        }
    }

    private void lookAtEc(int i) {
        Fit.Judged one = judged.get(i);
        double sinceS = before(i).map(b -> b.reading().atS()).orElse(0.0);
        if (Math.abs(one.residual()) <= FAR) {
            return;
        }
        boolean comesBack = after(i).filter(next -> Math.abs(next.residual()) < 1).isPresent();
        if (comesBack) {
            add(Fit.Oddity.Kind.SLIP, one, sinceS, off(one));
        } else {
            add(
                    one.residual() < 0 ? Fit.Oddity.Kind.THINNED : Fit.Oddity.Kind.THICKENED,
                    one,
                    sinceS,
                    off(one));
        }
    }
}
