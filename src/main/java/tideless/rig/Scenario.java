package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Everything the user said about one crop on one rig, checked and in SI units.
 *
 * <p>Times inside a run are seconds since {@link #start()} at 00:00 of the rig's own clock.
 *
 * @param title what the user calls it
 * @param start the day the run begins, at 00:00
 * @param days length of the run, whole days
 * @param place where it stands
 * @param climate the air around the plants, and the sun if there is any
 * @param feed what the grower pours: the solution the reservoirs and hand fillings are made up with
 * @param ownFeeds of reservoirs, and of trays that no valve fills, that get another; by vessel
 * @param sourceWater the water the feed is made of, used alone when a visit tops up with water
 * @param reservoirs at least zero; every valve tray names one of them
 * @param trays at least one
 * @param visits when somebody looks, and what that person does
 * @param numerics numerical choices
 * @param digest SHA-256 of the scenario file and the files it names, lower-case hexadecimal
 * @param log what was read and done so far
 * @param correction what readings say is otherwise than stated; all but thirst, meter and leaks
 *     stands in the other components already
 */
@RecordBuilder
public record Scenario(
        String title,
        LocalDate start,
        int days,
        Place place,
        Climate climate,
        Liquid feed,
        Map<VesselId, Liquid> ownFeeds,
        Liquid sourceWater,
        List<Reservoir> reservoirs,
        List<Tray> trays,
        Visits visits,
        Numerics numerics,
        String digest,
        Log log,
        Correction correction)
        implements ScenarioBuilder.With {

    public Scenario {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(climate, "climate");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(sourceWater, "sourceWater");
        Objects.requireNonNull(visits, "visits");
        Objects.requireNonNull(numerics, "numerics");
        Objects.requireNonNull(digest, "digest");
        Objects.requireNonNull(log, "log");
        Objects.requireNonNull(correction, "correction");
        ownFeeds = Collections.unmodifiableMap(new LinkedHashMap<>(ownFeeds));
        reservoirs = List.copyOf(reservoirs);
        trays = List.copyOf(trays);
        if (days < 1 || days > 1100) {
            throw new IllegalArgumentException("days must lie in 1 to 1100, was " + days);
        }
        if (trays.isEmpty()) {
            throw new IllegalArgumentException("a scenario needs a tray");
        }
    }

    /** Days from the start of the run to a moment, by the minute. */
    public double dayOf(LocalDateTime at) {
        return Duration.between(start.atStartOfDay(), at).toMinutes() / (24 * 60.0);
    }

    /** The last day of the run. */
    public LocalDate lastDay() {
        return start.plusDays(days - 1L);
    }

    /** The first day that no log tells of; without a log that of the start. */
    public LocalDate firstOpenDay() {
        return start.plusDays(log.lastDay() + 1L);
    }

    /**
     * The same from its start on without what was logged, which is of the rig as it is: another
     * size, feed or design would have been read and done otherwise. What the log taught stays.
     */
    public Scenario anew() {
        return withLog(Log.NONE);
    }

    /** The same with another feed, in the trays too that start filled with it. */
    @Override
    public Scenario withFeed(Liquid other) {
        List<Tray> filled =
                trays.stream()
                        .map(
                                t ->
                                        t.startLiquid().equals(feed) && feedOf(t).equals(feed)
                                                ? t.withStartLiquid(other)
                                                : t)
                        .toList();
        return ScenarioBuilder.With.super.withFeed(other).withTrays(filled);
    }

    /** The same with every feed changed alike. */
    public Scenario withFeeds(UnaryOperator<Liquid> change) {
        Map<VesselId, Liquid> own = new LinkedHashMap<>();
        ownFeeds.forEach((vessel, liquid) -> own.put(vessel, change.apply(liquid)));
        return withFeed(change.apply(feed)).withOwnFeeds(own);
    }

    /** The same with other feeds of some vessels, in the trays too that start filled with them. */
    @Override
    public Scenario withOwnFeeds(Map<VesselId, Liquid> own) {
        Scenario changed = ScenarioBuilder.With.super.withOwnFeeds(own);
        List<Tray> filled = new ArrayList<>();
        for (Tray tray : trays) {
            boolean fed = tray.startLiquid().equals(feedOf(tray));
            filled.add(fed ? tray.withStartLiquid(changed.feedOf(tray)) : tray);
        }
        return changed.withTrays(filled);
    }

    /** With a tray in place of the one of its name. */
    public Scenario withTray(Tray other) {
        return withTrays(trays.stream().map(t -> t.id().equals(other.id()) ? other : t).toList());
    }

    /** A tray by what it is known by; empty where there is none. */
    public Optional<Tray> tray(VesselId id) {
        return trays.stream().filter(tray -> tray.id().equals(id)).findFirst();
    }

    /** A reservoir likewise. */
    public Optional<Reservoir> reservoir(VesselId id) {
        return reservoirs.stream().filter(reservoir -> reservoir.id().equals(id)).findFirst();
    }

    /** Whether a lamp hangs over any tray. */
    public boolean hasLamps() {
        return trays.stream().anyMatch(tray -> tray.lamp().isElectric());
    }

    /** What a reservoir is filled with. */
    public Liquid feedOf(Reservoir reservoir) {
        return ownFeeds.getOrDefault(reservoir.id(), feed);
    }

    /** What a tray gets: from its reservoir, or poured in by hand. */
    public Liquid feedOf(Tray tray) {
        VesselId from =
                tray.filling() instanceof Filling.ByValve valve
                        ? VesselId.reservoir(valve.reservoir())
                        : tray.id();
        return ownFeeds.getOrDefault(from, feed);
    }

    /**
     * The place in {@link #reservoirs()} of the one a valve is fed by.
     *
     * @throws IllegalArgumentException when there is none of that name, which a reader refuses
     */
    public int reservoirOf(Filling.ByValve valve) {
        for (int i = 0; i < reservoirs.size(); i++) {
            if (reservoirs.get(i).name().equals(valve.reservoir())) {
                return i;
            }
        }
        throw new IllegalArgumentException("no reservoir is called " + valve.reservoir());
    }

    /** How many crops the trays before one have had, one after the other, all together. */
    public int plantingsBefore(int tray) {
        return trays.subList(0, tray).stream().mapToInt(Tray::plantings).sum();
    }

    /** The crops of all trays: those of one tray one after the other, tray by tray. */
    public List<Planting> plantings() {
        List<Planting> all = new ArrayList<>();
        for (Tray tray : trays) {
            all.add(tray.planting());
            tray.next().forEach(next -> all.add(next.crop()));
        }
        return all;
    }

    /**
     * What a full reservoir gives before the first of its trays gets nothing more, m3: what stands
     * above its outlet, or above the highest seat of its valves where that lies higher.
     */
    public double feedingM3(Reservoir reservoir) {
        double lowestM = reservoir.outletLevelM();
        for (Tray tray : trays) {
            if (tray.isFedBy(reservoir.name())) {
                double seatM =
                        tray.floorAboveBenchM()
                                + ((Filling.ByValve) tray.filling()).seatAboveFloorM();
                lowestM = Math.max(lowestM, seatM - reservoir.floorAboveBenchM());
            }
        }
        return reservoir.fullM3()
                - reservoir.shape().volumeM3(Math.min(lowestM, reservoir.fullLevelM()));
    }
}
