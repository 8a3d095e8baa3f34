package tideless.solution;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A water before anything is put in.
 *
 * @param id lower-case words with hyphens
 * @param title as a person would say it
 * @param composition mol/m3; its carbon is that which gives {@code typicalPh}
 * @param typicalPh as it comes from the tap or the sky, 25 degC
 * @param source where the figures come from
 * @param standing how well they are founded
 */
public record SourceWater(
        String id,
        String title,
        Composition composition,
        double typicalPh,
        String source,
        Standing standing) {
    private static final String USUAL = "constructed, charge balanced, in the usual ranges";

    private static final List<SourceWater> ALL =
            List.of(
                    new SourceWater(
                            "pure",
                            "Pure water in air",
                            Acidity.inAir(
                                    Composition.WATER, 25, ElectricalConductivity.AIR_CO2_PPM),
                            Acidity.phInAir(
                                    Composition.WATER, 25, ElectricalConductivity.AIR_CO2_PPM),
                            "pure water and air of 420 ppm CO2",
                            Standing.CONSTRUCTED),
                    rain(),
                    // Ca, Mg, Na, K, NH4, Cl, SO4, NO3; bicarbonate is what balances.
                    water(
                            "reverse-osmosis",
                            "Reverse-osmosis permeate",
                            USUAL,
                            6.0,
                            0.01,
                            0,
                            0.15,
                            0,
                            0.12,
                            0,
                            0),
                    water(
                            "soft-tap",
                            "Soft tap water",
                            USUAL,
                            7.5,
                            0.25,
                            0.08,
                            0.28,
                            0.03,
                            0.30,
                            0.12,
                            0.03),
                    // 55, 12, 28, 3.2, 77, 20 mg/L of Ca, Mg, Na, K, SO4, Cl; the printed 170 mg/L
                    // of bicarbonate is 2.79 mmol/L, 0.08 short of balance.
                    water(
                            "medium-tap",
                            "Medium tap water",
                            "worked example of Standard Methods 2510, from memory; bicarbonate by"
                                    + " balance",
                            7.5,
                            1.3723,
                            0.4937,
                            1.2179,
                            0.0818,
                            0.5641,
                            0.8016,
                            0),
                    water(
                            "hard-tap",
                            "Hard tap water",
                            USUAL,
                            7.4,
                            2.75,
                            0.25,
                            0.70,
                            0.10,
                            0.90,
                            0.40,
                            0.10));

    public SourceWater {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(composition, "composition");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(standing, "standing");
    }

    private static SourceWater rain() {
        Map<Component, Double> m = new EnumMap<>(Component.class);
        m.put(Component.CA, 0.015);
        m.put(Component.MG, 0.007);
        m.put(Component.NA, 0.05);
        m.put(Component.NH4, 0.03);
        m.put(Component.CL, 0.06);
        m.put(Component.SO4, 0.02);
        m.put(Component.NO3, 0.03);
        double ppm = ElectricalConductivity.AIR_CO2_PPM;
        Composition inAir = Acidity.inAir(Composition.of(m), 25, ppm);
        return new SourceWater(
                "rain",
                "Rain",
                inAir,
                Acidity.phInAir(inAir, 25, ppm),
                USUAL,
                Standing.CONSTRUCTED);
    }

    private static SourceWater water(
            String id,
            String title,
            String source,
            double ph,
            double ca,
            double mg,
            double na,
            double k,
            double cl,
            double so4,
            double no3) {
        Map<Component, Double> m = new EnumMap<>(Component.class);
        m.put(Component.CA, ca);
        m.put(Component.MG, mg);
        m.put(Component.NA, na);
        m.put(Component.K, k);
        m.put(Component.CL, cl);
        m.put(Component.SO4, so4);
        m.put(Component.NO3, no3);
        Composition bare = Composition.of(m);
        double carbon = Acidity.carbonForPh(bare, 25, ph).orElseThrow();
        return new SourceWater(
                id,
                title,
                bare.with(Component.C, carbon),
                ph,
                source,
                source.equals(USUAL) ? Standing.CONSTRUCTED : Standing.FROM_MEMORY);
    }

    /**
     * The waters between which one that is known by its EC alone is taken, in order of their EC.
     */
    private static final List<String> BY_EC = List.of("pure", "soft-tap", "medium-tap", "hard-tap");

    /** Most that is made of hard tap water; above it no water is usual, and fruit suffers. */
    private static final double HARDEST = 2;

    /** EC that {@link #reading} knows a water of at most, mS/cm at 25 degC. */
    public static double mostMsPerCm() {
        return ecOf(named("hard-tap").orElseThrow().composition.times(HARDEST));
    }

    /**
     * A tap water of which nothing is known but what a meter reads in it: mixed of the two named
     * waters whose EC lies below and above, or so many times as strong as hard tap water. An
     * assumption: two waters of one EC may differ by half in their alkalinity.
     *
     * @param msPerCm at 25 degC, up to {@link #mostMsPerCm()}
     */
    public static SourceWater reading(double msPerCm) {
        if (!(msPerCm >= 0 && msPerCm <= mostMsPerCm())) {
            throw new IllegalArgumentException("no water reads " + msPerCm + " mS/cm");
        }
        Composition low = named(BY_EC.get(0)).orElseThrow().composition;
        Composition high = low;
        for (int i = 1; i <= BY_EC.size(); i++) {
            high =
                    i < BY_EC.size()
                            ? named(BY_EC.get(i)).orElseThrow().composition
                            : low.times(HARDEST);
            if (ecOf(high) >= msPerCm) {
                break;
            }
            low = high;
        }
        Composition mixed = between(low, high, msPerCm);
        return new SourceWater(
                "by-ec",
                "Tap water by its EC",
                mixed,
                Acidity.phClosed(mixed, 25),
                "between the named waters by EC",
                Standing.CONSTRUCTED);
    }

    /** By halving, to the last bits: EC rises with the share. */
    private static Composition between(Composition low, Composition high, double msPerCm) {
        double from = 0;
        double to = 1;
        for (int halving = 0; halving < HALVINGS; halving++) {
            double share = 0.5 * (from + to);
            if (ecOf(low.times(1 - share).plus(high.times(share))) < msPerCm) {
                from = share;
            } else {
                to = share;
            }
        }
        double share = 0.5 * (from + to);
        return low.times(1 - share).plus(high.times(share));
    }

    private static final int HALVINGS = 40;

    private static double ecOf(Composition water) {
        return ElectricalConductivity.at25MsPerCm(water);
    }

    /**
     * This water with rain in it.
     *
     * @param rainFrac share of rain, 0 to 1
     */
    public static Composition withRain(Composition water, double rainFrac) {
        Composition rain = named("rain").orElseThrow().composition;
        return water.times(1 - rainFrac).plus(rain.times(rainFrac));
    }

    /** One by its id. */
    public static Optional<SourceWater> named(String id) {
        return ALL.stream().filter(w -> w.id().equals(id)).findFirst();
    }

    /** The ids, in order. */
    public static List<String> names() {
        List<String> names = new ArrayList<>();
        ALL.forEach(w -> names.add(w.id()));
        return List.copyOf(names);
    }
}
