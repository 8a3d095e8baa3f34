package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.crop.CropTraits;
import tideless.crop.RoomLimits;
import tideless.physics.Time;
import tideless.solution.ElectricalConductivity.PpmScale;

/**
 * A first scenario out of a few answers: what was not asked is put in as what usually grows, with a
 * comment that says so.
 */
public final class Starter {
    /** Hours of light a day where the crop bears them; common practice. */
    private static final double LIT_H = 16;

    /** Lamps go on, h after midnight. */
    private static final int ON_H = 6;

    /** And off, if it can be. */
    private static final int LATEST_OFF_H = 22;

    private static final String WEATHER =
            "a year of weather, as in scenarios/glasshouse-tomato-trough.toml: sun and warmth by the"
                    + " hour";

    /** A lived-in room by day, and so much cooler at night, degC; common practice. */
    private static final double DAY_C = 22;

    private static final double NIGHT_FALL_C = 4;

    /** A tray stands so far above its room under lamps, K; assumed. */
    private static final double LAMP_WARMTH_C = 2;

    private static final double UMOL_PER_MOL = 1e6;

    /** No first scenario is longer, days. */
    private static final int LONGEST_DAYS = 120;

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
     */
    public record Care(Feed feed, boolean isChanged) {}

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

    private final Map<StarterQuestion, String> answers;
    private final LocalDate start;
    private final Feed feed;
    private final boolean isChanged;
    private final CropTraits crop;
    private final StarterVessel vessel;
    private final StarterLight light;
    private final int trays;
    private final int plants;
    private final boolean us;
    private final PpmScale scale;
    private final StringBuilder text = new StringBuilder();

    private Starter(Map<StarterQuestion, String> answers, Care care, Written in) {
        feed = care.feed();
        isChanged = care.isChanged();
        this.answers = new EnumMap<>(answers);
        start = LocalDate.parse(answers.get(StarterQuestion.START));
        crop = Crops.named(answers.get(StarterQuestion.CROP));
        vessel = StarterVessel.of(answers.get(StarterQuestion.SIZE));
        light = StarterLight.of(answers.get(StarterQuestion.LIGHT));
        trays = trays(answers);
        plants = plants(answers);
        us = in.us;
        scale = in.scale;
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
     * @param answers with its name
     */
    public static List<Feed> feeds(Map<StarterQuestion, String> answers) {
        CropTraits.Needs needs = Crops.named(answers.get(StarterQuestion.CROP)).needs();
        double middle = 0.5 * (needs.ecLowMsPerCm() + needs.ecHighMsPerCm());
        double usual = Math.floor(middle / STRENGTH_STEP_MS_PER_CM + 0.5) * STRENGTH_STEP_MS_PER_CM;
        return Stream.concat(
                        FEEDS.stream(),
                        Stream.of("hoagland-2", "lettuce-water-culture", "steiner")
                                .map(recipe -> new Feed(recipe, usual)))
                .distinct()
                .sorted(Comparator.comparing(feed -> !needs.isUsual(feed.msPerCm())))
                .toList();
    }

    /** Whether the rig was measured in inches or gallons. */
    public static boolean isUs(Map<StarterQuestion, String> answers) {
        return StarterVessel.of(answers.get(StarterQuestion.SIZE)).isUs();
    }

    /** What was taken for what the answers leave open, and what of them looks amiss. */
    public static List<String> remarks(Map<StarterQuestion, String> answers, Written in) {
        Starter starter =
                new Starter(answers, new Care(FEEDS.get(0), false), in); // of that it says nothing
        List<String> remarks = new ArrayList<>();
        if (!answers.containsKey(StarterQuestion.PLANTS)) {
            remarks.add(
                    "assumed: %d %s a tray, as many as have room; tell: --plants N"
                            .formatted(starter.plants, starter.plants > 1 ? "plants" : "plant"));
        }
        if (starter.light.isNeeded()) {
            remarks.add(
                    "assumed: light as the crop needs, %d umol/m2/s for %d h a day; measure, or tell:"
                                    .formatted(starter.neededPpfd(), (int) starter.litH())
                            + " --light \"24 W 14 h\" or --light window");
        }
        if (starter.light.sky() != StarterLight.Sky.NONE) {
            remarks.add(
                    "assumed: %s gives %d mol/m2 of light in a mean day; measure it"
                                    .formatted(
                                            starter.light.sky().spelt(),
                                            (int) starter.light.sky().molPerM2Day())
                            + (starter.light.sky() == StarterLight.Sky.WINDOW
                                    ? ""
                                    : ", or put in " + WEATHER));
        }
        return remarks;
    }

    /** That the plants stand too close, as soon as that is known; or nothing. */
    public static Optional<String> crowd(Map<StarterQuestion, String> answers) {
        CropTraits crop = Crops.named(answers.get(StarterQuestion.CROP));
        StarterVessel vessel = StarterVessel.of(answers.get(StarterQuestion.SIZE));
        int plants = plants(answers);
        return PlantingReader.crowd(
                plants, groundM2(crop, vessel, plants, trays(answers)), usualM2(crop));
    }

    /** The last day on which the plants stand when nobody is away. */
    static LocalDate lastUsualDay(Map<StarterQuestion, String> answers) {
        CropTraits crop = Crops.named(answers.get(StarterQuestion.CROP));
        double lit = litH(crop, StarterLight.of(answers.get(StarterQuestion.LIGHT)));
        return LocalDate.parse(answers.get(StarterQuestion.START))
                .plusDays(usualDays(crop, lit) - 1);
    }

    /** The last day of a run that goes on for a week after an absence. */
    static LocalDate lastDayPast(LocalDate lastAway) {
        return lastAway.plusDays(7);
    }

    private static int trays(Map<StarterQuestion, String> answers) {
        return Integer.parseInt(answers.getOrDefault(StarterQuestion.TRAYS, "1"));
    }

    /** As told, or as many as have room. */
    public static int plants(Map<StarterQuestion, String> answers) {
        String told = answers.get(StarterQuestion.PLANTS);
        if (told != null) {
            return Integer.parseInt(told);
        }
        double deckM2 = StarterVessel.of(answers.get(StarterQuestion.SIZE)).rimM2();
        return PlantingReader.room(deckM2, usualM2(Crops.named(answers.get(StarterQuestion.CROP))));
    }

    /** What growers give one plant; where none says, what one covers alone. */
    private static double usualM2(CropTraits crop) {
        return crop.harvest().groundM2().orElse(crop.growth().spreadM2());
    }

    private static double groundM2(CropTraits crop, StarterVessel vessel, int plants, int trays) {
        double aloneM2 = Math.max(usualM2(crop), crop.growth().spreadM2());
        return vessel.groundM2(plants, aloneM2, trays == 1);
    }

    private double groundM2() {
        return groundM2(crop, vessel, plants, trays);
    }

    private String written() {
        line(
                "# Written by \"tideless new\". Lines with \"assumed\" were not asked: look at them first.");
        line("title = \"" + title() + "\"");
        line("start = " + start + " # the plants go into the tray on this day");
        line(
                "length = \""
                        + days()
                        + " days\" # assumed: until they are cut, or are picked for a while");
        line("");
        line("[climate] # assumed: a lived-in room");
        line("kind = \"room\"");
        line("day_temperature = " + temperature(dayC()));
        line("night_temperature = " + temperature(dayC() - NIGHT_FALL_C));
        line("day_humidity = \"60 %\"");
        line("night_humidity = \"70 %\"");
        daylight();
        lamp();
        line("");
        line("[water]");
        line("source = \"soft-tap\" # assumed; also rain, medium-tap, hard-tap, or your analysis");
        line("");
        line("[feed]");
        line(
                "recipe = \""
                        + feed.recipe()
                        + "\" # assumed: tried, and it suits; or two bottles by their labels");
        line(
                "ec = \""
                        + ec(feed.msPerCm())
                        + "\" # assumed, tried as well; "
                        + usualFeed()
                        + (scale == null
                                ? "; a pen in ppm: \""
                                        + ppm(feed.msPerCm(), PpmScale.PPM_500)
                                        + "\" or \""
                                        + ppm(feed.msPerCm(), PpmScale.PPM_700)
                                        + '"'
                                : ""));
        line("ph = 6.0");
        if (isFilling("valve")) {
            reservoir();
        }
        String name = vessel.isRound() ? "bucket" : "bench";
        for (int tray = 1; tray <= trays; tray++) {
            tray(trays == 1 ? name : name + "-" + tray);
        }
        visits();
        return text.toString();
    }

    /** What growers feed it, and why it may do with less. */
    private String usualFeed() {
        CropTraits.Needs needs = crop.needs();
        String low = ec(needs.ecLowMsPerCm());
        return "usual: "
                + low.substring(0, low.indexOf(' '))
                + " to "
                + ec(needs.ecHighMsPerCm())
                + (feed.msPerCm() < needs.ecLowMsPerCm() - 1e-9
                        ? ", which would leave too much salt here"
                        : "");
    }

    /** As "2 trays of lettuce" or "A bucket of dwarf tomato". */
    private String title() {
        String one = vessel.isRound() ? "bucket" : "tray";
        return (trays > 1 ? trays + " " + one + "s" : "A " + one)
                + " of "
                + crop.name().replace('-', ' ');
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
                    "window_light = \"%s mol/m2/day\" # told: %s; assumed: so much, in a mean day"
                            .formatted(
                                    Measure.plain(light.sky().molPerM2Day()), light.sky().spelt()));
        }
        if (light.sky() == StarterLight.Sky.OUTDOORS) {
            line("# Better: " + WEATHER);
        }
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
                    line(
                            "area = "
                                    + area(groundM2())
                                    + " # assumed: what stands over one tray lights it all");
                }
                case LUX -> line("lux = \"" + number + " lux\"");
                default -> line("ppfd = \"" + number + " umol/m2/s\"");
            }
        }
        double on = Math.max(0, Math.min(ON_H, LATEST_OFF_H - litH()));
        String assumed = Double.isNaN(light.hours()) ? " # assumed" : "";
        line("on = \"" + Time.clock(on * Time.HOUR_S) + '"' + assumed);
        line("off = \"" + Time.clock((on + litH()) * Time.HOUR_S) + '"' + assumed);
    }

    /** From setting out to the end of the cut or of a first month of picking. */
    private static int usualDays(CropTraits crop, double litH) {
        CropTraits.Stages stages = crop.stages();
        double meanC = dayC(crop) - NIGHT_FALL_C * (24 - litH) / 24;
        double grown =
                RoomLimits.daysTo(crop, 0, stages.firstHarvestCd(), meanC) - crop.nursery().days();
        boolean picked = stages.fruits() || crop.harvest().pickedEveryDays().isPresent();
        double all = grown + (picked ? 28 : 14);
        return (int) Math.max(28, Math.min(LONGEST_DAYS, 7 * Math.ceil(all / 7)));
    }

    /** Usual ones, and on for a week after the last return. */
    private int days() {
        List<String> away = away();
        int usual = usualDays(crop, litH());
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

    private double litH() {
        return litH(crop, light);
    }

    private static double litH(CropTraits crop, StarterLight light) {
        return light.litH(Math.min(LIT_H, Math.floor(crop.response().longestDayH())));
    }

    private double dayC() {
        return dayC(crop);
    }

    private static double dayC(CropTraits crop) {
        return Math.min(DAY_C, Math.floor(crop.needs().solutionWarmC() - LAMP_WARMTH_C));
    }

    /** For the middle of what the crop wants, to the ten. */
    private int neededPpfd() {
        CropTraits.Needs needs = crop.needs();
        double mol = (needs.lightLowMolPerM2Day() + needs.lightHighMolPerM2Day()) / 2;
        return (int) (10 * Math.floor(mol * UMOL_PER_MOL / (litH() * Time.HOUR_S) / 10 + 0.5));
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

    private void tray(String name) {
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
            line("start_level = " + cm(cupCm() + 1) + " # assumed: the cups begin just wet");
        }
        line("gap = \"1 %\" # assumed: the deck closes well");
        line("crop = \"" + crop.name() + "\"");
        line(
                "plants = "
                        + plants
                        + (answers.containsKey(StarterQuestion.PLANTS)
                                ? ""
                                : " # assumed: as many as have room"));
        if (groundM2() > vessel.rimM2() * 1.01) {
            line(
                    "ground = "
                            + area(groundM2())
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
        } else {
            line("filling = \"sealed\"");
        }
    }

    private void visits() {
        String days = answers.get(StarterQuestion.VISITS);
        line("");
        line("[visits]");
        line(
                "days = "
                        + (days.equals("daily")
                                ? "\"daily\""
                                : Arrays.stream(days.split(" "))
                                        .map(day -> '"' + day + '"')
                                        .collect(Collectors.joining(", ", "[", "]"))));
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

    /** To the millimetre, or to a tenth of an inch. */
    private String cm(double cm) {
        double number = us ? cm / 100 / UnitTable.INCH_M : cm;
        return '"' + Measure.plain(Math.floor(number * 10 + 0.5) / 10) + (us ? " in\"" : " cm\"");
    }
}
