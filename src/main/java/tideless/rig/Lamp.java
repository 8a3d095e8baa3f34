package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.ArrayList;
import java.util.List;
import tideless.physics.Light;
import tideless.physics.Time;

/**
 * A lamp over a tray, on the same hours every day, dimmed by the hour and by date if it can be.
 *
 * @param ppfdUmolPerM2S photon flux density at the canopy at full strength, 400-700 nm, umol/m2/s
 * @param umolPerJ photons per joule of 400-700 nm light, umol/J
 * @param nearInfraredPerPar near infrared at the canopy per unit of 400-700 nm power, W/W
 * @param onS switched on, seconds after midnight
 * @param offS switched off, seconds after midnight; less than {@code onS} when it burns past
 *     midnight; equal means always on
 * @param levels shares of its strength by the time of day, in rising order; each holds from its
 *     time to the next one's, the last to the first; empty for full strength
 * @param strengths shares of its strength by date, in rising order; each holds from its day on;
 *     full strength before the first
 * @param plug what it takes of the mains
 */
@RecordBuilder
public record Lamp(
        double ppfdUmolPerM2S,
        double umolPerJ,
        double nearInfraredPerPar,
        double onS,
        double offS,
        List<Level> levels,
        List<Strength> strengths,
        Plug plug)
        implements LampBuilder.With {
    /** Half as much again as full sun, umol/m2/s: no lamp over a plant is brighter; assumed. */
    public static final double MOST_UMOL_PER_M2_S = 3000;

    /**
     * What a lamp takes of the mains at full strength.
     *
     * @param daylight whether it is no lamp at all, but light of the sun told as one
     * @param watts power of one lamp, W; 0 where it is not known
     * @param litM2 area that one lamp lights, m2; 0 where it is not known
     */
    public record Plug(boolean daylight, double watts, double litM2) {
        /** A lamp of which the light alone is known. */
        public static final Plug UNKNOWN = new Plug(false, 0, 0);

        public Plug {
            if (!(watts >= 0 && litM2 >= 0) || watts > 0 != litM2 > 0) {
                throw new IllegalArgumentException("no lamp: " + watts + " W, " + litM2 + " m2");
            }
        }
    }

    /**
     * A share of full strength from a time of day on.
     *
     * @param fromS seconds after midnight
     * @param frac 0-1
     */
    public record Level(double fromS, double frac) {
        public Level {
            if (!(fromS >= 0 && fromS < Time.DAY_S) || !(frac >= 0 && frac <= 1)) {
                throw new IllegalArgumentException("no level of a lamp: " + fromS + " s, " + frac);
            }
        }
    }

    /**
     * A share of full strength from a day on.
     *
     * @param day days since the scenario's start; may lie before it
     * @param frac 0-1
     */
    public record Strength(int day, double frac) {
        public Strength {
            if (!(frac >= 0 && frac <= 1)) {
                throw new IllegalArgumentException("no strength of a lamp: " + frac);
            }
        }
    }

    public Lamp {
        if (!(ppfdUmolPerM2S >= 0 && ppfdUmolPerM2S <= MOST_UMOL_PER_M2_S)) {
            throw new IllegalArgumentException(
                    "ppfdUmolPerM2S must lie in 0 to 3000, was " + ppfdUmolPerM2S);
        }
        if (!(umolPerJ > 0)) {
            throw new IllegalArgumentException("umolPerJ must be above 0, was " + umolPerJ);
        }
        levels = List.copyOf(levels);
        strengths = List.copyOf(strengths);
        for (int i = 1; i < levels.size(); i++) {
            if (!(levels.get(i).fromS() > levels.get(i - 1).fromS())) {
                throw new IllegalArgumentException("levels must rise in time");
            }
        }
        for (int i = 1; i < strengths.size(); i++) {
            if (strengths.get(i).day() <= strengths.get(i - 1).day()) {
                throw new IllegalArgumentException("strengths must rise in time");
            }
        }
    }

    /** A lamp at full strength whenever it is on. */
    public Lamp(
            double ppfdUmolPerM2S,
            double umolPerJ,
            double nearInfraredPerPar,
            double onS,
            double offS) {
        this(
                ppfdUmolPerM2S,
                umolPerJ,
                nearInfraredPerPar,
                onS,
                offS,
                List.of(),
                List.of(),
                Plug.UNKNOWN);
    }

    /** Before any strength that is stated by date, d before the start. */
    private static final int FIRST_DAY = 100_000;

    /** No lamp at all. */
    public static final Lamp NONE = new Lamp(0, 4.57, 0, 0, 0);

    /** Whether a lamp hangs there: light that is no daylight. */
    public boolean isElectric() {
        return ppfdUmolPerM2S > 0 && !plug.daylight();
    }

    /** The same lamp so many times as bright, up to the brightest there is. */
    public Lamp times(double factor) {
        double bright = Math.min(MOST_UMOL_PER_M2_S, factor * ppfdUmolPerM2S);
        return withPpfdUmolPerM2S(bright);
    }

    /**
     * The same lamp with another strength from a day on.
     *
     * @param day days since the scenario's start
     * @param ppfd photon flux density at the canopy from then on, umol/m2/s
     */
    public Lamp from(int day, double ppfd) {
        double bright = Math.max(ppfd, ppfdUmolPerM2S);
        double dimmer = ppfdUmolPerM2S / bright;
        List<Strength> changed = new ArrayList<>();
        if (dimmer < 1) {
            changed.add(new Strength(-FIRST_DAY, dimmer));
        }
        for (Strength strength : strengths) {
            if (strength.day() < day) {
                changed.add(new Strength(strength.day(), dimmer * strength.frac()));
            }
        }
        changed.add(new Strength(day, ppfd / bright));
        return withPpfdUmolPerM2S(bright).withStrengths(changed);
    }

    /** Seconds a day in which it gives light, dimmed or not; strengths by date are left out. */
    public double litS() {
        return ppfdUmolPerM2S == 0 ? 0 : burningS();
    }

    /** Seconds a day between on and off in which its levels do not dim it to nothing. */
    public double burningS() {
        double litS = Light.litS(onS, offS);
        double atS = 0;
        while (atS < Time.DAY_S) {
            double nextS = nextChangeS(atS);
            boolean dimmedToNothing = DailySpan.isOpen(atS, onS, offS) && levelFrac(atS) == 0;
            litS -= dimmedToNothing ? nextS - atS : 0;
            atS = nextS;
        }
        return litS;
    }

    /**
     * Whether it is on at any time between two times of day.
     *
     * @param fromS seconds after midnight
     * @param toS seconds after midnight; at or before {@code fromS} for the day after
     */
    public boolean isOnBetween(double fromS, double toS) {
        double endS = toS > fromS ? toS : toS + Time.DAY_S;
        for (double atS = fromS; atS < endS; atS = nextChangeS(atS)) {
            if (DailySpan.isOpen(atS, onS, offS)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Photon flux density at an instant, umol/m2/s.
     *
     * @param timeS seconds since the scenario's start
     */
    public double ppfdUmolPerM2S(double timeS) {
        return ppfdUmolPerM2S == 0 ? 0 : ppfdUmolPerM2S * frac(timeS);
    }

    private double frac(double timeS) {
        if (!DailySpan.isOpen(timeS, onS, offS)) {
            return 0;
        }
        if (levels.isEmpty() && strengths.isEmpty()) {
            return 1;
        }
        double frac = levelFrac(timeS);
        double strength = 1;
        for (Strength from : strengths) {
            if (from.day() * Time.DAY_S <= timeS) {
                strength = from.frac();
            }
        }
        return frac * strength;
    }

    private double levelFrac(double timeS) {
        double clockS = timeS % Time.DAY_S;
        double frac = levels.isEmpty() ? 1 : levels.get(levels.size() - 1).frac();
        for (Level level : levels) {
            if (level.fromS() <= clockS) {
                frac = level.frac();
            }
        }
        return frac;
    }

    /**
     * Light between two instants, mol/m2, exact over every switch and dimming.
     *
     * @param fromS seconds since the scenario's start
     * @param toS seconds since the scenario's start
     */
    public double molPerM2(double fromS, double toS) {
        double mol = 0;
        double atS = fromS;
        while (atS < toS) {
            double nextS = Math.min(toS, nextChangeS(atS));
            mol += Light.dailyLightMolPerM2(ppfdUmolPerM2S(atS), nextS - atS);
            atS = nextS;
        }
        return mol;
    }

    private double nextChangeS(double atS) {
        double clockS = atS % Time.DAY_S;
        double next = Time.DAY_S;
        if (onS > clockS) {
            next = Math.min(next, onS);
        }
        if (offS > clockS) {
            next = Math.min(next, offS);
        }
        for (Level level : levels) {
            if (level.fromS() > clockS) {
                next = Math.min(next, level.fromS());
            }
        }
        return atS - clockS + next;
    }
}
