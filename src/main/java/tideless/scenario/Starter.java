package tideless.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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

    /** A lived-in room by day, and so much cooler at night, degC; common practice. */
    private static final double DAY_C = 22;

    private static final double NIGHT_FALL_C = 4;

    /** A tray stands so far above its room under lamps, K; assumed. */
    private static final double LAMP_WARMTH_C = 2;

    private static final double UMOL_PER_MOL = 1e6;

    /** No first scenario is longer, days. */
    private static final int LONGEST_DAYS = 120;

    /** Exact. */
    private static final double CM_PER_IN = 2.54;

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
    private final double[] sides;
    private final boolean inInches;
    private final StringBuilder text = new StringBuilder();

    private Starter(Map<StarterQuestion, String> answers, LocalDate start, Care care) {
        feed = care.feed();
        isChanged = care.isChanged();
        this.answers = new EnumMap<>(answers);
        this.start = start;
        crop = Crops.named(answers.get(StarterQuestion.CROP));
        sides = StarterQuestion.sidesCm(answers.get(StarterQuestion.SIZE));
        inInches = StarterQuestion.isInInches(answers.get(StarterQuestion.SIZE));
    }

    /**
     * The text of a scenario.
     *
     * @param answers to all questions that are asked, as {@link StarterQuestion#read} gave them
     * @param start its first day
     * @param care how it is tended
     */
    public static String of(Map<StarterQuestion, String> answers, LocalDate start, Care care) {
        return new Starter(answers, start, care).written();
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

    /** Whether the rig was measured in inches. */
    public static boolean isInInches(Map<StarterQuestion, String> answers) {
        return StarterQuestion.isInInches(answers.get(StarterQuestion.SIZE));
    }

    private String written() {
        int trays = Integer.parseInt(answers.get(StarterQuestion.TRAYS));
        line(
                "# Written by \"tideless new\". Lines with \"assumed\" were not asked: look at them first.");
        line("title = \"" + trays + (trays > 1 ? " trays" : " tray") + " of " + crop.name() + "\"");
        line("start = " + start + " # the plants go into the tray on this day");
        line(
                "length = \""
                        + days()
                        + " days\" # assumed: until they are cut, or are picked for a while");
        line("");
        line("[climate] # assumed: a lived-in room");
        line("kind = \"room\"");
        line("day_temperature = \"" + Measure.plain(dayC()) + " degC\"");
        line("night_temperature = \"" + Measure.plain(dayC() - NIGHT_FALL_C) + " degC\"");
        line("day_humidity = \"60 %\"");
        line("night_humidity = \"70 %\"");
        line("");
        line("[lamp] # assumed: what this crop needs; \"tideless light\" tells from your own lamp");
        line("# By a window without a lamp: type = \"sun\", and the light of its bright hours.");
        line("ppfd = \"" + ppfd() + " umol/m2/s\" # or lux = \"12 klux\", or watts and area");
        line("on = \"06:00\"");
        line("off = \"" + (int) (ON_H + litH()) + ":00\"");
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
                        + Measure.plain(feed.msPerCm())
                        + " mS/cm\" # assumed, tried as well; "
                        + usualFeed()
                        + "; a pen in ppm: \""
                        + ppm(PpmScale.PPM_500)
                        + " ppm-500\" or \""
                        + ppm(PpmScale.PPM_700)
                        + " ppm-700\"");
        line("ph = 6.0");
        if (isFilling("valve")) {
            reservoir();
        }
        for (int tray = 1; tray <= trays; tray++) {
            tray(trays == 1 ? "bench" : "bench-" + tray);
        }
        visits();
        return text.toString();
    }

    /** What growers feed it, and why it may do with less. */
    private String usualFeed() {
        CropTraits.Needs needs = crop.needs();
        return "usual: "
                + Measure.plain(needs.ecLowMsPerCm())
                + " to "
                + Measure.plain(needs.ecHighMsPerCm())
                + (feed.msPerCm() < needs.ecLowMsPerCm() - 1e-9
                        ? ", which would leave too much salt here"
                        : "");
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    private boolean isFilling(String kind) {
        return kind.equals(answers.get(StarterQuestion.FILLING));
    }

    /** From setting out to the end of the cut or of a first month of picking. */
    private int days() {
        CropTraits.Stages stages = crop.stages();
        double meanC = dayC() - NIGHT_FALL_C * (24 - litH()) / 24;
        double grown =
                RoomLimits.daysTo(crop, 0, stages.firstHarvestCd(), meanC) - crop.nursery().days();
        boolean picked = stages.fruits() || crop.harvest().pickedEveryDays().isPresent();
        double all = grown + (picked ? 28 : 14);
        double usual = Math.max(28, Math.min(LONGEST_DAYS, 7 * Math.ceil(all / 7)));
        return (int) Math.max(usual, Math.min(LONGEST_DAYS, pastAbsence(usual)));
    }

    /** Until a week after the return from an absence that begins while the plants stand, d. */
    private double pastAbsence(double usualDays) {
        List<LocalDate> away = away();
        if (away.isEmpty()) {
            return 0;
        }
        return ChronoUnit.DAYS.between(start, away.get(0)) < usualDays
                ? ChronoUnit.DAYS.between(start, away.get(1)) + 7
                : 0;
    }

    /** First day of the absence and day of the return, or nothing. */
    private List<LocalDate> away() {
        String away = answers.get(StarterQuestion.AWAY);
        return away.equals("none")
                ? List.of()
                : Stream.of(away.split(" to ")).map(LocalDate::parse).toList();
    }

    private double litH() {
        return Math.min(LIT_H, Math.floor(crop.response().longestDayH()));
    }

    private double dayC() {
        return Math.min(DAY_C, Math.floor(crop.needs().solutionWarmC() - LAMP_WARMTH_C));
    }

    /** For the middle of what the crop wants, to the ten. */
    private int ppfd() {
        CropTraits.Needs needs = crop.needs();
        double mol = (needs.lightLowMolPerM2Day() + needs.lightHighMolPerM2Day()) / 2;
        return (int) (10 * Math.floor(mol * UMOL_PER_MOL / (litH() * Time.HOUR_S) / 10 + 0.5));
    }

    private void reservoir() {
        line("");
        line("[reservoir.main]");
        line("volume = \"" + answers.get(StarterQuestion.RESERVOIR) + "\"");
        line("depth = \"30 cm\" # assumed");
        line("outlet_height = \"2 cm\" # assumed: what lies below never leaves");
        line("floor_above_bench = \"60 cm\" # assumed: heavy, so fixed to the wall");
    }

    private double depthCm() {
        return sides[sides.length - 1];
    }

    private double cupCm() {
        return Math.max(depthCm() - CUP_CM, depthCm() / 2);
    }

    private void tray(String name) {
        line("");
        line("[tray." + name + "]");
        if (sides.length == 2) {
            line("diameter = " + cm(sides[0]));
        } else {
            line("length = " + cm(sides[0]));
            line("width = " + cm(sides[1]));
        }
        line("depth = " + cm(depthCm()));
        if (isFilling("valve")) {
            line("overflow = " + cm(depthCm() - Math.min(1, depthCm() / 8)) + " # assumed");
        }
        line("cup_bottom = " + cm(cupCm()) + " # assumed: underside of the cups above the floor");
        if (!isFilling("valve")) {
            line("start_level = " + cm(cupCm() + 1) + " # assumed: the cups begin just wet");
        }
        line("gap = \"1 %\" # assumed: the deck closes well");
        line("crop = \"" + crop.name() + "\"");
        line("plants = " + answers.get(StarterQuestion.PLANTS));
        if (isFilling("valve")) {
            line("");
            line("[tray." + name + ".valve]");
            line("setting = " + cm(cupCm() + 0.5) + " # assumed: the cups stay wet by 5 mm");
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
        List<LocalDate> away = away();
        if (!away.isEmpty()) {
            line("away = [{ from = " + away.get(0) + ", to = " + away.get(1) + " }]");
        }
    }

    private int ppm(PpmScale scale) {
        return (int) (scale.ppm(feed.msPerCm()) + 0.5);
    }

    /** To the millimetre, or to a tenth of an inch where the answer was in inches. */
    private String cm(double cm) {
        if (inInches) {
            double inches = Math.floor(cm / CM_PER_IN * 10 + 0.5) / 10;
            return '"' + Measure.plain(inches) + " in\"";
        }
        return '"' + Measure.plain(Math.floor(cm * 10 + 0.5) / 10) + " cm\"";
    }
}
