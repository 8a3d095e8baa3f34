package tideless.rig;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

/**
 * What a vessel is refilled or topped up with.
 *
 * @param withWater source water instead of feed, always
 * @param water so much source water in place of feed, each from its day on, in order of the days
 * @param shares share of source water in each filling from a day on, in order of the days; of the
 *     fillings in which no dose is due
 */
public record Pouring(boolean withWater, List<Dose> water, List<Share> shares) {
    /** Feed, always. */
    public static final Pouring FEED = new Pouring(false, List.of());

    /** Source water, always. */
    public static final Pouring WATER = new Pouring(true, List.of());

    public Pouring {
        water = List.copyOf(water);
        shares = List.copyOf(shares);
    }

    /** Without shares. */
    public Pouring(boolean withWater, List<Dose> water) {
        this(withWater, water, List.of());
    }

    /**
     * How much of what is poured is source water: doses are poured first, as far as they go, and
     * what is left of them waits for the next time.
     *
     * @param day on which it is poured
     * @param pouredM3 in all, m3
     * @param waterSoFarM3 water of doses poured before, m3
     * @return m3, from 0 to all of it
     */
    public double waterM3(LocalDate day, double pouredM3, double waterSoFarM3) {
        if (withWater) {
            return pouredM3;
        }
        double doseM3 = doseM3(day, pouredM3, waterSoFarM3);
        return doseM3 > 0 ? doseM3 : shareFrac(day) * pouredM3;
    }

    /** How much of that is of doses, m3. */
    public double doseM3(LocalDate day, double pouredM3, double waterSoFarM3) {
        double dueM3 = -waterSoFarM3;
        for (Dose dose : water) {
            dueM3 += dose.from().isAfter(day) ? 0 : dose.m3();
        }
        return Math.max(0, Math.min(pouredM3, dueM3));
    }

    private double shareFrac(LocalDate day) {
        double frac = 0;
        for (Share share : shares) {
            frac = share.from().isAfter(day) ? frac : share.frac();
        }
        return frac;
    }

    /**
     * Source water in place of part of each filling.
     *
     * @param from first day of it
     * @param frac 0 to 1
     */
    public record Share(LocalDate from, double frac) {
        public Share {
            Objects.requireNonNull(from, "from");
            if (!(frac >= 0 && frac <= 1)) {
                throw new IllegalArgumentException("a share from 0 to 1, was " + frac);
            }
        }
    }

    /**
     * Source water in place of feed.
     *
     * @param from first day on which it may be poured
     * @param m3 how much, above 0, m3
     */
    public record Dose(LocalDate from, double m3) {
        public Dose {
            Objects.requireNonNull(from, "from");
            if (!(m3 > 0)) {
                throw new IllegalArgumentException("m3 must be above 0, was " + m3);
            }
        }
    }
}
