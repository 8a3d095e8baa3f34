package tideless.study;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.Simulation;
import tideless.sim.Surroundings;

/**
 * The readings of a log that something is learned from, and what a rig would have read in their
 * place.
 */
final class LoggedReadings {
    /** Starts of the search. */
    private static final int STARTS = 2;

    /** The search ends where it moves less, in standard deviations of the doubt before. */
    private static final double STAYS = 0.01;

    private final Scenario scenario;
    private final List<LogEntry.Reading> believed;
    private final Workers workers;
    private final Scenario coarse;
    private final Scenario logged;
    private final Surroundings shared;
    private final int[] place; // of each believed reading among those of the log
    private final double[] value;
    private final double[] stated;
    private final List<Event> lived;
    private final double[] wanders; // share of the days' wandering left where several crops drink
    private double[] deviation;

    /**
     * Runs the rig as stated.
     *
     * @param believed those of its log that something is learned from, at least one
     */
    LoggedReadings(Scenario scenario, List<LogEntry.Reading> believed, Workers workers) {
        this.scenario = scenario;
        this.believed = believed;
        this.workers = workers;
        coarse = Ensemble.atEnsembleStep(scenario);
        logged = coarse.withDays((int) (scenario.log().lastS() / Time.DAY_S) + 1);
        shared = Surroundings.forSeasons(logged);
        List<LogEntry.Reading> all = scenario.log().readings();
        place = believed.stream().mapToInt(all::indexOf).toArray();
        value = believed.stream().mapToDouble(LogEntry.Reading::value).toArray();
        FitSpace space = FitSpace.of(coarse);
        double[] asStated = new double[space.size()];
        Season before = season(space.at(asStated).applied(logged), space, asStated);
        wanders = wanders(before);
        stated = read(before);
        lived = before.events(); // before any deviation
        judgeAbout(stated);
    }

    Scenario scenario() {
        return scenario;
    }

    /** The same at the step of ensembles. */
    Scenario coarse() {
        return coarse;
    }

    /** The same, no longer than its log. */
    Scenario logged() {
        return logged;
    }

    Workers workers() {
        return workers;
    }

    List<LogEntry.Reading> believed() {
        return believed;
    }

    /** Forecasts as stated. */
    double[] stated() {
        return stated;
    }

    /** Events of the run as stated, up to the log's end. */
    List<Event> lived() {
        return lived;
    }

    /** Standard deviations about their forecasts. */
    double[] deviation() {
        return deviation;
    }

    /** Takes the readings to lie about this forecast from now on. */
    void judgeAbout(double[] foretold) {
        deviation = deviations(foretold);
    }

    long countOf(VesselId where) {
        return believed.stream().filter(r -> r.where().equals(where)).count();
    }

    /** What readings were foretold to be where they lie so far off, in their own units. */
    double[] foretold(double[] offs) {
        double[] foretold = new double[offs.length];
        for (int i = 0; i < foretold.length; i++) {
            foretold[i] = value[i] - deviation[i] * offs[i];
        }
        return foretold;
    }

    /** Readings less a forecast, in standard deviations. */
    double[] offs(double[] foretold) {
        double[] off = new double[foretold.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = (value[i] - foretold[i]) / deviation[i];
        }
        return off;
    }

    /** The run of a rig up to the log's end, its weeks as thirsty as at a point. */
    Season season(Scenario rig, FitSpace space, double[] point) {
        return Simulation.season(rig, shared.around(rig), space.departures(point));
    }

    /** Several crops that drink from one vessel seldom all have a thirsty day. */
    private double[] wanders(Season season) {
        return believed.stream().mapToDouble(r -> wanders(r.where(), season)).toArray();
    }

    private double wanders(VesselId where, Season season) {
        Map<String, Double> drunk = new HashMap<>();
        double all = 0;
        for (int i = 0; i < scenario.trays().size(); i++) {
            Tray tray = scenario.trays().get(i);
            if (tray.isFedBy(where.name()) || tray.id().equals(where)) {
                double m3 = season.trays().get(i).drunkM3();
                drunk.merge(tray.planting().cropName(), m3, Double::sum);
                all += m3;
            }
        }
        double square = 0;
        for (double m3 : drunk.values()) {
            square += m3 * m3;
        }
        return all > 0 ? Math.sqrt(square) / all : 1;
    }

    /** Standard deviations about a forecast, in the readings' own units. */
    double[] deviations(double[] foretold) {
        double[] of = new double[foretold.length];
        for (int i = 0; i < of.length; i++) {
            double about = Double.isNaN(foretold[i]) ? value[i] : foretold[i];
            of[i] =
                    Untold.isBefore(scenario, lived, believed.get(i))
                            ? Believed.anything(scenario, believed.get(i))
                            : Believed.deviation(scenario, believed.get(i), about, wanders[i])
                                    .orElseThrow();
        }
        return of;
    }

    /** Forecasts of the believed readings at points of a space. */
    double[][] forecasts(FitSpace space, double[][] points) throws InterruptedException {
        return workers.each(
                        points.length,
                        p ->
                                read(
                                        space,
                                        points[p],
                                        correction ->
                                                season(
                                                        correction.applied(logged),
                                                        space,
                                                        points[p])))
                .toArray(double[][]::new);
    }

    /**
     * Forecasts of the believed readings. Each level of a reservoir is foretold from the one before
     * it: up to a leak's beginning it reads as of a tight one, from there on as of one that always
     * leaked.
     */
    double[] read(FitSpace space, double[] point, Function<Correction, Season> season) {
        double[] read = read(season.apply(space.at(point)));
        if (space.leaksFromS() > 0) {
            double[] tight = read(season.apply(space.tightAt(point)));
            for (int i = 0; i < read.length; i++) {
                read[i] = believed.get(i).atS() > space.leaksFromS() ? read[i] : tight[i];
            }
        }
        for (int i = 0; i < read.length; i++) {
            if (believed.get(i).what() == LogEntry.Quantity.POURED) {
                read[i] *= space.litresTimes(point, believed.get(i).where());
            }
        }
        return read;
    }

    private double[] read(Season season) {
        return Arrays.stream(place).mapToDouble(season.read()::get).toArray();
    }

    /** What they say of the unknowns of a space. */
    Posterior posterior(FitSpace space, Posterior.Start start) throws InterruptedException {
        return Posterior.of(fitting(space), value, deviation, List.of(start), STAYS);
    }

    /**
     * The same, from nothing: a search that is rough tells about where they lie, and one from there
     * what they lie about.
     */
    Posterior posterior(FitSpace space) throws InterruptedException {
        Posterior rough =
                Posterior.roughly(
                        fitting(space),
                        value,
                        deviation,
                        Posterior.starts(space.size(), STARTS),
                        STAYS);
        double[][] slope = rough.slope(deviation);
        judgeAbout(at(space, rough.mode()));
        return posterior(space, new Posterior.Start(rough.mode(), Optional.of(slope)));
    }

    private Posterior.Forecasts fitting(FitSpace space) {
        return points -> {
            double[][] foretold = forecasts(space, points);
            for (double[] of : foretold) {
                for (int i = 0; i < of.length; i++) {
                    // What cannot be foretold (a dry tray's EC) fits badly.
                    of[i] = Double.isNaN(of[i]) ? value[i] + 3 * deviation[i] : of[i];
                }
            }
            return foretold;
        };
    }

    /** Forecasts of the believed readings at a point. */
    double[] at(FitSpace space, double[] point) throws InterruptedException {
        return forecasts(space, new double[][] {point})[0];
    }
}
