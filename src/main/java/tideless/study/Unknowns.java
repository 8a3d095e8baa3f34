package tideless.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.crop.ThirstDoubt;
import tideless.rig.Climate;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.HourlyWeather;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Departures;

/**
 * All that nobody knows of a rig before it runs, and the rigs that follow from it. Trays of one
 * crop share what is unknown of the crop; lamps, gaps and mixing are the work of one hand and
 * shared by the rig.
 *
 * <p>The doubt of a stand's thirst goes with its light, day by day ({@link
 * tideless.crop.ThirstDoubt#besideLeaf}): more under lamps alone. A young stand is less known by
 * its leaf, which is drawn beside. What two models of thirst differ by is part of the doubt. A
 * thirst that was measured keeps the doubt of a fitted one. Measured inside air is taken as it was;
 * a season's weather, whose next year is another, gets a warmth and a sun of its own.
 */
final class Unknowns {
    /** Persistent deviation of the air, K; assumed. */
    static final double WARMTH_SD_K = 1;

    /** Of its relative humidity; a cheap hygrometer; assumed. */
    static final double HUMIDITY_SD = 0.05;

    /** Of light: a lux meter, its place and the lamp's age; assumed. */
    static final double LIGHT_SD = 0.10;

    /** Of mixing by jug and measuring cup; assumed. */
    static final double FEED_SD = 0.05;

    /** Of an EC meter that is calibrated now and then; assumed. */
    static final double METER_SD = 0.03;

    /** Of a float set by a ruler, m; assumed. */
    static final double VALVE_SD_M = 0.002;

    /** Of the gaps around cups, stated by eye; assumed. */
    static final double GAPS_SD = 0.3;

    /** Of a measured thirst that another season repeats: as after a fit; assumed. */
    private static final ThirstDoubt MEASURED = new ThirstDoubt(0.12, 0.13, 0, 0.12);

    /** Chance that a visit does not take place; assumed. */
    static final double MISSED_CHANCE = 0.04;

    private final Scenario scenario;
    private final List<Unknown> unknowns;
    private final boolean afterLog; // of stands whose thirst was read up to the log's end
    private final Map<String, Map<Unknown.Kind, Plausible>> ranges = new HashMap<>();

    private Unknowns(Scenario scenario, List<Unknown> unknowns, boolean afterLog) {
        this.scenario = scenario;
        this.afterLog = afterLog;
        this.unknowns = List.copyOf(unknowns);
        for (Planting planting : scenario.plantings()) {
            if (planting instanceof Planting.OfCrop crop) {
                ranges.put(crop.cropName(), rangesOf(crop.traits()));
            }
        }
    }

    private static Map<Unknown.Kind, Plausible> rangesOf(CropTraits traits) {
        return Map.of(
                Unknown.Kind.GROWTH, Plausible.of(traits, "growth.light_use"),
                Unknown.Kind.LEAF, Plausible.of(traits, "growth.leaf_area"),
                Unknown.Kind.CONTENTS, Plausible.of(traits, "nutrition.leaf.nitrogen"),
                Unknown.Kind.ROOTS, Plausible.of(traits, "roots.elongation"));
    }

    /** Those of a scenario, in an order of their own. */
    public static Unknowns of(Scenario scenario) {
        List<Unknown> list = new ArrayList<>();
        for (Planting planting : scenario.plantings()) {
            Unknown thirst = new Unknown(Unknown.Kind.THIRST, planting.cropName());
            if (list.contains(thirst)) {
                continue;
            }
            list.add(thirst);
            if (planting instanceof Planting.OfCrop) {
                list.add(new Unknown(Unknown.Kind.GROWTH, thirst.of()));
                list.add(new Unknown(Unknown.Kind.LEAF, thirst.of()));
                list.add(new Unknown(Unknown.Kind.CONTENTS, thirst.of()));
                list.add(new Unknown(Unknown.Kind.ROOTS, thirst.of()));
            }
        }
        list.add(new Unknown(Unknown.Kind.DAYS, ""));
        if (!(scenario.climate() instanceof Climate.Inside)) {
            list.add(new Unknown(Unknown.Kind.WARMTH, ""));
        }
        if (scenario.climate() instanceof Climate.Room) {
            list.add(new Unknown(Unknown.Kind.HUMIDITY, ""));
        }
        list.add(new Unknown(Unknown.Kind.LIGHT, ""));
        list.add(new Unknown(Unknown.Kind.FEED, ""));
        list.add(new Unknown(Unknown.Kind.METER, ""));
        for (Tray tray : scenario.trays()) {
            if (tray.filling() instanceof Filling.ByValve) {
                list.add(new Unknown(Unknown.Kind.VALVE, tray.name()));
            }
        }
        list.add(new Unknown(Unknown.Kind.GAPS, ""));
        if (scenario.climate() instanceof Climate.Weather weather
                && !weather.weather().otherYears().isEmpty()) {
            list.add(new Unknown(Unknown.Kind.YEAR, ""));
        }
        list.add(new Unknown(Unknown.Kind.VISITS, ""));
        return new Unknowns(scenario, list, false);
    }

    /** The same with all but some kinds as stated: no days of their own, no visit missed. */
    public Unknowns only(Set<Unknown.Kind> kinds) {
        return new Unknowns(
                scenario,
                unknowns.stream().filter(u -> kinds.contains(u.kind())).toList(),
                afterLog);
    }

    /** The same of stands whose thirst was read up to the log's end, and wanders on from there. */
    public Unknowns afterLog() {
        return new Unknowns(scenario, unknowns, true);
    }

    /** What is unknown; a member's quantiles stand in this order. */
    public List<Unknown> list() {
        return unknowns;
    }

    /** Quantiles of the unknowns for a number of members: evenly spread, the same for one seed. */
    public double[][] quantiles(int members, long seed) {
        return UnitSample.of(members, unknowns.size(), seed);
    }

    /**
     * The rig of a point.
     *
     * @param quantile of each unknown, in (0, 1); one half is the rig as stated, but for days and
     *     visits, for which it is a seed
     * @throws IllegalArgumentException for another number of quantiles
     */
    public Member member(double[] quantile) {
        if (quantile.length != unknowns.size()) {
            throw new IllegalArgumentException(
                    "%s unknowns, but %s quantiles".formatted(unknowns.size(), quantile.length));
        }
        Map<Unknown, Double> at = new HashMap<>();
        for (int i = 0; i < quantile.length; i++) {
            at.put(unknowns.get(i), quantile[i]);
        }
        return new Draw(at).member();
    }

    /** One member in the making. */
    private final class Draw {
        private final Map<Unknown, Double> at;

        Draw(Map<Unknown, Double> at) {
            this.at = at;
        }

        private boolean isKnown(Unknown.Kind kind) {
            return !at.containsKey(new Unknown(kind, ""));
        }

        private double quantile(Unknown.Kind kind, String of) {
            return at.getOrDefault(new Unknown(kind, of), 0.5);
        }

        private double deviate(Unknown.Kind kind) {
            return deviate(kind, "");
        }

        /** In standard deviations of the doubt before readings, of which they leave a share. */
        private double deviate(Unknown.Kind kind, String of) {
            return left(kind, of) * DemandDoubt.deviate(quantile(kind, of));
        }

        /** What readings told of a crop's thirst they told of the light and the air it drank by. */
        private double left(Unknown.Kind kind, String of) {
            Correction told = scenario.correction();
            return switch (kind) {
                case THIRST, LEAF -> told.left(Correction.THIRST, of);
                case GROWTH -> told.left(Correction.GROWTH, of);
                case CONTENTS -> told.left(Correction.UPTAKE, of);
                case FEED -> told.left(Correction.FEED, "");
                case METER -> told.left(Correction.METER, "");
                case GAPS -> told.left(Correction.GAPS, "");
                case VALVE -> told.left(Correction.VALVE, of);
                case HUMIDITY, LIGHT -> leftOfAllThirst();
                // Warmth also ripens, of which a log of water says nothing.
                case WARMTH, ROOTS, DAYS, YEAR, VISITS -> 1;
            };
        }

        private double leftOfAllThirst() {
            double most = 0;
            for (Tray tray : scenario.trays()) {
                most =
                        Math.max(
                                most,
                                scenario.correction()
                                        .left(Correction.THIRST, tray.planting().cropName()));
            }
            return most;
        }

        private double factor(Unknown.Kind kind, double sd) {
            return FastMath.exp(sd * deviate(kind));
        }

        private SplittableRandom random(Unknown.Kind kind) {
            return new SplittableRandom(Double.doubleToLongBits(quantile(kind, "")));
        }

        Member member() {
            double gaps = factor(Unknown.Kind.GAPS, GAPS_SD);
            double light = factor(Unknown.Kind.LIGHT, LIGHT_SD);
            Map<String, CropTraits> crops = new HashMap<>();
            List<Tray> trays = new ArrayList<>();
            for (Tray stated : scenario.trays()) {
                Tray tray = stated.withCrops(crop -> grown(crop, crops));
                trays.add(
                        tray.withFilling(filling(tray))
                                .withLamp(tray.lamp().times(light))
                                .withOpenAreaM2(gaps * tray.openAreaM2()));
            }
            double strength = factor(Unknown.Kind.FEED, FEED_SD);
            return new Member(
                    scenario.withTrays(trays)
                            .withFeeds(feed -> feed.times(strength))
                            .withClimate(climate(light)),
                    new Departures(
                            stands(), thirst(), missed(), factor(Unknown.Kind.METER, METER_SD)));
        }

        private Filling filling(Tray tray) {
            if (!(tray.filling() instanceof Filling.ByValve valve)) {
                return tray.filling();
            }
            double shiftM = VALVE_SD_M * deviate(Unknown.Kind.VALVE, tray.name());
            return valve.shifted(shiftM, tray.overflowM());
        }

        private Planting.OfCrop grown(Planting.OfCrop crop, Map<String, CropTraits> crops) {
            return crop.withTraits(
                    crops.computeIfAbsent(crop.cropName(), name -> grown(crop.traits())));
        }

        private CropTraits grown(CropTraits traits) {
            return traits.times(
                    share(traits, Unknown.Kind.GROWTH),
                    share(traits, Unknown.Kind.LEAF),
                    share(traits, Unknown.Kind.CONTENTS),
                    share(traits, Unknown.Kind.ROOTS));
        }

        private double share(CropTraits traits, Unknown.Kind kind) {
            return ranges.get(traits.name()).get(kind).factorAt(deviate(kind, traits.name()));
        }

        private Climate climate(double light) {
            Climate climate = scenario.climate();
            double warmerK = WARMTH_SD_K * deviate(Unknown.Kind.WARMTH);
            if (climate instanceof Climate.Room room) {
                return room.shifted(warmerK, HUMIDITY_SD * deviate(Unknown.Kind.HUMIDITY))
                        .withWindow(room.window().times(light));
            }
            if (climate instanceof Climate.Weather weather) {
                return weather.withWeather(shifted(year(weather.weather()), warmerK, light));
            }
            return climate;
        }

        /** One of the file's years, each as likely; that of the scenario stands in the middle. */
        private HourlyWeather year(HourlyWeather own) {
            List<HourlyWeather> years = new ArrayList<>(own.otherYears());
            years.add((years.size() + 1) / 2, own);
            return years.get((int) (quantile(Unknown.Kind.YEAR, "") * years.size()));
        }

        private HourlyWeather shifted(HourlyWeather weather, double warmerK, double light) {
            return weather.shifted(warmerK, light, 24 * scenario.days() + 1);
        }

        /** A measured thirst departs by its days alone. */
        private double[] stands() {
            return scenario.plantings().stream()
                    .mapToDouble(
                            planting ->
                                    planting instanceof Planting.OfCrop crop
                                            ? deviate(Unknown.Kind.THIRST, crop.cropName())
                                            : 0)
                    .toArray();
        }

        private double[][] thirst() {
            SplittableRandom random = random(Unknown.Kind.DAYS);
            Map<String, double[]> byCrop = new HashMap<>();
            List<Planting> plantings = scenario.plantings();
            double[][] thirst = new double[plantings.size()][];
            for (int i = 0; i < thirst.length; i++) {
                Planting planting = plantings.get(i);
                thirst[i] = byCrop.get(planting.cropName());
                if (thirst[i] == null) {
                    thirst[i] = thirst(planting, random);
                    byCrop.put(planting.cropName(), thirst[i]);
                }
            }
            return thirst;
        }

        private double[] thirst(Planting planting, SplittableRandom random) {
            String crop = planting.cropName();
            DemandDoubt doubt = doubt(planting, isKnown(Unknown.Kind.DAYS));
            double quantile = quantile(Unknown.Kind.THIRST, crop);
            boolean isRead = afterLog || scenario.correction().left(Correction.THIRST, crop) < 1;
            return isRead && !isKnown(Unknown.Kind.DAYS)
                    ? doubt.factorsAfter(
                            scenario.days(), quantile, random, LoggedWeeks.lastWeek(scenario.log()))
                    : doubt.factors(scenario.days(), quantile, random);
        }

        private boolean[] missed() {
            SplittableRandom random = random(Unknown.Kind.VISITS);
            boolean[] missed = new boolean[scenario.days()];
            if (isKnown(Unknown.Kind.VISITS)) {
                return missed;
            }
            for (int day = 0; day < missed.length; day++) {
                missed[day] = random.nextDouble() < MISSED_CHANCE;
            }
            return missed;
        }
    }

    /**
     * Of days and weeks; of a measured thirst also of its stand, which no leaf makes more known.
     */
    private static DemandDoubt doubt(Planting planting, boolean daysAreKnown) {
        ThirstDoubt doubt = MEASURED;
        double stand = MEASURED.stand();
        if (planting instanceof Planting.OfCrop crop) {
            doubt = ThirstDoubt.of(crop.traits(), 1, 1);
            stand = 0;
        }
        return daysAreKnown
                ? new DemandDoubt(stand, 0, 0, 0)
                : new DemandDoubt(stand, doubt.week(), ThirstDoubt.WEEK_MEMORY, doubt.day());
    }
}
