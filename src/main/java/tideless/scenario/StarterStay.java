package tideless.scenario;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tideless.crop.CropTraits;
import tideless.crop.Growing;

/**
 * How long the crops of a first scenario stand, and in which light and air.
 *
 * @param crops all of them share both
 * @param light as it was told
 * @param start the day on which they are set out
 */
record StarterStay(List<CropTraits> crops, StarterLight light, LocalDate start) {
    /** Hours of light a day where the crop bears them; common practice. */
    private static final double LIT_H = 16;

    /** A tray stands so far above its room under lamps, K; assumed. */
    private static final double LAMP_WARMTH_C = 2;

    /** No first scenario is shorter or longer, days. */
    private static final int SHORTEST_DAYS = 28;

    private static final int LONGEST_DAYS = 120;

    /** Fruit is picked out of doors for so long, and no such scenario is longer, days; assumed. */
    private static final int SUMMER_DAYS = 63;

    private static final int LONGEST_SUMMER_DAYS = 154;

    /** Picked for four weeks, or watched for two past its stage, days; assumed. */
    private static final int PICKED_DAYS = 28;

    private static final int PAST_STAGE_DAYS = 14;

    /**
     * A month tells what is thirstiest, where it is so many times as bright as the mean; chosen.
     */
    private static final int BRIGHT_DAYS = 30;

    private static final double BRIGHTER_TIMES = 1.15;

    /** From setting out to the end of the cut or of a first month of picking, whole weeks. */
    int usualDays() {
        return crops.stream().mapToInt(this::usualDays).max().orElseThrow();
    }

    private int usualDays(CropTraits crop) {
        boolean summer = crop.stages().fruits() && light.sky().isOutside(); // bears till autumn
        int most = summer ? LONGEST_SUMMER_DAYS : LONGEST_DAYS;
        double standsCd = Growing.raisedInNursery(crop, crop.nursery().days()).thermalTimeCd();
        int grown = 0;
        while (standsCd < crop.stages().firstHarvestCd() && grown < most) {
            standsCd += Growing.warmthCd(crop, standsCd, meanC(start.plusDays(grown)));
            grown++;
        }
        int more = summer ? SUMMER_DAYS : isPicked(crop) ? PICKED_DAYS : PAST_STAGE_DAYS;
        return (int) Math.max(SHORTEST_DAYS, Math.min(most, 7 * Math.ceil((grown + more) / 7.0)));
    }

    private static boolean isPicked(CropTraits crop) {
        return crop.stages().fruits() || crop.harvest().pickedEveryDays().isPresent();
    }

    /**
     * Light and air of a run: of all its days where a crop is picked till its end, else of those on
     * which it usually stands, for what comes after the cut is no season of it. Of fruit outside
     * the brightest month, in which it is large: what a mean from May to October bears may be drunk
     * dry in July.
     *
     * @param days of the run
     */
    StarterSeason season(int days) {
        if (bearsOutside()) {
            return brightMonth(days).season();
        }
        boolean picked = crops.stream().anyMatch(StarterStay::isPicked);
        StarterSeason mean =
                StarterSeason.of(light.sky(), start, picked ? days : Math.min(days, usualDays()));
        return light.sky().isOutside()
                ? mean
                : new StarterSeason(mean.molPerM2Day(), roomC(), mean.nightFallC(), mean.months());
    }

    /** Whether it is told by its brightest month alone. */
    boolean bearsOutside() {
        return light.sky().isOutside() && crops.stream().anyMatch(crop -> crop.stages().fruits());
    }

    /**
     * The brightest weeks outside of a run that are a good deal brighter than what it is told by,
     * and in which plants drink more; empty where there are none.
     *
     * @param days of the run
     */
    Optional<Bright> brightest(int days) {
        if (!light.sky().isOutside()) {
            return Optional.empty();
        }
        double meanMol = season(days).molPerM2Day();
        return Optional.of(brightMonth(days))
                .filter(of -> of.season().molPerM2Day() >= BRIGHTER_TIMES * meanMol);
    }

    private Bright brightMonth(int days) {
        return IntStream.rangeClosed(0, Math.max(0, days - BRIGHT_DAYS))
                .mapToObj(start::plusDays)
                .map(from -> new Bright(from, StarterSeason.of(light.sky(), from, BRIGHT_DAYS)))
                .max(
                        Comparator.comparingDouble((Bright of) -> of.season().molPerM2Day())
                                .thenComparingDouble(of -> of.season().dayC())
                                .thenComparing(Bright::from))
                .orElseThrow();
    }

    /**
     * Weeks of a run.
     *
     * @param from their first day
     * @param season their light and air
     */
    record Bright(LocalDate from, StarterSeason season) {}

    /** A lived-in room by day, cooler where the crop asks for it, degC. */
    private double roomC() {
        double warmC =
                crops.stream()
                        .mapToDouble(crop -> crop.needs().solutionWarmC())
                        .min()
                        .orElseThrow();
        return Math.min(light.sky().dayC(), Math.floor(warmC - LAMP_WARMTH_C));
    }

    private double meanC(LocalDate on) {
        StarterLight.Sky sky = light.sky();
        double dayC = sky.isOutside() ? StarterSeason.dayC(sky, on) : roomC();
        return dayC - StarterSeason.nightFallC(sky, on) * (24 - litH()) / 24;
    }

    /** Hours of light a day. */
    double litH() {
        double borneH =
                crops.stream()
                        .mapToDouble(crop -> crop.response().longestDayH())
                        .min()
                        .orElseThrow();
        return light.litH(Math.min(LIT_H, Math.floor(borneH)));
    }
}
