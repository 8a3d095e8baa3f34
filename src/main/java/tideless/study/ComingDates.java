package tideless.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.physics.Time;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Season;
import tideless.sim.TraySeason;

/** Seasons of many rigs, and when each sees what comes next. */
final class ComingDates {
    private record What(Event.Kind kind, VesselId where) {}

    private static final double L_PER_M3 = 1000;

    private final List<Season> seasons;
    private final double fromS;
    private final List<Map<What, Double>> first = new ArrayList<>();

    /**
     * Of those.
     *
     * @param fromS what happened up to then is past, s since the start
     */
    ComingDates(List<Season> seasons, double fromS) {
        this.seasons = seasons;
        this.fromS = fromS;
        for (Season season : seasons) {
            Map<What, Double> of = new LinkedHashMap<>();
            for (Event event : season.events()) {
                if (Expected.DATED.contains(event.kind()) && event.atS() > fromS) {
                    of.putIfAbsent(new What(event.kind(), event.vessel()), event.atS());
                }
            }
            first.add(of);
        }
    }

    /** Dates of these rigs, as stated, and of those, as corrected. */
    List<Fit.Dated> dates(ComingDates those) {
        List<Fit.Dated> dates = new ArrayList<>();
        for (What what : whats(those)) {
            dates.add(new Fit.Dated(what.kind(), what.where(), atS(what), those.eachS(what)));
        }
        return dates;
    }

    /** When a vessel is filled next in the middle of these, s since the start; infinite: never. */
    double filledS(VesselId where) {
        double soonest = Double.POSITIVE_INFINITY;
        for (Event.Kind kind : Untold.FILLS) {
            soonest = Math.min(soonest, atS(new What(kind, where)).middle());
        }
        return soonest;
    }

    /** All that any of these or those sees, by when the middle of those sees it. */
    private List<What> whats(ComingDates those) {
        List<What> all = new ArrayList<>();
        for (ComingDates some : List.of(this, those)) {
            some.first.forEach(
                    of ->
                            of.keySet().stream()
                                    .filter(what -> !all.contains(what))
                                    .forEach(all::add));
        }
        all.sort(
                Comparator.comparing((What what) -> those.atS(what).middle())
                        .thenComparing(What::kind)
                        .thenComparing(what -> what.where().name()));
        return all;
    }

    private List<Double> eachS(What what) {
        return first.stream().map(of -> of.getOrDefault(what, Double.POSITIVE_INFINITY)).toList();
    }

    private Band atS(What what) {
        return Band.of(eachS(what).stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Drunk from the day on that this is of, L. */
    Band toDrinkL() {
        int from = (int) (fromS / Time.DAY_S);
        return Band.of(
                seasons.stream()
                        .mapToDouble(
                                season ->
                                        L_PER_M3
                                                * season.trays().stream()
                                                        .mapToDouble(t -> since(t, from))
                                                        .sum())
                        .toArray());
    }

    private static double since(TraySeason tray, int day) {
        List<Double> days = tray.drunkOfDayM3();
        return days.subList(Math.min(day, days.size()), days.size()).stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    /** Drunk in the whole run, L. */
    Band drunkL() {
        return Band.of(
                seasons.stream()
                        .mapToDouble(
                                season ->
                                        L_PER_M3
                                                * season.trays().stream()
                                                        .mapToDouble(TraySeason::drunkM3)
                                                        .sum())
                        .toArray());
    }
}
