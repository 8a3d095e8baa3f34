package tideless.sim;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.Tray;

/**
 * The instants a run steps to: the regular grid, every hour, and every instant at which something
 * switches, so that no lamp, dawn or visit ever falls inside a step.
 *
 * <p>Depends on the scenario's clock only, so an ensemble makes it once.
 */
final class Timeline {
    /** Step {@code i} runs from {@code instantS[i]} to {@code instantS[i + 1]}. */
    final double[] instantS;

    /** Whether somebody looks at {@code instantS[i]}. */
    final boolean[] visit;

    /** Whether step {@code i} ends on the hour. */
    final boolean[] endsHour;

    /** Whether step {@code i} ends at midnight. */
    final boolean[] endsDay;

    /**
     * Whether nothing switches at {@code instantS[i]}, which is but one of the grid: a quiet run
     * may pass it.
     */
    final boolean[] mayPass;

    final int steps;

    /**
     * @param switchesS those of the instants at which something switches, s
     * @param passes whether a quiet run may pass the others
     */
    private Timeline(double[] instantS, double[] switchesS, boolean passes, boolean[] visit) {
        this.instantS = instantS;
        this.visit = visit;
        mayPass = new boolean[instantS.length];
        for (int i = 0; i < instantS.length; i++) {
            mayPass[i] = passes && Arrays.binarySearch(switchesS, instantS[i]) < 0;
        }
        steps = instantS.length - 1;
        endsHour = new boolean[steps];
        endsDay = new boolean[steps];
        for (int i = 0; i < steps; i++) {
            endsHour[i] = instantS[i + 1] % Time.HOUR_S == 0;
            endsDay[i] = instantS[i + 1] % Time.DAY_S == 0;
        }
    }

    /** With every hour among the instants, as a trace wants it. */
    static Timeline of(Scenario scenario) {
        return of(scenario, true);
    }

    /**
     * @param everyHour whether to step to every hour too; else only where the air does, and to
     *     every midnight
     */
    static Timeline of(Scenario scenario, boolean everyHour) {
        double endS = scenario.days() * Time.DAY_S;
        DoubleStream.Builder instants = DoubleStream.builder();
        // Weather and daylight change with the hour.
        boolean hours = everyHour || scenario.climate().isHourly();
        int every = hours ? 1 : 24;
        for (int hour = 0; hour <= scenario.days() * 24; hour += every) {
            instants.add(hour * Time.HOUR_S);
        }
        for (Tray tray : scenario.trays()) {
            Lamp lamp = tray.lamp();
            if (lamp.ppfdUmolPerM2S() > 0 && lamp.onS() != lamp.offS()) {
                addDaily(instants, lamp.onS(), endS);
                addDaily(instants, lamp.offS(), endS);
            }
            for (Lamp.Level level : lamp.levels()) {
                addDaily(instants, level.fromS(), endS);
            }
        }
        if (scenario.climate() instanceof Climate.Room room && room.dayBeginS() != room.dayEndS()) {
            addDaily(instants, room.dayBeginS(), endS);
            addDaily(instants, room.dayEndS(), endS);
        }
        List<Double> visits = new ArrayList<>();
        for (int day = 0; day < scenario.days(); day++) {
            LocalDate date = scenario.start().plusDays(day);
            if (scenario.visits().on(date) || isDayOfDeeds(scenario, date)) {
                double at = day * Time.DAY_S + scenario.visits().timeOfDayS();
                visits.add(at);
                instants.add(at);
            }
        }
        for (LogEntry entry : scenario.log().entries()) {
            if (entry.atS() < endS) {
                instants.add(entry.atS());
            }
        }
        double[] switchesS = instants.build().sorted().distinct().toArray();
        double[] instantS = withGrid(switchesS, scenario.numerics().stepS(), endS);
        boolean[] visit = new boolean[instantS.length];
        for (double at : visits) {
            visit[Arrays.binarySearch(instantS, at)] = true;
        }
        boolean passes = scenario.numerics().stepS() > Time.HOUR_S;
        return new Timeline(instantS, switchesS, passes, visit);
    }

    private static double[] withGrid(double[] switchesS, double stepS, double endS) {
        DoubleStream.Builder grid = DoubleStream.builder();
        for (long i = 0; i * stepS < endS; i++) {
            grid.add(i * stepS);
        }
        return DoubleStream.concat(Arrays.stream(switchesS), grid.build())
                .sorted()
                .distinct()
                .toArray();
    }

    private static boolean isDayOfDeeds(Scenario scenario, LocalDate date) {
        for (Tray tray : scenario.trays()) {
            if (tray.filling() instanceof Filling.ByHand hand && hand.days().contains(date)) {
                return true;
            }
            if (tray.next().stream().anyMatch(next -> next.on().equals(Optional.of(date)))) {
                return true;
            }
            if (tray.filling() instanceof Filling.ByValve valve
                    && valve.moves().stream().anyMatch(move -> move.on().equals(date))) {
                return true;
            }
        }
        return false;
    }

    private static void addDaily(DoubleStream.Builder instants, double timeOfDayS, double endS) {
        for (double at = timeOfDayS; at < endS; at += Time.DAY_S) {
            instants.add(at);
        }
    }
}
