package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tideless.crop.CropTraits;
import tideless.physics.Time;
import tideless.solution.ElectricalConductivity.PpmScale;

/**
 * A first scenario out of a few answers: what was not asked is put in as what usually grows, with a
 * comment that says so.
 */
public final class Starter {
    /** Lamps go on, h after midnight. */
    private static final int ON_H = 6;

    /** And off, if it can be. */
    private static final int LATEST_OFF_H = 22;

    private static final String WEATHER =
            "a year of weather, as in scenarios/glasshouse-tomato-trough.toml: sun and warmth by the"
                    + " hour";

    private static final double UMOL_PER_MOL = 1e6;

    /** Cups of one tray begin wet by so much; usual is 1.3 cm (Kratky 2010), cm; assumed. */
    private static final double CUP_WET_CM = 1;

    /** Those of a bucket, which a lone plant drinks down faster, cm; common practice, no source. */
    private static final double BUCKET_CUP_WET_CM = 2;

    /** Cups hang no deeper than this below the rim, cm: common practice. */
    private static final double CUP_CM = 8;

    /** Middle strengths are rounded to this, mS/cm: no meter tells more. */
    private static final double STRENGTH_STEP_MS_PER_CM = 0.1;

    /**
     * A feed that may suit.
     *
     * @param recipe by its name
     * @param msPerCm EC at 25 degC, mS/cm
     */
    public record Feed(String recipe, double msPerCm) {}

    /**
     * How a rig may be tended.
     *
     * @param feed what it is fed
     * @param isChanged whether a tray out of its band is poured away and filled anew
     * @param suits whether a run with it warned of nothing, or is still to be made
     */
    public record Care(Feed feed, boolean isChanged, boolean suits) {
        /** The same, of which a run has warned. */
        public Care unsuited() {
            return new Care(feed, isChanged, false);
        }
    }

    /**
     * Feeds worth a trial for most crops, the likeliest first: both recipes with ammonium are for
     * soft water, the strengths those that leaf and fruit crops are fed.
     */
    private static final List<Feed> FEEDS =
            List.of(
                    new Feed("hoagland-2", 1.6),
                    new Feed("lettuce-water-culture", 1.6),
                    new Feed("hoagland-2", 1.8),
                    new Feed("hoagland-2", 1.4),
                    new Feed("steiner", 1.6),
                    new Feed("lettuce-water-culture", 1.3),
                    new Feed("hoagland-2", 2.0),
                    new Feed("hoagland-2", 1.0));

    /** To which the feed is brought. */
    static final double PH = 6.0;

    private static final String LEAST =
            "of those that were tried the one that warns least, and it still does";

    private final Map<StarterQuestion, String> answers;
    private final StarterStay stay;
    private final StarterSeason season;
    private final LocalDate start;
    private final Feed feed;
    private final boolean isChanged;
    private final boolean suits;
    private final List<CropTraits> crops;
    private final StarterVessel vessel;
    private final StarterLight light;
    private final int trays;
    private final List<Integer> plants;
    private final StarterFeed told;
    private final boolean us;
    private final PpmScale scale;
    private final StringBuilder text = new StringBuilder();

    private Starter(Map<StarterQuestion, String> answers, Care care, Written in) {
        feed = care.feed();
        isChanged = care.isChanged();
        suits = care.suits();
        this.answers = new EnumMap<>(answers);
        stay = stay(answers);
        start = stay.start();
        crops = stay.crops();
        vessel = StarterVessel.of(answers.get(StarterQuestion.SIZE));
        light = stay.light();
        trays = trays(answers);
        plants = plants(answers);
        told = toldFeed(answers);
        us = in.us;
        scale = in.scale;
        season = stay.season(days());
    }

    /**
     * How numbers are written.
     *
     * @param us in gallons, inches and degrees Fahrenheit
     * @param scale of a pen that shows ppm; null for mS/cm
     */
    public record Written(boolean us, PpmScale scale) {}

    /**
     * The text of a scenario.
     *
     * @param answers to all questions that are asked, as {@link StarterQuestion#read} gave them
     * @param care how it is tended
     * @param in how its numbers are written
     */
    public static String of(Map<StarterQuestion, String> answers, Care care, Written in) {
        return new Starter(answers, care, in).written();
    }

    /**
     * Feeds to be tried for a crop: those that suit most and the middle of what it is fed, and of
     * these the strengths that growers feed it before all others.
     *
     * <p>What was told of the feed stands in place of what would be tried.
     *
     * @param answers with its name, or those of several that share it
     */
    public static List<Feed> feeds(Map<StarterQuestion, String> answers) {
        List<CropTraits> crops = crops(answers);
        StarterFeed told = toldFeed(answers);
        double middle =
                crops.stream()
                        .map(CropTraits::needs)
                        .mapToDouble(needs -> 0.5 * (needs.ecLowMsPerCm() + needs.ecHighMsPerCm()))
                        .average()
                        .orElseThrow();
        double usual = Math.floor(middle / STRENGTH_STEP_MS_PER_CM + 0.5) * STRENGTH_STEP_MS_PER_CM;
        return Stream.concat(
                        FEEDS.stream(),
                        Stream.of("hoagland-2", "lettuce-water-culture", "steiner")
                                .map(recipe -> new Feed(recipe, usual)))
                .map(told::instead)
                .distinct()
                .sorted(
                        Comparator.comparing(
                                feed ->
                                        crops.stream()
                                                .filter(
                                                        crop ->
                                                                !crop.needs()
                                                                        .isUsual(feed.msPerCm()))
                                                .count()))
                .toList();
    }

    private static StarterFeed toldFeed(Map<StarterQuestion, String> answers) {
        return StarterFeed.of(answers.getOrDefault(StarterQuestion.FEED, StarterFeed.USUAL));
    }

    /** Crops as they were told, none yet for no answer; trays take them in turn. */
    static List<CropTraits> crops(Map<StarterQuestion, String> answers) {
        String told = answers.getOrDefault(StarterQuestion.CROP, "");
        return told.isEmpty() ? List.of() : Stream.of(told.split(", ")).map(Crops::named).toList();
    }

    /**
     * Whether the rig was measured in inches, or its reservoir in gallons. A bucket that is called
     * by its gallons alone is no measure: it is sold under that name where all else is metric.
     */
    public static boolean isUs(Map<StarterQuestion, String> answers) {
        String size = answers.getOrDefault(StarterQuestion.SIZE, "");
        return StarterVessel.isNamedByVolume(size)
                ? StarterVessel.isInGallons(answers.getOrDefault(StarterQuestion.RESERVOIR, ""))
                : !size.isEmpty() && StarterVessel.of(size).isUs();
    }

    /** What was taken for what the answers leave open, and what of them looks amiss. */
    public static List<String> remarks(Map<StarterQuestion, String> answers, Written in) {
        Starter starter =
                new Starter(
                        answers,
                        new Care(FEEDS.get(0), false, true),
                        in); // of that it says nothing
        List<String> remarks = new ArrayList<>();
        if (!answers.containsKey(StarterQuestion.PLANTS)) {
            remarks.add(
                    "assumed: %s, as many as have room; tell: --plants N"
                            .formatted(starter.plantsInWords()));
        }
        if (starter.vessel.isUs() && !in.us) {
            remarks.add("written in centimetres; in inches and gallons: --units us");
        }
        if (starter.vessel.shape().equals("cylinder")
                && !answers.get(StarterQuestion.SIZE).contains("bucket")) {
            remarks.add(
                    "taken as round: %s wide, %s deep; a tray has length, width and depth"
                            .formatted(
                                    starter.plainCm(starter.vessel.lengthCm()),
                                    starter.plainCm(starter.vessel.depthCm())));
        }
        if (starter.crops.size() > 1) {
            remarks.add(
                    "a tray holds one crop: the %d trays are %s"
                            .formatted(
                                    starter.trays,
                                    IntStream.range(0, starter.trays)
                                            .mapToObj(tray -> starter.crop(tray).name())
                                            .collect(Collectors.joining(", "))));
        }
        if (starter.light.isNeeded()) {
            remarks.add(
                    "assumed: light as the crop needs, %d umol/m2/s for %d h a day; measure, or tell:"
                                    .formatted(starter.neededPpfd(), (int) starter.stay.litH())
                            + " --light \"24 W 14 h\" or --light window");
        }
        if (starter.light.sky() != StarterLight.Sky.NONE) {
            remarks.add(
                    "assumed: %s gives %s mol/m2 of light a day, as in %s; measure it"
                                    .formatted(
                                            starter.light.sky().spelt(),
                                            Measure.plain(starter.season.molPerM2Day()),
                                            starter.season.words())
                            + (starter.light.sky() == StarterLight.Sky.WINDOW
                                    ? ""
                                    : ", or put in " + WEATHER));
            if (starter.light.sky().isOutside()) {
                starter.stay
                        .brightest(starter.days())
                        .map(starter::told)
                        .ifPresent(of -> remarks.add("mind: " + of));
                remarks.add(
                        "assumed: air of %s by day and %s by night, as in these days; your weather is not known"
                                .formatted(
                                        starter.temperature(starter.season.dayC())
                                                .replace("\"", ""),
                                        starter.temperature(
                                                        starter.season.dayC()
                                                                - starter.season.nightFallC())
                                                .replace("\"", "")));
            }
        }
        return remarks;
    }

    /** That the plants stand too close, as soon as that is known; or nothing. */
    public static Optional<String> crowd(Map<StarterQuestion, String> answers) {
        List<CropTraits> crops = crops(answers);
        List<Integer> plants = plants(answers);
        StarterVessel vessel = StarterVessel.of(answers.get(StarterQuestion.SIZE));
        int trays = trays(answers);
        return IntStream.range(0, crops.size())
                .mapToObj(
                        i ->
                                PlantingReader.crowd(
                                        plants.get(i),
                                        groundM2(crops.get(i), vessel, plants.get(i), trays),
                                        usualM2(crops.get(i))))
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** The last day on which the plants stand when nobody is away. */
    static LocalDate lastDay(Map<StarterQuestion, String> answers) {
        String end = answers.get(StarterQuestion.END);
        if (end != null) {
            return LocalDate.parse(end);
        }
        StarterStay stay = stay(answers);
        return stay.start().plusDays(stay.usualDays() - 1);
    }

    private static StarterStay stay(Map<StarterQuestion, String> answers) {
        return new StarterStay(
                crops(answers),
                StarterLight.of(answers.get(StarterQuestion.LIGHT)),
                LocalDate.parse(answers.get(StarterQuestion.START)));
    }

    /** The last day of a run that goes on for a week after an absence. */
    static LocalDate lastDayPast(LocalDate lastAway) {
        return lastAway.plusDays(7);
    }

    /** As told, and at least one for each crop. */
    static int trays(Map<StarterQuestion, String> answers) {
        int told = Integer.parseInt(answers.getOrDefault(StarterQuestion.TRAYS, "1"));
        return Math.max(told, crops(answers).size());
    }

    /** Of each crop as told, or as many as have room in a tray. */
    static List<Integer> plants(Map<StarterQuestion, String> answers) {
        String told = answers.get(StarterQuestion.PLANTS);
        List<CropTraits> crops = crops(answers);
        if (told != null) {
            String[] each = told.split(", ");
            return IntStream.range(0, crops.size())
                    .mapToObj(i -> Integer.valueOf(each[i % each.length]))
                    .toList();
        }
        double deckM2 = StarterVessel.of(answers.get(StarterQuestion.SIZE)).rimM2();
        return crops.stream().map(crop -> PlantingReader.room(deckM2, usualM2(crop))).toList();
    }

    /** The most plants that a tray holds. */
    public static int mostPlants(Map<StarterQuestion, String> answers) {
        return plants(answers).stream().mapToInt(n -> n).max().orElseThrow();
    }

    /** Numbers of plants, as they are answered, with no more than so many in any tray. */
    public static String fewerPlants(Map<StarterQuestion, String> answers, int most) {
        return plants(answers).stream()
                .map(n -> Integer.toString(Math.min(n, most)))
                .collect(Collectors.joining(", "));
    }

    /** What growers give one plant; where none says, what one covers alone. */
    private static double usualM2(CropTraits crop) {
        return crop.harvest().groundM2().orElse(crop.growth().spreadM2());
    }

    private static double groundM2(CropTraits crop, StarterVessel vessel, int plants, int trays) {
        double aloneM2 = Math.max(usualM2(crop), crop.growth().spreadM2());
        return vessel.groundM2(plants, aloneM2, trays == 1);
    }

    private CropTraits crop(int tray) {
        return crops.get(tray % crops.size());
    }

    private int plants(int tray) {
        return plants.get(tray % crops.size());
    }

    private double groundM2(int tray) {
        return groundM2(crop(tray), vessel, plants(tray), trays);
    }

    /** As "6 plants a tray" or "6 lettuce and 4 basil a tray". */
    private String plantsInWords() {
        return crops.size() == 1
                ? plants.get(0) + (plants.get(0) > 1 ? " plants a tray" : " plant a tray")
                : IntStream.range(0, crops.size())
                                .mapToObj(i -> plants(i) + " " + crop(i).name())
                                .collect(Collectors.joining(" and "))
                        + " a tray";
    }

    private String written() {
        line(
                "# Written by \"tideless new\". Lines with \"assumed\" were not asked: look at them first.");
        line("title = \"" + title() + "\"");
        line("start = " + start + " # the plants go into the tray on this day");
        line(
                "length = \""
                        + days()
                        + " days\""
                        + (answers.containsKey(StarterQuestion.END)
                                ? " # told: to " + answers.get(StarterQuestion.END)
                                : " # assumed: until they are cut, or are picked for a while; your season's"
                                        + " or term's days if it ends otherwise"));
        line("");
        line(
                "[climate] # assumed: "
                        + (light.sky().isOutside()
                                ? season.words()
                                        + (stay.bearsOutside()
                                                ? ", the brightest that they stand in"
                                                : "")
                                        + ", each day like the other; put in your own"
                                : "a lived-in room"));
        line("kind = \"room\"");
        line("day_temperature = " + temperature(season.dayC()));
        line("night_temperature = " + temperature(season.dayC() - season.nightFallC()));
        line("day_humidity = \"" + light.sky().dayPercent() + " %\"");
        line("night_humidity = \"" + light.sky().nightPercent() + " %\"");
        if (light.sky().airMPerS() > 0) {
            line("air_speed = \"" + Measure.plain(light.sky().airMPerS()) + " m/s\"");
        }
        daylight();
        lamp();
        line("");
        line("[water]");
        String water = answers.getOrDefault(StarterQuestion.WATER, StarterWater.USUAL);
        List<String> waters = StarterWater.lines(water);
        line(
                waters.get(0)
                        + (water.equals(StarterWater.USUAL)
                                ? " # assumed unless it was told; also rain, medium-tap, hard-tap (the"
                                        + " kettle furs), or in its place"
                                : " # told; or rain, soft-tap, medium-tap, hard-tap, or in its place"));
        line(
                "# what a pen reads in it: ec = \""
                        + ec(0.4)
                        + "\"; or [water.analysis] of your waterworks");
        waters.stream().skip(1).forEach(share -> line(share + " # told"));
        line("");
        line("[feed]");
        line(
                "recipe = \""
                        + feed.recipe()
                        + (told.recipe().isEmpty()
                                ? "\" # assumed: " + (suits ? "tried, and it suits" : LEAST)
                                : "\" # told"));
        line(
                "ec = \""
                        + ec(feed.msPerCm())
                        + (told.msPerCm().isEmpty()
                                ? "\" # assumed, tried as well; " + usualFeed()
                                : "\" # told; " + usualFeed())
                        + (scale == null
                                ? "; a pen in ppm: \""
                                        + ppm(feed.msPerCm(), PpmScale.PPM_500)
                                        + "\" or \""
                                        + ppm(feed.msPerCm(), PpmScale.PPM_700)
                                        + '"'
                                : ""));
        if (told.isBought()) {
            line("bought = true # told: in bottles or as a powder; better: their labels, as in");
            line(
                    "# scenarios/two-bottles.toml: ratio, [feed.part_a] and [feed.part_b] in place of recipe");
        } else {
            line(
                    "# Bottles or a powder bought ready: their labels, as in scenarios/two-bottles.toml, or");
            line("# bought = true");
        }
        line("ph = " + PH);
        if (isFilling("valve")) {
            reservoir();
        }
        String name = vessel.isRound() ? "bucket" : "bench";
        for (int tray = 0; tray < trays; tray++) {
            tray(tray, trays == 1 ? name : name + "-" + (tray + 1));
        }
        visits();
        return text.toString();
    }

    /** What growers feed it, and why it may do with less. */
    private String usualFeed() {
        double lowMsPerCm = needs(CropTraits.Needs::ecLowMsPerCm).max().orElseThrow();
        double highMsPerCm = needs(CropTraits.Needs::ecHighMsPerCm).min().orElseThrow();
        String low = ec(Math.min(lowMsPerCm, highMsPerCm));
        return "usual: "
                + low.substring(0, low.indexOf(' '))
                + " to "
                + ec(Math.max(lowMsPerCm, highMsPerCm))
                + (feed.msPerCm() < lowMsPerCm - 1e-9
                                && crops.size() == 1
                                && told.msPerCm().isEmpty()
                        ? ", which would leave too much salt here"
                        : "");
    }

    private DoubleStream needs(ToDoubleFunction<CropTraits.Needs> of) {
        return crops.stream().map(CropTraits::needs).mapToDouble(of);
    }

    /** As "2 trays of lettuce" or "A bucket of dwarf tomato". */
    private String title() {
        String one = vessel.isRound() ? "bucket" : "tray";
        return (trays > 1 ? trays + " " + one + "s" : "A " + one)
                + " of "
                + crops.stream()
                        .map(crop -> crop.name().replace('-', ' '))
                        .distinct()
                        .collect(Collectors.joining(" and "));
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private boolean isFilling(String kind) {
        return kind.equals(answers.get(StarterQuestion.FILLING));
    }

    private void daylight() {
        if (light.sky() != StarterLight.Sky.NONE) {
            line(
                    "window_light = \"%s mol/m2/day\" # told: %s; assumed: so much, as in %s"
                            .formatted(
                                    Measure.plain(season.molPerM2Day()),
                                    light.sky().spelt(),
                                    season.words()));
        }
        if (light.sky().isOutside()) {
            stay.brightest(days()).ifPresent(of -> line("# Mind: " + told(of)));
            line("# Better: " + WEATHER);
        }
    }

    private String told(StarterStay.Bright of) {
        return "the brightest month, from %s, has %s mol/m2 a day and %s by day: plants drink more then than this mean day tells"
                .formatted(
                        of.from(),
                        Measure.plain(of.season().molPerM2Day()),
                        temperature(of.season().dayC()).replace("\"", ""));
    }

    private void lamp() {
        if (!light.hasLamp()) {
            return;
        }
        line("");
        if (light.isNeeded()) {
            line("[lamp] # assumed: light as the crop needs, for nobody told how it is; measure");
            line(
                    "# Your own: lux = \"12 klux\", or watts = \"24 W\" and area; \"tideless light\" judges.");
            line(
                    "# By a window: [climate] window_light = \"5 mol/m2/day\"; without a lamp, no [lamp].");
            line("ppfd = \"" + neededPpfd() + " umol/m2/s\" # assumed");
        } else {
            line("[lamp]");
            String number = Measure.plain(light.number());
            switch (light.lamp()) {
                case WATTS -> {
                    line("watts = \"" + number + " W\"");
                    int lit = light.lit(trays);
                    double litM2 = IntStream.range(0, lit).mapToDouble(this::groundM2).sum();
                    line(
                            "area = "
                                    + area(litM2)
                                    + (lit == 1
                                            ? " # assumed: what stands over one tray lights it all"
                                            : " # told: one such lamp over %d trays; assumed: it lights them and nothing beside"
                                                    .formatted(lit)));
                }
                case LUX -> line("lux = \"" + number + " lux\"");
                default -> line("ppfd = \"" + number + " umol/m2/s\"");
            }
        }
        double on = Math.max(0, Math.min(ON_H, LATEST_OFF_H - stay.litH()));
        String assumed = Double.isNaN(light.hours()) ? " # assumed" : "";
        line("on = \"" + Time.clock(on * Time.HOUR_S) + '"' + assumed);
        line("off = \"" + Time.clock((on + stay.litH()) * Time.HOUR_S) + '"' + assumed);
    }

    /** As told, or usual ones, and on for a week after the last return. */
    private int days() {
        String end = answers.get(StarterQuestion.END);
        if (end != null) {
            return (int) ChronoUnit.DAYS.between(start, LocalDate.parse(end)) + 1;
        }
        List<String> away = away();
        int usual = stay.usualDays();
        if (away.isEmpty()) {
            return usual;
        }
        String last = away.get(away.size() - 1);
        LocalDate back = lastDayPast(LocalDate.parse(last.substring(last.indexOf(" to ") + 4)));
        return (int) Math.max(usual, ChronoUnit.DAYS.between(start, back));
    }

    /** As "2026-03-21 to 2026-03-29", in order. */
    private List<String> away() {
        String away = answers.get(StarterQuestion.AWAY);
        return away.equals("none") ? List.of() : List.of(away.split("; "));
    }

    /** For the middle of what the crop wants, to the ten. */
    private int neededPpfd() {
        double mol =
                needs(needs -> (needs.lightLowMolPerM2Day() + needs.lightHighMolPerM2Day()) / 2)
                        .average()
                        .orElseThrow();
        return (int) (10 * Math.floor(mol * UMOL_PER_MOL / (stay.litH() * Time.HOUR_S) / 10 + 0.5));
    }

    private void reservoir() {
        line("");
        line("[reservoir.main]");
        line("volume = \"" + answers.get(StarterQuestion.RESERVOIR) + "\"");
        line("depth = " + cm(30) + " # assumed");
        line("outlet_height = " + cm(2) + " # assumed: what lies below never leaves");
        line("floor_above_bench = " + cm(60) + " # assumed: heavy, so fixed to the wall");
    }

    private double depthCm() {
        return vessel.depthCm();
    }

    private double cupCm() {
        return Math.max(depthCm() - CUP_CM, depthCm() / 2);
    }

    private void tray(int tray, String name) {
        line("");
        line("[tray." + name + "]");
        if (vessel.shape().equals("bucket")) {
            line("shape = \"bucket\" # assumed: as wide and deep as usual ones that hold as much");
            line("diameter = " + cm(vessel.lengthCm()) + " # assumed: at the rim");
            line("floor_diameter = " + cm(vessel.widthCm()) + " # assumed");
        } else if (vessel.isRound()) {
            line("diameter = " + cm(vessel.lengthCm()));
        } else {
            line("length = " + cm(vessel.lengthCm()));
            line("width = " + cm(vessel.widthCm()));
        }
        boolean told = !vessel.shape().equals("bucket");
        line("depth = " + cm(depthCm()) + (told ? "" : " # assumed"));
        if (isFilling("valve")) {
            line("overflow = " + cm(depthCm() - Math.min(1, depthCm() / 8)) + " # assumed");
        }
        line("cup_bottom = " + cm(cupCm()) + " # assumed: underside of the cups above the floor");
        if (!isFilling("valve")) {
            boolean falls = vessel.isRound() && isFilling("hand");
            double wetCm = falls ? BUCKET_CUP_WET_CM : CUP_WET_CM;
            line(
                    "start_level = "
                            + cm(Math.min(cupCm() + wetCm, depthCm() - 1))
                            + (isFilling("hand")
                                    ? " # assumed: the cups begin just wet, and are kept so until roots hang"
                                    : " # assumed: the cups begin just wet"));
        }
        line("gap = \"1 %\" # assumed: the deck closes well");
        line("crop = \"" + crop(tray).name() + "\"");
        line(
                "plants = "
                        + plants(tray)
                        + (answers.containsKey(StarterQuestion.PLANTS)
                                ? ""
                                : " # assumed: as many as have room"));
        if (groundM2(tray) > vessel.rimM2() * 1.01) {
            line(
                    "ground = "
                            + area(groundM2(tray))
                            + " # assumed: room around, so leaves spread beyond the deck as far as this crop's do");
        }
        if (isFilling("valve")) {
            line("");
            line("[tray." + name + ".valve]");
            line(
                    "setting = "
                            + cm(cupCm() + 0.5)
                            + " # assumed: the cups stay wet by "
                            + (us ? "1/5 in" : "5 mm"));
        } else if (isFilling("hand")) {
            line("");
            line("[tray." + name + ".hand]");
            line("to = " + cm(cupCm() * 0.65) + " # assumed: air for the upper roots");
            if (!away().isEmpty()) {
                line(
                        "in_steps = true # assumed: after an absence no higher at once than air roots bear");
            }
        } else {
            line("filling = \"sealed\"");
        }
    }

    private void visits() {
        String days = answers.get(StarterQuestion.VISITS);
        line("");
        line("[visits]");
        line("days = " + StarterVisits.written(days));
        line("at = \"08:00\" # assumed");
        if (isChanged) {
            line(
                    "flush = \"at limit\" # assumed: poured away and filled anew when it reads too high"
                            + " or too low");
        }
        List<String> away = away();
        if (!away.isEmpty()) {
            line(
                    away.stream()
                            .map(span -> "{ from = " + span.replace(" to ", ", to = ") + " }")
                            .collect(Collectors.joining(", ", "away = [", "]")));
        }
    }

    private String ec(double msPerCm) {
        return scale == null ? Measure.plain(msPerCm) + " mS/cm" : ppm(msPerCm, scale);
    }

    private static String ppm(double msPerCm, PpmScale of) {
        return (int) (of.ppm(msPerCm) + 0.5) + (of == PpmScale.PPM_500 ? " ppm-500" : " ppm-700");
    }

    private String temperature(double degC) {
        double degF = UnitTable.TEMPERATURE.number(degC, "degF");
        return '"'
                + (us
                        ? Measure.plain(Math.floor(degF + 0.5)) + " degF"
                        : Measure.plain(degC) + " degC")
                + '"';
    }

    /** To the square centimetre, or to a hundredth of a square foot. */
    private String area(double m2) {
        double number = UnitTable.AREA.number(m2, us ? "ft2" : "cm2") * (us ? 100 : 1);
        double whole = Math.ceil(number - 1e-9) / (us ? 100 : 1); // no less than the deck
        return '"' + Measure.plain(whole) + (us ? " ft2\"" : " cm2\"");
    }

    private String cm(double cm) {
        return '"' + plainCm(cm) + '"';
    }

    /** To the millimetre, or to a tenth of an inch. */
    private String plainCm(double cm) {
        double number = us ? cm / 100 / UnitTable.INCH_M : cm;
        return Measure.plain(Math.floor(number * 10 + 0.5) / 10) + (us ? " in" : " cm");
    }
}
