package tideless.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.util.FastMath;
import tideless.physics.Time;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Departures;
import tideless.sim.Event;
import tideless.sim.GrowthLost;
import tideless.sim.Season;
import tideless.sim.Stress;
import tideless.sim.TraySeason;

/**
 * What became of one member: its harms and the dates of what was done.
 *
 * @param harms what no crop gets over, in order of time
 * @param dated every event that a forecast dates, by what it is
 * @param lowestInAbsenceM for each absence of the scenario the lowest level of a living tray, m;
 *     NaN where none lives then
 * @param freshG fresh mass of a plant of each crop at its end, with the leaves picked from it
 *     before, g, the crops of one tray after the other; NaN where a thirst was measured, 0 of a
 *     crop that was never set out
 * @param fruitG of which fruit, g; likewise
 * @param lostFrac what salt, hunger and want of water took of it together, 0-1; likewise
 * @param feedM3 feed made after the start, m3
 * @param empties times at which a reservoir that is filled up at visits stood empty while something
 *     it feeds lived
 * @param losses crops that lose more than {@link Outlook#LOSS_BORNE_FRAC} of their harvest, told at
 *     their end
 */
record Fate(
        List<Harm> harms,
        Map<Expected.What, Dated> dated,
        double[] lowestInAbsenceM,
        double[] freshG,
        double[] fruitG,
        double[] lostFrac,
        double feedM3,
        List<Empty> empties,
        List<Harm> losses) {

    /** Wilting longer than this is harm, h; what {@code result.json} promises. */
    private static final double WILT_BORNE_H = 6;

    /**
     * What of a root zone a larger reservoir, another feed or more visits would mend. Want of
     * oxygen and warmth are the price of still water and of a place, and show in the yield.
     */
    private static final List<Stress> MENDABLE = List.of(Stress.SALT, Stress.WATER, Stress.HUNGER);

    /** Visits over which a missed one is felt. */
    private static final int FELT_FOR = 2;

    /**
     * Something no crop gets over.
     *
     * @param taken of a {@link Event.Kind#HARVEST}, what takes how much of it; else empty
     * @param by of a {@link Event.Kind#DIED}, its {@link Event#detail}; else empty
     */
    record Harm(
            Event.Kind kind, VesselId tray, double atS, Optional<Outlook.Taken> taken, String by) {
        Harm(Event.Kind kind, VesselId tray, double atS, Optional<Outlook.Taken> taken) {
            this(kind, tray, atS, taken, "");
        }

        Harm(Event.Kind kind, VesselId tray, double atS) {
            this(kind, tray, atS, Optional.empty());
        }
    }

    /**
     * A reservoir that gives nothing more until it is filled up, or to the end.
     *
     * @param isMissed whether the visit before it did not take place, or the one before that, after
     *     which it fills the trays again
     */
    record Empty(VesselId reservoir, double fromS, double toS, boolean isMissed) {}

    /** One event. */
    record Dated(double atS, double m3) {}

    static Fate of(Scenario scenario, Season season) {
        return of(scenario, season, Departures.NONE);
    }

    /**
     * @param departures of the member, whose visits may be missed
     */
    static Fate of(Scenario scenario, Season season, Departures departures) {
        Map<Expected.What, Dated> dated = dated(season.events());
        double feedM3 = 0;
        for (Event event : season.events()) {
            feedM3 += Expected.DATED.contains(event.kind()) ? event.volumeM3() : 0;
        }
        double[] freshG = new double[scenario.plantingsBefore(scenario.trays().size())];
        double[] fruitG = new double[freshG.length];
        double[] lostFrac = new double[freshG.length];
        List<List<double[]>> lives = new ArrayList<>();
        List<Harm> harms = new ArrayList<>();
        List<Harm> losses = new ArrayList<>();
        for (int i = 0; i < scenario.trays().size(); i++) {
            List<TraySeason.Yield> yields = season.trays().get(i).yields();
            for (int n = 0; n < yields.size(); n++) {
                freshG[scenario.plantingsBefore(i) + n] = yields.get(n).allG();
                fruitG[scenario.plantingsBefore(i) + n] = yields.get(n).fruitFreshG();
                lostFrac[scenario.plantingsBefore(i) + n] =
                        yields.get(n).lost().map(Fate::lostFrac).orElse(Double.NaN);
            }
            VesselId tray = scenario.trays().get(i).id();
            lives.add(addHarms(scenario, season, tray, harms));
            addFilms(season.trays().get(i).filmFromS(), tray, lives.get(i), harms);
            addLosses(yields, tray, lives.get(i), losses);
        }
        harms.sort(Comparator.comparing(Harm::atS));
        losses.sort(Comparator.comparing(Harm::atS));
        return new Fate(
                List.copyOf(harms),
                dated,
                lowest(scenario, season, lives),
                freshG,
                fruitG,
                lostFrac,
                feedM3,
                empties(scenario, season, lives, departures),
                List.copyOf(losses));
    }

    private static void addLosses(
            List<TraySeason.Yield> yields, VesselId tray, List<double[]> lives, List<Harm> losses) {
        for (int n = 0; n < Math.min(yields.size(), lives.size()); n++) {
            double endS = lives.get(n)[1];
            yields.get(n)
                    .lost()
                    .flatMap(Fate::taken)
                    .map(t -> new Harm(Event.Kind.HARVEST, tray, endS, Optional.of(t)))
                    .ifPresent(losses::add);
        }
    }

    private static double lostFrac(GrowthLost lost) {
        return MENDABLE.stream().mapToDouble(lost::frac).reduce(0, Double::sum);
    }

    /** What took more of a harvest than is borne, and how much all that can be mended took. */
    private static Optional<Outlook.Taken> taken(GrowthLost lost) {
        double frac = lostFrac(lost);
        return frac > Outlook.LOSS_BORNE_FRAC
                ? MENDABLE.stream()
                        .max(Comparator.comparing(lost::frac))
                        .map(most -> new Outlook.Taken(most, Outlook.Taken.Of.HARVEST, frac))
                : Optional.empty();
    }

    private static List<Empty> empties(
            Scenario scenario, Season season, List<List<double[]>> lives, Departures departures) {
        List<Empty> empties = new ArrayList<>();
        double endS = scenario.days() * Time.DAY_S;
        for (Reservoir reservoir : scenario.reservoirs()) {
            if (!reservoir.refill().isAtVisits()) {
                continue;
            }
            double fromS = Double.NaN;
            for (Event event : season.events()) {
                if (!event.vessel().equals(reservoir.id())) {
                    continue;
                }
                if (event.kind() == Event.Kind.OUTLET_UNCOVERED
                        && feedsAnyAlive(scenario, reservoir, lives, event.atS())) {
                    fromS = event.atS();
                } else if (event.kind() == Event.Kind.REFILL && !Double.isNaN(fromS)) {
                    empties.add(empty(scenario, departures, reservoir.id(), fromS, event.atS()));
                    fromS = Double.NaN;
                }
            }
            if (!Double.isNaN(fromS)) {
                empties.add(empty(scenario, departures, reservoir.id(), fromS, endS));
            }
        }
        return List.copyOf(empties);
    }

    private static Empty empty(
            Scenario scenario,
            Departures departures,
            VesselId reservoir,
            double fromS,
            double toS) {
        Visits visits = scenario.visits();
        int looked = 0;
        boolean isMissed = false;
        int day = (int) FastMath.floor((fromS - visits.timeOfDayS()) / Time.DAY_S);
        for (; day >= 0 && looked < FELT_FOR; day--) {
            if (visits.on(scenario.start().plusDays(day))) {
                looked++;
                isMissed |= departures.isMissed(day);
            }
        }
        return new Empty(reservoir, fromS, toS, isMissed);
    }

    private static boolean feedsAnyAlive(
            Scenario scenario, Reservoir reservoir, List<List<double[]>> lives, double atS) {
        for (int i = 0; i < lives.size(); i++) {
            if (scenario.trays().get(i).isFedBy(reservoir.name())
                    && lives.get(i).stream().anyMatch(l -> l[0] <= atS && atS < l[1])) {
                return true;
            }
        }
        return false;
    }

    /** How long a reservoir stood empty, s. */
    double emptyS(VesselId reservoir) {
        return empties.stream()
                .filter(e -> e.reservoir().equals(reservoir))
                .mapToDouble(e -> e.toS() - e.fromS())
                .reduce(0, Double::sum);
    }

    /**
     * Every event that a forecast dates, by what it is; of leaves picked as they grow the first.
     */
    static Map<Expected.What, Dated> dated(List<Event> events) {
        Map<Expected.What, Dated> dated = new HashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        for (Event event : events) {
            if (Expected.DATED.contains(event.kind()) && !isOneOfMany(event, seen)) {
                int ordinal = seen.merge(event.kind() + event.vessel().toString(), 1, Integer::sum);
                dated.put(
                        new Expected.What(event.kind(), event.vessel(), ordinal),
                        new Dated(event.atS(), event.volumeM3()));
            }
        }
        return dated;
    }

    private static boolean isOneOfMany(Event event, Map<String, Integer> seen) {
        return event.kind() == Event.Kind.LEAVES_PICKED
                && (event.detail().isEmpty()
                        || seen.containsKey(event.kind() + event.vessel().toString()));
    }

    boolean survives() {
        return harms.isEmpty();
    }

    Optional<Harm> firstHarm() {
        return harms.stream().findFirst();
    }

    /** Whether no crop is lost and none loses a good part of its harvest. */
    boolean isUnharmed() {
        return harms.isEmpty() && losses.isEmpty();
    }

    /** What no crop gets over, then what it loses: the first is what is told of. */
    List<Harm> harmsAndLosses() {
        return Stream.concat(harms.stream(), losses.stream()).toList();
    }

    /** Adds the harms of a tray; returns from when to when each of its crops lived, s. */
    private static List<double[]> addHarms(
            Scenario scenario, Season season, VesselId tray, List<Harm> harms) {
        List<double[]> lives = new ArrayList<>();
        double fromS = 0; // NaN where nothing lives
        double wiltedS = Double.NaN;
        double saltedS = Double.NaN;
        Event.Kind salted = Event.Kind.SALT_WILTED; // or in want of water
        for (Event event : season.events()) {
            if (!event.vessel().equals(tray)) {
                continue;
            }
            if (event.kind() == Event.Kind.PLANTED) {
                fromS = event.atS();
            }
            if (Double.isNaN(fromS)) {
                continue;
            }
            switch (event.kind()) {
                case DRIED_OUT -> harms.add(new Harm(Event.Kind.DRIED_OUT, tray, event.atS()));
                case WILTED -> wiltedS = event.atS();
                case RECOVERED -> {
                    addWilt(Event.Kind.WILTED, tray, wiltedS, event.atS(), harms);
                    wiltedS = Double.NaN;
                }
                case SALT_WILTED -> {
                    saltedS = event.atS();
                    salted =
                            event.detail().equals(Event.DRUNK_DOWN)
                                    ? Event.Kind.WILTED
                                    : Event.Kind.SALT_WILTED;
                }
                case SALT_BORNE -> {
                    addWilt(salted, tray, saltedS, event.atS(), harms);
                    saltedS = Double.NaN;
                }
                case DIED, HARVEST -> {
                    if (event.kind() == Event.Kind.DIED) {
                        harms.add(
                                new Harm(
                                        Event.Kind.DIED,
                                        tray,
                                        event.atS(),
                                        Optional.empty(),
                                        event.detail()));
                    }
                    addWilt(Event.Kind.WILTED, tray, wiltedS, event.atS(), harms);
                    addWilt(salted, tray, saltedS, event.atS(), harms);
                    wiltedS = Double.NaN;
                    saltedS = Double.NaN;
                    lives.add(new double[] {fromS, event.atS()});
                    fromS = Double.NaN;
                }
                default -> {
                    // nothing that harms
                }
            }
        }
        if (!Double.isNaN(fromS)) {
            double endS = scenario.days() * Time.DAY_S;
            addWilt(Event.Kind.WILTED, tray, wiltedS, endS, harms);
            addWilt(salted, tray, saltedS, endS, harms);
            lives.add(new double[] {fromS, endS});
        }
        return lives;
    }

    /** A tray whose solution no longer meets its crop's thirst has dried out, as a run tells it. */
    private static void addFilms(
            List<Double> filmFromS, VesselId tray, List<double[]> lives, List<Harm> harms) {
        for (double fromS : filmFromS) {
            if (lives.stream().anyMatch(life -> life[0] <= fromS && fromS < life[1])) {
                harms.add(new Harm(Event.Kind.DRIED_OUT, tray, fromS));
            }
        }
    }

    private static void addWilt(
            Event.Kind kind, VesselId tray, double fromS, double toS, List<Harm> harms) {
        if (toS - fromS > WILT_BORNE_H * Time.HOUR_S) { // false for NaN
            harms.add(new Harm(kind, tray, fromS));
        }
    }

    private static double[] lowest(Scenario scenario, Season season, List<List<double[]>> lives) {
        List<Visits.Absence> absences = scenario.visits().absences();
        double[] lowest = new double[absences.size()];
        for (int a = 0; a < lowest.length; a++) {
            lowest[a] = Double.NaN;
            int[] days = days(scenario, absences.get(a));
            for (int i = 0; i < lives.size(); i++) {
                for (double[] life : lives.get(i)) {
                    int from = (int) Math.max(days[0], Math.floor(life[0] / Time.DAY_S));
                    int end = (int) Math.min(days[1], Math.ceil(life[1] / Time.DAY_S));
                    for (int day = from; day < end; day++) {
                        double level = season.trays().get(i).lowestOfDayM().get(day);
                        lowest[a] = lowest[a] <= level ? lowest[a] : level;
                    }
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
