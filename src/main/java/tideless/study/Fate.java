package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.sim.Season;

/**
 * What became of one member: its harms and the dates of what was done.
 *
 * @param harms what no crop gets over, in order of time
 * @param dated every event that a forecast dates, by what it is
 * @param lowestInAbsenceM for each absence of the scenario the lowest level of a living tray, m;
 *     NaN where none lives then
 * @param freshG fresh mass of a plant of each tray at its end, g; NaN where a thirst was measured
 * @param fruitG of which fruit, g
 * @param feedM3 feed made after the start, m3
 */
record Fate(
        List<Harm> harms,
        Map<Expected.What, Dated> dated,
        double[] lowestInAbsenceM,
        double[] freshG,
        double[] fruitG,
        double feedM3) {

    /** Wilting longer than this is harm, h; what {@code result.json} promises. */
    private static final double WILT_BORNE_H = 6;

    /** Something no crop gets over. */
    record Harm(Event.Kind kind, VesselId tray, double atS) {}

    /** One event. */
    record Dated(double atS, double m3) {}

    static Fate of(Scenario scenario, Season season) {
        Map<Expected.What, Dated> dated = dated(season.events());
        double feedM3 = 0;
        for (Event event : season.events()) {
            feedM3 += Expected.DATED.contains(event.kind()) ? event.volumeM3() : 0;
        }
        double[] freshG = new double[scenario.trays().size()];
        double[] fruitG = new double[freshG.length];
        double[] endS = new double[freshG.length];
        List<Harm> harms = new ArrayList<>();
        for (int i = 0; i < freshG.length; i++) {
            Tray tray = scenario.trays().get(i);
            freshG[i] = season.trays().get(i).freshG();
            fruitG[i] = season.trays().get(i).fruitFreshG();
            endS[i] = addHarms(scenario, season, tray.id(), harms);
        }
        harms.sort((a, b) -> Double.compare(a.atS(), b.atS()));
        return new Fate(
                List.copyOf(harms), dated, lowest(scenario, season, endS), freshG, fruitG, feedM3);
    }

    /** Every event that a forecast dates, by what it is. */
    static Map<Expected.What, Dated> dated(List<Event> events) {
        Map<Expected.What, Dated> dated = new HashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        for (Event event : events) {
            if (Expected.DATED.contains(event.kind())) {
                int ordinal = seen.merge(event.kind() + event.vessel().toString(), 1, Integer::sum);
                dated.put(
                        new Expected.What(event.kind(), event.vessel(), ordinal),
                        new Dated(event.atS(), event.volumeM3()));
            }
        }
        return dated;
    }

    boolean survives() {
        return harms.isEmpty();
    }

    Optional<Harm> firstHarm() {
        return harms.stream().findFirst();
    }

    /** Adds the harms of a tray; returns when its crop left it, s. */
    private static double addHarms(
            Scenario scenario, Season season, VesselId tray, List<Harm> harms) {
        double endS = scenario.days() * Time.DAY_S;
        double wiltedS = Double.NaN;
        for (Event event : season.events()) {
            if (!event.vessel().equals(tray)) {
                continue;
            }
            switch (event.kind()) {
                case DRIED_OUT -> harms.add(new Harm(Event.Kind.DRIED_OUT, tray, event.atS()));
                case WILTED -> wiltedS = event.atS();
                case RECOVERED -> {
                    addWilt(tray, wiltedS, event.atS(), harms);
                    wiltedS = Double.NaN;
                }
                case DIED -> {
                    harms.add(new Harm(Event.Kind.DIED, tray, event.atS()));
                    addWilt(tray, wiltedS, event.atS(), harms);
                    return event.atS();
                }
                case HARVEST -> {
                    addWilt(tray, wiltedS, event.atS(), harms);
                    return event.atS();
                }
                default -> {
                    // nothing that harms
                }
            }
        }
        addWilt(tray, wiltedS, endS, harms);
        return endS;
    }

    private static void addWilt(VesselId tray, double fromS, double toS, List<Harm> harms) {
        if (toS - fromS > WILT_BORNE_H * Time.HOUR_S) { // false for NaN
            harms.add(new Harm(Event.Kind.WILTED, tray, fromS));
        }
    }

    private static double[] lowest(Scenario scenario, Season season, double[] endS) {
        List<Visits.Absence> absences = scenario.visits().absences();
        double[] lowest = new double[absences.size()];
        for (int a = 0; a < lowest.length; a++) {
            lowest[a] = Double.NaN;
            int[] days = days(scenario, absences.get(a));
            for (int i = 0; i < endS.length; i++) {
                int end = (int) Math.min(days[1], Math.ceil(endS[i] / Time.DAY_S));
                for (int day = days[0]; day < end; day++) {
                    double level = season.trays().get(i).lowestOfDayM().get(day);
                    lowest[a] = lowest[a] <= level ? lowest[a] : level;
                }
            }
        }
        return lowest;
    }

    /** First day of an absence and the one after the day on which somebody comes again. */
    static int[] days(Scenario scenario, Visits.Absence absence) {
        LocalDate next = absence.to().plusDays(1);
        LocalDate end = scenario.start().plusDays(scenario.days());
        while (next.isBefore(end) && !scenario.visits().on(next)) {
            next = next.plusDays(1);
        }
        int from = dayOf(scenario, absence.from());
        int to = dayOf(scenario, next) + 1;
        return new int[] {
            Math.max(0, Math.min(scenario.days(), from)), Math.max(0, Math.min(scenario.days(), to))
        };
    }

    private static int dayOf(Scenario scenario, LocalDate date) {
        return (int) (date.toEpochDay() - scenario.start().toEpochDay());
    }

    /** Whether nothing is harmed from the first day of an absence until somebody comes again. */
    boolean survives(Scenario scenario, Visits.Absence absence) {
        int[] days = days(scenario, absence);
        double visitS = scenario.visits().timeOfDayS();
        double toS = (days[1] - 1) * Time.DAY_S + visitS;
        return harms.stream().noneMatch(h -> h.atS() >= days[0] * Time.DAY_S && h.atS() <= toS);
    }
}
