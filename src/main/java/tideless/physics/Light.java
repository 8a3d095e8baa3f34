package tideless.physics;

import org.apache.commons.math3.util.FastMath;

/**
 * Light for eyes, light for plants, and power: lux, photons of 400-700 nm and watts of 400-700 nm.
 *
 * <p>A lux meter weighs light for the human eye; the factor to photons depends on the source. Bare
 * lamps dazzle: do not stare into them when measuring.
 */
public final class Light {
    /** No white light carries more, lm/W: 280 to 370 by spectrum; from memory. */
    public static final double WHITE_LIGHT_LIMIT_LM_PER_W = 370;

    /** Share of 400-700 nm in global radiation; from memory, 0.42 to 0.50. */
    public static final double PAR_PER_GLOBAL_FRAC = 0.45;

    private Light() {}

    /**
     * Kinds of source.
     *
     * <p>Lux per umol/m2/s and umol per J of 400-700 nm: Thimijan and Heins (1983), HortScience
     * 18(6), 818-822, second hand, except for the light-emitting diodes, which came later (from
     * memory). The near-infrared shares (700 to 3000 nm per watt of 400-700 nm) are from memory,
     * +-50 %, and hold for bare lamps without a glass or water filter.
     */
    public enum Source {
        /** Sun and sky together. Near infrared from a share of 0.45 for 400-700 nm of the whole. */
        SUN_AND_SKY(54, 4.57, 1.1),
        /** Blue sky without the sun. */
        BLUE_SKY(52, 4.24, 0.5),
        /** High-pressure sodium lamp. */
        HIGH_PRESSURE_SODIUM(82, 4.98, 0.6),
        /** Metal halide lamp. */
        METAL_HALIDE(71, 4.59, 0.5),
        /** Cool white fluorescent tube. */
        COOL_WHITE_FLUORESCENT(74, 4.59, 0.1),
        /** Incandescent bulb. */
        INCANDESCENT(50, 5.0, 8),
        /**
         * White light-emitting diode with phosphor. 60 to 80 lux per umol/m2/s (60 to 65 warm and
         * of high colour rendering, 68 to 75 ordinary), 4.6 to 4.9 umol per J; from memory.
         */
        WHITE_LED(70, 4.7, 0.03),
        /**
         * Red and blue diodes without white. A lux meter says nothing about them: the factor is not
         * a number. 5.1 umol per J for four parts of 660 nm to one of 450 nm (Planck's law).
         */
        RED_BLUE_LED(Double.NaN, 5.1, 0.02);

        private final double luxPerPpfd;
        private final double umolPerJ;
        private final double nearInfraredPerPar;

        Source(double luxPerPpfd, double umolPerJ, double nearInfraredPerPar) {
            this.luxPerPpfd = luxPerPpfd;
            this.umolPerJ = umolPerJ;
            this.nearInfraredPerPar = nearInfraredPerPar;
        }

        /** Lux per umol/m2/s of 400-700 nm; not a number where lux says nothing. */
        public double luxPerPpfd() {
            return luxPerPpfd;
        }

        /** Photons per energy of 400-700 nm, umol/J. */
        public double umolPerJ() {
            return umolPerJ;
        }

        /** Near infrared (700-3000 nm) per power of 400-700 nm, W/W; from memory, +-50 %. */
        public double nearInfraredPerPar() {
            return nearInfraredPerPar;
        }
    }

    /**
     * Photon flux density from a lux reading.
     *
     * @param lux lx
     * @param source what shines
     * @return umol/m2/s, 400-700 nm; not a number for {@link Source#RED_BLUE_LED}
     */
    public static double luxToPpfdUmolPerM2S(double lux, Source source) {
        return lux / source.luxPerPpfd;
    }

    /**
     * Lux reading from a photon flux density.
     *
     * @param ppfdUmolPerM2S umol/m2/s, 400-700 nm
     * @param source what shines
     * @return lx; not a number for {@link Source#RED_BLUE_LED}
     */
    public static double ppfdToLux(double ppfdUmolPerM2S, Source source) {
        return ppfdUmolPerM2S * source.luxPerPpfd;
    }

    /**
     * Power of the photons.
     *
     * @param ppfdUmolPerM2S umol/m2/s, 400-700 nm
     * @param source what shines
     * @return W/m2, 400-700 nm
     */
    public static double ppfdToWPerM2(double ppfdUmolPerM2S, Source source) {
        return ppfdUmolPerM2S / source.umolPerJ;
    }

    /**
     * Photons over a time: over a day's lit time the daily light integral.
     *
     * @param ppfdUmolPerM2S mean over the lit time, umol/m2/s
     * @param litS lit time, s
     * @return mol/m2
     */
    public static double dailyLightMolPerM2(double ppfdUmolPerM2S, double litS) {
        return 1e-6 * ppfdUmolPerM2S * litS;
    }

    /**
     * Mean lux that a lamp can give over an area.
     *
     * @param lampW electrical power, W
     * @param lumenPerW luminous efficacy at the plug, lm/W; 80 to 120 for a household lamp today
     *     (from memory)
     * @param areaM2 lit area, m2
     * @param landingFrac share of the light that lands on it, 0-1; 1 gives the ceiling, 0.6 to 0.8
     *     is usual (judgement)
     * @return lx
     */
    public static double lampMeanLux(
            double lampW, double lumenPerW, double areaM2, double landingFrac) {
        return lampW * lumenPerW * landingFrac / areaM2;
    }

    /**
     * Lit time of a lamp from its clock.
     *
     * @param onS switched on, seconds after midnight
     * @param offS switched off, seconds after midnight; less than {@code onS} past midnight, equal
     *     for always on
     * @return s a day
     */
    public static double litS(double onS, double offS) {
        return offS > onS ? offS - onS : offS - onS + Time.DAY_S;
    }

    /**
     * Photon flux density of sunlight from global radiation: 0.45 of it is 400-700 nm (0.42 to
     * 0.50; from memory) at 4.57 umol per J.
     *
     * @param globalWPerM2 W/m2
     * @return umol/m2/s
     */
    public static double globalToPpfdUmolPerM2S(double globalWPerM2) {
        return globalWPerM2 * PAR_PER_GLOBAL_FRAC * Source.SUN_AND_SKY.umolPerJ;
    }

    /**
     * Mean flux of a day whose light runs as half a sine, between two times of it, umol/m2/s.
     *
     * @param molPerM2 light of the day, mol/m2
     * @param beginS begins, seconds after midnight
     * @param endS ends, seconds after midnight, after {@code beginS}
     * @param fromS first time, seconds after midnight
     * @param toS second time, after it, up to the next midnight
     */
    public static double halfSinePpfdUmolPerM2S(
            double molPerM2, double beginS, double endS, double fromS, double toS) {
        double came = comeFrac(beginS, endS, toS) - comeFrac(beginS, endS, fromS);
        return 1e6 * molPerM2 * came / (toS - fromS);
    }

    /** Share of such a day's light that has come by a time: the integral of half a sine. */
    private static double comeFrac(double beginS, double endS, double atS) {
        double through = Math.max(0, Math.min(1, (atS - beginS) / (endS - beginS)));
        return 0.5 * (1 - FastMath.cos(Math.PI * through));
    }
}
